/* cli/printer.h - one print: what is wanted, what was told, how PDFs get to the disk. */
#ifndef CLI_PRINTER_H
#define CLI_PRINTER_H

#include "base/buf.h"
#include "cli/save.h"
#include "cli/want.h"

#include <pthread.h>
#include <time.h>

/* The files of a bundle, in its folder, in normal print. */
extern const char *const part_files[BUNDLE_PARTS];

struct printer {
	struct run *run;
	const struct options *o;
	const struct order *order;
	const char *out;
	struct printed printed;
	struct wants wants;
	str *marks;              /* by assignment index; empty until its sheets are laid out */
	unsigned (*quarter_pages)[BUNDLE_PARTS]; /* by quarter; 0: not laid out */
	unsigned (*said_pages)[BUNDLE_PARTS]; /* the same in the language of translations */
	unsigned book_pages[BOOK_COUNT]; /* 0: not laid out, or nothing in it */
	struct buf told, held;
	struct timespec start;
	size_t done, total;      /* documents */
	bool progress;           /* stderr is a terminal */
	pthread_mutex_t lock;    /* guards marks, pages, done and the run's arena while
	                          * documents are made on two threads */
};

/* Where one job works: its own memory and its own words. */
struct desk {
	struct printer *p;
	struct arena *arena;
	struct buf told;
	bool ok;
};

/* What a document is called and how it is drawn. */
struct document {
	str name;                /* file, relative to the output folder */
	str title;
	unsigned pages;
	const struct language *language; /* null: English */
	bool private;            /* mode 0600: for the instructor alone */
	bool actual_size;        /* not to be scaled when printed */
	void (*emit)(const void *doc, struct canvas *c);
	const void *doc;
};

/* "q1/packet.large.pdf" for "q1/packet.pdf" in the edition of this print. */
str printer_name(const struct printer *p, struct arena *a, str file);
/* The same of a paper in another language; null: English. */
str printer_name_in(const struct printer *p, struct arena *a, str file,
    const struct language *l);

/* That of a book. */
str printer_book_name(const struct printer *p, struct arena *a, enum book book);

/* The i-th language in which w is printed: 0 is English, null; then those of which the
 * folder has a translation of one of its assignments; null past the last. */
const struct language *printer_language(const struct printer *p, const struct want *w, size_t i);

struct desk printer_desk(struct printer *p);
/* Keeps what was told, in the run's arena, and frees the desk. */
str printer_leave(struct desk *k);
/* Draws, writes, and tells. False: stderr was told. */
bool printer_save(struct desk *k, const struct document *d);
/* Removes what an earlier print left under that name. */
bool printer_drop(struct printer *p, str name);

/* The error that concerns the assignments of w in a language, or null. */
const struct finding *printer_why(const struct printer *p, const struct want *w,
    const struct language *l);
/* Whether w is neither empty nor held back in it. */
bool printer_prints(const struct printer *p, const struct want *w, const struct language *l);

/* How a bundle of w is laid out. */
struct bundle_spec printer_bundle(const struct printer *p, const struct want *w, bool draft);
/* The same in another language, with the marks of the English one. */
struct bundle *printer_translate(const struct printer *p, struct arena *a, const struct want *w,
    const str *originals, const struct language *l);
/* Keeps the marks of a bundle's assignments, and its pages when it is a quarter's. For
 * any thread. */
void printer_keep(struct printer *p, const struct want *w, const struct bundle *b,
    const struct language *l);
/* The documents of the whole program that are wanted. */
bool printer_books(struct printer *p);

#endif
