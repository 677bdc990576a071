/* Parts, reactions of the arm and further loads that contradict themselves. */
#include "validity_parts.h"
#include <stdio.h>

/* Rounding of a stated force against the weight that it holds; no more than that [-]. */
#define ROUNDING 1e-9

/* Either the centre of mass is known, or the box that holds it; half a box holds nothing. */
static void check_box(struct validity *validity, const struct part *part, size_t index)
{
	bool from = is_known(part->box_from), to = is_known(part->box_to);
	struct mark mark = validity_mark(part->box_from.given.mark, part->box_to.given.mark);
	struct validity_path path = validity_row("cell.parts", index, "box");
	if (is_known(part->at) && (from || to))
		validity_fault(validity, FAULT_CONTRADICTION, mark, path.text,
		               "keep at where the centre is known, box where it is not", "a part with at and box");
	else if (from != to)
		validity_fault(validity, FAULT_MISSING_KEY, mark, path.text,
		               "write both corners: from and to", "a box without its %s corner",
		               from ? "to" : "from");
	else if (from)
		for (int k = 0; k < 3; k++)
			if (part->box_from.at[k] > part->box_to.at[k]) {
				validity_fault(validity, FAULT_GEOMETRY, mark, path.text,
				               "write the lower corner as from and the upper one as to",
				               "a box that ends before it begins along %c", "xyz"[k]);
				return;
			}
}

static void check_part(struct validity *validity, const struct part *part, size_t index)
{
	check_box(validity, part, index);
	if (!is_known(part->mass) || !is_known(part->least_mass) ||
	    part->least_mass.value <= part->mass.value)
		return;
	struct validity_path path = validity_row("cell.parts", index, "least_mass");
	validity_fault(validity, FAULT_CONTRADICTION, part->least_mass.given.mark, path.text,
	               "write the full mass as mass and the least as least_mass", "the least mass, %s, is above the mass, %s",
	               validity_show(validity, part->least_mass.value, DIM_MASS).text,
	               validity_show(validity, part->mass.value, DIM_MASS).text);
}

static const char *const case_keys[ARM_CASES] = {"", "normal", "emergency_stop"};

static bool says_yes(const struct word *word)
{
	return is_known(*word) && word->value == YES;
}

static struct validity_path reaction_path(int index, const char *key)
{
	struct validity_path path;
	snprintf(path.text, sizeof path.text, "arm.reactions.%s.%s", case_keys[index], key);
	return path;
}

/* A vertical force below the weight cannot hold the weight. */
static void check_vertical(struct validity *validity, int index)
{
	const struct arm *arm = &validity->cell->arm;
	const struct number *vertical = &arm->reaction[index].vertical;
	if (!is_known(*vertical) || !is_known(arm->mass) || !is_known(arm->payload))
		return;
	double weight = STANDARD_GRAVITY * (arm->mass.value + arm->payload.value);
	if (vertical->value >= weight * (1 - ROUNDING))
		return;
	validity_fault(validity, FAULT_CONTRADICTION, vertical->given.mark,
	               reaction_path(index, "vertical").text,
	               "write vertical_includes_weight: no, or check force and masses",
	               "%s is below the weight of arm and payload, %s, which it is said to include",
	               validity_show(validity, vertical->value, DIM_FORCE).text,
	               validity_show(validity, weight, DIM_FORCE).text);
}

/* m * reach, where both are known or there is no mass [kg mm]. */
static bool first_moment(const struct number *mass, const struct number *reach, double *sum)
{
	if (!is_known(*mass) || (mass->value > 0 && !is_known(*reach)))
		return false;
	*sum += mass->value > 0 ? mass->value * reach->value : 0;
	return true;
}

/* A moment below the weight moment of the stretched arm cannot hold it. */
static void check_tilting(struct validity *validity, int index)
{
	const struct arm *arm = &validity->cell->arm;
	const struct number *tilting = &arm->reaction[index].tilting;
	double sum = 0;
	if (!is_known(*tilting) || !first_moment(&arm->mass, &arm->reach, &sum) ||
	    !first_moment(&arm->payload, &arm->payload_reach, &sum))
		return;
	double moment = STANDARD_GRAVITY * sum;
	if (tilting->value >= moment * (1 - ROUNDING))
		return;
	validity_fault(validity, FAULT_CONTRADICTION, tilting->given.mark,
	               reaction_path(index, "tilting").text,
	               "write tilting_includes_weight: no, or check moment, masses and reach",
	               "%s is below the weight moment of the stretched arm, %s, which it is said "
	               "to include",
	               validity_show(validity, tilting->value, DIM_MOMENT).text,
	               validity_show(validity, moment, DIM_MOMENT).text);
}

static struct mark load_mark(const struct validity *validity, const struct extra_load *load)
{
	struct mark mark = validity_mark(load->force_vector.given.mark, load->force.given.mark);
	mark = validity_mark(mark, load->name.given.mark);
	return validity_mark(mark, validity->cell->loads.given.mark);
}

/* A size needs a heading, [x, y, z] has one; without either the load would push nowhere. */
static void check_extra(struct validity *validity, const struct extra_load *load, size_t index)
{
	bool size = is_known(load->force), vector = is_known(load->force_vector);
	bool heading = is_known(load->direction), any = is_known(load->any_direction);
	struct mark mark = load_mark(validity, load);
	struct validity_path path = validity_row("loads", index, "");
	if (size == vector)
		validity_fault(validity, size ? FAULT_CONTRADICTION : FAULT_MISSING_KEY, mark,
		               validity_row("loads", index, "force").text,
		               "write force as a size with a direction, or as [x, y, z]",
		               size ? "a load with two forces" : "a load without a force");
	else if (size && !heading && !any)
		validity_fault(validity, FAULT_MISSING_KEY, mark,
		               validity_row("loads", index, "direction").text,
		               "write direction: any, or a heading such as 90 deg",
		               "a force without a direction");
	else if ((vector && (heading || any)) || (heading && any))
		validity_fault(validity, FAULT_CONTRADICTION, mark, path.text,
		               "leave direction out: [x, y, z] has its own", "a load with two directions");
}

/* Centimetres or millimetres taken for metres: no arm stands on so high a pedestal [mm]. */
#define HIGHEST_MOUNT 20e3

static void check_mount(struct validity *validity)
{
	const struct point *mount = &validity->cell->arm.mount;
	if (is_known(*mount) && mount->at[2] > HIGHEST_MOUNT)
		validity_fault(validity, FAULT_RANGE, mount->given.mark, "arm.mount",
		               "check the unit", "an arm mounted %s above the floor",
		               validity_show(validity, mount->at[2], DIM_LENGTH).text);
}

void validity_loads(struct validity *validity)
{
	const struct cell *cell = validity->cell;
	const struct part *part = cell->parts.rows;
	const struct extra_load *load = cell->loads.rows;
	check_mount(validity);
	for (size_t i = 0; i < cell->parts.count; i++)
		check_part(validity, &part[i], i);
	for (int i = ARM_NORMAL; i < ARM_CASES; i++) {
		if (says_yes(&cell->arm.vertical_includes_weight))
			check_vertical(validity, i);
		if (says_yes(&cell->arm.tilting_includes_weight))
			check_tilting(validity, i);
	}
	for (size_t i = 0; i < cell->loads.count; i++)
		check_extra(validity, &load[i], i);
}
