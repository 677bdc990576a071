/* What each mode of a code needs, and where it does not apply: code_missing and code_left_out
 * (code_facts.h) by code. Not for other folders. */
#ifndef NEEDS_H
#define NEEDS_H

#include "code_facts.h"

/* Paths are constants; returns how many are missing, also where path has no room for them all. */
size_t aci_missing(const struct code_facts *facts, enum code_mode mode, bool earthquake,
                   const char *path[], size_t room);
size_t en_missing(const struct code_facts *facts, enum code_mode mode, bool earthquake,
                  const char *path[], size_t room);
/* NULL: the mode applies. */
const char *aci_left_out(const struct cell *cell, enum code_mode mode);
const char *en_left_out(const struct cell *cell, enum code_mode mode);

/* Paths being gathered; more than fit are counted all the same. */
struct lacking {
	const char **path;
	size_t room, count;
};
static inline void lack(struct lacking *lacking, const char *path)
{
	if (lacking->count < lacking->room)
		lacking->path[lacking->count] = path;
	lacking->count++;
}

/* The paths that were gathered, without those asked for twice; as aci_missing. */
size_t lacking_each_once(const struct lacking *all, const char *path[], size_t room);
static inline void need(struct lacking *lacking, bool there, const char *path)
{
	if (!there)
		lack(lacking, path);
}
static inline void need_number(struct lacking *lacking, const struct number *number,
                               const char *path)
{
	need(lacking, is_known(*number) && number->value > 0, path);
}

#endif
