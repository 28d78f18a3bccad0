/* check/rule_trade.h - what the rules about the order of teaching share.
 *
 * A rule is one row: who gives a thing, who asks for it strictly earlier, and the words
 * of the report. What is given and asked are keys, small numbers of the rule's own: a
 * machine of the shop, a sort of process, a test. Both are read from what assignments
 * are (kind, process, joint, position, stock, tests, machines), never from skill ids.
 *
 * A key is also given when students bring a skill that an assignment giving the key
 * assesses, or all that it teaches. All that ask in vain for what one
 * assignment gives are one finding. It is not told when one of them needs a skill of
 * somebody who gives the key and that need is unmet: the unmet need is told already. A
 * waiver of the need does not silence a rule of safety. */
#ifndef CHECK_RULE_TRADE_H
#define CHECK_RULE_TRADE_H

#include "check/rule_metal.h"

/* Processes that students learn as one: GMAW-S is GMAW with another transfer. */
enum craft {
	CRAFT_STICK, CRAFT_SOLID_WIRE, CRAFT_CORED_WIRE, CRAFT_TUNGSTEN, CRAFT_GAS_WELD,
	CRAFT_BRAZE, CRAFT_GAS_CUT, CRAFT_PLASMA_CUT, CRAFT_GOUGE, CRAFT_COUNT
};

/* PROCESS_COUNT gives CRAFT_COUNT. */
enum craft craft_of(enum process p);
/* "stick welding", "oxy-fuel cutting". */
const char *craft_word(enum craft c);

enum root { ROOT_UNTOLD, ROOT_OPEN, ROOT_BACKED, ROOT_GOUGED };

/* By the fact Backing, or a backing in a joint block. */
enum root root_of(const struct assignment *a);

/* Destructive tests among the lines of Acceptance; bit k is enum shop_test k. */
enum shop_test {
	SHOP_FILLET_BREAK, SHOP_NICK_BREAK, SHOP_MACRO, SHOP_FACE_BEND, SHOP_ROOT_BEND,
	SHOP_SIDE_BEND, SHOP_TENSILE, SHOP_TESTS
};
uint32_t shop_tests_of(const struct assignment *a);
const char *shop_test_word(enum shop_test t);

/* Ways of laying out that the pattern blocks want; bit k is enum layout k. A rolled shell
 * is a plain rectangle and a tapered box is laid out by its faces: neither wants one. */
enum layout {
	LAYOUT_ALLOWANCE, LAYOUT_PARALLEL, LAYOUT_RADIAL, LAYOUT_TRIANGLES, LAYOUTS
};
uint32_t layouts_of(const struct assignment *a);
const char *layout_word(enum layout l);

/* Whether the name or the text of a line of Acceptance says one of the words; and
 * whether one gives a size with its tolerance. */
bool acceptance_says(const struct assignment *a, const char *const *words);
bool acceptance_measures(const struct assignment *a);

/* Whether a fact has this text. */
bool fact_is(const struct assignment *a, const char *key, const char *text);
/* Neither written work nor a safety card: a student strikes, cuts or builds. */
bool is_shop_work(const struct assignment *a);
/* A practice test, a qualification test or a project. */
bool is_final_work(const struct assignment *a);
/* A weld that holds pieces together: no surfacing, no gouged groove. */
bool weld_joins(const struct weld *w);

struct trade;
struct waivers;

struct trade_rule {
	enum finding_name name;
	const char *fact;        /* where the finding points: a key, or "" the heading */
	uint32_t nkeys;          /* 0: one a machine of the shop */
	/* Write keys to v, each once and at most RULE_KEYS_MOST; return how many. */
	uint32_t (*gives)(const struct trade *t, uint32_t assignment, uint32_t *v);
	uint32_t (*asks)(const struct trade *t, uint32_t assignment, uint32_t *v);
	/* Whether it is a fault when nobody gives the key at all; null: it never is. */
	bool (*owed)(const struct trade *t, uint32_t asker, uint32_t key);
	void (*prepare)(struct trade *t); /* fills marks; may be null */
	bool varies;             /* what is given or asked depends on the order, too */
	const char *(*word)(const struct trade *t, uint32_t key); /* for @; may be null */
	/* "ID (place) " + does + late; + never; "but only optional work " + gives_words.
	 * In the cause "ID " + gives_words + " in " + place. @ is the word of the key. */
	const char *does, *late, *never, *gives_words, *never_cause, *never_repair;
};

/* Keys by assignment: those of w stand from at[w] to at[w + 1]. */
struct trade_keys {
	uint32_t *at, *v;
};

/* What one rule reads of all sheets. Some is read through texts, so for rules that do not
 * vary it is read once for all orders, those of proposed moves among them. */
struct trade_read {
	const struct trade_rule *rule;
	uint32_t *marks;         /* by assignment: keys given, for rules that prepare */
	struct trade_keys gives, asks;
	const struct trade_read *next;
};

struct trade_reads *trade_reads_new(struct arena *a);

/* The state of one rule over one order. */
struct trade {
	struct rule_context x;   /* a copy, first, for the callbacks of rules.h */
	const struct trade_rule *rule;
	uint32_t nkeys;
	uint32_t *marks;         /* as in struct trade_read */
	struct trade_keys gives, asks;
	struct first *firsts;
	bool *brought;           /* by key; null when students bring nothing */
	uint32_t *left_out;      /* by key: a card that this path leaves out, plus 1 */
	bool brought_unknown;    /* they bring a skill that nobody here assesses */
	uint32_t *teacher_at, *teachers; /* by skill; made when first asked */
	/* By asker: 0, or what rules of safety before this one told of it. */
	uint32_t *told;
	struct waivers *waivers; /* null: there are none */
	bool apart;              /* what the rule finds is another fault than a need, so a
	                          * need that is waived does not stand for it */
};

/* Whether the order holds a process, a joint or a machine at all; without, no rule of
 * order can speak. */
bool trade_is_shop_order(const struct rule_context *x);
/* Fills in what the sheets give and ask, from what was read before if that holds. */
void trade_read_sheets(struct trade *t);
/* Fills t with what a rule's gives says of x's order; false when it cannot speak. */
bool trade_begin(const struct rule_context *x, const struct trade_rule *rule,
    struct trade *t);

/* Whether an assignment gives a key; after trade_begin. */
bool trade_gives(struct trade *t, uint32_t assignment, uint32_t key);

/* Runs one rule. told: by assignment, zeroed, shared by the rules of safety so that one
 * missing card is one finding; null for the rest. */
void trade_run(struct rule_context *x, const struct trade_rule *rule, uint32_t *told);

/* Whether asker needs a skill that `giver(t, assignment, key)` teaches and that need is
 * unmet in this order, so that it is told as untaught. */
bool trade_need_tells(struct trade *t, uint32_t asker, uint32_t key,
    bool (*giver)(struct trade *t, uint32_t assignment, uint32_t key));

/* Whether a need, in the numbering of the graph, is unmet before asker. */
bool trade_is_unmet(struct trade *t, uint32_t asker, uint32_t need);
/* Whether asker brings a skill that it also assesses, at `level` or higher. */
bool trade_brings_own(const struct trade *t, uint32_t asker, enum skill_level level);

/* Fills teacher_at and teachers, once. */
void trade_index_teachers(struct trade *t);

/* Writes the keys of set bits. */
uint32_t put_bits(uint32_t bits, uint32_t *v);

/* The rules: R1 to R4; R7 to R11, R13, R14, R16 to R18. */
void rule_trade_safety(struct rule_context *x);
void rule_trade(struct rule_context *x);

#endif
