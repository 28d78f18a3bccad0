#include "sheets/piece_weight.h"

#include "base/buf.h"
#include "reckon/metal.h"
#include "reckon/pipe.h"
#include "reckon/stock.h"
#include "reckon/weight.h"
#include "units/trade.h"

static bool says_word(str words, str want)
{
	return str_find(words, want, 0) < words.n;
}

/* The metal of a piece's words, by its name or else by its sort. */
static const struct metal *metal_of(str words)
{
	static const str sorts[METAL_COUNT] = { [METAL_STEEL] = STR("mild steel"),
		[METAL_STAINLESS] = STR("304"), [METAL_ALUMINUM] = STR("aluminum"),
		[METAL_GALVANIZED] = STR("mild steel") };
	const struct metal *m = metal_find(words);

	return m || !sorts[sheet_metal_of(words)].n ? m : metal_find(sorts[sheet_metal_of(words)]);
}

/* Section in mm2 and the length that goes with it; 0 when the sizes do not tell. */
static double section_of(const struct assignment *x, const struct piece *p, double *length_mm)
{
	const struct quantity *d = p->dims;
	bool angle = says_word(p->material, STR("angle"));
	bool tube = says_word(p->material, STR("tube"));
	double wall = p->ndims == 4 ? d[2].lo : piece_wall_mm(x, p);

	*length_mm = p->ndims ? d[p->ndims - 1].lo : 0;
	if (p->ndims < 3 || (p->ndims == 4 && !angle && !tube))
		return 0;
	if (!angle && !tube)
		return stock_rectangle_mm2(d[0].lo, d[1].lo);
	/* 2 x 0.065 is a tube and its wall; 2 x 2 is a square one. */
	if (tube && p->ndims == 3 && d[1].lo < d[0].lo / 2)
		return stock_round_tube_mm2(d[0].lo, d[1].lo);
	if (!(wall > 0) || 2 * wall >= d[0].lo || 2 * wall >= d[1].lo)
		return 0;
	return angle ? stock_angle_mm2(d[0].lo, d[1].lo, wall)
	             : stock_square_tube_mm2(d[0].lo, d[1].lo, wall);
}

/* 1 lb/in3 is 27679.905 kg/m3 (NIST SP 811, from pound and inch). */
static void add_metric_steps(struct buf *b, double mm2, double length_mm, double density)
{
	buf_add_real(b, mm2, 1, true);
	buf_adds(b, " mm2 x ");
	buf_add_real(b, length_mm, 2, false);
	buf_adds(b, " mm x ");
	buf_add_real(b, density * 27679.905, 0, false);
	buf_adds(b, " kg/m3 / 10^9");
}

static void add_steps(struct arena *a, struct piece_weight *out, double mm2,
    double length_mm, double density, bool metric)
{
	struct buf b = { .arena = a };

	if (metric) {
		add_metric_steps(&b, mm2, length_mm, density);
		out->steps = buf_str(&b);
		return;
	}
	buf_add_real(&b, mm2 / 645.16, 4, true);
	buf_adds(&b, " in2 x ");
	buf_add_real(&b, length_mm / 25.4, 3, false);
	buf_adds(&b, " in x ");
	buf_add_real(&b, density, 4, false);
	buf_adds(&b, " lb/in3");
	out->steps = buf_str(&b);
}

/* A pound a foot is 1.488164 kg a meter. */
static void pipe_steps(struct buf *b, double lb_ft, double length_mm, bool metric)
{
	buf_add_real(b, lb_ft * (metric ? 0.45359237 / 0.3048 : 1), 2, true);
	buf_adds(b, metric ? " kg/m x " : " lb/ft x ");
	buf_add_real(b, length_mm / (metric ? 1000 : 304.8), 3, false);
	buf_adds(b, metric ? " m" : " ft");
}

bool piece_weigh(struct arena *a, const struct assignment *x, const struct piece *p,
    bool metric, struct piece_weight *out)
{
	const struct metal *m = metal_of(p->material);
	double length, mm2;

	if (p->pipe.od_mm > 0 && p->pipe.wall_mm > 0 && p->ndims) {
		struct buf b = { .arena = a };
		double lb_ft = pipe_weight_lb_ft(p->pipe.od_mm, p->pipe.wall_mm);

		pipe_steps(&b, lb_ft, p->dims[0].lo, metric);
		*out = (struct piece_weight){ lb_ft * p->dims[0].lo / 304.8, buf_str(&b),
			metric ? "ASME B36.10M, 0.024658 (D - t) t" : "ASME B36.10M, 10.69 (D - t) t", false };
		return true;
	}
	mm2 = section_of(x, p, &length);
	if (!m || !(mm2 > 0) || !(length > 0))
		return false;
	*out = (struct piece_weight){ weight_lb(mm2 * length, m->density_lb_in3), { 0 },
		"geometry", seen_of(m->density_verified) == SEEN_MEMORY };
	add_steps(a, out, mm2, length, m->density_lb_in3, metric);
	return true;
}
