/* takeoff.c - halfbond-cli takeoff: the quantities */
#include "takeoff/takeoff.h"

#include <glib/gi18n.h>
#include <string.h>

#include "cli/arguments.h"
#include "cli/jobs.h"
#include "cli/json.h"
#include "cli/laid.h"
#include "cli/output.h"
#include "bond/stands.h"
#include "cli/saw-list.h"
#include "export/export.h"

/* Places behind the point in JSON: a cubic millimetre in m3, a thousandth of a gram in kg. */
#define JSON_DECIMALS 9

static void
write_item (Json *json, const Laid *laid, const TakeoffLine *line)
{
  json_object (json, NULL);
  json_string (json, "key", line->key);
  json_string (json, "name", line->name);
  json_number (json, "quantity", line->quantity, JSON_DECIMALS);
  json_string (json, "unit", line->unit);
  json_object (json, "walls");
  for (guint i = 0; i < laid->n; i++)
    json_number (json, project_wall_at (laid->project, i)->key, line->walls[i], JSON_DECIMALS);
  json_object_end (json);
  json_object_end (json);
}

static void
write_json (GString *text, const Laid *laid, const Takeoff *takeoff, gboolean rest)
{
  Json json = json_begin (text);

  json_object (&json, NULL);
  json_string (&json, "schema", "halfbond.takeoff/1");
  if (rest)
    json_bool (&json, "rest", TRUE);
  json_array (&json, "items");
  for (guint i = 0; i < takeoff->lines->len; i++)
    write_item (&json, laid, g_ptr_array_index (takeoff->lines, i));
  json_array_end (&json);
  saw_list_json (&json, laid, takeoff);
  json_object_end (&json);
  json_end (&json);
}

/* Pads by characters, where printf() counts bytes. */
static void
append_padded (GString *text, const char *word, glong width)
{
  g_string_append (text, word);
  for (glong n = g_utf8_strlen (word, -1); n < width; n++)
    g_string_append_c (text, ' ');
}

static glong
name_width (const Takeoff *takeoff)
{
  glong width = 0;

  for (guint i = 0; i < takeoff->lines->len; i++)
    {
      const TakeoffLine *line = g_ptr_array_index (takeoff->lines, i);
      width = MAX (width, g_utf8_strlen (_ (line->name), -1));
    }
  return width;
}

/* `rest` is what is still needed of it; NULL: nobody asked. */
static void
write_text (GString *text, const Takeoff *takeoff, const Takeoff *rest)
{
  const glong width = name_width (takeoff);
  const char *group = "";

  if (rest != NULL)
    {
      append_padded (text, "", width + 2);
      g_string_append_printf (text, "  %10s  %10s\n", _ ("in all"), _ ("still"));
    }
  for (guint i = 0; i < takeoff->lines->len; i++)
    {
      const TakeoffLine *line = g_ptr_array_index (takeoff->lines, i);
      const TakeoffLine *left = rest != NULL ? takeoff_line (rest, line->key) : NULL;
      if (strcmp (group, line->group) != 0)
        g_string_append_printf (text, "%s%s\n", i ? "\n" : "", _ (line->group));
      group = line->group;
      g_string_append (text, "  ");
      append_padded (text, _ (line->name), width);
      g_string_append_printf (text, "  %10.*f", line->decimals, line->quantity);
      if (rest != NULL)
        g_string_append_printf (text, "  %10.*f", line->decimals, left ? left->quantity : 0);
      g_string_append_printf (text, " %s\n", line->unit);
    }
}

typedef struct
{
  gboolean as_json, as_csv;
  gboolean saw;  /* not the quantities, but what is sawn from what */
  gboolean rest; /* of what does not stand yet */
} Form;

typedef struct
{
  const Laid *laid;
  gboolean rest;
  Takeoff *takeoff, *all; /* what was asked for; beside it, where that is the rest, all of it */
} Counting;

static void
count (guint i G_GNUC_UNUSED, gpointer data)
{
  Counting *counting = data;
  const Laid *laid = counting->laid;

  counting->all = takeoff_new (laid->project, laid->layouts, NULL);
  counting->takeoff
      = counting->rest ? takeoff_rest_new (laid->project, laid->layouts, NULL) : counting->all;
}

/* What was counted, by the layouts that its saw plans are of. */
static void
write_counted (GString *text, const Laid *laid, const Counting *counting, const Form *form)
{
  const Takeoff *takeoff = counting->takeoff;

  if (form->as_json)
    write_json (text, laid, takeoff, form->rest);
  else if (form->as_csv)
    {
      g_autofree char *csv = form->saw
                                 ? export_saw_csv (laid->project, laid->layouts, takeoff->saws)
                                 : export_takeoff_csv (laid->project, takeoff);
      g_string_append (text, csv);
    }
  else if (form->saw)
    saw_list_text (text, laid, takeoff);
  else
    write_text (text, counting->all, form->rest ? takeoff : NULL);
}

static void
write_takeoff (GString *text, const Laid *laid, const Form *form)
{
  Counting counting = { .laid = laid, .rest = form->rest };
  g_autoptr (GPtrArray) rests = g_ptr_array_new_with_free_func ((GDestroyNotify) layout_unref);
  Laid counted = *laid;

  jobs_run (1, count, &counting, _ ("Counting"));
  for (guint i = 0; form->rest && i < laid->n; i++)
    g_ptr_array_add (rests, stands_rest_of_layout (laid->layouts[i]));
  if (form->rest)
    counted.layouts = (Layout **) rests->pdata;
  write_counted (text, &counted, &counting, form);
  if (counting.takeoff != counting.all)
    takeoff_free (counting.takeoff);
  takeoff_free (counting.all);
}

Status
verb_takeoff (int argc, char **argv)
{
  Form form = { 0 };
  g_autofree char *output = NULL;
  const char *file;
  const GOptionEntry entries[] = {
    { "saw", 0, 0, G_OPTION_ARG_NONE, &form.saw,
      N_ ("The saw list: from which unit each cut piece comes (always in JSON)"), NULL },
    { "rest", 0, 0, G_OPTION_ARG_NONE, &form.rest,
      N_ ("What is still needed: without what stands already"), NULL },
    ARGUMENT_JSON (form.as_json),
    { "csv", 0, 0, G_OPTION_ARG_NONE, &form.as_csv, N_ ("Write CSV (RFC 4180)"), NULL },
    ARGUMENT_OUTPUT (output),
    ARGUMENT_END,
  };
  g_auto (Laid) laid = { 0 };

  if (!arguments_read ("takeoff", entries, argc, argv, &file))
    return STATUS_CALL;
  if (form.as_json && form.as_csv)
    {
      complain (_ ("takeoff: --json and --csv cannot both be written."));
      return STATUS_CALL;
    }
  const Status status = laid_read (file, NULL, &laid);
  if (status != STATUS_DONE)
    return status;

  g_autoptr (GString) text = g_string_new (NULL);
  write_takeoff (text, &laid, &form);
  return output_verdict (laid_verdict (&laid), output_text (output, file, text));
}
