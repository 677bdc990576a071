#include "pushes.h"

#include "accidental.h"
#include "standing.h"

#include <math.h>

#define PUSH_ROW "push_61010"       /* the largest figure of all push rows, with a height */
#define INDUSTRY_ROW "leaning_e"

struct words {
	const struct cell *cell;
	struct arena *arena;
	push_word *word;
	void *user;
};

static void say(const struct words *words, bool caution, const char *text)
{
	if (text)
		words->word(words->user, caution, text);
}

/* A value in the units that the file asks for; "" without memory. */
static const char *shown(const struct words *words, double value, enum dimension dimension)
{
	char text[48];
	enum unit_system system = (enum unit_system)words->cell->show.value;
	quantity_write(value, quantity_display_unit(dimension, system), 3, text, sizeof text);
	const char *out = arena_format(words->arena, "%s", text);
	return out ? out : "";
}

/* N/mm as kN/m, whose numbers are the same, or lbf/ft. */
static const char *line_load(const struct words *words, double value)
{
	bool us = words->cell->show.value == UNITS_US;
	char text[32];
	/* 1 lbf = 4.4482216152605 N, 1 ft = 304.8 mm, NIST SP 811 B.8 */
	number_write(us ? value * 304.8 / 4.4482216152605 : value, 3, text, sizeof text);
	const char *out = arena_format(words->arena, "%s %s", text, us ? "lbf/ft" : "kN/m");
	return out ? out : "";
}

static const char *known_how(const struct accidental_load *row)
{
	return row->mark == MARK_FROM_MEMORY ? ", from memory" : "";
}

/* Size of the stated force, horizontal; 0 where it is not known [N]. */
static double stated_force(const struct extra_load *load)
{
	if (is_known(load->force_vector))
		return hypot(load->force_vector.at[0], load->force_vector.at[1]);
	return is_known(load->force) ? load->force.value : 0;
}

/* "'leaning person' (0.3 kN at 1.2 m)" */
static const char *named(const struct words *words, const struct extra_load *load)
{
	const char *at = is_known(load->at_height)
		? arena_format(words->arena, " at "
		                             "%s", shown(words, load->at_height.value, DIM_LENGTH))
		: "";
	const char *out = arena_format(words->arena, "'%s' (%s%s)",
	                               is_known(load->name) ? load->name.value : "further load",
	                               shown(words, stated_force(load), DIM_FORCE), at ? at : "");
	return out ? out : "";
}

static void note_gap(void *any, const char *path)
{
	(void)path;
	*(bool *)any = true;
}

/* --- a push --------------------------------------------------------------------------------- */

/* A push that is smaller, or lower and so tips less, than the tabled one. */
static void compare_push(const struct words *words, const struct extra_load *load,
                         const struct accidental_load *row, double figure)
{
	const struct number *top = &words->cell->top;
	double highest = is_known(*top) ? fmin(top->value, row->to_height) : row->to_height;
	double force = stated_force(load), height = load->at_height.value;
	if (force < figure)
		say(words, true,
		    arena_format(words->arena,
		                 "the push %s is smaller than the %s that standards ask of "
		                 "standing equipment (%s%s)",
		                 named(words, load), shown(words, figure, DIM_FORCE), row->source,
		                 known_how(row)));
	else if (is_known(load->at_height) && height < highest && force * height < figure * highest)
		say(words, true,
		    arena_format(words->arena,
		                 "the push %s tips less than %s at %s would, %s (%s%s)",
		                 named(words, load), shown(words, figure, DIM_FORCE),
		                 shown(words, highest, DIM_LENGTH),
		                 is_known(*top) && top->value < row->to_height
		                         ? "the top of the cell"
		                         : "the highest place that standards name",
		                 row->source, known_how(row)));
}

static void word_push(const struct words *words, const struct extra_load *load)
{
	const struct accidental_load *row = accidental_load(PUSH_ROW);
	const struct accidental_load *other = accidental_load("push_62368_2018");
	bool gaps = false;
	char share[16];
	standing_mass_gaps(words->cell, note_gap, &gaps);
	double mass = standing_mass(words->cell, (struct standing_state){true, true, -1}).mass;
	double figure = gaps ? row->high : accidental_push(row, STANDARD_GRAVITY * mass, NULL);
	number_write(100 * row->share, 3, share, sizeof share);
	say(words, false,
	    arena_format(words->arena,
	                 "%s beside the figures of standards: a push on standing equipment is %s "
	                 "%% of the weight, at most %s, at up to %s (%s%s); %s%s; %s: %s",
	                 named(words, load), share, shown(words, row->high, DIM_FORCE),
	                 shown(words, row->to_height, DIM_LENGTH), row->source, known_how(row),
	                 gaps ? "not every mass is known, so " : "with the full masses here ",
	                 shown(words, figure, DIM_FORCE), other->source, other->doubt));
	compare_push(words, load, row, figure);
}

/* --- leaning people ------------------------------------------------------------------------- */

/* Every row of one kind as "title low to high, ..." */
static const char *listed_lines(const struct words *words)
{
	size_t count = 0;
	const struct accidental_load *row = accidental_loads(&count);
	const char *out = "";
	for (size_t i = 0; i < count && out; i++)
		if (row[i].kind == ACCIDENT_LEANING)
			out = arena_format(words->arena, "%s%s%s %s%s%s", out, *out ? "; " : "",
			                   row[i].title, line_load(words, row[i].low),
			                   row[i].high > row[i].low ? " to " : "",
			                   row[i].high > row[i].low ? line_load(words, row[i].high)
			                                            : "");
	return out ? out : "";
}

static void word_leaning(const struct words *words, const struct extra_load *load)
{
	const struct accidental_load *row = accidental_load(INDUSTRY_ROW);
	double force = stated_force(load);
	say(words, false,
	    arena_format(words->arena,
	                 "%s beside the figures of standards, a line load at up to %s that needs "
	                 "the width leaned upon, which is not known: %s (%s%s); the stated force "
	                 "is what %s of width gives at %s, %s at %s",
	                 named(words, load), shown(words, row->to_height, DIM_LENGTH),
	                 listed_lines(words), row->source, known_how(row),
	                 shown(words, force / row->high, DIM_LENGTH), line_load(words, row->high),
	                 shown(words, force / row->low, DIM_LENGTH), line_load(words, row->low)));
}

/* --- a truck -------------------------------------------------------------------------------- */

static void word_truck(const struct words *words, const struct extra_load *load)
{
	const struct accidental_load *least = accidental_load("fork_truck_fl1");
	const struct accidental_load *most = accidental_load("fork_truck_fl6");
	say(words, true,
	    arena_format(words->arena,
	                 "%s beside the figure of standards: a fork truck strikes with %s (%s) "
	                 "to %s (%s) at %s, %s%s; that breaks any usual anchor of a cell: %s",
	                 named(words, load), shown(words, least->high, DIM_FORCE), least->title,
	                 shown(words, most->high, DIM_FORCE), most->title,
	                 shown(words, most->to_height, DIM_LENGTH), most->source, known_how(most),
	                 most->advice));
	if (stated_force(load) < least->high)
		say(words, true,
		    arena_format(words->arena,
		                 "the truck bump %s is below that of the lightest class, %s: it "
		                 "can only be the residual behind a protector or bollard",
		                 named(words, load), shown(words, least->high, DIM_FORCE)));
}

void push_words(const struct cell *cell, struct arena *arena, push_word *word, void *user)
{
	const struct extra_load *load = cell->loads.rows;
	struct words words = {cell, arena, word, user};
	for (size_t i = 0; i < cell->loads.count; i++) {
		if (!is_known(load[i].kind))
			continue;
		switch (load[i].kind.value) {
		case LOAD_PUSH: word_push(&words, &load[i]); break;
		case LOAD_LEANING: word_leaning(&words, &load[i]); break;
		case LOAD_TRUCK_BUMP: word_truck(&words, &load[i]); break;
		default: break;
		}
	}
}
