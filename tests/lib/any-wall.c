/* any-wall.c - walls made up from a number */
#include "any-wall.h"

#include <string.h>

typedef struct
{
  AnyRandom random;
  Length grid; /* of this wall's lengths along it */
  Block block;
  Wall *wall;
  Laying laying; /* resolved */
} Maker;

guint64
any_random (AnyRandom *random)
{
  guint64 z = (random->state += 0x9e3779b97f4a7c15u);
  z = (z ^ (z >> 30)) * 0xbf58476d1ce4e5b9u;
  z = (z ^ (z >> 27)) * 0x94d049bb133111ebu;
  return z ^ (z >> 31);
}

gint64
any_between (AnyRandom *random, gint64 lowest, gint64 highest)
{
  return lowest + (gint64) (any_random (random) % (guint64) (highest - lowest + 1));
}

gboolean
any_percent (AnyRandom *random, int n)
{
  return any_between (random, 0, 99) < n;
}

/* A length in lowest .. highest on the wall's grid, or as near as the limits let it be. */
static Length
pick (Maker *maker, Length lowest, Length highest)
{
  Length wild = (Length) any_between (&maker->random, lowest, MAX (lowest, highest));
  Length even = wild / maker->grid * maker->grid;
  return CLAMP (even, lowest, MAX (lowest, highest));
}

static void
make_unit (Maker *maker)
{
  static const struct
  {
    int length, height, thickness;
  } units[] = {
    { 600, 200, 250 }, { 600, 200, 250 }, { 625, 250, 300 }, { 500, 200, 375 }, { 400, 200, 200 },
    { 390, 190, 190 }, { 250, 100, 120 }, { 300, 150, 240 }, { 599, 249, 365 }, { 1000, 500, 150 },
  };
  int i = (int) any_between (&maker->random, 0, (int) G_N_ELEMENTS (units) - 1);
  maker->block = block_default ();
  maker->block.length = LENGTH_MM (units[i].length);
  maker->block.height = LENGTH_MM (units[i].height);
  maker->block.thickness = LENGTH_MM (units[i].thickness);
  maker->block.id.n = 1;
  if (any_percent (&maker->random, 10))
    {
      maker->block.length = pick (maker, LENGTH_MM (120), LENGTH_MM (1200));
      maker->block.height = pick (maker, LENGTH_MM (60), LENGTH_MM (500));
    }
}

static void
make_joints (Maker *maker)
{
  static const int usual[] = { 0, 0, 1, 2, 2, 3, 8, 10, 12, 20 };
  Laying *laying = &maker->wall->laying;
  laying->given |= LAYING_BED | LAYING_HEAD | LAYING_FIRST_BED;
  laying->bed = LENGTH_MM (usual[any_between (&maker->random, 0, 9)]);
  laying->head = LENGTH_MM (usual[any_between (&maker->random, 0, 9)]);
  laying->first_bed = LENGTH_MM (any_between (&maker->random, 0, 40));
  if (any_percent (&maker->random, 15))
    {
      laying->bed = (Length) any_between (&maker->random, 0, LENGTH_MM (20));
      laying->head = (Length) any_between (&maker->random, 0, LENGTH_MM (20));
      laying->first_bed = (Length) any_between (&maker->random, 0, LENGTH_MM (200));
    }
}

static void
make_limits (Maker *maker)
{
  Laying *laying = &maker->wall->laying;
  Length unit = maker->block.length, high = maker->block.height;
  if (any_percent (&maker->random, 40))
    {
      laying->given |= LAYING_MIN_PIECE;
      laying->min_piece = pick (maker, MAX (1, unit / 16), unit / 2);
    }
  if (any_percent (&maker->random, 40))
    {
      laying->given |= LAYING_MIN_LAP;
      laying->min_lap = pick (maker, 0, unit * 2 / 5);
    }
  if (any_percent (&maker->random, 40))
    {
      laying->given |= LAYING_MIN_RIP;
      laying->min_rip = pick (maker, 1, high / 2);
    }
  if (any_percent (&maker->random, 3)) /* legal, and hardly to be kept */
    {
      laying->min_piece = unit;
      laying->min_lap = unit / 2 + 1;
      laying->min_rip = high;
      laying->given |= LAYING_MIN_PIECE | LAYING_MIN_LAP | LAYING_MIN_RIP;
    }
}

static void
make_laying (Maker *maker)
{
  Laying *laying = &maker->wall->laying;
  *laying = laying_default ();
  laying->element = TRUE;
  make_joints (maker);
  make_limits (maker);
  laying->given |= LAYING_AIM | LAYING_START | LAYING_KERF;
  laying->aim = any_percent (&maker->random, 60)   ? AIM_FEWEST_CUTS
                : any_percent (&maker->random, 50) ? AIM_REGULAR
                                                   : AIM_LEAST_WASTE;
  laying->start = any_percent (&maker->random, 50) ? SIDE_LEFT : SIDE_RIGHT;
  laying->kerf = LENGTH_MM (any_between (&maker->random, 0, 5));
  maker->laying = laying_resolve (laying, &maker->block);
}

static void
make_size (Maker *maker)
{
  Length pitch = maker->block.height + maker->laying.bed;
  Length courses = (Length) MIN (any_between (&maker->random, 1, 14), LENGTH_MM (3600) / pitch + 1);
  Length longest = any_percent (&maker->random, 50) ? LENGTH_MM (6000) : LENGTH_MM (14000);
  maker->wall->length = pick (maker, LENGTH_MM (600), longest);
  if (any_percent (&maker->random, 15)) /* whole units */
    {
      Length unit = maker->block.length + maker->laying.head;
      Length n = MAX (2, maker->wall->length / unit);
      maker->wall->length = n * unit - maker->laying.head;
    }
  maker->wall->height = maker->laying.first_bed + courses * pitch - maker->laying.bed;
  if (any_percent (&maker->random, 40)) /* a ripped or packed top */
    maker->wall->height += pick (maker, 0, pitch);
}

static void
make_ends (Maker *maker)
{
  for (int i = 0; i < 2; i++)
    if (any_percent (&maker->random, 40))
      {
        End *end = &maker->wall->ends[i];
        end->given = end->has_return = TRUE;
        end->ret = maker->block.thickness;
        end->through = (Through) any_percent (&maker->random, 50);
      }
}

/* A height that meets a course's bed, the top of the course below it, or neither. */
static Length
make_level (Maker *maker, Length lowest, Length highest)
{
  Length pitch = maker->block.height + maker->laying.bed;
  Length level = pick (maker, lowest, highest);
  int how = (int) any_between (&maker->random, 0, 3);
  if (how < 2)
    {
      level -= (level - maker->laying.first_bed) % pitch;
      level -= how == 1 ? maker->laying.bed : 0;
    }
  else if (how == 2) /* a little over a bed: something to pack, or a thin strip */
    {
      level -= (level - maker->laying.first_bed) % pitch;
      level += (Length) any_between (&maker->random, -LENGTH_MM (60), LENGTH_MM (60));
    }
  return CLAMP (level, lowest, MAX (lowest, highest));
}

static Opening
make_opening (Maker *maker)
{
  Length least = LENGTH_MM (10), length = maker->wall->length, height = maker->wall->height;
  gboolean door = any_percent (&maker->random, 30);
  Opening opening = opening_default (door ? OPENING_DOOR : OPENING_WINDOW);
  opening.width = pick (maker, least, MIN (length, LENGTH_MM (2600)));
  opening.x = pick (maker, 0, MAX (0, length - opening.width));
  if (any_percent (&maker->random, 10)) /* at a corner */
    opening.x = any_percent (&maker->random, 50) ? 0 : MAX (0, length - opening.width);
  opening.sill = door ? 0 : make_level (maker, 0, MAX (0, height - LENGTH_MM (400)));
  Length top = MIN (height, opening.sill + LENGTH_MM (2300));
  Length low = MIN (top, opening.sill + LENGTH_MM (door ? 1200 : 300));
  opening.height = MAX (least, make_level (maker, low, top) - opening.sill);
  if (any_percent (&maker->random, 8)) /* a small one, it may lie within a course */
    opening.height = pick (maker, least, MAX (least, MIN (LENGTH_MM (150), opening.height)));
  if (any_percent (&maker->random, 4)) /* full width */
    opening.x = 0, opening.width = length;
  if (any_percent (&maker->random, 8)) /* to the top */
    opening.height = height - opening.sill;
  return opening;
}

/* A jamb at the jamb of the one before, or the same sill. */
static void
make_neighbour (Maker *maker, Opening *opening)
{
  if (maker->wall->openings->len == 0)
    return;
  const Opening *before = wall_opening_at (maker->wall, maker->wall->openings->len - 1);
  if (any_percent (&maker->random, 10))
    opening->x = opening_right (before);
  if (any_percent (&maker->random, 10))
    opening->x = before->x;
  if (any_percent (&maker->random, 15))
    opening->sill = before->sill, opening->height = before->height;
}

static gboolean
overlaps (const Wall *wall, const Opening *opening)
{
  for (guint i = 0; i < wall->openings->len; i++)
    {
      const Opening *other = wall_opening_at (wall, i);
      if (opening->x < opening_right (other) && other->x < opening_right (opening)
          && opening->sill < opening_head (other) && other->sill < opening_head (opening))
        return TRUE;
    }
  return opening->x < 0 || opening_right (opening) > wall->length
         || opening_head (opening) > wall->height;
}

static void
make_openings (Maker *maker)
{
  static const int often[] = { 0, 0, 1, 1, 1, 2, 2, 3, 4, 5 };
  int wanted = often[any_between (&maker->random, 0, 9)];
  for (int i = 0; i < wanted * 3 && (int) maker->wall->openings->len < wanted; i++)
    {
      Opening opening = make_opening (maker);
      make_neighbour (maker, &opening);
      opening.id.n = (guint32) (10 + i);
      g_autofree char *key = g_strdup_printf ("o%d", i + 1);
      if (overlaps (maker->wall, &opening))
        {
          opening_clear (&opening);
          continue;
        }
      opening.key = g_steal_pointer (&key);
      if (opening.name == NULL)
        opening.name = g_strdup ("");
      g_array_append_val (maker->wall->openings, opening);
    }
}

/* Takes openings away, last first, until nothing is wrong; FALSE when the bare wall is wrong. */
static gboolean
mend (Maker *maker)
{
  for (;;)
    {
      g_autofree char *fault = wall_fault (maker->wall, &maker->block, NULL);
      if (fault == NULL)
        return TRUE;
      guint n = maker->wall->openings->len;
      if (n == 0)
        return FALSE;
      opening_clear (&g_array_index (maker->wall->openings, Opening, n - 1));
      g_array_set_size (maker->wall->openings, n - 1);
    }
}

static void
make_wall (Maker *maker)
{
  static const Length grids[] = { 1, 1, 32, LENGTH_MM (1), LENGTH_MM (5), LENGTH_MM (25) };
  maker->grid = grids[any_between (&maker->random, 0, (int) G_N_ELEMENTS (grids) - 1)];
  make_unit (maker);
  maker->wall = wall_new ();
  maker->wall->id.n = 2;
  maker->wall->key = g_strdup ("w1");
  maker->wall->block = maker->block.id;
  make_laying (maker);
  make_size (maker);
  make_ends (maker);
  make_openings (maker);
}

AnyWall
any_wall (guint64 seed)
{
  Maker maker = { .random = { seed * 0x2545f4914f6cdd1du + 1 } };
  for (;;)
    {
      make_wall (&maker);
      if (mend (&maker))
        return (AnyWall){ maker.block, maker.wall };
      wall_unref (maker.wall);
      block_clear (&maker.block);
    }
}

void
any_wall_clear (AnyWall *any)
{
  block_clear (&any->block);
  g_clear_pointer (&any->wall, wall_unref);
}

static Pin
make_pin (AnyRandom *random, const Wall *wall, const Block *block)
{
  Laying laying = laying_resolve (&wall->laying, block);
  Length pitch = block->length + laying.head;
  gint32 courses = wall->height / (block->height + laying.bed) + 1;
  Pin pin = { .course = (gint32) any_between (random, 1, MIN (courses, PIN_MAX_COURSE)) };
  pin.x = (Length) any_between (random, 0, wall->length);
  if (any_percent (random, 30))
    pin.x = pin.x / pitch * pitch;
  if (any_percent (random, 40))
    pin.length = any_percent (random, 50)
                     ? block->length
                     : (Length) any_between (random, 1, block->length + LENGTH_MM (5));
  if (any_percent (random, 5))
    pin.course += 3, pin.x += LENGTH_MM (500);
  pin.length = MIN (pin.length, PIN_MAX_LENGTH);
  return pin;
}

void
any_pins (guint64 seed, Wall *wall, const Block *block)
{
  AnyRandom random = { seed * 0x9e6c63d0876a9a35u + 7 };
  for (gint64 n = any_between (&random, 1, 6); n > 0; n--)
    {
      Pin pin = make_pin (&random, wall, block);
      const Pin *last = wall->pins->len > 0 ? wall_pin_at (wall, wall->pins->len - 1) : NULL;
      if (last && any_percent (&random, 40)) /* over it, or beside it */
        {
          pin.course = last->course + (gint32) any_between (&random, 0, 1);
          pin.x = last->x + (Length) any_between (&random, -block->length, block->length);
          pin.x = MAX (pin.x, 0);
        }
      wall_put_pin (wall, &pin);
    }
}

static int
by_x (gconstpointer a, gconstpointer b)
{
  const Opening *p = a, *q = b;
  return p->x != q->x ? (p->x < q->x ? -1 : 1) : (p->sill > q->sill) - (p->sill < q->sill);
}

static void
mirror_top (const Wall *wall, Wall *mirror)
{
  g_array_set_size (mirror->tops, 0);
  for (guint i = wall->tops->len; i-- > 0;)
    top_list_add (mirror->tops, wall->length - top_point (wall->tops, i)->x,
                  top_point (wall->tops, i)->below);
  g_array_set_size (mirror->feet, 0);
  for (guint i = wall->feet->len; i-- > 0;)
    {
      Length to = i + 1 < wall->feet->len ? foot_point (wall->feet, i + 1)->x : wall->length;
      foot_list_add (mirror->feet, wall->length - to, foot_point (wall->feet, i)->up);
    }
  if (wall->feet->len > 0 && foot_point (wall->feet, 0)->x > 0)
    foot_list_add (mirror->feet, wall->length - foot_point (wall->feet, 0)->x, 0);
}

Wall *
any_wall_mirror (const Wall *wall)
{
  Wall *mirror = wall_copy (wall);
  End left = mirror->ends[SIDE_LEFT];
  mirror->ends[SIDE_LEFT] = mirror->ends[SIDE_RIGHT];
  mirror->ends[SIDE_RIGHT] = left;
  mirror_top (wall, mirror);
  for (guint i = 0; i < mirror->openings->len; i++)
    {
      Opening *opening = &g_array_index (mirror->openings, Opening, i);
      opening->x = wall->length - opening_right (opening);
    }
  g_array_sort (mirror->openings, by_x);
  for (guint i = 0; i < mirror->tees->len; i++)
    {
      Tee *tee = &g_array_index (mirror->tees, Tee, i);
      tee->x = wall->length - tee_right (tee);
    }
  for (guint i = 0; i < mirror->movement_joints->len; i++)
    {
      MovementJoint *joint = &g_array_index (mirror->movement_joints, MovementJoint, i);
      joint->x = wall->length - movement_joint_right (joint);
    }
  Length head = wall->laying.given & LAYING_HEAD ? wall->laying.head : LENGTH_MM (2);
  for (guint i = 0; i < mirror->pins->len; i++)
    {
      Pin *pin = &g_array_index (mirror->pins, Pin, i);
      *pin = any_pin_mirror (pin, wall->length, head);
    }
  gboolean right = (wall->laying.given & LAYING_START) && wall->laying.start == SIDE_RIGHT;
  mirror->laying.given |= LAYING_START;
  mirror->laying.start = right ? SIDE_LEFT : SIDE_RIGHT;
  return mirror;
}

/* A perpend is told by the left face of the piece after it, which from behind is the one before. */
Pin
any_pin_mirror (const Pin *pin, Length wall, Length head)
{
  Pin mirror = *pin;
  mirror.x = pin->length > 0 ? wall - pin->x - pin->length : wall - pin->x + head;
  return mirror;
}

char *
any_wall_text (const Wall *wall, const Block *block)
{
  Laying laying = laying_resolve (&wall->laying, block);
  GString *text = g_string_new (NULL);
#define MM(length) ((double) (length) / LENGTH_PER_MM)
  g_string_append_printf (text, "unit %.10gx%.10g, wall %.10gx%.10g, joints %.10g/%.10g/%.10g",
                          MM (block->length), MM (block->height), MM (wall->length),
                          MM (wall->height), MM (laying.first_bed), MM (laying.bed),
                          MM (laying.head));
  g_string_append_printf (text, ", least %.10g/%.10g/%.10g, %s from %s", MM (laying.min_piece),
                          MM (laying.min_lap), MM (laying.min_rip), aim_word (laying.aim),
                          side_word (laying.start));
  for (int i = 0; i < 2; i++)
    if (wall->ends[i].ret > 0)
      g_string_append_printf (text, ", %s return %.10g %s", side_word ((Side) i),
                              MM (wall->ends[i].ret), through_word (wall->ends[i].through));
  if (laying.min_raked != laying.min_piece)
    g_string_append_printf (text, ", raked %.10g", MM (laying.min_raked));
  for (guint i = 0; i < wall->tops->len; i++)
    g_string_append_printf (text, ", top %.10g at %.10g",
                            MM (wall->height - top_point (wall->tops, i)->below),
                            MM (top_point (wall->tops, i)->x));
  for (guint i = 0; i < wall->feet->len; i++)
    g_string_append_printf (text, ", foot %.10g at %.10g", MM (foot_point (wall->feet, i)->up),
                            MM (foot_point (wall->feet, i)->x));
  for (guint i = 0; i < wall->tees->len; i++)
    {
      const Tee *tee = wall_tee_at (wall, i);
      g_string_append_printf (text, ", tee %.10g+%.10g %s", MM (tee->x), MM (tee->ret),
                              through_word (tee->through));
    }
  for (guint i = 0; i < wall->movement_joints->len; i++)
    {
      const MovementJoint *joint = wall_movement_joint_at (wall, i);
      g_string_append_printf (text, ", movement joint %.10g+%.10g", MM (joint->x),
                              MM (joint->width));
    }
  for (guint i = 0; i < wall->openings->len; i++)
    {
      const Opening *opening = wall_opening_at (wall, i);
      g_string_append_printf (text, ", hole %.10g+%.10g, %.10g+%.10g", MM (opening->x),
                              MM (opening->width), MM (opening->sill), MM (opening->height));
    }
  for (guint i = 0; i < wall->pins->len; i++)
    {
      const Pin *pin = wall_pin_at (wall, i);
      g_string_append_printf (text, ", pin %d/%.10g+%.10g", pin->course, MM (pin->x),
                              MM (pin->length));
    }
#undef MM
  return g_string_free (text, FALSE);
}
