#include "model/drawing.h"

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

enum sheet_metal member_metal(const struct assignment *a, uint32_t member)
{
	if (!a->nmaterials)
		return METAL_NONE;
	return a->materials[member < a->nmaterials ? member : 0].metal;
}

static void complain_info(struct binder *b, const struct block *v)
{
	static const str known[] = { { "joint", 5 }, { "plate", 5 }, { "pattern", 7 } };
	struct finding *d = complain(b, FINDING_BAD_DRAWING, v->pos,
	    v->key.n ? "\"%.*s\" is not a kind of drawing; this block is left out"
	    : "%.*sthis block does not say what it draws; it is left out",
	    STR_ARG(v->key));

	offer_likely(b, d, v->key, known, 3);
	if (!d->repair.n)
		finding_repair(b->f, d,
		    "begin the block with ```joint, ```plate or ```pattern");
}

static bool read_fence(struct binder *b, const struct block *v, struct drawing *d)
{
	str rest = v->key, word;

	d->pos = v->pos;
	str_word(&rest, &word);
	if (str_eq_nocase(word, STR("joint"))) {
		d->kind = DRAWING_JOINT;
		read_joint_block(b, v, &d->joint);
		return true;
	}
	if (str_eq_nocase(v->key, STR("plate"))) {
		d->kind = DRAWING_PLATE;
		read_plate_block(b, v, &d->plate);
		return true;
	}
	if (str_eq_nocase(word, STR("pattern"))) {
		struct pattern_block *p = arena_alloc(b->arena, sizeof *p);

		d->kind = DRAWING_PATTERN;
		d->pattern = p;
		return read_pattern_block(b, v, p);
	}
	complain_info(b, v);
	return false;
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
