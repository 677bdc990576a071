/* What was understood of a file: every key, the load cases that are run, a plan. */
#include "show_parts.h"

bool page_show(const struct result *result, const struct page_options *options,
               write_function *write, void *user)
{
	struct writer writer;
	writer_open(&writer, write, user, options->colour);
	writer_style(&writer, STYLE_TITLE);
	writer_text(&writer, "Keys");
	writer_style(&writer, STYLE_PLAIN);
	writer_newline(&writer);
	show_fields(&writer, result->cell);
	show_loads(&writer, result);
	show_plan(&writer, result->cell);
	return writer_close(&writer);
}
