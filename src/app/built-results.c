/* built-results.c - what follows from the figures of the site: the next beds, what is still needed,
 * what is off */
#include "app/built-window-private.h"

#include <glib/gi18n.h>

#include "app/beside.h"

/* ---- the next beds ---- */

static GtkBox *
add_card (HbBuiltWindow *self)
{
  GtkWidget *card = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_widget_add_css_class (card, "card");
  gtk_box_append (self->results, card);
  return GTK_BOX (card);
}

/* `text` is taken; NULL: nothing. */
static void
add_text (GtkBox *box, char *text, const char *style)
{
  g_autofree char *owned = text;

  if (owned)
    hb_beside_add_label (box, owned, style);
}

/* "1.5 mm, planned 2 mm" */
static char *
dup_bed (const NextBeds *next)
{
  char is[LENGTH_TEXT_SIZE], planned[LENGTH_TEXT_SIZE];

  if (next->bed == next->planned_bed)
    return g_strdup_printf (_ ("Next beds: %s mm, as planned"), length_text (next->bed, is));
  return g_strdup_printf (_ ("Next beds: %s mm, planned %s mm"), length_text (next->bed, is),
                          length_text (next->planned_bed, planned));
}

/* What is between the last whole course and the plate's foot. */
static char *
dup_plate (const NextBeds *next)
{
  char plate[LENGTH_TEXT_SIZE], rip[LENGTH_TEXT_SIZE], pack[LENGTH_TEXT_SIZE];

  length_text (next->plate, plate);
  length_text (next->rip, rip);
  length_text (next->plate - next->top, pack);
  if (next->rip > 0)
    return g_strdup_printf (_ ("Under the plate, at %s mm, a course ripped to %s mm."), plate, rip);
  if (next->plate > next->top)
    return g_strdup_printf (_ ("Under the plate, at %s mm, %s mm of mortar."), plate, pack);
  return g_strdup_printf (_ ("The plate lies on it, at %s mm."), plate);
}

static void
add_way (HbBuiltWindow *self, const AsBuilt *built)
{
  GtkBox *card = add_card (self);

  if (built->standing == 0)
    {
      hb_beside_add_label (card, _ ("Nothing stands yet"), "cuts");
      hb_beside_add_label (card,
                           _ ("Say first how far it is laid; what stands then stays as it is, "
                              "and the rest is planned from there."),
                           "caption");
      return;
    }
  add_text (card, g_strdup_printf (_ ("%d of %d courses stand"), built->standing, built->courses),
            "cuts");
  if (built->standing < built->courses)
    add_text (card, dup_bed (&built->next), "wall-name");
  add_text (card, next_beds_sentence (built), NULL);
  if (built->next.last_whole > 0)
    add_text (card, dup_plate (&built->next), NULL);
}

static GtkGrid *
add_grid (HbBuiltWindow *self)
{
  GtkWidget *grid = gtk_grid_new ();

  gtk_grid_set_column_spacing (GTK_GRID (grid), 6);
  gtk_widget_add_css_class (grid, "figures");
  gtk_box_append (self->results, grid);
  return GTK_GRID (grid);
}

/* ---- what is still needed ---- */

static void
add_rest (HbBuiltWindow *self)
{
  hb_beside_add_label (self->results, _ ("Still needed for this wall"), "group");
  _hb_built_rest_fill (self, add_grid (self));
}

/* ---- what is off ---- */

/* A sign, so that it is told without colour, and the sentence. */
static void
attach_deviation (GtkGrid *grid, int row, const Wall *wall, const Deviation *deviation)
{
  g_autofree char *text = deviation_sentence (wall, deviation);
  g_autofree char *over = deviation->within ? NULL : g_strdup_printf (_ ("Over: %s"), text);
  GtkWidget *sign = hb_beside_attach_word (grid, 0, row, deviation->within ? "✓" : "!",
                                           deviation->within ? "caption" : "number-bad", 0.5);
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_widget_set_valign (sign, GTK_ALIGN_START);
  hb_beside_add_label (GTK_BOX (box), over ? over : text, over ? "over" : NULL);
  gtk_widget_set_hexpand (box, TRUE);
  gtk_grid_attach (grid, box, 1, row, 1, 1);
}

static void
add_deviations (HbBuiltWindow *self, const AsBuilt *built)
{
  const Wall *wall = _hb_built_window_get_wall (self);
  GtkGrid *grid;
  int row = 0;

  hb_beside_add_label (self->results, _ ("Off what was planned"), "group");
  if (built->deviations->len == 0)
    {
      hb_beside_add_label (self->results, _ ("Nothing was measured yet."), "empty");
      return;
    }
  grid = add_grid (self);
  /* Those over their limit first. */
  for (int within = 0; within <= 1; within++)
    for (guint i = 0; i < built->deviations->len; i++)
      if (as_built_deviation (built, i)->within == within)
        attach_deviation (grid, row++, wall, as_built_deviation (built, i));
}

void
_hb_built_results_fill (HbBuiltWindow *self, const AsBuilt *built)
{
  hb_beside_empty (GTK_WIDGET (self->results));
  if (!built)
    return;
  add_way (self, built);
  if (built->standing > 0)
    add_rest (self);
  add_deviations (self, built);
  hb_beside_add_label (self->results,
                       _ ("This is advice: the contract and the engineer decide what is accepted."),
                       "caption");
}
