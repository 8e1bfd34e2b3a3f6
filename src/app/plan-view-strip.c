/* plan-view-strip.c - the strip of cuts of the chosen opening, and where a hand on it comes to rest
 */
#include <glib/gi18n.h>

#include "app/plan-view-private.h"
#include "app/strip.h"

/* As in the elevation: how far along the wall places are sought, and how near a cheap one holds. */
#define WITHIN LENGTH_MM (300)
#define STEP LENGTH_MM (5)
#define REST_REACH 6.0 /* px */
/* From the middle of a wall that runs up the sheet to that of the strip, px, and up from its
 * middle. */
#define BESIDE 172.0
#define OVER 50.0

static const Opening *
opening_of (HbPlanView *self, const Wall **wall)
{
  const Project *project = self->document ? _hb_plan_view_project (self) : NULL;

  *wall = project && self->opening.n ? project_wall (project, self->wall) : NULL;
  return *wall && (*wall)->place.given ? wall_opening (*wall, self->opening) : NULL;
}

void
_hb_plan_view_ask_places (HbPlanView *self)
{
  const Wall *wall;
  const Opening *opening = opening_of (self, &wall);

  if (opening && gtk_widget_get_mapped (GTK_WIDGET (self)))
    hb_places_ask (self->places, wall, project_block (_hb_plan_view_project (self), wall->block),
                   opening->id, 1u << SHIFT_ALONG, WITHIN, STEP);
  else
    hb_places_forget (self->places);
}

/* ---- the hand ---- */

/* What is pulled along the wall comes to rest, gently, where few cuts are. */
void
_hb_plan_view_rest (HbPlanView *self, Opening *opening, const Grip *grip)
{
  const Length reach = length_from_mm (REST_REACH / self->pull.view.scale);
  const Place *place;

  if (grip->reach == 0 || self->pull.ref.part != PART_BODY)
    return;
  place = hb_places_rest (self->places, SHIFT_ALONG, opening->x, reach);
  if (place)
    opening->x = place->at;
}

/* To the cheapest place on that side, the nearest such. */
Length
_hb_plan_view_next_cheap (HbPlanView *self, const Opening *opening, int direction)
{
  const Length near = opening->x + direction, far = opening->x + direction * WITHIN;
  const Place *best
      = hb_places_best (self->places, SHIFT_ALONG, MIN (near, far), MAX (near, far), opening->x);

  return best ? best->at : opening->x + direction * LENGTH_MM (50);
}

/* ---- the strip ---- */

/* Where the strip looks for the opening: across the sheet it stands inside of the wall, or below or
 * over it; up the sheet beside it. */
static View
strip_view (HbPlanView *self, const Wall *wall, const Opening *opening)
{
  const Block *block = project_block (_hb_plan_view_project (self), wall->block);
  const gboolean upright = runs_north (wall->place.runs) != 0;
  g_autoptr (Wall) part = wall_copy (wall);
  double left, right, top, foot, scale;
  MarkPoint corner;
  PlanBox box;

  wall_shift (part, -opening->x);
  part->length = opening->width;
  box = plan_box (part, block->thickness);
  corner = (MarkPoint){ (double) box.x0 / LENGTH_PER_MM, (double) box.y0 / LENGTH_PER_MM, 0, 0 };
  view_to_sheet (&self->view, &corner, &left, &foot);
  corner = (MarkPoint){ (double) box.x1 / LENGTH_PER_MM, (double) box.y1 / LENGTH_PER_MM, 0, 0 };
  view_to_sheet (&self->view, &corner, &right, &top);
  if (upright)
    {
      left = right = (left + right) / 2 + (wall->place.runs == RUNS_NORTH ? -BESIDE : BESIDE);
      top = (top + foot) / 2 - OVER;
      foot = top + 1;
    }
  scale = (foot - top) / length_to_mm (opening->height);
  return (View){ .scale = scale,
                 .ox = (left + right) / 2 - length_to_mm (opening->x + opening->width / 2) * scale,
                 .oy = foot + length_to_mm (opening->sill) * scale };
}

static gboolean
strips_of (HbPlanView *self, HbStrips *strips)
{
  const Wall *wall;
  const Opening *opening = opening_of (self, &wall);

  if (!opening || self->meeting[0].n || self->tool != HB_PLAN_TOOL_NONE
      || _hb_plan_view_is_typing (self))
    return FALSE;
  *strips = (HbStrips){
    .places = self->places,
    .opening = opening,
    .layout = hb_answers_get_layout (self->answers, wall->id),
    .shift = SHIFT_ALONG,
    .view = strip_view (self, wall, opening),
    .above = wall->place.runs == RUNS_EAST,
    .area = GRAPHENE_RECT_INIT (0, 0, (float) gtk_widget_get_width (GTK_WIDGET (self)),
                                (float) gtk_widget_get_height (GTK_WIDGET (self))),
    .theme = _hb_plan_view_theme (self),
  };
  return TRUE;
}

void
_hb_plan_view_snapshot_strip (HbPlanView *self, GtkSnapshot *snapshot)
{
  HbStrips strips;

  if (strips_of (self, &strips))
    hb_strips_snapshot (GTK_WIDGET (self), snapshot, &strips);
}

/* FALSE: no strip is there. */
gboolean
_hb_plan_view_hover_strip (HbPlanView *self, double x, double y)
{
  HbStrips strips;
  const Place *place;
  Shift shift;
  g_autofree char *text = NULL;

  if (!strips_of (self, &strips) || !hb_strips_pick (&strips, x, y, &shift, &place))
    return FALSE;
  text = place && place->possible ? hb_strips_dup_text (shift, place) : g_strdup ("");
  _hb_plan_view_say (self, text);
  return TRUE;
}

/* Moves the opening to the place that is clicked. FALSE: no strip is there. */
gboolean
_hb_plan_view_press_strip (HbPlanView *self, double x, double y)
{
  HbStrips strips;
  const Place *place;
  Shift shift;
  g_autoptr (GError) error = NULL;
  g_autoptr (Edit) edit = NULL;
  g_autofree char *label = NULL;
  Opening moved;

  if (!strips_of (self, &strips) || !hb_strips_pick (&strips, x, y, &shift, &place))
    return FALSE;
  if (!place || !place->possible)
    return TRUE;
  moved = opening_copy (strips.opening);
  moved.x = place->at;
  label = g_strdup_printf (_ ("Move %s"), tool_opening_name (&moved));
  edit = edit_set_opening (&moved);
  opening_clear (&moved);
  if (!hb_document_apply (self->document, edit, label, &error))
    g_signal_emit_by_name (self, "refused", error->message);
  return TRUE;
}
