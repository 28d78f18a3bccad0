#include "reckon/gas.h"

#include <stddef.h>

static const struct gas_flow rows[] = {
#include "reckon/gas_flow.inc"
};

const struct gas_flow *gas_flow_find(str process, enum metal_family family,
    double dia_mm)
{
	if (str_starts_nocase(process, STR("GMAW")))
		process = STR("GMAW");
	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		const struct gas_flow *r = &rows[i];

		if (str_eq_nocase(process, str_of(r->process)) &&
		    (r->family == FAMILY_OTHER || r->family == family) &&
		    band_holds(dia_mm / 25.4, r->dia_lo_in, r->dia_lo_in > 0,
		        r->dia_hi_in, false))
			return r;
	}
	return NULL;
}
