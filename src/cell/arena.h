/* One arena a run: bump allocation in blocks that the caller's function provides. A failed
 * allocation is sticky (`failed` stays true and every later request gives NULL), so callers may
 * test once at the end. */
#ifndef ARENA_H
#define ARENA_H

#include <stdbool.h>
#include <stddef.h>

/* As realloc: `old` NULL allocates, `size` 0 frees and returns NULL. */
typedef void *allocate_function(void *user, void *old, size_t size);

struct arena_block;
struct arena {
	allocate_function *allocate;   /* NULL: the C library's */
	void *user;
	struct arena_block *last;
	bool failed;
};

void arena_open(struct arena *arena, allocate_function *allocate, void *user);
void arena_close(struct arena *arena);
/* Zeroed memory for count objects of size bytes, aligned for any type; NULL after a failure or on
 * overflow. */
void *arena_take(struct arena *arena, size_t count, size_t size);
/* A NUL-terminated copy of text[0..length). */
char *arena_text(struct arena *arena, const char *text, size_t length);
/* printf into the arena; locale-sensitive conversions of doubles are not allowed here (use
 * number_write). */
char *arena_format(struct arena *arena, const char *format, ...)
	__attribute__((format(printf, 2, 3)));

#endif
