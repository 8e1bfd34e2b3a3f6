/* canvas-private.h - what the files of the canvas share */
#pragma once

#include "app/canvas.h"
#include "app/places.h"
#include "app/recording.h"
#include "app/tool-perpend.h"
#include "paint/elevation.h"

typedef enum
{
  PULL_NONE,
  PULL_PAN,
  PULL_OPENING,
  PULL_PERPEND,
  PULL_JOINT, /* a movement joint */
  PULL_TOP,   /* a point, a line or a step of the top, or a step of the footing */
  PULL_WALL,
  PULL_DRAW,     /* a new opening */
  PULL_NEW_WALL, /* a new wall */
} PullKind;

typedef struct
{
  PullKind kind;
  RefPart part;
  Opening opening;    /* as it was; owned */
  MarkRef ref;        /* what of the top or the footing */
  Length joint;       /* left face of the movement joint, as it was */
  Wall *wall;         /* as it was; owned */
  Project *project;   /* as it was; owned */
  View view;          /* as it was */
  double x, y;        /* where it was taken, widget */
  guint32 next;       /* the id that the project would give a new thing */
  guint n_walls;      /* that the project had */
  gboolean under_way; /* it went farther than a click does */
} Pull;

/* A perpend: its course, and the face of the piece right of it. Course 0: none. */
typedef struct
{
  gint32 course;
  Length x;
} Perpend;

/* A perpend that pointer or keys are moving. */
typedef struct
{
  Perpend from;  /* as it was */
  Wall *wall;    /* as it was; owned; NULL: none is moved */
  GArray *stops; /* Stop, as the wall was laid; owned */
  StopKind stop; /* what it rests on */
} PerpendMove;

struct _HbCanvas
{
  GtkWidget parent;

  /* Owned references */
  HbDocument *document;
  HbAnswers *answers;

  /* What is looked at */
  WallId wall;
  WallId wall_before; /* the wall that is shown again when none is drawn */
  OpeningId selected;
  guint joint;             /* the chosen movement joint, its number in the wall's list from 1; 0 */
  gint32 course;           /* of the tape; 0: the first */
  gint32 piece, in_course; /* the piece that is lit: number, course; 0: none */
  gint32 followed_course;  /* lit again when its wall is laid: what lies there; 0: nothing */
  Length followed_x;
  Perpend perpend; /* the one that keys move */
  Perpend hovered; /* the one that the pointer would take */
  MarkRef held;    /* point of the top or step of the footing that the keys move; or none */
  char *highlight; /* take-off key or NULL */
  GArray *pallets; /* WorkPallet, at the wall's foot; owned; NULL: they are not shown */
  gboolean client;
  HbTool tool;
  gboolean fitted; /* the view follows the size of the widget */
  View view;

  /* Owned: what is drawn */
  Ink *ink;
  Drawing *drawing;
  Drawing *overlay;
  HbRecording *recording, *rod, *tape, *lit, *moving;
  gboolean stale;     /* the drawing is of an older value */
  gboolean stale_lit; /* so is what is lit */

  /* Owned: the hand */
  Pull pull;
  double pressed_x, pressed_y; /* where a button came down last */
  int presses;                 /* and which time in a row: 2 is a double click */
  double pulled_x, pulled_y;   /* how far the pointer was told to have gone since, px */
  gboolean cut_short;          /* the end of the pull is told without its place */
  gboolean given_up;           /* the pull was cancelled; the button is still to be let go */
  PerpendMove move;
  HbPlaces *places;
  gboolean space_held;
  double pointer_x, pointer_y;
  gboolean pointer_in;
  GtkWidget *dimension; /* the entry over a dimension, a child; NULL: none */
  double dimension_x, dimension_y;
  GtkWidget *wall_hold; /* children that take the focus for the wall and its openings */
  GPtrArray *holds, *corners;
  gboolean nudging; /* arrow keys hold a preview */
};

/* canvas.c */
const Project *_hb_canvas_project (HbCanvas *self);
const Wall *_hb_canvas_get_wall_value (HbCanvas *self); /* NULL: none */
const Block *_hb_canvas_get_block (HbCanvas *self);
const Opening *_hb_canvas_get_opening (HbCanvas *self); /* the selected one, or NULL */
Theme _hb_canvas_theme (HbCanvas *self);
void _hb_canvas_refused (HbCanvas *self, const GError *error);
void _hb_canvas_say (HbCanvas *self, const char *sentence);
/* What holds now: the tool's hint, else where the selected opening lies, else nothing. */
void _hb_canvas_say_present (HbCanvas *self);
/* What of the selected opening the hand moves; SHIFT_ALONG when it rests. */
Shift _hb_canvas_pulled_shift (HbCanvas *self);
/* Applies and frees the edit. */
gboolean _hb_canvas_apply (HbCanvas *self, Edit *edit, const char *label);
void _hb_canvas_ask_places (HbCanvas *self);

/* canvas-draw.c: what is shown */
void _hb_canvas_snapshot (HbCanvas *self, GtkSnapshot *snapshot);
void _hb_canvas_queue_redraw (HbCanvas *self); /* the drawing is stale */
/* What lies there; FALSE, and REF_NONE: nothing. */
gboolean _hb_canvas_pick (HbCanvas *self, double x, double y, MarkRef *ref);
/* Whether a strip of the selected opening lies there, which, and the place there or NULL. */
gboolean _hb_canvas_pick_strip (HbCanvas *self, double x, double y, Shift *shift,
                                const Place **place);
/* Where the ground lies on the sheet that a new wall is drawn on, px from the top. */
double _hb_canvas_blank_ground (HbCanvas *self);

/* canvas-view.c: where the wall lies */
void _hb_canvas_add_zoom (HbCanvas *self);
void _hb_canvas_set_view (HbCanvas *self, const View *view, gboolean fitted);

/* canvas-pull.c: the pointer */
void _hb_canvas_add_pointer (HbCanvas *self);
gboolean _hb_canvas_pull_cancel (HbCanvas *self);
void _hb_canvas_toggle_steel (HbCanvas *self, gint32 course);
void _hb_canvas_say_opening (HbCanvas *self, const Opening *opening);

/* canvas-hover.c: the pointer that pulls nothing */
void _hb_canvas_add_hover (HbCanvas *self);
void _hb_canvas_update_cursor (HbCanvas *self);
void _hb_canvas_say_strip_again (HbCanvas *self); /* more is known of what the pointer is at */
/* "Course 5, piece 3: 450 mm, shortened, left face at 1800"; NULL when there is none. */
char *_hb_canvas_dup_piece_text (HbCanvas *self, gint32 course, gint32 number);

/* canvas-perpend.c: perpends, which pointer and keys move */
/* The one that a hand at that place takes; course 0: none. */
Perpend _hb_canvas_pick_perpend (HbCanvas *self, double x, double y);
/* The keys move it from now on; course 0: none. */
void _hb_canvas_take_perpend (HbCanvas *self, Perpend perpend);
void _hb_canvas_hover_perpend (HbCanvas *self, Perpend perpend);
/* A move begins; it goes to where the grip lets it rest, and the wall is shown so; it ends, and
 * what is shown is kept as a step or dropped. */
void _hb_canvas_begin_perpend (HbCanvas *self, Perpend perpend);
void _hb_canvas_move_perpend (HbCanvas *self, Length x, const Grip *grip);
void _hb_canvas_nudge_perpend (HbCanvas *self, int right, GdkModifierType state);
void _hb_canvas_end_perpend (HbCanvas *self);
char *_hb_canvas_dup_perpend_label (const Perpend *perpend);
/* What is to be said of a perpend. */
char *_hb_canvas_dup_perpend_text (HbCanvas *self, const Perpend *perpend);
void _hb_canvas_say_perpend (HbCanvas *self);
/* Those that are lit, two at most. */
guint _hb_canvas_lit_perpends (HbCanvas *self, PerpendMark marks[2]);
void _hb_canvas_perpends_laid (HbCanvas *self); /* the wall was laid */

/* canvas-joint.c: movement joints */
/* The one that a hand at that place takes, borrowed; NULL: none. */
const MovementJoint *_hb_canvas_pick_joint (HbCanvas *self, double x, double y);
/* The chosen one, borrowed; NULL: none. */
const MovementJoint *_hb_canvas_get_joint (HbCanvas *self);
/* Arrow keys: along, or wider with Alt. */
void _hb_canvas_nudge_joint (HbCanvas *self, int right, GdkModifierType state);
void _hb_canvas_remove_joint (HbCanvas *self);
void _hb_canvas_say_joint (HbCanvas *self, const MovementJoint *joint);
/* The pulled one, so far from where it was; says where it is. */
Edit *_hb_canvas_moved_joint (HbCanvas *self, Length dx);

/* canvas-top.c: the top and the footing */
/* The keys move it from now on; NULL: none. */
void _hb_canvas_hold_corner (HbCanvas *self, const MarkRef *ref);
gboolean _hb_canvas_has_corner (HbCanvas *self); /* and the wall has it */
/* NULL: there is none. */
char *_hb_canvas_dup_corner_text (const Wall *wall, const MarkRef *ref);
void _hb_canvas_say_top (HbCanvas *self, const MarkRef *ref);
const char *_hb_canvas_top_cursor (const MarkRef *ref);
/* The pulled one, so far from where it was, and the one that the keys move; both say where it is.
 */
Edit *_hb_canvas_pulled_top (HbCanvas *self, Length dx, Length dz, const Grip *grip);
Edit *_hb_canvas_nudged_corner (HbCanvas *self, int right, int up, GdkModifierType state);
/* FALSE: the top is not there. */
gboolean _hb_canvas_add_point_at (HbCanvas *self, double x, double y);
void _hb_canvas_add_point (HbCanvas *self); /* at the pointer, or where there is most room */
void _hb_canvas_remove_corner (HbCanvas *self);
void _hb_canvas_edit_corner (HbCanvas *self);

/* canvas-pins.c: what is pinned by hand */
void _hb_canvas_let_perpend_go (HbCanvas *self); /* its pins are taken out */
/* As hb_canvas_set_piece(), but the perpend that the keys move stays. */
void _hb_canvas_light_piece (HbCanvas *self, gint32 course, gint32 number);
void _hb_canvas_follow_piece (HbCanvas *self); /* the wall was laid */
/* Of a piece that stands it is said that it stays; FALSE: it does not stand. */
gboolean _hb_canvas_says_stands (HbCanvas *self, const Piece *piece);

/* canvas-keys.c: the keyboard */
void _hb_canvas_add_keys (HbCanvas *self);
void _hb_canvas_end_nudge (HbCanvas *self);
/* Shows what a held key does, until it is let go; frees the edit. */
void _hb_canvas_nudge (HbCanvas *self, Edit *edit);

/* canvas-holds.c: what the keyboard's focus and a screen reader find of the wall */
void _hb_canvas_update_holds (HbCanvas *self);
void _hb_canvas_place_holds (HbCanvas *self);
void _hb_canvas_drop_holds (HbCanvas *self);
void _hb_canvas_focus_selected (HbCanvas *self);
/* FALSE: it goes out of the canvas. */
gboolean _hb_canvas_focus_next (HbCanvas *self, gboolean forward);

/* canvas-dimension.c: typing into a dimension */
void _hb_canvas_edit_dimension (HbCanvas *self, const MarkRef *dimension, double x, double y);
/* Of the piece left of the perpend that the keys move. */
void _hb_canvas_edit_left_piece (HbCanvas *self);
/* How far the chosen movement joint is from the left end. */
void _hb_canvas_edit_joint (HbCanvas *self);
void _hb_canvas_place_dimension (HbCanvas *self);
gboolean _hb_canvas_is_typing (HbCanvas *self);
void _hb_canvas_stop_typing (HbCanvas *self);
