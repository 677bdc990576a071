/* Which keys stand in the files to fill in, and what is said of those that hold no single value. */
#ifndef BLANK_TABLES_H
#define BLANK_TABLES_H

#include <stddef.h>

/* FOR_SHEET: loads by the arm's data sheet, which the file for the codes has too; FOR_MOTION: by
 * its own motion; FOR_LOADS: either; FOR_STRENGTH: the codes alone */
enum {
	FOR_NEED = 1,
	FOR_SHEET = 2,
	FOR_SURVEY = 4,
	FOR_MOTION = 8,
	FOR_STRENGTH = 16,
	FOR_LOADS = FOR_SHEET | FOR_MOTION,
	FOR_ALL = FOR_NEED | FOR_LOADS | FOR_SURVEY
};

/* A path of the field table and the purposes whose file has it, in the order of the file. */
struct blank_key { const char *path; unsigned purposes; };
enum { MAX_BLANK_KEYS = 128 };
extern const struct blank_key blank_keys[];
extern const size_t blank_key_count;

/* Maps that the short file writes on one line: "hole: {diameter: , depth: }". */
extern const char *const blank_inlined[];
extern const size_t blank_inlined_count;

/* What may stand at a key that is no single value; a bar parts ways of writing it.
 * `described_by` is the row whose words describe it, NULL: its own. `brief` is for the short
 * file, NULL: the same. */
struct blank_sample { const char *path, *text, *described_by, *brief; };
extern const struct blank_sample blank_samples[];
extern const size_t blank_sample_count;

/* Keys that do not stand empty: what the purpose of the file itself says. */
struct blank_value { const char *path, *value; };
extern const struct blank_value blank_values[];
extern const size_t blank_value_count;

#endif
