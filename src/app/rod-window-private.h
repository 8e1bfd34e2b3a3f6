/* rod-window-private.h - what the files of the rod's window share */
#pragma once

#include "advice/rod.h"
#include "app/job.h"
#include "app/rod-window.h"

enum
{
  ROD_FIRST_FROM,
  ROD_FIRST_TO,
  ROD_BED_FROM,
  ROD_BED_TO,
  N_ROD_BOUNDS
};

struct _HbRodWindow
{
  GtkWindow parent;

  /* Template widgets */
  GtkStack *stage; /* "rod" or "none" */
  GtkLabel *about, *notice;
  GtkGrid *table;
  GtkButton *gauge_all;
  GtkEntry *first_from, *first_to, *bed_from, *bed_to;
  GtkDropDown *scope; /* this wall, all walls */
  GtkBox *choices;

  HbDocument *document; /* owned */
  HbJob *job;           /* owned: tries the choices */
  WallId wall;
  GPtrArray *moves; /* GtkWidget *, borrowed: the buttons of the table, from the top */
  GPtrArray *takes; /* likewise: those of the choices */
  guint refresh;    /* source that fills anew */
};

/* rod-window.c */
const Project *_hb_rod_window_project (HbRodWindow *self);
const Wall *_hb_rod_window_get_wall (HbRodWindow *self); /* NULL: none */
/* Applies and frees the edit; a refusal is said. */
void _hb_rod_window_apply (HbRodWindow *self, Edit *edit, const char *label);
/* The button that stands where the one with the focus stood, and can be pressed; FALSE: there is
 * none. `at`: _hb_rod_focused(). */
gboolean _hb_rod_focus_again (const GPtrArray *buttons, int at);
/* Which of them has the focus; -1: none. */
int _hb_rod_focused (const GPtrArray *buttons);
/* "sill", "head", "top". */
const char *_hb_rod_kind_text (RodKind kind);

/* rod-table.c */
void _hb_rod_table_fill (HbRodWindow *self);

/* rod-choices.c */
/* What the walls have, and the best of the choices; RodChoice. */
void _hb_rod_choices_fill (HbRodWindow *self, const GArray *choices);
/* The walls that are asked for; none: all. */
WallId _hb_rod_choices_scope (HbRodWindow *self);
