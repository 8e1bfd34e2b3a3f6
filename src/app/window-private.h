/* window-private.h - what the files of the window share */
#pragma once

#include "app/answers.h"
#include "app/built-window.h"
#include "app/canvas.h"
#include "app/findings-pane.h"
#include "app/improver.h"
#include "app/inspector.h"
#include "app/plan-view.h"
#include "app/rod-window.h"
#include "app/takeoff-pane.h"
#include "app/turner.h"
#include "app/walls-pane.h"
#include "app/window.h"
#include "app/work-window.h"

struct _HbWindow
{
  GtkApplicationWindow parent;

  /* Template widgets */
  GtkLabel *title, *subtitle, *saved;
  HbWallsPane *walls;
  HbCanvas *canvas;
  HbPlanView *plan;
  GtkStack *stage; /* the canvas or the plan */
  HbTakeoffPane *takeoff;
  HbInspector *inspector;
  HbFindingsPane *findings;
  GtkWidget *side;
  GtkWidget *no_walls;
  GtkWidget *no_plan;
  GtkLabel *status;
  GtkWidget *notice;
  GtkInscription *notice_text;
  GtkButton *notice_first, *notice_second;
  GtkWidget *undo, *redo, *opening_button;
  GMenu *recent;

  /* Owned references */
  HbDocument *document;
  HbAnswers *answers;
  HbImprover *improver;
  GtkWindow *level;     /* the level book while it is open; NULL: it is not. Not owned */
  HbRodWindow *rod;     /* the storey rod while it is open; likewise */
  HbWorkWindow *work;   /* the work while it is open; likewise */
  HbBuiltWindow *built; /* what was built, while it is open; likewise */
  HbProgress *progress;
  HbTurner *turner;
  GtkFileChooserNative *chooser; /* the one that is open; NULL: none */
  GFile *pending;                /* to be opened once the first frame is there; NULL: none */

  guint clock;           /* source that keeps "saved 2 min ago" true */
  guint fill;            /* source that opens what is pending after the first frame */
  gboolean sentence;     /* the notice asks nothing: it goes by itself */
  gboolean painted;      /* the first frame is there */
  gboolean pending_copy; /* of what is pending, a copy is opened */
  gboolean may_close;    /* it was asked, or nothing is lost */
};

/* What is to be done once nothing that is open would be lost. */
typedef void (*HbWindowThen) (HbWindow *window, GFile *file);

/* window.c */
void _hb_window_say (HbWindow *self, const char *sentence);
/* A sentence over the top of the canvas, until the next change. With actions, up to two buttons
 * (label and action name, NULL for none), and it waits for them. */
void _hb_window_notice (HbWindow *self, const char *sentence, const char *first,
                        const char *first_action, const char *second, const char *second_action);
void _hb_window_hide_notice (HbWindow *self);
void _hb_window_update_title (HbWindow *self);
void _hb_window_show_wall (HbWindow *self, WallId wall);
/* Where the blocks of the wall that is shown are set down, while the work is open. */
void _hb_window_show_pallets (HbWindow *self);
/* What the middle of the window shows: "laying", "client", "plan". */
void _hb_window_show_view (HbWindow *self, const char *view);
gboolean _hb_window_shows_plan (HbWindow *self);

/* window-actions.c */
void _hb_window_class_add_actions (GtkWidgetClass *widget_class);
void _hb_window_add_actions (HbWindow *self);
void _hb_window_update_actions (HbWindow *self);

/* files.c */
void _hb_window_ask_open (HbWindow *self);
void _hb_window_save (HbWindow *self, HbWindowThen then, GFile *file);
void _hb_window_save_as (HbWindow *self, HbWindowThen then, GFile *file);
/* Saves, throws away or keeps, as is answered; then does it, or not. */
void _hb_window_when_saved (HbWindow *self, HbWindowThen then, GFile *file);
void _hb_window_open_asked (HbWindow *self, GFile *file);
void _hb_window_fill_recent (HbWindow *self);
void _hb_window_check_disk (HbWindow *self);

/* The path that was chosen, with its ending, and the chooser let go; NULL: none was. */
char *_hb_window_take_choice (HbWindow *self, int response, const char *ending);

/* exports.c */
void _hb_window_export (HbWindow *self, const char *kind);
