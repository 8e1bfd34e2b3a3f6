/* csv.c - quantities and pieces as CSV, RFC 4180: CRLF, quoted where it must be, points as decimal
 * signs whatever the locale */
#include "export/export.h"

#include <string.h>

#define CRLF "\r\n"

/* Fields */

static void
add_field (GString *csv, const char *text)
{
  if (csv->len > 0 && csv->str[csv->len - 1] != '\n')
    g_string_append_c (csv, ',');
  if (!strpbrk (text, "\",\r\n"))
    {
      g_string_append (csv, text);
      return;
    }
  g_string_append_c (csv, '"');
  for (const char *p = text; *p; p++)
    {
      if (*p == '"')
        g_string_append_c (csv, '"');
      g_string_append_c (csv, *p);
    }
  g_string_append_c (csv, '"');
}

/* A name that somebody typed. Spreadsheets run a cell that begins like a formula; an apostrophe
 * makes it a text. */
static void
add_name (GString *csv, const char *name)
{
  const gboolean like_formula = *name && strchr ("=+-@\t\r", *name);
  g_autofree char *guarded = g_strconcat (like_formula ? "'" : "", name, NULL);

  add_field (csv, guarded);
}

static void
add_length (GString *csv, Length length)
{
  g_autofree char *text = length_format (length);

  add_field (csv, text);
}

/* Up to four decimals, no trailing zeros. */
static void
add_quantity (GString *csv, double quantity)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE * 8];

  g_ascii_formatd (text, sizeof text, "%.4f", quantity);
  char *end = text + strlen (text);
  while (end > text && end[-1] == '0')
    *--end = '\0';
  if (end > text && end[-1] == '.')
    end[-1] = '\0';
  add_field (csv, strcmp (text, "-0") == 0 ? "0" : text);
}

/* The take-off */

static void
add_takeoff_line (GString *csv, const TakeoffLine *line, guint n_walls)
{
  add_field (csv, line->key);
  add_field (csv, line->name);
  add_quantity (csv, line->quantity);
  add_field (csv, line->unit);
  for (guint i = 0; i < n_walls; i++)
    add_quantity (csv, line->walls[i]);
  g_string_append (csv, CRLF);
}

char *
export_takeoff_csv (const Project *project, const Takeoff *takeoff)
{
  GString *csv = g_string_new (NULL);

  g_string_append (csv, "key,name,quantity,unit");
  for (guint i = 0; i < takeoff->n_walls; i++)
    {
      const Wall *wall = project_wall_at (project, i);
      add_name (csv, *wall->name ? wall->name : wall->key);
    }
  g_string_append (csv, CRLF);
  for (guint i = 0; i < takeoff->lines->len; i++)
    add_takeoff_line (csv, g_ptr_array_index (takeoff->lines, i), takeoff->n_walls);
  return g_string_free (csv, FALSE);
}

/* Pieces */

static void
add_piece (GString *csv, const Wall *wall, const Piece *piece)
{
  g_autofree char *id = g_strdup_printf ("%s/%d/%d", wall->key, piece->course, piece->number);

  add_name (csv, id);
  add_length (csv, piece->x);
  add_length (csv, piece->length);
  add_length (csv, piece->bottom);
  add_length (csv, piece->height);
  add_field (csv, piece_shape_word (piece->shape));
  g_string_append (csv, CRLF);
}

char *
export_pieces_csv (const Project *project, Layout *const *layouts, const Wall *wall)
{
  GString *csv = g_string_new ("id,x_mm,length_mm,bottom_mm,height_mm,shape" CRLF);

  for (guint w = 0; w < project->walls->len; w++)
    {
      const Wall *each = project_wall_at (project, w);
      if (wall && wall != each)
        continue;
      for (guint i = 0; i < layouts[w]->pieces->len; i++)
        add_piece (csv, each, layout_piece (layouts[w], i));
    }
  return g_string_free (csv, FALSE);
}

/* What is sawn from what */

static void
add_sawn (GString *csv, const Block *block, const SawUnit *unit, const char *piece, Length x,
          Length z, Length length, Length height)
{
  g_autofree char *number = g_strdup_printf ("%d", unit->number);

  add_name (csv, block->key);
  add_field (csv, number);
  add_name (csv, piece);
  add_length (csv, x);
  add_length (csv, z);
  add_length (csv, length);
  add_length (csv, height);
  g_string_append (csv, CRLF);
}

static void
add_unit (GString *csv, const Project *project, Layout *const *layouts, const Block *block,
          const SawPlan *plan, const SawUnit *unit)
{
  for (guint i = 0; i < unit->n; i++)
    {
      const SawPart *part = saw_unit_part (plan, unit, i);
      const Piece *piece = layout_piece (layouts[part->wall], part->piece);
      g_autofree char *id = g_strdup_printf ("%s/%d/%d", project_wall_at (project, part->wall)->key,
                                             piece->course, piece->number);

      add_sawn (csv, block, unit, id, part->x, part->z, part->length, part->height);
    }
  for (guint i = 0; i < unit->n_rests; i++)
    {
      const SawRest *rest = saw_unit_rest (plan, unit, i);

      add_sawn (csv, block, unit, "", rest->x, rest->z, rest->length, rest->height);
    }
}

char *
export_saw_csv (const Project *project, Layout *const *layouts, const GPtrArray *saws)
{
  GString *csv = g_string_new ("block,unit,piece,from_mm,up_mm,length_mm,height_mm" CRLF);

  for (guint b = 0; b < saws->len; b++)
    {
      const SawPlan *plan = g_ptr_array_index (saws, b);
      for (guint i = 0; i < plan->units->len; i++)
        add_unit (csv, project, layouts, project_block_at (project, b), plan,
                  saw_plan_unit (plan, i));
    }
  return g_string_free (csv, FALSE);
}
