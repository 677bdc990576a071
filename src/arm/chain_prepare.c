/* All conventions of a chain into one form, once: a fixed offset, then the joint about or along z.
 *
 * Source: standard DH Rz(theta) Tz(d) Tx(a) Rx(alpha); modified DH Rx(alpha) Tx(a) Rz(theta) Tz(d)
 * (Craig ch. 3). Rz and Tz commute, so the joint may come last in the modified form. In the
 * standard form the link's frame lies behind the joint: the part behind it moves into the next
 * link's offset, and the body is described in the frame at the joint instead. */
#include "chain.h"

#include <math.h>

/* A place and a direction: x_before = rotation x + position. */
struct placement { struct mat3 rotation; struct vec3 position; };

static struct placement placement_none(void)
{
	struct placement out = {{{{1, 0, 0}, {0, 1, 0}, {0, 0, 1}}}, {0, 0, 0}};
	return out;
}

static struct placement placement_then(const struct placement *first, const struct placement *next)
{
	struct placement out = {
		mat3_product(&first->rotation, &next->rotation),
		vec3_add(mat3_times(&first->rotation, next->position), first->position)};
	return out;
}

/* Rz(theta) Tz(d) */
static struct placement screw_z(double theta, double d)
{
	double c = cos(theta), s = sin(theta);
	struct placement out = {{{{c, -s, 0}, {s, c, 0}, {0, 0, 1}}}, {0, 0, d}};
	return out;
}

/* Rx(alpha) Tx(a) */
static struct placement screw_x(double alpha, double a)
{
	double c = cos(alpha), s = sin(alpha);
	struct placement out = {{{{1, 0, 0}, {0, c, -s}, {0, s, c}}}, {a, 0, 0}};
	return out;
}

static struct placement frame_of(const struct link *link)
{
	const double *r = link->rotation;
	struct placement out = {{{vec3_of(r), vec3_of(r + 3), vec3_of(r + 6)}},
	                        vec3_of(link->position)};
	return out;
}

/* A rigid body by its mass and its first and second moments about an origin. */
struct body { double mass; struct vec3 first; struct mat3 second; };

/* Second moments about the centre are trace/2 - I (from I = sum m (r.r - r r^T)); about the origin
 * m c c^T comes to them. */
static struct body body_of(double mass, const double centre[3], const double i[6])
{
	double half = (i[0] + i[1] + i[2]) / 2;
	struct vec3 c = vec3_of(centre), first = vec3_scale(mass, c);
	struct mat3 own = {{{half - i[0], -i[3], -i[5]}, {-i[3], half - i[1], -i[4]},
	                    {-i[5], -i[4], half - i[2]}}};
	struct mat3 shift = mat3_outer(first, c);
	struct body out = {mass, first, mat3_add(&own, &shift)};
	return out;
}

static struct body body_sum(const struct body *a, const struct body *b)
{
	struct body out = {a->mass + b->mass, vec3_add(a->first, b->first),
	                   mat3_add(&a->second, &b->second)};
	return out;
}

/* The same body described in the axes before `at`: sum of m (R r + p)(R r + p)^T. */
static struct body body_placed(const struct body *body, const struct placement *at)
{
	struct vec3 turned = mat3_times(&at->rotation, body->first);
	struct vec3 first = vec3_add(turned, vec3_scale(body->mass, at->position));
	struct mat3 second = mat3_congruent(&at->rotation, &body->second);
	struct mat3 left = mat3_outer(turned, at->position);
	struct mat3 right = mat3_outer(at->position, first);
	second = mat3_add(&second, &left);
	struct body out = {body->mass, first, mat3_add(&second, &right)};
	return out;
}

/* Offset before the joint and, with standard DH, offset behind it, at joint position 0. */
static void split_link(enum chain_convention convention, const struct link *link,
                       struct placement *before, struct placement *behind)
{
	*before = *behind = placement_none();
	if (convention == CHAIN_FRAMES) {
		*before = frame_of(link);
		return;
	}
	struct placement screw = screw_z(link->theta, link->d);
	struct placement cross = screw_x(link->alpha, link->a);
	if (convention == CHAIN_MODIFIED_DH) {
		*before = placement_then(&cross, &screw);
		return;
	}
	*before = screw;
	*behind = cross;
}

/* The base frame in the caller's axes; all zero: the axes are those of the base. */
static struct placement mounting_of(const double r[9])
{
	struct placement out = placement_none();
	for (int i = 0; i < 9; i++)
		if (r[i] != 0)
			out.rotation = (struct mat3){{vec3_of(r), vec3_of(r + 3), vec3_of(r + 6)}};
	return out;
}

void chain_prepare(const struct chain *chain, struct prepared_chain *out)
{
	struct placement carried = mounting_of(chain->mounting);
	out->count = chain->count;
	out->gravity = vec3_of(chain->gravity);
	for (size_t i = 0; i < chain->count; i++) {
		const struct link *link = &chain->link[i];
		struct placement before, behind;
		split_link(chain->convention, link, &before, &behind);
		struct body body = body_of(link->mass, link->centre, link->inertia);
		if (i + 1 == chain->count) {
			struct body payload = body_of(chain->payload_mass, chain->payload_centre,
			                              chain->payload_inertia);
			body = body_sum(&body, &payload);
		}
		body = body_placed(&body, &behind);
		before = placement_then(&carried, &before);
		carried = behind;
		out->link[i] = (struct prepared_link){before.rotation, before.position, body.second,
		                                      body.first, body.mass, link->kind};
	}
}
