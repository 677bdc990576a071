/* The command line: one table of commands and one of options, from which parsing and help are
 * made. */
#ifndef OPTIONS_H
#define OPTIONS_H

#include "streams.h"
#include <stdbool.h>
#include <stddef.h>
#include <stdio.h>

enum { MAX_JOBS = 256 };

/* In the order of the table in options.c. */
enum command_id {
	COMMAND_CHECK, COMMAND_REQUIRE, COMMAND_ARM, COMMAND_NEW, COMMAND_SHOW, COMMAND_EXPLAIN,
	COMMANDS,
	NO_COMMAND = COMMANDS       /* help or version alone */
};

struct command_line {
	enum command_id command;
	bool help, version, json, csv, trace, force;
	const char *only;           /* id of a check, known to be one; or NULL */
	const char *output;         /* file, "-" or NULL: standard output */
	const char *purpose;        /* "need", "loads", "motion", "survey" */
	enum colour colour;
	unsigned jobs; /* files, or pieces of a single one, at a time; 0: as many as processors */
	char **operands;
	size_t operand_count;
};

/* False after a message on standard error. `argv` is permuted. */
bool command_line_read(int argc, char **argv, struct command_line *out);
/* How many threads --jobs means, from 1 to MAX_JOBS. */
unsigned command_line_jobs(const struct command_line *line);
/* Help on the whole program (NO_COMMAND) or on one command. */
void print_help(FILE *to, enum command_id command);
/* The lines that a wrong call gets. */
void print_short_help(FILE *to, enum command_id command);

#endif
