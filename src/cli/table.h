/* table.h - a table of plain text: columns as wide as their widest word */
#pragma once

#include <glib.h>

/* Words, row by row. The first `n_left` columns begin at the left, the others end at the right. */
typedef struct
{
  GPtrArray *cells; /* char * */
  guint n_columns, n_left;
} Table;

Table table_new (guint n_columns, guint n_left);
/* The next word; takes it. NULL: nothing stands there. */
void table_take (Table *table, char *word);
void table_add (Table *table, const char *word);
/* Each row after two spaces, without spaces at its end; frees the table. A row that is not full is
 * left out. */
void table_end (Table *table, GString *text);
