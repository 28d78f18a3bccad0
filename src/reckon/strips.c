#include "reckon/strips.h"

static const double pi = 3.14159265358979323846;

double strip_width_mm(enum strip_sort sort, double od_mm)
{
	if (sort == STRIP_SIDE)
		return 0.375 * 25.4;
	if (sort == STRIP_NICK)
		return 25.4;
	return od_mm > 0 && od_mm <= 4 * 25.4 + 1e-6 ? 25.4 : 1.5 * 25.4;
}

double strips_length_mm(size_t n, double width_mm, double discard_mm, double kerf_mm)
{
	return 2 * discard_mm + (double)n * width_mm + (double)(n + 1) * kerf_mm;
}

struct strip strip_on_plate(size_t i, size_t n, double length_mm, double width_mm,
    double discard_mm)
{
	double free_mm = length_mm - 2 * discard_mm - (double)n * width_mm;
	double space_mm = free_mm / (double)(n + 1);
	double from_mm = discard_mm + space_mm + (double)i * (width_mm + space_mm);

	return (struct strip){ from_mm, from_mm + width_mm, 0 };
}

void strips_on_plate(const double *width_mm, size_t n, double length_mm,
    double discard_mm, struct strip *out)
{
	double free_mm = length_mm - 2 * discard_mm, at_mm = discard_mm;

	for (size_t i = 0; i < n; i++)
		free_mm -= width_mm[i];
	for (size_t i = 0; i < n; i++) {
		at_mm += free_mm / (double)(n + 1);
		out[i] = (struct strip){ at_mm, at_mm + width_mm[i], 0 };
		at_mm += width_mm[i];
	}
}

double strips_round_mm(size_t n, double width_mm, double kerf_mm)
{
	return (double)n * (width_mm + kerf_mm);
}

struct strip strip_on_pipe(size_t i, size_t n, double od_mm, double width_mm,
    double first_deg)
{
	double deg = first_deg + 360 * (double)i / (double)n;
	double middle_mm = deg / 360 * pi * od_mm;

	return (struct strip){ middle_mm - width_mm / 2, middle_mm + width_mm / 2, deg };
}
