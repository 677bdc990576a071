/* The program: a command line, a command, an exit status. */
#include "../standfast.h"
#include "options.h"
#include "run_explain.h"
#include "run_files.h"
#include "run_new.h"

static int run(const struct command_line *line)
{
	if (line->version) {
		printf("standfast %s\nMIT licence; no warranty\n", standfast_version());
		return EXIT_HOLDS;
	}
	if (line->help) {
		print_help(stdout, line->command);
		return EXIT_HOLDS;
	}
	switch (line->command) {
	case COMMAND_NEW: return run_new(line);
	case COMMAND_EXPLAIN: return run_explain(line);
	default: return run_files(line);
	}
}

int main(int argc, char **argv)
{
	struct command_line line;
	streams_prepare();
	int status = command_line_read(argc, argv, &line) ? run(&line) : EXIT_NOT_COMPUTED;
	return streams_finish(status);
}
