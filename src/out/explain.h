/* out/explain.h - what a name means: findings, customs, facts and sections.
 *
 * All of it comes from the lists that the checks and the readers use, so that no text
 * can say what the program does not do. */
#ifndef OUT_EXPLAIN_H
#define OUT_EXPLAIN_H

#include "base/buf.h"

/* Adds what every meaning of the name says (a word may be a fact and a section); false
 * when there is none. Case and the blank or hyphen between words play no part. */
bool explain_name(struct buf *b, str name);

/* Adds all names: findings with their levels, customs, facts, sections. */
void explain_list(struct buf *b);

/* The known name that is nearest to a wrong one, or empty. */
str explain_likely(struct arena *a, str wrong);

/* Adds src/manual/findings.md. */
void explain_manual(struct buf *b);

#endif
