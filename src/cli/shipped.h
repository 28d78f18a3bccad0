/* cli/shipped.h - the shipped acceptance sets that a program names. */
#ifndef CLI_SHIPPED_H
#define CLI_SHIPPED_H

#include "base/finding.h"
#include "model/model.h"

/* Reads each shipped set that an Acceptance line of m names, and no other, and adds its
 * file to *s, behind those of the folder, so that a finding in it has a place. */
void shipped_read(struct arena *a, struct model *m, struct sources *s,
    struct findings *f);

#endif
