/* check/remedy_fact.h - for the files check/remedy_*.c only: what a sheet shows in place of
 * a fact that is valid and perhaps not what is meant. */
#ifndef CHECK_REMEDY_FACT_H
#define CHECK_REMEDY_FACT_H

#include "check/remedy_seek.h"

/* Entry k, from 0, of a value that begins at pos and ends with its line; empty: none. It
 * lies within the line. */
str seek_item(const struct seeker *s, struct pos pos, char sep, size_t k);
/* Adds the way of writing `new` for `old`, which lies within the line of pos; null when
 * there is nothing to write, or it is tried for this finding already. */
struct remedy *seek_write(struct seeker *s, struct pos pos, str old, str new);
/* Adds the way of writing `to` as entry k of a fact of a; why: "as the title says". */
void seek_fact(struct seeker *s, const struct assignment *a, const char *key, size_t k,
    str to, str why);

/* Each adds what the sheet shows of it, if anything. */
void seek_process(struct seeker *s, const struct assignment *a);
void seek_filler(struct seeker *s, const struct assignment *a);
void seek_usual_material(struct seeker *s, const struct assignment *a);
void seek_transfer(struct seeker *s, const struct assignment *a);
void seek_passes(struct seeker *s, const struct assignment *a);
void seek_kind(struct seeker *s, const struct assignment *a);
/* Writes another joint, position, leg, length or thickness on a line under "## Welds"; why
 * begins with its comma. */
void write_weld(struct seeker *s, const struct weld *w, str key, str to, str why);
void seek_welds(struct seeker *s, const struct assignment *a);
void seek_block_joint(struct seeker *s, const struct assignment *a);
void seek_said_twice(struct seeker *s, const struct assignment *a);
void seek_piece(struct seeker *s, const struct assignment *a);
void seek_bad_piece(struct seeker *s, const struct assignment *a);
void seek_pipe(struct seeker *s, const struct assignment *a);
void seek_length(struct seeker *s, const struct assignment *a);
void seek_backing(struct seeker *s, const struct assignment *a);
void seek_member(struct seeker *s, const struct assignment *a);
void seek_weights(struct seeker *s, const struct assignment *a);
void seek_weight(struct seeker *s, const struct assignment *a);
/* The title that program.md has of a sheet. */
void seek_title(struct seeker *s);
/* Sheets whose Kind is not what they show. */
void seek_other_kinds(struct seeker *s);

#endif
