#include "app/level-results.h"

#include <glib/gi18n.h>

#include "app/tool.h"

/* More of them would not be read here. */
#define MOST_PLACES 400

static GtkWidget *
add_label (GtkBox *box, const char *text, const char *style)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 36);
  if (style)
    gtk_widget_add_css_class (label, style);
  gtk_box_append (box, label);
  return label;
}

static void
add_heading (GtkBox *box, const char *text)
{
  add_label (box, text, "group");
}

/* A sentence with its sign: good, or to be looked at. */
static void
add_sentence (GtkBox *box, const char *text, gboolean good)
{
  GtkWidget *label = add_label (box, text, "sentence");

  gtk_widget_add_css_class (label, good ? "good" : "warning");
}

/* ---- the first course ---- */

static GtkBox *
add_card (GtkBox *box)
{
  GtkWidget *card = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2);

  gtk_widget_add_css_class (card, "card");
  gtk_box_append (box, card);
  return GTK_BOX (card);
}

/* What the staff shows there, from where the instrument stood last. */
static void
add_staff (GtkBox *card, const LevelBook *book, Length level)
{
  char is[LENGTH_TEXT_SIZE];

  for (guint i = book->rows->len; i-- > 0;)
    {
      const LevelRow *row = level_row (book, i);
      g_autofree char *text = NULL;

      if (!row->begins || !row->has_level)
        continue;
      text = g_strdup_printf (_ ("On the staff, from where the instrument stood last: %s mm"),
                              length_text (row->collimation + row->correction - level, is));
      add_label (card, text, "caption");
      return;
    }
}

static char *
range_text (const Beds *beds)
{
  char from[LENGTH_TEXT_SIZE], to[LENGTH_TEXT_SIZE], least[LENGTH_TEXT_SIZE],
      most[LENGTH_TEXT_SIZE];

  length_text (beds->least, least);
  length_text (beds->most, most);
  if (!beds->possible)
    return g_strdup_printf (_ ("No level keeps the bed from %s to %s mm everywhere."), least, most);
  return g_strdup_printf (beds->within
                              ? _ ("From %s to %s mm the bed keeps to %s–%s mm.")
                              : _ ("Outside: only from %s to %s mm the bed keeps to %s–%s mm."),
                          length_text (beds->from, from), length_text (beds->to, to), least, most);
}

static void
add_spots (GtkBox *card, const Beds *beds)
{
  char high[LENGTH_TEXT_SIZE], low[LENGTH_TEXT_SIZE], high_x[LENGTH_TEXT_SIZE],
      low_x[LENGTH_TEXT_SIZE];
  g_autofree char *text = g_strdup_printf (
      _ ("Highest %s mm (%s, %s), lowest %s mm (%s, %s)"), length_text (beds->highest.level, high),
      tool_wall_name (beds->highest.wall), length_text (beds->highest.x, high_x),
      length_text (beds->lowest.level, low), tool_wall_name (beds->lowest.wall),
      length_text (beds->lowest.x, low_x));

  add_label (card, text, "caption");
}

static void
add_first_course (GtkBox *box, const LevelBook *book, const Beds *beds)
{
  GtkBox *card = add_card (box);
  char level[LENGTH_TEXT_SIZE];
  g_autofree char *title = NULL, *mean = NULL, *range = NULL;

  if (!beds->known)
    {
      add_label (card, _ ("First course: not known"), "cuts");
      add_label (card, _ ("Set points that have a level to places on the walls."), "caption");
      return;
    }
  title = g_strdup_printf (_ ("Course 1 on %s mm"), length_text (beds->first_course, level));
  mean = g_strdup_printf (beds->chosen ? _ ("Its underside, as you asked; the mean bed is %.1f mm, "
                                            "%.1f l of mortar")
                                       : _ ("Its underside; the mean bed is %.1f mm, %.1f l of "
                                            "mortar"),
                          beds->mean, beds->mortar / 1e6);
  range = range_text (beds);
  add_label (card, title, "cuts");
  add_label (card, mean, "proof");
  gtk_widget_add_css_class (add_label (card, range, "proof"), beds->within ? "good" : "bad");
  add_spots (card, beds);
  add_staff (card, book, beds->first_course);
}

/* ---- the checks ---- */

static void
add_sums (GtkBox *box, const LevelBook *book)
{
  const double per_mm = LENGTH_PER_MM;
  g_autofree char *text = g_strdup_printf (
      _ ("Back − fore = %.7g, rises − falls = %.7g, last − first = %.7g mm."),
      (double) (book->back - book->fore) / per_mm, (double) (book->rise - book->fall) / per_mm,
      (double) book->last_less_first / per_mm);

  add_sentence (box, text, book->agrees);
}

static void
add_checks (GtkBox *box, const Survey *survey, const LevelBook *book)
{
  if (book->has_levels)
    add_sums (box, book);
  if (book->local)
    add_label (box, _ ("No level is known: the first point is 0."), "caption");
  for (guint i = 0; i < book->closings->len; i++)
    {
      const LevelClosing *closing = &g_array_index (book->closings, LevelClosing, i);
      g_autofree char *text = level_closing_sentence (survey, closing);

      add_sentence (box, text, closing->within);
    }
  if (book->has_levels && !book->checked)
    add_sentence (box, _ ("Not checked: the book comes back to no point that was known."), FALSE);
  for (guint i = 0; i < book->faults->len; i++)
    add_sentence (box, g_array_index (book->faults, LevelFault, i).text, FALSE);
}

/* ---- the bed ---- */

static void
attach_word (GtkGrid *grid, int column, int row, const char *text, const char *style)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), column < 2 ? 0 : 1);
  gtk_label_set_ellipsize (GTK_LABEL (label),
                           column < 2 ? PANGO_ELLIPSIZE_END : PANGO_ELLIPSIZE_NONE);
  gtk_widget_set_hexpand (label, column == 0);
  if (style)
    gtk_widget_add_css_class (label, style);
  gtk_grid_attach (grid, label, column, row, 1, 1);
}

static void
attach_length (GtkGrid *grid, int column, int row, Length length, const char *style)
{
  char text[LENGTH_TEXT_SIZE];

  attach_word (grid, column, row, length_text (length, text), style);
}

/* "▼ 3": too thin, grind down by so much; "▲": build up. */
static void
attach_place (GtkGrid *grid, int row, const Survey *survey, const Beds *beds, const BedWall *wall,
              const BedPlace *place, const char *name)
{
  const FootPoint *point
      = place->point >= 0 ? &g_array_index (wall->foot, FootPoint, place->point) : NULL;
  char by[LENGTH_TEXT_SIZE];
  g_autofree char *judged = NULL;

  if (!place->laid)
    judged = g_strdup (_ ("no blocks"));
  else if (place->bed < beds->least)
    judged = g_strdup_printf (_ ("grind %s"), length_text (beds->least - place->bed, by));
  else if (place->bed > beds->most)
    judged = g_strdup_printf (_ ("build %s"), length_text (place->bed - beds->most, by));
  attach_word (grid, 0, row, name, NULL);
  attach_word (grid, 1, row, point ? survey_reading (survey, point->row)->point : NULL, NULL);
  attach_length (grid, 2, row, place->x, "number");
  attach_length (grid, 3, row, place->foot, "number");
  attach_length (grid, 4, row, place->bed, judged && place->laid ? "number-bad" : "number-strong");
  attach_word (grid, 5, row, judged, "caption");
}

static GtkGrid *
add_bed_grid (GtkBox *box)
{
  static const char *const heads[]
      = { N_ ("Wall"), N_ ("Point"), N_ ("From left"), N_ ("Footing"), N_ ("Bed"), NULL };
  GtkGrid *grid = GTK_GRID (gtk_grid_new ());

  gtk_grid_set_column_spacing (grid, 10);
  gtk_widget_add_css_class (GTK_WIDGET (grid), "figures");
  for (int i = 0; i < (int) G_N_ELEMENTS (heads); i++)
    attach_word (grid, i, 0, heads[i] ? _ (heads[i]) : NULL, "field");
  gtk_box_append (box, GTK_WIDGET (grid));
  return grid;
}

static void
add_beds (GtkBox *box, const Survey *survey, const Beds *beds)
{
  GtkGrid *grid = add_bed_grid (box);
  int row = 1;

  for (guint w = 0; w < beds->walls->len; w++)
    {
      const BedWall *wall = g_ptr_array_index (beds->walls, w);

      for (guint i = 0; i < wall->places->len && row <= MOST_PLACES; i++)
        attach_place (grid, row++, survey, beds, wall, &g_array_index (wall->places, BedPlace, i),
                      i == 0 ? tool_wall_name (wall->wall) : NULL);
    }
  if (row > MOST_PLACES)
    add_label (box, _ ("There are more places; halfbond-cli level prints them all."), "caption");
}

static void
add_works (GtkBox *box, const Beds *beds)
{
  for (guint w = 0; w < beds->walls->len; w++)
    {
      const BedWall *wall = g_ptr_array_index (beds->walls, w);

      for (guint i = 0; i < wall->works->len; i++)
        {
          g_autofree char *text
              = bed_work_sentence (wall, &g_array_index (wall->works, BedWork, i));

          add_sentence (box, text, FALSE);
        }
    }
  for (guint i = 0; i < beds->notes->len; i++)
    add_label (box, g_ptr_array_index (beds->notes, i), "caption");
}

void
hb_level_results_fill (GtkBox *box, const Project *project, const LevelBook *book, const Beds *beds)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (box))))
    gtk_box_remove (box, child);
  add_first_course (box, book, beds);
  add_heading (box, _ ("Checks"));
  add_checks (box, project->survey, book);
  if (beds->known)
    {
      add_heading (box, _ ("Levelling bed, mm"));
      add_works (box, beds);
      add_beds (box, project->survey, beds);
    }
  add_label (box, _ ("This is advice: local practice and the engineer decide."), "caption");
}
