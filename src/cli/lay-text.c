#include "cli/lay-text.h"

#include <glib/gi18n.h>

#include "bond/rake.h"
#include "cli/output.h"
#include "concrete/bed-steel.h"
#include "concrete/ties.h"
#include "takeoff/saw.h"

static void
append_heading (GString *text, const Wall *wall, const Block *block)
{
  char length[LENGTH_TEXT_SIZE], height[LENGTH_TEXT_SIZE];
  g_autofree char *name = output_line (wall->name), *unit = output_line (block->name);
  char unit_length[LENGTH_TEXT_SIZE], unit_height[LENGTH_TEXT_SIZE], thickness[LENGTH_TEXT_SIZE];

  g_string_append_printf (text, "%s%s%s: %s × %s mm", wall->key, *name ? "  " : "", name,
                          length_text (wall->length, length), length_text (wall->height, height));
  g_string_append_printf (
      text, ", %s %s × %s × %s mm\n", unit, length_text (block->length, unit_length),
      length_text (block->height, unit_height), length_text (block->thickness, thickness));
}

static gboolean
looks_alike (const Piece *a, const Piece *b)
{
  return a->shape == b->shape && a->length == b->length && a->height == b->height
         && a->segment == b->segment && a->shape != PIECE_NOTCHED && a->shape != PIECE_RAKED
         && a->pinned == b->pinned;
}

/* Along its bottom and along its top, and the angle of the cut: "600/420 raked 45°". */
static void
append_raked (GString *text, const Layout *layout, const Piece *piece)
{
  g_autofree char *edges = NULL;
  char angle[G_ASCII_DTOSTR_BUF_SIZE], length[LENGTH_TEXT_SIZE];
  Rake rake;

  if (!piece_rake (layout, piece, &rake))
    {
      g_string_append_printf (text, _ ("%s raked"), length_text (piece->length, length));
      return;
    }
  edges = rake_text (&rake);
  g_ascii_formatd (angle, sizeof angle, "%.1f", rake_angle (&rake));
  g_string_append_printf (text, _ ("%s raked %s°"), edges, angle);
}

/* "600", "421", "600 ripped to 85", "600 notched", "600/420 raked 45.0°", "300 pinned". */
static void
append_piece (GString *text, const Layout *layout, const Piece *piece)
{
  char length[LENGTH_TEXT_SIZE], height[LENGTH_TEXT_SIZE];

  if (piece->shape == PIECE_RAKED)
    append_raked (text, layout, piece);
  else
    g_string_append (text, length_text (piece->length, length));
  if (piece->shape == PIECE_RIPPED)
    g_string_append_printf (text, _ (" ripped to %s"), length_text (piece->height, height));
  else if (piece->shape == PIECE_NOTCHED)
    g_string_append (text, _ (" notched"));
  if (piece->pinned != PINNED_NOT)
    g_string_append (text, _ (" pinned"));
}

static const char *
mark_between (const Wall *wall, const Piece *left, const Piece *right)
{
  if (left->segment == right->segment)
    return ", ";
  return wall_part_at (wall, left->x) == wall_part_at (wall, right->x) ? " | " : " ‖ ";
}

/* The pieces of a course from the left: like ones counted, an opening between segments as "|", a
 * movement joint as "‖". */
static void
append_pieces (GString *text, const Wall *wall, const Layout *layout, const Course *course)
{
  const Piece *pieces = &g_array_index (layout->pieces, Piece, (guint) course->first);

  for (gint32 i = 0, n; i < course->n_pieces; i += n)
    {
      for (n = 1; i + n < course->n_pieces && looks_alike (&pieces[i], &pieces[i + n]);)
        n++;
      if (i > 0)
        g_string_append (text, mark_between (wall, &pieces[i - 1], &pieces[i]));
      if (n > 1)
        g_string_append_printf (text, "%d × ", n);
      append_piece (text, layout, &pieces[i]);
    }
}

static gint32
count_cuts (const Layout *layout, const Course *course)
{
  gint32 n = 0;

  for (gint32 i = 0; i < course->n_pieces; i++)
    n += layout_piece (layout, (guint) (course->first + i))->shape != PIECE_WHOLE;
  return n;
}

static void
append_steel (GString *text, const GArray *runs, gint32 course)
{
  char diameter[LENGTH_TEXT_SIZE], from[LENGTH_TEXT_SIZE], to[LENGTH_TEXT_SIZE];

  for (guint i = 0; i < runs->len; i++)
    {
      const SteelRun *run = &g_array_index (runs, SteelRun, i);
      if (run->course == course)
        g_string_append_printf (text, _ ("%38ssteel: %d of %s mm from %s to %s\n"), "", run->bars,
                                length_text (run->diameter, diameter),
                                length_text (run->from, from), length_text (run->to, to));
    }
}

/* What lies in the beds of a wall. */
typedef struct
{
  GArray *steel; /* SteelRun */
  GArray *rows;  /* TieRow */
  GArray *ends;  /* TieEnd */
} Beds;

static void
append_ties (GString *text, const Project *project, const Beds *beds, gint32 course)
{
  char from[LENGTH_TEXT_SIZE], to[LENGTH_TEXT_SIZE];

  for (guint i = 0; i < beds->rows->len; i++)
    {
      const TieRow *row = &g_array_index (beds->rows, TieRow, i);

      if (row->course == course)
        /* Translators: how many ties, of which kind, at which place in mm */
        g_string_append_printf (text, _ ("%38sties: %d × %s at %s\n"), "", row->abreast,
                                tie_kind_name (row->kind), length_text (row->x, from));
    }
  for (guint i = 0; i < beds->ends->len; i++)
    {
      const TieEnd *end = &g_array_index (beds->ends, TieEnd, i);

      if (end->course == course)
        g_string_append_printf (text, _ ("%38sties of %s: %d × %s from %s to %s\n"), "",
                                project_wall (project, end->butted)->key, end->abreast,
                                tie_kind_name (end->kind), length_text (end->x, from),
                                length_text (end->x + end->width, to));
    }
}

static void
append_course (GString *text, const Wall *wall, const Layout *layout, const Course *course,
               const GArray *runs)
{
  char bottom[LENGTH_TEXT_SIZE], top[LENGTH_TEXT_SIZE];

  g_string_append_printf (text, "%6d  %8s  %8s  %4d  %4d  ", course->number,
                          length_text (course->bottom, bottom), length_text (course->top, top),
                          course->n_pieces, count_cuts (layout, course));
  append_pieces (text, wall, layout, course);
  if (course->stands)
    g_string_append (text, _ ("  (stands)"));
  g_string_append_c (text, '\n');
  append_steel (text, runs, course->number);
}

/* Of the number of lengths, which is no length. */
static void
append_length_breach (GString *text, const Breach *breach)
{
  char x[LENGTH_TEXT_SIZE], is[LENGTH_TEXT_SIZE];

  g_string_append_printf (
      text, _ ("  Course %d at %s mm: a cut piece of %s mm, one length more than %d\n"),
      breach->course, length_text (breach->x, x), length_text (breach->is, is), breach->least);
}

static void
append_breach (GString *text, const Breach *breach)
{
  static const char *const formats[] = {
    [BREACH_MIN_PIECE] = N_ ("  Course %d at %s mm: a piece of %s mm, shorter than %s mm\n"),
    [BREACH_MIN_LAP] = N_ ("  Course %d at %s mm: a lap of %s mm, less than %s mm\n"),
    [BREACH_MIN_RIP] = N_ ("  Course %d at %s mm: a strip of %s mm, thinner than %s mm\n"),
    [BREACH_MIN_RAKED] = N_ ("  Course %d at %s mm: a raked piece of %s mm, shorter than %s mm\n"),
    [BREACH_OF_RULE + RULE_BEARING]
    = N_ ("  Course %d at %s mm: a perpend under a lintel's end, %s mm from the jamb, less than %s "
          "mm\n"),
    [BREACH_OF_RULE + RULE_JAMB_LINE]
    = N_ ("  Course %d at %s mm: a perpend in line with a jamb, %s mm from it, less than %s mm\n"),
    [BREACH_OF_RULE + RULE_JAMB_CUTS]
    = N_ ("  Course %d at %s mm: a cut piece of %s mm near a jamb, shorter than %s mm\n"),
    [BREACH_OF_RULE + RULE_WHOLE_ENDS]
    = N_ ("  Course %d at %s mm: a cut piece of %s mm at the wall's end, shorter than %s mm\n"),
    [BREACH_OF_RULE + RULE_SYMMETRY_WALL] = N_ (
        "  Course %d at %s mm: a perpend with none across the wall's middle; the nearest is %s mm "
        "off %s mm\n"),
    [BREACH_OF_RULE + RULE_SYMMETRY_OPENINGS]
    = N_ ("  Course %d at %s mm: a perpend with none across an opening's middle; the nearest is %s "
          "mm off %s mm\n"),
  };
  char x[LENGTH_TEXT_SIZE], is[LENGTH_TEXT_SIZE], least[LENGTH_TEXT_SIZE];

  if (breach->kind == (BreachKind) BREACH_OF_RULE + RULE_LENGTHS)
    {
      append_length_breach (text, breach);
      return;
    }
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored "-Wformat-nonliteral"
  g_string_append_printf (text, _ (formats[breach->kind]), breach->course,
                          length_text (breach->x, x), length_text (breach->is, is),
                          length_text (breach->least, least));
#pragma GCC diagnostic pop
}

char *
lay_text_proof (const Proof *proof)
{
  if (proof->proven)
    return g_strdup (_ ("Proven: under these rules it cannot be laid with fewer cuts."));
  return g_strdup_printf (_ ("At least %d cuts are needed; whether fewer than %d are possible is "
                             "not known."),
                          proof->cuts_at_least, proof->cuts);
}

/* Of the aim `least-waste`: units to order, the fewest or by how many they may be too many. */
static void
append_order (GString *text, const Wall *wall, const Block *block, const Layout *layout)
{
  gint32 units = saw_wall_units (wall, block, layout, NULL);
  gint32 least = layout->proof.to_order_at_least;

  g_string_append_printf (text,
                          ngettext ("%d block to order for it alone. ",
                                    "%d blocks to order for it alone. ", (gulong) units),
                          units);
  if (least == units)
    g_string_append (text, _ ("Proven: it cannot be laid with fewer.\n"));
  else
    g_string_append_printf (text, _ ("However it is laid, at least %d are needed.\n"), least);
}

static void
append_sums (GString *text, const Wall *wall, const Block *block, const Layout *layout)
{
  g_autofree char *proof = lay_text_proof (&layout->proof);

  g_string_append_printf (text, _ ("%u pieces: %d whole, %d cut. %s\n"), layout->pieces->len,
                          layout->n_whole, layout->n_cut, proof);
  if (layout->proof.to_order > 0)
    append_order (text, wall, block, layout);
  if (layout->proof.breaches == 0)
    return;
  g_string_append_printf (
      text,
      ngettext ("It cannot be laid within its rules; this breaks them at %d place:\n",
                "It cannot be laid within its rules; this breaks them at %d places:\n",
                (gulong) layout->proof.breaches),
      layout->proof.breaches);
  for (guint i = 0; i < layout->breaches->len; i++)
    append_breach (text, &g_array_index (layout->breaches, Breach, i));
}

/* Before the courses: they go through all of them. */
static void
append_movement_joints (GString *text, const Wall *wall)
{
  char x[LENGTH_TEXT_SIZE], right[LENGTH_TEXT_SIZE];

  for (guint i = 0; i < wall->movement_joints->len; i++)
    {
      const MovementJoint *joint = wall_movement_joint_at (wall, i);

      g_string_append_printf (text, _ ("movement joint through all courses: %s to %s mm\n"),
                              length_text (joint->x, x),
                              length_text (movement_joint_right (joint), right));
    }
}

void
lay_text (GString *text, const Project *project, guint number, const Layout *layout)
{
  const Wall *wall = project_wall_at (project, number);
  const Block *block = project_block (project, wall->block);
  g_autoptr (GArray) runs = bed_steel_runs (wall, block);
  g_autoptr (GArray) rows = ties_of_wall (wall, block);
  g_autoptr (GArray) ends = ties_into_wall (project, number);
  const Beds beds = { runs, rows, ends };

  append_heading (text, wall, block);
  append_movement_joints (text, wall);
  g_string_append (text, _ ("course    bottom       top   pcs   cut  lengths from the left, mm\n"));
  for (guint i = 0; i < layout->courses->len; i++)
    {
      append_course (text, wall, layout, layout_course (layout, i), runs);
      append_ties (text, project, &beds, layout_course (layout, i)->number);
    }
  append_sums (text, wall, block, layout);
}
