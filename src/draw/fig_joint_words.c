/* What the section of a joint shows, in words. */
#include "draw/fig_prep.h"
#include "draw/fig_section.h"

#include "base/buf.h"

/* what: looked up. */
static void add_size(struct buf *b, const struct fig_joint *j, str what, str label)
{
	what = word_str(j->language, what);
	if (label.n == 0)
		return;
	buf_adds(b, ", ");
	/* A label that names its size already is not told twice. */
	if (str_find(label, what, 0) == label.n)
		buf_addf(b, "%.*s ", STR_ARG(what));
	buf_add(b, label);
}

static void add_depths(struct buf *b, const struct fig_joint *j)
{
	const struct prep_kind *k = prep_kind(prep_of(j));

	if (k->doubled) {
		add_size(b, j, WORD("depth of preparation in front"), j->label_depth);
		add_size(b, j, WORD("depth of preparation at the back"),
		    j->label_depth_back);
	} else {
		add_size(b, j, j->shape == FIG_PLUG ? WORD("depth of filling")
		                                    : WORD("groove depth"), j->label_depth);
	}
	/* Of a row the label with the number of places says it. */
	if (j->holes <= 1)
		add_size(b, j, WORD("width"), j->label_groove_width);
	add_size(b, j, WORD("radius"), j->label_radius);
	add_size(b, j, STR(""), j->label_radius_back);
}

/* Of unequal legs, which lies where. */
static void add_legs(struct buf *b, const struct fig_joint *j)
{
	static const struct { enum fig_shape shape; str first, second; } rows[] = {
		{ FIG_TEE, WORD("leg up the web"), WORD("leg along the base") },
		{ FIG_LAP, WORD("leg at the edge of the lap"), WORD("leg on the other plate") },
		{ FIG_CORNER_CLOSED, WORD("leg along the flat member"),
		    WORD("leg along the standing member") },
	};

	for (size_t i = 0; i < sizeof rows / sizeof *rows; i++) {
		if (rows[i].shape != j->shape || !fig_given(j->leg2_mm))
			continue;
		add_size(b, j, rows[i].first, j->label_leg);
		add_size(b, j, rows[i].second, j->label_leg2);
		return;
	}
	add_size(b, j, WORD("fillet leg"), j->label_leg);
}

static void add_sizes(struct buf *b, const struct fig_joint *j)
{
	bool contact = fig_gap_is_fault(j);

	add_size(b, j, WORD("position"), j->position);
	add_size(b, j, WORD("thickness"), j->label_t1);
	if (fig_given(j->t2_mm))
		add_size(b, j, WORD("on"), j->label_t2);
	add_legs(b, j);
	add_size(b, j, WORD("included angle"), j->label_angle);
	add_size(b, j, WORD("bevel"), j->label_bevel);
	add_size(b, j, STR(""), j->label_angle_back);
	add_size(b, j, WORD("land"), j->label_land);
	add_size(b, j, contact ? WORD("gap") : WORD("root opening"), j->label_gap);
	add_size(b, j, WORD("backing"), j->label_backing);
	add_size(b, j, WORD("overlap"), j->label_overlap);
	add_depths(b, j);
	add_size(b, j, WORD("outside diameter"), j->label_od);
	add_size(b, j, WORD("reinforcement"), j->label_reinforcement);
	if (j->holes > 1)
		add_size(b, j, STR(""), j->label_places);
	if (j->holes > 1)
		add_size(b, j, WORD("from middle to middle"), j->label_spacing);
	add_size(b, j, STR(""), j->label_kerf);
	add_size(b, j, STR(""), j->label_answer);
}

static bool is_open_root(const struct fig_joint *j)
{
	enum fig_prep p = prep_of(j);

	return p != FIG_PREP_NONE && !prep_kind(p)->flare && !prep_kind(p)->doubled &&
	    !fig_gap_is_fault(j) && fig_gap_middle_mm(j) > 0 &&
	    !fig_given(j->backing_t_mm) && !j->both_sides;
}

/* " Beads by layers, in order: 1; 2, 3; from the back 4." */
static void add_beads(struct buf *b, const struct fig_joint *j)
{
	unsigned number = 1;

	if (j->nlayers == 0)
		return;
	buf_add(b, word(j->language, " Beads by layers, in order:"));
	for (size_t i = 0; i < j->nlayers; i++) {
		bool was_back = i > 0 && j->layers[i - 1].back;

		buf_adds(b, i > 0 ? "; " : " ");
		if (j->layers[i].back && !was_back)
			buf_add(b, word(j->language, "from the back "));
		else if (!j->layers[i].back && was_back)
			buf_add(b, word(j->language, "from the front "));
		for (unsigned k = 0; k < j->layers[i].beads; k++)
			buf_addf(b, "%s%u", k > 0 ? ", " : "", number++);
	}
	buf_adds(b, ".");
}

static void add_name(struct buf *b, const struct fig_joint *j)
{
	const struct language *l = j->language;

	buf_add(b, word_str(l, fig_joint_name(j)));
	if (j->shape >= FIG_BUTT_GROOVE || j->prep != FIG_PREP_NONE)
		buf_addf(b, ", %.*s", STR_ARG(word_str(l, prep_kind(prep_of(j))->name)));
	buf_add(b, j->shape == FIG_PAD ? word(l, ", in section and from above")
	                               : word(l, ", in section"));
}

str fig_joint_words(struct arena *a, const struct fig_joint *j)
{
	const struct language *l = j->language;
	struct buf b = { .arena = a };
	str why = fig_joint_fault(j);

	if (why.n > 0)
		return word_format(a, l, "No drawing: %.*s.", STR_ARG(word_str(l, why)));
	add_name(&b, j);
	if (!j->beads_only)
		add_sizes(&b, j);
	buf_adds(&b, ".");
	if (is_open_root(j))
		buf_add(&b, word(l, " Open root."));
	if (j->passes > 0 && j->shape == FIG_PAD)
		word_addf(&b, l, " Beads: %u.", j->passes);
	else if (j->passes > 0)
		word_addf(&b, l, " Passes: %u.", j->passes);
	add_beads(&b, j);
	if (j->both_sides || prep_kind(prep_of(j))->doubled)
		buf_add(&b, word(l, " Welded from both sides."));
	return buf_str(&b);
}

static void add_round(struct buf *b, const struct fig_joint *j)
{
	const struct language *l = j->language;

	buf_add(b, word(l, "Pipe seen from its end, with 12, 3, 6 and 9 of the clock"));
	add_size(b, j, WORD("outside diameter"), j->label_od);
	add_size(b, j, WORD("thickness"), j->label_t1);
}

static void add_row(struct buf *b, const struct fig_joint *j)
{
	add_size(b, j, STR(""), j->label_places);
	if (fig_given(j->hole_length_mm))
		buf_add(b, j->slots_across ? word(j->language, ", square to their row")
		                           : word(j->language, ", along their row"));
	if (j->holes > 1)
		add_size(b, j, WORD("from middle to middle"), j->label_spacing);
}

str fig_plan_words(struct arena *a, const struct fig_joint *j)
{
	const struct language *l = j->language;
	struct buf b = { .arena = a };

	if (j->shape == FIG_PIPE_BUTT || j->shape == FIG_BRANCH) {
		add_round(&b, j);
	} else {
		buf_add(&b, word(l, "The weld seen from above"));
		add_size(&b, j, WORD("length"), j->label_length);
		add_size(&b, j, WORD("width"), j->label_width1);
		add_size(&b, j, WORD("on"), j->label_width2);
		add_size(&b, j, WORD("overlap"), j->label_overlap);
		add_row(&b, j);
		if (j->restart)
			word_addf(&b, l, "; stop and restart: %.*s", STR_ARG(j->label_restart));
	}
	if (j->tacks)
		word_addf(&b, l, "; tacks: %u", j->tacks);
	buf_addc(&b, '.');
	return buf_str(&b);
}
