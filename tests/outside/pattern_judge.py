"""Judges flat patterns by the part in space.

Random parts go to the driver named on the command line. Each answer is held against
points, edges and areas worked out here in three dimensions: generators are cut by a
plane or by the run by bisection, surfaces are summed from small triangles, and braked
parts are bent up again from their blank. No formula of the program is repeated where
the space says the same.
"""
import math
import random
import subprocess
import sys

BRAKE, CYLINDER, ELBOW, SADDLE, CONE, BOX, SQUARE = range(7)
GIVEN, OUTSIDE, MEAN, INSIDE = range(4)
DEPTH = {GIVEN: 0, OUTSIDE: 0, MEAN: 0.5, INSIDE: 1}
SUMMED = 1e-4    # sums along sampled edges and areas, relative
EXACT = 1e-9     # single lengths, relative


class Case:
    def __init__(self, shape, **fields):
        self.shape, self.f = shape, fields
        self.fault, self.answers, self.tables, self.flats = None, {}, [], []

    def get(self, name, default=0):
        return self.f.get(name, default)

    def text(self):
        out = [str(self.shape)]
        for name, value in self.f.items():
            if name == 'bends':
                continue
            if name == 'flanges':
                for i, v in enumerate(value):
                    out += ['flange', repr(v)]
                    if i < len(value) - 1:
                        out += ['bend', repr(self.f['bends'][i])]
            else:
                out += [name, repr(value)]
        return ' '.join(out)


def length(v):
    return math.sqrt(sum(c * c for c in v))


def sub(a, b):
    return tuple(x - y for x, y in zip(a, b))


def cross(a, b):
    return (a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0])


def triangle(a, b, c):
    return length(cross(sub(b, a), sub(c, a))) / 2


def angle(u, v):
    return math.degrees(math.atan2(length(cross(u, v)), sum(x * y for x, y in zip(u, v))))


def path(points):
    return sum(length(sub(b, a)) for a, b in zip(points, points[1:]))


def shoelace(v):
    return abs(sum(a[0] * b[1] - a[1] * b[0] for a, b in zip(v, v[1:] + v[:1]))) / 2


class Judge:
    def __init__(self):
        self.passed, self.failed = 0, 0

    def near(self, case, what, got, want, rel):
        size = max(1.0, abs(want))
        if got is not None and abs(got - want) <= rel * size:
            self.passed += 1
        else:
            self.failed += 1
            print(f'failed: {what}: got {got}, space says {want}; {case.text()}')

    def good(self, case, what, ok):
        self.near(case, what, 1 if ok else 0, 1, 0)


def moved(case, line):
    """A diameter on a line of the thickness."""
    shift = (DEPTH[case.get('given')] - DEPTH[line]) * case.get('thickness_mm')
    return case.get('diameter_mm') + (0 if line == GIVEN else 2 * shift)


# ---- generators of a round, found by bisection ----

def bisect(f, low, high):
    """Where f turns from negative to positive."""
    for _ in range(64):
        mid = (low + high) / 2
        if f(mid) < 0:
            low = mid
        else:
            high = mid
    return (low + high) / 2


def round_check(j, case, wrap, along, area_out, name):
    """The outline has the area of the surface and an edge as long as in space. Lengths
    agree only where wrap and line are one diameter; areas are scaled by the wrap."""
    outline = case.flats[0]['lines'][0][1]
    r_line, r_wrap = moved(case, case.get('line')) / 2, wrap / math.tau
    j.near(case, name + ' area', shoelace(outline), area_out * r_wrap, SUMMED)
    if abs(r_line - r_wrap) < 1e-12:
        j.near(case, name + ' edge', path(outline[2:]), path(along), SUMMED)


def judge_elbow(j, case):
    n, turn = case.get('pieces'), case.get('angle_deg')
    half = math.radians(turn / (n - 1) / 2)
    r, wrap = moved(case, case.get('line')) / 2, math.pi * moved(case, case.get('wrap'))
    center = case.get('height_mm') or case.get('radius_mm') * math.tan(half)
    # The end piece stands on z = 0, its throat at +x; the miter plane leans up toward
    # the heel through the center line at `center`.
    normal = (math.sin(half), 0, math.cos(half))

    def cut(deg):
        t = math.radians(deg)
        p = (r * math.cos(t), r * math.sin(t))
        return bisect(lambda z: normal[0] * p[0] + normal[2] * (z - center), -1e5, 1e5)

    for deg, along, value, more in case.tables[0]:
        j.near(case, 'elbow ordinate', value, cut(deg), EXACT)
        j.near(case, 'elbow division', along, wrap * deg / 360, EXACT)
        j.near(case, 'elbow over throat', more, cut(deg) - cut(0), EXACT)
    m = 480
    ring = [(r * math.cos(math.tau * i / m), r * math.sin(math.tau * i / m), cut(360 * i / m))
            for i in range(m + 1)]
    area = sum((a[2] + b[2]) / 2 for a, b in zip(ring, ring[1:])) * math.tau / m
    round_check(j, case, wrap, ring, area, 'elbow')
    if n > 2:
        # Turned a whole circle in equal miters, the pieces' center lines close: each
        # middle piece is a side of the polygon about the circle of the center line.
        side = 2 * case.get('radius_mm') * math.tan(half)
        for deg, _, whole, part in case.tables[1]:
            t = math.radians(deg)
            # Length between two planes leaning either way through the ends of the side.
            z = bisect(lambda z: normal[0] * r * math.cos(t) + normal[2] * (z - side / 2),
                       -1e5, 1e5)
            j.near(case, 'gore', whole, 2 * z, EXACT)
            j.near(case, 'half gore', part, z, EXACT)


def judge_saddle(j, case):
    r, run = moved(case, case.get('line')) / 2, case.get('run_mm') / 2
    wrap, e = math.pi * moved(case, case.get('wrap')), case.get('offset_x_mm')
    b = math.radians(case.get('angle_deg'))
    axis, up, side = (math.cos(b), 0, math.sin(b)), (math.sin(b), 0, -math.cos(b)), (0, 1, 0)

    def point(deg, s):
        t = math.radians(deg)
        # The long side looks away from the lean.
        return tuple(s * axis[i] - r * math.cos(t) * up[i] + (r * math.sin(t) + e) * side[i]
                     for i in range(3))

    def cut(deg):
        # From the lowest point of the generator, outward, to the surface of the run.
        t = math.radians(deg)
        low = -r * math.cos(t) * math.cos(b) / math.sin(b)
        return bisect(lambda s: math.hypot(*point(deg, s)[1:]) - run, low, low + 1e5)

    m = 720
    s = [cut(360 * i / m) for i in range(m + 1)]
    far, near = max(s), min(s)
    for deg, along, reach, back in case.tables[0]:
        j.near(case, 'saddle division', along, wrap * deg / 360, EXACT)
        j.near(case, 'saddle spread', reach + back, case.answers['Depth of the cut'], EXACT)
        j.near(case, 'saddle steps', back - case.tables[0][0][3], cut(deg) - cut(0), 1e-8)
    # The sampled extremes lie within a step of the true ones.
    j.near(case, 'saddle depth', case.answers['Depth of the cut'], far - near, 1e-4)
    j.good(case, 'depth is an extreme', case.answers['Depth of the cut'] >= far - near - 1e-7)
    top = case.get('height_mm') or far + 50.8
    ring = [point(360 * i / m, s[i]) for i in range(m + 1)]
    area = sum(top - (a + c) / 2 for a, c in zip(s, s[1:])) * math.tau / m
    round_check(j, case, wrap, ring, area, 'saddle')


# ---- tapered parts ----

def judge_cone(j, case):
    shift = (DEPTH[case.get('given')] - DEPTH[case.get('line')]) * case.get('thickness_mm')
    if case.get('line') == GIVEN:
        shift = 0
    h, a, b = case.get('height_mm'), case.get('base_mm') / 2, case.get('top_mm') / 2
    slope = math.atan2(a - b, h)
    # The line lies `shift` square off the given surface, cut by the same two planes.
    a += shift / math.cos(slope)
    b = b + shift / math.cos(slope) if b else 0
    if b:
        slant = length((a - b, h))
    else:
        slant = a / math.sin(slope)
        h = slant * math.cos(slope)
    m = 600
    big, small = max(a, b), min(a, b)

    def at(r, z, i):
        return (r * math.cos(math.tau * i / m), r * math.sin(math.tau * i / m), z)

    area = 0
    for i in range(m):
        p, q, u, v = at(a, 0, i), at(a, 0, i + 1), at(b, h, i), at(b, h, i + 1)
        area += triangle(p, q, v) + triangle(p, v, u)
    outline = case.flats[0]['lines'][0][1]
    j.near(case, 'cone area', shoelace(outline), area, SUMMED)
    j.near(case, 'cone slant', case.answers['Slant height'], slant, EXACT)
    j.near(case, 'outer arc', case.answers['Outer arc'], math.tau * big, EXACT)
    j.near(case, 'inner arc', case.answers['Inner arc'], math.tau * small, EXACT)
    for kind, line in case.flats[0]['lines'][1:]:
        j.near(case, 'cone element', path(line), slant, EXACT)
    # Any two points of the base are as far apart along the flat rim as round the base.
    steps = int(case.get('divisions') or 12)
    arc = outline[:len(outline) // 2 if small else -1]
    j.near(case, 'outer edge', path(arc), math.tau * big * 1, SUMMED)
    j.near(case, 'division', case.answers['One division along the outer arc'],
           math.tau * big / steps, EXACT)


def judge_box(j, case):
    n, h = case.get('sides'), case.get('height_mm')
    shift = (DEPTH[case.get('given')] - DEPTH[case.get('line')]) * case.get('thickness_mm')
    shift = 0 if case.get('line') == GIVEN else shift
    a, b = case.get('base_mm') / 2, case.get('top_mm') / 2
    slope = math.atan2(a - b, h)
    a += shift / math.cos(slope)
    b = b + shift / math.cos(slope) if b else 0
    if not b:
        h = a / math.tan(slope)

    def corner(flat, z, i):
        r, t = flat / math.cos(math.pi / n), math.tau * (i + 0.5) / n
        return (r * math.cos(t), r * math.sin(t), z)

    low = [corner(a, 0, i) for i in range(n)]
    high = [corner(b, h, i) for i in range(n)]
    j.near(case, 'base edge', case.answers['Edge of a face at the base'],
           length(sub(low[0], low[1])), EXACT)
    j.near(case, 'top edge', case.answers['Edge of a face at the top'],
           length(sub(high[0], high[1])), EXACT)
    if b or not shift:
        j.near(case, 'seam', case.answers['Corner seam'], length(sub(low[0], high[0])), EXACT)

    def normal(i):
        return cross(sub(low[i], low[i - 1]), sub(high[i], low[i]))

    j.near(case, 'brake through', case.answers['Brake through'],
           angle(normal(0), normal(1)), EXACT)
    j.near(case, 'between faces', case.answers['Angle between faces'],
           180 - angle(normal(0), normal(1)), EXACT)
    j.near(case, 'slope', case.answers['Slope of a face'],
           min(angle(normal(0), (0, 0, 1)), 180 - angle(normal(0), (0, 0, 1))), 1e-8)
    faces = n // (case.get('pieces') or 1)
    area = faces * (triangle(low[0], low[1], high[1]) + triangle(low[0], high[1], high[0]))
    if b or not shift:
        j.near(case, 'box area', shoelace(case.flats[0]['lines'][0][1]), area, EXACT)
        for kind, line in case.flats[0]['lines'][1:]:
            j.near(case, 'box bend', path(line), length(sub(low[0], high[0])), EXACT)
    j.good(case, 'box bends', len(case.flats[0]['lines']) == faces)


def judge_square(j, case):
    t = (DEPTH[case.get('given')] - DEPTH[case.get('line')]) * case.get('thickness_mm')
    t = 0 if case.get('line') == GIVEN else t
    a = case.get('base_mm') + 2 * t
    b = (case.get('base2_mm') or case.get('base_mm')) + 2 * t
    r, h = case.get('top_mm') / 2 + t, case.get('height_mm')
    ox, oy, n = case.get('offset_x_mm'), case.get('offset_y_mm'), case.get('divisions') or 16
    corners = [(a / 2, b / 2, 0), (-a / 2, b / 2, 0), (-a / 2, -b / 2, 0), (a / 2, -b / 2, 0)]

    def rim(deg):
        return (ox + r * math.cos(math.radians(deg)), oy + r * math.sin(math.radians(deg)), h)

    for table in case.tables:
        for deg, along, true, plan in table:
            quarter = next(q for q in range(4)
                           if 90 * q - 1e-9 <= table[0][0] <= 90 * q + 1e-9)
            v = sub(rim(deg), corners[quarter])
            j.near(case, 'true length', true, length(v), EXACT)
            j.near(case, 'plan length', plan, math.hypot(*v[:2]), EXACT)
    m, area, bends = 250, 0, []
    for q in range(4):
        c, d = corners[q], corners[(q + 1) % 4]
        for i in range(m):
            area += triangle(c, rim(90 * q + 90 * i / m), rim(90 * q + 90 * (i + 1) / m))
        area += triangle(c, d, rim(90 * (q + 1)))
        bends += [length(sub(rim(90 * q + 360 * i / n), c)) for i in range(n // 4 + 1)]
    flats = case.flats
    sheets = case.get('pieces') == 2
    total = sum(shoelace(f['lines'][0][1]) * (f['count'] if sheets and len(flats) == 1 else 1)
                for f in flats)
    j.near(case, 'transition area', total, area, SUMMED)
    got = [path(line) for f in flats for kind, line in f['lines'][1:]]
    got = sorted(got * 2 if sheets and len(flats) == 1 else got)
    bends.sort()
    j.good(case, 'transition bends', len(got) == len(bends))
    for x, y in zip(got, bends):
        j.near(case, 'transition bend', x, y, EXACT)
    judge_unrolled(j, case, a, b, r, sheets)


def judge_unrolled(j, case, a, b, r, sheets):
    """The edges of the outline: base, seams and round, each as long as in space."""
    rounds, bases, seams = 0, 0, []
    for f in case.flats:
        v = f['lines'][0][1]
        corners = 2 if sheets else 4
        rim = v[corners + 2:]
        twice = f['count'] if sheets and len(case.flats) == 1 else 1
        rounds += twice * path(rim)
        bases += twice * path(v[:corners + 2])
        seams += [length(sub(v[corners + 1], rim[0])), length(sub(rim[-1], v[0]))]
    j.near(case, 'round end', rounds, math.tau * r, SUMMED)
    j.near(case, 'base', bases, 2 * (a + b), EXACT)
    if sheets and len(case.flats) == 2:
        j.near(case, 'seams', seams[0], seams[3], EXACT)
        j.near(case, 'seams', seams[1], seams[2], EXACT)
    if not sheets:
        j.near(case, 'seam', seams[0], seams[1], EXACT)


# ---- braked parts ----

def judge_brake(j, case):
    """Bends the blank up again and measures its flanges between mold lines."""
    t, r, k = case.get('thickness_mm'), case.get('radius_mm'), case.get('k')
    bends, flanges = case.get('bends'), case.get('flanges')
    total = case.answers['Blank length']
    lines = [case.answers[f'Bend line {i + 1} from the first edge'] for i in range(len(bends))]
    allow = [math.radians(d) * (r + k * t) for d in bends]
    starts = [0] + [x + w / 2 for x, w in zip(lines, allow)]
    ends = [x - w / 2 for x, w in zip(lines, allow)] + [total]
    reach = 0 if case.get('given') == INSIDE else t
    # Every bend the same way: outer lines lie `reach` from the inside line. The outer
    # mold point is where the lines of two flanges meet.
    x, y, heading, segs = 0.0, 0.0, 0.0, []
    for i in range(len(flanges)):
        run = ends[i] - starts[i]
        dx, dy = math.cos(heading), math.sin(heading)
        off = (dy * reach, -dx * reach)
        segs.append(((x + off[0], y + off[1]), (dx, dy), run))
        x, y = x + dx * run, y + dy * run
        if i < len(bends):
            cx, cy = x - dy * r, y + dx * r
            heading += math.radians(bends[i])
            x, y = cx + math.sin(heading) * r, cy - math.cos(heading) * r
    molds = [segs[0][0]]
    for (p, u, _), (q, v, _) in zip(segs, segs[1:]):
        d = u[0] * v[1] - u[1] * v[0]
        s = ((q[0] - p[0]) * v[1] - (q[1] - p[1]) * v[0]) / d
        molds.append((p[0] + u[0] * s, p[1] + u[1] * s))
    p, u, run = segs[-1]
    molds.append((p[0] + u[0] * run, p[1] + u[1] * run))
    for i, want in enumerate(flanges):
        j.near(case, 'flange bent up', length(sub(molds[i + 1], molds[i])), want, 1e-8)


def judge_cylinder(j, case):
    m = 100000
    r = moved(case, case.get('wrap')) / 2
    j.near(case, 'stretch-out', case.answers['Stretch-out'],
           m * 2 * r * math.sin(math.pi / m), 1e-8)


JUDGES = {BRAKE: judge_brake, CYLINDER: judge_cylinder, ELBOW: judge_elbow,
          SADDLE: judge_saddle, CONE: judge_cone, BOX: judge_box, SQUARE: judge_square}


# ---- cases ----

def random_case(rnd, shape):
    u = rnd.uniform
    lines = {'given': rnd.choice([GIVEN, OUTSIDE, INSIDE]),
             'line': rnd.choice([GIVEN, OUTSIDE, MEAN, INSIDE]), 'thickness_mm': u(0.5, 6)}
    if shape == BRAKE:
        n = rnd.randint(2, 6)
        return Case(shape, thickness_mm=u(0.5, 4), radius_mm=u(0.5, 6), k=u(0.3, 0.5),
                    given=rnd.choice([OUTSIDE, INSIDE]),
                    flanges=[u(60, 200) for _ in range(n)],
                    bends=[u(10, 130) for _ in range(n - 1)])
    if shape == CYLINDER:
        return Case(shape, diameter_mm=u(50, 900), height_mm=u(20, 600),
                    wrap=rnd.choice([GIVEN, OUTSIDE, MEAN, INSIDE]), given=lines['given'],
                    thickness_mm=lines['thickness_mm'])
    if shape == ELBOW:
        n = rnd.randint(2, 7)
        return Case(shape, diameter_mm=u(50, 400), pieces=n, angle_deg=u(20, 100),
                    radius_mm=u(500, 900), wrap=rnd.choice([GIVEN, OUTSIDE, MEAN]),
                    height_mm=rnd.choice([0, u(500, 700)]) if n == 2 else 0,
                    divisions=rnd.choice([0, 8, 12, 16, 24]), **lines)
    if shape == SADDLE:
        run = u(100, 400)
        d = u(30, run - 25)
        lines['thickness_mm'] = u(0.5, 5)
        offset = rnd.choice([0, u(0, (run - d) / 2 - 12)])
        return Case(shape, diameter_mm=d, run_mm=run, angle_deg=rnd.choice([90, u(30, 89)]),
                    offset_x_mm=offset, wrap=rnd.choice([GIVEN, OUTSIDE]),
                    divisions=rnd.choice([0, 16, 24]), **lines)
    if shape == CONE:
        return Case(shape, base_mm=u(60, 600), top_mm=rnd.choice([0, u(60, 600)]),
                    height_mm=u(40, 700), divisions=rnd.choice([0, 16, 24]), **lines)
    if shape == BOX:
        n = rnd.randint(3, 12)
        return Case(shape, sides=n, base_mm=u(60, 600),
                    top_mm=rnd.choice([0, u(60, 600), u(60, 600)]), height_mm=u(40, 700),
                    pieces=rnd.choice([k for k in range(1, n + 1) if n % k == 0]), **lines)
    a, b = u(200, 600), rnd.choice([0, u(200, 600)])
    return Case(shape, base_mm=a, base2_mm=b, top_mm=u(60, 500), height_mm=u(80, 600),
                offset_x_mm=rnd.choice([0, u(0, a / 3)]),
                offset_y_mm=rnd.choice([0, u(0, (b or a) / 3)]),
                divisions=rnd.choice([0, 12, 24, 32]), pieces=rnd.choice([1, 2]), **lines)


def read(case, lines):
    for line in lines:
        word, _, rest = line.partition(' ')
        if word == 'end':
            return
        if word == 'fault':
            case.fault = rest.strip()
        elif word == 'answer':
            value, _, name = rest.strip().partition(' ')
            case.answers[name] = float(value)
        elif word == 'table':
            case.tables.append([])
        elif word == 'row':
            case.tables[-1].append([float(x) for x in rest.split()])
        elif word == 'flat':
            count, w, h = rest.split()
            case.flats.append({'count': int(count), 'w': float(w), 'h': float(h), 'lines': []})
        elif word == 'line':
            kind, *v = rest.split()
            v = [float(x) for x in v]
            case.flats[-1]['lines'].append((int(kind), list(zip(v[::2], v[1::2]))))


def main():
    rnd = random.Random(20)
    cases = [random_case(rnd, shape) for shape in range(7) for _ in range(60)]
    out = subprocess.run([sys.argv[1]], input=''.join(c.text() + '\n' for c in cases),
                         capture_output=True, text=True, check=True).stdout
    lines = iter(out.splitlines())
    j = Judge()
    for case in cases:
        read(case, lines)
        if case.fault:
            j.good(case, case.fault, False)
            continue
        JUDGES[case.shape](j, case)
    print(f'{j.passed} passed, {j.failed} failed')
    return 1 if j.failed or j.passed < 5000 else 0


sys.exit(main())
