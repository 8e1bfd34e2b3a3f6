#include "app/layout-cache.h"

typedef struct
{
  Wall *wall;
  Block block;
  Layout *layout;
  GList link; /* in `order` */
} Entry;

struct LayoutCache
{
  GHashTable *entries; /* Wall * -> Entry *: one block per wall at a time */
  GQueue order;        /* Entry *, the one asked for last at the head */
  guint limit;
};

static void
entry_free (gpointer data)
{
  Entry *entry = data;

  wall_unref (entry->wall);
  block_clear (&entry->block);
  layout_unref (entry->layout);
  g_free (entry);
}

LayoutCache *
layout_cache_new (guint limit)
{
  LayoutCache *cache = g_new0 (LayoutCache, 1);

  cache->entries = g_hash_table_new_full (NULL, NULL, NULL, entry_free);
  g_queue_init (&cache->order);
  cache->limit = limit;
  return cache;
}

void
layout_cache_free (LayoutCache *cache)
{
  if (!cache)
    return;
  g_hash_table_unref (cache->entries);
  g_free (cache);
}

Layout *
layout_cache_get (LayoutCache *cache, const Wall *wall, const Block *block)
{
  Entry *entry = g_hash_table_lookup (cache->entries, wall);

  if (!entry || !block_equal (&entry->block, block))
    return NULL;
  g_queue_unlink (&cache->order, &entry->link);
  g_queue_push_head_link (&cache->order, &entry->link);
  return entry->layout;
}

static void
drop (LayoutCache *cache, Entry *entry)
{
  g_queue_unlink (&cache->order, &entry->link);
  g_hash_table_remove (cache->entries, entry->wall);
}

static void
shrink (LayoutCache *cache)
{
  while (cache->order.length > cache->limit)
    drop (cache, g_queue_peek_tail (&cache->order));
}

void
layout_cache_put (LayoutCache *cache, const Wall *wall, const Block *block, Layout *layout)
{
  Entry *old = g_hash_table_lookup (cache->entries, wall);
  Entry *entry = g_new0 (Entry, 1);

  /* The old entry may hold the last references to what is put. */
  entry->wall = wall_ref (wall);
  entry->block = block_copy (block);
  entry->layout = layout_ref (layout);
  entry->link.data = entry;
  if (old)
    drop (cache, old);
  g_hash_table_insert (cache->entries, entry->wall, entry);
  g_queue_push_head_link (&cache->order, &entry->link);
  shrink (cache);
}

void
layout_cache_set_limit (LayoutCache *cache, guint limit)
{
  cache->limit = limit;
  shrink (cache);
}
