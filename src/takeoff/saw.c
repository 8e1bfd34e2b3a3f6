/* saw.c - the saw plan: every cut piece, the unit that it is sawn from, and what becomes of the
 * rest */
#include "takeoff/saw.h"

#include <string.h>

#include "takeoff/sawing.h"

typedef struct
{
  guint wall, piece;
  Length length, height;
  gboolean notched;
} Wanted;

struct SawList
{
  Face face;
  gint32 n_whole;
  gint32 apart;   /* units for the cut pieces, each wall by itself; -1: not known */
  GArray *wanted; /* Wanted, in the order in which they are laid */
};

SawList *
saw_list_new (const Block *block)
{
  SawList *list = g_new0 (SawList, 1);

  list->face = (Face){ block->length, block->height, 0 };
  list->apart = -1;
  list->wanted = g_array_new (FALSE, FALSE, sizeof (Wanted));
  return list;
}

void
saw_list_free (SawList *list)
{
  if (list == NULL)
    return;
  g_array_unref (list->wanted);
  g_free (list);
}

void
saw_list_add (SawList *list, guint wall, const Layout *layout, Length kerf)
{
  list->face.kerf = MAX (list->face.kerf, kerf);
  list->n_whole += layout->n_whole;
  for (guint i = 0; i < layout->pieces->len; i++)
    {
      const Piece *piece = layout_piece (layout, i);
      Wanted wanted = { wall, i, piece->length, piece->height, piece->outline >= 0 };

      if (piece->shape != PIECE_WHOLE)
        g_array_append_val (list->wanted, wanted);
    }
}

/* What is wanted from `first` on, up to `end`. NULL when stopped. */
static Sawing *
solve_some (const SawList *list, guint first, guint end, const gint *stop)
{
  Box *boxes = g_new0 (Box, end - first + 1);

  for (guint i = first; i < end; i++)
    {
      const Wanted *wanted = &g_array_index (list->wanted, Wanted, i);

      boxes[i - first]
          = (Box){ .length = wanted->length, .height = wanted->height, .owner = (gint32) i };
    }
  return sawing_new (list->face, boxes, end - first, stop);
}

/* Each wall by itself, where that needs fewer units than all of them together do. FALSE when
 * stopped. */
static gboolean
try_apart (const SawList *list, Sawing *together, const gint *stop)
{
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func ((GDestroyNotify) sawing_free);
  guint n = list->wanted->len;
  gint32 units = 0;

  for (guint first = 0, end; first < n; first = end)
    {
      guint wall = g_array_index (list->wanted, Wanted, first).wall;
      Sawing *part;

      for (end = first + 1; end < n && g_array_index (list->wanted, Wanted, end).wall == wall;
           end++)
        ;
      if (first == 0 && end == n)
        return TRUE;
      part = solve_some (list, first, end, stop);
      if (part == NULL)
        return FALSE;
      g_ptr_array_add (parts, part);
      units += part->units;
      if (units >= together->units)
        return TRUE;
    }
  sawing_take_parts (together, (Sawing *const *) parts->pdata, parts->len);
  return TRUE;
}

static Sawing *
solve (const SawList *list, const gint *stop)
{
  g_autoptr (Sawing) sawing = solve_some (list, 0, list->wanted->len, stop);

  if (sawing == NULL)
    return NULL;
  if (sawing->units > sawing->at_least && (list->apart < 0 || list->apart < sawing->units)
      && !try_apart (list, sawing, stop))
    return NULL;
  return g_steal_pointer (&sawing);
}

gint32
saw_list_units (const SawList *list, const gint *stop)
{
  g_autoptr (Sawing) sawing = solve (list, stop);

  return sawing != NULL ? list->n_whole + sawing->units : -1;
}

gint32
saw_wall_units (const Wall *wall, const Block *block, const Layout *layout, const gint *stop)
{
  g_autoptr (SawList) list = saw_list_new (block);

  saw_list_add (list, 0, layout, laying_resolve (&wall->laying, block).kerf);
  return saw_list_units (list, stop);
}

/* --- which panel from which unit --- */

/* Panels of one length, the first needed first, and the patterns that have such a panel. */
typedef struct
{
  Length length;
  GArray *queue; /* gint32: panels */
  guint next;
  GArray *patterns; /* guint */
} Rank;

/* Hands panels out to units so that what is sawn from one unit is laid soon after one another. */
typedef struct
{
  const SawList *list;
  const Sawing *sawing;
  gint32 *needed;   /* by panel: the first of its pieces, as an index of list->wanted */
  GArray *ranks;    /* Rank, longest first */
  gint32 *rank;     /* by panel */
  gboolean *gone;   /* by panel */
  gint32 *left;     /* by pattern: units still to be sawn so */
  GPtrArray *units; /* GArray of gint32: panels, longest first */
} Handing;

static void
rank_clear (gpointer data)
{
  Rank *rank = data;

  g_array_unref (rank->queue);
  g_array_unref (rank->patterns);
}

static gint
compare_needed (gconstpointer a, gconstpointer b, gpointer data)
{
  const gint32 *needed = data;
  gint32 p = needed[*(const gint32 *) a], q = needed[*(const gint32 *) b];

  return (p > q) - (p < q);
}

static gint
compare_by_length (gconstpointer a, gconstpointer b, gpointer data)
{
  const Handing *handing = data;
  gint32 p = *(const gint32 *) a, q = *(const gint32 *) b;
  Length p_length = g_array_index (handing->sawing->panels, Panel, p).length;
  Length q_length = g_array_index (handing->sawing->panels, Panel, q).length;

  if (p_length != q_length)
    return p_length > q_length ? -1 : 1;
  return compare_needed (a, b, handing->needed);
}

/* Panels in the order in which they are needed. */
static gint32 *
order_panels (Handing *handing)
{
  guint n = handing->sawing->panels->len;
  gint32 *order = g_new (gint32, n + 1);

  for (guint i = 0; i < n; i++)
    {
      handing->needed[i] = G_MAXINT32;
      order[i] = (gint32) i;
    }
  for (guint i = 0; i < handing->sawing->n; i++)
    {
      const Box *box = &handing->sawing->boxes[i];

      handing->needed[box->panel] = MIN (handing->needed[box->panel], box->owner);
    }
  g_qsort_with_data (order, (gint) n, sizeof (gint32), compare_needed, handing->needed);
  return order;
}

static void
rank_panels (Handing *handing, const gint32 *by_need)
{
  guint n = handing->sawing->panels->len;
  g_autofree gint32 *order = g_new (gint32, n + 1);

  if (n > 0)
    memcpy (order, by_need, sizeof (gint32) * n);
  g_qsort_with_data (order, (gint) n, sizeof (gint32), compare_by_length, handing);
  for (guint i = 0; i < n; i++)
    {
      Length length = g_array_index (handing->sawing->panels, Panel, order[i]).length;
      guint last = handing->ranks->len - 1;

      if (i == 0 || g_array_index (handing->ranks, Rank, last).length != length)
        {
          Rank rank = { length, g_array_new (FALSE, FALSE, sizeof (gint32)), 0,
                        g_array_new (FALSE, FALSE, sizeof (guint)) };

          g_array_append_val (handing->ranks, rank);
          last = handing->ranks->len - 1;
        }
      g_array_append_val (g_array_index (handing->ranks, Rank, last).queue, order[i]);
      handing->rank[order[i]] = (gint32) last;
    }
}

static Rank *
rank_of_length (const Handing *handing, Length length)
{
  guint low = 0, high = handing->ranks->len;

  while (low + 1 < high)
    {
      guint middle = (low + high) / 2;

      if (g_array_index (handing->ranks, Rank, middle).length < length)
        high = middle;
      else
        low = middle;
    }
  return &g_array_index (handing->ranks, Rank, low);
}

static void
note_patterns (Handing *handing)
{
  const Sawing *sawing = handing->sawing;

  for (guint i = 0; i < sawing->patterns->len; i++)
    {
      const SawPattern *pattern = &g_array_index (sawing->patterns, SawPattern, i);

      handing->left[i] = pattern->times;
      for (guint k = 0; k < pattern->n; k++)
        {
          Length length = g_array_index (sawing->lengths, Length, pattern->first + k);

          if (k == 0 || g_array_index (sawing->lengths, Length, pattern->first + k - 1) != length)
            g_array_append_val (rank_of_length (handing, length)->patterns, i);
        }
    }
}

/* The panels that a unit of that pattern would have besides `panel` itself, in `panels`: of each
 * length the next ones needed. When the last of them is needed. */
static gint32
pick_panels (Handing *handing, const SawPattern *pattern, gint32 panel, GArray *panels)
{
  const Sawing *sawing = handing->sawing;
  gint32 latest = -1;
  gboolean used = FALSE;
  guint at = 0;

  g_array_set_size (panels, 0);
  for (guint k = 0; k < pattern->n; k++)
    {
      Length length = g_array_index (sawing->lengths, Length, pattern->first + k);
      const Rank *rank = rank_of_length (handing, length);
      gint32 next;

      if (k == 0 || g_array_index (sawing->lengths, Length, pattern->first + k - 1) != length)
        at = rank->next;
      if (!used
          && handing->rank[panel] == (gint32) (rank - (Rank *) (gpointer) handing->ranks->data))
        {
          used = TRUE;
          g_array_append_val (panels, panel);
          continue;
        }
      do
        next = g_array_index (rank->queue, gint32, at++);
      while (handing->gone[next] || next == panel);
      g_array_append_val (panels, next);
      latest = MAX (latest, handing->needed[next]);
    }
  return latest;
}

/* The panel that is needed next, with those that are needed soonest after it. */
static void
hand_out (Handing *handing, gint32 panel, GArray *trial)
{
  const Rank *rank = &g_array_index (handing->ranks, Rank, handing->rank[panel]);
  GArray *unit = g_array_new (FALSE, FALSE, sizeof (gint32));
  guint best = 0;
  gint32 soonest = G_MAXINT32;

  for (guint i = 0; i < rank->patterns->len; i++)
    {
      guint at = g_array_index (rank->patterns, guint, i);
      gint32 latest;

      if (handing->left[at] == 0)
        continue;
      latest = pick_panels (handing, &g_array_index (handing->sawing->patterns, SawPattern, at),
                            panel, trial);
      if (latest >= soonest)
        continue;
      soonest = latest;
      best = at;
      g_array_set_size (unit, 0);
      g_array_append_vals (unit, trial->data, trial->len);
    }
  handing->left[best]--;
  for (guint i = 0; i < unit->len; i++)
    {
      gint32 taken = g_array_index (unit, gint32, i);
      Rank *own = &g_array_index (handing->ranks, Rank, handing->rank[taken]);

      handing->gone[taken] = TRUE;
      while (own->next < own->queue->len
             && handing->gone[g_array_index (own->queue, gint32, own->next)])
        own->next++;
    }
  g_ptr_array_add (handing->units, unit);
}

/* The panels of each unit (GArray of gint32), the unit that is needed first first. */
static GPtrArray *
units_of (const SawList *list, const Sawing *sawing)
{
  guint n = sawing->panels->len;
  Handing handing = { .list = list, .sawing = sawing };
  g_autoptr (GArray) trial = g_array_new (FALSE, FALSE, sizeof (gint32));
  g_autofree gint32 *order = NULL;

  handing.needed = g_new (gint32, n + 1);
  handing.rank = g_new (gint32, n + 1);
  handing.gone = g_new0 (gboolean, n + 1);
  handing.left = g_new (gint32, sawing->patterns->len + 1);
  handing.ranks = g_array_new (FALSE, FALSE, sizeof (Rank));
  g_array_set_clear_func (handing.ranks, rank_clear);
  handing.units = g_ptr_array_new_with_free_func ((GDestroyNotify) g_array_unref);
  order = order_panels (&handing);
  rank_panels (&handing, order);
  note_patterns (&handing);
  for (guint i = 0; i < n; i++)
    if (!handing.gone[order[i]])
      hand_out (&handing, order[i], trial);
  g_free (handing.needed);
  g_free (handing.rank);
  g_free (handing.gone);
  g_free (handing.left);
  g_array_unref (handing.ranks);
  return handing.units;
}

/* --- a unit's parts, cuts and rests --- */

typedef struct
{
  SawPlan *plan;
  const SawList *list;
  const Sawing *sawing;
  guint *first; /* by panel: its boxes in `boxes`; one more at the end */
  const Box **boxes;
} Drawing;

static void
add_cut (const Drawing *drawing, gboolean along, Length at, Length from, Length to)
{
  SawCut cut = { along, at, from, to };

  g_array_append_val (drawing->plan->cuts, cut);
}

static void
add_rest (const Drawing *drawing, Length x, Length z, Length end, Length top)
{
  SawRest rest = { x, z, end - x, top - z };

  if (rest.length > 0 && rest.height > 0)
    g_array_append_val (drawing->plan->rests, rest);
}

static void
add_part (const Drawing *drawing, const Box *box, Length x)
{
  const Wanted *wanted = &g_array_index (drawing->list->wanted, Wanted, (guint) box->owner);
  SawPart part = { .wall = wanted->wall,
                   .piece = wanted->piece,
                   .unit = (gint32) drawing->plan->units->len,
                   .x = x + box->x,
                   .z = box->z,
                   .length = box->length,
                   .height = box->height,
                   .notched = wanted->notched };

  g_array_append_val (drawing->plan->parts, part);
}

/* Boxes side by side in one level, whose foot is at z and whose top at `top`. */
static void
draw_level (const Drawing *drawing, const Box *const *boxes, guint n, Length x, Length end,
            Length top)
{
  Length kerf = drawing->list->face.kerf, z = boxes[0]->z;
  Length right = x;

  for (guint i = 0; i < n; i++)
    {
      Length lid = z + boxes[i]->height;

      right = x + boxes[i]->x + boxes[i]->length;
      if (right < end)
        add_cut (drawing, FALSE, right, z, top);
      if (lid < top)
        {
          add_cut (drawing, TRUE, lid, x + boxes[i]->x, right);
          add_rest (drawing, x + boxes[i]->x, lid + kerf, right, top);
        }
      add_part (drawing, boxes[i], x);
    }
  add_rest (drawing, right + kerf, z, end, top);
}

/* Levels one over another; the panel begins at x. Returns its right end. */
static Length
draw_panel (const Drawing *drawing, gint32 panel, Length x)
{
  Length height = drawing->list->face.height, kerf = drawing->list->face.kerf, top = 0;
  Length end = x + g_array_index (drawing->sawing->panels, Panel, panel).length;
  guint last = drawing->first[panel + 1];

  for (guint i = drawing->first[panel], next; i < last; i = next)
    {
      const Box *const *boxes = &drawing->boxes[i];

      top = 0;
      for (next = i; next < last && drawing->boxes[next]->z == boxes[0]->z; next++)
        top = MAX (top, boxes[0]->z + drawing->boxes[next]->height);
      if (top < height)
        add_cut (drawing, TRUE, top, x, end);
      draw_level (drawing, boxes, next - i, x, end, top);
    }
  add_rest (drawing, x, top + kerf, end, height);
  return end;
}

static void
draw_unit (const Drawing *drawing, const GArray *panels)
{
  SawPlan *plan = drawing->plan;
  SawUnit unit = { .number = (gint32) plan->units->len + 1,
                   .first = plan->parts->len,
                   .first_cut = plan->cuts->len,
                   .first_rest = plan->rests->len };
  Length x = 0, end = 0, kerf = plan->kerf;

  for (guint i = 0; i < panels->len; i++, x = end + kerf)
    {
      gint32 panel = g_array_index (panels, gint32, i);

      end = x + g_array_index (drawing->sawing->panels, Panel, panel).length;
      if (end < plan->length)
        add_cut (drawing, FALSE, end, 0, plan->height);
      draw_panel (drawing, panel, x);
    }
  add_rest (drawing, end + kerf, 0, plan->length, plan->height);
  unit.n = plan->parts->len - unit.first;
  unit.n_cuts = plan->cuts->len - unit.first_cut;
  unit.n_rests = plan->rests->len - unit.first_rest;
  g_array_append_val (plan->units, unit);
}

static gint
compare_places (gconstpointer a, gconstpointer b)
{
  const Box *p = *(const Box *const *) a, *q = *(const Box *const *) b;

  if (p->panel != q->panel)
    return p->panel < q->panel ? -1 : 1;
  if (p->z != q->z)
    return p->z < q->z ? -1 : 1;
  return (p->x > q->x) - (p->x < q->x);
}

static void
draw_units (SawPlan *plan, const SawList *list, const Sawing *sawing)
{
  g_autoptr (GPtrArray) units = units_of (list, sawing);
  g_autofree guint *first = g_new0 (guint, sawing->panels->len + 2);
  g_autofree const Box **boxes = g_new (const Box *, sawing->n + 1);
  Drawing drawing = { plan, list, sawing, first, boxes };

  for (guint i = 0; i < sawing->n; i++)
    {
      boxes[i] = &sawing->boxes[i];
      first[boxes[i]->panel + 1]++;
    }
  for (guint i = 0; i < sawing->panels->len; i++)
    first[i + 1] += first[i];
  if (sawing->n > 1)
    qsort (boxes, sawing->n, sizeof (Box *), compare_places);
  for (guint i = 0; i < units->len; i++)
    draw_unit (&drawing, g_ptr_array_index (units, i));
}

/* --- units that are sawn alike, and the order of parts --- */

static gint
compare_units (gconstpointer a, gconstpointer b, gpointer data)
{
  const SawPlan *plan = data;
  const SawUnit *p = saw_plan_unit (plan, (guint) * (const gint32 *) a);
  const SawUnit *q = saw_plan_unit (plan, (guint) * (const gint32 *) b);

  for (guint i = 0; i < MIN (p->n, q->n); i++)
    {
      const SawPart *s = saw_unit_part (plan, p, i), *t = saw_unit_part (plan, q, i);

      if (s->length != t->length)
        return s->length > t->length ? -1 : 1;
      if (s->height != t->height)
        return s->height > t->height ? -1 : 1;
      if (s->x != t->x)
        return s->x < t->x ? -1 : 1;
      if (s->z != t->z)
        return s->z < t->z ? -1 : 1;
      if (s->notched != t->notched)
        return s->notched ? 1 : -1;
    }
  return (p->n > q->n) - (p->n < q->n);
}

static gint
compare_alike (gconstpointer a, gconstpointer b, gpointer data)
{
  gint order = compare_units (a, b, data);
  gint32 p = *(const gint32 *) a, q = *(const gint32 *) b;

  return order != 0 ? order : (p > q) - (p < q);
}

static gint
compare_kinds (gconstpointer a, gconstpointer b)
{
  const SawKind *p = a, *q = b;

  if (p->times != q->times)
    return p->times > q->times ? -1 : 1;
  return (p->first > q->first) - (p->first < q->first);
}

static void
sort_kinds (SawPlan *plan)
{
  for (gint32 i = 0; i < (gint32) plan->units->len; i++)
    g_array_append_val (plan->alike, i);
  g_array_sort_with_data (plan->alike, compare_alike, plan);
  for (guint i = 0; i < plan->alike->len; i++)
    {
      SawKind kind = { 1, i };

      if (i > 0
          && compare_units (&g_array_index (plan->alike, gint32, i - 1),
                            &g_array_index (plan->alike, gint32, i), plan)
                 == 0)
        g_array_index (plan->kinds, SawKind, plan->kinds->len - 1).times++;
      else
        g_array_append_val (plan->kinds, kind);
    }
  g_array_sort (plan->kinds, compare_kinds);
  for (guint i = 0; i < plan->kinds->len; i++)
    {
      const SawKind *kind = &g_array_index (plan->kinds, SawKind, i);

      for (guint k = kind->first; k < kind->first + kind->times; k++)
        g_array_index (plan->units, SawUnit, g_array_index (plan->alike, gint32, k)).kind
            = (gint32) i;
    }
}

static gint
compare_piece (const SawPart *part, guint wall, guint piece)
{
  if (part->wall != wall)
    return part->wall < wall ? -1 : 1;
  return (part->piece > piece) - (part->piece < piece);
}

static gint
compare_parts (gconstpointer a, gconstpointer b, gpointer data)
{
  const SawPart *parts = data, *other = &parts[*(const gint32 *) b];

  return compare_piece (&parts[*(const gint32 *) a], other->wall, other->piece);
}

static void
sort_parts (SawPlan *plan)
{
  for (gint32 i = 0; i < (gint32) plan->parts->len; i++)
    g_array_append_val (plan->by_piece, i);
  g_array_sort_with_data (plan->by_piece, compare_parts, plan->parts->data);
}

/* --- the plan --- */

static SawPlan *
plan_new (const SawList *list)
{
  SawPlan *plan = g_new0 (SawPlan, 1);

  plan->length = list->face.length;
  plan->height = list->face.height;
  plan->kerf = list->face.kerf;
  plan->n_whole = list->n_whole;
  plan->units = g_array_new (FALSE, FALSE, sizeof (SawUnit));
  plan->parts = g_array_new (FALSE, FALSE, sizeof (SawPart));
  plan->cuts = g_array_new (FALSE, FALSE, sizeof (SawCut));
  plan->rests = g_array_new (FALSE, FALSE, sizeof (SawRest));
  plan->kinds = g_array_new (FALSE, FALSE, sizeof (SawKind));
  plan->alike = g_array_new (FALSE, FALSE, sizeof (gint32));
  plan->by_piece = g_array_new (FALSE, FALSE, sizeof (gint32));
  return plan;
}

void
saw_plan_free (SawPlan *plan)
{
  if (plan == NULL)
    return;
  g_array_unref (plan->units);
  g_array_unref (plan->parts);
  g_array_unref (plan->cuts);
  g_array_unref (plan->rests);
  g_array_unref (plan->kinds);
  g_array_unref (plan->alike);
  g_array_unref (plan->by_piece);
  g_free (plan);
}

SawPlan *
saw_plan_new (const SawList *list, const gint *stop)
{
  g_autoptr (Sawing) sawing = solve (list, stop);
  SawPlan *plan;

  if (sawing == NULL)
    return NULL;
  plan = plan_new (list);
  plan->at_least = list->n_whole + sawing->at_least;
  draw_units (plan, list, sawing);
  sort_kinds (plan);
  sort_parts (plan);
  return plan;
}

/* All walls of one kind of block. */
static SawPlan *
plan_of_block (const Project *project, const Block *block, Layout *const *layouts,
               const gint32 *units, const gint *stop)
{
  g_autoptr (SawList) list = saw_list_new (block);
  gint32 apart = 0;

  for (guint i = 0; i < project->walls->len; i++)
    {
      const Wall *wall = project_wall_at (project, i);

      if (wall->block.n == block->id.n && layouts[i] != NULL)
        {
          saw_list_add (list, i, layouts[i], laying_resolve (&wall->laying, block).kerf);
          apart += units != NULL ? units[i] - layouts[i]->n_whole : 0;
        }
    }
  if (units != NULL)
    list->apart = apart;
  return saw_plan_new (list, stop);
}

static void
free_plan (gpointer plan)
{
  saw_plan_free (plan);
}

GPtrArray *
saw_plans_new (const Project *project, Layout *const *layouts, const gint32 *units,
               const gint *stop)
{
  g_autoptr (GPtrArray) plans = g_ptr_array_new_with_free_func (free_plan);

  for (guint i = 0; i < project->blocks->len; i++)
    {
      SawPlan *plan = plan_of_block (project, project_block_at (project, i), layouts, units, stop);

      if (plan == NULL)
        return NULL;
      g_ptr_array_add (plans, plan);
    }
  return g_steal_pointer (&plans);
}

const SawPlan *
saw_plan_of_wall (const GPtrArray *plans, const Project *project, const Wall *wall)
{
  for (guint i = 0; i < plans->len; i++)
    if (project_block_at (project, i)->id.n == wall->block.n)
      return g_ptr_array_index (plans, i);
  g_return_val_if_reached (NULL);
}

gint32
saw_plan_to_order (const SawPlan *plan)
{
  return plan->n_whole + (gint32) plan->units->len;
}

const SawPart *
saw_plan_part (const SawPlan *plan, guint wall, guint piece)
{
  guint low = 0, high = plan->by_piece->len;

  while (low < high)
    {
      guint middle = (low + high) / 2;
      const SawPart *part
          = &g_array_index (plan->parts, SawPart, g_array_index (plan->by_piece, gint32, middle));
      gint order = compare_piece (part, wall, piece);

      if (order == 0)
        return part;
      if (order < 0)
        low = middle + 1;
      else
        high = middle;
    }
  return NULL;
}
