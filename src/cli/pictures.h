/* cli/pictures.h - the pictures that sheets show, read once the model knows which. */
#ifndef CLI_PICTURES_H
#define CLI_PICTURES_H

#include "cli/folder.h"

/* Fills the pixels of every picture of m that is used; those live in arena a. */
void pictures_read(struct arena *a, struct model *m, const struct folder *folder);

#endif
