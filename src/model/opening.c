/* opening.c - a hole in a wall */
#include "model/opening.h"

Opening
opening_default (OpeningKind kind)
{
  static const Length sizes[][3] = {
    [OPENING_WINDOW] = { LENGTH_MM (1200), LENGTH_MM (900), LENGTH_MM (1200) },
    [OPENING_DOOR] = { LENGTH_MM (900), 0, LENGTH_MM (2100) },
    [OPENING_VOID] = { LENGTH_MM (600), LENGTH_MM (900), LENGTH_MM (600) },
  };

  return (Opening){
    .name = g_strdup (""),
    .kind = kind,
    .width = sizes[kind][0],
    .sill = sizes[kind][1],
    .height = sizes[kind][2],
  };
}

Opening
opening_copy (const Opening *opening)
{
  Opening copy = *opening;

  copy.key = g_strdup (opening->key);
  copy.name = g_strdup (opening->name ? opening->name : "");
  copy.foreign = foreign_copy (&opening->foreign);
  return copy;
}

void
opening_clear (Opening *opening)
{
  g_clear_pointer (&opening->key, g_free);
  g_clear_pointer (&opening->name, g_free);
  foreign_clear (&opening->foreign);
}

/* What is not given is not compared; `given` is. */
static gboolean
same (const Opening *a, const Opening *b, guint field, Length x, Length y)
{
  return !(a->given & b->given & field) || x == y;
}

gboolean
opening_equal (const Opening *a, const Opening *b)
{
  return a->id.n == b->id.n && g_strcmp0 (a->key, b->key) == 0 && g_strcmp0 (a->name, b->name) == 0
         && a->kind == b->kind && a->x == b->x && a->width == b->width && a->sill == b->sill
         && a->height == b->height && a->given == b->given
         && opening_may_move (a) == opening_may_move (b)
         && opening_drawn_x (a) == opening_drawn_x (b)
         && same (a, b, OPENING_PLANNED_X, a->planned_x, b->planned_x)
         && same (a, b, OPENING_PLANNED_WIDTH, a->planned_width, b->planned_width)
         && same (a, b, OPENING_PLANNED_SILL, a->planned_sill, b->planned_sill)
         && same (a, b, OPENING_PLANNED_HEIGHT, a->planned_height, b->planned_height)
         && (!opening_has_load (a)
             || (!(a->line_load < b->line_load) && !(a->line_load > b->line_load)))
         && foreign_equal (&a->foreign, &b->foreign);
}

void
opening_move (Opening *opening, Length x)
{
  if (x == opening->x)
    return;
  opening->drawn_x = opening_drawn_x (opening);
  opening->x = x;
  if (x != opening->drawn_x)
    opening->given |= OPENING_DRAWN_X;
  else
    opening->given &= ~(guint) OPENING_DRAWN_X;
  opening->given &= ~(guint) OPENING_PLANNED_X;
}

void
opening_shift (Opening *opening, Length by)
{
  opening->x += by;
  opening->drawn_x += by;
  opening->planned_x += by;
}

static const char *const kind_words[] = {
  [OPENING_WINDOW] = "window",
  [OPENING_DOOR] = "door",
  [OPENING_VOID] = "void",
};

const char *
opening_kind_word (OpeningKind kind)
{
  return kind_words[kind];
}

gboolean
opening_kind_from_word (const char *word, OpeningKind *out)
{
  for (guint i = 0; i < G_N_ELEMENTS (kind_words); i++)
    if (g_str_equal (word, kind_words[i]))
      {
        *out = (OpeningKind) i;
        return TRUE;
      }
  return FALSE;
}
