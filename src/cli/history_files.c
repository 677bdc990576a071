#include "history_files.h"
#include <stdlib.h>
#include <string.h>

/* The file beside the cell file; NULL without memory. */
static char *place_beside(const char *cell_path, const char *name)
{
	const char *slash = strrchr(cell_path, '/');
	size_t folder = slash && *name != '/' ? (size_t)(slash + 1 - cell_path) : 0;
	size_t length = strlen(name);
	char *path = malloc(folder + length + 1);
	if (!path)
		return NULL;
	memcpy(path, cell_path, folder);
	memcpy(path + folder, name, length + 1);
	return path;
}

static bool give_one(struct standfast *run, size_t index, const char *cell_path,
                     struct input_file *file)
{
	char *path = place_beside(cell_path, standfast_file_name(run, index));
	if (!path)
		return standfast_file_unreadable(run, index, "out of memory") == STANDFAST_DONE;
	bool read = input_file_read_history(path, file);
	file->name = standfast_file_name(run, index);
	free(path);
	if (!read)
		return standfast_file_unreadable(run, index, file->reason) == STANDFAST_DONE;
	return standfast_give_file(run, index, file->bytes, file->length, file->sha256) ==
	       STANDFAST_DONE;
}

bool history_files_give(struct standfast *run, const char *cell_path, struct given_files *out)
{
	size_t count = standfast_file_count(run);
	bool whole = true;
	*out = (struct given_files){NULL, 0};
	if (count == 0)
		return true;
	out->list = calloc(count, sizeof *out->list);
	if (!out->list)
		return standfast_file_unreadable(run, 0, "out of memory") == STANDFAST_DONE;
	out->count = count;
	for (size_t i = 0; i < count; i++)
		whole = give_one(run, i, cell_path, &out->list[i]) && whole;
	return whole;
}

void history_files_free(struct given_files *files)
{
	for (size_t i = 0; i < files->count; i++)
		free(files->list[i].bytes);
	free(files->list);
	*files = (struct given_files){NULL, 0};
}
