#include "one_file.h"

#include "../standfast.h"
#include "history_files.h"
#include "input_file.h"
#include "pool.h"
#include <stdlib.h>
#include <string.h>

static int verdict_status(enum standfast_verdict verdict)
{
	switch (verdict) {
	case STANDFAST_HOLDS: return EXIT_HOLDS;
	case STANDFAST_FAILS: return EXIT_FAILS;
	default: return EXIT_UNPROVEN;
	}
}

/* require names ratings, whatever the product in the file does; show and arm judge nothing. */
static int result_status(const struct command_line *line, const struct standfast *run)
{
	struct standfast_required required;
	if (line->command == COMMAND_SHOW)
		return EXIT_HOLDS;
	if (line->command == COMMAND_ARM)
		return standfast_arm_whole(run) ? EXIT_HOLDS : EXIT_UNPROVEN;
	if (line->command == COMMAND_REQUIRE)
		return standfast_required(run, &required) && !required.at_least ? EXIT_HOLDS
		                                                                : EXIT_UNPROVEN;
	return verdict_status(standfast_verdict(run));
}

static enum standfast_page page_of(const struct command_line *line)
{
	if (line->command == COMMAND_ARM)
		return line->json  ? STANDFAST_ARM_JSON
		       : line->csv ? STANDFAST_ARM_CSV
		                   : STANDFAST_ARM;
	if (line->json)
		return STANDFAST_JSON;
	return line->command == COMMAND_SHOW ? STANDFAST_UNDERSTOOD
	     : line->command == COMMAND_REQUIRE ? STANDFAST_RATINGS : STANDFAST_TEXT;
}

static unsigned flags_of(const struct command_line *line, FILE *stream)
{
	unsigned flags = line->trace ? STANDFAST_TRACE : 0;
	if (line->command == COMMAND_REQUIRE)
		flags |= STANDFAST_REQUIRED;
	if (line->command == COMMAND_ARM)
		flags |= STANDFAST_REACTIONS;
	if (stream_in_colour(stream, line->colour))
		flags |= STANDFAST_COLOUR;
	return flags;
}

/* With several files each page says whose it is; JSON and CSV do so by themselves. */
static bool head_line(const struct command_line *line, struct file_job *job, const char *name)
{
	if (line->json || line->csv || line->operand_count < 2)
		return true;
	bool first = job->path == line->operands[0];
	return (first || buffer_write(&job->out, "\n", 1)) &&
	       buffer_write(&job->out, name, strlen(name)) && buffer_write(&job->out, ":\n", 2);
}

static bool write_pages(const struct command_line *line, struct file_job *job,
                        const struct standfast *run, const char *name, bool computed)
{
	unsigned err_flags = flags_of(line, stderr), out_flags = flags_of(line, stdout);
	bool good = standfast_page(run, STANDFAST_DIAGNOSTICS, err_flags, buffer_write,
	                           &job->err) == STANDFAST_DONE;
	if (computed)
		good = good && head_line(line, job, name);
	if (computed || line->json)
		good = good && standfast_page(run, page_of(line), out_flags, buffer_write,
		                              &job->out) == STANDFAST_DONE;
	return good;
}

/* Several files are shared out as wholes (run_files.c), the work of a single one in pieces. */
static bool compute_in_pieces(const struct command_line *line, struct standfast *run)
{
	struct progress progress;
	struct pool pool;
	bool alone = line->operand_count == 1;
	progress_open(&progress);
	pool_open(&pool, alone ? command_line_jobs(line) : 1, alone ? &progress : NULL);
	standfast_pieces(run, pool_run, &pool);
	bool computed =
		standfast_compute(run, flags_of(line, stdout), line->only) == STANDFAST_DONE;
	/* the pool goes, and with it what the run would ask */
	standfast_pieces(run, NULL, NULL);
	pool_close(&pool);
	progress_close(&progress);
	return computed;
}

static bool compute(const struct command_line *line, const struct file_job *job,
                    struct standfast *run, const struct input_file *file,
                    struct given_files *histories)
{
	if (*file->reason)
		return standfast_unreadable(run, file->name, file->reason) == STANDFAST_DONE;
	return standfast_read(run, file->bytes, file->length, file->name, file->sha256) ==
	               STANDFAST_DONE &&
	       history_files_give(run, job->path, histories) && compute_in_pieces(line, run);
}

void file_job_run(const struct command_line *line, struct file_job *job)
{
	struct input_file file;
	struct given_files histories = {NULL, 0};
	input_file_read(job->path, &file);
	struct standfast *run = standfast_open(NULL, NULL);
	bool computed = run && compute(line, job, run, &file, &histories);
	job->status = computed ? result_status(line, run) : EXIT_NOT_COMPUTED;
	if (!run || !write_pages(line, job, run, file.name, computed)) {
		/* half a page is none */
		buffer_free(&job->out);
		job->no_memory = true;
		job->status = EXIT_NOT_COMPUTED;
	}
	standfast_close(run);
	history_files_free(&histories);
	free(file.bytes);
}
