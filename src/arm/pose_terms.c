/* The wrench at one pose as a polynomial of speeds and accelerations, by composite bodies in fixed
 * axes.
 *
 * Own derivation, compared by the tests with the recursion of chain.c. Let joint k move what lies
 * behind it with velocity v_k(r) = omega_k x r + u_k at each point r, at unit speed. With M, S, E
 * the mass and the first and second moments of all that lies behind joint k, about the base origin:
 *   P_k = sum m v_k = M u_k + omega_k x S
 *   D_k = sum m v_k r^T = [omega_k]x E + u_k S^T,   G_k = trace(D_k) - D_k
 * Joint k accelerating: force P_k, moment sum m r x v_k, the vector of the skew part of D_k.
 * Joint k turning: centripetal omega_k x v_k: force omega_k x P_k, moment
 *   sum m r x (omega x v) = sum m (omega (r.v) - v (r.omega)) = G_k omega.
 * Joints j < k together: joint k moves in a frame that joint j turns, Coriolis 2 omega_j x v_k: the
 * same with omega_j, twice. All of it acts on the arm; on the mounting face it is the opposite. */
#include "pose_frames.h"

/* --- what they weigh on the base ---------------------------------------------------------------
 */

/* Everything that hangs on one joint. */
struct composite { double mass; struct vec3 first; struct mat3 second; };

static inline void composite_add(struct composite *composite, double mass,
                                 const struct placed_link *placed)
{
	composite->mass += mass;
	composite->first = vec3_add(composite->first, placed->first);
	composite->second = mat3_add(&composite->second, &placed->second);
}

/* Spin and velocity at the base origin of unit speed of a joint: z and p x z, or 0 and z. */
static inline void joint_twist(enum joint_kind kind, const struct placed_link *placed,
                               struct vec3 *omega, struct vec3 *u)
{
	const struct mat3 *r = &placed->rotation;
	struct vec3 z = {r->row[0].z, r->row[1].z, r->row[2].z}, none = {0, 0, 0};
	*omega = kind == JOINT_REVOLUTE ? z : none;
	*u = kind == JOINT_REVOLUTE ? vec3_cross(placed->origin, z) : z;
}

/* P and D of a joint, see above. */
struct sway { struct vec3 p; struct mat3 d; };

static inline struct sway sway_of(const struct composite *behind, struct vec3 omega, struct vec3 u)
{
	const struct mat3 *e = &behind->second;
	struct vec3 p = vec3_add(vec3_scale(behind->mass, u), vec3_cross(omega, behind->first));
	struct mat3 lever = mat3_outer(u, behind->first);
	/* [omega]x E, row by row */
	struct mat3 turned = {{
		vec3_add(vec3_scale(omega.y, e->row[2]), vec3_scale(-omega.z, e->row[1])),
		vec3_add(vec3_scale(omega.z, e->row[0]), vec3_scale(-omega.x, e->row[2])),
		vec3_add(vec3_scale(omega.x, e->row[1]), vec3_scale(-omega.y, e->row[0]))}};
	struct sway out = {p, mat3_add(&turned, &lever)};
	return out;
}

static inline void store(double factor, struct vec3 force, struct vec3 moment,
                         struct base_wrench *out)
{
	out->force[0] = factor * force.x;
	out->force[1] = factor * force.y;
	out->force[2] = factor * force.z;
	out->moment[0] = factor * moment.x;
	out->moment[1] = factor * moment.y;
	out->moment[2] = factor * moment.z;
}

/* Wrench on the base of a sway whose points accelerate by factor x omega x v. */
static inline void turning_wrench(double factor, const struct sway *sway, struct vec3 omega,
                                  struct base_wrench *out)
{
	const struct mat3 *d = &sway->d;
	double trace = d->row[0].x + d->row[1].y + d->row[2].z;
	struct vec3 moment = vec3_add(vec3_scale(trace, omega),
	                              vec3_scale(-1, mat3_times(d, omega)));
	store(-factor, vec3_cross(omega, sway->p), moment, out);
}

/* The terms of one joint: its own, and those with every joint before it. */
static void joint_terms(const struct sway *sway, const struct vec3 omega[], size_t k,
                        struct pose_terms *out)
{
	const struct mat3 *d = &sway->d;
	struct vec3 skew = {d->row[2].y - d->row[1].z, d->row[0].z - d->row[2].x,
	                    d->row[1].x - d->row[0].y};
	store(-1, sway->p, skew, &out->a[k]);
	turning_wrench(1, sway, omega[k], &out->b[k][k]);
	for (size_t j = 0; j < k; j++)
		turning_wrench(2, sway, omega[j], &out->b[j][k]);
}

void pose_frames_terms(const struct prepared_chain *chain, const struct pose_frames *frames,
                       struct pose_terms *out)
{
	struct vec3 omega[MAX_JOINTS_OF_ARM], u[MAX_JOINTS_OF_ARM];
	struct composite behind = {0};
	for (size_t i = 0; i < chain->count; i++)
		joint_twist(chain->link[i].kind, &frames->link[i], &omega[i], &u[i]);
	out->count = chain->count;
	for (size_t k = chain->count; k-- > 0;) {
		composite_add(&behind, chain->link[k].mass, &frames->link[k]);
		struct sway sway = sway_of(&behind, omega[k], u[k]);
		joint_terms(&sway, omega, k, out);
	}
	struct vec3 weight = vec3_scale(behind.mass, chain->gravity);
	store(1, weight, vec3_cross(behind.first, chain->gravity), &out->g);
}

void chain_terms(const struct prepared_chain *chain, const double q[], struct pose_terms *out)
{
	struct pose_frames frames;
	pose_frames_place(chain, q, 0, &frames);
	pose_frames_terms(chain, &frames, out);
}

/* --- and back ----------------------------------------------------------------------------------
 */

static void add_times(double factor, const struct base_wrench *term, struct base_wrench *sum)
{
	for (int i = 0; i < 3; i++) {
		sum->force[i] += factor * term->force[i];
		sum->moment[i] += factor * term->moment[i];
	}
}

void terms_wrench(const struct pose_terms *terms, const double speed[], const double acceleration[],
                  struct base_wrench *out)
{
	*out = terms->g;
	for (size_t k = 0; k < terms->count; k++) {
		add_times(acceleration[k], &terms->a[k], out);
		for (size_t j = 0; j <= k; j++)
			add_times(speed[j] * speed[k], &terms->b[j][k], out);
	}
}
