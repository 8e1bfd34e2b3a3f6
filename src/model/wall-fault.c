/* wall-fault.c - what is wrong with a wall, as a sentence */
#include <glib/gi18n-lib.h>

#include "model/wall.h"

/* A fault is a new sentence, or NULL. */

/* What has a name is called by it, else by its key. */
static const char *
called (const char *name, const char *key)
{
  return name && *name ? name : key ? key : "";
}

/* `what` is a phrase with its article, "the bed joint", not translated yet: of all that is asked,
 * nearly nothing is at fault. */
static char *
length_fault (const char *what, Length value, Length least, Length most)
{
  char is[LENGTH_TEXT_SIZE], low[LENGTH_TEXT_SIZE], high[LENGTH_TEXT_SIZE];

  if (value >= least && value <= most)
    return NULL;
  return g_strdup_printf (_ ("%s is %s mm; it must be from %s to %s mm."), _ (what),
                          length_text (value, is), length_text (least, low),
                          length_text (most, high));
}

static char *
laying_fault (const Laying *laying, const Block *block)
{
  Length unit = block ? block->length : LENGTH_MM (10000);
  const struct
  {
    guint field;
    const char *what;
    Length value, least, most;
  } rows[] = {
    { LAYING_FIRST_BED, N_ ("The levelling bed"), laying->first_bed, 0, LENGTH_MM (200) },
    { LAYING_BED, N_ ("The bed joint"), laying->bed, 0, LENGTH_MM (20) },
    { LAYING_HEAD, N_ ("The head joint"), laying->head, 0, LENGTH_MM (20) },
    { LAYING_MIN_PIECE, N_ ("The shortest piece"), laying->min_piece, 1, LENGTH_MM (10000) },
    { LAYING_MIN_LAP, N_ ("The least lap"), laying->min_lap, 0, unit },
    { LAYING_MIN_RIP, N_ ("The thinnest strip"), laying->min_rip, 1, LENGTH_MM (10000) },
    { LAYING_MIN_RAKED, N_ ("The shortest raked piece"), laying->min_raked, 1, LENGTH_MM (10000) },
    { LAYING_KERF, N_ ("The saw cut"), laying->kerf, 0, LENGTH_MM (20) },
  };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    if (laying->given & rows[i].field)
      {
        char *fault = length_fault (rows[i].what, rows[i].value, rows[i].least, rows[i].most);

        if (fault)
          return fault;
      }
  return NULL;
}

/* The numbers of the rules that are on. */
static char *
rules_fault (const Laying *laying)
{
  for (guint i = 0; i < N_RULES; i++)
    {
      const RuleRow *row = rule_row ((RuleKind) i);
      const Rule *rule = &laying->rules[i];

      if (rule->keep == KEEP_OFF || !rule->has_value)
        continue;
      if (row->value == RULE_LENGTH)
        {
          char *fault = length_fault (row->number, rule->value, row->least, row->most);

          if (fault)
            return fault;
        }
      else if (rule->value < row->least || rule->value > row->most)
        return g_strdup_printf (_ ("%s is %d; it must be from %d to %d."), _ (row->number),
                                rule->value, row->least, row->most);
    }
  return NULL;
}

/* Joints shorter than the unit keep every search finite. */
static char *
joints_fault (const Wall *wall, const Block *block)
{
  Laying laying = laying_resolve (&wall->laying, block);
  char joint[LENGTH_TEXT_SIZE], unit[LENGTH_TEXT_SIZE];

  if (laying.head >= block->length)
    return g_strdup_printf (_ ("The head joint of %s mm is not shorter than the block, %s mm."),
                            length_text (laying.head, joint), length_text (block->length, unit));
  if (laying.bed >= block->height)
    return g_strdup_printf (_ ("The bed joint of %s mm is not thinner than the block, %s mm."),
                            length_text (laying.bed, joint), length_text (block->height, unit));
  if (laying.first_bed >= wall->height)
    return g_strdup_printf (
        _ ("The levelling bed of %s mm leaves nothing of the wall's height, %s mm."),
        length_text (laying.first_bed, joint), length_text (wall->height, unit));
  return NULL;
}

static char *
count_fault (const Wall *wall, const Block *block)
{
  Laying laying = laying_resolve (&wall->laying, block);
  gint64 course = wall->length / (block->length + laying.head) + 1;
  gint64 courses = wall->height / (block->height + laying.bed) + 1;

  if (course > WALL_MAX_BLOCKS_A_COURSE)
    return g_strdup_printf (_ ("A course would take about %d blocks; at most %d can be laid."),
                            (int) course, WALL_MAX_BLOCKS_A_COURSE);
  if (course * courses > WALL_MAX_BLOCKS)
    return g_strdup_printf (_ ("The wall would take about %d blocks; at most %d can be laid."),
                            (int) (course * courses), WALL_MAX_BLOCKS);
  return NULL;
}

static char *
end_fault (const Wall *wall)
{
  Length returns = 0;

  for (int side = 0; side < 2; side++)
    if (wall->ends[side].has_return)
      {
        char *fault = length_fault (side == SIDE_LEFT ? N_ ("The return at the left end")
                                                      : N_ ("The return at the right end"),
                                    wall->ends[side].ret, 0, LENGTH_MM (10000));

        if (!fault)
          fault = length_fault (N_ ("The height that a corner reaches up to"),
                                wall->ends[side].up_to, 0, LENGTH_MAX);
        if (!fault)
          fault = ties_fault (&wall->ends[side].ties);
        if (fault)
          return fault;
        returns += wall->ends[side].ret;
      }
  if (returns >= wall->length)
    {
      char all[LENGTH_TEXT_SIZE], length[LENGTH_TEXT_SIZE];

      return g_strdup_printf (
          _ ("The returns take %s mm; the wall is %s mm long and nothing of it is left."),
          length_text (returns, all), length_text (wall->length, length));
    }
  return NULL;
}

static char *
place_in_plan_fault (const PlanPlace *place)
{
  char *fault = NULL;

  if (place->given)
    fault = length_fault (N_ ("The wall's place to the east"), place->x, -LENGTH_MAX, LENGTH_MAX);
  if (place->given && !fault)
    fault = length_fault (N_ ("The wall's place to the north"), place->y, -LENGTH_MAX, LENGTH_MAX);
  return fault;
}

static char *
tees_fault (const Wall *wall)
{
  char x[LENGTH_TEXT_SIZE];

  if (wall->tees->len > WALL_MAX_TEES)
    return g_strdup_printf (_ ("The wall is met by %u walls; at most %d are allowed."),
                            wall->tees->len, WALL_MAX_TEES);
  for (guint i = 0; i < wall->tees->len; i++)
    {
      const Tee *tee = wall_tee_at (wall, i);
      char *fault
          = length_fault (N_ ("A meeting wall's thickness"), tee->ret, 1, LENGTH_MM (10000));

      if (!fault)
        fault = length_fault (N_ ("A meeting wall's place"), tee->x, 0, LENGTH_MAX);
      if (!fault)
        fault = length_fault (N_ ("The height of a meeting wall"), tee->up_to, 0, LENGTH_MAX);
      if (!fault)
        fault = ties_fault (&tee->ties);
      if (fault)
        return fault;
      if (tee_right (tee) > wall->length)
        return g_strdup_printf (_ ("The wall that meets it at %s mm stands beyond its right end."),
                                length_text (tee->x, x));
    }
  return NULL;
}

static gint
by_joint_place (gconstpointer a, gconstpointer b)
{
  const MovementJoint *const *p = a, *const *q = b;

  return ((*p)->x > (*q)->x) - ((*p)->x < (*q)->x);
}

static char *
movement_joint_fault (const Wall *wall, const MovementJoint *joint)
{
  char x[LENGTH_TEXT_SIZE];
  char *fault = length_fault (N_ ("A movement joint's width"), joint->width, MOVEMENT_JOINT_LEAST,
                              MOVEMENT_JOINT_MOST);

  if (!fault)
    fault = length_fault (N_ ("A movement joint's place"), joint->x, 1, LENGTH_MAX);
  if (!fault && movement_joint_right (joint) >= wall->length)
    fault = g_strdup_printf (
        _ ("The movement joint at %s mm leaves nothing of the wall on its right."),
        length_text (joint->x, x));
  if (!fault
      && (joint->x <= wall->ends[SIDE_LEFT].ret
          || movement_joint_right (joint) >= wall->length - wall->ends[SIDE_RIGHT].ret))
    fault = g_strdup_printf (
        _ ("The movement joint at %s mm lies within the other wall of the corner."),
        length_text (joint->x, x));
  return fault;
}

static char *
movement_joints_fault (const Wall *wall)
{
  g_autoptr (GPtrArray) sorted = g_ptr_array_new ();
  char x[LENGTH_TEXT_SIZE];

  if (wall->movement_joints->len > WALL_MAX_MOVEMENT_JOINTS)
    return g_strdup_printf (_ ("The wall has %u movement joints; at most %d are allowed."),
                            wall->movement_joints->len, WALL_MAX_MOVEMENT_JOINTS);
  for (guint i = 0; i < wall->movement_joints->len; i++)
    {
      char *fault = movement_joint_fault (wall, wall_movement_joint_at (wall, i));

      if (fault)
        return fault;
      g_ptr_array_add (sorted, (gpointer) wall_movement_joint_at (wall, i));
    }
  g_ptr_array_sort (sorted, by_joint_place);
  for (guint i = 1; i < sorted->len; i++)
    {
      const MovementJoint *before = sorted->pdata[i - 1], *joint = sorted->pdata[i];

      if (movement_joint_right (before) >= joint->x)
        return g_strdup_printf (
            _ ("The movement joint at %s mm leaves nothing of the wall before it."),
            length_text (joint->x, x));
    }
  return NULL;
}

static char *
steel_fault (const Wall *wall)
{
  const Steel *steel = &wall->steel;
  char *fault;

  if (!steel->given)
    return NULL;
  if (steel->bars < 1 || steel->bars > 20)
    return g_strdup_printf (_ ("The steel has %d bars side by side; it must be 1 to 20."),
                            steel->bars);
  if (steel->every < 0 || steel->every > 10000)
    return g_strdup_printf (_ ("The steel is in every %d courses; it must be 0 to 10000."),
                            steel->every);
  if ((fault = length_fault (N_ ("The steel's diameter"), steel->diameter, 1, LENGTH_MM (50))))
    return fault;
  if ((fault = length_fault (N_ ("The steel past an opening"), steel->past, 0, LENGTH_MAX)))
    return fault;
  /* A lap as long as the stock would never get on. */
  return length_fault (N_ ("The steel's lap"), steel->lap, 0, LENGTH_MM (3000));
}

static char *
steel_rows_fault (const Wall *wall)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (NULL, NULL);

  for (guint i = 0; i < wall->steel_rows->len; i++)
    {
      gint32 course = g_array_index (wall->steel_rows, SteelRow, i).course;

      if (course < 1 || course > 10000)
        return g_strdup_printf (_ ("A steel row is on course %d; it must be 1 to 10000."), course);
      if (!g_hash_table_add (seen, GINT_TO_POINTER (course)))
        return g_strdup_printf (_ ("There are two steel rows on course %d."), course);
    }
  return NULL;
}

static gint
by_pin_place (gconstpointer a, gconstpointer b)
{
  const Pin *p = *(const Pin *const *) a, *q = *(const Pin *const *) b;

  if (p->course != q->course)
    return p->course < q->course ? -1 : 1;
  return (p->x > q->x) - (p->x < q->x);
}

static char *
pin_fault (const Pin *pin)
{
  char *fault;

  if (pin->course < 1 || pin->course > PIN_MAX_COURSE)
    return g_strdup_printf (_ ("A pin is on course %d; it must be 1 to %d."), pin->course,
                            PIN_MAX_COURSE);
  if ((fault = length_fault (N_ ("A pin's place"), pin->x, 0, LENGTH_MAX)))
    return fault;
  return length_fault (N_ ("A pinned piece"), pin->length, 0, PIN_MAX_LENGTH);
}

static char *
pins_fault (const Wall *wall)
{
  g_autoptr (GPtrArray) sorted = g_ptr_array_sized_new (wall->pins->len);
  char x[LENGTH_TEXT_SIZE];

  if (wall->pins->len > WALL_MAX_PINS)
    return g_strdup_printf (_ ("The wall has %u pins; at most %d are allowed."), wall->pins->len,
                            WALL_MAX_PINS);
  for (guint i = 0; i < wall->pins->len; i++)
    {
      char *fault = pin_fault (wall_pin_at (wall, i));

      if (fault)
        return fault;
      g_ptr_array_add (sorted, (gpointer) wall_pin_at (wall, i));
    }
  g_ptr_array_sort (sorted, by_pin_place);
  for (guint i = 1; i < sorted->len; i++)
    if (by_pin_place (&sorted->pdata[i - 1], &sorted->pdata[i]) == 0)
      {
        const Pin *pin = g_ptr_array_index (sorted, i);

        return g_strdup_printf (_ ("There are two pins on course %d at %s mm."), pin->course,
                                length_text (pin->x, x));
      }
  return NULL;
}

/* --- top and foot --- */

static char *
top_point_fault (const Wall *wall, guint i)
{
  const TopPoint *point = top_point (wall->tops, i);
  char x[LENGTH_TEXT_SIZE], is[LENGTH_TEXT_SIZE], most[LENGTH_TEXT_SIZE];
  char *fault = length_fault (N_ ("The place of a point of the top"), point->x, 0, wall->length);

  if (fault)
    return fault;
  if (point->below < 0 || point->below > wall->height)
    return g_strdup_printf (
        _ ("The top at %s mm lies %s mm below the wall's height; it must be from 0 to %s mm."),
        length_text (point->x, x), length_text (point->below, is),
        length_text (wall->height, most));
  if (i > 0 && point->x < top_point (wall->tops, i - 1)->x)
    return g_strdup_printf (_ ("The point of the top at %s mm comes after one at %s mm; they go "
                               "from left to right."),
                            length_text (point->x, x),
                            length_text (top_point (wall->tops, i - 1)->x, is));
  if (i > 1 && point->x == top_point (wall->tops, i - 2)->x)
    return g_strdup_printf (_ ("There are more than two points of the top at %s mm."),
                            length_text (point->x, x));
  return NULL;
}

static char *
tops_fault (const Wall *wall)
{
  Length least = LENGTH_MAX;
  char by[LENGTH_TEXT_SIZE];

  if (wall->tops->len > WALL_MAX_TOP_POINTS)
    return g_strdup_printf (_ ("The wall's top has %u points; at most %d are allowed."),
                            wall->tops->len, WALL_MAX_TOP_POINTS);
  for (guint i = 0; i < wall->tops->len; i++)
    {
      char *fault = top_point_fault (wall, i);

      if (fault)
        return fault;
      least = MIN (least, top_point (wall->tops, i)->below);
    }
  if (wall->tops->len > 0 && least > 0)
    return g_strdup_printf (
        _ ("The top's highest point lies %s mm below the wall's height; it must be at it."),
        length_text (least, by));
  if (wall->cap.height != 0)
    return length_fault (N_ ("The cap's height"), wall->cap.height, CAP_LEAST, CAP_MOST);
  return NULL;
}

static char *
foot_fault (const Wall *wall, guint i)
{
  const Foot *foot = foot_point (wall->feet, i);
  const Length to = i + 1 < wall->feet->len ? foot_point (wall->feet, i + 1)->x : wall->length;
  char x[LENGTH_TEXT_SIZE], up[LENGTH_TEXT_SIZE];
  char *fault = length_fault (N_ ("The place of a step in the footing"), foot->x, 0, LENGTH_MAX);

  if (!fault)
    fault = length_fault (N_ ("The height of a step in the footing"), foot->up, 0, LENGTH_MAX);
  if (fault)
    return fault;
  if (foot->x >= wall->length)
    return g_strdup_printf (_ ("The step in the footing at %s mm stands beyond the right end."),
                            length_text (foot->x, x));
  if (to <= foot->x)
    return g_strdup_printf (
        _ ("The steps in the footing at %s mm and after it do not go from left to right."),
        length_text (foot->x, x));
  if (wall_top_lowest (wall, foot->x, to) < foot->up)
    return g_strdup_printf (_ ("The footing from %s mm on lies %s mm up, above the wall's top."),
                            length_text (foot->x, x), length_text (foot->up, up));
  return NULL;
}

static char *
feet_fault (const Wall *wall)
{
  if (wall->feet->len > WALL_MAX_FEET)
    return g_strdup_printf (_ ("The footing has %u steps; at most %d are allowed."),
                            wall->feet->len, WALL_MAX_FEET);
  for (guint i = 0; i < wall->feet->len; i++)
    {
      char *fault = foot_fault (wall, i);

      if (fault)
        return fault;
    }
  return NULL;
}

/* By how much it leaves the wall, and where. */
static char *
leaves_fault (const Wall *wall, const Opening *opening)
{
  const char *name = called (opening->name, opening->key);
  char by[LENGTH_TEXT_SIZE];
  Length foot, top;

  if (opening->x < 0)
    return g_strdup_printf (_ ("Opening %s leaves the wall by %s mm on the left."), name,
                            length_text (-opening->x, by));
  if (opening_right (opening) > wall->length)
    return g_strdup_printf (_ ("Opening %s leaves the wall by %s mm on the right."), name,
                            length_text (opening_right (opening) - wall->length, by));
  foot = foot_highest (wall->feet, opening->x, opening_right (opening));
  if (opening->sill < foot)
    return g_strdup_printf (_ ("Opening %s leaves the wall by %s mm at the foot."), name,
                            length_text (foot - opening->sill, by));
  top = wall_top_lowest (wall, opening->x, opening_right (opening));
  if (opening_head (opening) > top)
    return g_strdup_printf (_ ("Opening %s leaves the wall by %s mm at the top."), name,
                            length_text (opening_head (opening) - top, by));
  return NULL;
}

/* `what` has a %s for the opening, and is not translated yet. */
static char *
opening_length_fault (const Opening *opening, const char *what, Length value, Length least,
                      Length most)
{
  g_autoptr (GString) named = NULL;

  if (value >= least && value <= most)
    return NULL;
  named = g_string_new (_ (what));
  g_string_replace (named, "%s", called (opening->name, opening->key), 1);
  return length_fault (named->str, value, least, most);
}

/* What was planned where a figure was measured. */
static char *
planned_fault (const Opening *opening)
{
  const struct
  {
    guint field;
    const char *what;
    Length value, least;
  } rows[] = {
    { OPENING_PLANNED_X, N_ ("The planned place of opening %s"), opening->planned_x, 0 },
    { OPENING_PLANNED_WIDTH, N_ ("The planned width of opening %s"), opening->planned_width,
      LENGTH_MM (10) },
    { OPENING_PLANNED_SILL, N_ ("The planned sill of opening %s"), opening->planned_sill, 0 },
    { OPENING_PLANNED_HEIGHT, N_ ("The planned height of opening %s"), opening->planned_height,
      LENGTH_MM (10) },
  };
  char *fault = NULL;

  for (guint i = 0; !fault && i < G_N_ELEMENTS (rows); i++)
    if (opening->given & rows[i].field)
      fault
          = opening_length_fault (opening, rows[i].what, rows[i].value, rows[i].least, LENGTH_MAX);
  return fault;
}

static char *
size_fault (const Opening *opening)
{
  char *fault = opening_length_fault (opening, N_ ("The width of opening %s"), opening->width,
                                      LENGTH_MM (10), LENGTH_MAX);

  if (!fault)
    fault = opening_length_fault (opening, N_ ("The height of opening %s"), opening->height,
                                  LENGTH_MM (10), LENGTH_MAX);
  if (!fault)
    fault = opening_length_fault (opening, N_ ("How far opening %s may move"),
                                  opening_may_move (opening), 0, OPENING_MOST_MOVE);
  if (!fault && opening->given & OPENING_DRAWN_X)
    fault = opening_length_fault (opening, N_ ("The place that opening %s was drawn at"),
                                  opening->drawn_x, 0, LENGTH_MAX);
  if (!fault)
    fault = planned_fault (opening);
  if (!fault && opening_has_load (opening)
      && !(opening->line_load >= 0 && opening->line_load <= OPENING_MOST_LOAD))
    fault = g_strdup_printf (_ ("The load over opening %s must be from 0 to %d kN/m."),
                             called (opening->name, opening->key), OPENING_MOST_LOAD);
  return fault;
}

/* So that what follows may add and subtract. */
static char *
place_fault (const Opening *opening)
{
  if (opening->x >= -LENGTH_MAX && opening->x <= LENGTH_MAX && opening->sill >= -LENGTH_MAX
      && opening->sill <= LENGTH_MAX && opening_drawn_x (opening) >= -LENGTH_MAX
      && opening_drawn_x (opening) <= LENGTH_MAX)
    return NULL;
  return g_strdup_printf (_ ("Opening %s is further away than any wall is long."),
                          called (opening->name, opening->key));
}

static gboolean
overlap (const Opening *a, const Opening *b)
{
  return a->x < opening_right (b) && b->x < opening_right (a) && a->sill < opening_head (b)
         && b->sill < opening_head (a);
}

static gint
by_x (gconstpointer a, gconstpointer b)
{
  const Opening *const *x = a, *const *y = b;

  return (*x)->x < (*y)->x ? -1 : (*x)->x > (*y)->x;
}

/* Openings in order of x, each against those before it that have not ended: quick for many. */
static char *
overlap_fault (const Wall *wall, OpeningId *which)
{
  g_autoptr (GPtrArray) sorted = g_ptr_array_sized_new (wall->openings->len);

  for (guint i = 0; i < wall->openings->len; i++)
    g_ptr_array_add (sorted, (gpointer) wall_opening_at (wall, i));
  g_ptr_array_sort (sorted, by_x);
  for (guint i = 0; i < sorted->len; i++)
    {
      const Opening *a = g_ptr_array_index (sorted, i);

      for (guint j = i + 1; j < sorted->len; j++)
        {
          const Opening *b = g_ptr_array_index (sorted, j);

          if (b->x >= opening_right (a))
            break;
          if (overlap (a, b))
            {
              *which = b->id;
              return g_strdup_printf (_ ("Openings %s and %s overlap."), called (a->name, a->key),
                                      called (b->name, b->key));
            }
        }
    }
  return NULL;
}

static char *
openings_fault (const Wall *wall, OpeningId *which)
{
  if (wall->openings->len > WALL_MAX_OPENINGS)
    return g_strdup_printf (_ ("The wall has %u openings; at most %d are allowed."),
                            wall->openings->len, WALL_MAX_OPENINGS);
  for (guint i = 0; i < wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (wall, i);
      char *fault = size_fault (opening);

      if (!fault)
        fault = place_fault (opening);
      if (!fault)
        fault = leaves_fault (wall, opening);
      if (fault)
        {
          *which = opening->id;
          return fault;
        }
    }
  return overlap_fault (wall, which);
}

static char *
what_stands_fault (const Wall *wall, const Block *block)
{
  Laying laying = block ? laying_resolve (&wall->laying, block) : laying_default ();

  return wall->built ? built_fault (wall->built, &laying, block, wall->height) : NULL;
}

char *
wall_fault (const Wall *wall, const Block *block, OpeningId *opening)
{
  OpeningId unused;
  char *fault;

  if (!opening)
    opening = &unused;
  *opening = (OpeningId){ 0 };
  if ((fault = length_fault (N_ ("The wall's length"), wall->length, LENGTH_MM (50), LENGTH_MAX)))
    return fault;
  if ((fault = length_fault (N_ ("The wall's height"), wall->height, LENGTH_MM (50), LENGTH_MAX)))
    return fault;
  if ((fault = laying_fault (&wall->laying, block)) || (fault = rules_fault (&wall->laying)))
    return fault;
  if (block && ((fault = joints_fault (wall, block)) || (fault = count_fault (wall, block))))
    return fault;
  if ((fault = tops_fault (wall)) || (fault = feet_fault (wall)))
    return fault;
  if ((fault = place_in_plan_fault (&wall->place)) || (fault = end_fault (wall))
      || (fault = tees_fault (wall)) || (fault = movement_joints_fault (wall))
      || (fault = steel_fault (wall)) || (fault = steel_rows_fault (wall))
      || (fault = pins_fault (wall)) || (fault = what_stands_fault (wall, block)))
    return fault;
  return openings_fault (wall, opening);
}
