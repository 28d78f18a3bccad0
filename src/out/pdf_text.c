#include "out/pdf_text.h"

#include "draw/face.h"

void text_uint(struct buf *b, uint32_t v)
{
	char digits[10];
	size_t n = sizeof digits;

	do {
		digits[--n] = (char)('0' + v % 10);
		v /= 10;
	} while (v > 0);
	buf_add(b, (str){ digits + n, sizeof digits - n });
}

void text_ref(struct buf *b, uint32_t object)
{
	text_uint(b, object);
	buf_add(b, STR(" 0 R"));
}

static void add_hex(struct buf *b, unsigned char byte)
{
	static const char hex[] = "0123456789ABCDEF";

	buf_addc(b, hex[byte >> 4]);
	buf_addc(b, hex[byte & 15]);
}

void text_hex16(struct buf *b, unsigned v)
{
	add_hex(b, (unsigned char)(v >> 8));
	add_hex(b, (unsigned char)(v & 255));
}

void text_utf16(struct buf *b, uint32_t cp)
{
	if (cp < 0x10000) {
		text_hex16(b, cp);
		return;
	}
	cp -= 0x10000;
	text_hex16(b, 0xd800 + (cp >> 10));
	text_hex16(b, 0xdc00 + (cp & 0x3ff));
}

static bool is_plain(str s)
{
	for (size_t i = 0; i < s.n; i++)
		if (s.p[i] < 0x20 || s.p[i] > 0x7e)
			return false;
	return true;
}

static void add_literal(struct buf *b, str s)
{
	buf_addc(b, '(');
	for (size_t i = 0; i < s.n; i++) {
		if (s.p[i] == '(' || s.p[i] == ')' || s.p[i] == '\\')
			buf_addc(b, '\\');
		buf_addc(b, s.p[i]);
	}
	buf_addc(b, ')');
}

void text_string(struct buf *b, str utf8)
{
	if (is_plain(utf8)) {
		add_literal(b, utf8);
		return;
	}
	buf_adds(b, "<FEFF");
	while (utf8.n > 0)
		text_utf16(b, utf8_next(&utf8));
	buf_addc(b, '>');
}

void text_bytes(struct buf *b, str s)
{
	if (is_plain(s)) {
		add_literal(b, s);
		return;
	}
	buf_addc(b, '<');
	for (size_t i = 0; i < s.n; i++)
		add_hex(b, (unsigned char)s.p[i]);
	buf_addc(b, '>');
}

void text_xml(struct buf *b, str utf8)
{
	for (size_t i = 0; i < utf8.n; i++) {
		char c = utf8.p[i];

		if (c == '&')
			buf_adds(b, "&amp;");
		else if (c == '<')
			buf_adds(b, "&lt;");
		else if (c == '>')
			buf_adds(b, "&gt;");
		else if ((unsigned char)c >= 0x20 || c == '\t' || c == '\n')
			buf_addc(b, c);
	}
}
