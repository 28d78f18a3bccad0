/* The floor of inspecting: the bare Markdown library parsing the same files.
 * cmark_floor FILE ... */
#include <cmark.h>
#include <stdio.h>
#include <stdlib.h>

static void parse(const char *path)
{
	FILE *f = fopen(path, "rb");
	char *text = malloc(1 << 26);
	size_t n;

	if (!f || !text)
		exit(1);
	n = fread(text, 1, 1 << 26, f);
	fclose(f);
	cmark_node_free(cmark_parse_document(text, n, CMARK_OPT_SOURCEPOS));
	free(text);
}

int main(int argc, char **argv)
{
	for (int i = 1; i < argc; i++)
		parse(argv[i]);
	return 0;
}
