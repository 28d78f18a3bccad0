#include "sheets/weld_position.h"

#include "sheets/sheet.h"
#include "sheets/weld_symbol.h"
#include "sheets/wording.h"

static const enum fig_place places[POSITION_COUNT] = {
	[POSITION_FLAT] = FIG_FLAT, [POSITION_1F] = FIG_1F, [POSITION_2F] = FIG_2F,
	[POSITION_3F] = FIG_3F, [POSITION_4F] = FIG_4F, [POSITION_5F] = FIG_5F,
	[POSITION_1G] = FIG_1G, [POSITION_2G] = FIG_2G, [POSITION_3G] = FIG_3G,
	[POSITION_4G] = FIG_4G, [POSITION_5G] = FIG_5G, [POSITION_6G] = FIG_6G,
	[POSITION_1G_ROLLED] = FIG_1G_ROLLED, [POSITION_1F_ROLLED] = FIG_1F_ROLLED,
};

/* What stands in the sketch by itself, with prepared edges, with round ones; of pipe. */
static const struct {
	bool drawn;
	enum fig_members plain, groove, flare, flare_v, pipe;
} members[JOINT_COUNT] = {
	[JOINT_TEE] = { true, FIG_MEMBERS_TEE, FIG_MEMBERS_TEE_GROOVE, FIG_MEMBERS_FLARE,
		FIG_MEMBERS_FLARE_V, FIG_MEMBERS_PIPE_ON_PLATE },
	[JOINT_LAP] = { true, FIG_MEMBERS_LAP, FIG_MEMBERS_LAP, FIG_MEMBERS_LAP,
		FIG_MEMBERS_LAP, FIG_MEMBERS_LAP },
	[JOINT_CORNER] = { true, FIG_MEMBERS_CORNER, FIG_MEMBERS_CORNER_GROOVE,
		FIG_MEMBERS_FLARE_CORNER, FIG_MEMBERS_FLARE_V, FIG_MEMBERS_CORNER },
	[JOINT_OPEN_CORNER] = { true, FIG_MEMBERS_ROOF, FIG_MEMBERS_ROOF, FIG_MEMBERS_ROOF,
		FIG_MEMBERS_ROOF, FIG_MEMBERS_ROOF },
	[JOINT_EDGE] = { true, FIG_MEMBERS_EDGE, FIG_MEMBERS_EDGE_GROOVE,
		FIG_MEMBERS_FLARE_CORNER, FIG_MEMBERS_FLARE_V, FIG_MEMBERS_EDGE },
	[JOINT_SQUARE_BUTT] = { true, FIG_MEMBERS_BUTT, FIG_MEMBERS_BUTT, FIG_MEMBERS_BUTT,
		FIG_MEMBERS_BUTT, FIG_MEMBERS_PIPE },
	[JOINT_SINGLE_V] = { true, FIG_MEMBERS_BUTT, FIG_MEMBERS_BUTT, FIG_MEMBERS_BUTT,
		FIG_MEMBERS_BUTT, FIG_MEMBERS_PIPE },
	[JOINT_SINGLE_BEVEL] = { true, FIG_MEMBERS_BUTT, FIG_MEMBERS_BUTT, FIG_MEMBERS_BUTT,
		FIG_MEMBERS_BUTT, FIG_MEMBERS_PIPE },
	[JOINT_BUTT] = { true, FIG_MEMBERS_BUTT, FIG_MEMBERS_BUTT, FIG_MEMBERS_FLARE_V,
		FIG_MEMBERS_FLARE_V, FIG_MEMBERS_PIPE },
	[JOINT_FLARE_BEVEL] = { true, FIG_MEMBERS_FLARE, FIG_MEMBERS_FLARE, FIG_MEMBERS_FLARE,
		FIG_MEMBERS_FLARE_V, FIG_MEMBERS_FLARE },
	[JOINT_PIPE_BUTT] = { true, FIG_MEMBERS_PIPE, FIG_MEMBERS_PIPE, FIG_MEMBERS_PIPE,
		FIG_MEMBERS_PIPE, FIG_MEMBERS_PIPE },
	[JOINT_SURFACING] = { true, FIG_MEMBERS_PAD, FIG_MEMBERS_PAD, FIG_MEMBERS_PAD,
		FIG_MEMBERS_PAD, FIG_MEMBERS_PAD },
};

static enum fig_members members_of(const struct joint_block *j)
{
	uint32_t p = j->preparation;

	if (p == PREPARATION_FLARE_V)
		return members[j->joint].flare_v;
	if (p == PREPARATION_FLARE_BEVEL)
		return members[j->joint].flare;
	/* A square edge of these is no groove that the sketch could show. */
	return p > PREPARATION_SQUARE ? members[j->joint].groove : members[j->joint].plain;
}

/* 2G to 4G are groove positions, 2F to 5F those of fillets; a groove of a tee or corner is
 * another picture than its fillet. */
static bool is_at_home(enum fig_members m, enum position p)
{
	bool groove = p == POSITION_2G || p == POSITION_3G || p == POSITION_4G;
	bool fillet = p == POSITION_2F || p == POSITION_3F || p == POSITION_4F;

	if (m == FIG_MEMBERS_TEE || m == FIG_MEMBERS_LAP || m == FIG_MEMBERS_CORNER)
		return !groove;
	return m != FIG_MEMBERS_BUTT || !fillet;
}

/* The sketch of a lap or corner shows its fillet, tilted so that this faces up: not how a row
 * of plugs lies, nor a square groove that opens to the outside. */
static bool shows_another_weld(const struct joint_block *j)
{
	return j->marks.hole ||
	    (j->joint == JOINT_CORNER && j->preparation == PREPARATION_SQUARE);
}

bool weld_position(struct arena *a, const struct edition *e, const struct assignment *x,
    const struct joint_block *j, uint32_t weld, struct fig_position *out)
{
	const struct weld *w = &x->welds[weld];
	bool pipe = j->pipe.od_mm > 0 || w->run.od_mm > 0;

	if (w->at.position >= POSITION_COUNT || j->joint >= JOINT_COUNT ||
	    !members[j->joint].drawn || shows_another_weld(j))
		return false;
	*out = (struct fig_position){ .language = edition_language(e),
		.place = places[w->at.position], .travel = (enum fig_travel)w->at.progression,
		.members = pipe ? members[j->joint].pipe : members_of(j) };
	/* A fillet position is that of the fillet over the groove; a turned or fixed round says
	 * by itself that it is no plate. */
	if (!fig_position_can_draw(out))
		out->members = members[j->joint].plain;
	if (!fig_position_can_draw(out))
		out->members = members[j->joint].pipe;
	if (!fig_position_can_draw(out) || !is_at_home(out->members, w->at.position))
		return false;
	out->label = position_text(a, e, &w->at);
	if (j->weld == NONE && w->letter && x->nwelds > 1)
		out->label = str_format(a, "%c: %.*s", w->letter, STR_ARG(out->label));
	return true;
}

/* Gouges and cuts have no position that a table tells. A branch has one by its letters,
 * but how its run and branch lie in it no source at hand says: a test of branches on a
 * level run, branch down, is a test of its own (from memory) and none of these. */
str weld_position_fault(const struct assignment *x, const struct joint_block *j,
    uint32_t weld)
{
	if (j->joint >= JOINT_COUNT || x->welds[weld].at.position >= POSITION_COUNT)
		return (str){ 0 };
	if (j->joint == JOINT_BRANCH)
		return WORD("no table tells how a branch and its run lie in it; set them as the procedure says");
	if (!members[j->joint].drawn)
		return (str){ 0 };
	return WORD("no table tells how this joint stands in it; set it as the procedure says");
}

/* "A, 2F"; the position alone where the weld is the only one. */
static str weld_at(struct sheet *sh, const struct assignment *x, const struct weld *w)
{
	bool lettered = w->letter && x->nwelds > 1;

	return str_format(sh->arena, "%.*s%s%.*s", (int)lettered, &w->letter,
	    lettered ? ", " : "", STR_ARG(position_text(sh->arena, sh->e, &w->at)));
}

/* The second side of a double preparation has its face up or down only when turned. */
static bool is_turned(const struct joint_block *j, enum position p)
{
	return preparation_is_double(j->preparation) &&
	    (p == POSITION_FLAT || p == POSITION_1G || p == POSITION_4G);
}

void add_position_notes(struct sheet *sh, const struct assignment *x,
    const struct joint_block *j)
{
	uint32_t *welds = arena_array(sh->arena, x->nwelds + 1, sizeof *welds);
	struct fig_position p;
	size_t n;

	welds_of_block(x, j, welds, &n);
	for (size_t i = 0; i < n; i++) {
		const struct weld *w = &x->welds[welds[i]];
		str why = weld_position_fault(x, j, welds[i]);

		if (weld_position(sh->arena, sh->e, x, j, welds[i], &p)) {
			if (is_turned(j, w->at.position))
				sheet_text(sh, sh_format(sh, "%.*s: turn it over for the "
				    "other side.", STR_ARG(weld_at(sh, x, w))));
			continue;
		}
		if (why.n)
			sheet_text(sh, sh_format(sh, "%.*s: position not drawn; %.*s.",
			    STR_ARG(weld_at(sh, x, w)),
			    STR_ARG(word_str(edition_language(sh->e), why))));
	}
}
