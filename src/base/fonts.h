/* base/fonts.h - the font files, inside the program.
 *
 * fonts.S embeds templates/fonts byte for byte, so that the one program file prints
 * on a machine with nothing installed. The bytes live as long as the program. IBM Plex is
 * under the SIL Open Font License 1.1 (templates/fonts/OFL.txt); the files are
 * unmodified. */
#ifndef BASE_FONTS_H
#define BASE_FONTS_H

#include <stddef.h>
#include <stdint.h>

#define FONT_COUNT 6

struct font_bytes {
	const unsigned char *p;
	size_t n;
};

/* Start and end of each file: sans, bold, italic, bold italic, mono, mono bold. */
extern const unsigned char *const font_edges[FONT_COUNT][2];

/* The file of face `index`, 0 .. FONT_COUNT - 1, in the order above. */
static inline struct font_bytes font_bytes(size_t index)
{
	const unsigned char *const *edge = font_edges[index];

	return (struct font_bytes){ edge[0],
	    (size_t)((uintptr_t)edge[1] - (uintptr_t)edge[0]) };
}

#endif
