/* canvas-draw.c - what the canvas shows: the recorded drawing, what is lit, what moves; and what
 * lies under a place of it */
#include "app/canvas-private.h"

#include "app/strip.h"

/* How near a pointer must be to a line or handle, px. */
#define PICK_REACH 7.0
#define SLOPE_REACH 3.5
/* How much room the storey rod takes left of the wall, and the tape below the ground, px. Where the
 * wall is larger than the sheet, both stay in sight at its edges, as they stand by on site. */
#define ROD_ROOM 108
#define ROD_BACK 88
#define TAPE_ROOM 50

static ElevationInput
elevation_input (HbCanvas *self, const Wall *wall)
{
  const gboolean pulling_top = self->pull.kind == PULL_TOP && self->pull.under_way;
  const ElevationInput input = {
    .project = _hb_canvas_project (self),
    .wall = wall,
    .layout = hb_answers_get_latest (self->answers, wall->id),
    .selected = self->selected,
    .joint = self->joint,
    .pallets = self->pallets,
    .course = self->course,
    .held = pulling_top ? self->pull.ref : self->held,
    .guided = pulling_top,
  };

  return input;
}

void
_hb_canvas_queue_redraw (HbCanvas *self)
{
  self->stale = TRUE;
  self->stale_lit = TRUE;
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

/* What is pulled stands in the wall already, with its size on it: of the ghost only the guides are
 * wanted. */
static void
keep_guides (Drawing *drawing)
{
  for (guint i = drawing->marks->len; i-- > 0;)
    if (drawing_mark (drawing, i)->style == STYLE_GHOST
        || drawing_mark (drawing, i)->style == STYLE_GUIDE_TEXT)
      g_array_remove_index (drawing->marks, i);
}

static void
redraw (HbCanvas *self, const Wall *wall)
{
  const ElevationInput input = elevation_input (self, wall);
  const gboolean pulling
      = self->pull.under_way && (self->pull.kind == PULL_OPENING || self->pull.kind == PULL_DRAW);

  g_clear_pointer (&self->drawing, drawing_free);
  g_clear_pointer (&self->overlay, drawing_free);
  /* A wall that was never laid has nothing to show for one moment. */
  if (!input.layout)
    self->drawing = drawing_new ();
  else
    self->drawing = self->client ? elevation_client (&input) : elevation_laying (&input);
  self->overlay = self->client || !input.layout
                      ? drawing_new ()
                      : elevation_overlay (&input, pulling ? _hb_canvas_get_opening (self) : NULL);
  keep_guides (self->overlay);
  self->stale = FALSE;
}

static graphene_rect_t
visible (HbCanvas *self)
{
  GtkWidget *widget = GTK_WIDGET (self);

  return GRAPHENE_RECT_INIT (0, 0, (float) gtk_widget_get_width (widget),
                             (float) gtk_widget_get_height (widget));
}

/* The rod as seen: never farther left than the sheet. */
static View
rod_view (HbCanvas *self)
{
  View view = self->view;

  if (!self->client)
    view.ox = MAX (view.ox, ROD_ROOM);
  return view;
}

/* The tape as seen: never below the sheet. */
static View
tape_view (HbCanvas *self)
{
  View view = self->view;

  if (!self->client)
    view.oy = MIN (view.oy, gtk_widget_get_height (GTK_WIDGET (self)) - TAPE_ROOM);
  return view;
}

static void
record (HbCanvas *self, HbRecording *recording, const Drawing *drawing, const View *view)
{
  const graphene_rect_t area = visible (self);

  hb_recording_update (recording, self->ink, drawing, view, _hb_canvas_theme (self), &area);
}

static void
record_lit (HbCanvas *self, const Wall *wall)
{
  const ElevationInput input = elevation_input (self, wall);
  g_autoptr (Drawing) lit = NULL;
  PerpendMark perpends[2];
  const guint n_perpends = _hb_canvas_lit_perpends (self, perpends);

  self->stale_lit = FALSE;
  if (!input.layout || self->client || (!self->highlight && !self->piece && !n_perpends))
    {
      hb_recording_clear (self->lit);
      return;
    }
  lit = elevation_highlight (&input, self->highlight, self->in_course, self->piece, perpends,
                             n_perpends);
  record (self, self->lit, lit, &self->view);
}

static gboolean
covers (HbCanvas *self, const HbRecording *recording, const View *view)
{
  const graphene_rect_t area = visible (self);

  return hb_recording_covers (recording, view, _hb_canvas_theme (self), &area);
}

/* Brings the records up to date; what did not change is not touched. */
static void
record_all (HbCanvas *self, const Wall *wall)
{
  const View rod = rod_view (self), tape = tape_view (self);
  const gboolean fresh = self->stale || !self->drawing;

  if (fresh)
    redraw (self, wall);
  if (fresh || !covers (self, self->recording, &self->view))
    {
      record (self, self->recording, self->drawing, &self->view);
      record (self, self->moving, self->overlay, &self->view);
    }
  if (fresh || !covers (self, self->rod, &rod))
    record (self, self->rod, self->drawing, &rod);
  if (fresh || !covers (self, self->tape, &tape))
    record (self, self->tape, self->drawing, &tape);
  if (self->stale_lit || !covers (self, self->lit, &self->view))
    record_lit (self, wall);
}

static void
snapshot_back (HbCanvas *self, GtkSnapshot *snapshot, Style style, const graphene_rect_t *area)
{
  const Rgba fill = theme_row (_hb_canvas_theme (self), style)->fill;
  const GdkRGBA back = { (float) fill.r, (float) fill.g, (float) fill.b, 1 };

  gtk_snapshot_append_color (snapshot, &back, area);
}

/* Where they stand off their place, the wall under them is covered. */
static void
snapshot_rod_and_tape (HbCanvas *self, GtkSnapshot *snapshot)
{
  const View rod = rod_view (self), tape = tape_view (self);
  const graphene_rect_t area = visible (self);

  if (tape.oy != self->view.oy)
    snapshot_back (
        self, snapshot, STYLE_GROUND,
        &GRAPHENE_RECT_INIT (0, area.size.height - TAPE_ROOM, area.size.width, TAPE_ROOM));
  hb_recording_snapshot (self->tape, snapshot, &tape);
  if (rod.ox != self->view.ox)
    snapshot_back (self, snapshot, STYLE_PAPER,
                   &GRAPHENE_RECT_INIT (0, 0, ROD_BACK, area.size.height));
  hb_recording_snapshot (self->rod, snapshot, &rod);
}

static void
snapshot_ground (HbCanvas *self, GtkSnapshot *snapshot)
{
  const StyleRow *row
      = theme_row (_hb_canvas_theme (self), self->client ? STYLE_CLIENT_SKY : STYLE_PAPER);
  const GdkRGBA paper
      = { (float) row->fill.r, (float) row->fill.g, (float) row->fill.b, (float) row->fill.a };
  const graphene_rect_t area = visible (self);

  gtk_snapshot_append_color (snapshot, &paper, &area);
}

/* Where a new wall is to be drawn. */
static void
snapshot_blank (HbCanvas *self, GtkSnapshot *snapshot)
{
  const Theme theme = _hb_canvas_theme (self);
  const Rgba ground = theme_row (theme, STYLE_GROUND)->fill;
  const Rgba line = theme_row (theme, STYLE_GROUND_LINE)->line;
  const GdkRGBA fill = { (float) ground.r, (float) ground.g, (float) ground.b, 1 };
  const GdkRGBA edge = { (float) line.r, (float) line.g, (float) line.b, 1 };
  const graphene_rect_t area = visible (self);
  const float y = (float) _hb_canvas_blank_ground (self);

  gtk_snapshot_append_color (snapshot, &fill,
                             &GRAPHENE_RECT_INIT (0, y, area.size.width, area.size.height - y));
  gtk_snapshot_append_color (snapshot, &edge, &GRAPHENE_RECT_INIT (0, y, area.size.width, 1.5f));
}

/* FALSE: nothing is selected that has strips. */
static gboolean
strips_of (HbCanvas *self, HbStrips *strips)
{
  const Opening *opening = _hb_canvas_get_opening (self);

  if (!opening || self->client || self->tool != HB_TOOL_SELECT || _hb_canvas_is_typing (self))
    return FALSE;
  *strips = (HbStrips){
    .places = self->places,
    .opening = opening,
    .layout = hb_answers_get_layout (self->answers, self->wall),
    .shift = _hb_canvas_pulled_shift (self),
    .view = self->view,
    .rod = rod_view (self),
    .area = visible (self),
    .theme = _hb_canvas_theme (self),
  };
  return TRUE;
}

static void
snapshot_strips (HbCanvas *self, GtkSnapshot *snapshot)
{
  HbStrips strips;

  if (strips_of (self, &strips))
    hb_strips_snapshot (GTK_WIDGET (self), snapshot, &strips);
}

gboolean
_hb_canvas_pick_strip (HbCanvas *self, double x, double y, Shift *shift, const Place **place)
{
  HbStrips strips;

  return strips_of (self, &strips) && hb_strips_pick (&strips, x, y, shift, place);
}

static void
snapshot_children (HbCanvas *self, GtkSnapshot *snapshot)
{
  for (GtkWidget *child = gtk_widget_get_first_child (GTK_WIDGET (self)); child;
       child = gtk_widget_get_next_sibling (child))
    gtk_widget_snapshot_child (GTK_WIDGET (self), child, snapshot);
}

void
_hb_canvas_snapshot (HbCanvas *self, GtkSnapshot *snapshot)
{
  const Wall *wall = _hb_canvas_get_wall_value (self);
  const graphene_rect_t area = visible (self);

  gtk_snapshot_push_clip (snapshot, &area);
  snapshot_ground (self, snapshot);
  if (wall)
    {
      record_all (self, wall);
      hb_recording_snapshot (self->recording, snapshot, &self->view);
      hb_recording_snapshot (self->lit, snapshot, &self->view);
      snapshot_rod_and_tape (self, snapshot);
      hb_recording_snapshot (self->moving, snapshot, &self->view);
      snapshot_strips (self, snapshot);
    }
  else if (self->tool == HB_TOOL_WALL)
    snapshot_blank (self, snapshot);
  snapshot_children (self, snapshot);
  gtk_snapshot_pop (snapshot);
}

double
_hb_canvas_blank_ground (HbCanvas *self)
{
  return (double) (int) (0.8 * gtk_widget_get_height (GTK_WIDGET (self)));
}

/* ---- what lies under a place ---- */

static gboolean
is_of_rod (const MarkRef *ref)
{
  return ref->kind == REF_COURSE || ref->kind == REF_BED;
}

/* Whether the tape, moved into sight, covers the wall there. */
static gboolean
is_under_tape (HbCanvas *self, double y)
{
  return tape_view (self).oy != self->view.oy
         && y >= gtk_widget_get_height (GTK_WIDGET (self)) - TAPE_ROOM;
}

/* On the rod where it is seen; then, apart from it, on the wall. */
static gboolean
pick (HbCanvas *self, double x, double y, MarkRef *ref)
{
  const View rod = rod_view (self);
  const gboolean moved = rod.ox != self->view.ox;
  MarkRef nearer;

  if (self->drawing && moved && x < ROD_BACK)
    return drawing_pick (self->drawing, &rod, x, y, PICK_REACH, ref) && is_of_rod (ref);
  if (self->overlay && drawing_pick (self->overlay, &self->view, x, y, PICK_REACH, ref))
    return TRUE;
  if (!self->drawing || is_under_tape (self, y)
      || !drawing_pick (self->drawing, &self->view, x, y, PICK_REACH, ref))
    return FALSE;
  /* Raked pieces are small, and the whole slope runs along them: it does not reach so far. */
  if (ref->kind == REF_TOP && drawing_pick (self->drawing, &self->view, x, y, SLOPE_REACH, &nearer))
    *ref = nearer;
  return !(moved && is_of_rod (ref));
}

gboolean
_hb_canvas_pick (HbCanvas *self, double x, double y, MarkRef *ref)
{
  MarkRef picked;

  *ref = (MarkRef){ .kind = REF_NONE };
  /* A drawing outlives its wall until the next frame. */
  if (!_hb_canvas_get_wall_value (self) || !pick (self, x, y, &picked))
    return FALSE;
  *ref = picked;
  return TRUE;
}
