/* canvas.h - the wall, large: looked at, and edited where it stands
 *
 * Signals:
 *   "selected"  what is selected is another
 *   "piece"     (int course, int number) a piece was clicked; 0, 0: none is any more
 *   "tool"      the tool is another: a drawn thing is done, or was cancelled
 *   "said"      (string) a sentence for the line under the wall; "" takes it away
 *   "refused"   (string) what was asked cannot be: a sentence with the reason
 *   "wall"      another wall is shown: one was drawn
 */
#pragma once

#include <gtk/gtk.h>

#include "app/answers.h"
#include "app/document.h"

typedef enum
{
  HB_TOOL_SELECT,
  HB_TOOL_WINDOW,
  HB_TOOL_DOOR,
  HB_TOOL_VOID,
  HB_TOOL_WALL,
} HbTool;

typedef enum
{
  HB_PIN_TOGGLE, /* it is pinned, or its pin is taken out */
  HB_PIN_SPLIT,  /* a perpend is pinned in its middle */
  HB_PIN_JOIN,   /* it and the next become one pinned piece */
} HbPinDeed;

#define HB_TYPE_CANVAS (hb_canvas_get_type ())
G_DECLARE_FINAL_TYPE (HbCanvas, hb_canvas, HB, CANVAS, GtkWidget)

/* Once. */
void hb_canvas_set_document (HbCanvas *canvas, HbDocument *document, HbAnswers *answers);

/* None is a blank sheet. */
void hb_canvas_set_wall (HbCanvas *canvas, WallId wall);
WallId hb_canvas_get_wall (HbCanvas *canvas);
/* None: the wall itself. */
void hb_canvas_select (HbCanvas *canvas, OpeningId opening);
OpeningId hb_canvas_get_selected (HbCanvas *canvas);
/* A movement joint, by its number in the wall's list from 1, and no opening; 0: none. */
void hb_canvas_select_joint (HbCanvas *canvas, guint joint);
guint hb_canvas_get_joint (HbCanvas *canvas);

void hb_canvas_set_client (HbCanvas *canvas, gboolean client);
gboolean hb_canvas_get_client (HbCanvas *canvas);
void hb_canvas_set_tool (HbCanvas *canvas, HbTool tool);
HbTool hb_canvas_get_tool (HbCanvas *canvas);
/* The pieces of a take-off line; NULL: none. */
void hb_canvas_set_highlight (HbCanvas *canvas, const char *takeoff_key);
/* WorkPallet, set down at the foot of the wall that is shown; NULL: none is. */
void hb_canvas_set_pallets (HbCanvas *canvas, GArray *pallets);
/* Lights one piece; 0, 0: none. */
void hb_canvas_set_piece (HbCanvas *canvas, gint32 course, gint32 number);
/* The one that is lit; 0, 0: none. */
void hb_canvas_get_piece (HbCanvas *canvas, gint32 *course, gint32 *number);
/* The course that the pointer is at, or else that of the lit piece; 0: none. */
gint32 hb_canvas_get_course (HbCanvas *canvas);
/* Does it to the lit piece; says why where it cannot be. */
void hb_canvas_pin (HbCanvas *canvas, HbPinDeed deed);
/* Takes the perpend at the left of the lit piece, or the right one when there is none or when the
 * left one is taken: the arrow keys move it from then on. Says why where it cannot be. */
void hb_canvas_take_perpend (HbCanvas *canvas);

/* Adds a movement joint at the pointer, or in the middle of the wall where it is not over the wall;
 * takes the one that the pointer is at out. */
void hb_canvas_toggle_movement_joint (HbCanvas *canvas);

void hb_canvas_fit (HbCanvas *canvas);
/* About the middle of what is seen. */
void hb_canvas_zoom (HbCanvas *canvas, double factor);
/* Brings a place of the wall into sight; course 0: only x. */
void hb_canvas_go_to (HbCanvas *canvas, gint32 course, Length x);
/* Puts an end to a pull or a tool, as Escape does. TRUE when there was one. */
gboolean hb_canvas_cancel (HbCanvas *canvas);
/* Removes the selected opening or movement joint. */
void hb_canvas_remove_selected (HbCanvas *canvas);
