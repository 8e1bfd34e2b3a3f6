/* test-text.c - what is written is read back as the same, and written again byte for byte */
#include <glib/gstdio.h>
#include <locale.h>
#include <string.h>

#include "any-project.h"
#include "schema.h"
#include "store/store.h"

#define ROUNDS 400
#define HEAD "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n<project xmlns=\"urn:halfbond:project:1\""
#define BLOCK                                                                                      \
  "  <block id=\"b1\" length=\"600\" height=\"200\" thickness=\"250\" density=\"500\"/>\n"

static Project *
read_text (const char *text)
{
  g_autoptr (GError) error = NULL;
  Project *project = store_read_bytes (text, strlen (text), "test", &error);
  g_assert_no_error (error);
  return project;
}

static void
test_any_project_comes_back (void)
{
  for (int round = 0; round < ROUNDS; round++)
    {
      g_autoptr (Project) project = any_project ();
      g_autofree char *text = store_text (project, NULL);
      g_autoptr (Project) again = read_text (text);
      g_autofree char *text_again = store_text (again, NULL);
      g_assert_cmpstr (text_again, ==, text);
      g_assert_true (project_equal (again, project));
    }
}

static void
test_every_text_is_valid (void)
{
  for (int round = 0; round < ROUNDS; round++)
    {
      g_autoptr (Project) project = any_project ();
      gsize n;
      g_autofree char *text = store_text (project, &n);
      g_assert_cmpuint (n, ==, strlen (text));
      g_autofree char *fault = schema_fault (text, n);
      g_assert_cmpstr (fault, ==, NULL);
    }
}

static void
test_example_is_as_written (void)
{
  gsize n;
  g_autofree char *text = example_text (&n);
  g_autoptr (Project) project = read_text (text);
  g_autofree char *again = store_text (project, NULL);
  g_assert_cmpstr (again, ==, text);
  g_autofree char *fault = schema_fault (text, n);
  g_assert_cmpstr (fault, ==, NULL);
}

/* Each a body within <project>, and what it becomes; NULL: it stays. */
static const struct
{
  const char *name, *body, *becomes;
} bodies[] = {
  { "nothing", "/>\n", NULL },
  { "empty-attributes-are-kept", " title=\"\" client=\"\" site=\"\" author=\"\" date=\"\"/>\n",
    NULL },
  { "a-block", ">\n" BLOCK "</project>\n", NULL },
  { "a-wall-with-nothing-in-it",
    ">\n" BLOCK "  <wall id=\"w1\" block=\"b1\" length=\"3000\" height=\"2000\"/>\n</project>\n",
    NULL },
  { "what-is-left-out-stays-left-out",
    ">\n" BLOCK "  <wall id=\"w1\" block=\"b1\" length=\"3000\" height=\"2000\">\n"
    "    <laying/>\n    <end side=\"left\"/>\n    <steel/>\n  </wall>\n</project>\n",
    NULL },
  { "defaults-that-are-given-stay-given",
    ">\n" BLOCK "  <wall id=\"w1\" block=\"b1\" length=\"3000\" height=\"2000\">\n"
    "    <laying first-bed=\"20\" bed=\"2\" head=\"2\" min-piece=\"150\" min-lap=\"80\" "
    "min-rip=\"50\" kerf=\"3\" aim=\"fewest-cuts\" start=\"left\"/>\n"
    "    <steel bars=\"2\" diameter=\"6\" every=\"0\" under-sills=\"false\" over-heads=\"false\" "
    "past=\"600\" lap=\"300\"/>\n  </wall>\n</project>\n",
    NULL },
  { "order-is-the-schema's",
    ">\n  <wall height=\"2000\" length=\"3000\" block=\"b1\" id=\"w1\">"
    "<opening kind=\"void\" height=\"10\" sill=\"0\" width=\"10\" x=\"0\" id=\"o1\" name=\"\"/>"
    "<steel-row course=\"2\" omit=\"false\"/><end side=\"right\"/><laying/><end side=\"left\"/>"
    "</wall>" BLOCK "</project>",
    ">\n" BLOCK "  <wall id=\"w1\" block=\"b1\" length=\"3000\" height=\"2000\">\n"
    "    <laying/>\n    <end side=\"left\"/>\n    <end side=\"right\"/>\n"
    "    <steel-row course=\"2\"/>\n"
    "    <opening id=\"o1\" kind=\"void\" x=\"0\" width=\"10\" sill=\"0\" height=\"10\"/>\n"
    "  </wall>\n</project>\n" },
  { "pins-come-last-in-their-order",
    ">\n" BLOCK "  <wall id=\"w1\" block=\"b1\" length=\"3000\" height=\"2000\">"
    "<pin length=\"450.0\" x=\"1200\" course=\"3\"/><pin course=\"2\" x=\"0.1\"/>"
    "<opening id=\"o1\" kind=\"void\" x=\"0\" width=\"10\" sill=\"0\" height=\"10\"/>"
    "</wall></project>",
    ">\n" BLOCK "  <wall id=\"w1\" block=\"b1\" length=\"3000\" height=\"2000\">\n"
    "    <opening id=\"o1\" kind=\"void\" x=\"0\" width=\"10\" sill=\"0\" height=\"10\"/>\n"
    "    <pin course=\"3\" x=\"1200\" length=\"450\"/>\n    <pin course=\"2\" x=\"0.1\"/>\n"
    "  </wall>\n</project>\n" },
  { "a-survey-comes-last",
    ">\n<survey tape=\"8000.0\" least=\"10\"><diagonal name=\"\" length=\"5831\" across=\"w2\" "
    "along=\"w1\"/><reading fore=\"-1200\" point=\"A\"><at x=\"0\" wall=\"w2\"/></reading><reading "
    "point=\"\"/></survey>" BLOCK "<wall id=\"w1\" block=\"b1\" length=\"3000\" height=\"2000\"/>"
    "<wall id=\"w2\" block=\"b1\" length=\"5000\" height=\"2000\"/></project>",
    ">\n" BLOCK "  <wall id=\"w1\" block=\"b1\" length=\"3000\" height=\"2000\"/>\n"
    "  <wall id=\"w2\" block=\"b1\" length=\"5000\" height=\"2000\"/>\n"
    "  <survey least=\"10\" tape=\"8000\">\n    <reading point=\"A\" fore=\"-1200\">\n"
    "      <at wall=\"w2\" x=\"0\"/>\n    </reading>\n    <reading/>\n"
    "    <diagonal along=\"w1\" across=\"w2\" length=\"5831\"/>\n  </survey>\n</project>\n" },
  { "the-work-comes-after-the-survey",
    ">\n<work rise=\"1200.0\" gang=\"03\" minutes-a-cut=\"0\" "
    "hours-a-m2=\"0.45000049\" minutes-a-metre=\"-0\"/><survey/></project>",
    ">\n  <survey/>\n  <work gang=\"3\" hours-a-m2=\"0.45\" minutes-a-cut=\"0\" "
    "minutes-a-metre=\"0\" rise=\"1200\"/>\n</project>\n" },
  { "figures-of-the-work-that-are-given-stay-given",
    ">\n  <work gang=\"2\" hours-a-day=\"8\" hours-a-m2=\"0.55\" minutes-a-block=\"0\" "
    "minutes-a-cut=\"1.5\" minutes-a-metre=\"10\" rise=\"1500\" lifts-a-day=\"0\" "
    "blocks-a-pallet=\"0\"/>\n</project>\n",
    NULL },
  { "what-stands-is-written-in-order",
    ">\n" BLOCK "  <wall id=\"w1\" block=\"b1\" length=\"3000\" height=\"2000\">\n"
    "<built courses=\"2\" as-of=\"\"><laid course=\"2\" top=\"430.0\"/>"
    "<laid perpends=\" 1202  600\n\" course=\"1\" perpends-at=\"700 150\" bottom=\"20\"/>"
    "</built></wall>\n<tolerance limit=\"8\" of=\"level\"/></project>",
    ">\n" BLOCK "  <wall id=\"w1\" block=\"b1\" length=\"3000\" height=\"2000\">\n"
    "    <built courses=\"2\" as-of=\"\">\n"
    "      <laid course=\"1\" perpends=\"600 1202\" perpends-at=\"700 150\" bottom=\"20\"/>\n"
    "      <laid course=\"2\" top=\"430\"/>\n    </built>\n  </wall>\n"
    "  <tolerance of=\"level\" limit=\"8\"/>\n</project>\n" },
  { "nothing-built",
    ">\n" BLOCK "  <wall id=\"w1\" block=\"b1\" length=\"3000\" height=\"2000\">\n"
    "    <built/>\n  </wall>\n</project>\n",
    NULL },
  { "work-that-says-nothing", ">\n  <work/>\n</project>\n", "/>\n" },
  { "what-a-joint-is-filled-with",
    ">\n" BLOCK "  <wall id=\"w1\" block=\"b1\" length=\"3000\" height=\"2000\">\n"
    "    <movement-joint x=\"900\" filler=\"closed-cell foam, 12 mm\"/>\n"
    "    <movement-joint x=\"1500\" width=\"12\" filler=\"\"/>\n  </wall>\n</project>\n",
    NULL },
  { "numbers-in-other-forms",
    ">\n  <block id=\" b1 \" length=\"+0600.0\" height=\"\n200.\" thickness=\"250.00001\" "
    "density=\"00500.500\"/>\n</project>\n",
    ">\n  <block id=\"b1\" length=\"600\" height=\"200\" thickness=\"250\" density=\"500.5\"/>\n"
    "</project>\n" },
  { "small-and-large-densities",
    ">\n  <block id=\"b1\" length=\"600\" height=\"200\" thickness=\"250\" density=\"0.000001\"/>\n"
    "  <block id=\"b2\" length=\"600\" height=\"200\" thickness=\"250\" density=\"20000\"/>\n"
    "  <block id=\"b3\" length=\"600\" height=\"200\" thickness=\"250\" density=\"0.1\"/>\n"
    "  <block id=\"b4\" length=\"600\" height=\"200\" thickness=\"250\" "
    "density=\"333.3333333333333\"/>\n</project>\n",
    NULL },
  { "foreign-things-by-our-own",
    " xmlns:v=\"urn:v\" v:a=\"1\">\n"
    "  <block id=\"b1\" length=\"600\" height=\"200\" thickness=\"250\" density=\"500\" "
    "xmlns:v=\"urn:v\" v:b=\"&#10;\">\n    <v:c xmlns:v=\"urn:v\"/>\n"
    "    <v:d xmlns:v=\"urn:v\"/>\n  </block>\n"
    "  <wall id=\"w1\" block=\"b1\" length=\"3000\" height=\"2000\">\n"
    "    <laying xml:lang=\"de\"/>\n    <end side=\"left\">\n      <v:e xmlns:v=\"urn:v\">x</v:e>\n"
    "    </end>\n    <v:f xmlns:v=\"urn:v\"/>\n  </wall>\n"
    "  <v:g xmlns:v=\"urn:v\">\n  </v:g>\n</project>\n",
    NULL },
  { "foreign-things-say-their-namespaces",
    " xmlns:v=\"urn:v\" xmlns:unused=\"urn:u\">" BLOCK
    "<v:a><b/><c xmlns=\"\"/><v:d xmlns:v=\"urn:w\"><v:e/></v:d><v:f v:k='\"'/></v:a>"
    "</project>",
    ">\n" BLOCK "  <v:a xmlns:v=\"urn:v\"><b xmlns=\"urn:halfbond:project:1\"/><c xmlns=\"\"/>"
    "<v:d xmlns:v=\"urn:w\"><v:e/></v:d><v:f v:k=\"&quot;\"/></v:a>\n</project>\n" },
  { "foreign-text-is-kept-and-comments-are-not",
    "><!-- x --><?x y?>\n  <v:a xmlns:v=\"urn:v\"> a<!-- b --> &lt;<![CDATA[<c>]]>&#13;\n</v:a>"
    "</project><!-- z -->",
    ">\n  <v:a xmlns:v=\"urn:v\"> a &lt;&lt;c&gt;&#13;\n</v:a>\n</project>\n" },
};

static void
test_body (gconstpointer data)
{
  guint i = GPOINTER_TO_UINT (data);
  g_autofree char *text = g_strconcat (HEAD, bodies[i].body, NULL);
  g_autofree char *expected
      = g_strconcat (HEAD, bodies[i].becomes ? bodies[i].becomes : bodies[i].body, NULL);
  g_autofree char *fault = schema_fault (text, strlen (text));
  g_assert_cmpstr (fault, ==, NULL);
  g_autoptr (Project) project = read_text (text);
  g_autofree char *written = store_text (project, NULL);
  g_assert_cmpstr (written, ==, expected);
  g_autoptr (Project) again = read_text (written);
  g_autofree char *twice = store_text (again, NULL);
  g_assert_cmpstr (twice, ==, expected);
}

static void
test_prefix_for_our_own (void)
{
  g_autoptr (Project) project = read_text (
      "<h:project xmlns:h=\"urn:halfbond:project:1\"><h:block id=\"b1\" length=\"600\" "
      "height=\"200\" thickness=\"250\" density=\"500\"/></h:project>");
  g_autofree char *text = store_text (project, NULL);
  g_assert_cmpstr (text, ==, HEAD ">\n" BLOCK "</project>\n");
}

static void
test_byte_order_mark (void)
{
  g_autoptr (Project) project = read_text ("\xef\xbb\xbf" HEAD "/>");
  g_assert_cmpuint (project->walls->len, ==, 0);
}

/* A locale with a comma for the decimal point, made for the test in a folder of its own; FALSE when
 * the system has no means to. */
static gboolean
set_comma_locale (const char *folder)
{
  g_autofree char *path = g_build_filename (folder, "comma.UTF-8", NULL);
  const char *const argv[] = { "localedef", "-i", "de_DE", "-f", "UTF-8", path, NULL };
  g_spawn_sync (NULL, (char **) argv, NULL,
                G_SPAWN_SEARCH_PATH | G_SPAWN_STDOUT_TO_DEV_NULL | G_SPAWN_STDERR_TO_DEV_NULL, NULL,
                NULL, NULL, NULL, NULL, NULL);
  g_setenv ("LOCPATH", folder, TRUE);
  return setlocale (LC_ALL, "comma.UTF-8") != NULL;
}

static void
remove_tree (const char *path)
{
  g_autoptr (GDir) dir = g_dir_open (path, 0, NULL);
  for (const char *name = dir ? g_dir_read_name (dir) : NULL; name; name = g_dir_read_name (dir))
    {
      g_autofree char *inner = g_build_filename (path, name, NULL);
      remove_tree (inner);
    }
  g_remove (path);
}

static void
test_locale_does_not_matter (void)
{
  gsize n;
  g_autofree char *text = example_text (&n);
  g_autofree char *folder = g_dir_make_tmp ("halfbond-XXXXXX", NULL);
  if (set_comma_locale (folder))
    {
      g_autofree char *comma = g_strdup_printf ("%.1f", 0.5);
      g_assert_cmpstr (comma, ==, "0,5");
      g_autoptr (Project) project = read_text (text);
      g_autofree char *again = store_text (project, NULL);
      g_assert_cmpstr (again, ==, text);
    }
  else
    g_test_skip ("no locale with a decimal comma can be made");
  setlocale (LC_ALL, "C.UTF-8");
  g_unsetenv ("LOCPATH");
  remove_tree (folder);
}

/* XML has no way to say these; the name stays readable, and so does the file. */
static void
test_characters_xml_cannot_hold (void)
{
  g_autoptr (Project) project = project_new ();
  project->title = g_strdup ("a\001b\x1b"
                             "c\xef\xbf\xbf"
                             "d\xff"
                             "e");
  g_autofree char *text = store_text (project, NULL);
  g_autoptr (Project) again = read_text (text);
  g_assert_cmpstr (again->title, ==,
                   "a\xef\xbf\xbd"
                   "b\xef\xbf\xbd"
                   "c\xef\xbf\xbd"
                   "d\xef\xbf\xbd"
                   "e");
}

/* What an edit set without saying that a file has the element is written all the same. */
static void
test_what_an_edit_set_is_written (void)
{
  g_autoptr (Project) project = read_text (
      HEAD ">" BLOCK "<wall id=\"w1\" block=\"b1\" length=\"3000\" height=\"2000\"/></project>");
  Wall *wall = g_ptr_array_index (project->walls, 0);
  wall->laying.given = LAYING_KERF;
  wall->laying.kerf = LENGTH_MM (4);
  wall->ends[SIDE_RIGHT].has_return = TRUE;
  wall->ends[SIDE_RIGHT].ret = LENGTH_MM (250);
  wall->ends[SIDE_RIGHT].through = THROUGH_ODD;
  wall->steel.given = TRUE;
  wall->steel.every = 3;
  wall->steel.over_heads = TRUE;
  g_autofree char *text = store_text (project, NULL);
  g_assert_nonnull (strstr (text, "    <laying kerf=\"4\"/>\n"
                                  "    <end side=\"right\" return=\"250\" through=\"odd\"/>\n"
                                  "    <steel every=\"3\" over-heads=\"true\"/>\n"));
}

static gpointer
read_often (gpointer text)
{
  for (int i = 0; i < 50; i++)
    {
      g_autoptr (Project) project = read_text (text);
      g_autofree char *again = store_text (project, NULL);
      g_assert_cmpstr (again, ==, text);
    }
  return NULL;
}

static void
test_from_several_threads (void)
{
  gsize n;
  g_autofree char *text = example_text (&n);
  GThread *threads[4];
  for (guint i = 0; i < G_N_ELEMENTS (threads); i++)
    threads[i] = g_thread_new ("read", read_often, text);
  for (guint i = 0; i < G_N_ELEMENTS (threads); i++)
    g_assert_null (g_thread_join (threads[i]));
}

/* As many perpends as a course may have take more room than a name may. */
static void
test_long_course (void)
{
  g_autoptr (Project) project = project_new ();
  g_autoptr (GError) error = NULL;
  Wall *wall = wall_new ();
  LaidCourse laid = laid_course_new (1);
  gsize n;
  wall->id.n = project->next++;
  wall->key = g_strdup ("w1");
  wall->block = project_block_at (project, 0)->id;
  for (int i = 1; i <= BUILT_MAX_PERPENDS; i++)
    {
      LaidPerpend perpend = { i * 601 + 1, PERPEND_ALL };
      g_array_append_val (laid.perpends, perpend);
    }
  wall->built = built_new ();
  wall->built->courses = 1;
  g_array_append_val (wall->built->laid, laid);
  g_ptr_array_add (project->walls, wall);
  g_autofree char *text = store_text (project, &n);
  g_assert_cmpuint (n, >, STORE_MAX_NAME);
  g_autofree char *fault = schema_fault (text, n);
  g_assert_cmpstr (fault, ==, NULL);
  g_autoptr (Project) again = store_read_bytes (text, n, "long", &error);
  g_assert_no_error (error);
  g_assert_true (project_equal (project, again));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/text/any-project-comes-back", test_any_project_comes_back);
  g_test_add_func ("/text/every-text-is-valid", test_every_text_is_valid);
  g_test_add_func ("/text/example-is-as-written", test_example_is_as_written);
  for (guint i = 0; i < G_N_ELEMENTS (bodies); i++)
    {
      g_autofree char *path = g_strconcat ("/text/body/", bodies[i].name, NULL);
      g_test_add_data_func (path, GUINT_TO_POINTER (i), test_body);
    }
  g_test_add_func ("/text/prefix-for-our-own", test_prefix_for_our_own);
  g_test_add_func ("/text/byte-order-mark", test_byte_order_mark);
  g_test_add_func ("/text/locale-does-not-matter", test_locale_does_not_matter);
  g_test_add_func ("/text/characters-xml-cannot-hold", test_characters_xml_cannot_hold);
  g_test_add_func ("/text/what-an-edit-set-is-written", test_what_an_edit_set_is_written);
  g_test_add_func ("/text/from-several-threads", test_from_several_threads);
  g_test_add_func ("/text/long-course", test_long_course);
  return g_test_run ();
}
