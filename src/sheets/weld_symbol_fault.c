/* Why a joint has no welding symbol: what its block asks for contradicts itself, or the
 * symbol would claim more than is known. */
#include "sheets/weld_symbol.h"

#include "sheets/sheet.h"

/* A square edge up to this is taken to be melted through from one side (common practice,
 * no source); above it a square groove without a depth would claim too much. */
#define SQUARE_MOST_MM (0.1875 * 25.4 + 0.01)

static bool asks_for_marks(const struct symbol_marks *k)
{
	return k->standard == SYMBOL_ISO || k->contour || k->contour_back || k->finish ||
	    k->finish_back || k->field || k->all_around || k->back ||
	    given(&k->increment) || k->hole || k->tail.n || k->count || given(&k->spacing) ||
	    given(&k->fill);
}

/* What one of them takes of its row. */
static double along_row_mm(const struct symbol_marks *k)
{
	return k->hole == HOLE_SLOT && !k->slots_across ? k->hole_length.lo : k->hole_width.lo;
}

/* Marks that contradict the joint or one another. */
static str marks_fault(const struct joint_block *j)
{
	const struct symbol_marks *k = &j->marks;

	if (k->hole && j->joint != JOINT_LAP)
		return STR("plugs, slots and spots are welds of a lap");
	if (!k->hole && (given(&k->spacing) || given(&k->fill)))
		return STR("spacing and filling are told of plugs, slots and spots");
	if (given(&k->increment) && k->pitch.lo <= k->increment.lo)
		return STR("the increments are as long as their pitch or longer");
	if (k->standard == SYMBOL_ISO && given(&k->increment) && !k->count)
		return STR("ISO 2553 tells how many increments there are: give \"count\"");
	if (k->hole && given(&k->spacing) && k->spacing.lo <= along_row_mm(k))
		return STR("plugs, slots or spots that run into one another");
	if (k->hole && given(&k->spacing) && given(&j->length) && k->count > 1 &&
	    (k->count - 1) * k->spacing.lo + along_row_mm(k) > j->length.hi + 1e-6)
		return STR("the row of plugs, slots or spots is longer than the weld");
	if (given(&k->increment) && given(&j->length) && k->increment.lo > j->length.hi)
		return STR("an increment is longer than the weld");
	if (k->back && given(&j->backing_t))
		return STR("a backing strip covers the root: no melt-through or weld there");
	if (k->back && preparation_is_double(j->preparation))
		return STR("a double preparation has a groove at its back already");
	return (str){ 0 };
}

str weld_symbol_fault(struct arena *a, const struct assignment *x, const struct joint_block *j)
{
	struct fig_symbol s;
	str why;

	if (!asks_for_marks(&j->marks) || j->marks.standard == SYMBOL_LEFT_OUT)
		return (str){ 0 };
	why = marks_fault(j);
	if (why.n)
		return why;
	if (!weld_symbol_make(a, NULL, x, j, &s))
		return STR("the joint has none, or a size that it shows is not a single one");
	return fig_symbol_fault(&s);
}

bool weld_is_thick_square(const struct joint_block *j)
{
	bool square = j->preparation == PREPARATION_SQUARE ||
	    (j->joint == JOINT_SQUARE_BUTT && !j->preparation);

	return square && j->joint != JOINT_EDGE && !j->both_sides && !j->marks.back &&
	    j->t1.hi > SQUARE_MOST_MM;
}

/* Of the edge weld public guides show two strokes, three strokes and a bracket; no copy of
 * AWS A2.4 or ISO 2553 was at hand to tell which edition has which. */
str weld_symbol_note(const struct edition *e, const struct joint_block *j)
{
	const struct language *l = edition_language(e);

	if (j->marks.standard == SYMBOL_LEFT_OUT)
		return (str){ 0 };
	if (j->joint == JOINT_EDGE && j->preparation < PREPARATION_V)
		return word(l, "No welding symbol: sources differ on the figure of an edge weld. Draw "
		               "it by the edition of the standard that you use.");
	if (weld_is_thick_square(j))
		return word(l, "No welding symbol: a square groove from one side in this thickness "
		               "wants its depth. Draw it by the edition of the standard that you "
		               "use.");
	return (str){ 0 };
}
