/* path.c - the cheapest pattern of one segment, given what each perpend's place costs */
#include "bond/path.h"

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

Forms
forms_new (const Geometry *geometry, const Segment *segment, const GArray *places)
{
  Forms forms = { geometry, segment->n_steps, g_new (Length, segment->n_steps * segment->n_steps),
                  g_new (gint32, MAX (places->len, 1)) };
  const Step *steps = geometry_step (geometry, segment->first_step);
  gint32 at = 0;

  for (gint32 i = 0; i < forms.n; i++)
    for (gint32 k = i; k < forms.n; k++)
      forms.thickest[i * forms.n + k]
          = MAX (steps[k].hi - steps[k].lo, k == i ? 0 : forms.thickest[i * forms.n + k - 1]);
  for (guint i = 0; i < places->len; i++)
    {
      while (at < forms.n - 1 && steps[at].to <= g_array_index (places, Length, i))
        at++;
      forms.first[i] = at;
    }
  return forms;
}

void
forms_clear (Forms *forms)
{
  g_free (forms->thickest);
  g_free (forms->first);
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
  const Segment *segment;
  const Length *faces;
  PathNode *nodes;
  Forms forms;
  gint32 *least;      /* nodes that cut pieces may begin at, none dearer than one after it */
  gint32 first, past; /* of these */
  guint entered;      /* nodes below it have been among them */
} Path;

/* Every piece that ends before node `k`, at `end` in step `last`, and begins at a place from
 * `oldest` on. `owing` is known where it is called, so that nothing is asked in the loop. */
static inline void
relax_all (const Path *path, guint k, guint oldest, Length end, gint32 last, gboolean owing)
{
  const Geometry *geometry = path->forms.geometry;
  const Length *faces = path->faces;

  for (guint i = oldest; i < k && faces[i] < end; i++)
    if (path->nodes[i].cost != COST_NONE)
      {
        Cost cost = forms_cost (&path->forms, path->forms.first[i], last, end - faces[i]);

        if (owing)
          cost += owed (geometry, path->segment, faces[i], end - faces[i]);
        relax (&path->nodes[k], &path->nodes[i], (gint32) i, cost);
      }
}

/* Lets those nodes in from which a piece to `end` is long enough, and those before `oldest` go:
 * the first of the rest is then the cheapest of all, and of equals the first. */
static void
slide (Path *path, guint k, guint oldest, Length end)
{
  const PathNode *nodes = path->nodes;
  Length shortest = MAX (path->forms.geometry->min_piece, 1);

  for (; path->entered < k && end - path->faces[path->entered] >= shortest; path->entered++)
    {
      if (nodes[path->entered].cost == COST_NONE)
        continue;
      while (path->past > path->first
             && nodes[path->least[path->past - 1]].cost > nodes[path->entered].cost)
        path->past--;
      path->least[path->past++] = (gint32) path->entered;
    }
  while (path->first < path->past && path->least[path->first] < (gint32) oldest)
    path->first++;
}

/* The same as relax_all() where no piece to there is too thin, and none owes anything: all that are
 * long enough cost a cut, but for a whole unit. */
static void
relax_best (const Path *path, guint k, guint oldest, Length end, gint32 last)
{
  const Geometry *geometry = path->forms.geometry;
  PathNode *node = &path->nodes[k];

  if (oldest < k && end - path->faces[oldest] == geometry->unit
      && path->nodes[oldest].cost != COST_NONE)
    relax (node, &path->nodes[oldest], (gint32) oldest,
           forms_cost (&path->forms, path->forms.first[oldest], last, geometry->unit));
  if (path->first < path->past)
    relax (node, &path->nodes[path->least[path->first]], path->least[path->first], COST_CUT);
  /* What is too short costs a breach. */
  for (guint i = MAX (path->entered, oldest);
       i < k && path->faces[i] < end && node->cost > COST_BREACH; i++)
    if (path->nodes[i].cost < node->cost - COST_BREACH)
      relax (node, &path->nodes[i], (gint32) i,
             forms_cost (&path->forms, path->forms.first[i], last, end - path->faces[i]));
}

Pattern
path_solve (const Geometry *geometry, const Segment *segment, const GArray *places,
            const Cost *toll, Cost *cost)
{
  guint n = places->len, oldest = 0;
  Path path = { .segment = segment,
                .faces = (const Length *) (gpointer) places->data,
                .nodes = g_new (PathNode, n + 1),
                .forms = forms_new (geometry, segment, places),
                .least = g_new (gint32, n + 1) };
  const Step *steps = geometry_step (geometry, segment->first_step);
  gboolean owing = rules_of_pieces (geometry, segment);
  gboolean usual = !owing && geometry->min_piece <= geometry->unit;
  gint32 last = 0;
  Pattern pattern;

  for (guint k = 0; k <= n; k++)
    {
      Length end = (k == n ? segment->b : path.faces[k] - geometry->joint);

      path.nodes[k] = (PathNode){ COST_NONE, -1, 0 };
      while (last < path.forms.n - 1 && steps[last + 1].from < end)
        last++;
      if (end - segment->a <= geometry->unit)
        relax (&path.nodes[k], NULL, -1,
               forms_cost (&path.forms, 0, last, end - segment->a)
                   + (owing ? owed (geometry, segment, segment->a, end - segment->a) : 0));
      while (oldest < k && end - path.faces[oldest] > geometry->unit)
        oldest++;
      slide (&path, k, oldest, end);
      if (usual && steps[last].hi - steps[last].lo >= geometry->min_rip)
        relax_best (&path, k, oldest, end, last);
      else if (owing)
        relax_all (&path, k, oldest, end, last, TRUE);
      else
        relax_all (&path, k, oldest, end, last, FALSE);
      if (k < n && path.nodes[k].cost != COST_NONE)
        path.nodes[k].cost += toll[k];
    }
  *cost = path.nodes[n].cost;
  pattern = path_trace (places, path.nodes, n);
  forms_clear (&path.forms);
  g_free (path.least);
  g_free (path.nodes);
  pattern_count (geometry, segment, &pattern);
  return pattern;
}
