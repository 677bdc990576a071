/* Whether a file holds a load model, or any part of one. */
#ifndef LOAD_MODEL_H
#define LOAD_MODEL_H

#include "cell.h"

/* Any of the four numbers. */
bool reaction_known(const struct reaction *reaction);
/* Any part at all: then what is missing of it is missing, and not left out on purpose. */
bool load_model_given(const struct cell *cell);

#endif
