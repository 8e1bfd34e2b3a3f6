/* layout-cache.h - answers already found, by the value of the wall and its block */
#pragma once

#include "bond/layout.h"
#include "model/project.h"

typedef struct LayoutCache LayoutCache;

/* Keeps `limit` answers; those asked for last stay. */
LayoutCache *layout_cache_new (guint limit);
void layout_cache_free (LayoutCache *cache);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LayoutCache, layout_cache_free)

/* The answer for exactly this value; NULL when it is not known. Borrowed, until the next put.
 * A value is known by its address (values are never changed, and are kept here): an equal one made
 * anew is laid anew. */
Layout *layout_cache_get (LayoutCache *cache, const Wall *wall, const Block *block);
void layout_cache_put (LayoutCache *cache, const Wall *wall, const Block *block, Layout *layout);
void layout_cache_set_limit (LayoutCache *cache, guint limit);
