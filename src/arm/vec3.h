/* Vectors and 3 x 3 matrices for the kernels of this folder, by value so that they live in
 * registers. Valid C++ as well: the comparison with a C++ library includes it. */
#ifndef VEC3_H
#define VEC3_H

struct vec3 { double x, y, z; };
struct mat3 { struct vec3 row[3]; };

static inline struct vec3 vec3_of(const double from[3])
{
	struct vec3 out = {from[0], from[1], from[2]};
	return out;
}

static inline struct vec3 vec3_add(struct vec3 a, struct vec3 b)
{
	struct vec3 out = {a.x + b.x, a.y + b.y, a.z + b.z};
	return out;
}

static inline struct vec3 vec3_scale(double by, struct vec3 a)
{
	struct vec3 out = {by * a.x, by * a.y, by * a.z};
	return out;
}

static inline double vec3_dot(struct vec3 a, struct vec3 b)
{
	return a.x * b.x + a.y * b.y + a.z * b.z;
}

static inline struct vec3 vec3_cross(struct vec3 a, struct vec3 b)
{
	struct vec3 out = {a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x};
	return out;
}

/* M v */
static inline struct vec3 mat3_times(const struct mat3 *m, struct vec3 v)
{
	struct vec3 out = {vec3_dot(m->row[0], v), vec3_dot(m->row[1], v), vec3_dot(m->row[2], v)};
	return out;
}

/* M^T v: for a rotation, the way back. */
static inline struct vec3 mat3_back(const struct mat3 *m, struct vec3 v)
{
	struct vec3 out = {m->row[0].x * v.x + m->row[1].x * v.y + m->row[2].x * v.z,
	                   m->row[0].y * v.x + m->row[1].y * v.y + m->row[2].y * v.z,
	                   m->row[0].z * v.x + m->row[1].z * v.y + m->row[2].z * v.z};
	return out;
}

/* A B */
static inline struct mat3 mat3_product(const struct mat3 *a, const struct mat3 *b)
{
	struct mat3 out = {
		{mat3_back(b, a->row[0]), mat3_back(b, a->row[1]), mat3_back(b, a->row[2])}};
	return out;
}

/* a b^T */
static inline struct mat3 mat3_outer(struct vec3 a, struct vec3 b)
{
	struct mat3 out = {{vec3_scale(a.x, b), vec3_scale(a.y, b), vec3_scale(a.z, b)}};
	return out;
}

static inline struct mat3 mat3_add(const struct mat3 *a, const struct mat3 *b)
{
	struct mat3 out = {{vec3_add(a->row[0], b->row[0]), vec3_add(a->row[1], b->row[1]),
	                    vec3_add(a->row[2], b->row[2])}};
	return out;
}

/* R Rz(angle) of that cosine and sine. */
static inline struct mat3 mat3_turn_z(const struct mat3 *r, double c, double s)
{
	struct mat3 out;
	for (int i = 0; i < 3; i++) {
		out.row[i].x = c * r->row[i].x + s * r->row[i].y;
		out.row[i].y = c * r->row[i].y - s * r->row[i].x;
		out.row[i].z = r->row[i].z;
	}
	return out;
}

/* R D R^T of a symmetric D. */
static inline struct mat3 mat3_congruent(const struct mat3 *r, const struct mat3 *d)
{
	struct mat3 half = mat3_product(r, d);
	struct mat3 out = {{mat3_times(r, half.row[0]), mat3_times(r, half.row[1]),
	                    mat3_times(r, half.row[2])}};
	return out;
}

#endif
