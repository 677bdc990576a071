#include "bearing_hull.h"

struct vec2 *bearing_hull(const struct cell *cell, struct arena *arena, size_t *count)
{
	const struct base_piece *piece = cell->base.rows;
	size_t room = 0, n = 0;
	for (size_t i = 0; i < cell->base.count; i++)
		room += piece[i].outline.count + 4;
	struct vec2 *points = arena_take(arena, room + 1, sizeof *points);
	struct vec2 *hull = arena_take(arena, room + 1, sizeof *hull);
	if (!points || !hull)
		return NULL;
	for (size_t i = 0; i < cell->base.count; i++) {
		for (size_t k = 0; k < piece[i].outline.count; k++)
			points[n++] = piece[i].outline.points[k];
		if (piece[i].outline.count == 0)
			for (int k = 0; k < 4; k++)
				points[n++] = (struct vec2){
					piece[i].at.at[0] +
						(k & 1 ? 0.5 : -0.5) * piece[i].size.at[0],
					piece[i].at.at[1] +
						(k & 2 ? 0.5 : -0.5) * piece[i].size.at[1]};
	}
	*count = plane_hull(points, n, hull);
	return hull;
}
