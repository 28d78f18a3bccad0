/* The files of templates/standards as read-only bytes, and a table of their paths and
 * edges. Built like fonts.S. */
#if defined(_WIN32)
	.section .rdata,"dr"
#else
	.section .data.rel.ro,"aw"
#endif
#if __SIZEOF_POINTER__ == 8
#define ADDRESS .quad
#else
#define ADDRESS .long
#endif
#if defined(_WIN32) && !defined(_WIN64)
#define TABLE _standard_edges
#else
#define TABLE standard_edges
#endif
	.globl TABLE
	.balign 8
TABLE:
#define STANDARD(label, path) ADDRESS label##_path, label, label##_end ;
#include "standards.def"
#undef STANDARD
#if defined(__ELF__)
	.type TABLE, %object
	.size TABLE, . - TABLE
	.section .rodata
#endif
#define STANDARD(label, path) \
label##_path: .asciz path ; label: .incbin path ; label##_end: .byte 0 ;
#include "standards.def"
#undef STANDARD
#if defined(__ELF__)
	.section .note.GNU-stack,"",%progbits
#endif
