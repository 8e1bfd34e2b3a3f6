/* draft.c - a project while its file is being read */
#include "store/draft.h"

#include <glib/gi18n-lib.h>

#include "store/store.h"

/* What was said of a wall and can be judged only when everything is read. */
typedef struct
{
  int line;
  char *block; /* the key */
  int block_line;
} WallNote;

/* A wall that the survey names by its key. */
typedef struct
{
  int line;
  char *key;
  guint reading, place; /* of a place; or */
  guint diagonal;       /* of a diagonal, from 1: its wall along, or across it */
  gboolean across;
} NamedWall;

/* One element of ours: where it may stand and what is done at its start. */
typedef struct
{
  const Element *element;
  const Element *parent; /* NULL: it is the root */
  /* FALSE, with a fault, when it cannot be; *foreign is of the thing it says. */
  gboolean (*start) (Draft *draft, const Tag *tag, Foreign **foreign);
} Kind;

static void
wall_note_clear (gpointer data)
{
  g_free (((WallNote *) data)->block);
}

static void
named_wall_clear (gpointer data)
{
  g_free (((NamedWall *) data)->key);
}

void
draft_init (Draft *draft, const char *name)
{
  *draft = (Draft){ .name = name, .project = project_new () };
  g_ptr_array_set_size (draft->project->blocks, 0);
  draft->walls = g_array_new (FALSE, FALSE, sizeof (WallNote));
  g_array_set_clear_func (draft->walls, wall_note_clear);
  draft->named = g_array_new (FALSE, FALSE, sizeof (NamedWall));
  g_array_set_clear_func (draft->named, named_wall_clear);
  draft->lines = g_array_new (FALSE, TRUE, sizeof (int));
  draft->keys = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  draft->courses = g_hash_table_new (NULL, NULL);
  draft->pins = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);
}

void
draft_clear (Draft *draft)
{
  project_unref (draft->project);
  g_clear_error (&draft->fault);
  g_array_unref (draft->walls);
  g_array_unref (draft->named);
  g_array_unref (draft->lines);
  g_hash_table_unref (draft->keys);
  g_hash_table_unref (draft->courses);
  g_hash_table_unref (draft->pins);
}

gboolean
draft_refuse (Draft *draft, int line, const char *format, ...)
{
  if (draft->fault != NULL)
    return FALSE;
  va_list arguments;
  va_start (arguments, format);
  g_autofree char *sentence = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  draft->fault
      = g_error_new (STORE_ERROR, STORE_ERROR_INVALID, "%s:%d: %s", draft->name, line, sentence);
  return FALSE;
}

/* Reads the attributes; `target` is a structure of the element's. */
static gboolean
read_tag (Draft *draft, const Tag *tag, const Element *element, void *target)
{
  int line;
  g_autofree char *fault = tag_read (tag, element, target, &line);
  g_autofree char *title = fault != NULL ? tag_title (tag) : NULL;
  return fault == NULL || draft_refuse (draft, line, "%s: %s.", title, fault);
}

/* Every id of the file is there once, whatever it is of. */
static gboolean
read_key (Draft *draft, const Tag *tag, const char *key)
{
  if (g_hash_table_add (draft->keys, g_strdup (key)))
    return TRUE;
  g_autofree char *shown = quoted (key);
  return draft_refuse (draft, tag_attribute (tag, "id")->line, _ ("the id %s is used twice."),
                       shown);
}

static gboolean
start_project (Draft *draft, const Tag *tag, Foreign **foreign)
{
  *foreign = &draft->project->foreign;
  return read_tag (draft, tag, &element_project, draft->project);
}

static gboolean
start_block (Draft *draft, const Tag *tag, Foreign **foreign)
{
  Project *project = draft->project;
  if (project->blocks->len >= PROJECT_MAX_BLOCKS)
    return draft_refuse (draft, tag->line, _ ("there are more than %d blocks."),
                         PROJECT_MAX_BLOCKS);
  Block *block = g_new0 (Block, 1);
  block->id.n = project->next++;
  block->name = g_strdup ("");
  g_ptr_array_add (project->blocks, block);
  *foreign = &block->foreign;
  return read_tag (draft, tag, &element_block, block) && read_key (draft, tag, block->key);
}

static void
note_wall (Draft *draft, const Tag *tag, char *block)
{
  const Attribute *attribute = tag_attribute (tag, "block");
  WallNote note = { tag->line, block, attribute != NULL ? attribute->line : tag->line };
  g_array_append_val (draft->walls, note);
}

static gboolean
start_wall (Draft *draft, const Tag *tag, Foreign **foreign)
{
  Project *project = draft->project;
  if (project->walls->len >= PROJECT_MAX_WALLS)
    return draft_refuse (draft, tag->line, _ ("there are more than %d walls."), PROJECT_MAX_WALLS);
  Wall *wall = draft->wall = wall_new ();
  g_ptr_array_add (project->walls, wall);
  g_hash_table_remove_all (draft->courses);
  g_hash_table_remove_all (draft->pins);
  wall->id.n = project->next++;
  WallTag said = { .name = g_steal_pointer (&wall->name) };
  gboolean well = read_tag (draft, tag, &element_wall, &said);
  wall->key = said.key;
  wall->name = said.name;
  wall->length = said.length;
  wall->height = said.height;
  wall->place = said.place;
  wall->place.given = said.mask == PLACE_ALL;
  note_wall (draft, tag, said.block);
  *foreign = &wall->foreign;
  if (well && said.mask != 0 && said.mask != PLACE_ALL)
    return draft_refuse (draft, tag->line,
                         _ ("wall: plan-x, plan-y and runs go together; one is missing."));
  return well && read_key (draft, tag, wall->key);
}

static gboolean
once (Draft *draft, const Tag *tag, gboolean before)
{
  return !before
         || draft_refuse (draft, tag->line, _ ("there is a second <%s> in the same wall."),
                          tag->name);
}

static gboolean
start_laying (Draft *draft, const Tag *tag, Foreign **foreign)
{
  Laying *laying = &draft->wall->laying;
  *foreign = &laying->foreign;
  if (!once (draft, tag, laying->element))
    return FALSE;
  laying->element = TRUE;
  return read_tag (draft, tag, &element_laying, laying);
}

/* The number of a rule is of the kind and within the bounds that its row says. */
static gboolean
rule_number_fits (Draft *draft, const Tag *tag, const RuleTag *said)
{
  const RuleRow *row = rule_row (said->kind);
  guint allowed = row->value == RULE_LENGTH  ? RULE_GAVE_LENGTH
                  : row->value == RULE_COUNT ? RULE_GAVE_COUNT
                                             : 0;
  gint32 number = allowed == RULE_GAVE_LENGTH ? said->length : said->count;
  const char *name = said->mask & RULE_GAVE_LENGTH & ~allowed ? "length" : "count";
  char least[LENGTH_TEXT_SIZE], most[LENGTH_TEXT_SIZE];

  if (said->mask & ~allowed)
    return draft_refuse (draft, tag_attribute (tag, name)->line,
                         _ ("rule: there is no %s where the kind is \"%s\"."), name, row->word);
  if (said->mask == 0 || (number >= row->least && number <= row->most))
    return TRUE;
  if (row->value == RULE_COUNT)
    return draft_refuse (draft, tag_attribute (tag, "count")->line,
                         _ ("rule: the count of a \"%s\" is from %d to %d."), row->word, row->least,
                         row->most);
  return draft_refuse (draft, tag_attribute (tag, "length")->line,
                       _ ("rule: the length of a \"%s\" is from %s to %s."), row->word,
                       length_text (row->least, least), length_text (row->most, most));
}

static gboolean
start_rule (Draft *draft, const Tag *tag, Foreign **foreign)
{
  RuleTag said = { 0 };
  if (!read_tag (draft, tag, &element_rule, &said) || !rule_number_fits (draft, tag, &said))
    return FALSE;
  const RuleRow *row = rule_row (said.kind);
  Rule *rule = &draft->wall->laying.rules[said.kind];
  *foreign = &rule->foreign;
  if (rule->keep != KEEP_OFF)
    return draft_refuse (draft, tag->line, _ ("the wall has a second rule \"%s\"."), row->word);
  if (row->prefer_only && said.keep == KEEP_MUST)
    return draft_refuse (draft, tag_attribute (tag, "keep")->line,
                         _ ("rule: a \"%s\" can only be preferred."), row->word);
  rule->keep = said.keep;
  rule->has_value = said.mask != 0;
  rule->value = row->value == RULE_LENGTH ? said.length : said.count;
  return TRUE;
}

/* How many, and how often, is said only of a kind; left out, one in every course. */
static gboolean
finish_ties (Draft *draft, const Tag *tag, guint said, Ties *ties)
{
  ties->given = said != 0 ? TIES_ALL : 0;
  if (said == 0 || said & TIES_KIND)
    return TRUE;
  return draft_refuse (draft, tag->line,
                       _ ("%s: ties-every and ties-abreast go with ties, which is missing."),
                       tag->name);
}

static gboolean
start_end (Draft *draft, const Tag *tag, Foreign **foreign)
{
  EndTag said = { .ties = { .every = 1, .abreast = 1 } };
  if (!read_tag (draft, tag, &element_end, &said))
    return FALSE;
  End *end = &draft->wall->ends[said.side];
  *foreign = &end->foreign;
  if (end->given)
    return draft_refuse (draft, tag->line, _ ("the wall has a second <end> on the side \"%s\"."),
                         side_word (said.side));
  const guint both = END_RETURN | END_THROUGH;
  if (said.mask != 0 && (said.mask & both) != both)
    return draft_refuse (draft, tag->line,
                         (said.mask & both) != 0
                             ? _ ("end: return and through go together; one is missing.")
                             : _ ("end: ties go with return and through, which are missing."));
  if (said.mask == 0 && said.up_to != 0)
    return draft_refuse (draft, tag_attribute (tag, "up-to")->line,
                         _ ("end: there is no up-to where there is no return."));
  end->given = TRUE;
  end->has_return = said.mask != 0;
  end->ret = said.ret;
  end->up_to = said.up_to;
  end->through = said.through;
  end->ties = said.ties;
  return finish_ties (draft, tag, said.mask / END_TIES, &end->ties);
}

static gboolean
start_tee (Draft *draft, const Tag *tag, Foreign **foreign)
{
  GArray *tees = draft->wall->tees;
  if (tees->len >= WALL_MAX_TEES)
    return draft_refuse (draft, tag->line, _ ("the wall is met by more than %d walls."),
                         WALL_MAX_TEES);
  Tee tee = { .ties = { .every = 1, .abreast = 1 } };
  if (!read_tag (draft, tag, &element_tee, &tee)
      || !finish_ties (draft, tag, tee.ties.given, &tee.ties))
    return FALSE;
  g_array_append_val (tees, tee);
  *foreign = &g_array_index (tees, Tee, tees->len - 1).foreign;
  return TRUE;
}

static gboolean
start_top (Draft *draft, const Tag *tag, Foreign **foreign)
{
  GArray *tops = draft->wall->tops;
  if (tops->len >= WALL_MAX_TOP_POINTS)
    return draft_refuse (draft, tag->line, _ ("the wall's top has more than %d points."),
                         WALL_MAX_TOP_POINTS);
  TopPoint point = { 0 };
  if (!read_tag (draft, tag, &element_top, &point))
    return FALSE;
  g_array_append_val (tops, point);
  *foreign = &g_array_index (tops, TopPoint, tops->len - 1).foreign;
  return TRUE;
}

static gboolean
start_foot (Draft *draft, const Tag *tag, Foreign **foreign)
{
  GArray *feet = draft->wall->feet;
  if (feet->len >= WALL_MAX_FEET)
    return draft_refuse (draft, tag->line, _ ("the footing has more than %d steps."),
                         WALL_MAX_FEET);
  Foot foot = { 0 };
  if (!read_tag (draft, tag, &element_foot, &foot))
    return FALSE;
  g_array_append_val (feet, foot);
  *foreign = &g_array_index (feet, Foot, feet->len - 1).foreign;
  return TRUE;
}

static gboolean
start_cap (Draft *draft, const Tag *tag, Foreign **foreign)
{
  Cap *cap = &draft->wall->cap;
  *foreign = &cap->foreign;
  return once (draft, tag, cap->height != 0) && read_tag (draft, tag, &element_cap, cap);
}

static gboolean
start_movement_joint (Draft *draft, const Tag *tag, Foreign **foreign)
{
  GArray *joints = draft->wall->movement_joints;
  if (joints->len >= WALL_MAX_MOVEMENT_JOINTS)
    return draft_refuse (draft, tag->line, _ ("the wall has more than %d movement joints."),
                         WALL_MAX_MOVEMENT_JOINTS);
  wall_add_movement_joint (draft->wall, 0, MOVEMENT_JOINT_WIDTH);
  MovementJoint *joint = &g_array_index (joints, MovementJoint, joints->len - 1);
  *foreign = &joint->foreign;
  return read_tag (draft, tag, &element_movement_joint, joint);
}

static gboolean
start_steel (Draft *draft, const Tag *tag, Foreign **foreign)
{
  Steel *steel = &draft->wall->steel;
  *foreign = &steel->foreign;
  if (!once (draft, tag, steel->given))
    return FALSE;
  steel->given = TRUE;
  return read_tag (draft, tag, &element_steel, steel);
}

static gboolean
start_steel_row (Draft *draft, const Tag *tag, Foreign **foreign)
{
  SteelRow row = { 0 };
  if (!read_tag (draft, tag, &element_steel_row, &row))
    return FALSE;
  GArray *rows = draft->wall->steel_rows;
  g_array_append_val (rows, row);
  *foreign = &g_array_index (rows, SteelRow, rows->len - 1).foreign;
  if (g_hash_table_add (draft->courses, GINT_TO_POINTER (row.course)))
    return TRUE;
  return draft_refuse (draft, tag->line, _ ("the wall has a second steel row on course %d."),
                       row.course);
}

static gboolean
start_opening (Draft *draft, const Tag *tag, Foreign **foreign)
{
  GArray *openings = draft->wall->openings;
  if (openings->len >= WALL_MAX_OPENINGS)
    return draft_refuse (draft, tag->line, _ ("the wall has more than %d openings."),
                         WALL_MAX_OPENINGS);
  Opening empty = { .id.n = draft->project->next++, .name = g_strdup ("") };
  g_array_append_val (openings, empty);
  Opening *opening = &g_array_index (openings, Opening, openings->len - 1);
  if (draft->lines->len <= opening->id.n)
    g_array_set_size (draft->lines, opening->id.n + 1);
  g_array_index (draft->lines, int, opening->id.n) = tag->line;
  *foreign = &opening->foreign;
  return read_tag (draft, tag, &element_opening, opening) && read_key (draft, tag, opening->key);
}

/* No two begin at one place of a course: the set of those places is the open wall's. */
static gboolean
start_pin (Draft *draft, const Tag *tag, Foreign **foreign)
{
  GArray *pins = draft->wall->pins;
  if (pins->len >= WALL_MAX_PINS)
    return draft_refuse (draft, tag->line, _ ("the wall has more than %d pins."), WALL_MAX_PINS);
  Pin pin = { 0 };
  if (!read_tag (draft, tag, &element_pin, &pin))
    return FALSE;
  g_array_append_val (pins, pin);
  *foreign = &g_array_index (pins, Pin, pins->len - 1).foreign;
  gint64 place = (gint64) pin.course << 32 | (gint64) pin.x;
  if (g_hash_table_add (draft->pins, g_memdup2 (&place, sizeof place)))
    return TRUE;
  char x[LENGTH_TEXT_SIZE];
  return draft_refuse (draft, tag->line, _ ("the wall has a second pin on course %d at %s mm."),
                       pin.course, length_text (pin.x, x));
}

static gboolean
start_built (Draft *draft, const Tag *tag, Foreign **foreign)
{
  Wall *wall = draft->wall;
  if (!once (draft, tag, wall->built != NULL))
    return FALSE;
  wall->built = built_new ();
  *foreign = &wall->built->foreign;
  return read_tag (draft, tag, &element_built, wall->built);
}

static int
compare_perpends (gconstpointer a, gconstpointer b)
{
  const LaidPerpend *p = a, *q = b;
  if (p->x != q->x)
    return p->x < q->x ? -1 : 1;
  return (p->z > q->z) - (p->z < q->z);
}

/* Those that say no height and those that do, in order. */
static LaidCourse
laid_of_tag (const LaidTag *said)
{
  LaidCourse laid = laid_course_new (said->course);
  for (guint i = 0; said->perpends != NULL && i < said->perpends->len; i++)
    {
      LaidPerpend perpend = { g_array_index (said->perpends, Length, i), PERPEND_ALL };
      g_array_append_val (laid.perpends, perpend);
    }
  for (guint i = 0; said->at != NULL && i + 1 < said->at->len; i += 2)
    {
      LaidPerpend perpend
          = { g_array_index (said->at, Length, i), g_array_index (said->at, Length, i + 1) };
      g_array_append_val (laid.perpends, perpend);
    }
  g_array_sort (laid.perpends, compare_perpends);
  laid.given = said->mask;
  laid.over = said->over;
  laid.bottom = said->bottom;
  laid.top = said->top;
  laid.top_right = said->top_right;
  return laid;
}

static gboolean
laid_fits (Draft *draft, const Tag *tag, const LaidTag *said)
{
  const GArray *laid = draft->wall->built->laid;
  for (guint i = laid->len; i-- > 0;)
    if (g_array_index (laid, LaidCourse, i).course == said->course)
      return draft_refuse (draft, tag->line, _ ("the wall has a second <laid> of course %d."),
                           said->course);
  return said->at == NULL || said->at->len % 2 == 0
         || draft_refuse (draft, tag_attribute (tag, "perpends-at")->line,
                          _ ("laid: perpends-at has a place without a height."));
}

static gboolean
start_laid (Draft *draft, const Tag *tag, Foreign **foreign)
{
  GArray *laid = draft->wall->built->laid;
  LaidTag said = { 0 };
  guint i = laid->len;
  if (laid->len >= BUILT_MAX_COURSES)
    return draft_refuse (draft, tag->line, _ ("there are more than %d standing courses."),
                         BUILT_MAX_COURSES);
  gboolean well = read_tag (draft, tag, &element_laid, &said) && laid_fits (draft, tag, &said);
  if (well)
    {
      LaidCourse course = laid_of_tag (&said);
      while (i > 0 && g_array_index (laid, LaidCourse, i - 1).course > course.course)
        i--;
      g_array_insert_val (laid, i, course);
      *foreign = &g_array_index (laid, LaidCourse, i).foreign;
    }
  g_clear_pointer (&said.perpends, g_array_unref);
  g_clear_pointer (&said.at, g_array_unref);
  return well;
}

static gboolean
start_tolerance (Draft *draft, const Tag *tag, Foreign **foreign)
{
  ToleranceTag said = { 0 };
  if (!read_tag (draft, tag, &element_tolerance, &said))
    return FALSE;
  Tolerance *tolerance = &draft->project->tolerances[said.of];
  *foreign = &tolerance->foreign;
  if (tolerance->given)
    return draft_refuse (draft, tag->line, _ ("there is a second tolerance \"%s\"."),
                         tolerance_word (said.of));
  tolerance->given = TRUE;
  tolerance->limit = said.limit;
  return TRUE;
}

static gboolean
start_survey (Draft *draft, const Tag *tag, Foreign **foreign)
{
  if (draft->project->survey != NULL)
    return draft_refuse (draft, tag->line, _ ("there is a second <survey>."));
  Survey *survey = draft->project->survey = survey_new ();
  draft->survey_line = tag->line;
  *foreign = &survey->foreign;
  return read_tag (draft, tag, &element_survey, survey);
}

static gboolean
start_reading (Draft *draft, const Tag *tag, Foreign **foreign)
{
  Survey *survey = draft->project->survey;
  if (survey->readings->len >= SURVEY_MAX_READINGS)
    return draft_refuse (draft, tag->line, _ ("there are more than %d readings."),
                         SURVEY_MAX_READINGS);
  Reading *reading = survey_add_reading (survey);
  *foreign = &reading->foreign;
  return read_tag (draft, tag, &element_reading, reading);
}

static gboolean
start_work (Draft *draft, const Tag *tag, Foreign **foreign)
{
  if (draft->has_work)
    return draft_refuse (draft, tag->line, _ ("there is a second <work>."));
  draft->has_work = TRUE;
  *foreign = &draft->project->rates_foreign;
  return read_tag (draft, tag, &element_work, &draft->project->rates);
}

/* Takes the key. */
static void
note_named_wall (Draft *draft, const Tag *tag, const char *attribute, NamedWall note)
{
  const Attribute *found = tag_attribute (tag, attribute);
  note.line = found != NULL ? found->line : tag->line;
  g_array_append_val (draft->named, note);
}

static gboolean
start_place (Draft *draft, const Tag *tag, Foreign **foreign)
{
  guint last = draft->project->survey->readings->len - 1;
  Reading *reading = &g_array_index (draft->project->survey->readings, Reading, last);
  if (reading->places->len >= SURVEY_MAX_PLACES)
    return draft_refuse (draft, tag->line, _ ("the reading has more than %d places."),
                         SURVEY_MAX_PLACES);
  PlaceTag said = { 0 };
  gboolean well = read_tag (draft, tag, &element_place, &said);
  NamedWall note = { .key = said.wall, .reading = last, .place = reading->places->len };
  reading_add_place (reading, (WallId){ 0 }, said.x);
  note_named_wall (draft, tag, "wall", note);
  *foreign = &g_array_index (reading->places, SurveyPlace, reading->places->len - 1).foreign;
  return well;
}

static gboolean
start_diagonal (Draft *draft, const Tag *tag, Foreign **foreign)
{
  Survey *survey = draft->project->survey;
  if (survey->diagonals->len >= SURVEY_MAX_DIAGONALS)
    return draft_refuse (draft, tag->line, _ ("there are more than %d diagonals."),
                         SURVEY_MAX_DIAGONALS);
  Diagonal *diagonal = survey_add_diagonal (survey);
  DiagonalTag said = { .name = g_steal_pointer (&diagonal->name) };
  gboolean well = read_tag (draft, tag, &element_diagonal, &said);
  diagonal->name = said.name;
  diagonal->given = said.mask;
  diagonal->first = said.first;
  diagonal->second = said.second;
  diagonal->length = said.length;
  NamedWall along = { .key = said.along, .diagonal = survey->diagonals->len };
  NamedWall across = { .key = said.across, .diagonal = survey->diagonals->len, .across = TRUE };
  note_named_wall (draft, tag, "along", along);
  note_named_wall (draft, tag, "across", across);
  *foreign = &diagonal->foreign;
  return well;
}

static const Kind kinds[] = {
  { &element_project, NULL, start_project },
  { &element_block, &element_project, start_block },
  { &element_wall, &element_project, start_wall },
  { &element_laying, &element_wall, start_laying },
  { &element_rule, &element_laying, start_rule },
  { &element_end, &element_wall, start_end },
  { &element_tee, &element_wall, start_tee },
  { &element_movement_joint, &element_wall, start_movement_joint },
  { &element_steel, &element_wall, start_steel },
  { &element_steel_row, &element_wall, start_steel_row },
  { &element_opening, &element_wall, start_opening },
  { &element_pin, &element_wall, start_pin },
  { &element_top, &element_wall, start_top },
  { &element_foot, &element_wall, start_foot },
  { &element_cap, &element_wall, start_cap },
  { &element_built, &element_wall, start_built },
  { &element_laid, &element_built, start_laid },
  { &element_tolerance, &element_project, start_tolerance },
  { &element_survey, &element_project, start_survey },
  { &element_reading, &element_survey, start_reading },
  { &element_place, &element_reading, start_place },
  { &element_diagonal, &element_survey, start_diagonal },
  { &element_work, &element_project, start_work },
};

static const Kind *
find_kind (const Tag *tag, const Element *parent)
{
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    if (kinds[i].parent == parent && g_str_equal (kinds[i].element->name, tag->name))
      return &kinds[i];
  return NULL;
}

static gboolean
refuse_element (Draft *draft, const Tag *tag, const Element *parent)
{
  g_autofree char *shown = quoted (tag->name);
  if (parent != NULL)
    return draft_refuse (draft, tag->line, _ ("there is no element %s in <%s>."), shown,
                         parent->name);
  if (!tag_is_ours (tag) && g_str_equal (tag->name, element_project.name))
    return draft_refuse (draft, tag->line, _ ("the project is not of the namespace %s."),
                         STORE_NAMESPACE);
  return draft_refuse (draft, tag->line,
                       _ ("the file begins with %s; a project begins with <project>."), shown);
}

Foreign *
draft_start (Draft *draft, const Tag *tag, const Element *parent, const Element **element)
{
  const Kind *kind = tag_is_ours (tag) ? find_kind (tag, parent) : NULL;
  Foreign *foreign;
  if (kind == NULL)
    refuse_element (draft, tag, parent);
  if (kind == NULL || !kind->start (draft, tag, &foreign))
    return NULL;
  *element = kind->element;
  return foreign;
}

static const Block *
find_block (const Project *project, const char *key)
{
  for (guint i = 0; i < project->blocks->len; i++)
    if (g_str_equal (project_block_at (project, i)->key, key))
      return project_block_at (project, i);
  return NULL;
}

static gboolean
find_wall_block (Draft *draft, Wall *wall, const WallNote *note)
{
  const Block *block = find_block (draft->project, note->block);
  if (block != NULL)
    {
      wall->block = block->id;
      return TRUE;
    }
  g_autofree char *wall_key = quoted (wall->key);
  g_autofree char *block_key = quoted (note->block);
  return draft_refuse (draft, note->block_line, _ ("wall %s: there is no block %s."), wall_key,
                       block_key);
}

/* Now that every block is known. */
static void
check_wall (Draft *draft, guint i)
{
  Wall *wall = g_ptr_array_index (draft->project->walls, i);
  const WallNote *note = &g_array_index (draft->walls, WallNote, i);
  if (!find_wall_block (draft, wall, note))
    return;
  OpeningId opening;
  g_autofree char *fault = wall_fault (wall, project_block (draft->project, wall->block), &opening);
  g_autofree char *key = fault != NULL ? quoted (wall->key) : NULL;
  int line = opening.n > 0 ? g_array_index (draft->lines, int, opening.n) : note->line;
  if (fault != NULL)
    draft_refuse (draft, line, _ ("wall %s: %s"), key, fault);
}

static void
find_named_wall (Draft *draft, GHashTable *walls, const NamedWall *note)
{
  Survey *survey = draft->project->survey;
  const Wall *wall = g_hash_table_lookup (walls, note->key);
  if (wall == NULL)
    {
      g_autofree char *shown = quoted (note->key);
      draft_refuse (draft, note->line, _ ("survey: there is no wall %s."), shown);
    }
  else if (note->diagonal > 0)
    {
      Diagonal *diagonal = &g_array_index (survey->diagonals, Diagonal, note->diagonal - 1);
      *(note->across ? &diagonal->across : &diagonal->along) = wall->id;
    }
  else
    {
      GArray *places = g_array_index (survey->readings, Reading, note->reading).places;
      g_array_index (places, SurveyPlace, note->place).wall = wall->id;
    }
}

/* Now that every wall is known. */
static void
check_survey (Draft *draft)
{
  g_autoptr (GHashTable) walls = g_hash_table_new (g_str_hash, g_str_equal);
  for (guint i = 0; i < draft->project->walls->len; i++)
    g_hash_table_insert (walls, project_wall_at (draft->project, i)->key,
                         g_ptr_array_index (draft->project->walls, i));
  for (guint i = 0; draft->fault == NULL && i < draft->named->len; i++)
    find_named_wall (draft, walls, &g_array_index (draft->named, NamedWall, i));
  g_autofree char *fault = draft->fault == NULL ? survey_fault (draft->project->survey) : NULL;
  if (fault != NULL)
    draft_refuse (draft, draft->survey_line, _ ("survey: %s"), fault);
}

void
draft_check (Draft *draft)
{
  for (guint i = 0; draft->fault == NULL && i < draft->project->walls->len; i++)
    check_wall (draft, i);
  if (draft->fault == NULL && draft->project->survey != NULL)
    check_survey (draft);
  if (draft->fault != NULL)
    return;
  g_autofree char *fault = project_fault (draft->project);
  if (fault != NULL)
    draft_refuse (draft, 1, "%s", fault);
}
