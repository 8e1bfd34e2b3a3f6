/* rod-choices.c - levelling bed and bed joint by how many heights they let meet a course */
#include "app/rod-window-private.h"

#include <glib/gi18n.h>

#include "app/beside.h"
#include "app/tool.h"

/* Choices that are shown, and strips told of each. */
#define SHOWN 8
#define MOST_STRIPS 8

WallId
_hb_rod_choices_scope (HbRodWindow *self)
{
  return gtk_drop_down_get_selected (self->scope) == 0 ? self->wall : (WallId){ 0 };
}

/* "W1 sill 28"; with the wall's name before it where several are asked. */
static void
append_strip (GString *text, const Project *project, const RodStrip *strip, gboolean of_several)
{
  const Wall *wall = project_wall_at (project, strip->wall);
  const Opening *opening = wall_opening (wall, strip->mark.opening);
  char is[LENGTH_TEXT_SIZE];

  if (text->len > 0)
    g_string_append (text, " · ");
  if (of_several)
    g_string_append_printf (text, "%s: ", tool_wall_name (wall));
  if (opening)
    g_string_append_printf (text, "%s ", tool_opening_name (opening));
  g_string_append_printf (text, "%s %s", _hb_rod_kind_text (strip->mark.kind),
                          length_text (strip->mark.rip, is));
}

/* What is still ripped with it; `choice` as in rod_strips(). */
static char *
dup_strips (HbRodWindow *self, const RodChoice *choice)
{
  const Project *project = _hb_rod_window_project (self);
  const WallId only = _hb_rod_choices_scope (self);
  g_autoptr (GArray) strips = rod_strips (project, only, choice);
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < MIN (strips->len, MOST_STRIPS); i++)
    append_strip (text, project, &g_array_index (strips, RodStrip, i),
                  !only.n && project->walls->len > 1);
  if (strips->len > MOST_STRIPS)
    g_string_append_printf (text, _ (" · and %u more"), strips->len - MOST_STRIPS);
  if (strips->len == 0)
    return g_strdup (_ ("No strip is ripped."));
  return g_strdup_printf (_ ("Ripped: %s"), text->str);
}

static char *
dup_beds (const RodChoice *choice)
{
  char first[LENGTH_TEXT_SIZE], bed[LENGTH_TEXT_SIZE];

  return g_strdup_printf (_ ("Levelling bed %s, bed joint %s"),
                          length_text (choice->first_bed, first), length_text (choice->bed, bed));
}

static char *
dup_met (const RodChoice *choice)
{
  char packed[LENGTH_TEXT_SIZE];

  if (choice->packed == 0)
    return g_strdup_printf (_ ("%u of %u heights meet a course"), choice->met, choice->marks);
  return g_strdup_printf (_ ("%u of %u heights meet a course, %s mm of mortar packed"), choice->met,
                          choice->marks, length_text (choice->packed, packed));
}

static void
take_cb (HbRodWindow *self, GtkWidget *button)
{
  const RodChoice *choice = g_object_get_data (G_OBJECT (button), "choice");
  Edit *edit = rod_choose (_hb_rod_window_project (self), _hb_rod_choices_scope (self), choice);
  g_autofree char *label = dup_beds (choice);

  if (edit)
    _hb_rod_window_apply (self, edit, label);
}

static void
add_take (HbRodWindow *self, GtkBox *row, const RodChoice *choice)
{
  g_autoptr (Edit) edit
      = rod_choose (_hb_rod_window_project (self), _hb_rod_choices_scope (self), choice);
  GtkWidget *button = gtk_button_new_with_label (edit ? _ ("Take") : _ ("As now"));
  g_autofree char *beds = dup_beds (choice), *name = NULL;

  name
      = edit ? g_strdup_printf (_ ("Take it: %s"), beds) : g_strdup_printf (_ ("As now: %s"), beds);
  hb_beside_name (button, name);
  gtk_widget_set_valign (button, GTK_ALIGN_START);
  gtk_widget_set_sensitive (button, edit != NULL);
  g_object_set_data_full (G_OBJECT (button), "choice", g_memdup2 (choice, sizeof *choice), g_free);
  g_signal_connect_swapped (button, "clicked", G_CALLBACK (take_cb), self);
  gtk_box_append (row, button);
  g_ptr_array_add (self->takes, button);
}

static GtkBox *
add_card (HbRodWindow *self)
{
  GtkWidget *card = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_widget_add_css_class (card, "card");
  gtk_widget_set_hexpand (words, TRUE);
  gtk_box_append (GTK_BOX (card), words);
  gtk_box_append (self->choices, card);
  return GTK_BOX (card);
}

static void
add_choice (HbRodWindow *self, const RodChoice *choice)
{
  GtkBox *card = add_card (self);
  GtkBox *words = GTK_BOX (gtk_widget_get_first_child (GTK_WIDGET (card)));
  g_autofree char *beds = dup_beds (choice), *met = dup_met (choice), *strips = NULL;

  strips = dup_strips (self, choice);
  hb_beside_add_label (words, beds, "wall-name");
  gtk_widget_add_css_class (hb_beside_add_label (words, met, "proof"),
                            choice->met == choice->marks ? "good" : "plain");
  hb_beside_add_label (words, strips, "caption");
  add_take (self, card, choice);
}

/* What they have, of walls with different beds too. */
static void
add_now (HbRodWindow *self)
{
  const RodChoice now = rod_now (_hb_rod_window_project (self), _hb_rod_choices_scope (self));
  GtkBox *words = GTK_BOX (gtk_widget_get_first_child (GTK_WIDGET (add_card (self))));
  g_autofree char *title
      = g_strdup_printf (_ ("As it is: %u of %u heights meet"), now.met, now.marks);
  g_autofree char *strips = dup_strips (self, NULL);
  char packed[LENGTH_TEXT_SIZE];

  hb_beside_add_label (words, title, "cuts");
  if (now.packed > 0)
    {
      g_autofree char *mortar
          = g_strdup_printf (_ ("%s mm of mortar packed"), length_text (now.packed, packed));

      hb_beside_add_label (words, mortar, "proof");
    }
  hb_beside_add_label (words, strips, "caption");
}

void
_hb_rod_choices_fill (HbRodWindow *self, const GArray *choices)
{
  const int focused = _hb_rod_focused (self->takes);
  g_autofree char *tried = g_strdup_printf (_ ("The best first; choices tried: %u"), choices->len);

  g_ptr_array_set_size (self->takes, 0);
  hb_beside_empty (GTK_WIDGET (self->choices));
  if (!_hb_rod_window_get_wall (self))
    return;
  add_now (self);
  hb_beside_add_label (self->choices, tried, "group");
  for (guint i = 0; i < MIN (choices->len, SHOWN); i++)
    add_choice (self, &g_array_index (choices, RodChoice, i));
  if (focused >= 0 && !_hb_rod_focus_again (self->takes, focused))
    gtk_widget_grab_focus (GTK_WIDGET (self->first_from));
}
