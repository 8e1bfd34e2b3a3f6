/* block.c - the unit */
#include "model/block.h"

Block
block_default (void)
{
  return (Block){
    .name = g_strdup ("Large block"),
    .length = LENGTH_MM (600),
    .height = LENGTH_MM (200),
    .thickness = LENGTH_MM (250),
    .density = 500,
  };
}

Block
block_copy (const Block *block)
{
  Block copy = *block;

  copy.key = g_strdup (block->key);
  copy.name = g_strdup (block->name ? block->name : "");
  copy.foreign = foreign_copy (&block->foreign);
  return copy;
}

void
block_clear (Block *block)
{
  g_clear_pointer (&block->key, g_free);
  g_clear_pointer (&block->name, g_free);
  foreign_clear (&block->foreign);
}

gboolean
block_equal (const Block *a, const Block *b)
{
  return a->id.n == b->id.n && g_strcmp0 (a->key, b->key) == 0 && g_strcmp0 (a->name, b->name) == 0
         && a->length == b->length && a->height == b->height && a->thickness == b->thickness
         && !(a->density < b->density) && !(a->density > b->density) && !(a->strength < b->strength)
         && !(a->strength > b->strength) && foreign_equal (&a->foreign, &b->foreign);
}

double
block_mass (const Block *block)
{
  return length_to_mm (block->length) * length_to_mm (block->height)
         * length_to_mm (block->thickness) * 1e-9 * block->density;
}
