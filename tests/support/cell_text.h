/* Cell files as texts that tests change key by key, read and check. Tests only. */
#ifndef CELL_TEXT_H
#define CELL_TEXT_H

#include "../../src/check.h"
#include "reading.h"

/* A value by its path, as a user counts: "cell.parts[2].mass", "12 kg". The value is YAML, so a map
 * or list may stand there; "" is the empty value. NULL takes the key or row out. */
struct change { const char *path, *value; };

/* The text with the changes made in their order; keys that are not there are added. A path that a
 * list or a word bars fails the test. The text lives in the arena. */
const char *text_with(struct arena *arena, const char *yaml, const struct change *change,
                      size_t count);

/* Every value that a file gives, below maps and rows alike: paths for text_with. */
struct paths { const char **list; size_t count; };
struct paths text_paths(struct arena *arena, const char *yaml);

/* All bytes of a file, NUL-terminated, in the arena; fails the test where there is none. */
const char *file_text(struct arena *arena, const char *file);

/* A cell that was read and checked. Close it in any case; it must not be copied. */
struct trial {
	struct reading reading;
	struct result *result;       /* NULL where the file could not be read */
};
/* Faults in the file are the caller's to look for (reading.status); a run that ends otherwise than
 * DONE fails the test. Options may be NULL. */
void trial_open(struct trial *trial, const char *yaml, const struct check_options *options);
void trial_close(struct trial *trial);
/* The check of that id, NULL where it is left out. */
const struct check_result *trial_check(const struct trial *trial, const char *id);

/* --- for tests of one check
 * ----------------------------------------------------------------------- */

/* The check `id` of the text with changes: pairs of path and value, ended by NULL. Fails the test
 * with the diagnostics where the text cannot be read or leaves the check out. Valid until the next
 * call. */
const struct check_result *judged(const char *yaml, const char *id, ...) __attribute__((sentinel));
/* The loads of the text with changes, the same way, and the cell that was read. */
const struct loads *loads_of(const struct cell **cell, const char *yaml, ...)
	__attribute__((sentinel));
/* Whether the check names this path as missing. */
bool is_missing(const struct check_result *check, const char *path);

/* Expects a verdict of the check of `yaml` with changes (path and value in turn, none or more). */
#define expect_verdict(wanted, yaml, ...) \
	expect_verdict_at(__LINE__, wanted, judged(yaml, __VA_ARGS__, (const char *)0))
void expect_verdict_at(int line, enum verdict wanted, const struct check_result *check);
#define expect_near(value, wanted, tolerance) \
	expect_near_at(__LINE__, #value, value, wanted, tolerance)
void expect_near_at(int line, const char *what, double value, double wanted, double tolerance);

#endif
