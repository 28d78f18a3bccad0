/* check/graph.h - who needs what and who teaches what, laid flat.
 *
 * The check walks needs and teachings several times; here they stand in plain
 * arrays of numbers. Assignments and needs keep the numbering of the model: need
 * i of assignment a is need_at[a] + i. A cell is one skill at one level,
 * skill * 3 + level - 1. Teaching a cell teaches the lower levels of the skill too.
 * Assignments meet only through cells, so the size is that of the source. */
#ifndef CHECK_GRAPH_H
#define CHECK_GRAPH_H

#include "check/words.h"
#include "order/order.h"

/* An alternative whose skill is in no list: nobody teaches it. */
#define CELL_UNKNOWN UINT32_MAX
/* An alternative without a level. It was reported, so its need is not judged. */
#define CELL_GRANTED (UINT32_MAX - 1)
/* Marks a teaching whose word was misspelt: the cell it most likely means. */
#define CELL_MISSPELT (UINT32_C(1) << 31)

struct graph {
	const struct model *model;
	uint32_t nassignments, nneeds, ncells;
	uint32_t nunknown;       /* words under Needs and Teaches in no list */
	uint32_t *need_at;       /* by assignment, one more than there are */
	uint32_t *alt_at;        /* by need, one more than there are */
	uint32_t *alts;          /* cells that meet a need, or CELL_UNKNOWN, _GRANTED */
	uint32_t *teach_at;      /* by assignment, one more than there are */
	uint32_t *teach;         /* cells, perhaps CELL_MISSPELT */
	uint32_t *owner;         /* by need: its assignment */
	uint32_t *needer_at;     /* by cell, one more than there are */
	uint32_t *needers;       /* needs that name the cell */
};

/* Lays the model flat, in arena a. Words say what misspelt teachings mean; null
 * leaves those out. */
struct graph *graph_new(struct arena *a, const struct model *m, const struct words *w);

/* Fills owner, needer_at and needers, which only loops and repairs use. */
void graph_index_needers(struct arena *a, struct graph *g);

/* Whether an assignment teaches a cell or a higher one of its skill, spelled right. */
bool graph_teaches(const struct graph *g, uint32_t assignment, uint32_t cell);

/* A need as written. */
const struct need *graph_need(const struct graph *g, uint32_t assignment, uint32_t need);

static inline uint32_t cell_of(uint32_t skill, enum skill_level level)
{
	return skill * 3 + (uint32_t)level - 1;
}

static inline uint32_t cell_skill(uint32_t cell)
{
	return (cell & ~CELL_MISSPELT) / 3;
}

static inline enum skill_level cell_level(uint32_t cell)
{
	return (enum skill_level)((cell & ~CELL_MISSPELT) % 3 + 1);
}

/* The lowest cell of the same skill. */
static inline uint32_t cell_base(uint32_t cell)
{
	return cell_skill(cell) * 3;
}

#endif
