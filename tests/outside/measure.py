"""What stands on printed pages, measured back from the PDF by mutool, against sizes worked
out here from the Markdown by plain geometry. Within 0.1 mm and 0.1 degree.

measure.py PROGRAM OUT [joints | TEMPLATES ...]; ends with "N passed, N failed". TEMPLATES are
PDFs of 1:1 templates in other editions; with "joints" only the joints are measured."""
import math
import re
import subprocess
import sys

PT = 25.4 / 72
program, out = sys.argv[1:3]
joints_only = sys.argv[3:] == ["joints"]
editions = [] if joints_only else sys.argv[3:]
passed, failed = 0, 0


def check(good, words):
    global passed, failed
    if good:
        passed += 1
    else:
        failed += 1
        print("failed:", words)


def near(got, want, words, within=0.1):
    check(got is not None and abs(got - want) <= within,
          "%s: %s, not %.3f" % (words, "nothing" if got is None else "%.3f" % got, want))


def run(*words):
    return subprocess.run(words, capture_output=True, text=True, check=True).stdout


# ---- pages: strokes and words -------------------------------------------------------

class Page:
    """strokes: (width_pt, [subpath of (x, y) mm]); curves count by their ends."""

    def __init__(self, pdf, number, text):
        self.pdf, self.number, self.text, self.seen = pdf, number, text, None

    def strokes(self):
        if self.seen is None:
            self.seen = []
            self.trace()
        return self.seen

    def trace(self):
        path = None
        drawn = run("mutool", "trace", self.pdf, str(self.number))
        for m in re.finditer(r'<(/?)(\w+)([^<>]*)>', drawn):
            end, name, rest = m.groups()
            at = dict(re.findall(r'([\w]+)="([^"]*)"', rest))
            if name == "stroke_path":
                if end:
                    self.seen.append(path)
                    path = None
                else:
                    path = (float(at["linewidth"]), [])
            elif path and name == "moveto":
                path[1].append([(float(at["x"]) * PT, float(at["y"]) * PT)])
            elif path and name == "lineto":
                path[1][-1].append((float(at["x"]) * PT, float(at["y"]) * PT))
            elif path and name == "curveto":
                path[1][-1].append((float(at["x3"]) * PT, float(at["y3"]) * PT))
            elif path and name == "closepath":
                path[1][-1].append(path[1][-1][0])

    def paths(self, least_pt, most_pt=99.0):
        return [s for w, subs in self.strokes() if least_pt <= w <= most_pt for s in subs]


def pages(pdf):
    texts = run("pdftotext", "-layout", pdf, "-").split("\f")[:-1]
    return [Page(pdf, n + 1, text) for n, text in enumerate(texts)]


# ---- the source ---------------------------------------------------------------------

def text_of(assignment):
    with open("%s/assignments/%s.md" % (program, assignment), encoding="utf-8") as f:
        return f.read()


def inches(words):
    """Value of "1-1/2 in", "0.1345 in", "6 in" in inches."""
    m = re.match(r"\s*(?:(\d+)-)?(\d+)/(\d+)", words)
    if m:
        return int(m.group(1) or 0) + int(m.group(2)) / int(m.group(3))
    return float(re.match(r"\s*([\d.]+)", words).group(1))


def blocks(assignment, kind):
    """The drawing blocks of a kind as dictionaries; `name` is what follows the kind."""
    found = []
    for m in re.finditer(r"^```%s *(.*)\n((?:.*\n)*?)```" % kind, text_of(assignment), re.M):
        block = dict(line.split(": ", 1) for line in m.group(2).splitlines() if ": " in line)
        block["name"] = m.group(1)
        found.append(block)
    return found


# Manufacturers' standard gauge (steel), in.
GAUGE = {16: 0.0598, 11: 0.1196}


# ---- templates, 1:1 -----------------------------------------------------------------

def has_line(page, length_mm, upright):
    for path in page.paths(0.9, 1.1):
        if len(path) == 2:
            across, up = abs(path[1][0] - path[0][0]), abs(path[1][1] - path[0][1])
            if abs((up if upright else across) - length_mm) < 0.02 and min(up, across) < 0.01:
                return True
    return False


def crosses(page):
    """Middles of the ringed crosses."""
    rings = []
    for path in page.paths(0.95, 1.05):
        xs, ys = [p[0] for p in path], [p[1] for p in path]
        if len(path) > 4 and abs(max(xs) - min(xs) - 10 * PT) < 0.05 and \
                abs(max(ys) - min(ys) - 10 * PT) < 0.05:
            rings.append(((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2))
    return rings


def stitched(sheets):
    """Outline points of the tiles of one pattern, laid on each other by their crosses."""
    placed, points = {}, []
    for label in sorted(sheets):
        page = sheets[label]
        row, column = label[0], int(label[1:])
        shift = (0.0, 0.0)
        side, above = placed.get((row, column - 1)), placed.get((chr(ord(row) - 1), column))
        rings = crosses(page)
        if side:
            mine = min(rings)
            other = min((r for r in crosses(side[0]) if r[0] > 150), key=lambda r:
                        abs(r[1] - mine[1]))
            shift = (side[1][0] + other[0] - mine[0], side[1][1] + other[1] - mine[1])
        elif above:
            mine = max(rings, key=lambda r: (r[1], r[0]))
            other = min((r for r in crosses(above[0]) if r[1] < 60), key=lambda r:
                        abs(r[0] - mine[0]))
            shift = (above[1][0] + other[0] - mine[0], above[1][1] + other[1] - mine[1])
        placed[(row, column)] = (page, shift)
        for path in page.paths(1.2, 1.3):
            points += [(x + shift[0], y + shift[1]) for x, y in path]
    return points


def fit_circle(points):
    """Middle and radius by least squares (Kasa): a linear system of three unknowns."""
    mx = sum(p[0] for p in points) / len(points)
    my = sum(p[1] for p in points) / len(points)
    rows = [(x - mx, y - my) for x, y in points]
    a = sum(x * x for x, _ in rows)
    b = sum(x * y for x, y in rows)
    c = sum(y * y for _, y in rows)
    d = sum(x * (x * x + y * y) for x, y in rows) / 2
    e = sum(y * (x * x + y * y) for x, y in rows) / 2
    u, v = (d * c - e * b) / (a * c - b * b), (e * a - d * b) / (a * c - b * b)
    return (u + mx, v + my), math.sqrt(u * u + v * v + (a + c) / len(rows))


def template_brake(page):
    block = blocks("FB-02", "pattern")[0]
    flanges = [inches(f) for f in block["flanges"].replace(" in", "").split(", ")]
    t, r, k = GAUGE[11], inches(block["radius"]), float(block["K"])
    less = 2 * (r + t) - math.pi / 2 * (r + k * t)
    blank = (sum(flanges) - less * (len(flanges) - 1)) * 25.4
    xs = [p[0] for path in page.paths(1.2, 1.3) for p in path]
    ys = [p[1] for path in page.paths(1.2, 1.3) for p in path]
    near(max(xs) - min(xs), blank, "FB-02, blank")
    near(max(ys) - min(ys), inches(block["width"]) * 25.4, "FB-02, width")
    lines = sorted(p[0][0] - min(xs) for p in page.paths(1.05, 1.15))
    # The middle of each bend: outside size less half of what the bends take.
    first = (flanges[0] - less / 2) * 25.4
    near(lines[0] if lines else None, first, "FB-02, first bend line")
    near(lines[1] if len(lines) > 1 else None, first + (flanges[1] - less) * 25.4,
         "FB-02, second bend line")


def template_branch(page, run_in, branch_in, angle_deg, name):
    """Reach of the cut at each outline point: the branch (r) on the run (R), both outside,
    angle A between center lines: z = (sqrt(R^2 - (r sin u)^2) - r cos u cos A) / sin A,
    u from the heel or throat."""
    points = [p for path in page.paths(1.2, 1.3) for p in path]
    left = min(p[0] for p in points)
    top, foot = max(p[1] for p in points), min(p[1] for p in points)
    r, big, a = branch_in / 2 * 25.4, run_in / 2 * 25.4, math.radians(angle_deg)
    near(top - foot, 2 * math.pi * r, name + ", wrap")

    def reach(u):
        return (math.sqrt(big ** 2 - (r * math.sin(u)) ** 2) - r * math.cos(u) * math.cos(a)) \
            / math.sin(a)

    edge = [p for p in points if p[0] > left + 1]
    length = [p[0] - left for p in edge]
    turn = [(p[1] - foot) / r for p in edge]
    best = None
    for start in (0, math.pi / 2, math.pi, 3 * math.pi / 2):
        z = [reach(u + start) for u in turn]
        # The longest side of the branch ends where the run is reached last.
        whole = [n + v for n, v in zip(length, z)]
        gap = max(whole) - min(whole)
        best = gap if best is None else min(best, gap)
    check(len(edge) > 50, name + ": too few points")
    near(best, 0, name + ", ordinates", 0.2)


def templates(pdf):
    sheets, mark = {}, None
    for page in pages(pdf):
        check(has_line(page, 100, False), "no 100 mm across on a template")
        check(has_line(page, 4 * 25.4, True) or has_line(page, 4 * 25.4, False),
              "no 4 in on a template")
        name = page.text.split()[0]
        part = page.text.split("\n")[1].split("   ")[0]
        label = re.search(r"^Sheet ([A-Z]\d+) of", page.text, re.M)
        if label:
            sheets.setdefault((name, part), {})[label.group(1)] = page
        else:
            sheets[(name, part)] = page
    nps = {"NPS 4 schedule 40": 4.5, "NPS 2 schedule 40": 2.375}
    for (name, part), page in sheets.items():
        if name == "FB-02":
            template_brake(page)
        elif name == "PD-05":
            wanted = "lateral" if "lateral" in part else "saddle"
            block = next(b for b in blocks("PD-05", "pattern") if b["name"] == wanted)
            template_branch(page, nps[block["run"]], nps[block["branch"]],
                            float(block["angle"].split()[0]), "PD-05 " + wanted)
        elif name == "PD-02":
            block = blocks("PD-02", "pattern")[0]
            base, top, height = (inches(block[k]) for k in ("base", "top", "height"))
            slant = math.hypot(height, (base - top) / 2)
            outer = slant * base / (base - top) * 25.4
            points = stitched(page)
            middle, radius = fit_arc(points, outer)
            near(radius, outer, "PD-02, outer radius")
            inner = [math.dist(p, middle) for p in points]
            near(min(inner), outer - slant * 25.4, "PD-02, inner radius", 0.2)
        elif name == "PD-01" and "end piece" in part:
            block = blocks("PD-01", "pattern")[0]
            d, h = inches(block["outside diameter"]), inches(block["height"])
            points = stitched(page)
            xs, ys = [p[0] for p in points], [p[1] for p in points]
            near(max(xs) - min(xs), math.pi * (d - GAUGE[16]) * 25.4, "PD-01, stretch-out")
            near(max(ys) - min(ys), (h + d / 2) * 25.4, "PD-01, heel")


def fit_arc(points, about_mm):
    """The circle through the points farthest from the rest: fit, drop those off it, fit."""
    kept = points
    for within in (20, 5, 1, 0.2):
        middle, radius = best_circle(kept, about_mm)
        kept = [p for p in points if abs(math.dist(p, middle) - radius) < within]
    return fit_circle(kept)


def best_circle(points, about_mm):
    """Through three points of the outline so that most others lie on it."""
    best = (0, None)
    step = max(1, len(points) // 40)
    some = points[::step]
    for i in range(0, len(some) - 2):
        for j in range(i + 1, len(some) - 1):
            k = (i + j) // 2 if j - i > 2 else j + 1
            try:
                middle, radius = fit_circle([some[i], some[j], some[k]])
            except ZeroDivisionError:
                continue
            if abs(radius - about_mm) > about_mm * 0.2:
                continue
            votes = sum(abs(math.dist(p, middle) - radius) < 0.2 for p in some)
            if votes > best[0]:
                best = (votes, (middle, radius))
    return best[1]


# ---- joint sections, to the scale that stands beside them -----------------------------

def edges(page, least_pt):
    """Straight pieces of strokes, upper end (greater y) last."""
    found = []
    for path in page.paths(least_pt):
        for a, b in zip(path, path[1:]):
            if math.dist(a, b) > 0.3:
                found.append((a, b) if a[1] <= b[1] else (b, a))
    return found


def has_groove(page, scale, gap_mm, half_deg):
    """Two edges leaning half_deg to either side whose lower ends are the gap apart."""
    lean = [(math.degrees(math.atan2(b[0] - a[0], b[1] - a[1])), a)
            for a, b in edges(page, 1.4)]
    left = [a for deg, a in lean if abs(deg + half_deg) < 0.1]
    right = [a for deg, a in lean if abs(deg - half_deg) < 0.1]
    return any(abs(r[1] - l[1]) < 0.1 and abs(r[0] - l[0] - gap_mm * scale) < 0.1
               for l in left for r in right)


def has_legs(page, scale, up_mm, along_mm):
    """An upright and a level edge of the heavy weld outline, each as long as its leg, that
    meet."""
    level, upright = [], []
    for a, b in edges(page, 1.9):
        if abs(a[1] - b[1]) < 0.05 and abs(math.dist(a, b) - along_mm * scale) < 0.1:
            level.append((a, b))
        elif abs(a[0] - b[0]) < 0.05 and abs(math.dist(a, b) - up_mm * scale) < 0.1:
            upright.append((a, b))
    return any(math.dist(p, q) < 0.1 for one in level for two in upright
               for p in one for q in two)


def has_bevel(page, scale, deg, height_mm):
    """An edge of an outline that leans so far and is so high."""
    return any(abs(abs(math.degrees(math.atan2(b[0] - a[0], b[1] - a[1]))) - deg) < 0.1 and
               abs(b[1] - a[1] - height_mm * scale) < 0.1 for a, b in edges(page, 1.4))


def has_kerf(page, scale, thick_mm, kerf_mm):
    """Two upright edges as high as the plate, the kerf apart."""
    walls = [a for a, b in edges(page, 1.4) if abs(a[0] - b[0]) < 0.02 and
             abs(b[1] - a[1] - thick_mm * scale) < 0.1]
    return any(abs(abs(a[0] - b[0]) - kerf_mm * scale) < 0.1 and abs(a[1] - b[1]) < 0.05
               for a in walls for b in walls)


def has_cut(page, scale, length_mm, rise_deg):
    """A line of 1.25 pt of that length that rises so."""
    for path in page.paths(1.2, 1.3):
        if len(path) == 2 and abs(math.dist(*path) - length_mm * scale) < 0.1:
            (x, y), (u, v) = path
            turn = math.degrees(math.atan2(v - y, u - x)) % 180
            if min(abs(turn - rise_deg % 180), 180 - abs(turn - rise_deg % 180)) < 0.1:
                return True
    return False


def has_row(page, scale, count, size_mm, spacing_mm):
    """That many round openings of the heavy line, size and spacing as asked."""
    found = []
    for path in page.paths(1.9):
        xs, ys = [p[0] for p in path], [p[1] for p in path]
        if len(path) > 4 and abs(max(xs) - min(xs) - size_mm * scale) < 0.1 and \
                abs(max(ys) - min(ys) - size_mm * scale) < 0.1:
            found.append((min(xs), min(ys)))
    found.sort()
    return len(found) == count and all(
        abs(b[0] - a[0] - spacing_mm * scale) < 0.1 for a, b in zip(found, found[1:]))


def scales(page):
    """Those printed on a page; none: nothing on it is to scale."""
    return [int(a) / int(b) for a, b in re.findall(r"to scale (\d+):(\d+)", page.text)] + \
        [1] * ("full size" in page.text)


def assignment_pages(packet):
    """Pages of each assignment: its id stands alone at the head of the page."""
    found = {}
    for page in packet:
        head = re.match(r"\s*([A-Z]{2}-\d+)\s", page.text)
        if head:
            found.setdefault(head.group(1), []).append(page)
    return found


def is_single(size):
    return size is not None and " to " not in size


def joints():
    grooves = fillets = cuts = 0
    for quarter in range(1, 7):
        packet = assignment_pages(pages("%s/q%d/packet.pdf" % (out, quarter)))
        for name, mine in packet.items():
            for block in blocks(name, "joint"):
                kind = block.get("joint", "")
                told = "%s %s %s" % (name, kind, block["name"])
                if kind in ("single-V", "pipe butt") and is_single(block.get("gap")):
                    half = float(re.match(r"[\d.]+", block["angle"]).group(0)) / 2 \
                        if "angle" in block else degrees(block.get("bevel"))
                    if half is None:
                        continue
                    grooves += 1
                    check(any(has_groove(p, s, inches(block["gap"]) * 25.4, half)
                              for p in mine for s in scales(p)), told + ": no such groove")
                elif kind in ("tee", "lap") and is_single(block.get("leg")):
                    fillets += 1
                    legs = [inches(leg) * 25.4 for leg in block["leg"].split(" x ")]
                    check(any(has_legs(p, s, legs[0], legs[-1])
                              for p in mine for s in scales(p)), told + ": no such fillet")
                elif kind in ("bevel cut", "cut edge"):
                    cuts += 1
                    check(any(is_cut(p, s, name, block) for p in mine for s in scales(p)),
                          told + ": no such cut")
                elif "plug weld" in block:
                    check(any(has_row(p, s, int(block["count"]),
                                      inches(block["plug weld"]) * 25.4,
                                      inches(block["spacing"]) * 25.4)
                              for p in mine for s in scales(p)), told + ": no such row")
            cuts += cut_lines(name, mine)
    check(cuts > 10, "%d cuts" % cuts)
    check(grooves > 10 and fillets > 20, "%d grooves, %d fillets" % (grooves, fillets))


def thickness_of(assignment, block):
    """In mm: the block's, or the fact's; of pipe from schedule 40 of NPS 6."""
    words = block.get("thickness") or \
        re.search(r"\*\*Thickness:\*\* (.*)", text_of(assignment)).group(1)
    return 0.280 * 25.4 if "NPS 6" in words else inches(words) * 25.4


def is_cut(page, scale, name, block):
    thick = thickness_of(name, block)
    if block["joint"] == "cut edge":
        return has_kerf(page, scale, thick, inches(block["kerf"]) * 25.4)
    land = inches(block["land"]) * 25.4 if "land" in block else 0
    return has_bevel(page, scale, inches(block["bevel"]), thick - land)


def cut_lines(name, mine):
    """Checks every cut of the plate blocks; returns how many there are."""
    lines = 0
    for m in re.finditer(r"^cut: ([\d/-]+), ([\d/-]+) to ([\d/-]+), ([\d/-]+) in", text_of(name),
                         re.M):
        x, y, u, v = (inches(word) * 25.4 for word in m.groups())
        lines += 1
        # Pages are turned over: what rises falls in their coordinates or not.
        turn = math.degrees(math.atan2(v - y, u - x))
        check(any(has_cut(p, s, math.hypot(u - x, v - y), way * turn)
                  for p in mine for s in scales(p) for way in (1, -1)),
              "%s: no %s" % (name, m.group(0)))
    return lines


def degrees(words):
    """Value of "37-1/2 deg"."""
    return inches(words) if words else None


for pdf in [] if joints_only else [out + "/instructor/templates.pdf"] + editions:
    templates(pdf)
joints()
print("%d passed, %d failed" % (passed, failed))
sys.exit(failed > 0 or passed < (60 if joints_only else 100))
