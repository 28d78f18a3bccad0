/* check/rule_machine.h - what shop.md says of a machine, and what a piece asks of it.
 *
 * Lengths mm, forces lbf. 0 stands for "shop.md does not say". */
#ifndef CHECK_RULE_MACHINE_H
#define CHECK_RULE_MACHINE_H

#include "check/rule_joint.h"
#include "reckon/metal.h"

/* The limit whose key begins with one of `keys` (ended by null), or null; its text. */
const struct plain_fact *machine_limit(const struct machine *m, const char *const *keys);
str machine_says(const struct machine *m, const char *const *keys);
double machine_mm(const struct machine *m, const char *const *keys,
    enum sheet_metal metal);
/* "3/4 x 8 in": the smaller first. False when the limit is not there. */
bool machine_box(const struct machine *m, const char *const *keys, double *small_mm,
    double *large_mm);
/* "60 ton", "60,000 lbf". */
double machine_lbf(const struct machine *m);
/* Thickness that a shear takes of a metal; estimate: worked out from the figure for mild
 * steel, because shop.md has none for this metal. */
double machine_thickness_mm(const struct machine *m, str material, bool *estimate);
/* The line that this goes by. */
const struct plain_fact *machine_thickness_limit(const struct machine *m, str material);
/* The same of a plate roll, for a piece so wide along it. */
double machine_roll_mm(const struct machine *m, str material, double width_mm,
    bool *estimate);

/* The first machine whose name has a word, among those that the assignment lists; when
 * it lists none of that sort, in the whole shop if `anywhere`. Null: there is none. */
const struct machine *machine_of(const struct rule_context *x, uint32_t assignment,
    const char *word, bool anywhere);

/* The metal for reckoning: that of the words, else the common one of its sort; null. */
const struct metal *metal_of(str material);

/* Flat stock: thickness, then the two sides of its face, the shorter first. */
struct flat {
	double t_mm, short_mm, long_mm;
};
bool piece_is_flat(const struct piece *p, struct flat *out);

/* Where else in this shop a flat piece can be cut: "saw it", "cut it on the plasma
 * table", or a thinner one. `not` is the word of the machine that cannot. */
str machine_way_out(const struct rule_context *x, const struct piece *p,
    const char *not_word);
/* The same of a round hole: "drill it on the drill press". */
str hole_way_out(const struct rule_context *x, str material, double d_mm, double t_mm,
    const char *not_word);
bool saw_takes(const struct machine *m, const struct piece *p);
bool table_takes(const struct machine *m, const struct flat *f, bool pierce);

/* Runs judges over all assignments that are not bare. What they note as over one
 * limit of a machine becomes one finding: at the sheet when it is one, else at the limit
 * in shop.md with the sheets as a list. */
void limits_judge(struct rule_context *x, rule_judge *const *judges, size_t n);
/* Notes which limit the finding reported last goes by; null: none that is written. */
void limit_note(struct rule_context *x, const struct finding *d, const struct machine *m,
    const struct plain_fact *limit);

/* The rules: cutting machines; punch, drill, roll, tensile frame; brake; limits that none of
 * them would read. */
void rule_machine_cut(struct rule_context *x);
void rule_machine_form(struct rule_context *x);
void rule_machine_brake(struct rule_context *x);
void rule_machine_said(struct rule_context *x);

#endif
