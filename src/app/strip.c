#include "app/strip.h"

#include <glib/gi18n.h>

#define STEP LENGTH_MM (5) /* from bar to bar of the card */
#define N_SIDE 60          /* bars on each side of the middle one */
#define N_BARS (2 * N_SIDE + 1)
#define BAR 2.0f          /* px */
#define PAD 10.0f         /* px, round it all */
#define BARS_HEIGHT 18.0f /* px */
#define TEXT_HEIGHT 17.0f /* px, a line */
#define WIDTH (N_BARS * BAR + 2 * PAD)
#define AWAY 14.0f /* px, from the opening */
/* The upright strips, between the storey rod and the wall: px left of it, and across. */
#define UPRIGHT_LEFT 22.0f
#define UPRIGHT_WIDTH 19.0f
#define UPRIGHT_WITHIN LENGTH_MM (300)
#define LEAST_BAR 3.0f /* px */

static GdkRGBA
colour (Rgba rgba)
{
  return (GdkRGBA){ (float) rgba.r, (float) rgba.g, (float) rgba.b, (float) rgba.a };
}

/* ---- what the bars of a strip have in common ---- */

typedef struct
{
  const Place *best;  /* NULL: none is known */
  gint32 least, most; /* cuts among those with as few breaches */
} Scale;

static Scale
scale_of (const HbStrips *strips, Shift shift)
{
  const Length at = shift_at (strips->opening, shift);
  const Length from = at - UPRIGHT_WITHIN, to = at + UPRIGHT_WITHIN;
  Scale scale = { hb_places_best (strips->places, shift, from, to, at), 0, 0 };

  if (!scale.best)
    return scale;
  scale.least = G_MAXINT32;
  for (Length d = from; d <= to; d += STEP)
    {
      const Place *place = hb_places_best (strips->places, shift, d, d + STEP - 1, d);

      if (!place)
        continue;
      scale.least = MIN (scale.least, place->cost.cuts);
      scale.most = MAX (scale.most, place->cost.cuts);
    }
  scale.least = MIN (scale.least, scale.best->cost.cuts);
  return scale;
}

/* How long, of `room` px. */
static float
bar_length (const Scale *scale, const Place *place, float room)
{
  const float range = (float) MAX (scale->most - scale->least, 1);

  return LEAST_BAR
         + (room - LEAST_BAR) * (float) CLAMP (place->cost.cuts - scale->least, 0, (int) range)
               / range;
}

static GdkRGBA
bar_colour (const HbStrips *strips, Shift shift, const Scale *scale, const Place *place,
            gboolean here)
{
  Style style = STYLE_DIMENSION_LINE;

  if (here)
    style = STYLE_DIMENSION_TOTAL;
  else if (place->cost.breaches > scale->best->cost.breaches)
    style = STYLE_BREACH_LINE;
  else if (hb_places_compare (strips->places, shift, place, scale->best) == 0
           || (place->cost.breaches == scale->best->cost.breaches
               && place->cost.cuts <= scale->best->cost.cuts))
    style = STYLE_SELECTED;
  return colour (theme_row (strips->theme, style)->line);
}

/* ---- the card along the course ---- */

static gboolean
has_bars (const HbStrips *strips)
{
  return strips->shift == SHIFT_ALONG;
}

/* Below the opening, above it, or in it; always in sight. */
static graphene_rect_t
card_at (const HbStrips *strips)
{
  const Opening *opening = strips->opening;
  const graphene_rect_t *area = &strips->area;
  const float height = 2 * PAD + 2 * TEXT_HEIGHT + (has_bars (strips) ? BARS_HEIGHT + 2 : -4);
  const MarkPoint foot
      = { .x = length_to_mm (opening->x + opening->width / 2), .z = length_to_mm (opening->sill) };
  const MarkPoint head = { .x = foot.x, .z = length_to_mm (opening_head (opening)) };
  double x, y, top;
  float left, at;

  view_to_sheet (&strips->view, &foot, &x, &y);
  view_to_sheet (&strips->view, &head, &x, &top);
  left = CLAMP ((float) x - WIDTH / 2, 4, MAX (4, area->size.width - WIDTH - 4));
  at = (float) y + AWAY;
  if (strips->above && (float) top - AWAY - height >= 4)
    at = (float) top - AWAY - height;
  if (at + height > area->size.height - 4)
    at = (float) top - AWAY - height;
  if (at < 4)
    at = CLAMP ((float) y - height - AWAY, 4, MAX (4, area->size.height - height - 4));
  return GRAPHENE_RECT_INIT ((float) (int) left, (float) (int) at, WIDTH, (float) (int) height);
}

static void
snapshot_card (GtkSnapshot *snapshot, const graphene_rect_t *card, Theme theme)
{
  const GdkRGBA fill = colour (theme_row (theme, STYLE_PIECE)->fill);
  const GdkRGBA line = colour (theme_row (theme, STYLE_DIMENSION_LINE)->line);
  const GdkRGBA shadow = { 0, 0, 0, 0.18f };
  const float widths[] = { 1, 1, 1, 1 };
  const GdkRGBA lines[] = { line, line, line, line };
  GskRoundedRect round;

  gsk_rounded_rect_init_from_rect (&round, card, 6);
  gtk_snapshot_append_outset_shadow (snapshot, &round, &shadow, 0, 1, 0, 3);
  gtk_snapshot_push_rounded_clip (snapshot, &round);
  gtk_snapshot_append_color (snapshot, &fill, card);
  gtk_snapshot_pop (snapshot);
  gtk_snapshot_append_border (snapshot, &round, widths, lines);
}

static void
snapshot_text (GtkWidget *widget, GtkSnapshot *snapshot, const char *text, float x, float y,
               gboolean bold, const GdkRGBA *ink)
{
  g_autoptr (PangoLayout) layout = gtk_widget_create_pango_layout (widget, text);
  g_autoptr (PangoAttrList) attributes = pango_attr_list_new ();

  pango_attr_list_insert (attributes, pango_attr_size_new_absolute (12 * PANGO_SCALE));
  if (bold)
    pango_attr_list_insert (attributes, pango_attr_weight_new (PANGO_WEIGHT_BOLD));
  pango_layout_set_attributes (layout, attributes);
  pango_layout_set_width (layout, (int) (WIDTH - 2 * PAD) * PANGO_SCALE);
  pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
  gtk_snapshot_save (snapshot);
  gtk_snapshot_translate (snapshot, &GRAPHENE_POINT_INIT (x, y));
  gtk_snapshot_append_layout (snapshot, layout, ink);
  gtk_snapshot_restore (snapshot);
}

/* ---- words ---- */

static void
add_words (GString *text, const char *one, const char *many, gint32 n)
{
  if (text->len > 0)
    g_string_append (text, ", ");
  g_string_append_printf (text, g_dngettext (NULL, one, many, (gulong) n), n);
}

/* "1 breach, 53 cuts, 147 units": what counts most first, for the last may find no room; units and
 * breaches below 0 or none are not told. */
static char *
cost_text (gint32 cuts, gint32 units, gint32 breaches)
{
  g_autoptr (GString) text = g_string_new (NULL);

  if (breaches > 0)
    add_words (text, N_ ("%d breach"), N_ ("%d breaches"), breaches);
  add_words (text, N_ ("%d cut"), N_ ("%d cuts"), cuts);
  if (units >= 0)
    add_words (text, N_ ("%d unit"), N_ ("%d units"), units);
  return g_string_free (g_steal_pointer (&text), FALSE);
}

/* The same of a place: "about 53 cuts" as long as it was looked at only once. */
static char *
place_text (const Place *place, gboolean with_units, gboolean with_breaches)
{
  const Cost *cost = &place->cost;
  g_autofree char *text = cost_text (cost->cuts, cost->as_laid && with_units ? cost->to_order : -1,
                                     with_breaches ? cost->breaches : 0);

  if (cost->as_laid)
    return g_steal_pointer (&text);
  return g_strdup_printf (_ ("about %s"), text);
}

static char *
here_text (const HbStrips *strips)
{
  const Length at = shift_at (strips->opening, strips->shift);
  const Place *here = hb_places_at (strips->places, strips->shift, at);
  const gboolean counted = here && here->possible && here->cost.as_laid;
  g_autofree char *cost = NULL;

  if (!strips->layout)
    return g_strdup (_ ("Laying…"));
  cost = cost_text (strips->layout->n_cut, counted ? here->cost.to_order : -1,
                    strips->layout->proof.breaches);
  return g_strdup_printf (_ ("Here %s"), cost);
}

static const char *
way_format (Shift shift, gboolean more)
{
  if (shift == SHIFT_ALONG)
    return more ? _ ("%s mm right: %s") : _ ("%s mm left: %s");
  return more ? _ ("%s mm up: %s") : _ ("%s mm down: %s");
}

/* What the best place would bring: "30 mm right: 40 cuts, 120 units"; NULL: no more than here. */
static char *
best_text (const HbStrips *strips, const Scale *scale)
{
  const Length at = shift_at (strips->opening, strips->shift);
  const Place *here = hb_places_at (strips->places, strips->shift, at);
  char by[LENGTH_TEXT_SIZE];
  gboolean differs;
  g_autofree char *cost = NULL;

  if (!scale->best || !strips->layout || !here
      || hb_places_compare (strips->places, strips->shift, scale->best, here) >= 0)
    return NULL;
  length_text (ABS (scale->best->at - at), by);
  /* Breaches are told where they change, and then there is no room for units. */
  differs = scale->best->cost.breaches != here->cost.breaches;
  cost = place_text (scale->best, !differs, differs);
  if (scale->best->cost.breaches == 0 && differs)
    {
      g_autofree char *plain = g_steal_pointer (&cost);

      cost = g_strdup_printf (_ ("no breach, %s"), plain);
    }
  return g_strdup_printf (way_format (strips->shift, scale->best->at > at), by, cost);
}

char *
hb_strips_dup_text (Shift shift, const Place *place)
{
  static const char *const formats[N_SHIFTS] = {
    [SHIFT_ALONG] = N_ ("Left jamb at %s mm: %s. Click to move it there."),
    [SHIFT_SILL] = N_ ("Sill at %s mm: %s. Click to move it there."),
    [SHIFT_HEAD] = N_ ("Head at %s mm: %s. Click to move it there."),
  };
  g_autofree char *cost = place_text (place, TRUE, TRUE);
  char at[LENGTH_TEXT_SIZE];

  return g_strdup_printf (_ (formats[shift]), length_text (place->at, at), cost);
}

/* Where nothing cheaper is known. */
static const char *
nothing_text (const HbStrips *strips)
{
  if (hb_places_is_sure (strips->places, strips->shift))
    return _ ("Nothing cheaper near");
  if (hb_places_is_at_work (strips->places, strips->shift))
    return _ ("Looking…");
  return _ ("Nothing cheaper found near");
}

static void
snapshot_words (GtkWidget *widget, GtkSnapshot *snapshot, const HbStrips *strips,
                const graphene_rect_t *card, const Scale *scale)
{
  const GdkRGBA ink = colour (theme_row (strips->theme, STYLE_OPENING_SIZE)->line);
  const GdkRGBA good = colour (theme_row (strips->theme, STYLE_SELECTED_TEXT)->line);
  g_autofree char *here = here_text (strips);
  g_autofree char *best = best_text (strips, scale);
  const float x = card->origin.x + PAD, y = card->origin.y + 7;

  snapshot_text (widget, snapshot, here, x, y, FALSE, &ink);
  if (best)
    snapshot_text (widget, snapshot, best, x, y + TEXT_HEIGHT, TRUE, &good);
  else if (strips->layout)
    snapshot_text (widget, snapshot, nothing_text (strips), x, y + TEXT_HEIGHT, FALSE, &ink);
}

/* ---- bars ---- */

/* The cheapest place that a bar of the card stands for; NULL: none known. */
static const Place *
place_of_bar (const HbStrips *strips, int bar)
{
  const Length middle = (strips->opening->x + STEP / 2) / STEP * STEP + (bar - N_SIDE) * STEP;

  return hb_places_best (strips->places, SHIFT_ALONG, middle - STEP / 2,
                         middle - STEP / 2 + STEP - 1, middle);
}

static void
snapshot_bars (GtkSnapshot *snapshot, const HbStrips *strips, const graphene_rect_t *card,
               const Scale *scale)
{
  const float foot = card->origin.y + card->size.height - PAD;

  for (int i = 0; i < N_BARS; i++)
    {
      const Place *place = place_of_bar (strips, i);
      const float length = place ? bar_length (scale, place, BARS_HEIGHT) : 1;
      const GdkRGBA ink = place ? bar_colour (strips, SHIFT_ALONG, scale, place, i == N_SIDE)
                                : colour (theme_row (strips->theme, STYLE_DIMENSION_LINE)->line);

      gtk_snapshot_append_color (
          snapshot, &ink,
          &GRAPHENE_RECT_INIT (card->origin.x + PAD + (float) i * BAR, foot - length, BAR, length));
    }
}

/* ---- upright, beside the rod ---- */

/* Of sill or head: up to half way to the other. FALSE: a door has no sill to move. */
static gboolean
upright_at (const HbStrips *strips, Shift shift, graphene_rect_t *out)
{
  const Opening *opening = strips->opening;
  const Length at = shift_at (opening, shift), middle = opening->sill + opening->height / 2;
  Length low = MAX (at - UPRIGHT_WITHIN, 0), high = at + UPRIGHT_WITHIN;
  MarkPoint from = { 0 }, to = { 0 };
  double x, top, foot;

  if (shift == SHIFT_SILL && opening->kind == OPENING_DOOR && opening->sill == 0)
    return FALSE;
  if (shift == SHIFT_SILL)
    high = MIN (high, middle);
  else
    low = MAX (low, middle);
  from.z = length_to_mm (high);
  to.z = length_to_mm (low);
  view_to_sheet (&strips->rod, &from, &x, &top);
  view_to_sheet (&strips->rod, &to, &x, &foot);
  *out = GRAPHENE_RECT_INIT ((float) (int) x - UPRIGHT_LEFT, (float) (int) top, UPRIGHT_WIDTH,
                             (float) ((int) foot - (int) top));
  return TRUE;
}

/* The cheapest place of the heights that a row of pixels shows. */
static const Place *
place_of_row (const HbStrips *strips, Shift shift, float y)
{
  double x, high, low;

  view_to_wall (&strips->rod, 0, y, &x, &high);
  view_to_wall (&strips->rod, 0, y + 1, &x, &low);
  return hb_places_best (strips->places, shift, length_from_mm (CLAMP (low, -1e5, 9e5)) + 1,
                         length_from_mm (CLAMP (high, -1e5, 9e5)),
                         shift_at (strips->opening, shift));
}

static void
snapshot_upright (GtkSnapshot *snapshot, const HbStrips *strips, Shift shift)
{
  const GdkRGBA back = colour (theme_row (strips->theme, STYLE_PIECE)->fill);
  const GdkRGBA edge = colour (theme_row (strips->theme, STYLE_DIMENSION_LINE)->line);
  const Scale scale = scale_of (strips, shift);
  const Length at = shift_at (strips->opening, shift);
  graphene_rect_t box;

  if (!scale.best || !upright_at (strips, shift, &box))
    return;
  gtk_snapshot_append_color (snapshot, &back, &box);
  gtk_snapshot_append_color (snapshot, &edge,
                             &GRAPHENE_RECT_INIT (box.origin.x, box.origin.y, 1, box.size.height));
  for (float y = box.origin.y; y < box.origin.y + box.size.height; y++)
    {
      const Place *place = place_of_row (strips, shift, y);
      GdkRGBA ink;

      if (!place)
        continue;
      ink = bar_colour (strips, shift, &scale, place, place->at == at);
      gtk_snapshot_append_color (
          snapshot, &ink,
          &GRAPHENE_RECT_INIT (box.origin.x, y, bar_length (&scale, place, UPRIGHT_WIDTH), 1));
    }
}

void
hb_strips_snapshot (GtkWidget *widget, GtkSnapshot *snapshot, const HbStrips *strips)
{
  const Scale scale = scale_of (strips, strips->shift);
  graphene_rect_t card;

  snapshot_upright (snapshot, strips, SHIFT_SILL);
  snapshot_upright (snapshot, strips, SHIFT_HEAD);
  if (!scale.best)
    return;
  card = card_at (strips);
  snapshot_card (snapshot, &card, strips->theme);
  snapshot_words (widget, snapshot, strips, &card, &scale);
  if (has_bars (strips))
    snapshot_bars (snapshot, strips, &card, &scale);
}

/* ---- what lies under the pointer ---- */

static gboolean
contains (const graphene_rect_t *box, double x, double y)
{
  return x >= (double) box->origin.x && x < (double) (box->origin.x + box->size.width)
         && y >= (double) box->origin.y && y < (double) (box->origin.y + box->size.height);
}

/* Of a row with none, that of the row nearest by: a finger's width of some pixels. */
static const Place *
pick_row (const HbStrips *strips, Shift shift, const graphene_rect_t *box, double y)
{
  const float row = box->origin.y + (float) (int) (y - (double) box->origin.y);

  for (int d = 0; d <= 3; d++)
    for (int sign = -1; sign <= 1; sign += 2)
      {
        const Place *place = place_of_row (strips, shift, row + (float) (sign * d));

        if (place)
          return place;
      }
  return NULL;
}

gboolean
hb_strips_pick (const HbStrips *strips, double x, double y, Shift *shift, const Place **place)
{
  const graphene_rect_t card = card_at (strips);
  graphene_rect_t box;

  *shift = SHIFT_ALONG;
  *place = NULL;
  for (int upright = SHIFT_SILL; upright <= SHIFT_HEAD; upright++)
    if (hb_places_n_known (strips->places, (Shift) upright) > 0
        && upright_at (strips, (Shift) upright, &box) && contains (&box, x, y))
      {
        *shift = (Shift) upright;
        *place = pick_row (strips, *shift, &box, y);
        return TRUE;
      }
  if (hb_places_n_known (strips->places, strips->shift) == 0 || !contains (&card, x, y))
    return FALSE;
  if (has_bars (strips) && y > (double) (card.origin.y + 7 + 2 * TEXT_HEIGHT))
    *place = place_of_bar (
        strips, CLAMP ((int) ((x - (double) (card.origin.x + PAD)) / (double) BAR), 0, N_BARS - 1));
  /* The line that tells the best place is that place. */
  else if (has_bars (strips) && y > (double) (card.origin.y + 7 + TEXT_HEIGHT))
    *place = scale_of (strips, SHIFT_ALONG).best;
  return TRUE;
}
