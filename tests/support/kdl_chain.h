/* A chain in the general robotics library orocos-kdl (Debian liborocos-kdl-dev), for comparison.
 * Tests only. */
#ifndef KDL_CHAIN_H
#define KDL_CHAIN_H

#ifdef __cplusplus
extern "C" {
#endif

#include "../../src/arm/chain.h"

/* The library gives joint torques and no base wrench. FELT: six joints without mass between the
 * ground and the base, locked, feel it; they cost the library time. FIXED: without them. */
enum kdl_ground { KDL_FIXED, KDL_FELT };

struct kdl_chain;
struct kdl_chain *kdl_chain_open(const struct chain *chain, enum kdl_ground ground);
void kdl_chain_close(struct kdl_chain *chain);
/* As chain_wrench; with KDL_FIXED *out is not written. False where the library reports an error. */
bool kdl_chain_wrench(struct kdl_chain *chain, const double q[], const double speed[],
                      const double acceleration[], struct base_wrench *out, double torque[]);

#ifdef __cplusplus
}
#endif
#endif
