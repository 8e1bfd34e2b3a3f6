/* plan-view-private.h - what the files of the plan share */
#pragma once

#include "app/places.h"
#include "app/plan-view.h"
#include "app/recording.h"
#include "app/tool.h"
#include "paint/plan.h"

typedef enum
{
  PLAN_PULL_NONE,
  PLAN_PULL_PAN,
  PLAN_PULL_OPENING,
  PLAN_PULL_WALL,
  PLAN_PULL_PART, /* a new partition */
  PLAN_PULL_DRAW, /* a side */
  PLAN_PULL_OPEN, /* a new opening */
} PlanPullKind;

typedef struct
{
  PlanPullKind kind;
  MarkRef ref;        /* what was taken */
  Project *project;   /* as it was; owned */
  View view;          /* as it was */
  double x, y;        /* where it was taken, widget */
  gboolean under_way; /* it went farther than a click does */
} PlanPull;

/* What is drawn side by side. */
typedef struct
{
  GArray *trace;    /* TraceCorner; owned */
  GString *typed;   /* a length; owned */
  gboolean has_tip; /* the pointer was over the plan since the last typed side */
  TraceCorner tip;  /* where the next side would end */
  gboolean begun;   /* the press that is under way set the first corner */
} PlanDraw;

struct _HbPlanView
{
  GtkWidget parent;

  HbDocument *document; /* owned, as the next */
  HbAnswers *answers;
  HbPlaces *places; /* of the chosen opening; owned */

  /* What is chosen */
  WallId wall;
  OpeningId opening;
  WallId meeting[2];

  /* Owned: what is drawn */
  View view;
  gboolean fitted; /* the view follows the size of the widget */
  Ink *ink;
  Drawing *drawing, *overlay;
  HbRecording *recording, *moving;
  gboolean stale;      /* the drawing is of an older value */
  gboolean unrecorded; /* so is what is recorded of it */

  /* The hand */
  HbPlanTool tool;
  PlanDraw draw;
  PlanPlace place; /* of the wall that is being placed */
  PlanPull pull;
  gboolean space_held, nudging;
  double pointer_x, pointer_y;
  GPtrArray *holds;  /* GtkWidget *, children; owned as such */
  MarkRef pressed;   /* the dimension under the hand */
  GtkWidget *typing; /* the entry over a dimension, a child; NULL: none */
  MarkRef typed;     /* that dimension */
  double typed_x, typed_y;
};

/* plan-view.c */
Theme _hb_plan_view_theme (HbPlanView *self);
const Project *_hb_plan_view_project (HbPlanView *self);
void _hb_plan_view_queue_redraw (HbPlanView *self);
void _hb_plan_view_set_view (HbPlanView *self, const View *view, gboolean fitted);
void _hb_plan_view_say (HbPlanView *self, const char *sentence);
/* FALSE, and REF_NONE: nothing. */
gboolean _hb_plan_view_pick (HbPlanView *self, double x, double y, MarkRef *ref);
/* Chooses what the mark stands for, and tells of it. */
void _hb_plan_view_choose (HbPlanView *self, const MarkRef *ref);
/* "Corner of Front and Right". Newly allocated. */
char *_hb_plan_view_dup_name (const Project *project, const Meeting *meeting);
/* What is chosen, as a mark would say it. */
MarkRef _hb_plan_view_chosen (HbPlanView *self);

/* plan-view-pull.c: the pointer */
void _hb_plan_view_add_pointer (HbPlanView *self);
gboolean _hb_plan_view_pull_cancel (HbPlanView *self);
void _hb_plan_view_pull_clear (HbPlanView *self);
void _hb_plan_view_update_cursor (HbPlanView *self);
/* A partition from the chosen wall, in the middle of where it is free. */
void _hb_plan_view_part_usual (HbPlanView *self);

/* plan-view-draw.c: sides, one after another */
gboolean _hb_plan_view_draws (HbPlanView *self);
void _hb_plan_view_say_draw (HbPlanView *self);
void _hb_plan_view_draw_to (HbPlanView *self, double x, double y);
void _hb_plan_view_draw_press (HbPlanView *self, double x, double y);
void _hb_plan_view_draw_release (HbPlanView *self, double x, double y, gboolean moved);
gboolean _hb_plan_view_draw_key (HbPlanView *self, guint key, GdkModifierType state);
gboolean _hb_plan_view_draw_escape (HbPlanView *self);
void _hb_plan_view_show_draw (HbPlanView *self);
void _hb_plan_view_draw_clear (HbPlanView *self);
/* Borrowed; FALSE: nothing is being drawn. */
gboolean _hb_plan_view_get_trace (HbPlanView *self, PlanTrace *out);

/* plan-view-place.c: a wall that stands nowhere */
gboolean _hb_plan_view_place_begin (HbPlanView *self);
void _hb_plan_view_place_to (HbPlanView *self, double x, double y);
void _hb_plan_view_place_keep (HbPlanView *self);
gboolean _hb_plan_view_place_key (HbPlanView *self, guint key, GdkModifierType state);

/* plan-view-strip.c: what other places of the chosen opening would cost */
void _hb_plan_view_ask_places (HbPlanView *self);
void _hb_plan_view_rest (HbPlanView *self, Opening *opening, const Grip *grip);
Length _hb_plan_view_next_cheap (HbPlanView *self, const Opening *opening, int direction);
void _hb_plan_view_snapshot_strip (HbPlanView *self, GtkSnapshot *snapshot);
gboolean _hb_plan_view_hover_strip (HbPlanView *self, double x, double y);
gboolean _hb_plan_view_press_strip (HbPlanView *self, double x, double y);

/* plan-view-open.c: new openings */
gboolean _hb_plan_view_opens (HbPlanView *self);
void _hb_plan_view_open_usual (HbPlanView *self);
void _hb_plan_view_pull_open (HbPlanView *self, double x, double y, const Grip *grip);
void _hb_plan_view_open_at (HbPlanView *self, double x, double y);

/* plan-view-keys.c: the keyboard, and what it finds */
void _hb_plan_view_add_keys (HbPlanView *self);
void _hb_plan_view_end_nudge (HbPlanView *self);
void _hb_plan_view_update_holds (HbPlanView *self);
void _hb_plan_view_place_holds (HbPlanView *self);
void _hb_plan_view_drop_holds (HbPlanView *self);
void _hb_plan_view_focus_chosen (HbPlanView *self);
gboolean _hb_plan_view_focus_next (HbPlanView *self, gboolean forward);

/* plan-view-dimension.c: typing into a dimension */
void _hb_plan_view_type (HbPlanView *self, const MarkRef *ref, double x, double y);
gboolean _hb_plan_view_is_typing (HbPlanView *self);
void _hb_plan_view_stop_typing (HbPlanView *self);
void _hb_plan_view_place_typing (HbPlanView *self);
