#include "app/built-cells.h"

#include <glib/gi18n.h>

#include "app/tool.h"
#include "bond/gauge.h"

static const struct
{
  const char *name;
  guint field; /* BuiltField bit; 0: a figure of its own */
} figures[] = {
  [FIGURE_AS_OF] = { N_ ("Date"), 0 },
  [FIGURE_LENGTH] = { N_ ("Length"), BUILT_PLANNED_LENGTH },
  [FIGURE_PLUMB] = { N_ ("Out of plumb"), BUILT_PLUMB },
  [FIGURE_BOW] = { N_ ("Bow over its length"), BUILT_BOW },
  [FIGURE_BOW_METRE] = { N_ ("Bow in a metre"), BUILT_BOW_METRE },
  [FIGURE_BED_LEAST] = { N_ ("Next beds, at least"), BUILT_BED_LEAST },
  [FIGURE_BED_MOST] = { N_ ("Next beds, at most"), BUILT_BED_MOST },
};

static const char *const of_opening[] = {
  [FIGURE_X] = N_ ("left jamb"),
  [FIGURE_WIDTH] = N_ ("width"),
  [FIGURE_SILL] = N_ ("sill"),
  [FIGURE_HEIGHT] = N_ ("height"),
};

static Wall *
refuse (GError **error, char *sentence)
{
  g_set_error_literal (error, MODEL_ERROR, MODEL_ERROR_REFUSED, sentence);
  g_free (sentence);
  return NULL;
}

char *
built_cell_name (const Wall *wall, BuiltCell cell)
{
  const Opening *opening;

  switch (cell.part)
    {
    case BUILT_OF_COURSE:
      return g_strdup_printf (cell.column == SIDE_LEFT ? _ ("Course %u, left end")
                                                       : _ ("Course %u, right end"),
                              cell.row);
    case BUILT_OF_OPENING:
      opening = wall_opening (wall, (OpeningId){ cell.row });
      return g_strdup_printf ("%s, %s", opening ? tool_opening_name (opening) : "",
                              _ (of_opening[cell.column]));
    case BUILT_OF_WALL:
    default:
      return g_strdup (_ (figures[cell.column].name));
    }
}

/* ---- what stands there ---- */

static gboolean
figure_of_wall (const Wall *wall, BuiltFigure figure, Length *out)
{
  const Built *built = wall->built;

  if (!built || !(built->given & figures[figure].field))
    return FALSE;
  switch (figure)
    {
    case FIGURE_PLUMB:
      *out = built->plumb;
      return TRUE;
    case FIGURE_BOW:
      *out = built->bow;
      return TRUE;
    case FIGURE_BOW_METRE:
      *out = built->bow_metre;
      return TRUE;
    case FIGURE_BED_LEAST:
      *out = built->bed_least;
      return TRUE;
    case FIGURE_BED_MOST:
      *out = built->bed_most;
      return TRUE;
    case FIGURE_LENGTH:
      *out = wall->length;
      return TRUE;
    case FIGURE_AS_OF:
    case N_BUILT_FIGURES:
    default:
      return FALSE;
    }
}

static gboolean
top_of_course (const Wall *wall, guint32 course, guint side, Length *out)
{
  const LaidCourse *laid;

  if (course < 1 || course > (guint32) wall_standing (wall))
    return FALSE;
  laid = built_course (wall->built, (gint32) course);
  *out = side == SIDE_LEFT ? laid->top : laid->top_right;
  return (laid->given & (side == SIDE_LEFT ? LAID_TOP : LAID_TOP_RIGHT)) != 0;
}

static gboolean
figure_of_opening (const Wall *wall, guint32 id, OpeningFigure figure, Length *out)
{
  const Opening *opening = wall_opening (wall, (OpeningId){ id });

  if (!opening || !opening_is_measured (opening, figure))
    return FALSE;
  *out = opening_figure (opening, figure);
  return TRUE;
}

static gboolean
measured (const Wall *wall, BuiltCell cell, Length *out)
{
  switch (cell.part)
    {
    case BUILT_OF_COURSE:
      return top_of_course (wall, cell.row, cell.column, out);
    case BUILT_OF_OPENING:
      return figure_of_opening (wall, cell.row, (OpeningFigure) cell.column, out);
    case BUILT_OF_WALL:
    default:
      return figure_of_wall (wall, (BuiltFigure) cell.column, out);
    }
}

char *
built_cell_text (const Wall *wall, BuiltCell cell)
{
  Length length;

  if (cell.part == BUILT_OF_WALL && cell.column == FIGURE_AS_OF)
    return g_strdup (wall->built && wall->built->as_of ? wall->built->as_of : "");
  return measured (wall, cell, &length) ? length_format (length) : g_strdup ("");
}

static Length
planned_top (const Wall *wall, const Block *block, gint32 course)
{
  const Laying laying = laying_resolve (&wall->laying, block);

  return gauge_top (NULL, block, &laying, course);
}

gboolean
built_cell_planned (const Wall *wall, const Block *block, BuiltCell cell, Length *planned)
{
  const Opening *opening;

  switch (cell.part)
    {
    case BUILT_OF_COURSE:
      *planned = planned_top (wall, block, (gint32) cell.row);
      return TRUE;
    case BUILT_OF_OPENING:
      opening = wall_opening (wall, (OpeningId){ cell.row });
      if (opening)
        *planned = opening_planned (opening, (OpeningFigure) cell.column);
      return opening != NULL;
    case BUILT_OF_WALL:
    default:
      *planned = cell.column == FIGURE_LENGTH ? wall_planned_length (wall) : 0;
      return cell.column >= FIGURE_LENGTH && cell.column <= FIGURE_BOW_METRE;
    }
}

/* ---- what is typed ---- */

/* A length with a sign before it or none; FALSE with a sentence. */
static gboolean
read_length (const char *text, Length *out, GError **error)
{
  if (length_parse_typed (*text == '+' ? text + 1 : text, out))
    return TRUE;
  refuse (error,
          g_strdup_printf (_ ("“%s” is no length. Type millimetres, or m, cm, ft, in."), text));
  return FALSE;
}

static Wall *
set_as_of (const Wall *wall, const char *text)
{
  g_autoptr (Wall) next = wall_copy (wall);

  if (!next->built)
    next->built = built_new ();
  g_free (next->built->as_of);
  next->built->as_of = *text ? g_strdup (text) : NULL;
  /* So that one of which nothing is said any more is none. */
  return built_set_courses (next, wall_standing (next), NULL, NULL, NULL);
}

static Wall *
set_of_wall (const Wall *wall, BuiltFigure figure, const Length *length)
{
  if (figure == FIGURE_LENGTH)
    return built_set_length (wall, length);
  return built_set_figure (wall, (BuiltField) figures[figure].field, length);
}

/* The left end goes first: by itself the right one is no top. */
static Wall *
set_top (const Wall *wall, guint32 course, guint side, const Length *length, GError **error)
{
  Length left, right;
  const gboolean has_left = top_of_course (wall, course, SIDE_LEFT, &left);
  const gboolean has_right = top_of_course (wall, course, SIDE_RIGHT, &right);

  if (side == SIDE_LEFT && !length && has_right)
    return refuse (error, g_strdup_printf (_ ("Course %u is measured at its right end, too: empty "
                                              "that first."),
                                           course));
  if (side == SIDE_RIGHT && length && !has_left)
    return refuse (error, g_strdup_printf (_ ("The left end of course %u goes first: type that, "
                                              "then the right end."),
                                           course));
  if (side == SIDE_LEFT)
    return built_set_top (wall, (gint32) course, length, has_right ? &right : NULL, error);
  return built_set_top (wall, (gint32) course, has_left ? &left : NULL, length, error);
}

Wall *
built_cell_set (const Wall *wall, BuiltCell cell, const char *text, GError **error)
{
  g_autofree char *bare = g_strstrip (g_strdup (text));
  const Length *given = NULL;
  Length length;

  if (cell.part == BUILT_OF_WALL && cell.column == FIGURE_AS_OF)
    return set_as_of (wall, bare);
  if (*bare && !read_length (bare, &length, error))
    return NULL;
  if (*bare)
    given = &length;
  switch (cell.part)
    {
    case BUILT_OF_COURSE:
      return set_top (wall, cell.row, cell.column, given, error);
    case BUILT_OF_OPENING:
      return built_set_opening (wall, (OpeningId){ cell.row }, (OpeningFigure) cell.column, given,
                                error);
    case BUILT_OF_WALL:
    default:
      return set_of_wall (wall, (BuiltFigure) cell.column, given);
    }
}

gboolean
built_cell_of_deviation (const Deviation *deviation, BuiltCell *cell)
{
  switch (deviation->kind)
    {
    case TOLERANCE_LENGTH:
      *cell = (BuiltCell){ BUILT_OF_WALL, 0, FIGURE_LENGTH };
      return TRUE;
    case TOLERANCE_PLUMB:
      *cell = (BuiltCell){ BUILT_OF_WALL, 0, FIGURE_PLUMB };
      return TRUE;
    case TOLERANCE_BOW:
      *cell = (BuiltCell){ BUILT_OF_WALL, 0, FIGURE_BOW };
      return TRUE;
    case TOLERANCE_BOW_METRE:
      *cell = (BuiltCell){ BUILT_OF_WALL, 0, FIGURE_BOW_METRE };
      return TRUE;
    case TOLERANCE_TOP:
      *cell = (BuiltCell){ BUILT_OF_COURSE, (guint32) deviation->course,
                           deviation->at_right ? SIDE_RIGHT : SIDE_LEFT };
      return TRUE;
    case TOLERANCE_OPENING:
      *cell = (BuiltCell){ BUILT_OF_OPENING, deviation->opening.n, deviation->figure };
      return TRUE;
    case TOLERANCE_LEVEL:
    case TOLERANCE_BED:
    case N_TOLERANCES:
    default:
      return FALSE;
    }
}

Wall *
built_as_planned (const Wall *wall)
{
  Wall *planned = built_set_length (wall, NULL);

  for (guint i = 0; i < wall->openings->len; i++)
    for (guint figure = 0; figure < N_FIGURES; figure++)
      {
        const OpeningId id = wall_opening_at (wall, i)->id;
        Wall *next = built_set_opening (planned, id, (OpeningFigure) figure, NULL, NULL);

        wall_unref (planned);
        planned = next;
      }
  g_clear_pointer (&planned->built, built_free);
  return planned;
}
