#include "cli/json.h"

#include <string.h>

static char *
array_of (void (*write) (Json *json, gconstpointer value), gconstpointer value)
{
  GString *text = g_string_new (NULL);
  Json json = json_begin (text);

  json_array (&json, NULL);
  write (&json, value);
  json_array_end (&json);
  return g_string_free (text, FALSE);
}

static void
write_string (Json *json, gconstpointer value)
{
  json_string (json, NULL, value);
}

/* RFC 8259, section 7: what must be escaped. */
static void
test_strings (void)
{
  static const struct
  {
    const char *in, *out;
  } cases[] = {
    { "", "[\"\"]" },
    { "Street side", "[\"Street side\"]" },
    { "a \"b\" \\ c", "[\"a \\\"b\\\" \\\\ c\"]" },
    { "tab\tline\n", "[\"tab\\u0009line\\u000a\"]" },
    { "\x01\x1f\x7f", "[\"\\u0001\\u001f\x7f\"]" },
    { "Mauerstraße ½", "[\"Mauerstraße ½\"]" },
    { "bad \xff byte", "[\"bad \xef\xbf\xbd byte\"]" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *got = array_of (write_string, cases[i].in);
      g_assert_cmpstr (got, ==, cases[i].out);
    }
}

typedef struct
{
  double value;
  int decimals;
  const char *out;
} Number;

static void
write_number (Json *json, gconstpointer value)
{
  const Number *number = value;

  json_number (json, NULL, number->value, number->decimals);
}

static void
test_numbers (void)
{
  static const Number cases[] = {
    { 0, 3, "[0]" },
    { -0.0, 3, "[0]" },
    { -0.0001, 3, "[0]" },
    { 240, 9, "[240]" },
    { 2.5, 3, "[2.5]" },
    { 0.1 + 0.2, 9, "[0.3]" },
    { 1e15, 3, "[1000000000000000]" },
    { 1e-9, 9, "[0.000000001]" },
    { 1e-10, 9, "[0]" },
    { -12.3456, 2, "[-12.35]" },
    { 1200, 0, "[1200]" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *got = array_of (write_number, &cases[i]);
      g_assert_cmpstr (got, ==, cases[i].out);
    }
}

static void
write_length (Json *json, gconstpointer value)
{
  json_length (json, NULL, *(const Length *) value);
}

static void
test_lengths_are_exact (void)
{
  static const struct
  {
    Length in;
    const char *out;
  } cases[] = {
    { 0, "[0]" },        { LENGTH_MM (8400), "[8400]" }, { LENGTH_MM (62) + 160, "[62.5]" },
    { 1, "[0.003125]" }, { -LENGTH_MM (35), "[-35]" },   { LENGTH_MAX, "[1000000]" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *got = array_of (write_length, &cases[i].in);
      g_assert_cmpstr (got, ==, cases[i].out);
    }
}

static void
test_nesting (void)
{
  g_autoptr (GString) text = g_string_new (NULL);
  Json json = json_begin (text);

  json_object (&json, NULL);
  json_array (&json, "empty");
  json_array_end (&json);
  json_array (&json, "walls");
  for (int i = 0; i < 2; i++)
    {
      json_object (&json, NULL);
      json_int (&json, "n", i);
      json_bool (&json, "cut", i == 1);
      json_object_end (&json);
    }
  json_array_end (&json);
  json_object (&json, "totals");
  json_object_end (&json);
  json_object_end (&json);
  json_end (&json);
  g_assert_cmpstr (text->str, ==,
                   "{\"empty\": [], \"walls\": [\n"
                   "  {\"n\": 0, \"cut\": false},\n"
                   "  {\"n\": 1, \"cut\": true}], \"totals\": {}}\n");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/json/strings-are-escaped", test_strings);
  g_test_add_func ("/json/numbers-have-no-exponent", test_numbers);
  g_test_add_func ("/json/lengths-are-exact", test_lengths_are_exact);
  g_test_add_func ("/json/groups-nest", test_nesting);
  return g_test_run ();
}
