#include "base/buf.h"

#include <assert.h>
#include <math.h>
#include <string.h>

static char *room(struct buf *b, size_t n)
{
	if (b->cap - b->n <= n)
		b->p = arena_grow(b->arena, b->p, b->n, b->n + n + 1, &b->cap, 1);
	return b->p + b->n;
}

void buf_add(struct buf *b, str s)
{
	if (!s.n)
		return;
	memcpy(room(b, s.n), s.p, s.n);
	b->n += s.n;
}

void buf_adds(struct buf *b, const char *zero_ended)
{
	buf_add(b, str_of(zero_ended));
}

void buf_addc(struct buf *b, char c)
{
	*room(b, 1) = c;
	b->n++;
}

static void add_unsigned(struct buf *b, uint64_t v, int width, char pad, bool minus)
{
	char digits[24];
	char *end = digits + sizeof digits, *p = end;

	do {
		*--p = (char)('0' + v % 10);
		v /= 10;
	} while (v);
	if (minus && pad == '0')
		buf_addc(b, '-');
	for (int w = (int)(end - p) + (minus ? 1 : 0); w < width; w++)
		buf_addc(b, pad);
	if (minus && pad != '0')
		buf_addc(b, '-');
	buf_add(b, (str){ p, (size_t)(end - p) });
}

static void add_signed(struct buf *b, int64_t v, int width, char pad)
{
	add_unsigned(b, v < 0 ? (uint64_t)0 - (uint64_t)v : (uint64_t)v, width, pad, v < 0);
}

/* One directive, f just past '%'; returns the place after it. */
static const char *directive(struct buf *b, const char *f, va_list *ap)
{
	char pad = *f == '0' ? '0' : ' ';
	int width = 0;
	int n;

	for (; *f >= '0' && *f <= '9'; f++)
		width = width * 10 + (*f - '0');
	switch (*f) {
	case 's':
		buf_adds(b, va_arg(*ap, const char *));
		return f + 1;
	case '.':
		assert(f[1] == '*' && f[2] == 's');
		n = va_arg(*ap, int);
		buf_add(b, (str){ va_arg(*ap, const char *), (size_t)n });
		return f + 3;
	case 'c':
		buf_addc(b, (char)va_arg(*ap, int));
		return f + 1;
	case 'd':
		add_signed(b, va_arg(*ap, int), width, pad);
		return f + 1;
	case 'u':
		add_unsigned(b, va_arg(*ap, unsigned), width, pad, false);
		return f + 1;
	case 'z':
		assert(f[1] == 'u');
		add_unsigned(b, va_arg(*ap, size_t), width, pad, false);
		return f + 2;
	default:
		assert(*f == '%');
		buf_addc(b, '%');
		return f + 1;
	}
}

void buf_addv(struct buf *b, const char *format, va_list *ap)
{
	for (const char *f = format; *f;) {
		const char *mark = strchr(f, '%');

		if (!mark) {
			buf_adds(b, f);
			return;
		}
		buf_add(b, (str){ f, (size_t)(mark - f) });
		f = directive(b, mark + 1, ap);
	}
}

void buf_addf(struct buf *b, const char *format, ...)
{
	va_list ap;

	va_start(ap, format);
	buf_addv(b, format, &ap);
	va_end(ap);
}

void buf_add_real(struct buf *b, double x, int decimals, bool keep_zeros)
{
	double scale = 1, whole;
	uint64_t part;
	int width = decimals;

	if (!isfinite(x) || fabs(x) > 1e15) {
		buf_addc(b, '?');
		return;
	}
	for (int i = 0; i < decimals; i++)
		scale *= 10;
	whole = floor(fabs(x) * scale * (1 + 1e-12) + 0.5 + 1e-9);
	if (x < 0 && whole > 0)
		buf_addc(b, '-');
	add_unsigned(b, (uint64_t)(whole / scale), 0, ' ', false);
	part = (uint64_t)(whole - floor(whole / scale) * scale);
	while (!keep_zeros && width && part % 10 == 0) {
		part /= 10;
		width--;
	}
	if (width) {
		buf_addc(b, '.');
		add_unsigned(b, part, width, '0', false);
	}
}

str buf_str(const struct buf *b)
{
	return (str){ b->p, b->n };
}

const char *buf_z(struct buf *b)
{
	*room(b, 1) = 0;
	return b->p;
}

str str_format(struct arena *a, const char *format, ...)
{
	struct buf b = { .arena = a };
	va_list ap;

	va_start(ap, format);
	buf_addv(&b, format, &ap);
	va_end(ap);
	return buf_str(&b);
}

str str_copy(struct arena *a, str s)
{
	return (str){ arena_copy(a, s.p, s.n), s.n };
}
