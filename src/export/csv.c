/* csv.c - quantities and pieces as CSV, RFC 4180: CRLF, quoted where it must be, points as decimal
 * signs whatever the locale */
#include "export/export.h"

#include <math.h>
#include <string.h>

#include "bond/rake.h"

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
      add_name (csv, wall_called (wall));
    }
  g_string_append (csv, CRLF);
  for (guint i = 0; i < takeoff->lines->len; i++)
    add_takeoff_line (csv, g_ptr_array_index (takeoff->lines, i), takeoff->n_walls);
  return g_string_free (csv, FALSE);
}

/* Pieces */

/* Its edges along the bottom and the top, its heights at both ends, the cut's angle against the
 * level; empty where it is not raked. */
static void
add_rake (GString *csv, const Layout *layout, const Piece *piece)
{
  Rake rake;

  if (piece->shape != PIECE_RAKED || !piece_rake (layout, piece, &rake))
    {
      g_string_append (csv, ",,,,,");
      return;
    }
  add_length (csv, rake.bottom);
  add_length (csv, rake.top);
  add_length (csv, rake.left);
  add_length (csv, rake.right);
  add_quantity (csv, round (rake_angle (&rake) * 10) / 10);
}

static void
add_piece (GString *csv, const Wall *wall, const Layout *layout, const Piece *piece, gboolean raked)
{
  g_autofree char *id = g_strdup_printf ("%s/%d/%d", wall->key, piece->course, piece->number);

  add_name (csv, id);
  add_length (csv, piece->x);
  add_length (csv, piece->length);
  add_length (csv, piece->bottom);
  add_length (csv, piece->height);
  add_field (csv, piece_shape_word (piece->shape));
  if (raked)
    add_rake (csv, layout, piece);
  g_string_append (csv, CRLF);
}

char *
export_pieces_csv (const Project *project, Layout *const *layouts, const Wall *wall)
{
  GString *csv = g_string_new ("id,x_mm,length_mm,bottom_mm,height_mm,shape");
  gboolean raked = FALSE;

  for (guint w = 0; w < project->walls->len; w++)
    raked |= (wall == NULL || wall == project_wall_at (project, w))
             && project_wall_at (project, w)->tops->len > 0;
  if (raked)
    g_string_append (csv, ",bottom_edge_mm,top_edge_mm,left_mm,right_mm,angle_deg");
  g_string_append (csv, CRLF);
  for (guint w = 0; w < project->walls->len; w++)
    {
      const Wall *each = project_wall_at (project, w);
      if (wall && wall != each)
        continue;
      for (guint i = 0; i < layouts[w]->pieces->len; i++)
        add_piece (csv, each, layouts[w], layout_piece (layouts[w], i), raked);
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

/* The footing */

static void
add_length_if (GString *csv, gboolean is, Length length)
{
  if (is)
    add_length (csv, length);
  else
    add_field (csv, "");
}

static void
add_row_number (GString *csv, guint row)
{
  g_autofree char *number = g_strdup_printf ("%u", row + 1);

  add_field (csv, number);
}

static void
add_book_row (GString *csv, const Reading *reading, const LevelRow *row, guint i)
{
  add_row_number (csv, i);
  add_name (csv, reading->point);
  add_length_if (csv, reading->given & READING_BACK, reading->back);
  add_length_if (csv, reading->given & READING_INTER, reading->inter);
  add_length_if (csv, reading->given & READING_FORE, reading->fore);
  add_length_if (csv, row->has_rise && row->rise > 0, row->rise);
  add_length_if (csv, row->has_rise && row->rise < 0, -row->rise);
  add_length_if (csv, row->begins && row->has_level, row->collimation);
  add_length_if (csv, row->has_level, row->raw);
  add_length_if (csv, row->has_level, row->correction);
  add_length_if (csv, row->has_level, row->level);
  add_length_if (csv, reading->given & READING_LEVEL, reading->level);
  g_string_append (csv, CRLF);
}

char *
export_book_csv (const Project *project, const LevelBook *book)
{
  GString *csv = g_string_new ("row,point,back_mm,inter_mm,fore_mm,rise_mm,fall_mm,collimation_mm,"
                               "level_mm,correction_mm,corrected_mm,known_mm" CRLF);

  for (guint i = 0; i < book->rows->len; i++)
    add_book_row (csv, survey_reading (project->survey, i), level_row (book, i), i);
  return g_string_free (csv, FALSE);
}

static void
add_bed_place (GString *csv, const Survey *survey, const Beds *beds, const BedWall *wall,
               const BedPlace *place)
{
  const char *point = "";

  if (place->point >= 0)
    point = survey_reading (survey, g_array_index (wall->foot, FootPoint, place->point).row)->point;
  add_name (csv, wall->wall->key);
  add_name (csv, wall->wall->name);
  add_length (csv, place->x);
  add_name (csv, point);
  add_length (csv, place->foot);
  add_length (csv, place->bed);
  add_field (csv, place->laid ? "yes" : "no");
  add_length_if (csv, place->laid && place->bed < beds->least, beds->least - place->bed);
  add_length_if (csv, place->laid && place->bed > beds->most, place->bed - beds->most);
  g_string_append (csv, CRLF);
}

char *
export_beds_csv (const Project *project, const Beds *beds)
{
  GString *csv
      = g_string_new ("wall,name,x_mm,point,footing_mm,bed_mm,laid,grind_mm,build_mm" CRLF);

  for (guint w = 0; beds->known && w < beds->walls->len; w++)
    {
      const BedWall *wall = g_ptr_array_index (beds->walls, w);

      for (guint i = 0; i < wall->places->len; i++)
        add_bed_place (csv, project->survey, beds, wall,
                       &g_array_index (wall->places, BedPlace, i));
    }
  return g_string_free (csv, FALSE);
}
