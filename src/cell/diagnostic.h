/* Diagnostics are data; only cli prints them. */
#ifndef DIAGNOSTIC_H
#define DIAGNOSTIC_H

#include "given.h"

enum severity { NOTE, WARNING, ERROR };
enum {
	MAX_DIAGNOSTICS = 20,
	DIAGNOSTIC_PATH = 96,
	DIAGNOSTIC_MESSAGE = 200,
	DIAGNOSTIC_HINT = 240
};

/* One row a kind of fault: enum, stable code, what it is about. The code is printed in brackets. */
#define FAULTS(F) \
	F(FAULT_IO, "E01", "the file cannot be read") \
	F(FAULT_SIZE, "E02", "the file, its depth or a list is larger than the limits") \
	F(FAULT_YAML, "E03", "not readable as YAML") \
	F(FAULT_YAML_FEATURE, "E04", "YAML aliases, anchors, tags or several documents") \
	F(FAULT_UNKNOWN_KEY, "E05", "a key that the format does not have") \
	F(FAULT_DUPLICATE_KEY, "E06", "a key written twice") \
	F(FAULT_MISSING_KEY, "E07", "a key that must be there") \
	F(FAULT_SHAPE, "E08", "a list, map or word where another shape must stand") \
	F(FAULT_NUMBER, "E09", "a number, its unit or its dimension") \
	F(FAULT_WORD, "E10", "a word that is not one of the choices") \
	F(FAULT_RANGE, "E11", "a value outside its range") \
	F(FAULT_GEOMETRY, "E12", "outlines, pads or anchors that cannot be") \
	F(FAULT_CONTRADICTION, "E13", "values that contradict each other") \
	F(FAULT_MEMORY, "E14", "out of memory") \
	F(FAULT_SETUP, "E15", "a setup that overrides what it cannot")

#define FAULT_ENUM(name, code, about) name,
enum fault { FAULTS(FAULT_ENUM) FAULT_KINDS };
#undef FAULT_ENUM

struct diagnostic {
	enum severity severity;
	enum fault fault;
	struct mark mark;
	char path[DIAGNOSTIC_PATH];        /* "anchors.product.embedment" or "" */
	char message[DIAGNOSTIC_MESSAGE];  /* what is wrong: lower case, no full stop */
	char hint[DIAGNOSTIC_HINT];        /* what to write instead, or "" */
};

struct diagnostics {
	struct diagnostic list[MAX_DIAGNOSTICS];
	size_t count;      /* kept */
	size_t dropped;    /* beyond the limit */
	size_t errors;     /* all errors seen, dropped ones included */
};

const char *fault_code(enum fault fault);
const char *fault_about(enum fault fault);
/* Adds one; message and hint are cut to their room. path, hint may be NULL. */
void diagnose(struct diagnostics *to, enum severity severity, enum fault fault, struct mark mark,
              const char *path, const char *hint, const char *format, ...)
	__attribute__((format(printf, 7, 8)));
/* By place in the file; those of one place keep their order. */
void diagnostics_sort(struct diagnostics *list);

#endif
