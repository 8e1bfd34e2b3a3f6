/* bearing-table.h - what lintels bring to the masonry under their ends, as a table and as JSON */
#pragma once

#include "cli/json.h"
#include "model/project.h"

/* The openings of all walls that have a lintel, and what is known of them; the array "bearings". */
void bearings_write_json (Json *json, const Project *project);
/* The same as a table with a line under it; a sentence where there is no lintel. */
void bearings_write_text (GString *text, const Project *project);
