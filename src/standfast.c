/* The library's face: a run holds its arena, what was read and what came out. */
#include "standfast.h"

#include "check.h"
#include "input/reader.h"
#include "pages/pages.h"
#include "study/require.h"
#include <string.h>

struct standfast {
	struct arena arena;
	const char *file, *sha256, *bytes;
	size_t length;
	const char *only;
	struct diagnostics diagnostics;
	const struct cell *cell;            /* NULL until a file was read without an error */
	struct result *result;              /* NULL until it was computed */
};

const char *standfast_version(void)
{
	return release_version();
}

/* --- a run --- */

struct standfast *standfast_open(standfast_allocate *allocate, void *user)
{
	struct arena arena;
	arena_open(&arena, allocate, user);
	/* the run lives in its own arena: one place to give everything back */
	struct standfast *run = arena_take(&arena, 1, sizeof *run);
	if (!run)
		return NULL;
	run->arena = arena;
	run->file = run->sha256 = "";
	return run;
}

void standfast_close(struct standfast *run)
{
	if (!run)
		return;
	struct arena arena = run->arena;
	arena_close(&arena);
}

static enum standfast_status no_memory(struct standfast *run)
{
	diagnose(&run->diagnostics, ERROR, FAULT_MEMORY, (struct mark){0, 0, 0, 0}, "",
	         "run it alone, or with fewer jobs at a time", "out of memory");
	run->result = NULL;
	return STANDFAST_NO_MEMORY;
}

/* Copies name and bytes; false without memory. */
static bool keep(struct standfast *run, const void *bytes, size_t length, const char *file,
                 const char *sha256)
{
	const char *name = file ? file : "", *digest = sha256 ? sha256 : "";
	run->file = arena_text(&run->arena, name, strlen(name));
	run->sha256 = arena_text(&run->arena, digest, strlen(digest));
	run->bytes = arena_text(&run->arena, bytes, length);
	run->length = length;
	if (run->arena.failed) {
		run->file = run->sha256 = "";
		run->bytes = NULL;
	}
	return !run->arena.failed;
}

static enum standfast_status status_of(struct standfast *run, enum status status)
{
	switch (status) {
	case DONE: return STANDFAST_DONE;
	case BAD_INPUT: return STANDFAST_BAD_INPUT;
	case NO_MEMORY: return no_memory(run);
	case NO_CONVERGENCE:
		diagnose(
			&run->diagnostics, ERROR, FAULT_GEOMETRY, (struct mark){0, 0, 0, 0},
			"cell.base",
			"look for sizes that differ by orders of magnitude: base, anchors, loads",
			"the equilibrium of the base could not be found to the accuracy asked for");
		return STANDFAST_NO_CONVERGENCE;
	case BROKEN_OUTPUT: return STANDFAST_BROKEN_OUTPUT;
	}
	return STANDFAST_BAD_INPUT;
}

enum standfast_status standfast_read(struct standfast *run, const void *bytes, size_t length,
                                     const char *file, const char *sha256)
{
	if (run->bytes || run->diagnostics.errors > 0)
		return STANDFAST_BAD_INPUT;
	/* the reader refuses a larger file by itself; it need not be copied for that */
	size_t kept = length <= MAX_FILE_BYTES ? length : 0;
	if (!keep(run, bytes, kept, file, sha256))
		return no_memory(run);
	const void *text = kept == length ? run->bytes : bytes;
	return status_of(run,
	                 cell_read(&run->arena, text, length, 0, &run->diagnostics, &run->cell));
}

enum standfast_status standfast_unreadable(struct standfast *run, const char *file,
                                           const char *reason)
{
	if (!keep(run, "", 0, file, NULL))
		return no_memory(run);
	run->bytes = NULL;
	diagnose(&run->diagnostics, ERROR, FAULT_IO, (struct mark){0, 0, 0, 0}, "", NULL, "%s",
	         reason);
	return STANDFAST_BAD_INPUT;
}

static enum status compute(struct standfast *run, const struct check_options *options,
                           bool required)
{
	enum status status = check_run(&run->arena, run->cell, options, &run->result);
	if (status != DONE)
		return status;
	run->result->file = run->file;
	run->result->sha256 = run->sha256;
	if (required)
		status = require_fill(&run->arena, run->cell, options, run->result);
	return run->arena.failed ? NO_MEMORY : status;
}

enum standfast_status standfast_compute(struct standfast *run, unsigned flags, const char *only)
{
	if (!run->cell || run->result)
		return STANDFAST_BAD_INPUT;
	const struct check *check = only ? check_find(only) : NULL;
	if (only && !check)
		return STANDFAST_BAD_INPUT;
	run->only = check ? check->id : NULL;
	struct check_options options = {.trace = flags & STANDFAST_TRACE, .only = run->only};
	enum status status = compute(run, &options, flags & STANDFAST_REQUIRED);
	/* half a result is none */
	if (status != DONE)
		run->result = NULL;
	return status_of(run, status);
}

/* --- what came out --- */

static enum standfast_verdict verdict_of(enum verdict verdict)
{
	return verdict == FAILS   ? STANDFAST_FAILS
	       : verdict == HOLDS ? STANDFAST_HOLDS
	                          : STANDFAST_UNPROVEN;
}

enum standfast_verdict standfast_verdict(const struct standfast *run)
{
	return run->result ? verdict_of(run->result->verdict) : STANDFAST_UNPROVEN;
}

size_t standfast_anchor_count(const struct standfast *run)
{
	return run->result ? run->result->anchor_count : 0;
}

bool standfast_anchor(const struct standfast *run, size_t index, struct standfast_anchor *out)
{
	if (index >= standfast_anchor_count(run))
		return false;
	const struct anchor_result *anchor = &run->result->anchor[index];
	*out = (struct standfast_anchor){anchor->id, anchor->at[0], anchor->at[1], anchor->computed,
	                                 anchor->tension, anchor->shear};
	return true;
}

size_t standfast_finding_count(const struct standfast *run)
{
	return run->result ? run->result->check_count : 0;
}

bool standfast_finding(const struct standfast *run, size_t index, struct standfast_finding *out)
{
	if (index >= standfast_finding_count(run))
		return false;
	const struct check_result *check = &run->result->checks[index];
	const struct finding *finding = &check->finding;
	*out = (struct standfast_finding){
		check->check->id,  check->check->title, verdict_of(finding->verdict),
		finding->computed, finding->ratio,      finding->reason ? finding->reason : ""};
	return true;
}

size_t standfast_governing(const struct standfast *run)
{
	return run->result ? run->result->governing : 0;
}

bool standfast_required(const struct standfast *run, struct standfast_required *out)
{
	if (!run->result || !run->result->required.computed)
		return false;
	const struct required *required = &run->result->required;
	*out = (struct standfast_required){required->tension, required->shear, required->at_least};
	return true;
}

size_t standfast_diagnostic_count(const struct standfast *run)
{
	return run->diagnostics.count;
}

bool standfast_diagnostic(const struct standfast *run, size_t index,
                          struct standfast_diagnostic *out)
{
	if (index >= run->diagnostics.count)
		return false;
	const struct diagnostic *from = &run->diagnostics.list[index];
	*out = (struct standfast_diagnostic){from->severity == ERROR,
	                                     from->mark.line,
	                                     from->mark.column,
	                                     fault_code(from->fault),
	                                     from->path,
	                                     from->message,
	                                     from->hint};
	return true;
}

/* --- pages --- */

static enum standfast_status written(bool whole)
{
	return whole ? STANDFAST_DONE : STANDFAST_BROKEN_OUTPUT;
}

enum standfast_status standfast_page(const struct standfast *run, enum standfast_page page,
                                     unsigned flags, standfast_write *write, void *user)
{
	const struct page_options options = {
		.colour = flags & STANDFAST_COLOUR, .trace = flags & STANDFAST_TRACE, .only = run->only};
	const struct page_source source = {run->file, run->bytes, run->length};
	const struct result *result = run->result;
	if (page == STANDFAST_DIAGNOSTICS)
		return written(
			page_diagnostics(&source, &run->diagnostics, options.colour, write, user));
	if (page == STANDFAST_JSON && !result)
		return written(
			page_json_faults(run->file, run->sha256, &run->diagnostics, write, user));
	if (!result)
		return STANDFAST_BAD_INPUT;
	switch (page) {
	case STANDFAST_JSON: return written(page_json(result, &options, write, user));
	case STANDFAST_RATINGS: return written(page_require(result, &options, write, user));
	case STANDFAST_UNDERSTOOD: return written(page_show(result, &options, write, user));
	default: return written(page_text(result, &options, write, user));
	}
}

enum standfast_status standfast_explain(const char *word, unsigned flags, standfast_write *write,
                                        void *user, bool *found)
{
	return written(page_explain(word, flags & STANDFAST_COLOUR, write, user, found));
}

enum standfast_status standfast_blank(const char *purpose, standfast_write *write, void *user)
{
	for (int i = 0; i < BLANK_PURPOSES; i++)
		if (strcmp(purpose, blank_purpose_word((enum blank_purpose)i)) == 0)
			return written(page_blank((enum blank_purpose)i, write, user));
	return STANDFAST_BAD_INPUT;
}

const char *standfast_check_id(size_t index)
{
	return index < check_count ? checks[index].id : NULL;
}
