/* Bump allocation in blocks, newest block first. */
#include "arena.h"
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { BLOCK_ROOM = 32 * 1024, ALIGNMENT = _Alignof(max_align_t) };

struct arena_block {
	struct arena_block *older;
	size_t room, used;
	max_align_t memory[];
};

/* The allocator where the caller has none of its own; realloc(p, 0) means different things to
 * different libraries, so freeing is asked for by name. */
static void *from_c_library(void *user, void *old, size_t size)
{
	(void)user;
	if (size > 0)
		return realloc(old, size);
	free(old);
	return NULL;
}

void arena_open(struct arena *arena, allocate_function *allocate, void *user)
{
	*arena = (struct arena){.allocate = allocate ? allocate : from_c_library, .user = user};
}

void arena_close(struct arena *arena)
{
	struct arena_block *block = arena->last;
	while (block) {
		struct arena_block *older = block->older;
		arena->allocate(arena->user, block, 0);
		block = older;
	}
	arena->last = NULL;
}

/* From here on nothing is given, so that a caller who checks once at the end sees it. */
static void *fail(struct arena *arena)
{
	arena->failed = true;
	return NULL;
}

/* What is left of the block before is given up: blocks are large and few. */
static struct arena_block *add_block(struct arena *arena, size_t least)
{
	size_t room = least > BLOCK_ROOM ? least : BLOCK_ROOM;
	struct arena_block *block = arena->allocate(arena->user, NULL, sizeof *block + room);
	if (!block)
		return NULL;
	*block = (struct arena_block){.older = arena->last, .room = room};
	arena->last = block;
	return block;
}

void *arena_take(struct arena *arena, size_t count, size_t size)
{
	const size_t most = SIZE_MAX - sizeof(struct arena_block) - ALIGNMENT;
	if (arena->failed || (size > 0 && count > most / size))
		return fail(arena);
	/* nothing asked for still gets an address of its own */
	size_t bytes = count * size > 0 ? count * size : 1;
	bytes = (bytes + ALIGNMENT - 1) / ALIGNMENT * ALIGNMENT;
	struct arena_block *block = arena->last;
	if (!block || block->room - block->used < bytes)
		block = add_block(arena, bytes);
	if (!block)
		return fail(arena);
	void *taken = (char *)block->memory + block->used;
	block->used += bytes;
	return memset(taken, 0, bytes);
}

char *arena_text(struct arena *arena, const char *text, size_t length)
{
	char *copy = length < SIZE_MAX ? arena_take(arena, length + 1, 1) : fail(arena);
	if (copy && length > 0)
		memcpy(copy, text, length);
	return copy;
}

/* Measured first, then written: the length of a message is not known before. */
char *arena_format(struct arena *arena, const char *format, ...)
{
	va_list list, again;
	va_start(list, format);
	va_copy(again, list);
	int length = vsnprintf(NULL, 0, format, list);
	char *text = length >= 0 ? arena_take(arena, (size_t)length + 1, 1) : fail(arena);
	if (text)
		vsnprintf(text, (size_t)length + 1, format, again);
	va_end(again);
	va_end(list);
	return text;
}
