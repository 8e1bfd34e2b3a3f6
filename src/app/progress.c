#include "app/progress.h"

#include <glib/gi18n.h>

#include "app/tool.h"
#include "bond/gauge.h"
#include "bond/stands.h"
#include "model/built-edit.h"

struct HbProgress
{
  HbDocument *document;
  HbAnswers *answers;
  HbProgressTold told;
  gpointer data;
  WallId wall; /* what waits for its layout; none: nothing does */
  gint32 courses;
  guint again; /* source that tries once more */
};

static void
tell (HbProgress *self, const Wall *wall, gint32 n)
{
  g_autofree char *sentence
      = wall_standing (wall) == 0
            ? g_strdup_printf (_ ("Nothing of %s stands."), tool_wall_name (wall))
            : g_strdup_printf (_ ("%s: laid up to course %d of %d."), tool_wall_name (wall),
                               wall_standing (wall), n);

  self->told (sentence, FALSE, self->data);
}

static void
apply (HbProgress *self, const Wall *wall, gint32 courses, const GArray *laid)
{
  const WallId id = wall->id;
  g_autoptr (GError) error = NULL;
  g_autoptr (Wall) next = built_set_courses (wall, courses, laid, NULL, &error);
  g_autoptr (Edit) edit = next ? edit_set_wall (next) : NULL;
  g_autofree char *label
      = courses > 0 ? g_strdup_printf (_ ("%s laid to course %d"), tool_wall_name (wall), courses)
                    : g_strdup_printf (_ ("%s: nothing stands"), tool_wall_name (wall));

  if (edit && hb_document_apply (self->document, edit, label, &error))
    tell (self, project_wall (hb_document_get_project (self->document), id),
          hb_progress_n_courses (self, id));
  else
    self->told (error->message, TRUE, self->data);
}

static void
set_now (HbProgress *self, const Wall *wall, gint32 courses)
{
  const Layout *layout = hb_answers_get_layout (self->answers, wall->id);
  g_autoptr (GArray) laid = NULL;

  if (courses == wall_standing (wall))
    return;
  if (courses > wall_standing (wall) && !layout)
    {
      self->wall = wall->id;
      self->courses = courses;
      return;
    }
  if (courses > wall_standing (wall))
    laid = stands_of_layout (layout);
  apply (self, wall, courses, laid);
}

gint32
hb_progress_n_courses (HbProgress *self, WallId id)
{
  const Project *project = hb_document_get_project (self->document);
  const Wall *wall = project_wall (project, id);
  const Block *block = wall ? project_block (project, wall->block) : NULL;
  Laying laying;

  if (!wall)
    return 0;
  laying = laying_resolve (&wall->laying, block);
  return gauge_n_courses (wall, block, &laying);
}

void
hb_progress_set (HbProgress *self, WallId id, gint32 courses)
{
  const Wall *wall = project_wall (hb_document_get_project (self->document), id);

  self->wall = (WallId){ 0 };
  if (wall)
    set_now (self, wall, CLAMP (courses, 0, hb_progress_n_courses (self, id)));
}

static gboolean
again_cb (gpointer data)
{
  HbProgress *self = data;

  self->again = 0;
  hb_progress_set (self, self->wall, self->courses);
  return G_SOURCE_REMOVE;
}

/* Not at once: whoever tells of it is not done yet. */
static void
laid_cb (HbProgress *self, guint wall)
{
  if (self->wall.n && wall == self->wall.n && !self->again)
    self->again = g_idle_add (again_cb, self);
}

static void
changed_cb (HbProgress *self)
{
  self->wall = (WallId){ 0 };
}

HbProgress *
hb_progress_new (HbDocument *document, HbAnswers *answers, HbProgressTold told, gpointer data)
{
  HbProgress *self = g_new0 (HbProgress, 1);

  self->document = document;
  self->answers = answers;
  self->told = told;
  self->data = data;
  g_signal_connect_swapped (document, "changed", G_CALLBACK (changed_cb), self);
  g_signal_connect_swapped (answers, "laid", G_CALLBACK (laid_cb), self);
  return self;
}

void
hb_progress_free (HbProgress *self)
{
  g_clear_handle_id (&self->again, g_source_remove);
  g_signal_handlers_disconnect_by_data (self->document, self);
  g_signal_handlers_disconnect_by_data (self->answers, self);
  g_free (self);
}
