/* check.c - halfbond-cli check: what breaks a rule, and where */
#include <glib/gi18n.h>
#include <string.h>

#include "advice/findings.h"
#include "cli/arguments.h"
#include "cli/bearing-table.h"
#include "cli/jobs.h"
#include "cli/json.h"
#include "cli/laid.h"
#include "cli/output.h"

typedef struct
{
  const Laid *laid;
  const Judge *judge;
  GPtrArray **findings; /* of each wall */
} Judged;

static void
judge_one (guint i, gpointer data)
{
  Judged *judged = data;

  judged->findings[i] = judge_findings (judged->judge, project_wall_at (judged->laid->project, i),
                                        judged->laid->layouts[i], NULL);
}

/* Of all walls, in the project's order: Finding *. Mends are tried by laying, so that it takes
 * longer than to lay the walls. */
static GPtrArray *
find_all (const Laid *laid)
{
  g_autoptr (Judge) judge = judge_new (laid->project);
  g_autofree GPtrArray **findings = g_new0 (GPtrArray *, laid->n + 1);
  Judged judged = { laid, judge, findings };
  GPtrArray *all = g_ptr_array_new_with_free_func ((GDestroyNotify) finding_free);

  jobs_run (laid->n, judge_one, &judged, _ ("Judging walls"));
  for (guint i = 0; i < laid->n; i++)
    g_ptr_array_extend_and_steal (all, findings[i]);
  return all;
}

static void
write_finding (Json *json, const Project *project, const Finding *finding)
{
  const Wall *wall = project_wall (project, finding->wall);
  const Opening *opening = wall_opening (wall, finding->opening);

  json_object (json, NULL);
  json_string (json, "rule", finding->rule);
  json_string (json, "severity", severity_word (finding->severity));
  json_string (json, "wall", wall->key);
  if (opening)
    json_string (json, "opening", opening->key);
  json_int (json, "course", finding->course);
  json_length (json, "x", finding->x);
  json_string (json, "text", finding->text);
  if (finding->mend_text)
    json_string (json, "mend", finding->mend_text);
  json_object_end (json);
}

static void
write_json (GString *text, const Project *project, const GPtrArray *findings, gboolean bearings)
{
  Json json = json_begin (text);

  json_object (&json, NULL);
  json_string (&json, "schema", "halfbond.check/1");
  json_array (&json, "findings");
  for (guint i = 0; i < findings->len; i++)
    write_finding (&json, project, g_ptr_array_index (findings, i));
  json_array_end (&json);
  if (bearings)
    bearings_write_json (&json, project);
  json_object_end (&json);
  json_end (&json);
}

static void
append_finding (GString *text, const Project *project, const Finding *finding)
{
  static const char *const words[] = {
    [SEVERITY_BREACH] = N_ ("breach"),
    [SEVERITY_WARNING] = N_ ("warning"),
    [SEVERITY_NOTE] = N_ ("note"),
  };
  g_autofree char *said = output_line (finding->text);
  char x[LENGTH_TEXT_SIZE];

  g_string_append (text, project_wall (project, finding->wall)->key);
  if (finding->course > 0)
    g_string_append_printf (text, _ (", course %d at %s mm"), finding->course,
                            length_text (finding->x, x));
  g_string_append_printf (text, ": %s: %s\n", _ (words[finding->severity]), said);
  if (finding->mend_text)
    {
      g_autofree char *mend = output_line (finding->mend_text);
      g_string_append_printf (text, _ ("    mend: %s\n"), mend);
    }
}

static void
write_text (GString *text, const Project *project, const GPtrArray *findings, gboolean bearings)
{
  if (project->walls->len == 0)
    g_string_append (text, _ ("There is no wall in this project.\n"));
  else if (findings->len == 0)
    g_string_append (text, _ ("No findings: every wall can be laid within its rules.\n"));
  for (guint i = 0; i < findings->len; i++)
    append_finding (text, project, g_ptr_array_index (findings, i));
  if (bearings && project->walls->len > 0)
    bearings_write_text (text, project);
}

static Status
verdict (const GPtrArray *findings)
{
  for (guint i = 0; i < findings->len; i++)
    if (((const Finding *) g_ptr_array_index (findings, i))->severity == SEVERITY_BREACH)
      return STATUS_BREACH;
  return STATUS_DONE;
}

Status
verb_check (int argc, char **argv)
{
  gboolean as_json = FALSE, bearings = FALSE;
  g_autofree char *output = NULL;
  const char *file;
  const GOptionEntry entries[] = {
    { "bearings", 0, 0, G_OPTION_ARG_NONE, &bearings,
      N_ ("Also list what lintels bring to the masonry under their ends, as far as it is known"),
      NULL },
    ARGUMENT_JSON (as_json),
    ARGUMENT_OUTPUT (output),
    ARGUMENT_END,
  };
  g_auto (Laid) laid = { 0 };

  if (!arguments_read ("check", entries, argc, argv, &file))
    return STATUS_CALL;
  const Status status = laid_read (file, NULL, &laid);
  if (status != STATUS_DONE)
    return status;

  g_autoptr (GPtrArray) findings = find_all (&laid);
  g_autoptr (GString) text = g_string_new (NULL);
  (as_json ? write_json : write_text) (text, laid.project, findings, bearings);
  return output_verdict (verdict (findings), output_text (output, file, text));
}
