#include "app/work-tables.h"

#include <glib/gi18n.h>

#include "app/beside.h"
#include "app/tool.h"

/* More rows of a table would not be read here; halfbond-cli work prints them all. */
#define MOST_ROWS 100
/* Walls named in a row. */
#define MOST_NAMES 12

static const char *
wall_name (const Project *project, guint i)
{
  return tool_wall_name (project_wall_at (project, i));
}

/* A table with its heads; those from `numbers` on are of numbers. */
static GtkGrid *
add_table (GtkBox *box, const char *title, const char *const *heads, guint n, guint numbers)
{
  GtkGrid *grid = GTK_GRID (gtk_grid_new ());

  hb_beside_add_label (box, title, "group");
  gtk_grid_set_column_spacing (grid, 14);
  gtk_grid_set_row_spacing (grid, 2);
  gtk_widget_add_css_class (GTK_WIDGET (grid), "figures");
  hb_beside_name (GTK_WIDGET (grid), title);
  for (guint i = 0; i < n; i++)
    hb_beside_attach_word (grid, (int) i, 0, _ (heads[i]), "field", i >= numbers ? 1 : 0);
  gtk_box_append (box, GTK_WIDGET (grid));
  return grid;
}

static void
attach_number (GtkGrid *grid, int column, int row, int decimals, double number, const char *style)
{
  g_autofree char *text = g_strdup_printf ("%.*f", decimals, number);

  hb_beside_attach_word (grid, column, row, text, style, 1);
}

/* Names and lists give way where they are long; as wide as in the table above, where they are
 * short.
 */
static void
attach_words (GtkGrid *grid, int column, int row, const char *text, const char *style)
{
  GtkWidget *label = hb_beside_attach_word (grid, column, row, text, style, 0);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_width_chars (GTK_LABEL (label), column == 0 ? 22 : -1);
  gtk_label_set_max_width_chars (GTK_LABEL (label), column == 0 ? 30 : 44);
}

static void
add_more (GtkBox *box, guint n)
{
  if (n > MOST_ROWS)
    hb_beside_add_label (box, _ ("There are more rows; halfbond-cli work prints them all."),
                         "caption");
}

/* ---- all of it ---- */

static void
add_sum (GtkBox *box, const Work *work)
{
  GtkWidget *card = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);
  g_autofree char *title = g_strdup_printf (_ ("%.1f h of work"), work->hours);
  g_autofree char *days
      = g_strdup_printf (g_dngettext (NULL, "%u day, with %d at work for %.4g h a day",
                                      "%u days, with %d at work for %.4g h a day", work->days->len),
                         work->days->len, work->rates.gang, work->rates.hours_a_day);

  gtk_widget_add_css_class (card, "card");
  hb_beside_add_label (GTK_BOX (card), title, "cuts");
  hb_beside_add_label (GTK_BOX (card), days, "proof");
  gtk_box_append (box, card);
}

/* ---- days ---- */

/* "Street side: 1–4, Back: 1–3" of the day's walls; of those to be braced their names alone. */
static char *
dup_stints (const Project *project, const Work *work, const WorkDay *day, gboolean braced)
{
  g_autoptr (GString) text = g_string_new (NULL);
  guint n = 0;

  for (guint i = day->first; i < day->first + day->n; i++)
    {
      const WorkStint *stint = &g_array_index (work->stints, WorkStint, i);

      if ((braced && !stint->braced) || ++n > MOST_NAMES)
        continue;
      g_string_append_printf (text, "%s%s", text->len > 0 ? ", " : "",
                              wall_name (project, stint->wall));
      if (!braced)
        g_string_append_printf (text, ": %d", stint->from);
      if (!braced && stint->to > stint->from)
        g_string_append_printf (text, "–%d", stint->to);
    }
  if (n > MOST_NAMES)
    g_string_append_printf (text, _ (", and %u more"), n - MOST_NAMES);
  return g_strdup (text->str);
}

static void
add_days (GtkBox *box, const Project *project, const Work *work)
{
  static const char *const heads[] = { N_ ("Day"),         N_ ("Courses"), N_ ("Hours"),
                                       N_ ("Pieces each"), N_ ("kg each"), N_ ("To be braced") };
  GtkGrid *grid = add_table (box, _ ("Days"), heads, G_N_ELEMENTS (heads), 2);
  const double gang = work->rates.gang;

  gtk_label_set_xalign (GTK_LABEL (gtk_grid_get_child_at (grid, 5, 0)), 0);
  for (guint d = 0; d < MIN (work->days->len, MOST_ROWS); d++)
    {
      const WorkDay *day = &g_array_index (work->days, WorkDay, d);
      g_autofree char *courses = dup_stints (project, work, day, FALSE);
      g_autofree char *braced = dup_stints (project, work, day, TRUE);
      const int row = (int) d + 1;

      attach_number (grid, 0, row, 0, d + 1, "number");
      attach_words (grid, 1, row, courses, NULL);
      attach_number (grid, 2, row, 1, day->hours, "number-strong");
      attach_number (grid, 3, row, 0, day->lifts / gang, "number");
      attach_number (grid, 4, row, 0, day->mass / gang, "number");
      attach_words (grid, 5, row, braced, "caution");
    }
  add_more (box, work->days->len);
}

/* ---- hours ---- */

static void
attach_hours (GtkGrid *grid, int row, const char *name, const WorkCourse *sum)
{
  attach_words (grid, 0, row, name, NULL);
  attach_number (grid, 1, row, 0, sum->pieces, "number");
  attach_number (grid, 2, row, 0, sum->cuts, "number");
  attach_number (grid, 3, row, 2, sum->area, "number");
  attach_number (grid, 4, row, 1, sum->laying, "number");
  attach_number (grid, 5, row, 1, sum->sawing, "number");
  attach_number (grid, 6, row, 1, sum->levelling, "number");
  attach_number (grid, 7, row, 1, work_course_hours (sum), "number-strong");
}

static void
add_hours (GtkBox *box, const Project *project, const Work *work)
{
  static const char *const heads[]
      = { N_ ("Wall"),   N_ ("Pieces"), N_ ("Saw cuts"),      N_ ("m²"),
          N_ ("Laying"), N_ ("Sawing"), N_ ("Levelling bed"), N_ ("Together") };
  GtkGrid *grid = add_table (box, _ ("Hours of one person"), heads, G_N_ELEMENTS (heads), 1);

  for (guint i = 0; i < MIN (work->walls->len, MOST_ROWS); i++)
    attach_hours (grid, (int) i + 1, wall_name (project, i), &work_wall (work, i)->sum);
  add_more (box, work->walls->len);
}

/* ---- handling ---- */

static void
add_handling (GtkBox *box, const Project *project, Layout *const *layouts, const Work *work)
{
  static const char *const heads[]
      = { N_ ("Wall"), N_ ("Course, piece"), N_ ("kg"), N_ ("Guidance") };
  GtkGrid *grid = add_table (box, _ ("Heaviest piece of each wall, dry mass and 15 % of moisture"),
                             heads, G_N_ELEMENTS (heads), 1);

  gtk_label_set_xalign (GTK_LABEL (gtk_grid_get_child_at (grid, 3, 0)), 0);
  for (guint i = 0; i < MIN (work->walls->len, MOST_ROWS); i++)
    {
      const WorkWall *wall = work_wall (work, i);
      const int row = (int) i + 1;
      g_autofree char *id = NULL;
      const Piece *piece;

      if (wall->heaviest < 0)
        continue;
      piece = layout_piece (layouts[i], (guint) wall->heaviest);
      id = g_strdup_printf ("%d, %d", piece->course, piece->number);
      attach_words (grid, 0, row, wall_name (project, i), NULL);
      hb_beside_attach_word (grid, 1, row, id, "number", 1);
      attach_number (grid, 2, row, 1, wall->mass, "number-strong");
      attach_words (grid, 3, row, work_handling_text (wall->mass),
                    wall->mass > HANDLING_ALONE ? "caution" : NULL);
    }
  add_more (box, work->walls->len);
}

/* ---- pallets ---- */

static void
add_order (GtkBox *box, const Block *block, const WorkBlocks *blocks)
{
  g_autofree char *text = g_strdup_printf (
      _ ("%s: %d blocks to order, %d on a pallet, pallets: %d"),
      *block->name ? block->name : block->key, blocks->blocks, blocks->a_pallet, blocks->pallets);

  if (blocks->pallets > 0)
    hb_beside_add_label (box, text, "sentence");
}

static void
add_pallets (GtkBox *box, const Project *project, const Work *work)
{
  static const char *const heads[]
      = { N_ ("At the foot of"), N_ ("Middle, m from its left end"), N_ ("Blocks"), NULL };
  GtkGrid *grid;

  if (work->pallets->len == 0)
    return;
  grid = add_table (box, _ ("Pallets, where they are set down"), heads, 3, 1);
  for (guint i = 0; i < MIN (work->pallets->len, MOST_ROWS); i++)
    {
      const WorkPallet *pallet = &g_array_index (work->pallets, WorkPallet, i);
      const int row = (int) i + 1;

      attach_words (grid, 0, row, wall_name (project, pallet->wall), NULL);
      attach_number (grid, 1, row, 1, length_to_mm (pallet->x) / 1000, "number");
      attach_number (grid, 2, row, 0, pallet->blocks, "number");
      if (pallet->in_the_way)
        attach_words (grid, 3, row, _ ("no place is free there: farther out"), "caution");
    }
  add_more (box, work->pallets->len);
  for (guint i = 0; i < project->blocks->len; i++)
    add_order (box, project_block_at (project, i), &work->blocks[i]);
}

/* ---- cautions ---- */

static void
add_cautions (GtkBox *box, const Work *work)
{
  char rise[LENGTH_TEXT_SIZE];
  g_autofree char *fresh = g_strdup_printf (
      _ ("No wall rises more than %s mm in a day, so that fresh joints can carry what is laid on "
         "them; in cold or wet weather less."),
      length_text (work->rates.rise, rise));

  hb_beside_add_label (box, _ ("Cautions"), "group");
  hb_beside_add_label (box, fresh, "sentence");
  hb_beside_add_label (
      box,
      _ ("A wall higher than 1.5 m that no floor or roof holds yet is to be braced against wind "
         "before it is left (common practice); ask a licensed engineer how."),
      "sentence");
  hb_beside_add_label (
      box,
      _ ("Pallets stand clear of doors and of each other; whether ground and floor carry 1000 kg "
         "is for whoever knows them."),
      "sentence");
}

void
hb_work_tables_fill (GtkBox *box, const Project *project, Layout *const *layouts, const Work *work)
{
  hb_beside_empty (GTK_WIDGET (box));
  add_sum (box, work);
  add_days (box, project, work);
  add_hours (box, project, work);
  add_handling (box, project, layouts, work);
  add_pallets (box, project, work);
  add_cautions (box, work);
}
