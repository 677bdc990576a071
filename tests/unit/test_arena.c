/* The arena: zeroed, aligned, sticky in failure, and everything given back. */
#include "../../src/cell/arena.h"

#include <criterion/criterion.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>
#include <string.h>

/* An allocator that counts and can be told to fail at one call. */
struct counter { int calls, live, fail_at; };

static void *count_and_fail(void *user, void *old, size_t size)
{
	struct counter *counter = user;
	if (size == 0) {
		counter->live -= old != NULL;
		free(old);
		return NULL;
	}
	if (++counter->calls == counter->fail_at)
		return NULL;
	counter->live += old == NULL;
	return realloc(old, size);
}

Test(arena, gives_zeroed_and_aligned_memory)
{
	struct arena arena;
	arena_open(&arena, NULL, NULL);
	for (size_t size = 1; size < 200000; size = size * 3 + 1) {
		unsigned char *memory = arena_take(&arena, 1, size);
		cr_assert_eq((uintptr_t)memory % _Alignof(max_align_t), 0);
		for (size_t i = 0; i < size; i++)
			cr_assert_eq(memory[i], 0);
		memset(memory, 0xA5, size);
	}
	cr_assert_not(arena.failed);
	arena_close(&arena);
	cr_assert_null(arena.last);
}

Test(arena, pieces_do_not_share_bytes)
{
	struct arena arena;
	arena_open(&arena, NULL, NULL);
	char *a = arena_take(&arena, 3, 1), *b = arena_take(&arena, 0, 8),
	     *c = arena_take(&arena, 8, 0);
	cr_assert(a != b && b != c && a != c);
	cr_assert_not_null(b, "nothing asked for is no failure");
	arena_close(&arena);
}

Test(arena, overflow_fails_and_stays_failed)
{
	struct arena arena;
	arena_open(&arena, NULL, NULL);
	cr_assert_not_null(arena_take(&arena, 1, 8));
	cr_assert_null(arena_take(&arena, SIZE_MAX / 2, 3));
	cr_assert(arena.failed);
	cr_assert_null(arena_take(&arena, 1, 1), "a failure is sticky");
	cr_assert_null(arena_text(&arena, "a", 1));
	cr_assert_null(arena_format(&arena, "%d", 1));
	arena_close(&arena);
	arena_open(&arena, NULL, NULL);
	cr_assert_null(arena_take(&arena, SIZE_MAX, 1));
	arena_close(&arena);
	arena_open(&arena, NULL, NULL);
	cr_assert_null(arena_text(&arena, "", SIZE_MAX));
	arena_close(&arena);
}

Test(arena, gives_every_block_back_whichever_call_fails)
{
	bool got_through = false;
	for (int n = 1; !got_through; n++) {
		struct counter counter = {.fail_at = n};
		struct arena arena;
		arena_open(&arena, count_and_fail, &counter);
		for (int i = 0; i < 20; i++) {
			char *memory = arena_take(&arena, 1, 10000);
			cr_assert_eq(memory == NULL, arena.failed);
		}
		got_through = !arena.failed;
		cr_assert_eq(got_through, counter.calls < n);
		arena_close(&arena);
		cr_assert_eq(counter.live, 0);
	}
}

Test(arena, copies_and_formats_text)
{
	struct arena arena;
	arena_open(&arena, NULL, NULL);
	cr_assert_str_eq(arena_text(&arena, "anchor", 3), "anc");
	cr_assert_str_eq(arena_text(&arena, "", 0), "");
	cr_assert_str_eq(arena_format(&arena, "%s %d", "A", 12), "A 12");
	char *line = arena_format(&arena, "%0*d", 60000, 7);
	cr_assert_eq(strlen(line), 60000, "longer than a block");
	arena_close(&arena);
}
