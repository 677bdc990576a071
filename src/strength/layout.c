/* Rows of limits, and the least distances that both codes ask of a pattern. */
#include "layout.h"

#include <math.h>

struct code_limit *limit_add(struct limit_rows *rows, const char *what, const char *clause,
                              enum dimension dimension, double is, double asked)
{
	struct code_limit *row = &rows->list[rows->count++];
	*row = (struct code_limit){.what = what, .clause = clause, .known = true, .asked = asked,
	                           .is = is, .dimension = dimension};
	return row;
}

void limit_lacks(struct code_limit *row, bool there, const char *path)
{
	size_t k = 0;
	if (there)
		return;
	row->known = false;
	while (k < LIMIT_LACKS && row->lacks[k])
		k++;
	if (k < LIMIT_LACKS)
		row->lacks[k] = path;
}

double pattern_least_spacing(const struct pattern *p)
{
	double least = HUGE_VAL;
	for (size_t i = 0; i < p->count; i++)
		for (size_t k = 0; k < i; k++)
			least = fmin(least,
			             hypot(p->at[i].x - p->at[k].x, p->at[i].y - p->at[k].y));
	return least;
}

double pattern_least_edge(const struct pattern *p)
{
	double least = p->clear > 0 ? p->clear : HUGE_VAL;
	for (size_t i = 0; i < p->count * p->edge_count; i++)
		least = fmin(least, p->distance[i]);
	return least;
}
