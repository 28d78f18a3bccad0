/* bench_lines.h - reads the lines that both PDF benches write. */
#ifndef TESTS_BENCH_LINES_H
#define TESTS_BENCH_LINES_H

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

struct bench_line {
	int page;                /* 1: a new page begins, nothing else holds */
	double x, y, size;       /* points; y up from the bottom */
	int face;
	char *text;              /* zero-ended */
	size_t n;
};

static inline char *bench_file(const char *path)
{
	FILE *f = fopen(path, "rb");
	char *text;
	size_t n;
	long size;

	if (!f || fseek(f, 0, SEEK_END) != 0 || (size = ftell(f)) < 0) {
		fprintf(stderr, "cannot read %s\n", path);
		exit(1);
	}
	rewind(f);
	text = malloc((size_t)size + 1);
	n = text ? fread(text, 1, (size_t)size, f) : 0;
	if (!text || n != (size_t)size)
		exit(1);
	text[n] = 0;
	fclose(f);
	return text;
}

/* The lines of a file, *n of them. */
static inline struct bench_line *bench_lines(const char *path, size_t *n)
{
	char *text = bench_file(path);
	size_t cap = 1024;
	struct bench_line *v = calloc(cap, sizeof *v);

	*n = 0;
	for (char *s = strtok(text, "\n"); s && v; s = strtok(NULL, "\n")) {
		struct bench_line *l;
		int used = 0;

		if (*n == cap)
			v = realloc(v, (cap *= 2) * sizeof *v);
		if (!v)
			break;
		l = &v[(*n)++];
		*l = (struct bench_line){ .page = s[0] == 'P' };
		if (!l->page &&
		    sscanf(s, "T %lf %lf %d %lf %n", &l->x, &l->y, &l->face, &l->size,
		    &used) < 4)
			exit(1);
		l->text = s + used;
		l->n = strlen(l->text);
	}
	if (!v)
		exit(1);
	return v;
}

static inline double bench_seconds(void)
{
	struct timespec t;

	clock_gettime(CLOCK_MONOTONIC, &t);
	return (double)t.tv_sec + (double)t.tv_nsec * 1e-9;
}

#endif
