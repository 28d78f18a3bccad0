/* check/waive.h - findings accepted on purpose.
 *
 * A waiver covers the findings of its name that concern its assignment; one that names
 * a skill, only those about that skill; one that names no assignment, only findings
 * that concern none, and of those, when it names a course, a quarter, a station, a
 * section or a machine, only the ones at its heading. It never covers what is wrong in customs.md itself, nor a safety
 * finding. */
#ifndef CHECK_WAIVE_H
#define CHECK_WAIVE_H

#include "model/model.h"
#include "model/when.h"

struct waivers;

/* Whether a finding of this name may be accepted: not a safety finding, and not one
 * about customs.md itself. */
bool waiver_may_cover(enum finding_name name);

/* Lays the waivers of a model ready for look-up; null when there are none. */
struct waivers *waivers_new(struct arena *a, const struct model *m);

/* The first waiver in customs.md that covers such a finding, by index in m->waivers;
 * NONE when none does. w may be null. */
uint32_t waivers_find(const struct waivers *w, enum finding_name name, struct pos pos,
    str assignment, str skill);

/* After all checks and before sorting: marks what is waived, and reports waivers that
 * are over by `date` (null: none is, for nobody knows the day) and waivers that cover
 * nothing. Marks last as long as the findings. */
void waive_apply(struct arena *scratch, const struct model *m, const struct when *date,
    struct findings *f);

#endif
