#include "options.h"

#include "../cell/fields.h"
#include "../standfast.h"
#include <getopt.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#define BIT(command) (1u << (command))
#define FILES (BIT(COMMAND_CHECK) | BIT(COMMAND_REQUIRE) | BIT(COMMAND_ARM) | BIT(COMMAND_SHOW))
#define EVERY (BIT(COMMANDS + 1) - 1)

struct command { const char *name, *operands, *what; size_t least, most; const char *exits; };
#define ANY_NUMBER ((size_t)-1)
static const struct command commands[COMMANDS] = {
	{"check", "FILE...", "judge cell files: verdict, anchor loads, checks", 1, ANY_NUMBER,
	 "0 holds, 1 fails, 3 unproven, 2 could not be computed"},
	{"require", "FILE...", "least ratings that a substitute anchor must have", 1, ANY_NUMBER,
	 "0 ratings named, 3 named as \"at least\" or not at all, 2 could not be computed"},
	{"arm", "FILE...", "reactions of the arm from its own motion, to paste as arm.reactions", 1,
	 ANY_NUMBER, "0 all computed, 3 a case left out or none there, 2 could not be computed"},
	{"new", "", "a commented cell file to fill in", 0, 0, "0 written, 2 not written"},
	{"show", "FILE...", "what was understood, in both unit systems, with a plan", 1, ANY_NUMBER,
	 "0 shown, 2 could not be read or computed"},
	{"explain", "[WORD]", "what a key, a check or an error code means; no word: all", 0, 1,
	 "0 explained, 2 there is no such word"},
};

enum option_id {
	OPTION_JSON = 256,
	OPTION_CSV,
	OPTION_TRACE,
	OPTION_ONLY,
	OPTION_COLOUR,
	OPTION_FOR,
	OPTION_FORCE,
	OPTION_JOBS = 'j',
	OPTION_OUTPUT = 'o',
	OPTION_HELP = 'h',
	OPTION_VERSION = 'V'
};

struct choice { int id; const char *name, *argument, *what; unsigned commands; };
static const struct choice choices[] = {
	{OPTION_JSON, "json", NULL, "one JSON object a file, on one line",
	 BIT(COMMAND_CHECK) | BIT(COMMAND_REQUIRE) | BIT(COMMAND_ARM)},
	{OPTION_CSV, "csv", NULL, "a table for a spreadsheet: a row a setup, source and kind",
	 BIT(COMMAND_ARM)},
	{OPTION_TRACE, "trace", NULL, "print the steps of each check", BIT(COMMAND_CHECK)},
	{OPTION_ONLY, "only", "ID", "show this check alone (the verdict is still that of all)", BIT(COMMAND_CHECK)},
	{OPTION_JOBS, "jobs", "N", "files, or pieces of one, at a time; as many as processors", FILES},
	{OPTION_FOR, "for", "WORD", "need, loads (if left out), motion, strength or survey", BIT(COMMAND_NEW)},
	{OPTION_OUTPUT, "output", "FILE", "write to FILE; an existing file is kept", BIT(COMMAND_NEW)},
	{OPTION_FORCE, "force", NULL, "replace an existing file", BIT(COMMAND_NEW)},
	{OPTION_COLOUR, "color", "WHEN", "auto (if left out), always or never", FILES | BIT(COMMAND_EXPLAIN)},
	{OPTION_HELP, "help", NULL, "print this help", EVERY},
	{OPTION_VERSION, "version", NULL, "print the version", EVERY},
};
enum { CHOICES = sizeof choices / sizeof *choices };

/* --- help --- */

static void option_line(FILE *to, const struct choice *choice)
{
	char head[32], letter[8] = "    ";
	if (choice->id < 256)
		snprintf(letter, sizeof letter, "-%c, ", choice->id);
	snprintf(head, sizeof head, "%s--%s%s%s", letter, choice->name, choice->argument ? " " : "",
	         choice->argument ? choice->argument : "");
	fprintf(to, "  %-22s %s\n", head, choice->what);
}

static void exit_lines(FILE *to, enum command_id id)
{
	bool several = commands[id].most > 1;
	/* the order of the statuses that this command has */
	const char *order = id == COMMAND_CHECK                          ? "2, 1, 3, 0"
	                    : id == COMMAND_REQUIRE || id == COMMAND_ARM ? "2, 3, 0"
	                                                                 : "2, 0";
	fprintf(to, "\nExit status: %s%s\n", commands[id].exits, several ? ";" : ".");
	if (several)
		fprintf(to, "with several files the worst in the order %s.\n", order);
	fputs("A licensed engineer must review and sign; local codes govern.\n", to);
}

static void program_help(FILE *to)
{
	fputs("standfast: do the anchors of a robot cell hold on this concrete floor?\n\n", to);
	for (size_t i = 0; i < COMMANDS; i++)
		fprintf(to, "  standfast %-8s%-9s %s\n", commands[i].name, commands[i].operands,
		        commands[i].what);
	fputs("\nFILE is a cell file, - standard input. standfast COMMAND --help lists the "
	      "options.\n"
	      "Begin with: standfast new -o cell.yaml\n",
	      to);
	exit_lines(to, COMMAND_CHECK);
}

static void command_help(FILE *to, enum command_id id)
{
	const struct command *command = &commands[id];
	fprintf(to, "standfast %s%s%s%s\n%s\n\n", command->name, *command->operands ? " " : "",
	        command->operands, " [options]", command->what);
	for (size_t i = 0; i < CHOICES; i++)
		if (choices[i].commands & BIT(id))
			option_line(to, &choices[i]);
	exit_lines(to, id);
}

void print_help(FILE *to, enum command_id command)
{
	if (command < COMMANDS)
		command_help(to, command);
	else
		program_help(to);
}

void print_short_help(FILE *to, enum command_id command)
{
	if (command < COMMANDS) {
		const char *operands = commands[command].operands;
		fprintf(to, "usage: standfast %s%s%s; options: standfast %s --help\n",
		        commands[command].name, *operands ? " " : "", operands,
		        commands[command].name);
		return;
	}
	fputs("usage: standfast", to);
	for (size_t i = 0; i < COMMANDS; i++)
		fprintf(to, "%s%s", i ? "|" : " ", commands[i].name);
	fputs(" ...; more: standfast --help\n", to);
}

/* --- commands --- */

/* The nearest of the words, NULL when none is near. */
static const char *nearest(const char *word, const char *(*name)(size_t index))
{
	const char *best = NULL;
	size_t least = 0, apart;
	for (size_t i = 0; name(i); i++) {
		if (!word_is_near(word, name(i), &apart) || (best && apart >= least))
			continue;
		best = name(i);
		least = apart;
	}
	return best;
}

static const char *command_name(size_t index)
{
	return index < COMMANDS ? commands[index].name : NULL;
}

static const char *option_name(size_t index)
{
	return index < CHOICES ? choices[index].name : NULL;
}

static bool looks_like_file(const char *word)
{
	size_t length = strlen(word);
	return strcmp(word, "-") == 0 || strchr(word, '/') ||
	       (length > 5 && strcmp(word + length - 5, ".yaml") == 0);
}

static bool unknown_command(const char *word)
{
	const char *near = nearest(word, command_name);
	if (near)
		complain("there is no command '%s'; the nearest is '%s'", word, near);
	else if (looks_like_file(word))
		complain("a command comes first: standfast check %s", word);
	else
		complain("there is no command '%s'", word);
	print_short_help(stderr, NO_COMMAND);
	return false;
}

static bool read_command(const char *word, struct command_line *out)
{
	for (size_t i = 0; i < COMMANDS; i++)
		if (strcmp(word, commands[i].name) == 0) {
			out->command = (enum command_id)i;
			return true;
		}
	return unknown_command(word);
}

/* Without a command only help and version mean anything. */
static bool read_program_option(const char *word, struct command_line *out)
{
	out->help = strcmp(word, "--help") == 0 || strcmp(word, "-h") == 0 ||
	            strcmp(word, "help") == 0;
	out->version = strcmp(word, "--version") == 0 || strcmp(word, "-V") == 0 ||
	               strcmp(word, "version") == 0;
	return out->help || out->version;
}

/* --- options --- */

static bool wrong_word(const char *option, const char *word, const char *choices_text)
{
	complain("--%s '%s': write %s", option, word, choices_text);
	return false;
}

static bool read_colour(const char *word, struct command_line *out)
{
	static const char *const words[] = {
		[COLOUR_AUTO] = "auto", [COLOUR_ALWAYS] = "always", [COLOUR_NEVER] = "never"};
	for (int i = COLOUR_AUTO; i <= COLOUR_NEVER; i++)
		if (strcmp(word, words[i]) == 0) {
			out->colour = (enum colour)i;
			return true;
		}
	return wrong_word("color", word, "auto, always or never");
}

static bool read_jobs(const char *word, struct command_line *out)
{
	char *end;
	unsigned long jobs = strtoul(word, &end, 10);
	if (*word < '0' || *word > '9' || *end || jobs < 1 || jobs > MAX_JOBS)
		return wrong_word("jobs", word, "a whole number from 1 to 256");
	out->jobs = (unsigned)jobs;
	return true;
}

static bool read_only(const char *word, struct command_line *out)
{
	for (size_t i = 0; standfast_check_id(i); i++)
		if (strcmp(word, standfast_check_id(i)) == 0) {
			out->only = word;
			return true;
		}
	const char *near = nearest(word, standfast_check_id);
	complain("--only '%s': there is no such check%s%s; standfast explain lists all", word,
	         near ? "; the nearest is " : "", near ? near : "");
	return false;
}

static bool read_purpose(const char *word, struct command_line *out)
{
	out->purpose = word;
	static const char *const purposes[] = {"need", "loads", "motion", "strength", "survey"};
	for (size_t i = 0; i < sizeof purposes / sizeof *purposes; i++)
		if (strcmp(word, purposes[i]) == 0)
			return true;
	return wrong_word("for", word, "need, loads, motion, strength or survey");
}

static bool take_option(int id, const char *argument, struct command_line *out)
{
	switch (id) {
	case OPTION_JSON: out->json = true; return true;
	case OPTION_TRACE: out->trace = true; return true;
	case OPTION_FORCE: out->force = true; return true;
	case OPTION_CSV: out->csv = true; return true;
	case OPTION_HELP: out->help = true; return true;
	case OPTION_VERSION: out->version = true; return true;
	case OPTION_OUTPUT: out->output = argument; return true;
	case OPTION_ONLY: return read_only(argument, out);
	case OPTION_JOBS: return read_jobs(argument, out);
	case OPTION_COLOUR: return read_colour(argument, out);
	case OPTION_FOR: return read_purpose(argument, out);
	default: return false;
	}
}

/* The tables of getopt_long for one command. */
struct getopt_tables { struct option list[CHOICES + 1]; char letters[4 * CHOICES + 2]; };

static void make_tables(enum command_id command, struct getopt_tables *out)
{
	size_t count = 0, letters = 0;
	/* a colon first: a missing argument is told apart from an unknown option */
	out->letters[letters++] = ':';
	for (size_t i = 0; i < CHOICES; i++) {
		const struct choice *choice = &choices[i];
		if (!(choice->commands & BIT(command)))
			continue;
		out->list[count++] = (struct option){
			choice->name, choice->argument ? required_argument : no_argument, NULL,
			choice->id};
		if (choice->id >= 256)
			continue;
		out->letters[letters++] = (char)choice->id;
		if (choice->argument)
			out->letters[letters++] = ':';
	}
	out->letters[letters] = 0;
	out->list[count] = (struct option){NULL, 0, NULL, 0};
}

/* getopt's `optopt`: 0 for an unknown long option, its letter for a short one, else an option's
 * number. */
static bool unknown_option(const char *word, int letter, enum command_id command)
{
	char name[48];
	size_t dashes = strspn(word, "-");
	snprintf(name, sizeof name, "%.*s", (int)strcspn(word + dashes, "="), word + dashes);
	const char *near = nearest(name, option_name);
	if (letter >= 256)
		complain("%s: this option takes no value", word);
	else if (letter > 0)
		complain("%s has no option '-%c'", commands[command].name, letter);
	else if (near && strcmp(near, name) != 0)
		complain("there is no option '%s'; the nearest is '--%s'", word, near);
	else
		complain("%s has no option '%s'", commands[command].name, word);
	print_short_help(stderr, command);
	return false;
}

/* Whether a long option was written out. An abbreviation is refused: an option of a later release
 * must not change what it means. `argument` is that of the option, in the same word or the next. */
static bool is_written_out(char **argv, const struct option *option, const char *argument,
                           enum command_id command)
{
	const char *word = argv[optind - 1];
	if (argument && argument == word)
		word = argv[optind - 2];
	size_t length = strcspn(word, "=");
	if (length == strlen(option->name) + 2 && strncmp(word + 2, option->name, length - 2) == 0)
		return true;
	complain("there is no option '%.*s'; write '--%s'", (int)length, word, option->name);
	print_short_help(stderr, command);
	return false;
}

static bool read_options(int argc, char **argv, struct command_line *out)
{
	struct getopt_tables tables;
	int id, index = -1;
	make_tables(out->command, &tables);
	/* 0: getopt forgets an earlier call (GNU) */
	optind = 0;
	opterr = 0;
	while ((id = getopt_long(argc, argv, tables.letters, tables.list, &index)) != -1) {
		if (id == ':') {
			complain("%s needs a value behind it", argv[optind - 1]);
			return false;
		}
		if (id == '?')
			return unknown_option(argv[optind - 1], optopt, out->command);
		if (index >= 0 &&
		    !is_written_out(argv, &tables.list[index], optarg, out->command))
			return false;
		index = -1;
		if (!take_option(id, optarg, out))
			return false;
	}
	out->operands = argv + optind;
	out->operand_count = (size_t)(argc - optind);
	return true;
}

static bool count_operands(const struct command_line *line)
{
	const struct command *command = &commands[line->command];
	size_t standard = 0;
	for (size_t i = 0; i < line->operand_count; i++)
		standard += strcmp(line->operands[i], "-") == 0;
	if (line->json && line->csv)
		complain("--json and --csv: one of them");
	else if (standard > 1)
		complain("standard input (-) can be read once");
	else if (line->operand_count < command->least)
		complain("%s: no file named; - is standard input", command->name);
	else if (line->operand_count > command->most)
		complain("%s takes %s, not '%s'", command->name,
		         command->most ? "one word" : "no operand", line->operands[command->most]);
	else
		return true;
	print_short_help(stderr, line->command);
	return false;
}

unsigned command_line_jobs(const struct command_line *line)
{
	long processors = sysconf(_SC_NPROCESSORS_ONLN);
	if (line->jobs > 0)
		return line->jobs;
	return processors < 1 ? 1 : processors > MAX_JOBS ? MAX_JOBS : (unsigned)processors;
}

bool command_line_read(int argc, char **argv, struct command_line *out)
{
	*out = (struct command_line){.command = NO_COMMAND, .purpose = "loads"};
	if (argc < 2) {
		complain("which command?");
		print_short_help(stderr, NO_COMMAND);
		return false;
	}
	if (read_program_option(argv[1], out))
		return true;
	if (!read_command(argv[1], out) || !read_options(argc - 1, argv + 1, out))
		return false;
	return out->help || out->version || count_operands(out);
}
