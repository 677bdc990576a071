/* All ways and cases of one cell, in their order; and setups that share their arm. */
#include "arm_sources.h"

#include "../cell/fields.h"
#include "../cell/load_model.h"
#include <string.h>

const char *const arm_case_names[ARM_CASES] = {"arm at rest", "normal motion", "emergency stop"};

const char *arm_work_name(struct arena *arena, enum arm_case arm_case, const char *what)
{
	const char *name = arena_format(arena, "%s: %s", arm_case_names[arm_case], what);
	return name ? name : "";
}

/* --- building ------------------------------------------------------------------------------- */

static double known(const struct number *number)
{
	return number->given.origin == ABSENT ? 0 : number->value;
}

static double arm_weight(const struct cell *cell)
{
	const struct arm *arm = &cell->arm;
	const struct chain_joint *joint = arm->chain.joints.rows;
	double mass, fixed;
	if (is_known(arm->mass))
		return STANDARD_GRAVITY * arm->mass.value;
	if (arm->chain.joints.count == 0 || !arm_fixed_mass(cell, &fixed))
		return 0;
	mass = fixed;
	for (size_t i = 0; i < arm->chain.joints.count; i++)
		mass += known(&joint[i].mass);
	return STANDARD_GRAVITY * mass;
}

static const struct history_file *file_of(const struct history_files *files, const char *name)
{
	for (size_t i = 0; name && files && i < files->count; i++)
		if (strcmp(files->list[i].name, name) == 0)
			return &files->list[i];
	return NULL;
}

/* One running call: where the next source goes, and the one it may be taken from. */
struct filling {
	const struct arm_build *build;
	const struct history_files *files;
	const struct arm_loads *like;
	bool same_height, failed;
	struct arm_loads *out;
};

/* Alike cells have the same sources in the same order. */
static const struct arm_source *earlier(const struct filling *f)
{
	return f->like && f->out->count < f->like->count ? &f->like->list[f->out->count] : NULL;
}

static void add(struct filling *f, bool made)
{
	f->failed |= !made;
	f->out->count++;
}

/* A copy, but for what belongs to the cell itself. */
static bool history_like(const struct arm_source *like, const struct arm_history *row,
                         const struct history_file *file, struct arm_source *out)
{
	*out = *like;
	out->history = row;
	out->file = file;
	return true;
}

static void fill_histories(struct filling *f, enum arm_case arm_case)
{
	const struct cell *cell = f->build->cell;
	const struct arm_history *row = cell->arm.history.rows;
	if (!arm_way_covers(cell, WAY_HISTORY, arm_case))
		return;
	for (size_t i = 0; i < cell->arm.history.count; i++) {
		const struct history_file *file = file_of(f->files, row[i].file.value);
		const struct arm_source *like = earlier(f);
		struct arm_source *next = &f->out->list[f->out->count];
		if (!is_known(row[i].of) || row[i].of.value != (int)arm_case || !file)
			continue;
		add(f, like ? history_like(like, &row[i], file, next)
		            : arm_history_source(f->build, &row[i], file, next));
	}
}

static void fill_case(struct filling *f, enum arm_case arm_case)
{
	const struct arm_build *build = f->build;
	if (arm_way_covers(build->cell, WAY_CHAIN, arm_case))
		add(f, arm_chain_source(build, arm_case, earlier(f), f->same_height,
		                        &f->out->list[f->out->count]));
	if (arm_way_covers(build->cell, WAY_SWING, arm_case))
		add(f, arm_swing_source(build, arm_case, &f->out->list[f->out->count]));
	fill_histories(f, arm_case);
}

static enum status fill(struct filling *f, struct arm_build *build)
{
	static const enum arm_case order[ARM_CASES] = {ARM_EMERGENCY_STOP, ARM_NORMAL, ARM_REST};
	const struct cell *cell = build->cell;
	/* chain and swing of every case, and every history in one */
	f->out->list = arena_take(build->arena, 2 * ARM_CASES + cell->arm.history.count,
	                          sizeof *f->out->list);
	if (chain_given(cell))
		build->work = arena_take(build->scratch, 1, sizeof *build->work);
	if (build->arena->failed || build->scratch->failed)
		return NO_MEMORY;
	for (int i = 0; i < ARM_CASES && !f->failed; i++)
		fill_case(f, order[i]);
	return f->failed || build->arena->failed ? NO_MEMORY : DONE;
}

enum status arm_loads_build_like(const struct cell *cell, const struct arm_loads *like,
                                 const struct cell *of, const struct history_files *files,
                                 const struct pieces *pieces, struct arena *arena,
                                 struct arm_loads *out)
{
	/* the work of a setup takes megabytes that its results do not need */
	struct arena scratch;
	struct arm_build build = {
		.cell = cell, .pieces = pieces, .arena = arena, .scratch = &scratch};
	struct filling f = {.build = &build, .files = files, .like = like, .out = out};
	f.same_height = of && cell->arm.mount.at[2] == of->arm.mount.at[2];
	*out = (struct arm_loads){.weight = arm_weight(cell)};
	arena_open(&scratch, arena->allocate, arena->user);
	enum status status = fill(&f, &build);
	arena_close(&scratch);
	return status;
}

enum status arm_loads_build(const struct cell *cell, const struct history_files *files,
                            const struct pieces *pieces, struct arena *arena, struct arm_loads *out)
{
	return arm_loads_build_like(cell, NULL, NULL, files, pieces, arena, out);
}

/* --- setups that share their arm ------------------------------------------------------------ */

static bool same_numbers(const struct numbers *a, const struct numbers *b)
{
	if (a->count != b->count)
		return false;
	for (size_t i = 0; i < a->count; i++)
		if (a->values[i] != b->values[i])
			return false;
	return true;
}

static bool same_text(const char *a, const char *b)
{
	return a == b || (a && b && strcmp(a, b) == 0);
}

static bool same_rows(const struct field *list, const struct list *a, const struct list *b);

/* One key of two cells or rows: known alike, and of the same value. */
static bool same_key(const struct field *field, const void *a, const void *b)
{
	const struct given *given = field_given(field, a), *other = field_given(field, b);
	const void *x = given, *y = other;
	if ((given->origin == ABSENT) != (other->origin == ABSENT))
		return false;
	switch (field->kind) {
	case FIELD_NUMBER:
		return ((const struct number *)x)->value == ((const struct number *)y)->value;
	case FIELD_WORD:
		return ((const struct word *)x)->value == ((const struct word *)y)->value;
	case FIELD_TEXT:
		return same_text(((const struct text *)x)->value, ((const struct text *)y)->value);
	case FIELD_POINT3:
		return memcmp(((const struct point *)x)->at, ((const struct point *)y)->at,
		              sizeof((const struct point *)x)->at) == 0;
	case FIELD_NUMBERS:
		return same_numbers(x, y);
	case FIELD_LIST:
		return same_rows(field, x, y);
	default:
		return true;
	}
}

static bool has_value(enum field_kind kind)
{
	return kind == FIELD_NUMBER || kind == FIELD_WORD || kind == FIELD_TEXT ||
	       kind == FIELD_POINT3 || kind == FIELD_NUMBERS || kind == FIELD_LIST;
}

/* Every key that begins with `start` and lies in no list beyond it. */
static bool same_below(const char *start, const void *a, const void *b)
{
	size_t length = strlen(start);
	for (size_t i = 0; i < field_count; i++) {
		const struct field *field = &fields[i];
		if (strncmp(field->path, start, length) == 0 && has_value(field->kind) &&
		    !strchr(field->path + length, '[') && !same_key(field, a, b))
			return false;
	}
	return true;
}

static bool same_rows(const struct field *list, const struct list *a, const struct list *b)
{
	char start[DIAGNOSTIC_PATH];
	size_t length = strlen(list->path);
	if (a->count != b->count || length + 4 > sizeof start)
		return false;
	if (a->rows == b->rows)
		return true;
	memcpy(start, list->path, length);
	memcpy(start + length, "[].", 4);
	for (size_t i = 0; i < a->count; i++)
		if (!same_below(start, (const char *)a->rows + i * list->row_size,
		                (const char *)b->rows + i * list->row_size))
			return false;
	return true;
}

bool arm_loads_alike(const struct cell *a, const struct cell *b)
{
	/* which cases are computed and what they are does not depend on the other keys of arm */
	static const char *const starts[] = {"arm.mounting", "arm.turned", "arm.weight.",
	                                     "arm.chain",    "arm.motion", "arm.swing",
	                                     "arm.history"};
	for (size_t i = 0; i < sizeof starts / sizeof *starts; i++)
		if (!same_below(starts[i], a, b))
			return false;
	return true;
}

bool arm_loads_same(const struct cell *a, const struct cell *b)
{
	return a->arm.mount.at[2] == b->arm.mount.at[2] && arm_loads_alike(a, b);
}
