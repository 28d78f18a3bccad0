/* Gas flows: the cost worksheet of a filler metal data book (wires); tungsten from memory. */
#include "reckon/gas.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

static void check_flow(const char *process, enum metal_family family, double dia_in,
    double lo, double hi, enum seen seen)
{
	const struct gas_flow *r = gas_flow_find(str_of(process), family, dia_in * 25.4);

	assert_non_null(r);
	assert_true(r->lo_cfh == lo && r->hi_cfh == hi);
	assert_int_equal(seen_of(r->verified), seen);
}

static void rows(void **state)
{
	(void)state;
	check_flow("GMAW-S", FAMILY_STEEL, 0.035, 25, 30, SEEN_PAGE);
	check_flow("gmaw spray", FAMILY_STAINLESS, 0.045, 25, 30, SEEN_PAGE);
	check_flow("FCAW-G", FAMILY_STEEL, 1.0 / 16, 35, 35, SEEN_PAGE);
	check_flow("FCAW-G", FAMILY_STEEL, 5.0 / 64, 40, 45, SEEN_PAGE);
	check_flow("GTAW", FAMILY_STEEL, 0, 10, 20, SEEN_MEMORY);
	check_flow("GTAW", FAMILY_ALUMINUM, 0, 15, 30, SEEN_MEMORY);
	check_flow("GTAW purge", FAMILY_STAINLESS, 0, 10, 20, SEEN_MEMORY);
	assert_null(gas_flow_find(STR("FCAW-S"), FAMILY_STEEL, 1));
	assert_null(gas_flow_find(STR("SMAW"), FAMILY_STEEL, 1));
	assert_null(gas_flow_find(STR(""), FAMILY_STEEL, 1));
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(rows),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
