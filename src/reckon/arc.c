#include "reckon/arc.h"

static const double pi = 3.14159265358979323846;

double heat_input_kj_in(double volts, double amps, double speed_in_min,
    double efficiency)
{
	return 60 * volts * amps / speed_in_min / 1000 * efficiency;
}

double arc_hours_by_length(double length_mm, double speed_in_min, double passes)
{
	return length_mm / 25.4 / speed_in_min * passes / 60;
}

double arc_hours_by_weight(double deposit_lb, double rate_lb_h)
{
	return deposit_lb / rate_lb_h;
}

double clock_hours(double arc_hours, double operating_percent)
{
	return arc_hours * 100 / operating_percent;
}

double efficiency_at_stub(double row_percent, double electrode_mm, double stub_mm)
{
	return row_percent * (electrode_mm - stub_mm) / (electrode_mm - 2 * 25.4);
}

double efficiency_after_spatter(double percent, double spatter_percent)
{
	return percent * (100 - spatter_percent) / 100;
}

double wire_deposit_lb_h(double dia_mm, double feed_in_min, double density_lb_in3,
    double efficiency_percent)
{
	double dia_in = dia_mm / 25.4;

	return pi / 4 * dia_in * dia_in * feed_in_min * 60 * density_lb_in3 *
	    efficiency_percent / 100;
}

double gas_ft3(double flow_cfh, double arc_hours)
{
	return flow_cfh * arc_hours;
}

double purge_minutes(double bore_mm, double length_mm, double changes,
    double flow_cfh)
{
	double ft3 = pi / 4 * bore_mm * bore_mm * length_mm / (304.8 * 304.8 * 304.8);

	return changes * ft3 / flow_cfh * 60;
}
