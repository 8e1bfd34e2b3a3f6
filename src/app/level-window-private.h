/* level-window-private.h - what the files of the level window share */
#pragma once

#include "app/level-cells.h"
#include "app/level-window.h"
#include "site/level.h"

/* A longer book is typed elsewhere: rows beyond these are kept, and not shown. */
#define MOST_ROWS 300

/* What stands behind the cells of a row. */
typedef enum
{
  FOUND_RISE,
  FOUND_SIGHT,
  FOUND_LEVEL,
  FOUND_CORRECTION,
  N_FOUND
} Found;

#define FIRST_FOUND (1 + N_LEVEL_COLUMNS)

struct _HbLevelWindow
{
  GtkWindow parent;

  /* Template widgets */
  GtkEntry *quick;
  GtkGrid *book, *limits, *diagonals;
  GtkLabel *walls, *notice;
  GtkBox *results;

  HbDocument *document; /* owned */
  GPtrArray *rows;      /* GPtrArray of GtkWidget *, borrowed: number, cells, found */
  GPtrArray *corners;   /* likewise: cell, sentence */
  GtkWidget *typing;    /* the cell that has the focus, or had it last; NULL: none */
  guint refresh;        /* source that reckons anew */
  gboolean filling;
  gboolean warned; /* that something typed would be lost by closing */
};

/* level-window.c */
/* Whatever is done to the cell is heard of from now on. */
void _hb_level_window_connect_cell (HbLevelWindow *self, GtkWidget *entry);

/* level-grid.c */
void _hb_level_grid_build (HbLevelWindow *self);
/* As many rows and corners as there are, and an empty one of each at the end; not filled. */
void _hb_level_grid_fit (HbLevelWindow *self, guint readings, guint diagonals);
/* The entry of the book's row; NULL: there is no such row. */
GtkWidget *_hb_level_grid_cell (HbLevelWindow *self, gint row, guint column);
/* What a cell of the window is; borrowed. */
const LevelCell *_hb_level_grid_cell_of (GtkWidget *entry);
/* Calls `each` with every cell, until it returns FALSE; says whether it did not. */
gboolean _hb_level_grid_each (HbLevelWindow *self,
                              gboolean (*each) (HbLevelWindow *self, GtkWidget *entry));
/* What the reduction makes of a row; NULL: nothing. */
void _hb_level_grid_show_row (HbLevelWindow *self, guint row, const LevelRow *is);
/* The sentence beside a diagonal. */
void _hb_level_grid_show_corner (HbLevelWindow *self, guint corner, const char *text);
