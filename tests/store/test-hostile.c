/* test-hostile.c - no bytes crash the reader, hang it, or make it look elsewhere */
#include <glib/gstdio.h>
#include <string.h>
#include <unistd.h>

#include "any-project.h"
#include "store/scan.h"
#include "store/store.h"

#define MUTATIONS 20000
#define PROJECT "<project xmlns=\"urn:halfbond:project:1\">\n"

/* Either a project without a fault, or a sentence with its place. */
static gboolean
read_or_refuse (const char *text, gsize n)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (Project) project = store_read_bytes (text, n, "a.halfbond", &error);
  if (project == NULL)
    {
      g_assert_error (error, STORE_ERROR, STORE_ERROR_INVALID);
      g_assert_true (g_str_has_prefix (error->message, "a.halfbond:"));
      g_assert_true (g_utf8_validate (error->message, -1, NULL));
      g_assert_null (strchr (error->message, '\n'));
      return FALSE;
    }
  g_assert_no_error (error);
  g_autofree char *fault = project_fault (project);
  g_assert_cmpstr (fault, ==, NULL);
  return TRUE;
}

static void
assert_refused (const char *text, gsize n, int line, const char *reason)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (Project) project = store_read_bytes (text, n, "a.halfbond", &error);
  g_assert_error (error, STORE_ERROR, STORE_ERROR_INVALID);
  g_assert_null (project);
  g_autofree char *expected = g_strdup_printf ("a.halfbond:%d: %s", line, reason);
  if (!g_str_has_prefix (error->message, expected))
    g_assert_cmpstr (error->message, ==, expected);
}

/* Text with NULs in it, and where it ends. */
#define BYTES(literal) literal, sizeof (literal) - 1

static const struct
{
  const char *name;
  const char *text;
  gsize n;
  int line;
  const char *reason;
} cases[] = {
  { "empty", BYTES (""), 1, "it is empty." },
  { "white-space", BYTES (" \n\n"), 3, "it ends too early" },
  { "plain-text", BYTES ("length 600\n"), 1, "it is not well-formed XML" },
  { "nul", BYTES (PROJECT "<block\0/>"), 2, "there is a NUL byte; a project is plain text." },
  { "nul-at-the-end", BYTES (PROJECT "</project>\0"), 2, "there is a NUL byte" },
  { "no-utf-8", BYTES (PROJECT "\n<!-- \xe4 --></project>"), 3, "the byte 0xe4 is no UTF-8" },
  { "utf-8-of-a-surrogate", BYTES (PROJECT "<!-- \xed\xa0\x80 --></project>"), 2,
    "the byte 0xed is no UTF-8" },
  { "utf-8-too-long-a-form", BYTES (PROJECT "<!-- \xc0\xbc --></project>"), 2,
    "the byte 0xc0 is no UTF-8" },
  { "utf-8-cut-off", BYTES (PROJECT "<!-- \xe2\x82"), 2, "the byte 0xe2 is no UTF-8" },
  { "utf-16-with-mark", BYTES ("\xff\xfe<\0p\0/\0>\0"), 1, "it is written in UTF-16 or UTF-32" },
  { "utf-16-turned", BYTES ("\xfe\xff\0<\0p\0/\0>"), 1, "it is written in UTF-16 or UTF-32" },
  { "utf-16-without-mark", BYTES ("<\0p\0/\0>\0"), 1, "it is written in UTF-16 or UTF-32" },
  { "utf-32", BYTES ("\0\0\0<\0\0\0p"), 1, "it is written in UTF-16 or UTF-32" },
  { "utf-7-declared", BYTES ("<?xml version='1.0' encoding='UTF-7'?>\n" PROJECT "</project>"), 1,
    "it says that it is written in another encoding than UTF-8." },
  { "document-type", BYTES ("<!DOCTYPE project>\n" PROJECT "</project>"), 1,
    "it has a document type (DOCTYPE); a project has none." },
  { "document-type-later", BYTES ("<!-- x -->\n\n<!DOCTYPE project>\n" PROJECT "</project>"), 3,
    "it has a document type (DOCTYPE); a project has none." },
  { "document-type-in-lower-case", BYTES ("<!doctype project>\n" PROJECT "</project>"), 1,
    "it has a document type (DOCTYPE); a project has none." },
  { "entities-of-entities",
    BYTES ("<!DOCTYPE p [<!ENTITY a \"ha\"><!ENTITY b \"&a;&a;&a;&a;&a;&a;&a;&a;&a;\">"
           "<!ENTITY c \"&b;&b;&b;&b;&b;&b;&b;&b;&b;\"><!ENTITY d \"&c;&c;&c;&c;&c;&c;&c;&c;\">]>\n"
           "<project xmlns=\"urn:halfbond:project:1\" title=\"&d;\"/>"),
    1, "it has a document type (DOCTYPE); a project has none." },
  { "attribute-by-default",
    BYTES ("<!DOCTYPE p [<!ATTLIST project title CDATA \"x\">]>\n" PROJECT "</project>"), 1,
    "it has a document type (DOCTYPE); a project has none." },
  { "entity-from-nowhere", BYTES ("<project xmlns=\"urn:halfbond:project:1\" title=\"&d;\"/>"), 1,
    "it is not well-formed XML: Entity 'd' not defined." },
  { "declaration-in-the-middle", BYTES (PROJECT "<!ELEMENT project ANY></project>"), 2,
    "it has a document type (DOCTYPE); a project has none." },
  { "only-a-start", BYTES ("<"), 1, "it ends too early" },
  { "only-a-declaration", BYTES ("<?xml version=\"1.0\"?>"), 1, "it ends too early" },
  { "declaration-cut-off", BYTES ("<?xml version=\"1.0\" encoding="), 1, "" },
  { "comment-without-end", BYTES (PROJECT "<!-- </project>"), 2, "" },
  { "cdata-without-end", BYTES (PROJECT "<v:a xmlns:v='v'><![CDATA[ </project>"), 2, "" },
  { "value-without-end", BYTES (PROJECT "<block id=\"b1></project>"), 2, "" },
  { "namespace-of-xmlns", BYTES ("<project xmlns=\"http://www.w3.org/2000/xmlns/\"/>"), 1,
    "it is not well-formed XML" },
  { "message-is-one-line", BYTES (PROJECT "<bl&#10;ock/>"), 2, "it is not well-formed XML" },
  { "value-of-control-characters", BYTES (PROJECT "<block id=\"\xe2\x80\xae&#10;x\"/></project>"),
    2, "block \"\xef\xbf\xbd\xef\xbf\xbdx\": the id \"\xef\xbf\xbd\xef\xbf\xbdx\" is not a name" },
};

static void
test_case (gconstpointer data)
{
  guint i = GPOINTER_TO_UINT (data);
  assert_refused (cases[i].text, cases[i].n, cases[i].line, cases[i].reason);
}

/* A file that anyone may name in an entity, and that only its owner would look at. */
static void
test_other_files_are_not_read (void)
{
  static const char *const forms[] = {
    "<!DOCTYPE p [<!ENTITY e SYSTEM \"%s\">]>\n" PROJECT "&e;</project>",
    "<!DOCTYPE p SYSTEM \"%s\">\n" PROJECT "</project>",
    PROJECT "<x:include xmlns:x=\"http://www.w3.org/2001/XInclude\" href=\"%s\"/></project>",
    "<?xml-stylesheet href=\"%s\"?>\n" PROJECT "</project>",
  };
  g_autoptr (GError) error = NULL;
  g_autofree char *path = NULL;
  int fd = g_file_open_tmp ("halfbond-XXXXXX", &path, &error);
  g_assert_no_error (error);
  g_assert_cmpint (write (fd, "secret", 6), ==, 6);
  close (fd);
  for (guint i = 0; i < G_N_ELEMENTS (forms); i++)
    {
      g_auto (GStrv) parts = g_strsplit (forms[i], "%s", 2);
      g_autofree char *text = g_strconcat (parts[0], path, parts[1], NULL);
      g_autoptr (GError) fault = NULL;
      g_autoptr (Project) project = store_read_bytes (text, strlen (text), "a.halfbond", &fault);
      g_assert_cmpint (project != NULL, ==, i >= 2);
      g_autofree char *out
          = project != NULL ? store_text (project, NULL) : g_strdup (fault->message);
      g_assert_null (strstr (out, "secret"));
    }
  g_unlink (path);
}

static void
append_times (GString *text, const char *piece, guint times)
{
  while (times-- > 0)
    g_string_append (text, piece);
}

static void
test_depth (void)
{
  for (guint depth = 60; depth <= 70; depth++)
    {
      g_autoptr (GString) text = g_string_new (PROJECT "<v:a xmlns:v=\"urn:v\">");
      append_times (text, "<v:a>", depth - 2);
      append_times (text, "</v:a>", depth - 1);
      g_string_append (text, "</project>");
      if (depth <= STORE_MAX_DEPTH)
        g_assert_true (read_or_refuse (text->str, text->len));
      else
        assert_refused (text->str, text->len, 2, "elements are nested more than 64 deep.");
    }
}

static void
test_very_deep (void)
{
  g_autoptr (GString) text = g_string_new (PROJECT);
  append_times (text, "<x>", 2000000);
  assert_refused (text->str, text->len, 2, "elements are nested more than 64 deep.");
}

static void
test_size (void)
{
  g_autoptr (GString) text = g_string_new (PROJECT);
  g_autofree char *space = g_strnfill (STORE_MAX_BYTES + 1, ' ');
  g_string_append_len (text, space, STORE_MAX_BYTES - (gssize) text->len - 10);
  g_string_append (text, "</project>");
  g_assert_cmpuint (text->len, ==, STORE_MAX_BYTES);
  g_assert_true (read_or_refuse (text->str, text->len));
  g_string_append (text, "\n");
  assert_refused (text->str, text->len, 1, "it is larger than 64 MiB; no project is.");
  /* Not even looked at: `n` is believed. */
  assert_refused (text->str, G_MAXSIZE, 1, "it is larger than 64 MiB; no project is.");
}

static void
test_size_of_a_file (void)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *path = NULL;
  int fd = g_file_open_tmp ("halfbond-XXXXXX", &path, &error);
  g_assert_cmpint (ftruncate (fd, (gint64) STORE_MAX_BYTES * 100), ==, 0);
  close (fd);
  g_autoptr (Project) project = store_read (path, &error);
  g_assert_error (error, STORE_ERROR, STORE_ERROR_INVALID);
  g_assert_nonnull (strstr (error->message, "it is larger than 64 MiB"));
  g_assert_null (project);
  g_unlink (path);
  g_clear_error (&error);
  g_autoptr (Project) endless = store_read ("/dev/zero", &error);
  g_assert_error (error, STORE_ERROR, STORE_ERROR_INVALID);
  g_assert_null (endless);
}

static void
test_length_of_values (void)
{
  static const char *const forms[] = {
    "<project xmlns=\"urn:halfbond:project:1\" title=\"%s\"/>",
    "<project xmlns=\"urn:halfbond:project:1\" xmlns:v=\"urn:v\" v:title=\"%s\"/>",
    PROJECT "<v:a xmlns:v=\"urn:v\" title=\"%s\"/></project>",
  };
  for (guint i = 0; i < G_N_ELEMENTS (forms); i++)
    for (gsize over = 0; over < 2; over++)
      {
        g_autofree char *value = g_strnfill (STORE_MAX_NAME + over, 'x');
        g_auto (GStrv) parts = g_strsplit (forms[i], "%s", 2);
        g_autofree char *text = g_strconcat (parts[0], value, parts[1], NULL);
        g_assert_cmpint (read_or_refuse (text, strlen (text)), ==, over == 0);
      }
}

/* Characters are counted, not bytes. */
static void
test_length_in_other_scripts (void)
{
  g_autoptr (GString) text = g_string_new ("<project xmlns=\"urn:halfbond:project:1\" title=\"");
  append_times (text, "壁", STORE_MAX_NAME);
  g_autofree char *fits = g_strconcat (text->str, "\"/>", NULL);
  g_autofree char *over = g_strconcat (text->str, "壁\"/>", NULL);
  g_assert_true (read_or_refuse (fits, strlen (fits)));
  assert_refused (over, strlen (over), 1, "project: ");
}

static void
test_attributes_of_one_tag (void)
{
  for (guint n = SCAN_MAX_ATTRIBUTES - 2; n < SCAN_MAX_ATTRIBUTES + 3; n++)
    {
      g_autoptr (GString) text = g_string_new (PROJECT "<v:a xmlns:v=\"urn:v\"");
      for (guint i = 1; i < n; i++)
        g_string_append_printf (text, " a%u='>'", i);
      g_string_append (text, "/></project>");
      g_assert_cmpint (read_or_refuse (text->str, text->len), ==, n <= SCAN_MAX_ATTRIBUTES);
    }
}

/* A long namespace said once, used often: written out at each place it would fill any disk. */
static void
test_namespaces_do_not_multiply (void)
{
  g_autoptr (GString) text = g_string_new ("<project xmlns=\"urn:halfbond:project:1\" xmlns:v=\"");
  append_times (text, "n", STORE_MAX_NAME);
  g_string_append (text, "\">\n");
  append_times (text, "<v:a/>", 200000);
  g_string_append (text, "</project>");
  assert_refused (text->str, text->len, 2, "content of other namespaces takes more than 64 MiB.");
}

/* All that a file may be, at once: read in some hundredths of a second. Where every mark would look
 * at all before it, as a careless reader does, it would take hours, and be stopped. */
static void
test_large_files_are_quick (void)
{
  static const char *const pieces[]
      = { "<v:a/>", "x", "&amp;", "<v:a b='c'>d</v:a>\n", "<!-- -->" };
  for (guint i = 0; i < G_N_ELEMENTS (pieces); i++)
    {
      g_autoptr (GString) text = g_string_new (PROJECT "<v:z xmlns:v='v'>");
      append_times (text, pieces[i], 4 * 1024 * 1024 / (guint) strlen (pieces[i]));
      g_string_append (text, "</v:z></project>");
      g_assert_true (read_or_refuse (text->str, text->len));
    }
}

static void
test_truncated_anywhere (void)
{
  gsize n;
  g_autofree char *text = example_text (&n);
  for (gsize i = 0; i + 1 < n; i++)
    {
      /* Of its own size, so that a step too far is seen by the sanitizers. */
      g_autofree char *part = g_memdup2 (text, i);
      g_assert_false (read_or_refuse (part, i));
    }
}

static void
change (GString *text)
{
  static const char *const marks[]
      = { "<",    ">",           "\"",   "'",  "&", "/>",         "<!--",     "]]>",
          "&#0;", " xmlns=\"\"", "\xff", "\n", "-", "9999999999", "id=\"w1\"" };
  gsize at = (gsize) g_test_rand_int_range (0, (gint32) text->len);
  gsize n = (gsize) g_test_rand_int_range (1, 12);
  switch (g_test_rand_int_range (0, 7))
    {
    case 5:
    case 6:
      /* Another number stays well-formed, and comes further. */
      while (at + 1 < text->len && !g_ascii_isdigit (text->str[at]))
        at++;
      text->str[at] = (char) g_test_rand_int_range ('0', '9' + 1);
      break;
    case 0:
      text->str[at] = (char) g_test_rand_int_range (0, 256);
      break;
    case 1:
      g_string_erase (text, (gssize) at, (gssize) MIN (n, text->len - at));
      break;
    case 2:
      g_string_insert (text, (gssize) at, marks[g_test_rand_int_range (0, G_N_ELEMENTS (marks))]);
      break;
    case 3:
      g_string_insert_c (text, (gssize) at, (char) g_test_rand_int_range (0, 256));
      break;
    default:
      text->str[at] = (char) (text->str[at] ^ (1 << g_test_rand_int_range (0, 8)));
    }
}

static void
test_changed_anywhere (void)
{
  gsize n;
  guint read = 0;
  g_autofree char *text = example_text (&n);
  for (guint i = 0; i < MUTATIONS; i++)
    {
      g_autoptr (GString) changed = g_string_new_len (text, (gssize) n);
      for (int times = g_test_rand_int_range (1, 4); times > 0; times--)
        change (changed);
      read += read_or_refuse (changed->str, changed->len);
    }
  g_test_message ("%u of %u changed files are projects", read, MUTATIONS);
  /* Letters of names change without harm, marks do not. */
  g_assert_cmpuint (read, >, 0);
  g_assert_cmpuint (read, <, MUTATIONS / 2);
}

/* Elements and attributes of the example in any order, any place, any number. */
static void
test_shuffled_tags (void)
{
  gsize n;
  g_autofree char *text = example_text (&n);
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);
  gint32 n_lines = (gint32) g_strv_length (lines);
  for (guint i = 0; i < MUTATIONS / 10; i++)
    {
      g_autoptr (GString) shuffled = g_string_new (PROJECT);
      for (int k = g_test_rand_int_range (1, 30); k > 0; k--)
        g_string_append_printf (shuffled, "%s\n", lines[g_test_rand_int_range (2, n_lines - 2)]);
      g_string_append (shuffled, "</project>\n");
      read_or_refuse (shuffled->str, shuffled->len);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autofree char *path = g_strconcat ("/hostile/", cases[i].name, NULL);
      g_test_add_data_func (path, GUINT_TO_POINTER (i), test_case);
    }
  g_test_add_func ("/hostile/other-files-are-not-read", test_other_files_are_not_read);
  g_test_add_func ("/hostile/depth", test_depth);
  g_test_add_func ("/hostile/very-deep", test_very_deep);
  g_test_add_func ("/hostile/size", test_size);
  g_test_add_func ("/hostile/size-of-a-file", test_size_of_a_file);
  g_test_add_func ("/hostile/length-of-values", test_length_of_values);
  g_test_add_func ("/hostile/length-in-other-scripts", test_length_in_other_scripts);
  g_test_add_func ("/hostile/attributes-of-one-tag", test_attributes_of_one_tag);
  g_test_add_func ("/hostile/namespaces-do-not-multiply", test_namespaces_do_not_multiply);
  g_test_add_func ("/hostile/large-files-are-quick", test_large_files_are_quick);
  g_test_add_func ("/hostile/truncated-anywhere", test_truncated_anywhere);
  g_test_add_func ("/hostile/changed-anywhere", test_changed_anywhere);
  g_test_add_func ("/hostile/shuffled-tags", test_shuffled_tags);
  return g_test_run ();
}
