/* A page after two photocopies: a picture at 150 dpi, as pdftoppm -gray draws it (PGM,
 * P5), cut to pure black and white, then blurred and cut again, twice; after that every
 * word and every stroke must still be there.
 *
 * raster PAGE.pgm WORDS: WORDS has a line "x0 y0 x1 y1 word" for each word, in pixels.
 * Prints what was lost and "WORDS STROKES LOST"; exit 1 when anything was.
 * The blur is the binomial 1 2 1 both ways (0.7 pixel, 0.12 mm, standard deviation);
 * copies that lose less are common practice, no source. */
#include <stdbool.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

struct page {
	int width, height;
	uint8_t *ink;            /* 1 is black */
};

static uint8_t *page_at(const struct page *p, int x, int y)
{
	return &p->ink[(size_t)y * (size_t)p->width + (size_t)x];
}

static void *room(size_t n)
{
	void *v = calloc(n, 1);

	if (!v)
		exit(3);
	return v;
}

static bool page_read(struct page *p, const char *name)
{
	FILE *f = fopen(name, "rb");

	if (!f || fscanf(f, "P5 %d %d 255", &p->width, &p->height) != 2 || fgetc(f) == EOF)
		return false;
	p->ink = room((size_t)p->width * (size_t)p->height);
	for (int y = 0; y < p->height; y++)
		for (int x = 0; x < p->width; x++)
			*page_at(p, x, y) = fgetc(f) < 128;
	return fclose(f) == 0;
}

/* One copy: black where half of the light or more is gone. */
static struct page page_copy(const struct page *p)
{
	struct page out = { p->width, p->height,
		room((size_t)p->width * (size_t)p->height) };

	for (int y = 1; y + 1 < p->height; y++) {
		for (int x = 1; x + 1 < p->width; x++) {
			int sum = 0;

			for (int j = -1; j <= 1; j++)
				for (int i = -1; i <= 1; i++)
					sum += *page_at(p, x + i, y + j) *
					    (2 - abs(i)) * (2 - abs(j));
			*page_at(&out, x, y) = sum >= 8;
		}
	}
	return out;
}

/* Ink of a box before; how much of it stayed, and all ink after. */
struct count {
	int before, kept, after;
};

static struct count box_count(const struct page *a, const struct page *b, const int box[4])
{
	struct count c = { 0, 0, 0 };

	for (int y = box[1] < 0 ? 0 : box[1]; y < box[3] && y < a->height; y++) {
		for (int x = box[0] < 0 ? 0 : box[0]; x < box[2] && x < a->width; x++) {
			c.before += *page_at(a, x, y);
			c.after += *page_at(b, x, y);
			c.kept += *page_at(a, x, y) & *page_at(b, x, y);
		}
	}
	return c;
}

/* Words with their boxes in pixels: x0, y0, x1, y1. */
struct words {
	struct word { int box[4]; char text[64]; } *v;
	size_t n;
};

static struct words words_read(const char *name)
{
	struct words w = { room(5000 * sizeof *w.v), 0 };
	FILE *f = fopen(name, "r");
	double at[4];

	if (!f)
		exit(2);
	while (w.n < 5000 && fscanf(f, "%lf %lf %lf %lf %63s%*[^\n]", &at[0], &at[1], &at[2],
	    &at[3], w.v[w.n].text) == 5) {
		struct word *x = &w.v[w.n++];

		x->box[0] = (int)at[0];
		x->box[1] = (int)at[1];
		x->box[2] = (int)at[2] + 1;
		x->box[3] = (int)at[3] + 1;
	}
	fclose(f);
	return w;
}

/* A word is there when two thirds of its ink stayed and it did not run together. */
static int words_lost(const struct page *a, const struct page *b, const struct words *w)
{
	int lost = 0;

	for (size_t i = 0; i < w->n; i++) {
		const struct word *x = &w->v[i];
		struct count c = box_count(a, b, x->box);

		if (c.before > 0 && c.kept * 3 >= c.before * 2 && c.after * 2 <= c.before * 3)
			continue;
		printf("lost: the word %s at %d, %d: %d of %d pixels stayed, %d in all\n",
		    x->text, x->box[0], x->box[1], c.kept, c.before, c.after);
		lost++;
	}
	return lost;
}

/* A speck may go: the dot or accent of a letter, the tail of a dash. A decimal point, which
 * stands low in its word, may not. */
static bool may_go(const struct words *w, int pixels, int x, int y)
{
	if (pixels > 8)
		return false;
	for (size_t i = 0; i < w->n; i++) {
		const int *b = w->v[i].box;

		if (x >= b[0] && x <= b[2] && y >= (b[1] + b[3]) / 2 && y <= b[3])
			return false;
	}
	return true;
}

/* Marks the piece of black that holds (x, y) and adds up its ink. */
static struct count piece_take(const struct page *a, const struct page *b, uint8_t *seen,
    int *stack, int start)
{
	struct count c = { 0, 0, 0 };
	int n = 0;

	stack[n++] = start;
	seen[start] = 1;
	while (n) {
		int here = stack[--n], x = here % a->width, y = here / a->width;

		c.before++;
		c.kept += b->ink[here];
		for (int j = y - 1; j <= y + 1; j++) {
			for (int i = x - 1; i <= x + 1; i++) {
				int next = j * a->width + i;

				if (i < 0 || j < 0 || i >= a->width || j >= a->height ||
				    seen[next] || !a->ink[next])
					continue;
				seen[next] = 1;
				stack[n++] = next;
			}
		}
	}
	return c;
}

/* Every piece of ink that hangs together (a letter, a dot, a dash, a box, a line) keeps
 * half of its ink and is still one stroke. */
static int strokes_lost(const struct page *a, const struct page *b, const struct words *w,
    int *n)
{
	size_t size = (size_t)a->width * (size_t)a->height;
	uint8_t *seen = room(size);
	int *stack = room(size * sizeof *stack), lost = 0;

	for (int i = 0; i < (int)size; i++) {
		struct count c;

		if (seen[i] || !a->ink[i])
			continue;
		c = piece_take(a, b, seen, stack, i);
		++*n;
		if (c.kept * 2 >= c.before || may_go(w, c.before, i % a->width, i / a->width))
			continue;
		printf("lost: a stroke at %d, %d: %d of %d pixels stayed\n", i % a->width,
		    i / a->width, c.kept, c.before);
		lost++;
	}
	return lost;
}

int main(int argc, char **argv)
{
	struct page first, copy;
	struct words words;
	int strokes = 0, lost;

	if (argc != 3 || !page_read(&first, argv[1])) {
		fputs("raster PAGE.pgm WORDS\n", stderr);
		return 2;
	}
	copy = page_copy(&first);
	copy = page_copy(&copy);
	words = words_read(argv[2]);
	lost = words_lost(&first, &copy, &words);
	lost += strokes_lost(&first, &copy, &words, &strokes);
	printf("%zu %d %d\n", words.n, strokes, lost);
	return lost != 0;
}
