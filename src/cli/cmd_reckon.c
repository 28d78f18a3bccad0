#include "cli/options.h"
#include "cli/run.h"
#include "cli/say.h"
#include "reckon/topic.h"

#include <stdio.h>
#include <string.h>

enum { COLUMNS = 80, NAME_WIDTH = 28, NAME_MOST = 48 };

/* Text word by word from column `at`, going on at `indent`. */
static void add_wrapped(struct buf *b, str text, size_t at, size_t indent)
{
	str word;

	for (bool first = true; str_word(&text, &word); first = false) {
		size_t w = str_chars(word);

		if (!first && at + 1 + w > COLUMNS) {
			buf_addc(b, '\n');
			for (size_t i = 0; i < indent; i++)
				buf_addc(b, ' ');
			at = indent;
		} else if (!first) {
			buf_addc(b, ' ');
			at++;
		}
		buf_add(b, word);
		at += w;
	}
	buf_addc(b, '\n');
}

/* "  name      text", wrapped under itself. */
static void add_line(struct buf *b, const char *name, str text)
{
	size_t at = 2 + str_chars(str_of(name));

	buf_addf(b, "  %s", name);
	if (at > NAME_MOST) {
		buf_addc(b, '\n');
		at = 0;
	}
	do
		buf_addc(b, ' ');
	while (++at < NAME_WIDTH);
	add_wrapped(b, text, at, at);
}

static void add_figures(struct buf *b, const struct answer *an)
{
	for (size_t i = 0; i < an->nfigures; i++) {
		const struct figure *f = &an->figures[i];
		struct buf text = { .arena = b->arena };

		figure_text(&text, f, an->metric);
		if (f->seen != SEEN_PAGE)
			buf_adds(&text, " †");
		add_line(b, f->name, buf_str(&text));
	}
}

static const char confirm_words[] =
	"not seen in a copy of the source: confirm against your edition.";

/* How each measure that occurs is rounded, once. */
static str rounding_words(struct arena *a, const struct answer *an)
{
	struct buf b = { .arena = a };
	unsigned seen = 0;

	_Static_assert(MEASURES <= 32, "one bit a measure");
	for (size_t i = 0; i < an->nfigures; i++) {
		enum measure m = an->figures[i].measure;

		if (seen >> m & 1 || !measure_rounding(m)[0])
			continue;
		seen |= 1u << m;
		buf_addf(&b, "%s%s", b.n ? "; " : "", measure_rounding(m));
	}
	if (b.n)
		buf_adds(&b, "; nothing is rounded before print");
	return buf_str(&b);
}

static void answer_text(struct buf *b, const struct topic *t, const struct answer *an)
{
	str rounding = rounding_words(b->arena, an);

	buf_addf(b, "%s: %s\n\n", t->word, t->does);
	for (size_t i = 0; i < an->ninputs; i++)
		add_line(b, an->inputs[i].key, str_format(b->arena, "%.*s%s",
		    STR_ARG(an->inputs[i].text),
		    an->inputs[i].assumed ? " (unless said)" : ""));
	buf_addc(b, '\n');
	if (an->formula)
		add_line(b, "formula", str_of(an->formula));
	for (size_t i = 0; i < an->nsteps; i++)
		add_line(b, i ? "" : "steps", an->steps[i]);
	buf_addc(b, '\n');
	add_figures(b, an);
	buf_addc(b, '\n');
	for (size_t i = 0; i < an->nnotes; i++)
		add_line(b, i ? "" : "note", an->notes[i]);
	for (size_t i = 0; i < an->nsources; i++)
		add_line(b, i ? "" : "source", an->sources[i]);
	if (rounding.n)
		add_line(b, "rounding", rounding);
	if (answer_has_dagger(an))
		add_line(b, "†", str_of(confirm_words));
}

static void json_key(struct buf *b, const char *key)
{
	json_string(b, str_of(key));
	buf_addc(b, ':');
}

/* Ten figures: more than any input carries, fewer than binary noise reaches. */
static void json_number(struct buf *b, double x)
{
	char text[40];

	snprintf(text, sizeof text, "%.10g", x);
	buf_adds(b, text);
}

static void json_side(struct buf *b, const struct figure *f, const char *key,
    double (*side)(enum measure, double), const char *unit)
{
	buf_addc(b, ',');
	json_key(b, key);
	buf_adds(b, "{\"value\":");
	json_number(b, side(f->measure, f->value));
	if (f->high > f->value) {
		buf_adds(b, ",\"high\":");
		json_number(b, side(f->measure, f->high));
	}
	buf_adds(b, ",\"unit\":");
	json_string(b, str_of(unit));
	buf_addc(b, '}');
}

static void json_figure(struct buf *b, const struct figure *f, bool metric)
{
	struct buf text = { .arena = b->arena };

	figure_text(&text, f, metric);
	buf_adds(b, "{\"name\":");
	json_string(b, str_of(f->name));
	buf_adds(b, ",\"text\":");
	json_string(b, buf_str(&text));
	if (f->measure != MEASURE_WORDS)
		json_side(b, f, "us", measure_us, measure_us_unit(f->measure));
	if (measure_metric_unit(f->measure)[0])
		json_side(b, f, "metric", measure_metric,
		    measure_metric_unit(f->measure));
	buf_addf(b, ",\"confirm\":%s}", f->seen == SEEN_PAGE ? "false" : "true");
}

static void json_texts(struct buf *b, const char *key, const str *v, size_t n)
{
	buf_addc(b, ',');
	json_key(b, key);
	for (size_t i = 0; i < n; i++) {
		buf_addc(b, i ? ',' : '[');
		json_string(b, v[i]);
	}
	buf_adds(b, n ? "]" : "[]");
}

static void json_inputs(struct buf *b, const struct answer *an)
{
	buf_adds(b, ",\"inputs\":[");
	for (size_t i = 0; i < an->ninputs; i++) {
		buf_adds(b, i ? ",{\"name\":" : "{\"name\":");
		json_string(b, str_of(an->inputs[i].key));
		buf_adds(b, ",\"text\":");
		json_string(b, an->inputs[i].text);
		buf_addf(b, ",\"assumed\":%s}", an->inputs[i].assumed ? "true" : "false");
	}
	buf_addc(b, ']');
}

static void answer_json(struct buf *b, const struct topic *t, const struct answer *an)
{
	buf_adds(b, "{\"fitup\":1,\"topic\":");
	json_string(b, str_of(t->word));
	json_inputs(b, an);
	buf_adds(b, ",\"formula\":");
	json_string(b, str_of(an->formula ? an->formula : ""));
	json_texts(b, "steps", an->steps, an->nsteps);
	buf_adds(b, ",\"results\":[");
	for (size_t i = 0; i < an->nfigures; i++) {
		if (i)
			buf_addc(b, ',');
		json_figure(b, &an->figures[i], an->metric);
	}
	buf_addc(b, ']');
	json_texts(b, "notes", an->notes, an->nnotes);
	json_texts(b, "sources", an->sources, an->nsources);
	buf_adds(b, ",\"rounding\":");
	json_string(b, rounding_words(b->arena, an));
	buf_adds(b, ",\"confirm\":");
	json_string(b, str_of(answer_has_dagger(an) ? confirm_words : ""));
	buf_adds(b, "}\n");
}

static void list_topics(struct buf *b, bool json)
{
	size_t n;
	const struct topic *t = topic_rows(&n);

	buf_adds(b, json ? "{\"fitup\":1,\"topics\":[" :
	    "fitup reckon TOPIC KEY VALUE ...: one piece of shop arithmetic.\n"
	    "`fitup reckon TOPIC` tells what a topic asks for.\n\n");
	for (size_t i = 0; i < n; i++) {
		if (!json) {
			add_line(b, t[i].word, str_of(t[i].does));
			continue;
		}
		buf_adds(b, i ? ",{\"topic\":" : "{\"topic\":");
		json_string(b, str_of(t[i].word));
		buf_adds(b, ",\"does\":");
		json_string(b, str_of(t[i].does));
		buf_adds(b, ",\"example\":");
		json_string(b, str_of(t[i].example));
		buf_addc(b, '}');
	}
	if (json)
		buf_adds(b, "]}\n");
}

static int refuse_topic(const char *word, str likely)
{
	fprintf(stderr, "fitup: reckon has no topic %s", word);
	if (likely.n)
		fprintf(stderr, "; perhaps %.*s", STR_ARG(likely));
	fputs("\nTry `fitup reckon` for the list.\n", stderr);
	return EXIT_USAGE;
}

/* A fault and the usage on stderr, or the answer on stdout. */
static int reckon_topic(struct arena *a, const struct options *o, const struct topic *t)
{
	struct buf b = { .arena = a };
	size_t n = (size_t)(o->nwords - 1);
	str *words = arena_array(a, n + 1, sizeof *words);
	const struct answer *an;

	for (size_t i = 0; i < n; i++)
		words[i] = str_of(o->words[i + 1]);
	an = topic_reckon(a, t, words, n, o->edition.metric);
	if (an->fault.n) {
		buf_addf(&b, "fitup: %s: %.*s\n\n", t->word, STR_ARG(an->fault));
		topic_usage(&b, t);
		return say(2, buf_str(&b)) ? EXIT_USAGE : EXIT_SYSTEM;
	}
	if (o->json)
		answer_json(&b, t, an);
	else
		answer_text(&b, t, an);
	return say(1, buf_str(&b)) ? EXIT_CLEAN : EXIT_SYSTEM;
}

int cmd_reckon(const struct options *o)
{
	struct arena *a = run_scratch();
	const struct topic *t;
	str likely;
	int status;

	if (!o->nwords) {
		struct buf b = { .arena = a };

		list_topics(&b, o->json);
		status = say(1, buf_str(&b)) ? EXIT_CLEAN : EXIT_SYSTEM;
	} else {
		t = topic_find(str_of(o->words[0]), &likely);
		status = t ? reckon_topic(a, o, t) : refuse_topic(o->words[0], likely);
	}
	arena_free(a);
	return status;
}
