/* A history as loads: its rows in cell axes, the largest of each kind, and the separate maxima. */
#include "arm_sources.h"

#include <math.h>

#define N_MM_PER_N_M 1e3

enum { BATCH = 64 };

static double known(const struct number *number)
{
	return number->given.origin == ABSENT ? 0 : number->value;
}

static struct mat3 mounting_of(const struct cell *cell)
{
	double r[9];
	arm_mounting_axes(&cell->arm, r);
	return (struct mat3){{vec3_of(r), vec3_of(r + 3), vec3_of(r + 6)}};
}

static struct base_wrench turned(const struct mat3 *axes, const struct base_wrench *wrench)
{
	struct vec3 f = mat3_times(axes, vec3_of(wrench->force));
	struct vec3 m = mat3_times(axes, vec3_of(wrench->moment));
	return (struct base_wrench){{f.x, f.y, f.z}, {m.x, m.y, m.z}};
}

void arm_load_of_row(const struct cell *cell, const struct base_wrench *wrench,
                     struct arm_load *out)
{
	struct mat3 axes = mounting_of(cell);
	struct base_wrench w = turned(&axes, wrench);
	const struct arm *arm = &cell->arm;
	*out = (struct arm_load){.weight = STANDARD_GRAVITY *
	                                   (known(&arm->mass) + known(&arm->payload))};
	for (int i = 0; i < 3; i++) {
		out->force[i] = w.force[i];
		out->moment[i] = N_MM_PER_N_M * w.moment[i];
	}
}

/* The kinds are those of the cell's vertical: on a wall, what the sensor calls its z is level. */
static void scan_turned(const struct mat3 *axes, const struct history_file *file,
                        struct envelope *out)
{
	struct diagnostics told = {0}; /* every fault was told by the scan before */
	struct history history;
	struct history_row row[BATCH];
	*out = (struct envelope){0};
	if (!history_open(&history, file->text, file->length, file->file, &told))
		return;
	for (size_t count; (count = history_read(&history, row, BATCH)) > 0;)
		for (size_t i = 0; i < count; i++) {
			row[i].wrench = turned(axes, &row[i].wrench);
			envelope_add(out, &row[i]);
		}
}

/* Upright, no value depends on the heading: the scan's own envelope serves, its companions turned.
 */
static void envelope_of(const struct cell *cell, const struct history_file *file,
                        const struct envelope *scanned, struct envelope *out)
{
	struct mat3 axes = mounting_of(cell);
	if (axes.row[2].z < 1) {
		scan_turned(&axes, file, out);
		return;
	}
	*out = *scanned;
	for (int kind = 0; kind < REACTION_KINDS; kind++)
		out->largest[kind].at.wrench = turned(&axes, &scanned->largest[kind].at.wrench);
}

/* The wrench of an entry of envelope_of, which is turned already. */
static struct arm_load load_of(const struct cell *cell, const struct base_wrench *wrench)
{
	struct arm_load out;
	struct base_wrench none = {{0}, {0}};
	arm_load_of_row(cell, &none, &out);
	for (int i = 0; i < 3; i++) {
		out.force[i] = wrench->force[i];
		out.moment[i] = N_MM_PER_N_M * wrench->moment[i];
	}
	return out;
}

static void tell_extreme(const struct cell *cell, enum reaction_kind kind,
                         const struct envelope_entry *entry, struct arm_extreme *out)
{
	bool moment = kind == REACTION_TILTING || kind == REACTION_TWISTING;
	*out = (struct arm_extreme){.value = (moment ? N_MM_PER_N_M : 1) * entry->value,
	                            .bound = HUGE_VAL,
	                            .load = load_of(cell, &entry->at.wrench),
	                            .row = entry->at.row,
	                            .time = entry->at.t};
}

bool arm_history_source(const struct arm_build *build, const struct arm_history *row,
                        const struct history_file *file, struct arm_source *out)
{
	enum arm_case arm_case = (enum arm_case)row->of.value;
	struct diagnostics told = {0};
	struct envelope envelope;
	double value[REACTION_KINDS];
	*out = (struct arm_source){
		.way = WAY_HISTORY, .arm_case = arm_case, .history = row, .file = file};
	out->name = arena_format(build->arena, "%s, %s", arm_case_names[arm_case], file->name);
	history_scan(file->text, file->length, file->file, &told, &out->summary);
	envelope_of(build->cell, file, &out->summary.envelope, &envelope);
	for (int kind = 0; kind < REACTION_KINDS; kind++) {
		tell_extreme(build->cell, (enum reaction_kind)kind, &envelope.largest[kind],
		             &out->extreme[kind]);
		value[kind] = out->extreme[kind].value;
	}
	out->bound = arm_aligned_loads(build->arena, value, out->extreme[0].load.weight);
	return out->name && out->bound.list;
}
