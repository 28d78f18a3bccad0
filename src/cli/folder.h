/* cli/folder.h - the program folder: which files it has, and their bytes. */
#ifndef CLI_FOLDER_H
#define CLI_FOLDER_H

#include "base/finding.h"
#include "cli/pool.h"
#include "model/model.h"

struct folder {
	struct sources sources;  /* in byte order of paths */
	enum file_role *roles;   /* by source */
	bool *readable;          /* false: reported, text empty */
	const char **faults;     /* why one is not readable, else null; those of pictures are
	                          * left to whoever shows them */
};

/* Reads the files that file_role_of knows below dir, their bytes into the arenas of the
 * threads. What cannot be read, leads out of the folder or goes beyond the limits is
 * reported. False: dir is no folder at all (errno says why). */
bool folder_read(struct arena *a, struct arena *const own[POOL_THREADS], const char *dir,
    struct folder *out, struct findings *f);

/* The folder to use when none was named: the one that holds program.md, else
 * "curriculum" when it does; null when neither. */
const char *folder_default(void);

#endif
