/* cli/pictures.h - the pictures that sheets show, read once the model knows which. */
#ifndef CLI_PICTURES_H
#define CLI_PICTURES_H

#include "cli/folder.h"

/* Fills the pixels of every picture of m that is used; those live in arena a, or are those
 * of `before`, a model of the same folder, which may be null. */
void pictures_read(struct arena *a, struct model *m, const struct model *before,
    const struct folder *folder);

#endif
