#include "contact.h"
#include <string.h>

struct corner { double x, y, w; };

/* A signed fan of triangles, fed corner by corner. The sums leave out the common factors, which the
 * end supplies: 1/2 for area over 1, 3 or 12. */
struct fan {
	struct corner first, last;
	int corners;
	struct contact sum;
};

/* The fan starts at a corner of the contact itself: products about a far origin would lose every
 * digit when the contact is a tiny corner of the base. */
static inline void add_triangle(struct contact *sum, const struct corner *a, const struct corner *b,
                                const struct corner *c)
{
	double twice = (b->x - a->x) * (c->y - a->y) - (b->y - a->y) * (c->x - a->x);
	double x = a->x + b->x + c->x, y = a->y + b->y + c->y, w = a->w + b->w + c->w;
	sum->force[0] += twice * w;
	sum->force[1] += twice * (a->w * a->x + b->w * b->x + c->w * c->x + w * x);
	sum->force[2] += twice * (a->w * a->y + b->w * b->y + c->w * c->y + w * y);
	sum->moments[OF_1] += twice;
	sum->moments[OF_X] += twice * x;
	sum->moments[OF_Y] += twice * y;
	sum->moments[OF_XX] += twice * (a->x * a->x + b->x * b->x + c->x * c->x + x * x);
	sum->moments[OF_XY] += twice * (a->x * a->y + b->x * b->y + c->x * c->y + x * y);
	sum->moments[OF_YY] += twice * (a->y * a->y + b->y * b->y + c->y * c->y + y * y);
}

static inline void feed(struct fan *fan, struct corner corner)
{
	if (fan->corners == 0)
		fan->first = corner;
	else if (fan->corners > 1)
		add_triangle(&fan->sum, &fan->first, &fan->last, &corner);
	fan->last = corner;
	fan->corners++;
}

/* The point of an edge at which w changes sign; w is zero there, not nearly zero. */
static inline struct corner cut(struct vec2 down, double w_down, struct vec2 up, double w_up)
{
	double share = w_down / (w_down - w_up);
	double x = down.x + share * (up.x - down.x), y = down.y + share * (up.y - down.y);
	return (struct corner){x, y, 0};
}

/* Clips the ring by w >= 0 and feeds what is left to the fan as it goes. On a ring that is not
 * convex the clip leaves doubled edges on the cut; they cancel in every signed sum. */
static void clip(const struct bed_ring *ring, const double w[], struct fan *fan)
{
	size_t before = ring->count - 1;
	for (size_t i = 0; i < ring->count; before = i++) {
		if (w[i] > 0) {
			if (w[before] < 0)
				feed(fan, cut(ring->at[i], w[i], ring->at[before], w[before]));
			feed(fan, (struct corner){ring->at[i].x, ring->at[i].y, w[i]});
		} else if (w[before] > 0) {
			feed(fan, cut(ring->at[before], w[before], ring->at[i], w[i]));
		} else if (w[i] == 0) {
			feed(fan, (struct corner){ring->at[i].x, ring->at[i].y, 0});
		}
	}
}

enum touch { NOTHING, PARTLY, WHOLLY };

static enum touch look(const struct bed_ring *ring, const double settle[3], double w[])
{
	size_t down = 0, up = 0;
	for (size_t i = 0; i < ring->count; i++) {
		w[i] = settle_at(settle, ring->at[i]);
		down += w[i] > 0;
		up += w[i] < 0;
	}
	return down == 0 ? NOTHING : up == 0 ? WHOLLY : PARTLY;
}

/* Contact of a whole ring is linear in the settlement. */
static void add_whole(const struct bed_ring *ring, const double settle[3], struct contact *sum)
{
	const double *m = ring->moments;
	sum->force[0] += settle[0] * m[OF_1] + settle[1] * m[OF_X] + settle[2] * m[OF_Y];
	sum->force[1] += settle[0] * m[OF_X] + settle[1] * m[OF_XX] + settle[2] * m[OF_XY];
	sum->force[2] += settle[0] * m[OF_Y] + settle[1] * m[OF_XY] + settle[2] * m[OF_YY];
	for (int k = 0; k < MOMENTS; k++)
		sum->moments[k] += m[k];
}

/* Supplies what the fan left out. */
static void add_fan(const struct fan *fan, struct contact *sum)
{
	static const double force_part[3] = {1.0 / 6, 1.0 / 24, 1.0 / 24};
	static const double moment_part[MOMENTS] = {1.0 / 2,  1.0 / 6,  1.0 / 6,
	                                            1.0 / 24, 1.0 / 24, 1.0 / 24};
	for (int k = 0; k < 3; k++)
		sum->force[k] += fan->sum.force[k] * force_part[k];
	for (int k = 0; k < MOMENTS; k++)
		sum->moments[k] += fan->sum.moments[k] * moment_part[k];
}

void contact_add(const struct bed_ring *ring, const double settle[3], struct contact *sum)
{
	double w[MAX_VERTICES];
	enum touch touch = look(ring, settle, w);
	if (touch == WHOLLY)
		add_whole(ring, settle, sum);
	if (touch != PARTLY)
		return;
	struct fan fan = {.corners = 0};
	clip(ring, w, &fan);
	add_fan(&fan, sum);
}

void contact_whole(struct bed_ring *ring)
{
	static const double everywhere_down[3] = {1, 0, 0};
	double w[MAX_VERTICES];
	struct fan fan = {.corners = 0};
	struct contact sum = {.force = {0}};
	look(ring, everywhere_down, w);
	clip(ring, w, &fan);
	add_fan(&fan, &sum);
	memcpy(ring->moments, sum.moments, sizeof ring->moments);
}
