/* ids.h - typed handles; zero is none
 *
 * Numbers are given by the project, are unique in it, are never used again in its history, and are
 * not saved: the file has the `key` ("w1") that stands beside the number in each thing. */
#pragma once

#include <glib.h>

typedef struct
{
  guint32 n;
} BlockId;

typedef struct
{
  guint32 n;
} WallId;

typedef struct
{
  guint32 n;
} OpeningId;
