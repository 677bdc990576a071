/* The library's face: a run holds its arena, what was read and what came out. */
#include "standfast.h"

#include "arm/arm_loads.h"
#include "check.h"
#include "input/plain_text.h"
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
	struct page_source *sources;        /* the cell file, then the histories, as marks count */
	struct history_file *histories;     /* text NULL: not given yet */
	struct mark *named;                 /* where the cell file names each of them */
	struct history_files files;
	struct pieces pieces;
	bool reactions_alone;
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

/* --- files that the cell file names --- */

static size_t find_file(const struct standfast *run, const char *name)
{
	size_t i = 0;
	while (i < run->files.count && strcmp(run->histories[i].name, name) != 0)
		i++;
	return i;
}

/* The folder of the cell file and the name: where a reader of messages finds the CSV. */
static const char *place_of(struct standfast *run, const char *name)
{
	const char *slash = strrchr(run->file, '/');
	if (*name == '/' || !slash)
		return name;
	return arena_format(&run->arena, "%.*s%s", (int)(slash + 1 - run->file), run->file, name);
}

static void note_file(struct standfast *run, const struct text *file)
{
	size_t i = find_file(run, file->value);
	if (!is_known(*file) || i < run->files.count)
		return;
	run->histories[i] = (struct history_file){
		.name = file->value, .file = (uint32_t)i + 1, .sha256 = ""};
	run->named[i] = file->given.mark;
	run->sources[i + 1] = (struct page_source){place_of(run, file->value), NULL, 0};
	run->files.count++;
}

static void note_files(struct standfast *run, const struct cell *cell)
{
	const struct arm_history *rows = cell->arm.history.rows;
	for (size_t i = 0; i < cell->arm.history.count; i++)
		note_file(run, &rows[i].file);
}

/* Every name once, over the file and its setups. False without memory. */
static bool find_files(struct standfast *run)
{
	size_t most = run->cell->arm.history.count, setups = setup_count(run->cell);
	for (size_t s = 0; s < setups; s++)
		most += setup_cell(run->cell, s)->arm.history.count;
	run->histories = arena_take(&run->arena, most, sizeof *run->histories);
	run->named = arena_take(&run->arena, most, sizeof *run->named);
	run->sources = arena_take(&run->arena, most + 1, sizeof *run->sources);
	if (run->arena.failed) {
		run->sources = NULL;
		return false;
	}
	run->files.list = run->histories;
	run->sources[0] = (struct page_source){run->file, run->bytes, run->length};
	note_files(run, run->cell);
	for (size_t s = 0; s < setups; s++)
		note_files(run, setup_cell(run->cell, s));
	return !run->arena.failed;
}

size_t standfast_file_count(const struct standfast *run)
{
	return run->cell ? run->files.count : 0;
}

const char *standfast_file_name(const struct standfast *run, size_t index)
{
	return index < standfast_file_count(run) ? run->histories[index].name : NULL;
}

enum standfast_status standfast_give_file(struct standfast *run, size_t index, const void *bytes,
                                          size_t length, const char *sha256)
{
	struct history_summary summary;
	size_t errors = run->diagnostics.errors;
	if (index >= standfast_file_count(run) || run->histories[index].text || run->result)
		return STANDFAST_BAD_INPUT;
	struct history_file *file = &run->histories[index];
	file->sha256 = sha256 ? arena_text(&run->arena, sha256, strlen(sha256)) : "";
	if (run->arena.failed) {
		file->sha256 = "";
		return no_memory(run);
	}
	file->text = length > 0 ? bytes : "";
	file->length = length;
	run->sources[index + 1].bytes = file->text;
	run->sources[index + 1].length = length;
	if (plain_text_check(file->text, length, file->file, &run->diagnostics))
		history_scan(file->text, length, file->file, &run->diagnostics, &summary);
	return run->diagnostics.errors > errors ? STANDFAST_BAD_INPUT : STANDFAST_DONE;
}

enum standfast_status standfast_file_unreadable(struct standfast *run, size_t index,
                                                const char *reason)
{
	if (index < standfast_file_count(run))
		diagnose(&run->diagnostics, ERROR, FAULT_IO, run->named[index],
		         "arm.history[].file",
		         "the name is taken from the folder of the cell file", "%s: %s",
		         run->histories[index].name, reason);
	return STANDFAST_BAD_INPUT;
}

/* What is computed without a file that was named would be a computation of another cell. */
static bool all_files_given(struct standfast *run)
{
	for (size_t i = 0; i < run->files.count && run->diagnostics.errors == 0; i++)
		if (!run->histories[i].text)
			standfast_file_unreadable(run, i, "its bytes were not given");
	return run->diagnostics.errors == 0;
}

/* --- reading and computing --- */

/* What no single key is wrong about, and the files that are named. */
static enum status look_over(struct standfast *run)
{
	if (!find_files(run))
		return NO_MEMORY;
	arm_faults(run->cell, &run->arena, &run->diagnostics);
	if (run->arena.failed)
		return NO_MEMORY;
	if (run->diagnostics.errors == 0)
		return DONE;
	diagnostics_sort(&run->diagnostics);
	return BAD_INPUT;
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
	enum status status =
		cell_read(&run->arena, text, length, 0, &run->diagnostics, &run->cell);
	if (status == DONE)
		status = look_over(run);
	if (status != DONE)
		run->cell = NULL;
	return status_of(run, status);
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

void standfast_pieces(struct standfast *run, standfast_pool *pool, void *user)
{
	run->pieces = (struct pieces){pool, user};
}

/* What came out and what it was made from. */
static void sign(const struct standfast *run, struct result *result)
{
	result->file = run->file;
	result->sha256 = run->sha256;
	result->histories = &run->files;
}

static enum status compute(struct standfast *run, const struct check_options *options,
                           bool required)
{
	enum status status = check_run(&run->arena, run->cell, options, &run->result);
	if (status != DONE)
		return status;
	sign(run, run->result);
	if (required)
		status = require_fill(&run->arena, run->cell, options, run->result);
	return run->arena.failed ? NO_MEMORY : status;
}

static enum status setup_reactions(struct standfast *run, struct result *result, size_t s)
{
	const struct cell *cell = setup_cell(run->cell, s);
	/* the height of the mounting face changes no reaction on it */
	for (size_t i = 0; i < s; i++)
		if (arm_loads_alike(setup_cell(run->cell, i), cell)) {
			result->arm[s] = result->arm[i];
			return DONE;
		}
	struct arm_loads *loads = arena_take(&run->arena, 1, sizeof *loads);
	if (!loads)
		return NO_MEMORY;
	result->arm[s] = loads;
	return arm_loads_build(cell, &run->files, &run->pieces, &run->arena, loads);
}

/* A result without a check: the reactions alone. */
static enum status compute_reactions(struct standfast *run)
{
	run->result = arena_take(&run->arena, 1, sizeof *run->result);
	if (!run->result)
		return NO_MEMORY;
	run->result->cell = run->cell;
	run->result->verdict = UNPROVEN;
	sign(run, run->result);
	for (size_t s = 0; s < setup_count(run->cell); s++) {
		enum status status = setup_reactions(run, run->result, s);
		if (status != DONE)
			return status;
	}
	return run->arena.failed ? NO_MEMORY : DONE;
}

enum standfast_status standfast_compute(struct standfast *run, unsigned flags, const char *only)
{
	if (!run->cell || run->result || !all_files_given(run))
		return STANDFAST_BAD_INPUT;
	const struct check *check = only ? check_find(only) : NULL;
	if (only && !check)
		return STANDFAST_BAD_INPUT;
	run->only = check ? check->id : NULL;
	run->reactions_alone = flags & STANDFAST_REACTIONS;
	struct check_options options = {.trace = flags & STANDFAST_TRACE,
	                                .only = run->only,
	                                .pieces = &run->pieces,
	                                .histories = &run->files};
	enum status status = run->reactions_alone
	                             ? compute_reactions(run)
	                             : compute(run, &options, flags & STANDFAST_REQUIRED);
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

/* An arm_gap: that there is one is enough. */
static void count_gap(void *user, const char *path)
{
	(void)path;
	++*(size_t *)user;
}

bool standfast_arm_whole(const struct standfast *run)
{
	size_t gaps = 0, sources = 0;
	for (size_t s = 0; run->result && s < setup_count(run->cell); s++) {
		const struct arm_loads *loads = run->result->arm[s];
		arm_gaps(setup_cell(run->cell, s), count_gap, &gaps);
		sources += loads ? loads->count : 0;
	}
	return sources > 0 && gaps == 0;
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
	size_t file = run->sources && from->mark.file <= run->files.count ? from->mark.file : 0;
	*out = (struct standfast_diagnostic){from->severity == ERROR,
	                                     from->mark.line,
	                                     from->mark.column,
	                                     fault_code(from->fault),
	                                     from->path,
	                                     from->message,
	                                     from->hint,
	                                     file > 0 ? run->sources[file].file : run->file};
	return true;
}

/* --- pages --- */

static enum standfast_status written(bool whole)
{
	return whole ? STANDFAST_DONE : STANDFAST_BROKEN_OUTPUT;
}

/* What is said of the input, whether or not anything came out. */
static enum standfast_status fault_page(const struct standfast *run, bool json, bool colour,
                                        standfast_write *write, void *user)
{
	const struct page_source alone = {run->file, run->bytes, run->length};
	const struct page_source *sources = run->sources ? run->sources : &alone;
	size_t count = run->sources ? 1 + run->files.count : 1;
	if (json)
		return written(page_json_faults_of(sources, count, run->sha256, &run->diagnostics,
		                                   write, user));
	return written(
		page_diagnostics_of(sources, count, &run->diagnostics, colour, write, user));
}

enum standfast_status standfast_page(const struct standfast *run, enum standfast_page page,
                                     unsigned flags, standfast_write *write, void *user)
{
	const struct page_options options = {
		.colour = flags & STANDFAST_COLOUR, .trace = flags & STANDFAST_TRACE, .only = run->only};
	const struct result *result = run->result;
	bool json = page == STANDFAST_JSON || page == STANDFAST_ARM_JSON;
	if (page == STANDFAST_DIAGNOSTICS || (json && !result))
		return fault_page(run, json, options.colour, write, user);
	if (!result || (run->reactions_alone && page < STANDFAST_ARM))
		return STANDFAST_BAD_INPUT;
	switch (page) {
	case STANDFAST_JSON: return written(page_json(result, &options, write, user));
	case STANDFAST_RATINGS: return written(page_require(result, &options, write, user));
	case STANDFAST_UNDERSTOOD: return written(page_show(result, &options, write, user));
	case STANDFAST_ARM: return written(page_arm_text(result, &options, write, user));
	case STANDFAST_ARM_JSON: return written(page_arm_json(result, write, user));
	case STANDFAST_ARM_CSV: return written(page_arm_csv(result, write, user));
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
