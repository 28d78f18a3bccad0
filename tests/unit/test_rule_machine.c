/* Pieces, holes, bends and specimens against the machines of a shop. */
#include "rule_bench.h"

#include "check/rule_machine.h"

/* The piece stands at line 11. */
#define PIECE(machines, piece) SHEET("coupon", FACT("Material", "A36 plate") \
	FACT("Thickness", "1/4 in") machines, "## Pieces\n\n- part: 1 of " piece "\n")

static void shear(void **state)
{
	static const struct rule_case cases[] = {
		{ "1/4 in stainless", PIECE("", "1/4 x 6 x 8 in 304 plate, sheared"),
		    FINDING_SHEAR_TOO_SMALL, 10, LEVEL_ERROR,
		    "1/4 in [6.4 mm] thick, and the shear takes 0.141 in [3.57 mm] of "
		    "stainless", "plasma table" },
		{ "10 ga stainless, the rated", PIECE("",
		    "10 ga x 6 x 8 in 304 sheet, sheared"), SILENT },
		{ "1/4 in mild steel, the rated", PIECE("",
		    "1/4 x 6 x 8 in A36 plate, sheared"), SILENT },
		{ "5/16 in mild steel", PIECE("", "5/16 x 6 x 8 in A36 plate, sheared"),
		    FINDING_SHEAR_TOO_SMALL, 10, LEVEL_ERROR, "5/16 in", "plasma" },
		{ "3/8 flat bar goes to the ironworker", PIECE("",
		    "3/8 x 8 x 8 in A36 flat bar, sheared"), SILENT },
		{ "bar wider than the ironworker", PIECE("",
		    "3/8 x 9 x 9 in A36 flat bar, sheared"), FINDING_SHEAR_TOO_SMALL, 10,
		    LEVEL_ERROR, "3/8 in", "plasma" },
		/* No figure for aluminum: 1.25 x 1/4 in = 0.3125 in, an estimate. */
		{ "5/16 in aluminum, the estimate", PIECE("",
		    "5/16 x 6 x 8 in 5052-H32 plate, sheared"), SILENT },
		{ "3/8 in aluminum", PIECE("", "3/8 x 6 x 8 in 5052-H32 plate, sheared"),
		    FINDING_SHEAR_TOO_SMALL, 10, LEVEL_WARNING, "about 5/16 in",
		    "plasma" },
		/* A steel of 65 ksi on a shear rated for mild steel: 1/4 x 60/65 = 0.231 in. */
		{ "1/4 in of a stronger steel", PIECE("",
		    "1/4 x 6 x 8 in A572-50 plate, sheared"), FINDING_SHEAR_TOO_SMALL, 10,
		    LEVEL_WARNING, "about 0.231 in", "plasma" },
		{ "10 ft cut, as long as the bed", PIECE("",
		    "11 ga x 20 x 120 in A1011 sheet, sheared"), SILENT },
		{ "longer than the bed", PIECE("",
		    "11 ga x 20 x 121 in A1011 sheet, sheared"), FINDING_SHEAR_TOO_SMALL,
		    10, LEVEL_ERROR, "121 in", "no machine" },
		{ "a mill width needs one crosscut", PIECE("",
		    "11 ga x 48 x 144 in A1011 sheet, sheared"), SILENT },
		{ "two pieces of one thickness, one finding", PIECE("",
		    "1/4 x 6 x 8 in 304 plate, sheared\n- end: 2 of 1/4 x 3 x 3 in 304 "
		    "plate, sheared"), FINDING_SHEAR_TOO_SMALL, 10, LEVEL_ERROR, "part",
		    "plasma" },
		{ "not sheared", PIECE("", "1/2 x 6 x 8 in A36 plate, stock"), SILENT },
	};

	(void)state;
	EXPECT_CASES(cases);
}

static void saw_and_table(void **state)
{
	static const struct rule_case cases[] = {
		{ "pipe wider than the saw", PIECE("",
		    "NPS 12 schedule 40 x 6 in A53 pipe, sawn"), FINDING_SAW_TOO_SMALL, 10,
		    LEVEL_ERROR, "10 in round", "another machine" },
		{ "NPS 8, 8-5/8 in", PIECE("", "NPS 8 schedule 40 x 6 in A53 pipe, sawn"),
		    SILENT },
		{ "plate as wide as the saw", PIECE("",
		    "1/4 x 16 x 20 in A36 plate, sawn"), SILENT },
		{ "plate wider than the saw", PIECE("",
		    "1/4 x 16-1/8 x 20 in A36 plate, sawn"), FINDING_SAW_TOO_SMALL, 10,
		    LEVEL_ERROR, "9 x 16 in rectangle", "plasma" },
		{ "plate for the table, the thickest", PIECE(FACT("Machines",
		    "plasma table"), "3/4 x 60 x 120 in A36 plate, plasma cut"), SILENT },
		{ "too thick for the table", PIECE(FACT("Machines", "plasma table"),
		    "7/8 x 6 x 12 in A36 plate, plasma cut"), FINDING_TABLE_TOO_SMALL, 11,
		    LEVEL_ERROR, "7/8 in", "track torch and write \"torch cut\"" },
		{ "aluminum too thick for it goes to the saw, not to a torch",
		    PIECE(FACT("Machines", "plasma table"),
		    "7/8 x 6 x 12 in 5052-H32 plate, plasma cut"), FINDING_TABLE_TOO_SMALL,
		    11, LEVEL_ERROR, "7/8 in", "sawn" },
		{ "too long for the table", PIECE(FACT("Machines", "plasma table"),
		    "1/4 x 6 x 121 in A36 plate, plasma cut"), FINDING_TABLE_TOO_SMALL, 11,
		    LEVEL_ERROR, "does not lie", "smaller" },
		{ "hand plasma is not the table", PIECE("",
		    "7/8 x 6 x 12 in A36 plate, plasma cut"), SILENT },
	};

	(void)state;
	EXPECT_CASES(cases);
}

/* The plate block opens at line 12; its first hole or bend is at line 16. */
#define PLATE(machines, size, marks) SHEET("coupon", FACT("Material", "A36 plate") \
	FACT("Thickness", "1/4 in") FACT("Machines", machines), \
	"## Drawing\n\n```plate\n" size "\n" marks "```\n")
#define BLANK(t) "length: 12 in\nwidth: 8 in\nthickness: " t

static void holes(void **state)
{
	static const struct rule_case cases[] = {
		{ "1/2 in hole in 5/8 in plate", PLATE("ironworker", BLANK("5/8 in"),
		    "hole: 1, 1, 1/2 in\nhole: 3, 1, 1/2 in\n"),
		    FINDING_HOLE_TOO_SMALL_TO_PUNCH, 15, LEVEL_ERROR, "1/2 in [12.7 mm]",
		    "drill press, or make the hole 5/8 in" },
		{ "hole as wide as thick", PLATE("ironworker", BLANK("1/2 in"),
		    "hole: 1, 1, 1/2 in\n"), SILENT },
		{ "hole as wide as the punch", PLATE("ironworker", BLANK("1/4 in"),
		    "hole: 1, 1, 1-1/16 in\n"), SILENT },
		{ "hole wider than the punch", PLATE("ironworker", BLANK("1/4 in"),
		    "hole: 1, 1, 1-1/8 in\n"), FINDING_PUNCH_TOO_SMALL, 15, LEVEL_ERROR,
		    "1-1/8 in", "plasma" },
		/* 3.1416 x 1.0625 x 0.75 x 50 / 2 = 62.6 tons of 65. */
		{ "62.6 tons of 65", PLATE("ironworker", BLANK("3/4 in"),
		    "hole: 1, 1, 1-1/16 in\n"), SILENT },
		/* 3.1416 x 1.0625 x 0.8125 x 50 / 2 = 67.8 tons. */
		{ "67.8 tons of 65", PLATE("ironworker", BLANK("13/16 in"),
		    "hole: 1, 1, 1-1/16 in\n"), FINDING_PUNCH_TOO_SMALL, 15, LEVEL_WARNING,
		    "67.8 tons", "or cut it with the torch" },
		{ "a drill in the list leaves it open", PLATE("ironworker, drill press",
		    BLANK("5/8 in"), "hole: 1, 1, 1/2 in\n"), SILENT },
		{ "unless the steps punch", PLATE("ironworker, drill press",
		    BLANK("5/8 in"), "hole: 1, 1, 1/2 in\n")
		    "\n## Procedure\n\n1. Punch the hole.\n",
		    FINDING_HOLE_TOO_SMALL_TO_PUNCH, 15, LEVEL_ERROR, "1/2 in", "5/8" },
		{ "a center punch is no punch", PLATE("ironworker, drill press",
		    BLANK("5/8 in"), "hole: 1, 1, 1/2 in\n")
		    "\n## Procedure\n\n1. Center-punch the hole.\n", SILENT },
		{ "drilled, as wide as the drill", PLATE("drill press", BLANK("1/4 in"),
		    "hole: 1, 1, 3/4 in\n"), SILENT },
		{ "drilled too wide", PLATE("drill press", BLANK("1/4 in"),
		    "hole: 1, 1, 13/16 in\n"), FINDING_DRILL_TOO_SMALL, 15, LEVEL_ERROR,
		    "13/16 in", "smaller" },
	};

	(void)state;
	EXPECT_CASES(cases);
}

#define BLANK_OF(length, width, t) "length: " length "\nwidth: " width "\nthickness: " t

static void bends(void **state)
{
	static const struct rule_case cases[] = {
		/* V to 12 t = 2.25 in: 575 x 0.1875^2 / 2 x 8 = 80.9 tons; in the 3 in V
		 * 53.9 tons. */
		{ "8 ft of 3/16 in", PLATE("brake", BLANK_OF("12 in", "96 in", "3/16 in"),
		    "bend: 6 in\n"), FINDING_BRAKE_TOO_SMALL, 15, LEVEL_ERROR,
		    "80.9 tons in the 2 in [50.8 mm] V, and the brake has 60",
		    "the 3 in [76.2 mm] V takes 53.9 tons" },
		/* 575 x 0.0625 / 3 x 5.0087 = 60 tons: 60.1 in is 5.0083 ft. */
		{ "1/4 in as long as 60 tons bend", PLATE("brake", BLANK_OF("12 in",
		    "60.1 in", "1/4 in"), "bend: 6 in\n"), SILENT },
		{ "a little longer", PLATE("brake", BLANK_OF("12 in", "60.2 in",
		    "1/4 in"), "bend: 6 in\n"), FINDING_BRAKE_TOO_SMALL, 15, LEVEL_ERROR,
		    "tons in the 3 in", "bend no more than 5 ft" },
		/* 1/2 in takes the 3 in V: 575 x 0.25 / 3 = 47.9 tons a foot, so that 60 tons
		 * bend 15.03 in. */
		{ "a piece short enough", PLATE("brake", BLANK_OF("12 in", "60 in",
		    "1/2 in"), "bend: 6 in\n"), FINDING_BRAKE_TOO_SMALL, 15, LEVEL_ERROR,
		    "239.6 tons", "bend no more than 15 in [381 mm] at a time" },
		{ "no length worth bending", PLATE("brake", BLANK_OF("12 in", "61 in",
		    "1/2 in"), "bend: 6 in\n"), FINDING_BRAKE_TOO_SMALL, 15, LEVEL_ERROR,
		    "243.6 tons", "a brake of 244 tons or more" },
		{ "longer than the bed", PLATE("brake", BLANK_OF("12 in", "97 in",
		    "11 ga"), "bend: 6 in\n"), FINDING_BRAKE_TOO_SMALL, 15, LEVEL_ERROR,
		    "97 in", "shorter" },
		{ "as long as the bed", PLATE("brake", BLANK_OF("12 in", "96 in",
		    "14 ga"), "bend: 6 in\n"), SILENT },
		{ "1 in plate", PLATE("brake", BLANK_OF("12 in", "4 in", "1 in"),
		    "bend: 6 in\n"), FINDING_BRAKE_TOO_SMALL, 15, LEVEL_ERROR,
		    "no V of the brake", "thinner" },
		/* 11 ga takes the 1 in V: 0.7 in of flange. */
		{ "flange at 0.7 of the V", PLATE("brake", BLANK_OF("6 in", "2 in",
		    "11 ga"), "bend: 0.7 in\n"), SILENT },
		{ "flange too short", PLATE("brake", BLANK_OF("6 in", "2 in", "11 ga"),
		    "bend: 11/16 in\n"), FINDING_FLANGE_TOO_SHORT, 15, LEVEL_WARNING,
		    "11/16 in", "23/32 in" },
		{ "bends too near each other", PLATE("brake", BLANK_OF("6 in", "2 in",
		    "11 ga"), "bend: 3 in\nbend: 3-1/2 in\n"), FINDING_FLANGE_TOO_SHORT, 15,
		    LEVEL_WARNING, "1/2 in", "23/32 in" },
		{ "no brake in the list", PLATE("shear", BLANK_OF("12 in", "96 in",
		    "1/2 in"), "bend: 6 in\n"), SILENT },
	};

	(void)state;
	EXPECT_CASES(cases);
}

#define BRAKED(t, flanges, width) SHEET("coupon", FACT("Material", "A36 plate") \
	FACT("Thickness", t) FACT("Machines", "brake"), "## Drawing\n\n```pattern\n" \
	"shape: brake\nflanges: " flanges "\nbends: 90 deg\ndirections: up, up\n" \
	"radius: 1/4 in\nK: 0.42\nwidth: " width "\n```\n")

/* The same figures as on a blank with bend lines. */
static void braked_parts(void **state)
{
	static const struct rule_case cases[] = {
		{ "8 ft of 3/16 in", BRAKED("3/16 in", "3, 6, 3 in", "96 in"),
		    FINDING_BRAKE_TOO_SMALL, 11, LEVEL_ERROR,
		    "80.9 tons in the 2 in [50.8 mm] V, and the brake has 60",
		    "the 3 in [76.2 mm] V takes 53.9 tons" },
		{ "1/4 in as long as 60 tons bend", BRAKED("1/4 in", "3, 6, 3 in",
		    "60.1 in"), SILENT },
		{ "longer than the bed", BRAKED("1/8 in", "3, 6, 3 in", "97 in"),
		    FINDING_BRAKE_TOO_SMALL, 11, LEVEL_ERROR, "97 in", "shorter" },
		/* 1/8 in takes the 1 in V: 0.7 in of flange, at either end or between. */
		{ "flange at 0.7 of the V", BRAKED("1/8 in", "0.7, 2, 1 in", "4 in"),
		    SILENT },
		{ "flange too short", BRAKED("1/8 in", "1, 2, 11/16 in", "4 in"),
		    FINDING_FLANGE_TOO_SHORT, 11, LEVEL_WARNING, "11/16 in", "23/32 in" },
		{ "bends too near each other", BRAKED("1/8 in", "1, 1/2, 1 in", "4 in"),
		    FINDING_FLANGE_TOO_SHORT, 11, LEVEL_WARNING, "1/2 in", "23/32 in" },
	};

	(void)state;
	EXPECT_CASES(cases);
}

#define ROLLED(piece, more) SHEET("project", FACT("Material", "A36 plate") \
	FACT("Thickness", "3/16 in") FACT("Machines", "roll"), "## Pieces\n\n- " piece "\n" more)

static void roll(void **state)
{
	static const struct rule_case cases[] = {
		{ "shell at the limit", ROLLED("shell: 1 of 3/16 x 48 x 118 in A36 plate",
		    "\n## Acceptance\n\n- **Roundness:** inside diameter 10 in\n"), SILENT },
		{ "shell too thick", ROLLED("shell: 1 of 1/4 x 14 x 118 in A36 plate", ""),
		    FINDING_ROLL_TOO_SMALL, 11, LEVEL_ERROR, "1/4 in", "change" },
		{ "shell too wide", ROLLED("shell: 1 of 3/16 x 49 x 118 in A36 plate", ""),
		    FINDING_ROLL_TOO_SMALL, 11, LEVEL_ERROR, "49 in", "change" },
		{ "diameter too small", ROLLED("shell: 1 of 3/16 x 14 x 30 in A36 plate",
		    "\n## Acceptance\n\n- **Roundness:** inside diameter 9 in\n"),
		    FINDING_ROLL_TOO_SMALL, 15, LEVEL_ERROR, "10 in [254 mm] at least",
		    "change" },
		{ "diameter of the drawn cylinder too small", ROLLED(
		    "shell: 1 of 3/16 x 14 x 30 in A36 plate", "\n## Drawing\n\n"
		    "```pattern\nshape: cylinder\noutside diameter: 9 in\nheight: 12 in\n"
		    "```\n"), FINDING_ROLL_TOO_SMALL, 15, LEVEL_ERROR,
		    "10 in [254 mm] at least", "change" },
		{ "and at the limit", ROLLED("shell: 1 of 3/16 x 14 x 32 in A36 plate",
		    "\n## Drawing\n\n```pattern\nshape: cylinder\noutside diameter: 10 in\n"
		    "height: 12 in\n```\n"), SILENT },
		/* By reckon/machine.h: 3/16 x sqrt(60 / 75) = 0.168 in of 304 at full width, all
		 * of 3/16 where the piece is narrow. */
		{ "stainless as wide as the roll", ROLLED(
		    "shell: 1 of 3/16 x 48 x 118 in 304 plate", ""),
		    FINDING_ROLL_TOO_SMALL, 11, LEVEL_WARNING, "0.168 in", "change" },
		{ "narrow stainless", ROLLED("shell: 1 of 3/16 x 14 x 118 in 304 plate", ""),
		    SILENT },
		{ "another piece is not rolled", ROLLED("lug: 1 of 1/2 x 3 x 3 in A36 plate",
		    ""), SILENT },
	};

	(void)state;
	EXPECT_CASES(cases);
}

#define PULLED(t) SHEET("coupon", FACT("Material", "A36 plate") FACT("Thickness", t), \
	"## Acceptance\n\n- **Tensile:** 1, 58 ksi or more\n")

static void frame(void **state)
{
	static const struct rule_case cases[] = {
		/* 3/4 x 1 in at 80 ksi is 60,000 lbf, what the frame has. */
		{ "1 in plate, the most", PULLED("1 in"), SILENT },
		{ "1-1/8 in plate", PULLED("1-1/8 in"), FINDING_FRAME_TOO_SMALL, 10,
		    LEVEL_WARNING, "67500 lbf", "thinner" },
		{ "thicker than the grips", PULLED("1-3/4 in"), FINDING_FRAME_TOO_SMALL, 10,
		    LEVEL_WARNING, "grips", "thinner" },
	};

	(void)state;
	EXPECT_CASES(cases);
}

static void limits_are_read(void **state)
{
	struct bench t = rule_bench("# SM-90: Case\n");
	static const char *const table[] = { "Table", NULL };
	double small, large;

	(void)state;
	for (size_t i = 0; i < t.m->nmachines; i++) {
		const struct machine *m = &t.m->machines[i];

		if (str_eq(m->name, STR("tensile frame")))
			expect_near(machine_lbf(m), 60000);
		if (str_eq(m->name, STR("brake")))
			expect_near(machine_lbf(m), 120000);
		if (!str_eq(m->name, STR("plasma table")))
			continue;
		assert_true(machine_box(m, table, &small, &large));
		expect_near(small, 1524);
		expect_near(large, 3048);
	}
	bench_free(&t);
}

#define SHEARED(id, piece) "# " id ": Cut\n\n- **Kind:** drill\n- **Hours:** 1\n\n" \
	"## Pieces\n\n- part: 1 of " piece ", sheared\n\n"

static const struct finding *nth_shear(const struct bench *t, size_t n)
{
	for (size_t i = 0; i < t->f->n; i++)
		if (t->f->v[i].name == FINDING_SHEAR_TOO_SMALL && !n--)
			return &t->f->v[i];
	return NULL;
}

/* One sheet over a limit is told there, two at the limit in shop.md; what goes by
 * another limit, or is judged by an estimate, stands apart. */
static void one_limit_is_one_finding(void **state)
{
	struct bench t = rule_bench(SHEARED("SM-90", "5/16 x 6 x 8 in A36 plate")
	    SHEARED("SM-91", "3/8 x 6 x 8 in A36 plate")
	    SHEARED("SM-92", "1/4 x 6 x 8 in 304 plate")
	    SHEARED("SM-93", "3/8 x 6 x 8 in 5052-H32 plate")
	    SHEARED("SM-94", "1/4 x 6 x 8 in A36 plate"));
	const struct finding *d;

	(void)state;
	d = nth_shear(&t, 0);
	assert_non_null(d);
	assert_int_equal(d->assignment.n > 0, 1);
	d = NULL;
	for (size_t i = 0; nth_shear(&t, i); i++)
		if (!nth_shear(&t, i)->assignment.n)
			d = nth_shear(&t, i);
	assert_non_null(d);
	assert_true(str_eq(d->message, STR("2 sheets ask for what the shear does not take "
	    "(Mild steel: 1/4 in)")));
	assert_int_equal(d->nrelated, 2);
	assert_true(str_eq(d->related[0].assignment, STR("SM-90")));
	assert_true(str_eq(d->related[1].assignment, STR("SM-91")));
	assert_non_null(nth_shear(&t, 2));
	assert_null(nth_shear(&t, 3));
	bench_free(&t);
}

/* A shop of one machine with one limit, which no sheet asks for. */
static void limits_that_nobody_reads(void **state)
{
	static const struct {
		const char *machine, *limit;
		enum finding_name name;  /* FINDING_COUNT: none */
		const char *message, *repair;
	} cases[] = {
		{ "shear", "**Bed:** 10 ft", FINDING_COUNT, "", "" },
		{ "shear", "**Be:** 10 ft", FINDING_UNKNOWN_KEY, "no limit of the shear", "\"Bed\"" },
		{ "shear", "**Bead:** 10 ft", FINDING_UNKNOWN_KEY, "Bead", "\"Bed\"" },
		{ "shear", "**Beads:** 10 ft", FINDING_COUNT, "", "" },
		{ "shear", "**Midl stel:** 1/4 in", FINDING_UNKNOWN_KEY, "Midl stel",
		    "\"Mild steel\"" },
		{ "shear", "**Bed:** 10 xt", FINDING_BAD_QUANTITY, "so Bed of the shear",
		    "if that is what is meant" },
		/* Words alone say that there is no such limit. */
		{ "shear", "**Stainless:** not cut here", FINDING_COUNT, "", "" },
		{ "shear", "**Mild steel:** 11 ga", FINDING_COUNT, "", "" },
		{ "brake", "**Force:** 60 tonnes", FINDING_COUNT, "", "" },
		{ "brake", "**Force:** 60 fon", FINDING_BAD_QUANTITY, "60 fon", "\"60 ton\"" },
		{ "brake", "**Die openings:** 1/2, 1 in", FINDING_COUNT, "", "" },
		{ "brake", "**V openings:** 1/2, 1 xn", FINDING_BAD_QUANTITY, "V openings",
		    "\"1/2, 1, 2 in\"" },
		{ "ironworker", "**Flat bar:** 3/4 x 8 in", FINDING_COUNT, "", "" },
		{ "ironworker", "**Flat bar:** 3/4 x 8 xn", FINDING_BAD_QUANTITY, "Flat bar",
		    "\"3/4 x 8 in\"" },
		/* Limits of its own, and those of a machine that no rule knows. */
		{ "ironworker", "**Notch:** 1/4 xn", FINDING_COUNT, "", "" },
		{ "hammer", "**Bedd:** 10 xt", FINDING_COUNT, "", "" },
	};

	(void)state;
	for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
		char shop[200];
		struct file_text file = { "shop.md", shop };
		struct bench t;

		snprintf(shop, sizeof shop, "# Shop\n\n## Machine %s\n\n- %s\n",
		    cases[i].machine, cases[i].limit);
		t = bench_bind(&file, 1);
		check_program(t.arena, t.m, t.f);
		if (t.f->n != (cases[i].name != FINDING_COUNT) || (t.f->n &&
		    (t.f->v[0].name != cases[i].name || t.f->v[0].level != LEVEL_WARNING ||
		    !str_has(t.f->v[0].message, cases[i].message) ||
		    !str_has(t.f->v[0].repair, cases[i].repair)))) {
			print_findings(&t);
			fail_msg("%s", cases[i].limit);
		}
		bench_free(&t);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(limits_that_nobody_reads),
		cmocka_unit_test(shear), cmocka_unit_test(saw_and_table),
		cmocka_unit_test(holes), cmocka_unit_test(bends), cmocka_unit_test(braked_parts),
		cmocka_unit_test(roll),
		cmocka_unit_test(frame),
		cmocka_unit_test(one_limit_is_one_finding), cmocka_unit_test(limits_are_read),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
