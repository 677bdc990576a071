/* Accidental actions on a cell: impact, pushes, leaning people, as tabled by standards.
 *
 * Source and standing of every row beside it in the table; most are from memory, and where two
 * sources differ the row says so. The same rows stand in refdata/accidental.csv, and a test
 * compares the two. Range: figures to be read beside the cell, not verdicts. A fork-truck force
 * breaks any usual cell anchor: its place is a protector or bollard, and the cell is checked for
 * what the protector lets through (row advice; common practice, no source).
 * Identity: a push is never above its cap. Units: those of the row, N, N/mm, N mm or rad; heights
 * in mm. Errors: none; an unknown id gives NULL. */
#ifndef ACCIDENTAL_H
#define ACCIDENTAL_H

#include "../cell/trace.h"
#include "source_mark.h"

enum accidental_kind {
	ACCIDENT_FORK_TRUCK,
	ACCIDENT_VEHICLE,
	ACCIDENT_RACK,
	ACCIDENT_PUSH,
	ACCIDENT_LEANING,
	ACCIDENT_TILT
};
enum accidental_unit { UNIT_FORCE, UNIT_LINE_LOAD, UNIT_ENERGY, UNIT_ANGLE };

struct accidental_load {
	const char *id;
	enum accidental_kind kind;
	const char *title;
	enum accidental_unit unit;   /* N, N/mm, N mm, rad */
	double low, high;            /* size, equal where one is tabled; of a push: its cap */
	double across;               /* at right angles to the travel or the aisle; 0: none [N] */
	double share;                /* of the weight that a push takes; 0: none [-] */
	double from_height, to_height; /* where it acts above the floor; 0, 0: not said [mm] */
	const char *source;
	enum source_mark mark;
	const char *doubt, *advice;  /* "" where there is none */
};

const struct accidental_load *accidental_loads(size_t *count);
const struct accidental_load *accidental_load(const char *id);

/* min(share of the weight, cap) of a push row [N]; weight >= 0 [N]. */
double accidental_push(const struct accidental_load *row, double weight, struct trace *trace);
/* Largest line load of a leaning row on a width [mm]: a force [N]. */
double accidental_leaning(const struct accidental_load *row, double width, struct trace *trace);
/* F = 5 W, EN 1991-1-7 4.4 (from memory); W of the loaded truck [N]. */
double fork_truck_force(double truck_weight, struct trace *trace);
/* F = v sqrt(k m), EN 1991-1-7 C.1 (from memory): hard impact of a mass [kg] with a speed [mm/s] on
 * or with a stiffness [N/mm]; all of it elastic, no rebound counted [N]. */
double hard_impact_force(double speed, double stiffness, double mass, struct trace *trace);

#endif
