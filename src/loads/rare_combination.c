#include "rare_combination.h"

#define PSI "no value of psi is tabled for an arm's motion: 1 is taken as its bound"

/* weight, moving, horizontal, vertical */
static const struct rare_combination table[] = {
	{"asce7_strength_down", "1.2D + Ev + Eh + L", EVENT_EARTHQUAKE, LEVEL_FACTORED, 1.2, 1, 1, 1, "ASCE 7 2.3.6", MARK_SEEN, ""},
	{"asce7_strength_up", "0.9D - Ev + Eh", EVENT_EARTHQUAKE, LEVEL_FACTORED, 0.9, 0, 1, -1, "ASCE 7 2.3.6", MARK_SEEN,
	 "the arm is taken as still; a stop that the earthquake sets off is not in it"},
	{"asce7_allowable_down", "D + 0.7Ev + 0.7Eh", EVENT_EARTHQUAKE, LEVEL_SERVICE, 1, 0, 0.7, 0.7, "ASCE 7 2.4.5", MARK_FROM_MEMORY, ""},
	{"asce7_allowable_moving", "D + 0.525Ev + 0.525Eh + 0.75L", EVENT_EARTHQUAKE, LEVEL_SERVICE, 1, 0.75, 0.525, 0.525, "ASCE 7 2.4.5",
	 MARK_FROM_MEMORY, ""},
	{"asce7_allowable_up", "0.6D - 0.7Ev + 0.7Eh", EVENT_EARTHQUAKE, LEVEL_SERVICE, 0.6, 0, 0.7, -0.7, "ASCE 7 2.4.5", MARK_FROM_MEMORY,
	 "the arm is taken as still; a stop that the earthquake sets off is not in it"},
	{"en1990_earthquake_down", "G + Ed + psi2 Q", EVENT_EARTHQUAKE, LEVEL_FACTORED, 1, 1, 1, 1, "EN 1990 6.12b", MARK_FROM_MEMORY, PSI},
	{"en1990_earthquake_up", "G - Ev + Eh + psi2 Q", EVENT_EARTHQUAKE, LEVEL_FACTORED, 1, 1, 1, -1, "EN 1990 6.12b", MARK_FROM_MEMORY, PSI},
	{"en1990_accident", "G + Ad + psi Q", EVENT_ACCIDENT, LEVEL_FACTORED, 1, 1, 1, 1, "EN 1990 6.11b", MARK_FROM_MEMORY, PSI},
};

const struct rare_combination *rare_combinations(size_t *count)
{
	*count = sizeof table / sizeof table[0];
	return table;
}
