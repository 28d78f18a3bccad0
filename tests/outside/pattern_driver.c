/* Works out flat patterns that pattern_judge.py asks for, one a line on standard input:
 * a shape's number, then NAME VALUE pairs. Answers, tables and outlines on standard
 * output, for the judge to hold against the part in space. */
#include "reckon/pattern.h"

#include <stddef.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

static const struct field {
	const char *name;
	size_t offset;
	bool whole;              /* an unsigned or an enum */
} fields[] = {
#define REAL(f) { #f, offsetof(struct pattern_part, f), false }
#define WHOLE(f) { #f, offsetof(struct pattern_part, f), true }
	REAL(thickness_mm), REAL(radius_mm), REAL(k), REAL(allowance_mm), REAL(width_mm),
	REAL(diameter_mm), REAL(run_mm), REAL(height_mm), REAL(angle_deg), REAL(base_mm),
	REAL(base2_mm), REAL(top_mm), REAL(offset_x_mm), REAL(offset_y_mm),
	WHOLE(given), WHOLE(line), WHOLE(wrap), WHOLE(pieces), WHOLE(sides),
	WHOLE(divisions),
};

static void put_field(struct pattern_part *p, const char *name, double value)
{
	for (size_t i = 0; i < sizeof fields / sizeof *fields; i++) {
		char *at = (char *)p + fields[i].offset;
		unsigned whole = (unsigned)value;

		if (strcmp(fields[i].name, name) != 0)
			continue;
		if (fields[i].whole)
			memcpy(at, &whole, sizeof whole);
		else
			memcpy(at, &value, sizeof value);
	}
	if (strcmp(name, "flange") == 0 && p->nflanges < PATTERN_FLANGES)
		p->flange_mm[p->nflanges++] = value;
	if (strcmp(name, "bend") == 0 && p->nflanges)
		p->bend_deg[p->nflanges - 1] = value;
}

static void print_flat(const struct flat *f)
{
	printf("flat %u %.15g %.15g\n", f->count, f->width_mm, f->height_mm);
	for (size_t i = 0; i < f->nlines; i++) {
		const struct flat_line *l = &f->line[i];

		printf("line %d", (int)l->kind);
		for (size_t k = 0; k < l->n; k++)
			printf(" %.15g %.15g", l->v[k].x_mm, l->v[k].y_mm);
		printf("\n");
	}
}

static void print_pattern(const struct pattern *o)
{
	if (o->fault.n)
		printf("fault %.*s\n", STR_ARG(o->fault));
	for (size_t i = 0; i < o->nanswers; i++)
		printf("answer %.15g %.*s\n", o->answer[i].value,
		    STR_ARG(o->answer[i].name));
	for (size_t i = 0; i < o->ntables; i++) {
		printf("table\n");
		for (size_t k = 0; k < o->table[i].n; k++) {
			const struct pattern_row *r = &o->table[i].v[k];

			printf("row %.15g %.15g %.15g %.15g\n", r->at_deg, r->along_mm,
			    r->v_mm[0], r->v_mm[1]);
		}
	}
	for (size_t i = 0; i < o->nflats; i++)
		print_flat(&o->flat[i]);
	printf("end\n");
}

int main(void)
{
	char line[4096];

	while (fgets(line, sizeof line, stdin)) {
		struct arena *a = arena_new(NULL, NULL);
		struct pattern_part p = { 0 };
		char *rest, *name = strtok_r(line, " \n", &rest);

		p.shape = (enum pattern_shape)atoi(name ? name : "0");
		while ((name = strtok_r(NULL, " \n", &rest)) != NULL) {
			const char *value = strtok_r(NULL, " \n", &rest);

			put_field(&p, name, value ? atof(value) : 0);
		}
		print_pattern(pattern_reckon(a, &p));
		arena_free(a);
	}
	return 0;
}
