/* draw/list.h - a recording of what was drawn, to be drawn again.
 *
 * All strings and paths are copied into the arena, so that what was drawn from may
 * change or go; pictures are borrowed. A stretch of the recording belongs to the page that ends it: what is
 * recorded between two pages goes with the later one, what follows the last page
 * with the last. Replaying every page in turn is the same as replaying whole. */
#ifndef DRAW_LIST_H
#define DRAW_LIST_H

#include "base/arena.h"
#include "draw/canvas.h"

struct list;

/* An empty recording, living in a. */
struct list *list_new(struct arena *a);
/* Draw on this to record. */
struct canvas *list_canvas(struct list *l);
/* Pages recorded, counting one still open. */
size_t list_pages(const struct list *l);
/* Width and height of a recorded page, in points (x and y are 0). */
rect list_page_size(const struct list *l, size_t page);

/* Draws everything on `to`, places moved by (dx, dy) points. */
void list_replay(const struct list *l, struct canvas *to, double dx_pt, double dy_pt);
/* Draws one page, from page_begin to page_end, with what belongs to it. */
void list_replay_page(const struct list *l, size_t page, struct canvas *to,
    double dx_pt, double dy_pt);
/* The same without page_begin and page_end, for a page that is open on `to`. */
void list_replay_content(const struct list *l, size_t page, struct canvas *to,
    double dx_pt, double dy_pt);

#endif
