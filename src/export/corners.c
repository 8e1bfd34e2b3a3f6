#include "export/corners.h"

#include <glib/gi18n-lib.h>

#include "model/plan-ring.h"

/* Steps. */
#define LEFT 24.0
#define TOP 30.0
#define PITCH 19.0
#define N_COLUMNS 6

typedef struct
{
  const Page *page;
  GPtrArray *rings; /* plan_rings() */
  Drawing *drawing;
  double y;
} List;

/* Lines that a ring takes: its heading, the names of its columns, its corners, and a space. */
static guint
n_lines (const GArray *ring)
{
  return ring->len + 3;
}

static guint
lines_a_page (const Page *page)
{
  return (guint) MAX ((page->field.y1 - page->field.y0 - TOP) / PITCH, 8);
}

/* Line after line; a heading that would stand alone at the foot goes over. */
guint
corners_n_pages (const Page *page)
{
  g_autoptr (GPtrArray) rings = plan_rings (page->project);
  guint lines = 0;

  for (guint r = 0; r < rings->len; r++)
    lines += n_lines (g_ptr_array_index (rings, r));
  return (lines + lines_a_page (page) - 1) / lines_a_page (page);
}

static void
add_cell (List *list, guint column, Style style, const char *text)
{
  const MarkLook look = mark_look (style, LAYER_DIMENSIONS);
  const double width = (list->page->field.x1 - list->page->field.x0 - 2 * LEFT) / N_COLUMNS;
  const double x = list->page->field.x0 + LEFT + width * column;
  const MarkPoint at = { 0, 0, (float) x, (float) list->y };

  drawing_add_text (list->drawing, &look, at, 0, 0.5f, text);
}

static void
add_length (List *list, guint column, gint64 length)
{
  g_autofree char *text = g_strdup_printf ("%.10g", (double) length / LENGTH_PER_MM);

  add_cell (list, column, STYLE_SHEET_TEXT, text);
}

/* To the millimetre, which a tape can be read to. */
static void
add_distance (List *list, guint column, const RingCorner *a, const RingCorner *b)
{
  g_autofree char *text = g_strdup_printf ("%.0f", (double) ring_distance (a, b) / LENGTH_PER_MM);

  if (a != b)
    add_cell (list, column, STYLE_SHEET_TEXT, text);
}

static void
add_heading (List *list, guint ring)
{
  g_autofree char *text = g_strdup_printf (
      _ ("Building %u: outer corners, mm. Each is where the tapes from A and B cross."), ring + 1);

  add_cell (list, 0, STYLE_SHEET_TITLE, text);
}

static void
add_captions (List *list)
{
  const char *const captions[N_COLUMNS] = { _ ("Corner"),    _ ("Wall that begins there"),
                                            _ ("East of A"), _ ("North of A"),
                                            _ ("From A"),    _ ("From B") };

  for (guint i = 0; i < N_COLUMNS; i++)
    add_cell (list, i, STYLE_SHEET_CAPTION, captions[i]);
}

static void
add_corner (List *list, const GArray *ring, guint i)
{
  const RingCorner *a = &g_array_index (ring, RingCorner, 0);
  const RingCorner *b = &g_array_index (ring, RingCorner, 1);
  const RingCorner *at = &g_array_index (ring, RingCorner, i);
  char letters[RING_LETTERS_SIZE];

  add_cell (list, 0, STYLE_SHEET_TITLE, ring_letters (i, letters));
  add_cell (list, 1, STYLE_SHEET_TEXT,
            wall_called (project_wall_at (list->page->project, at->wall)));
  add_length (list, 2, at->x - a->x);
  add_length (list, 3, at->y - a->y);
  add_distance (list, 4, at, a);
  add_distance (list, 5, at, b);
}

static void
add_line (List *list, guint ring, guint line)
{
  const GArray *corners = g_ptr_array_index (list->rings, ring);

  if (line == 0)
    add_heading (list, ring);
  else if (line == 1)
    add_captions (list);
  else if (line - 2 < corners->len)
    add_corner (list, corners, line - 2);
}

Drawing *
corners_page (const Page *page, guint number)
{
  g_autoptr (GPtrArray) rings = plan_rings (page->project);
  const guint first = number * lines_a_page (page), end = first + lines_a_page (page);
  List list = { page, rings, drawing_new (), 0 };
  guint at = 0;

  for (guint r = 0; r < rings->len; r++)
    for (guint line = 0; line < n_lines (g_ptr_array_index (rings, r)); line++, at++)
      {
        if (at < first || at >= end)
          continue;
        list.y = page->field.y0 + TOP + PITCH * (at - first);
        add_line (&list, r, line);
      }
  drawing_finish (list.drawing);
  return list.drawing;
}
