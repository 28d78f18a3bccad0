#include "base/language.h"

#include <string.h>

struct language {
	const char *code, *tag, *name, *own;
	const struct word_row *v; /* by bytes of the English */
	size_t n;
};

static const struct word_row spanish[] = {
#include "base/es.inc"
};

static const struct language languages[] = {
	{ "es", "es-US", "Spanish", "Español", spanish, sizeof spanish / sizeof *spanish },
};

const struct language *language_find(str code)
{
	for (size_t i = 0; i < sizeof languages / sizeof *languages; i++)
		if (str_eq(code, str_of(languages[i].code)))
			return &languages[i];
	return NULL;
}

const struct language *language_at(size_t i)
{
	return i < sizeof languages / sizeof *languages ? &languages[i] : NULL;
}

str language_name(const struct language *l)
{
	return l ? str_of(l->name) : STR("English");
}

str language_own_name(const struct language *l)
{
	return l ? str_of(l->own) : STR("English");
}

str language_code(const struct language *l)
{
	return l ? str_of(l->code) : (str){ 0 };
}

str language_tag(const struct language *l)
{
	return l ? str_of(l->tag) : STR("en-US");
}

bool language_row(const struct language *l, size_t i, struct word_row *out)
{
	if (!l || i >= l->n)
		return false;
	*out = l->v[i];
	return true;
}

static const char *find(const struct language *l, str english)
{
	size_t lo = 0, hi = l ? l->n : 0;

	while (lo < hi) {
		size_t mid = lo + (hi - lo) / 2;
		int c = str_cmp(english, str_of(l->v[mid].english));

		if (!c)
			return l->v[mid].other;
		if (c < 0)
			hi = mid;
		else
			lo = mid + 1;
	}
	return NULL;
}

bool language_has(const struct language *l, str english)
{
	return find(l, english) != NULL;
}

str word_str(const struct language *l, str english)
{
	const char *hit = find(l, english);

	return hit ? str_of(hit) : english;
}

str word(const struct language *l, const char *english)
{
	return word_str(l, str_of(english));
}

void word_addv(struct buf *b, const struct language *l, const char *english, va_list *ap)
{
	const char *hit = find(l, str_of(english));

	buf_addv(b, hit ? hit : english, ap);
}

void word_addf(struct buf *b, const struct language *l, const char *english, ...)
{
	va_list ap;

	va_start(ap, english);
	word_addv(b, l, english, &ap);
	va_end(ap);
}

str word_format(struct arena *a, const struct language *l, const char *english, ...)
{
	struct buf b = { .arena = a };
	va_list ap;

	va_start(ap, english);
	word_addv(&b, l, english, &ap);
	va_end(ap);
	return buf_str(&b);
}
