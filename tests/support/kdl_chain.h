/* A chain in the general robotics library orocos-kdl (Debian liborocos-kdl-dev), for comparison.
 * Six joints without mass between the ground and the base, locked, feel the wrench. Tests only. */
#ifndef KDL_CHAIN_H
#define KDL_CHAIN_H

#ifdef __cplusplus
extern "C" {
#endif

#include "../../src/arm/chain.h"

struct kdl_chain;
struct kdl_chain *kdl_chain_open(const struct chain *chain);
void kdl_chain_close(struct kdl_chain *chain);
/* As chain_wrench. False where the library reports an error. */
bool kdl_chain_wrench(struct kdl_chain *chain, const double q[], const double speed[],
                      const double acceleration[], struct base_wrench *out, double torque[]);

#ifdef __cplusplus
}
#endif
#endif
