/* rod-table.c - the storey rod as a table: every course, and the heights that should meet it */
#include "app/rod-window-private.h"

#include <glib/gi18n.h>

#include "app/beside.h"
#include "app/tool.h"
#include "bond/gauge.h"

/* Those of a higher wall are counted from the foundation; halfbond-cli rod prints them all. */
#define MOST_COURSES 300

enum
{
  COLUMN_COURSE,
  COLUMN_BOTTOM,
  COLUMN_TOP,
  COLUMN_MARK,
  COLUMN_HEIGHT,
  COLUMN_STRIP,
  COLUMN_MOVE,
};

/* "W1 sill" */
static char *
dup_mark_name (const Wall *wall, const RodMark *mark)
{
  const Opening *opening = wall_opening (wall, mark->opening);

  if (!opening)
    return g_strdup (_ ("wall’s top"));
  return g_strdup_printf ("%s %s", tool_opening_name (opening), _hb_rod_kind_text (mark->kind));
}

/* ---- moving one height ---- */

static void
move_cb (HbRodWindow *self, GtkWidget *button)
{
  const RodMark *mark = g_object_get_data (G_OBJECT (button), "mark");
  const Wall *wall = _hb_rod_window_get_wall (self);
  g_autoptr (Wall) next = NULL;
  g_autofree char *name = NULL, *label = NULL;

  if (!wall)
    return;
  next = rod_mark_to_gauge (wall, project_block (_hb_rod_window_project (self), wall->block), mark);
  if (!next)
    return;
  name = dup_mark_name (wall, mark);
  label = g_strdup_printf (_ ("Move %s to gauge"), name);
  _hb_rod_window_apply (self, edit_set_wall (next), label);
}

/* Where it would go: "to 1028". */
static void
attach_move (HbRodWindow *self, int row, const Wall *wall, const Block *block, const RodMark *mark,
             const char *name)
{
  g_autoptr (Wall) next = rod_mark_to_gauge (wall, block, mark);
  char to[LENGTH_TEXT_SIZE];
  g_autofree char *text = NULL, *whole = NULL;
  GtkWidget *button;

  if (!next)
    return;
  length_text (rod_gauge_of (wall, block, mark), to);
  text = g_strdup_printf (_ ("to %s"), to);
  whole = g_strdup_printf (_ ("Move %s to %s mm"), name, to);
  button = gtk_button_new_with_label (text);
  gtk_widget_add_css_class (button, "mend");
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  gtk_widget_set_tooltip_text (button, whole);
  hb_beside_name (button, whole);
  g_object_set_data_full (G_OBJECT (button), "mark", g_memdup2 (mark, sizeof *mark), g_free);
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (move_cb), self);
  gtk_grid_attach (self->table, button, COLUMN_MOVE, row, 1, 1);
  g_ptr_array_add (self->moves, button);
}

/* ---- rows ---- */

static void
attach_length (HbRodWindow *self, int column, int row, Length length, const char *style)
{
  char text[LENGTH_TEXT_SIZE];

  hb_beside_attach_word (self->table, column, row, length_text (length, text), style, 1);
}

static void
attach_mark (HbRodWindow *self, int row, const Wall *wall, const Block *block, const RodMark *mark)
{
  g_autofree char *name = dup_mark_name (wall, mark), *strip = NULL;
  char is[LENGTH_TEXT_SIZE];

  if (mark->rip > 0)
    strip = g_strdup_printf (_ ("strip of %s"), length_text (mark->rip, is));
  else if (mark->pack > 0)
    strip = g_strdup_printf (_ ("%s of mortar"), length_text (mark->pack, is));
  hb_beside_attach_word (self->table, COLUMN_MARK, row, name, NULL, 0);
  attach_length (self, COLUMN_HEIGHT, row, mark->z, "number");
  hb_beside_attach_word (self->table, COLUMN_STRIP, row, strip ? strip : _ ("meets the course"),
                         mark->rip > 0    ? "number-bad"
                         : mark->pack > 0 ? NULL
                                          : "caption",
                         0);
  attach_move (self, row, wall, block, mark, name);
}

/* Marks of that course, the highest first; as many rows as they are, or one. */
static int
attach_course (HbRodWindow *self, int row, const Wall *wall, const Block *block,
               const Laying *laying, const GArray *marks, gint32 course)
{
  const int first = row;
  g_autofree char *number = course ? g_strdup_printf ("%d", course) : NULL;

  hb_beside_attach_word (self->table, COLUMN_COURSE, row, number ? number : _ ("bed"), "number", 1);
  if (course)
    attach_length (self, COLUMN_BOTTOM, row, gauge_bottom (wall, block, laying, course), "number");
  attach_length (self, COLUMN_TOP, row,
                 course ? MIN (gauge_top (wall, block, laying, course), wall->height)
                        : gauge_bottom (wall, block, laying, 1),
                 "number-strong");
  for (guint i = marks->len; i-- > 0;)
    if (g_array_index (marks, RodMark, i).course == course)
      attach_mark (self, row++, wall, block, &g_array_index (marks, RodMark, i));
  return MAX (row, first + 1);
}

static void
attach_heads (HbRodWindow *self)
{
  static const struct
  {
    int column;
    const char *text;
    float xalign;
  } heads[] = {
    { COLUMN_COURSE, N_ ("Course"), 1 }, { COLUMN_BOTTOM, N_ ("Bottom"), 1 },
    { COLUMN_TOP, N_ ("Top"), 1 },       { COLUMN_MARK, N_ ("Mark"), 0 },
    { COLUMN_HEIGHT, N_ ("Height"), 1 }, { COLUMN_STRIP, N_ ("Takes"), 0 },
    { COLUMN_MOVE, N_ ("To gauge"), 0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (heads); i++)
    hb_beside_attach_word (self->table, heads[i].column, 0, _ (heads[i].text), "field",
                           heads[i].xalign);
}

void
_hb_rod_table_fill (HbRodWindow *self)
{
  const Wall *wall = _hb_rod_window_get_wall (self);
  const Block *block = project_block (_hb_rod_window_project (self), wall->block);
  const Laying laying = laying_resolve (&wall->laying, block);
  const gint32 n = gauge_n_courses (wall, block, &laying);
  g_autoptr (GArray) marks = rod_marks (wall, block, &laying);
  const int focused = _hb_rod_focused (self->moves);
  int row = 1;

  g_ptr_array_set_size (self->moves, 0);
  hb_beside_empty (GTK_WIDGET (self->table));
  attach_heads (self);
  for (gint32 course = MIN (n, MOST_COURSES); course >= 0; course--)
    row = attach_course (self, row, wall, block, &laying, marks, course);
  gtk_widget_set_sensitive (GTK_WIDGET (self->gauge_all), self->moves->len > 0);
  if (focused >= 0 && !_hb_rod_focus_again (self->moves, focused))
    gtk_widget_grab_focus (GTK_WIDGET (self->first_from));
}
