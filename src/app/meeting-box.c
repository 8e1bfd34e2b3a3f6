#include "app/meeting-box.h"

#include <glib/gi18n.h>

#include "app/plan-view.h"
#include "app/tool.h"
#include "model/plan-edit.h"

#define N_WAYS (MADE_SECOND_THROUGH + 1)

struct _HbMeetingBox
{
  GtkWidget parent;

  /* Children */
  GtkWidget *box, *text;
  GtkWidget *ways[N_WAYS];    /* GtkCheckButton, by MeetMade */
  GtkWidget *ties;            /* of a wall that is butted: */
  GtkWidget *kind;            /* GtkDropDown: none said, then by TieKind */
  GtkWidget *every, *abreast; /* GtkSpinButton */

  HbDocument *document; /* owned; NULL before the first fill */
  WallId walls[2];
  gboolean filling;
};

G_DEFINE_FINAL_TYPE (HbMeetingBox, hb_meeting_box, GTK_TYPE_WIDGET)

/* FALSE: there is none. */
static gboolean
meeting_of (HbMeetingBox *self, Meeting *out)
{
  return self->document && self->walls[0].n
         && plan_meeting_between (hb_document_get_project (self->document), self->walls[0],
                                  self->walls[1], out);
}

/* ---- from the choice to the project ---- */

static void
toggled_cb (HbMeetingBox *self, GtkWidget *way)
{
  const Project *project = self->document ? hb_document_get_project (self->document) : NULL;
  g_autoptr (GError) error = NULL;
  g_autoptr (Edit) edit = NULL;
  g_autofree char *label = NULL;
  Meeting meeting;
  int made = 0;

  if (self->filling || !gtk_check_button_get_active (GTK_CHECK_BUTTON (way))
      || !meeting_of (self, &meeting) || meeting.kind == MEET_WRONG)
    return;
  while (self->ways[made] != way)
    made++;
  if (meeting.made == (MeetMade) made)
    return;
  label = hb_plan_view_dup_meeting_name (project, self->walls[0], self->walls[1]);
  edit = plan_make_edit (project, &meeting, (MeetMade) made);
  if (!hb_document_apply (self->document, edit, label, &error))
    g_signal_emit_by_name (self, "refused", error->message);
}

static gint32
number_of (GtkWidget *spin)
{
  return gtk_spin_button_get_value_as_int (GTK_SPIN_BUTTON (spin));
}

/* The first kind that is chosen brings what is usual along. */
static Ties
chosen_ties (HbMeetingBox *self, const Meeting *meeting)
{
  const Project *project = hb_document_get_project (self->document);
  const guint chosen = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->kind));
  Ties ties = plan_usual_ties (project, meeting);

  if (chosen == 0)
    return (Ties){ 0 };
  ties.kind = (TieKind) (chosen - 1);
  if (plan_ties (project, meeting))
    {
      ties.every = number_of (self->every);
      ties.abreast = number_of (self->abreast);
    }
  return ties;
}

static void
ties_cb (HbMeetingBox *self)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (Edit) edit = NULL;
  g_autofree char *name = NULL, *label = NULL;
  const Ties *had;
  Meeting meeting;
  Ties ties;

  if (self->filling || !meeting_of (self, &meeting) || plan_butted (&meeting) < 0)
    return;
  had = plan_ties (hb_document_get_project (self->document), &meeting);
  ties = chosen_ties (self, &meeting);
  if (had ? ties_equal (had, &ties) : !ties.given)
    return;
  edit = plan_ties_edit (hb_document_get_project (self->document), &meeting, &ties);
  name = hb_plan_view_dup_meeting_name (hb_document_get_project (self->document), self->walls[0],
                                        self->walls[1]);
  label = g_strdup_printf (_ ("Ties, %s"), name);
  if (!hb_document_apply (self->document, edit, label, &error))
    g_signal_emit_by_name (self, "refused", error->message);
}

/* ---- from the project to the choice ---- */

static char *
way_text (MeetMade made, const char *first, const char *second)
{
  switch (made)
    {
    case MADE_FIRST_ODD:
      return g_strdup_printf (_ ("Bonded: %s through in odd courses, %s in even"), first, second);
    case MADE_FIRST_EVEN:
      return g_strdup_printf (_ ("Bonded: %s through in odd courses, %s in even"), second, first);
    case MADE_FIRST_THROUGH:
      return g_strdup_printf (_ ("Butted: %s through in all courses"), first);
    case MADE_SECOND_THROUGH:
    case MADE_UNSAID:
    case MADE_CONTRARY:
    default:
      return g_strdup_printf (_ ("Butted: %s through in all courses"), second);
    }
}

/* A third wall in what two share; NULL: none. */
static const Wall *
third_wall (const Project *project, const Meeting *meeting)
{
  for (guint i = 0; i < project->walls->len; i++)
    {
      const Wall *wall = project_wall_at (project, i);
      PlanBox box;

      if (!wall->place.given || i == meeting->wall[0] || i == meeting->wall[1])
        continue;
      box = plan_box (wall, project_block (project, wall->block)->thickness);
      if (MAX (box.x0, meeting->box.x0) < MIN (box.x1, meeting->box.x1)
          && MAX (box.y0, meeting->box.y0) < MIN (box.y1, meeting->box.y1))
        return wall;
    }
  return NULL;
}

static char *
wrong_text (const Project *project, const Meeting *meeting, const char *first, const char *second)
{
  const Wall *third = third_wall (project, meeting);
  char a[LENGTH_TEXT_SIZE], b[LENGTH_TEXT_SIZE];

  if (third)
    return g_strdup_printf (_ ("%s, %s and %s want the same place: only two walls can be bonded "
                               "there. Move one of them."),
                            first, second, tool_wall_name (third));
  return g_strdup_printf (_ ("%s and %s share %s × %s mm here, which is no corner and no end of a "
                             "partition. Move one of them, or make it longer or shorter."),
                          first, second,
                          length_text ((Length) (meeting->box.x1 - meeting->box.x0), a),
                          length_text ((Length) (meeting->box.y1 - meeting->box.y0), b));
}

/* What ties there are, and how many. */
static char *
ties_text (const Project *project, const Meeting *meeting)
{
  const int which = plan_butted (meeting);
  const Wall *wall = project_wall_at (project, meeting->wall[which]);
  const Ties *ties = plan_ties (project, meeting);
  const Ties usual = plan_usual_ties (project, meeting);

  if (!ties)
    return g_strdup_printf (_ ("It is not said how %s is tied to the other wall."),
                            tool_wall_name (wall));
  if (ties_equal (ties, &usual))
    return g_strdup_printf (_ ("%s is tied to the other wall in its bed joints, as is common "
                               "practice. A licensed engineer or the local code decides."),
                            tool_wall_name (wall));
  return g_strdup_printf (_ ("%s is tied to the other wall in its bed joints. A licensed engineer "
                             "or the local code decides."),
                          tool_wall_name (wall));
}

/* What is wrong, or what to mind. */
static char *
about_text (const Project *project, const Meeting *meeting, const char *first, const char *second)
{
  if (meeting->kind == MEET_WRONG)
    return wrong_text (project, meeting, first, second);
  if (meeting->made >= MADE_UNSAID)
    return g_strdup (_ ("The two walls do not agree. Choose how it is made."));
  if (meeting->made >= MADE_FIRST_THROUGH)
    return ties_text (project, meeting);
  return g_strdup (_ ("A solid line in the plan is a joint of the odd courses, a dashed one of the "
                      "even courses."));
}

static void
fill_ways (HbMeetingBox *self, const Meeting *meeting, const char *first, const char *second)
{
  self->filling = TRUE;
  for (int i = 0; i < N_WAYS; i++)
    {
      g_autofree char *text = way_text ((MeetMade) i, first, second);
      GtkWidget *label = gtk_check_button_get_child (GTK_CHECK_BUTTON (self->ways[i]));

      gtk_label_set_text (GTK_LABEL (label), text);
      gtk_accessible_update_property (GTK_ACCESSIBLE (self->ways[i]), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                      text, -1);
      gtk_widget_set_visible (self->ways[i], meeting->kind != MEET_WRONG);
      gtk_check_button_set_active (GTK_CHECK_BUTTON (self->ways[i]), meeting->made == (MeetMade) i);
    }
  self->filling = FALSE;
}

static void
fill_ties (HbMeetingBox *self, const Project *project, const Meeting *meeting)
{
  const Ties *ties = plan_ties (project, meeting);

  self->filling = TRUE;
  gtk_widget_set_visible (self->ties, plan_butted (meeting) >= 0);
  gtk_drop_down_set_selected (GTK_DROP_DOWN (self->kind), ties ? (guint) ties->kind + 1 : 0);
  gtk_widget_set_sensitive (self->every, ties != NULL);
  gtk_widget_set_sensitive (self->abreast, ties != NULL);
  gtk_spin_button_set_value (GTK_SPIN_BUTTON (self->every), ties ? ties->every : 1);
  gtk_spin_button_set_value (GTK_SPIN_BUTTON (self->abreast), ties ? ties->abreast : 1);
  self->filling = FALSE;
}

void
hb_meeting_box_fill (HbMeetingBox *self, HbDocument *document, WallId first, WallId second)
{
  const Project *project = hb_document_get_project (document);
  g_autofree char *about = NULL;
  const char *a, *b;
  Meeting meeting;

  g_return_if_fail (HB_IS_MEETING_BOX (self));
  g_set_object (&self->document, document);
  self->walls[0] = first;
  self->walls[1] = second;
  gtk_widget_set_visible (GTK_WIDGET (self), meeting_of (self, &meeting));
  if (!meeting_of (self, &meeting))
    return;
  a = tool_wall_name (project_wall_at (project, meeting.wall[0]));
  b = tool_wall_name (project_wall_at (project, meeting.wall[1]));
  fill_ways (self, &meeting, a, b);
  fill_ties (self, project, &meeting);
  about = about_text (project, &meeting, a, b);
  gtk_label_set_text (GTK_LABEL (self->text), about);
}

/* ---- the widget ---- */

static GtkWidget *
label_new (void)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 24);
  return label;
}

static GtkWidget *
spin_new (HbMeetingBox *self, const char *name, int most)
{
  GtkWidget *spin = gtk_spin_button_new_with_range (1, most, 1);

  gtk_widget_set_hexpand (spin, TRUE);
  gtk_editable_set_width_chars (GTK_EDITABLE (spin), 4);
  gtk_accessible_update_property (GTK_ACCESSIBLE (spin), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_signal_connect_swapped (spin, "value-changed", G_CALLBACK (ties_cb), self);
  return spin;
}

static void
attach (GtkWidget *grid, int row, const char *text, GtkWidget *control)
{
  GtkWidget *label = label_new ();

  gtk_label_set_text (GTK_LABEL (label), text);
  gtk_grid_attach (GTK_GRID (grid), label, 0, row, 1, 1);
  gtk_grid_attach (GTK_GRID (grid), control, 1, row, 1, 1);
}

static void
add_ties (HbMeetingBox *self)
{
  const char *const kinds[]
      = { _ ("Not said"), _ ("Flat strips"), _ ("Pieces of mesh"), _ ("Angles, screwed on"), NULL };

  self->ties = gtk_grid_new ();
  gtk_grid_set_row_spacing (GTK_GRID (self->ties), 6);
  gtk_grid_set_column_spacing (GTK_GRID (self->ties), 8);
  self->kind = gtk_drop_down_new_from_strings (kinds);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->kind), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Ties"), -1);
  g_signal_connect_swapped (self->kind, "notify::selected", G_CALLBACK (ties_cb), self);
  self->every = spin_new (self, _ ("Every so many courses"), TIES_MAX_EVERY);
  self->abreast = spin_new (self, _ ("Ties side by side"), TIES_MAX_ABREAST);
  attach (self->ties, 0, _ ("Ties"), self->kind);
  attach (self->ties, 1, _ ("Every … courses"), self->every);
  attach (self->ties, 2, _ ("Side by side"), self->abreast);
  gtk_box_append (GTK_BOX (self->box), self->ties);
}

static void
hb_meeting_box_dispose (GObject *object)
{
  HbMeetingBox *self = HB_MEETING_BOX (object);

  g_clear_object (&self->document);
  g_clear_pointer (&self->box, gtk_widget_unparent);
  G_OBJECT_CLASS (hb_meeting_box_parent_class)->dispose (object);
}

static void
hb_meeting_box_class_init (HbMeetingBoxClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = hb_meeting_box_dispose;
  g_signal_new ("refused", HB_TYPE_MEETING_BOX, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                1, G_TYPE_STRING);
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
hb_meeting_box_init (HbMeetingBox *self)
{
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  for (int i = 0; i < N_WAYS; i++)
    {
      self->ways[i] = gtk_check_button_new ();
      gtk_check_button_set_child (GTK_CHECK_BUTTON (self->ways[i]), label_new ());
      if (i > 0)
        gtk_check_button_set_group (GTK_CHECK_BUTTON (self->ways[i]),
                                    GTK_CHECK_BUTTON (self->ways[0]));
      g_signal_connect_swapped (self->ways[i], "toggled", G_CALLBACK (toggled_cb), self);
      gtk_box_append (GTK_BOX (self->box), self->ways[i]);
    }
  add_ties (self);
  self->text = label_new ();
  gtk_widget_add_css_class (self->text, "field");
  gtk_box_append (GTK_BOX (self->box), self->text);
}

GtkWidget *
hb_meeting_box_new (void)
{
  return g_object_new (HB_TYPE_MEETING_BOX, NULL);
}
