#include "model/drawing.h"

#include "base/buf.h"
#include "model/pattern_block.h"

bool drawing_next(struct binder *b, const struct block *v, uint32_t *i,
    struct drawing_line *out)
{
	const struct block_more *m = v->more;

	while (m && *i < m->nlines) {
		size_t from = m->lines[*i].offset;
		size_t to = ++*i < m->nlines ? m->lines[*i].offset : v->text.n;
		struct said line = said_trim(said_sub(said_all(v), from, to));
		size_t colon = str_find_char(line.s, ':', 0);

		if (!line.s.n)
			continue;
		if (str_starts(line.s, STR("```"))) {
			finding_repair(b->f, complain(b, FINDING_BAD_DRAWING, said_pos(line),
			    "the block before this line is not closed; what follows is left out"),
			    "write ``` on a line of its own above");
			*i = m->nlines;
			return false;
		}
		out->key = said_trim(said_sub(line, 0, colon));
		out->value = said_trim(said_sub(line, colon + 1, line.s.n));
		if (colon < line.s.n && out->key.s.n && out->value.s.n)
			return true;
		finding_repair(b->f, complain(b, FINDING_BAD_DRAWING, said_pos(line),
		    "\"%.*s\" is not a key with a value; this line is left out",
		    STR_ARG(line.s)), "write a line such as \"leg: 5/16 in\"");
	}
	return false;
}

void drawing_complain(struct binder *b, enum finding_name name, struct said key,
    const char *block, const str *keys, size_t n)
{
	struct finding *d = complain(b, name, said_pos(key),
	    name == FINDING_UNKNOWN_KEY
	    ? "\"%.*s\" is not known in a %s block; this line is left out"
	    : "\"%.*s\" stands twice in this %s block; this line is left out",
	    STR_ARG(key.s), block);

	if (name == FINDING_UNKNOWN_KEY)
		offer_likely(b, d, key.s, keys, n);
}

/* The letter of a weld, as it may be written. */
static void offer_letter(struct binder *b, struct finding *d, const struct weld *w,
    str letter)
{
	for (char low = 0; low <= 0x20; low = (char)(low + 0x20)) {
		char wrong[2] = { (char)(w->letter | low), 0 };

		finding_slip(b->f, d, w->pos, str_copy(b->f->arena, str_of(wrong)),
		    letter)->say = str_format(b->f->arena, "call weld %c %.*s", w->letter,
		    STR_ARG(letter));
	}
}

/* Either letter may be wrong, that of the block, or that of a weld whose letter is none of
 * the first. */
void drawing_lost_weld(struct binder *b, const struct block *v, str letter)
{
	const struct assignment *a = b->a;
	struct finding *d = complain(b, FINDING_BAD_DRAWING, v->pos,
	    "there is no weld %.*s; the block is read as one for all welds", STR_ARG(letter));
	char word[2] = { 0 };

	if (a->nwelds)
		finding_repair(b->f, d, "name a weld from A to %c",
		    a->welds[a->nwelds - 1].letter);
	if (!is_worth_a_guess(b, d))
		return;
	for (size_t i = 0; i < a->nwelds; i++) {
		const struct weld *w = &a->welds[i];

		word[0] = w->letter;
		finding_guess(b->f, d, v->pos, v->key, str_format(b->f->arena, "joint %s",
		    word));
		if ((size_t)(w->letter - 'A') >= a->nwelds)
			offer_letter(b, d, w, letter);
	}
}

enum sheet_metal member_metal(const struct assignment *a, uint32_t member)
{
	if (!a->nmaterials)
		return METAL_NONE;
	return a->materials[member < a->nmaterials ? member : 0].metal;
}

/* The keys that only one kind of block has. */
static const struct { str key; enum drawing_kind kind; } telling[] = {
	{ { "joint", 5 }, DRAWING_JOINT }, { { "shape", 5 }, DRAWING_PATTERN },
	{ { "leg", 3 }, DRAWING_JOINT }, { { "gap", 3 }, DRAWING_JOINT },
	{ { "hole", 4 }, DRAWING_PLATE }, { { "slot", 4 }, DRAWING_PLATE },
	{ { "bend", 4 }, DRAWING_PLATE }, { { "cut", 3 }, DRAWING_PLATE },
	{ { "member", 6 }, DRAWING_PLATE },
};

/* How many lines of a block have such a key, by kind. */
static void count_telling(const struct block *v, size_t *n)
{
	str rest = v->text, line;

	while (str_next(&rest, '\n', &line))
		for (size_t i = 0; i < sizeof telling / sizeof *telling; i++)
			n[telling[i].kind] += words_same(telling[i].key,
			    str_trim(str_sub(line, 0, str_find_char(line, ':', 0))));
}

static const str kinds[] = {
	[DRAWING_JOINT] = { "joint", 5 }, [DRAWING_PLATE] = { "plate", 5 },
	[DRAWING_PATTERN] = { "pattern", 7 },
};
enum { KINDS = sizeof kinds / sizeof *kinds };

/* The kind that the lines of a block are of, when none has a key of the kind that it
 * says it is; else that kind. KINDS: it says none, and its lines tell none. */
static size_t kind_of(const struct block *v, size_t said)
{
	size_t n[KINDS] = { 0 }, best = KINDS;

	count_telling(v, n);
	if (said < KINDS && n[said])
		return said;
	for (size_t i = 0; i < KINDS; i++)
		if (n[i] && (best == KINDS || n[i] > n[best]))
			best = i;
	return best < KINDS ? best : said;
}

static void complain_info(struct binder *b, const struct block *v, str word, bool known,
    size_t kind)
{
	struct finding *d = complain(b, FINDING_BAD_DRAWING, v->pos,
	    !v->key.n ? "%.*sthis block does not say what it draws; it is %s%.*s"
	    : known ? "\"%.*s\" is not what the lines of this block draw; it is %s%.*s"
	    : "\"%.*s\" is not a kind of drawing; this block is %s%.*s", STR_ARG(word),
	    kind < KINDS ? "read as a " : "left out", STR_ARG(kind < KINDS ? kinds[kind]
	    : STR("")));

	if (kind < KINDS)
		finding_repair(b->f, d, "begin the block with ```%.*s",
		    STR_ARG(kinds[kind]));
	else
		offer_likely(b, d, v->key, kinds, KINDS);
	if (!d->repair.n)
		finding_repair(b->f, d,
		    "begin the block with ```joint, ```plate or ```pattern");
}

static bool read_fence(struct binder *b, const struct block *v, struct drawing *d)
{
	str rest = v->key, word = { 0 };
	struct pattern_block *p;
	size_t said = 0, kind;

	d->pos = v->pos;
	str_word(&rest, &word);
	while (said < KINDS && !str_eq_nocase(word, kinds[said]))
		said++;
	kind = kind_of(v, said);
	if (kind != said || kind == KINDS)
		complain_info(b, v, word, said < KINDS, kind);
	switch (kind) {
	case DRAWING_JOINT:
		d->kind = DRAWING_JOINT;
		read_joint_block(b, v, &d->joint);
		return true;
	case DRAWING_PLATE:
		read_plate_block(b, v, d);
		return true;
	case DRAWING_PATTERN:
		p = arena_alloc(b->arena, sizeof *p);
		d->kind = DRAWING_PATTERN;
		d->pattern = p;
		return read_pattern_block(b, v, p);
	default:
		return false;
	}
}

/* Sentences above a block say what it shows. */
void read_drawing(struct binder *b, const struct block *h, const struct block *v,
    size_t n)
{
	struct assignment *a = b->a;
	size_t first = 0;

	(void)h;
	for (size_t i = 0; i < n; i++) {
		struct drawing d = { 0 };

		if (v[i].kind == BLOCK_PARA && i + 1 < n &&
		    (v[i + 1].kind == BLOCK_PARA || v[i + 1].kind == BLOCK_FENCE ||
		    v[i + 1].kind == BLOCK_PICTURE))
			continue;
		if (v[i].kind == BLOCK_PICTURE)
			read_picture_block(b, &v[i], &d);
		if (v[i].kind != BLOCK_FENCE && v[i].kind != BLOCK_PICTURE) {
			complain_block(b, &v[i],
			    "draw with a block that begins with ```joint, ```plate "
			    "or ```pattern; a sentence stands above its block");
		} else if (v[i].kind == BLOCK_PICTURE || read_fence(b, &v[i], &d)) {
			prose_read(b, v + first, i - first, &d.caption);
			*ARENA_PUSH(b->arena, a->drawings, a->ndrawings,
			    a->drawings_cap) = d;
		}
		first = i + 1;
	}
}
