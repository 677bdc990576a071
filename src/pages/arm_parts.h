/* What the pages of the arm's reactions have in common: words, and the block that is pasted into a
 * cell file. */
#ifndef ARM_PARTS_H
#define ARM_PARTS_H

#include "../result.h"

const char *arm_kind_word(enum reaction_kind kind);      /* "tilting" */
enum dimension arm_kind_dimension(enum reaction_kind kind);
const char *arm_way_word(enum arm_way way);              /* "chain" */
const char *arm_case_word(enum arm_case arm_case);       /* "emergency_stop" */
const char *arm_case_name(enum arm_case arm_case);       /* "emergency stop" */
/* The lumped arm is an estimate, whatever it is asked. */
bool arm_is_estimate(enum arm_way way);
/* Whether the largest of each kind is a wrench that occurs; the lumped arm's are separate maxima.
 */
bool arm_has_companions(const struct arm_source *source);
bool arm_has_bound(const struct arm_extreme *extreme);
/* Whether a case of the data sheet has any number. */
bool arm_sheet_known(const struct cell *cell, enum arm_case arm_case);
/* Whether two setups have the same sources with the same numbers. */
bool arm_same_loads(const struct arm_loads *one, const struct arm_loads *other);
/* Joints of the longest chain among all setups. */
size_t arm_most_joints(const struct result *result);
bool arm_joint_slides(const struct cell *cell, size_t joint);
/* A joint's position or a rate of it, of the chain [rad], [m], in deg or mm, to four decimals: a
 * search leaves it no closer. */
double arm_joint_shown(double value, bool slides);
/* What a page of reactions must say whatever it shows. */
void arm_cautions(const struct result *result, struct sentences *out);

/* --- the block: the largest of each kind over all sources of one way */

enum { PASTE_VERTICAL, PASTE_HORIZONTAL, PASTE_TILTING, PASTE_TWISTING, PASTE_VALUES };
struct arm_paste_value {
	bool known;
	double swept;                /* of what was found [N] or [N mm] */
	double value;                /* what is pasted: the guaranteed bound where there is one */
	bool bound;                  /* whether it is that */
};
struct arm_paste_case { bool known; struct arm_paste_value value[PASTE_VALUES]; };
struct arm_paste {
	bool known;                  /* whether the way answers for any case */
	double weight, payload;      /* with which the vertical force is read [N] */
	bool peak_open;              /* a peak factor is not known and taken as 1: nothing of a stop
	                              * is guaranteed */
	struct arm_paste_case of[ARM_CASES];
};

const char *arm_paste_key(int value);                    /* "vertical" */
enum dimension arm_paste_dimension(int value);
/* The vertical force of a data sheet stands for both directions about the arm's weight W
 * (loads/arm_wrench.h): it is the larger of the largest downforce and W + (W - least downforce),
 * and no less than the weight of arm and payload, which it includes. Not known without W. */
void arm_paste(const struct cell *cell, const struct arm_loads *loads, enum arm_way way,
               struct arm_paste *out);
/* Rounded up to four digits in a unit, with the unit: never below the value. */
struct arm_paste_text { char text[48]; };
struct arm_paste_text arm_paste_up(double value, enum dimension dimension,
                                   enum unit_system units);

#endif
