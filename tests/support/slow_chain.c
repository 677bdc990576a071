#include "slow_chain.h"

#include <math.h>
#include <string.h>

/* --- frames, as 4 x 4 matrices -------------------------------------------------------------------
 */

struct frame { double m[4][4]; };

static struct frame identity(void)
{
	struct frame out = {{{1, 0, 0, 0}, {0, 1, 0, 0}, {0, 0, 1, 0}, {0, 0, 0, 1}}};
	return out;
}

static struct frame times(struct frame a, struct frame b)
{
	struct frame out = {0};
	for (int i = 0; i < 4; i++)
		for (int j = 0; j < 4; j++)
			for (int k = 0; k < 4; k++)
				out.m[i][j] += a.m[i][k] * b.m[k][j];
	return out;
}

static struct frame turn_x(double angle)
{
	struct frame out = identity();
	out.m[1][1] = out.m[2][2] = cos(angle);
	out.m[2][1] = sin(angle);
	out.m[1][2] = -sin(angle);
	return out;
}

static struct frame turn_z(double angle)
{
	struct frame out = identity();
	out.m[0][0] = out.m[1][1] = cos(angle);
	out.m[1][0] = sin(angle);
	out.m[0][1] = -sin(angle);
	return out;
}

static struct frame move(double x, double y, double z)
{
	struct frame out = identity();
	out.m[0][3] = x;
	out.m[1][3] = y;
	out.m[2][3] = z;
	return out;
}

static struct frame stated(const struct link *link)
{
	struct frame out = move(link->position[0], link->position[1], link->position[2]);
	for (int i = 0; i < 9; i++)
		out.m[i / 3][i % 3] = link->rotation[i];
	return out;
}

/* The frame of a link against the one before, joint at q; *axis is the frame whose z the joint has.
 */
static struct frame step(enum chain_convention convention, const struct link *link, double q,
                         struct frame before, struct frame *axis)
{
	double turn = link->kind == JOINT_REVOLUTE ? q : 0,
	       slide = link->kind == JOINT_PRISMATIC ? q : 0;
	struct frame after;
	switch (convention) {
	case CHAIN_STANDARD_DH:
		*axis = before;
		after = times(before, turn_z(link->theta + turn));
		after = times(after, move(0, 0, link->d + slide));
		return times(times(after, move(link->a, 0, 0)), turn_x(link->alpha));
	case CHAIN_MODIFIED_DH:
		after = times(times(before, turn_x(link->alpha)), move(link->a, 0, 0));
		after = times(times(after, turn_z(link->theta + turn)),
		              move(0, 0, link->d + slide));
		*axis = after;
		return after;
	default:
		after = times(times(before, stated(link)), times(turn_z(turn), move(0, 0, slide)));
		*axis = after;
		return after;
	}
}

/* --- bodies --------------------------------------------------------------------------------------
 */

static void cross(const double a[3], const double b[3], double out[3])
{
	out[0] = a[1] * b[2] - a[2] * b[1];
	out[1] = a[2] * b[0] - a[0] * b[2];
	out[2] = a[0] * b[1] - a[1] * b[0];
}

static double dot(const double a[3], const double b[3])
{
	return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

/* What the joints up to `count` give a point and a body: velocity and spin. */
static void velocity(const struct chain *chain, const struct frame axis[], size_t count,
                     const double speed[], const double at[3], double v[3], double w[3])
{
	memset(v, 0, 3 * sizeof *v);
	memset(w, 0, 3 * sizeof *w);
	for (size_t j = 0; j < count; j++) {
		double z[3], arm[3], add[3];
		for (int i = 0; i < 3; i++) {
			z[i] = axis[j].m[i][2];
			arm[i] = at[i] - axis[j].m[i][3];
		}
		cross(z, arm, add);
		bool revolute = chain->link[j].kind == JOINT_REVOLUTE;
		for (int i = 0; i < 3; i++) {
			v[i] += speed[j] * (revolute ? add[i] : z[i]);
			w[i] += revolute ? speed[j] * z[i] : 0;
		}
	}
}

/* R I R^T w */
static void own_spin(const struct frame *frame, const double i6[6], const double w[3],
                     double out[3])
{
	const double tensor[3][3] = {
		{i6[0], i6[3], i6[5]}, {i6[3], i6[1], i6[4]}, {i6[5], i6[4], i6[2]}};
	double local[3] = {0}, turned[3] = {0};
	memset(out, 0, 3 * sizeof *out);
	for (int i = 0; i < 3; i++)
		for (int j = 0; j < 3; j++)
			local[i] += frame->m[j][i] * w[j];
	for (int i = 0; i < 3; i++)
		turned[i] = dot(tensor[i], local);
	for (int i = 0; i < 3; i++)
		for (int j = 0; j < 3; j++)
			out[i] += frame->m[i][j] * turned[j];
}

struct moving_body { const struct frame *frame; double mass; const double *centre, *inertia; };

static void add_body(const struct chain *chain, const struct frame axis[], size_t count,
                     const double speed[], const struct moving_body *body, struct slow_state *out)
{
	double at[3], v[3], w[3], spin[3], lever[3], heavy[3], m = body->mass;
	for (int i = 0; i < 3; i++)
		at[i] = body->frame->m[i][3] + dot(body->frame->m[i], body->centre);
	velocity(chain, axis, count, speed, at, v, w);
	own_spin(body->frame, body->inertia, w, spin);
	cross(at, v, lever);
	cross(at, chain->gravity, heavy);
	for (int i = 0; i < 3; i++) {
		out->momentum[i] += m * v[i];
		out->spin[i] += m * lever[i] + spin[i];
		out->weight[i] += m * chain->gravity[i];
		out->turning[i] += m * heavy[i];
	}
	out->kinetic += (m * dot(v, v) + dot(w, spin)) / 2;
	out->potential -= m * dot(at, chain->gravity);
}

void slow_state(const struct chain *chain, const double q[], const double speed[],
                struct slow_state *out)
{
	struct frame frame = identity(), axis[MAX_JOINTS_OF_ARM] = {{{{0}}}};
	memset(out, 0, sizeof *out);
	for (size_t i = 0; i < chain->count; i++) {
		const struct link *link = &chain->link[i];
		frame = step(chain->convention, link, q[i], frame, &axis[i]);
		struct moving_body body = {&frame, link->mass, link->centre, link->inertia};
		add_body(chain, axis, i + 1, speed, &body, out);
	}
	struct moving_body payload = {&frame, chain->payload_mass, chain->payload_centre,
	                              chain->payload_inertia};
	add_body(chain, axis, chain->count, speed, &payload, out);
}

/* --- the wrench ----------------------------------------------------------------------------------
 */

static void state_at(const struct chain *chain, const double q[], const double speed[],
                     const double acceleration[], double t, struct slow_state *out)
{
	double there[MAX_JOINTS_OF_ARM], fast[MAX_JOINTS_OF_ARM];
	for (size_t i = 0; i < chain->count; i++) {
		there[i] = q[i] + t * speed[i] + t * t / 2 * acceleration[i];
		fast[i] = speed[i] + t * acceleration[i];
	}
	slow_state(chain, there, fast, out);
}

void slow_wrench(const struct chain *chain, const double q[], const double speed[],
                 const double acceleration[], double h, struct base_wrench *out, double size[2])
{
	/* f' = (f(-2h) - 8 f(-h) + 8 f(h) - f(2h)) / 12 h */
	static const double weight[4] = {1, -8, 8, -1}, at[4] = {-2, -1, 1, 2};
	struct slow_state now, near;
	slow_state(chain, q, speed, &now);
	double force[3], moment[3];
	memcpy(force, now.weight, sizeof force);
	memcpy(moment, now.turning, sizeof moment);
	for (int k = 0; k < 4; k++) {
		state_at(chain, q, speed, acceleration, at[k] * h, &near);
		for (int i = 0; i < 3; i++) {
			force[i] -= weight[k] * near.momentum[i] / (12 * h);
			moment[i] -= weight[k] * near.spin[i] / (12 * h);
		}
	}
	memcpy(out->force, force, sizeof force);
	memcpy(out->moment, moment, sizeof moment);
	size[0] = sqrt(dot(force, force)) + sqrt(dot(now.weight, now.weight)) +
	          sqrt(dot(now.momentum, now.momentum));
	size[1] = sqrt(dot(moment, moment)) + sqrt(dot(now.turning, now.turning)) +
	          sqrt(dot(now.spin, now.spin));
}
