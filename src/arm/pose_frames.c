/* Forward kinematics of a prepared chain in mounting-face axes, with the moments of mass of each
 * link about the base origin (Craig ch. 3; moments: sum of m (R r + p)(R r + p)^T). */
#include "pose_frames.h"

#include <math.h>

/* The link's body about the base origin: sum of m (R r + p)(R r + p)^T. */
static void place_body(const struct prepared_link *link, struct placed_link *placed)
{
	struct vec3 turned = mat3_times(&placed->rotation, link->first);
	placed->first = vec3_add(turned, vec3_scale(link->mass, placed->origin));
	struct mat3 second = mat3_congruent(&placed->rotation, &link->second);
	struct mat3 left = mat3_outer(turned, placed->origin);
	struct mat3 right = mat3_outer(placed->origin, placed->first);
	second = mat3_add(&second, &left);
	placed->second = mat3_add(&second, &right);
}

static void place_link(const struct prepared_link *link, double q, const struct placed_link *before,
                       struct placed_link *placed)
{
	struct mat3 offset = link->rotation;
	struct vec3 position = link->position;
	if (before) {
		offset = mat3_product(&before->rotation, &link->rotation);
		position = vec3_add(before->origin, mat3_times(&before->rotation, position));
	}
	if (link->kind == JOINT_REVOLUTE) {
		placed->rotation = mat3_turn_z(&offset, cos(q), sin(q));
	} else {
		struct vec3 axis = {offset.row[0].z, offset.row[1].z, offset.row[2].z};
		placed->rotation = offset;
		position = vec3_add(position, vec3_scale(q, axis));
	}
	placed->origin = position;
	place_body(link, placed);
}

void pose_frames_place(const struct prepared_chain *chain, const double q[], size_t from,
                       struct pose_frames *frames)
{
	for (size_t i = from; i < chain->count; i++)
		place_link(&chain->link[i], q[i], i ? &frames->link[i - 1] : NULL,
		           &frames->link[i]);
}
