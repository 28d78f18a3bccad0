/* model/parts.h - the files beside the assignments. */
#ifndef MODEL_PARTS_H
#define MODEL_PARTS_H

#include "model/fields.h"

/* Each reads a whole file into b->model. */
void skills_read(struct binder *b, const struct record_file *file);
void shop_read(struct binder *b, const struct record_file *file);
/* After the assignments: lines of courses refer to them. */
void program_read(struct binder *b, const struct record_file *file);
/* After program.md and shop.md, whose quarters and sections they name. */
void customs_read(struct binder *b, const struct record_file *file);
void cohorts_read(struct binder *b, const struct record_file *file);

/* After the assignments, which it translates. */
void translation_read(struct binder *b, const struct record_file *file);

/* Lists the files of the folder pictures, before the assignments that show them. */
void pictures_begin(struct binder *b);
/* After the assignments: pictures that none of them shows. */
void pictures_end(struct binder *b);

/* Before the assignments: criteria name sets. standards_begin makes room for `files`
 * files of the program's own and lists the shipped sets by their headings. */
void standards_begin(struct binder *b, size_t files);
void standard_read(struct binder *b, const struct record_file *file);

/* The code, edition and loading that a text names, and where; code empty when none. */
struct code_name {
	str code, loading;
	uint32_t edition;
	size_t at;
};
struct code_name code_find(str text);
/* Offset of needle, a word of its own, without regard to case; s.n when absent. */
size_t word_find(str s, str needle);
/* Chooses the set that c names, or reports that there is none; in is its line. */
void criterion_choose(struct binder *b, struct criterion *c, const struct block *in);

/* More weeks than any quarter has. */
enum { WEEKS_MOST = 60 };

/* One numbered line of the course read last. seen[assignment] is the slot + 1. */
void slot_read(struct binder *b, const struct block *v, uint32_t *seen);
/* The section of shop.md that is named, or surely meant; NONE. An unknown one is told at
 * the first line that names it, with the others as a list. */
uint32_t section_find(struct binder *b, struct said t);
/* Whether two titles have the same words. */
bool same_title(str a, str b);
/* What ids that no file defines mean among the assignments in no course, and then each
 * that is still in none. seen as slot_read left it. */
void unlisted_offer(struct binder *b, uint32_t *seen);
void unlisted_report(struct binder *b, const uint32_t *seen);
/* The fact Entry, after all quarters are known. */
void entries_read(struct binder *b, const struct block *fact);

/* Whether shop.md gives nothing that a sheet or a group could name. */
bool shop_is_hollow(const struct model *m);
/* After everything: skills.md, program.md and shop.md where they give nothing, each once,
 * in place of every word that refers to them. */
void hollow_tell(struct binder *b);

/* Reports further level-1 headings and whatever stands right under the first. */
void complain_second_title(struct binder *b, const struct block *v);

#endif
