/* any-project.c - made-up projects of every shape that a file can say */
#include "any-project.h"

#include <string.h>

static gboolean
chance (int percent)
{
  return g_test_rand_int_range (0, 100) < percent;
}

/* Whole millimetres, tenths, sixty-fourths of an inch, or anything. */
static Length
any_length (Length least, Length most)
{
  static const Length grains[] = { LENGTH_PER_MM, 32, 127, 1 };
  Length grain = grains[g_test_rand_int_range (0, G_N_ELEMENTS (grains))];
  Length first = (least + grain - 1) / grain, last = most / grain;
  if (first >= last)
    return least;
  return g_test_rand_int_range (first, last + 1) * grain;
}

/* What people and programs put into names: nothing, marks of XML, other scripts, characters that
 * turn the writing direction, white space that a reader might tidy away. */
static char *
any_name (void)
{
  static const char *const names[] = {
    "",
    "W1",
    "Garden side",
    " leading and trailing ",
    "a < b && c > d",
    "\"quoted\" and 'quoted'",
    "]]>",
    "&amp; &#10; <!-- x -->",
    "line\nnext line\r\nand\ttab",
    "Süd – Straße",
    "\xe2\x80\xae turned \xe2\x80\xac",
    "\xd7\xa7\xd7\x99\xd7\xa8 \xe5\xa3\x81",
    "\xf0\x9f\xa7\xb1",
    "\x7f\xc2\x85",
    "%s %n {0} ${x} \\0",
  };
  if (chance (3))
    return g_strnfill (10000, 'n');
  return g_strdup (names[g_test_rand_int_range (0, G_N_ELEMENTS (names))]);
}

static char *
any_key (Project *project, const char *kind)
{
  static const char *const forms[] = { "%s%u", "_%s.%u", "%s-%u", "Ü%s·%u" };
  guint form = (guint) g_test_rand_int_range (0, G_N_ELEMENTS (forms));
  const char *format = forms[form];
  g_autoptr (GString) key = g_string_new (NULL);
  for (const char *at = format; *at != '\0'; at++)
    {
      if (at[0] != '%')
        g_string_append_c (key, *at);
      else if (*++at == 's')
        g_string_append (key, kind);
      else
        g_string_append_printf (key, "%u", project->next);
    }
  return g_strdup (key->str);
}

static Foreign
any_foreign (void)
{
  static const char *const attributes[] = {
    "xmlns:v=\"urn:v\" v:colour=\"red\"",
    "xml:lang=\"de\"",
    "xmlns:v=\"urn:v\" v:a=\"1 &lt; 2 &amp; &quot;&#10;&#9;\" xmlns:w=\"urn:w\" w:a=\"\"",
  };
  static const char *const elements[] = {
    "<v:mark xmlns:v=\"urn:v\"/>",
    "<note xmlns=\"urn:note\">left as &lt;it&gt; is\n   with its <b>space</b> </note>",
    "<v:a xmlns:v=\"urn:v\"><b xmlns=\"\"><w xmlns=\"urn:w\" v:id=\"x\"/></b></v:a>",
  };
  Foreign foreign = { 0 };
  if (chance (15))
    foreign.attributes
        = g_strdup (attributes[g_test_rand_int_range (0, G_N_ELEMENTS (attributes))]);
  if (chance (15))
    foreign.elements = g_strdup (elements[g_test_rand_int_range (0, G_N_ELEMENTS (elements))]);
  return foreign;
}

static double
any_density (void)
{
  switch (g_test_rand_int_range (0, 4))
    {
    case 0:
      return g_test_rand_int_range (1, 20001);
    case 1:
      return g_test_rand_int_range (1, 200001) / 10.0;
    case 2:
      return g_test_rand_double_range (0.000001, 0.01);
    default:
      return g_test_rand_double_range (1, 20000);
    }
}

static void
add_block (Project *project)
{
  Block block = {
    .id.n = project->next,
    .key = any_key (project, "b"),
    .name = any_name (),
    .length = any_length (LENGTH_MM (100), LENGTH_MM (10000)),
    .height = any_length (LENGTH_MM (60), LENGTH_MM (10000)),
    .thickness = any_length (LENGTH_MM (20), LENGTH_MM (10000)),
    .density = any_density (),
    .strength
    = chance (70) ? 0 : g_test_rand_int_range (1, BLOCK_MOST_STRENGTH * 1000 + 1) / 1000.0,
    .foreign = any_foreign (),
  };
  project->next++;
  g_ptr_array_add (project->blocks, g_memdup2 (&block, sizeof block));
}

static Rule
any_rule (const RuleRow *row)
{
  Rule rule = { row->prefer_only || chance (50) ? KEEP_PREFER : KEEP_MUST, FALSE, 0, { 0 } };
  rule.has_value = row->value != RULE_NO_VALUE && chance (60);
  if (rule.has_value)
    rule.value = row->value == RULE_LENGTH ? any_length (row->least, row->most)
                                           : g_test_rand_int_range (row->least, row->most + 1);
  rule.foreign = any_foreign ();
  return rule;
}

static void
set_laying (Laying *laying, const Block *block)
{
  laying->given = chance (70) ? (guint) g_test_rand_int_range (0, 1 << 10) : 0;
  laying->element = laying->given != 0 || chance (30);
  laying->first_bed = any_length (0, LENGTH_MM (200));
  laying->bed = any_length (0, LENGTH_MM (20));
  laying->head = any_length (0, LENGTH_MM (20));
  laying->min_piece = any_length (1, block->length);
  laying->min_lap = any_length (0, block->length);
  laying->min_rip = any_length (1, block->height);
  laying->min_raked = any_length (1, block->length);
  laying->kerf = any_length (0, LENGTH_MM (20));
  laying->aim = (Aim) g_test_rand_int_range (0, 3);
  laying->start = (Side) g_test_rand_int_range (0, 2);
  if (laying->element)
    laying->foreign = any_foreign ();
  for (RuleKind kind = 0; kind < N_RULES; kind++)
    if (chance (30))
      laying->rules[kind] = any_rule (rule_row (kind));
  for (guint i = 0; i < N_RULES; i++)
    laying->element |= laying->rules[i].keep != KEEP_OFF;
}

static Ties
any_ties (void)
{
  if (chance (50))
    return (Ties){ 0 };
  return (Ties){ TIES_ALL, (TieKind) g_test_rand_int_range (0, N_TIE_KINDS),
                 g_test_rand_int_range (1, TIES_MAX_EVERY + 1),
                 chance (50) ? 1 : g_test_rand_int_range (1, TIES_MAX_ABREAST + 1) };
}

static void
set_end (End *end, Length wall)
{
  end->given = chance (50);
  if (!end->given)
    return;
  end->foreign = any_foreign ();
  end->has_return = chance (70);
  if (!end->has_return)
    return;
  end->ret = any_length (0, MIN (wall / 3, LENGTH_MM (10000)));
  end->through = (Through) g_test_rand_int_range (0, 3);
  end->ties = any_ties ();
}

static void
add_tees (Wall *wall)
{
  while (chance (20))
    {
      Tee tee = { .through = (Through) g_test_rand_int_range (0, 3), .foreign = any_foreign () };
      tee.ties = any_ties ();
      tee.ret = any_length (1, MIN (wall->length / 2, LENGTH_MM (10000)));
      tee.x = any_length (0, wall->length - tee.ret);
      g_array_append_val (wall->tees, tee);
    }
}

/* From the left, so that none is over another. */
static void
add_movement_joints (Wall *wall)
{
  Length from = wall->ends[SIDE_LEFT].ret, to = wall->length - wall->ends[SIDE_RIGHT].ret;

  while (chance (20) && from + 2 * MOVEMENT_JOINT_MOST < to)
    {
      MovementJoint joint = { .foreign = any_foreign () };
      joint.filler = chance (40) ? any_name () : NULL;
      joint.width = chance (50) ? MOVEMENT_JOINT_WIDTH
                                : any_length (MOVEMENT_JOINT_LEAST, MOVEMENT_JOINT_MOST);
      joint.x = any_length (from + 1, to - MOVEMENT_JOINT_MOST - 1);
      from = movement_joint_right (&joint);
      g_array_append_val (wall->movement_joints, joint);
    }
}

static void
set_steel (Steel *steel)
{
  steel->given = chance (50);
  if (!steel->given)
    return;
  steel->set = (guint) g_test_rand_int_range (0, 1 << 7);
  steel->bars = steel->set & STEEL_BARS ? g_test_rand_int_range (1, 21) : steel->bars;
  steel->diameter = steel->set & STEEL_DIAMETER ? any_length (1, LENGTH_MM (50)) : steel->diameter;
  steel->every = steel->set & STEEL_EVERY ? g_test_rand_int_range (0, 10001) : steel->every;
  steel->under_sills = (steel->set & STEEL_UNDER_SILLS) != 0 && chance (50);
  steel->over_heads = (steel->set & STEEL_OVER_HEADS) != 0 && chance (50);
  steel->past = steel->set & STEEL_PAST ? any_length (0, LENGTH_MAX) : steel->past;
  steel->lap = steel->set & STEEL_LAP ? any_length (0, LENGTH_MM (3000)) : steel->lap;
  steel->foreign = any_foreign ();
}

static void
add_steel_rows (Wall *wall)
{
  for (gint32 course = g_test_rand_int_range (1, 5); chance (60);
       course += g_test_rand_int_range (1, 2000))
    {
      SteelRow row = { MIN (course, 10000), chance (30), any_foreign () };
      if (wall_steel_row (wall, row.course) == 0)
        g_array_append_val (wall->steel_rows, row);
      else
        foreign_clear (&row.foreign);
    }
}

static void
add_pins (Wall *wall)
{
  while (chance (60))
    {
      Pin pin = {
        .course = chance (80) ? g_test_rand_int_range (1, 12) : g_test_rand_int_range (1, 10001),
        .x = any_length (0, chance (80) ? wall->length : LENGTH_MAX),
        .length = chance (50) ? 0 : any_length (1, LENGTH_MM (10000)),
        .foreign = any_foreign (),
      };
      wall_put_pin (wall, &pin);
      pin_clear (&pin);
    }
}

/* What stands and what was measured; taken away again where it cannot be. */
static void
set_built (Wall *wall, const Block *block)
{
  Built *built = wall->built = built_new ();
  const Length pitch = block->height + LENGTH_MM (20);
  built->given = (guint) g_test_rand_int_range (0, 1 << 6);
  built->planned_length = any_length (LENGTH_MM (50), LENGTH_MAX);
  built->plumb = any_length (-BUILT_MAX_OFF, BUILT_MAX_OFF);
  built->bow = any_length (-BUILT_MAX_OFF, BUILT_MAX_OFF);
  built->bow_metre = any_length (-BUILT_MAX_OFF, BUILT_MAX_OFF);
  built->bed_least = any_length (0, BUILT_MAX_BED / 2);
  built->bed_most = any_length (BUILT_MAX_BED / 2, BUILT_MAX_BED);
  built->as_of = chance (50) ? any_name () : NULL;
  built->foreign = any_foreign ();
  built->courses = g_test_rand_int_range (0, CLAMP (wall->height / pitch, 0, 8) + 1);
  for (gint32 i = 1; i <= built->courses; i++)
    {
      LaidCourse laid = laid_course_new (i);
      for (LaidPerpend perpend = { 0, PERPEND_ALL }; chance (60);)
        {
          perpend.x += any_length (1, LENGTH_MM (700));
          perpend.z = chance (20) ? any_length (0, wall->height) : PERPEND_ALL;
          g_array_append_val (laid.perpends, perpend);
        }
      laid.given = (chance (70) ? LAID_BOTTOM : 0) | (chance (30) ? LAID_TOP : 0);
      laid.given |= laid.given & LAID_TOP && chance (50) ? LAID_TOP_RIGHT : 0;
      laid.given |= chance (50) ? LAID_OVER : 0;
      laid.over = g_test_rand_int_range (0, i);
      laid.bottom = i * pitch - block->height;
      laid.top = i * pitch + any_length (0, LENGTH_MM (3));
      laid.top_right = i * pitch + any_length (0, LENGTH_MM (3));
      laid.foreign = any_foreign ();
      g_array_append_val (built->laid, laid);
    }
  g_autofree char *fault = wall_fault (wall, block, NULL);
  if (fault != NULL)
    g_clear_pointer (&wall->built, built_free);
}

/* One more opening, unless it would not fit beside the others. */
static void
add_opening (Project *project, Wall *wall)
{
  Opening opening = {
    .id.n = project->next,
    .key = any_key (project, "o"),
    .name = any_name (),
    .kind = (OpeningKind) g_test_rand_int_range (0, 3),
    .x = any_length (0, wall->length),
    .width = any_length (LENGTH_MM (10), wall->length),
    .sill = chance (30) ? 0 : any_length (0, wall->height),
    .height = any_length (LENGTH_MM (10), wall->height),
    .may_move = any_length (0, OPENING_MOST_MOVE),
    .drawn_x = any_length (0, wall->length),
    .given = (chance (30) ? OPENING_MAY_MOVE : 0) | (chance (20) ? OPENING_DRAWN_X : 0)
             | (chance (20) ? (guint) g_test_rand_int_range (0, 1 << 4) * OPENING_PLANNED_X : 0),
    .planned_x = any_length (0, LENGTH_MAX),
    .planned_width = any_length (LENGTH_MM (10), LENGTH_MAX),
    .planned_sill = any_length (0, LENGTH_MAX),
    .planned_height = any_length (LENGTH_MM (10), LENGTH_MAX),
    .line_load = g_test_rand_int_range (0, OPENING_MOST_LOAD * 1000 + 1) / 1000.0,
    .foreign = any_foreign (),
  };
  if (chance (30))
    opening.given |= OPENING_LINE_LOAD;
  g_array_append_val (wall->openings, opening);
  g_autofree char *fault = wall_fault (wall, NULL, NULL);
  if (fault == NULL)
    project->next++;
  else
    g_array_set_size (wall->openings, wall->openings->len - 1);
}

/* Slopes, steps, steps in the footing: what is no top is taken away again. */
static void
set_top_and_foot (Wall *wall)
{
  Length x = 0;
  for (int n = g_test_rand_int_range (1, 6); n > 0; n--)
    {
      top_list_add (wall->tops, x, any_length (0, wall->height));
      g_array_index (wall->tops, TopPoint, wall->tops->len - 1).foreign = any_foreign ();
      x = chance (20) ? x : any_length (x, wall->length);
    }
  g_array_index (wall->tops, TopPoint, g_test_rand_int_range (0, wall->tops->len)).below = 0;
  for (x = any_length (0, wall->length); chance (60); x = any_length (x, wall->length))
    {
      foot_list_add (wall->feet, x, any_length (0, wall->height / 3));
      g_array_index (wall->feet, Foot, wall->feet->len - 1).foreign = any_foreign ();
    }
  wall->cap.height = chance (50) ? any_length (CAP_LEAST, CAP_MOST) : 0;
  if (wall->cap.height > 0)
    wall->cap.foreign = any_foreign ();
  wall->ends[SIDE_LEFT].up_to = wall->ends[SIDE_LEFT].has_return ? any_length (0, LENGTH_MAX) : 0;
  for (guint i = 0; i < wall->tees->len; i++)
    g_array_index (wall->tees, Tee, i).up_to = chance (50) ? any_length (1, LENGTH_MAX) : 0;
  g_autofree char *fault = wall_fault (wall, NULL, NULL);
  if (fault == NULL)
    return;
  g_array_set_size (wall->tops, 0);
  g_array_set_size (wall->feet, 0);
}

/* Everything of a wall but its openings. */
static Wall *
any_bare_wall (const Block *block)
{
  Wall *wall = wall_new ();
  wall->block = block->id;
  wall->length = any_length (LENGTH_MM (50), chance (10) ? LENGTH_MAX : LENGTH_MM (20000));
  wall->height = any_length (LENGTH_MM (50), chance (10) ? LENGTH_MAX : LENGTH_MM (5000));
  set_laying (&wall->laying, block);
  set_end (&wall->ends[SIDE_LEFT], wall->length);
  set_end (&wall->ends[SIDE_RIGHT], wall->length);
  return wall;
}

static void
add_wall (Project *project)
{
  guint which = (guint) g_test_rand_int_range (0, (gint32) project->blocks->len);
  const Block *block = project_block_at (project, which);
  Wall *wall = any_bare_wall (block);
  /* Those of too many blocks are thrown away. */
  for (g_autofree char *fault = wall_fault (wall, block, NULL); fault != NULL;)
    {
      wall_unref (wall);
      wall = any_bare_wall (block);
      g_free (fault);
      fault = wall_fault (wall, block, NULL);
    }
  wall->id.n = project->next;
  wall->key = any_key (project, "w");
  project->next++;
  g_free (wall->name);
  wall->name = any_name ();
  wall->foreign = any_foreign ();
  add_tees (wall);
  add_movement_joints (wall);
  if (chance (40))
    wall->place
        = (PlanPlace){ TRUE, any_length (-LENGTH_MAX, LENGTH_MAX),
                       any_length (-LENGTH_MAX, LENGTH_MAX), (Runs) g_test_rand_int_range (0, 4) };
  if (chance (40))
    set_top_and_foot (wall);
  set_steel (&wall->steel);
  add_steel_rows (wall);
  add_pins (wall);
  for (int tries = g_test_rand_int_range (0, 20); tries > 0; tries--)
    add_opening (project, wall);
  if (chance (50))
    set_built (wall, block);
  g_ptr_array_add (project->walls, wall);
}

static Length
any_signed (Length most)
{
  Length length = any_length (0, most);
  return chance (30) ? -length : length;
}

static WallId
any_wall_of (const Project *project)
{
  return project_wall_at (project, (guint) g_test_rand_int_range (0, (gint32) project->walls->len))
      ->id;
}

static void
add_reading (const Project *project, Survey *survey)
{
  Reading *reading = survey_add_reading (survey);
  g_free (reading->point);
  reading->point = any_name ();
  reading->given = (guint) g_test_rand_int_range (0, 1 << 4);
  reading->back = any_signed (SURVEY_MAX_READING);
  reading->inter = any_signed (SURVEY_MAX_READING);
  reading->fore = any_signed (SURVEY_MAX_READING);
  reading->level = any_signed (LENGTH_MAX);
  reading->foreign = any_foreign ();
  while (project->walls->len > 0 && chance (40) && reading->places->len < SURVEY_MAX_PLACES)
    {
      reading_add_place (reading, any_wall_of (project), any_length (0, LENGTH_MAX));
      g_array_index (reading->places, SurveyPlace, reading->places->len - 1).foreign
          = any_foreign ();
    }
}

static void
add_diagonal (const Project *project, Survey *survey)
{
  WallId along = any_wall_of (project), across = any_wall_of (project);
  if (along.n == across.n)
    return;
  Diagonal *diagonal = survey_add_diagonal (survey);
  g_free (diagonal->name);
  diagonal->name = any_name ();
  diagonal->along = along;
  diagonal->across = across;
  diagonal->given = (guint) g_test_rand_int_range (0, 1 << 2);
  diagonal->first = any_length (LENGTH_MM (1), LENGTH_MAX);
  diagonal->second = any_length (LENGTH_MM (1), LENGTH_MAX);
  diagonal->length = any_length (LENGTH_MM (1), LENGTH_MAX);
  diagonal->foreign = any_foreign ();
}

static Survey *
any_survey (const Project *project)
{
  Survey *survey = survey_new ();
  survey->given = (guint) g_test_rand_int_range (0, 1 << 7);
  survey->least = survey->given & SURVEY_LEAST ? any_length (0, LENGTH_MM (25)) : survey->least;
  survey->most
      = survey->given & SURVEY_MOST ? any_length (LENGTH_MM (25), SURVEY_MAX_BED) : survey->most;
  if (survey->given & SURVEY_WANTED)
    survey->wanted = any_length (survey->least, survey->most);
  survey->tolerance = any_length (0, SURVEY_MAX_TOLERANCE);
  survey->square = any_length (0, SURVEY_MAX_TOLERANCE);
  survey->tape = any_length (LENGTH_MM (500), LENGTH_MM (100000));
  survey->first_course = any_signed (LENGTH_MAX);
  survey->foreign = any_foreign ();
  while (chance (80))
    add_reading (project, survey);
  while (project->walls->len > 1 && chance (50))
    add_diagonal (project, survey);
  return survey;
}

/* As a file has it: whole millionths. */
static double
any_number (double most)
{
  const gint32 millionths = chance (30) ? g_test_rand_int_range (1, 100)
                                        : g_test_rand_int_range (1, (gint32) (most * 1e6) + 1);
  return millionths / 1e6;
}

/* What a file did not give is as it is when left out. */
static WorkRates
any_rates (void)
{
  WorkRates rates = work_rates_default ();
  rates.given = (guint) g_test_rand_int_range (0, 1 << 9);
  if (rates.given & WORK_GANG)
    rates.gang = g_test_rand_int_range (1, WORK_MOST_GANG + 1);
  if (rates.given & WORK_HOURS_A_DAY)
    rates.hours_a_day = any_number (WORK_MOST_HOURS);
  if (rates.given & WORK_HOURS_A_M2)
    rates.hours_a_m2 = g_test_rand_int_range (0, 240) / 10.0;
  if (rates.given & WORK_MINUTES_A_BLOCK)
    rates.minutes_a_block = chance (30) ? 0 : any_number (WORK_MOST_MINUTES);
  if (rates.given & WORK_MINUTES_A_CUT)
    rates.minutes_a_cut = g_test_rand_int_range (0, 601);
  if (rates.given & WORK_MINUTES_A_METRE)
    rates.minutes_a_metre = any_number (0.001);
  if (rates.given & WORK_RISE)
    rates.rise = any_length (LENGTH_MM (1), LENGTH_MAX);
  if (rates.given & WORK_LIFTS_A_DAY)
    rates.lifts_a_day = g_test_rand_int_range (0, WORK_MOST_PIECES + 1);
  if (rates.given & WORK_BLOCKS_A_PALLET)
    rates.blocks_a_pallet = g_test_rand_int_range (0, WORK_MOST_PIECES + 1);
  return rates;
}

Project *
any_project (void)
{
  Project *project = project_new ();
  g_ptr_array_set_size (project->blocks, 0);
  char **const heading[]
      = { &project->title, &project->client, &project->site, &project->author, &project->date };
  for (guint i = 0; i < G_N_ELEMENTS (heading); i++)
    *heading[i] = chance (50) ? any_name () : NULL;
  project->foreign = any_foreign ();
  for (int n = g_test_rand_int_range (0, 4); n > 0; n--)
    add_block (project);
  for (int n = project->blocks->len > 0 ? g_test_rand_int_range (0, 5) : 0; n > 0; n--)
    add_wall (project);
  if (chance (50))
    project->survey = any_survey (project);
  for (guint i = 0; i < N_TOLERANCES; i++)
    if (chance (20))
      project->tolerances[i] = (Tolerance){ TRUE, any_length (0, TOLERANCE_MOST), any_foreign () };
  if (chance (50))
    project->rates = any_rates ();
  project->rates_foreign = any_foreign ();
  g_autofree char *fault = project_fault (project);
  g_assert_cmpstr (fault, ==, NULL);
  return project;
}

char *
example_text (gsize *n)
{
  g_autoptr (GError) error = NULL;
  char *text;
  g_file_get_contents (HALFBOND_SOURCE_ROOT "/data/examples/garden-studio.halfbond", &text, n,
                       &error);
  g_assert_no_error (error);
  return text;
}
