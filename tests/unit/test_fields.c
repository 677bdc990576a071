/* The field table: every row is whole, and its own example reads. */
#include "../../src/cell/fields.h"
#include "../support/reading.h"

#include <criterion/criterion.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>

static const struct field *end_of_table(void)
{
	return fields + field_count;
}

#define each_field(name) const struct field *name = fields; name < end_of_table(); name++

/* "cell.parts" of "cell.parts[].mass"; false for a row of the cell itself. */
static bool list_of(const char *path, char out[128])
{
	const char *bracket = strrchr(path, '[');
	snprintf(out, 128, "%.*s", bracket ? (int)(bracket - path) : 0, path);
	return bracket != NULL;
}

static const struct field *list_row(const char *path)
{
	for (const struct field *row = field_find(path); row && strcmp(row->path, path) == 0; row++)
		if (row->kind == FIELD_LIST)
			return row;
	return NULL;
}

static size_t holder_size(const struct field *field)
{
	char list[128];
	if (!list_of(field->path, list))
		return sizeof(struct cell);
	const struct field *row = list_row(list);
	cr_assert_not_null(row, "%s: no list row %s", field->path, list);
	return row->row_size;
}

static size_t thing_size(enum field_kind kind)
{
	static const size_t sizes[] = {
		[FIELD_NUMBER] = sizeof(struct number), [FIELD_WORD] = sizeof(struct word),
		[FIELD_ANY] = sizeof(struct word), [FIELD_TEXT] = sizeof(struct text),
		[FIELD_NONE] = sizeof(struct given), [FIELD_POINT2] = sizeof(struct point),
		[FIELD_POINT3] = sizeof(struct point), [FIELD_RING] = sizeof(struct ring),
		[FIELD_RINGS] = sizeof(struct list), [FIELD_NUMBERS] = sizeof(struct numbers),
		[FIELD_LIST] = sizeof(struct list), [FIELD_WORDS] = sizeof(struct list),
		[FIELD_PATTERN] = sizeof(struct given), [FIELD_SETUPS] = sizeof(struct list)};
	return sizes[kind];
}

Test(fields, every_row_says_what_it_is)
{
	for (each_field(f)) {
		cr_assert(f->path && f->path[0], "row %td", f - fields);
		cr_assert(f->meaning && strlen(f->meaning) > 5, "%s has no meaning", f->path);
		if (f->kind == FIELD_NUMBER || f->kind == FIELD_WORD || f->kind == FIELD_LIST)
			cr_assert(f->where_found && f->where_found[0],
			          "%s: nobody knows where to find it", f->path);
		if (thing_size(f->kind) > 0 && f->kind != FIELD_LIST)
			cr_assert(f->example && f->example[0], "%s has no example", f->path);
	}
}

Test(fields, paths_are_unique_in_their_kind_and_stand_together)
{
	for (each_field(f))
		for (const struct field *other = f + 1; other < end_of_table(); other++) {
			if (strcmp(f->path, other->path) != 0)
				continue;
			/* an angle's number and a length's: the unit tells them apart */
			bool by_unit = f->kind == FIELD_NUMBER && f->dimension != other->dimension;
			cr_assert(f->kind != other->kind || by_unit, "%s stands twice", f->path);
			cr_assert_str_eq((other - 1)->path, f->path, "rows of %s are apart",
			                 f->path);
		}
}

static size_t section_length(const char *path)
{
	return strcspn(path, ".[");
}

static bool same_section(const char *a, const char *b)
{
	return section_length(a) == section_length(b) && strncmp(a, b, section_length(a)) == 0;
}

Test(fields, sections_stand_together)
{
	for (each_field(f))
		for (const struct field *other = f + 1; other < end_of_table(); other++)
			if (same_section(f->path, other->path))
				cr_assert(same_section(f->path, (other - 1)->path),
				          "%s stands apart from its section", other->path);
}

Test(fields, every_map_and_list_on_the_way_has_a_row)
{
	for (each_field(f)) {
		char way[128];
		snprintf(way, sizeof way, "%s", f->path);
		for (char *dot = strrchr(way, '.'); dot; dot = strrchr(way, '.')) {
			*dot = 0;
			size_t length = strlen(way);
			if (length > 2 && strcmp(way + length - 2, "[]") == 0)
				way[length - 2] = 0;
			cr_assert_not_null(field_find(way), "%s: nothing says what %s is", f->path,
			                   way);
			cr_assert(field_has_children(way), "%s", way);
		}
	}
}

Test(fields, things_lie_inside_their_holder)
{
	for (each_field(f))
		if (thing_size(f->kind) > 0)
			cr_assert_leq(f->offset + thing_size(f->kind), holder_size(f), "%s",
			              f->path);
}

static bool is_within(const struct field *f, double value)
{
	return value >= f->low && value <= f->high;
}

/* Two rows of numbers of one path must not both take a unit. */
Test(fields, the_unit_decides_between_two_rows_of_numbers)
{
	int pairs = 0;
	for (const struct field *f = fields; f + 1 < end_of_table(); f++) {
		if (strcmp(f->path, f[1].path) != 0 || f->kind != FIELD_NUMBER ||
		    f[1].kind != FIELD_NUMBER)
			continue;
		struct quantity out;
		pairs++;
		cr_assert_eq(quantity_parse(f->example, strlen(f->example), f[1].dimension, &out),
		             QUANTITY_WRONG_DIMENSION, "%s", f->path);
		cr_assert_neq(f->offset, f[1].offset, "%s", f->path);
	}
	cr_assert_eq(pairs, 5, "from, to, speed, acceleration and stop of a joint");
}

Test(fields, ranges_hold_what_they_should)
{
	for (each_field(f)) {
		bool numeric = f->kind == FIELD_NUMBER || f->kind == FIELD_NUMBERS ||
		               f->kind == FIELD_POINT2 || f->kind == FIELD_POINT3 ||
		               f->kind == FIELD_RING || f->kind == FIELD_RINGS;
		if (numeric)
			cr_assert_leq(f->low, f->high, "%s", f->path);
		if (numeric && strcmp(f->path, "standfast") != 0)
			cr_assert_lt(f->low, f->high, "%s takes one value only", f->path);
		if (f->kind != FIELD_NUMBER)
			continue;
		cr_assert(is_within(f, f->worst), "%s: worst %g", f->path, f->worst);
		cr_assert(is_within(f, f->best), "%s: best %g", f->path, f->best);
		if (f->has_fallback)
			cr_assert(is_within(f, f->fallback), "%s: fallback %g", f->path,
			          f->fallback);
	}
}

static int count_words(const char *const *words)
{
	int count = 0;
	while (words[count])
		count++;
	return count;
}

Test(fields, words_and_limits_are_there)
{
	for (each_field(f)) {
		bool has_words = f->kind == FIELD_WORD || f->kind == FIELD_ANY ||
		                 f->kind == FIELD_WORDS;
		cr_assert_eq(f->words != NULL, has_words, "%s", f->path);
		if (has_words && f->has_fallback)
			cr_assert(f->fallback >= 0 && f->fallback < count_words(f->words), "%s",
			          f->path);
		for (int i = 0; has_words && f->words[i]; i++)
			cr_assert_str_neq(f->words[i], "unknown",
			                  "%s: unknown is understood everywhere", f->path);
		bool list = f->kind == FIELD_LIST || f->kind == FIELD_RINGS ||
		            f->kind == FIELD_WORDS || f->kind == FIELD_SETUPS;
		if (list)
			cr_assert(f->limit > 0 && f->row_size > 0, "%s", f->path);
		if (f->kind == FIELD_RING || f->kind == FIELD_NUMBERS || f->kind == FIELD_PATTERN)
			cr_assert_gt(f->limit, 0, "%s", f->path);
	}
}

Test(fields, an_alias_names_a_value_of_its_own_map)
{
	for (each_field(f)) {
		cr_assert_eq(f->alias != NULL, f->kind == FIELD_ALIAS, "%s", f->path);
		if (!f->alias)
			continue;
		cr_assert_not_null(field_find(f->alias), "%s", f->path);
		cr_assert_eq(strncmp(f->alias, f->path, strlen(f->path)), 0, "%s", f->path);
		cr_assert_eq(f->alias[strlen(f->path)], '.', "%s", f->path);
	}
}

struct page { char text[1024]; size_t length; };

static void add(struct page *page, const char *format, ...) __attribute__((format(printf, 2, 3)));
static void add(struct page *page, const char *format, ...)
{
	va_list list;
	va_start(list, format);
	page->length += (size_t)vsnprintf(page->text + page->length,
	                                  sizeof page->text - page->length, format, list);
	va_end(list);
	cr_assert_lt(page->length, sizeof page->text);
}

/* A file that holds nothing but the row's example; lists get one row. */
static void write_example(const struct field *f, struct page *page)
{
	*page = (struct page){.length = 0};
	if (strcmp(f->path, "standfast") != 0)
		add(page, "standfast: 1\n");
	int column = 0;
	for (const char *at = f->path; *at;) {
		size_t key = strcspn(at, ".["), step = strcspn(at, ".");
		bool is_list = at[key] == '[', is_last = at[step] == 0;
		add(page, "%.*s:%s", (int)key, at, is_last ? " " : "\n");
		column += 2;
		if (!is_last)
			add(page, "%*s%s", column, "", is_list ? "- " : "");
		column += is_list ? 2 : 0;
		at += step + !is_last;
	}
	add(page, "%s\n", f->example);
	const char *last = strrchr(f->path, '.');
	if (f->kind == FIELD_NUMBERS && last && strcmp(last, ".values") == 0)
		add(page, "%*sunit: MPa\n", column - 2, "");
	if (strncmp(f->path, "anchors.", 8) != 0)
		add(page, "anchors: {at: unknown}\n");
	else if (f->kind != FIELD_PATTERN)
		add(page, "  at: unknown\n");
}

/* Faults of reading; what one key alone contradicts (a pad without its size) is no matter here. */
static bool is_reading_fault(enum fault fault)
{
	return fault != FAULT_CONTRADICTION && fault != FAULT_MISSING_KEY &&
	       fault != FAULT_GEOMETRY;
}

Test(fields, every_example_reads)
{
	for (each_field(f)) {
		struct page page;
		struct reading reading;
		if (!f->example)
			continue;
		write_example(f, &page);
		reading_open(&reading, page.text);
		for (size_t i = 0; i < reading.list.count; i++)
			cr_assert_not(is_reading_fault(reading.list.list[i].fault), "%s\n%s\n%s",
			              f->path, page.text, reading_faults(&reading));
		if (reading.cell && !strchr(f->path, '[') && thing_size(f->kind) > 0)
			cr_assert_eq(field_given(f, reading.cell)->origin, GIVEN, "%s\n%s", f->path,
			             page.text);
		reading_close(&reading);
	}
}

Test(fields, finds_rows_and_children)
{
	cr_assert_str_eq(field_find("cell.parts[].mass")->path, "cell.parts[].mass");
	cr_assert_null(field_find("cell.parts[]"));
	cr_assert_null(field_find(""));
	const struct field *joints = field_find("slab.joints");
	cr_assert_str_eq(joints[1].path, "slab.joints", "the first of both rows");
	cr_assert_neq(joints[0].kind, joints[1].kind);
	cr_assert(field_has_children("cell.parts"));
	cr_assert(field_has_children("slab.thickness"));
	cr_assert_not(field_has_children("slab.thick"), "half a key has none");
	cr_assert_not(field_has_children("title"));
}

Test(fields, suggests_the_nearest_key_of_the_same_map)
{
	cr_assert_str_eq(field_suggest("anchors.product", "embedmnet"), "embedment");
	cr_assert_str_eq(field_suggest("cell.parts[]", "masss"), "mass");
	cr_assert_str_eq(field_suggest("", "titel"), "title");
	cr_assert_str_eq(field_suggest("cell", "stand-off"), "stand_off");
	cr_assert_null(field_suggest("anchors", "embedment"),
	               "a key of another map is no neighbour");
	cr_assert_null(field_suggest("", "zzzzzz"));
	cr_assert_null(field_suggest("", ""));
	cr_assert_null(field_suggest(
		"", "a key that is longer than any key of the table, by a good deal"));
}

Test(fields, a_misplaced_key_belongs_to_the_nearest_place)
{
	const char *path[2] = {NULL, NULL};
	cr_assert_eq(field_elsewhere("", "embedment", path, 2), 1);
	cr_assert_str_eq(path[0], "anchors.product.embedment");
	cr_assert_eq(field_elsewhere("", "nowhere", path, 2), 0);
	cr_assert_eq(field_elsewhere("anchors.product", "tension", path, 1), 1);
	cr_assert_str_eq(path[0], "anchors.product.rating.tension");
	cr_assert_eq(field_elsewhere("anchors.needs.pattern_as_stated", "tension", path, 1), 1);
	cr_assert_str_eq(path[0], "anchors.needs.tension");
	cr_assert_eq(field_elsewhere("", "tension", path, 2), 2);
	cr_assert_str_eq(path[0], "anchors.needs.tension");
	cr_assert_str_eq(path[1], "anchors.product.rating.tension", "a list's row comes last");
}

Test(fields, paths_share_whole_parts_only)
{
	cr_assert_eq(field_parts_shared("", "cell.at"), 0);
	cr_assert_eq(field_parts_shared("cell", "cell.at"), 1);
	cr_assert_eq(field_parts_shared("cell", "cellar.at"), 0);
	cr_assert_eq(field_parts_shared("cell.parts[]", "cell.parts[].mass"), 2);
	cr_assert_eq(field_parts_shared("anchors.needs", "anchors.product"), 1);
}

/* Optimal string alignment, worked out by hand. */
Test(fields, distance_counts_swaps_once)
{
	size_t apart;
	cr_assert(word_is_near("shaer", "shear", &apart));
	cr_assert_eq(apart, 1, "neighbours swapped");
	cr_assert(word_is_near("ca", "cb", &apart));
	cr_assert_eq(apart, 1);
	cr_assert_not(word_is_near("ca", "abc", &apart));
	cr_assert_eq(apart, 3, "no letter is used twice");
	cr_assert(word_is_near("embedment", "embedment", &apart));
	cr_assert_eq(apart, 0);
}

Test(fields, defaults_are_set_and_marked)
{
	static struct cell cell;
	struct base_piece piece[2] = {{.touches = {{.origin = GIVEN}, TOUCHES_SHIMS}},
	                              {.touches.given.origin = ABSENT}};
	cell.base = (struct list){{.origin = GIVEN}, piece, 2};
	cell.slab.concrete.cracked.given.mark.line = 4;
	field_defaults(&cell);
	cr_assert_eq(cell.anchors.product.rating.allowed_share.value, 0.25);
	cr_assert_eq(cell.anchors.product.rating.allowed_share.given.origin, DEFAULT);
	cr_assert_eq(cell.slab.concrete.cracked.value, YES);
	cr_assert_eq(cell.slab.concrete.cracked.given.mark.line, 4,
	             "the word unknown keeps its place");
	cr_assert_eq(cell.choices.stabilising_weight.value, 0.6);
	cr_assert_eq(cell.methods.count, 1);
	cr_assert_eq(((struct word *)cell.methods.rows)->value, METHOD_RATING);
	cr_assert_str_eq(cell.title.value, "");
	cr_assert_eq(piece[0].touches.value, TOUCHES_SHIMS, "what is given stays");
	cr_assert_eq(piece[1].touches.value, TOUCHES_FLOOR);
	cr_assert_eq(piece[1].touches.given.origin, DEFAULT);
	cr_assert_str_eq(piece[1].name.value, "");
	cr_assert_not(is_known(cell.slab.thickness), "what has no default stays unknown");
}

Test(fields, classes_are_named_by_their_strengths)
{
	int count = count_words(concrete_classes);
	for (int i = 0; i < count; i++) {
		char name[16];
		snprintf(name, sizeof name, "C%.0f/%.0f", concrete_class_strengths[i].cylinder,
		         concrete_class_strengths[i].cube);
		cr_assert_str_eq(name, concrete_classes[i]);
	}
}
