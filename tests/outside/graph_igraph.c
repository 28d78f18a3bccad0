/* The same graph as graph_check, judged by igraph: prints its strongly connected
 * components of two or more, in the same form. Names are looked up in a sorted list. */
#include <igraph/igraph.h>

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

struct name { char *word; long number; };

static int by_word(const void *a, const void *b)
{
	return strcmp(((const struct name *)a)->word, ((const struct name *)b)->word);
}

static long number_of(const struct name *names, size_t n, char *word)
{
	struct name key = { word, 0 };
	struct name *hit = bsearch(&key, names, n, sizeof *names, by_word);

	return hit ? hit->number : -1;
}

int main(int argc, char **argv)
{
	FILE *f = argc > 1 ? fopen(argv[1], "r") : NULL;
	char *line = NULL, **lines = NULL;
	size_t cap = 0, n = 0;
	struct name *names;
	igraph_vector_int_t edges, part, size;
	igraph_t g;
	igraph_integer_t count;

	if (!f)
		return 2;
	while (getline(&line, &cap, f) > 0) {
		lines = realloc(lines, (n + 1) * sizeof *lines);
		lines[n++] = strdup(line);
	}
	names = calloc(n + 1, sizeof *names);
	for (size_t i = 0; i < n; i++) {
		names[i].word = strdup(lines[i]);
		names[i].word[strcspn(names[i].word, " \n")] = 0;
		names[i].number = (long)i;
	}
	qsort(names, n, sizeof *names, by_word);
	igraph_vector_int_init(&edges, 0);
	for (size_t i = 0; i < n; i++) {
		strtok(lines[i], " \n");
		for (char *w; (w = strtok(NULL, " \n"));) {
			long to = number_of(names, n, w);

			if (to < 0)
				continue;
			igraph_vector_int_push_back(&edges, (igraph_integer_t)i);
			igraph_vector_int_push_back(&edges, to);
		}
	}
	igraph_create(&g, &edges, (igraph_integer_t)n, IGRAPH_DIRECTED);
	igraph_vector_int_init(&part, 0);
	igraph_vector_int_init(&size, 0);
	igraph_connected_components(&g, &part, &size, &count, IGRAPH_STRONG);
	for (size_t i = 0; i < n; i++) {
		igraph_integer_t p = VECTOR(part)[i];

		if (p < 0 || VECTOR(size)[p] < 2)
			continue;
		for (size_t k = i, left = (size_t)VECTOR(size)[p]; left; k++)
			if (VECTOR(part)[k] == p) {
				VECTOR(part)[k] = -1;
				printf("%zu%c", k, --left ? ' ' : '\n');
			}
	}
	return 0;
}
