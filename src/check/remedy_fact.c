/* Facts that are valid and not what is meant: what the sheet itself shows in their place.
 *
 * No rule knows whether a fact or what stands against it is wrong. Each way here is only
 * worth a trial: it is told when nothing is left of what it was meant to mend and nothing
 * new is found. So a way may be wrong, but it must be one that a colleague would name with
 * the sheet in hand, for one that clears by accident hides a fault of its own. */
#include "check/remedy_fact.h"

#include "check/rule_metal.h"
#include "model/words.h"

/* Entries of one fact that are tried in turn: more of them are seldom on one line. */
enum { ITEMS_MOST = 4 };

str seek_item(const struct seeker *s, struct pos pos, char sep, size_t k)
{
	str line = seek_line(s, pos);
	size_t at = seek_byte(line, pos.col);

	for (; k && at < line.n; k--)
		at = str_find_char(line, sep, at) + 1;
	return at < line.n ? str_trim(str_sub(line, at, str_find_char(line, sep, at)))
	    : (str){ 0 };
}

struct remedy *seek_write(struct seeker *s, struct pos pos, str old, str new)
{
	str line = seek_line(s, pos);
	size_t at = old.n ? (size_t)(old.p - line.p) : 0;
	struct edit e = { EDIT_REPLACE, pos.file, pos.line, { 0 }, 0 };
	struct remedy *r;

	if (!old.n || !new.n || str_eq(old, new))
		return NULL;
	e.text = str_format(s->arena, "%.*s%.*s%.*s", STR_ARG(str_sub(line, 0, at)),
	    STR_ARG(new), STR_ARG(str_sub(line, at + old.n, line.n)));
	for (size_t i = 0; i < s->out->n; i++) {
		const struct remedy *other = &s->out->v[i];

		if (other->finding == s->finding && other->nedits == 1 &&
		    other->edits->file == e.file && other->edits->line == e.line &&
		    str_eq(other->edits->text, e.text))
			return NULL;
	}
	r = seek_add(s, &e, 1);
	r->names_cause = r->strict = true;
	return r;
}

/* "write 2F at Position"; of another sheet than the finding's with its id. */
static str write_say(const struct seeker *s, const struct assignment *a, str to,
    const char *key, str why)
{
	bool own = str_eq_nocase(seek_finding(s)->assignment, a->id);

	return str_format(s->arena, "write %.*s at %s%s%.*s, %.*s", STR_ARG(to), key,
	    own ? "" : " of ", own ? 0 : (int)a->id.n, a->id.p, STR_ARG(why));
}

void seek_fact(struct seeker *s, const struct assignment *a, const char *key, size_t k,
    str to, str why)
{
	struct pos pos = assignment_fact_pos(a, str_of(key));
	struct remedy *r = pos.line == a->pos.line ? NULL
	    : seek_write(s, pos, seek_item(s, pos, ',', k), to);

	if (r)
		r->say = write_say(s, a, to, key, why);
}

/* ---- pieces ---- */

static bool same_start(str a, str b)
{
	str x, y;

	return str_word(&a, &x) && str_word(&b, &y) && str_eq_nocase(x, y);
}

static bool is_a_material(const struct assignment *a, str text)
{
	for (uint32_t i = 0; i < a->nmaterials; i++)
		if (same_start(a->materials[i].text, text))
			return true;
	return false;
}

static bool is_cut(const struct assignment *a, str material)
{
	for (size_t i = 0; i < a->npieces; i++)
		if (same_start(a->pieces[i].material, material))
			return true;
	return false;
}

/* Whether this sheet has a finding that tells more of the cause. */
static bool is_told(const struct seeker *s, enum finding_name name)
{
	for (size_t i = 0; i < s->f->n; i++)
		if (s->f->v[i].name == name && str_eq_nocase(s->f->v[i].assignment,
		    seek_finding(s)->assignment))
			return true;
	return false;
}

/* What no piece is cut from is perhaps what a piece is cut from, rather one that no fact
 * names. */
static void seek_material(struct seeker *s, const struct assignment *a)
{
	for (uint32_t k = 0; k < a->nmaterials && k < ITEMS_MOST; k++)
		for (size_t i = 0; i < 2 * a->npieces && !is_cut(a, a->materials[k].text); i++) {
			str of = a->pieces[i % a->npieces].material;

			if (is_a_material(a, of) == (i >= a->npieces))
				seek_fact(s, a, "Material", k, of, STR("as the pieces say"));
		}
}

/* "3/8 in" of "3/8 x 3 x 8 in"; of pipe its size. */
static str piece_thickness(const struct seeker *s, const struct piece *p)
{
	size_t end = str_find(p->size, STR(" x "), 0), unit = p->size.n;
	str first = str_sub(p->size, 0, end);

	if (p->pipe.od_mm > 0)
		return p->pipe.text;
	if (end >= p->size.n || str_find_char(first, 'g', 0) < first.n ||
	    str_find_char(first, 'n', 0) < first.n || str_find_char(first, 'm', 0) < first.n)
		return first;
	while (unit && p->size.p[unit - 1] != ' ')
		unit--;
	return str_format(s->arena, "%.*s %.*s", STR_ARG(first),
	    STR_ARG(str_sub(p->size, unit, p->size.n)));
}

static void seek_thickness(struct seeker *s, const struct assignment *a)
{
	for (uint32_t k = 0; k < a->nthicknesses && k < ITEMS_MOST; k++)
		for (size_t i = 0, n = 0; i < a->npieces && n < ITEMS_MOST; i++) {
			const struct piece *p = &a->pieces[i];

			if (says(p->name, "backing") || (a->nmaterials == a->nthicknesses &&
			    !same_start(p->material, a->materials[k].text)))
				continue;
			seek_fact(s, a, "Thickness", k, piece_thickness(s, p),
			    STR("as the pieces say"));
			n++;
		}
}

/* A line under "## Welds" in a thickness that no piece has. */
static void seek_weld_thickness(struct seeker *s, const struct assignment *a)
{
	for (size_t i = 0; i < a->nwelds && a->welds[i].letter; i++)
		for (size_t k = 0; k < a->npieces && k < ITEMS_MOST; k++)
			if (same_start(a->pieces[k].material, a->welds[i].material1))
				write_weld(s, &a->welds[i], STR("thickness"),
				    piece_thickness(s, &a->pieces[k]), STR(", as the pieces say"));
}

/* ---- two places of one sheet ---- */

static const char *const keys[] = { "Joint", "Position", "Thickness", "Material" };

/* The fact whose value stands on the line of pos; null: none of those. */
static const char *key_at(const struct assignment *a, struct pos pos)
{
	for (size_t i = 0; i < sizeof keys / sizeof *keys; i++) {
		struct pos at = assignment_fact_pos(a, str_of(keys[i]));

		if (at.line == pos.line && at.line != a->pos.line)
			return keys[i];
	}
	return NULL;
}

/* What a line under "## Welds" says of a fact. */
static str weld_says(const struct seeker *s, const struct weld *w, const char *key)
{
	static const char *const ways[] = { "", " up", " down" };

	if (*key == 'J')
		return joint_word(w->joint);
	if (*key == 'P')
		return str_format(s->arena, "%.*s%s",
		    STR_ARG(position_word(w->at.position)), ways[w->at.progression]);
	return *key == 'M' ? w->material1 : (str){ 0 };
}

static const struct weld *weld_at(const struct assignment *a, struct pos pos)
{
	for (size_t i = 0; i < a->nwelds; i++)
		if (a->welds[i].pos.line == pos.line)
			return &a->welds[i];
	return NULL;
}

/* The finding stands at a weld or in the drawing, and first relates the fact, which perhaps
 * means what stands there. */
static void seek_other_place(struct seeker *s, const struct assignment *a)
{
	const struct finding *d = seek_finding(s);
	const char *key = d->nrelated ? key_at(a, d->related[0].pos) : NULL;
	const struct weld *w = weld_at(a, d->pos);
	str says_it;

	if (!key)
		return;
	says_it = w ? weld_says(s, w, key) : seek_item(s, d->pos, '\n', 0);
	for (size_t k = 0; k < ITEMS_MOST; k++)
		seek_fact(s, a, key, k, says_it, w ? STR("as the weld says")
		    : STR("as the drawing says"));
}

/* ---- position ---- */

static bool is_welded_in(const struct assignment *a, uint32_t position)
{
	for (uint32_t i = 0; i < a->npositions; i++)
		if (a->positions[i].position == position)
			return true;
	return false;
}

/* A position in the title that the sheet does not weld in, where that is not told. */
static void seek_title_position(struct seeker *s, const struct assignment *a)
{
	str rest = is_told(s, FINDING_TEXT_DISAGREES) ? (str){ 0 } : a->title, word;

	while (str_word(&rest, &word)) {
		uint32_t at = word.n < 3 ? words_find(&words_position, word) : NONE;
		str to = word;

		if (at == NONE || is_welded_in(a, at))
			continue;
		if (position_wants_progression((enum position)at))
			to = str_format(s->arena, "%.*s%s", STR_ARG(word),
			    says(a->title, "down") ? " down" : " up");
		for (uint32_t k = 0; k < a->npositions && k < ITEMS_MOST; k++)
			seek_fact(s, a, "Position", k, to, STR("as the title says"));
	}
}

/* Tests whose titles name another position than they are welded in. */
static void seek_test_positions(struct seeker *s)
{
	for (uint32_t i = 0, n = 0; i < s->m->nassignments && n < ITEMS_MOST; i++) {
		const struct assignment *a = &s->m->assignments[i];
		size_t before = s->out->n;

		if (a->kind == KIND_PRACTICE_TEST || a->kind == KIND_QUALIFICATION_TEST)
			seek_title_position(s, a);
		n += s->out->n > before;
	}
}

/* Whether several findings of order stand at the place of this one. */
static bool is_one_of_several(const struct seeker *s)
{
	size_t n = 0;

	for (size_t i = 0; i < s->f->n; i++)
		n += finding_is_of_order(s->f->v[i].name) && !s->f->v[i].waived &&
		    !pos_cmp(s->f->v[i].pos, seek_finding(s)->pos);
	return n > 1;
}

/* Work that comes too early for its position in several ways is perhaps in the easiest:
 * pads lie flat, pipe is rolled. */
static void seek_easiest(struct seeker *s, const struct assignment *a)
{
	enum position at = a->npositions == 1 ? a->positions[0].position : POSITION_COUNT;

	if (at == POSITION_COUNT || at == POSITION_FLAT || !is_one_of_several(s))
		return;
	if (a->njoints == 1 && a->joints[0] == JOINT_SURFACING)
		seek_fact(s, a, "Position", 0, STR("flat"), STR("if the pads lie flat"));
	else if (a->nwelds && joint_is_pipe(&a->welds[0]))
		seek_fact(s, a, "Position", 0, STR("1G rolled"), STR("if the pipe is rolled"));
}

/* ---- cutting ---- */

static bool has_joint(const struct assignment *a, bool cut)
{
	for (uint32_t i = 0; i < a->njoints; i++)
		if (joint_is_cut(a->joints[i]) == cut)
			return true;
	return false;
}

static bool has_process(const struct assignment *a, bool cut)
{
	for (uint32_t i = 0; i < a->nprocesses; i++)
		if (process_is_cut(a->processes[i]) == cut)
			return true;
	return false;
}

/* Sheets that cut with a welding process, or weld with a cutting one. */
static void seek_cuts(struct seeker *s)
{
	for (uint32_t i = 0, n = 0; i < s->m->nassignments && n < ITEMS_MOST; i++) {
		const struct assignment *a = &s->m->assignments[i];

		if (!a->njoints || !a->nprocesses || has_joint(a, false) == has_process(a, false))
			continue;
		n++;
		if (has_joint(a, true))
			seek_fact(s, a, "Process", 0, process_word(says(a->title, "plasma")
			    ? PROCESS_PAC : PROCESS_OFC), STR("for it cuts"));
		else if (has_process(a, true))
			seek_fact(s, a, "Joint", 0, joint_word(says(a->title, "bevel")
			    ? JOINT_BEVEL_CUT : JOINT_CUT_EDGE), STR("for it cuts"));
	}
}

/* ---- which finding asks for what ----
 *
 * A way is asked for by the findings that tell most of its cause, since theirs is what the
 * reader sees first; what only follows from it (a fume caution, say) asks for nothing. */

static void seek_drawn(struct seeker *s, const struct assignment *a)
{
	if (is_told(s, FINDING_PIECES_DISAGREE))
		return;
	seek_thickness(s, a);
	seek_material(s, a);
}

enum { WAYS = 5 };

struct asking {
	enum finding_name name;
	void (*v[WAYS])(struct seeker *s, const struct assignment *a);
};

static const struct asking askings[] = {
	{ FINDING_FILLER_OF_ANOTHER_PROCESS, { seek_process, seek_filler, seek_passes } },
	{ FINDING_FILLER_OF_WRONG_METAL, { seek_filler } },
	{ FINDING_FILLER_OUT_OF_POSITION, { seek_filler } },
	{ FINDING_NO_SHIELDING_GAS, { seek_process } },
	{ FINDING_GAS_NOT_USED, { seek_process } },
	{ FINDING_WRONG_GAS, { seek_process, seek_transfer } },
	{ FINDING_GAS_FLOW_FAR_OFF, { seek_process } },
	{ FINDING_WRONG_POLARITY, { seek_process } },
	{ FINDING_TRANSFER_DISAGREES, { seek_process } },
	{ FINDING_CURRENT_OUTSIDE_RANGE, { seek_filler, seek_passes } },
	{ FINDING_VOLTS_OUTSIDE_RANGE, { seek_filler } },
	{ FINDING_OXY_FUEL_ON_WRONG_METAL, { seek_usual_material } },
	{ FINDING_LEG_UNDER_LEAST, { seek_filler } },
	{ FINDING_BAD_DRAWING, { seek_drawn, seek_block_joint, seek_backing } },
	{ FINDING_TEST_IMPOSSIBLE, { seek_block_joint } },
	{ FINDING_PIECES_DISAGREE, { seek_material, seek_thickness, seek_piece,
	    seek_weld_thickness } },
	{ FINDING_WELDMENT_DISAGREES, { seek_member } },
	{ FINDING_FACTS_DISAGREE, { seek_other_place, seek_process, seek_welds,
	    seek_backing } },
	{ FINDING_BACKING_DISAGREES, { seek_backing } },
	{ FINDING_SIZE_SAID_TWICE, { seek_said_twice } },
	{ FINDING_STRIPS_DO_NOT_FIT, { seek_length } },
	{ FINDING_PARTS_OVERLAP, { seek_pipe } },
	{ FINDING_FLOATING_PART, { seek_pipe } },
	{ FINDING_RANGE_CLAIMS_MORE, { seek_title_position, seek_backing } },
	{ FINDING_NO_PRACTICE_TEST, { seek_title_position, seek_backing } },
	{ FINDING_RECORD_INCOMPLETE, { seek_kind } },
	{ FINDING_TOO_FEW_BENDS, { seek_kind } },
	{ FINDING_WEIGHTS_NOT_100, { seek_weights } },
	{ FINDING_BAD_QUANTITY, { seek_weight, seek_bad_piece } },
};

void seek_facts(struct seeker *s)
{
	const struct finding *d = seek_finding(s);
	const struct assignment *a = seek_assignment(s);

	for (size_t i = 0; a && i < sizeof askings / sizeof *askings; i++)
		for (size_t k = 0; k < WAYS && askings[i].name == d->name; k++)
			if (askings[i].v[k])
				askings[i].v[k](s, a);
	if (d->name == FINDING_STALE_TITLE)
		seek_title(s);
	if (d->name == FINDING_NO_PRACTICE_TEST || d->name == FINDING_TESTS_TWICE)
		seek_test_positions(s);
	if (finding_is_of_order(d->name)) {
		if (a)
			seek_easiest(s, a);
		seek_other_kinds(s);
		seek_cuts(s);
	}
}
