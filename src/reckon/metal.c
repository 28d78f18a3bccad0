#include "reckon/metal.h"

static const struct metal rows[] = {
#include "reckon/metal.inc"
};

static const size_t nrows = sizeof rows / sizeof *rows;

/* "A36 sheet" is A36; "A363" is not. */
static bool named(str words, str name)
{
	return name.n && str_starts_nocase(words, name) &&
	    (words.n == name.n || words.p[name.n] == ' ');
}

/* Length of the longest of the metal's names that begins words, or 0. */
static size_t match(const struct metal *m, str words)
{
	str also = str_of(m->also), part;
	size_t best = named(words, str_of(m->name)) ? str_of(m->name).n : 0;

	while (str_next(&also, ';', &part))
		if (named(words, part) && part.n > best)
			best = part.n;
	return best;
}

const struct metal *metal_find(str words)
{
	const struct metal *found = NULL;
	size_t best = 0;

	words = str_trim(words);
	for (size_t i = 0; i < nrows; i++) {
		size_t n = match(&rows[i], words);

		if (n > best) {
			best = n;
			found = &rows[i];
		}
	}
	return found;
}

const struct metal *metal_at(size_t i)
{
	return i < nrows ? &rows[i] : NULL;
}
