#include "model/fields.h"

#include "base/buf.h"

#include <assert.h>

uint32_t fields_find(const struct field_table *t, str key)
{
	for (size_t i = 0; i < t->n; i++)
		if (words_same(t->v[i].key, key))
			return (uint32_t)i;
	return NONE;
}

size_t blocks_until(const struct block *v, size_t n, size_t i, unsigned level)
{
	while (i < n && !(v[i].kind == BLOCK_HEADING && v[i].level <= level))
		i++;
	return i;
}

/* Of long lists so many are told. */
enum { KEYS_TOLD = 8 };

static void offer_keys(struct binder *b, struct finding *d, const str *keys, size_t n)
{
	struct buf list = { .arena = b->arena };

	for (size_t i = 0; i < n && i < KEYS_TOLD; i++)
		buf_addf(&list, "%s\"%.*s\"", i ? ", " : "", STR_ARG(keys[i]));
	finding_repair(b->f, d, "delete the line, or write a key that is known here%s %.*s",
	    n > KEYS_TOLD ? ", such as" : ":", STR_ARG(buf_str(&list)));
}

static void complain_key(struct binder *b, const struct field_table *t,
    const struct block *in)
{
	struct finding *d = complain(b, FINDING_UNKNOWN_KEY, block_key_pos(in),
	    "\"%.*s\" is not a fact of %s; this line is left out", STR_ARG(in->key),
	    t->where);
	str keys[FIELDS_MOST];

	str likely;

	for (size_t i = 0; i < t->n; i++)
		keys[i] = t->v[i].key;
	likely = offer_likely(b, d, in->key, keys, t->n);
	if (likely.n)
		b->nearly |= UINT64_C(1) << fields_find(t, likely);
	else if (is_worth_a_guess(b, d))
		offer_keys(b, d, keys, t->n);
}

static void complain_repeat(struct binder *b, const struct block *first,
    const struct block *in)
{
	struct finding *d = complain(b, FINDING_DUPLICATE_KEY, block_key_pos(in),
	    "\"%.*s\" stands twice here; this line is left out", STR_ARG(in->key));

	finding_relate(b->f, d, block_key_pos(first))->label = STR("the first counts");
	finding_repair(b->f, d, "delete one of them");
}

static void take(struct binder *b, const struct field_table *t, const struct block *in,
    const struct block **found)
{
	uint32_t row;

	if (in->kind != BLOCK_FACT || in->level > 1) {
		complain_block(b, in, "write a fact as \"- **Key:** value\"");
		return;
	}
	row = fields_find(t, in->key);
	if (row == NONE) {
		complain_key(b, t, in);
	} else if (t->v[row].many) {
		found[row] = in;
		t->v[row].read(b, &t->v[row], in);
	} else if (found[row]) {
		complain_repeat(b, found[row], in);
	} else {
		found[row] = in;
	}
}

/* Whether a row of an assignment reads a text without a finding; nothing of it is kept. */
static bool takes(const struct binder *b, const struct field *row, const struct block *in)
{
	struct assignment a = *b->a;
	struct binder trial = *b;

	trial.a = &a;
	trial.f = findings_new(b->arena);
	row->read(&trial, row, in);
	return !trial.f->n && trial.nstrange == b->nstrange;
}

/* Of rows that read a text those that would not read any text come first; those that do
 * not read it have no place. */
static int rank_of(const struct binder *b, const struct field *row, const struct block *in)
{
	struct block any = { .kind = in->kind, .text = STR("?"), .pos = in->pos };

	if (!in->text.n || !b->a)
		return 0;
	return !takes(b, row, in) ? 2 : takes(b, row, &any);
}

/* Notes for trial the keys that a line may mean: those that do not stand here. */
static void offer_rows(struct binder *b, struct finding *d, const struct field_table *t,
    const struct block *in, const struct block *const *found)
{
	size_t told = 0;

	for (int rank = 0; rank < 2; rank++)
		for (size_t i = 0; i < t->n && told < KEYS_TOLD; i++) {
			if (found[i] || rank_of(b, &t->v[i], in) != rank)
				continue;
			finding_guess(b->f, d, block_key_pos(in), in->key, t->v[i].key);
			told++;
		}
}

/* Once it is known which keys stand here: for a key without a likely one, and for both
 * lines of a key that stands twice. */
static void offer_keys_for(struct binder *b, const struct field_table *t,
    const struct block *in, const struct block *const *found, size_t from)
{
	uint32_t row = fields_find(t, in->key);

	for (size_t i = from; i < b->f->n && is_worth_a_guess(b, &b->f->v[i]); i++) {
		struct finding *d = &b->f->v[i];

		if (d->slips || pos_cmp(d->pos, block_key_pos(in)))
			continue;
		if (d->name == FINDING_DUPLICATE_KEY && row != NONE)
			offer_rows(b, d, t, found[row], found);
		if (d->name == FINDING_DUPLICATE_KEY || d->name == FINDING_UNKNOWN_KEY)
			offer_rows(b, d, t, in, found);
	}
}

void fields_read(struct binder *b, const struct field_table *t, const struct block *v,
    size_t n, const struct block **found)
{
	size_t from = b->f->n;

	assert(t->n <= FIELDS_MOST && FIELDS_MOST <= 64);
	b->nearly = 0;
	for (size_t i = 0; i < n; i++)
		take(b, t, &v[i], found);
	for (size_t row = 0; row < t->n; row++) {
		const struct block *in = found[row];

		if (!in || t->v[row].many)
			continue;
		if (in->text.n)
			t->v[row].read(b, &t->v[row], in);
		else
			complain(b, FINDING_MISSING_FACT, block_key_pos(in),
			    "\"%.*s\" has no value; this line is left out",
			    STR_ARG(in->key));
	}
	for (size_t i = 0; b->f->n > from && i < n; i++)
		if (v[i].kind == BLOCK_FACT && v[i].level <= 1)
			offer_keys_for(b, t, &v[i], found, from);
}
