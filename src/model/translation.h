/* model/translation.h - the program's own words in another language, as the files of
 * assignments/es give them, and the model that is read with them.
 *
 * Only prose is translated. Facts, limits and the order come from the original, so a
 * translated paper is worked out from the same figures as the English one; what has no
 * translation stays English and is marked. check/rule_translation.h holds both together. */
#ifndef MODEL_TRANSLATION_H
#define MODEL_TRANSLATION_H

#include "base/language.h"
#include "model/model.h"

/* Lines of one section by their English key: "- **Oven log:** ...". */
struct said_lines {
	struct plain_fact *v;
	size_t n, cap;
};

/* One assignment in another language. */
struct translation {
	uint32_t assignment;
	str title;
	struct pos pos;          /* of the heading text */
	struct prose parts[SAID_PARTS]; /* of SAID_STEPS and SAID_ACCEPTANCE empty */
	struct step *steps; size_t nsteps, steps_cap;
	struct said_lines facts, criteria, passes;
	struct drawing *pictures; size_t npictures, pictures_cap; /* under Drawing: words and
	                          * title of pictures that the original shows */
	struct said_lines legend; /* there too: what words in the pictures mean */
	size_t lost_criteria;    /* lines of Acceptance that were not understood (reported) */
	bool astray;             /* some key or heading was not understood (reported) */
};

/* All that is said in one language. */
struct speech {
	const struct language *language;
	struct translation *v;   /* in order of files and places */
	size_t n, cap;
	uint32_t *of;            /* by assignment: index + 1; 0 none */
	struct said_lines words; /* "- **Fit-up:** Ajuste" of # Words */
	struct map *word;        /* key without case to index in words */
};

/* The language of a file by its folder, null for all others. */
const struct language *translation_folder(str path);

/* Null when the folder says nothing in that language. */
const struct speech *speech_of(const struct model *m, const struct language *l);
/* The first language in which the folder says anything; null: none. */
const struct language *speech_language(const struct model *m);
/* What a speech says of an assignment, null when nothing. */
const struct translation *speech_find(const struct speech *s, uint32_t assignment);
/* A name in the language: of # Words, else of templates/words, else as it is. */
str speech_word(const struct speech *s, str english);
bool speech_has(const struct speech *s, str english);
/* The title of a skill or a course: under # Words by its id, else as it is. */
str speech_titled(const struct speech *s, str id, str title);
/* The line of that key, or null. */
const struct plain_fact *said_line(const struct said_lines *l, str key);
/* The words for a picture of the original, or null. */
const struct drawing *said_picture(const struct translation *t, const struct drawing *d);

/* Whether a text has words that a reader of another language would miss; figures, units,
 * ids and capital letters are none. */
bool has_words(str s);

/* The same for an acceptance line; the name of the set that it goes by is none. */
bool criterion_has_words(const struct criterion *c);

/* The words of a restart, of where a filler goes and the like are names. Calls `each` for
 * every name that a student's sheet of x prints, with its place. */
void names_of(const struct assignment *x, void (*each)(void *user, str name, struct pos pos),
    void *user);

/* m as it is printed in language l: titles, prose and names translated as far as there
 * are words for them, the rest as in m; in_english says what. Made in a, borrows m. */
struct model model_in(struct arena *a, const struct model *m, const struct language *l);

#endif
