/* plan-view-draw.c - drawing sides with the pointer and with typed lengths: an outline, or one wall
 */
#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#include "app/plan-view-private.h"
#include "app/tool-building.h"
#include "app/tool.h"
#include "model/plan-draw.h"

/* How near to a face, or to the first corner, a hand means it, px. */
#define NEAR 9.0
/* A side that an arrow key draws where no length is typed, and with Shift. */
#define STEP LENGTH_MM (100)
#define STEP_SHIFT LENGTH_MM (1000)
#define HEIGHT LENGTH_MM (2500)

static PlanDraw *
draw_of (HbPlanView *self)
{
  return &self->draw;
}

gboolean
_hb_plan_view_draws (HbPlanView *self)
{
  return self->tool == HB_PLAN_TOOL_OUTLINE || self->tool == HB_PLAN_TOOL_WALL;
}

/* ---- what is drawn is told ---- */

static char *
gap_text (const GArray *trace)
{
  gint64 east, north;
  g_autofree char *to_east = NULL;
  g_autofree char *to_north = NULL;

  trace_gap (trace, &east, &north);
  to_east = g_strdup_printf (east > 0 ? _ ("%.10g mm to the west") : _ ("%.10g mm to the east"),
                             (double) ABS (east) / LENGTH_PER_MM);
  to_north = g_strdup_printf (north > 0 ? _ ("%.10g mm to the south") : _ ("%.10g mm to the north"),
                              (double) ABS (north) / LENGTH_PER_MM);
  if (north == 0)
    return g_steal_pointer (&to_east);
  if (east == 0)
    return g_steal_pointer (&to_north);
  /* Translators: "3000 mm to the west and 200 mm to the south" */
  return g_strdup_printf (_ ("%s and %s"), to_east, to_north);
}

static char *
outline_text (const GArray *trace)
{
  const guint n = trace_n_sides (trace);
  g_autofree char *gap = gap_text (trace);

  if (n == 1)
    return g_strdup (
        _ ("1 side. Click, or type a length and press an arrow key; Backspace takes it "
           "back, Shift+Enter leaves it at that."));
  if (trace_can_close (trace))
    return g_strdup_printf (
        ngettext ("%u side; Enter closes the outline with %s. Backspace takes the last one back.",
                  "%u sides; Enter closes the outline with %s. Backspace takes the last one back.",
                  n),
        n, gap);
  return g_strdup_printf (
      ngettext ("%u side; the outline does not close by %s. Click, or type a length and press an "
                "arrow key; Shift+Enter leaves it open.",
                "%u sides; the outline does not close by %s. Click, or type a length and press an "
                "arrow key; Shift+Enter leaves it open.",
                n),
      n, gap);
}

void
_hb_plan_view_say_draw (HbPlanView *self)
{
  const PlanDraw *draw = draw_of (self);
  g_autofree char *text = NULL;

  if (draw->typed->len > 0)
    text = g_strdup_printf (_ ("%s: an arrow key draws a side of that length."), draw->typed->str);
  else if (trace_n_sides (draw->trace) > 0)
    text = outline_text (draw->trace);
  else if (draw->trace->len > 0)
    text = g_strdup (_ ("Click where the side ends, or type its length and press an arrow key; "
                        "Escape cancels."));
  else if (self->tool == HB_PLAN_TOOL_WALL)
    text = g_strdup (_ ("Click where the wall begins, then where it ends, or type its length and "
                        "press an arrow key; Escape cancels."));
  else
    text = g_strdup (_ ("Click the first corner, or type a length and press an arrow key; Escape "
                        "cancels."));
  _hb_plan_view_say (self, text);
}

/* ---- where the hand is ---- */

static void
place_at (HbPlanView *self, double sx, double sy, TraceCorner *out)
{
  const Grip grip = tool_grip (self->view.scale);
  const Length reach = length_from_mm (NEAR / self->view.scale);
  const Project *project = _hb_plan_view_project (self);
  double x, y;

  view_to_wall (&self->view, sx, sy, &x, &y);
  out->x = plan_snap (project, (WallId){ 0 }, FALSE, tool_place_of (x), reach, grip.step);
  out->y = plan_snap (project, (WallId){ 0 }, TRUE, tool_place_of (y), reach, grip.step);
}

/* From the last corner, the way that the pointer is farther off; in line with the first corner
 * where it is near that. */
static void
aim (HbPlanView *self, double sx, double sy)
{
  PlanDraw *draw = draw_of (self);
  const double reach = NEAR / self->view.scale * LENGTH_PER_MM;
  const TraceCorner *first, *last;
  TraceCorner at;

  place_at (self, sx, sy, &at);
  draw->has_tip = TRUE;
  draw->tip = at;
  if (draw->trace->len == 0)
    return;
  first = trace_corner (draw->trace, 0);
  last = trace_corner (draw->trace, draw->trace->len - 1);
  if (fabs ((double) (at.x - first->x)) < reach)
    draw->tip.x = first->x;
  if (fabs ((double) (at.y - first->y)) < reach)
    draw->tip.y = first->y;
  if (ABS (at.x - last->x) >= ABS (at.y - last->y))
    draw->tip.y = last->y;
  else
    draw->tip.x = last->x;
}

static gboolean
is_at_first (HbPlanView *self, double sx, double sy)
{
  const PlanDraw *draw = draw_of (self);
  const TraceCorner *first = trace_corner (draw->trace, 0);
  const MarkPoint point
      = { (double) first->x / LENGTH_PER_MM, (double) first->y / LENGTH_PER_MM, 0, 0 };
  double x, y;

  view_to_sheet (&self->view, &point, &x, &y);
  return hypot (x - sx, y - sy) < NEAR;
}

/* ---- done ---- */

static const Block *
block_of (const Project *project, const Wall *chosen)
{
  return chosen ? project_block (project, chosen->block) : project_block_at (project, 0);
}

static void
stop (HbPlanView *self, WallId first)
{
  const MarkRef made = { .kind = REF_WALL, .id = first.n };

  hb_plan_view_set_tool (self, HB_PLAN_TOOL_NONE);
  hb_plan_view_fit (self);
  _hb_plan_view_choose (self, &made);
  _hb_plan_view_focus_chosen (self);
}

/* NULL with a sentence. */
static Edit *
drawn_edit (HbPlanView *self, gboolean open, WallId *first, char **fault)
{
  const PlanDraw *draw = draw_of (self);
  const Project *project = _hb_plan_view_project (self);
  const Wall *chosen = project_wall (project, self->wall);
  const Length height = chosen ? chosen->height : HEIGHT;
  g_autoptr (GError) error = NULL;
  g_autoptr (GArray) sides = NULL;
  Length x, y;
  Edit *edit;

  if (open)
    edit = tool_walls (project, draw->trace, block_of (project, chosen), height, first, &error);
  else
    {
      sides = trace_outline (draw->trace, &x, &y, fault);
      if (!sides)
        return NULL;
      edit = tool_building_at (project, sides, block_of (project, chosen), height, x, y, first,
                               &error);
    }
  if (!edit)
    *fault = g_strdup (error->message);
  return edit;
}

/* What is refused is said, and nothing that was drawn is lost. */
static void
finish (HbPlanView *self, gboolean open)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (Edit) edit = NULL;
  g_autofree char *fault = NULL;
  WallId first = { 0 };

  if (trace_n_sides (draw_of (self)->trace) == 0)
    {
      _hb_plan_view_say_draw (self);
      return;
    }
  edit = drawn_edit (self, open, &first, &fault);
  if (!edit)
    {
      _hb_plan_view_say (self, fault);
      return;
    }
  if (hb_document_apply (self->document, edit, open ? _ ("Draw walls") : _ ("New building"),
                         &error))
    stop (self, first);
  else
    _hb_plan_view_say (self, error->message);
}

/* After each side: one wall is all that is wanted, or the outline has come round. */
static void
went_on (HbPlanView *self)
{
  PlanDraw *draw = draw_of (self);
  gint64 east, north;

  g_string_truncate (draw->typed, 0);
  if (self->tool == HB_PLAN_TOOL_WALL && trace_n_sides (draw->trace) > 0)
    {
      finish (self, TRUE);
      return;
    }
  trace_gap (draw->trace, &east, &north);
  if (trace_can_close (draw->trace) && east == 0 && north == 0)
    {
      finish (self, FALSE);
      return;
    }
  _hb_plan_view_show_draw (self);
  _hb_plan_view_say_draw (self);
}

/* ---- the pointer ---- */

void
_hb_plan_view_draw_to (HbPlanView *self, double sx, double sy)
{
  aim (self, sx, sy);
  _hb_plan_view_queue_redraw (self);
}

void
_hb_plan_view_draw_press (HbPlanView *self, double sx, double sy)
{
  PlanDraw *draw = draw_of (self);

  aim (self, sx, sy);
  draw->begun = draw->trace->len == 0;
  if (draw->begun)
    g_array_append_val (draw->trace, draw->tip);
  _hb_plan_view_queue_redraw (self);
}

void
_hb_plan_view_draw_release (HbPlanView *self, double sx, double sy, gboolean moved)
{
  PlanDraw *draw = draw_of (self);
  const TraceCorner *last;

  if (draw->trace->len == 0)
    return;
  if (draw->begun && !moved)
    {
      _hb_plan_view_say_draw (self);
      return;
    }
  aim (self, sx, sy);
  if (is_at_first (self, sx, sy) && trace_can_close (draw->trace))
    {
      finish (self, FALSE);
      return;
    }
  last = trace_corner (draw->trace, draw->trace->len - 1);
  trace_go (draw->trace, trace_way_between (last, &draw->tip), trace_between (last, &draw->tip));
  went_on (self);
}

/* ---- the keyboard ---- */

/* What a length is typed with; letters only behind digits. */
static gboolean
is_of_length (const PlanDraw *draw, gunichar c)
{
  if (c >= '0' && c <= '9')
    return TRUE;
  return draw->typed->len > 0 && c != 0 && c < 128 && strchr (".,/\" mcinft'", (int) c) != NULL;
}

static gboolean
type (HbPlanView *self, guint key)
{
  PlanDraw *draw = draw_of (self);
  const gunichar c = gdk_keyval_to_unicode (key);

  if (!is_of_length (draw, c) || draw->typed->len > 20)
    return GDK_EVENT_PROPAGATE;
  g_string_append_c (draw->typed, (char) c);
  _hb_plan_view_queue_redraw (self);
  _hb_plan_view_say_draw (self);
  return GDK_EVENT_STOP;
}

/* The first corner, where no hand has set it. */
static void
begin_somewhere (HbPlanView *self)
{
  const TraceCorner first = { plan_free_place (_hb_plan_view_project (self)), 0 };

  if (draw_of (self)->trace->len == 0)
    g_array_append_val (draw_of (self)->trace, first);
}

static void
go (HbPlanView *self, Runs way, gboolean shift)
{
  PlanDraw *draw = draw_of (self);
  const gboolean typed = draw->typed->len > 0;
  Length length = shift ? STEP_SHIFT : STEP;

  if (typed && (!length_parse_typed (draw->typed->str, &length) || length <= 0))
    {
      _hb_plan_view_say (self, _ ("Type a length: 1200, 1.2 m, 120 cm or 47 in."));
      return;
    }
  begin_somewhere (self);
  draw->has_tip = FALSE;
  trace_go (draw->trace, way, length);
  if (typed || self->tool == HB_PLAN_TOOL_OUTLINE)
    {
      went_on (self);
      return;
    }
  _hb_plan_view_show_draw (self);
  _hb_plan_view_say (self, _ ("Enter sets the wall; arrow keys make it longer and shorter."));
}

/* With a length typed, Enter draws it the way that the pointer is. */
static void
enter (HbPlanView *self, gboolean shift)
{
  PlanDraw *draw = draw_of (self);
  const TraceCorner *last
      = draw->trace->len > 0 ? trace_corner (draw->trace, draw->trace->len - 1) : NULL;

  if (draw->typed->len > 0 && last && draw->has_tip && trace_between (last, &draw->tip) > 0)
    go (self, trace_way_between (last, &draw->tip), FALSE);
  else if (draw->typed->len > 0)
    _hb_plan_view_say_draw (self);
  else
    finish (self, shift || self->tool == HB_PLAN_TOOL_WALL);
}

static void
take_back (HbPlanView *self)
{
  PlanDraw *draw = draw_of (self);

  if (draw->typed->len > 0)
    g_string_truncate (draw->typed, draw->typed->len - 1);
  else
    trace_back (draw->trace);
  _hb_plan_view_queue_redraw (self);
  _hb_plan_view_say_draw (self);
}

gboolean
_hb_plan_view_draw_key (HbPlanView *self, guint key, GdkModifierType state)
{
  const gboolean shift = (state & GDK_SHIFT_MASK) != 0;

  if ((state & GDK_CONTROL_MASK) && (key == GDK_KEY_z || key == GDK_KEY_Z) && !shift
      && (draw_of (self)->trace->len > 0 || draw_of (self)->typed->len > 0))
    {
      take_back (self);
      return GDK_EVENT_STOP;
    }
  if (state & (GDK_CONTROL_MASK | GDK_ALT_MASK))
    return GDK_EVENT_PROPAGATE;
  switch (key)
    {
    case GDK_KEY_Right:
      go (self, RUNS_EAST, shift);
      return GDK_EVENT_STOP;
    case GDK_KEY_Up:
      go (self, RUNS_NORTH, shift);
      return GDK_EVENT_STOP;
    case GDK_KEY_Left:
      go (self, RUNS_WEST, shift);
      return GDK_EVENT_STOP;
    case GDK_KEY_Down:
      go (self, RUNS_SOUTH, shift);
      return GDK_EVENT_STOP;
    case GDK_KEY_Return:
    case GDK_KEY_KP_Enter:
      enter (self, shift);
      return GDK_EVENT_STOP;
    case GDK_KEY_BackSpace:
    case GDK_KEY_Delete:
      take_back (self);
      return GDK_EVENT_STOP;
    default:
      return type (self, key);
    }
}

/* ---- what is seen ---- */

static gboolean
trace_box (const GArray *trace, PlanBox *box)
{
  for (guint i = 0; i < trace->len; i++)
    {
      const TraceCorner *at = trace_corner (trace, i);

      if (i == 0)
        *box = (PlanBox){ at->x, at->y, at->x, at->y };
      *box = (PlanBox){ MIN (box->x0, at->x), MIN (box->y0, at->y), MAX (box->x1, at->x),
                        MAX (box->y1, at->y) };
    }
  return trace->len > 0;
}

static gboolean
is_seen (HbPlanView *self, const TraceCorner *corner)
{
  const MarkPoint point
      = { (double) corner->x / LENGTH_PER_MM, (double) corner->y / LENGTH_PER_MM, 0, 0 };
  double x, y;

  view_to_sheet (&self->view, &point, &x, &y);
  return x > 0 && y > 0 && x < gtk_widget_get_width (GTK_WIDGET (self))
         && y < gtk_widget_get_height (GTK_WIDGET (self));
}

/* A typed side may end beyond the sheet. */
void
_hb_plan_view_show_draw (HbPlanView *self)
{
  const GArray *trace = draw_of (self)->trace;
  PlanBox box;
  View view;

  _hb_plan_view_queue_redraw (self);
  if (!trace_box (trace, &box) || is_seen (self, trace_corner (trace, trace->len - 1)))
    return;
  view = plan_fit (_hb_plan_view_project (self), &box, gtk_widget_get_width (GTK_WIDGET (self)),
                   gtk_widget_get_height (GTK_WIDGET (self)));
  _hb_plan_view_set_view (self, &view, FALSE);
}

gboolean
_hb_plan_view_get_trace (HbPlanView *self, PlanTrace *out)
{
  const PlanDraw *draw = draw_of (self);

  if (!_hb_plan_view_draws (self))
    return FALSE;
  *out = (PlanTrace){ draw->trace, draw->has_tip && draw->trace->len > 0, draw->tip,
                      draw->typed->str };
  return TRUE;
}

void
_hb_plan_view_draw_clear (HbPlanView *self)
{
  PlanDraw *draw = draw_of (self);

  g_array_set_size (draw->trace, 0);
  g_string_truncate (draw->typed, 0);
  draw->has_tip = draw->begun = FALSE;
}

/* A typed length goes first; FALSE: there was none. */
gboolean
_hb_plan_view_draw_escape (HbPlanView *self)
{
  PlanDraw *draw = draw_of (self);

  if (!_hb_plan_view_draws (self) || draw->typed->len == 0)
    return FALSE;
  g_string_truncate (draw->typed, 0);
  _hb_plan_view_queue_redraw (self);
  _hb_plan_view_say_draw (self);
  return TRUE;
}
