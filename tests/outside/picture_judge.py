# Makes PNGs from pixels that it knows, in every kind of ISO/IEC 15948, and says what shades
# of gray they must become. Shares no code with fitup or libpng: the file format is written
# out here by hand (sections 7 to 11 and annex tables of the standard).
#
#   picture_judge.py make DIR    writes the pictures and a NAME.want beside each
#   picture_judge.py check DIR   compares NAME.gray with NAME.want, a line each
import os
import random
import struct
import sys
import zlib

KINDS = [(0, d) for d in (1, 2, 4, 8, 16)] + [(2, 8), (2, 16)] + \
        [(3, d) for d in (1, 2, 4, 8)] + [(4, 8), (4, 16), (6, 8), (6, 16)]
CHANNELS = {0: 1, 2: 3, 3: 1, 4: 2, 6: 4}
ADAM7 = [(0, 0, 8, 8), (4, 0, 8, 8), (0, 4, 4, 8), (2, 0, 4, 4), (0, 2, 2, 4), (1, 0, 2, 2),
         (0, 1, 1, 2)]


def chunk(name, data):
    return struct.pack('>I', len(data)) + name + data + struct.pack('>I', zlib.crc32(name + data))


def packed(samples, depth):
    """One row of samples as bytes, the leftmost in the high bits."""
    if depth == 16:
        return b''.join(struct.pack('>H', s) for s in samples)
    bits = ''.join(format(s, '0%db' % depth) for s in samples)
    bits += '0' * (-len(bits) % 8)
    return bytes(int(bits[i:i + 8], 2) for i in range(0, len(bits), 8))


def paeth(a, b, c):
    p = a + b - c
    return min((abs(p - a), 0, a), (abs(p - b), 1, b), (abs(p - c), 2, c))[2]


def filtered(row, above, step, kind):
    out = bytearray([kind])
    for i, x in enumerate(row):
        a = row[i - step] if i >= step else 0
        b = above[i]
        c = above[i - step] if i >= step else 0
        out.append((x - (0, a, b, (a + b) // 2, paeth(a, b, c))[kind]) & 255)
    return bytes(out)


def rows_of(pixels, color, depth, dice):
    step = max(1, CHANNELS[color] * depth // 8)
    above = None
    out = b''
    for line in pixels:
        row = packed([s for p in line for s in p], depth)
        above = above if above is not None else bytes(len(row))
        out += filtered(row, above, step, dice.randrange(5))
        above = row
    return out


def body(pixels, color, depth, interlaced, dice):
    if not interlaced:
        return rows_of(pixels, color, depth, dice)
    out = b''
    for x0, y0, dx, dy in ADAM7:
        part = [line[x0::dx] for line in pixels[y0::dy]]
        if part and part[0]:
            out += rows_of(part, color, depth, dice)
    return out


def to_8(s, depth):
    """A sample of that depth as 8 bits, rounded to the nearest."""
    return (s * 255 * 2 + (1 << depth) - 1) // (2 * ((1 << depth) - 1))


def shade(rgb, alpha):
    g = (2126 * rgb[0] + 7152 * rgb[1] + 722 * rgb[2] + 5000) // 10000
    return (g * alpha + 255 * (255 - alpha) + 127) // 255


def make_one(name, color, depth, interlaced, clear, width, height, seed):
    dice = random.Random(seed)
    most = (1 << depth) - 1
    entries = 1 << depth if depth < 8 else 200
    palette = [tuple(dice.randrange(256) for _ in range(3)) for _ in range(entries)]
    alphas = [dice.randrange(256) for _ in range(entries // 2 + 1)]
    one = tuple(dice.randrange(most + 1) for _ in range(CHANNELS[color]))
    top = entries - 1 if color == 3 else most
    pixels = [[one if dice.random() < 0.2 and color != 3 else
               tuple(dice.randint(0, top) for _ in range(CHANNELS[color]))
               for _ in range(width)] for _ in range(height)]

    def want(p):
        if color == 3:
            alpha = alphas[p[0]] if clear and p[0] < len(alphas) else 255
            return shade(palette[p[0]], alpha)
        v = [to_8(s, depth) for s in p]
        rgb = v[:3] if color in (2, 6) else [v[0]] * 3
        alpha = v[-1] if color in (4, 6) else 0 if clear and p == one else 255
        return shade(rgb, alpha)

    data = b'\x89PNG\r\n\x1a\n' + chunk(b'IHDR', struct.pack(
        '>IIBBBBB', width, height, depth, color, 0, 0, 1 if interlaced else 0))
    data += chunk(b'gAMA', struct.pack('>I', dice.randrange(20000, 90000)))
    if color == 3:
        data += chunk(b'PLTE', bytes(c for e in palette for c in e))
    if clear:
        data += chunk(b'tRNS', bytes(alphas) if color == 3 else
                      b''.join(struct.pack('>H', s) for s in one))
    packed_body = zlib.compress(body(pixels, color, depth, interlaced, dice))
    cut = dice.randrange(len(packed_body) + 1)
    data += chunk(b'IDAT', packed_body[:cut]) + chunk(b'IDAT', packed_body[cut:])
    data += chunk(b'tEXt', b'Comment\0not read') + chunk(b'IEND', b'')
    open(name + '.png', 'wb').write(data)
    flat = bytes(want(p) for line in pixels for p in line)
    open(name + '.png.want', 'wb').write(b'%d %d\n' % (width, height) + flat)


def make(where):
    sizes = [(1, 1), (9, 5), (37, 23), (3, 17)]
    n = 0
    for color, depth in KINDS:
        for interlaced in (False, True):
            for clear in (False, True) if color in (0, 2, 3) else (False,):
                for width, height in sizes:
                    n += 1
                    make_one(os.path.join(where, 'p%03d-c%d-d%d%s%s-%dx%d' % (
                        n, color, depth, '-i' if interlaced else '', '-t' if clear else '',
                        width, height)), color, depth, interlaced, clear, width, height, n)


def check(where):
    for name in sorted(os.listdir(where)):
        if not name.endswith('.want'):
            continue
        want = open(os.path.join(where, name), 'rb').read()
        try:
            got = open(os.path.join(where, name[:-5] + '.gray'), 'rb').read()
        except OSError:
            got = b''
        worst = max([abs(a - b) for a, b in zip(want, got)] or [0])
        # Samples of 16 bits may be rounded either way at a half.
        same = len(want) == len(got) and worst <= (1 if '-d16' in name else 0)
        print('%s %s' % ('same' if same else 'other', name))


if __name__ == '__main__':
    (make if sys.argv[1] == 'make' else check)(sys.argv[2])
