/* any-house.c - ordinary house walls made up from a number */
#include "any-house.h"

typedef struct
{
  AnyRandom random;
  Block block;
  Wall *wall;
} Maker;

static Length
millimetres (Maker *maker, gint64 lowest, gint64 highest)
{
  return LENGTH_MM (any_between (&maker->random, lowest, MAX (lowest, highest)));
}

static void
make_unit (Maker *maker)
{
  static const int units[][3] = {
    { 600, 200, 250 }, { 600, 200, 300 }, { 600, 250, 200 }, { 625, 250, 300 },
    { 625, 200, 240 }, { 599, 249, 365 }, { 500, 200, 375 }, { 400, 200, 200 },
  };
  const int *unit = units[any_between (&maker->random, 0, G_N_ELEMENTS (units) - 1)];

  maker->block = block_default ();
  maker->block.id.n = 1;
  maker->block.length = LENGTH_MM (unit[0]);
  maker->block.height = LENGTH_MM (unit[1]);
  maker->block.thickness = LENGTH_MM (unit[2]);
}

static void
make_joints (Maker *maker)
{
  static const int usual[] = { 1, 2, 2, 3, 5, 10 };
  Laying *laying = &maker->wall->laying;

  laying->given = LAYING_FIRST_BED | LAYING_BED | LAYING_HEAD;
  laying->first_bed = millimetres (maker, 10, 40);
  laying->bed = laying->head
      = LENGTH_MM (usual[any_between (&maker->random, 0, G_N_ELEMENTS (usual) - 1)]);
}

static void
make_ends (Maker *maker)
{
  for (int side = 0; side < 2; side++)
    if (any_percent (&maker->random, 60))
      {
        End *end = &maker->wall->ends[side];

        *end = (End){ .given = TRUE, .has_return = TRUE, .ret = maker->block.thickness };
        end->through = any_percent (&maker->random, 50) ? THROUGH_ODD : THROUGH_EVEN;
      }
}

static Opening
any_window (Maker *maker, Length head)
{
  Opening opening = opening_default (OPENING_WINDOW);

  opening.width = millimetres (maker, 500, 2200);
  opening.height = millimetres (maker, 500, 1500);
  opening.sill = MAX (head - opening.height, LENGTH_MM (250));
  opening.height = head - opening.sill;
  return opening;
}

static Opening
any_door (Maker *maker, Length head)
{
  Opening opening = opening_default (OPENING_DOOR);

  opening.width = millimetres (maker, 800, 1100);
  opening.sill = 0;
  opening.height = head;
  return opening;
}

/* Openings from the left to the right, as long as there is room; heads in one line mostly. */
static void
make_openings (Maker *maker)
{
  /* A quarter of the unit at the least, beside the other wall of a corner, too. */
  const Length pier
      = (MAX (LENGTH_MM (150), maker->block.length / 4) / LENGTH_PER_MM + 1) * LENGTH_PER_MM;
  const Length clear = LENGTH_MM (120); /* over the heads, for a lintel */
  Length line = MIN (millimetres (maker, 1950, 2300), maker->wall->height - clear);
  Length left = pier + maker->wall->ends[SIDE_LEFT].ret + maker->wall->laying.head;
  Length right = pier + maker->wall->ends[SIDE_RIGHT].ret + maker->wall->laying.head;
  gint64 n = any_between (&maker->random, 0, 4);
  Length room = (maker->wall->length - left - right) / MAX ((Length) n, 1);

  for (gint64 i = 0; i < n; i++)
    {
      Length head = any_percent (&maker->random, 70) ? line : line - millimetres (maker, 0, 600);
      Opening opening
          = any_percent (&maker->random, 25) ? any_door (maker, head) : any_window (maker, head);
      Length free = room - pier;

      if (free < LENGTH_MM (500))
        {
          opening_clear (&opening);
          continue;
        }
      opening.width = MIN (opening.width, free / LENGTH_PER_MM * LENGTH_PER_MM);
      opening.x = left + (Length) i * room
                  + millimetres (maker, 0, (free - opening.width) / LENGTH_PER_MM);
      opening.id.n = 10 + maker->wall->openings->len;
      opening.key = g_strdup_printf ("o%u", opening.id.n);
      g_array_append_val (maker->wall->openings, opening);
    }
}

AnyWall
any_house (guint64 seed)
{
  Maker maker = { .random = { seed * 0x5851f42d4c957f2du + 7 } };

  make_unit (&maker);
  maker.wall = wall_new ();
  maker.wall->id.n = 2;
  maker.wall->key = g_strdup ("w1");
  maker.wall->block = maker.block.id;
  maker.wall->length = millimetres (&maker, 3000, 12000);
  maker.wall->height = millimetres (&maker, 2200, 3200);
  make_joints (&maker);
  make_ends (&maker);
  make_openings (&maker);
  return (AnyWall){ maker.block, maker.wall };
}
