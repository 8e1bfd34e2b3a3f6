#include <string.h>

#include "export/export.h"
#include "paint/sample.h"

static void
rename_wall (Sample *sample, const char *name)
{
  Wall *wall = g_ptr_array_index (sample->project->walls, 0);

  g_free (wall->name);
  wall->name = g_strdup (name);
}

/* A take-off of one line, made by hand. */
static char *
takeoff_csv (const Sample *sample, double quantity)
{
  double walls[] = { quantity };
  TakeoffLine line = { .key = "blocks.whole",
                       .group = "Blocks",
                       .name = "Whole units",
                       .unit = "pcs",
                       .quantity = quantity,
                       .walls = walls };
  g_autoptr (GPtrArray) lines = g_ptr_array_new ();
  const Takeoff takeoff = { lines, 1, NULL };

  g_ptr_array_add (lines, &line);
  return export_takeoff_csv (sample->project, &takeoff);
}

static void
assert_header (const char *name, const char *field)
{
  g_auto (Sample) sample = sample_new (SAMPLE_BARE);

  rename_wall (&sample, name);
  g_autofree char *csv = takeoff_csv (&sample, 1);
  g_autofree char *wanted = g_strdup_printf (
      "key,name,quantity,unit,%s\r\nblocks.whole,Whole units,1,pcs,1\r\n", field);
  g_assert_cmpstr (csv, ==, wanted);
}

/* RFC 4180, 2, rules 5 to 7: fields with quotes, commas or line ends are quoted, quotes doubled.
 * Cells that begin with = + - @ or a control character are run by spreadsheets (OWASP, "CSV
 * injection", from memory). */
static void
test_names (void)
{
  static const struct
  {
    const char *name, *field;
  } cases[] = {
    { "Street side", "Street side" },
    { "", "w1" },
    { "a,b", "\"a,b\"" },
    { "5\" wall", "\"5\"\" wall\"" },
    { "two\nlines", "\"two\nlines\"" },
    { "=1+1", "'=1+1" },
    { "+1", "'+1" },
    { "-1", "'-1" },
    { "@sum", "'@sum" },
    { "\tx", "'\tx" },
    { "\rx", "\"'\rx\"" },
    { "=a,\"b\"", "\"'=a,\"\"b\"\"\"" },
    { "Straße ½", "Straße ½" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    assert_header (cases[i].name, cases[i].field);
}

static void
test_quantities (void)
{
  g_auto (Sample) sample = sample_new (SAMPLE_BARE);
  static const struct
  {
    double quantity;
    const char *text;
  } cases[] = {
    { 0, "0" },
    { 108, "108" },
    { 0.21, "0.21" },
    { 44.6, "44.6" },
    { 1.00005, "1.0001" },
    { -0.00001, "0" },
    { 1234567.5, "1234567.5" },
    { 100, "100" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *csv = takeoff_csv (&sample, cases[i].quantity);
      g_autofree char *row = g_strdup_printf ("\r\nblocks.whole,Whole units,%s,pcs,%s\r\n",
                                              cases[i].text, cases[i].text);
      g_assert_cmpstr (strstr (csv, "\r\n"), ==, row);
    }
}

static void
test_pieces (void)
{
  g_auto (Sample) sample = sample_new (SAMPLE_SMALL);
  Layout *layouts[] = { sample.layout };
  g_autofree char *csv = export_pieces_csv (sample.project, layouts, NULL);
  g_auto (GStrv) lines = g_strsplit (csv, "\r\n", -1);

  g_assert_cmpstr (lines[0], ==, "id,x_mm,length_mm,bottom_mm,height_mm,shape");
  g_assert_cmpuint (g_strv_length (lines), ==, sample.layout->pieces->len + 2);
  for (guint i = 0; i < sample.layout->pieces->len; i++)
    {
      const Piece *piece = layout_piece (sample.layout, i);
      g_auto (GStrv) fields = g_strsplit (lines[i + 1], ",", -1);
      g_autofree char *id = g_strdup_printf ("w1/%d/%d", piece->course, piece->number);
      g_assert_cmpuint (g_strv_length (fields), ==, 6);
      g_assert_cmpstr (fields[0], ==, id);
      g_assert_cmpfloat (g_ascii_strtod (fields[1], NULL), ==, length_to_mm (piece->x));
      g_assert_cmpfloat (g_ascii_strtod (fields[2], NULL), ==, length_to_mm (piece->length));
      g_assert_cmpfloat (g_ascii_strtod (fields[3], NULL), ==, length_to_mm (piece->bottom));
      g_assert_cmpfloat (g_ascii_strtod (fields[4], NULL), ==, length_to_mm (piece->height));
      g_assert_cmpstr (fields[5], ==, piece_shape_word (piece->shape));
    }
  g_assert_cmpstr (lines[sample.layout->pieces->len + 1], ==, "");
}

static void
test_pieces_of_one_wall (void)
{
  g_auto (Sample) sample = sample_new (SAMPLE_BARE);
  Layout *layouts[] = { sample.layout };
  g_autofree char *all = export_pieces_csv (sample.project, layouts, NULL);
  g_autofree char *one = export_pieces_csv (sample.project, layouts, sample_wall (&sample));
  g_autoptr (Wall) other = wall_new ();
  g_autofree char *none = export_pieces_csv (sample.project, layouts, other);

  g_assert_cmpstr (one, ==, all);
  g_assert_cmpstr (none, ==, "id,x_mm,length_mm,bottom_mm,height_mm,shape\r\n");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/csv/names-are-quoted-and-never-formulas", test_names);
  g_test_add_func ("/csv/quantities", test_quantities);
  g_test_add_func ("/csv/pieces/every-one", test_pieces);
  g_test_add_func ("/csv/pieces/of-one-wall", test_pieces_of_one_wall);
  return g_test_run ();
}
