/* model/limit_scan.h - sizes at which a limit makes no sense: it is divided by zero, or
 * it comes out below zero or endless. Private to model. */
#ifndef MODEL_LIMIT_SCAN_H
#define MODEL_LIMIT_SCAN_H

#include "base/buf.h"
#include "model/standard.h"

struct limit_failure {
	bool fails;
	bool in_condition;       /* what follows "where" fails, not the figure */
	struct limit_outcome o;
	struct limit_sizes sizes; /* at which it fails */
};

/* Tries l at one set of sizes; where its condition does not hold it cannot fail. */
struct limit_failure limit_try(const struct standard_limit *l,
    const struct limit_sizes *sizes);
/* Tries l over the sizes that a shop meets: members 1/32 to 2 in, legs 1/16 to 1 in,
 * parts to 20 ft and so on, smallest first. The first failure, or none. */
struct limit_failure limit_scan(const struct standard_limit *l);

/* "divides by zero where t is 3/8 in [9.5 mm]", of the names that l goes by. */
void limit_say_failure(struct buf *b, const struct standard_limit *l,
    const struct limit_failure *f);

#endif
