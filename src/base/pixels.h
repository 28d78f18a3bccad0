/* base/pixels.h - a picture as it goes on paper: shades of gray, or why there is none.
 *
 * Made by read/picture.c, drawn by canvas_image. Pixels and texts live in the arena of
 * whoever read them and are read-only afterwards. */
#ifndef BASE_PIXELS_H
#define BASE_PIXELS_H

#include "base/sha256.h"
#include "base/str.h"

struct pixels {
	uint32_t width, height;  /* pixels; 0 when there is a fault */
	const uint8_t *gray;     /* rows from the top, width bytes each: 0 black, 255 white */
	uint8_t digest[SHA256_BYTES]; /* of size and pixels, as read/picture.c makes it */
	double dark;             /* share of the pixels nearer to black than to white */
	double tint;             /* share neither near black nor near white, 64 to 191 */
	str fault;               /* why it cannot be read, in a few words; empty when it can */
};

#endif
