/* Weights of the parts, and small facts about the sources of loads that building and tracing share.
 */
#ifndef WEIGHTS_H
#define WEIGHTS_H

#include "../cell/cell.h"
#include "../cell/load_model.h"
#include "../cell/load_case.h"

/* load_case.source: which loads a case comes from: the data sheet's cases, then the further loads,
 * then what the arm's own motion gives (arm/arm_loads.h) and the rare events */
enum { SOURCE_EMERGENCY_STOP, SOURCE_NORMAL, SOURCE_REST, FIRST_EXTRA };

/* Sum of weights [N] and first moments [N mm]; half: how far the boxes can move the moments to
 * either side. */
struct weights { double down, moment[2], half[2]; };

/* With the factor of a method's run. */
struct weights parts_weights(const struct cell *cell, enum method method, enum weight_run run);
/* As a case takes them (factors.h). */
struct weights case_weights(const struct cell *cell, const struct load_case *c);
/* Mass that counts in a run: least_mass where the weight helps; 0 when not known. [kg] */
double part_mass(const struct part *part, enum weight_run run);
/* Which way the boxed parts are pushed in x and y: -1, 0, +1. */
void corner_signs(int corner, double sign[2]);

/* The case of the data sheet that the arm is in while a further load acts; without its values the
 * arm rests, which is the most favourable. */
enum arm_case case_with_load(const struct cell *cell, enum arm_case wanted);

#endif
