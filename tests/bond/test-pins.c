/* test-pins.c - what was set by hand is kept, and the rest is laid round it
 *
 * Whether a pin can be met is found here from the laid wall alone. */
#include "bond/lay.h"

#include "any-wall.h"
#include "check-layout.h"
#include "sanitized.h"

/* Sanitizers look at a part. */
#define SHARE_OF (SANITIZED ? 20 : 1)
#define N_WALLS (600 / SHARE_OF)
#define N_LAWS (200 / SHARE_OF)

/* --- small walls, by hand --- */

/* Units of 600 x 200, joints of 2, a levelling bed of 20; a number of whole courses. */
static Wall *
plain_wall (int length, int courses)
{
  Wall *wall = wall_new ();
  wall->length = LENGTH_MM (length);
  wall->height = LENGTH_MM (20 + courses * 202 - 2);
  return wall;
}

static void
pin (Wall *wall, gint32 course, int x, int length)
{
  wall_put_pin (wall, &(Pin){ course, LENGTH_MM (x), LENGTH_MM (length), { NULL, NULL } });
}

static Layout *
lay (const Wall *wall)
{
  Block block = block_default ();
  Layout *layout = lay_wall (wall, &block, NULL);
  g_autofree char *fault = check_layout (wall, &block, layout);
  g_assert_cmpstr (fault, ==, NULL);
  block_clear (&block);
  return layout;
}

/* "600 300* 600": lengths of a course, with a star behind a pinned piece and a bar before one whose
 * face is pinned. */
static void
assert_course (const Layout *layout, gint32 number, const char *expected)
{
  const Course *course = layout_course (layout, (guint) number - 1);
  g_autoptr (GString) text = g_string_new (NULL);
  for (gint32 i = 0; i < course->n_pieces; i++)
    {
      const Piece *piece = layout_piece (layout, (guint) (course->first + i));
      char length[LENGTH_TEXT_SIZE];
      g_string_append_printf (
          text, "%s%s%s%s", i > 0 ? " " : "", piece->pinned == PINNED_FACE ? "|" : "",
          length_text (piece->length, length), piece->pinned == PINNED_PIECE ? "*" : "");
      g_assert_cmpint (piece->segment, ==, 0);
    }
  g_assert_cmpstr (text->str, ==, expected);
}

static void
test_perpend (void)
{
  g_autoptr (Wall) wall = plain_wall (2406, 1);
  pin (wall, 1, 752, 0);
  g_autoptr (Layout) layout = lay (wall);
  /* 750 beside 600 would leave 148, too short: two cuts. 1654 are two whole units and 450. */
  g_assert_cmpint (layout->n_cut, ==, 3);
  g_assert_cmpint (layout->breaches->len, ==, 0);
  g_assert_cmpint (layout_piece (layout, 2)->x, ==, LENGTH_MM (752));
  g_assert_cmpint (layout_piece (layout, 2)->pinned, ==, PINNED_FACE);
}

static void
test_piece (void)
{
  g_autoptr (Wall) wall = plain_wall (2406, 1);
  pin (wall, 1, 602, 300);
  g_autoptr (Layout) layout = lay (wall);
  /* 2406 less 602 + 302 leaves 1502: two whole units and 298. */
  g_assert_cmpint (layout->n_cut, ==, 2);
  g_assert_cmpint (layout->n_whole, ==, 3);
  g_assert_cmpint (layout_piece (layout, 1)->length, ==, LENGTH_MM (300));
  g_assert_cmpint (layout_piece (layout, 1)->pinned, ==, PINNED_PIECE);
}

/* The course over a pinned start is laid for it: half bond, as the pin left it. */
static void
test_start_of_a_course (void)
{
  g_autoptr (Wall) wall = plain_wall (2406, 3);
  pin (wall, 2, 0, 300);
  g_autoptr (Layout) layout = lay (wall);
  assert_course (layout, 1, "600 600 600 600");
  assert_course (layout, 3, "600 600 600 600");
  g_assert_cmpint (layout->breaches->len, ==, 0);
  g_assert_cmpint (layout_piece (layout, 4)->length, ==, LENGTH_MM (300));
  g_assert_cmpint (layout_piece (layout, 4)->pinned, ==, PINNED_PIECE);
  g_assert_cmpint (layout->proof.cuts, ==, 2);
}

/* A pin that breaks a rule is kept, and the breach is told. */
static void
test_pin_breaks_a_rule (void)
{
  g_autoptr (Wall) wall = plain_wall (2406, 2);
  pin (wall, 1, 602, 0);
  pin (wall, 2, 652, 0);
  g_autoptr (Layout) layout = lay (wall);
  g_assert_cmpint (layout->breaches->len, ==, 1);
  const Breach *breach = &g_array_index (layout->breaches, Breach, 0);
  g_assert_cmpint (breach->kind, ==, BREACH_MIN_LAP);
  g_assert_cmpint (breach->course, ==, 2);
  g_assert_cmpint (breach->x, ==, LENGTH_MM (651));
  g_assert_cmpint (breach->is, ==, LENGTH_MM (50));
}

static void
test_short_pinned_piece (void)
{
  g_autoptr (Wall) wall = plain_wall (2406, 1);
  pin (wall, 1, 602, 100);
  g_autoptr (Layout) layout = lay (wall);
  g_assert_cmpint (layout->breaches->len, ==, 1);
  const Breach *breach = &g_array_index (layout->breaches, Breach, 0);
  g_assert_cmpint (breach->kind, ==, BREACH_MIN_PIECE);
  g_assert_cmpint (breach->x, ==, LENGTH_MM (602));
}

/* A course all of whose pieces are pinned is laid so, however odd. */
static void
test_whole_course (void)
{
  g_autoptr (Wall) wall = plain_wall (1804, 1);
  pin (wall, 1, 0, 500);
  pin (wall, 1, 502, 600);
  pin (wall, 1, 1104, 200);
  pin (wall, 1, 1306, 498);
  g_autoptr (Layout) layout = lay (wall);
  assert_course (layout, 1, "500* 600* 200* 498*");
  g_assert_true (layout->proof.proven);
  g_assert_cmpint (layout->proof.cuts, ==, 3);
}

typedef struct
{
  gint32 course;
  int x, length;
  PinFate fate;
  int at;
} Case;

/* On a wall of 2406 x 2 courses with a hole of 400 from 1000 on over all of it: runs 0 .. 1000 and
 * 1400 .. 2406. In the order of the list. */
static const Case cases[] = {
  { 1, 602, 0, PIN_MET, 0 },         { 1, 0, 0, PIN_MET, 0 },
  { 3, 602, 0, PIN_NO_COURSE, 0 },   { 1, 1200, 0, PIN_NO_WALL, 0 },
  { 1, 1000, 0, PIN_NO_WALL, 0 },    { 1, 2406, 0, PIN_NO_WALL, 0 },
  { 2, 9000, 0, PIN_NO_WALL, 0 },    { 1, 2, 0, PIN_AT_END, 0 },
  { 1, 998, 0, PIN_MET, 0 },         { 1, 1402, 0, PIN_AT_END, 1400 },
  { 2, 510, 590, PIN_AT_END, 1000 }, { 2, 509, 490, PIN_AT_END, 1000 },
  { 2, 502, 498, PIN_MET, 0 },       { 2, 300, 601, PIN_TOO_LONG, 0 },
  { 2, 400, 200, PIN_AGAINST, 502 }, { 2, 600, 0, PIN_AGAINST, 502 },
  { 2, 501, 0, PIN_AGAINST, 502 },   { 2, 500, 0, PIN_AGAINST, 502 },
  { 2, 499, 0, PIN_MET, 0 },         { 1, 604, 0, PIN_AGAINST, 602 },
  { 1, 605, 0, PIN_MET, 0 },         { 2, 1400, 600, PIN_MET, 0 },
  { 2, 2002, 404, PIN_MET, 0 },
};

static void
test_fates (void)
{
  g_autoptr (Wall) wall = plain_wall (2406, 2);
  Opening hole = opening_default (OPENING_VOID);
  hole.x = LENGTH_MM (1000);
  hole.width = LENGTH_MM (400);
  hole.sill = 0;
  hole.height = wall->height;
  g_array_append_val (wall->openings, hole);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    pin (wall, cases[i].course, cases[i].x, cases[i].length);
  g_autoptr (Layout) layout = lay (wall);
  g_assert_cmpuint (layout->pins->len, ==, G_N_ELEMENTS (cases));
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const LaidPin *laid = &g_array_index (layout->pins, LaidPin, i);
      g_test_message ("course %d, %d + %d", cases[i].course, cases[i].x, cases[i].length);
      g_assert_cmpint (laid->fate, ==, cases[i].fate);
      if (laid->fate == PIN_AT_END || laid->fate == PIN_AGAINST)
        g_assert_cmpint (laid->at, ==, LENGTH_MM (cases[i].at));
    }
}

/* --- made-up walls --- */

static const Piece *
piece_at (const Layout *layout, const LaidPin *pin)
{
  for (guint i = 0; i < layout->pieces->len; i++)
    {
      const Piece *piece = layout_piece (layout, i);
      if (piece->course == pin->course && piece->x == pin->x && piece->segment == pin->segment)
        return piece;
    }
  return NULL;
}

/* Whether some piece of the course covers the place just right of x. */
static gboolean
is_covered (const Layout *layout, gint32 course, Length x)
{
  for (guint i = 0; i < layout->pieces->len; i++)
    {
      const Piece *piece = layout_piece (layout, i);
      if (piece->course == course && piece->x <= x && piece->x + piece->length > x)
        return TRUE;
    }
  return FALSE;
}

/* Whether a run of the course begins (or ends) there. */
static gboolean
is_end (const Layout *layout, gint32 course, Length at)
{
  for (guint i = 0; i < layout->pieces->len; i++)
    {
      const Piece *piece = layout_piece (layout, i);
      gboolean first = TRUE, last = TRUE;
      if (piece->course != course)
        continue;
      for (guint k = 0; k < layout->pieces->len; k++)
        {
          const Piece *other = layout_piece (layout, k);
          if (other->course != course || other->segment != piece->segment)
            continue;
          first = first && other->x >= piece->x;
          last = last && other->x <= piece->x;
        }
      if ((first && piece->x == at) || (last && piece->x + piece->length == at))
        return TRUE;
    }
  return FALSE;
}

/* Two pins of one run that no pieces can meet both. */
static gboolean
contradict (const LaidPin *a, const LaidPin *b, Length joint)
{
  Length faces_a[] = { a->x, a->x + a->length + joint };
  Length faces_b[] = { b->x, b->x + b->length + joint };
  for (int i = 0; i < (a->length > 0 ? 2 : 1); i++)
    for (int k = 0; k < (b->length > 0 ? 2 : 1); k++)
      if (faces_a[i] != faces_b[k] && ABS (faces_a[i] - faces_b[k]) <= joint)
        return TRUE;
  return (a->length > 0 && b->x > a->x && b->x < faces_a[1])
         || (b->length > 0 && a->x > b->x && a->x < faces_b[1]);
}

static gboolean
contradicts_one (const Layout *layout, guint i, Length joint)
{
  const LaidPin *pin = &g_array_index (layout->pins, LaidPin, i);
  for (guint k = 0; k < i; k++)
    {
      const LaidPin *other = &g_array_index (layout->pins, LaidPin, k);
      if (other->fate == PIN_MET && other->course == pin->course && other->x == pin->at
          && contradict (pin, other, joint))
        return TRUE;
    }
  return FALSE;
}

/* Kept exactly, or for a good reason not. */
static void
assert_fate (const Wall *wall, const Block *block, const Layout *layout, guint i)
{
  const LaidPin *pin = &g_array_index (layout->pins, LaidPin, i);
  Length joint = laying_resolve (&wall->laying, block).head, reach = pin->x + pin->length;
  const Piece *piece = piece_at (layout, pin);
  switch (pin->fate)
    {
    case PIN_MET:
      g_assert_nonnull (piece);
      g_assert_cmpint (piece->pinned, ==, pin->length > 0 ? PINNED_PIECE : PINNED_FACE);
      if (pin->length > 0)
        g_assert_cmpint (piece->length, ==, pin->length);
      break;
    case PIN_NO_COURSE:
      g_assert_cmpint (pin->course, >, (gint32) layout->courses->len);
      break;
    case PIN_NO_WALL:
      /* A joint may be there, between two runs. */
      g_assert_false (is_covered (layout, pin->course, pin->x)
                      && is_covered (layout, pin->course, pin->x - joint));
      break;
    case PIN_TOO_LONG:
      g_assert_cmpint (pin->length, >, block->length);
      break;
    case PIN_AT_END:
      g_assert_true (is_end (layout, pin->course, pin->at));
      if (pin->at > pin->x)
        g_assert_cmpint (reach + (pin->length > 0 ? joint : 0), >=, pin->at);
      else
        g_assert_cmpint (pin->x - joint, <=, pin->at);
      break;
    case PIN_AGAINST:
      g_assert_true (contradicts_one (layout, i, joint));
      break;
    case PIN_STANDS:
      g_assert_not_reached (); /* nothing stands */
    }
}

static void
test_any_pins (void)
{
  guint met = 0, all = 0, fates[PIN_AGAINST + 1] = { 0 };
  for (guint64 seed = 0; seed < N_WALLS; seed++)
    {
      g_auto (AnyWall) any = any_wall (seed);
      any_pins (seed, any.wall, &any.block);
      g_autofree char *wrong = wall_fault (any.wall, &any.block, NULL);
      g_assert_cmpstr (wrong, ==, NULL);
      g_autoptr (Layout) layout = lay_wall (any.wall, &any.block, NULL);
      g_autofree char *fault = check_layout (any.wall, &any.block, layout);
      if (fault)
        {
          g_autofree char *text = any_wall_text (any.wall, &any.block);
          g_test_message ("wall %" G_GUINT64_FORMAT ": %s", seed, text);
        }
      g_assert_cmpstr (fault, ==, NULL);
      g_assert_cmpuint (layout->pins->len, ==, any.wall->pins->len);
      for (guint i = 0; i < layout->pins->len; i++)
        {
          assert_fate (any.wall, &any.block, layout, i);
          fates[g_array_index (layout->pins, LaidPin, i).fate]++;
          met += g_array_index (layout->pins, LaidPin, i).fate == PIN_MET;
          all++;
        }
    }
  g_test_message ("%u of %u pins met", met, all);
  g_assert_cmpuint (met, >, all / 2);
  for (guint i = 0; i <= PIN_AGAINST; i++)
    {
      g_test_message ("fate %u: %u", i, fates[i]);
      g_assert_cmpuint (fates[i], >, 0);
    }
}

/* One that sets the beginning of a run; from behind it is in no run. */
static gboolean
sets_nothing (const Layout *layout, guint i)
{
  const LaidPin *pin = &g_array_index (layout->pins, LaidPin, i);
  return pin->fate == PIN_MET && pin->length == 0 && is_end (layout, pin->course, pin->x);
}

/* Seen from behind the same pins are met, and as well. */
static void
test_mirror (void)
{
  guint n = 0, same = 0;
  for (guint64 seed = 0; seed < N_LAWS; seed++)
    {
      g_auto (AnyWall) any = any_wall (seed);
      any_pins (seed, any.wall, &any.block);
      g_autoptr (Layout) first = lay_wall (any.wall, &any.block, NULL);
      for (guint i = first->pins->len; i-- > 0;)
        if (sets_nothing (first, i))
          g_array_remove_index (any.wall->pins, i);
      g_autoptr (Wall) mirror = any_wall_mirror (any.wall);
      g_autoptr (Layout) one = lay_wall (any.wall, &any.block, NULL);
      g_autoptr (Layout) other = lay_wall (mirror, &any.block, NULL);
      for (guint i = 0; i < one->pins->len; i++)
        {
          const LaidPin *p = &g_array_index (one->pins, LaidPin, i);
          const LaidPin *q = &g_array_index (other->pins, LaidPin, i);
          if (!sets_nothing (other, i))
            g_assert_cmpint (p->fate == PIN_MET, ==, q->fate == PIN_MET);
        }
      g_assert_cmpint (one->proof.breaches == other->proof.breaches
                           && one->proof.cuts_at_least > other->proof.cuts,
                       ==, FALSE);
      n++;
      same += one->proof.breaches == other->proof.breaches;
    }
  g_test_message ("%u of %u have as many breaches", same, n);
  g_assert_cmpuint (n - same, <=, MAX (1, n * 3 / 100));
}

/* Pinning what was laid anyway leaves it as good. */
static void
test_pin_what_is_there (void)
{
  guint n = 0, same = 0;
  for (guint64 seed = 0; seed < N_LAWS; seed++)
    {
      g_auto (AnyWall) any = any_wall (seed);
      AnyRandom random = { seed };
      any.wall->laying.given &= ~(guint) LAYING_AIM;
      g_autoptr (Layout) before = lay_wall (any.wall, &any.block, NULL);
      for (int k = 0; k < 5 && before->pieces->len > 0; k++)
        {
          const Piece *piece = layout_piece (
              before, (guint) any_between (&random, 0, (gint64) before->pieces->len - 1));
          Length length = any_percent (&random, 50) ? piece->length : 0;
          wall_put_pin (any.wall, &(Pin){ piece->course, piece->x, length, { NULL, NULL } });
        }
      g_autoptr (Layout) after = lay_wall (any.wall, &any.block, NULL);
      if (before->proof.breaches > after->proof.breaches)
        g_test_message ("wall %" G_GUINT64_FORMAT " is better now", seed);
      if (before->proof.proven && before->proof.breaches == after->proof.breaches)
        g_assert_cmpint (after->proof.cuts, >=, before->proof.cuts);
      n++;
      same += after->proof.breaches <= before->proof.breaches
              && (after->proof.breaches < before->proof.breaches
                  || after->proof.cuts <= before->proof.cuts);
      if (after->proof.breaches > before->proof.breaches
          || (after->proof.breaches == before->proof.breaches
              && after->proof.cuts > before->proof.cuts))
        g_test_message ("wall %" G_GUINT64_FORMAT ": %d/%d, with pins %d/%d", seed,
                        before->proof.breaches, before->proof.cuts, after->proof.breaches,
                        after->proof.cuts);
    }
  g_test_message ("%u of %u are as good", same, n);
  g_assert_cmpuint (n - same, <=, n * 2 / 100);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/pins/perpend", test_perpend);
  g_test_add_func ("/pins/piece", test_piece);
  g_test_add_func ("/pins/start-of-a-course", test_start_of_a_course);
  g_test_add_func ("/pins/breaks-a-rule", test_pin_breaks_a_rule);
  g_test_add_func ("/pins/short-piece", test_short_pinned_piece);
  g_test_add_func ("/pins/whole-course", test_whole_course);
  g_test_add_func ("/pins/fates", test_fates);
  g_test_add_func ("/pins/any", test_any_pins);
  g_test_add_func ("/pins/mirror", test_mirror);
  g_test_add_func ("/pins/what-is-there", test_pin_what_is_there);
  return g_test_run ();
}
