/* What a trial showed, and what is told of it. */
#include "check/remedy.h"

/* The line of the text before the edits; 0: a line that the edits brought. */
static uint32_t line_before(struct pos pos, const struct edited *texts, size_t n)
{
	for (size_t i = 0; i < n; i++)
		if (texts[i].file == pos.file)
			return pos.line && pos.line <= texts[i].nlines
			    ? texts[i].origin[pos.line - 1] : pos.line;
	return pos.line;
}

static bool is_new_line(struct pos pos, const struct edited *texts, size_t n)
{
	return pos.line && !line_before(pos, texts, n);
}

static bool is_same(const struct finding *before, const struct finding *after,
    const struct edited *texts, size_t n)
{
	return before->name == after->name && !before->waived == !after->waived &&
	    before->pos.file == after->pos.file &&
	    before->pos.line == line_before(after->pos, texts, n) &&
	    str_eq_nocase(before->assignment, after->assignment) &&
	    str_eq(before->skill, after->skill);
}

/* How often findings list a place. */
static size_t count_listed(const struct findings *f, struct pos pos,
    const struct edited *texts, size_t n)
{
	size_t times = 0;

	for (size_t i = 0; pos.line && i < f->n; i++)
		for (size_t k = 0; k < f->v[i].nrelated; k++)
			times += f->v[i].related[k].pos.file == pos.file && pos.line ==
			    line_before(f->v[i].related[k].pos, texts, n);
	return times;
}

/* Whether some finding lists the place of this one that did not: it is there still, under
 * another. */
static bool is_listed(const struct finding *d, const struct findings *before,
    const struct findings *after, const struct edited *texts, size_t n)
{
	return count_listed(after, d->pos, texts, n) > count_listed(before, d->pos, NULL, 0);
}

/* From which level on something new speaks against a remedy. Where more than a note is
 * mended, a note does not: a line put back a week off makes a queue longer. What a finding
 * names was left out while it stood, so that lesser ones may have been behind it. */
static enum finding_level harm_level(const struct remedy *r, const struct finding *mended)
{
	if (mended->level == LEVEL_NOTE || r->strict)
		return LEVEL_NOTE;
	return r->names_cause ? mended->level : LEVEL_WARNING;
}

/* Whether a place stands under a heading that was not known, so that nothing was found
 * there before it was mended. */
static bool was_left_out(struct pos pos, const struct remedy *r, const struct finding *mended)
{
	return (mended->name == FINDING_UNKNOWN_SECTION || mended->name == FINDING_BAD_ID) &&
	    pos.file == mended->pos.file && pos.line >= r->edits[0].line;
}

/* A waiver that covers nothing any more is no harm that an edit does. */
static bool is_harm(const struct finding *d, const struct remedy *r,
    const struct finding *mended, const struct edited *texts, size_t n)
{
	return !d->waived && d->level >= harm_level(r, mended) &&
	    d->name != FINDING_IDLE_WAIVER && !is_new_line(d->pos, texts, n) &&
	    !(r->nedits && was_left_out(d->pos, r, mended));
}

/* Whether a finding is there still, in the same words or in others; then that is paired. */
static bool pair_one(const struct finding *d, const struct findings *after, bool *paired,
    bool in_words, const struct edited *texts, size_t n)
{
	for (size_t k = 0; k < after->n; k++) {
		const struct finding *e = &after->v[k];

		if (paired[k] || (in_words && !str_eq(d->message, e->message)) ||
		    !is_same(d, e, texts, n))
			continue;
		paired[k] = true;
		return true;
	}
	return false;
}

/* Pairs what is found before and after, each once; false: something is found that was not
 * there before. */
static bool pair(struct arena *a, bool *stays, const struct remedy *r,
    const struct findings *before, const struct findings *after,
    const struct edited *texts, size_t n)
{
	bool *paired = arena_array(a, after->n, sizeof *paired);

	/* First those that are the same to the word. */
	for (size_t i = 0; i < before->n; i++)
		stays[i] = pair_one(&before->v[i], after, paired, true, texts, n);
	for (size_t i = 0; i < before->n; i++)
		stays[i] = stays[i] || pair_one(&before->v[i], after, paired, false, texts, n);
	for (size_t k = 0; k < after->n; k++)
		if (!paired[k] && is_harm(&after->v[k], r, &before->v[r->finding], texts, n))
			return false;
	return true;
}

static void judge_one(struct arena *a, struct remedy *r, const struct findings *before,
    const struct findings *after, const struct edited *texts, size_t ntexts)
{
	bool *stays = arena_array(a, before->n, sizeof *stays);
	bool *mends = arena_array(a, before->n, sizeof *mends);
	size_t n = 0;

	if (!pair(a, stays, r, before, after, texts, ntexts) || stays[r->finding])
		return;
	for (size_t i = 0; i < before->n; i++) {
		mends[i] = !stays[i] && !before->v[i].waived &&
		    !is_listed(&before->v[i], before, after, texts, ntexts);
		n += mends[i];
	}
	if (!mends[r->finding])
		return;
	r->mends = mends;
	r->nmended = n;
}

void remedy_judge(struct arena *a, struct remedy *r, const struct findings *before,
    const struct findings *after, const struct edited *texts, size_t ntexts)
{
	for (; r; r = r->same)
		judge_one(a, r, before, after, texts, ntexts);
}

static bool is_whole(const struct remedy *r, const struct findings *f)
{
	for (size_t i = 0; r->mends && i < f->n; i++)
		if (!r->mends[i] && !f->v[i].waived)
			return false;
	return r->mends;
}

bool remedy_is_whole(const struct remedy *r, const struct findings *f)
{
	while (r && !is_whole(r, f))
		r = r->same;
	return r;
}

/* Whether a word much like the one that stands there mends the finding of a remedy that
 * writes no such word. */
static bool is_beside(const struct remedies *rs, const struct remedy *r)
{
	for (size_t i = 0; !r->near && i < rs->n; i++)
		if (rs->v[i].near && rs->v[i].mends && rs->v[i].finding == r->finding)
			return true;
	return false;
}

/* What a remedy still mends of what is not settled. One whose own finding is settled
 * mends nothing more: it would be another way for that, and not the cause of the rest. */
static size_t count_left(const struct remedy *r, const struct findings *f,
    const bool *settled)
{
	size_t n = 0;

	if (!r->mends || settled[r->finding])
		return 0;
	for (size_t i = 0; i < f->n; i++)
		n += r->mends[i] && !settled[i];
	return n;
}

static const struct remedy *widest(const struct remedies *rs, const struct findings *f,
    const bool *settled)
{
	const struct remedy *best = NULL;
	size_t most = 1;

	for (size_t i = 0; i < rs->n; i++) {
		size_t n = count_left(&rs->v[i], f, settled);

		if ((n > most || (n == most && best && rs->v[i].names_cause &&
		    !best->names_cause)) && !is_beside(rs, &rs->v[i])) {
			best = &rs->v[i];
			most = n;
		}
	}
	return best;
}

static uint32_t in_order(const struct remedies *rs, size_t k)
{
	return rs->order ? rs->order[k] : (uint32_t)k;
}

/* The one that stands for all: that of the remedy, unless a graver one tells more of what
 * is wrong. Of equally grave ones the first. */
static uint32_t head_of(const struct remedies *rs, const struct remedy *r,
    const struct findings *f, const bool *settled)
{
	uint32_t head = r->finding;

	for (size_t k = 0; !r->names_cause && k < f->n; k++) {
		uint32_t i = in_order(rs, k);

		if (r->mends[i] && !settled[i] && f->v[i].level > f->v[head].level)
			head = i;
	}
	return head;
}

static void settle(const struct remedies *rs, const struct remedy *r, struct findings *f,
    bool *settled)
{
	uint32_t at = head_of(rs, r, f, settled);
	struct finding *head = &f->v[at];

	for (size_t k = 0; k < f->n; k++) {
		uint32_t i = in_order(rs, k);
		struct finding *d = &f->v[i];

		if (!r->mends[i] || settled[i])
			continue;
		settled[i] = true;
		if (i != at)
			finding_take(f, head, d);
	}
	if (r->say.n)
		head->repair = r->say;
	else if (at != r->finding)
		head->repair = f->v[r->finding].repair;
}

void remedies_settle(const struct remedies *rs, struct findings *f)
{
	bool *settled = arena_array(f->arena, f->n, sizeof *settled);
	const struct remedy *r;

	while ((r = widest(rs, f, settled)))
		settle(rs, r, f, settled);
	findings_sweep(f);
}
