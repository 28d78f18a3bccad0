/* customs.md: habits that this program reverses, and findings accepted on purpose. */
#include "model/parts.h"

#include "base/buf.h"
#include "model/when.h"

/* What waivers may name beside assignments and skills. */
struct reader {
	struct binder *b;
	struct map *by_name;     /* "ORW 130", "quarter 2", "booth" -> index in places */
	struct pos *places; size_t nplaces, places_cap;
};

static void add_place(struct reader *r, str name, struct pos pos)
{
	if (map_add(r->by_name, name, (uint32_t)r->nplaces) != r->nplaces)
		return;
	*ARENA_PUSH(r->b->arena, r->places, r->nplaces, r->places_cap) = pos;
}

/* Findings about these stand at their headings. */
static void list_places(struct reader *r)
{
	const struct model *m = r->b->model;

	r->by_name = map_new(r->b->arena, true);
	for (size_t i = 0; i < m->ncourses; i++)
		add_place(r, m->courses[i].id, m->courses[i].pos);
	for (size_t i = 0; i < m->nquarters; i++)
		add_place(r, str_format(r->b->arena, "quarter %u", (unsigned)i + 1),
		    m->quarters[i].pos);
	for (size_t i = 0; i < m->nstations; i++)
		add_place(r, m->stations[i].name, m->stations[i].pos);
	for (size_t i = 0; i < m->nsections; i++)
		add_place(r, m->sections[i].name, m->sections[i].pos);
	for (size_t i = 0; i < m->nmachines; i++)
		add_place(r, m->machines[i].name, m->machines[i].pos);
}

static bool find_place(const struct reader *r, struct said t, struct waiver *w)
{
	size_t used;
	str course = id_of_course(r->b->arena, t.s, &used);
	uint32_t i = map_find(r->by_name, course.n && used == t.s.n ? course : t.s);

	if (i == MAP_NONE || w->about.n || w->assignment.n || w->skill.n)
		return false;
	w->about = t.s;
	w->place = r->places[i];
	return true;
}

static str info_name(uint32_t name)
{
	return str_of(finding_info(name)->name);
}

/* The custom that s names in words, as its rule row writes it; empty: none does. */
static str find_custom(str s)
{
	for (uint32_t k = 0; k < FINDING_COUNT; k++) {
		str custom = str_of(finding_info(k)->custom);

		if (custom.n && words_same(custom, s))
			return custom;
	}
	return (str){ 0 };
}

static uint32_t find_name(str s)
{
	for (uint32_t k = 0; k < FINDING_COUNT; k++)
		if (words_same(info_name(k), s))
			return k;
	return NONE;
}

/* All customs in words, or all finding names, as candidates for a likely word. */
static size_t list_words(bool customs, str *v)
{
	size_t n = 0;

	for (uint32_t k = 0; k < FINDING_COUNT; k++) {
		str word = customs ? str_of(finding_info(k)->custom) : info_name(k);

		if (word.n)
			v[n++] = word;
	}
	return n;
}

/* A finding's name where the words of a custom are owed. */
static void complain_name(struct binder *b, const struct block *v, uint32_t name)
{
	const struct finding_info *info = finding_info(name);
	struct finding *d;

	if (info->class == CLASS_CUSTOM) {
		d = complain(b, FINDING_UNKNOWN_WORD, block_key_pos(v), "\"%.*s\" is a finding, "
		    "not the words of a custom; this line is left out", STR_ARG(v->key));
		finding_repair(b->f, d, "write \"%s\"", info->custom);
		return;
	}
	d = complain(b, FINDING_FIRM_RULE_OFF, block_key_pos(v),
	    "\"%s\" is no custom and cannot be switched off; this line is left out",
	    info->name);
	if (info->class == CLASS_SAFETY)
		finding_repair(b->f, d, "mend what it finds: it guards against harm");
	else
		finding_repair(b->f, d, "mend what it finds, or accept one case of it "
		    "under Waivers");
}

static bool is_off(const struct model *m, str custom)
{
	for (size_t i = 0; i < m->ncustoms_off; i++)
		if (str_eq(m->customs_off[i].custom, custom))
			return true;
	return false;
}

static void lost_custom(struct binder *b, struct finding *d, str words)
{
	finding_repair(b->f, d, "write a custom in the words that a finding gives it, such as "
	    "\"stick before wire-feed\"");
	finding_slip(b->f, d, d->pos, words, (str){ 0 });
}

/* Complains of words that are no custom; those that are likely meant, or none. */
static str custom_meant(struct binder *b, const struct block *v)
{
	str words[FINDING_COUNT];
	struct finding *d = complain(b, FINDING_UNKNOWN_WORD, block_key_pos(v),
	    "\"%.*s\" is not a custom that fitup knows; this line is left out",
	    STR_ARG(v->key));
	str likely = offer_likely(b, d, v->key, words, list_words(true, words));

	if (likely.n)
		d->message = str_format(b->f->arena, "\"%.*s\" is not a custom that fitup "
		    "knows; it is read as \"%.*s\"", STR_ARG(v->key), STR_ARG(likely));
	else
		lost_custom(b, d, v->key);
	return likely;
}

static void read_off(struct reader *r, const struct block *v)
{
	struct binder *b = r->b;
	struct model *m = b->model;
	str custom = find_custom(v->key);
	uint32_t name = custom.n ? NONE : find_name(v->key);

	if (name != NONE) {
		complain_name(b, v, name);
		return;
	}
	if (!custom.n)
		custom = custom_meant(b, v);
	if (!custom.n)
		return;
	if (!v->text.n) {
		finding_repair(b->f, complain(b, FINDING_MISSING_FACT, block_key_pos(v),
		    "\"%.*s\" does not say why it is switched off; it stays on",
		    STR_ARG(v->key)), "write the reason after the colon");
	} else if (is_off(m, custom)) {
		finding_repair(b->f, complain(b, FINDING_DUPLICATE_KEY, block_key_pos(v),
		    "\"%.*s\" is switched off twice; this line is left out",
		    STR_ARG(v->key)), "delete one of them");
	} else {
		*ARENA_PUSH(b->arena, m->customs_off, m->ncustoms_off,
		    m->customs_off_cap) = (struct custom_off){ custom, v->text,
			block_key_pos(v) };
	}
}

/* The finding that a waiver names; false: reported. */
static bool read_name(struct binder *b, struct said t, struct waiver *w)
{
	uint32_t name = find_name(t.s);
	struct finding *d;
	str words[FINDING_COUNT];

	if (name == NONE) {
		d = complain(b, FINDING_UNKNOWN_WORD, said_pos(t),
		    "\"%.*s\" is not the name of a finding; this waiver is left out",
		    STR_ARG(t.s));
		name = find_name(offer_likely(b, d, t.s, words, list_words(false, words)));
		if (!d->slips) {
			finding_repair(b->f, d, "write a name that stands in brackets behind a "
			    "finding, such as untaught-skill");
			finding_slip(b->f, d, d->pos, t.s, (str){ 0 });
		}
		/* What guards against harm is never waived by a guess. */
		if (name == NONE || finding_info(name)->class == CLASS_SAFETY)
			return false;
		d->message = str_format(b->f->arena, "\"%.*s\" is not the name of a finding; "
		    "it is read as \"%s\"", STR_ARG(t.s), finding_info(name)->name);
	}
	if (finding_info(name)->class == CLASS_SAFETY) {
		d = complain(b, FINDING_SAFETY_WAIVER, said_pos(t),
		    "\"%s\" guards against harm and cannot be waived; this waiver is left "
		    "out", finding_info(name)->name);
		finding_repair(b->f, d, "mend what it finds");
		return false;
	}
	w->name = (enum finding_name)name;
	return true;
}

/* After the name: an assignment, a skill, or a thing with a heading of its own. */
static bool read_subject(struct reader *r, struct said t, struct waiver *w)
{
	struct binder *b = r->b;
	size_t used;
	str id = id_of_assignment(b->arena, t.s, &used);

	if (id.n && used == t.s.n && !w->assignment.n && !w->about.n) {
		w->assignment = id;
		return true;
	}
	if (find_place(r, t, w))
		return true;
	id = id_of_skill(b->arena, t.s);
	if (id.n && !w->skill.n && !w->about.n) {
		w->skill = id;
		return true;
	}
	finding_repair(b->f, complain(b, FINDING_NOT_UNDERSTOOD, said_pos(t),
	    "\"%.*s\" has no meaning here; this waiver is left out", STR_ARG(t.s)),
	    "after the name write one assignment and at most one skill, such as "
	    "\"untaught-skill, SM-25, fab.plan\", or one course, quarter or station");
	return false;
}

static bool read_key(struct reader *r, const struct block *v, struct waiver *w)
{
	struct said rest = { v, v->key }, part;

	if (!said_next(&rest, ",", &part) || !read_name(r->b, part, w))
		return false;
	while (said_next(&rest, ",", &part))
		if (!read_subject(r, part, w))
			return false;
	return true;
}

static bool complain_lacking(struct binder *b, const struct block *v, const char *what)
{
	finding_repair(b->f, complain(b, FINDING_MISSING_FACT, block_key_pos(v),
	    "this waiver does not say %s; until it does, it covers nothing", what),
	    "write \"reason; role responsible; until fall-2027\" or a date in place of "
	    "the term");
	return false;
}

/* Kept all the same, so that what it means to cover is told with it. */
static bool complain_endless(struct binder *b, const struct block *v, struct waiver *w)
{
	w->endless = true;
	w->until_pos = block_key_pos(v);
	complain_lacking(b, v, "until when");
	return true;
}

static bool read_until(struct binder *b, const struct block *v, struct said t,
    struct waiver *w)
{
	struct when when;

	said_skip(&t, STR("until"));
	if (!t.s.n)
		return complain_endless(b, v, w);
	t = said_trim(t);
	w->until = t.s;
	w->until_pos = said_pos(t);
	if (when_parse(t.s, &when))
		return true;
	w->endless = true;
	finding_repair(b->f, complain(b, FINDING_UNKNOWN_WORD, w->until_pos,
	    "\"%.*s\" is neither a day nor a term; until it is, this waiver covers nothing",
	    STR_ARG(t.s)), "write a day as 2027-09-01 or a term as fall-2027");
	return true;
}

/* "reason; role; until X": the last two parts are role and end, so that a reason may
 * hold semicolons. */
static bool read_terms(struct binder *b, const struct block *v, struct waiver *w)
{
	struct said all = said_all(v), tail;
	size_t last = all.s.n, before;

	while (last && all.s.p[last - 1] != ';')
		last--;
	tail = said_trim(said_sub(all, last, all.s.n));
	if (!said_skip(&(struct said){ v, tail.s }, STR("until")))
		return complain_endless(b, v, w);
	before = last ? last - 1 : 0;
	while (before && all.s.p[before - 1] != ';')
		before--;
	w->role = last ? str_trim(str_sub(all.s, before, last - 1)) : (str){ 0 };
	w->reason = before ? str_trim(str_sub(all.s, 0, before - 1)) : (str){ 0 };
	if (!w->role.n)
		return complain_lacking(b, v, "whose role answers for it");
	if (!w->reason.n)
		return complain_lacking(b, v, "the reason and whose role answers for it");
	return read_until(b, v, tail, w);
}

static void read_waiver(struct reader *r, const struct block *v)
{
	struct model *m = r->b->model;
	struct waiver w = { .pos = block_key_pos(v), .place = { POS_NOWHERE, 0, 0 } };

	if (read_key(r, v, &w) && read_terms(r->b, v, &w))
		*ARENA_PUSH(r->b->arena, m->waivers, m->nwaivers, m->waivers_cap) = w;
}

static const struct customs_row {
	str name;
	void (*read)(struct reader *r, const struct block *v);
	const char *wanted;
} rows[] = {
	{ { "Off", 3 }, read_off,
	    "write \"- **stick before wire-feed:** reason\"" },
	{ { "Waivers", 7 }, read_waiver, "write \"- **untaught-skill, SM-25, fab.plan:** "
	    "reason; role responsible; until fall-2027\"" },
};
enum { ROWS = sizeof rows / sizeof *rows };

static const struct customs_row *row_of(struct binder *b, const struct block *h)
{
	str names[ROWS];
	struct finding *d;

	for (size_t i = 0; i < ROWS; i++) {
		names[i] = rows[i].name;
		if (words_same(rows[i].name, h->text))
			return &rows[i];
	}
	d = complain(b, FINDING_UNKNOWN_SECTION, h->pos,
	    "\"%.*s\" is not a heading of customs.md; what stands under it is left out",
	    STR_ARG(h->text));
	if (!offer_likely(b, d, h->text, names, ROWS).n) {
		finding_repair(b->f, d, "write \"## Off\" or \"## Waivers\"");
		offer_guesses(b, d, h->text, names, ROWS, ANY_DISTANCE);
	}
	return NULL;
}

static void read_section(struct reader *r, const struct block *h, const struct block *v,
    size_t n, const struct block **seen)
{
	struct binder *b = r->b;
	const struct customs_row *row = row_of(b, h);
	struct finding *d;

	if (!row)
		return;
	if (seen[row - rows]) {
		d = complain(b, FINDING_DUPLICATE_SECTION, h->pos,
		    "\"%.*s\" stands twice; what stands under this one is left out",
		    STR_ARG(h->text));
		finding_relate(b->f, d, seen[row - rows]->pos)->label =
		    STR("the first counts");
		finding_repair(b->f, d, "write these lines under the first, or delete "
		    "them");
		return;
	}
	seen[row - rows] = h;
	for (size_t i = 0; i < n; i++)
		if (v[i].kind == BLOCK_FACT && v[i].level == 1)
			row->read(r, &v[i]);
		else
			complain_block(b, &v[i], row->wanted);
}

void customs_read(struct binder *b, const struct record_file *file)
{
	const struct block *seen[ROWS] = { NULL };
	struct reader r = { .b = b };
	size_t end;

	b->aside = true;
	list_places(&r);
	for (size_t i = 1; i < file->n; i = end) {
		const struct block *h = &file->v[i];
		bool heading = h->kind == BLOCK_HEADING;

		end = heading ? blocks_until(file->v, file->n, i + 1, h->level < 2 ? 1 : 2)
		    : i + 1;
		if (heading && h->level < 2)
			complain_second_title(b, h);
		else if (heading && h->level == 2)
			read_section(&r, h, h + 1, end - i - 1, seen);
		else
			complain_block(b, h, "write it under ## Off or ## Waivers");
	}
	b->aside = false;
}
