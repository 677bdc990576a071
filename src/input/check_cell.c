#include "check_cell.h"
#include "../cell/validity.h"
#include <stdio.h>
#include <string.h>

static bool is_at_or_below(const char *path, const char *parent)
{
	size_t length = strlen(parent);
	return length > 0 && strncmp(path, parent, length) == 0 &&
	       (path[length] == 0 || path[length] == '.' || path[length] == '[');
}

/* Whether one fault may be the cause of the other: it stands at or below the other's path. */
static bool related(const char *a, const char *b)
{
	return is_at_or_below(a, b) || is_at_or_below(b, a);
}

/* Which cell is being checked: the file's own (name and `of` NULL) or that of a setup of it. */
struct subject { const char *name; size_t index; const struct cell *of; };

/* The path as this cell has it: behind "setups[2]." for a fault read in this very setup. */
static const char *within(const struct subject *subject, const char *path)
{
	char prefix[32];
	size_t length = (size_t)snprintf(prefix, sizeof prefix, "setups[%zu].", subject->index + 1);
	return subject->name && strncmp(path, prefix, length) == 0 ? path + length : path;
}

static bool same_mark(const struct mark *a, const struct mark *b)
{
	return a->file == b->file && a->line == b->line && a->column == b->column;
}

/* Whether it is said already, or follows from a value that could not be read. */
static bool is_known_fault(const struct diagnostics *list, size_t read_faults,
                           const struct diagnostic *fault, const struct subject *subject)
{
	for (size_t i = 0; i < list->count; i++) {
		const struct diagnostic *other = &list->list[i];
		if (i < read_faults && related(within(subject, other->path), fault->path))
			return true;
		if (other->fault == fault->fault && same_mark(&other->mark, &fault->mark) &&
		    strncmp(other->message, fault->message, strlen(fault->message)) == 0)
			return true;
	}
	return false;
}

/* A list of its own, so that each fault can be compared with what is said already. */
static void check(struct reader *reader, size_t read_faults, const struct cell *cell,
                  struct subject subject)
{
	struct diagnostics *found = arena_take(reader->arena, 1, sizeof *found);
	if (!found)
		return;
	if (subject.of)
		cell_validate_setup(cell, subject.of, reader->arena, found);
	else
		cell_validate(cell, reader->arena, found);
	for (size_t i = 0; i < found->count; i++) {
		const struct diagnostic *fault = &found->list[i];
		if (is_known_fault(reader->to, read_faults, fault, &subject))
			continue;
		if (subject.name)
			diagnose(reader->to, fault->severity, fault->fault, fault->mark,
			         fault->path, fault->hint, "%s (setup '%.40s')", fault->message,
			         subject.name);
		else
			diagnose(reader->to, fault->severity, fault->fault, fault->mark,
			         fault->path, fault->hint, "%s", fault->message);
	}
}

/* Faults of reading come first in the list; how many there are is taken before the first check. */
void check_cells(struct reader *reader, const struct cell *cell)
{
	size_t read_faults = reader->to->count;
	check(reader, read_faults, cell, (struct subject){NULL, 0, NULL});
	const struct setup *setup = cell->setups.rows;
	for (size_t i = 0; i < cell->setups.count; i++)
		/* a row that could not be read has no cell */
		if (setup[i].cell && setup[i].name.value)
			check(reader, read_faults, setup[i].cell,
			      (struct subject){setup[i].name.value, i, cell});
}
