/* The language of the .case files: published values that a checking engineer can read and add to.
 *
 *   # a comment
 *   case: title, one line              begins a case
 *   source: where the numbers are from
 *   kind: bolt_group                   the calculation, a row of kinds.c
 *   force: (0, -16) kN                 an input: number and unit, word, or points and their unit
 *   expect shear_1: 21.0 kN +- 0.05 kN the result wanted; tolerance in that dimension or in %
 *   expect basis: class                or a word
 *
 * A long value goes on behind lines that begin with a space. Every input must be used by the kind.
 */
#ifndef CASE_FILE_H
#define CASE_FILE_H

#include "../../src/plane/plane.h"
#include "../../src/quantity/quantity.h"

enum { MAX_LINES = 64, MAX_KEY = 48, MAX_VALUE = 4096, MAX_OUTPUTS = 160, MAX_CASE_POINTS = 512 };

struct case_line { char key[MAX_KEY], value[MAX_VALUE]; unsigned line; bool used; };

struct test_case {
	const char *file;
	char title[200], source[600], kind[MAX_KEY];
	unsigned line;
	struct case_line input[MAX_LINES], expect[MAX_LINES];
	size_t input_count, expect_count;
};

/* What a kind computed. */
struct output { char name[MAX_KEY]; double value; enum dimension dimension; char word[MAX_KEY]; };
struct outputs { struct output list[MAX_OUTPUTS]; size_t count; };

/* Reads the case that begins at `line` of the file; a fault in the file fails the test. */
void case_read(const char *file, unsigned line, struct test_case *out);
/* Calls visit with the line of every "case:" in the file. */
void case_lines(const char *file, void (*visit)(void *user, const char *file, unsigned line),
                void *user);

/* Inputs [base unit]. A missing or unreadable one fails the test. */
bool case_has(const struct test_case *test, const char *key);
double case_number(struct test_case *test, const char *key, enum dimension dimension);
double case_number_or(struct test_case *test, const char *key, enum dimension dimension,
                      double otherwise);
const char *case_word(struct test_case *test, const char *key);
/* "(x, y) (x, y) mm" or "34.1 31.8 MPa"; returns the count. */
size_t case_points(struct test_case *test, const char *key, enum dimension dimension,
                   struct vec2 *out, size_t room);
size_t case_numbers(struct test_case *test, const char *key, enum dimension dimension, double *out,
                    size_t room);
/* The k-th input whose key begins with "prefix " (outline frame:), or NULL; then read by its own
 * key. */
const char *case_key(const struct test_case *test, const char *prefix, size_t k);

void output_number(struct outputs *to, enum dimension dimension, double value, const char *format,
                   ...) __attribute__((format(printf, 4, 5)));
void output_word(struct outputs *to, const char *name, const char *word);

/* Compares; every expectation that is not met, and every input not used, fails the test. */
void case_judge(struct test_case *test, const struct outputs *outputs);

/* Fails the test with the place in the file. */
void case_fail(const struct test_case *test, unsigned line, const char *format, ...)
	__attribute__((format(printf, 3, 4)));

#endif
