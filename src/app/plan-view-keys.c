/* plan-view-keys.c - the keyboard on the plan, and what it and a screen reader find there */
#include <glib/gi18n.h>

#include "app/hold.h"
#include "app/plan-view-private.h"
#include "app/tool.h"
#include "model/plan-edit.h"
#include "model/plan-shift.h"

/* ---- what is found: walls in their order, each with its openings, then meetings ---- */

static MarkRef
ref_of_meeting (const Project *project, const Meeting *meeting)
{
  return (MarkRef){ .kind = REF_MEETING,
                    .a = (gint32) project_wall_at (project, meeting->wall[0])->id.n,
                    .b = (gint32) project_wall_at (project, meeting->wall[1])->id.n };
}

/* Among all meetings, which are looked for once for all that is found; NULL: no more. */
static const Meeting *
meeting_of (const Project *project, const GArray *meetings, const MarkRef *ref)
{
  for (guint i = 0; i < meetings->len; i++)
    {
      const Meeting *meeting = &g_array_index (meetings, Meeting, i);
      const MarkRef its = ref_of_meeting (project, meeting);

      if (its.a == ref->a && its.b == ref->b)
        return meeting;
    }
  return NULL;
}

static GArray *
wanted_refs (const Project *project, const GArray *meetings)
{
  GArray *refs = g_array_new (FALSE, FALSE, sizeof (MarkRef));

  for (guint i = 0; i < project->walls->len; i++)
    {
      const Wall *wall = project_wall_at (project, i);
      MarkRef ref = { .kind = REF_WALL, .id = wall->id.n };

      if (!wall->place.given)
        continue;
      g_array_append_val (refs, ref);
      for (guint k = 0; k < wall->openings->len; k++)
        {
          MarkRef opening = { .kind = REF_OPENING, .id = wall_opening_at (wall, k)->id.n };

          g_array_append_val (refs, opening);
        }
    }
  for (guint i = 0; i < meetings->len; i++)
    {
      const MarkRef ref = ref_of_meeting (project, &g_array_index (meetings, Meeting, i));

      g_array_append_val (refs, ref);
    }
  return refs;
}

static const MarkRef *
ref_of (GtkWidget *hold)
{
  return g_object_get_data (G_OBJECT (hold), "ref");
}

static void
focused_cb (GtkWidget *hold, GParamSpec *spec, HbPlanView *self)
{
  const MarkRef chosen = _hb_plan_view_chosen (self);

  (void) spec;
  if (gtk_widget_has_focus (hold) && !mark_ref_equal (&chosen, ref_of (hold)))
    _hb_plan_view_choose (self, ref_of (hold));
}

static GtkWidget *
add_hold (HbPlanView *self, const MarkRef *ref)
{
  GtkWidget *hold = hb_hold_new ((OpeningId){ 0 });

  g_object_set_data_full (G_OBJECT (hold), "ref", g_memdup2 (ref, sizeof *ref), g_free);
  gtk_widget_set_parent (hold, GTK_WIDGET (self));
  g_signal_connect (hold, "notify::has-focus", G_CALLBACK (focused_cb), self);
  g_ptr_array_add (self->holds, hold);
  return hold;
}

static GtkWidget *
find_hold (HbPlanView *self, const MarkRef *ref)
{
  for (guint i = 0; i < self->holds->len; i++)
    if (mark_ref_equal (ref_of (g_ptr_array_index (self->holds, i)), ref))
      return g_ptr_array_index (self->holds, i);
  return NULL;
}

static const char *
made_text (const Meeting *meeting)
{
  if (meeting->kind == MEET_WRONG)
    return _ ("wrong");
  switch (meeting->made)
    {
    case MADE_FIRST_ODD:
    case MADE_FIRST_EVEN:
      return _ ("bonded");
    case MADE_FIRST_THROUGH:
    case MADE_SECOND_THROUGH:
      return _ ("butted");
    case MADE_UNSAID:
    case MADE_CONTRARY:
    default:
      return _ ("not agreed on");
    }
}

static void
name_meeting (const Project *project, const GArray *meetings, GtkWidget *hold)
{
  const Meeting *meeting = meeting_of (project, meetings, ref_of (hold));
  g_autofree char *name = meeting ? _hb_plan_view_dup_name (project, meeting) : NULL;

  if (meeting)
    hb_hold_set_name (HB_HOLD (hold), name, made_text (meeting));
}

static void
name_hold (const Project *project, const GArray *meetings, GtkWidget *hold)
{
  const MarkRef *ref = ref_of (hold);
  g_autofree char *name = NULL, *about = NULL;
  char a[LENGTH_TEXT_SIZE], b[LENGTH_TEXT_SIZE];
  const Wall *wall;

  if (ref->kind == REF_MEETING)
    {
      name_meeting (project, meetings, hold);
      return;
    }
  if (ref->kind == REF_WALL)
    {
      wall = project_wall (project, (WallId){ ref->id });
      name = g_strdup_printf (_ ("%s in plan"), tool_wall_name (wall));
      about = g_strdup_printf (_ ("%s mm long, from %s east, %s north"),
                               length_text (wall->length, a), length_text (wall->place.x, b),
                               length_text (wall->place.y, (char[LENGTH_TEXT_SIZE]){ 0 }));
    }
  else
    {
      const OpeningId id = { ref->id };

      wall = project_wall_of_opening (project, id);
      name = g_strdup_printf (_ ("%s in %s"), tool_opening_name (wall_opening (wall, id)),
                              tool_wall_name (wall));
      about = g_strdup_printf (_ ("%s mm wide, left jamb at %s mm"),
                               length_text (wall_opening (wall, id)->width, a),
                               length_text (wall_opening (wall, id)->x, b));
    }
  hb_hold_set_name (HB_HOLD (hold), name, about);
}

void
_hb_plan_view_drop_holds (HbPlanView *self)
{
  for (guint i = 0; i < self->holds->len; i++)
    gtk_widget_unparent (g_ptr_array_index (self->holds, i));
  g_ptr_array_set_size (self->holds, 0);
}

static gboolean
fits (HbPlanView *self, const GArray *refs)
{
  if (refs->len != self->holds->len)
    return FALSE;
  for (guint i = 0; i < refs->len; i++)
    if (!mark_ref_equal (&g_array_index (refs, MarkRef, i),
                         ref_of (g_ptr_array_index (self->holds, i))))
      return FALSE;
  return TRUE;
}

void
_hb_plan_view_update_holds (HbPlanView *self)
{
  const Project *project = _hb_plan_view_project (self);
  g_autoptr (GArray) meetings = plan_meetings (project);
  g_autoptr (GArray) refs = wanted_refs (project, meetings);

  if (!fits (self, refs))
    {
      const gboolean had_focus = gtk_widget_get_focus_child (GTK_WIDGET (self)) != NULL;
      const MarkRef chosen = _hb_plan_view_chosen (self);

      _hb_plan_view_drop_holds (self);
      for (guint i = 0; i < refs->len; i++)
        add_hold (self, &g_array_index (refs, MarkRef, i));
      if (had_focus && find_hold (self, &chosen))
        gtk_widget_grab_focus (find_hold (self, &chosen));
    }
  for (guint i = 0; i < self->holds->len; i++)
    name_hold (project, meetings, g_ptr_array_index (self->holds, i));
  gtk_widget_queue_allocate (GTK_WIDGET (self));
}

/* What a thing covers in plan; FALSE: nothing any more. */
static gboolean
box_of (const Project *project, const GArray *meetings, const MarkRef *ref, PlanBox *box)
{
  const Wall *wall = ref->kind == REF_WALL
                         ? project_wall (project, (WallId){ ref->id })
                         : project_wall_of_opening (project, (OpeningId){ ref->id });
  const Meeting *meeting;

  if (ref->kind == REF_MEETING)
    {
      meeting = meeting_of (project, meetings, ref);
      if (meeting)
        *box = meeting->box;
      return meeting != NULL;
    }
  if (!wall)
    return FALSE;
  *box = plan_box (wall, project_block (project, wall->block)->thickness);
  if (ref->kind == REF_OPENING)
    {
      const Opening *opening = wall_opening (wall, (OpeningId){ ref->id });
      g_autoptr (Wall) part = wall_copy (wall);

      wall_shift (part, -opening->x);
      g_clear_pointer (&part->built, built_free);
      part->length = opening->width;
      *box = plan_box (part, project_block (project, wall->block)->thickness);
    }
  return TRUE;
}

void
_hb_plan_view_place_holds (HbPlanView *self)
{
  const Project *project = self->document ? _hb_plan_view_project (self) : NULL;
  g_autoptr (GArray) meetings = NULL;

  if (!self->holds->len)
    return;
  meetings = plan_meetings (project);
  for (guint i = 0; i < self->holds->len; i++)
    {
      GtkWidget *hold = g_ptr_array_index (self->holds, i);
      GtkAllocation at = { 0, 0, 1, 1 };
      MarkPoint corner;
      PlanBox box;
      double sx, sy;

      gtk_widget_measure (hold, GTK_ORIENTATION_HORIZONTAL, -1, NULL, NULL, NULL, NULL);
      if (box_of (project, meetings, ref_of (hold), &box))
        {
          corner = (MarkPoint){ (double) box.x0 / LENGTH_PER_MM, (double) box.y1 / LENGTH_PER_MM, 0,
                                0 };
          view_to_sheet (&self->view, &corner, &sx, &sy);
          at.x = (int) sx;
          at.y = (int) sy;
          at.width = MAX (1, (int) ((double) (box.x1 - box.x0) / LENGTH_PER_MM * self->view.scale));
          at.height
              = MAX (1, (int) ((double) (box.y1 - box.y0) / LENGTH_PER_MM * self->view.scale));
        }
      gtk_widget_size_allocate (hold, &at, -1);
    }
}

void
_hb_plan_view_focus_chosen (HbPlanView *self)
{
  const MarkRef chosen = _hb_plan_view_chosen (self);
  GtkWidget *hold = find_hold (self, &chosen);

  if (hold)
    gtk_widget_grab_focus (hold);
  else if (self->holds->len)
    gtk_widget_grab_focus (g_ptr_array_index (self->holds, 0));
  else
    gtk_widget_grab_focus (GTK_WIDGET (self));
}

gboolean
_hb_plan_view_focus_next (HbPlanView *self, gboolean forward)
{
  GtkWidget *now = gtk_widget_get_focus_child (GTK_WIDGET (self));
  guint at = 0;

  if (!self->holds->len)
    return FALSE;
  if (!now)
    {
      _hb_plan_view_focus_chosen (self);
      return TRUE;
    }
  if (!g_ptr_array_find (self->holds, now, &at))
    return FALSE;
  if (forward ? at + 1 >= self->holds->len : at == 0)
    return FALSE;
  return gtk_widget_grab_focus (g_ptr_array_index (self->holds, forward ? at + 1 : at - 1));
}

/* ---- keys ---- */

/* What the arrow keys held down did is one step, kept when the key is let go. */
void
_hb_plan_view_end_nudge (HbPlanView *self)
{
  const Project *project = self->document ? _hb_plan_view_project (self) : NULL;
  const Wall *wall = project ? project_wall (project, self->wall) : NULL;
  const Opening *opening = wall ? wall_opening (wall, self->opening) : NULL;
  g_autofree char *label = NULL;

  if (!self->nudging)
    return;
  self->nudging = FALSE;
  label = g_strdup_printf (_ ("Move %s"), opening ? tool_opening_name (opening)
                                          : wall  ? tool_wall_name (wall)
                                                  : "");
  hb_document_keep_preview (self->document, label);
  if (self->fitted)
    hb_plan_view_fit (self);
}

static gboolean
nudge (HbPlanView *self, Edit *edit, GError *why)
{
  g_autoptr (Edit) owned = edit;
  g_autoptr (GError) error = why;

  if (owned && hb_document_preview (self->document, owned, &error))
    self->nudging = TRUE;
  else if (error)
    _hb_plan_view_say (self, error->message);
  return GDK_EVENT_STOP;
}

/* A way on the sheet, along the wall and to the side of its outer face: 1, 0 or -1. */
static void
ways (const Wall *wall, int east, int north, int *along, int *out)
{
  static const int e[] = { 1, 0, -1, 0 }, n[] = { 0, 1, 0, -1 };

  *along = east * e[wall->place.runs] + north * n[wall->place.runs];
  *out = east * n[wall->place.runs] - north * e[wall->place.runs];
}

/* The wing of a wall, as one; where that is all, the whole building. */
static gboolean
shift_group (HbPlanView *self, const Wall *wall, int east, int north, GdkModifierType state)
{
  const Project *project = _hb_plan_view_project (self);
  const Length by = state & GDK_SHIFT_MASK ? LENGTH_MM (100) : LENGTH_MM (10);
  GError *error = NULL;
  int along, out;
  gboolean whole;
  Edit *edit;

  ways (wall, east, north, &along, &out);
  g_array_unref (plan_wing (project, wall->id, &whole));
  if (!whole && !out)
    return GDK_EVENT_STOP;
  edit = whole ? plan_move_building (project, wall->id, east * by, north * by, &error)
               : plan_shift_wing (project, wall->id, out * by, &error);
  return nudge (self, edit, error);
}

/* An opening moves along its wall; a wall, only with Alt, across itself. */
static gboolean
arrow (HbPlanView *self, int east, int north, GdkModifierType state)
{
  const Project *project = _hb_plan_view_project (self);
  const Wall *wall = project_wall (project, self->wall);
  const Opening *opening = wall ? wall_opening (wall, self->opening) : NULL;
  const Length by = state & GDK_SHIFT_MASK ? LENGTH_MM (10) : LENGTH_MM (1);
  GError *error = NULL;
  int along, out;

  if (!wall || !wall->place.given || self->pull.kind != PLAN_PULL_NONE || self->meeting[0].n)
    return GDK_EVENT_PROPAGATE;
  if (!opening && (state & GDK_CONTROL_MASK))
    return shift_group (self, wall, east, north, state);
  ways (wall, east, north, &along, &out);
  if (opening && along)
    {
      Opening next = opening_copy (opening);
      Edit *edit;

      if (state & GDK_CONTROL_MASK)
        next.x = _hb_plan_view_next_cheap (self, opening, along);
      else
        next.x += along * by;
      edit = edit_set_opening (&next);
      opening_clear (&next);
      return nudge (self, edit, NULL);
    }
  if (!opening && out && (state & GDK_ALT_MASK))
    {
      Edit *edit = plan_push (project, self->wall, out * by, &error);

      return nudge (self, edit, error);
    }
  return GDK_EVENT_STOP;
}

static void
turn_on (HbPlanView *self)
{
  const Project *project = _hb_plan_view_project (self);
  g_autofree char *label
      = hb_plan_view_dup_meeting_name (project, self->meeting[0], self->meeting[1]);
  g_autoptr (Edit) edit = NULL;
  g_autoptr (GError) error = NULL;
  Meeting meeting;

  if (!plan_meeting_between (project, self->meeting[0], self->meeting[1], &meeting)
      || meeting.kind == MEET_WRONG)
    return;
  edit = plan_make_edit (project, &meeting,
                         meeting.made >= MADE_SECOND_THROUGH ? MADE_FIRST_ODD
                                                             : (MeetMade) (meeting.made + 1));
  if (!hb_document_apply (self->document, edit, label, &error))
    g_signal_emit_by_name (self, "refused", error->message);
}

/* An opening, or else the wall; a meeting goes with one of its walls. */
static void
remove_chosen (HbPlanView *self)
{
  const Wall *wall = project_wall (_hb_plan_view_project (self), self->wall);
  g_autofree char *label = NULL;
  g_autoptr (Edit) edit = NULL;
  g_autoptr (GError) error = NULL;

  if (!wall || !wall->place.given || self->meeting[0].n)
    return;
  if (self->opening.n)
    {
      gtk_widget_activate_action (GTK_WIDGET (self), "win.remove", NULL);
      return;
    }
  label = g_strdup_printf (_ ("Remove %s"), tool_wall_name (wall));
  edit = edit_remove_wall (self->wall);
  if (!hb_document_apply (self->document, edit, label, &error))
    g_signal_emit_by_name (self, "refused", error->message);
}

static gboolean
key_pressed_cb (HbPlanView *self, guint key, guint code, GdkModifierType state)
{
  (void) code;
  if (_hb_plan_view_is_typing (self))
    return GDK_EVENT_PROPAGATE;
  if (self->pull.kind != PLAN_PULL_NONE && key != GDK_KEY_Escape)
    return GDK_EVENT_STOP;
  if (key == GDK_KEY_Escape && _hb_plan_view_draw_escape (self))
    return GDK_EVENT_STOP;
  if (_hb_plan_view_draws (self) && _hb_plan_view_draw_key (self, key, state))
    return GDK_EVENT_STOP;
  if (self->tool == HB_PLAN_TOOL_PLACE && _hb_plan_view_place_key (self, key, state))
    return GDK_EVENT_STOP;
  switch (key)
    {
    case GDK_KEY_Left:
      return arrow (self, -1, 0, state);
    case GDK_KEY_Right:
      return arrow (self, 1, 0, state);
    case GDK_KEY_Up:
      return arrow (self, 0, 1, state);
    case GDK_KEY_Down:
      return arrow (self, 0, -1, state);
    case GDK_KEY_Delete:
    case GDK_KEY_BackSpace:
      remove_chosen (self);
      return GDK_EVENT_STOP;
    case GDK_KEY_Return:
    case GDK_KEY_KP_Enter:
      if (self->tool == HB_PLAN_TOOL_PART)
        _hb_plan_view_part_usual (self);
      else if (_hb_plan_view_opens (self))
        _hb_plan_view_open_usual (self);
      else if (self->meeting[0].n)
        turn_on (self);
      else
        g_signal_emit_by_name (self, "open");
      return GDK_EVENT_STOP;
    case GDK_KEY_Escape:
      return hb_plan_view_cancel (self);
    case GDK_KEY_space:
      self->space_held = TRUE;
      _hb_plan_view_update_cursor (self);
      return GDK_EVENT_STOP;
    default:
      return GDK_EVENT_PROPAGATE;
    }
}

static void
key_released_cb (HbPlanView *self, guint key)
{
  if (key == GDK_KEY_space)
    {
      self->space_held = FALSE;
      _hb_plan_view_update_cursor (self);
    }
  else
    _hb_plan_view_end_nudge (self);
}

static void
focus_left_cb (HbPlanView *self)
{
  self->space_held = FALSE;
  _hb_plan_view_end_nudge (self);
}

void
_hb_plan_view_add_keys (HbPlanView *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();

  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_pressed_cb), self);
  g_signal_connect_swapped (keys, "key-released", G_CALLBACK (key_released_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (focus_left_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), focus);
}
