/* reckon/gauge.h - sheet gauge to thickness and weight.
 *
 * Steel: Manufacturers Standard Gauge; aluminum: American (Brown & Sharpe);
 * stainless: U.S. Standard; galvanized: galvanized sheet gauge, coating included.
 * Some mills sell stainless on the steel gauge: measure the sheet. */
#ifndef RECKON_GAUGE_H
#define RECKON_GAUGE_H

#include "units/trade.h"

/* Exact mm of the gauge, or 0 when the table has no such gauge. */
double gauge_thickness_mm(enum sheet_metal metal, unsigned gauge);
const char *gauge_source(enum sheet_metal metal);

#endif
