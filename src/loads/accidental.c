#include "accidental.h"

#include <math.h>
#include <string.h>

#define KN 1000.0
#define TEN_DEGREES (10 * 3.14159265358979323846 / 180)

#define TRUCK "EN 1991-1-7 4.4: 5 times the loaded truck of EN 1991-1-1 Table 6.5"
#define PROTECT "give it to a protector or bollard and check the cell for the residual"
#define VEHICLE "EN 1991-1-7 Table 4.1 with heights of 4.3.1"
#define LEAN "EN 1991-1-1 Table 6.12"
#define DIFFER "two public commentaries differ: 20 % with 250 N; 13 % with 100 N; 13 % with 250 N"

/* Size low and high, across, share, height from and to. Loaded trucks: net weight and lifted load
 * of EN 1991-1-1 Table 6.5, FL1 21 + 10, 31 + 15, 44 + 25, 60 + 40, 90 + 60, FL6 110 + 80 kN (from
 * memory). */
static const struct accidental_load table[] = {
	{"fork_truck_fl1", ACCIDENT_FORK_TRUCK, "fork truck FL1: 31 kN loaded", UNIT_FORCE,
	 155 * KN, 155 * KN, 0, 0, 750, 750, TRUCK, MARK_FROM_MEMORY, "", PROTECT},
	{"fork_truck_fl2", ACCIDENT_FORK_TRUCK, "fork truck FL2: 46 kN loaded", UNIT_FORCE,
	 230 * KN, 230 * KN, 0, 0, 750, 750, TRUCK, MARK_FROM_MEMORY, "", PROTECT},
	{"fork_truck_fl3", ACCIDENT_FORK_TRUCK, "fork truck FL3: 69 kN loaded", UNIT_FORCE,
	 345 * KN, 345 * KN, 0, 0, 750, 750, TRUCK, MARK_FROM_MEMORY, "", PROTECT},
	{"fork_truck_fl4", ACCIDENT_FORK_TRUCK, "fork truck FL4: 100 kN loaded", UNIT_FORCE,
	 500 * KN, 500 * KN, 0, 0, 750, 750, TRUCK, MARK_FROM_MEMORY, "", PROTECT},
	{"fork_truck_fl5", ACCIDENT_FORK_TRUCK, "fork truck FL5: 150 kN loaded", UNIT_FORCE,
	 750 * KN, 750 * KN, 0, 0, 750, 750, TRUCK, MARK_FROM_MEMORY, "", PROTECT},
	{"fork_truck_fl6", ACCIDENT_FORK_TRUCK, "fork truck FL6: 190 kN loaded", UNIT_FORCE,
	 950 * KN, 950 * KN, 0, 0, 750, 750, TRUCK, MARK_FROM_MEMORY, "", PROTECT},
	{"vehicle_motorway", ACCIDENT_VEHICLE, "vehicle on motorways and main roads", UNIT_FORCE,
	 1000 * KN, 1000 * KN, 500 * KN, 0, 500, 1500, VEHICLE, MARK_FROM_MEMORY, "", PROTECT},
	{"vehicle_rural", ACCIDENT_VEHICLE, "vehicle on country roads", UNIT_FORCE, 750 * KN,
	 750 * KN, 375 * KN, 0, 500, 1500, VEHICLE, MARK_FROM_MEMORY, "", PROTECT},
	{"vehicle_urban", ACCIDENT_VEHICLE, "vehicle on town roads", UNIT_FORCE, 500 * KN, 500 * KN,
	 250 * KN, 0, 500, 1500, VEHICLE, MARK_FROM_MEMORY, "", PROTECT},
	{"vehicle_yard_car", ACCIDENT_VEHICLE, "car in a yard or garage", UNIT_FORCE, 50 * KN,
	 50 * KN, 25 * KN, 0, 500, 500, VEHICLE, MARK_FROM_MEMORY, "", PROTECT},
	{"vehicle_yard_lorry", ACCIDENT_VEHICLE, "lorry in a yard or garage", UNIT_FORCE, 150 * KN,
	 150 * KN, 75 * KN, 0, 500, 1500, VEHICLE, MARK_FROM_MEMORY, "", PROTECT},
	{"rack_upright", ACCIDENT_RACK, "bump on a rack upright along and across the aisle",
	 UNIT_FORCE, 2.5 * KN, 2.5 * KN, 1.25 * KN, 0, 0, 400, "EN 15512", MARK_FROM_MEMORY,
	 "a trade page states 0.5 kN: check in the standard", ""},
	{"rack_upright_trade", ACCIDENT_RACK, "bump on a rack upright by a trade page", UNIT_FORCE,
	 0.5 * KN, 0.5 * KN, 0, 0, 0, 400, "a trade page on EN 15512", MARK_SEEN,
	 "doubtful: may be the 0.5 kN placement load; do not use", ""},
	{"rack_protector", ACCIDENT_RACK,
	 "energy that an upright's protector absorbs; at least 400 mm high", UNIT_ENERGY, 400e3,
	 400e3, 0, 0, 0, 400, "a trade page on EN 15512 and EN 15635", MARK_SEEN,
	 "not seen in the standard", ""},
	{"push_62368_2018", ACCIDENT_PUSH, "push on standing equipment 2018", UNIT_FORCE, 250, 250,
	 0, 0.20, 0, 0, "IEC 62368-1:2018 8.6.5 by a public commentary", MARK_SEEN, DIFFER, ""},
	{"push_62368_2018_draft", ACCIDENT_PUSH, "push on standing equipment 2018 draft",
	 UNIT_FORCE, 250, 250, 0, 0.13, 0, 1500, "IEC 62368-1 2018 draft by a public commentary",
	 MARK_SEEN, DIFFER, ""},
	{"push_62368_2014", ACCIDENT_PUSH, "push on standing equipment 2014", UNIT_FORCE, 100, 100,
	 0, 0.13, 0, 0, "IEC 62368-1:2014 8.6.5 by a public commentary", MARK_SEEN, DIFFER, ""},
	{"push_61010", ACCIDENT_PUSH, "push on standing equipment", UNIT_FORCE, 250, 250, 0, 0.20,
	 0, 2000, "IEC 60950-1 4.1 and IEC 61010-1 7.4", MARK_FROM_MEMORY, "", ""},
	{"tilt_ten_degrees", ACCIDENT_TILT, "tilt that standing equipment withstands", UNIT_ANGLE,
	 TEN_DEGREES, TEN_DEGREES, 0, 0, 0, 0, "IEC 60950-1 4.1 and IEC 61010-1 7.4",
	 MARK_FROM_MEMORY, "a 10 degree test was seen for another product standard", ""},
	{"leaning_a", ACCIDENT_LEANING, "people leaning: dwellings (A)", UNIT_LINE_LOAD, 0.5, 0.5,
	 0, 0, 0, 1200, LEAN, MARK_FROM_MEMORY, "", ""},
	{"leaning_b_c1", ACCIDENT_LEANING,
	 "people leaning: offices and rooms with tables (B and C1)", UNIT_LINE_LOAD, 0.2, 1, 0, 0,
	 0, 1200, LEAN, MARK_FROM_MEMORY, "", ""},
	{"leaning_c2_to_d", ACCIDENT_LEANING, "people leaning: assembly and shops (C2 to C4 and D)",
	 UNIT_LINE_LOAD, 0.8, 1, 0, 0, 0, 1200, LEAN, MARK_FROM_MEMORY, "", ""},
	{"leaning_c5", ACCIDENT_LEANING, "people leaning: crowds (C5)", UNIT_LINE_LOAD, 3, 5, 0, 0,
	 0, 1200, LEAN, MARK_FROM_MEMORY, "", ""},
	{"leaning_e", ACCIDENT_LEANING, "people leaning: storage and industry (E)", UNIT_LINE_LOAD,
	 0.8, 2, 0, 0, 0, 1200, LEAN, MARK_FROM_MEMORY, "", ""},
};

const struct accidental_load *accidental_loads(size_t *count)
{
	*count = sizeof table / sizeof table[0];
	return table;
}

const struct accidental_load *accidental_load(const char *id)
{
	for (size_t i = 0; i < sizeof table / sizeof table[0]; i++)
		if (strcmp(table[i].id, id) == 0)
			return &table[i];
	return NULL;
}

/* The row's source with how it is known, for a line of the calculation. */
static const char *source_of(const struct accidental_load *row, struct trace *trace)
{
	return row->mark == MARK_FROM_MEMORY ? trace_text(trace, "%s (from memory)", row->source)
	                                     : row->source;
}

double accidental_push(const struct accidental_load *row, double weight, struct trace *trace)
{
	const char *source = source_of(row, trace);
	trace_step(trace, "W_cell", "", weight, DIM_FORCE, "", "weight of the cell");
	trace_step(trace, "k_push", "", row->share, DIM_FACTOR, source, row->doubt);
	trace_step(trace, "F_cap", "", row->high, DIM_FORCE, source, "not above");
	return trace_step(trace, "F_push", "min(F_cap, k_push * W_cell)",
	                  fmin(row->high, row->share * weight), DIM_FORCE, source, row->title);
}

double accidental_leaning(const struct accidental_load *row, double width, struct trace *trace)
{
	trace_step(trace, "q_lean", "", row->high, DIM_FACTOR, source_of(row, trace),
	           "line load, N/mm");
	trace_step(trace, "b_lean", "", width, DIM_LENGTH, "", "width that is leaned upon");
	return trace_step(trace, "F_lean", "q_lean * b_lean", row->high * width, DIM_FORCE, "",
	                  row->title);
}

double fork_truck_force(double truck_weight, struct trace *trace)
{
	trace_step(trace, "W_truck", "", truck_weight, DIM_FORCE, "", "weight of the loaded truck");
	/* EN 1991-1-7 4.4, from memory */
	return trace_step(trace, "F_truck", "5 * W_truck", 5 * truck_weight, DIM_FORCE,
	                  "EN 1991-1-7 4.4 (from memory)", PROTECT);
}

double hard_impact_force(double speed, double stiffness, double mass, struct trace *trace)
{
	trace_step(trace, "v_impact", "", speed, DIM_FACTOR, "", "speed, mm/s");
	trace_step(trace, "k_impact", "", stiffness, DIM_FACTOR, "", "stiffness, N/mm");
	trace_step(trace, "m_impact", "", mass, DIM_MASS, "", "mass that strikes");
	/* EN 1991-1-7 C.1, from memory; N/mm times kg is 1000 N^2 s^2/m^2, and mm/s are m/s/1000 */
	return trace_step(trace, "F_impact", "v_impact * sqrt(1000 * k_impact * m_impact) / 1000",
	                  speed * sqrt(1000 * stiffness * mass) / 1000, DIM_FORCE,
	                  "EN 1991-1-7 C.1 (from memory)", "elastic, no rebound");
}
