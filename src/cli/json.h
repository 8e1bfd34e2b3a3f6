/* json.h - writes JSON (RFC 8259), as text in one pass
 *
 * Each element of an array that is an object begins a line of its own, so that results can be
 * compared line by line. Keys are NULL inside arrays. Numbers have no exponent and no locale. */
#pragma once

#include "model/length.h"

typedef struct
{
  GString *text; /* owned by the caller */
  int depth;
  gboolean filled; /* the innermost object or array has something in it */
} Json;

Json json_begin (GString *text);
/* A line's end after the whole. */
void json_end (Json *json);

void json_object (Json *json, const char *key);
void json_object_end (Json *json);
void json_array (Json *json, const char *key);
void json_array_end (Json *json);

/* `value` is made valid UTF-8 where it is not. */
void json_string (Json *json, const char *key, const char *value);
void json_int (Json *json, const char *key, gint64 value);
/* Finite; rounded to `decimals` places, zeros at the end left out. */
void json_number (Json *json, const char *key, double value, int decimals);
/* In millimetres, exactly. */
void json_length (Json *json, const char *key, Length value);
void json_bool (Json *json, const char *key, gboolean value);
