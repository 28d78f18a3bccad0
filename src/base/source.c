#include "base/source.h"

static int cmp_u32(uint32_t a, uint32_t b)
{
	return (a > b) - (a < b);
}

int pos_cmp(struct pos a, struct pos b)
{
	int c = cmp_u32(a.file, b.file);

	if (!c)
		c = cmp_u32(a.line, b.line);
	return c ? c : cmp_u32(a.col, b.col);
}
