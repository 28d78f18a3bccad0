/* read/md.h - one file's bytes to blocks. The only place that sees cmark. */
#ifndef READ_MD_H
#define READ_MD_H

#include "base/finding.h"
#include "read/record.h"

/* Limits of design: each is a clear finding, never a crash. */
enum { MD_FILE_MOST = 64 << 20, MD_LINE_MOST = 64 << 10 };

/* Reads src (index `file` in the list of sources) into blocks in arena a. Faults
 * of encoding, limits, raw HTML, tables, images, nesting and anything without a
 * meaning are reported into f with their place and left out; the rest is read.
 * Never fails. The source text must outlive the result. */
struct record_file md_read(struct arena *a, const struct source *src, uint32_t file,
    struct findings *f);

/* The same in two steps for those who read on several threads: a text made ready, cut
 * before level-1 headings into parts of about `part` bytes (0: one part) that need
 * nothing of each other, then each of its parts, with an arena and findings of its own.
 * The blocks of all parts in turn are those of the file. */
struct md_text;
struct md_text *md_open(struct arena *a, const struct source *src, uint32_t file,
    size_t part, struct findings *f);
size_t md_parts(const struct md_text *t);
struct record_file md_read_part(struct arena *a, const struct md_text *t, size_t i,
    struct findings *f);

/* The same by cmark alone, without the short way for plain lines (read/plain.h): what
 * tests hold md_read against. */
struct record_file md_read_whole(struct arena *a, const struct source *src, uint32_t file,
    struct findings *f);

#endif
