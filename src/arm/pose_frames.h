/* Where every link of a chain stands at one pose, in mounting-face axes; kept by a sweep, which
 * brings up to date only what a step of its grid moved. For the files of this folder. */
#ifndef POSE_FRAMES_H
#define POSE_FRAMES_H

#include "chain.h"

struct placed_link {
	struct mat3 rotation;    /* columns are the link's axes */
	struct vec3 origin;      /* [m] */
	struct vec3 first;       /* sum of m r about the base origin [kg m] */
	struct mat3 second;      /* sum of m r r^T about the base origin [kg m2] */
};
struct pose_frames { struct placed_link link[MAX_JOINTS_OF_ARM]; };

/* Places the links from `from` on; those before must be up to date. */
void pose_frames_place(const struct prepared_chain *chain, const double q[], size_t from,
                       struct pose_frames *frames);
void pose_frames_terms(const struct prepared_chain *chain, const struct pose_frames *frames,
                       struct pose_terms *out);

#endif
