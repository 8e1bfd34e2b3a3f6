/* canvas-holds.c - what the keyboard's focus and a screen reader find of the wall */
#include "app/canvas-private.h"

#include <glib/gi18n.h>

#include "app/hold.h"
#include "app/tool-top.h"

/* A ring of the focus round a point, px. */
#define CORNER_SIZE 18

static void
focused_cb (HbHold *hold, GParamSpec *spec, HbCanvas *self)
{
  const MarkRef *corner = hb_hold_get_corner (hold);

  (void) spec;
  /* In the client view the focus says nothing of what is selected. */
  if (self->client || !gtk_widget_has_focus (GTK_WIDGET (hold)))
    return;
  if (hb_hold_get_joint (hold))
    {
      hb_canvas_select_joint (self, hb_hold_get_joint (hold));
      return;
    }
  hb_canvas_select (self, hb_hold_get_opening (hold));
  _hb_canvas_hold_corner (self, corner->kind != REF_NONE ? corner : NULL);
}

static GtkWidget *
add_hold (HbCanvas *self, GtkWidget *hold)
{
  gtk_widget_set_parent (hold, GTK_WIDGET (self));
  g_signal_connect (hold, "notify::has-focus", G_CALLBACK (focused_cb), self);
  return hold;
}

/* Of the opening, or of the joint where there is none. */
static GtkWidget *
find_hold (HbCanvas *self, OpeningId opening, guint joint)
{
  for (guint i = 0; i < self->holds->len; i++)
    if (hb_hold_get_opening (g_ptr_array_index (self->holds, i)).n == opening.n
        && hb_hold_get_joint (g_ptr_array_index (self->holds, i)) == joint)
      return g_ptr_array_index (self->holds, i);
  return NULL;
}

static const char *
kind_text (OpeningKind kind)
{
  switch (kind)
    {
    case OPENING_DOOR:
      return _ ("Door");
    case OPENING_VOID:
      return _ ("Void");
    case OPENING_WINDOW:
    default:
      return _ ("Window");
    }
}

static void
name_opening (GtkWidget *hold, const Opening *opening)
{
  char w[LENGTH_TEXT_SIZE], h[LENGTH_TEXT_SIZE], x[LENGTH_TEXT_SIZE], s[LENGTH_TEXT_SIZE];
  g_autofree char *name
      = g_strdup_printf ("%s %s", kind_text (opening->kind), tool_opening_name (opening));
  g_autofree char *description
      = g_strdup_printf (_ ("%s by %s mm, left jamb at %s mm, sill at %s mm"),
                         length_text (opening->width, w), length_text (opening->height, h),
                         length_text (opening->x, x), length_text (opening->sill, s));

  hb_hold_set_name (HB_HOLD (hold), name, description);
}

static void
name_wall (HbCanvas *self, const Wall *wall)
{
  char length[LENGTH_TEXT_SIZE], height[LENGTH_TEXT_SIZE];
  g_autofree char *name = NULL, *description = NULL, *piece = NULL;

  if (!wall)
    {
      hb_hold_set_name (HB_HOLD (self->wall_hold), _ ("No wall"), _ ("Add one with “+ Wall”"));
      return;
    }
  name = g_strdup_printf (_ ("Wall: %s"), tool_wall_name (wall));
  description = g_strdup_printf (
      wall->tops->len > 0
          ? _ ("%s mm long, at most %s mm high, openings: %u, points of the top: %u")
          : _ ("%s mm long, %s mm high, openings: %u"),
      length_text (wall->length, length), length_text (wall->height, height), wall->openings->len,
      wall->tops->len);
  /* What the keys walked to is what a screen reader should say. */
  piece = self->perpend.course ? _hb_canvas_dup_perpend_text (self, &self->perpend)
          : self->piece        ? _hb_canvas_dup_piece_text (self, self->in_course, self->piece)
                               : NULL;
  hb_hold_set_name (HB_HOLD (self->wall_hold), name, piece ? piece : description);
}

static gboolean
is_there (const Wall *wall, HbHold *hold)
{
  if (hb_hold_get_joint (hold))
    return hb_hold_get_joint (hold) <= wall->movement_joints->len;
  return wall_opening (wall, hb_hold_get_opening (hold)) != NULL;
}

static void
drop_gone (HbCanvas *self, const Wall *wall)
{
  for (guint i = self->holds->len; i-- > 0;)
    {
      GtkWidget *hold = g_ptr_array_index (self->holds, i);

      if (wall && is_there (wall, HB_HOLD (hold)))
        continue;
      g_ptr_array_remove_index (self->holds, i);
      gtk_widget_unparent (hold);
    }
}

static void
name_joint (GtkWidget *hold, const MovementJoint *joint)
{
  char x[LENGTH_TEXT_SIZE], width[LENGTH_TEXT_SIZE];
  g_autofree char *description
      = g_strdup_printf (_ ("%s mm from the left end, %s mm wide%s%s"), length_text (joint->x, x),
                         length_text (joint->width, width), joint->filler ? ", " : "",
                         joint->filler ? joint->filler : "");

  hb_hold_set_name (HB_HOLD (hold), _ ("Movement joint"), description);
}

static void
update_joints (HbCanvas *self, const Wall *wall)
{
  for (guint i = 0; i < wall->movement_joints->len; i++)
    {
      GtkWidget *hold = find_hold (self, (OpeningId){ 0 }, i + 1);

      if (!hold)
        {
          hold = add_hold (self, hb_hold_new_joint (i + 1));
          g_ptr_array_add (self->holds, hold);
        }
      name_joint (hold, wall_movement_joint_at (wall, i));
      gtk_widget_set_can_focus (hold, !self->client);
    }
}

/* ---- points of the top, then steps of the footing ---- */

static GtkWidget *
find_corner (HbCanvas *self, const MarkRef *ref)
{
  for (guint i = 0; i < self->corners->len; i++)
    if (mark_ref_equal (hb_hold_get_corner (g_ptr_array_index (self->corners, i)), ref))
      return g_ptr_array_index (self->corners, i);
  return NULL;
}

static void
drop_gone_corners (HbCanvas *self, const Wall *wall)
{
  for (guint i = self->corners->len; i-- > 0;)
    {
      GtkWidget *hold = g_ptr_array_index (self->corners, i);

      if (wall && tool_is_corner (wall, hb_hold_get_corner (HB_HOLD (hold))))
        continue;
      g_ptr_array_remove_index (self->corners, i);
      gtk_widget_unparent (hold);
    }
}

static void
update_corner (HbCanvas *self, const Wall *wall, MarkRef ref)
{
  GtkWidget *hold = find_corner (self, &ref);
  g_autofree char *name = g_strdup_printf (
      ref.kind == REF_FOOT ? _ ("Step %u of the footing") : _ ("Point %u of the top"), ref.a + 1);
  g_autofree char *text = _hb_canvas_dup_corner_text (wall, &ref);

  if (!hold)
    {
      hold = add_hold (self, hb_hold_new_corner (&ref));
      g_ptr_array_add (self->corners, hold);
    }
  hb_hold_set_name (HB_HOLD (hold), name, text);
  gtk_widget_set_can_focus (hold, !self->client);
}

static void
update_corners (HbCanvas *self, const Wall *wall)
{
  for (guint i = 0; wall && i < wall->tops->len; i++)
    update_corner (self, wall, (MarkRef){ .kind = REF_TOP, .part = TOP_POINT, .a = i });
  for (guint i = 0; wall && i < wall->feet->len; i++)
    update_corner (self, wall, (MarkRef){ .kind = REF_FOOT, .a = i });
}

/* From left to right, first the top. */
static gint
by_corner (gconstpointer a, gconstpointer b)
{
  const MarkRef *one = hb_hold_get_corner (*(HbHold *const *) a);
  const MarkRef *other = hb_hold_get_corner (*(HbHold *const *) b);

  if (one->kind != other->kind)
    return one->kind == REF_TOP ? -1 : 1;
  return one->a < other->a ? -1 : one->a > other->a;
}

static void
place_corner (HbCanvas *self, const Wall *wall, GtkWidget *hold)
{
  MarkPoint point = { 0 };
  Length x, z;
  double sx, sy;
  GtkAllocation at = { .width = CORNER_SIZE, .height = CORNER_SIZE };

  if (!tool_corner_at (wall, hb_hold_get_corner (HB_HOLD (hold)), &x, &z))
    return;
  point.x = length_to_mm (x);
  point.z = length_to_mm (z);
  view_to_sheet (&self->view, &point, &sx, &sy);
  at.x = (int) sx - CORNER_SIZE / 2;
  at.y = (int) sy - CORNER_SIZE / 2;
  gtk_widget_measure (hold, GTK_ORIENTATION_HORIZONTAL, -1, NULL, NULL, NULL, NULL);
  gtk_widget_size_allocate (hold, &at, -1);
}

void
_hb_canvas_update_holds (HbCanvas *self)
{
  const Wall *wall = _hb_canvas_get_wall_value (self);
  gboolean had_focus;

  if (!self->holds)
    {
      self->holds = g_ptr_array_new ();
      self->wall_hold = add_hold (self, hb_hold_new ((OpeningId){ 0 }));
      self->corners = g_ptr_array_new ();
    }
  had_focus = gtk_widget_get_focus_child (GTK_WIDGET (self)) != NULL;
  /* Before the others can have it no longer: a focus that is taken away swallows the next key. */
  if (had_focus && self->client)
    gtk_widget_grab_focus (self->wall_hold);
  drop_gone (self, wall);
  drop_gone_corners (self, wall);
  name_wall (self, wall);
  /* Without a wall there is nothing that a ring could stand round. */
  gtk_widget_set_opacity (self->wall_hold, wall ? 1 : 0);
  for (guint i = 0; wall && i < wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (wall, i);
      GtkWidget *hold = find_hold (self, opening->id, 0);

      if (!hold)
        {
          hold = add_hold (self, hb_hold_new (opening->id));
          g_ptr_array_add (self->holds, hold);
        }
      name_opening (hold, opening);
      /* The client view is to be looked at: nothing is taken hold of there. */
      gtk_widget_set_can_focus (hold, !self->client);
    }
  if (wall)
    update_joints (self, wall);
  update_corners (self, wall);
  /* The focus of what was removed goes to the wall, not out of the canvas. */
  if (had_focus && !gtk_widget_get_focus_child (GTK_WIDGET (self)))
    gtk_widget_grab_focus (self->wall_hold);
  gtk_widget_queue_allocate (GTK_WIDGET (self));
}

static void
place (HbCanvas *self, GtkWidget *hold, Length x, Length z, Length width, Length height)
{
  const MarkPoint corner = { .x = length_to_mm (x), .z = length_to_mm (z + height) };
  double sx, sy;
  GtkAllocation at;

  view_to_sheet (&self->view, &corner, &sx, &sy);
  at.x = (int) sx;
  at.y = (int) sy;
  at.width = MAX (1, (int) (length_to_mm (width) * self->view.scale));
  at.height = MAX (1, (int) (length_to_mm (height) * self->view.scale));
  /* GTK wants a child measured before it is given a place. */
  gtk_widget_measure (hold, GTK_ORIENTATION_HORIZONTAL, -1, NULL, NULL, NULL, NULL);
  gtk_widget_size_allocate (hold, &at, -1);
}

void
_hb_canvas_place_holds (HbCanvas *self)
{
  const Wall *wall = _hb_canvas_get_wall_value (self);

  if (!self->holds)
    return;
  place (self, self->wall_hold, 0, 0, wall ? wall->length : 1, wall ? wall->height : 1);
  for (guint i = 0; wall && i < self->holds->len; i++)
    {
      GtkWidget *hold = g_ptr_array_index (self->holds, i);
      const Opening *opening = wall_opening (wall, hb_hold_get_opening (HB_HOLD (hold)));
      const guint joint = hb_hold_get_joint (HB_HOLD (hold));

      if (joint && joint <= wall->movement_joints->len)
        place (self, hold, wall_movement_joint_at (wall, joint - 1)->x, 0,
               wall_movement_joint_at (wall, joint - 1)->width, wall->height);
      if (opening)
        place (self, hold, opening->x, opening->sill, opening->width, opening->height);
    }
  for (guint i = 0; wall && i < self->corners->len; i++)
    place_corner (self, wall, g_ptr_array_index (self->corners, i));
}

void
_hb_canvas_drop_holds (HbCanvas *self)
{
  if (!self->holds)
    return;
  for (guint i = 0; i < self->holds->len; i++)
    gtk_widget_unparent (g_ptr_array_index (self->holds, i));
  for (guint i = 0; i < self->corners->len; i++)
    gtk_widget_unparent (g_ptr_array_index (self->corners, i));
  g_clear_pointer (&self->holds, g_ptr_array_unref);
  g_clear_pointer (&self->corners, g_ptr_array_unref);
  g_clear_pointer (&self->wall_hold, gtk_widget_unparent);
}

void
_hb_canvas_focus_selected (HbCanvas *self)
{
  GtkWidget *hold = self->selected.n || self->joint ? find_hold (self, self->selected, self->joint)
                    : self->held.kind != REF_NONE   ? find_corner (self, &self->held)
                                                    : NULL;

  gtk_widget_grab_focus (hold ? hold : self->wall_hold);
}

/* Where it begins, and how high. */
static void
place_of (const Wall *wall, HbHold *hold, Length *x, Length *z)
{
  const Opening *opening = wall_opening (wall, hb_hold_get_opening (hold));
  const guint joint = hb_hold_get_joint (hold);

  *x = opening ? opening->x : joint ? wall_movement_joint_at (wall, joint - 1)->x : 0;
  *z = opening ? opening->sill : 0;
}

static gint
by_place (gconstpointer a, gconstpointer b, gpointer wall)
{
  Length x[2], z[2];

  place_of (wall, *(HbHold *const *) a, &x[0], &z[0]);
  place_of (wall, *(HbHold *const *) b, &x[1], &z[1]);
  return x[0] != x[1] ? (x[0] < x[1] ? -1 : 1) : (z[0] > z[1]) - (z[0] < z[1]);
}

/* The wall, then its openings and joints from the left: as one reads an elevation, whatever their
 * heights; then the points of its top and the steps of its footing. */
gboolean
_hb_canvas_focus_next (HbCanvas *self, gboolean forward)
{
  const Wall *wall = _hb_canvas_get_wall_value (self);
  GtkWidget *now = gtk_widget_get_focus_child (GTK_WIDGET (self));
  g_autoptr (GPtrArray) order = g_ptr_array_new ();
  guint at = 0;

  g_ptr_array_add (order, self->wall_hold);
  if (wall && !self->client)
    {
      g_autoptr (GPtrArray) holds = g_ptr_array_copy (self->holds, NULL, NULL);

      g_ptr_array_sort_with_data (holds, by_place, (gpointer) wall);
      g_ptr_array_extend (order, holds, NULL, NULL);
      g_ptr_array_sort (self->corners, by_corner);
      g_ptr_array_extend (order, self->corners, NULL, NULL);
    }
  if (!now)
    return gtk_widget_grab_focus (g_ptr_array_index (order, forward ? 0 : order->len - 1));
  if (!g_ptr_array_find (order, now, &at))
    return FALSE;
  if (forward ? at + 1 >= order->len : at == 0)
    return FALSE;
  return gtk_widget_grab_focus (g_ptr_array_index (order, forward ? at + 1 : at - 1));
}
