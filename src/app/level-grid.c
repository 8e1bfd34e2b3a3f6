/* level-grid.c - the cells of the level book, and what stands behind them */
#include "app/level-window-private.h"

#include <glib/gi18n.h>

const LevelCell *
_hb_level_grid_cell_of (GtkWidget *entry)
{
  return g_object_get_data (G_OBJECT (entry), "cell");
}

static GPtrArray *
row_at (const GPtrArray *rows, guint row)
{
  return g_ptr_array_index (rows, row);
}

GtkWidget *
_hb_level_grid_cell (HbLevelWindow *self, gint row, guint column)
{
  if (row < 0 || row >= (gint) self->rows->len)
    return NULL;
  return g_ptr_array_index (row_at (self->rows, (guint) row), 1 + column);
}

gboolean
_hb_level_grid_each (HbLevelWindow *self, gboolean (*each) (HbLevelWindow *self, GtkWidget *entry))
{
  for (guint i = 0; i < self->rows->len; i++)
    for (guint c = 0; c < N_LEVEL_COLUMNS; c++)
      if (!each (self, _hb_level_grid_cell (self, (gint) i, c)))
        return FALSE;
  for (guint i = 0; i < self->corners->len; i++)
    if (!each (self, g_ptr_array_index (row_at (self->corners, i), 0)))
      return FALSE;
  for (GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (self->limits)); child;
       child = gtk_widget_get_next_sibling (child))
    if (GTK_IS_ENTRY (child) && !each (self, child))
      return FALSE;
  return TRUE;
}

/* ---- what is found ---- */

static void
set_found (GPtrArray *row, Found which, gboolean is, Length length)
{
  char text[LENGTH_TEXT_SIZE];

  gtk_label_set_text (g_ptr_array_index (row, FIRST_FOUND + which),
                      is ? length_text (length, text) : "");
}

void
_hb_level_grid_show_row (HbLevelWindow *self, guint number, const LevelRow *is)
{
  GPtrArray *row = row_at (self->rows, number);

  set_found (row, FOUND_RISE, is && is->has_rise, is ? is->rise : 0);
  set_found (row, FOUND_SIGHT, is && is->begins && is->has_level, is ? is->collimation : 0);
  set_found (row, FOUND_LEVEL, is && is->has_level, is ? is->level : 0);
  set_found (row, FOUND_CORRECTION, is && is->has_level && is->correction != 0,
             is ? is->correction : 0);
}

void
_hb_level_grid_show_corner (HbLevelWindow *self, guint corner, const char *text)
{
  gtk_label_set_text (g_ptr_array_index (row_at (self->corners, corner), 1), text);
}

/* ---- the cells ---- */

static GtkWidget *
cell_new (HbLevelWindow *self, LevelCell cell, int width)
{
  GtkWidget *entry = gtk_entry_new ();
  g_autofree char *fallback = level_cell_default (cell);
  g_autofree char *name
      = cell.part == LEVEL_OF_LIMIT
            ? g_strdup (level_cell_name (cell))
            : g_strdup_printf (_ ("%s, row %u"), level_cell_name (cell), cell.row + 1);

  g_object_set_data_full (G_OBJECT (entry), "cell", g_memdup2 (&cell, sizeof cell), g_free);
  /* What an entry would undo is what the project has undone already. */
  gtk_editable_set_enable_undo (GTK_EDITABLE (entry), FALSE);
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), width);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), width);
  if (cell.part != LEVEL_OF_READING)
    gtk_entry_set_placeholder_text (GTK_ENTRY (entry), fallback);
  if (cell.part == LEVEL_OF_LIMIT || (cell.part == LEVEL_OF_READING && cell.column >= LEVEL_BACK))
    gtk_entry_set_alignment (GTK_ENTRY (entry), 1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  _hb_level_window_connect_cell (self, entry);
  return entry;
}

static GtkWidget *
word_new (const char *text, const char *style, float xalign)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), xalign);
  gtk_widget_add_css_class (label, style);
  return label;
}

static void
add_row (HbLevelWindow *self)
{
  static const int widths[N_LEVEL_COLUMNS] = { 8, 14, 6, 6, 6, 7 };
  GPtrArray *row = g_ptr_array_new ();
  guint number = self->rows->len;
  g_autofree char *text = g_strdup_printf ("%u", number + 1);

  g_ptr_array_add (row, word_new (text, "field", 1));
  for (guint c = 0; c < N_LEVEL_COLUMNS; c++)
    g_ptr_array_add (row, cell_new (self, (LevelCell){ LEVEL_OF_READING, number, c }, widths[c]));
  for (int i = 0; i < N_FOUND; i++)
    g_ptr_array_add (row, word_new ("", i == FOUND_LEVEL ? "number-strong" : "number", 1));
  gtk_widget_set_hexpand (g_ptr_array_index (row, 1 + LEVEL_WHERE), TRUE);
  for (guint i = 0; i < row->len; i++)
    gtk_grid_attach (self->book, g_ptr_array_index (row, i), (int) i, (int) number + 1, 1, 1);
  g_ptr_array_add (self->rows, row);
}

static void
add_corner (HbLevelWindow *self)
{
  GPtrArray *corner = g_ptr_array_new ();
  guint number = self->corners->len;
  GtkWidget *sentence = word_new ("", "caption", 0);

  gtk_label_set_wrap (GTK_LABEL (sentence), TRUE);
  gtk_widget_set_hexpand (sentence, TRUE);
  g_ptr_array_add (corner, cell_new (self, (LevelCell){ LEVEL_OF_DIAGONAL, number, 0 }, 20));
  g_ptr_array_add (corner, sentence);
  gtk_grid_attach (self->diagonals, corner->pdata[0], 0, (int) number, 1, 1);
  gtk_grid_attach (self->diagonals, sentence, 1, (int) number, 1, 1);
  gtk_widget_set_valign (corner->pdata[0], GTK_ALIGN_START);
  g_ptr_array_add (self->corners, corner);
}

/* Rows go from the end. */
static void
drop_rows (HbLevelWindow *self, GPtrArray *rows, GtkGrid *grid, guint keep)
{
  while (rows->len > keep)
    {
      GPtrArray *row = g_ptr_array_index (rows, rows->len - 1);

      for (guint i = 0; i < row->len; i++)
        {
          if (g_ptr_array_index (row, i) == (gpointer) self->typing)
            self->typing = NULL;
          gtk_grid_remove (grid, g_ptr_array_index (row, i));
        }
      g_ptr_array_remove_index (rows, rows->len - 1);
    }
}

void
_hb_level_grid_fit (HbLevelWindow *self, guint readings, guint diagonals)
{
  drop_rows (self, self->rows, self->book, MIN (readings + 1, MOST_ROWS));
  drop_rows (self, self->corners, self->diagonals, MIN (diagonals + 1, MOST_ROWS));
  while (self->rows->len < MIN (readings + 1, MOST_ROWS))
    add_row (self);
  while (self->corners->len < MIN (diagonals + 1, MOST_ROWS))
    add_corner (self);
}

static void
add_heads (HbLevelWindow *self)
{
  static const char *const found[N_FOUND]
      = { N_ ("Rise"), N_ ("Line of sight"), N_ ("Level"), N_ ("Corrected by") };
  static const char *const shorts[N_LEVEL_COLUMNS]
      = { N_ ("Point"), N_ ("Where"), N_ ("Back"), N_ ("Inter"), N_ ("Fore"), N_ ("Known") };

  for (guint c = 0; c < N_LEVEL_COLUMNS; c++)
    gtk_grid_attach (self->book, word_new (_ (shorts[c]), "field", c < LEVEL_BACK ? 0 : 1),
                     1 + (int) c, 0, 1, 1);
  for (int i = 0; i < N_FOUND; i++)
    gtk_grid_attach (self->book, word_new (_ (found[i]), "field", 1), FIRST_FOUND + i, 0, 1, 1);
}

static void
add_limits (HbLevelWindow *self)
{
  for (guint c = 0; c < N_LEVEL_LIMITS; c++)
    {
      LevelCell cell = { LEVEL_OF_LIMIT, 0, c };
      int row = c < 4 ? 0 : 1, column = 2 * (int) (c < 4 ? c : c - 4);

      gtk_grid_attach (self->limits, word_new (level_cell_name (cell), "field", 1), column, row, 1,
                       1);
      gtk_grid_attach (self->limits, cell_new (self, cell, 7), column + 1, row, 1, 1);
    }
}

void
_hb_level_grid_build (HbLevelWindow *self)
{
  add_heads (self);
  add_limits (self);
}
