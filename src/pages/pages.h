/* Every page: a result, or what else is known, becomes bytes through the caller's write function.
 * Nothing is allocated, nothing is kept. Each returns true when every byte was taken. Lines of text
 * pages end within PAGE_WIDTH columns, whatever the names in the file are. */
#ifndef PAGES_H
#define PAGES_H

#include "../result.h"
#include "writer.h"

struct page_options {
	bool colour;            /* terminal sequences around verdict words and titles */
	bool trace;             /* the written calculation behind the tables */
	const char *only; /* id of the one check whose row and steps are shown, or NULL for all */
};

/* Verdict, reason, what to do now; anchors, checks, to measure, assumptions, cautions; the
 * calculation. */
bool page_text(const struct result *result, const struct page_options *options,
               write_function *write, void *user);
/* One object on one line, the keys in fixed order (refdata/result.schema.json), newline-ended. With
 * options->only the list of checks holds that one alone; trace and colour mean nothing here. */
bool page_json(const struct result *result, const struct page_options *options,
               write_function *write, void *user);
/* The object that stands for a file from which nothing could be computed: its diagnostics. */
bool page_json_faults(const char *file, const char *sha256, const struct diagnostics *faults,
                      write_function *write, void *user);

/* The arm's reactions (result->arm): tables with what makes each, and a block for a cell file. */
bool page_arm_text(const struct result *result, const struct page_options *options,
                   write_function *write, void *user);
/* One object on one line (refdata/result.schema.json): kN, kN m, deg, mm, s; null where there is
 * nothing. */
bool page_arm_json(const struct result *result, write_function *write, void *user);
/* One row a setup, source and kind; the units stand in the header; quoted as RFC 4180 has it. */
bool page_arm_csv(const struct result *result, write_function *write, void *user);

/* Least ultimate ratings of a substitute (result->required). */
bool page_require(const struct result *result, const struct page_options *options,
                  write_function *write, void *user);
/* What was understood: key by key, load cases, a plan in characters. */
bool page_show(const struct result *result, const struct page_options *options,
               write_function *write, void *user);

/* Diagnostics with the lines of the file that they point to; bytes may be NULL where none were
 * read. */
struct page_source { const char *file; const char *bytes; size_t length; };
bool page_diagnostics(const struct page_source *source, const struct diagnostics *list, bool colour,
                      write_function *write, void *user);
/* The same where marks lie in several files: sources[mark.file]. The first is the cell file. */
bool page_diagnostics_of(const struct page_source sources[], size_t count,
                         const struct diagnostics *list, bool colour, write_function *write,
                         void *user);
/* And their JSON; a fault that does not lie in the first file has the key "file", too. */
bool page_json_faults_of(const struct page_source sources[], size_t count, const char *sha256,
                         const struct diagnostics *faults, write_function *write, void *user);

/* A key (whole path or last part), a check's id or a fault's code; NULL or "" lists all words.
 * *found tells whether there was any; if not, the page names the nearest ones. */
bool page_explain(const char *word, bool colour, write_function *write, void *user, bool *found);

/* A cell file to fill in. */
enum blank_purpose {
	BLANK_NEED,
	BLANK_LOADS,
	BLANK_SURVEY,
	BLANK_MOTION,
	BLANK_STRENGTH,
	BLANK_PURPOSES
};
const char *blank_purpose_word(enum blank_purpose purpose);     /* "need" */
bool page_blank(enum blank_purpose purpose, write_function *write, void *user);

/* The release, as "0.1.0". */
const char *release_version(void);

#endif
