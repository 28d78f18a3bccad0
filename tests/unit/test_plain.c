/* The short way through plain lines must give what cmark alone gives, block by block:
 * on every file of the demo, and on files thrown together from fragments that sit on
 * the edge between plain and not. */
#include <stdarg.h>
#include <stddef.h>
#include <setjmp.h>
#include <stdint.h>
#include <cmocka.h>

#include "base/buf.h"
#include "read/md.h"

#include <dirent.h>
#include <stdio.h>
#include <string.h>

static void dump_block(struct arena *a, struct buf *b, const struct block *k)
{
	struct pos key = k->key.n ? block_key_pos(k) : (struct pos){ 0 };
	struct spans spans = block_spans(a, k);
	struct text_line one = { 0, block_pos(k, 0) };
	const struct text_line *lines = k->more ? k->more->lines : &one;

	buf_addf(b, "%u %u %u %u:%u [%.*s %u:%u] <%.*s>", (unsigned)k->kind, k->level, k->number,
	    k->pos.line, k->pos.col, STR_ARG(k->key), key.line, key.col, STR_ARG(k->text));
	for (uint32_t i = 0; i < (k->more ? k->more->nlines : 1); i++)
		buf_addf(b, " %u@%u:%u", lines[i].offset, lines[i].pos.line, lines[i].pos.col);
	for (size_t i = 0; i < spans.n; i++)
		buf_addf(b, " {%u %.*s}", spans.v[i].style, STR_ARG(spans.v[i].text));
	buf_addc(b, '\n');
}

typedef struct record_file reader(struct arena *, const struct source *, uint32_t,
    struct findings *);

/* Cut before every level-1 heading and read from the last part to the first, as two
 * threads might; then the parts in their order. */
static struct record_file read_parts(struct arena *a, const struct source *src, uint32_t file,
    struct findings *f)
{
	const struct md_text *t = md_open(a, src, file, 1, f);
	size_t n = md_parts(t), most = 0, kept = 0;
	struct record_file *parts = arena_array(a, n, sizeof *parts);
	struct block *all;

	for (size_t i = n; i-- > 0;) {
		parts[i] = md_read_part(a, t, i, f);
		most += parts[i].n;
	}
	all = arena_array(a, most, sizeof *all);
	for (size_t i = 0; i < n; i++)
		for (size_t k = 0; k < parts[i].n; k++)
			all[kept++] = parts[i].v[k];
	return record_file_of(a, file, all, kept);
}

static const char *dump(struct arena *a, reader *read, str text)
{
	struct findings *f = findings_new(a);
	const struct source src = { STR("x.md"), text };
	struct record_file r = read(a, &src, 0, f);
	struct buf b = { .arena = a };

	for (size_t i = 0; i < r.n; i++)
		dump_block(a, &b, &r.v[i]);
	findings_sort(f);
	for (size_t i = 0; i < f->n; i++)
		buf_addf(&b, "%u:%u %s\n", f->v[i].pos.line, f->v[i].pos.col,
		    finding_info(f->v[i].name)->name);
	return buf_z(&b);
}

static void same(str text)
{
	struct arena *a = arena_new(NULL, NULL);

	const char *whole = dump(a, md_read_whole, text);

	assert_string_equal(dump(a, md_read, text), whole);
	assert_string_equal(dump(a, read_parts, text), whole);
	arena_free(a);
}

static void same_file(const char *dir, const char *name)
{
	static char text[1 << 20];
	char path[512];
	FILE *f;
	size_t n;

	snprintf(path, sizeof path, "%s/%s", dir, name);
	f = fopen(path, "rb");
	assert_non_null(f);
	n = fread(text, 1, sizeof text, f);
	fclose(f);
	same((str){ text, n });
}

static void the_demo_reads_alike(void **state)
{
	DIR *d = opendir("curriculum/assignments");
	unsigned files = 0;

	(void)state;
	assert_non_null(d);
	for (struct dirent *e; (e = readdir(d));)
		if (strstr(e->d_name, ".md")) {
			same_file("curriculum/assignments", e->d_name);
			files++;
		}
	closedir(d);
	assert_true(files >= 74);
	same_file("curriculum", "program.md");
	same_file("curriculum", "skills.md");
	same_file("curriculum", "shop.md");
}

static const char *const fragments[] = {
	"# AB-01: Title\n", "# T\n", "## Needs\n", "### C #\n", "#\n", "#x\n", "####### seven\n",
	"- **Kind:** drill\n", "- **Key**: v\n", "- **Key:**v\n", "- **Key:**\n", "- ** x:** y\n",
	"- **a** b\n", "- one of: a, b\n", "- smaw.2f practiced\n", "-  two\n", "-\n", "- \n",
	"- - nested\n", "- 1. nested\n", "- 3/8 x 3 in\n", "* star\n", "+ plus\n", "1. one\n",
	"3. three\n", "7) other\n", "1. **Stop:** x\n", "10. ten (a title)\n", "2. 3. x\n",
	"text\n", "  lazy\n", "    code\n", "\n", "\n", "\n", " \n", "---\n", "===\n", "***\n",
	"```joint\n", "```\n", "~~~\n", "  ```\n", "# inside\n", "> q\n", "[a]: b\n", "<b>\n",
	"<!-- c -->\n", "- a  b\n", "- x \n", "- x  \n", "- a_b_c\n", "- a*b*\n", "- `c`\n", "- a\\\n",
	"- &amp;\n", "- é ½ in\n", "- **É:** x\n", "| t |\n", "- [l](u)\n", "- [a]: u\n", "> [a]: u\n", "see [a]\n", "- ```\n", "# A\n", "###### Six\n",
	"- <b>\n", "- x\ty\n", "\t- t\n",
	"words 3 in [76 mm] wide\n", "**Make 1.** A cowl.\n", "**Bold** text\n", "**Bold.**\n",
	"**a**b\n", "**a.**b\n", "**b **c\n", "**Stop**, look\n", "- **Wear** it\n", "4. **Stop** x\n",
	"5. **Stop,** x\n", "5. **Stop.**x\n", "5. ** x:** y\n", "6. Cut 2 in [51 mm] off\n",
	"- [x]\n", "- a [x] (y)\n", "- a [x](y)\n", "see ![p] here\n", "see ![p](u.png)\n", "a [x][y] b\n",
	"a ]( b\n", "- **K [x]:** [y] z\n", "**K:** [l](u)\n", "12. x\n", "12.\n", "3) x\n", "text \n", "text  \n",
	"[foo\na \\[3]: u\n", "## R\nsee [foo a \\[3]] x\n", "3. [51]: x\n", "see [51] x\n",
	"2 in [51 mm]: x\n", "[foo\n", "a b]: u\n", "a \\[3]: u\n", "- 3 [51]: x\n", "> a [b]: c\n",
	"```weld\nA: 1\n\n  b\n\n```\n", "```\n\n```\n", "```plate cut\nx\n```\n", "```cut\nx\n````\n",
	"```joint\n```\n", "```joint\n# in\nB:\tc  \n``` \n",
	"123456789. big\n", "0. zero\n", "- **K:** **v**\n", "## A_b\n", "# \n", "#  two\n",
};

static uint32_t roll(uint32_t *x, uint32_t sides)
{
	*x ^= *x << 13;
	*x ^= *x >> 17;
	*x ^= *x << 5;
	return *x % sides;
}

/* Half of the files begin with a heading, so that stretches are cut at all. */
static void thrown_together_files_read_alike(void **state)
{
	uint32_t x = 20260921;

	(void)state;
	for (int i = 0; i < 40000; i++) {
		struct arena *a = arena_new(NULL, NULL);
		struct buf b = { .arena = a };
		uint32_t n = 1 + roll(&x, 12);

		if (roll(&x, 2))
			buf_adds(&b, "# AB-01: Title\n");
		while (n--)
			buf_adds(&b, fragments[roll(&x, sizeof fragments / sizeof *fragments)]);
		same(buf_str(&b));
		arena_free(a);
	}
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(the_demo_reads_alike),
		cmocka_unit_test(thrown_together_files_read_alike),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
