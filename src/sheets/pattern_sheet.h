/* sheets/pattern_sheet.h - pattern blocks on paper: given sizes for the student, the
 * worked-out answers for the key.
 *
 * What students see is drawn from the block alone; nothing that pattern_of works out
 * reaches it. The functions named key are for instructor documents only. */
#ifndef SHEETS_PATTERN_SHEET_H
#define SHEETS_PATTERN_SHEET_H

#include "draw/fig_view.h"
#include "model/pattern_block.h"
#include "reckon/pattern.h"
#include "sheets/limits.h"

struct sheet; /* sheets/sheet.h */
struct edition; /* sheets/edition.h */

/* The part that a block describes, in the terms of reckon/pattern.h. A stretch-out that
 * the block does not choose lies on the middle of a given thickness, for pipe outside;
 * any other line is as the sizes are given. */
struct pattern_part pattern_part_of(const struct pattern_block *b);
/* The same worked out: answers, tables, outlines, or why there are none. */
struct pattern *pattern_of(struct arena *a, const struct pattern_block *b);

/* ---- for students ---- */

/* The given sizes as a view to scale, and in words. */
struct fig_view pattern_view(struct arena *a, const struct edition *e,
    const struct pattern_block *b);
str pattern_view_words(struct arena *a, const struct edition *e, const struct pattern_block *b);
/* "Cone" or "Saddle: lateral branch"; and what the view does not show, as one line. */
str pattern_head(struct arena *a, const struct edition *e, const struct pattern_block *b);
str pattern_given(struct arena *a, const struct edition *e, const struct pattern_block *b);
/* "90 deg between center lines" of a branch. */
str pattern_angle(struct arena *a, const struct edition *e, const struct pattern_block *b);
/* Finished sizes with the block's tolerance, or else with tol (which may be null), as
 * rows to measure. */
void pattern_measures(struct arena *a, const struct edition *e, const struct pattern_block *b,
    const struct quantity *tol, struct measures *out);

/* ---- for the key ---- */

/* Everything about the patterns of one assignment as blocks on sh->flow: what was taken,
 * answers in both units, tables, and each outline with its dimensions. False when it
 * has no pattern. */
bool sheet_pattern_key(struct sheet *sh, const struct assignment *x);

/* "Slant height: 8.544 in (8-35/64) [217.02 mm]". */
str key_answer_text(struct arena *a, const struct edition *e, const struct pattern_answer *k);
/* One length the same way, with the nearest 64th when it is not one. */
str key_length_text(struct arena *a, const struct edition *e, double mm);
/* One developed outline, fitted to area. */
struct fig_view key_flat_view(struct arena *a, const struct edition *e, const struct flat *f);

#endif
