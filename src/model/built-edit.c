/* built-edit.c - figures of the site, taken into a wall and taken back */
#include "model/built-edit.h"

#include <glib/gi18n-lib.h>

static Wall *
refuse (GError **error, char *sentence)
{
  g_set_error_literal (error, MODEL_ERROR, MODEL_ERROR_REFUSED, sentence);
  g_free (sentence);
  return NULL;
}

/* A copy with something built. */
static Wall *
to_build (const Wall *wall)
{
  Wall *next = wall_copy (wall);

  if (!next->built)
    next->built = built_new ();
  return next;
}

/* One of which nothing is said any more is none. */
static Wall *
tidy (Wall *next)
{
  const Built *built = next->built;

  if (built && built->courses == 0 && built->given == 0 && !built->as_of
      && !built->foreign.attributes && !built->foreign.elements)
    g_clear_pointer (&next->built, built_free);
  return next;
}

/* --- progress --- */

static const LaidCourse *
find_laid (const GArray *laid, gint32 course)
{
  for (guint i = 0; laid && i < laid->len; i++)
    if (g_array_index (laid, LaidCourse, i).course == course)
      return &g_array_index (laid, LaidCourse, i);
  return NULL;
}

Wall *
built_set_courses (const Wall *wall, gint32 courses, const GArray *laid, const char *as_of,
                   GError **error)
{
  g_autoptr (Wall) next = to_build (wall);
  Built *built = next->built;

  if (courses < 0 || courses > BUILT_MAX_COURSES)
    return refuse (error, g_strdup_printf (_ ("%d courses cannot stand; it must be 0 to %d."),
                                           courses, BUILT_MAX_COURSES));
  for (gint32 i = built->courses + 1; i <= courses; i++)
    {
      const LaidCourse *said = find_laid (laid, i);
      LaidCourse course;

      if (!said)
        return refuse (error, g_strdup_printf (_ ("%s has no course %d: %d courses cannot stand."),
                                               wall_called (wall), i, courses));
      course = laid_course_copy (said);
      g_array_append_val (built->laid, course);
    }
  g_array_set_size (built->laid, (guint) courses);
  built->courses = courses;
  if (as_of)
    {
      g_free (built->as_of);
      built->as_of = g_strdup (as_of);
    }
  return tidy (g_steal_pointer (&next));
}

/* --- figures of the wall --- */

/* The figure and the planned one beside it. */
static void
set_measured (Length *figure, Length *planned, guint *given, guint field, const Length *measured)
{
  if (measured && !(*given & field))
    *planned = *figure;
  if (measured)
    *figure = *measured;
  else if (*given & field)
    *figure = *planned;
  *given = measured ? *given | field : *given & ~field;
}

Wall *
built_set_length (const Wall *wall, const Length *measured)
{
  Wall *next = to_build (wall);
  Length length = wall->length;

  set_measured (&length, &next->built->planned_length, &next->built->given, BUILT_PLANNED_LENGTH,
                measured);
  wall_set_length (next, length);
  return tidy (next);
}

static Length *
figure_of (Built *built, BuiltField field)
{
  switch (field)
    {
    case BUILT_PLUMB:
      return &built->plumb;
    case BUILT_BOW:
      return &built->bow;
    case BUILT_BOW_METRE:
      return &built->bow_metre;
    case BUILT_BED_LEAST:
      return &built->bed_least;
    case BUILT_BED_MOST:
      return &built->bed_most;
    case BUILT_PLANNED_LENGTH:
    default:
      g_assert_not_reached ();
    }
}

Wall *
built_set_figure (const Wall *wall, BuiltField field, const Length *measured)
{
  Wall *next = to_build (wall);
  Built *built = next->built;

  *figure_of (built, field) = measured ? *measured : 0;
  built->given = measured ? built->given | field : built->given & ~(guint) field;
  return tidy (next);
}

/* --- courses --- */

Wall *
built_set_top (const Wall *wall, gint32 course, const Length *left, const Length *right,
               GError **error)
{
  Wall *next;
  LaidCourse *laid;

  if (course < 1 || course > wall_standing (wall))
    return refuse (
        error,
        g_strdup_printf (_ ("Course %d of %s does not stand yet: say first how far it is laid."),
                         course, wall_called (wall)));
  next = wall_copy (wall);
  laid = &g_array_index (next->built->laid, LaidCourse, course - 1);
  laid->given &= ~(guint) (LAID_TOP | LAID_TOP_RIGHT);
  laid->top = left ? *left : 0;
  laid->top_right = left && right ? *right : 0;
  if (left)
    laid->given |= LAID_TOP;
  if (left && right)
    laid->given |= LAID_TOP_RIGHT;
  return next;
}

/* --- openings --- */

static const struct
{
  const char *word;
  guint field;
  gsize figure, planned;
} figures[] = {
  [FIGURE_X]
  = { "x", OPENING_PLANNED_X, G_STRUCT_OFFSET (Opening, x), G_STRUCT_OFFSET (Opening, planned_x) },
  [FIGURE_WIDTH] = { "width", OPENING_PLANNED_WIDTH, G_STRUCT_OFFSET (Opening, width),
                     G_STRUCT_OFFSET (Opening, planned_width) },
  [FIGURE_SILL] = { "sill", OPENING_PLANNED_SILL, G_STRUCT_OFFSET (Opening, sill),
                    G_STRUCT_OFFSET (Opening, planned_sill) },
  [FIGURE_HEIGHT] = { "height", OPENING_PLANNED_HEIGHT, G_STRUCT_OFFSET (Opening, height),
                      G_STRUCT_OFFSET (Opening, planned_height) },
};

static Length *
length_at (const Opening *opening, gsize offset)
{
  return (Length *) (void *) ((char *) opening + offset);
}

const char *
opening_figure_word (OpeningFigure figure)
{
  return figures[figure].word;
}

Length
opening_figure (const Opening *opening, OpeningFigure figure)
{
  return *length_at (opening, figures[figure].figure);
}

gboolean
opening_is_measured (const Opening *opening, OpeningFigure figure)
{
  return (opening->given & figures[figure].field) != 0;
}

Length
opening_planned (const Opening *opening, OpeningFigure figure)
{
  return opening_is_measured (opening, figure) ? *length_at (opening, figures[figure].planned)
                                               : opening_figure (opening, figure);
}

Wall *
built_set_opening (const Wall *wall, OpeningId id, OpeningFigure figure, const Length *measured,
                   GError **error)
{
  Wall *next = wall_copy (wall);
  Opening *opening = wall_own_opening (next, id);

  if (!opening)
    {
      wall_unref (next);
      return refuse (error, g_strdup_printf (_ ("%s has no such opening."), wall_called (wall)));
    }
  set_measured (length_at (opening, figures[figure].figure),
                length_at (opening, figures[figure].planned), &opening->given,
                figures[figure].field, measured);
  return next;
}

void
built_take_all (Wall *wall)
{
  wall_set_length (wall, wall_planned_length (wall));
  g_clear_pointer (&wall->built, built_free);
  for (guint i = 0; i < wall->openings->len; i++)
    {
      Opening *opening = &g_array_index (wall->openings, Opening, i);

      for (OpeningFigure figure = 0; figure < N_FIGURES; figure++)
        set_measured (length_at (opening, figures[figure].figure),
                      length_at (opening, figures[figure].planned), &opening->given,
                      figures[figure].field, NULL);
    }
}
