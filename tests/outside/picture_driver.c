/* Reads each PNG named on the command line as fitup does: "WIDTH HEIGHT" and the pixels to
 * NAME.gray, or the fault to standard output. */
#include "read/picture.h"

#include <stdio.h>
#include <string.h>

static char bytes[4 << 20];

static str read_whole(const char *path)
{
	FILE *in = fopen(path, "rb");
	size_t n = 0;

	if (in) {
		n = fread(bytes, 1, sizeof bytes, in);
		fclose(in);
	}
	return (str){ bytes, n };
}

static int write_gray(const char *path, const struct pixels *p)
{
	char name[512];
	FILE *out;

	if (snprintf(name, sizeof name, "%s.gray", path) >= (int)sizeof name)
		return 1;
	out = fopen(name, "wb");
	if (!out)
		return 1;
	fprintf(out, "%u %u\n", p->width, p->height);
	fwrite(p->gray, 1, (size_t)p->width * p->height, out);
	return fclose(out) != 0;
}

int main(int argc, char **argv)
{
	int status = 0;

	for (int i = 1; i < argc; i++) {
		struct arena *a = arena_new(NULL, NULL);
		const struct pixels *p = picture_read(a, read_whole(argv[i]));

		if (p->fault.n)
			printf("%s: %.*s\n", argv[i], STR_ARG(p->fault));
		else
			status |= write_gray(argv[i], p);
		arena_free(a);
	}
	return status;
}
