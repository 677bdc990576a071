#include "pages.h"

/* the build gives it; without one it is said so */
#ifndef STANDFAST_VERSION
#define STANDFAST_VERSION "unreleased"
#endif

const char *release_version(void)
{
	return STANDFAST_VERSION;
}
