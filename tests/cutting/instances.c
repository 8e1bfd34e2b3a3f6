/* instances.c - published instances of one-dimensional cutting stock, and classes made alike */
#include "instances.h"

#include <stdio.h>
#include <string.h>

void
instance_free (gpointer data)
{
  Instance *instance = data;

  g_free (instance->name);
  g_array_unref (instance->items);
  g_free (instance);
}

static Instance *
instance_new (const char *name, gint64 stock, gint32 fewest)
{
  Instance *instance = g_new0 (Instance, 1);

  instance->name = g_strdup (name);
  instance->stock = stock;
  instance->fewest = fewest;
  instance->items = g_array_new (FALSE, FALSE, sizeof (CuttingItem));
  return instance;
}

static void
add (Instance *instance, gint64 length, gint32 quantity)
{
  CuttingItem item = { length, quantity };

  g_array_append_val (instance->items, item);
}

static Instance *
read_line (const char *line)
{
  g_auto (GStrv) words = g_strsplit (line, " ", -1);
  Instance *instance;

  g_assert_cmpuint (g_strv_length (words), >, 3);
  instance = instance_new (words[0], g_ascii_strtoll (words[1], NULL, 10),
                           (gint32) g_ascii_strtoll (words[2], NULL, 10));
  for (guint i = 3; words[i]; i++)
    {
      char *times;
      gint64 length = g_ascii_strtoll (words[i], &times, 10);

      g_assert_cmpint (*times, ==, 'x');
      add (instance, length, (gint32) g_ascii_strtoll (times + 1, NULL, 10));
    }
  return instance;
}

GPtrArray *
instances_published (void)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *path
      = g_build_filename (HALFBOND_SOURCE_ROOT, "tests/cutting/published.txt", NULL);
  g_autofree char *text = NULL;
  GPtrArray *instances = g_ptr_array_new_with_free_func (instance_free);

  g_file_get_contents (path, &text, NULL, &error);
  g_assert_no_error (error);
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);
  for (guint i = 0; lines[i]; i++)
    if (*lines[i] != '\0' && *lines[i] != '#')
      g_ptr_array_add (instances, read_line (lines[i]));
  return instances;
}

/* --- classes --- */

/* `n` pieces of lengths from `least` to `most`. */
static Instance *
uniform (GRand *rand, gint64 stock, guint n, gint32 least, gint32 most)
{
  Instance *instance = instance_new ("", stock, 0);

  for (guint i = 0; i < n; i++)
    add (instance, g_rand_int_range (rand, least, most + 1), 1);
  return instance;
}

/* Falkenauer's: u120, u250, u500, u1000. */
static Instance *
make_uniform (guint number, GRand *rand)
{
  static const guint sizes[] = { 120, 250, 500, 1000 };

  return uniform (rand, 150, sizes[number % 4], 20, 100);
}

/* Falkenauer's: t60, t120, t249, t501, three pieces to a full stock. */
static Instance *
make_triplets (guint number, GRand *rand)
{
  static const guint sizes[] = { 60, 120, 249, 501 };
  guint n = sizes[number % 4] / 3;
  Instance *instance = instance_new ("", 1000, (gint32) n);

  for (guint i = 0; i < n; i++)
    {
      gint32 a = g_rand_int_range (rand, 380, 491);
      gint32 b = g_rand_int_range (rand, 250, (1000 - a) / 2 + 1);

      add (instance, a, 1);
      add (instance, b, 1);
      add (instance, 1000 - a - b, 1);
    }
  return instance;
}

/* Scholl, Klein and Juergens, set 1. */
static Instance *
make_scholl_1 (guint number, GRand *rand)
{
  static const guint sizes[] = { 50, 100, 200, 500 };
  static const gint64 stocks[] = { 100, 120, 150 };
  static const gint32 least[] = { 1, 20, 30 };

  return uniform (rand, stocks[number / 4 % 3], sizes[number % 4], least[number / 12 % 3], 100);
}

/* Set 2: a stock of 1,000 takes 3, 5, 7 or 9 pieces; their lengths vary by 20, 50 or 90 %. */
static Instance *
make_scholl_2 (guint number, GRand *rand)
{
  static const guint sizes[] = { 50, 100, 200, 500 };
  static const gint32 beside[] = { 3, 5, 7, 9 }, vary[] = { 20, 50, 90 };
  gint32 mean = 1000 / beside[number / 4 % 4], by = vary[number / 16 % 3];

  return uniform (rand, 1000, sizes[number % 4], mean * (100 - by) / 100 + 1,
                  mean * (100 + by) / 100);
}

/* Set 3, the hard ones. */
static Instance *
make_scholl_3 (guint number G_GNUC_UNUSED, GRand *rand)
{
  return uniform (rand, 100000, 200, 20000, 35000);
}

/* P. Schwerin and G. Waescher, The bin-packing problem: a problem generator and some numerical
 * experiments with FFD packing and MTP, 1997: both sets. */
static Instance *
make_schwerin (guint number, GRand *rand)
{
  return uniform (rand, 1000, number % 2 ? 120 : 100, 150, 200);
}

/* T. Gau and G. Waescher, CUTGEN1: a problem generator for the standard one-dimensional cutting
 * stock problem, 1995. */
static Instance *
make_cutgen (guint number, GRand *rand)
{
  static const guint kinds[] = { 10, 20, 50, 100, 200 };
  static const double from[] = { 0.01, 0.01, 0.2 }, to[] = { 0.2, 0.8, 0.8 };
  static const double mean[] = { 1, 10, 100 };
  guint n = kinds[number % 5], range = number / 5 % 3;
  double shares[200], total = 0;
  Instance *instance = instance_new ("", 1000, 0);

  for (guint i = 0; i < n; i++)
    total += shares[i] = g_rand_double_range (rand, 0.001, 1);
  for (guint i = 0; i < n; i++)
    add (instance, (gint64) (g_rand_double_range (rand, from[range], to[range]) * 1000),
         MAX (1, (gint32) (shares[i] / total * n * mean[number / 15 % 3] + 0.5)));
  return instance;
}

/* M. Delorme, M. Iori and S. Martello, Bin packing and cutting stock problems: mathematical models
 * and exact algorithms, 2016: their random instances. */
static Instance *
make_random (guint number, GRand *rand)
{
  static const guint sizes[] = { 50, 100, 200, 300, 400, 500, 750, 1000 };
  static const gint32 stocks[] = { 50, 100, 200, 500, 750, 1000 };
  static const gint32 least[] = { 10, 10, 20, 20 }, most[] = { 50, 80, 50, 80 };
  gint32 stock = stocks[number / 8 % 6];
  guint range = number / 48 % 4;

  return uniform (rand, stock, sizes[number % 8], stock * least[range] / 100,
                  stock * most[range] / 100);
}

const InstanceClass instance_classes[] = {
  { "uniform", 80, make_uniform },   { "triplets", 80, make_triplets },
  { "scholl-1", 72, make_scholl_1 }, { "scholl-2", 96, make_scholl_2 },
  { "scholl-3", 20, make_scholl_3 }, { "schwerin", 40, make_schwerin },
  { "cutgen", 90, make_cutgen },     { "random", 192, make_random },
};
const guint n_instance_classes = G_N_ELEMENTS (instance_classes);

Instance *
instance_of_class (const InstanceClass *class, guint number)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (20260320 + number);
  Instance *instance = class->make (number, rand);

  g_free (instance->name);
  instance->name = g_strdup_printf ("%s-%u", class->name, number);
  return instance;
}
