/* built.c - what was measured of a wall while it went up, and what of it stands */
#include "model/built.h"

#include <glib/gi18n-lib.h>

/* --- one course --- */

LaidCourse
laid_course_new (gint32 course)
{
  return (LaidCourse){ .course = course,
                       .perpends = g_array_new (FALSE, FALSE, sizeof (LaidPerpend)) };
}

LaidCourse
laid_course_copy (const LaidCourse *laid)
{
  LaidCourse copy = *laid;

  g_array_ref (copy.perpends);
  copy.foreign = foreign_copy (&laid->foreign);
  return copy;
}

void
laid_course_clear (LaidCourse *laid)
{
  g_clear_pointer (&laid->perpends, g_array_unref);
  foreign_clear (&laid->foreign);
}

static gboolean
perpends_equal (const GArray *a, const GArray *b)
{
  if (a == b)
    return TRUE;
  if (a->len != b->len)
    return FALSE;
  for (guint i = 0; i < a->len; i++)
    {
      const LaidPerpend *p = &g_array_index (a, LaidPerpend, i),
                        *q = &g_array_index (b, LaidPerpend, i);

      if (p->x != q->x || p->z != q->z)
        return FALSE;
    }
  return TRUE;
}

/* Only what is given is compared. */
static gboolean
same (guint a_given, guint b_given, guint field, Length a, Length b)
{
  return (a_given & field) == (b_given & field) && (!(a_given & field) || a == b);
}

gboolean
laid_course_equal (const LaidCourse *a, const LaidCourse *b)
{
  return a->course == b->course && perpends_equal (a->perpends, b->perpends)
         && same (a->given, b->given, LAID_BOTTOM, a->bottom, b->bottom)
         && same (a->given, b->given, LAID_TOP, a->top, b->top)
         && same (a->given, b->given, LAID_OVER, a->over, b->over)
         && same (a->given, b->given, LAID_TOP_RIGHT, a->top_right, b->top_right)
         && foreign_equal (&a->foreign, &b->foreign);
}

gboolean
laid_course_top (const LaidCourse *laid, Length *top)
{
  if (!(laid->given & LAID_TOP))
    return FALSE;
  *top = laid->top;
  if (laid->given & LAID_TOP_RIGHT)
    *top = (laid->top + laid->top_right) / 2;
  return TRUE;
}

/* --- all of a wall --- */

static void
laid_clear_item (gpointer data)
{
  laid_course_clear (data);
}

Built *
built_new (void)
{
  Built *built = g_new0 (Built, 1);

  built->laid = g_array_new (FALSE, TRUE, sizeof (LaidCourse));
  g_array_set_clear_func (built->laid, laid_clear_item);
  return built;
}

Built *
built_copy (const Built *built)
{
  Built *copy = built ? built_new () : NULL;
  GArray *laid = built ? copy->laid : NULL;

  if (!built)
    return NULL;
  *copy = *built;
  copy->laid = laid;
  copy->as_of = g_strdup (built->as_of);
  copy->foreign = foreign_copy (&built->foreign);
  for (guint i = 0; i < built->laid->len; i++)
    {
      LaidCourse course = laid_course_copy (&g_array_index (built->laid, LaidCourse, i));

      g_array_append_val (copy->laid, course);
    }
  return copy;
}

void
built_free (Built *built)
{
  if (!built)
    return;
  g_free (built->as_of);
  g_array_unref (built->laid);
  foreign_clear (&built->foreign);
  g_free (built);
}

gboolean
built_equal (const Built *a, const Built *b)
{
  if (!a || !b)
    return a == b;
  if (a->courses != b->courses || a->laid->len != b->laid->len
      || g_strcmp0 (a->as_of, b->as_of) != 0 || !foreign_equal (&a->foreign, &b->foreign))
    return FALSE;
  for (guint i = 0; i < a->laid->len; i++)
    if (!laid_course_equal (&g_array_index (a->laid, LaidCourse, i),
                            &g_array_index (b->laid, LaidCourse, i)))
      return FALSE;
  return same (a->given, b->given, BUILT_PLANNED_LENGTH, a->planned_length, b->planned_length)
         && same (a->given, b->given, BUILT_PLUMB, a->plumb, b->plumb)
         && same (a->given, b->given, BUILT_BOW, a->bow, b->bow)
         && same (a->given, b->given, BUILT_BOW_METRE, a->bow_metre, b->bow_metre)
         && same (a->given, b->given, BUILT_BED_LEAST, a->bed_least, b->bed_least)
         && same (a->given, b->given, BUILT_BED_MOST, a->bed_most, b->bed_most);
}

/* Perpends that would lie before the wall are taken out. */
static GArray *
shifted (const GArray *perpends, Length by)
{
  GArray *moved = g_array_new (FALSE, FALSE, sizeof (LaidPerpend));

  for (guint i = 0; i < perpends->len; i++)
    {
      LaidPerpend perpend = g_array_index (perpends, LaidPerpend, i);

      perpend.x += by;
      if (perpend.x > 0)
        g_array_append_val (moved, perpend);
    }
  return moved;
}

void
built_shift (Built *built, Length by)
{
  for (guint i = 0; i < built->laid->len; i++)
    {
      LaidCourse *laid = &g_array_index (built->laid, LaidCourse, i);
      GArray *moved = shifted (laid->perpends, by);

      g_array_unref (laid->perpends);
      laid->perpends = moved;
    }
}

/* --- heights --- */

/* Where courses were to lie when they were written down. */
static void
find_written (const Built *built, const Laying *laying, Length unit, Length *bottoms)
{
  for (gint32 i = 0; i < built->courses; i++)
    {
      const LaidCourse *laid = built_course (built, i + 1);

      if (laid->given & LAID_BOTTOM)
        bottoms[i] = laid->bottom;
      else
        bottoms[i] = i > 0 ? bottoms[i - 1] + unit + laying->bed : laying->first_bed;
    }
}

static void
shift_from (Length *bottoms, gint32 from, gint32 to, Length by)
{
  for (gint32 i = from; i < to; i++)
    bottoms[i] += by;
}

/* Equal beds from one course to another, both excluded. */
static void
spread (Length *bottoms, gint32 from, Length at, gint32 to, Length upto)
{
  for (gint32 i = MAX (from + 1, 0); i < to; i++)
    bottoms[i] = at + (Length) ((gint64) (upto - at) * (i - from) / (to - from));
}

Length *
built_bottoms (const Built *built, const Laying *laying, Length unit)
{
  Length *bottoms = g_new (Length, MAX (built->courses, 1));
  gint32 last = -1; /* that was measured */
  Length top, off = 0;

  find_written (built, laying, unit, bottoms);
  for (gint32 i = 0; i < built->courses; i++)
    {
      if (!laid_course_top (built_course (built, i + 1), &top))
        continue;
      off = top - unit - bottoms[i];
      bottoms[i] = top - unit;
      if (last >= 0)
        spread (bottoms, last, bottoms[last], i, bottoms[i]);
      else if (i > 0 && bottoms[0] + off >= 0)
        shift_from (bottoms, 0, i, off);
      else if (i > 0)
        spread (bottoms, 0, bottoms[0] = 0, i, bottoms[i]);
      last = i;
    }
  shift_from (bottoms, last + 1, last >= 0 ? built->courses : 0, off);
  return bottoms;
}

/* --- faults --- */

static char *
length_fault (const char *what, Length value, Length least, Length most)
{
  char is[LENGTH_TEXT_SIZE], low[LENGTH_TEXT_SIZE], high[LENGTH_TEXT_SIZE];

  if (value >= least && value <= most)
    return NULL;
  return g_strdup_printf (_ ("%s is %s mm; it must be from %s to %s mm."), what,
                          length_text (value, is), length_text (least, low),
                          length_text (most, high));
}

static char *
figures_fault (const Built *built)
{
  const struct
  {
    guint field;
    const char *what;
    Length value, least, most;
  } rows[] = {
    { BUILT_PLANNED_LENGTH, _ ("The wall's planned length"), built->planned_length, LENGTH_MM (50),
      LENGTH_MAX },
    { BUILT_PLUMB, _ ("What the wall is out of plumb"), built->plumb, -BUILT_MAX_OFF,
      BUILT_MAX_OFF },
    { BUILT_BOW, _ ("What the wall is off the line"), built->bow, -BUILT_MAX_OFF, BUILT_MAX_OFF },
    { BUILT_BOW_METRE, _ ("What the wall is off the line in a metre"), built->bow_metre,
      -BUILT_MAX_OFF, BUILT_MAX_OFF },
    { BUILT_BED_LEAST, _ ("The thinnest next bed"), built->bed_least, 0, BUILT_MAX_BED },
    { BUILT_BED_MOST, _ ("The thickest next bed"), built->bed_most, 0, BUILT_MAX_BED },
  };
  const guint both = BUILT_BED_LEAST | BUILT_BED_MOST;

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    if (built->given & rows[i].field)
      {
        char *fault = length_fault (rows[i].what, rows[i].value, rows[i].least, rows[i].most);

        if (fault)
          return fault;
      }
  if ((built->given & both) == both && built->bed_least > built->bed_most)
    return g_strdup (_ ("The thinnest next bed is thicker than the thickest."));
  return NULL;
}

static char *
perpends_fault (const LaidCourse *laid)
{
  char x[LENGTH_TEXT_SIZE];

  if (laid->perpends->len > BUILT_MAX_PERPENDS)
    return g_strdup_printf (_ ("Course %d stands with %u perpends; at most %d are allowed."),
                            laid->course, laid->perpends->len, BUILT_MAX_PERPENDS);
  for (guint i = 0; i < laid->perpends->len; i++)
    {
      const LaidPerpend *perpend = &g_array_index (laid->perpends, LaidPerpend, i),
                        *before = perpend - 1;
      char *fault = length_fault (_ ("A standing perpend's place"), perpend->x, 1, LENGTH_MAX);

      if (!fault && perpend->z != PERPEND_ALL)
        fault = length_fault (_ ("A standing perpend's height"), perpend->z, 0, LENGTH_MAX);
      if (fault)
        return fault;
      if (i > 0 && (before->x > perpend->x || (before->x == perpend->x && before->z >= perpend->z)))
        return g_strdup_printf (
            _ ("The perpends of course %d, which stands, are not in order at %s mm."), laid->course,
            length_text (perpend->x, x));
    }
  return NULL;
}

static char *
course_fault (const LaidCourse *laid)
{
  char *fault = perpends_fault (laid);

  if (!fault && laid->given & LAID_BOTTOM)
    fault = length_fault (_ ("A standing course's bottom"), laid->bottom, 0, LENGTH_MAX);
  if (!fault && laid->given & LAID_OVER && (laid->over < 0 || laid->over >= laid->course))
    fault = g_strdup_printf (_ ("Course %d was laid over %d that were held fast; only those below "
                                "it can have been."),
                             laid->course, laid->over);
  if (!fault && laid->given & LAID_TOP)
    fault = length_fault (_ ("A measured course's top"), laid->top, 0, LENGTH_MAX);
  if (!fault && laid->given & LAID_TOP_RIGHT)
    fault
        = length_fault (_ ("A measured course's top at the right"), laid->top_right, 0, LENGTH_MAX);
  if (!fault && (laid->given & (LAID_TOP | LAID_TOP_RIGHT)) == LAID_TOP_RIGHT)
    fault = g_strdup_printf (_ ("The top of course %d was measured at the right end alone; measure "
                                "it at the left, too."),
                             laid->course);
  return fault;
}

static char *
courses_fault (const Built *built)
{
  if (built->courses < 0 || built->courses > BUILT_MAX_COURSES)
    return g_strdup_printf (_ ("%d courses are said to stand; it must be 0 to %d."), built->courses,
                            BUILT_MAX_COURSES);
  for (gint32 i = 1; i <= MAX (built->courses, (gint32) built->laid->len); i++)
    {
      char *fault = NULL;

      if (i > (gint32) built->laid->len || built_course (built, i)->course != i)
        return g_strdup_printf (
            _ ("It stands up to course %d; how course %d was laid is not said, or said twice."),
            built->courses, i);
      if (i > built->courses)
        return g_strdup_printf (_ ("Course %d does not stand: only courses up to %d do."), i,
                                built->courses);
      if ((fault = course_fault (built_course (built, i))))
        return fault;
    }
  return NULL;
}

static char *
low_fault (gint32 course, Length top, gint32 below, Length from, gint32 more, Length unit)
{
  char is[LENGTH_TEXT_SIZE], at[LENGTH_TEXT_SIZE], least[LENGTH_TEXT_SIZE];

  if (below == 0)
    return g_strdup_printf (
        _ ("Course %d cannot end at %s mm: %d blocks one on the other reach %s mm at least."),
        course, length_text (top, is), more, length_text (more * unit, least));
  return g_strdup_printf (_ ("Course %d cannot end at %s mm: course %d ends at %s mm, and a block "
                             "for each course above it reaches %s mm at least."),
                          course, length_text (top, is), below, length_text (from, at),
                          length_text (from + more * unit, least));
}

/* Every course is one unit at least above the one below it, as written down and as measured. */
static char *
heights_fault (const Built *built, const Laying *laying, Length unit)
{
  gint32 below = 0; /* the last one that was measured, and its top */
  Length from = 0, top;
  gint64 before = -(gint64) unit;

  for (gint32 i = 1; i <= built->courses; i++)
    {
      const LaidCourse *laid = built_course (built, i);
      gint64 written = i > 1 ? before + unit + laying->bed : laying->first_bed;

      if (laid->given & LAID_BOTTOM)
        written = laid->bottom;
      if (written < before + unit)
        return low_fault (i, (Length) written + unit, i - 1, (Length) before + unit, 1, unit);
      if (written > LENGTH_MAX)
        return g_strdup_printf (_ ("%d courses are said to stand; no wall is so high."),
                                built->courses);
      before = written;
      if (!laid_course_top (laid, &top))
        continue;
      if ((gint64) top - from < (gint64) (i - below) * unit)
        return low_fault (i, top, below, from, i - below, unit);
      below = i;
      from = top;
    }
  return NULL;
}

static char *
too_high_fault (const Built *built, const Laying *laying, Length unit, Length height)
{
  g_autofree Length *bottoms = built_bottoms (built, laying, unit);
  char is[LENGTH_TEXT_SIZE], wall[LENGTH_TEXT_SIZE];

  if (built->courses == 0 || bottoms[built->courses - 1] < height)
    return NULL;
  return g_strdup_printf (_ ("Course %d stands at %s mm, and the wall ends at %s mm: it can be no "
                             "lower than what stands of it."),
                          built->courses, length_text (bottoms[built->courses - 1], is),
                          length_text (height, wall));
}

char *
built_fault (const Built *built, const Laying *laying, const Block *block, Length height)
{
  char *fault;

  if ((fault = figures_fault (built)) || (fault = courses_fault (built)) || !block)
    return fault;
  if ((fault = heights_fault (built, laying, block->height)))
    return fault;
  return too_high_fault (built, laying, block->height, height);
}
