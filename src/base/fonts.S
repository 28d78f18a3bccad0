/* The font files of templates/fonts as read-only bytes, and a table of their edges.
 * Paths are relative to the project root, where make runs. Works with the assemblers
 * of gcc and clang, ELF and COFF. */
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
#define TABLE _font_edges
#else
#define TABLE font_edges
#endif
	.globl TABLE
	.balign 8
TABLE:
	ADDRESS sans, sans_end
	ADDRESS bold, bold_end
	ADDRESS italic, italic_end
	ADDRESS bold_italic, bold_italic_end
	ADDRESS mono, mono_end
	ADDRESS mono_bold, mono_bold_end
#if defined(__ELF__)
	.type TABLE, %object
	.size TABLE, . - TABLE
	.section .rodata
#endif
	.balign 16
sans:
	.incbin "templates/fonts/IBMPlexSans_400Regular.ttf"
sans_end:
	.balign 16
bold:
	.incbin "templates/fonts/IBMPlexSans_700Bold.ttf"
bold_end:
	.balign 16
italic:
	.incbin "templates/fonts/IBMPlexSans_400Regular_Italic.ttf"
italic_end:
	.balign 16
bold_italic:
	.incbin "templates/fonts/IBMPlexSans_700Bold_Italic.ttf"
bold_italic_end:
	.balign 16
mono:
	.incbin "templates/fonts/IBMPlexMono_400Regular.ttf"
mono_end:
	.balign 16
mono_bold:
	.incbin "templates/fonts/IBMPlexMono_700Bold.ttf"
mono_bold_end:
#if defined(__ELF__)
	.section .note.GNU-stack,"",%progbits
#endif
