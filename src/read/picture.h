/* read/picture.h - a PNG file's bytes to shades of gray. The only place that sees libpng.
 *
 * Every kind of PNG (ISO/IEC 15948) is read: gray, color and palette of 1 to 16 bits, with
 * or without alpha, interlaced or not. What is transparent becomes white paper, and color
 * the gray of the same lightness (0.2126 R + 0.7152 G + 0.0722 B, ITU-R BT.709). Color
 * profiles, texts and dates in the file are passed over. */
#ifndef READ_PICTURE_H
#define READ_PICTURE_H

#include "base/arena.h"
#include "base/pixels.h"

enum {
	PICTURE_FILE_MOST = 64 << 20, /* bytes */
	PICTURE_SIDE_MOST = 8000,     /* pixels */
	PICTURE_PIXELS_MOST = 25000000
};

/* Reads a whole file. Never fails: a file that is no PNG, is damaged, cut short or over a
 * limit gives a picture with its fault told. */
const struct pixels *picture_read(struct arena *a, str bytes);

#endif
