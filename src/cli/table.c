#include "cli/table.h"

#include "cli/output.h"

Table
table_new (guint n_columns, guint n_left)
{
  return (Table){ g_ptr_array_new_with_free_func (g_free), n_columns, n_left };
}

void
table_take (Table *table, char *word)
{
  g_ptr_array_add (table->cells, word ? word : g_strdup (""));
}

void
table_add (Table *table, const char *word)
{
  table_take (table, word ? output_line (word) : NULL);
}

static glong
width_of (const Table *table, guint column)
{
  glong width = 0;

  for (guint i = column; i < table->cells->len; i += table->n_columns)
    width = MAX (width, g_utf8_strlen (g_ptr_array_index (table->cells, i), -1));
  return width;
}

static void
append_row (const Table *table, guint first, const glong *widths, GString *text)
{
  g_autoptr (GString) line = g_string_new (NULL);

  for (guint c = 0; c < table->n_columns; c++)
    {
      const char *word = g_ptr_array_index (table->cells, first + c);
      int gap = (int) (widths[c] - g_utf8_strlen (word, -1));

      g_string_append_printf (line, "  %*s%s%*s", c < table->n_left ? 0 : gap, "", word,
                              c < table->n_left ? gap : 0, "");
    }
  while (line->len > 0 && line->str[line->len - 1] == ' ')
    g_string_truncate (line, line->len - 1);
  g_string_append_printf (text, "%s\n", line->str);
}

void
table_end (Table *table, GString *text)
{
  g_autofree glong *widths = g_new0 (glong, table->n_columns);

  for (guint c = 0; c < table->n_columns; c++)
    widths[c] = width_of (table, c);
  for (guint i = 0; i + table->n_columns <= table->cells->len; i += table->n_columns)
    append_row (table, i, widths, text);
  g_clear_pointer (&table->cells, g_ptr_array_unref);
}
