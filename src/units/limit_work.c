/* Working an expression out. */
#include "units/limit_op.h"

#include <math.h>

void limit_size_set(struct limit_sizes *z, enum limit_name name, double mm)
{
	z->v[name] = mm;
	z->known[name] = mm > 0;
}

void limit_sizes_fillet(struct limit_sizes *z, double leg_mm, double leg2_mm)
{
	bool alike = !(leg2_mm > 0);

	limit_size_set(z, SIZE_LEG, alike || leg_mm < leg2_mm ? leg_mm : leg2_mm);
	limit_size_set(z, SIZE_THROAT, alike ? leg_mm / sqrt(2)
	    : leg_mm * leg2_mm / hypot(leg_mm, leg2_mm));
	limit_size_set(z, SIZE_WIDTH, alike ? leg_mm * sqrt(2) : hypot(leg_mm, leg2_mm));
}

/* The worst state of what goes in is that of what comes out. */
struct value { double v; enum limit_state state; size_t at; };

static bool compares(enum op op, double x, double y)
{
	const double noise_mm = 1e-6 * 25.4;

	switch (op) {
	case OP_LESS:
		return x < y - noise_mm;
	case OP_AT_MOST:
		return x <= y + noise_mm;
	case OP_MORE:
		return x > y + noise_mm;
	case OP_AT_LEAST:
		return x >= y - noise_mm;
	default:
		return fabs(x - y) <= noise_mm;
	}
}

static struct value worse(struct value x, struct value y)
{
	return x.state >= y.state ? x : y;
}

static struct value settled(double v)
{
	return (struct value){ v, isfinite(v) ? LIMIT_KNOWN : LIMIT_ENDLESS, 0 };
}

/* One known side can decide: false and anything is false. */
static struct value join(bool and, struct value x, struct value y)
{
	double decides = and ? 0 : 1;

	if ((x.state == LIMIT_KNOWN && x.v == decides) ||
	    (y.state == LIMIT_KNOWN && y.v == decides))
		return settled(decides);
	return (struct value){ 1 - decides, worse(x, y).state, worse(x, y).at };
}

static struct value divide(struct value x, struct value y, size_t at)
{
	const double noise = 1e-9;

	if (y.state == LIMIT_KNOWN && fabs(y.v) < noise)
		return (struct value){ 0, LIMIT_BY_ZERO, at };
	return x.state || y.state ? worse(x, y) : settled(x.v / y.v);
}

static struct value work_pair(const struct limit_op *o, struct value x, struct value y)
{
	if (o->op == OP_OVER)
		return divide(x, y, o->at);
	if (o->op == OP_AND || o->op == OP_OR)
		return join(o->op == OP_AND, x, y);
	if (x.state || y.state)
		return worse(x, y);
	switch (o->op) {
	case OP_TIMES:
		return settled(x.v * y.v);
	case OP_PLUS:
		return settled(x.v + y.v);
	case OP_MINUS:
		return settled(x.v - y.v);
	default:
		return settled(compares(o->op, x.v, y.v) ? 1 : 0);
	}
}

static struct value work_call(const struct limit_op *o, const struct value *v)
{
	struct value out = v[0];

	for (unsigned i = 1; i < o->n; i++)
		out = out.state || v[i].state ? worse(out, v[i]) :
		    settled(o->op == OP_MIN ? fmin(out.v, v[i].v) : fmax(out.v, v[i].v));
	return out;
}

static struct value work_operand(const struct limit_op *o,
    const struct limit_sizes *sizes)
{
	if (o->op == OP_NUMBER)
		return settled(o->value);
	return (struct value){ sizes->v[o->n], sizes->known[o->n] ? LIMIT_KNOWN
	    : LIMIT_UNKNOWN, 0 };
}

struct limit_outcome limit_expr_work(const struct limit_expr *e,
    const struct limit_sizes *sizes)
{
	struct value stack[OPS_MOST];
	size_t n = 0;

	for (size_t i = 0; i < e->n; i++) {
		const struct limit_op *o = &e->v[i];
		struct value y;

		if (o->op == OP_NUMBER || o->op == OP_NAME) {
			stack[n++] = work_operand(o, sizes);
		} else if (o->op == OP_MIN || o->op == OP_MAX) {
			n -= o->n;
			stack[n] = work_call(o, &stack[n]);
			n++;
		} else {
			y = stack[n - 1];
			n -= 2;
			stack[n] = work_pair(o, stack[n], y);
			n++;
			if (o->keep)
				stack[n++] = y;
		}
	}
	if (!e->n)
		return (struct limit_outcome){ LIMIT_UNKNOWN, 0, 0 };
	return (struct limit_outcome){ stack[0].state, stack[0].state ? 0 : stack[0].v,
		stack[0].at };
}

bool limit_expr_value(const struct limit_expr *e, const struct limit_sizes *sizes,
    double *out)
{
	struct limit_outcome o = limit_expr_work(e, sizes);

	*out = o.value;
	return o.state == LIMIT_KNOWN;
}
