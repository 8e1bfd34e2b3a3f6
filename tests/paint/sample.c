#include "paint/sample.h"

#include "bond/lay.h"
#include "bond/stands.h"
#include "edited.h"
#include "model/built-edit.h"

const char *const sample_words[N_SAMPLES] = {
  [SAMPLE_STREET] = "street", [SAMPLE_BARE] = "bare",     [SAMPLE_SMALL] = "small",
  [SAMPLE_LONG] = "long",     [SAMPLE_NARROW] = "narrow", [SAMPLE_THICK] = "thick",
  [SAMPLE_GABLE] = "gable",
};

typedef struct
{
  const char *name;
  OpeningKind kind;
  int x, width, sill, height; /* mm */
} Hole;

typedef struct
{
  int length, height, joint; /* mm */
  gboolean steel;
  int left, right; /* returns, mm */
  Hole holes[8];
} Plan;

static const Plan plans[N_SAMPLES] = {
  [SAMPLE_STREET] = { 8400,
                      2649,
                      2,
                      TRUE,
                      250,
                      0,
                      { { "W1", OPENING_WINDOW, 1750, 1200, 833, 1200 },
                        { "W2", OPENING_WINDOW, 3650, 1500, 833, 1200 },
                        { "D1", OPENING_DOOR, 6550, 900, 0, 2033 } } },
  [SAMPLE_BARE] = { 6000, 2500, 2, FALSE, 0, 0, { { NULL } } },
  [SAMPLE_SMALL] = { 1900, 1400, 2, FALSE, 0, 0, { { "", OPENING_VOID, 600, 600, 500, 500 } } },
  [SAMPLE_LONG] = { 20000,
                    3200,
                    2,
                    TRUE,
                    250,
                    250,
                    { { "W1", OPENING_WINDOW, 1200, 1000, 900, 1200 },
                      { "V1", OPENING_VOID, 1300, 400, 2500, 300 },
                      { "W2", OPENING_WINDOW, 4250, 1510, 950, 1300 },
                      { "W3", OPENING_WINDOW, 7300, 1000, 1000, 1400 },
                      { "D1", OPENING_DOOR, 10350, 1510, 0, 2100 },
                      { "W4", OPENING_WINDOW, 13400, 1000, 1100, 1600 },
                      { "W5", OPENING_WINDOW, 16450, 1510, 1150, 1700 } } },
  [SAMPLE_NARROW] = { 5200,
                      2649,
                      2,
                      FALSE,
                      0,
                      0,
                      { { "W1", OPENING_WINDOW, 700, 1200, 833, 1200 },
                        { "D1", OPENING_DOOR, 1995, 1600, 0, 2100 } } },
  [SAMPLE_THICK]
  = { 4000, 2130, 10, FALSE, 0, 0, { { "W1", OPENING_WINDOW, 1500, 1000, 850, 1000 } } },
  [SAMPLE_GABLE] = { 8000,
                     5049,
                     2,
                     FALSE,
                     0,
                     0,
                     { { "W1", OPENING_WINDOW, 1800, 1200, 1033, 1200 },
                       { "D1", OPENING_DOOR, 5000, 900, 300, 2100 } } },
};

/* 34 degrees to the left of the ridge and 26 to the right. */
static void
make_gable (Wall *wall)
{
  top_list_add (wall->tops, 0, LENGTH_MM (2424));
  top_list_add (wall->tops, LENGTH_MM (3600), 0);
  top_list_add (wall->tops, LENGTH_MM (8000), LENGTH_MM (2124));
  foot_list_add (wall->feet, LENGTH_MM (4000), LENGTH_MM (202));
  foot_list_add (wall->feet, LENGTH_MM (7000), LENGTH_MM (290));
  wall->cap.height = LENGTH_MM (60);
}

static void
add_hole (Wall *wall, const Hole *hole, guint32 id)
{
  Opening opening = opening_default (hole->kind);

  g_free (opening.name);
  opening.name = g_strdup (hole->name);
  opening.key = g_strdup_printf ("o%u", id);
  opening.id.n = id;
  opening.x = LENGTH_MM (hole->x);
  opening.width = LENGTH_MM (hole->width);
  opening.sill = LENGTH_MM (hole->sill);
  opening.height = LENGTH_MM (hole->height);
  g_array_append_val (wall->openings, opening);
}

static void
set_end (End *end, int ret, gboolean odd)
{
  if (ret == 0)
    return;
  end->given = end->has_return = TRUE;
  end->ret = LENGTH_MM (ret);
  end->through = odd ? THROUGH_ODD : THROUGH_EVEN;
}

static Wall *
planned (const Plan *plan, BlockId block)
{
  Wall *wall = wall_new ();

  wall->key = g_strdup ("w1");
  g_free (wall->name);
  wall->name = g_strdup ("Street side");
  wall->id.n = 1000;
  wall->block = block;
  wall->length = LENGTH_MM (plan->length);
  wall->height = LENGTH_MM (plan->height);
  wall->laying.given = LAYING_FIRST_BED | LAYING_BED | LAYING_HEAD;
  wall->laying.first_bed = LENGTH_MM (25);
  wall->laying.bed = wall->laying.head = LENGTH_MM (plan->joint);
  set_end (&wall->ends[SIDE_LEFT], plan->left, FALSE);
  set_end (&wall->ends[SIDE_RIGHT], plan->right, TRUE);
  wall->steel.given = plan->steel;
  wall->steel.every = plan->steel ? 4 : 0;
  wall->steel.under_sills = plan->steel;
  for (guint i = 0; i < G_N_ELEMENTS (plan->holes) && plan->holes[i].name; i++)
    add_hole (wall, &plan->holes[i], i + 1);
  return wall;
}

static Sample
laid (Project *project, Wall *wall)
{
  Sample sample = { .project = project };
  const Block *block = project_block_at (project, 0);

  sample.project->title = g_strdup ("Garden studio");
  sample.project->date = g_strdup ("2026-03-02");
  sample.project->next = 2000;
  g_ptr_array_add (sample.project->walls, wall);
  g_assert_null (wall_fault (wall, block, NULL));
  sample.layout = lay_wall (wall, block, NULL);
  return sample;
}

Sample
sample_new (SampleKind kind)
{
  Project *project = project_new ();
  Wall *wall = planned (&plans[kind], project_block_at (project, 0)->id);

  if (kind == SAMPLE_GABLE)
    make_gable (wall);
  return laid (project, wall);
}

static int
between (GRand *random, int least, int most, int step)
{
  return g_rand_int_range (random, least / step, most / step + 1) * step;
}

static void
add_random_hole (Wall *wall, const Block *block, GRand *random, guint32 id)
{
  const Hole hole = {
    .name = id % 3 == 0 ? "" : "Wx",
    .kind = (OpeningKind) g_rand_int_range (random, 0, 3),
    .x = between (random, 0, 11000, 5),
    .width = between (random, 50, 2500, 5),
    .sill = between (random, 0, 2000, 5),
    .height = between (random, 50, 2200, 5),
  };

  add_hole (wall, &hole, id);
  g_autofree char *fault = wall_fault (wall, block, NULL);
  if (!fault)
    return;
  opening_clear (&g_array_index (wall->openings, Opening, wall->openings->len - 1));
  g_array_set_size (wall->openings, wall->openings->len - 1);
}

/* Points in order, some of them steps, and two steps of the footing. */
static void
add_random_top (Wall *wall, GRand *random)
{
  const int length = wall->length / LENGTH_PER_MM, height = wall->height / LENGTH_PER_MM;
  const int n = g_rand_int_range (random, 1, 6);
  int x = 0;

  for (int i = 0; i < n; i++)
    {
      const gboolean step = i > 0 && g_rand_int_range (random, 0, 4) == 0;

      x = step ? x : g_rand_int_range (random, x + 1, length - n + i + 1);
      top_list_add (wall->tops, LENGTH_MM (x),
                    i == n / 2 ? 0 : LENGTH_MM (g_rand_int_range (random, 0, height * 2 / 3)));
    }
  foot_list_add (wall->feet, LENGTH_MM (length / 3),
                 LENGTH_MM (between (random, 0, height / 4, 1)));
  foot_list_add (wall->feet, LENGTH_MM (length / 2),
                 LENGTH_MM (between (random, 0, height / 4, 1)));
  wall->cap.height = g_rand_boolean (random) ? LENGTH_MM (50) : 0;
}

Sample
sample_new_random (GRand *random)
{
  Project *project = project_new ();
  const Block *block = project_block_at (project, 0);
  const Plan plan = {
    .length = between (random, 1000, 12000, 5),
    .height = between (random, 400, 3200, 1),
    .joint = between (random, 0, 12, 1),
    .steel = g_rand_boolean (random),
    .left = g_rand_boolean (random) ? 250 : 0,
    .right = g_rand_boolean (random) ? 115 : 0,
  };
  Wall *wall = planned (&plan, block->id);

  if (g_rand_boolean (random))
    add_random_top (wall, random);
  /* Two steps of one course may leave nothing over the footing. */
  if (wall_fault (wall, block, NULL))
    {
      g_array_set_size (wall->tops, 0);
      g_array_set_size (wall->feet, 0);
    }
  for (guint32 id = 1; id <= 5; id++)
    add_random_hole (wall, block, random, id);
  return laid (project, wall);
}

void
sample_take (Sample *sample, Wall *wall)
{
  g_autoptr (Wall) next = wall;

  g_assert_nonnull (next);
  sample->project = edited (sample->project, edit_set_wall (next));
  layout_unref (sample->layout);
  sample->layout = lay_wall (sample_wall (sample), project_block_at (sample->project, 0), NULL);
}

Sample
sample_begun (SampleKind kind, gint32 courses)
{
  Sample sample = sample_new (kind);
  g_autoptr (GArray) laid = stands_of_layout (sample.layout);

  sample_take (&sample, built_set_courses (sample_wall (&sample), courses, laid, NULL, NULL));
  return sample;
}

void
sample_clear (Sample *sample)
{
  g_clear_pointer (&sample->layout, layout_unref);
  g_clear_pointer (&sample->project, project_unref);
}

const Wall *
sample_wall (const Sample *sample)
{
  return project_wall_at (sample->project, 0);
}

ElevationInput
sample_input (const Sample *sample)
{
  return (ElevationInput){
    .project = sample->project,
    .wall = sample_wall (sample),
    .layout = sample->layout,
  };
}
