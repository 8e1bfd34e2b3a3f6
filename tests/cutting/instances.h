/* instances.h - published instances of one-dimensional cutting stock, and classes made alike
 *
 * The classes are made anew by their published descriptions; the numbers are not those of the
 * published files, which published.txt has a selection of. */
#pragma once

#include "cutting/cutting.h"

typedef struct
{
  char *name;
  gint64 stock;
  gint32 fewest; /* known from outside; 0: not known */
  GArray *items; /* CuttingItem */
} Instance;

void instance_free (gpointer instance);

/* Of tests/cutting/published.txt: Instance *. */
GPtrArray *instances_published (void);

/* A class of instances; each number gives the same one for ever. */
typedef struct
{
  const char *name;
  guint n; /* instances in it */
  Instance *(*make) (guint number, GRand *rand);
} InstanceClass;

extern const InstanceClass instance_classes[];
extern const guint n_instance_classes;

Instance *instance_of_class (const InstanceClass *class, guint number);
