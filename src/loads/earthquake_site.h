/* The numbers of the section earthquake as the code's formula takes them. */
#ifndef EARTHQUAKE_SITE_H
#define EARTHQUAKE_SITE_H

#include "../cell/cell.h"
#include "seismic.h"
#include "standing.h"

/* Field paths of what the stated code asks for and the file does not give. */
void site_gaps(const struct earthquake *quake, found_gap *gap, void *user);
/* Why the numbers cannot be; NULL when they can. Without gaps. */
const char *site_fault(const struct earthquake *quake);
/* The force on a component of that weight [N], and its clause. Without gaps and faults. */
void site_force(const struct earthquake *quake, double weight, struct seismic_force *out,
                struct trace *trace);
const char *site_clause(const struct earthquake *quake);        /* "ASCE 7-22 13.3.1" */

#endif
