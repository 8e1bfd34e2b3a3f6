/* built-rest.c - what the rest of a wall still needs, counted in the background beside the whole */
#include "app/built-window-private.h"

#include <glib/gi18n.h>

#include "app/beside.h"

typedef struct
{
  Project *project;
  GPtrArray *layouts; /* Layout *, of each wall */
} Count;

static void
count_free (gpointer data)
{
  Count *count = data;

  project_unref (count->project);
  g_ptr_array_unref (count->layouts);
  g_free (count);
}

static gpointer
count_rest (gpointer input, const gint *stop)
{
  Count *count = input;

  return takeoff_rest_new (count->project, (Layout *const *) count->layouts->pdata, stop);
}

static void
rest_free (gpointer rest)
{
  takeoff_free (rest);
}

static void
rest_landed (gpointer result, gpointer data)
{
  HbBuiltWindow *self = data;

  g_clear_pointer (&self->rest, takeoff_free);
  self->rest = result;
  _hb_built_window_refresh_soon (self);
}

void
_hb_built_rest_init (HbBuiltWindow *self)
{
  self->counting = hb_job_new ("rest", count_rest, count_free, rest_landed, rest_free, self);
}

void
_hb_built_rest_clear (HbBuiltWindow *self)
{
  g_clear_pointer (&self->counting, hb_job_free);
  g_clear_pointer (&self->rest, takeoff_free);
  g_clear_pointer (&self->rest_of, project_unref);
}

/* NULL while a wall is being laid. */
static GPtrArray *
layouts_of (HbBuiltWindow *self, const Project *project)
{
  g_autoptr (GPtrArray) layouts = g_ptr_array_new_with_free_func ((GDestroyNotify) layout_unref);

  for (guint i = 0; i < project->walls->len; i++)
    {
      const Layout *layout
          = hb_answers_get_layout (self->answers, project_wall_at (project, i)->id);

      if (!layout)
        return NULL;
      g_ptr_array_add (layouts, layout_ref (layout));
    }
  return g_steal_pointer (&layouts);
}

void
_hb_built_rest_ask (HbBuiltWindow *self)
{
  const Project *project = _hb_built_window_project (self);
  GPtrArray *layouts;
  Count *count;

  if (self->rest_of == project)
    return;
  layouts = layouts_of (self, project);
  if (!layouts)
    return;
  g_clear_pointer (&self->rest_of, project_unref);
  self->rest_of = project_ref (project);
  count = g_new (Count, 1);
  *count = (Count){ project_ref (project), layouts };
  hb_job_start (self->counting, count);
}

/* ---- shown ---- */

/* Of the blocks only what is ordered and laid; of the rest all that comes on a lorry. */
static gboolean
is_needed (const TakeoffLine *line)
{
  static const char *const blocks[]
      = { "blocks.to-order", "blocks.whole", "blocks.cut-pieces", NULL };

  return g_strv_contains (blocks, line->key) || g_str_equal (line->group, "Joints")
         || g_str_equal (line->group, "Steel") || g_str_equal (line->group, "Ties");
}

/* The place of the wall among those counted; -1: it is not among them. */
static int
counted_index (HbBuiltWindow *self)
{
  const GArray *walls = hb_answers_get_counted_walls (self->answers);

  for (guint i = 0; i < walls->len; i++)
    if (g_array_index (walls, WallId, i).n == self->wall.n)
      return (int) i;
  return -1;
}

static void
attach_quantity (GtkGrid *grid, int column, int row, const TakeoffLine *line, double quantity,
                 const char *style)
{
  g_autofree char *text = g_strdup_printf ("%.*f", line->decimals, quantity);

  hb_beside_attach_word (grid, column, row, text, style, 1);
}

static void
attach_line (GtkGrid *grid, int row, const TakeoffLine *whole, const TakeoffLine *rest, int wall)
{
  GtkWidget *name = hb_beside_attach_word (grid, 0, row, _ (whole->name), NULL, 0);

  gtk_widget_set_hexpand (name, TRUE);
  attach_quantity (grid, 1, row, rest, rest->walls[wall], "number-strong");
  attach_quantity (grid, 2, row, whole, whole->walls[wall], "number");
  hb_beside_attach_word (grid, 3, row, _ (whole->unit), "line-unit", 0);
}

static void
attach_heads (GtkGrid *grid)
{
  hb_beside_attach_word (grid, 1, 0, _ ("Still"), "field", 1);
  hb_beside_attach_word (grid, 2, 0, _ ("Whole wall"), "field", 1);
}

void
_hb_built_rest_fill (HbBuiltWindow *self, GtkGrid *grid)
{
  const Takeoff *whole = hb_answers_get_takeoff (self->answers);
  const int wall
      = whole && self->rest && whole->n_walls == self->rest->n_walls ? counted_index (self) : -1;
  int row = 1;

  attach_heads (grid);
  for (guint i = 0; wall >= 0 && i < whole->lines->len; i++)
    {
      const TakeoffLine *line = g_ptr_array_index (whole->lines, i);
      const TakeoffLine *rest = takeoff_line (self->rest, line->key);

      if (rest && is_needed (line) && line->walls[wall] > 0)
        attach_line (grid, row++, line, rest, wall);
    }
  if (row == 1)
    hb_beside_attach_word (grid, 0, row, _ ("being counted…"), "caption", 0);
}
