/* The short texts from which pages are put together: numbers with units, verdicts, anchors, where
 * it occurs. */
#ifndef PHRASES_H
#define PHRASES_H

#include "../result.h"
#include "writer.h"

/* A short text by value: no memory is asked for. */
struct phrase { char text[96]; };

/* In the display unit of the system: "12.2 kN", "25 %", "0.6". Given digits are significant
 * ones. */
struct phrase phrase_quantity(double value, enum dimension dimension, enum unit_system system,
                              int digits);
/* The bare number in that unit, with a fixed number of decimals, for columns: "-450.0". */
struct phrase phrase_fixed(double value, enum dimension dimension, enum unit_system system,
                           int decimals);
/* The unit's name, "" for pure numbers. */
const char *unit_name(enum dimension dimension, enum unit_system system);
/* Demand and capacity with four significant digits, so that a ratio of two decimals agrees with
 * them; more where they would read alike and are not. */
struct phrase_pair { struct phrase demand, capacity; };
struct phrase_pair phrase_pair(const struct finding *finding, enum unit_system system);
/* Two decimals, rounded up: 1.001 gives 1.01. Above 1 never reads 1.00; up to 1 never reads above
 * it. "-" where there is none, or where a check fails for another reason than its ratio. */
struct phrase phrase_ratio(const struct finding *finding);
struct phrase phrase_ratio_up(double ratio);
struct phrase phrase_heading(double heading);       /* "135 deg", 0 to 360, cell axes */
struct phrase phrase_count(size_t count, const char *one, const char *many);

const char *verdict_word(enum verdict verdict);     /* "holds" */
const char *verdict_capitals(enum verdict verdict); /* "HOLDS" */
enum style verdict_style(enum verdict verdict);

/* Flow "A1, A3" for a mask of anchors; nothing for an empty one. */
void flow_anchors(struct writer *writer, uint64_t mask);
/* Flow "emergency stop, pushing toward 135 deg (cell axes)"; brief: "emergency stop toward 135
 * deg". */
void flow_case(struct writer *writer, const struct occurrence *at, bool brief);
/* Flow the setup's name, "setup 2" where it has none; nothing where the file has no setups. */
bool flow_setup(struct writer *writer, const struct cell *cell, size_t setup);
/* Whether it matters in which setup a check was judged: it rests on a load, or setups differ in
 * it. */
bool is_of_setup(const struct cell *cell, const struct check_result *check);
/* Flow anchors, setup, case and heading of a check, as far as they matter: "A1, A2", or where a
 * heading is that of the first alone "A1, emergency stop toward 45 deg, equal in A2, A3" (all
 * anchors of the file: "equal in all"). False: nothing. */
bool flow_subject(struct writer *writer, const struct cell *cell, const struct check_result *check,
                  bool brief);

#endif
