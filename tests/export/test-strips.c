#include "export/strips.h"

#include <string.h>

#include "model/built-edit.h"
#include "paint/ink.h"
#include "paint/sample.h"

static Page
page_of (const Sample *sample, const char *paper)
{
  g_autoptr (GError) error = NULL;
  Page page;

  page_set (&page, sample->project, sample_wall (sample), sample->layout, FALSE, 0, paper, &error);
  g_assert_no_error (error);
  return page;
}

static guint
n_of_style (const Drawing *drawing, Style style)
{
  guint n = 0;

  for (guint i = 0; i < drawing->marks->len; i++)
    n += drawing_mark (drawing, i)->style == (int) style;
  return n;
}

/* Pieces that a cut between two parts of the wall runs through are on the pages of both. */
static guint
n_across (const Sample *sample, guint parts)
{
  const Wall *wall = sample_wall (sample);
  guint n = 0;

  for (guint i = 0; i < sample->layout->pieces->len; i++)
    for (guint part = 1; part < parts; part++)
      {
        const Piece *piece = layout_piece (sample->layout, i);
        const Length cut = (Length) ((gint64) wall->length * part / parts);
        n += piece->x < cut && piece->x + piece->length > cut;
      }
  return n;
}

static void
test_every_piece (gconstpointer data)
{
  static const guint parts[N_SAMPLES] = { 1, 1, 1, 2, 1, 1, 1 };
  const int kind = GPOINTER_TO_INT (data);
  g_auto (Sample) sample = sample_new ((SampleKind) kind);
  const Page page = page_of (&sample, "A4");
  guint pieces = 0;

  g_assert_cmpuint (strips_n_pages (&page), >, 0);
  for (guint number = 0; number < strips_n_pages (&page); number++)
    {
      g_autoptr (Drawing) drawing = strips_page (&page, number);
      pieces += n_of_style (drawing, STYLE_PIECE) + n_of_style (drawing, STYLE_PIECE_CUT);
    }
  g_assert_cmpuint (pieces, ==, sample.layout->pieces->len + n_across (&sample, parts[kind]));
}

static void
test_within_the_field (gconstpointer data)
{
  g_auto (Sample) sample = sample_new ((SampleKind) GPOINTER_TO_INT (data));
  const Page page = page_of (&sample, "A4");
  Ink *ink = ink_new (NULL);

  for (guint number = 0; number < strips_n_pages (&page); number++)
    {
      g_autoptr (Drawing) drawing = strips_page (&page, number);
      for (guint i = 0; i < drawing->marks->len; i++)
        {
          const Mark *mark = drawing_mark (drawing, i);
          InkText text;
          for (guint k = 0; k < mark->n_points; k++)
            {
              const MarkPoint *point = drawing_points (drawing, mark) + k;
              g_assert_cmpfloat (point->dx, >=, page.field.x0);
              g_assert_cmpfloat (point->dx, <=, page.field.x1);
              g_assert_cmpfloat (point->dy, >=, page.field.y0);
              g_assert_cmpfloat (point->dy, <=, page.field.y1);
            }
          if (!ink_place_text (ink, drawing, mark, &page_frame_view, THEME_PAPER, &text))
            continue;
          g_assert_cmpfloat (text.x, >=, page.field.x0);
          g_assert_cmpfloat (text.x + text.width, <=, page.field.x1);
          g_assert_cmpfloat (text.y + text.height, <=, page.field.y1);
        }
    }
  ink_free (ink);
}

static gboolean
has_text (const Drawing *drawing, Style style, const char *text)
{
  for (guint i = 0; i < drawing->marks->len; i++)
    {
      const Mark *mark = drawing_mark (drawing, i);
      if (mark->style == (int) style && strcmp (drawing_text (drawing, mark), text) == 0)
        return TRUE;
    }
  return FALSE;
}

/* 6 m of whole units of 600 and joints of 2 mm: perpends at 601, 1203 ... in courses that start
 * with a whole one. */
static void
test_numbers (void)
{
  g_auto (Sample) sample = sample_new (SAMPLE_BARE);
  const Page page = page_of (&sample, "A4");
  g_autoptr (Drawing) drawing = strips_page (&page, 0);
  static const struct
  {
    Style style;
    const char *text;
  } cases[] = {
    { STYLE_STRIP_NAME, "Course 1" },    { STYLE_STRIP_NAME, "Course 12" },
    { STYLE_STRIP_NUMBER, "25 to 225" }, { STYLE_STRIP_NUMBER, "0" },
    { STYLE_STRIP_NUMBER, "6000" },      { STYLE_STRIP_WHOLE, "600" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    g_assert_cmpint (has_text (drawing, cases[i].style, cases[i].text), ==, TRUE);
  for (guint i = 0; i < sample.layout->pieces->len; i++)
    {
      const Piece *piece = layout_piece (sample.layout, i);
      char text[LENGTH_TEXT_SIZE];
      if (piece->x + piece->length == sample_wall (&sample)->length)
        continue;
      length_text (piece->x + piece->length + LENGTH_MM (1), text);
      g_assert_cmpint (has_text (drawing, STYLE_STRIP_NUMBER, text), ==, TRUE);
    }
}

static void
test_subjects (void)
{
  g_auto (Sample) street = sample_new (SAMPLE_STREET), wide = sample_new (SAMPLE_LONG);
  const Page page = page_of (&street, "A4"), far = page_of (&wide, "A4");
  g_autofree char *one = strips_subject (&page, 0);
  g_autofree char *first = strips_subject (&far, 0), *last = strips_subject (&far, 3);

  g_assert_cmpuint (strips_n_pages (&page), ==, 1);
  g_assert_cmpstr (one, ==, "Courses 1 to 13");
  g_assert_cmpuint (strips_n_pages (&far), ==, 4);
  g_assert_cmpstr (first, ==, "Courses 1 to 13, from 0 to 10000");
  g_assert_cmpstr (last, ==, "Courses 14 to 16, from 10000 to 20000");
}

/* Of a course that stands its strip says so, and how far its top is off: 225 and 427 were planned,
 * 16 mm are allowed. */
static void
test_standing (void)
{
  g_auto (Sample) sample = sample_begun (SAMPLE_BARE, 3);
  const Length left[] = { LENGTH_MM (231), LENGTH_MM (451) }, right = LENGTH_MM (223);

  sample_take (&sample, built_set_top (sample_wall (&sample), 1, &left[0], &right, NULL));
  sample_take (&sample, built_set_top (sample_wall (&sample), 2, &left[1], NULL, NULL));
  const Page page = page_of (&sample, "A4");
  g_autoptr (Drawing) drawing = strips_page (&page, 0), frame = page_frame (&page, 2, "Courses");
  guint standing = 0;

  for (guint i = 0; i < sample.layout->pieces->len; i++)
    standing += layout_piece (sample.layout, i)->course <= 3;
  g_assert_cmpuint (n_of_style (drawing, STYLE_STANDING) + n_of_style (drawing, STYLE_STANDING_CUT),
                    ==, standing);
  g_assert_true (has_text (drawing, STYLE_STRIP_NUMBER, "laid, top +6 / −2"));
  g_assert_true (has_text (drawing, STYLE_STRIP_OVER, "laid, top ! +24"));
  g_assert_true (has_text (drawing, STYLE_STRIP_NUMBER, "laid"));
  g_assert_true (has_text (frame, STYLE_SHEET_CAPTION, "laid to course 3"));
  g_assert_true (has_text (frame, STYLE_SHEET_CAPTION,
                           "Figures with a sign: measured less planned, mm. A filled mark or “!”: "
                           "more than its limit."));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (int kind = 0; kind < N_SAMPLES; kind++)
    {
      g_autofree char *every = g_strdup_printf ("/strips/every-piece/%s", sample_words[kind]);
      g_autofree char *within = g_strdup_printf ("/strips/within-the-field/%s", sample_words[kind]);
      g_test_add_data_func (every, GINT_TO_POINTER (kind), test_every_piece);
      g_test_add_data_func (within, GINT_TO_POINTER (kind), test_within_the_field);
    }
  g_test_add_func ("/strips/numbers-are-the-perpends", test_numbers);
  g_test_add_func ("/strips/subjects", test_subjects);
  g_test_add_func ("/strips/what-stands", test_standing);
  return g_test_run ();
}
