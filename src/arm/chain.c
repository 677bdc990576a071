/* Recursive Newton-Euler on a prepared chain: the wrench on the mounting face and the joint
 * torques.
 *
 * Source: Luh, Walker and Paul 1980; Craig ch. 6 (from memory), written with the matrix
 * U = [alpha]x + [omega]x [omega]x, by which every point r of a body accelerates: a(r) = a(origin)
 * + U r. Then force = m a + U S and moment about the origin = S x a + vee(U E), with S = sum of m r
 * and E = sum of m r r^T (own derivation: sum of m r x (U r)). Gravity is an acceleration of the
 * base. */
#include "chain.h"

#include <math.h>

/* How a link moves, in its own axes; its own joint included. */
struct motion {
	struct vec3 spin;        /* omega [rad/s] */
	struct vec3 rate;        /* alpha [rad/s2] */
	struct vec3 pull;        /* acceleration of the origin less gravity [m/s2] */
	struct mat3 change;      /* U [1/s2] */
};

/* U = [rate]x + [spin]x [spin]x */
static inline struct mat3 change_of(struct vec3 w, struct vec3 al)
{
	double xx = w.x * w.x, yy = w.y * w.y, zz = w.z * w.z;
	double xy = w.x * w.y, yz = w.y * w.z, xz = w.x * w.z;
	struct mat3 out = {{{-(yy + zz), xy - al.z, xz + al.y},
	                    {xy + al.z, -(xx + zz), yz - al.x},
	                    {xz - al.y, yz + al.x, -(xx + yy)}}};
	return out;
}

/* The vector of the skew part of U E, E symmetric: sum of m r x (U r). */
static inline struct vec3 skew_of_product(const struct mat3 *u, const struct mat3 *e)
{
	struct vec3 out = {vec3_dot(u->row[2], e->row[1]) - vec3_dot(u->row[1], e->row[2]),
	                   vec3_dot(u->row[0], e->row[2]) - vec3_dot(u->row[2], e->row[0]),
	                   vec3_dot(u->row[1], e->row[0]) - vec3_dot(u->row[0], e->row[1])};
	return out;
}

/* Where a link stands against the one before it. */
struct step { struct mat3 rotation; struct vec3 position; };

static inline void step_at(const struct prepared_link *link, double q, struct step *out)
{
	if (link->kind == JOINT_REVOLUTE) {
		out->rotation = mat3_turn_z(&link->rotation, cos(q), sin(q));
		out->position = link->position;
		return;
	}
	const struct mat3 *r = &link->rotation;
	struct vec3 axis = {r->row[0].z, r->row[1].z, r->row[2].z};
	out->rotation = *r;
	out->position = vec3_add(link->position, vec3_scale(q, axis));
}

/* Outward: the motion of a link from the one before it. */
static inline void move_link(enum joint_kind kind, const struct step *step, double speed,
                             double acceleration, const struct motion *before, struct motion *out)
{
	struct vec3 there = vec3_add(before->pull, mat3_times(&before->change, step->position));
	struct vec3 w = mat3_back(&step->rotation, before->spin);
	struct vec3 al = mat3_back(&step->rotation, before->rate);
	struct vec3 a = mat3_back(&step->rotation, there);
	if (kind == JOINT_REVOLUTE) {
		/* alpha += z q'' + omega x z q'; omega += z q' */
		al.x += w.y * speed;
		al.y -= w.x * speed;
		al.z += acceleration;
		w.z += speed;
	} else {
		/* a += z q'' + 2 omega x z q' */
		a.x += 2 * w.y * speed;
		a.y -= 2 * w.x * speed;
		a.z += acceleration;
	}
	out->spin = w;
	out->rate = al;
	out->pull = a;
	out->change = change_of(w, al);
}

/* What a link's own mass needs to move so, about its origin, in its own axes. */
static inline void load_of_link(const struct prepared_link *link, const struct motion *motion,
                                struct vec3 *force, struct vec3 *moment)
{
	*force = vec3_add(vec3_scale(link->mass, motion->pull),
	                  mat3_times(&motion->change, link->first));
	*moment = vec3_add(vec3_cross(link->first, motion->pull),
	                   skew_of_product(&motion->change, &link->second));
}

/* On the mounting face: the opposite of what the arm needs. */
static inline void put_opposite(struct vec3 force, struct vec3 moment, struct base_wrench *out)
{
	out->force[0] = -force.x;
	out->force[1] = -force.y;
	out->force[2] = -force.z;
	out->moment[0] = -moment.x;
	out->moment[1] = -moment.y;
	out->moment[2] = -moment.z;
}

void chain_wrench(const struct prepared_chain *chain, const double q[], const double speed[],
                  const double acceleration[], struct base_wrench *out, double torque[])
{
	struct step step[MAX_JOINTS_OF_ARM];
	struct vec3 force[MAX_JOINTS_OF_ARM], moment[MAX_JOINTS_OF_ARM];
	struct motion motion = {.pull = vec3_scale(-1, chain->gravity)};
	/* all sines first: a call in the loops below would drive everything out of the registers */
	for (size_t i = 0; i < chain->count; i++)
		step_at(&chain->link[i], q[i], &step[i]);
	for (size_t i = 0; i < chain->count; i++) {
		const struct motion before = motion;
		move_link(chain->link[i].kind, &step[i], speed[i], acceleration[i], &before,
		          &motion);
		load_of_link(&chain->link[i], &motion, &force[i], &moment[i]);
	}
	/* inward: each link carries what hangs on it */
	struct vec3 f = {0, 0, 0}, n = {0, 0, 0};
	for (size_t i = chain->count; i-- > 0;) {
		f = vec3_add(f, force[i]);
		n = vec3_add(n, moment[i]);
		if (torque)
			torque[i] = chain->link[i].kind == JOINT_REVOLUTE ? n.z : f.z;
		f = mat3_times(&step[i].rotation, f);
		n = vec3_add(mat3_times(&step[i].rotation, n), vec3_cross(step[i].position, f));
	}
	put_opposite(f, n, out);
}
