/* test-stands.c - what stands stays, and the rest is laid from there
 *
 * A law for every wall: to write down how far it is laid changes nothing of its layout. */
#include "bond/stands.h"

#include <string.h>

#include "any-top.h"
#include "bond/gauge.h"
#include "bond/lay.h"
#include "check-layout.h"
#include "model/built-edit.h"
#include "sanitized.h"

/* Some hundred lays each; sanitizers look at a part. */
#define N_WALLS (SANITIZED ? 40 : 150)
#define MM(mm) LENGTH_MM (mm)

static void
assert_sound (const Wall *wall, const Block *block, const Layout *layout, guint64 seed)
{
  g_autofree char *fault = check_layout (wall, block, layout);

  if (fault != NULL)
    {
      g_autofree char *text = any_wall_text (wall, block);

      g_test_message ("wall %" G_GUINT64_FORMAT ": %s", seed, text);
    }
  g_assert_cmpstr (fault, ==, NULL);
}

/* Every third has a sloped or stepped top, or a stepped footing. */
static AnyWall
made_up (guint64 seed)
{
  AnyWall any = any_wall (seed);

  if (seed % 3 == 1 && !any_top (seed, any.wall, &any.block))
    {
      any_wall_clear (&any);
      any = any_wall (seed);
    }
  return any;
}

/* The wall laid up to a course, as the layout has it. */
static Wall *
up_to (const Wall *wall, const Block *block, const Layout *layout, gint32 courses)
{
  g_autoptr (GArray) laid = stands_of_layout (layout);
  g_autoptr (GError) error = NULL;
  Wall *next = built_set_courses (wall, courses, laid, NULL, &error);
  g_autofree char *fault = NULL;

  g_assert_no_error (error);
  fault = wall_fault (next, block, NULL);
  g_assert_cmpstr (fault, ==, NULL);
  return next;
}

static void
assert_same_piece (const Piece *p, const Piece *q)
{
  g_assert_cmpint (p->course, ==, q->course);
  g_assert_cmpint (p->number, ==, q->number);
  g_assert_cmpint (p->segment, ==, q->segment);
  g_assert_cmpint (p->shape, ==, q->shape);
  g_assert_cmpint (p->pinned, ==, q->pinned);
  g_assert_cmpint (p->x, ==, q->x);
  g_assert_cmpint (p->length, ==, q->length);
  g_assert_cmpint (p->bottom, ==, q->bottom);
  g_assert_cmpint (p->height, ==, q->height);
}

static void
assert_same (const Layout *a, const Layout *b, gint32 standing)
{
  g_assert_cmpuint (a->pieces->len, ==, b->pieces->len);
  for (guint i = 0; i < a->pieces->len; i++)
    {
      assert_same_piece (layout_piece (a, i), layout_piece (b, i));
      g_assert_cmpint (layout_piece (b, i)->stands, ==, layout_piece (b, i)->course <= standing);
    }
  g_assert_cmpuint (layout_hash (a), ==, layout_hash (b));
  g_assert_cmpuint (a->breaches->len, ==, b->breaches->len);
  g_assert_cmpint (a->proof.cuts, ==, b->proof.cuts);
  g_assert_cmpint (a->proof.cuts_at_least, ==, b->proof.cuts_at_least);
}

static gint32
any_course (AnyRandom *random, const Layout *layout)
{
  return (gint32) any_between (random, 1, layout->courses->len);
}

/* Written down in two steps, with a look at the wall between. */
static void
test_nothing_changes (void)
{
  guint walls = 0;

  for (guint64 seed = 0; seed < N_WALLS; seed++)
    {
      g_auto (AnyWall) any = made_up (seed);
      AnyRandom random = { seed };

      if (seed % 4 == 0)
        any_pins (seed, any.wall, &any.block);
      g_autoptr (Layout) before = lay_wall (any.wall, &any.block, NULL);
      if (before->courses->len == 0)
        continue;
      gint32 first = any_course (&random, before), second = any_course (&random, before);
      g_autoptr (Wall) part = up_to (any.wall, &any.block, before, MIN (first, second));
      g_autoptr (Layout) during = lay_wall (part, &any.block, NULL);
      assert_same (before, during, MIN (first, second));
      assert_sound (part, &any.block, during, seed);
      g_autoptr (Wall) more = up_to (part, &any.block, during, MAX (first, second));
      g_autoptr (Layout) after = lay_wall (more, &any.block, NULL);
      assert_same (before, after, MAX (first, second));
      walls++;
    }
  g_assert_cmpuint (walls, >, N_WALLS / 2);
}

/* --- held fast --- */

/* Without what it was laid over: all that stands is held fast from the first. */
static Wall *
held_fast (const Wall *wall)
{
  Wall *next = wall_copy (wall);

  for (guint i = 0; i < next->built->laid->len; i++)
    g_array_index (next->built->laid, LaidCourse, i).given &= ~(guint) LAID_OVER;
  return next;
}

/* Of what stands no piece is another; what is above is laid as well as it was, or better, which is
 * seen where the first layout was proven. */
static void
test_held_fast (void)
{
  guint worse = 0;

  for (guint64 seed = 0; seed < N_WALLS; seed++)
    {
      g_auto (AnyWall) any = made_up (seed);
      AnyRandom random = { seed };
      g_autoptr (Layout) before = lay_wall (any.wall, &any.block, NULL);

      if (before->courses->len == 0)
        continue;
      gint32 n = any_course (&random, before);
      g_autoptr (Wall) up = up_to (any.wall, &any.block, before, n);
      g_autoptr (Wall) held = held_fast (up);
      g_autoptr (Layout) after = lay_wall (held, &any.block, NULL);
      assert_sound (held, &any.block, after, seed);
      g_assert_cmpint (after->held, ==, n);
      for (guint i = 0; i < before->pieces->len && layout_piece (before, i)->course <= n; i++)
        {
          Piece piece = *layout_piece (after, i);

          piece.pinned = layout_piece (before, i)->pinned;
          assert_same_piece (layout_piece (before, i), &piece);
          g_assert_true (piece.stands);
        }
      if (before->proof.proven && any.wall->laying.aim != AIM_REGULAR)
        {
          g_assert_cmpuint (after->breaches->len, >=, before->breaches->len);
          if (after->breaches->len == before->breaches->len)
            g_assert_cmpint (after->n_cut, >=, before->n_cut);
        }
      worse += after->breaches->len > before->breaches->len || after->n_cut > before->n_cut;
    }
  g_test_message ("%u of %d walls are laid worse than before", worse, N_WALLS);
  g_assert_cmpuint (worse, <, N_WALLS / 15);
}

/* --- changes --- */

/* In a standing course every piece begins where one was written down, where its run begins, or
 * beside a joint that has become too wide; and nothing written down that a run spans is missed. */
static void
assert_perpends_kept (const Wall *wall, const Block *block, const Layout *layout)
{
  const Length head = laying_resolve (&wall->laying, block).head;

  for (gint32 c = 1; c <= wall_standing (wall); c++)
    {
      const Course *course = layout_course (layout, (guint) c - 1);
      const GArray *perpends = built_course (wall->built, c)->perpends;

      for (gint32 i = course->first; i < course->first + course->n_pieces; i++)
        {
          const Piece *piece = layout_piece (layout, (guint) i), *before = NULL;
          gboolean known = FALSE;

          for (gint32 k = course->first; k < i; k++)
            if (layout_piece (layout, (guint) k)->segment == piece->segment)
              before = layout_piece (layout, (guint) k);
          for (guint k = 0; k < perpends->len; k++)
            {
              Length x = g_array_index (perpends, LaidPerpend, k).x;

              known = known || x == piece->x;
              /* None within a piece, but for one of another strip. */
              if (piece->stands && g_array_index (perpends, LaidPerpend, k).z == PERPEND_ALL)
                g_assert_false (x - head > piece->x && x < piece->x + piece->length
                                && course->n_pieces == 1);
            }
          if (before != NULL && piece->stands && before->stands)
            g_assert_true (known);
        }
    }
}

/* A piece as it was is there, by its place and size. */
static gboolean
has_piece (const Layout *layout, const Piece *like)
{
  const Course *course = layout_course (layout, (guint) like->course - 1);

  for (gint32 i = course->first; i < course->first + course->n_pieces; i++)
    {
      const Piece *piece = layout_piece (layout, (guint) i);

      if (piece->x == like->x && piece->length == like->length && piece->bottom == like->bottom
          && piece->height == like->height)
        return TRUE;
    }
  return FALSE;
}

/* What is changed above what stands leaves it as it is. */
static void
test_change_above (void)
{
  guint changed = 0;

  for (guint64 seed = 0; seed < N_WALLS; seed++)
    {
      g_auto (AnyWall) any = made_up (seed);
      AnyRandom random = { seed };
      g_autoptr (Layout) before = lay_wall (any.wall, &any.block, NULL);
      Laying laying = laying_resolve (&any.wall->laying, &any.block);
      g_autofree char *fault = NULL;

      if (before->courses->len < 3)
        continue;
      gint32 n = (gint32) any_between (&random, 1, before->courses->len - 2);
      g_autoptr (Wall) up = up_to (any.wall, &any.block, before, n);
      Length top = gauge_top (up, &any.block, &laying, n);
      Opening window = opening_default (OPENING_WINDOW);

      window.id.n = 4711;
      window.key = g_strdup ("new");
      window.sill = top + (Length) any_between (&random, 0, MM (200));
      window.x = (Length) any_between (&random, 0, MAX (up->length - MM (600), 1));
      window.width = (Length) any_between (&random, MM (200), MM (1500));
      window.height = (Length) any_between (&random, MM (100), MM (1500));
      g_array_append_val (up->openings, window);
      fault = wall_fault (up, &any.block, NULL);
      if (fault != NULL)
        continue;
      g_autoptr (Layout) after = lay_wall (up, &any.block, NULL);
      assert_sound (up, &any.block, after, seed);
      assert_perpends_kept (up, &any.block, after);
      for (guint i = 0; i < before->pieces->len && layout_piece (before, i)->course <= n; i++)
        {
          const Piece *was = layout_piece (before, i), *is = layout_piece (after, i);

          g_assert_cmpint (was->x, ==, is->x);
          g_assert_cmpint (was->length, ==, is->length);
          g_assert_cmpint (was->bottom, ==, is->bottom);
          g_assert_cmpint (was->height, ==, is->height);
          g_assert_true (is->stands);
        }
      changed += layout_hash (before) != layout_hash (after);
      /* And from there nothing changes by writing down more. */
      g_autoptr (Wall) more
          = up_to (up, &any.block, after, (gint32) any_between (&random, n, after->courses->len));
      g_autoptr (Layout) again = lay_wall (more, &any.block, NULL);
      assert_same (after, again, wall_standing (more));
    }
  g_test_message ("%u changed", changed);
  g_assert_cmpuint (changed, >, N_WALLS / 10);
}

/* Any figure of the site, one that is not there, as long as the wall is one. What stands keeps its
 * perpends, and most of its pieces; what was taken back gives the same layout again. */
static void
test_figures (void)
{
  guint taken = 0, refused = 0, kept = 0, all = 0;

  for (guint64 seed = 0; seed < N_WALLS; seed++)
    {
      g_auto (AnyWall) any = made_up (seed);
      AnyRandom random = { seed };
      g_autoptr (Layout) before = lay_wall (any.wall, &any.block, NULL);

      if (before->courses->len == 0)
        continue;
      gint32 n = any_course (&random, before), course = (gint32) any_between (&random, 1, n);
      g_autoptr (Wall) up = up_to (any.wall, &any.block, before, n);
      g_autoptr (Wall) next = NULL;
      Length off = (Length) any_between (&random, -MM (15), MM (15)), figure;
      OpeningFigure which = (OpeningFigure) any_between (&random, 0, N_FIGURES - 1);
      const Opening *opening
          = up->openings->len > 0
                ? wall_opening_at (up, (guint) any_between (&random, 0, up->openings->len - 1))
                : NULL;
      gint64 kind = any_between (&random, 0, 2);

      if (kind == 0)
        {
          figure = up->length + off;
          next = built_set_length (up, &figure);
        }
      else if (kind == 1 && opening != NULL)
        {
          figure = opening_figure (opening, which) + off;
          next = built_set_opening (up, opening->id, which, &figure, NULL);
        }
      else
        {
          const Length right
              = layout_course (before, (guint) course - 1)->bottom + any.block.height + off / 2;

          figure = layout_course (before, (guint) course - 1)->bottom + any.block.height + off;
          next = built_set_top (up, course, &figure, seed % 2 ? &right : NULL, NULL);
        }
      g_autofree char *fault = wall_fault (next, &any.block, NULL);
      if (fault != NULL)
        {
          refused++;
          continue;
        }
      taken++;
      g_autoptr (Layout) after = lay_wall (next, &any.block, NULL);
      assert_sound (next, &any.block, after, seed);
      assert_perpends_kept (next, &any.block, after);
      for (guint i = 0; i < before->pieces->len && layout_piece (before, i)->course <= n; i++)
        {
          Piece like = *layout_piece (before, i);

          like.bottom += layout_course (after, (guint) like.course - 1)->bottom
                         - layout_course (before, (guint) like.course - 1)->bottom;
          kept += has_piece (after, &like);
          all++;
        }
      g_autoptr (Layout) again = lay_wall (up, &any.block, NULL);
      assert_same (before, again, n);
    }
  g_test_message ("%u taken, %u refused; %u of %u pieces as they were", taken, refused, kept, all);
  g_assert_cmpuint (taken, >, N_WALLS / 2);
  g_assert_cmpuint (kept, >, all * 8 / 10);
}

/* What a file may say and nobody laid: perpends anywhere, on top of each other but for a hair, in
 * openings, of strips that are not there. The wall is laid, and laid soundly. */
static void
test_any_perpends (void)
{
  guint walls = 0;

  for (guint64 seed = 0; seed < N_WALLS; seed++)
    {
      g_auto (AnyWall) any = made_up (seed);
      AnyRandom random = { seed };
      const gint32 n = (gint32) any_between (&random, 1, 6);
      g_autofree char *fault = NULL;

      any.wall->built = built_new ();
      any.wall->built->courses = n;
      for (gint32 i = 1; i <= n; i++)
        {
          LaidCourse laid = laid_course_new (i);

          for (LaidPerpend at = { 0, PERPEND_ALL }; any_percent (&random, 85);)
            {
              at.x += (Length) any_between (&random, 1,
                                            any_percent (&random, 30) ? 40 : any.block.length * 2);
              at.z = any_percent (&random, 20) ? (Length) any_between (&random, 0, any.wall->height)
                                               : PERPEND_ALL;
              g_array_append_val (laid.perpends, at);
            }
          if (any_percent (&random, 20))
            {
              laid.given = LAID_OVER;
              laid.over = (gint32) any_between (&random, 0, i - 1);
            }
          g_array_append_val (any.wall->built->laid, laid);
        }
      fault = wall_fault (any.wall, &any.block, NULL);
      if (fault != NULL)
        continue;
      g_autoptr (Layout) layout = lay_wall (any.wall, &any.block, NULL);
      assert_sound (any.wall, &any.block, layout, seed);
      walls++;
    }
  g_assert_cmpuint (walls, >, N_WALLS / 2);
}

/* --- by hand --- */

/* 3000 x 1028: five courses of 600 x 200 on beds of 20 and 2, dry heads; half bond. */
static Wall *
plain (gint32 standing)
{
  Block block = block_default ();
  g_autoptr (Wall) wall = wall_new ();
  Wall *up;

  wall->key = g_strdup ("w1");
  wall->length = MM (3000);
  wall->height = MM (1028);
  wall->laying.given = LAYING_HEAD | LAYING_AIM;
  wall->laying.aim = AIM_REGULAR;
  wall->laying.head = 0;
  g_autoptr (Layout) layout = lay_wall (wall, &block, NULL);
  up = up_to (wall, &block, layout, standing);
  block_clear (&block);
  return up;
}

static char *
lengths_of (const Layout *layout, guint number)
{
  GString *text = g_string_new (NULL);
  const Course *course = layout_course (layout, number - 1);

  for (gint32 i = 0; i < course->n_pieces; i++)
    g_string_append_printf (
        text, "%s%g", i > 0 ? " " : "",
        length_to_mm (layout_piece (layout, (guint) (course->first + i))->length));
  return g_string_free (text, FALSE);
}

/* The wall measured longer or shorter at its right end: the last pieces have it, up to a unit; the
 * rest is a wide joint, or laid anew. */
static void
test_length_by_hand (void)
{
  static const struct
  {
    double length;
    const char *first, *second;
    double packed; /* in the first course */
  } rows[] = {
    { 3000, "600 600 600 600 600", "300 600 600 600 600 300", 0 },
    { 3012, "600 600 600 600 600", "300 600 600 600 600 312", 12 },
    { 2990, "600 600 600 600 590", "300 600 600 600 600 290", 0 },
    { 3149, "600 600 600 600 600", "300 600 600 600 600 449", 149 },
    { 3400, "600 600 600 600 600 400", "300 600 600 600 600 600", 0 },
    { 2390, "600 600 600 590", "300 600 600 600 290", 0 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      Block block = block_default ();
      const Length length = length_from_mm (rows[i].length);
      g_autoptr (Wall) up = plain (2);
      g_autoptr (Wall) wall = built_set_length (up, &length);
      g_autoptr (Layout) layout = lay_wall (wall, &block, NULL);
      g_autofree char *first = lengths_of (layout, 1), *second = lengths_of (layout, 2);
      Length packed = 0;

      g_test_message ("%g", rows[i].length);
      g_assert_cmpstr (first, ==, rows[i].first);
      g_assert_cmpstr (second, ==, rows[i].second);
      for (guint k = 0; k < layout->packings->len; k++)
        if (g_array_index (layout->packings, Packing, k).course == 1)
          packed += g_array_index (layout->packings, Packing, k).length;
      g_assert_cmpint (packed, ==, length_from_mm (rows[i].packed));
      assert_sound (wall, &block, layout, i);
      block_clear (&block);
    }
}

/* A perpend that falls into an opening is passed over; what is left beside it is cut at the jambs,
 * by hand. */
static void
test_opening_in_what_stands (void)
{
  Block block = block_default ();
  g_autoptr (Wall) wall = plain (2);
  Opening door = opening_default (OPENING_DOOR);
  g_autofree char *first = NULL, *second = NULL;

  door.id.n = 1;
  door.key = g_strdup ("o1");
  door.x = MM (1000);
  door.width = MM (900);
  door.height = MM (900);
  g_array_append_val (wall->openings, door);
  g_autoptr (Layout) layout = lay_wall (wall, &block, NULL);
  first = lengths_of (layout, 1);
  second = lengths_of (layout, 2);
  g_assert_cmpstr (first, ==, "600 400 500 600");
  g_assert_cmpstr (second, ==, "300 600 100 200 600 300");
  assert_sound (wall, &block, layout, 0);
  block_clear (&block);
}

/* Pins in a course that stands: one that is as it stands is met, another is told. */
static void
test_pins (void)
{
  Block block = block_default ();
  g_autoptr (Wall) up = plain (2);
  g_autoptr (Wall) wall = held_fast (up);
  const Pin pins[] = { { 1, MM (600), 0, { NULL, NULL } },
                       { 1, MM (1200), MM (600), { NULL, NULL } },
                       { 2, MM (600), 0, { NULL, NULL } },
                       { 3, MM (400), 0, { NULL, NULL } } };
  const PinFate fates[] = { PIN_MET, PIN_MET, PIN_STANDS, PIN_MET };

  for (guint i = 0; i < G_N_ELEMENTS (pins); i++)
    wall_put_pin (wall, &pins[i]);
  g_autoptr (Layout) layout = lay_wall (wall, &block, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (pins); i++)
    g_assert_cmpint (g_array_index (layout->pins, LaidPin, i).fate, ==, fates[i]);
  assert_sound (wall, &block, layout, 0);
  block_clear (&block);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/stands/nothing-changes", test_nothing_changes);
  g_test_add_func ("/stands/held-fast", test_held_fast);
  g_test_add_func ("/stands/change-above", test_change_above);
  g_test_add_func ("/stands/figures", test_figures);
  g_test_add_func ("/stands/any-perpends", test_any_perpends);
  g_test_add_func ("/stands/length-by-hand", test_length_by_hand);
  g_test_add_func ("/stands/opening-in-what-stands", test_opening_in_what_stands);
  g_test_add_func ("/stands/pins", test_pins);
  return g_test_run ();
}
