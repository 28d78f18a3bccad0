#include "reckon/credit.h"

double credit_work_h(double credits, double weeks)
{
	return credits * 3 * weeks;
}

double credit_of_clock_hours(double taught_h, bool quarter)
{
	return taught_h / (quarter ? 20 : 30);
}
