/* model/assignment.h - the parts of one assignment, each read by its own file.
 *
 * All readers fill b->a. Section readers take the blocks under their heading. */
#ifndef MODEL_ASSIGNMENT_H
#define MODEL_ASSIGNMENT_H

#include "model/fields.h"

/* Rows of fields_assignment that other parts look back at. */
enum fact_row {
	FACT_KIND, FACT_HOURS, FACT_STATION, FACT_WAS, FACT_PROCESS, FACT_JOINT,
	FACT_MATERIAL, FACT_THICKNESS, FACT_POSITION, FACT_FILLER, FACT_CURRENT,
	FACT_VOLTS, FACT_WIRE_FEED, FACT_TRAVEL, FACT_HEAT_INPUT,
	FACT_TUNGSTEN, FACT_GAS, FACT_PURGE, FACT_PREHEAT,
	FACT_INTERPASS, FACT_OVEN, FACT_TRANSFER, FACT_BACKING, FACT_PROCEDURE,
	FACT_STOCK, FACT_COATING, FACT_MACHINES, FACT_TIME_LIMIT, FACT_RANGE,
	FACT_WITNESS, FACT_TEAM, FACT_PLACE, FACT_TESTED_BY, FACT_ATTEMPTS, FACT_ROWS
};

/* Reads v[0..n), from the level-1 heading on, into a. */
void assignment_read(struct binder *b, struct assignment *a, const struct block *v,
    size_t n);

void read_needs(struct binder *b, const struct block *h, const struct block *v, size_t n);
void read_teaches(struct binder *b, const struct block *h, const struct block *v,
    size_t n);
void read_welds(struct binder *b, const struct block *h, const struct block *v, size_t n);
void read_passes(struct binder *b, const struct block *h, const struct block *v,
    size_t n);
void read_pieces(struct binder *b, const struct block *h, const struct block *v,
    size_t n);
void read_drawing(struct binder *b, const struct block *h, const struct block *v,
    size_t n);
void read_steps(struct binder *b, const struct block *h, const struct block *v, size_t n);
void read_criteria(struct binder *b, const struct block *h, const struct block *v,
    size_t n);
void read_grades(struct binder *b, const struct block *h, const struct block *v,
    size_t n);
void read_bring(struct binder *b, const struct block *h, const struct block *v, size_t n);
void read_cautions(struct binder *b, const struct block *h, const struct block *v,
    size_t n);
void read_if_it_fails(struct binder *b, const struct block *h, const struct block *v,
    size_t n);
void read_notes(struct binder *b, const struct block *h, const struct block *v, size_t n);
void read_instructor(struct binder *b, const struct block *h, const struct block *v,
    size_t n);

/* Running text: paragraphs, bullets, steps. */
void prose_read(struct binder *b, const struct block *v, size_t n, struct prose *out);

/* "3F up". position_find stays silent, position_read complains. */
bool position_find(struct said t, struct position_at *out);
bool position_read(struct binder *b, struct said t, struct position_at *out);
/* Complains of a word that is no joint; the one that is likely meant, or JOINT_COUNT. */
enum joint joint_meant(struct binder *b, struct said t);
/* Reports a vertical, 5G or 6G weld that says neither up nor down. */
void position_check(struct binder *b, struct said t, const struct position_at *at);

/* After all sections: each joint in each position, and what a weld leaves out. */
void welds_complete(struct binder *b);

/* Whether a fact of b->a is there, or a misspelt key that means it. */
bool fact_is_told(const struct binder *b, uint32_t row);

#endif
