/* One acceptance set from its file. */
#include "model/limit_scan.h"
#include "model/parts.h"

#include "base/buf.h"
#include "base/standards.h"

#include <math.h>

/* Names are compared one by one, so there is a limit to how many there may be. */
enum { SETS_MOST = 200, LIMITS_MOST = 400, PARTS_MOST = 12 };

bool limit_is_doubtful(const struct standard *s, const struct standard_limit *l)
{
	return l->seen != LIMIT_SEEN && l->seen != LIMIT_CUSTOM && !s->checked.n;
}

bool limit_is_custom(const struct standard *s, const struct standard_limit *l)
{
	return l->seen == LIMIT_CUSTOM && !s->checked.n;
}

static void name_set(struct standard *s, str heading)
{
	struct code_name n = code_find(heading);

	s->name = heading;
	s->code = n.code;
	s->edition = n.edition;
	s->loading = n.loading;
}

void standards_begin(struct binder *b, size_t files)
{
	struct model *m = b->model;

	m->standards = arena_array(b->arena, files, sizeof *m->standards);
	m->shipped = arena_array(b->arena, STANDARDS_SHIPPED, sizeof *m->shipped);
	m->nshipped = STANDARDS_SHIPPED;
	for (uint32_t i = 0; i < STANDARDS_SHIPPED; i++) {
		str text = standard_shipped(i).text;
		str line = str_sub(text, 0, str_find_char(text, '\n', 0));

		name_set(&m->shipped[i], str_trim(str_sub(line, 1, line.n)));
		m->shipped[i].shipped = i;
	}
}

/* ---- facts ---- */

static void disagrees(struct binder *b, const struct block *in, str heading)
{
	complain(b, FINDING_FACTS_DISAGREE, block_pos(in, 0),
	    "the heading says \"%.*s\" and this fact \"%.*s\"; the heading counts",
	    STR_ARG(heading), STR_ARG(in->text));
}

static void fact_code(struct binder *b, const struct field *row, const struct block *in)
{
	const struct standard *s = b->standard;

	(void)row;
	if (s->code.n && word_find(in->text, s->code) == in->text.n)
		disagrees(b, in, s->code);
}

static void fact_edition(struct binder *b, const struct field *row,
    const struct block *in)
{
	struct standard *s = b->standard;
	uint32_t year;

	(void)row;
	if (!read_count(b, said_all(in), 1900, 2999, &year))
		return;
	if (s->edition && s->edition != year)
		disagrees(b, in, str_format(b->arena, "%u", s->edition));
	else
		s->edition = year;
}

static void fact_loading(struct binder *b, const struct field *row,
    const struct block *in)
{
	struct standard *s = b->standard;

	(void)row;
	if (!s->loading.n)
		s->loading = in->text;
	else if (word_find(in->text, s->loading) == in->text.n)
		disagrees(b, in, s->loading);
}

static void fact_source(struct binder *b, const struct field *row, const struct block *in)
{
	(void)row;
	b->standard->source = in->text;
}

/* "D1.1:2020, by department chair, 2026-08-14": all three, or it clears nothing. */
static void fact_checked(struct binder *b, const struct field *row,
    const struct block *in)
{
	struct said rest = said_all(in), part;
	bool by = false;
	size_t n = 0;

	(void)row;
	while (said_next(&rest, ",", &part)) {
		by |= n && str_starts_nocase(part.s, STR("by "));
		n++;
	}
	if (n >= 3 && by) {
		b->standard->checked = in->text;
		return;
	}
	finding_repair(b->f, complain(b, FINDING_MISSING_FACT, block_pos(in, 0),
	    "this does not say which edition, by whom and when, so no dagger is cleared"),
	    "write \"- **Checked against:** D1.1:2020, by department chair, "
	    "2026-08-14\"");
}

#define FIELD(name, reader, text) \
	{ .key = { name, sizeof name - 1 }, .read = reader, .help = text }

static const struct field fact_rows[] = {
	FIELD("Code", fact_code, "the code that the limits come from"),
	FIELD("Edition", fact_edition, "its year"),
	FIELD("Loading", fact_loading, "static, cyclic, welder test, or a level"),
	FIELD("Source", fact_source, "where the figures were read"),
	FIELD("Checked against", fact_checked,
	    "edition, by role, date; clears the daggers"),
};
enum { FACT_SOURCE = 3, FACTS = sizeof fact_rows / sizeof *fact_rows };
static const struct field_table facts = { fact_rows, FACTS, "a set of limits" };

/* ---- one limit ---- */

static const struct word seen_rows[] = {
	{ { "seen", 4 }, LIMIT_SEEN }, { { "summary", 7 }, LIMIT_SUMMARY },
	{ { "memory", 6 }, LIMIT_MEMORY }, { { "custom", 6 }, LIMIT_CUSTOM },
};
static const struct words seen_words = {
	{ "how far a figure was verified", 29 }, seen_rows, 4,
};

static void complain_limit(struct binder *b, struct said t,
    const struct limit_fault *fault)
{
	struct said at = said_sub(t, fault->offset, t.s.n), wrong = at;
	struct finding *d = complain(b, FINDING_BAD_LIMIT, said_pos(at),
	    "\"%.*s\" cannot be read, and this limit is left out: %s", STR_ARG(t.s),
	    fault->reason);

	if (fault->likely.n && said_word(&at, &wrong))
		finding_offer(b->f, d, d->pos, wrong.s, fault->likely);
}

/* Cuts what follows `word` off *t. */
static bool cut_after(struct said *t, str word, struct said *after)
{
	size_t at = word_find(t->s, word);

	*after = said_sub(*t, t->s.n, t->s.n);
	if (at == t->s.n)
		return false;
	*after = said_trim(said_sub(*t, at + word.n, t->s.n));
	*t = said_trim(said_sub(*t, 0, at));
	return true;
}

static bool read_condition(struct binder *b, struct said *head, struct standard_limit *l)
{
	struct limit_fault fault;
	struct said where;

	if (!cut_after(head, STR("where"), &where))
		return true;
	l->where_text = where.s;
	l->where_pos = said_pos(where);
	if (limit_expr_condition(b->arena, where.s, &l->where, &fault))
		return true;
	complain_limit(b, where, &fault);
	return false;
}

/* "[1 mm]" after a figure. */
static void cut_metric(struct said *t, struct said *metric)
{
	size_t at = str_find_char(t->s, '[', 0);

	*metric = said_sub(*t, t->s.n, t->s.n);
	if (at == t->s.n || !str_ends(t->s, STR("]")))
		return;
	*metric = said_trim(said_sub(*t, at + 1, t->s.n - 1));
	*t = said_trim(said_sub(*t, 0, at));
}

/* A count is whole: "1 per 4 in". A bare 1/32 has lost its unit. */
static bool wants_unit(const struct standard_limit *l)
{
	const struct limit_sizes none = { 0 };
	double value;

	return l->most.kind == LIMIT_NUMBER &&
	    limit_expr_value(&l->most, &none, &value) && value != floor(value);
}

/* A code rounds 1/32 in to 1 mm and 1/16 in to 2 mm; farther off is a slip. */
static bool is_slip(const struct standard_limit *l, str metric)
{
	const struct limit_sizes none = { 0 };
	struct quantity_fault fault;
	struct quantity q;
	double mm;

	return l->most.kind == LIMIT_LENGTH && !l->per.n &&
	    limit_expr_value(&l->most, &none, &mm) && mm > 0 &&
	    quantity_parse(metric, QUANTITY_LENGTH, METAL_NONE, &q, &fault) ==
	    QUANTITY_OK && (q.lo < 0.6 * mm || q.lo > 1.6 * mm);
}

static void keep_metric(struct binder *b, struct said metric, struct standard_limit *l)
{
	struct finding *d;

	if (metric.s.n && l->most.names) {
		d = complain(b, FINDING_NOT_UNDERSTOOD, said_pos(metric),
		    "\"%.*s\" cannot hold for every size; it is left out",
		    STR_ARG(metric.s));
	} else if (str_find_char(metric.s, '[', 0) < metric.s.n) {
		d = complain(b, FINDING_NOT_UNDERSTOOD, said_pos(metric),
		    "there is more than one bracket; they are left out");
	} else if (is_slip(l, metric.s)) {
		d = complain(b, FINDING_FACTS_DISAGREE, said_pos(metric),
		    "\"%.*s\" is not near %.*s; it is left out", STR_ARG(metric.s),
		    STR_ARG(l->most_text));
	} else {
		l->metric = metric.s;
		return;
	}
	finding_repair(b->f, d, "delete the bracket, or write the figure that the code "
	    "itself prints");
}

/* A figure of no size must make sense as it stands; one that goes by sizes is told of
 * those at which it does not, and kept. */
static bool judge_figure(struct binder *b, struct said t, struct standard_limit *l)
{
	struct limit_failure f = limit_scan(l);
	struct said at = t;
	struct buf words = { .arena = b->arena };
	struct finding *d;

	if (!f.fails)
		return true;
	limit_say_failure(&words, l, &f);
	if (f.in_condition)
		at = said_sub(t, t.s.n, t.s.n);
	else if (f.o.state == LIMIT_BY_ZERO)
		at = said_sub(t, f.o.at, t.s.n);
	if (!l->most.names && !f.in_condition) {
		struct limit_fault fault = { .offset = (size_t)(at.s.p - t.s.p),
			.reason = buf_z(&words) };

		complain_limit(b, t, &fault);
		return false;
	}
	d = complain(b, FINDING_LIMIT_FAILS, f.in_condition ? l->where_pos : said_pos(at),
	    "\"%.*s\" %.*s", STR_ARG(f.in_condition ? l->where_text : t.s),
	    STR_ARG(buf_str(&words)));
	finding_repair(b->f, d, "say behind \"where\" for which sizes it holds, or set an "
	    "end with min( ) or max( )");
	return true;
}

static bool read_figure(struct binder *b, struct said t, struct standard_limit *l)
{
	struct said metric, per;
	struct limit_fault fault;
	struct quantity q;

	cut_metric(&t, &metric);
	if (cut_after(&t, STR("per"), &per)) {
		if (!read_quantity(b, per, QUANTITY_LENGTH, METAL_NONE, &q) ||
		    !keep_size(b, per, &q))
			return false;
		l->per = per.s;
	}
	l->most_text = t.s;
	l->most_pos = said_pos(t);
	if (!limit_expr_size(b->arena, t.s, &l->most, &fault)) {
		complain_limit(b, t, &fault);
		return false;
	}
	if (wants_unit(l)) {
		finding_repair(b->f, complain(b, FINDING_MISSING_UNIT, said_pos(t),
		    "\"%.*s\" has no unit, and this limit is left out", STR_ARG(t.s)),
		    "write \"%.*s in\" if inches are meant", STR_ARG(t.s));
		return false;
	}
	if (!judge_figure(b, t, l))
		return false;
	keep_metric(b, metric, l);
	return true;
}

static const struct { str word; enum limit_form form; } heads[] = {
	{ { "at most", 7 }, LIMIT_AT_MOST }, { { "no more than", 12 }, LIMIT_AT_MOST },
	{ { "up to", 5 }, LIMIT_AT_MOST }, { { "<=", 2 }, LIMIT_AT_MOST },
	{ { "\xE2\x89\xA4", 3 }, LIMIT_AT_MOST }, { { "at least", 8 }, LIMIT_AT_LEAST },
	{ { "no less than", 12 }, LIMIT_AT_LEAST }, { { ">=", 2 }, LIMIT_AT_LEAST },
	{ { "\xE2\x89\xA5", 3 }, LIMIT_AT_LEAST }, { { "within", 6 }, LIMIT_WITHIN },
	{ { "\xC2\xB1", 2 }, LIMIT_WITHIN },
};

/* Takes the words that say which way a figure is meant off *t. A sign needs no blank. */
static enum limit_form cut_form(struct said *t)
{
	for (size_t i = 0; i < sizeof heads / sizeof *heads; i++) {
		char first = heads[i].word.p[0];
		bool sign = !(first >= 'a' && first <= 'z');

		if (sign && str_starts(t->s, heads[i].word))
			*t = said_trim(said_sub(*t, heads[i].word.n, t->s.n));
		else if (sign || !said_skip(t, heads[i].word))
			continue;
		return heads[i].form;
	}
	return LIMIT_WORDS;
}

/* Words that begin with a size mean a figure, but not which way. */
static bool is_bare_figure(str s)
{
	struct quantity_fault fault;
	struct quantity q;
	size_t used;

	return quantity_prefix(s, QUANTITY_ANY, METAL_NONE, &q, &used, &fault) ==
	    QUANTITY_OK && q.kind != QUANTITY_COUNT && used > 0;
}

/* "at most 1/32 in [1 mm] where t < 1 in", "none", or words. */
static bool read_head(struct binder *b, struct said t, struct standard_limit *l)
{
	if (!read_condition(b, &t, l))
		return false;
	if (str_eq_nocase(t.s, STR("none"))) {
		l->form = LIMIT_NONE;
		return true;
	}
	l->form = cut_form(&t);
	if (l->form != LIMIT_WORDS)
		return read_figure(b, t, l);
	l->words = t.s;
	if (!is_bare_figure(t.s))
		return true;
	finding_repair(b->f, complain(b, FINDING_BAD_LIMIT, said_pos(t),
	    "\"%.*s\" is a figure that does not say which way, and this limit is left out",
	    STR_ARG(t.s)), "write \"at most\", \"at least\" or \"within\" before it");
	return false;
}

/* "fillet gauge, mm": the unit that the gauge is read in may stand after the tool. */
static void read_tool(struct said t, struct standard_limit *l)
{
	static const str units[] = { { "in", 2 }, { "mm", 2 } };
	size_t at = t.s.n;
	str tail;

	l->tool = t.s;
	l->tool_pos = said_pos(t);
	l->unit = l->most.unit && (str_eq(str_of(l->most.unit), STR("mm")) ||
	    str_eq(str_of(l->most.unit), STR("cm"))) ? units[1] : units[0];
	while (at && t.s.p[at - 1] != ',')
		at--;
	tail = str_trim(str_sub(t.s, at, t.s.n));
	for (size_t i = 0; i < 2 && at; i++)
		if (str_eq_nocase(tail, units[i])) {
			l->unit = units[i];
			l->tool = str_trim(str_sub(t.s, 0, at - 1));
		}
}

static void read_tail(struct binder *b, const struct said *v, size_t n,
    struct standard_limit *l)
{
	uint32_t seen;

	if (n > 4) {
		const char *from = v[1].s.p, *to = v[n - 4].s.p + v[n - 4].s.n;

		l->more = (str){ from, (size_t)(to - from) };
	}
	read_tool(v[n - 3], l);
	l->clause = v[n - 2].s;
	l->clause_pos = said_pos(v[n - 2]);
	l->seen_pos = said_pos(v[n - 1]);
	l->seen = LIMIT_MEMORY;
	if (read_word(b, v[n - 1], &seen_words, &seen))
		l->seen = (enum limit_seen)seen;
}

static void complain_parts(struct binder *b, const struct block *in, size_t n)
{
	finding_repair(b->f, complain(b, n > PARTS_MOST ? FINDING_OVER_LIMIT :
	    FINDING_MISSING_FACT, block_key_pos(in), n > PARTS_MOST ?
	    "\"%.*s\" has too many parts; it is left out" :
	    "\"%.*s\" does not end with a tool, a clause and how far it was verified; "
	    "it is left out", STR_ARG(in->key)),
	    "write \"- **%.*s:** at most 1/32 in; undercut gauge; 6.10.1; seen\"",
	    STR_ARG(in->key));
}

static void read_limit(struct binder *b, const struct block *in, enum standard_test test,
    unsigned welds)
{
	struct standard *s = b->standard;
	struct said rest = said_all(in), part, v[PARTS_MOST];
	struct standard_limit l = { .name = in->key, .test = test, .welds = welds,
		.pos = block_key_pos(in) };
	size_t n = 0;

	while (said_next(&rest, ";", &part)) {
		if (n < PARTS_MOST)
			v[n] = part;
		n++;
	}
	if (n < 4 || n > PARTS_MOST) {
		complain_parts(b, in, n);
		return;
	}
	if (!read_head(b, v[0], &l))
		return;
	read_tail(b, v, n, &l);
	*ARENA_PUSH(b->arena, s->v, s->n, s->cap) = l;
}

/* ---- sections ---- */

static const struct { str name; enum standard_test test; unsigned welds; } sections[] = {
	{ { "Visual", 6 }, TEST_VISUAL, WELD_ANY },
	{ { "Visual fillet", 13 }, TEST_VISUAL, WELD_FILLET },
	{ { "Visual groove", 13 }, TEST_VISUAL, WELD_GROOVE },
	{ { "Bend", 4 }, TEST_BEND, WELD_ANY },
	{ { "Fillet break", 12 }, TEST_FILLET_BREAK, WELD_ANY },
	{ { "Macro", 5 }, TEST_MACRO, WELD_ANY },
	{ { "Macro fillet", 12 }, TEST_MACRO, WELD_FILLET },
	{ { "Macro groove", 12 }, TEST_MACRO, WELD_GROOVE },
	{ { "Tensile", 7 }, TEST_TENSILE, WELD_ANY },
	{ { "Nick break", 10 }, TEST_NICK_BREAK, WELD_ANY },
	{ { "Dimensions", 10 }, TEST_DIMENSIONS, WELD_ANY | WELD_PART },
	{ { "Dimensions welded", 17 }, TEST_DIMENSIONS, WELD_ANY },
	{ { "Dimensions groove", 17 }, TEST_DIMENSIONS, WELD_GROOVE },
};
enum { SECTIONS = sizeof sections / sizeof *sections };

static size_t section_of(str heading)
{
	size_t i = 0;

	while (i < SECTIONS && !words_same(sections[i].name, heading))
		i++;
	return i;
}

static void complain_section(struct binder *b, const struct block *h)
{
	struct finding *d = complain(b, FINDING_UNKNOWN_SECTION, h->pos,
	    "\"%.*s\" is not a section of a set of limits; what stands under it is "
	    "left out",
	    STR_ARG(h->text));
	str names[SECTIONS];

	for (size_t i = 0; i < SECTIONS; i++)
		names[i] = sections[i].name;
	offer_likely(b, d, h->text, names, SECTIONS);
}

static void complain_again(struct binder *b, const struct block *h,
    const struct block *first)
{
	finding_relate(b->f, complain(b, FINDING_DUPLICATE_SECTION, h->pos,
	    "\"%.*s\" stands twice here; what stands under this one is left out",
	    STR_ARG(h->text)), first->pos)->label = STR("the first counts");
}

static void read_lines(struct binder *b, const struct block *v, size_t n, size_t row)
{
	for (size_t i = 0; i < n; i++) {
		if (v[i].kind != BLOCK_FACT || v[i].level > 1) {
			complain_block(b, &v[i],
			    "write a limit as \"- **Undercut:** at most 1/32 in; "
			    "undercut gauge; 6.10.1; seen\"");
		} else if (b->standard->n == LIMITS_MOST) {
			complain(b, FINDING_OVER_LIMIT, block_key_pos(&v[i]),
			    "a set has at most %d limits; the rest is left out",
			    LIMITS_MOST);
			return;
		} else {
			read_limit(b, &v[i], sections[row].test, sections[row].welds);
		}
	}
}

static void read_sections(struct binder *b, const struct block *v, size_t n)
{
	const struct block *first[SECTIONS] = { NULL };
	size_t end;

	for (size_t i = 0; i < n; i = end) {
		size_t row = v[i].level == 2 ? section_of(v[i].text) : SECTIONS;

		end = blocks_until(v, n, i + 1, 2);
		if (v[i].level < 2)
			complain_second_title(b, &v[i]);
		else if (row == SECTIONS)
			complain_section(b, &v[i]);
		else if (first[row])
			complain_again(b, &v[i], first[row]);
		else
			read_lines(b, (first[row] = &v[i]) + 1, end - i - 1, row);
	}
}

static void fill(struct binder *b, struct standard *s, const struct record_file *file)
{
	const struct block *found[FIELDS_MOST] = { NULL };
	size_t end = blocks_until(file->v, file->n, 1, 6);

	b->standard = s;
	s->pos = file->v[0].pos;
	fields_read(b, &facts, file->v + 1, end - 1, found);
	if (!found[FACT_SOURCE])
		finding_repair(b->f, complain(b, FINDING_MISSING_FACT, s->pos,
		    "this set does not say where its figures come from"),
		    "write \"- **Source:** shop limits of the advisory committee\"");
	read_sections(b, file->v + end, file->n - end);
	b->standard = NULL;
}

static bool is_taken(struct binder *b, const struct block *h)
{
	const struct model *m = b->model;
	struct finding *d;

	for (size_t i = 0; i < m->nstandards; i++) {
		if (!words_same(m->standards[i].name, h->text))
			continue;
		d = complain(b, FINDING_DUPLICATE_ID, h->pos,
		    "there are two sets named \"%.*s\"; this one is left out",
		    STR_ARG(h->text));
		finding_relate(b->f, d, m->standards[i].pos)->label =
		    STR("the first counts");
		finding_repair(b->f, d, "delete one of them, or give it a name of its own");
		return true;
	}
	return false;
}

/* A file without a title was reported when it was read. */
void standard_read(struct binder *b, const struct record_file *file)
{
	struct model *m = b->model;
	const struct block *h = file->v;
	struct standard *s;

	if (!file->n || h->kind != BLOCK_HEADING || h->level != 1 || is_taken(b, h))
		return;
	if (m->nstandards == SETS_MOST) {
		complain(b, FINDING_OVER_LIMIT, h->pos,
		    "there are more than %d sets of limits; this one is left out",
		    SETS_MOST);
		return;
	}
	s = &m->standards[m->nstandards++];
	name_set(s, h->text);
	s->shipped = NONE;
	fill(b, s, file);
}

void standard_fill(struct arena *a, struct model *m, struct standard *s,
    const struct record_file *file, struct findings *f)
{
	struct binder b = { .arena = a, .model = m, .f = f };

	if (file->n)
		fill(&b, s, file);
}
