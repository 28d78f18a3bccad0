/* What the running words of a sheet claim, in the few wordings that can mean only one
 * thing. */
#include "check/rule_text.h"

#include "check/rule_text_scan.h"
#include "model/words.h"

typedef const char *const *list;

/* A size and the word for what it measures: before it ("leg 5/16 in", "leg of 5/16
 * in") or right behind it ("a 5/16 in leg"). */
struct wording {
	enum claim_kind kind;
	enum quantity_kind size;
	list nouns;
	list links;              /* words that may stand between noun and size */
	list owed;               /* right before the noun; empty: nothing is owed */
	list not_before;         /* of the noun: it then means something else */
	list not_after;
	list not_near;           /* in the same clause */
};

#define WORDS(...) (const char *const[]){ __VA_ARGS__, NULL }
#define NO_WORDS (const char *const[]){ NULL }
#define LINKS "a", "an", "at", "be", "is", "are", "of", "the", "to", "both", "most", \
	"least", "equal", "keep", "set"

static const struct wording wordings[] = {
	{ CLAIM_LEG, QUANTITY_LENGTH, WORDS("leg", "legs", "fillet", "fillets"),
	    WORDS(LINKS, "size"), NO_WORDS, WORDS("long", "short", "upright", "table", "both"),
	    WORDS("gauge", "gauges"), WORDS("gusset", "gussets", "tape", "saw", "places",
	    "foot", "frame") },
	{ CLAIM_OPENING, QUANTITY_LENGTH, WORDS("opening", "openings", "gap", "gaps"),
	    WORDS(LINKS), NO_WORDS, WORDS("die", "v", "fan", "flange", "inlet", "guard", "tongue",
	    "rest", "miter", "air", "spark", "strip"), WORDS("rod", "wire", "gauge"),
	    WORDS("v", "die", "punch", "brake", "bend", "bends", "bump", "over", "roll",
	    "grinder", "hole", "holes", "duct", "cowl", "collar", "torn", "crack") },
	{ CLAIM_LAND, QUANTITY_LENGTH, WORDS("land", "lands"),
	    WORDS(LINKS), NO_WORDS, NO_WORDS, NO_WORDS, NO_WORDS },
	{ CLAIM_LAND, QUANTITY_LENGTH, WORDS("face"), WORDS(LINKS), WORDS("root"),
	    NO_WORDS, NO_WORDS, NO_WORDS },
	{ CLAIM_BEVEL, QUANTITY_ANGLE, WORDS("bevel", "bevels", "beveled", "bevelled"),
	    WORDS(LINKS, "edge", "edges", "plate", "plates", "ring", "rings", "angle",
	    "each", "pieces", "end", "ends"), NO_WORDS, NO_WORDS, NO_WORDS, NO_WORDS },
	{ CLAIM_INCLUDED, QUANTITY_ANGLE, WORDS("included", "angle"),
	    WORDS(LINKS, "angle"), NO_WORDS, NO_WORDS, NO_WORDS,
	    WORDS("rod", "gun", "torch", "travel", "work", "square", "elbow", "miter",
	    "axis", "bend", "bends", "branch", "bevel") },
	{ CLAIM_THICKNESS, QUANTITY_LENGTH, WORDS("plate", "plates", "sheet", "sheets",
	    "wall", "thick"), WORDS("of", "is", "the", "now", "are"),
	    NO_WORDS, NO_WORDS, WORDS("edge", "washer", "washers", "saw", "table", "shear"),
	    WORDS("scrap", "strip", "strips", "backing", "spacer", "spacers", "copper",
	    "layer", "layers", "machine", "machines", "shear", "bar", "long", "wide",
	    "marks", "cap", "bead", "carbon", "rod", "core", "from", "off", "back",
	    "apart", "above", "in", "on", "practice") },
};

/* What turns a statement into something else: a condition, a warning, a comparison. */
static const char *const conditions[] = { "if", "unless", "until", "when", "instead",
	"wrong", "mistake", "example", "otherwise", "unlike", NULL };
static const char *const denials[] = { "not", "never", "than", "neither", "too", "avoid",
	"only", NULL };
static const char *const passes[] = { "pass", "passes", "first", "second", "root", "layer",
	"bead", "run", "stringer", "tack", "tacks", "each", NULL };

static bool is_hedged(const struct tokens *t, size_t i)
{
	return clause_has(t, conditions) || part_has(t, i, denials);
}

/* "at most" and the like, before the size or behind it. */
static enum claim_bound bound_of(const struct tokens *t, size_t size, size_t noun)
{
	static const char *const most[] = { "most", "less", "max", "maximum", "smaller",
		NULL };
	static const char *const least[] = { "least", "more", "over", "min", "minimum",
		"larger", NULL };
	size_t from = noun < size ? noun : size;

	for (size_t i = from; i < size + 4 && i < t->n; i++) {
		if (i > size && t->v[i].sort != TOKEN_WORD)
			break;
		if (token_is(t, i, most))
			return BOUND_MOST;
		if (token_is(t, i, least))
			return BOUND_LEAST;
	}
	return BOUND_EXACT;
}

enum { LINKS_MOST = 5 };

/* The noun before a size, over linking words and a colon; the size itself when none is. */
static size_t noun_before(const struct tokens *t, size_t size, const struct wording *w)
{
	for (size_t k = 1; k <= LINKS_MOST && k <= size; k++) {
		size_t i = size - k;

		if (token_is(t, i, w->nouns))
			return i;
		if (t->v[i].sort != TOKEN_COLON && !token_is(t, i, w->links))
			break;
	}
	return size;
}

static size_t noun_behind(const struct tokens *t, size_t size, const struct wording *w)
{
	static const char *const between[] = { "root", "groove", "fillet", NULL };
	static const char *const joined[] = { "x", "by", "and", "or", "to", NULL };
	size_t i = size + 1;

	/* The last of several sizes that belong together is not the one meant. */
	if (size && (t->v[size - 1].sort == TOKEN_OTHER || token_is(t, size - 1, joined)))
		return size;
	if (token_is(t, i, between) && token_is(t, i + 1, w->nouns))
		i++;
	return token_is(t, i, w->nouns) ? i : size;
}

static struct claim *add_claim(struct claims *c, const struct claim *like,
    enum claim_kind kind)
{
	struct claim *k = ARENA_PUSH(c->arena, c->v, c->n, c->cap);

	*k = *like;
	k->kind = kind;
	return k;
}

/* Whether the words around noun and size leave their meaning as it is. */
static bool is_plain(const struct tokens *t, size_t size, size_t noun,
    const struct wording *w)
{
	size_t last = noun > size ? noun : size;

	return noun != size && !(noun && token_is(t, noun - 1, w->not_before)) &&
	    (!*w->owed || (noun && token_is(t, noun - 1, w->owed))) &&
	    !token_is(t, last + 1, w->not_after) && !clause_has(t, w->not_near) &&
	    !is_hedged(t, size);
}

static void scan_size(struct claims *c, const struct tokens *t, size_t i,
    const struct claim *like)
{
	for (size_t k = 0; k < sizeof wordings / sizeof *wordings; k++) {
		const struct wording *w = &wordings[k];
		size_t noun = i;
		struct claim *d;

		if (t->v[i].q.kind != w->size)
			continue;
		noun = noun_before(t, i, w);
		if (noun == i)
			noun = noun_behind(t, i, w);
		if (!is_plain(t, i, noun, w))
			continue;
		d = add_claim(c, like, w->kind);
		d->q = t->v[i].q;
		d->said = t->v[i].s;
		d->bound = bound_of(t, i, noun);
		d->partial = clause_has(t, passes);
		/* "Land 1/16 in, gap 1/8 in": a size has one noun. */
		return;
	}
}

/* "no land", "leave no land". */
static void scan_no_land(struct claims *c, const struct tokens *t, size_t i,
    const struct claim *like)
{
	static const char *const no[] = { "no", NULL }, *const land[] = { "land", NULL };
	struct claim *d;

	if (!token_is(t, i, no) || !token_is(t, i + 1, land))
		return;
	d = add_claim(c, like, CLAIM_LAND);
	d->q = (struct quantity){ .kind = QUANTITY_LENGTH, .denominator = 1,
		.unit = "in" };
}

/* "E7018 1/8 in", "1/8 in E7018", "1/8 in electrodes". */
static void scan_rod(struct claims *c, const struct tokens *t, size_t i,
    const struct claim *like)
{
	static const char *const rods[] = { "electrode", "electrodes", NULL };
	size_t before = i;
	struct claim *d;
	str class = { 0 };

	if (t->v[i].q.kind != QUANTITY_LENGTH || is_hedged(t, i))
		return;
	if (i && t->v[i - 1].sort == TOKEN_COMMA)
		before--;
	if (i + 1 < t->n && t->v[i + 1].sort == TOKEN_WORD &&
	    rod_read(t->v[i + 1].s).sort)
		class = t->v[i + 1].s;
	else if (before && t->v[before - 1].sort == TOKEN_WORD &&
	    rod_read(t->v[before - 1].s).sort)
		class = t->v[before - 1].s;
	if (!class.n && !token_is(t, i + 1, rods))
		return;
	d = add_claim(c, like, CLAIM_ROD);
	d->q = t->v[i].q;
	d->word = class;
}

/* "Set 130 A", "weld the root at 80 to 100 A"; trials and comparisons are none. */
static void scan_amps(struct claims *c, const struct tokens *t, size_t i,
    const struct claim *like)
{
	static const char *const before[] = { "at", "to", "set", "with", "dc+", "dc-", "ac",
		"machine", "current", "use", NULL };
	static const char *const does[] = { "set", "weld", "welded", "run", "root", "fill",
		"cap", "hot", "cover", "use", NULL };
	static const char *const behind[] = { "lower", "less", "more", "higher", "cooler",
		"hotter", "down", "up", "off", "below", "above", "under", "over", NULL };
	static const char *const trial[] = { "try", "each", "start",
		"starting", "change", "carbon", "gouge", "gouging", "cut", "cutting", "by",
		"read", "compare", "plasma", "most", "least", "fuse", "breaker", "primary",
		"strike", "again", NULL };
	static const char *const tacks[] = { "tack", "tacks", NULL };
	struct claim *d;

	if (t->v[i].q.kind != QUANTITY_CURRENT || !i || !token_is(t, i - 1, before) ||
	    !clause_has(t, does) || token_is(t, i + 1, behind) ||
	    part_has(t, i, trial) || clause_has(t, tacks) || is_hedged(t, i))
		return;
	d = add_claim(c, like, CLAIM_AMPS);
	d->q = t->v[i].q;
}

static bool is_position(str s)
{
	return s.n == 2 && s.p[0] >= '1' && s.p[0] <= '6' && (s.p[1] == 'F' ||
	    s.p[1] == 'G') && words_find(&words_position, s) != NONE;
}

/* Only the letters of the process, as the facts write them. */
static bool is_process(str s)
{
	return s.n >= 3 && s.p[0] <= 'Z' && s.p[1] <= 'Z' &&
	    words_find(&words_process, s) != NONE;
}

/* A word that is named in passing: what comes elsewhere, before or later. */
static bool is_aside(const struct tokens *t, size_t i)
{
	static const char *const aside[] = { "as", "like", "for", "from", "before", "after",
		"next", "later", "earlier", "your", "last", "same", "test", "already",
		"compare", "without", "difference", "or", "practice", "scrap", NULL };

	return part_has(t, i, aside) || is_hedged(t, i);
}

static enum progression way_of(const struct tokens *t, size_t i)
{
	static const char *const up[] = { "up", "upward", "upwards", "uphill", NULL };
	static const char *const down[] = { "down", "downward", "downwards", "downhill",
		NULL };

	return token_is(t, i, up) ? PROGRESS_UP : token_is(t, i, down) ? PROGRESS_DOWN
	    : PROGRESS_NONE;
}

/* Titles call a process by the words of the shop. */
struct shop_word {
	const char *word, *process; /* of the process, the letters that serve */
};

static const struct shop_word shop_words[] = {
	{ "stick", "SMAW" }, { "cored-wire", "FCAW" }, { "flux-cored", "FCAW" },
	{ "tungsten", "GTAW" }, { "plasma", "PAC" }, { "oxy-fuel", "OF" },
	{ "oxyfuel", "OF" },
};

static void scan_title_word(struct claims *c, const struct tokens *t, size_t i,
    const struct claim *like)
{
	for (size_t k = 0; k < sizeof shop_words / sizeof *shop_words; k++) {
		struct claim *d;

		if (!str_eq_nocase(t->v[i].s, str_of(shop_words[k].word)) ||
		    is_aside(t, i))
			continue;
		d = add_claim(c, like, CLAIM_PROCESS);
		d->word = str_of(shop_words[k].process);
		d->said = t->v[i].s;
	}
}

static void scan_word(struct claims *c, const struct tokens *t, size_t i,
    const struct claim *like)
{
	str s = t->v[i].s;
	struct claim *d = NULL;

	if (like->place == CLAIM_IN_TITLE)
		scan_title_word(c, t, i, like);
	if (s.n < 2 || ((s.p[0] | 0x20) == s.p[0] && !is_position(s)))
		return;
	if (is_position(s) && !is_aside(t, i)) {
		d = add_claim(c, like, CLAIM_POSITION);
		d->way = way_of(t, i + 1);
	} else if (is_process(s) && !is_aside(t, i)) {
		d = add_claim(c, like, CLAIM_PROCESS);
	} else if (s.p[0] == 'E' && rod_read(s).sort && !is_aside(t, i)) {
		d = add_claim(c, like, CLAIM_FILLER);
	}
	if (d)
		d->word = s;
}

static void scan_claims(struct claims *c, const struct tokens *t,
    const struct claim *like)
{
	for (size_t i = 0; i < t->n; i++) {
		if (t->v[i].sort == TOKEN_SIZE) {
			scan_size(c, t, i, like);
			scan_rod(c, t, i, like);
			scan_amps(c, t, i, like);
		} else if (t->v[i].sort == TOKEN_WORD) {
			scan_word(c, t, i, like);
			scan_no_land(c, t, i, like);
		}
	}
}

static bool is_gauge_of_fillet(const struct tokens *t, size_t i)
{
	static const char *const fillet[] = { "fillet", NULL };
	static const char *const gauge[] = { "gauge", NULL };

	return i >= 2 && token_is(t, i - 2, fillet) && token_is(t, i - 1, gauge);
}

/* "Fillet gauge 5/16 in": what is brought is of the size that is measured. */
static void scan_gauges(struct claims *c, const struct tokens *t,
    const struct claim *like)
{
	for (size_t i = 0; i < t->n; i++)
		if (t->v[i].sort == TOKEN_SIZE && t->v[i].q.kind == QUANTITY_LENGTH &&
		    is_gauge_of_fillet(t, i))
			add_claim(c, like, CLAIM_LEG)->q = t->v[i].q;
}

/* A metric unit in its base unit; the Celsius scale apart, which is shifted too. */
struct metric_unit {
	const char *word;
	double base;
};

static const struct metric_unit metric_units[] = {
	{ "mm", 1 }, { "cm", 10 }, { "m", 1000 }, { "kg", 1 / 0.45359237 },
	{ "kPa", 1 / 6.894757293 }, { "L/min", 1 / 0.471947443 },
	{ "\xC2\xB0" "C", 1.8 },
};

/* How far a metric figure may be off by its rounding alone: one in its last place,
 * since sheets and codes round either way, or a twentieth. */
static double rounding(const struct quantity *metric)
{
	double unit = 0;

	for (size_t i = 0; i < sizeof metric_units / sizeof *metric_units; i++)
		if (metric->unit && str_eq(str_of(metric->unit),
		    str_of(metric_units[i].word)))
			unit = metric_units[i].base;
	for (int i = 0; i < metric->decimals; i++)
		unit /= 10;
	return unit;
}

static bool is_off(double a, double b, double slack)
{
	double off = a > b ? a - b : b - a, part = 0.05 * (a > 0 ? a : -a);

	return off > (part > slack ? part : slack) + 1e-9;
}

enum { SIZE_BYTES = 28 };        /* "1-1/16 to 2-3/32 in" and more */

/* The last size before a bracket that opens at `at`, when it stands right before it. */
static bool size_before(struct tokens *t, str text, size_t at, struct token *size)
{
	size_t from = at > SIZE_BYTES ? at - SIZE_BYTES : 0;

	while (from && from < at && text.p[from - 1] != ' ')
		from++;
	tokens_read(t, str_sub(text, from, at), METAL_NONE);
	if (!t->n || t->v[t->n - 1].sort != TOKEN_SIZE)
		return false;
	*size = t->v[t->n - 1];
	return true;
}

/* "1/4 in [9.5 mm]" */
static void scan_metric(struct claims *c, struct tokens *t, str text, struct pos pos)
{
	size_t at = str_find_char(text, '[', 0);

	for (; at < text.n; at = str_find_char(text, '[', at + 1)) {
		str in = str_trim(str_sub(text, at + 1, str_find_char(text, ']', at)));
		struct quantity_fault fault;
		struct token size;
		struct quantity q;
		double slack;

		/* Several sizes share a bracket: that is none of the last alone. */
		if (!size_before(t, text, at, &size) || quantity_parse(in, size.q.kind,
		    METAL_NONE, &q, &fault) != QUANTITY_OK || q.form != FORM_METRIC ||
		    size.q.form == FORM_METRIC || q.range != size.q.range)
			continue;
		slack = rounding(&q);
		if (slack > 0 && (is_off(size.q.lo, q.lo, slack) ||
		    is_off(size.q.hi, q.hi, slack)))
			*ARENA_PUSH(c->arena, c->unlike, c->nunlike, c->unlike_cap) =
			    (struct unlike){ size.s, in, pos };
	}
}

static void scan_text(struct claims *c, struct tokens *t, const struct assignment *a,
    str text, const struct claim *like)
{
	enum sheet_metal metal = a->nmaterials ? a->materials[0].metal : METAL_NONE;
	str rest = text, clause;

	scan_metric(c, t, text, like->pos);
	while (clause_next(&rest, &clause)) {
		tokens_read(t, clause, metal);
		if (like->place == CLAIM_IN_BRING)
			scan_gauges(c, t, like);
		else
			scan_claims(c, t, like);
	}
}

static void scan_metric_of(struct claims *c, struct tokens *t, const struct prose *p)
{
	for (size_t i = 0; i < p->n; i++)
		scan_metric(c, t, para_text(c->arena, p->v[i].spans, p->v[i].nspans),
		    p->v[i].pos);
}

static void scan_steps(struct claims *c, struct tokens *t, const struct assignment *a)
{
	for (size_t i = 0; i < a->nsteps; i++) {
		const struct step *s = &a->steps[i];
		struct claim like = { .place = CLAIM_IN_STEP, .number = s->para.number,
			.pos = s->pos };

		scan_text(c, t, a, para_text(c->arena, s->para.spans, s->para.nspans),
		    &like);
	}
}

void claims_find(struct claims *c, const struct assignment *a)
{
	struct tokens *t = c->tokens;
	struct claim like = { .place = CLAIM_IN_TITLE, .pos = a->pos };

	c->n = c->nunlike = 0;
	scan_text(c, t, a, a->title, &like);
	like.place = CLAIM_IN_BRING;
	for (size_t i = 0; i < a->bring.n; i++) {
		like.pos = a->bring.v[i].pos;
		scan_text(c, t, a, para_text(c->arena, a->bring.v[i].spans,
		    a->bring.v[i].nspans), &like);
	}
	like.place = CLAIM_IN_ACCEPTANCE;
	for (size_t i = 0; i < a->ncriteria; i++) {
		like.pos = a->criteria[i].pos;
		scan_text(c, t, a, a->criteria[i].text, &like);
	}
	scan_steps(c, t, a);
	scan_metric_of(c, t, &a->cautions);
	scan_metric_of(c, t, &a->if_it_fails);
	scan_metric_of(c, t, &a->notes);
	scan_metric_of(c, t, &a->instructor);
}
