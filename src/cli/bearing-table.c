/* bearing-table.c - what lintels bring to the masonry under their ends, as a table and as JSON */
#include "cli/bearing-table.h"

#include <glib/gi18n.h>

#include "advice/bearing.h"
#include "cli/output.h"
#include "cli/table.h"

/* Words of the JSON. */
static const char *const arch_words[] = {
  [ARCH_CARRIES] = "triangle",         [ARCH_TOO_LOW] = "too-low",
  [ARCH_OPENING] = "opening-over-it",  [ARCH_JOINT] = "joint",
  [ARCH_BESIDE] = "too-little-beside",
};

/* Why the masonry is as much as it is. */
static const char *const arch_texts[] = {
  [ARCH_CARRIES] = N_ ("a triangle"),
  [ARCH_TOO_LOW] = N_ ("all over it: too low for a triangle"),
  [ARCH_OPENING] = N_ ("all over it: an opening there"),
  [ARCH_JOINT] = N_ ("all over it: a movement joint there"),
  [ARCH_BESIDE] = N_ ("all over it: too little beside it"),
};

static void
write_one (Json *json, const Wall *wall, const Opening *opening, const Bearing *bearing)
{
  json_object (json, NULL);
  json_string (json, "wall", wall->key);
  json_string (json, "opening", opening->key);
  json_length (json, "bearing", bearing->bearing);
  json_length (json, "span", bearing->span);
  json_length (json, "depth", bearing->depth);
  json_string (json, "masonry_is", arch_words[bearing->arch]);
  json_number (json, "area", bearing->area, 3);
  json_number (json, "lintel", bearing->lintel, 3);
  json_number (json, "masonry", bearing->masonry, 3);
  if (bearing->has_load)
    json_number (json, "load", bearing->load, 3);
  json_number (json, "end", bearing->end, 3);
  json_number (json, "pressure", bearing->pressure, 4);
  json_number (json, "design", bearing->design, 4);
  if (bearing->strength > 0)
    json_number (json, "strength", bearing->strength, 4);
  json_object_end (json);
}

void
bearings_write_json (Json *json, const Project *project)
{
  json_array (json, "bearings");
  for (guint i = 0; i < project->walls->len; i++)
    {
      const Wall *wall = project_wall_at (project, i);

      for (guint k = 0; k < wall->openings->len; k++)
        {
          const Opening *opening = wall_opening_at (wall, k);
          Bearing bearing;

          if (bearing_of_opening (wall, project_block (project, wall->block), opening, &bearing))
            write_one (json, wall, opening, &bearing);
        }
    }
  json_array_end (json);
}

static void
take_number (Table *table, double value, int decimals)
{
  table_take (table, g_strdup_printf ("%.*f", decimals, value));
}

static void
take_length (Table *table, Length length)
{
  char text[LENGTH_TEXT_SIZE];

  table_add (table, length_text (length, text));
}

static void
add_row (Table *table, const Wall *wall, const Opening *opening, const Bearing *bearing)
{
  table_take (table, output_line (wall->key));
  table_take (table, output_line (*opening->name ? opening->name : opening->key));
  table_add (table, _ (arch_texts[bearing->arch]));
  take_length (table, bearing->bearing);
  take_length (table, bearing->span);
  take_number (table, bearing->lintel, 2);
  take_number (table, bearing->masonry, 2);
  if (bearing->has_load)
    take_number (table, bearing->load, 2);
  else
    table_add (table, _ ("not known"));
  take_number (table, bearing->end, 2);
  take_number (table, bearing->pressure, 3);
  take_number (table, bearing->design, 3);
  if (bearing->strength > 0)
    take_number (table, bearing->strength, 3);
  else
    table_add (table, _ ("not given"));
}

static void
add_headings (Table *table)
{
  static const char *const headings[]
      = { N_ ("wall"),    N_ ("opening"),      N_ ("masonry that rests on it"),
          N_ ("bearing"), N_ ("span"),         N_ ("lintel kN"),
          N_ ("masonry"), N_ ("load"),         N_ ("each end"),
          N_ ("N/mm²"),   N_ ("with factors"), N_ ("strength") };

  for (guint i = 0; i < G_N_ELEMENTS (headings); i++)
    table_add (table, _ (headings[i]));
}

void
bearings_write_text (GString *text, const Project *project)
{
  Table table = table_new (12, 3);
  guint n = 0;

  add_headings (&table);
  for (guint i = 0; i < project->walls->len; i++)
    {
      const Wall *wall = project_wall_at (project, i);

      for (guint k = 0; k < wall->openings->len; k++)
        {
          const Opening *opening = wall_opening_at (wall, k);
          Bearing bearing;

          if (!bearing_of_opening (wall, project_block (project, wall->block), opening, &bearing))
            continue;
          add_row (&table, wall, opening, &bearing);
          n++;
        }
    }
  if (n == 0)
    {
      g_autoptr (GString) none = g_string_new (NULL);

      table_end (&table, none);
      g_string_append (text, _ ("No opening has a lintel.\n"));
      return;
    }
  g_string_append (text, _ ("Under the lintels, mm, kN and N/mm²:\n"));
  table_end (&table, text);
  g_string_append (
      text,
      _ ("Indicative: a lintel of concrete one course deep (25 kN/m³), the masonry that rests on "
         "it "
         "(blocks at 1.35 × dry mass) and what floors and roof were said to bring, on the mean of "
         "the bearing. With factors: 1.35 on weights, 1.5 on loads. No check of strength: a "
         "licensed engineer decides.\n"));
}
