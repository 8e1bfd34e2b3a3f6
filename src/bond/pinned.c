/* pinned.c - where pins part the runs of a wall */
#include "bond/pinned.h"

/* A face that must be, and the pin that wants it. */
typedef struct
{
  Length face, pin;
} Wanted;

/* A piece that must be one. */
typedef struct
{
  Length from, to, pin;
} Solid;

/* What pins want of one run so far. */
typedef struct
{
  const Segment *segment;
  GArray *faces;  /* Wanted, ascending, none twice */
  GArray *solids; /* Solid */
} Run;

typedef struct
{
  Geometry *geometry;
  Run *runs; /* by segment */
} Parting;

/* --- whether a pin can be met --- */

static PinFate
against (LaidPin *pin, Length other)
{
  pin->at = other;
  return PIN_AGAINST;
}

/* A piece fits between a face and the end of the run, or another face, when more than the joint is
 * left. */
static PinFate
face_fate (const Parting *parting, const Run *run, LaidPin *pin, Length face)
{
  Length joint = parting->geometry->joint;

  if (face - joint <= run->segment->a || face >= run->segment->b)
    {
      pin->at = face >= run->segment->b ? run->segment->b : run->segment->a;
      return PIN_AT_END;
    }
  for (guint i = 0; i < run->faces->len; i++)
    {
      const Wanted *other = &g_array_index (run->faces, Wanted, i);

      if (other->face != face && ABS (other->face - face) <= joint)
        return against (pin, other->pin);
    }
  for (guint i = 0; i < run->solids->len; i++)
    {
      const Solid *solid = &g_array_index (run->solids, Solid, i);

      if (face > solid->from && face < solid->to + joint)
        return against (pin, solid->pin);
    }
  return PIN_MET;
}

static PinFate
piece_fate (const Parting *parting, const Run *run, LaidPin *pin)
{
  Length end = pin->x + pin->length;
  PinFate fate = PIN_MET;

  if (pin->length > parting->geometry->unit)
    return PIN_TOO_LONG;
  if (end != run->segment->b)
    fate = face_fate (parting, run, pin, end + parting->geometry->joint);
  for (guint i = 0; fate == PIN_MET && i < run->faces->len; i++)
    {
      const Wanted *other = &g_array_index (run->faces, Wanted, i);

      if (other->face > pin->x && other->face < end + parting->geometry->joint)
        return against (pin, other->pin);
    }
  return fate;
}

static PinFate
fate_in (const Parting *parting, const Run *run, LaidPin *pin)
{
  PinFate fate = PIN_MET;

  if (pin->x < run->segment->a || pin->x >= run->segment->b)
    return PIN_NO_WALL;
  if (pin->x != run->segment->a)
    fate = face_fate (parting, run, pin, pin->x);
  if (fate == PIN_MET && pin->length > 0)
    fate = piece_fate (parting, run, pin);
  return fate;
}

/* --- what pins want --- */

static void
want (Run *run, Length face, Length pin)
{
  Wanted wanted = { face, pin };
  guint i = 0;

  while (i < run->faces->len && g_array_index (run->faces, Wanted, i).face < face)
    i++;
  if (i == run->faces->len || g_array_index (run->faces, Wanted, i).face != face)
    g_array_insert_val (run->faces, i, wanted);
}

static void
meet (const Parting *parting, Run *run, LaidPin *pin)
{
  Length end = pin->x + pin->length;
  Solid solid = { pin->x, end, pin->x };

  pin->segment = run->segment->index;
  if (pin->x != run->segment->a)
    want (run, pin->x, pin->x);
  if (pin->length == 0)
    return;
  if (end != run->segment->b)
    want (run, end + parting->geometry->joint, pin->x);
  g_array_append_val (run->solids, solid);
}

/* Where two strips lie one above the other, the longer one is meant, or else the lower: the same
 * one seen from behind. */
static gboolean
goes_first (const Parting *parting, const Segment *p, const Segment *q)
{
  if (q == NULL || p->b - p->a != q->b - q->a)
    return q == NULL || p->b - p->a > q->b - q->a;
  return geometry_step (parting->geometry, p->first_step)->lo
         < geometry_step (parting->geometry, q->first_step)->lo;
}

static Run *
run_of (const Parting *parting, guint i)
{
  Run *run = &parting->runs[i];

  if (run->segment == NULL)
    {
      run->segment = geometry_segment (parting->geometry, (gint32) i);
      run->faces = g_array_new (FALSE, FALSE, sizeof (Wanted));
      run->solids = g_array_new (FALSE, FALSE, sizeof (Solid));
    }
  return run;
}

/* In a course that stands nothing is parted any more. */
static void
judge_standing (const Geometry *geometry, LaidPin *pin)
{
  pin->fate = PIN_STANDS;
  for (guint i = 0; i < geometry->segments->len; i++)
    {
      const Segment *segment = geometry_segment (geometry, (gint32) i);

      if (segment->course != pin->course || segment->a != pin->x
          || (pin->length > 0 && segment->b - segment->a != pin->length))
        continue;
      pin->fate = PIN_MET;
      pin->segment = segment->index;
      return;
    }
}

static void
judge (const Parting *parting, LaidPin *pin)
{
  Run *best = NULL;

  if (pin->course <= parting->geometry->held)
    {
      judge_standing (parting->geometry, pin);
      return;
    }

  pin->fate = pin->course > (gint32) parting->geometry->courses->len ? PIN_NO_COURSE : PIN_NO_WALL;
  for (guint i = 0; i < parting->geometry->segments->len; i++)
    {
      Run *run;
      LaidPin tried = *pin;

      if (geometry_segment (parting->geometry, (gint32) i)->course != pin->course)
        continue;
      run = run_of (parting, i);
      tried.fate = fate_in (parting, run, &tried);
      if (tried.fate == PIN_NO_WALL || (pin->fate == PIN_MET && tried.fate != PIN_MET))
        continue;
      if ((tried.fate == PIN_MET && pin->fate != PIN_MET)
          || goes_first (parting, run->segment, best ? best->segment : NULL))
        {
          *pin = tried;
          best = run;
        }
    }
  if (pin->fate == PIN_MET)
    meet (parting, best, pin);
}

/* --- parting --- */

void
pinned_add_part (Geometry *geometry, GArray *parts, const Segment *whole, Length a, Length b)
{
  Segment part = *whole;

  part.a = a;
  part.b = b;
  part.joined_left = a != whole->a;
  part.joined_right = b != whole->b;
  part.first_step = (gint32) geometry->steps->len;
  for (gint32 i = 0; i < whole->n_steps; i++)
    {
      Step step = *geometry_step (geometry, whole->first_step + i);
      gint32 slope = geometry_slope (geometry, geometry_step (geometry, whole->first_step + i));

      step.from = MAX (step.from, a);
      step.to = MIN (step.to, b);
      if (step.from < step.to)
        geometry_add_step (geometry, &step, slope);
    }
  part.n_steps = (gint32) geometry->steps->len - part.first_step;
  segment_judge (geometry, &part);
  g_array_append_val (parts, part);
}

static void
set_solid (const Run *run, Segment *part)
{
  for (guint i = 0; i < run->solids->len; i++)
    if (g_array_index (run->solids, Solid, i).from == part->a)
      part->set = TRUE;
}

static void
part_run (Geometry *geometry, GArray *parts, const Run *run)
{
  Segment whole = *run->segment;
  Length a = whole.a;

  for (guint i = 0; i <= run->faces->len; i++)
    {
      gboolean last = i == run->faces->len;
      Length face = last ? 0 : g_array_index (run->faces, Wanted, i).face;

      pinned_add_part (geometry, parts, &whole, a, last ? whole.b : face - geometry->joint);
      set_solid (run, &g_array_index (parts, Segment, parts->len - 1));
      a = face;
    }
}

static void
part_all (const Parting *parting)
{
  Geometry *geometry = parting->geometry;
  GArray *parts = g_array_new (FALSE, TRUE, sizeof (Segment));

  for (guint i = 0; i < geometry->segments->len; i++)
    {
      if (parting->runs[i].segment == NULL)
        g_array_append_val (parts, *geometry_segment (geometry, (gint32) i));
      else
        part_run (geometry, parts, &parting->runs[i]);
    }
  for (guint i = 0; i < geometry->segments->len; i++)
    if (parting->runs[i].segment != NULL)
      {
        g_array_unref (parting->runs[i].faces);
        g_array_unref (parting->runs[i].solids);
      }
  g_array_unref (geometry->segments);
  geometry->segments = parts;
}

void
pinned_split (Geometry *geometry, const Wall *wall)
{
  Parting parting = { .geometry = geometry };

  if (wall->pins->len == 0)
    return;
  parting.runs = g_new0 (Run, MAX (geometry->segments->len, 1));
  for (guint i = 0; i < wall->pins->len; i++)
    {
      const Pin *pin = wall_pin_at (wall, i);
      LaidPin laid = { .course = pin->course, .x = pin->x, .length = pin->length };

      judge (&parting, &laid);
      g_array_append_val (geometry->pins, laid);
    }
  part_all (&parting);
  g_free (parting.runs);
}
