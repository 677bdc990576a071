/* Whether a file holds a load model, or any part of one. */
#ifndef LOAD_MODEL_H
#define LOAD_MODEL_H

#include "cell.h"

/* Any of the four numbers. */
bool reaction_known(const struct reaction *reaction);
/* The arm as joints and links: any row of arm.chain.joints. */
bool chain_given(const struct cell *cell);
/* The lumped estimate: any key of arm.swing. */
bool swing_given(const struct cell *cell);
/* Any row of arm.history. */
bool history_given(const struct cell *cell);
/* Any of these three: the reactions come, at least in part, from the arm's own motion. */
bool own_motion_given(const struct cell *cell);
/* Whether the section earthquake says anything but `none`. */
bool earthquake_stated(const struct cell *cell);
/* Any part at all: then what is missing of it is missing, and not left out on purpose. */
bool load_model_given(const struct cell *cell);

#endif
