#include "sheets/wording.h"

#include "model/translation.h"
#include "sheets/edition.h"
#include "units/format.h"

bool given(const struct quantity *q)
{
	return q->kind != QUANTITY_ANY;
}

str words_within(struct arena *a, const struct edition *e, str text, const str *words,
    size_t n)
{
	for (size_t i = 0; edition_language(e) && i < n; i++) {
		str other = edition_word(e, words[i]);
		struct buf b = { .arena = a };
		size_t at;

		while ((at = str_find(text, words[i], 0)) < text.n) {
			buf_add(&b, str_sub(text, 0, at));
			buf_add(&b, other);
			text = str_sub(text, at + words[i].n, text.n);
		}
		buf_add(&b, text);
		text = buf_str(&b);
	}
	return text;
}

str quantity_words(struct arena *a, const struct edition *e, str text)
{
	static const str words[] = { WORD(" to "), WORD(" schedule ") };

	return words_within(a, e, text, words, sizeof words / sizeof *words);
}

str quantity_text(struct arena *a, const struct edition *e, const struct quantity *q)
{
	struct buf b = { .arena = a };

	if (given(q))
		format_quantity_as(&b, edition_format(e), q);
	return quantity_words(a, e, buf_str(&b));
}

str pipe_text(struct arena *a, const struct edition *e, str text)
{
	struct quantity q;
	struct quantity_fault fault;

	if (!e || !e->choice.metric ||
	    quantity_parse(text, QUANTITY_PIPE, METAL_NONE, &q, &fault) != QUANTITY_OK)
		return quantity_words(a, e, text);
	return quantity_text(a, e, &q);
}

str hours_text(struct arena *a, const struct edition *e, double hours)
{
	struct buf b = { .arena = a };

	if (hours == 1)
		return word(edition_language(e), "1 hour");
	buf_add_real(&b, hours, 2, false);
	return word_format(a, edition_language(e), "%.*s hours", STR_ARG(buf_str(&b)));
}

static void add_inches(struct buf *b, const struct piece *p)
{
	for (uint32_t i = 0; i < p->ndims; i++) {
		buf_adds(b, i ? " x " : "");
		if (p->dims[i].form == FORM_GAUGE)
			buf_addf(b, "%u ga", p->dims[i].gauge_lo);
		else
			format_length_in(b, &p->dims[i]);
	}
	buf_adds(b, " in");
}

static void add_millimeters(struct buf *b, const struct piece *p)
{
	for (uint32_t i = 0; i < p->ndims; i++) {
		buf_adds(b, i ? " x " : "");
		format_length_mm(b, &p->dims[i]);
	}
	buf_adds(b, " mm");
}

str piece_size(struct arena *a, const struct edition *e, const struct piece *p)
{
	bool metric = e && e->choice.metric;
	struct buf b = { .arena = a };

	if (!p->ndims)
		return p->size;
	if (p->pipe.od_mm > 0)
		buf_addf(&b, "%.*s x ", STR_ARG(pipe_text(a, e, p->pipe.text)));
	(metric ? add_millimeters : add_inches)(&b, p);
	buf_adds(&b, " [");
	(metric ? add_inches : add_millimeters)(&b, p);
	buf_addc(&b, ']');
	return buf_str(&b);
}

str position_text(struct arena *a, const struct edition *e, const struct position_at *at)
{
	static const str ways[] = { STR(""), WORD("up"), WORD("down") };
	str way = ways[at->progression];

	return str_format(a, "%.*s%s%.*s", STR_ARG(edition_word(e, position_word(at->position))),
	    way.n ? " " : "", STR_ARG(edition_word(e, way)));
}

/* Other languages name the form before the grade: "placa A36". */
str material_text(struct arena *a, const struct edition *e, str material)
{
	static const str forms[] = { WORD("plate"), WORD("sheet"), WORD("tube"), WORD("pipe"),
		WORD("flat bar"), WORD("round bar"), WORD("angle"), WORD("channel") };

	for (size_t i = 0; edition_language(e) && i < sizeof forms / sizeof *forms; i++) {
		str grade = str_sub(material, 0, material.n - forms[i].n);

		if (material.n > forms[i].n + 1 && str_ends(material, forms[i]) &&
		    str_ends(grade, STR(" ")))
			return str_format(a, "%.*s %.*s", STR_ARG(edition_word(e, forms[i])),
			    STR_ARG(str_trim(grade)));
	}
	return material;
}

static void add_member(struct buf *b, const struct edition *e, str material,
    const struct quantity *t)
{
	if (!material.n && !given(t))
		return;
	buf_adds(b, ", ");
	buf_add(b, material_text(b->arena, e, material));
	if (material.n && given(t))
		buf_addc(b, ' ');
	buf_add(b, quantity_text(b->arena, e, t));
}

str legs_text(struct arena *a, const struct edition *e, const struct quantity *leg,
    const struct quantity *leg2)
{
	if (!given(leg2))
		return quantity_text(a, e, leg);
	return str_format(a, "%.*s x %.*s", STR_ARG(quantity_text(a, e, leg)),
	    STR_ARG(quantity_text(a, e, leg2)));
}

bool stays_english(const struct edition *e, str shown, str original)
{
	const struct language *l = edition_language(e);

	return l && shown.p == original.p && has_words(original) && !language_has(l, original);
}

str weld_text(struct arena *a, const struct edition *e, const struct weld *w)
{
	const struct language *l = edition_language(e);
	struct buf b = { .arena = a };

	buf_addf(&b, "%.*s, %.*s", STR_ARG(edition_word(e, joint_word(w->joint))),
	    STR_ARG(position_text(a, e, &w->at)));
	if (given(&w->leg)) {
		buf_adds(&b, ", ");
		word_addf(&b, l, "leg %.*s", STR_ARG(legs_text(a, e, &w->leg, &w->leg2)));
	}
	add_member(&b, e, w->material1, &w->t1);
	if (w->t2_mm > 0 || w->material2.n)
		add_member(&b, e, w->material2, &w->t2);
	if (given(&w->length)) {
		buf_adds(&b, ", ");
		word_addf(&b, l, "%.*s long", STR_ARG(quantity_text(a, e, &w->length)));
	}
	return buf_str(&b);
}
