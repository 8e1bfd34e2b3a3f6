/* outline.c - the outside of a building, side by side, and the walls that make it */
#include "model/outline.h"

#include <glib/gi18n-lib.h>

/* --- reading --- */

static gboolean
is_turn (const char *word)
{
  return g_ascii_strcasecmp (word, "l") == 0 || g_ascii_strcasecmp (word, "r") == 0;
}

/* A rectangle of the two lengths. */
static void
add_rectangle (GArray *sides)
{
  for (guint i = 0; i < 2; i++)
    {
      OutlineSide side = g_array_index (sides, OutlineSide, i);

      g_array_append_val (sides, side);
    }
}

static char *
read_word (GArray *sides, const char *word)
{
  OutlineSide side = { 0, FALSE };

  if (is_turn (word) && sides->len == 0)
    return g_strdup_printf (_ ("An outline begins with a length, not with a turn."));
  if (is_turn (word))
    {
      g_array_index (sides, OutlineSide, sides->len - 1).right = g_ascii_tolower (*word) == 'r';
      return NULL;
    }
  if (!length_parse_typed (word, &side.length))
    return g_strdup_printf (_ ("\"%s\" is neither a length nor a turn (L or R)."), word);
  g_array_append_val (sides, side);
  return NULL;
}

GArray *
outline_parse (const char *text, char **fault)
{
  g_autoptr (GArray) sides = g_array_new (FALSE, FALSE, sizeof (OutlineSide));
  g_autofree char *spaced = g_strdelimit (g_strdup (text), ";\t\n", ' ');
  g_auto (GStrv) words = g_strsplit (spaced, " ", -1);
  gboolean rectangle = FALSE;

  *fault = NULL;
  for (guint i = 0; words[i] != NULL && *fault == NULL; i++)
    {
      if (g_ascii_strcasecmp (words[i], "x") == 0 || g_str_equal (words[i], "×"))
        rectangle = TRUE;
      else if (*words[i] != '\0')
        *fault = read_word (sides, words[i]);
    }
  if (*fault != NULL)
    return NULL;
  if (rectangle && sides->len != 2)
    {
      *fault = g_strdup (_ ("A rectangle has two lengths, as in \"8000 x 6000\"."));
      return NULL;
    }
  if (rectangle)
    add_rectangle (sides);
  return g_steal_pointer (&sides);
}

/* --- walking round --- */

static const OutlineSide *
side_at (const GArray *sides, guint i)
{
  return &g_array_index (sides, OutlineSide, i % sides->len);
}

void
outline_gap (const GArray *sides, gint64 *east, gint64 *north)
{
  Runs runs = RUNS_EAST;

  *east = *north = 0;
  for (guint i = 0; i < sides->len; i++)
    {
      *east += (gint64) side_at (sides, i)->length * runs_east (runs);
      *north += (gint64) side_at (sides, i)->length * runs_north (runs);
      runs = runs_turned (runs, side_at (sides, i)->right);
    }
}

/* --- faults --- */

static char *
sides_fault (const GArray *sides)
{
  char is[LENGTH_TEXT_SIZE];
  gint64 round = 0;

  if (sides->len < 4)
    return g_strdup (_ ("An outline has four sides at least."));
  if (sides->len > 1000)
    return g_strdup (_ ("An outline has 1000 sides at most."));
  for (guint i = 0; i < sides->len; i++)
    if (side_at (sides, i)->length < LENGTH_MM (100)
        || side_at (sides, i)->length > LENGTH_MM (500000))
      return g_strdup_printf (_ ("Side %u is %s mm long; it must be from 100 to 500000 mm."), i + 1,
                              length_text (side_at (sides, i)->length, is));
  for (guint i = 0; i < sides->len; i++)
    round += side_at (sides, i)->length;
  if (round > 4 * (gint64) LENGTH_MAX)
    return g_strdup (_ ("The outline is more than 4 km round."));
  return NULL;
}

static char *
gap_fault (const GArray *sides)
{
  gint64 east, north;
  g_autofree char *to_east = NULL;
  g_autofree char *to_north = NULL;

  outline_gap (sides, &east, &north);
  if (east == 0 && north == 0)
    return NULL;
  to_east = g_strdup_printf (east > 0 ? _ ("%.10g mm too far east") : _ ("%.10g mm too far west"),
                             (double) ABS (east) / LENGTH_PER_MM);
  to_north
      = g_strdup_printf (north > 0 ? _ ("%.10g mm too far north") : _ ("%.10g mm too far south"),
                         (double) ABS (north) / LENGTH_PER_MM);
  if (north == 0)
    return g_strdup_printf (_ ("The outline does not close: its last side ends %s of its "
                               "beginning."),
                            to_east);
  if (east == 0)
    return g_strdup_printf (_ ("The outline does not close: its last side ends %s of its "
                               "beginning."),
                            to_north);
  return g_strdup_printf (_ ("The outline does not close: its last side ends %s and %s of its "
                             "beginning."),
                          to_east, to_north);
}

/* Four more turns to the left than to the right go once round, with the inside on the left. */
static char *
turns_fault (const GArray *sides)
{
  int left = 0;

  for (guint i = 0; i < sides->len; i++)
    left += side_at (sides, i)->right ? -1 : 1;
  if (left == 4)
    return NULL;
  if (left == -4)
    return g_strdup (_ ("The outline runs with the clock: say it the other way round, so that the "
                        "building is on the left."));
  return g_strdup (_ ("The turns of the outline do not go once round: there must be four more to "
                      "the left than to the right."));
}

/* --- sides that cross --- */

typedef struct
{
  gint64 x0, y0, x1, y1; /* x0 <= x1, y0 <= y1 */
} Reach;

static Reach *
reaches_new (const GArray *sides)
{
  Reach *reaches = g_new (Reach, sides->len);
  Runs runs = RUNS_EAST;
  gint64 x = 0, y = 0;

  for (guint i = 0; i < sides->len; i++)
    {
      const gint64 to_x = x + (gint64) side_at (sides, i)->length * runs_east (runs);
      const gint64 to_y = y + (gint64) side_at (sides, i)->length * runs_north (runs);

      reaches[i] = (Reach){ MIN (x, to_x), MIN (y, to_y), MAX (x, to_x), MAX (y, to_y) };
      x = to_x;
      y = to_y;
      runs = runs_turned (runs, side_at (sides, i)->right);
    }
  return reaches;
}

/* Sides that follow each other share a corner, and no more: they are at a right angle. */
static char *
crossing_fault (const GArray *sides)
{
  g_autofree Reach *reaches = reaches_new (sides);

  for (guint i = 0; i < sides->len; i++)
    for (guint k = i + 2; k < sides->len - (i == 0 ? 1 : 0); k++)
      {
        const Reach *a = &reaches[i], *b = &reaches[k];
        const gint64 x = MAX (a->x0, b->x0), y = MAX (a->y0, b->y0);

        if (x <= MIN (a->x1, b->x1) && y <= MIN (a->y1, b->y1))
          return g_strdup_printf (_ ("Sides %u and %u of the outline cross or touch, %.10g mm east "
                                     "and %.10g mm north of its beginning."),
                                  i + 1, k + 1, (double) x / LENGTH_PER_MM,
                                  (double) y / LENGTH_PER_MM);
      }
  return NULL;
}

char *
outline_fault (const GArray *sides)
{
  char *fault = sides_fault (sides);

  if (fault == NULL)
    fault = turns_fault (sides);
  if (fault == NULL)
    fault = gap_fault (sides);
  return fault != NULL ? fault : crossing_fault (sides);
}

/* --- walls --- */

/* At an inner corner both walls reach over it, so that they share the square there. */
GPtrArray *
outline_walls (const GArray *sides, Length thickness, Length height, Length x, Length y)
{
  GPtrArray *walls = wall_list_new ();
  Runs runs = RUNS_EAST;

  for (guint i = 0; i < sides->len; i++)
    {
      const OutlineSide *side = side_at (sides, i);
      Length before = side_at (sides, i + sides->len - 1)->right ? thickness : 0;
      Length after = side->right ? thickness : 0;
      Wall *wall = wall_new ();

      wall->height = height;
      wall->length = before + side->length + after;
      wall->place = (PlanPlace){ TRUE, x - before * runs_east (runs),
                                 y - before * runs_north (runs), runs };
      g_ptr_array_add (walls, wall);
      x += side->length * runs_east (runs);
      y += side->length * runs_north (runs);
      runs = runs_turned (runs, side->right);
    }
  return walls;
}
