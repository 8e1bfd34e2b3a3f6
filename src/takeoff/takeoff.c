/* takeoff.c - quantities, each with the pieces it came from */
#include "takeoff/takeoff.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "bond/gauge.h"
#include "bond/stands.h"
#include "concrete/bed-steel.h"
#include "concrete/ties.h"
#include "cutting/cutting.h"
#include "site/bed.h"
#include "takeoff/joints.h"

#define MM2_PER_M2 1e6
#define MM3_PER_M3 1e9
#define MM3_PER_LITRE 1e6

/* What is counted of one wall, or of all. */
typedef struct
{
  double shapes[PIECE_RAKED + 1]; /* pieces of each shape */
  double to_order;                /* units */
  double ordered_volume;          /* mm3 */
  double ordered_mass;            /* kg */
  double gross, openings;         /* mm2 */
  double volume;                  /* mm3, pieces as laid */
  double mass;                    /* kg, pieces as laid */
  double adhesive, bed_mortar;    /* mm3 */
  double filler;                  /* mm, of movement joints */
  double steel_length;            /* mm */
  double steel_mass;              /* kg */
  double steel_stocks;            /* bars of stock length */
  double ties[N_TIE_KINDS];       /* of each kind */
  double cap;                     /* mm3, with the wedges below it */
  double cap_length;              /* mm, along its slopes */
} Tally;

/* --- steel --- */

typedef struct
{
  Length diameter;
  CuttingItem item;
} SteelLength;

static gint
compare_steel (gconstpointer a, gconstpointer b)
{
  const SteelLength *p = a, *q = b;

  if (p->diameter != q->diameter)
    return p->diameter < q->diameter ? -1 : 1;
  return (p->item.length < q->item.length) - (p->item.length > q->item.length);
}

/* The bars of a run: whole stock lengths, and the last one cut to what is left. */
static void
add_run (const SteelRun *run, GArray *lengths)
{
  SteelLength whole = { run->diameter, { STEEL_STOCK, run->n_laps * run->bars } };
  SteelLength last
      = { run->diameter, { run->bar_length - (gint64) run->n_laps * STEEL_STOCK, run->bars } };

  if (run->n_laps > 0)
    g_array_append_val (lengths, whole);
  g_array_append_val (lengths, last);
}

/* Stock lengths that yield the bars, each diameter by itself; -1 when stopped. */
static double
count_stocks (GArray *lengths, const gint *stop)
{
  g_autoptr (GArray) items = g_array_new (FALSE, FALSE, sizeof (CuttingItem));
  gint64 stocks = 0;

  g_array_sort (lengths, compare_steel);
  for (guint i = 0; i < lengths->len; i++)
    {
      const SteelLength *length = &g_array_index (lengths, SteelLength, i);
      g_autoptr (CuttingPlan) plan = NULL;

      g_array_append_val (items, length->item);
      if (i + 1 < lengths->len
          && g_array_index (lengths, SteelLength, i + 1).diameter == length->diameter)
        continue;
      plan = cutting_solve (STEEL_STOCK, 0, (const CuttingItem *) (gpointer) items->data,
                            items->len, 0, stop, NULL);
      if (plan == NULL)
        return -1;
      stocks += plan->bins;
      g_array_set_size (items, 0);
    }
  return (double) stocks;
}

/* Bars and ties that lie on that course or higher. */
static void
tally_steel (Tally *tally, const Wall *wall, const Block *block, gint32 from, GArray *lengths)
{
  g_autoptr (GArray) runs = bed_steel_runs (wall, block);

  for (guint i = 0; i < runs->len; i++)
    {
      const SteelRun *run = &g_array_index (runs, SteelRun, i);
      double length = length_to_mm (run->bar_length) * run->bars;

      if (run->course < from)
        continue;
      tally->steel_length += length;
      tally->steel_mass += length / 1000 * bed_steel_mass_per_metre (run->diameter);
      add_run (run, lengths);
    }
}

static void
tally_ties (Tally *tally, const Wall *wall, const Block *block, gint32 from)
{
  g_autoptr (GArray) rows = ties_of_wall (wall, block);

  for (guint i = 0; i < rows->len; i++)
    {
      const TieRow *row = &g_array_index (rows, TieRow, i);

      if (row->course >= from)
        tally->ties[row->kind] += row->abreast;
    }
}

/* --- one wall --- */

static void
tally_pieces (Tally *tally, const Layout *layout, const Block *block)
{
  double area = 0;

  for (guint i = 0; i < layout->pieces->len; i++)
    {
      const Piece *piece = layout_piece (layout, i);

      tally->shapes[piece->shape]++;
      area += layout_piece_area (layout, piece);
    }
  tally->volume = area * length_to_mm (block->thickness);
  tally->mass = tally->volume / MM3_PER_M3 * block->density;
}

/* How high an opening is above `from`. */
static double
height_above (const Opening *opening, Length from)
{
  const Length head = opening_head (opening);

  return head > from ? length_to_mm (head - MAX (opening->sill, from)) : 0;
}

/* What lies above a height of a straight stretch of the top, mm2. */
static double
face_above (double x0, double z0, double x1, double z1, double from)
{
  const double low = MIN (z0, z1) - from, high = MAX (z0, z1) - from;

  if (high <= 0)
    return 0;
  if (low >= 0)
    return (x1 - x0) * (low + high) / 2;
  return (x1 - x0) * high / (high - low) * high / 2;
}

/* From a height to the top, less where the footing is higher. */
static double
area_above (const Wall *wall, Length from)
{
  double area = 0;

  if (from <= 0)
    return wall_face_area (wall, 0, wall->length);
  for (Length x = 0; x < wall->length;)
    {
      const TopLine line = wall->tops->len > 0
                               ? top_line (wall->tops, wall->height, x, SIDE_RIGHT)
                               : (TopLine){ 0, wall->height, wall->length, wall->height };
      const Length end = MIN (line.x1, wall->length);

      area += face_above (length_to_mm (x), length_to_mm (top_line_at (&line, x)),
                          length_to_mm (end), length_to_mm (top_line_at (&line, end)),
                          length_to_mm (from));
      x = end;
    }
  for (guint i = 0; i < wall->feet->len; i++)
    {
      const Foot *foot = foot_point (wall->feet, i);
      const Length to = i + 1 < wall->feet->len ? foot_point (wall->feet, i + 1)->x : wall->length;

      area -= length_to_mm (to - foot->x) * length_to_mm (MAX (foot->up - from, 0));
    }
  return area;
}

/* Above the height `from`, as what follows. */
static void
tally_areas (Tally *tally, const Wall *wall, Length from)
{
  tally->gross = area_above (wall, from);
  for (guint i = 0; i < wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (wall, i);

      tally->openings += length_to_mm (opening->width) * height_above (opening, from);
    }
}

/* Concrete that follows the top and fills the wedges that the blocks leave under it. */
static void
tally_cap (Tally *tally, const Wall *wall, const Block *block, double wedges)
{
  double length = length_to_mm (wall->length);

  if (wall->cap.height == 0)
    return;
  tally->cap
      = (length * length_to_mm (wall->cap.height) + wedges) * length_to_mm (block->thickness);
  tally->cap_length = top_run (wall->tops, wall->height, 0, wall->length);
}

/* Movement joints from the foundation to the top, less what openings that they cross leave out. */
static void
tally_movement_joints (Tally *tally, const Wall *wall, Length from)
{
  for (guint i = 0; i < wall->movement_joints->len; i++)
    {
      const MovementJoint *joint = wall_movement_joint_at (wall, i);

      tally->filler
          += length_to_mm (MAX (wall_top_at (wall, joint->x, SIDE_LEFT)
                                    - MAX (wall_foot_at (wall, joint->x, SIDE_LEFT), from),
                                0));
      for (guint k = 0; k < wall->openings->len; k++)
        {
          const Opening *opening = wall_opening_at (wall, k);

          if (opening->x < movement_joint_right (joint) && opening_right (opening) > joint->x)
            tally->filler -= height_above (opening, from);
        }
    }
}

/* `bed` is the levelling bed as the footing makes it; NULL: it is not surveyed, and the bed is as
 * thick as it was drawn or measured. */
static void
tally_joints (Tally *tally, const Wall *wall, const Block *block, const Layout *layout,
              const BedWall *bed, gboolean rest)
{
  Laying laying = laying_resolve (&wall->laying, block);
  Joints joints = joints_of (wall, block, &laying, layout, rest);
  double thickness = length_to_mm (block->thickness);
  double per_mm = LENGTH_PER_MM;
  double beds = (double) joints.bed / per_mm * length_to_mm (laying.bed);
  double first = length_to_mm (gauge_bed (wall, block, &laying, 1));

  if (wall_standing (wall) > 0)
    beds = (double) joints.bed_face / (per_mm * per_mm);
  tally->adhesive = thickness * (beds + (double) joints.head / per_mm * length_to_mm (laying.head));
  tally->bed_mortar = thickness * (double) joints.levelling / per_mm * first;
  if (bed)
    tally->bed_mortar = rest && wall_standing (wall) > 0 ? 0 : bed->mortar;
  tally->bed_mortar += thickness * (joints.packings + (bed ? 0 : joints.steps));
  if (wall->cap.height == 0)
    tally->bed_mortar += thickness * joints.wedges;
  tally_cap (tally, wall, block, joints.wedges);
}

static void
tally_order (Tally *tally, gint32 units, const Block *block)
{
  tally->to_order += units;
  tally->ordered_mass += units * block_mass (block);
  tally->ordered_volume += units * length_to_mm (block->length) * length_to_mm (block->height)
                           * length_to_mm (block->thickness);
}

/* Sums what can be summed; what is ordered for all walls together is not. */
static void
tally_add (Tally *sum, const Tally *tally)
{
  for (int shape = 0; shape <= PIECE_RAKED; shape++)
    sum->shapes[shape] += tally->shapes[shape];
  sum->gross += tally->gross;
  sum->openings += tally->openings;
  sum->volume += tally->volume;
  sum->mass += tally->mass;
  sum->adhesive += tally->adhesive;
  sum->bed_mortar += tally->bed_mortar;
  sum->filler += tally->filler;
  sum->cap += tally->cap;
  sum->cap_length += tally->cap_length;
  sum->steel_length += tally->steel_length;
  sum->steel_mass += tally->steel_mass;
  for (int kind = 0; kind < N_TIE_KINDS; kind++)
    sum->ties[kind] += tally->ties[kind];
}

/* --- the table of quantities --- */

typedef enum
{
  PIECES_NONE,
  PIECES_ALL,
  PIECES_CUT,
  PIECES_OF_SHAPE,
} LinePieces;

typedef struct
{
  const char *key, *group, *name, *unit;
  int decimals;
  double (*quantity) (const Tally *tally);
  LinePieces pieces;
  PieceShape shape;
  gboolean optional; /* left out where there is none in the whole project */
} LineKind;

static double
get_whole (const Tally *tally)
{
  return tally->shapes[PIECE_WHOLE];
}

static double
get_short (const Tally *tally)
{
  return tally->shapes[PIECE_SHORT];
}

static double
get_ripped (const Tally *tally)
{
  return tally->shapes[PIECE_RIPPED];
}

static double
get_notched (const Tally *tally)
{
  return tally->shapes[PIECE_NOTCHED];
}

static double
get_raked (const Tally *tally)
{
  return tally->shapes[PIECE_RAKED];
}

static double
get_cut (const Tally *tally)
{
  return get_short (tally) + get_ripped (tally) + get_notched (tally) + get_raked (tally);
}

static double
get_to_order (const Tally *tally)
{
  return tally->to_order;
}

static double
get_waste (const Tally *tally)
{
  return (tally->ordered_volume - tally->volume) / MM3_PER_M3;
}

static double
get_ordered_mass (const Tally *tally)
{
  return tally->ordered_mass;
}

static double
get_gross (const Tally *tally)
{
  return tally->gross / MM2_PER_M2;
}

static double
get_openings (const Tally *tally)
{
  return tally->openings / MM2_PER_M2;
}

static double
get_net (const Tally *tally)
{
  return (tally->gross - tally->openings) / MM2_PER_M2;
}

static double
get_volume (const Tally *tally)
{
  return tally->volume / MM3_PER_M3;
}

static double
get_mass (const Tally *tally)
{
  return tally->mass;
}

static double
get_adhesive (const Tally *tally)
{
  return tally->adhesive / MM3_PER_LITRE;
}

static double
get_bed_mortar (const Tally *tally)
{
  return tally->bed_mortar / MM3_PER_LITRE;
}

static double
get_filler (const Tally *tally)
{
  return tally->filler / 1000;
}

static double
get_steel_length (const Tally *tally)
{
  return tally->steel_length / 1000;
}

static double
get_steel_mass (const Tally *tally)
{
  return tally->steel_mass;
}

static double
get_steel_stocks (const Tally *tally)
{
  return tally->steel_stocks;
}

static double
get_strips (const Tally *tally)
{
  return tally->ties[TIE_STRIP];
}

static double
get_meshes (const Tally *tally)
{
  return tally->ties[TIE_MESH];
}

static double
get_angles (const Tally *tally)
{
  return tally->ties[TIE_ANGLE];
}

static double
get_ties (const Tally *tally)
{
  return get_strips (tally) + get_meshes (tally) + get_angles (tally);
}

static double
get_cap (const Tally *tally)
{
  return tally->cap / MM3_PER_M3;
}

static double
get_cap_length (const Tally *tally)
{
  return tally->cap_length / 1000;
}

/* A new quantity is a row here, and what it is counted from a field of Tally. */
static const LineKind kinds[] = {
  { "blocks.whole", N_ ("Blocks"), N_ ("Whole blocks"), "pcs", 0, get_whole, PIECES_OF_SHAPE,
    PIECE_WHOLE },
  { "blocks.cut-pieces", N_ ("Blocks"), N_ ("Cut pieces"), "pcs", 0, get_cut, PIECES_CUT },
  { "blocks.short", N_ ("Blocks"), N_ ("Shortened"), "pcs", 0, get_short, PIECES_OF_SHAPE,
    PIECE_SHORT, TRUE },
  { "blocks.ripped", N_ ("Blocks"), N_ ("Ripped"), "pcs", 0, get_ripped, PIECES_OF_SHAPE,
    PIECE_RIPPED, TRUE },
  { "blocks.notched", N_ ("Blocks"), N_ ("Notched"), "pcs", 0, get_notched, PIECES_OF_SHAPE,
    PIECE_NOTCHED, TRUE },
  { "blocks.raked", N_ ("Blocks"), N_ ("Cut to a slope"), "pcs", 0, get_raked, PIECES_OF_SHAPE,
    PIECE_RAKED, TRUE },
  { "blocks.to-order", N_ ("Blocks"), N_ ("Blocks to order"), "pcs", 0, get_to_order },
  { "blocks.waste", N_ ("Blocks"), N_ ("Off-cuts left over"), "m³", 3, get_waste },
  { "blocks.mass", N_ ("Blocks"), N_ ("Dry mass to order"), "kg", 0, get_ordered_mass },
  { "wall.gross-area", N_ ("Wall"), N_ ("Area with openings"), "m²", 2, get_gross },
  { "wall.openings-area", N_ ("Wall"), N_ ("Openings"), "m²", 2, get_openings },
  { "wall.net-area", N_ ("Wall"), N_ ("Area without openings"), "m²", 2, get_net },
  { "wall.net-volume", N_ ("Wall"), N_ ("Blockwork as laid"), "m³", 3, get_volume, PIECES_ALL },
  { "wall.mass", N_ ("Wall"), N_ ("Dry mass as laid"), "kg", 0, get_mass, PIECES_ALL },
  { "adhesive.volume", N_ ("Joints"), N_ ("Adhesive"), "l", 1, get_adhesive },
  { "bed-mortar.volume", N_ ("Joints"), N_ ("Levelling mortar"), "l", 1, get_bed_mortar },
  { "movement-joint.length", N_ ("Joints"), N_ ("Filler of movement joints"), "m", 2, get_filler,
    PIECES_NONE, PIECE_WHOLE, TRUE },
  { "cap.volume", N_ ("Cap"), N_ ("Concrete of the cap"), "m³", 3, get_cap, PIECES_NONE,
    PIECE_WHOLE, TRUE },
  { "cap.length", N_ ("Cap"), N_ ("Cap along the top"), "m", 2, get_cap_length, PIECES_NONE,
    PIECE_WHOLE, TRUE },
  { "steel.bed-length", N_ ("Steel"), N_ ("Bars in bed joints"), "m", 2, get_steel_length },
  { "steel.bed-mass", N_ ("Steel"), N_ ("Mass of these bars"), "kg", 2, get_steel_mass },
  { "steel.bed-stock", N_ ("Steel"), N_ ("Bars of 6 m to order"), "pcs", 0, get_steel_stocks,
    PIECES_NONE, PIECE_WHOLE, TRUE },
  { "ties.count", N_ ("Ties"), N_ ("Ties of butted walls"), "pcs", 0, get_ties, PIECES_NONE,
    PIECE_WHOLE, TRUE },
  { "ties.strips", N_ ("Ties"), N_ ("Flat strips"), "pcs", 0, get_strips, PIECES_NONE, PIECE_WHOLE,
    TRUE },
  { "ties.meshes", N_ ("Ties"), N_ ("Pieces of mesh"), "pcs", 0, get_meshes, PIECES_NONE,
    PIECE_WHOLE, TRUE },
  { "ties.angles", N_ ("Ties"), N_ ("Angles"), "pcs", 0, get_angles, PIECES_NONE, PIECE_WHOLE,
    TRUE },
};

static const LineKind *
kind_of_key (const char *key)
{
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (strcmp (kinds[i].key, key) == 0)
      return &kinds[i];
  return NULL;
}

static TakeoffLine *
line_new (const LineKind *kind, const Tally *all, const Tally *walls, guint n_walls)
{
  TakeoffLine *line = g_new0 (TakeoffLine, 1);

  line->key = kind->key;
  line->group = kind->group;
  line->name = kind->name;
  line->unit = kind->unit;
  line->decimals = kind->decimals;
  line->of_pieces = kind->pieces != PIECES_NONE;
  line->quantity = kind->quantity (all);
  line->walls = g_new0 (double, n_walls + 1);
  for (guint i = 0; i < n_walls; i++)
    line->walls[i] = kind->quantity (&walls[i]);
  return line;
}

static void
line_free (gpointer data)
{
  TakeoffLine *line = data;

  g_free (line->walls);
  g_free (line);
}

/* --- the project --- */

typedef struct
{
  const Project *project;
  Layout *const *layouts; /* of what is counted */
  Layout *const *laid;    /* with what stands, too */
  gboolean rest;          /* only what does not stand yet */
  const gint *stop;
  Beds *beds; /* NULL: the footing is not surveyed */
  Tally *walls;
  gint32 *units; /* to order, of each wall by itself */
  Tally all;
  GPtrArray *saws; /* SawPlan *, by block of the project */
  GArray *steel;   /* SteelLength, of all walls */
} Counting;

static gboolean
is_stopped (const Counting *counting)
{
  return counting->stop != NULL && g_atomic_int_get (counting->stop) != 0;
}

static gboolean
count_order (Counting *counting, guint i, const Block *block)
{
  const Wall *wall = project_wall_at (counting->project, i);
  gint32 units = saw_wall_units (wall, block, counting->layouts[i], counting->stop);

  counting->units[i] = units;
  if (units >= 0)
    tally_order (&counting->walls[i], units, block);
  return units >= 0;
}

static gboolean
count_wall (Counting *counting, guint i)
{
  const Wall *wall = project_wall_at (counting->project, i);
  const Layout *layout = counting->layouts[i];
  const Block *block = project_block (counting->project, wall->block);
  const gint32 standing = wall_standing (wall);
  Tally *tally = &counting->walls[i];
  /* What lies on the last course that stands is laid with the next one. */
  const gint32 lies_on = standing + (standing == (gint32) layout->courses->len);
  Length from = 0;
  g_autoptr (GArray) steel = g_array_new (FALSE, FALSE, sizeof (SteelLength));

  if (is_stopped (counting))
    return FALSE;
  if (counting->rest && standing > 0)
    {
      const Laying laying = laying_resolve (&wall->laying, block);

      from = gauge_top (wall, block, &laying, standing);
    }
  tally_pieces (tally, layout, block);
  tally_areas (tally, wall, from);
  tally_movement_joints (tally, wall, from);
  tally_joints (tally, wall, block, counting->laid[i], beds_wall (counting->beds, wall->id),
                counting->rest);
  tally_steel (tally, wall, block, counting->rest ? lies_on : 0, steel);
  tally_ties (tally, wall, block, counting->rest ? lies_on : 0);
  tally_add (&counting->all, tally);
  if (steel->len > 0)
    g_array_append_vals (counting->steel, steel->data, steel->len);
  tally->steel_stocks = count_stocks (steel, counting->stop);
  return tally->steel_stocks >= 0 && count_order (counting, i, block);
}

/* One saw plan for all walls of a kind of block. */
static gboolean
count_together (Counting *counting)
{
  counting->saws
      = saw_plans_new (counting->project, counting->layouts, counting->units, counting->stop);
  for (guint i = 0; counting->saws != NULL && i < counting->saws->len; i++)
    tally_order (&counting->all, saw_plan_to_order (g_ptr_array_index (counting->saws, i)),
                 project_block_at (counting->project, i));
  counting->all.steel_stocks = count_stocks (counting->steel, counting->stop);
  return counting->saws != NULL && counting->all.steel_stocks >= 0;
}

static gboolean
count (Counting *counting)
{
  for (guint i = 0; i < counting->project->walls->len; i++)
    if (!count_wall (counting, i))
      return FALSE;
  return count_together (counting) && !is_stopped (counting);
}

static Takeoff *
takeoff_of (const Counting *counting)
{
  Takeoff *takeoff = g_new0 (Takeoff, 1);

  takeoff->saws = g_ptr_array_ref (counting->saws);
  takeoff->n_walls = counting->project->walls->len;
  takeoff->lines = g_ptr_array_new_with_free_func (line_free);
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (!kinds[i].optional || kinds[i].quantity (&counting->all) > 0)
      g_ptr_array_add (takeoff->lines,
                       line_new (&kinds[i], &counting->all, counting->walls, takeoff->n_walls));
  return takeoff;
}

static Takeoff *
count_all (Counting *counting)
{
  const guint n = counting->project->walls->len;
  Takeoff *takeoff = NULL;

  counting->beds = beds_of_project (counting->project);
  counting->walls = g_new0 (Tally, n + 1);
  counting->units = g_new0 (gint32, n + 1);
  counting->steel = g_array_new (FALSE, FALSE, sizeof (SteelLength));
  if (count (counting))
    takeoff = takeoff_of (counting);
  beds_free (counting->beds);
  g_free (counting->walls);
  g_free (counting->units);
  g_clear_pointer (&counting->saws, g_ptr_array_unref);
  g_array_unref (counting->steel);
  return takeoff;
}

Takeoff *
takeoff_new (const Project *project, Layout *const *layouts, const gint *stop)
{
  Counting counting = { .project = project, .layouts = layouts, .laid = layouts, .stop = stop };

  return count_all (&counting);
}

Takeoff *
takeoff_rest_new (const Project *project, Layout *const *layouts, const gint *stop)
{
  g_autoptr (GPtrArray) rests = g_ptr_array_new_with_free_func ((GDestroyNotify) layout_unref);
  Counting counting = { .project = project, .laid = layouts, .rest = TRUE, .stop = stop };

  for (guint i = 0; i < project->walls->len; i++)
    g_ptr_array_add (rests, stands_rest_of_layout (layouts[i]));
  counting.layouts = (Layout *const *) rests->pdata;
  return count_all (&counting);
}

void
takeoff_free (Takeoff *takeoff)
{
  if (takeoff == NULL)
    return;
  g_ptr_array_unref (takeoff->lines);
  g_ptr_array_unref (takeoff->saws);
  g_free (takeoff);
}

const TakeoffLine *
takeoff_line (const Takeoff *takeoff, const char *key)
{
  for (guint i = 0; i < takeoff->lines->len; i++)
    {
      const TakeoffLine *line = g_ptr_array_index (takeoff->lines, i);

      if (strcmp (line->key, key) == 0)
        return line;
    }
  return NULL;
}

gboolean
takeoff_line_has_piece (const char *key, const Piece *piece)
{
  const LineKind *kind = kind_of_key (key);

  if (kind == NULL)
    return FALSE;
  switch (kind->pieces)
    {
    case PIECES_ALL:
      return TRUE;
    case PIECES_CUT:
      return piece->shape != PIECE_WHOLE;
    case PIECES_OF_SHAPE:
      return piece->shape == kind->shape;
    case PIECES_NONE:
    default:
      return FALSE;
    }
}

double
takeoff_piece_mass (const Layout *layout, const Piece *piece, const Block *block)
{
  return layout_piece_area (layout, piece) * length_to_mm (block->thickness) / MM3_PER_M3
         * block->density;
}
