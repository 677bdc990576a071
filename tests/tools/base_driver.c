/* Solves bases given as text on standard input, so that other programs can be compared with the
 * solver.
 *
 * Lines: "outline x y x y ...", "hole x y ..." (in the last outline), "pad x y length width",
 * "anchor x y" [mm], "bed_ratio mm2", "load N Sx Sy" [N, N mm]. Each load line is solved at once
 * and answered by a line of tensions, the pads' and outlines' forces and the largest pressure [N,
 * MPa]. */
#include "../support/random_base.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

enum { MOST_NUMBERS = 2 * CASE_CORNERS };

static void give_up(const char *what)
{
	fprintf(stderr, "base_driver: %s\n", what);
	exit(2);
}

static size_t read_numbers(char *text, double out[MOST_NUMBERS])
{
	size_t count = 0;
	for (char *end;; text = end) {
		double number = strtod(text, &end);
		if (end == text)
			return count;
		if (count == MOST_NUMBERS)
			give_up("too many numbers on a line");
		out[count++] = number;
	}
}

static void add_hole(struct base_case *base_case, const double number[], size_t count)
{
	if (base_case->cell.base.count == 0)
		give_up("a hole before any outline");
	size_t index = base_case->cell.base.count - 1;
	base_case->hole[index] = (struct ring){
		{{0}, GIVEN}, base_case->hole_corner[index], count / 2};
	memcpy(base_case->hole_corner[index], number, count / 2 * sizeof(struct vec2));
	base_case->piece[index].holes = (struct list){{{0}, GIVEN}, &base_case->hole[index], 1};
}

static void answer(const struct base_case *base_case, const double load[3])
{
	static struct base base;
	struct state state = {.bed_ratio = base_case->bed_ratio,
	                      .load = {load[0], load[1], load[2]}};
	struct arena arena;
	arena_open(&arena, NULL, NULL);
	if (base_prepare(&base_case->cell, &arena, &base) != DONE)
		give_up("the base cannot be prepared");
	base_start(&base, state.bed_ratio, state.load, state.settle);
	if (base_balance(&base, state.load) != BALANCED
	    || base_solve(&base, state.bed_ratio, state.load, state.settle, NULL) != DONE)
		give_up("no equilibrium");
	base_fill(&base, &state);
	for (size_t i = 0; i < base.anchor_count; i++)
		printf("%.10g ", state.tension[i]);
	for (size_t i = 0; i < base.piece_count; i++)
		printf("%.10g ", state.piece_force[i]);
	printf("%.10g\n", state.pressure_max);
	arena_close(&arena);
}

int main(void)
{
	static struct base_case base_case;
	char line[2048], word[16];
	case_clear(&base_case);
	while (fgets(line, sizeof line, stdin)) {
		double number[MOST_NUMBERS];
		int length = 0;
		if (sscanf(line, "%15s%n", word, &length) != 1)
			continue;
		size_t count = read_numbers(line + length, number);
		if (!strcmp(word, "outline") && count >= 6)
			case_outline(&base_case, (const struct vec2 *)(const void *)number,
			             count / 2, NULL, 0);
		else if (!strcmp(word, "hole") && count >= 6)
			add_hole(&base_case, number, count);
		else if (!strcmp(word, "pad") && count == 4)
			case_pad(&base_case, number[0], number[1], number[2], number[3]);
		else if (!strcmp(word, "anchor") && count == 2)
			case_anchor(&base_case, number[0], number[1]);
		else if (!strcmp(word, "bed_ratio") && count == 1)
			base_case.bed_ratio = number[0];
		else if (!strcmp(word, "load") && count == 3)
			answer(&base_case, number);
		else
			give_up("a line that is none of the known ones");
	}
	return 0;
}
