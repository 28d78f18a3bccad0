/* check/rule_joint.h - what the rules about metal, machine, joint and test share: words
 * looked for in a text, lengths said in ink, and what is known of one weld.
 *
 * Texts that are made live in the arena of the findings. Lengths mm. */
#ifndef CHECK_RULE_JOINT_H
#define CHECK_RULE_JOINT_H

#include "base/buf.h"
#include "check/rules.h"

/* Half a thousandth of an inch: gauge and pipe tables print four places, so that a
 * sheet exactly at a limit is not over it. */
#define LIMIT_SLACK_MM 0.0127

static inline bool is_over(double mm, double limit_mm)
{
	return mm > limit_mm + LIMIT_SLACK_MM;
}

static inline bool is_same_mm(double a_mm, double b_mm)
{
	return !is_over(a_mm, b_mm) && !is_over(b_mm, a_mm);
}

/* Whether a word of s begins with `start`, without regard to case: "ventilat" is in
 * "Local ventilation". */
bool says(str s, const char *start);
/* The same for any of several, which end with null; and for prose. */
bool says_any(str s, const char *const *starts);
bool para_says_any(const struct para *p, const char *const *starts);
bool prose_says_any(const struct prose *p, const char *const *starts);

/* "3/8 in [9.5 mm]". */
str say_mm(const struct rule_context *x, double mm);
str say_quantity(const struct rule_context *x, const struct quantity *q);
/* At most so many decimals. */
str say_real(const struct rule_context *x, double v, int decimals);

bool joint_is_fillet(enum joint j);
bool joint_is_butt(enum joint j);
bool joint_is_pipe(const struct weld *w);
bool is_out_of_position(enum position p);

/* False for a position that weld i cannot be made in, which is told. */
bool weld_is_possible(const struct assignment *a, size_t i);
/* Whether its drawing shows another joint, which is told: nobody knows then what it is. */
bool weld_is_drawn_otherwise(const struct assignment *a, size_t i);
/* Whether a weld has another thickness than the pieces, of which this is the first: told,
 * so no machine is judged by it. */
bool piece_is_disputed(const struct assignment *a, const struct piece *p);
/* Whether pieces or drawing give a weld another thickness, which is told: nothing else is
 * judged by it. */
bool weld_is_disputed(const struct assignment *a, const struct weld *k);
/* Which metals stand at a weld, a bit each; METAL_NONE when its words name none. */
uint32_t weld_metals(const struct weld *w);
bool weld_has_metal(const struct weld *w, enum sheet_metal metal);
double weld_thin_mm(const struct weld *w);
double weld_thick_mm(const struct weld *w);
/* The joint block that draws weld i: its own, or one without a letter; or null. */
const struct joint_block *weld_block(const struct assignment *a, size_t i);
/* The leg of weld i from its line or its drawing, 0 when none is given. */
double weld_leg_mm(const struct assignment *a, size_t i);
/* Its leg on the second member; as the other when both are alike. */
double weld_leg2_mm(const struct assignment *a, size_t i);
double weld_length_mm(const struct assignment *a, size_t i);
/* "weld B (tee, 2F)", or "the tee in 2F" when there is one weld only. */
str weld_say(const struct rule_context *x, const struct weld *w);

/* The rules: position and leg; what drawing, Acceptance and pieces say of one thing. */
void rule_joint(struct rule_context *x, uint32_t w);
void rule_joint_agree(struct rule_context *x, uint32_t w);
void rule_member(struct rule_context *x, uint32_t w);

#endif
