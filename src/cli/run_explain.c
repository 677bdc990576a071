#include "run_explain.h"

#include "../standfast.h"

int run_explain(const struct command_line *line)
{
	struct buffer page = {0};
	bool found = false;
	const char *word = line->operand_count > 0 ? line->operands[0] : NULL;
	unsigned flags = stream_in_colour(stdout, line->colour) ? STANDFAST_COLOUR : 0;
	bool good = standfast_explain(word, flags, buffer_write, &page, &found) == STANDFAST_DONE;
	if (!good)
		complain("out of memory");
	else
		good = stream_print(found ? stdout : stderr, &page) && found;
	buffer_free(&page);
	return good ? EXIT_HOLDS : EXIT_NOT_COMPUTED;
}
