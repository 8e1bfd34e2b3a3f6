#include "app/recording.h"

#include <string.h>

typedef struct
{
  gint16 layer;
  gint32 course;
  guint64 hash;
  graphene_rect_t bounds; /* sheet steps */
  gboolean any;           /* bounds is set */
  GskRenderNode *node;    /* NULL: nothing in the area */
} Group;

struct HbRecording
{
  guint layers;
  GArray *groups; /* Group, in the order of painting */
  View view;
  Theme theme;
  graphene_rect_t area;
};

static void
group_clear (gpointer data)
{
  Group *group = data;

  g_clear_pointer (&group->node, gsk_render_node_unref);
}

static GArray *
groups_new (void)
{
  GArray *groups = g_array_new (FALSE, TRUE, sizeof (Group));

  g_array_set_clear_func (groups, group_clear);
  return groups;
}

HbRecording *
hb_recording_new (guint layers)
{
  HbRecording *recording = g_new0 (HbRecording, 1);

  recording->layers = layers;
  recording->groups = groups_new ();
  return recording;
}

void
hb_recording_free (HbRecording *recording)
{
  if (!recording)
    return;
  g_array_unref (recording->groups);
  g_free (recording);
}

void
hb_recording_clear (HbRecording *recording)
{
  g_array_set_size (recording->groups, 0);
  recording->view.scale = 0;
}

/* ---- what a group holds ---- */

static guint64
hash_bytes (guint64 hash, gconstpointer bytes, gsize n)
{
  const guint8 *byte = bytes;

  for (gsize i = 0; i < n; i++)
    hash = (hash ^ byte[i]) * G_GUINT64_CONSTANT (1099511628211);
  return hash;
}

static guint64
hash_double (guint64 hash, double value)
{
  return hash_bytes (hash, &value, sizeof value);
}

static guint64
hash_mark (guint64 hash, const Drawing *drawing, const Mark *mark)
{
  const MarkPoint *points = drawing_points (drawing, mark);
  const int head[] = { (int) mark->kind, mark->style, (int) mark->n_points };

  hash = hash_bytes (hash, head, sizeof head);
  for (guint i = 0; i < mark->n_points; i++)
    {
      hash = hash_double (hash_double (hash, points[i].x), points[i].z);
      hash = hash_double (hash_double (hash, (double) points[i].dx), (double) points[i].dy);
    }
  if (mark->kind == MARK_TEXT)
    {
      const char *text = drawing_text (drawing, mark);

      hash = hash_bytes (hash, text, strlen (text) + 1);
      hash = hash_double (hash_double (hash, (double) mark->anchor_x), (double) mark->anchor_y);
    }
  hash = hash_double (hash_double (hash, (double) mark->radius), mark->fit);
  return hash_double (hash_double (hash, mark->min_scale), mark->line_mm);
}

/* What a mark takes of the sheet, generously: lines have width, and letters are not measured. */
static graphene_rect_t
mark_bounds (const Drawing *drawing, const Mark *mark, const View *view, Theme theme)
{
  const MarkPoint *points = drawing_points (drawing, mark);
  const StyleRow *row = theme_row (theme, (Style) mark->style);
  const double line = MAX (row->line_width, mark->line_mm * view->scale);
  double pad_x = 2 + line + (double) mark->radius, pad_y = pad_x;
  double left = G_MAXDOUBLE, top = G_MAXDOUBLE, right = -G_MAXDOUBLE, bottom = -G_MAXDOUBLE;

  if (mark->kind == MARK_TEXT)
    {
      pad_x += (double) g_utf8_strlen (drawing_text (drawing, mark), -1) * row->text_size;
      pad_y += 2 * row->text_size;
    }
  for (guint i = 0; i < mark->n_points; i++)
    {
      double x, y;

      view_to_sheet (view, &points[i], &x, &y);
      left = MIN (left, x);
      right = MAX (right, x);
      top = MIN (top, y);
      bottom = MAX (bottom, y);
    }
  return GRAPHENE_RECT_INIT ((float) (left - pad_x), (float) (top - pad_y),
                             (float) (right - left + 2 * pad_x),
                             (float) (bottom - top + 2 * pad_y));
}

static Group *
group_of (GArray *groups, GHashTable *index, const Mark *mark)
{
  const guint key = ((guint) mark->layer << 24) + (guint) mark->course + 1;
  gpointer at = g_hash_table_lookup (index, GUINT_TO_POINTER (key));
  Group group = { .layer = mark->layer, .course = mark->course, .hash = 14695981039346656037u };

  if (at)
    return &g_array_index (groups, Group, GPOINTER_TO_UINT (at) - 1);
  g_array_append_val (groups, group);
  g_hash_table_insert (index, GUINT_TO_POINTER (key), GUINT_TO_POINTER (groups->len));
  return &g_array_index (groups, Group, groups->len - 1);
}

/* The groups of a drawing in the order of its layers, with their hashes and bounds, and no nodes.
 */
static GArray *
group_marks (const Drawing *drawing, guint layers, const View *view, Theme theme)
{
  GArray *groups = groups_new ();
  g_autoptr (GHashTable) index = g_hash_table_new (NULL, NULL);

  for (guint i = 0; i < drawing->marks->len; i++)
    {
      const Mark *mark = drawing_mark (drawing, i);
      Group *group;
      graphene_rect_t bounds;

      if (!(layers & (1u << mark->layer)))
        continue;
      group = group_of (groups, index, mark);
      group->hash = hash_mark (group->hash, drawing, mark);
      if (!mark->n_points)
        continue;
      bounds = mark_bounds (drawing, mark, view, theme);
      if (group->any)
        graphene_rect_union (&group->bounds, &bounds, &group->bounds);
      else
        group->bounds = bounds;
      group->any = TRUE;
    }
  return groups;
}

static const Group *
find_group (const GArray *groups, const Group *like)
{
  for (guint i = 0; i < groups->len; i++)
    {
      const Group *group = &g_array_index (groups, Group, i);

      if (group->layer == like->layer && group->course == like->course)
        return group;
    }
  return NULL;
}

static void
record (HbRecording *recording, Group *group, Ink *ink, const Drawing *drawing)
{
  graphene_rect_t bounds;
  cairo_t *cr;

  if (!group->any || !graphene_rect_intersection (&group->bounds, &recording->area, &bounds))
    return;
  graphene_rect_round_extents (&bounds, &bounds);
  group->node = gsk_cairo_node_new (&bounds);
  cr = gsk_cairo_node_get_draw_context (group->node);
  ink_draw (ink, cr, drawing, &recording->view, recording->theme, group->layer, group->course,
            TRUE);
  cairo_destroy (cr);
}

/* What is seen, and half as much on every side, so that a moved view finds it recorded. */
static graphene_rect_t
area_around (const graphene_rect_t *visible)
{
  graphene_rect_t area = *visible;

  graphene_rect_inset (&area, -visible->size.width / 2, -visible->size.height / 2);
  return area;
}

void
hb_recording_update (HbRecording *recording, Ink *ink, const Drawing *drawing, const View *view,
                     Theme theme, const graphene_rect_t *visible)
{
  const gboolean same = hb_recording_covers (recording, view, theme, visible);
  g_autoptr (GArray) old = g_steal_pointer (&recording->groups);

  if (!same)
    {
      recording->view = *view;
      recording->theme = theme;
      recording->area = area_around (visible);
    }
  recording->groups = group_marks (drawing, recording->layers, &recording->view, theme);
  for (guint i = 0; i < recording->groups->len; i++)
    {
      Group *group = &g_array_index (recording->groups, Group, i);
      const Group *before = same ? find_group (old, group) : NULL;

      if (before && before->hash == group->hash)
        group->node = before->node ? gsk_render_node_ref (before->node) : NULL;
      else
        record (recording, group, ink, drawing);
    }
}

void
hb_recording_snapshot (HbRecording *recording, GtkSnapshot *snapshot, const View *view)
{
  const graphene_point_t shift = GRAPHENE_POINT_INIT ((float) (view->ox - recording->view.ox),
                                                      (float) (view->oy - recording->view.oy));

  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &shift);
  for (guint i = 0; i < recording->groups->len; i++)
    {
      GskRenderNode *node = g_array_index (recording->groups, Group, i).node;

      if (node)
        gtk_snapshot_append_node (snapshot, node);
    }
  gtk_snapshot_restore (snapshot);
}

gboolean
hb_recording_covers (const HbRecording *recording, const View *view, Theme theme,
                     const graphene_rect_t *visible)
{
  graphene_rect_t moved = *visible;

  if (recording->view.scale != view->scale || recording->theme != theme)
    return FALSE;
  graphene_rect_offset (&moved, (float) (recording->view.ox - view->ox),
                        (float) (recording->view.oy - view->oy));
  return graphene_rect_contains_rect (&recording->area, &moved);
}
