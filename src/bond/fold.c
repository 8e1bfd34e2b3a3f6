/* fold.c - the cheapest pattern of one segment that is symmetrical about an axis within it
 *
 * A shortest path from the axis to both sides at once: a state is a perpend and its image, reached
 * by two pieces, or at the axis by one piece across it, or by a perpend on it. Beyond the stretch
 * in which images are asked for, either side goes on by itself to the segment's end. */
#include "bond/fold.h"

#include "bond/forms.h"
#include "bond/mirror.h"

/* Where a path goes on: places number from 0, these are none. */
#define END (-1)  /* the segment's end */
#define NONE (-2) /* nowhere: it is no way */

typedef struct
{
  Cost cost;
  gint32 next;
} Node;

typedef struct
{
  const Geometry *geometry;
  const Segment *segment;
  const Length *faces;
  const Cost *toll;
  const gint32 *image;
  gint32 n;
  gint32 first, past; /* places that need an image; those before `middle` are left of theirs */
  gint32 middle;
  gboolean owing; /* pieces may owe the rules */
  Forms forms;
  gint32 *last; /* by place: the step that the right end of a piece before it is in */
  Node *left;   /* by place: the way to the segment's left end, its own toll with it */
  Node *right;  /* likewise */
  Node *core;   /* by place: the way to its image, without their tolls */
} Fold;

/* The face of a piece that begins at place i, END being the segment's left end; and where a piece
 * ends that comes before place i, END being its right end. */
static inline Length
begin_at (const Fold *fold, gint32 i)
{
  return i == END ? fold->segment->a : fold->faces[i];
}
static inline Length
end_before (const Fold *fold, gint32 i)
{
  return i == END ? fold->segment->b : fold->faces[i] - fold->geometry->joint;
}

/* Of the piece from place i to before place k; COST_NONE where there can be none. */
static inline Cost
piece_cost (const Fold *fold, gint32 i, gint32 k)
{
  Length x = begin_at (fold, i), length = end_before (fold, k) - x;
  gint32 first = i == END ? 0 : fold->forms.first[i];
  gint32 last = k == END ? fold->forms.n - 1 : fold->last[k];
  Dues dues = { 0, 0, 0 };

  if (length <= 0 || length > fold->geometry->unit)
    return COST_NONE;
  if (fold->owing)
    rules_piece_dues (fold->geometry, fold->segment, x, length, &dues);
  return forms_cost (&fold->forms, first, last, length) + dues.cost;
}

/* From place i to before place k, where the way on from either costs `way`. */
static inline void
relax (const Fold *fold, Node *node, Cost way, gint32 i, gint32 k, gint32 next)
{
  Cost piece;

  if (way >= node->cost) /* pieces cost nothing at the least */
    return;
  piece = piece_cost (fold, i, k);
  if (piece == COST_NONE || way + piece >= node->cost)
    return;
  node->cost = way + piece;
  node->next = next;
}

static gboolean
on_axis (const Fold *fold, gint32 i)
{
  return ABS (fold->faces[i] - fold->faces[fold->image[i]]) <= MIRROR_TOLERANCE;
}

static void
add_toll (const Fold *fold, Node *node, gint32 i)
{
  if (node->cost != COST_NONE)
    node->cost += fold->toll[i];
}

/* The ways to the ends over places that need no image. */
static void
go_left (Fold *fold)
{
  for (gint32 i = 0; i < fold->middle; i++)
    {
      Node *node = &fold->left[i];
      Length end = end_before (fold, i);

      relax (fold, node, 0, END, i, END);
      for (gint32 k = MIN (i, fold->first) - 1;
           k >= 0 && end - fold->faces[k] <= fold->geometry->unit; k--)
        relax (fold, node, fold->left[k].cost, k, i, k);
      add_toll (fold, node, i);
    }
}

static void
go_right (Fold *fold)
{
  for (gint32 i = fold->n - 1; i >= fold->first; i--)
    {
      Node *node = &fold->right[i];
      Length x = fold->faces[i];

      relax (fold, node, 0, i, END, END);
      for (gint32 k = MAX (i + 1, fold->past);
           k < fold->n && end_before (fold, k) - x <= fold->geometry->unit; k++)
        relax (fold, node, fold->right[k].cost, i, k, k);
      add_toll (fold, node, i);
    }
}

/* From place i to place k and from the image of k to that of i. */
static void
relax_pair (Fold *fold, gint32 i, gint32 k)
{
  gint32 other = fold->image[k];
  gboolean middle = on_axis (fold, k);
  Cost way = fold->core[k].cost, right;

  if (way == COST_NONE)
    return;
  way += fold->toll[k] + (middle ? 0 : fold->toll[other]);
  if (way >= fold->core[i].cost)
    return;
  right = piece_cost (fold, middle ? k : other, fold->image[i]);
  if (right != COST_NONE)
    relax (fold, &fold->core[i], way + right, i, k, k);
}

static void
go_apart (Fold *fold)
{
  for (gint32 i = fold->middle - 1; i >= fold->first; i--)
    {
      Node *node = &fold->core[i];

      if (on_axis (fold, i))
        {
          *node = (Node){ 0, END };
          continue;
        }
      relax (fold, node, 0, i, fold->image[i], END);
      for (gint32 k = i + 1;
           k < fold->middle && end_before (fold, k) - fold->faces[i] <= fold->geometry->unit; k++)
        relax_pair (fold, i, k);
    }
}

/* --- all of it --- */

/* The innermost places of both ways to the ends; one place, where they meet in it. */
typedef struct
{
  Cost cost;
  gint32 left, right;
} Best;

/* One piece over all places that need an image. */
static void
try_piece (const Fold *fold, gint32 i, gint32 k, Best *best)
{
  Cost left = i == END ? 0 : fold->left[i].cost, right = k == END ? 0 : fold->right[k].cost;
  Cost piece;

  if (left == COST_NONE || right == COST_NONE || left + right >= best->cost)
    return;
  piece = piece_cost (fold, i, k);
  if (piece != COST_NONE && left + right + piece < best->cost)
    *best = (Best){ left + right + piece, i, k };
}

static void
try_across (const Fold *fold, Best *best)
{
  for (gint32 i = END; i < fold->first; i++)
    {
      Length most = begin_at (fold, i) + fold->geometry->unit;

      for (gint32 k = fold->past; k < fold->n && end_before (fold, k) <= most; k++)
        try_piece (fold, i, k, best);
      try_piece (fold, i, END, best);
    }
}

/* A place and its image are the outermost of those that need one. */
static void
try_core (const Fold *fold, Best *best)
{
  for (gint32 i = fold->first; i < fold->middle; i++)
    {
      gint32 other = on_axis (fold, i) ? i : fold->image[i];
      Cost left = fold->left[i].cost, right = fold->right[other].cost, core = fold->core[i].cost;
      Cost cost;

      if (left == COST_NONE || right == COST_NONE || core == COST_NONE)
        continue;
      cost = left + right + core - (other == i ? fold->toll[i] : 0);
      if (cost < best->cost)
        *best = (Best){ cost, i, other };
    }
}

static Pattern
trace (const Fold *fold, const Best *best)
{
  g_autoptr (GArray) faces = g_array_new (FALSE, FALSE, sizeof (Length));
  Pattern pattern = { 0 };

  for (gint32 i = best->left; i >= 0; i = fold->left[i].next)
    g_array_prepend_val (faces, fold->faces[i]);
  if (best->left >= fold->first)
    for (gint32 i = fold->core[best->left].next; i >= 0; i = fold->core[i].next)
      {
        g_array_append_val (faces, fold->faces[i]);
        if (!on_axis (fold, i))
          g_array_append_val (faces, fold->faces[fold->image[i]]);
      }
  if (best->right >= 0 && best->right != best->left)
    g_array_append_val (faces, fold->faces[best->right]);
  for (gint32 i = best->right >= 0 ? fold->right[best->right].next : END; i >= 0;
       i = fold->right[i].next)
    g_array_append_val (faces, fold->faces[i]);
  pattern_sort_places (faces);
  pattern.n_pieces = (gint32) faces->len + 1;
  pattern.faces = g_memdup2 (faces->data, sizeof (Length) * faces->len);
  pattern_count (fold->geometry, fold->segment, &pattern);
  return pattern;
}

static Node *
nodes_new (gint32 n)
{
  Node *nodes = g_new (Node, MAX (n, 1));

  for (gint32 i = 0; i < n; i++)
    nodes[i] = (Node){ COST_NONE, NONE };
  return nodes;
}

static gint32 *
lasts_new (const Fold *fold)
{
  gint32 *last = g_new (gint32, MAX (fold->n, 1)), at = 0;
  const Step *steps = geometry_step (fold->geometry, fold->segment->first_step);

  for (gint32 i = 0; i < fold->n; i++)
    {
      while (at < fold->forms.n - 1 && steps[at + 1].from < end_before (fold, i))
        at++;
      last[i] = at;
    }
  return last;
}

/* Where those are that need an image. Without any, all places are right of the axis. */
static void
find_stretch (Fold *fold)
{
  while (fold->first < fold->n && fold->image[fold->first] < 0)
    fold->first++;
  fold->past = fold->middle = fold->first;
  while (fold->past < fold->n && fold->image[fold->past] >= 0)
    {
      gint32 i = fold->past++;

      if (fold->faces[i] <= fold->faces[fold->image[i]])
        fold->middle = fold->past;
    }
}

Pattern
fold_solve (const Geometry *geometry, const Segment *segment, const GArray *places,
            const Cost *toll, const gint32 *image)
{
  Fold fold = { .geometry = geometry,
                .segment = segment,
                .faces = (const Length *) (gpointer) places->data,
                .toll = toll,
                .image = image,
                .n = (gint32) places->len };
  Best best = { COST_NONE, END, END };
  Pattern pattern = { 0 };

  find_stretch (&fold);
  fold.owing = rules_of_pieces (geometry, segment);
  fold.forms = forms_new (geometry, segment, places);
  fold.last = lasts_new (&fold);
  fold.left = nodes_new (fold.n);
  fold.right = nodes_new (fold.n);
  fold.core = nodes_new (fold.n);
  go_left (&fold);
  go_right (&fold);
  go_apart (&fold);
  try_across (&fold, &best);
  try_core (&fold, &best);
  if (best.cost != COST_NONE)
    pattern = trace (&fold, &best);
  forms_clear (&fold.forms);
  g_free (fold.last);
  g_free (fold.left);
  g_free (fold.right);
  g_free (fold.core);
  return pattern;
}
