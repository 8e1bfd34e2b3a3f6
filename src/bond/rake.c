#include "bond/rake.h"

#include <math.h>

/* An edge that is neither level nor upright. */
static void
add_slope (Rake *rake, Length run, Length rise)
{
  rake->n_slopes++;
  if (run + (gint64) rise <= rake->run + (gint64) rake->rise)
    return;
  rake->run = run;
  rake->rise = rise;
}

static void
add_edge (Rake *rake, const Piece *piece, LayPoint a, LayPoint b)
{
  const Length run = ABS (b.x - a.x), rise = ABS (b.z - a.z);

  if (rise == 0 && a.z == piece->bottom)
    rake->bottom += run;
  else if (rise == 0 && a.z == piece->bottom + piece->height)
    rake->top += run;
  else if (run == 0 && a.x == piece->x)
    rake->left += rise;
  else if (run == 0 && a.x == piece->x + piece->length)
    rake->right += rise;
  else if (run > 0 && rise > 0)
    add_slope (rake, run, rise);
}

gboolean
piece_rake (const Layout *layout, const Piece *piece, Rake *rake)
{
  *rake = (Rake){ 0 };
  for (gint32 i = 0; piece->outline >= 0 && i < piece->n_outline; i++)
    add_edge (
        rake, piece, g_array_index (layout->points, LayPoint, piece->outline + i),
        g_array_index (layout->points, LayPoint, piece->outline + (i + 1) % piece->n_outline));
  return rake->n_slopes > 0;
}

double
rake_angle (const Rake *rake)
{
  return atan2 (rake->rise, rake->run) * 180 / G_PI;
}

double
rake_rise (const Rake *rake)
{
  return 100.0 * rake->rise / rake->run;
}

static int
whole_mm (Length length)
{
  return (length + LENGTH_PER_MM / 2) / LENGTH_PER_MM;
}

char *
rake_text (const Rake *rake)
{
  if (rake->top == 0 && rake->left > 0 && rake->right > 0)
    return g_strdup_printf ("%d × %d/%d", whole_mm (rake->bottom), whole_mm (rake->left),
                            whole_mm (rake->right));
  return g_strdup_printf ("%d/%d", whole_mm (rake->bottom), whole_mm (rake->top));
}
