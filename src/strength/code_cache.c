/* The table of kept strengths: open addressing with linear steps, at most half full. Lists stay
 * where they are when it grows, so what was handed out remains valid. */
#include "code_cache.h"
#include "code_parts.h"

#include <string.h>

enum { FIRST_ROOM = 64 };

static size_t slot_of(uint64_t anchors, uint32_t kind, size_t room)
{
	/* multiplicative hashing, Knuth, The Art of Computer Programming 3, 6.4; the upper half is
	 * well mixed */
	uint64_t mixed = (anchors ^ (uint64_t)kind << 48) * 0x9e3779b97f4a7c15u;
	return (size_t)(mixed >> 32) & (room - 1);
}

struct strength_cache *cache_open(const struct code_frame *frame, struct arena *arena)
{
	struct strength_cache *cache = arena_take(arena, 1, sizeof *cache);
	struct kept *table = arena_take(arena, FIRST_ROOM, sizeof *table);
	if (!cache || !table)
		return NULL;
	cache->frame = frame;
	cache->table = table;
	cache->room = FIRST_ROOM;
	struct kept_single *single = &cache->single;
	for (int quake = 0; quake < 2; quake++) {
		single->steel_tension[quake] = single->steel_shear[quake] = -1;
		for (size_t i = 0; i <= MAX_ANCHORS; i++)
			single->pullout[quake][i] = -1;
	}
	single->bond_sustained = -1;
	return cache;
}

const struct kept *cache_find(const struct strength_cache *cache, uint32_t kind, uint64_t anchors)
{
	for (size_t i = slot_of(anchors, kind, cache->room);; i = (i + 1) & (cache->room - 1)) {
		const struct kept *kept = &cache->table[i];
		if (!kept->list)
			return NULL;
		if (kept->anchors == anchors && kept->kind == kind)
			return kept;
	}
}

static void put(struct kept *table, size_t room, const struct kept *kept)
{
	size_t i = slot_of(kept->anchors, kept->kind, room);
	while (table[i].list)
		i = (i + 1) & (room - 1);
	table[i] = *kept;
}

bool cache_keep(struct strength_cache *cache, struct arena *arena, const struct kept *kept)
{
	if (2 * (cache->count + 1) > cache->room) {
		struct kept *wider = arena_take(arena, 2 * cache->room, sizeof *wider);
		if (!wider)
			return false;
		for (size_t i = 0; i < cache->room; i++)
			if (cache->table[i].list)
				put(wider, 2 * cache->room, &cache->table[i]);
		cache->table = wider;
		cache->room *= 2;
	}
	put(cache->table, cache->room, kept);
	cache->count++;
	return true;
}
