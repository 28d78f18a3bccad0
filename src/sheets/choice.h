/* sheets/choice.h - which edition of the papers the user asked for. All zero: Letter, in
 * normal print. What it means for a document is in sheets/edition.h. */
#ifndef SHEETS_CHOICE_H
#define SHEETS_CHOICE_H

#include "base/language.h"

struct edition_choice {
	bool a4;                 /* else Letter */
	bool large;              /* large print */
	bool metric;             /* metric first, US customary in brackets */
	const struct language *language; /* null: English */
};

/* What the name of a file has before its last dot, so that editions stand side by side:
 * "", ".large", ".es", ".es.large.metric". Paper changes no name. */
str edition_tag(struct arena *a, const struct edition_choice *choice);

#endif
