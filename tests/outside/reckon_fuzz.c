/* Random words into every topic: each line ends in a reason or in finite figures. Built
 * with sanitizers by reckon.sh; usage: reckon_fuzz LINES. Prints "N answers, N reasons". */
#include "reckon/topic.h"

#include <math.h>
#include <stdio.h>
#include <stdlib.h>

enum { WORDS_MOST = 40, TEXT_MOST = 24 };

static uint64_t next(uint64_t *s)
{
	*s ^= *s << 13;
	*s ^= *s >> 7;
	*s ^= *s << 17;
	return *s;
}

static const char *const values[] = {
	"0", "1", "2", "3/8", "1/4", "0.5", "1-1/2", "90", "45", "325", "12.5", "6", "40",
	"-1", "-0", "1e9", "9999999", "10000000", "0.000001", "nan", "inf", "1/0", "2020",
	"2010", "in", "mm", "ft", "deg", "A", "V", "h", "lb", "tons", "cfh", "ksi", "psi",
	"in/min", "%", "lb/h", "ft3", "ga", "A36", "304", "aluminum", "SMAW", "GMAW", "OFC",
	"3G", "3G+4G", "6G", "1F", "XXS", "STD", "D1.1", "IX", "1104", "1/2,", "1,", "to",
	"\xC2\xBD", "\xE2\x88\x92" "1", "\xFF", "", "x", "+", "A53", "B", "A572-50",
};

/* A key or choice of the topic, a plain value, or noise. */
static str word(uint64_t *s, const struct topic *t, char *room)
{
	unsigned kind = (unsigned)(next(s) % 16);
	const struct input *in = &t->inputs[next(s) % TOPIC_INPUTS];
	str rest, part;
	size_t n = 0;

	if (kind < 6 && in->key)
		return str_of(in->key);
	if (kind < 8 && in->key) {
		rest = str_of(in->hint);
		for (unsigned i = (unsigned)(next(s) % 3) + 1; i && str_next(&rest, '|', &part); i--)
			;
		return part;
	}
	if (kind < 15)
		return str_of(values[next(s) % (sizeof values / sizeof *values)]);
	for (n = 0; n < next(s) % TEXT_MOST; n++)
		room[n] = (char)(next(s) % 255 + 1);
	return (str){ room, n };
}

/* The topic's own example with one word put in place of another. */
static size_t spoil(uint64_t *s, const struct topic *t, str *words, char *room)
{
	str rest = str_of(t->example);
	size_t n = 0;

	str_word(&rest, &words[0]);
	while (n < WORDS_MOST && str_word(&rest, &words[n]))
		n++;
	words[next(s) % n] = word(s, t, room);
	return n;
}

static int check(const struct answer *an, const struct topic *t)
{
	if (an->fault.n)
		return 0;
	for (size_t i = 0; i < an->nfigures; i++)
		if (!isfinite(an->figures[i].value) || !isfinite(an->figures[i].high)) {
			printf("%s: %s is not finite\n", t->word, an->figures[i].name);
			for (size_t k = 0; k < an->ninputs; k++)
				printf("  %s %.*s\n", an->inputs[k].key,
				    STR_ARG(an->inputs[k].text));
			exit(1);
		}
	return 1;
}

int main(int argc, char **argv)
{
	long lines = argc > 1 ? atol(argv[1]) : 100000, answers = 0;
	uint64_t s = 88172645463325252u;
	size_t ntopics;
	const struct topic *rows = topic_rows(&ntopics);

	for (long i = 0; i < lines; i++) {
		const struct topic *t = &rows[next(&s) % ntopics];
		struct arena *a = arena_new(NULL, NULL);
		char rooms[WORDS_MOST][TEXT_MOST];
		str words[WORDS_MOST];
		size_t n = next(&s) % WORDS_MOST;
		struct buf b = { .arena = a };
		const struct answer *an;

		if (next(&s) % 2)
			n = spoil(&s, t, words, rooms[0]);
		else
			for (size_t k = 0; k < n; k++)
				words[k] = word(&s, t, rooms[k]);
		an = topic_reckon(a, t, words, n, false);
		answers += check(an, t);
		for (size_t k = 0; k < an->nfigures && !an->fault.n; k++)
			figure_text(&b, &an->figures[k], false);
		arena_free(a);
	}
	printf("%ld answers, %ld reasons\n", answers, lines - answers);
	return 0;
}
