/* path.c - the cheapest pattern of one segment, given what each perpend's place costs */
#include "bond/path.h"

#include "bond/forms.h"

Pattern
path_trace (const GArray *places, const PathNode *nodes, guint n)
{
  Pattern pattern = { .n_pieces = nodes[n].pieces };
  gint32 at = nodes[n].from;

  pattern.faces = g_new (Length, MAX (pattern.n_pieces - 1, 1));
  for (gint32 i = pattern.n_pieces - 2; i >= 0; i--)
    {
      pattern.faces[i] = g_array_index (places, Length, at);
      at = nodes[at].from;
    }
  return pattern;
}

/* What a piece owes the rules; apart, since most walls have none. */
static G_GNUC_NO_INLINE Cost
owed (const Geometry *geometry, const Segment *segment, Length x, Length length)
{
  Dues dues = { 0, 0, 0 };

  rules_piece_dues (geometry, segment, x, length, &dues);
  return dues.cost;
}

static void
relax (PathNode *node, const PathNode *from, gint32 index, Cost cost)
{
  Cost total = (from == NULL ? 0 : from->cost) + cost;

  if (total < node->cost)
    {
      node->cost = total;
      node->from = index;
      node->pieces = (from == NULL ? 0 : from->pieces) + 1;
    }
}

/* The segment as the path goes through it. */
typedef struct
{
  const Geometry *geometry;
  const Segment *segment;
  const Step *steps;
  const Length *faces;
  const Cost *toll;
  PathNode *nodes; /* one for each place, and the segment's end */
  guint n;         /* places */
} Path;

/* Where a piece ends that node k comes after, and in which step. */
static inline Length
end_before (const Path *path, guint k, gint32 *step)
{
  Length end = k == path->n ? path->segment->b : path->faces[k] - path->geometry->joint;

  while (*step < path->segment->n_steps - 1 && path->steps[*step + 1].from < end)
    (*step)++;
  return end;
}

/* Every piece that ends before node `k`, at `end` in step `last`, and begins at a place from
 * `oldest` on. `owing` is known where it is called, so that nothing is asked in the loop. */
static inline void
relax_all (const Path *path, const Forms *forms, guint k, guint oldest, Length end, gint32 last,
           gboolean owing)
{
  const Length *faces = path->faces;

  for (guint i = oldest; i < k && faces[i] < end; i++)
    if (path->nodes[i].cost != COST_NONE)
      {
        Cost cost = forms_cost (forms, forms->first[i], last, end - faces[i]);

        if (owing)
          cost += owed (path->geometry, path->segment, faces[i], end - faces[i]);
        relax (&path->nodes[k], &path->nodes[i], (gint32) i, cost);
      }
}

/* By every piece there is. */
static void
find_by_all (const Path *path, const GArray *places)
{
  Length a = path->segment->a, unit = path->geometry->unit;
  gboolean owing = rules_of_pieces (path->geometry, path->segment);
  Forms forms = forms_new (path->geometry, path->segment, places);
  guint oldest = 0;
  gint32 last = 0;

  for (guint k = 0; k <= path->n; k++)
    {
      Length end = end_before (path, k, &last);

      path->nodes[k] = (PathNode){ COST_NONE, -1, 0 };
      if (end - a <= unit)
        relax (&path->nodes[k], NULL, -1,
               forms_cost (&forms, 0, last, end - a)
                   + (owing ? owed (path->geometry, path->segment, a, end - a) : 0));
      while (oldest < k && end - path->faces[oldest] > unit)
        oldest++;
      if (owing)
        relax_all (path, &forms, k, oldest, end, last, TRUE);
      else
        relax_all (path, &forms, k, oldest, end, last, FALSE);
      if (k < path->n && path->nodes[k].cost != COST_NONE)
        path->nodes[k].cost += path->toll[k];
    }
  forms_clear (&forms);
}

/* Whether all pieces that are long enough cost a cut, but for whole units: none can be too thin,
 * and none owes anything. */
static gboolean
is_usual (const Path *path)
{
  const Geometry *geometry = path->geometry;

  for (gint32 i = 0; i < path->segment->n_steps; i++)
    if (path->steps[i].hi - path->steps[i].lo < geometry->min_rip)
      return FALSE;
  if (path->segment->raked && geometry->min_raked != geometry->min_piece)
    return FALSE;
  return geometry->min_piece <= geometry->unit && !rules_of_pieces (geometry, path->segment);
}

/* Then what a piece from `x` to `end` in `step` costs. */
static inline Cost
usual_cost (const Geometry *geometry, const Step *step, Length x, Length end)
{
  if (end - x < geometry->min_piece)
    return pattern_form_cost (geometry, end - x, geometry->min_rip, geometry->min_piece, FALSE);
  return end - x == geometry->unit && x >= step->from
                 && step->hi - step->lo == geometry->unit_height
             ? 0
             : COST_CUT;
}

/* Then the cheapest node from which a cut piece may come is known without looking at all of them:
 * `least` has those that are no dearer than any after them, and the first of these slides along. */
static void
find_usual (const Path *path)
{
  const Geometry *geometry = path->geometry;
  const Length *faces = path->faces;
  PathNode *nodes = path->nodes;
  Length a = path->segment->a, unit = geometry->unit, shortest = MAX (geometry->min_piece, 1);
  g_autofree gint32 *least = g_new (gint32, path->n + 1);
  guint oldest = 0, entered = 0, first = 0, past = 0;
  gint32 last = 0;

  for (guint k = 0; k <= path->n; k++)
    {
      Length end = end_before (path, k, &last);
      const Step *step = &path->steps[last];
      PathNode node = { COST_NONE, -1, 0 };

      if (end - a <= unit)
        relax (&node, NULL, -1, usual_cost (geometry, step, a, end));
      while (oldest < k && end - faces[oldest] > unit)
        oldest++;
      for (; entered < k && end - faces[entered] >= shortest; entered++)
        if (nodes[entered].cost != COST_NONE)
          {
            while (past > first && nodes[least[past - 1]].cost > nodes[entered].cost)
              past--;
            least[past++] = (gint32) entered;
          }
      while (first < past && least[first] < (gint32) oldest)
        first++;
      /* The longest piece comes first, then the cheapest, and of equals the longer one. */
      if (oldest < entered && end - faces[oldest] == unit && nodes[oldest].cost != COST_NONE)
        relax (&node, &nodes[oldest], (gint32) oldest,
               usual_cost (geometry, step, faces[oldest], end));
      if (first < past)
        relax (&node, &nodes[least[first]], least[first], COST_CUT);
      /* What is too short costs a breach. */
      for (guint i = MAX (entered, oldest); i < k && faces[i] < end && node.cost > COST_BREACH; i++)
        if (nodes[i].cost < node.cost - COST_BREACH)
          relax (&node, &nodes[i], (gint32) i, usual_cost (geometry, step, faces[i], end));
      if (k < path->n && node.cost != COST_NONE)
        node.cost += path->toll[k];
      nodes[k] = node;
    }
}

Pattern
path_solve (const Geometry *geometry, const Segment *segment, const GArray *places,
            const Cost *toll, Cost *cost)
{
  guint n = places->len;
  Path path = { geometry,
                segment,
                geometry_step (geometry, segment->first_step),
                (const Length *) (gpointer) places->data,
                toll,
                g_new (PathNode, n + 1),
                n };
  Pattern pattern;

  if (is_usual (&path))
    find_usual (&path);
  else
    find_by_all (&path, places);
  *cost = path.nodes[n].cost;
  pattern = path_trace (places, path.nodes, n);
  g_free (path.nodes);
  pattern_count (geometry, segment, &pattern);
  return pattern;
}
