/* cut.c - halfbond-cli cut: the fewest stock lengths that give a list of pieces */
#include <glib/gi18n.h>
#include <stdio.h>
#include <string.h>

#include "cli/arguments.h"
#include "cli/jobs.h"
#include "cli/json.h"
#include "cli/output.h"
#include "cutting/cutting.h"
#include "model/length.h"

/* Beyond these a list is refused: no order is as long, and the search would not end. */
#define MAX_LINES 10000
#define MAX_LINE_BYTES 256
#define MAX_QUANTITY 1000000

typedef struct
{
  Length stock, kerf;
  GArray *items; /* CuttingItem */
  CuttingPlan *plan;
  GError *error;
} Cut;

static void
cut_clear (Cut *cut)
{
  g_clear_pointer (&cut->items, g_array_unref);
  g_clear_pointer (&cut->plan, cutting_plan_free);
  g_clear_error (&cut->error);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Cut, cut_clear)

/* What is wrong with a line, newly allocated; NULL when it was read. */
static char *
read_line (const char *line, const Cut *cut, CuttingItem *out)
{
  g_auto (GStrv) words = g_strsplit_set (line, " \t", -1);
  const char *word[3] = { NULL };
  guint n = 0;
  Length length;
  guint64 quantity;
  char stock[LENGTH_TEXT_SIZE];

  for (guint i = 0; words[i]; i++)
    if (*words[i] && n++ < 3)
      word[n - 1] = words[i];
  if (n != 2)
    return g_strdup (_ ("a line is a LENGTH and a QUANTITY, with a space between"));
  if (!length_parse (word[0], &length) || length <= 0)
    return g_strdup_printf (_ ("“%s” is not a length in millimetres above 0"), word[0]);
  if (length > cut->stock)
    return g_strdup_printf (_ ("a piece of %s mm is longer than the stock of %s mm"), word[0],
                            length_text (cut->stock, stock));
  if (!g_ascii_string_to_unsigned (word[1], 10, 0, MAX_QUANTITY, &quantity, NULL))
    return g_strdup_printf (_ ("“%s” is not a whole number from 0 to %d"), word[1], MAX_QUANTITY);
  *out = (CuttingItem){ .length = length, .quantity = (gint32) quantity };
  return NULL;
}

static Status
complain_of_line (guint number, const char *reason)
{
  fprintf (stderr, _ ("standard input:%u: %s\n"), number, reason);
  return STATUS_READ;
}

static Status
read_items (Cut *cut)
{
  char line[MAX_LINE_BYTES];

  for (guint number = 1; fgets (line, sizeof line, stdin); number++)
    {
      CuttingItem item;
      if (!strchr (line, '\n') && !feof (stdin))
        return complain_of_line (number, _ ("the line is too long"));
      if (number > MAX_LINES)
        return complain_of_line (number, _ ("the list is too long, 10,000 lines at most"));
      if (*g_strstrip (line) == '\0')
        continue;
      g_autofree char *fault = read_line (line, cut, &item);
      if (fault)
        return complain_of_line (number, fault);
      g_array_append_val (cut->items, item);
    }
  if (!ferror (stdin))
    return STATUS_DONE;
  complain (_ ("Standard input could not be read."));
  return STATUS_READ;
}

static void
solve (guint i G_GNUC_UNUSED, gpointer data)
{
  Cut *cut = data;

  cut->plan = cutting_solve (cut->stock, cut->kerf, (const CuttingItem *) cut->items->data,
                             cut->items->len, 1, NULL, &cut->error);
}

static void
write_json (GString *text, const Cut *cut)
{
  Json json = json_begin (text);

  json_object (&json, NULL);
  json_string (&json, "schema", "halfbond.cut/1");
  json_length (&json, "stock", cut->stock);
  json_length (&json, "kerf", cut->kerf);
  json_int (&json, "bins", cut->plan->bins);
  json_int (&json, "bins_at_least", cut->plan->bins_at_least);
  json_bool (&json, "proven", cut->plan->proven);
  json_array (&json, "patterns");
  for (guint i = 0; i < cut->plan->patterns->len; i++)
    {
      const CuttingPattern *pattern = g_ptr_array_index (cut->plan->patterns, i);
      json_object (&json, NULL);
      json_int (&json, "times", pattern->times);
      json_array (&json, "pieces");
      for (guint p = 0; p < pattern->pieces->len; p++)
        json_length (&json, NULL, (Length) g_array_index (pattern->pieces, gint64, p));
      json_array_end (&json);
      json_object_end (&json);
    }
  json_array_end (&json);
  json_object_end (&json);
  json_end (&json);
}

/* What is left of the stock after a pattern, the saw's last cut taken off. */
static Length
rest (const Cut *cut, const CuttingPattern *pattern)
{
  gint64 left = cut->stock;

  for (guint i = 0; i < pattern->pieces->len; i++)
    left -= g_array_index (pattern->pieces, gint64, i) + cut->kerf;
  return (Length) MAX (left, 0);
}

static void
append_pattern (GString *text, const Cut *cut, const CuttingPattern *pattern)
{
  char length[LENGTH_TEXT_SIZE];

  g_string_append_printf (text, "%6d × ", pattern->times);
  for (guint i = 0; i < pattern->pieces->len; i++)
    g_string_append_printf (
        text, "%s%s", i ? " + " : "",
        length_text ((Length) g_array_index (pattern->pieces, gint64, i), length));
  g_string_append_printf (text, _ (", left over %s\n"), length_text (rest (cut, pattern), length));
}

static void
write_text (GString *text, const Cut *cut)
{
  char stock[LENGTH_TEXT_SIZE];
  const CuttingPlan *plan = cut->plan;

  g_string_append_printf (
      text, ngettext ("%d length of %s mm. ", "%d lengths of %s mm. ", (gulong) plan->bins),
      plan->bins, length_text (cut->stock, stock));
  if (plan->proven)
    g_string_append (text, _ ("Proven: fewer cannot give these pieces.\n"));
  else
    g_string_append_printf (
        text, _ ("At least %d are needed; whether fewer than %d will do is not known.\n"),
        plan->bins_at_least, plan->bins);
  for (guint i = 0; i < plan->patterns->len; i++)
    append_pattern (text, cut, g_ptr_array_index (plan->patterns, i));
}

static Status
read_and_solve (Cut *cut)
{
  const Status status = read_items (cut);

  if (status != STATUS_DONE)
    return status;
  jobs_run (1, solve, cut, _ ("Searching"));
  if (cut->plan)
    return STATUS_DONE;
  complain ("%s", cut->error->message);
  return STATUS_READ;
}

/* A cut that eats a stock whole is a slip of the keyboard. */
static gboolean
kerf_is_possible (const Cut *cut)
{
  char kerf[LENGTH_TEXT_SIZE], stock[LENGTH_TEXT_SIZE];

  if (cut->kerf < cut->stock)
    return TRUE;
  complain (_ ("--kerf: %s mm is too much, it must be less than the stock of %s mm."),
            length_text (cut->kerf, kerf), length_text (cut->stock, stock));
  return FALSE;
}

Status
verb_cut (int argc, char **argv)
{
  gboolean as_json = FALSE;
  g_autofree char *stock = NULL, *kerf = NULL, *output = NULL;
  const GOptionEntry entries[] = {
    { "stock", 0, 0, G_OPTION_ARG_STRING, &stock,
      N_ ("Length of the stock (a bar, a board), mm; read are lines of LENGTH QUANTITY"),
      N_ ("LENGTH") },
    { "kerf", 0, 0, G_OPTION_ARG_STRING, &kerf, N_ ("What a saw cut eats, mm (3)"), N_ ("K") },
    ARGUMENT_JSON (as_json),
    ARGUMENT_OUTPUT (output),
    ARGUMENT_END,
  };
  g_auto (Cut) cut = { .items = g_array_new (FALSE, FALSE, sizeof (CuttingItem)) };

  if (!arguments_read ("cut", entries, argc, argv, NULL))
    return STATUS_CALL;
  if (!stock)
    {
      complain (_ ("cut: how long is the stock? Say it with --stock LENGTH."));
      return STATUS_CALL;
    }
  if (!arguments_length ("stock", stock, 1, 0, &cut.stock)
      || !arguments_length ("kerf", kerf, 0, LENGTH_MM (3), &cut.kerf)
      || (kerf && !kerf_is_possible (&cut)))
    return STATUS_CALL;
  const Status status = read_and_solve (&cut);
  if (status != STATUS_DONE)
    return status;

  g_autoptr (GString) text = g_string_new (NULL);
  (as_json ? write_json : write_text) (text, &cut);
  return output_text (output, NULL, text);
}
