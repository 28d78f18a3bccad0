/* page/para_set.h - metrics shared by breaking and drawing; for this room only. */
#ifndef PAGE_PARA_SET_H
#define PAGE_PARA_SET_H

#include "page/para.h"

/* Code points below this have their advances at hand: Latin letters and signs. */
enum { AT_HAND = 0x180 };

struct advances {
	const struct faces *faces;
	uint16_t v[FACE_COUNT][AT_HAND];
	double ascent, descent;  /* largest of all faces, for a size of 1 */
};

/* The face of span styles. */
uint8_t style_face(unsigned style);
/* Width of a text in thousandths of its size. */
uint32_t measure_mils(const struct advances *a, uint8_t face, str s);

#endif
