/* built.c - halfbond-cli built: what stands, how far it is off the plan, what is still needed; and
 * figures of the site taken into a project */
#include <glib/gi18n.h>
#include <string.h>

#include "bond/lay.h"
#include "bond/stands.h"
#include "cli/arguments.h"
#include "cli/built-report.h"
#include "cli/jobs.h"
#include "cli/output.h"
#include "model/built-edit.h"

/* What takes a measured figure back. */
#define TAKEN_BACK "none"

/* A call; texts are NULL where the option was not given. */
typedef struct
{
  const char *file, *wall, *output, *into;
  gboolean as_json;
  int courses; /* -1: not given */
  int course;  /* of a top; 0: not given */
  char *as_of, *length, *top, *right;
  char *opening, *figures[N_FIGURES];
  char **limits; /* "plumb=8" */
  char *plumb, *bow, *bow_metre, *bed_least, *bed_most;
} BuiltCall;

/* --- figures --- */

/* FALSE after a message. *length is NULL where the figure is taken back. */
static gboolean
read_figure (const char *option, const char *text, Length *value, const Length **length)
{
  *length = NULL;
  if (strcmp (text, TAKEN_BACK) == 0)
    return TRUE;
  *length = value;
  if (length_parse_typed (text, value))
    return TRUE;
  complain (_ ("--%s: “%s” is no length, nor “none”."), option, text);
  return FALSE;
}

/* Takes the edit; where it is NULL, *fault says why. */
static Status
put (Project **project, Edit *taken, GError **fault)
{
  g_autoptr (Edit) edit = taken;
  g_autoptr (GError) refused = fault != NULL ? g_steal_pointer (fault) : NULL;
  Project *next = edit != NULL ? project_edit (*project, edit, &refused) : NULL;

  if (next == NULL)
    {
      complain ("built: %s", refused->message);
      return STATUS_CALL;
    }
  project_unref (*project);
  *project = next;
  return STATUS_DONE;
}

static Status
put_wall (Project **project, Wall *taken, GError **fault)
{
  g_autoptr (Wall) wall = taken;

  return put (project, wall != NULL ? edit_set_wall (wall) : NULL, fault);
}

/* "plumb=8" or "plumb=none". */
static Status
put_limit (Project **project, const char *text)
{
  g_auto (GStrv) parts = g_strsplit (text, "=", 2);
  ToleranceKind kind;
  Length value;
  const Length *limit;

  if (parts[0] == NULL || parts[1] == NULL || !tolerance_from_word (parts[0], &kind))
    {
      complain (_ ("built: --limit is one of length, top, level, bed, opening, plumb, bow, "
                   "bow-metre, with =MM or =none behind it; not “%s”."),
                text);
      return STATUS_CALL;
    }
  if (!read_figure ("limit", parts[1], &value, &limit))
    return STATUS_CALL;
  return put (project, edit_set_tolerance (kind, limit), NULL);
}

static Status
put_limits (Project **project, char **limits)
{
  Status status = STATUS_DONE;

  for (guint i = 0; status == STATUS_DONE && limits != NULL && limits[i] != NULL; i++)
    status = put_limit (project, limits[i]);
  return status;
}

/* As the wall is laid now, with all that was measured so far. */
static Status
put_courses (Project **project, const Wall *wall, const BuiltCall *call)
{
  g_autoptr (Layout) layout = lay_wall (wall, project_block (*project, wall->block), NULL);
  g_autoptr (GArray) laid = stands_of_layout (layout);
  const gint32 n = (gint32) layout->courses->len;
  GError *error = NULL;

  if (call->courses > n)
    {
      complain (ngettext ("built: %s has %d course; %d cannot stand.",
                          "built: %s has %d courses; %d cannot stand.", (gulong) n),
                wall_called (wall), n, call->courses);
      return STATUS_CALL;
    }
  return put_wall (project, built_set_courses (wall, call->courses, laid, call->as_of, &error),
                   &error);
}

static Status
put_top (Project **project, const Wall *wall, const BuiltCall *call)
{
  Length left, right;
  const Length *top, *other = NULL;
  GError *error = NULL;

  if (!read_figure ("top", call->top, &left, &top)
      || (call->right != NULL && !read_figure ("right", call->right, &right, &other)))
    return STATUS_CALL;
  return put_wall (project, built_set_top (wall, call->course, top, other, &error), &error);
}

static Status
put_opening (Project **project, const Wall *wall, const BuiltCall *call)
{
  const Opening *opening = NULL;
  Status status = STATUS_DONE;

  for (guint i = 0; i < wall->openings->len; i++)
    if (strcmp (wall_opening_at (wall, i)->key, call->opening) == 0)
      opening = wall_opening_at (wall, i);
  if (opening == NULL)
    {
      complain (_ ("built: %s has no opening “%s”."), wall_called (wall), call->opening);
      return STATUS_CALL;
    }
  const OpeningId id = opening->id;
  const WallId of = wall->id;
  for (OpeningFigure i = 0; status == STATUS_DONE && i < N_FIGURES; i++)
    {
      Length value;
      const Length *measured;
      GError *error = NULL;

      if (call->figures[i] == NULL)
        continue;
      if (!read_figure (opening_figure_word (i), call->figures[i], &value, &measured))
        return STATUS_CALL;
      status = put_wall (project,
                         built_set_opening (project_wall (*project, of), id, i, measured, &error),
                         &error);
    }
  return status;
}

static Status
put_figures (Project **project, WallId id, const BuiltCall *call)
{
  const struct
  {
    const char *option, *text;
    BuiltField field;
  } rows[] = { { "length", call->length, BUILT_PLANNED_LENGTH },
               { "plumb", call->plumb, BUILT_PLUMB },
               { "bow", call->bow, BUILT_BOW },
               { "bow-metre", call->bow_metre, BUILT_BOW_METRE },
               { "bed-least", call->bed_least, BUILT_BED_LEAST },
               { "bed-most", call->bed_most, BUILT_BED_MOST } };
  Status status = STATUS_DONE;

  for (guint i = 0; status == STATUS_DONE && i < G_N_ELEMENTS (rows); i++)
    {
      const Wall *wall = project_wall (*project, id);
      Length value;
      const Length *measured;

      if (rows[i].text == NULL)
        continue;
      if (!read_figure (rows[i].option, rows[i].text, &value, &measured))
        return STATUS_CALL;
      status = put_wall (project,
                         rows[i].field == BUILT_PLANNED_LENGTH
                             ? built_set_length (wall, measured)
                             : built_set_figure (wall, rows[i].field, measured),
                         NULL);
    }
  return status;
}

/* All that the call says, in this order: the wall's figures, how far it is laid, a top, an opening;
 * all of it or nothing. */
static Status
put_all (Project **project, const Wall *wall, const BuiltCall *call)
{
  const WallId id = wall->id;
  Status status = put_figures (project, id, call);

  if (status == STATUS_DONE && call->courses >= 0)
    status = put_courses (project, project_wall (*project, id), call);
  if (status == STATUS_DONE && call->top != NULL)
    status = put_top (project, project_wall (*project, id), call);
  if (status == STATUS_DONE && call->opening != NULL)
    status = put_opening (project, project_wall (*project, id), call);
  return status;
}

/* --- the call --- */

static gboolean
says_figure_of_opening (const BuiltCall *call)
{
  for (guint i = 0; i < N_FIGURES; i++)
    if (call->figures[i] != NULL)
      return TRUE;
  return FALSE;
}

static gboolean
measures (const BuiltCall *call)
{
  return call->courses >= 0 || call->length != NULL || call->top != NULL || call->opening != NULL
         || call->plumb != NULL || call->bow != NULL || call->bow_metre != NULL
         || call->bed_least != NULL || call->bed_most != NULL;
}

static gboolean
is_clear (const BuiltCall *call)
{
  if ((call->course != 0) != (call->top != NULL) || (call->right != NULL && call->top == NULL))
    complain (_ ("built: --course, --top and --right go together; --right may be left out."));
  else if ((call->opening != NULL) != says_figure_of_opening (call))
    complain (_ ("built: --opening goes with one or more of --x, --width, --sill and --height."));
  else if (call->as_of != NULL && call->courses < 0)
    complain (_ ("built: --as-of goes with --courses."));
  else if (call->courses < -1)
    complain (_ ("built: --courses is 0 or more."));
  else if (measures (call) && call->wall == NULL)
    complain (_ ("built: a figure of the site is of a wall: say --wall ID."));
  else if ((measures (call) || call->limits != NULL) != (call->into != NULL))
    complain (_ ("built: figures of the site go with --into FILE, the project as it is then."));
  else
    return TRUE;
  return FALSE;
}

typedef struct
{
  const Laid *laid;
  Takeoff *all, *rest;
} Counting;

static void
count (guint i G_GNUC_UNUSED, gpointer data)
{
  Counting *counting = data;

  counting->all = takeoff_new (counting->laid->project, counting->laid->layouts, NULL);
  counting->rest = takeoff_rest_new (counting->laid->project, counting->laid->layouts, NULL);
}

static Status
report (const BuiltCall *call, Project *project)
{
  g_autoptr (GString) text = g_string_new (NULL);
  g_auto (Laid) laid = { 0 };
  Counting counting = { &laid, NULL, NULL };
  const Status status = laid_of (call->file, project, call->wall, &laid);

  if (status != STATUS_DONE)
    return status;
  laid_lay_all (&laid);
  jobs_run (1, count, &counting, _ ("Counting"));
  (call->as_json ? built_report_json : built_report_text) (text, &laid, counting.all,
                                                           counting.rest);
  takeoff_free (counting.all);
  takeoff_free (counting.rest);
  return output_verdict (laid_verdict (&laid), output_text (call->output, call->file, text));
}

static Status
built (const BuiltCall *call)
{
  Project *project = NULL;
  Status status = laid_project (call->file, &project);
  const Wall *wall = NULL;

  if (status == STATUS_DONE)
    status = put_limits (&project, call->limits);
  if (status == STATUS_DONE && measures (call))
    {
      wall = project_wall_by_key (project, call->wall);
      if (wall == NULL)
        complain (_ ("%s has no wall “%s”."), call->file, call->wall);
      status = wall != NULL ? put_all (&project, wall, call) : STATUS_CALL;
    }
  if (status == STATUS_DONE && call->into != NULL)
    status = output_project (call->into, call->file, project);
  if (status == STATUS_DONE)
    return report (call, project);
  if (project != NULL)
    project_unref (project);
  return status;
}

static void
call_clear (BuiltCall *call)
{
  char **const texts[]
      = { &call->as_of, &call->length, &call->top,       &call->right,     &call->opening,
          &call->plumb, &call->bow,    &call->bow_metre, &call->bed_least, &call->bed_most };

  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    g_clear_pointer (texts[i], g_free);
  for (guint i = 0; i < N_FIGURES; i++)
    g_clear_pointer (&call->figures[i], g_free);
  g_clear_pointer (&call->limits, g_strfreev);
}

#define FIGURE(name, variable, words)                                                              \
  {                                                                                                \
    name, 0, 0, G_OPTION_ARG_STRING, &(variable), words, N_ ("MM")                                 \
  }

Status
verb_built (int argc, char **argv)
{
  g_autofree char *wall = NULL, *output = NULL, *into = NULL;
  BuiltCall call = { .courses = -1 };
  Status status = STATUS_CALL;
  const GOptionEntry entries[] = {
    ARGUMENT_WALL (wall),
    { "courses", 0, 0, G_OPTION_ARG_INT, &call.courses,
      N_ ("It is laid up to that course, as it would be laid now"), N_ ("N") },
    { "as-of", 0, 0, G_OPTION_ARG_STRING, &call.as_of, N_ ("With --courses: a date"), N_ ("DATE") },
    FIGURE ("length", call.length, N_ ("Its length as measured; “none” takes a figure back")),
    { "course", 0, 0, G_OPTION_ARG_INT, &call.course, N_ ("The course that --top is of"),
      N_ ("N") },
    FIGURE ("top", call.top, N_ ("Its top above the foundation as measured, at the left end")),
    FIGURE ("right", call.right, N_ ("The same at the right end")),
    { "opening", 0, 0, G_OPTION_ARG_STRING, &call.opening, N_ ("The opening that was measured"),
      N_ ("ID") },
    FIGURE ("x", call.figures[FIGURE_X], N_ ("Its left jamb, from the wall's left end")),
    FIGURE ("width", call.figures[FIGURE_WIDTH], N_ ("Between its jambs")),
    FIGURE ("sill", call.figures[FIGURE_SILL], N_ ("Its sill above the foundation")),
    FIGURE ("height", call.figures[FIGURE_HEIGHT], N_ ("From its sill to its head")),
    FIGURE ("plumb", call.plumb, N_ ("Out of plumb in its height, + outwards")),
    FIGURE ("bow", call.bow, N_ ("Off its line over its length, + outwards")),
    FIGURE ("bow-metre", call.bow_metre, N_ ("Off its line in any one metre")),
    FIGURE ("bed-least", call.bed_least, N_ ("The thinnest next bed")),
    FIGURE ("bed-most", call.bed_most, N_ ("The thickest next bed")),
    { "limit", 0, 0, G_OPTION_ARG_STRING_ARRAY, &call.limits,
      N_ ("A limit of the project's own, such as plumb=8; none takes it back"), N_ ("OF=MM") },
    { "into", 0, 0, G_OPTION_ARG_FILENAME, &into, N_ ("Write the project with these figures"),
      N_ ("FILE") },
    ARGUMENT_JSON (call.as_json),
    ARGUMENT_OUTPUT (output),
    ARGUMENT_END,
  };

  if (arguments_read ("built", entries, argc, argv, &call.file))
    {
      call.wall = wall;
      call.output = output;
      call.into = into;
      status = is_clear (&call) ? built (&call) : STATUS_CALL;
    }
  call_clear (&call);
  return status;
}
