/* What two codes do alike with the paths that they lack. */
#include "needs.h"

#include <string.h>

size_t lacking_each_once(const struct lacking *all, const char *path[], size_t room)
{
	size_t count = 0;
	for (size_t i = 0; i < all->count; i++) {
		bool before = false;
		for (size_t k = 0; k < i; k++)
			before = before || strcmp(all->path[k], all->path[i]) == 0;
		if (before)
			continue;
		if (count < room)
			path[count] = all->path[i];
		count++;
	}
	return count;
}
