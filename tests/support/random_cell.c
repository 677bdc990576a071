#include "random_cell.h"

#include <criterion/criterion.h>
#include <math.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

static const double pi = 3.14159265358979323846;

/* --- dice
 * ------------------------------------------------------------------------------------------- */

static bool one_in(struct dice *dice, int n)
{
	return dice_whole(dice, 1, n) == 1;
}

static void rectangle(struct plan_ring *ring, double x, double y, double a, double b)
{
	ring->count = 4;
	for (int i = 0; i < 4; i++)
		ring->at[i] = (struct vec2){x + (i == 1 || i == 2 ? a : -a), y + (i >= 2 ? b : -b)};
}

/* Corners on an ellipse: convex, not regular. */
static void rounded(struct plan_ring *ring, struct dice *dice, double a, double b)
{
	ring->count = (size_t)dice_whole(dice, 5, PLAN_CORNERS);
	for (size_t i = 0; i < ring->count; i++) {
		double angle = 2 * pi * ((double)i + dice_between(dice, 0, 0.6)) /
		               (double)ring->count;
		ring->at[i] = (struct vec2){a * cos(angle), b * sin(angle)};
	}
}

static void random_base(struct plan *plan, struct dice *dice, double a, double b)
{
	int kind = dice_whole(dice, 0, 3);
	plan->piece_count = 1;
	if (kind == 0) {
		rounded(&plan->piece[0], dice, a, b);
	} else if (kind < 3) {
		rectangle(&plan->piece[0], 0, 0, a, b);
	} else {
		double pad = dice_between(dice, 0.08, 0.3) * fmin(a, b);
		plan->piece_count = (size_t)dice_whole(dice, 3, 4);
		for (size_t i = 0; i < plan->piece_count; i++)
			rectangle(&plan->piece[i], i == 1 || i == 2 ? a - pad : pad - a,
			          i >= 2 ? b - pad : pad - b, pad, pad);
	}
}

static void random_anchors(struct plan *plan, struct dice *dice, double a, double b)
{
	double inset = dice_between(dice, 0.7, 0.95);
	bool scattered = one_in(dice, 3), beside = one_in(dice, 10);
	plan->anchor_count = scattered         ? (size_t)dice_whole(dice, 3, PLAN_ANCHORS)
	                     : one_in(dice, 3) ? 6
	                                       : 4;
	for (size_t i = 0; i < plan->anchor_count; i++) {
		double angle = 2 * pi * ((double)i + dice_between(dice, 0.1, 0.9)) /
		               (double)plan->anchor_count;
		double far = dice_between(dice, 0.4, 1.15);
		plan->anchor[i] = (struct vec2){inset * (i & 1 ? a : -a), inset * (i & 2 ? b : -b)};
		if (i >= 4)
			plan->anchor[i] = (struct vec2){0, inset * (i & 1 ? b : -b)};
		if (scattered)
			plan->anchor[i] = (struct vec2){far * a * cos(angle), far * b * sin(angle)};
		/* in lugs along one side alone, so that the base can tip off them */
		if (beside)
			plan->anchor[i] = (struct vec2){1.05 * a + 40, a * (0.4 * (double)i - 0.8)};
	}
}

static void random_arm(struct plan *plan, struct dice *dice, double a, double b)
{
	static const char *const flag[] = {"yes", "yes", "yes", "no", "no", "no", "no", "unknown"};
	plan->arm = dice_between(dice, 10, 150);
	plan->payload = dice_between(dice, 0, 30);
	plan->reach = dice_between(dice, 100, 600);
	plan->payload_reach = dice_between(dice, 400, 1500);
	plan->vertical_flag = flag[dice_whole(dice, 0, 7)];
	plan->tilting_flag = flag[dice_whole(dice, 0, 7)];
	plan->paired = one_in(dice, 4) ? "yes" : "no";
	plan->mount[0] = one_in(dice, 2) ? 0 : dice_between(dice, -0.4, 0.4) * a;
	plan->mount[1] = one_in(dice, 2) ? 0 : dice_between(dice, -0.4, 0.4) * b;
	plan->mount[2] = dice_between(dice, 200, 1400);
	double weight = STANDARD_GRAVITY * (plan->arm + plan->payload);
	double tilt = STANDARD_GRAVITY *
	              (plan->arm * plan->reach + plan->payload * plan->payload_reach);
	for (int k = 0; k < 2; k++)
		plan->reaction[k] = (struct plan_reaction){
			weight + dice_between(dice, 0, 2000) * (k + 1),
			dice_between(dice, 0, 1500) * (k + 1),
			tilt + dice_between(dice, 0, 1.5e6) * (k + 1),
			dice_between(dice, 0, 6e5) * (k + 1)};
}

static void random_loads(struct plan *plan, struct dice *dice, double a, double b)
{
	static const char *const with[] = {"rest", "normal", "emergency_stop"};
	plan->load_count = one_in(dice, 2) ? 0 : (size_t)dice_whole(dice, 1, PLAN_LOADS);
	for (size_t i = 0; i < plan->load_count; i++) {
		struct plan_load *load = &plan->load[i];
		load->kind = one_in(dice, 2) ? ANY_SIDE : one_in(dice, 4) ? VECTOR : ONE_DIRECTION;
		load->force = dice_between(dice, 50, 600);
		load->direction = dice_between(dice, -pi, pi);
		for (int k = 0; k < 3; k++)
			load->vector[k] = dice_between(dice, -400, 400);
		load->at_height = dice_between(dice, 0, 2000);
		load->placed = one_in(dice, 2);
		load->at[0] = dice_between(dice, -1.2, 1.2) * a;
		load->at[1] = dice_between(dice, -1.2, 1.2) * b;
		load->with = with[dice_whole(dice, 0, 2)];
	}
}

static void random_parts(struct plan *plan, struct dice *dice, double a, double b, bool boxes)
{
	plan->part_count = (size_t)dice_whole(dice, 1, PLAN_PARTS);
	for (size_t i = 0; i < plan->part_count; i++) {
		struct plan_part *part = &plan->part[i];
		part->mass = dice_decades(dice, 1, 2.8);
		part->least_mass = one_in(dice, 3) ? part->mass * dice_between(dice, 0, 1)
		                                   : part->mass;
		part->at[0] = dice_between(dice, -0.6, 0.6) * a;
		part->at[1] = dice_between(dice, -0.6, 0.6) * b;
		part->boxed = boxes && i == 0;
		part->half[0] = dice_between(dice, 0, 0.5) * a;
		part->half[1] = dice_between(dice, 0, 0.5) * b;
	}
}

static void random_slab(struct plan *plan, struct dice *dice)
{
	rectangle(&plan->outline, 5000, 4000, 5000, 4000);
	plan->joint_count = (size_t)dice_whole(dice, 0, PLAN_JOINTS);
	for (size_t i = 0; i < plan->joint_count; i++) {
		double x = 5000 + (i ? -1 : 1) * dice_between(dice, 500, 3000),
		       slope = dice_between(dice, -300, 300);
		plan->joint[i][0] = (struct vec2){x - slope, 0};
		plan->joint[i][1] = (struct vec2){x + slope, 8000};
	}
	plan->hole_count = (size_t)dice_whole(dice, 0, PLAN_HOLES);
	plan->hole_depth = dice_between(dice, 30, 120);
	for (size_t i = 0; i < plan->hole_count; i++)
		plan->hole[i] = (struct vec2){dice_between(dice, 3000, 7000),
		                              dice_between(dice, 2500, 5500)};
	plan->at[0] = 5000;
	plan->at[1] = dice_between(dice, 1800, 4000);
	plan->turned = dice_between(dice, -pi, pi);
	plan->strength = dice_between(dice, 28, 50);
}

static void random_product(struct plan *plan, struct dice *dice)
{
	plan->tension = dice_between(dice, 8e3, 80e3);
	plan->shear = dice_between(dice, 8e3, 80e3);
	plan->at_concrete = dice_between(dice, 25, 40);
	plan->five_thirds = one_in(dice, 3);
	double first = dice_between(dice, 40, 90);
	for (int i = 0; i < PLAN_ROWS; i++) {
		double share = i == PLAN_ROWS - 1 ? 1 : 0.4 + 0.25 * i;
		plan->spacing[i] = (struct plan_row){first * (1 + i), share, share};
		plan->edge[i] = (struct plan_row){first * (1.5 + 2 * i), share,
		                                  fmin(1, share * share + 0.05 * i)};
		if (i == PLAN_ROWS - 1)
			plan->edge[i].shear = 1;
	}
}

/* A sheet of a torque-controlled anchor with nothing missing. */
static void random_codes(struct plan *plan, struct dice *dice)
{
	static const char *const bars[] = {"none", "bars", "bars_with_stirrups"};
	struct plan_codes *codes = &plan->codes;
	codes->asked = one_in(dice, 8);
	codes->yield = dice_between(dice, 240, 700);
	codes->ultimate = codes->yield * dice_between(dice, 1.05, 1.6);
	codes->at_concrete = dice_between(dice, 20, 30);
	for (int k = 0; k < 2; k++)
		codes->pullout[k] = one_in(dice, 3) ? 0 : dice_between(dice, 8e3, 30e3);
	codes->category = dice_whole(dice, 1, 3);
	codes->installation = 1 + 0.2 * dice_whole(dice, 0, 2);
	codes->splitting_edge = dice_between(dice, 100, 250);
	codes->bending = dice_between(dice, 40e3, 120e3);
	codes->edge_bars = bars[dice_whole(dice, 0, 2)];
	codes->supplementary = one_in(dice, 3) ? "yes" : "no";
}

void plan_random(struct plan *plan, struct dice *dice, bool boxes)
{
	memset(plan, 0, sizeof *plan);
	double a = dice_between(dice, 200, 900), b = a * dice_between(dice, 0.5, 1.2);
	random_base(plan, dice, a, b);
	random_anchors(plan, dice, a, b);
	random_arm(plan, dice, a, b);
	random_parts(plan, dice, a, b, boxes);
	random_loads(plan, dice, a, b);
	plan->setup_count = one_in(dice, 4) ? (size_t)dice_whole(dice, 1, PLAN_SETUPS) : 0;
	for (size_t s = 0; s < plan->setup_count; s++) {
		memcpy(plan->setup[s].mount, plan->mount, sizeof plan->mount);
		plan->setup[s].mount[2] = dice_between(dice, 200, 1600);
	}
	plan->bed_ratio = one_in(dice, 6) ? 0 : dice_decades(dice, 1, 4);
	random_slab(plan, dice);
	random_product(plan, dice);
	random_codes(plan, dice);
}

/* --- other axes
 * --------------------------------------------------------------------------------------- */

struct motion { double c, s, sign, dx, dy; };

static struct vec2 moved(const struct motion *m, double x, double y)
{
	return (struct vec2){m->c * x - m->s * m->sign * y + m->dx,
	                     m->s * x + m->c * m->sign * y + m->dy};
}

static void move_pair(const struct motion *m, double at[2])
{
	struct vec2 to = moved(m, at[0], at[1]);
	at[0] = to.x;
	at[1] = to.y;
}

static void move_ring(const struct motion *m, struct plan_ring *ring)
{
	for (size_t i = 0; i < ring->count; i++)
		ring->at[i] = moved(m, ring->at[i].x, ring->at[i].y);
}

static void move_cell(const struct motion *m, double turn, struct plan *plan)
{
	struct motion still = *m;
	still.dx = still.dy = 0;
	for (size_t i = 0; i < plan->anchor_count; i++)
		plan->anchor[i] = moved(m, plan->anchor[i].x, plan->anchor[i].y);
	for (size_t i = 0; i < plan->piece_count; i++)
		move_ring(m, &plan->piece[i]);
	for (size_t i = 0; i < plan->part_count; i++)
		move_pair(m, plan->part[i].at);
	move_pair(m, plan->mount);
	for (size_t s = 0; s < plan->setup_count; s++)
		move_pair(m, plan->setup[s].mount);
	for (size_t i = 0; i < plan->load_count; i++) {
		move_pair(m, plan->load[i].at);
		move_pair(&still, plan->load[i].vector);
		plan->load[i].direction = remainder(m->sign * plan->load[i].direction + turn,
		                                    2 * pi);
	}
}

void plan_move(const struct plan *from, double turn, bool mirror, double dx, double dy,
               struct plan *to)
{
	struct motion m = {cos(turn), sin(turn), mirror ? -1 : 1, dx, dy};
	*to = *from;
	move_cell(&m, turn, to);
	if (mirror) {
		struct motion flip = {1, 0, -1, 0, 0};
		move_ring(&flip, &to->outline);
		move_pair(&flip, to->at);
		for (size_t i = 0; i < 2 * to->joint_count; i++)
			to->joint[i / 2][i % 2].y *= -1;
		for (size_t i = 0; i < to->hole_count; i++)
			to->hole[i].y *= -1;
		to->turned = -to->turned;
	}
	to->turned = remainder(to->turned - turn, 2 * pi);
	/* the old origin, now at (dx, dy) in cell axes, stays where it was on the slab */
	struct motion slab = {cos(to->turned), sin(to->turned), 1, 0, 0};
	struct vec2 origin = moved(&slab, dx, dy);
	to->at[0] -= origin.x;
	to->at[1] -= origin.y;
}

void plan_times(struct plan *plan, double times)
{
	for (size_t i = 0; i < plan->part_count; i++) {
		plan->part[i].mass *= times;
		plan->part[i].least_mass *= times;
	}
	plan->arm *= times;
	plan->payload *= times;
	for (int k = 0; k < 2; k++) {
		plan->reaction[k].vertical *= times;
		plan->reaction[k].horizontal *= times;
		plan->reaction[k].tilting *= times;
		plan->reaction[k].twisting *= times;
	}
	for (size_t i = 0; i < plan->load_count; i++) {
		plan->load[i].force *= times;
		for (int k = 0; k < 3; k++)
			plan->load[i].vector[k] *= times;
	}
}

#define TURN_ROUND(list, count) \
	for (size_t i = 0; i < (count) / 2; i++) { \
		unsigned char keep[sizeof list[0]]; \
		memcpy(keep, &list[i], sizeof keep); \
		list[i] = list[(count) - 1 - i]; \
		memcpy(&list[(count) - 1 - i], keep, sizeof keep); \
	}

void plan_relabel(struct plan *plan)
{
	TURN_ROUND(plan->anchor, plan->anchor_count)
	TURN_ROUND(plan->piece, plan->piece_count)
	TURN_ROUND(plan->part, plan->part_count)
	TURN_ROUND(plan->load, plan->load_count)
	TURN_ROUND(plan->setup, plan->setup_count)
	TURN_ROUND(plan->outline.at, plan->outline.count)
	TURN_ROUND(plan->hole, plan->hole_count)
	if (plan->joint_count == 2)
		for (int k = 0; k < 2; k++) {
			struct vec2 keep = plan->joint[0][k];
			plan->joint[0][k] = plan->joint[1][k];
			plan->joint[1][k] = keep;
		}
}

/* --- as a text
 * ------------------------------------------------------------------------------------------ */

/* What is written so far, and the units it is written in. */
struct page { char *text; size_t length, room; bool us; };

static void say(struct page *page, const char *format, ...) __attribute__((format(printf, 2, 3)));
static void say(struct page *page, const char *format, ...)
{
	va_list list;
	va_start(list, format);
	int length = vsnprintf(page->text + page->length, page->room - page->length, format, list);
	va_end(list);
	cr_assert(length >= 0 && page->length + (size_t)length < page->room);
	page->length += (size_t)length;
}

/* NIST SP 811 B.8, exact but for psi */
static const struct { const char *name[2]; double in_us;
} units[] = {['l'] = {{"mm", "in"}, 25.4},
             ['f'] = {{"N", "lbf"}, 4.4482216152605},
             ['m'] = {{"kg", "lb"}, 0.45359237},
             ['M'] = {{"N mm", "ft lbf"}, 1355.8179483314004},
             ['s'] = {{"MPa", "psi"}, 6.894757293168361e-3},
             ['a'] = {{"mm2", "in2"}, 645.16}};

/* A value behind its key, as 'l'ength, 'f'orce, 'm'ass, 'M'oment, 's'tress or 'a'rea. */
static void value(struct page *page, const char *key, int kind, double number)
{
	const char *name = units[kind].name[page->us];
	double factor = page->us ? units[kind].in_us : 1;
	say(page, "%s: %.17g %s", key, number / factor, name);
}

static void point(struct page *page, const char *key, int kind, const double *at, int size)
{
	say(page, "%s: [", key);
	for (int k = 0; k < size; k++) {
		double factor = page->us ? units[kind].in_us : 1;
		say(page, "%s%.17g %s", k ? ", " : "", at[k] / factor, units[kind].name[page->us]);
	}
	say(page, "]");
}

static void plane_points(struct page *page, const char *key, const struct vec2 *at, size_t count)
{
	double factor = page->us ? 25.4 : 1;
	say(page, "%s: {unit: %s, points: [", key, page->us ? "in" : "mm");
	for (size_t i = 0; i < count; i++)
		say(page, "%s[%.17g, %.17g]", i ? ", " : "", at[i].x / factor, at[i].y / factor);
	say(page, "]}");
}

static void write_slab(struct page *page, const struct plan *plan)
{
	say(page, "slab:\n  type: on_ground\n  topping: none\n  thickness: {evidence: measured, ");
	value(page, "value", 'l', 250);
	say(page, "}\n  concrete: {age: 100 days, condition: sound, strength: {specimen: cylinder, "
	          "evidence: delivery_note, ");
	value(page, "specified", 's', plan->strength);
	say(page, "}}\n  ");
	plane_points(page, "outline", plan->outline.at, plan->outline.count);
	say(page, "\n  joints: %s", plan->joint_count ? "[" : "none");
	for (size_t i = 0; i < plan->joint_count; i++) {
		const struct vec2 *j = plan->joint[i];
		say(page, "%s{type: saw_cut, ", i ? ", " : "");
		point(page, "from", 'l', (const double[]){j[0].x, j[0].y}, 2);
		say(page, ", ");
		point(page, "to", 'l', (const double[]){j[1].x, j[1].y}, 2);
		say(page, "}");
	}
	say(page, "%s\n  old_holes: %s", plan->joint_count ? "]" : "",
	    plan->hole_count ? "[" : "none");
	for (size_t i = 0; i < plan->hole_count; i++) {
		say(page, "%s{filled: no, ", i ? ", " : "");
		point(page, "at", 'l', (const double[]){plan->hole[i].x, plan->hole[i].y}, 2);
		say(page, ", ");
		value(page, "depth", 'l', plan->hole_depth);
		say(page, "}");
	}
	say(page, "%s\n  scan: done\n", plan->hole_count ? "]" : "");
	if (plan->codes.asked)
		say(page, "  reinforcement: {edge: %s, supplementary: %s}\n",
		    plan->codes.edge_bars, plan->codes.supplementary);
}

static void write_part(struct page *page, const struct plan_part *part)
{
	say(page, "    - {");
	value(page, "mass", 'm', part->mass);
	if (part->least_mass < part->mass) {
		say(page, ", ");
		value(page, "least_mass", 'm', part->least_mass);
	}
	if (part->boxed) {
		const double from[3] = {part->at[0] - part->half[0], part->at[1] - part->half[1],
		                        0};
		const double to[3] = {part->at[0] + part->half[0], part->at[1] + part->half[1],
		                      800};
		say(page, ", box: {");
		point(page, "from", 'l', from, 3);
		say(page, ", ");
		point(page, "to", 'l', to, 3);
		say(page, "}}\n");
	} else {
		say(page, ", ");
		point(page, "at", 'l', (const double[]){part->at[0], part->at[1], 400}, 3);
		say(page, "}\n");
	}
}

static void write_cell(struct page *page, const struct plan *plan)
{
	say(page, "cell:\n  base_stiff: calculation\n  stand_off: none\n  turned: %.17g deg\n  ",
	    plan->turned / (pi / 180));
	point(page, "at", 'l', plan->at, 2);
	say(page, "\n  parts:\n");
	for (size_t i = 0; i < plan->part_count; i++)
		write_part(page, &plan->part[i]);
	say(page, "  base:\n");
	for (size_t i = 0; i < plan->piece_count; i++) {
		say(page, "    - {");
		plane_points(page, "outline", plan->piece[i].at, plan->piece[i].count);
		say(page, "}\n");
	}
}

static void write_reaction(struct page *page, const char *key, const struct plan_reaction *reaction)
{
	say(page, "    %s: {", key);
	value(page, "vertical", 'f', reaction->vertical);
	value(page, ", horizontal", 'f', reaction->horizontal);
	value(page, ", tilting", 'M', reaction->tilting);
	value(page, ", twisting", 'M', reaction->twisting);
	say(page, "}\n");
}

static void write_arm(struct page *page, const struct plan *plan)
{
	say(page, "arm:\n  ");
	point(page, "mount", 'l', plan->mount, 3);
	value(page, "\n  weight: {arm", 'm', plan->arm);
	value(page, ", payload", 'm', plan->payload);
	value(page, ", reach: {arm", 'l', plan->reach);
	value(page, ", payload", 'l', plan->payload_reach);
	say(page,
	    "}}\n  reactions:\n    vertical_includes_weight: %s\n    tilting_includes_weight: %s\n "
	    "   paired: %s\n",
	    plan->vertical_flag, plan->tilting_flag, plan->paired);
	write_reaction(page, "normal", &plan->reaction[0]);
	write_reaction(page, "emergency_stop", &plan->reaction[1]);
}

static void write_load(struct page *page, const struct plan_load *load)
{
	say(page, "  - {with: %s, ", load->with);
	value(page, "at_height", 'l', load->at_height);
	say(page, ", ");
	if (load->kind == VECTOR) {
		point(page, "force", 'f', load->vector, 3);
	} else {
		value(page, "force", 'f', load->force);
		if (load->kind == ANY_SIDE)
			say(page, ", direction: any");
		else
			say(page, ", direction: %.17g deg", load->direction / (pi / 180));
	}
	if (load->placed) {
		say(page, ", ");
		point(page, "at", 'l', load->at, 2);
	}
	say(page, "}\n");
}

static void write_lists(struct page *page, const struct plan *plan)
{
	say(page, plan->load_count ? "loads:\n" : "");
	for (size_t i = 0; i < plan->load_count; i++)
		write_load(page, &plan->load[i]);
	say(page, plan->setup_count ? "setups:\n" : "");
	for (size_t s = 0; s < plan->setup_count; s++) {
		say(page, "  - {");
		point(page, "arm.mount", 'l', plan->setup[s].mount, 3);
		say(page, "}\n");
	}
	if (plan->bed_ratio > 0) {
		value(page, "choices: {anchor_bed_ratio", 'a', plan->bed_ratio);
		say(page, ", by_engineer: {name: demo, reason: speed of a test}}\n");
	}
}

static void write_rows(struct page *page, const char *key, const struct plan_row *row, bool edge)
{
	say(page, "      %s: [", key);
	for (int i = 0; i < PLAN_ROWS; i++) {
		value(page, i ? ", {distance" : "{distance", 'l', row[i].distance);
		if (edge)
			say(page, ", tension: %.17g %%, shear: %.17g %%}", 100 * row[i].tension,
			    100 * row[i].shear);
		else
			say(page, ", share: %.17g %%}", 100 * row[i].tension);
	}
	say(page, "]\n");
}

static void write_anchors(struct page *page, const struct plan *plan)
{
	say(page, "anchors:\n  lug: yes\n  ");
	plane_points(page, "at", plan->anchor, plan->anchor_count);
	value(page, "\n  plate_hole", 'l', 14);
	value(page, "\n  plate_thickness", 'l', 15);
	say(page, "\n  product:\n    type: torque_controlled\n    qualified_cracked: yes\n");
	static const struct {
		const char *key;
		double mm;
	} length[] = {{"shaft", 12},     {"length", 130},         {"projection", 18},
	              {"embedment", 70}, {"hole: {diameter", 12}, {"least_slab", 140}};
	for (size_t i = 0; i < sizeof length / sizeof length[0]; i++) {
		say(page, "    ");
		value(page, length[i].key, 'l', length[i].mm);
		if (strncmp(length[i].key, "hole", 4) == 0) {
			value(page, ", depth", 'l', 85);
			say(page, "}");
		}
		say(page, "\n");
	}
	say(page,
	    "    rating:\n      basis: ultimate\n      tested_in: cracked\n      evidence: "
	    "data_sheet\n"
	    "      interaction: %s\n",
	    plan->five_thirds ? "five_thirds" : "straight");
	value(page, "      tension", 'f', plan->tension);
	value(page, "\n      shear", 'f', plan->shear);
	value(page, "\n      at_concrete", 's', plan->at_concrete);
	value(page, "\n      at_embedment", 'l', 70);
	say(page, "\n");
	write_rows(page, "spacing", plan->spacing, false);
	write_rows(page, "edge", plan->edge, true);
}

static void write_pullout(struct page *page, double pullout)
{
	say(page, ", pullout: {");
	if (pullout > 0)
		value(page, "cracked", 'f', pullout);
	else
		say(page, "cracked: does_not_govern");
	say(page, "}");
}

/* Behind the rating: still the product's map. */
static void write_codes(struct page *page, const struct plan_codes *codes)
{
	say(page, "    strength:\n      evidence: data_sheet\n      ductile: yes\n      "
	          "elongation: 12 %%\n      sleeve_in_shear_plane: no\n");
	value(page, "      yield", 's', codes->yield);
	value(page, "\n      ultimate", 's', codes->ultimate);
	value(page, "\n      at_concrete", 's', codes->at_concrete);
	value(page, "\n      least_spacing", 'l', 40);
	value(page, "\n      least_edge", 'l', 40);
	say(page, "\n      aci318: {category: %d, ", codes->category);
	value(page, "splitting_edge", 'l', codes->splitting_edge);
	write_pullout(page, codes->pullout[0]);
	say(page, "}\n      en1992_4: {installation_factor: %.17g, ", codes->installation);
	value(page, "splitting_edge", 'l', codes->splitting_edge);
	value(page, ", bending", 'M', codes->bending);
	write_pullout(page, codes->pullout[1]);
	say(page, "}\nmethods: [rating, aci318, en1992_4]\n");
}

const char *plan_write(struct arena *arena, const struct plan *plan, bool us)
{
	struct page page = {.room = 1 << 15, .us = us};
	page.text = arena_take(arena, page.room, 1);
	cr_assert_not_null(page.text);
	say(&page, "standfast: 1\nshow: %s\n", us ? "us" : "metric");
	write_slab(&page, plan);
	write_cell(&page, plan);
	write_arm(&page, plan);
	write_lists(&page, plan);
	write_anchors(&page, plan);
	if (plan->codes.asked)
		write_codes(&page, &plan->codes);
	return page.text;
}
