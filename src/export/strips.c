#include "export/strips.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "bond/rake.h"
#include "concrete/bed-steel.h"
#include "concrete/ties.h"
#include "paint/outline.h"
#include "site/as-built.h"

/* Steps. */
#define STRIP_HEIGHT 25.0
#define PITCH_LEAST 44.0 /* with the numbers under it and the space to the next */
#define PITCH_MOST 60.0
#define NAME_WIDTH 100.0 /* left of the strips: course and heights */
/* Height of a piece that takes a label, and a large one. */
#define LABEL_LEAST 7.0
#define LABEL_ROOM 12.0
#define RIGHT 22.0 /* right of them, half a number */
#define TOP 24.0
#define FOOT 30.0 /* numbers of the lowest strip */
#define FIGURE 6.2
#define LETTER 0.66 /* width of one on average, by its size */
/* Of what is written over a slope: from the end of the piece's upper edge, and below it. */
#define BESIDE 9.0
#define UNDER_TOP 3.0
#define OVER_FOOT 6.0
#define NAME_SPARE 30.0 /* of the names' column, beside them */
#define NUMBER_ROOM 4.0
#define NUMBER_ROWS 2
#define ROW_PITCH 9.0
/* The smallest scale along the wall, 1:N, at which a whole unit's length and two numbers read. */
#define SMALLEST_SCALE 82.0
#define MOST_PAGES 400u

/* What one page shows: some courses of one part of the wall. */
typedef struct
{
  const Page *page;
  Drawing *drawing;
  guint first, n;  /* courses, from 0 */
  Length from, to; /* part of the wall */
  double left;     /* of the strips, steps */
  double scale;    /* steps per mm along the wall */
  double pitch;    /* from strip to strip, steps */
  double foot;     /* of the lowest strip, steps */
  GArray *rows;    /* TieRow: of this wall */
  GArray *ends;    /* TieEnd: of walls that are butted to it */
  const AsBuilt *built;
} Strips;

static double
strips_width (const Page *page)
{
  return page->field.x1 - page->field.x0 - NAME_WIDTH - RIGHT;
}

/* From the head of the highest strip to that of one that would stand under the lowest. */
static double
strips_height (const Page *page)
{
  return page->field.y1 - page->field.y0 - TOP - FOOT - STRIP_HEIGHT + PITCH_LEAST;
}

static guint
n_per_page (const Page *page)
{
  return (guint) MAX (1, floor (strips_height (page) / PITCH_LEAST));
}

static guint
n_stacks (const Page *page)
{
  const guint per_page = n_per_page (page);

  return (page->layout->courses->len + per_page - 1) / per_page;
}

static guint
n_parts (const Page *page)
{
  const double widest = strips_width (page) * SMALLEST_SCALE / STEPS_PER_MM;

  return (guint) ceil (length_to_mm (page->wall->length) / widest);
}

guint
strips_n_pages (const Page *page)
{
  const guint n = n_stacks (page) * n_parts (page);

  return n > MOST_PAGES ? 0 : n;
}

/* Part by part, in each from the bottom. */
static Strips
strips_of (const Page *page, guint number)
{
  const guint parts = n_parts (page), stacks = n_stacks (page), per_page = n_per_page (page);
  const guint part = number / stacks, first = number % stacks * per_page;
  const gint64 length = page->wall->length;
  Strips strips = {
    .page = page,
    .first = first,
    .n = MIN (per_page, page->layout->courses->len - first),
    .from = (Length) (length * part / parts),
    .to = (Length) (length * (part + 1) / parts),
    .left = page->field.x0 + NAME_WIDTH,
  };

  strips.scale = strips_width (page) / length_to_mm (strips.to - strips.from);
  strips.pitch = CLAMP (strips_height (page) / strips.n, PITCH_LEAST, PITCH_MOST);
  strips.foot = page->field.y0 + TOP + strips.pitch * (strips.n - 1) + STRIP_HEIGHT;
  return strips;
}

char *
strips_subject (const Page *page, guint number)
{
  const Strips strips = strips_of (page, number);
  char from[LENGTH_TEXT_SIZE], to[LENGTH_TEXT_SIZE];
  const guint first = strips.first + 1, last = strips.first + strips.n;

  if (n_parts (page) > 1)
    return g_strdup_printf (_ ("Courses %u to %u, from %s to %s"), first, last,
                            length_text (strips.from, from), length_text (strips.to, to));
  return g_strdup_printf (_ ("Courses %u to %u"), first, last);
}

/* Places */

static double
place_x (const Strips *strips, Length x)
{
  return strips->left + length_to_mm (x - strips->from) * strips->scale;
}

/* The foot of a course's strip. */
static double
foot_of (const Strips *strips, const Course *course)
{
  return strips->foot - strips->pitch * ((guint) course->number - 1 - strips->first);
}

static double
place_z (const Strips *strips, const Course *course, Length z)
{
  const double tall = MAX (length_to_mm (course->top - course->bottom), 1);

  return foot_of (strips, course) - length_to_mm (z - course->bottom) / tall * STRIP_HEIGHT;
}

static MarkPoint
place (double x, double y)
{
  return (MarkPoint){ 0, 0, (float) x, (float) y };
}

static gboolean
is_shown (const Strips *strips, Length x0, Length x1)
{
  return x1 > strips->from && x0 < strips->to;
}

/* Pieces */

static gboolean
stands (const Strips *strips, gint32 course)
{
  return course <= wall_standing (strips->page->wall);
}

static Style
piece_style (const Strips *strips, const Piece *piece)
{
  const gboolean whole = piece->shape == PIECE_WHOLE;

  if (stands (strips, piece->course))
    return whole ? STYLE_STANDING : STYLE_STANDING_CUT;
  return whole ? STYLE_PIECE : STYLE_PIECE_CUT;
}

static void
add_outline (Strips *strips, const Course *course, const Piece *piece)
{
  LayPoint corners[OUTLINE_MOST_CORNERS];
  MarkPoint points[OUTLINE_MOST_CORNERS];
  const guint n = outline_corners (strips->page->layout, piece, corners);
  const MarkLook look = mark_look (piece_style (strips, piece), LAYER_PIECES);

  for (guint i = 0; i < n; i++)
    points[i] = place (place_x (strips, CLAMP (corners[i].x, strips->from, strips->to)),
                       place_z (strips, course, corners[i].z));
  drawing_add (strips->drawing, MARK_POLYGON, &look, points, n);
}

/* Both edges and the angle of the cut. */
static char *
raked_text (const Rake *rake)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];
  g_autofree char *edges = rake_text (rake);

  return g_strdup_printf ("%s · %s°", edges,
                          g_ascii_formatd (digits, sizeof digits, "%.1f", rake_angle (rake)));
}

static double
width_of (const char *text, Style style)
{
  return (double) g_utf8_strlen (text, -1) * LETTER * theme_row (THEME_PAPER, style)->text_size;
}

static char *
piece_text (const Layout *layout, const Piece *piece)
{
  char length[LENGTH_TEXT_SIZE], height[LENGTH_TEXT_SIZE];
  Rake rake;

  if (piece->shape == PIECE_RAKED && piece_rake (layout, piece, &rake))
    return rake_text (&rake);
  if (piece->shape != PIECE_RIPPED)
    return g_strdup (length_text (piece->length, length));
  return g_strdup_printf ("%s × %s", length_text (piece->length, length),
                          length_text (piece->height, height));
}

/* Large letters for cuts, smaller ones where the piece is thin. */
static Style
text_style (const Piece *piece, double room)
{
  if (piece->shape == PIECE_WHOLE)
    return STYLE_STRIP_WHOLE;
  return room < LABEL_ROOM ? STYLE_STRIP_NUMBER : STYLE_PIECE_LABEL;
}

/* Whether nothing is laid on that side of it, where the slope comes down. */
static int
free_side (const Layout *layout, const Course *course, const Piece *piece, const Rake *rake)
{
  const Piece *first = layout_piece (layout, (guint) course->first);
  const Piece *last = first + course->n_pieces - 1;

  if (rake->left < rake->right && (piece == first || piece[-1].segment != piece->segment))
    return -1;
  if (rake->right < rake->left && (piece == last || piece[1].segment != piece->segment))
    return 1;
  return piece == last && rake->n_slopes > 1 ? 1 : 0;
}

/* Where the upper edge of a piece begins, or ends, on that side. */
static Length
upper_end (const Layout *layout, const Piece *piece, int side)
{
  LayPoint corners[OUTLINE_MOST_CORNERS];
  const guint n = outline_corners (layout, piece, corners);
  Length x = side < 0 ? piece->x + piece->length : piece->x;

  for (guint i = 0; i < n; i++)
    if (corners[i].z == piece->bottom + piece->height)
      x = side < 0 ? MIN (x, corners[i].x) : MAX (x, corners[i].x);
  return x;
}

/* Over a piece that is lower than its course. FALSE: there is no room. */
static gboolean
add_text_above (Strips *strips, const Course *course, const Piece *piece, const Rake *rake)
{
  const double y = place_z (strips, course, piece->bottom + piece->height);
  const double room = y - place_z (strips, course, course->top);
  const double left = place_x (strips, MAX (piece->x, strips->from));
  const double right = place_x (strips, MIN (piece->x + piece->length, strips->to));
  g_autofree char *text = rake_text (rake);
  MarkLook look = mark_look (STYLE_PIECE_LABEL, LAYER_LABELS);

  if (room < LABEL_LEAST)
    return FALSE;
  look.fit = right - left;
  drawing_add_text (strips->drawing, &look, place ((left + right) / 2, y), 0.5f, 1, text);
  return TRUE;
}

/* Where what marks it out stands on that side: over the slope, or, where that goes all along the
 * piece, beside its low end. */
static MarkPoint
beside (const Strips *strips, const Course *course, const Piece *piece, const Rake *rake, int side)
{
  const Length end = side < 0 ? piece->x : piece->x + piece->length;

  if (rake->top == 0 && rake->n_slopes == 1)
    return place (place_x (strips, end) + side * BESIDE / 2,
                  place_z (strips, course, piece->bottom) - OVER_FOOT);
  return place (place_x (strips, upper_end (strips->page->layout, piece, side)) + side * BESIDE,
                place_z (strips, course, piece->bottom + piece->height) + UNDER_TOP);
}

/* FALSE: it is no raked piece, or has no room there. */
static gboolean
add_raked_text (Strips *strips, const Course *course, const Piece *piece)
{
  const SheetBox *field = &strips->page->field;
  const double over = foot_of (strips, course) - STRIP_HEIGHT - OVER_FOOT;
  const MarkLook look = mark_look (STYLE_STRIP_NUMBER, LAYER_LABELS);
  g_autofree char *text = NULL;
  MarkPoint at;
  double width;
  int side;
  Rake rake;

  if (piece->shape != PIECE_RAKED || !piece_rake (strips->page->layout, piece, &rake))
    return FALSE;
  side = free_side (strips->page->layout, course, piece, &rake);
  if (side == 0)
    return add_text_above (strips, course, piece, &rake);
  if (!is_shown (strips, piece->x, piece->x + piece->length))
    return FALSE;
  text = raked_text (&rake);
  width = width_of (text, STYLE_STRIP_NUMBER);
  at = beside (strips, course, piece, &rake, side);
  /* Into the names at the sheet's edge it may not run, and not over the other edge. */
  if (side < 0 && (double) at.dx - width < strips->left - NAME_SPARE)
    at = place (strips->left - NAME_SPARE + width, over);
  if (side > 0 && (double) at.dx + width > field->x1)
    at = place (field->x1 - width, over);
  drawing_add_text (strips->drawing, &look, at, side < 0 ? 1.f : 0.f, 0.5f, text);
  return TRUE;
}

static void
add_piece_text (Strips *strips, const Course *course, const Piece *piece)
{
  const OutlineSeat seat = outline_seat (strips->page->layout, piece);
  const Length x0 = MAX (seat.x0, strips->from), x1 = MIN (seat.x1, strips->to);
  const double low = place_z (strips, course, seat.z0), high = place_z (strips, course, seat.z1);
  MarkLook look = mark_look (text_style (piece, low - high), LAYER_LABELS);
  g_autofree char *text = NULL;

  if (add_raked_text (strips, course, piece))
    return;
  if (x1 - x0 < (seat.x1 - seat.x0) / 2 || low - high < LABEL_LEAST)
    return;
  look.fit = length_to_mm (x1 - x0) * strips->scale;
  text = piece_text (strips->page->layout, piece);
  drawing_add_text (strips->drawing, &look,
                    place ((place_x (strips, x0) + place_x (strips, x1)) / 2, (low + high) / 2),
                    0.5f, 0.5f, text);
}

/* Numbers */

/* How far right the numbers of each row under a strip have come. */
typedef struct
{
  double end[NUMBER_ROWS];
} Rows;

static void
add_number (Strips *strips, const Course *course, Length x, Rows *rows)
{
  char text[LENGTH_TEXT_SIZE];
  const double at = place_x (strips, x), foot = foot_of (strips, course);
  const double half = (double) strlen (length_text (x, text)) * FIGURE / 2;
  const MarkLook tick = mark_look (STYLE_TAPE_TICK, LAYER_TAPE);
  const MarkLook number = mark_look (STYLE_STRIP_NUMBER, LAYER_TAPE);
  guint row = 0;

  if (x < strips->from || x > strips->to)
    return;
  while (row < NUMBER_ROWS && at - half < rows->end[row] + NUMBER_ROOM)
    row++;
  if (row == NUMBER_ROWS)
    return;
  rows->end[row] = at + half;
  const double top = foot + 3 + ROW_PITCH * row;
  drawing_add_line (strips->drawing, &tick, place (at, foot), place (at, top));
  drawing_add_text (strips->drawing, &number, place (at, top), 0.5f, 0, text);
}

/* Where a piece begins after a jamb or an end, and where it ends: at the middle of its perpend. */
static void
add_piece_numbers (Strips *strips, const Course *course, gint32 k, Rows *rows)
{
  const Piece *piece = layout_piece (strips->page->layout, (guint) (course->first + k));
  const gboolean starts = k == 0 || piece[-1].segment != piece->segment;
  const gboolean ends = k + 1 == course->n_pieces || piece[1].segment != piece->segment;
  const Length right = piece->x + piece->length;

  if (starts)
    add_number (strips, course, piece->x, rows);
  add_number (strips, course, ends ? right : right + (piece[1].x - right) / 2, rows);
}

/* One course */

static void
add_course_name (Strips *strips, const Course *course)
{
  char bottom[LENGTH_TEXT_SIZE], top[LENGTH_TEXT_SIZE];
  const double x = strips->page->field.x0 + 8, foot = foot_of (strips, course);
  const MarkLook name = mark_look (STYLE_STRIP_NAME, LAYER_ROD);
  const MarkLook height = mark_look (STYLE_STRIP_NUMBER, LAYER_ROD);
  g_autofree char *number = g_strdup_printf (_ ("Course %d"), course->number);
  /* Translators: heights of the top and the bottom of a course, mm */
  g_autofree char *heights = g_strdup_printf (_ ("%s to %s"), length_text (course->bottom, bottom),
                                              length_text (course->top, top));

  drawing_add_text (strips->drawing, &name, place (x, foot - STRIP_HEIGHT - 1), 0, 0, number);
  drawing_add_text (strips->drawing, &height, place (x, foot), 0, 1, heights);
}

/* "+6", and where it was measured at both ends "+6 / +2"; "" where it was not. `over`: more than it
 * may be. Newly allocated. */
static char *
dup_off (const Strips *strips, gint32 course, gboolean *over)
{
  GString *text = g_string_new (NULL);
  char off[LENGTH_TEXT_SIZE];

  *over = FALSE;
  for (guint i = 0; i < strips->built->deviations->len; i++)
    {
      const Deviation *deviation = as_built_deviation (strips->built, i);

      if (deviation->kind != TOLERANCE_TOP || deviation->course != course)
        continue;
      g_string_append_printf (text, "%s%s", text->len ? " / " : "",
                              length_off_text (deviation->off, off));
      *over = *over || !deviation->within;
    }
  return g_string_free (text, FALSE);
}

/* Under the name: that it stands, and how far its top is off. */
static void
add_standing (Strips *strips, const Course *course)
{
  const double x = strips->page->field.x0 + 8, foot = foot_of (strips, course);
  gboolean over;
  g_autofree char *off = dup_off (strips, course->number, &over), *text = NULL;
  const MarkLook look = mark_look (over ? STYLE_STRIP_OVER : STYLE_STRIP_NUMBER, LAYER_ROD);

  if (!stands (strips, course->number))
    return;
  text = *off ? g_strdup_printf (_ ("laid, top %s%s"), over ? "! " : "", off)
              : g_strdup (_ ("laid"));
  drawing_add_text (strips->drawing, &look, place (x, foot + 2), 0, 0, text);
}

static void
add_return (Strips *strips, const Course *course, Length start, Length ret)
{
  const MarkLook look = mark_look (STYLE_RETURN, LAYER_PIECES);
  const double foot = foot_of (strips, course);

  if (!is_shown (strips, start, start + ret)
      || wall_top_highest (strips->page->wall, start, start + ret) <= course->bottom)
    return;
  drawing_add_box (strips->drawing, &look,
                   place (place_x (strips, MAX (start, strips->from)), foot),
                   place (place_x (strips, MIN (start + ret, strips->to)), foot - STRIP_HEIGHT));
}

/* Ends of other walls that run through in this course. */
static void
add_returns (Strips *strips, const Course *course)
{
  const Wall *wall = strips->page->wall;
  const End *left = &wall->ends[SIDE_LEFT], *right = &wall->ends[SIDE_RIGHT];

  if (end_stops (left, course->number, course->bottom))
    add_return (strips, course, 0, left->ret);
  if (end_stops (right, course->number, course->bottom))
    add_return (strips, course, wall->length - right->ret, right->ret);
  for (guint i = 0; i < wall->tees->len; i++)
    if (tee_stops (wall_tee_at (wall, i), course->number, course->bottom))
      add_return (strips, course, wall_tee_at (wall, i)->x, wall_tee_at (wall, i)->ret);
}

static void
add_movement_joints (Strips *strips, const Course *course)
{
  const Wall *wall = strips->page->wall;
  const MarkLook look = mark_look (STYLE_MOVEMENT_JOINT, LAYER_PIECES);
  const double foot = foot_of (strips, course);

  for (guint i = 0; i < wall->movement_joints->len; i++)
    {
      const MovementJoint *joint = wall_movement_joint_at (wall, i);

      if (is_shown (strips, joint->x, movement_joint_right (joint))
          && wall_top_at (wall, joint->x, SIDE_RIGHT) > course->bottom
          && wall_foot_at (wall, joint->x, SIDE_RIGHT) < course->top)
        drawing_add_box (strips->drawing, &look,
                         place (place_x (strips, MAX (joint->x, strips->from)), foot),
                         place (place_x (strips, MIN (movement_joint_right (joint), strips->to)),
                                foot - STRIP_HEIGHT));
    }
}

static void
add_opening (Strips *strips, const Course *course, const Opening *opening)
{
  const Length z0 = MAX (opening->sill, course->bottom);
  const Length z1 = MIN (opening_head (opening), course->top);
  const Length x0 = MAX (opening->x, strips->from), x1 = MIN (opening_right (opening), strips->to);
  const MarkLook box = mark_look (STYLE_STRIP_OPENING, LAYER_OPENINGS);
  MarkLook name = mark_look (STYLE_STRIP_NUMBER, LAYER_OPENINGS);

  if (z1 <= z0 || x1 <= x0)
    return;
  const double left = place_x (strips, x0), right = place_x (strips, x1);
  const double foot = place_z (strips, course, z0), head = place_z (strips, course, z1);
  drawing_add_box (strips->drawing, &box, place (left, foot), place (right, head));
  name.fit = right - left;
  if (foot - head > theme_row (THEME_PAPER, STYLE_STRIP_NUMBER)->text_size)
    drawing_add_text (strips->drawing, &name, place ((left + right) / 2, (foot + head) / 2), 0.5f,
                      0.5f, opening->name);
}

static void
add_steel (Strips *strips, const Course *course, const GArray *runs)
{
  const MarkLook look = mark_look (STYLE_STEEL, LAYER_STEEL);
  const double top = foot_of (strips, course) - STRIP_HEIGHT;

  for (guint i = 0; i < runs->len; i++)
    {
      const SteelRun *run = &g_array_index (runs, SteelRun, i);
      const Length from = MAX (run->from, strips->from), to = MIN (run->to, strips->to);
      if (run->course == course->number && to > from)
        drawing_add_line (strips->drawing, &look, place (place_x (strips, from), top),
                          place (place_x (strips, to), top));
    }
}

/* Over the strip: how many, half in either wall. */
static void
add_tie (Strips *strips, const Course *course, Length from, Length to, gint32 abreast)
{
  const MarkLook line = mark_look (STYLE_TIE, LAYER_STEEL);
  const MarkLook number = mark_look (STYLE_STRIP_NUMBER, LAYER_STEEL);
  const double top = foot_of (strips, course) - STRIP_HEIGHT - 2;
  g_autofree char *text = g_strdup_printf ("%d", abreast);
  double left, right;

  from = MAX (from, strips->from);
  to = MIN (to, strips->to);
  if (to <= from)
    return;
  left = place_x (strips, from);
  right = place_x (strips, to);
  drawing_add_line (strips->drawing, &line, place (left, top), place (right, top));
  drawing_add_text (strips->drawing, &number, place (right + 3, top + 2), 0, 1, text);
}

static void
add_ties (Strips *strips, const Course *course)
{
  for (guint i = 0; i < strips->rows->len; i++)
    {
      const TieRow *row = &g_array_index (strips->rows, TieRow, i);

      if (row->course == course->number)
        add_tie (strips, course, row->x - TIE_REACH, row->x + TIE_REACH, row->abreast);
    }
  for (guint i = 0; i < strips->ends->len; i++)
    {
      const TieEnd *end = &g_array_index (strips->ends, TieEnd, i);

      if (end->course == course->number)
        add_tie (strips, course, end->x, end->x + end->width, end->abreast);
    }
}

static void
add_pieces (Strips *strips, const Course *course)
{
  Rows rows;

  for (guint i = 0; i < NUMBER_ROWS; i++)
    rows.end[i] = -G_MAXDOUBLE;
  for (gint32 k = 0; k < course->n_pieces; k++)
    {
      const Piece *piece = layout_piece (strips->page->layout, (guint) (course->first + k));
      if (is_shown (strips, piece->x, piece->x + piece->length))
        {
          add_outline (strips, course, piece);
          add_piece_text (strips, course, piece);
        }
      add_piece_numbers (strips, course, k, &rows);
    }
}

static void
add_course (Strips *strips, const Course *course, const GArray *runs)
{
  const GArray *openings = strips->page->wall->openings;

  add_course_name (strips, course);
  add_standing (strips, course);
  add_returns (strips, course);
  add_pieces (strips, course);
  add_movement_joints (strips, course);
  for (guint i = 0; i < openings->len; i++)
    add_opening (strips, course, wall_opening_at (strips->page->wall, i));
  add_steel (strips, course, runs);
  add_ties (strips, course);
}

Drawing *
strips_page (const Page *page, guint number)
{
  const Block *block = project_block (page->project, page->wall->block);
  g_autoptr (GArray) runs = bed_steel_runs (page->wall, block);
  Strips strips = strips_of (page, number);

  const int index = project_wall_index (page->project, page->wall->id);
  g_autoptr (GArray) rows = ties_of_wall (page->wall, block);
  g_autoptr (GArray) ends = ties_into_wall (page->project, (guint) MAX (index, 0));
  g_autoptr (AsBuilt) built = as_built_new (page->project, page->wall, page->layout);

  strips.built = built;
  strips.rows = rows;
  strips.ends = ends;
  strips.drawing = drawing_new ();
  for (guint i = 0; i < strips.n; i++)
    add_course (&strips, layout_course (page->layout, strips.first + i), runs);
  drawing_finish (strips.drawing);
  return strips.drawing;
}
