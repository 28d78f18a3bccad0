/* check/settle_sheet.h - parts of check/settle.h: what one slip on a sheet, or in the week
 * of its line, shows in two places. `at` is the finding that explains, by index. */
#ifndef CHECK_SETTLE_SHEET_H
#define CHECK_SETTLE_SHEET_H

#include "check/waive.h"

bool settle_waived(const struct waivers *ws, const struct finding *d);

void settle_pictures(const struct model *m, const struct waivers *ws, struct findings *f,
    uint32_t at);
void settle_floating(const struct waivers *ws, struct findings *f, size_t at);
void settle_drawing(const struct waivers *ws, struct findings *f, size_t at);
void settle_position(const struct waivers *ws, struct findings *f, size_t at);
void settle_stretch(const struct waivers *ws, struct findings *f, size_t at);
void settle_tests(const struct model *m, const struct waivers *ws, struct findings *f,
    size_t at);
void settle_current(const struct waivers *ws, struct findings *f, size_t at);
void settle_week(const struct model *m, const struct waivers *ws, struct findings *f,
    size_t at);

#endif
