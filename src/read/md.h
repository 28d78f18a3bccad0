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

/* The same by cmark alone, without the short way for plain lines (read/plain.h): what
 * tests hold md_read against. */
struct record_file md_read_whole(struct arena *a, const struct source *src, uint32_t file,
    struct findings *f);

#endif
