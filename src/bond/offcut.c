/* offcut.c - units that pieces are sawn from: off-cuts used again, kerfs counted */
#include "bond/offcut.h"

/* A row of boxes ripped along one panel. */
typedef struct
{
  gint32 panel;
  Length z, height;
  Length used;  /* length, kerfs between boxes in it */
  gboolean top; /* nothing stands over it yet */
} Level;

gint
box_compare (gconstpointer a, gconstpointer b)
{
  const Box *p = a, *q = b;

  if (p->length != q->length)
    return p->length > q->length ? -1 : 1;
  if (p->height != q->height)
    return p->height > q->height ? -1 : 1;
  return (p->owner > q->owner) - (p->owner < q->owner);
}

void
offcut_fit_init (OffcutFit *fit, Face face)
{
  fit->face = face;
  fit->panels = g_array_new (FALSE, FALSE, sizeof (Panel));
  fit->levels = g_array_new (FALSE, FALSE, sizeof (Level));
  fit->rooms = g_array_new (FALSE, FALSE, sizeof (Length));
}

void
offcut_fit_clear (OffcutFit *fit)
{
  g_array_unref (fit->panels);
  g_array_unref (fit->levels);
  g_array_unref (fit->rooms);
}

/* --- panels --- */

static void
lay_into (const OffcutFit *fit, Level *level, Box *box)
{
  box->panel = level->panel;
  box->x = level->used > 0 ? level->used + fit->face.kerf : 0;
  box->z = level->z;
  level->used = box->x + box->length;
}

/* The level whose height it wastes least, then the fullest; NULL when none has room. */
static Level *
find_level (const OffcutFit *fit, const Box *box)
{
  Level *best = NULL;

  for (guint i = 0; i < fit->levels->len; i++)
    {
      Level *level = &g_array_index (fit->levels, Level, i);
      Length room = g_array_index (fit->panels, Panel, level->panel).length - level->used
                    - (level->used > 0 ? fit->face.kerf : 0);

      if (level->height >= box->height && room >= box->length
          && (best == NULL || level->height < best->height
              || (level->height == best->height && level->used > best->used)))
        best = level;
    }
  return best;
}

/* The top level with the least room over it that is enough; NULL when there is none. */
static Level *
find_under (const OffcutFit *fit, const Box *box)
{
  Level *best = NULL;

  for (guint i = 0; i < fit->levels->len; i++)
    {
      Level *level = &g_array_index (fit->levels, Level, i);
      Length end = level->z + level->height;

      if (level->top && end + fit->face.kerf + box->height <= fit->face.height
          && g_array_index (fit->panels, Panel, level->panel).length >= box->length
          && (best == NULL || end > best->z + best->height))
        best = level;
    }
  return best;
}

static void
add_panel (OffcutFit *fit, Box *box, Length length)
{
  Panel panel = { length, -1 };

  box->panel = (gint32) fit->panels->len;
  box->x = box->z = 0;
  g_array_append_val (fit->panels, panel);
}

static void
stack_low (OffcutFit *fit, Box *box, PanelWay way)
{
  Level *level = find_level (fit, box), *under = level == NULL ? find_under (fit, box) : NULL;
  Level next = { .z = 0, .height = box->height, .top = TRUE };

  if (level != NULL)
    {
      lay_into (fit, level, box);
      return;
    }
  if (under != NULL)
    {
      under->top = FALSE;
      next.panel = under->panel;
      next.z = under->z + under->height + fit->face.kerf;
    }
  else
    {
      add_panel (fit, box, way == PANELS_LONG ? fit->face.length : box->length);
      next.panel = box->panel;
    }
  lay_into (fit, &next, box);
  g_array_append_val (fit->levels, next);
}

void
offcut_stack (OffcutFit *fit, Box *boxes, guint n, PanelWay way)
{
  Length lowest = fit->face.height;

  g_array_set_size (fit->panels, 0);
  g_array_set_size (fit->levels, 0);
  for (guint i = 0; i < n; i++)
    lowest = MIN (lowest, boxes[i].height);
  for (guint i = 0; i < n; i++)
    if (boxes[i].height + fit->face.kerf + lowest > fit->face.height)
      add_panel (fit, &boxes[i], boxes[i].length);
    else
      stack_low (fit, &boxes[i], way);
}

/* --- units --- */

static gint
compare_panels (gconstpointer a, gconstpointer b, gpointer data)
{
  const Panel *panels = data;
  gint32 p = *(const gint32 *) a, q = *(const gint32 *) b;

  if (panels[p].length != panels[q].length)
    return panels[p].length > panels[q].length ? -1 : 1;
  return (p > q) - (p < q);
}

/* The unit that has room for a panel; -1: none. */
static gint32
find_unit (const OffcutFit *fit, Length length, gboolean fullest)
{
  const Length *rooms = (const Length *) (gpointer) fit->rooms->data;
  gint32 best = -1;

  for (gint32 i = 0; i < (gint32) fit->rooms->len; i++)
    if (rooms[i] >= length && (best < 0 || rooms[i] < rooms[best]))
      {
        best = i;
        if (!fullest)
          break;
      }
  return best;
}

static void
saw_panel (OffcutFit *fit, Panel *panel, gboolean fullest)
{
  panel->unit = find_unit (fit, panel->length, fullest);
  if (panel->unit < 0)
    {
      Length room = fit->face.length;

      panel->unit = (gint32) fit->rooms->len;
      g_array_append_val (fit->rooms, room);
    }
  g_array_index (fit->rooms, Length, panel->unit) -= panel->length + fit->face.kerf;
}

static gboolean
is_longest_first (const GArray *panels)
{
  for (guint i = 1; i < panels->len; i++)
    if (g_array_index (panels, Panel, i).length > g_array_index (panels, Panel, i - 1).length)
      return FALSE;
  return TRUE;
}

gint32
offcut_saw (OffcutFit *fit, gboolean fullest)
{
  Panel *panels = (Panel *) (gpointer) fit->panels->data;
  g_autofree gint32 *order = NULL;

  g_array_set_size (fit->rooms, 0);
  if (is_longest_first (fit->panels))
    {
      for (guint i = 0; i < fit->panels->len; i++)
        saw_panel (fit, &panels[i], fullest);
      return (gint32) fit->rooms->len;
    }
  order = g_new (gint32, fit->panels->len);
  for (guint i = 0; i < fit->panels->len; i++)
    order[i] = (gint32) i;
  g_qsort_with_data (order, (gint) fit->panels->len, sizeof (gint32), compare_panels, panels);
  for (guint i = 0; i < fit->panels->len; i++)
    saw_panel (fit, &panels[order[i]], fullest);
  return (gint32) fit->rooms->len;
}

gint32
offcut_fit_best (OffcutFit *fit, Box *boxes, guint n)
{
  gint32 fewest = G_MAXINT32;
  gint best = 0;

  for (gint way = 0; way < 4; way++)
    {
      gint32 units;

      if (way % 2 == 0)
        offcut_stack (fit, boxes, n, way / 2 == 0 ? PANELS_TIGHT : PANELS_LONG);
      if (way == 2 && fit->levels->len == 0)
        break; /* nothing low: the same panels again */
      units = offcut_saw (fit, way % 2 == 1);
      if (units < fewest)
        {
          fewest = units;
          best = way;
        }
    }
  offcut_stack (fit, boxes, n, best / 2 == 0 ? PANELS_TIGHT : PANELS_LONG);
  return offcut_saw (fit, best % 2 == 1);
}

/* --- the bound --- */

/* Way 0: the length. Ways 1 .. : stairs of as many steps, a length on a step its own worth. */
gint64
offcut_worth (gint64 x, gint64 room, gint way)
{
  gint64 steps = way;

  if (way == 0)
    return x;
  if (x * (steps + 1) % room == 0)
    return x * steps;
  return x * (steps + 1) / room * room;
}

gint64
offcut_worth_most (gint64 room, gint way)
{
  return way == 0 ? room : room * way;
}

gint64
offcut_worth_without (gint64 x, gint64 room, gint64 little)
{
  return x < little ? 0 : x > room - little ? room : x;
}

typedef struct
{
  gint64 length_room, height_room, kerf;
  const Box *boxes;
  guint n;
} Weighing;

static gint32
units_of_worth (gint64 sum, gint64 most)
{
  return (gint32) ((sum + most - 1) / most);
}

static gint32
bound_by_stairs (const Weighing *all, gint length_way, gint height_way)
{
  gint64 sum = 0;

  for (guint i = 0; i < all->n; i++)
    sum += offcut_worth (all->boxes[i].length + all->kerf, all->length_room, length_way)
           * offcut_worth (all->boxes[i].height + all->kerf, all->height_room, height_way);
  return units_of_worth (sum, offcut_worth_most (all->length_room, length_way)
                                  * offcut_worth_most (all->height_room, height_way));
}

static gint32
bound_without (const Weighing *all, gint64 little, gint height_way)
{
  gint64 sum = 0;

  for (guint i = 0; i < all->n; i++)
    sum += offcut_worth_without (all->boxes[i].length + all->kerf, all->length_room, little)
           * offcut_worth (all->boxes[i].height + all->kerf, all->height_room, height_way);
  return units_of_worth (sum, all->length_room * offcut_worth_most (all->height_room, height_way));
}

/* So many lengths are tried as the least that counts; and of more boxes than so many the areas
 * alone, so that sums stay within 63 bits. */
#define LITTLE_MAX 24
#define STAIRS_MAX 20000

/* With worths for lengths that a saw finds in the list itself. */
static gint32
bound_by_lengths (const Weighing *all, gint height_way)
{
  gint32 bound = 0;
  gint64 last = 0;
  gint tried = 0;

  for (guint i = all->n; i > 0 && tried < LITTLE_MAX; i--)
    {
      gint64 little = all->boxes[i - 1].length + all->kerf;
      gint32 found;

      if (little == last)
        continue;
      if (2 * little > all->length_room)
        break;
      last = little;
      tried++;
      found = bound_without (all, little, height_way);
      bound = MAX (bound, found);
    }
  return bound;
}

gint32
offcut_bound (Face face, const Box *boxes, guint n)
{
  Weighing all = { face.length + face.kerf, face.height + face.kerf, face.kerf, boxes, n };
  gint32 bound = 0;
  gint ways = n > STAIRS_MAX ? 1 : OFFCUT_WORTHS;

  for (gint height_way = 0; height_way < ways; height_way++)
    {
      gint32 found = bound_by_lengths (&all, height_way);

      bound = MAX (bound, found);
      for (gint length_way = 0; length_way < ways; length_way++)
        {
          found = bound_by_stairs (&all, length_way, height_way);
          bound = MAX (bound, found);
        }
    }
  return bound;
}
