/* What the mechanics find wrong with the arm as the file states it, with the line. */
#include "arm_of_cell.h"

#include <string.h>

/* Whose faults are told: the file's own cell (name NULL) or that of a setup. */
struct judged {
	const struct cell *cell;
	const char *setup;
	struct arena *scratch;
	struct diagnostics *to;
};

static bool is_told(const struct diagnostics *list, enum fault fault, struct mark mark,
                    const char *path)
{
	for (size_t i = 0; i < list->count; i++) {
		const struct diagnostic *one = &list->list[i];
		if (one->fault == fault && one->mark.file == mark.file &&
		    one->mark.line == mark.line && one->mark.column == mark.column &&
		    strcmp(one->path, path) == 0)
			return true;
	}
	return false;
}

static void tell(const struct judged *judged, enum fault fault, struct mark mark, const char *path,
                 const char *hint, const char *message)
{
	/* without memory for the words the caller finds the arena failed */
	if (!path || !message || is_told(judged->to, fault, mark, path))
		return;
	if (judged->setup)
		diagnose(judged->to, ERROR, fault, mark, path, hint, "%s (setup '%.40s')", message,
		         judged->setup);
	else
		diagnose(judged->to, ERROR, fault, mark, path, hint, "%s", message);
}

/* The first that stands in the file: a row of a list has no mark of its own. */
static struct mark first_mark(const struct given *const list[], size_t count, struct mark otherwise)
{
	for (size_t i = 0; i < count; i++)
		if (list[i]->mark.line > 0)
			return list[i]->mark;
	return otherwise;
}

/* --- bodies --------------------------------------------------------------------------------- */

static bool inertia_known(const struct inertia_given *inertia)
{
	return is_known(inertia->xx) && is_known(inertia->yy) && is_known(inertia->zz);
}

static struct mark inertia_mark(const struct inertia_given *i, struct mark otherwise)
{
	const struct given *const list[] = {&i->xx.given, &i->yy.given, &i->zz.given,
	                                    &i->xy.given, &i->yz.given, &i->xz.given};
	return first_mark(list, sizeof list / sizeof *list, otherwise);
}

static struct mark joint_mark(const struct chain_joint *joint, struct mark list)
{
	const struct given *const keys[] = {
		&joint->mass.given,  &joint->name.given,     &joint->kind.given,  &joint->a.given,
		&joint->alpha.given, &joint->position.given, &joint->centre.given};
	return first_mark(keys, sizeof keys / sizeof *keys, list);
}

/* Values of a file are finite, masses are not negative and frames are rotations: what is left for a
 * body to be wrong in is its inertia. */
static const char inertia_hint[] =
	"write the tensor about the centre of mass in the link's axes, kg m2: each principal "
	"moment "
	"is at most the sum of the other two; a product is an entry of the tensor, - sum of m x y";

/* A chain of this one link, so that every faulty link is told and not the first alone. */
static void judge_link(const struct judged *judged, const struct chain *chain, size_t index)
{
	const struct arm_chain *given = &judged->cell->arm.chain;
	const struct chain_joint *joint = (const struct chain_joint *)given->joints.rows + index;
	struct chain alone = {.convention = chain->convention, .count = 1};
	size_t link;
	alone.link[0] = chain->link[index];
	const char *fault = chain_fault(&alone, &link);
	if (!fault || !inertia_known(&joint->inertia))
		return;
	struct mark mark = inertia_mark(&joint->inertia,
	                                joint_mark(joint, given->joints.given.mark));
	bool named = joint->name.value && joint->name.value[0];
	tell(judged, FAULT_CONTRADICTION, mark,
	     arena_format(judged->scratch, "arm.chain.joints[%zu].inertia", index + 1),
	     inertia_hint,
	     arena_format(judged->scratch, "the link of joint %zu%s%.40s%s cannot be: %s",
	                  index + 1, named ? " '" : "", named ? joint->name.value : "",
	                  named ? "'" : "", fault));
}

static void judge_payload(const struct judged *judged, const struct chain *chain)
{
	const struct inertia_given *inertia = &judged->cell->arm.chain.payload_inertia;
	struct chain alone = *chain;
	size_t link;
	/* a first link that surely can be, so that the payload alone is judged */
	alone.count = 1;
	alone.link[0] = (struct link){.rotation = {1, 0, 0, 0, 1, 0, 0, 0, 1}};
	const char *fault = chain_fault(&alone, &link);
	if (!fault || !inertia_known(inertia))
		return;
	tell(judged, FAULT_CONTRADICTION,
	     inertia_mark(inertia, judged->cell->arm.chain.payload_mass.given.mark),
	     "arm.chain.payload.inertia", inertia_hint,
	     arena_format(judged->scratch, "the payload cannot be: %s", fault));
}

static void judge_chain(const struct judged *judged)
{
	const struct arm_chain *given = &judged->cell->arm.chain;
	struct chain chain;
	if (given->joints.count == 0)
		return;
	if (!is_known(given->convention))
		tell(judged, FAULT_MISSING_KEY,
		     first_mark((const struct given *const[]){&given->convention.given}, 1,
		                given->joints.given.mark),
		     "arm.chain.convention",
		     "write convention: standard_dh, modified_dh or frames, whichever the arm's "
		     "table "
		     "is made by; the two of Denavit-Hartenberg give other arms",
		     "a chain without its convention");
	arm_chain_of(judged->cell, true, &chain);
	for (size_t i = 0; i < chain.count; i++)
		judge_link(judged, &chain, i);
	judge_payload(judged, &chain);
}

/* --- the lumped arm ------------------------------------------------------------------------- */

static const struct given *mass_culprit(const struct arm_swing *swing)
{
	if (is_known(swing->moving_mass) && swing->moving_mass.value == 0)
		return &swing->moving_mass.given;
	if (is_known(swing->radius) && swing->radius.value == 0)
		return &swing->radius.given;
	if (is_known(swing->payload_radius) && swing->payload_radius.value == 0)
		return &swing->payload_radius.given;
	return NULL;
}

static const struct given *speed_culprit(const struct arm_swing *swing, enum swing_axes axes)
{
	const struct number *vertical = &swing->vertical.speed, *level = &swing->horizontal.speed;
	if (axes != SWING_ABOUT_HORIZONTAL && !(vertical->value > 0))
		return &vertical->given;
	return axes != SWING_ABOUT_VERTICAL && !(level->value > 0) ? &level->given : NULL;
}

/* The key that swing_fault is about, in its order: masses and radii, speeds, the peak factor. */
static struct mark swing_mark(const struct arm_swing *swing, enum swing_axes axes)
{
	const struct given *mass = mass_culprit(swing), *speed = speed_culprit(swing, axes);
	const struct given *const list[] = {mass    ? mass
	                                    : speed ? speed
	                                            : &swing->peak_factor.given,
	                                    &swing->axes.given, &swing->reach.given};
	return first_mark(list, sizeof list / sizeof *list, (struct mark){0});
}

static void judge_swing(const struct judged *judged)
{
	const struct arm_swing *given = &judged->cell->arm.swing;
	struct swing swing;
	enum swing_axes axes;
	arm_swing_of(judged->cell, &swing, &axes);
	for (int k = ARM_NORMAL; k <= ARM_EMERGENCY_STOP; k++) {
		const char *fault;
		if (!arm_way_covers(judged->cell, WAY_SWING, (enum arm_case)k))
			continue;
		fault = swing_fault(&swing, axes, (enum arm_case)k);
		if (fault)
			tell(judged, FAULT_CONTRADICTION, swing_mark(given, axes), "arm.swing",
			     "see standfast explain arm.swing for the keys and what each stands "
			     "for",
			     fault);
	}
}

static void judge(const struct judged *judged)
{
	judge_chain(judged);
	judge_swing(judged);
}

void arm_faults(const struct cell *cell, struct arena *scratch, struct diagnostics *to)
{
	const struct setup *setup = cell->setups.rows;
	judge(&(struct judged){cell, NULL, scratch, to});
	for (size_t i = 0; i < cell->setups.count; i++)
		if (setup[i].cell)
			judge(&(struct judged){setup[i].cell, setup[i].name.value, scratch, to});
}
