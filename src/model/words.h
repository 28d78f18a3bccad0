/* model/words.h - the closed lists of words that values are chosen from.
 *
 * Several words may mean one value; the first row of a value is the word that paper
 * and screen show. Words compare without case, and a blank, a hyphen and an en dash
 * between their parts are the same. */
#ifndef MODEL_WORDS_H
#define MODEL_WORDS_H

#include "model/model.h"

struct word {
	str word;
	uint32_t value;
};

struct words {
	str what;                /* for messages: "a kind of assignment" */
	const struct word *v;
	size_t n;
};

extern const struct words words_kind, words_process, words_joint, words_position,
    words_progression, words_level, words_polarity, words_transfer, words_place,
    words_tester, words_stock, words_sides, words_preparation, words_symbol,
    words_contour, words_finish, words_back, words_backing, words_answer;

/* The value that s means, or NONE. */
uint32_t words_find(const struct words *w, str s);
/* The shown word of a value. */
str words_show(const struct words *w, uint32_t value);
/* The likely word for a wrong one, or empty; its list for likely_word is made in a. */
str words_likely(struct arena *a, const struct words *w, str wrong);
/* The same with its value, NONE when another value's word is as near: then nothing says
 * which of them is meant. */
uint32_t words_guess(struct arena *a, const struct words *w, str wrong, str *likely);
/* The shown words, each once: "one, both". */
str words_list(struct arena *a, const struct words *w);
/* Whether a and b are the same words in the sense above. */
bool words_alike(str a, str b);
/* The same; nearly all comparisons end at the first letter, whatever its case. */
static inline bool words_same(str a, str b)
{
	return !(a.n && b.n && ((a.p[0] ^ b.p[0]) & 0x1F)) && words_alike(a, b);
}

/* The joint that s names, with or without the word "joint" after it, or JOINT_COUNT. */
enum joint joint_find(str s);
/* Cutting and gouging processes leave no weld. */
bool process_is_cut(enum process p);
bool joint_is_cut(enum joint j);
/* Vertical, 5G and 6G welds say up or down. */
bool position_wants_progression(enum position p);

#endif
