/* layout.c - the answer: a wall's pieces, course by course, and how good they are */
#include "bond/layout.h"

Layout *
layout_ref (const Layout *layout)
{
  Layout *self = (Layout *) layout;

  g_atomic_ref_count_inc (&self->refs);
  return self;
}

void
layout_unref (Layout *layout)
{
  if (layout == NULL || !g_atomic_ref_count_dec (&layout->refs))
    return;
  g_array_unref (layout->courses);
  g_array_unref (layout->pieces);
  g_array_unref (layout->points);
  g_array_unref (layout->breaches);
  g_array_unref (layout->packings);
  g_array_unref (layout->pins);
  g_free (layout);
}

const char *
piece_shape_word (PieceShape shape)
{
  static const char *const words[] = { "whole", "short", "ripped", "notched", "raked" };

  g_return_val_if_fail ((guint) shape < G_N_ELEMENTS (words), "whole");
  return words[shape];
}

double
layout_piece_area (const Layout *layout, const Piece *piece)
{
  gint64 twice = 0;

  if (piece->outline < 0)
    twice = 2 * (gint64) piece->length * piece->height;
  for (gint32 i = 0; piece->outline >= 0 && i < piece->n_outline; i++)
    {
      gint32 next = (i + 1) % piece->n_outline;
      const LayPoint *p = &g_array_index (layout->points, LayPoint, piece->outline + i);
      const LayPoint *q = &g_array_index (layout->points, LayPoint, piece->outline + next);

      twice += (gint64) p->x * q->z - (gint64) q->x * p->z;
    }
  return (double) twice / 2.0 / (LENGTH_PER_MM * (double) LENGTH_PER_MM);
}

gboolean
breach_is_of_perpend (BreachKind kind)
{
  return kind == BREACH_MIN_LAP || kind == BREACH_OF_RULE + RULE_BEARING
         || kind == BREACH_OF_RULE + RULE_JAMB_LINE || kind == BREACH_OF_RULE + RULE_SYMMETRY_WALL
         || kind == BREACH_OF_RULE + RULE_SYMMETRY_OPENINGS;
}

static guint64
hash_number (guint64 hash, gint32 number)
{
  guint32 bits = (guint32) number;

  for (int i = 0; i < 4; i++, bits >>= 8)
    hash = (hash ^ (bits & 0xff)) * G_GUINT64_CONSTANT (1099511628211);
  return hash;
}

guint64
layout_hash (const Layout *layout)
{
  guint64 hash = G_GUINT64_CONSTANT (14695981039346656037);

  for (guint i = 0; i < layout->pieces->len; i++)
    {
      const Piece *piece = layout_piece (layout, i);

      hash = hash_number (hash, piece->course);
      hash = hash_number (hash, piece->number);
      hash = hash_number (hash, (gint32) piece->shape);
      hash = hash_number (hash, piece->x);
      hash = hash_number (hash, piece->length);
      hash = hash_number (hash, piece->bottom);
      hash = hash_number (hash, piece->height);
      for (gint32 k = 0; piece->outline >= 0 && k < piece->n_outline; k++)
        {
          const LayPoint *p = &g_array_index (layout->points, LayPoint, piece->outline + k);

          hash = hash_number (hash_number (hash, p->x), p->z);
        }
    }
  return hash;
}
