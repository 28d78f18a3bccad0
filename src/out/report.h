/* out/report.h - the findings as text for people and as JSON for tools. */
#ifndef OUT_REPORT_H
#define OUT_REPORT_H

#include "base/buf.h"
#include "base/finding.h"

/* `file:line:column: level: sentence [name]`, then indented cause, places and repair,
 * at most 80 columns where words allow it. prefix goes before each file name (the
 * program folder as the user named it, with '/'). Waived findings close the list, under
 * a line "waived:", with the reason in place of the repair. A long report need not be
 * held whole: it has so many entries, of which those from `from` to `to` are added. */
size_t report_entries(const struct findings *f);
void report_text(struct buf *b, const struct findings *f, const struct sources *s,
    str prefix, size_t from, size_t to);
/* Adds text word by word from column *at (counted from 0), going on at `indent` past 80
 * columns. */
void report_wrap(struct buf *b, str text, size_t *at, size_t indent);
/* "2 errors, 1 warning, 0 notes", and ", 1 waived" when some are. */
void report_counts(struct buf *b, const struct findings *f);
/* One JSON object as the manual defines it; paths relative to the program folder. */
void report_json(struct buf *b, const struct findings *f, const struct sources *s);

/* s as a JSON string with its quotes (RFC 8259). */
void json_string(struct buf *b, str s);

#endif
