/* sheets/key_set.h - shared by the files that work a key out. Private to them. */
#ifndef SHEETS_KEY_SET_H
#define SHEETS_KEY_SET_H

#include "reckon/groove.h"
#include "reckon/weight.h"
#include "sheets/key.h"

struct key {
	struct arena *arena;
	const struct assignment *x;
	const struct edition *e; /* null: the usual one */
	bool metric;             /* it puts metric first */
	struct workings *out;
	uint32_t drawing;        /* that its lines belong to; NONE */
};

struct worked *key_add(struct key *k, str name);

/* "0.221 in". */
str key_real(struct arena *a, double x, int places, const char *unit);
/* Two texts of one figure, that of the edition's first unit first, the other in brackets. */
str key_both(const struct key *k, str us, str metric);
/* As the edition has it: "0.221 in [5.61 mm]", "0.0234 in2 [15.1 mm2]", "0.027 lb [12 g]". */
str key_length(const struct key *k, double mm);
str key_area(const struct key *k, double mm2);
str key_weight(const struct key *k, double lb, int places);
/* The figure that the steps go on with, in the edition's first unit alone. */
str key_density(const struct key *k, double lb_in3);
/* The middle of a range, 0 when not given. */
double key_middle(const struct quantity *q);
/* "Weld metal, weld B". */
str key_weld_name(struct key *k, const struct joint_block *j, const char *what);

/* The weld that a drawing shows, or null; its process (PROCESS_COUNT: none); its
 * material's words; what it is made of, null where that is not known. */
const struct weld *key_weld(const struct key *k, const struct joint_block *j);
enum process key_process(const struct key *k, const struct joint_block *j);
str key_material(const struct key *k, const struct joint_block *j);
const struct weld_metal *key_metal(const struct key *k, const struct joint_block *j);
/* Weld metal from filler by its process and gas, or null. */
const struct efficiency *key_efficiency(const struct key *k, const struct joint_block *j);
/* Cross section with its cap and length of a drawn weld, mm2 and mm; 0: not known. */
double key_section_mm2(const struct joint_block *j);
double key_length_mm(const struct joint_block *j);
bool key_groove(const struct joint_block *j, struct groove *g);

/* The lines of one drawn weld; bends; pieces; what the author asks to have reckoned. */
void key_joint_lines(struct key *k, const struct joint_block *j);
void key_time_lines(struct key *k, const struct joint_block *j);
void key_bend_lines(struct key *k);
void key_piece_lines(struct key *k);
void key_ask_lines(struct key *k);

#endif
