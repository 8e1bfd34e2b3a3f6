/* wall.c - one straight wall and what can be wrong with it */
#include "model/wall.h"

static void
opening_clear_item (gpointer data)
{
  opening_clear (data);
}

static void
steel_row_clear (gpointer data)
{
  foreign_clear (&((SteelRow *) data)->foreign);
}

static void
pin_clear_item (gpointer data)
{
  pin_clear (data);
}

static void
tee_clear (gpointer data)
{
  foreign_clear (&((Tee *) data)->foreign);
}

static void
movement_joint_clear (gpointer data)
{
  MovementJoint *joint = data;

  g_clear_pointer (&joint->filler, g_free);
  foreign_clear (&joint->foreign);
}

static void
make_lists (Wall *wall)
{
  wall->tees = g_array_new (FALSE, TRUE, sizeof (Tee));
  g_array_set_clear_func (wall->tees, tee_clear);
  wall->movement_joints = g_array_new (FALSE, TRUE, sizeof (MovementJoint));
  g_array_set_clear_func (wall->movement_joints, movement_joint_clear);
  wall->openings = g_array_new (FALSE, TRUE, sizeof (Opening));
  g_array_set_clear_func (wall->openings, opening_clear_item);
  wall->steel_rows = g_array_new (FALSE, TRUE, sizeof (SteelRow));
  g_array_set_clear_func (wall->steel_rows, steel_row_clear);
  wall->pins = g_array_new (FALSE, TRUE, sizeof (Pin));
  g_array_set_clear_func (wall->pins, pin_clear_item);
  wall->tops = top_list_new ();
  wall->feet = foot_list_new ();
}

Steel
steel_default (void)
{
  return (Steel){
    .bars = 2,
    .diameter = LENGTH_MM (6),
    .past = LENGTH_MM (600),
    .lap = LENGTH_MM (300),
  };
}

Wall *
wall_new (void)
{
  Wall *wall = g_new0 (Wall, 1);

  g_atomic_ref_count_init (&wall->refs);
  wall->name = g_strdup ("");
  wall->length = LENGTH_MM (6000);
  wall->height = LENGTH_MM (2500);
  wall->laying = laying_default ();
  wall->steel = steel_default ();
  make_lists (wall);
  return wall;
}

static void
copy_lists (Wall *copy, const Wall *wall)
{
  make_lists (copy);
  for (guint i = 0; i < wall->tees->len; i++)
    {
      Tee tee = *wall_tee_at (wall, i);

      tee.foreign = foreign_copy (&tee.foreign);
      g_array_append_val (copy->tees, tee);
    }
  for (guint i = 0; i < wall->movement_joints->len; i++)
    {
      MovementJoint joint = *wall_movement_joint_at (wall, i);

      joint.filler = g_strdup (joint.filler);
      joint.foreign = foreign_copy (&joint.foreign);
      g_array_append_val (copy->movement_joints, joint);
    }
  for (guint i = 0; i < wall->openings->len; i++)
    {
      Opening opening = opening_copy (wall_opening_at (wall, i));

      g_array_append_val (copy->openings, opening);
    }
  for (guint i = 0; i < wall->steel_rows->len; i++)
    {
      SteelRow row = g_array_index (wall->steel_rows, SteelRow, i);

      row.foreign = foreign_copy (&row.foreign);
      g_array_append_val (copy->steel_rows, row);
    }
  for (guint i = 0; i < wall->pins->len; i++)
    {
      Pin pin = pin_copy (wall_pin_at (wall, i));

      g_array_append_val (copy->pins, pin);
    }
  wall_take_top (copy, top_list_copy (wall->tops), wall->height);
  g_array_unref (copy->feet);
  copy->feet = foot_list_copy (wall->feet);
}

Wall *
wall_copy (const Wall *wall)
{
  Wall *copy = g_memdup2 (wall, sizeof *wall);

  g_atomic_ref_count_init (&copy->refs);
  copy->key = g_strdup (wall->key);
  copy->name = g_strdup (wall->name ? wall->name : "");
  copy->laying = laying_copy (&wall->laying);
  for (int side = 0; side < 2; side++)
    copy->ends[side].foreign = foreign_copy (&wall->ends[side].foreign);
  copy->steel.foreign = foreign_copy (&wall->steel.foreign);
  copy->cap.foreign = foreign_copy (&wall->cap.foreign);
  copy->foreign = foreign_copy (&wall->foreign);
  copy->built = built_copy (wall->built);
  copy_lists (copy, wall);
  return copy;
}

Wall *
wall_ref (const Wall *wall)
{
  Wall *shared = (Wall *) wall;

  g_atomic_ref_count_inc (&shared->refs);
  return shared;
}

void
wall_unref (Wall *wall)
{
  if (!wall || !g_atomic_ref_count_dec (&wall->refs))
    return;
  g_free (wall->key);
  g_free (wall->name);
  laying_clear (&wall->laying);
  for (int side = 0; side < 2; side++)
    foreign_clear (&wall->ends[side].foreign);
  foreign_clear (&wall->steel.foreign);
  foreign_clear (&wall->cap.foreign);
  foreign_clear (&wall->foreign);
  g_array_unref (wall->tops);
  g_array_unref (wall->feet);
  built_free (wall->built);
  g_array_unref (wall->openings);
  g_array_unref (wall->steel_rows);
  g_array_unref (wall->pins);
  g_array_unref (wall->tees);
  g_array_unref (wall->movement_joints);
  g_free (wall);
}

static const char *const runs_words[] = { "east", "north", "west", "south" };

const char *
runs_word (Runs runs)
{
  return runs_words[runs];
}

gboolean
runs_from_word (const char *word, Runs *out)
{
  for (guint i = 0; i < G_N_ELEMENTS (runs_words); i++)
    if (g_str_equal (word, runs_words[i]))
      {
        *out = (Runs) i;
        return TRUE;
      }
  return FALSE;
}

static void
unref_wall (gpointer data)
{
  wall_unref (data);
}

GPtrArray *
wall_list_new (void)
{
  return g_ptr_array_new_with_free_func (unref_wall);
}

static gboolean
place_equal (const PlanPlace *a, const PlanPlace *b)
{
  if (!a->given || !b->given)
    return !a->given == !b->given;
  return a->x == b->x && a->y == b->y && a->runs == b->runs;
}

static const char *const through_words[] = { "even", "odd", "all" };

const char *
through_word (Through through)
{
  return through_words[through];
}

gboolean
through_from_word (const char *word, Through *out)
{
  for (guint i = 0; i < G_N_ELEMENTS (through_words); i++)
    if (g_str_equal (word, through_words[i]))
      {
        *out = (Through) i;
        return TRUE;
      }
  return FALSE;
}

static gboolean
end_equal (const End *a, const End *b)
{
  if (a->given != b->given || a->has_return != b->has_return)
    return FALSE;
  return (!a->has_return
          || (a->ret == b->ret && a->through == b->through && a->up_to == b->up_to
              && ties_equal (&a->ties, &b->ties)))
         && foreign_equal (&a->foreign, &b->foreign);
}

static gboolean
steel_equal (const Steel *a, const Steel *b)
{
  if (!a->given && !b->given)
    return TRUE;
  return a->given == b->given && a->set == b->set && a->bars == b->bars
         && a->diameter == b->diameter && a->every == b->every && !a->under_sills == !b->under_sills
         && !a->over_heads == !b->over_heads && a->past == b->past && a->lap == b->lap
         && foreign_equal (&a->foreign, &b->foreign);
}

static gboolean
steel_rows_equal (const Wall *a, const Wall *b)
{
  if (a->steel_rows->len != b->steel_rows->len)
    return FALSE;
  for (guint i = 0; i < a->steel_rows->len; i++)
    {
      const SteelRow *x = &g_array_index (a->steel_rows, SteelRow, i);
      const SteelRow *y = &g_array_index (b->steel_rows, SteelRow, i);

      if (x->course != y->course || !x->omit != !y->omit
          || !foreign_equal (&x->foreign, &y->foreign))
        return FALSE;
    }
  return TRUE;
}

static gboolean
openings_equal (const Wall *a, const Wall *b)
{
  if (a->openings->len != b->openings->len)
    return FALSE;
  for (guint i = 0; i < a->openings->len; i++)
    if (!opening_equal (wall_opening_at (a, i), wall_opening_at (b, i)))
      return FALSE;
  return TRUE;
}

static gboolean
tees_equal (const Wall *a, const Wall *b)
{
  if (a->tees->len != b->tees->len)
    return FALSE;
  for (guint i = 0; i < a->tees->len; i++)
    {
      const Tee *x = wall_tee_at (a, i), *y = wall_tee_at (b, i);

      if (x->x != y->x || x->ret != y->ret || x->through != y->through || x->up_to != y->up_to
          || !ties_equal (&x->ties, &y->ties) || !foreign_equal (&x->foreign, &y->foreign))
        return FALSE;
    }
  return TRUE;
}

static gboolean
movement_joints_equal (const Wall *a, const Wall *b)
{
  if (a->movement_joints->len != b->movement_joints->len)
    return FALSE;
  for (guint i = 0; i < a->movement_joints->len; i++)
    {
      const MovementJoint *x = wall_movement_joint_at (a, i), *y = wall_movement_joint_at (b, i);

      if (x->x != y->x || x->width != y->width || g_strcmp0 (x->filler, y->filler) != 0
          || !foreign_equal (&x->foreign, &y->foreign))
        return FALSE;
    }
  return TRUE;
}

static gboolean
pins_equal (const Wall *a, const Wall *b)
{
  if (a->pins->len != b->pins->len)
    return FALSE;
  for (guint i = 0; i < a->pins->len; i++)
    if (!pin_equal (wall_pin_at (a, i), wall_pin_at (b, i)))
      return FALSE;
  return TRUE;
}

gboolean
wall_equal (const Wall *a, const Wall *b)
{
  if (a == b)
    return TRUE;
  return a->id.n == b->id.n && g_strcmp0 (a->key, b->key) == 0 && g_strcmp0 (a->name, b->name) == 0
         && a->block.n == b->block.n && place_equal (&a->place, &b->place) && a->length == b->length
         && a->height == b->height && top_list_equal (a->tops, b->tops)
         && foot_list_equal (a->feet, b->feet) && a->cap.height == b->cap.height
         && foreign_equal (&a->cap.foreign, &b->cap.foreign)
         && laying_equal (&a->laying, &b->laying) && end_equal (&a->ends[0], &b->ends[0])
         && end_equal (&a->ends[1], &b->ends[1]) && tees_equal (a, b)
         && movement_joints_equal (a, b) && steel_equal (&a->steel, &b->steel)
         && steel_rows_equal (a, b) && openings_equal (a, b) && pins_equal (a, b)
         && built_equal (a->built, b->built) && foreign_equal (&a->foreign, &b->foreign);
}

Opening *
wall_own_opening (Wall *wall, OpeningId id)
{
  for (guint i = 0; i < wall->openings->len; i++)
    if (wall_opening_at (wall, i)->id.n == id.n)
      return &g_array_index (wall->openings, Opening, i);
  return NULL;
}

const Opening *
wall_opening (const Wall *wall, OpeningId id)
{
  return wall_own_opening ((Wall *) wall, id);
}

guint
wall_part_at (const Wall *wall, Length x)
{
  guint part = 0;

  for (guint i = 0; i < wall->movement_joints->len; i++)
    part += movement_joint_right (wall_movement_joint_at (wall, i)) <= x;
  return part;
}

MovementJoint *
wall_own_movement_joint (Wall *wall, Length x)
{
  for (guint i = 0; i < wall->movement_joints->len; i++)
    if (wall_movement_joint_at (wall, i)->x == x)
      return &g_array_index (wall->movement_joints, MovementJoint, i);
  return NULL;
}

const MovementJoint *
wall_movement_joint (const Wall *wall, Length x)
{
  return wall_own_movement_joint ((Wall *) wall, x);
}

void
wall_add_movement_joint (Wall *wall, Length x, Length width)
{
  MovementJoint joint = { .x = x, .width = width };

  g_array_append_val (wall->movement_joints, joint);
}

gboolean
wall_take_movement_joint (Wall *wall, Length x)
{
  for (guint i = 0; i < wall->movement_joints->len; i++)
    if (wall_movement_joint_at (wall, i)->x == x)
      {
        g_array_remove_index (wall->movement_joints, i);
        return TRUE;
      }
  return FALSE;
}

static gint
find_pin (const Wall *wall, gint32 course, Length x)
{
  for (guint i = 0; i < wall->pins->len; i++)
    if (wall_pin_at (wall, i)->course == course && wall_pin_at (wall, i)->x == x)
      return (gint) i;
  return -1;
}

const Pin *
wall_pin (const Wall *wall, gint32 course, Length x)
{
  gint i = find_pin (wall, course, x);

  return i < 0 ? NULL : wall_pin_at (wall, (guint) i);
}

void
wall_put_pin (Wall *wall, const Pin *pin)
{
  gint i = find_pin (wall, pin->course, pin->x);
  Pin copy = pin_copy (pin);

  if (i < 0)
    {
      g_array_append_val (wall->pins, copy);
      return;
    }
  pin_clear (&g_array_index (wall->pins, Pin, (guint) i));
  g_array_index (wall->pins, Pin, (guint) i) = copy;
}

gboolean
wall_take_pin (Wall *wall, gint32 course, Length x)
{
  gint i = find_pin (wall, course, x);

  if (i >= 0)
    g_array_remove_index (wall->pins, (guint) i);
  return i >= 0;
}

int
wall_steel_row (const Wall *wall, gint32 course)
{
  for (guint i = 0; i < wall->steel_rows->len; i++)
    {
      const SteelRow *row = &g_array_index (wall->steel_rows, SteelRow, i);

      if (row->course == course)
        return row->omit ? -1 : 1;
    }
  return 0;
}

void
wall_lengthen (Wall *wall, Side side, Length by)
{
  if (side == SIDE_LEFT)
    wall->length += by;
  else
    wall_set_length (wall, wall->length + by);
  if (wall->built && wall->built->given & BUILT_PLANNED_LENGTH)
    wall->built->planned_length += by;
}

void
wall_shift (Wall *wall, Length by)
{
  wall->place.x -= by * runs_east (wall->place.runs);
  wall->place.y -= by * runs_north (wall->place.runs);
  for (guint i = 0; i < wall->openings->len; i++)
    opening_shift (&g_array_index (wall->openings, Opening, i), by);
  for (guint i = 0; i < wall->tees->len; i++)
    g_array_index (wall->tees, Tee, i).x += by;
  for (guint i = 0; i < wall->movement_joints->len; i++)
    g_array_index (wall->movement_joints, MovementJoint, i).x += by;
  for (guint i = wall->pins->len; i-- > 0;)
    {
      Pin *pin = &g_array_index (wall->pins, Pin, i);

      pin->x += by;
      if (pin->x < 0)
        g_array_remove_index (wall->pins, i);
    }
  wall->height -= top_list_shift (wall->tops, by);
  foot_list_shift (wall->feet, by);
  if (wall->built)
    built_shift (wall->built, by);
}

void
wall_set_length (Wall *wall, Length length)
{
  wall->height -= top_list_resize (wall->tops, wall->length, length);
  foot_list_resize (wall->feet, length);
  wall->length = length;
}

void
wall_take_top (Wall *wall, GArray *tops, Length height)
{
  g_array_unref (wall->tops);
  wall->tops = tops != NULL ? tops : top_list_new ();
  wall->height = height;
}

Length
wall_tallest (const Wall *wall, Length from, Length to)
{
  Length tallest = 0;

  if (wall->feet->len == 0)
    return wall_top_highest (wall, from, to);
  for (Length x = from; x < to;)
    {
      Length end = to;

      for (guint i = wall->feet->len; i-- > 0;)
        if (foot_point (wall->feet, i)->x > x)
          end = MIN (end, foot_point (wall->feet, i)->x);
      tallest = MAX (tallest, wall_top_highest (wall, x, end) - wall_foot_at (wall, x, SIDE_RIGHT));
      x = end;
    }
  return tallest;
}

double
wall_face_area (const Wall *wall, Length from, Length to)
{
  double area = top_area (wall->tops, wall->height, from, to);

  for (Length x = from; x < to;)
    {
      Length end = to;

      for (guint i = wall->feet->len; i-- > 0;)
        if (foot_point (wall->feet, i)->x > x)
          end = MIN (end, foot_point (wall->feet, i)->x);
      area -= length_to_mm (end - x) * length_to_mm (wall_foot_at (wall, x, SIDE_RIGHT));
      x = end;
    }
  return area;
}
