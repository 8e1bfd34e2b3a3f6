/* sawing.c - which boxes are sawn from one unit: the fewest units, with a bound
 *
 * Panels are made in several ways, and sawn from units by the exact solver for lengths: the best
 * way holds. */
#include "takeoff/sawing.h"

#include <string.h>

#include "cutting/cutting.h"

/* More boxes are not fitted one by one: that takes the square of their number. */
#define FIT_MAX 2000

typedef struct
{
  Sawing *best;
  const gint *stop;
  OffcutFit fit;
  gboolean low; /* there are boxes that can lie over one another */
} Solving;

static gboolean
is_stopped (const Solving *solving)
{
  return solving->stop != NULL && g_atomic_int_get (solving->stop) != 0;
}

static gboolean
is_solved (const Solving *solving)
{
  return solving->best->at_least >= solving->best->units || is_stopped (solving);
}

void
sawing_free (Sawing *sawing)
{
  if (sawing == NULL)
    return;
  g_free (sawing->boxes);
  g_array_unref (sawing->panels);
  g_array_unref (sawing->patterns);
  g_array_unref (sawing->lengths);
  g_free (sawing);
}

/* --- a way becomes the best --- */

static void
add_pattern (Sawing *sawing, gint32 times, guint n)
{
  SawPattern pattern = { times, sawing->lengths->len - n, n };

  g_array_append_val (sawing->patterns, pattern);
}

/* The panels of the fit, and where its boxes lie in them. */
static void
keep_panels (Solving *solving, const Box *boxes, gint32 units)
{
  Sawing *best = solving->best;

  if (boxes != best->boxes)
    memcpy (best->boxes, boxes, sizeof (Box) * best->n);
  g_array_set_size (best->panels, 0);
  if (solving->fit.panels->len > 0)
    g_array_append_vals (best->panels, solving->fit.panels->data, solving->fit.panels->len);
  g_array_set_size (best->patterns, 0);
  g_array_set_size (best->lengths, 0);
  best->units = units;
}

static gint
compare_lengths (gconstpointer a, gconstpointer b)
{
  Length p = *(const Length *) a, q = *(const Length *) b;

  return (p < q) - (p > q);
}

/* As the fit saws them: each unit a pattern of its own. */
static void
keep_fit (Solving *solving, const Box *boxes, gint32 units)
{
  const GArray *panels = solving->fit.panels;
  Sawing *best = solving->best;
  g_autofree guint *first = g_new0 (guint, (gsize) units + 1);

  keep_panels (solving, boxes, units);
  for (guint i = 0; i < panels->len; i++)
    first[g_array_index (panels, Panel, i).unit + 1]++;
  for (gint32 unit = 0; unit < units; unit++)
    first[unit + 1] += first[unit];
  g_array_set_size (best->lengths, panels->len);
  for (gint32 unit = 0; unit < units; unit++)
    {
      SawPattern pattern = { 1, first[unit], first[unit + 1] - first[unit] };

      g_array_append_val (best->patterns, pattern);
    }
  for (guint i = 0; i < panels->len; i++)
    {
      const Panel *panel = &g_array_index (panels, Panel, i);

      g_array_index (best->lengths, Length, first[panel->unit]++) = panel->length;
    }
  for (guint i = 0; i < best->patterns->len; i++)
    {
      const SawPattern *pattern = &g_array_index (best->patterns, SawPattern, i);

      qsort (&g_array_index (best->lengths, Length, pattern->first), pattern->n, sizeof (Length),
             compare_lengths);
    }
}

static void
keep_plan (Solving *solving, const Box *boxes, const CuttingPlan *plan)
{
  Sawing *best = solving->best;

  keep_panels (solving, boxes, plan->bins);
  for (guint i = 0; i < plan->patterns->len; i++)
    {
      const CuttingPattern *pattern = g_ptr_array_index (plan->patterns, i);

      for (guint k = 0; k < pattern->pieces->len; k++)
        {
          Length length = (Length) g_array_index (pattern->pieces, gint64, k);

          g_array_append_val (best->lengths, length);
        }
      add_pattern (best, pattern->times, pattern->pieces->len);
    }
}

/* --- panels from units --- */

/* Lengths counted; `lengths` are Length, longest first or not. */
static CuttingPlan *
cut_lengths (const Solving *solving, const GArray *lengths)
{
  Face face = solving->best->face;
  g_autofree CuttingItem *items = g_new (CuttingItem, lengths->len + 1);

  for (guint i = 0; i < lengths->len; i++)
    items[i] = (CuttingItem){ g_array_index (lengths, Length, i), 1 };
  return cutting_solve (face.length, face.kerf, items, lengths->len, 0, solving->stop, NULL);
}

/* Saws the fit's panels; keeps that when it is better than the best. */
static void
try_panels (Solving *solving, const Box *boxes)
{
  g_autoptr (GArray) lengths = g_array_new (FALSE, FALSE, sizeof (Length));
  g_autoptr (CuttingPlan) plan = NULL;

  for (guint i = 0; i < solving->fit.panels->len; i++)
    g_array_append_val (lengths, g_array_index (solving->fit.panels, Panel, i).length);
  plan = cut_lengths (solving, lengths);
  if (plan == NULL)
    return;
  if (plan->bins < solving->best->units)
    keep_plan (solving, boxes, plan);
  /* With no low boxes the panels are the boxes, and what is proven of them holds. */
  if (!solving->low)
    solving->best->at_least = MAX (solving->best->at_least, plan->bins_at_least);
}

/* --- panels of boxes of one length --- */

/* Boxes of one length and height, next to be taken. */
typedef struct
{
  Length height;
  guint next;
} Heap;

static void
add_equal_panels (Solving *solving, Box *boxes, const CuttingPattern *pattern, GArray *heaps)
{
  for (gint32 time = 0; time < pattern->times; time++)
    {
      Panel panel = { 0, -1 };
      Length z = 0;
      guint heap = 0;

      for (guint i = 0; i < pattern->pieces->len; i++)
        {
          Length height = (Length) g_array_index (pattern->pieces, gint64, i);
          Box *box;

          while (g_array_index (heaps, Heap, heap).height != height)
            heap++;
          box = &boxes[g_array_index (heaps, Heap, heap).next++];
          box->panel = (gint32) solving->fit.panels->len;
          box->x = 0;
          box->z = z;
          panel.length = box->length;
          z += height + solving->best->face.kerf;
        }
      g_array_append_val (solving->fit.panels, panel);
    }
}

/* Boxes first .. end, all of one length, one over another in as few panels as can be. */
static gboolean
stack_equal (Solving *solving, Box *boxes, guint first, guint end)
{
  Face face = solving->best->face;
  g_autoptr (GArray) heaps = g_array_new (FALSE, FALSE, sizeof (Heap));
  g_autoptr (GArray) items = g_array_new (FALSE, FALSE, sizeof (CuttingItem));
  g_autoptr (CuttingPlan) plan = NULL;

  for (guint i = first; i < end; i++)
    {
      CuttingItem item = { boxes[i].height, 1 };
      Heap heap = { boxes[i].height, i };

      if (i > first && boxes[i].height == boxes[i - 1].height)
        {
          g_array_index (items, CuttingItem, items->len - 1).quantity++;
          continue;
        }
      g_array_append_val (items, item);
      g_array_append_val (heaps, heap);
    }
  plan = cutting_solve (face.height, face.kerf, (const CuttingItem *) (gpointer) items->data,
                        items->len, 0, solving->stop, NULL);
  for (guint i = 0; plan != NULL && i < plan->patterns->len; i++)
    add_equal_panels (solving, boxes, g_ptr_array_index (plan->patterns, i), heaps);
  return plan != NULL;
}

static gboolean
stack_all_equal (Solving *solving, Box *boxes)
{
  g_array_set_size (solving->fit.panels, 0);
  for (guint i = 0, end; i < solving->best->n; i = end)
    {
      for (end = i + 1; end < solving->best->n && boxes[end].length == boxes[i].length; end++)
        ;
      if (!stack_equal (solving, boxes, i, end))
        return FALSE;
    }
  return TRUE;
}

/* --- bounds --- */

/* Boxes so high that no other goes over them: of these, lengths alone count. */
static void
bound_by_high (Solving *solving)
{
  Sawing *best = solving->best;
  g_autoptr (GArray) lengths = g_array_new (FALSE, FALSE, sizeof (Length));
  g_autoptr (CuttingPlan) plan = NULL;

  for (guint i = 0; i < best->n; i++)
    if (2 * best->boxes[i].height + best->face.kerf > best->face.height)
      g_array_append_val (lengths, best->boxes[i].length);
  plan = cut_lengths (solving, lengths);
  if (plan != NULL)
    best->at_least = MAX (best->at_least, plan->bins_at_least);
}

/* --- all together --- */

static gboolean
has_low (const Sawing *sawing)
{
  Length lowest = sawing->face.height;

  for (guint i = 0; i < sawing->n; i++)
    lowest = MIN (lowest, sawing->boxes[i].height);
  return 2 * lowest + sawing->face.kerf <= sawing->face.height;
}

static void
solve (Solving *solving)
{
  Sawing *best = solving->best;
  g_autofree Box *boxes = g_new (Box, best->n + 1);
  gint ways = solving->low ? 3 : 1;

  if (best->n > 0)
    memcpy (boxes, best->boxes, sizeof (Box) * best->n);
  best->units = G_MAXINT32;
  best->at_least = offcut_bound (best->face, best->boxes, best->n);
  if (best->n <= FIT_MAX)
    keep_fit (solving, best->boxes, offcut_fit_best (&solving->fit, best->boxes, best->n));
  for (gint way = 0; way < ways && !is_solved (solving); way++)
    {
      if (way < 2)
        offcut_stack (&solving->fit, boxes, best->n, way == 0 ? PANELS_TIGHT : PANELS_LONG);
      else if (!stack_all_equal (solving, boxes))
        break;
      try_panels (solving, boxes);
    }
  if (solving->low && !is_solved (solving))
    bound_by_high (solving);
}

Sawing *
sawing_new (Face face, Box *boxes, guint n, const gint *stop)
{
  Sawing *sawing = g_new0 (Sawing, 1);
  Solving solving = { .best = sawing, .stop = stop };

  if (n > 1)
    qsort (boxes, n, sizeof (Box), box_compare);
  *sawing = (Sawing){ .face = face, .n = n, .boxes = boxes };
  sawing->panels = g_array_new (FALSE, FALSE, sizeof (Panel));
  sawing->patterns = g_array_new (FALSE, FALSE, sizeof (SawPattern));
  sawing->lengths = g_array_new (FALSE, FALSE, sizeof (Length));
  solving.low = has_low (sawing);
  offcut_fit_init (&solving.fit, face);
  solve (&solving);
  offcut_fit_clear (&solving.fit);
  if (!is_stopped (&solving))
    return sawing;
  sawing_free (sawing);
  return NULL;
}

/* --- parts --- */

static void
add_part (Sawing *whole, guint box, const Sawing *part)
{
  gint32 panel = (gint32) whole->panels->len;
  guint length = whole->lengths->len;

  for (guint i = 0; i < part->n; i++)
    {
      whole->boxes[box + i] = part->boxes[i];
      whole->boxes[box + i].panel += panel;
    }
  for (guint i = 0; i < part->patterns->len; i++)
    {
      SawPattern pattern = g_array_index (part->patterns, SawPattern, i);

      pattern.first += length;
      g_array_append_val (whole->patterns, pattern);
    }
  if (part->panels->len > 0)
    g_array_append_vals (whole->panels, part->panels->data, part->panels->len);
  if (part->lengths->len > 0)
    g_array_append_vals (whole->lengths, part->lengths->data, part->lengths->len);
  whole->units += part->units;
}

void
sawing_take_parts (Sawing *whole, Sawing *const *parts, guint n)
{
  guint box = 0;

  g_array_set_size (whole->panels, 0);
  g_array_set_size (whole->patterns, 0);
  g_array_set_size (whole->lengths, 0);
  whole->units = 0;
  for (guint i = 0; i < n; i++)
    {
      g_return_if_fail (box + parts[i]->n <= whole->n);
      add_part (whole, box, parts[i]);
      box += parts[i]->n;
    }
  if (whole->n > 1)
    qsort (whole->boxes, whole->n, sizeof (Box), box_compare);
}
