/* built-window-private.h - what the files of the window of what was built share */
#pragma once

#include "app/built-cells.h"
#include "app/built-window.h"
#include "app/job.h"
#include "site/as-built.h"

struct _HbBuiltWindow
{
  GtkWindow parent;

  /* Template widgets */
  GtkStack *stage; /* "built" or "none" */
  GtkLabel *about, *of, *notice;
  GtkSpinButton *courses;
  GtkGrid *figures;
  GtkBox *date, *results;

  /* Owned references */
  HbDocument *document;
  HbAnswers *answers;

  HbProgress *progress; /* borrowed */
  GtkWidget *as_of;     /* the cell of the date; borrowed */
  HbJob *counting;      /* owned: counts what is still needed */
  Takeoff *rest;        /* owned: what is; NULL: not known yet */
  Project *rest_of;     /* owned: what it was asked of last; or NULL */
  WallId wall;
  GArray *rows;      /* Row of built-grid.c, from the top */
  GArray *marked;    /* Marked of built-grid.c: what was typed and does not count */
  char *shape;       /* of the rows: what there are; owned */
  GtkWidget *typing; /* the cell that has the focus, or had it last; NULL: none */
  guint refresh;     /* source that fills anew */
  gboolean filling;
  gboolean warned; /* that something typed would be lost by closing */
};

/* built-window.c */
const Project *_hb_built_window_project (HbBuiltWindow *self);
const Wall *_hb_built_window_get_wall (HbBuiltWindow *self); /* NULL: none */
const Block *_hb_built_window_get_block (HbBuiltWindow *self);
/* Whatever is done to the cell is heard of from now on. */
void _hb_built_window_connect_cell (HbBuiltWindow *self, GtkWidget *entry);
/* What counts stands in the cell again, unless what was typed there is not understood. */
void _hb_built_window_fill_cell (HbBuiltWindow *self, GtkWidget *entry);

void _hb_built_window_refresh_soon (HbBuiltWindow *self);

/* built-grid.c */
void _hb_built_grid_init (HbBuiltWindow *self);
/* No rows; what is marked in them is kept for its wall. */
void _hb_built_grid_clear (HbBuiltWindow *self);
/* Rows as the wall has them, filled; what was typed and is not understood stays. `built` is NULL
 * while the wall was never laid. */
void _hb_built_grid_fill (HbBuiltWindow *self, const AsBuilt *built);
/* A cell that is heard of, not placed yet. */
GtkWidget *_hb_built_grid_cell_new (HbBuiltWindow *self, BuiltCell cell, int width);
/* What a cell of the window is; borrowed. */
const BuiltCell *_hb_built_grid_cell_of (GtkWidget *entry);
/* The nearest cell of that column below (`by` 1) or above (-1); NULL: there is none. */
GtkWidget *_hb_built_grid_beside (HbBuiltWindow *self, GtkWidget *entry, int by);
/* Whether something was typed that does not count, here or at another wall. */
gboolean _hb_built_grid_has_marked (HbBuiltWindow *self);

/* built-results.c: what follows */
void _hb_built_results_fill (HbBuiltWindow *self, const AsBuilt *built);

/* built-rest.c: what is still needed */
void _hb_built_rest_init (HbBuiltWindow *self);
void _hb_built_rest_clear (HbBuiltWindow *self);
/* Counts it anew where the project is another, as soon as all walls are laid. */
void _hb_built_rest_ask (HbBuiltWindow *self);
void _hb_built_rest_fill (HbBuiltWindow *self, GtkGrid *grid);
