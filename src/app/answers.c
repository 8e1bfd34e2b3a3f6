#include "app/answers.h"

#include "advice/findings.h"
#include "advice/saving.h"
#include "app/job.h"
#include "app/layout-cache.h"
#include "bond/lay.h"

/* How long the main thread waits for the wall that is looked at, so that a small wall never shows
 * an old answer for one frame; and how long the worker lays before it hands over what it has. */
#define PATIENCE (8 * G_TIME_SPAN_MILLISECOND)
#define BATCH (25 * G_TIME_SPAN_MILLISECOND)
/* Layouts kept beside those of the present walls: for undo, and for a hand that goes back. */
#define SPARE_LAYOUTS 200

struct _HbAnswers
{
  GObject parent;

  HbDocument *document;
  WallId wall;
  LayoutCache *cache;
  GHashTable *latest; /* WallId.n -> Layout */
  Takeoff *takeoff;
  GArray *counted; /* WallId */
  GPtrArray *findings;
  GPtrArray *savings;
  gboolean counted_now, found_now, advised_now; /* they are of the present value */
  HbJob *laying, *counting, *finding, *advising;
};

enum
{
  SIGNAL_LAID,
  SIGNAL_COUNTED,
  SIGNAL_FOUND,
  SIGNAL_ADVISED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (HbAnswers, hb_answers, G_TYPE_OBJECT)

/* ---- in the worker: one wall after another ---- */

typedef struct
{
  Wall *wall;
  Block block;
  Layout *layout; /* the answer */
} ToLay;

static void
to_lay_free (gpointer data)
{
  ToLay *one = data;

  wall_unref (one->wall);
  block_clear (&one->block);
  g_clear_pointer (&one->layout, layout_unref);
  g_free (one);
}

/* Lays as many as fit in a batch, one at least; those that it did not come to are left off. */
static gpointer
lay_batch (gpointer input, const gint *stop)
{
  GPtrArray *walls = input;
  GPtrArray *laid = g_ptr_array_new_with_free_func (to_lay_free);
  const gint64 end = g_get_monotonic_time () + BATCH;

  while (walls->len && !g_atomic_int_get (stop) && (!laid->len || g_get_monotonic_time () < end))
    {
      ToLay *one = g_ptr_array_steal_index (walls, 0);

      one->layout = lay_wall (one->wall, &one->block, stop);
      if (one->layout)
        g_ptr_array_add (laid, one);
      else
        to_lay_free (one);
    }
  return laid;
}

/* ---- in the worker: quantities and findings ---- */

typedef struct
{
  Project *project;
  Layout **layouts; /* one per wall */
  guint n;
  WallId wall;
} Laid;

static void
laid_free (gpointer data)
{
  Laid *laid = data;

  for (guint i = 0; i < laid->n; i++)
    layout_unref (laid->layouts[i]);
  g_free (laid->layouts);
  project_unref (laid->project);
  g_free (laid);
}

typedef struct
{
  Takeoff *takeoff;
  GArray *walls;
} Count;

static void
count_free (gpointer data)
{
  Count *count = data;

  g_clear_pointer (&count->takeoff, takeoff_free);
  g_clear_pointer (&count->walls, g_array_unref);
  g_free (count);
}

static gpointer
count_all (gpointer input, const gint *stop)
{
  const Laid *laid = input;
  Takeoff *takeoff = takeoff_new (laid->project, laid->layouts, stop);
  Count *count;

  if (!takeoff)
    return NULL;
  count = g_new0 (Count, 1);
  count->takeoff = takeoff;
  count->walls = g_array_new (FALSE, FALSE, sizeof (WallId));
  for (guint i = 0; i < laid->n; i++)
    g_array_append_val (count->walls, project_wall_at (laid->project, i)->id);
  return count;
}

static gpointer
find_all (gpointer input, const gint *stop)
{
  const Laid *laid = input;

  g_autoptr (Judge) judge = judge_new (laid->project);

  return judge_findings (judge, project_wall (laid->project, laid->wall), laid->layouts[0], stop);
}

/* Nobody waits for it: it gives way to those that lay and draw. */
static gpointer
advise_all (gpointer input, const gint *stop)
{
  const Laid *laid = input;

  hb_job_stand_back ();
  return savings_of_wall (laid->project, project_wall (laid->project, laid->wall),
                          g_get_num_processors (), stop);
}

/* ---- in the main thread ---- */

static const Block *
block_of (const Project *project, const Wall *wall)
{
  return project_block (project, wall->block);
}

static Layout *
known (HbAnswers *self, const Project *project, const Wall *wall)
{
  return layout_cache_get (self->cache, wall, block_of (project, wall));
}

static void
want (GPtrArray *walls, const Project *project, const Wall *wall)
{
  ToLay *one = g_new0 (ToLay, 1);

  one->wall = wall_ref (wall);
  one->block = block_copy (block_of (project, wall));
  g_ptr_array_add (walls, one);
}

/* What is to be laid still, the wall that is looked at first. */
static GPtrArray *
missing_walls (HbAnswers *self, const Project *project)
{
  GPtrArray *walls = g_ptr_array_new_with_free_func (to_lay_free);
  const Wall *first = self->wall.n ? project_wall (project, self->wall) : NULL;

  if (first && !known (self, project, first))
    want (walls, project, first);
  for (guint i = 0; i < project->walls->len; i++)
    {
      const Wall *wall = project_wall_at (project, i);

      if (wall != first && !known (self, project, wall))
        want (walls, project, wall);
    }
  return walls;
}

static void
count (HbAnswers *self, const Project *project)
{
  Laid *laid = g_new0 (Laid, 1);

  laid->project = project_ref (project);
  laid->n = project->walls->len;
  laid->layouts = g_new0 (Layout *, laid->n + 1);
  for (guint i = 0; i < laid->n; i++)
    laid->layouts[i] = layout_ref (known (self, project, project_wall_at (project, i)));
  hb_job_start (self->counting, laid);
}

static void
find (HbAnswers *self, const Project *project, Layout *layout)
{
  Laid *laid = g_new0 (Laid, 1);

  laid->project = project_ref (project);
  laid->n = 1;
  laid->layouts = g_new0 (Layout *, 2);
  laid->layouts[0] = layout_ref (layout);
  laid->wall = self->wall;
  hb_job_start (self->finding, laid);
}

static void
seek_findings (HbAnswers *self, const Project *project)
{
  const Wall *wall = self->wall.n ? project_wall (project, self->wall) : NULL;
  Layout *layout = wall ? known (self, project, wall) : NULL;

  if (self->found_now || !layout || hb_job_is_busy (self->finding))
    return;
  find (self, project, layout);
}

/* When all else is known and no hand is at work. */
static void
seek_savings (HbAnswers *self, const Project *project)
{
  Laid *laid;

  if (self->advised_now || !self->found_now || !self->wall.n || !project_wall (project, self->wall)
      || hb_document_has_preview (self->document) || hb_job_is_busy (self->advising))
    return;
  laid = g_new0 (Laid, 1);
  laid->project = project_ref (project);
  laid->layouts = g_new0 (Layout *, 1);
  laid->wall = self->wall;
  hb_job_start (self->advising, laid);
}

/* Starts whatever is next. */
static void
go_on (HbAnswers *self)
{
  const Project *project = hb_document_get_project (self->document);
  GPtrArray *walls;

  if (!self->laying)
    return;
  seek_findings (self, project);
  walls = missing_walls (self, project);
  if (walls->len)
    {
      hb_job_start (self->laying, walls);
      return;
    }
  g_ptr_array_unref (walls);
  if (!self->counted_now && !hb_job_is_busy (self->counting))
    count (self, project);
  if (self->counted_now)
    seek_savings (self, project);
}

static void
land_layouts (gpointer result, gpointer data)
{
  g_autoptr (GPtrArray) laid = result;
  HbAnswers *self = data;

  for (guint i = 0; i < laid->len; i++)
    {
      ToLay *one = g_ptr_array_index (laid, i);

      layout_cache_put (self->cache, one->wall, &one->block, one->layout);
      g_hash_table_insert (self->latest, GUINT_TO_POINTER (one->wall->id.n),
                           layout_ref (one->layout));
    }
  for (guint i = 0; i < laid->len; i++)
    g_signal_emit (self, signals[SIGNAL_LAID], 0,
                   ((ToLay *) g_ptr_array_index (laid, i))->wall->id.n);
  go_on (self);
}

static void
land_count (gpointer result, gpointer data)
{
  HbAnswers *self = data;
  Count *count = result;

  g_clear_pointer (&self->takeoff, takeoff_free);
  self->takeoff = g_steal_pointer (&count->takeoff);
  g_array_unref (self->counted);
  self->counted = g_steal_pointer (&count->walls);
  count_free (count);
  self->counted_now = TRUE;
  g_signal_emit (self, signals[SIGNAL_COUNTED], 0);
  go_on (self);
}

static void
set_findings (HbAnswers *self, GPtrArray *findings)
{
  g_clear_pointer (&self->findings, g_ptr_array_unref);
  self->findings = findings;
  self->found_now = findings != NULL;
  g_signal_emit (self, signals[SIGNAL_FOUND], 0);
}

static void
land_findings (gpointer result, gpointer data)
{
  set_findings (data, result);
  go_on (data);
}

static void
set_savings (HbAnswers *self, GPtrArray *savings)
{
  g_clear_pointer (&self->savings, g_ptr_array_unref);
  self->savings = savings;
  self->advised_now = savings != NULL;
  g_signal_emit (self, signals[SIGNAL_ADVISED], 0);
}

/* Whether a finding has a button with the same words. */
static gboolean
is_offered (const GPtrArray *findings, const Finding *saving)
{
  for (guint i = 0; findings && i < findings->len; i++)
    if (g_strcmp0 (((const Finding *) g_ptr_array_index (findings, i))->mend_text,
                   saving->mend_text)
        == 0)
      return TRUE;
  return FALSE;
}

/* What a finding offers already is not told twice. */
static void
land_savings (gpointer result, gpointer data)
{
  HbAnswers *self = data;
  GPtrArray *savings = result;

  for (guint i = savings->len; i-- > 0;)
    if (is_offered (self->findings, g_ptr_array_index (savings, i)))
      g_ptr_array_remove_index (savings, i);
  set_savings (self, savings);
}

/* What was advised is of another value from now on. */
static void
overtake_savings (HbAnswers *self)
{
  hb_job_cancel (self->advising);
  if (!self->advised_now)
    return;
  self->advised_now = FALSE;
  g_signal_emit (self, signals[SIGNAL_ADVISED], 0);
}

/* A wall whose present value was laid before shows that at once. */
static void
recall (HbAnswers *self, const Project *project)
{
  for (guint i = 0; i < project->walls->len; i++)
    {
      const Wall *wall = project_wall_at (project, i);
      Layout *layout = known (self, project, wall);
      gpointer key = GUINT_TO_POINTER (wall->id.n);

      if (!layout || g_hash_table_lookup (self->latest, key) == layout)
        continue;
      g_hash_table_insert (self->latest, key, layout_ref (layout));
      g_signal_emit (self, signals[SIGNAL_LAID], 0, wall->id.n);
    }
}

static void
changed_cb (HbAnswers *self)
{
  const Project *project = hb_document_get_project (self->document);

  if (!self->laying)
    return;
  layout_cache_set_limit (self->cache, project->walls->len + SPARE_LAYOUTS);
  self->counted_now = FALSE;
  self->found_now = FALSE;
  hb_job_cancel (self->counting);
  hb_job_cancel (self->finding);
  hb_job_cancel (self->laying);
  overtake_savings (self);
  recall (self, project);
  go_on (self);
  if (hb_job_is_busy (self->laying))
    hb_job_wait (self->laying, PATIENCE);
}

static void
hb_answers_dispose (GObject *object)
{
  hb_answers_stop (HB_ANSWERS (object));
  G_OBJECT_CLASS (hb_answers_parent_class)->dispose (object);
}

static void
hb_answers_finalize (GObject *object)
{
  HbAnswers *self = HB_ANSWERS (object);

  layout_cache_free (self->cache);
  g_hash_table_unref (self->latest);
  g_array_unref (self->counted);
  g_clear_pointer (&self->takeoff, takeoff_free);
  g_clear_pointer (&self->findings, g_ptr_array_unref);
  g_clear_pointer (&self->savings, g_ptr_array_unref);
  G_OBJECT_CLASS (hb_answers_parent_class)->finalize (object);
}

static void
hb_answers_class_init (HbAnswersClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->dispose = hb_answers_dispose;
  object_class->finalize = hb_answers_finalize;
  signals[SIGNAL_LAID] = g_signal_new ("laid", HB_TYPE_ANSWERS, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                       NULL, G_TYPE_NONE, 1, G_TYPE_UINT);
  signals[SIGNAL_COUNTED] = g_signal_new ("counted", HB_TYPE_ANSWERS, G_SIGNAL_RUN_LAST, 0, NULL,
                                          NULL, NULL, G_TYPE_NONE, 0);
  signals[SIGNAL_FOUND] = g_signal_new ("found", HB_TYPE_ANSWERS, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                        NULL, G_TYPE_NONE, 0);
  signals[SIGNAL_ADVISED] = g_signal_new ("advised", HB_TYPE_ANSWERS, G_SIGNAL_RUN_LAST, 0, NULL,
                                          NULL, NULL, G_TYPE_NONE, 0);
}

static void
unref_layout (gpointer layout)
{
  layout_unref (layout);
}

static void
unref_array (gpointer array)
{
  g_ptr_array_unref (array);
}

static void
hb_answers_init (HbAnswers *self)
{
  self->cache = layout_cache_new (SPARE_LAYOUTS);
  self->latest = g_hash_table_new_full (NULL, NULL, NULL, unref_layout);
  self->counted = g_array_new (FALSE, FALSE, sizeof (WallId));
  self->laying = hb_job_new ("lay", lay_batch, unref_array, land_layouts, unref_array, self);
  self->counting = hb_job_new ("count", count_all, laid_free, land_count, count_free, self);
  self->finding = hb_job_new ("find", find_all, laid_free, land_findings, unref_array, self);
  self->advising = hb_job_new ("advise", advise_all, laid_free, land_savings, unref_array, self);
}

HbAnswers *
hb_answers_new (HbDocument *document)
{
  HbAnswers *self = g_object_new (HB_TYPE_ANSWERS, NULL);

  self->document = g_object_ref (document);
  g_signal_connect_object (document, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  go_on (self);
  return self;
}

void
hb_answers_stop (HbAnswers *self)
{
  g_return_if_fail (HB_IS_ANSWERS (self));
  g_clear_pointer (&self->laying, hb_job_free);
  g_clear_pointer (&self->counting, hb_job_free);
  g_clear_pointer (&self->finding, hb_job_free);
  g_clear_pointer (&self->advising, hb_job_free);
  if (self->document)
    g_signal_handlers_disconnect_by_func (self->document, changed_cb, self);
  g_clear_object (&self->document);
}

WallId
hb_answers_get_wall (HbAnswers *self)
{
  g_return_val_if_fail (HB_IS_ANSWERS (self), (WallId){ 0 });
  return self->wall;
}

void
hb_answers_set_wall (HbAnswers *self, WallId wall)
{
  g_return_if_fail (HB_IS_ANSWERS (self));
  if (self->wall.n == wall.n || !self->laying)
    return;
  self->wall = wall;
  hb_job_cancel (self->finding);
  hb_job_cancel (self->advising);
  set_findings (self, NULL);
  set_savings (self, NULL);
  go_on (self);
}

const Layout *
hb_answers_get_layout (HbAnswers *self, WallId id)
{
  const Project *project;
  const Wall *wall;

  g_return_val_if_fail (HB_IS_ANSWERS (self), NULL);
  if (!self->document)
    return NULL;
  project = hb_document_get_project (self->document);
  wall = project_wall (project, id);
  return wall ? known (self, project, wall) : NULL;
}

const Layout *
hb_answers_get_latest (HbAnswers *self, WallId wall)
{
  g_return_val_if_fail (HB_IS_ANSWERS (self), NULL);
  return g_hash_table_lookup (self->latest, GUINT_TO_POINTER (wall.n));
}

const Takeoff *
hb_answers_get_takeoff (HbAnswers *self)
{
  g_return_val_if_fail (HB_IS_ANSWERS (self), NULL);
  return self->takeoff;
}

const GArray *
hb_answers_get_counted_walls (HbAnswers *self)
{
  g_return_val_if_fail (HB_IS_ANSWERS (self), NULL);
  return self->counted;
}

GPtrArray *
hb_answers_get_findings (HbAnswers *self)
{
  g_return_val_if_fail (HB_IS_ANSWERS (self), NULL);
  return self->findings;
}

gboolean
hb_answers_has_present_findings (HbAnswers *self)
{
  g_return_val_if_fail (HB_IS_ANSWERS (self), FALSE);
  return self->found_now;
}

GPtrArray *
hb_answers_get_savings (HbAnswers *self)
{
  g_return_val_if_fail (HB_IS_ANSWERS (self), NULL);
  return self->savings;
}

gboolean
hb_answers_has_present_savings (HbAnswers *self)
{
  g_return_val_if_fail (HB_IS_ANSWERS (self), FALSE);
  return self->advised_now;
}

gboolean
hb_answers_is_settled (HbAnswers *self)
{
  g_return_val_if_fail (HB_IS_ANSWERS (self), FALSE);
  return !self->laying
         || (self->counted_now && (self->found_now || !self->wall.n)
             && !hb_job_is_busy (self->laying));
}
