#include "run_new.h"

#include "../standfast.h"
#include "new_file.h"
#include <string.h>

int run_new(const struct command_line *line)
{
	struct buffer page = {0};
	bool to_stream = !line->output || strcmp(line->output, "-") == 0;
	bool good = standfast_blank(line->purpose, buffer_write, &page) == STANDFAST_DONE;
	if (!good)
		complain("out of memory");
	else if (to_stream)
		good = stream_print(stdout, &page);
	else
		good = new_file_write(line->output, &page, line->force);
	buffer_free(&page);
	return good ? EXIT_HOLDS : EXIT_NOT_COMPUTED;
}
