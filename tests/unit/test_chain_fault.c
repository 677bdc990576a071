/* What a chain cannot be, and that what it can be is let through. */
#include "../support/cases.h"
#include "../support/random_chain.h"

#include <criterion/criterion.h>
#include <math.h>
#include <string.h>

static void good_chain(struct chain *chain)
{
	struct dice dice = dice_open(1, 1);
	do
		chain_random(chain, &dice, 6);
	while (chain->count < 3);
	chain->convention = CHAIN_FRAMES;
}

/* Expects a fault of that link whose words hold `word`. */
static void expect_fault(const struct chain *chain, size_t wanted, const char *word)
{
	size_t link = 99;
	const char *fault = chain_fault(chain, &link);
	cr_assert_not_null(fault, "%s: no fault found", word);
	cr_expect_not_null(strstr(fault, word), "'%s' does not say '%s'", fault, word);
	cr_expect_eq(link, wanted, "%s: link %zu, not %zu", word, link, wanted);
}

/* Inertia of real bodies is never refused, whatever their shape. */
Test(chain_fault, every_real_body_passes)
{
	struct dice dice = dice_open(cases_seed(), 3);
	for (int k = 0; k < 1000; k++) {
		struct chain chain;
		size_t link;
		chain_random(&chain, &dice, 7);
		const char *fault = chain_fault(&chain, &link);
		cr_assert_null(fault, "case %d, link %zu: %s", k, link, fault ? fault : "");
	}
}

/* A thin rod and a thin plate lie on the edge of what can be; three typed digits may fall beyond
 * it. */
Test(chain_fault, thin_bodies_pass)
{
	static const double thin[][6] = {
		{0, 0.2, 0.2}, {0.123, 0.456, 0.579}, {0.123, 0.456, 0.5795}, {0}};
	for (size_t i = 0; i < sizeof thin / sizeof *thin; i++) {
		struct chain chain;
		size_t link;
		good_chain(&chain);
		memcpy(chain.link[1].inertia, thin[i], sizeof thin[i]);
		cr_expect_null(chain_fault(&chain, &link), "body %zu", i);
	}
}

Test(chain_fault, inertia_that_no_body_has)
{
	static const struct { double inertia[6]; const char *word;
	} bad[] = {
		{{0.1, 0.1, 0.25}, "larger than the other two"},
		{{0, 0.35, 0}, "larger than the other two"},
		{{0.1, -0.1, 0.1}, "not positive"},
		{{-0.1, -0.1, -0.1}, "not positive"},
		{{0, 0, 0, 0.1}, "not positive"},
		{{0.2, 0.2, 0.2, 0.3, 0, 0}, "not positive"},
		/* principal moments 0.05, 0.35, 0.2: turned by 45 degrees the diagonal looks
	           harmless */
		{{0.2, 0.2, 0.2, 0.15, 0, 0}, "larger than the other two"},
	};
	for (size_t i = 0; i < sizeof bad / sizeof *bad; i++) {
		struct chain chain;
		good_chain(&chain);
		memcpy(chain.link[2].inertia, bad[i].inertia, sizeof bad[i].inertia);
		expect_fault(&chain, 2, bad[i].word);
		good_chain(&chain);
		memcpy(chain.payload_inertia, bad[i].inertia, sizeof bad[i].inertia);
		expect_fault(&chain, chain.count, bad[i].word);
	}
}

/* Published sets give only what their authors could measure: link 1 turns about one axis alone, and
 * the third link of 1994 has yy above xx + zz. A file with such numbers must say what it lacks. */
Test(chain_fault, published_sets_are_incomplete)
{
	struct chain chain;
	chain_benchmark(&chain, PUMA_1994);
	expect_fault(&chain, 0, "larger than the other two");
	memset(chain.link[0].inertia, 0, sizeof chain.link[0].inertia);
	expect_fault(&chain, 2, "larger than the other two");
	chain_benchmark(&chain, PUMA_1986);
	expect_fault(&chain, 0, "larger than the other two");
	memset(chain.link[0].inertia, 0, sizeof chain.link[0].inertia);
	size_t link;
	cr_expect_null(chain_fault(&chain, &link));
}

Test(chain_fault, masses_and_numbers)
{
	struct chain chain;
	good_chain(&chain);
	chain.link[1].mass = -1;
	expect_fault(&chain, 1, "negative");
	good_chain(&chain);
	chain.link[0].centre[2] = NAN;
	expect_fault(&chain, 0, "finite");
	good_chain(&chain);
	chain.payload_mass = INFINITY;
	expect_fault(&chain, chain.count, "finite");
	good_chain(&chain);
	chain.gravity[1] = NAN;
	expect_fault(&chain, chain.count + 1, "gravity");
	good_chain(&chain);
	chain.convention = CHAIN_STANDARD_DH;
	chain.link[2].alpha = NAN;
	expect_fault(&chain, 2, "DH");
}

Test(chain_fault, frames_and_joints)
{
	struct chain chain;
	good_chain(&chain);
	chain.link[1].rotation[4] *= 1.01;
	chain.link[1].rotation[5] += 0.01;
	expect_fault(&chain, 1, "rotation");
	good_chain(&chain);
	for (int i = 0; i < 3; i++)
		chain.link[1].rotation[i] = -chain.link[1].rotation[i];
	expect_fault(&chain, 1, "left-handed");
	good_chain(&chain);
	chain.link[1].position[0] = NAN;
	expect_fault(&chain, 1, "frame");
	good_chain(&chain);
	chain.link[0].kind = (enum joint_kind)7;
	expect_fault(&chain, 0, "neither revolute nor prismatic");
	good_chain(&chain);
	chain.count = 0;
	expect_fault(&chain, 1, "no joint");
	chain.count = MAX_JOINTS_OF_ARM + 1;
	expect_fault(&chain, MAX_JOINTS_OF_ARM + 2, "12 joints");
	good_chain(&chain);
	chain.convention = (enum chain_convention)5;
	expect_fault(&chain, chain.count + 1, "convention");
}

/* From a floor to a wall, and turned: a rotation or nothing at all. */
Test(chain_fault, mounting)
{
	struct chain chain;
	struct dice dice = dice_open(cases_seed(), 4);
	size_t link;
	good_chain(&chain);
	cr_expect_null(chain_fault(&chain, &link), "none");
	for (int k = 0; k < 100; k++) {
		rotation_random(&dice, chain.mounting);
		cr_expect_null(chain_fault(&chain, &link), "turned, case %d", k);
	}
	double turned[9];
	memcpy(turned, chain.mounting, sizeof turned);
	chain.mounting[4] += 1e-3;
	expect_fault(&chain, chain.count + 1, "mounting");
	for (int i = 0; i < 9; i++)
		chain.mounting[i] = -turned[i];
	expect_fault(&chain, chain.count + 1, "left-handed");
	memset(chain.mounting, 0, sizeof chain.mounting);
	chain.mounting[8] = 1;
	expect_fault(&chain, chain.count + 1, "mounting");
	memcpy(chain.mounting, turned, sizeof turned);
	chain.mounting[0] = NAN;
	expect_fault(&chain, chain.count + 1, "finite");
}
