/* What the rules of one sheet share. */
#include "check/rule_joint.h"

#include "model/words.h"
#include "units/format.h"

static bool is_letter(char c)
{
	return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

/* Whether a word of s is `want` but for case and begins with this very character. */
static bool says_with(str s, str want, char first)
{
	for (size_t i = str_find_char(s, first, 0); i + want.n <= s.n;
	    i = str_find_char(s, first, i + 1))
		if (!(i && is_letter(s.p[i - 1])) &&
		    str_eq_nocase(str_sub(s, i, i + want.n), want))
			return true;
	return false;
}

bool says(str s, const char *start)
{
	str want = str_of(start);

	return says_with(s, want, start[0]) ||
	    (is_letter(start[0]) && says_with(s, want, (char)(start[0] ^ 0x20)));
}

bool says_any(str s, const char *const *starts)
{
	for (; *starts; starts++)
		if (says(s, *starts))
			return true;
	return false;
}

bool para_says_any(const struct para *p, const char *const *starts)
{
	for (size_t i = 0; i < p->nspans; i++)
		if (says_any(p->spans[i].text, starts))
			return true;
	return false;
}

bool prose_says_any(const struct prose *p, const char *const *starts)
{
	for (size_t i = 0; i < p->n; i++)
		if (para_says_any(&p->v[i], starts))
			return true;
	return false;
}

/* Limits and sizes are compared to half a thousandth, so that a pipe wall of 0.280 in
 * must not print as 9/32 in. */
str say_mm(const struct rule_context *x, double mm)
{
	struct buf b = { .arena = x->f->arena };
	double n = mm / (25.4 / 32), whole = (double)(long)(n + 0.5);
	struct quantity q = { .kind = QUANTITY_LENGTH, .form = FORM_DECIMAL, .lo = mm,
		.hi = mm, .decimals = 3, .unit = "in" };

	if (is_same_mm(mm, whole * 25.4 / 32))
		/* A tolerance of 1/32 in asks for 32nds. */
		format_computed(&b, mm, 25.4 / 32);
	else
		format_length(&b, &q);
	return buf_str(&b);
}

str say_quantity(const struct rule_context *x, const struct quantity *q)
{
	struct buf b = { .arena = x->f->arena };

	format_quantity(&b, q);
	return buf_str(&b);
}

str say_real(const struct rule_context *x, double v, int decimals)
{
	struct buf b = { .arena = x->f->arena };

	buf_add_real(&b, v, decimals, false);
	return buf_str(&b);
}

bool joint_is_fillet(enum joint j)
{
	return j == JOINT_TEE || j == JOINT_LAP || j == JOINT_CORNER;
}

bool joint_is_butt(enum joint j)
{
	return j == JOINT_SQUARE_BUTT || j == JOINT_SINGLE_V || j == JOINT_SINGLE_BEVEL ||
	    j == JOINT_U_GROOVE || j == JOINT_PIPE_BUTT || j == JOINT_BUTT;
}

bool joint_is_pipe(const struct weld *w)
{
	return w->run.od_mm > 0 || w->joint == JOINT_PIPE_BUTT ||
	    w->joint == JOINT_BRANCH || says(w->material1, "pipe") ||
	    says(w->material2, "pipe") || says(w->material1, "tube") ||
	    says(w->material2, "tube") || says(w->material1, "round");
}

bool is_out_of_position(enum position p)
{
	return p == POSITION_3F || p == POSITION_4F || p == POSITION_5F ||
	    p == POSITION_3G || p == POSITION_4G || p == POSITION_5G ||
	    p == POSITION_6G;
}

uint32_t weld_metals(const struct weld *w)
{
	uint32_t bits = UINT32_C(1) << sheet_metal_of(w->material1);

	return w->material2.n ? bits | UINT32_C(1) << sheet_metal_of(w->material2) : bits;
}

bool weld_has_metal(const struct weld *w, enum sheet_metal metal)
{
	return work_has(weld_metals(w), metal);
}

double weld_thin_mm(const struct weld *w)
{
	return w->t2_mm > 0 && w->t2_mm < w->t1_mm ? w->t2_mm : w->t1_mm;
}

double weld_thick_mm(const struct weld *w)
{
	return w->t2_mm > w->t1_mm ? w->t2_mm : w->t1_mm;
}

const struct joint_block *weld_block(const struct assignment *a, size_t i)
{
	const struct joint_block *any = NULL;

	for (size_t k = 0; k < a->ndrawings; k++) {
		const struct joint_block *j = &a->drawings[k].joint;

		if (a->drawings[k].kind != DRAWING_JOINT)
			continue;
		if (j->weld == i)
			return j;
		if (j->weld == NONE && !any && (j->joint == a->welds[i].joint ||
		    (joint_is_butt(j->joint) && joint_is_butt(a->welds[i].joint))))
			any = j;
	}
	return any;
}

bool weld_is_drawn_otherwise(const struct assignment *a, size_t i)
{
	for (size_t k = 0; k < a->ndrawings; k++) {
		const struct joint_block *j = &a->drawings[k].joint;
		enum joint is = a->welds[i].joint;

		if (a->drawings[k].kind == DRAWING_JOINT && j->weld == i &&
		    j->joint != JOINT_COUNT && j->joint != is &&
		    !(joint_is_butt(j->joint) && joint_is_butt(is)))
			return true;
	}
	return false;
}

double weld_leg_mm(const struct assignment *a, size_t i)
{
	const struct joint_block *j = weld_block(a, i);

	if (a->welds[i].leg_mm > 0)
		return a->welds[i].leg_mm;
	return j && joint_is_fillet(j->joint) ? j->leg.lo : 0;
}

double weld_leg2_mm(const struct assignment *a, size_t i)
{
	const struct joint_block *j = weld_block(a, i);

	if (a->welds[i].leg_mm > 0)
		return a->welds[i].leg2_mm > 0 ? a->welds[i].leg2_mm : a->welds[i].leg_mm;
	return j && joint_is_fillet(j->joint) && j->leg2.lo > 0 ? j->leg2.lo
	                                                        : weld_leg_mm(a, i);
}

double weld_length_mm(const struct assignment *a, size_t i)
{
	const struct joint_block *j = weld_block(a, i);

	if (a->welds[i].length_mm > 0)
		return a->welds[i].length_mm;
	return j ? j->length.lo : 0;
}

str weld_say(const struct rule_context *x, const struct weld *w)
{
	static const char *const ways[] = { "", " up", " down" };
	str joint = joint_word(w->joint), at = position_word(w->at.position);
	const char *in = at.n ? " in " : "";

	if (w->letter)
		return str_format(x->f->arena, "weld %c (%.*s%s%.*s%s)", w->letter,
		    STR_ARG(joint), at.n ? ", " : "", STR_ARG(at),
		    at.n ? ways[w->at.progression] : "");
	return str_format(x->f->arena, "the %.*s%s%.*s%s",
	    STR_ARG(joint), in, STR_ARG(at),
	    at.n ? ways[w->at.progression] : "");
}
