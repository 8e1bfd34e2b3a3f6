/* explain.c - the lit piece explained in words */
#include "app/explain.h"

#include <glib/gi18n.h>

#include "advice/why.h"
#include "app/tool.h"
#include "takeoff/saw-text.h"

/* Layouts of all walls in the project's order, and the number of the wall; NULL when they are not
 * those that were counted. */
static GPtrArray *
counted_layouts (const Project *project, HbAnswers *answers, WallId wall, guint *number)
{
  const GArray *counted = hb_answers_get_counted_walls (answers);
  g_autoptr (GPtrArray) layouts = g_ptr_array_new ();

  if (!hb_answers_is_settled (answers) || !hb_answers_get_takeoff (answers) || !counted
      || counted->len != project->walls->len)
    return NULL;
  for (guint i = 0; i < project->walls->len; i++)
    {
      const WallId id = project_wall_at (project, i)->id;
      const Layout *layout = hb_answers_get_layout (answers, id);

      if (!layout || g_array_index (counted, WallId, i).n != id.n)
        return NULL;
      if (id.n == wall.n)
        *number = i;
      g_ptr_array_add (layouts, (gpointer) layout);
    }
  return g_steal_pointer (&layouts);
}

static char *
dup_unit (const Project *project, HbAnswers *answers, const Wall *wall, guint piece)
{
  guint number = 0;
  g_autoptr (GPtrArray) layouts = counted_layouts (project, answers, wall->id, &number);
  const SawPlan *plan;

  if (!layouts)
    return NULL;
  plan = saw_plan_of_wall (hb_answers_get_takeoff (answers)->saws, project, wall);
  return plan ? saw_text_piece (plan, project, (Layout *const *) layouts->pdata, number, piece)
              : NULL;
}

gboolean
hb_explain_piece (HbDocument *document, HbAnswers *answers, WallId id, gint32 course, gint32 number,
                  char **is, char **text)
{
  const Project *project = hb_document_get_project (document);
  const Wall *wall = id.n ? project_wall (project, id) : NULL;
  const Layout *layout = wall ? hb_answers_get_layout (answers, id) : NULL;
  const Piece *piece = layout ? tool_piece (layout, course, number) : NULL;
  const Block *block = piece ? project_block (project, wall->block) : NULL;
  g_autofree char *reason = NULL, *laps = NULL, *unit = NULL;
  guint i;
  Why why;

  if (!block)
    return FALSE;
  i = (guint) (piece - layout_piece (layout, 0));
  why = why_piece (wall, block, layout, i);
  reason = why_dup_reason (&why, wall, block, layout, i);
  laps = why_dup_laps (&why);
  unit = dup_unit (project, answers, wall, i);
  *is = why_dup_is (block, layout, i);
  *text = g_strdup_printf ("%s%s%s%s%s%s%s", reason, unit ? "\n" : "", unit ? unit : "",
                           unit ? "." : "", laps ? "\n" : "", laps ? laps : "", laps ? "." : "");
  return TRUE;
}
