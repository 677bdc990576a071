/* What the pieces of cell_validate share. */
#ifndef VALIDITY_PARTS_H
#define VALIDITY_PARTS_H

#include "validity.h"

struct validity {
	const struct cell *cell;
	const struct cell *of;         /* the cell of which this one is a setup, or NULL */
	struct arena *scratch;
	struct diagnostics *to;
};

/* validity_geometry.c, validity_anchors.c, validity_loads.c, validity_product.c,
 * validity_strength.c, validity_arm.c, validity_motion.c, validity_earthquake.c */
void validity_base(struct validity *validity);
void validity_slab(struct validity *validity);
void validity_casters(struct validity *validity);    /* and the cell's top */
void validity_anchors(struct validity *validity);
void validity_loads(struct validity *validity);
void validity_product(struct validity *validity);
void validity_strength(struct validity *validity);   /* code design values, bars in the slab */
void validity_arm(struct validity *validity);        /* mounting, chain, masses, history */
void validity_motion(struct validity *validity);     /* motion, working cycle, swing */
void validity_earthquake(struct validity *validity);

void validity_fault(struct validity *validity, enum fault fault, struct mark mark, const char *path,
                    const char *hint, const char *format, ...)
	__attribute__((format(printf, 6, 7)));
/* A force of an anchor that no anchor is made for: a point for thousands. */
void validity_force(struct validity *validity, const struct number *force, const char *path);
/* The first of the two that stands in the file. */
struct mark validity_mark(struct mark first, struct mark other);

struct shown { char text[40]; };
/* A value as the file's readers want it printed. */
struct shown validity_show(const struct validity *validity, double value, enum dimension dimension);
/* A value in the unit in which it was written, so that it is found again in the file. */
struct shown validity_show_number(const struct validity *validity, const struct number *number,
                                  enum dimension dimension);
struct validity_path { char text[DIAGNOSTIC_PATH]; };
/* "cell.parts[3].mass": rows count from one */
struct validity_path validity_row(const char *list, size_t index, const char *key);

/* Three vertices or more, some area, no edge that meets another; reports what is wrong. */
bool validity_ring(struct validity *validity, const struct vec2 *points, size_t count,
                   struct mark mark, const char *path);

#endif
