/* built-grid.c - the figures of a wall as it was built, each in a cell beside what was planned */
#include "app/built-window-private.h"

#include <glib/gi18n.h>

#include "app/beside.h"
#include "app/tool.h"
#include "bond/gauge.h"

/* Courses of a higher wall go on in the file and in halfbond-cli built. */
#define MOST_COURSES 300
#define CELL_WIDTH 8

enum
{
  COLUMN_NAME,
  COLUMN_PLANNED,
  COLUMN_MEASURED,
  COLUMN_RIGHT, /* a course's right end */
  COLUMN_OFF,
  COLUMN_LIMIT,
  COLUMN_WORD,
  N_COLUMNS
};

/* One line: what it is, its cells, and what is told of them. */
typedef struct
{
  BuiltCell cell;        /* of the first */
  GtkWidget *entries[2]; /* borrowed; NULL: none */
  GtkLabel *planned, *next, *off, *limit, *word;
} Row;

/* What was typed and does not count. */
typedef struct
{
  WallId wall;
  BuiltCell cell;
  char *text; /* owned */
} Marked;

static void
marked_clear (gpointer data)
{
  g_free (((Marked *) data)->text);
}

void
_hb_built_grid_init (HbBuiltWindow *self)
{
  self->rows = g_array_new (FALSE, TRUE, sizeof (Row));
  self->marked = g_array_new (FALSE, FALSE, sizeof (Marked));
  g_array_set_clear_func (self->marked, marked_clear);
}

static Row *
row_at (HbBuiltWindow *self, guint i)
{
  return &g_array_index (self->rows, Row, i);
}

const BuiltCell *
_hb_built_grid_cell_of (GtkWidget *entry)
{
  return g_object_get_data (G_OBJECT (entry), "cell");
}

/* ---- what is marked ---- */

static gboolean
is_marked (GtkWidget *entry)
{
  return entry && gtk_widget_has_css_class (entry, "error");
}

static void
keep_marked (HbBuiltWindow *self, GtkWidget *entry)
{
  const Marked marked = { self->wall, *_hb_built_grid_cell_of (entry),
                          g_strdup (gtk_editable_get_text (GTK_EDITABLE (entry))) };

  g_array_append_val (self->marked, marked);
}

/* What was kept for this cell stands in it again. */
static void
take_marked (HbBuiltWindow *self, GtkWidget *entry)
{
  for (guint i = self->marked->len; i-- > 0;)
    {
      const Marked *marked = &g_array_index (self->marked, Marked, i);

      if (marked->wall.n != self->wall.n
          || !built_cell_equal (&marked->cell, _hb_built_grid_cell_of (entry)))
        continue;
      gtk_editable_set_text (GTK_EDITABLE (entry), marked->text);
      gtk_widget_add_css_class (entry, "error");
      g_array_remove_index (self->marked, i);
    }
}

gboolean
_hb_built_grid_has_marked (HbBuiltWindow *self)
{
  for (guint i = 0; i < self->rows->len; i++)
    if (is_marked (row_at (self, i)->entries[0]) || is_marked (row_at (self, i)->entries[1]))
      return TRUE;
  return self->marked->len > 0;
}

/* ---- rows ---- */

void
_hb_built_grid_clear (HbBuiltWindow *self)
{
  for (guint i = 0; i < self->rows->len; i++)
    for (guint k = 0; k < 2; k++)
      if (is_marked (row_at (self, i)->entries[k]))
        keep_marked (self, row_at (self, i)->entries[k]);
  self->typing = NULL;
  g_array_set_size (self->rows, 0);
  g_clear_pointer (&self->shape, g_free);
  hb_beside_empty (GTK_WIDGET (self->figures));
}

GtkWidget *
_hb_built_grid_cell_new (HbBuiltWindow *self, BuiltCell cell, int width)
{
  GtkWidget *entry = gtk_entry_new ();

  g_object_set_data_full (G_OBJECT (entry), "cell", g_memdup2 (&cell, sizeof cell), g_free);
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), width);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (entry), width);
  _hb_built_window_connect_cell (self, entry);
  return entry;
}

static GtkWidget *
number_new (HbBuiltWindow *self, const Wall *wall, BuiltCell cell)
{
  GtkWidget *entry = _hb_built_grid_cell_new (self, cell, CELL_WIDTH);
  g_autofree char *of = built_cell_name (wall, cell);
  g_autofree char *name = g_strdup_printf (_ ("%s, measured"), of);

  gtk_entry_set_alignment (GTK_ENTRY (entry), 1);
  hb_beside_name (entry, name);
  return entry;
}

static GtkLabel *
attach (HbBuiltWindow *self, int column, int row, const char *style, float xalign)
{
  return GTK_LABEL (hb_beside_attach_word (self->figures, column, row, "", style, xalign));
}

/* The grid's line of a row: over the first of each part stand a heading and its columns. */
static void
add_row (HbBuiltWindow *self, const Wall *wall, BuiltCell cell, gboolean typed, const char *name,
         int *line)
{
  Row row = { .cell = cell };

  hb_beside_attach_word (self->figures, COLUMN_NAME, *line, name, NULL, 0);
  row.planned = attach (self, COLUMN_PLANNED, *line, "number", 1);
  if (typed)
    {
      row.entries[0] = number_new (self, wall, cell);
      gtk_grid_attach (self->figures, row.entries[0], COLUMN_MEASURED, *line, 1, 1);
    }
  else
    row.next = attach (self, COLUMN_MEASURED, *line, "caption", 1);
  if (typed && cell.part == BUILT_OF_COURSE)
    {
      row.entries[1] = number_new (self, wall, (BuiltCell){ cell.part, cell.row, SIDE_RIGHT });
      gtk_grid_attach (self->figures, row.entries[1], COLUMN_RIGHT, *line, 1, 1);
    }
  row.off = attach (self, COLUMN_OFF, *line, "number-strong", 1);
  row.limit = attach (self, COLUMN_LIMIT, *line, "caption", 1);
  row.word = attach (self, COLUMN_WORD, *line, "number-bad", 0);
  g_array_append_val (self->rows, row);
  ++*line;
}

static void
add_heads (HbBuiltWindow *self, const char *part, const char *first, const char *second, int *line)
{
  GtkWidget *head = hb_beside_attach_word (self->figures, COLUMN_NAME, *line, part, "part", 0);

  gtk_widget_set_margin_top (head, *line ? 8 : 0);
  hb_beside_attach_word (self->figures, COLUMN_PLANNED, *line, _ ("Planned"), "field", 1);
  hb_beside_attach_word (self->figures, COLUMN_MEASURED, *line, first, "field", 1);
  if (second)
    hb_beside_attach_word (self->figures, COLUMN_RIGHT, *line, second, "field", 1);
  hb_beside_attach_word (self->figures, COLUMN_OFF, *line, _ ("Off"), "field", 1);
  hb_beside_attach_word (self->figures, COLUMN_LIMIT, *line, _ ("Limit"), "field", 1);
  ++*line;
}

static void
add_of_wall (HbBuiltWindow *self, const Wall *wall, int *line)
{
  add_heads (self, _ ("The wall, mm"), _ ("Measured"), NULL, line);
  for (guint i = FIGURE_LENGTH; i < N_BUILT_FIGURES; i++)
    {
      const BuiltCell cell = { BUILT_OF_WALL, 0, i };
      g_autofree char *name = built_cell_name (wall, cell);

      add_row (self, wall, cell, TRUE, name, line);
    }
}

static void
add_of_courses (HbBuiltWindow *self, const Wall *wall, gint32 n, int *line)
{
  add_heads (self, _ ("Tops of courses, mm"), _ ("Left end"), _ ("Right end"), line);
  for (gint32 i = 1; i <= MIN (n, MOST_COURSES); i++)
    {
      g_autofree char *name = g_strdup_printf (_ ("Course %d"), i);

      add_row (self, wall, (BuiltCell){ BUILT_OF_COURSE, (guint32) i, SIDE_LEFT },
               i <= wall_standing (wall), name, line);
    }
}

static void
add_of_openings (HbBuiltWindow *self, const Wall *wall, int *line)
{
  if (wall->openings->len == 0)
    return;
  add_heads (self, _ ("Openings, mm"), _ ("Measured"), NULL, line);
  for (guint i = 0; i < wall->openings->len; i++)
    for (guint figure = 0; figure < N_FIGURES; figure++)
      {
        const BuiltCell cell = { BUILT_OF_OPENING, wall_opening_at (wall, i)->id.n, figure };
        g_autofree char *name = built_cell_name (wall, cell);

        add_row (self, wall, cell, TRUE, name, line);
      }
}

/* What rows there are, as text: while it stays so, no cell is touched that a hand may be in. */
static char *
shape_of (HbBuiltWindow *self, const Wall *wall, gint32 n)
{
  GString *shape = g_string_new (NULL);

  g_string_printf (shape, "%u %d %d", self->wall.n, n, wall_standing (wall));
  for (guint i = 0; i < wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (wall, i);

      g_string_append_printf (shape, " %u %s", opening->id.n, tool_opening_name (opening));
    }
  return g_string_free (shape, FALSE);
}

static GtkWidget *
find_entry (HbBuiltWindow *self, const BuiltCell *cell)
{
  for (guint i = 0; i < self->rows->len; i++)
    for (guint k = 0; k < 2; k++)
      {
        GtkWidget *entry = row_at (self, i)->entries[k];

        if (entry && built_cell_equal (_hb_built_grid_cell_of (entry), cell))
          return entry;
      }
  return NULL;
}

static void
build (HbBuiltWindow *self, const Wall *wall, gint32 n)
{
  const gboolean focused
      = self->typing && gtk_widget_get_state_flags (self->typing) & GTK_STATE_FLAG_FOCUS_WITHIN;
  const BuiltCell cell = focused ? *_hb_built_grid_cell_of (self->typing) : (BuiltCell){ 0 };
  GtkWidget *entry;
  int line = 0;

  _hb_built_grid_clear (self);
  add_of_wall (self, wall, &line);
  add_of_courses (self, wall, n, &line);
  add_of_openings (self, wall, &line);
  entry = focused ? find_entry (self, &cell) : NULL;
  if (entry)
    gtk_widget_grab_focus (entry);
  else if (focused)
    gtk_widget_grab_focus (GTK_WIDGET (self->courses));
}

/* ---- what is told ---- */

static void
set_length (GtkLabel *label, gboolean is, Length length)
{
  char text[LENGTH_TEXT_SIZE];

  gtk_label_set_text (label, is ? length_text (length, text) : "");
}

static const Deviation *
find_deviation (const AsBuilt *built, const BuiltCell *cell)
{
  for (guint i = 0; built && i < built->deviations->len; i++)
    {
      const Deviation *deviation = as_built_deviation (built, i);
      BuiltCell of;

      if (built_cell_of_deviation (deviation, &of) && built_cell_equal (&of, cell))
        return deviation;
    }
  return NULL;
}

/* "+6", and of a course that was measured at both ends "+6 / +2". */
static char *
dup_offs (const Deviation *left, const Deviation *right)
{
  char a[LENGTH_TEXT_SIZE], b[LENGTH_TEXT_SIZE];

  if (!left)
    return g_strdup ("");
  length_off_text (left->off, a);
  return right ? g_strdup_printf ("%s / %s", a, length_off_text (right->off, b)) : g_strdup (a);
}

static void
show_off (const Row *row, const Deviation *left, const Deviation *right)
{
  const gboolean over = (left && !left->within) || (right && !right->within);
  GtkWidget *label = GTK_WIDGET (row->off);
  g_autofree char *off = dup_offs (left, right), *limit = NULL;
  char is[LENGTH_TEXT_SIZE];

  if (left)
    limit = g_strdup_printf ("±%s", length_text (left->limit.limit, is));
  gtk_label_set_text (row->off, off);
  gtk_label_set_text (row->limit, limit ? limit : "");
  gtk_label_set_text (row->word, over ? _ ("over") : "");
  gtk_widget_set_tooltip_text (GTK_WIDGET (row->limit), left ? _ (left->limit.source) : NULL);
  gtk_widget_remove_css_class (label, over ? "number-strong" : "number-bad");
  gtk_widget_add_css_class (label, over ? "number-bad" : "number-strong");
}

static void
show_deviations (const Row *row, const AsBuilt *built)
{
  const BuiltCell other = { row->cell.part, row->cell.row, SIDE_RIGHT };

  show_off (row, find_deviation (built, &row->cell),
            row->cell.part == BUILT_OF_COURSE ? find_deviation (built, &other) : NULL);
}

/* Where a course that does not stand yet is going to be. */
static void
show_next (HbBuiltWindow *self, const Row *row, const Wall *wall)
{
  const Block *block = _hb_built_window_get_block (self);
  const Laying laying = laying_resolve (&wall->laying, block);
  const Length top = gauge_top (wall, block, &laying, (gint32) row->cell.row);
  char is[LENGTH_TEXT_SIZE];
  g_autofree char *text
      = g_strdup_printf (_ ("to be %s"), length_text (MIN (top, wall->height), is));

  gtk_label_set_text (row->next, wall_standing (wall) > 0 ? text : "");
}

static void
fill_row (HbBuiltWindow *self, const Row *row, const Wall *wall, const AsBuilt *built)
{
  Length planned = 0;
  const gboolean is
      = built_cell_planned (wall, _hb_built_window_get_block (self), row->cell, &planned);

  set_length (row->planned, is,
              MIN (planned, row->cell.part == BUILT_OF_COURSE ? wall->height : planned));
  if (row->next)
    show_next (self, row, wall);
  for (guint k = 0; k < 2; k++)
    if (row->entries[k])
      {
        take_marked (self, row->entries[k]);
        _hb_built_window_fill_cell (self, row->entries[k]);
      }
  show_deviations (row, built);
}

void
_hb_built_grid_fill (HbBuiltWindow *self, const AsBuilt *built)
{
  const Wall *wall = _hb_built_window_get_wall (self);
  const gint32 n = hb_progress_n_courses (self->progress, self->wall);
  g_autofree char *shape = shape_of (self, wall, n);

  if (g_strcmp0 (shape, self->shape) != 0)
    {
      build (self, wall, n);
      self->shape = g_steal_pointer (&shape);
    }
  for (guint i = 0; i < self->rows->len; i++)
    fill_row (self, row_at (self, i), wall, built);
}

/* ---- from cell to cell ---- */

GtkWidget *
_hb_built_grid_beside (HbBuiltWindow *self, GtkWidget *entry, int by)
{
  for (guint i = 0; i < self->rows->len; i++)
    for (guint k = 0; k < 2; k++)
      {
        if (row_at (self, i)->entries[k] != entry)
          continue;
        for (gint to = (gint) i + by; to >= 0 && to < (gint) self->rows->len; to += by)
          {
            const Row *row = row_at (self, (guint) to);

            if (row->entries[k] || row->entries[0])
              return row->entries[k] ? row->entries[k] : row->entries[0];
          }
      }
  return NULL;
}
