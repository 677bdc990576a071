/* Writes an equilibrium down so that a checker can verify it by statics, without solving it again.
 */
#ifndef TRACE_STATE_H
#define TRACE_STATE_H

#include "../cell/trace.h"
#include "base.h"

/* Needs the steps N, S_x, S_y of the load. Gives T_A1 ..., the bed's resultant and where it acts.
 */
void trace_equilibrium(const struct base *base, const struct state *state, struct trace *trace);
/* Gives V_A<anchor+1> for the state's load case, step by step. */
void trace_shear(const struct base *base, const struct state *state, int anchor, double heading,
                 struct trace *trace);

#endif
