#include "read/inline.h"

#include "base/buf.h"

#include <string.h>

struct builder {
	struct arena *arena;
	struct findings *f;
	const cmark_node *root;
	struct pos pos;
	struct span *v;
	size_t n, cap;
	struct buf plain, run;
	unsigned style;          /* of the run being gathered */
	bool broken;             /* the next run begins on a line of its own */
};

static void flush_run(struct builder *b)
{
	struct span *s;

	if (!b->run.n)
		return;
	s = ARENA_PUSH(b->arena, b->v, b->n, b->cap);
	s->text = str_copy(b->arena, buf_str(&b->run));
	s->style = b->style | (b->broken ? (unsigned)SPAN_BREAK : 0);
	b->broken = false;
	b->run.n = 0;
}

static bool is_blank(char c)
{
	return c == ' ' || c == '\n' || c == '\t';
}

/* Runs of blanks become one. */
static void add_text(struct builder *b, unsigned style, str text)
{
	if (style != b->style) {
		flush_run(b);
		b->style = style;
	}
	for (size_t i = 0, end; i < text.n; i = end) {
		str word;

		for (end = i; end < text.n && !is_blank(text.p[end]);)
			end++;
		word = str_sub(text, i, end);
		buf_add(&b->run, word);
		buf_add(&b->plain, word);
		if (end == text.n)
			break;
		end++;
		if (b->plain.n && b->plain.p[b->plain.n - 1] == ' ')
			continue;
		buf_addc(&b->run, ' ');
		buf_addc(&b->plain, ' ');
	}
}

static void report(struct builder *b, enum finding_name name, const char *what,
    const char *repair)
{
	struct finding *d = finding_add(b->f, name, b->pos, "%s has no meaning here; it is left out",
	    what);

	finding_repair(b->f, d, "%s", repair);
}

static str literal(cmark_node *n)
{
	const char *s = cmark_node_get_literal(n);

	return s ? str_of(s) : (str){ 0 };
}

static void leave_link(struct builder *b, cmark_node *n, unsigned style)
{
	const char *url = cmark_node_get_url(n);
	str u = str_of(url ? url : "");

	if (!u.n || str_ends(buf_str(&b->plain), u))
		return;
	add_text(b, style, STR(" ("));
	add_text(b, style, u);
	add_text(b, style, STR(")"));
}

static void enter_node(struct builder *b, cmark_node *n, unsigned *style)
{
	switch (cmark_node_get_type(n)) {
	case CMARK_NODE_TEXT:
		add_text(b, *style, literal(n));
		break;
	case CMARK_NODE_CODE:
		add_text(b, *style | SPAN_CODE, literal(n));
		break;
	case CMARK_NODE_SOFTBREAK:
		add_text(b, *style, STR(" "));
		break;
	case CMARK_NODE_LINEBREAK:
		flush_run(b);
		buf_addc(&b->plain, ' ');
		b->broken = true;
		break;
	case CMARK_NODE_STRONG:
		*style |= SPAN_BOLD;
		break;
	case CMARK_NODE_EMPH:
		*style |= SPAN_ITALIC;
		break;
	case CMARK_NODE_HTML_INLINE:
		report(b, FINDING_RAW_HTML, "raw HTML", "say it in words");
		break;
	case CMARK_NODE_IMAGE:
		if (n != b->root)
			report(b, FINDING_NOT_UNDERSTOOD, "a picture inside a sentence",
			    "let it stand alone in a paragraph under ## Drawing");
		break;
	default:
		break;
	}
}

static void leave_node(struct builder *b, cmark_node *n, unsigned *style)
{
	switch (cmark_node_get_type(n)) {
	case CMARK_NODE_STRONG:
		*style &= ~(unsigned)SPAN_BOLD;
		break;
	case CMARK_NODE_EMPH:
		*style &= ~(unsigned)SPAN_ITALIC;
		break;
	case CMARK_NODE_LINK:
		leave_link(b, n, *style);
		break;
	default:
		break;
	}
}

/* The common case needs no copy: one text node that reads as the source does. */
static bool is_plain(cmark_node *node, str raw)
{
	cmark_node *first = cmark_node_first_child(node);

	return first && !cmark_node_next(first) &&
	    cmark_node_get_type(first) == CMARK_NODE_TEXT && str_eq(literal(first), raw) &&
	    str_find(raw, STR("  "), 0) == raw.n;
}

struct flat inline_flatten(struct arena *a, cmark_node *node, str raw, struct pos pos,
    struct findings *f)
{
	struct builder b = { .arena = a, .f = f, .root = node, .pos = pos };
	cmark_iter *it;
	unsigned style = 0;

	if (is_plain(node, raw)) {
		struct span *one = arena_alloc(a, sizeof *one);

		one->text = raw;
		return (struct flat){ { one, 1 }, raw };
	}
	b.plain.arena = b.run.arena = a;
	it = cmark_iter_new(node);
	for (cmark_event_type ev; (ev = cmark_iter_next(it)) != CMARK_EVENT_DONE;) {
		cmark_node *n = cmark_iter_get_node(it);

		if (ev == CMARK_EVENT_ENTER)
			enter_node(&b, n, &style);
		else
			leave_node(&b, n, &style);
	}
	cmark_iter_free(it);
	flush_run(&b);
	return (struct flat){ { b.v, b.n }, str_trim(buf_str(&b.plain)) };
}
