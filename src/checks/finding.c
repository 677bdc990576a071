#include "finding.h"

#include <math.h>
#include <string.h>

/* What sums of lengths in inches leave of an exact fit: a ratio that differs from 1 by that alone
 * is 1 [-] */
#define ROUNDING 1e-13

void finding_lacks(struct finding *finding, const char *path)
{
	for (size_t i = 0; i < finding->missing_count; i++)
		if (strcmp(finding->missing[i], path) == 0)
			return;
	if (finding->missing_count < MAX_MISSING)
		finding->missing[finding->missing_count++] = path;
	else
		finding->doubted = true;    /* never lost: it cannot hold */
}

void finding_doubts(struct finding *finding, const char *reason, const char *remedy)
{
	finding->doubted = true;
	if (finding->said_doubt)
		return;
	finding->said_doubt = reason;
	finding->said_doubt_remedy = remedy;
}

void finding_fails(struct finding *finding, const char *reason, const char *remedy)
{
	if (!finding->failed) {
		finding->said_failure = reason;
		finding->said_failure_remedy = remedy;
	}
	finding->failed = true;
}

void finding_notes(struct finding *finding, const char *note)
{
	if (finding->note_count < MAX_NOTES)
		finding->notes[finding->note_count++] = note;
}

void finding_numbers(struct finding *finding, double demand, double capacity,
                     enum dimension dimension, const char *said, const char *remedy)
{
	finding->computed = true;
	finding->demand = demand;
	finding->capacity = capacity;
	finding->ratio = demand / capacity;
	if (fabs(finding->ratio - 1) <= ROUNDING)
		finding->ratio = 1;
	finding->dimension = dimension;
	finding->said_numbers = said;
	finding->said_numbers_remedy = remedy;
}

void finding_settle(struct finding *finding)
{
	bool over = finding->computed && !(finding->ratio <= 1);   /* a NaN never holds */
	finding->reason = finding->computed ? finding->said_numbers : "";
	finding->remedy = "";
	if (finding->failed) {
		finding->verdict = FAILS;
		finding->reason = finding->said_failure;
		finding->remedy = finding->said_failure_remedy;
	} else if (over && !finding->never_fails) {
		finding->verdict = FAILS;
		finding->remedy = finding->said_numbers_remedy;
	} else if (finding->missing_count > 0 || finding->doubted || over) {
		finding->verdict = UNPROVEN;
		if (finding->said_doubt) {
			finding->reason = finding->said_doubt;
			finding->remedy = finding->said_doubt_remedy;
		}
	} else {
		finding->verdict = HOLDS;
		finding->reason = finding->said_numbers;
	}
	if (!finding->reason)
		finding->reason = "";
	if (!finding->remedy)
		finding->remedy = "";
}
