/* model/setting.h - what the tables of currents, gas and preheat ask of an assignment,
 * read once for those who check and those who print. */
#ifndef MODEL_SETTING_H
#define MODEL_SETTING_H

#include "model/model.h"

/* The word by which tables of currents know process p of an assignment: GMAW by its
 * transfer is "GMAW-S" or "GMAW spray"; "GMAW" when none is told. Static. */
str setting_table_process(const struct assignment *a, enum process p);

/* Class and diameter of the fact Tungsten, "EWLa-2, 3/32 in". False without one. */
bool setting_tungsten(const struct assignment *a, str *class, double *dia_mm);

/* The first quantity of a kind that stands in a text at the start of a word: the flow of
 * "75/25 argon/CO2 25 cfh", the temperature of "none above 32 degF". */
bool setting_quantity(str text, enum quantity_kind kind, struct quantity *out);
/* The same in part i of a fact whose parts stand apart by semicolons; one part serves
 * every i. */
bool setting_part(const struct assignment *a, str key, size_t i, enum quantity_kind kind,
    struct quantity *out);
/* The limit of the fact Heat input, "45 kJ/in at most", in kJ/in. */
bool setting_heat_limit(const struct assignment *a, double *kj_in);

/* What the steel of a weld goes by in the preheat table. */
enum setting_hydrogen {
	HYDROGEN_UNTOLD,         /* a process that the table leaves out, or no class */
	HYDROGEN_ORDINARY,       /* a covered electrode that is not low-hydrogen */
	HYDROGEN_LOW
};
enum setting_hydrogen setting_hydrogen(const struct assignment *a);
/* The thicker member of weld i, mm; 0: not known. */
double setting_thickest_mm(const struct assignment *a, size_t i);

#endif
