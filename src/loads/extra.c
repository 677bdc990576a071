#include "extra.h"

#include "../cell/bearing_hull.h"

#include <math.h>

static void anchor_centre(const struct cell *cell, double centre[2])
{
	centre[0] = centre[1] = 0;
	for (size_t i = 0; i < cell->anchors.count; i++) {
		centre[0] += cell->anchors.at[i].x / (double)cell->anchors.count;
		centre[1] += cell->anchors.at[i].y / (double)cell->anchors.count;
	}
}

static void components(const struct extra_load *load, double moving, double force[3])
{
	if (is_known(load->force_vector)) {
		for (int k = 0; k < 3; k++)
			force[k] = moving * load->force_vector.at[k];
		return;
	}
	struct vec2 toward = plane_heading(load->direction.value);
	force[0] = moving * load->force.value * toward.x;
	force[1] = moving * load->force.value * toward.y;
	force[2] = 0;
}

/* The action of a force in a fixed direction at (x, y), its torsion about the shear centre
 * replaced. */
static struct extra_action fixed_action(const double force[3], double height, const double at[2],
                                        const double centre[2], double torsion_at_centre)
{
	struct extra_action out = {.down = -force[2]};
	out.fixed[0] = -force[2] * at[0] + force[0] * height;
	out.fixed[1] = -force[2] * at[1] + force[1] * height;
	out.shear[0] = force[0];
	out.shear[1] = force[1];
	out.shear[2] = centre[0] * force[1] - centre[1] * force[0] + torsion_at_centre;
	return out;
}

static double torsion_about(const double force[3], const double at[2], const double centre[2])
{
	return (at[0] - centre[0]) * force[1] - (at[1] - centre[1]) * force[0];
}

static bool fixed_actions(const struct cell *cell, const struct extra_load *load, double moving,
                          struct arena *arena, struct extra_action **out, size_t *count)
{
	double force[3], centre[2], largest = 0;
	double height = is_known(load->at_height) ? load->at_height.value : 0;
	components(load, moving, force);
	anchor_centre(cell, centre);
	if (is_known(load->at)) {
		*out = arena_take(arena, 1, sizeof **out);
		*count = 1;
		if (*out)
			**out = fixed_action(force, height, load->at.at, centre,
			                     torsion_about(force, load->at.at, centre));
		return *out != NULL;
	}
	size_t corners = 0;
	struct vec2 *hull = bearing_hull(cell, arena, &corners);
	if (!hull)
		return false;
	for (size_t i = 0; i < corners; i++)
		largest = fmax(largest, fabs(torsion_about(force, (double[2]){hull[i].x, hull[i].y},
		                                           centre)));
	/* a horizontal force moves the tilt by its height alone, so one corner serves for all */
	size_t places = force[2] != 0 && corners > 0 ? corners : 1;
	*out = arena_take(arena, 2 * places, sizeof **out);
	if (!*out)
		return false;
	for (size_t i = 0; i < places; i++)
		for (int sign = -1; sign <= 1; sign += 2) {
			double at[2] = {corners ? hull[i].x : 0, corners ? hull[i].y : 0};
			(*out)[(*count)++] = fixed_action(force, height, at, centre,
			                                  sign * largest);
		}
	return true;
}

bool extra_actions(const struct cell *cell, const struct extra_load *load, double moving,
                   struct arena *arena, struct extra_action **out, size_t *count)
{
	*count = 0;
	if (is_known(load->force_vector) || !is_known(load->any_direction))
		return fixed_actions(cell, load, moving, arena, out, count);
	*out = arena_take(arena, 1, sizeof **out);
	if (!*out)
		return false;
	double force = moving * load->force.value;
	bool placed = is_known(load->at);
	(*out)->turning = force * (is_known(load->at_height) ? load->at_height.value : 0);
	(*out)->turns = true;
	(*out)->force = (struct turning_force){
		.force = force,
		.at = {placed ? load->at.at[0] : 0, placed ? load->at.at[1] : 0},
		.at_hull = !placed};
	*count = 1;
	return true;
}

void extra_trace(const struct extra_load *load, double moving, const char *source,
                 struct trace *trace)
{
	trace_step(trace, "k_moving", "", moving, DIM_FACTOR, source,
	           "factor on the moving part");
	if (!is_known(load->force_vector)) {
		trace_input(trace, "F_further", &load->force, DIM_FORCE, "further load");
		trace_input(trace, "z_further", &load->at_height, DIM_LENGTH,
		            "height at which it acts");
	}
}
