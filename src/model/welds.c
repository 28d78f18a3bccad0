/* Which welds an assignment asks for. */
#include "model/assignment.h"

#include "base/buf.h"

/* One letter each. */
enum { WELDS_MOST = 26 };

static bool take_leg(struct binder *b, struct weld *w, struct said item)
{
	if (!said_skip(&item, STR("leg")))
		return false;
	read_legs(b, item, METAL_NONE, &w->leg, &w->leg2);
	return true;
}

/* "8 in long" */
static bool take_length(struct binder *b, struct weld *w, struct said item)
{
	struct said size = item;

	if (item.s.n < 5 || !str_ends(item.s, STR(" long")))
		return false;
	size.s.n -= 5;
	size = said_trim(size);
	if (read_quantity(b, size, QUANTITY_LENGTH, METAL_NONE, &w->length))
		keep_size(b, size, &w->length);
	return true;
}

/* The size and, when a schedule is written, the wall as the thickness of that member. */
static bool read_pipe_member(struct binder *b, struct said t, struct pipe_size *size,
    struct quantity *wall)
{
	struct quantity_fault fault;

	if (!read_pipe(b, t, size))
		return false;
	if (size->wall_mm > 0)
		quantity_parse(t.s, QUANTITY_LENGTH, METAL_NONE, wall, &fault);
	return true;
}

/* "run NPS 4 schedule 40": the lower member of a branch, the only one of a butt. */
static bool take_run(struct binder *b, struct weld *w, struct said item)
{
	if (!said_skip(&item, STR("run")))
		return false;
	read_pipe_member(b, item, &w->run, w->joint == JOINT_BRANCH ? &w->t2 : &w->t1);
	return true;
}

static bool take_branch(struct binder *b, struct weld *w, struct said item)
{
	if (!said_skip(&item, STR("branch")) || !str_starts_nocase(item.s, STR("NPS")))
		return false;
	read_pipe_member(b, item, &w->branch, &w->t1);
	return true;
}

static bool take_process(struct binder *b, struct weld *w, struct said item)
{
	uint32_t value = words_find(&words_process, item.s);

	(void)b;
	if (value == NONE || w->process != PROCESS_COUNT)
		return false;
	w->process = (enum process)value;
	return true;
}

/* "branch set-on 90 deg": the angle is for the reader of the sheet. */
static bool take_joint(struct binder *b, struct weld *w, struct said item)
{
	struct quantity angle;
	struct quantity_fault fault;

	(void)b;
	if (w->joint != JOINT_COUNT)
		return false;
	w->joint = joint_find(item.s);
	for (size_t i = 1; i < item.s.n && w->joint == JOINT_COUNT; i++)
		if (item.s.p[i] == ' ' && quantity_parse(str_sub(item.s, i + 1, item.s.n),
		    QUANTITY_ANGLE, METAL_NONE, &angle, &fault) == QUANTITY_OK)
			w->joint = joint_find(str_sub(item.s, 0, i));
	return w->joint != JOINT_COUNT;
}

static bool take_position(struct binder *b, struct weld *w, struct said item)
{
	struct position_at at;

	if (w->at.position != POSITION_COUNT || !position_find(item, &at))
		return false;
	position_check(b, item, &at);
	w->at = at;
	return true;
}

static bool begins_size(str s, size_t i)
{
	return (!i || s.p[i - 1] == ' ') && ((s.p[i] >= '0' && s.p[i] <= '9') ||
	    s.p[i] == '.' || str_starts_nocase(str_sub(s, i, s.n), STR("NPS ")));
}

/* "A36 plate 3/8 in" or "11 ga A1011 sheet": false when it names no member at all. A
 * size that cannot be read is reported. */
static bool split_member(struct binder *b, struct said item, str *material,
    struct quantity *t)
{
	enum sheet_metal named = sheet_metal_of(item.s), metal = named;
	struct quantity_fault fault, last = { .result = QUANTITY_OK };
	struct said size = item;
	size_t used;

	if (!metal && b->a->nmaterials)
		metal = b->a->materials[0].metal;
	for (size_t i = 0; i < item.s.n; i++) {
		struct said rest = said_sub(item, i, item.s.n);

		if (!begins_size(item.s, i))
			continue;
		*material = str_trim(str_sub(item.s, 0, i));
		if (quantity_parse(rest.s, QUANTITY_LENGTH, metal, t,
		    &fault) == QUANTITY_OK)
			return true;
		if (i || fault.result == QUANTITY_NO_METAL ||
		    fault.result == QUANTITY_NO_UNIT) {
			last = fault;
			size = rest;
		}
	}
	*material = item.s;
	if (quantity_prefix(item.s, QUANTITY_LENGTH, metal, t, &used,
	    &fault) == QUANTITY_OK) {
		*material = str_trim(str_sub(item.s, used, item.s.n));
		return true;
	}
	*t = (struct quantity){ 0 };
	if (last.result == QUANTITY_OK || (!named && last.result == QUANTITY_BAD))
		return named != METAL_NONE;
	*material = str_trim(str_sub(item.s, 0, (size_t)(size.s.p - item.s.p)));
	complain_fault(b, size, &last);
	return true;
}

static bool take_member(struct binder *b, struct weld *w, struct said item)
{
	bool second = quantity_given(&w->t1) || w->material1.n;

	if (second && (quantity_given(&w->t2) || w->material2.n))
		return false;
	return split_member(b, item, second ? &w->material2 : &w->material1,
	    second ? &w->t2 : &w->t1);
}

/* Takes a misspelt word for what it most likely means; false when that is not one of what
 * the weld still lacks. */
static bool take_guess(struct weld *w, const struct words *list, uint32_t value)
{
	if (value == NONE)
		return false;
	if (list == &words_joint && w->joint == JOINT_COUNT)
		w->joint = (enum joint)value;
	else if (list == &words_process && w->process == PROCESS_COUNT)
		w->process = (enum process)value;
	else if (list == &words_position && w->at.position == POSITION_COUNT)
		w->at.position = (enum position)value;
	else
		return false;
	return true;
}

static void complain_item(struct binder *b, struct weld *w, struct said item)
{
	static const struct words *const lists[] = { &words_joint, &words_position,
		&words_process };
	struct finding *d = complain(b, FINDING_UNKNOWN_WORD, said_pos(item),
	    "\"%.*s\" is not known in a weld; it is left out", STR_ARG(item.s));

	for (size_t i = 0; i < sizeof lists / sizeof *lists && !d->repair.n; i++) {
		str likely;
		uint32_t value = words_guess(b->arena, lists[i], item.s, &likely);

		if (!likely.n)
			continue;
		finding_offer(b->f, d, d->pos, item.s, likely);
		if (!take_guess(w, lists[i], value))
			break;
		d->message = str_format(b->f->arena, "\"%.*s\" is not known in a weld; it "
		    "is read as \"%.*s\"", STR_ARG(item.s), STR_ARG(likely));
		return;
	}
	w->unread = b->a->unread = true;
	if (!d->repair.n)
		finding_repair(b->f, d, "write a joint, a position, \"leg 5/16 in\", "
		    "\"A36 plate 3/8 in\" or \"8 in long\"");
}

static void read_items(struct binder *b, struct weld *w, struct said rest)
{
	static bool (*const takers[])(struct binder *, struct weld *, struct said) = {
		take_leg, take_length, take_run, take_branch, take_process, take_joint,
		take_position, take_member,
	};
	size_t n = sizeof takers / sizeof *takers;
	struct said item;

	while (said_next(&rest, ",;", &item)) {
		size_t i = 0;

		while (i < n && !takers[i](b, w, item))
			i++;
		if (i == n)
			complain_item(b, w, item);
	}
}

/* "A", or "Weld A". */
static char letter_of(str key)
{
	if (str_starts_nocase(key, STR("weld ")))
		key = str_trim(str_sub(key, 5, key.n));
	if (key.n != 1 || !((*key.p | 32) >= 'a' && (*key.p | 32) <= 'z'))
		return 0;
	return (char)(*key.p & ~32);
}

static void read_weld(struct binder *b, const struct block *v)
{
	struct assignment *a = b->a;
	struct weld w = { .letter = letter_of(v->key), .joint = JOINT_COUNT,
		.process = PROCESS_COUNT, .text = v->text, .pos = block_key_pos(v) };

	w.at = (struct position_at){ .position = POSITION_COUNT, .pos = block_key_pos(v) };
	if (!w.letter) {
		finding_repair(b->f, complain(b, FINDING_UNKNOWN_KEY, block_key_pos(v),
		    "\"%.*s\" is not one letter; this weld is left out", STR_ARG(v->key)),
		    "name the welds A, B, C");
		return;
	}
	for (size_t i = 0; i < a->nwelds; i++)
		if (a->welds[i].letter == w.letter) {
			finding_relate(b->f, complain(b, FINDING_DUPLICATE_KEY,
			    block_key_pos(v),
			    "there are two welds %c; this one is left out", w.letter),
			    a->welds[i].pos)->label = STR("the first counts");
			return;
		}
	read_items(b, &w, said_all(v));
	*ARENA_PUSH(b->arena, a->welds, a->nwelds, a->welds_cap) = w;
}

/* Notes for trial the first letters that no weld has. */
static void offer_letters(struct binder *b, const struct block *v, size_t n, size_t from)
{
	enum { LETTERS = 3 };
	str letters[LETTERS], all = STR("ABCDEFGHIJKLMNOPQRSTUVWXYZ");
	size_t k = 0;

	for (size_t i = 0; i < all.n && k < LETTERS; i++) {
		size_t w = 0;

		while (w < b->a->nwelds && b->a->welds[w].letter != all.p[i])
			w++;
		if (w == b->a->nwelds)
			letters[k++] = str_sub(all, i, i + 1);
	}
	for (size_t i = 0; i < n; i++)
		if (v[i].kind == BLOCK_FACT)
			offer_missing(b, from, block_key_pos(&v[i]), v[i].key, letters, k);
}

void read_welds(struct binder *b, const struct block *h, const struct block *v, size_t n)
{
	size_t from = b->f->n;

	(void)h;
	for (size_t i = 0; i < n; i++)
		if (v[i].kind == BLOCK_FACT && v[i].level == 1)
			read_weld(b, &v[i]);
		else
			complain_block(b, &v[i],
			    "write \"- **A:** tee, 2F, leg 5/16 in\"");
	if (b->f->n > from)
		offer_letters(b, v, n, from);
}

void read_passes(struct binder *b, const struct block *h, const struct block *v, size_t n)
{
	struct assignment *a = b->a;

	(void)h;
	for (size_t i = 0; i < n; i++) {
		if (v[i].kind != BLOCK_FACT || v[i].level > 1) {
			complain_block(b, &v[i],
			    "write \"- **Root:** GTAW, ER70S-2 3/32 in\"");
			continue;
		}
		*ARENA_PUSH(b->arena, a->passes, a->npasses, a->passes_cap) =
		    (struct pass){ v[i].key, v[i].text, block_key_pos(&v[i]) };
	}
}

static str weld_text(struct arena *a, const struct weld *w)
{
	static const char *const ways[] = { "", " up", " down" };

	if (w->at.position == POSITION_COUNT)
		return joint_word(w->joint);
	return str_format(a, "%.*s, %.*s%s", STR_ARG(joint_word(w->joint)),
	    STR_ARG(position_word(w->at.position)), ways[w->at.progression]);
}

static void expand_joint(struct binder *b, enum joint joint)
{
	struct assignment *a = b->a;
	struct position_at none = { .position = POSITION_COUNT, .pos = a->pos };
	size_t n = a->npositions ? a->npositions : 1;

	for (size_t i = 0; i < n && a->nwelds < WELDS_MOST; i++) {
		struct weld *w = ARENA_PUSH(b->arena, a->welds, a->nwelds, a->welds_cap);

		w->letter = (char)('A' + (int)(a->nwelds - 1));
		w->joint = joint;
		w->at = a->npositions ? a->positions[i] : none;
		w->process = PROCESS_COUNT;
		w->pos = assignment_fact_pos(a, STR("Joint"));
		w->text = weld_text(b->arena, w);
	}
}

/* Each joint in each position. */
static void expand_welds(struct binder *b)
{
	struct assignment *a = b->a;
	uint64_t made = 0;

	for (uint32_t i = 0; i < a->njoints; i++) {
		if (joint_is_cut(a->joints[i]))
			continue;
		made += a->npositions ? a->npositions : 1;
		expand_joint(b, a->joints[i]);
	}
	if (made > a->nwelds)
		finding_repair(b->f, complain(b, FINDING_OVER_LIMIT,
		    assignment_fact_pos(a, STR("Joint")),
		    "each joint in each position makes more than %d welds; the rest are "
		    "left out", WELDS_MOST), "list the welds under \"## Welds\"");
}

static enum process welding_process(const struct assignment *a)
{
	for (uint32_t i = 0; i < a->nprocesses; i++)
		if (!process_is_cut(a->processes[i]))
			return a->processes[i];
	return PROCESS_COUNT;
}

static void fill_members(struct assignment *a, struct weld *w)
{
	if (!quantity_given(&w->t1) && a->nthicknesses) {
		w->t1 = a->thicknesses[0];
		if (!quantity_given(&w->t2) && a->nthicknesses == 2)
			w->t2 = a->thicknesses[1];
	}
	if (!w->material1.n && a->nmaterials) {
		w->material1 = a->materials[0].text;
		if (!w->material2.n && a->nmaterials == 2)
			w->material2 = a->materials[1].text;
	}
	if (quantity_same(&w->t1, &w->t2))
		w->t2 = (struct quantity){ 0 };
}

static void fill_weld(struct binder *b, struct weld *w)
{
	struct assignment *a = b->a;

	if (w->joint == JOINT_COUNT && a->njoints == 1)
		w->joint = a->joints[0];
	if (w->at.position == POSITION_COUNT && a->npositions == 1)
		w->at = a->positions[0];
	if (w->process == PROCESS_COUNT)
		w->process = welding_process(a);
	fill_members(a, w);
	if (!w->run.od_mm && w->joint != JOINT_BRANCH)
		w->run = pipe_size_of(b->arena, &w->t1);
	w->t1_mm = quantity_mm(&w->t1);
	w->t2_mm = quantity_mm(&w->t2);
	w->leg_mm = quantity_mm(&w->leg);
	w->leg2_mm = quantity_mm(&w->leg2);
	w->length_mm = quantity_mm(&w->length);
}

/* The finding that tells of a fact, by its index and one; 0: none does yet. */
struct disagreeing {
	size_t joint, position;
};

/* One wrong fact is one finding, however many welds it does not have. */
static void disagree(struct binder *b, struct weld *w, const char *key, str says,
    size_t *told)
{
	struct finding *d;

	if (*told) {
		finding_relate(b->f, &b->f->v[*told - 1], w->pos)->label = str_format(
		    b->arena, "weld %c is %.*s", w->letter, STR_ARG(says));
		return;
	}
	d = complain(b, FINDING_FACTS_DISAGREE, w->pos,
	    "weld %c is %.*s, which the fact %s does not list", w->letter, STR_ARG(says),
	    key);
	*told = b->f->n;
	finding_relate(b->f, d, assignment_fact_pos(b->a, str_of(key)))->label =
	    STR("the fact");
	finding_repair(b->f, d, "make both say the same, or delete the fact %s", key);
}

/* A weld under "## Welds" against the lists of the facts. */
static void compare_weld(struct binder *b, struct weld *w, struct disagreeing *told)
{
	const struct assignment *a = b->a;
	uint32_t i = 0, j = 0;

	if (a->unread)
		return;
	while (i < a->njoints && a->joints[i] != w->joint)
		i++;
	if (a->njoints && i == a->njoints && w->joint != JOINT_COUNT)
		disagree(b, w, "Joint", joint_word(w->joint), &told->joint);
	while (j < a->npositions && a->positions[j].position != w->at.position)
		j++;
	if (a->npositions && j == a->npositions && w->at.position != POSITION_COUNT)
		disagree(b, w, "Position", position_word(w->at.position), &told->position);
}

struct owed {
	uint32_t row;
	const char *key, *word, *example;
	bool (*missing)(const struct weld *w);
};

static bool lacks_joint(const struct weld *w)
{
	return w->joint == JOINT_COUNT;
}

static bool lacks_process(const struct weld *w)
{
	return w->process == PROCESS_COUNT;
}

static bool lacks_material(const struct weld *w)
{
	return !w->material1.n;
}

static bool lacks_thickness(const struct weld *w)
{
	return !quantity_given(&w->t1);
}

static bool lacks_position(const struct weld *w)
{
	return w->at.position == POSITION_COUNT;
}

static const struct owed owed_rows[] = {
	{ FACT_JOINT, "Joint", "joint", "tee", lacks_joint },
	{ FACT_PROCESS, "Process", "process", "SMAW", lacks_process },
	{ FACT_MATERIAL, "Material", "material", "A36 plate", lacks_material },
	{ FACT_THICKNESS, "Thickness", "thickness", "3/8 in", lacks_thickness },
	{ FACT_POSITION, "Position", "position", "2F", lacks_position },
};

/* w: the weld under "## Welds" that lacks it; null: the facts lack it. */
static void complain_owed(struct binder *b, const struct owed *o, const struct weld *w)
{
	struct finding *d;

	b->a->unread |= o->row != FACT_MATERIAL && o->row != FACT_THICKNESS;
	if (w) {
		d = complain(b, FINDING_MISSING_FACT, w->pos,
		    "weld %c says no %s", w->letter, o->word);
		finding_repair(b->f, d, "add \"%s\" or the like to this line",
		    o->example);
		return;
	}
	d = complain(b, FINDING_MISSING_FACT, b->a->pos,
	    "the fact %s is owed where there is a weld", o->key);
	finding_repair(b->f, d, "add \"- **%s:** %s\" or the like", o->key, o->example);
}

/* A fact that was there but could not be read has its finding already, unless it
 * lists several values and so cannot serve a weld that says none. */
static bool is_told(const struct binder *b, uint32_t row)
{
	const struct assignment *a = b->a;

	if (!b->facts[row])
		return fact_is_told(b, row);
	return row == FACT_JOINT ? !a->njoints : row != FACT_POSITION || !a->npositions;
}

static void check_owed(struct binder *b, bool listed)
{
	const struct assignment *a = b->a;

	for (size_t i = 0; i < sizeof owed_rows / sizeof *owed_rows; i++) {
		const struct owed *o = &owed_rows[i];

		for (size_t w = 0; w < a->nwelds && !is_told(b, o->row); w++)
			if (o->missing(&a->welds[w]) && !a->welds[w].unread) {
				complain_owed(b, o, listed ? &a->welds[w] : NULL);
				break;
			}
	}
	if (!a->nwelds && !fact_is_told(b, FACT_JOINT) && welding_process(a) != PROCESS_COUNT &&
	    (a->kind == KIND_COUPON || a->kind == KIND_PRACTICE_TEST ||
	    a->kind == KIND_QUALIFICATION_TEST))
		complain_owed(b, &owed_rows[0], NULL);
}

void welds_complete(struct binder *b)
{
	struct assignment *a = b->a;
	struct disagreeing told = { 0 };
	bool listed = a->nwelds > 0;

	if (!listed)
		expand_welds(b);
	for (size_t i = 0; i < a->nwelds; i++) {
		if (listed)
			compare_weld(b, &a->welds[i], &told);
		fill_weld(b, &a->welds[i]);
	}
	check_owed(b, listed);
	if (a->nwelds == 1)
		a->welds[0].letter = 0;
}
