# Makes questions for sets_driver out of a table of published limits, each with the answer
# that the table gives, worked out here: question, tab, form, value, short, label.
# -v what=iso or d1. Fields of the tables may be quoted.

function fields(s, v,   n, q, c, i, part)
{
	n = 0; q = 0; part = ""
	for (i = 1; i <= length(s); i++) {
		c = substr(s, i, 1)
		if (c == "\"") q = !q
		else if (c == "," && !q) { v[++n] = part; part = "" }
		else part = part c
	}
	v[++n] = part
	return n
}

function ask(set, test, weld, t, a, b, rw, open, name, form, value, short, label)
{
	print set, test, weld, t, a, b, rw, open, name, form, value, short, label
}

# ---- ISO 5817 ----

# One term or a sum of two: "0.2*t", "1+0.25*b", "2", with t, s, a, b.
function term(s, t, a, b,   v, k)
{
	k = split(s, v, "*")
	if (k == 2)
		return v[1] * (v[2] == "a" ? a : v[2] == "b" ? b : t)
	if (s ~ /^[a-z]$/)
		return s == "a" ? a : s == "b" ? b : t
	return s + 0
}

function work(s, t, a, b,   v, k, i, sum, most, m)
{
	sub(/^short: /, "", s)
	sub(/^[a-z]+[<>]=/, "", s)
	most = -1
	if (match(s, / max .*/)) {
		most = substr(s, RSTART + 5) + 0
		s = substr(s, 1, RSTART - 1)
	}
	k = split(s, v, "+")
	for (i = 1; i <= k; i++)
		sum += term(v[i], t, a, b)
	return most >= 0 && most < sum ? most : sum
}

function sizes(range)
{
	if (range == "0.5-3") return "0.5 1.5 3"
	return range == ">3" ? "3.01 6 12.7 40" : "0.5 3 6 25.4"
}

# A row of the table for one of our limits, in all levels and at sizes inside its range.
function iso(limit, test, weld, open, cell,   l, i, k, t, a, b, v, form, value)
{
	for (l = 4; l <= 6; l++) {
		cell = row[l]
		k = split(sizes(row[3]), v, " ")
		for (i = 1; i <= k; i++) {
			t = v[i]; a = 0.7 * t + 1; b = 1.5 * t + 2
			form = "words"; value = 0
			if (cell == "not permitted") form = "none"
			else if (cell ~ /<=/) { form = "most"; value = work(cell, t, a, b) }
			else if (cell ~ />=/) { form = "least"; value = work(cell, t, a, b) }
			ask("ISO 5817-2014 " substr("DCB", l - 3, 1), test, weld, t, a, b, b, open,
			    limit, form, value, cell ~ /^short/, row[1] " " row[2] " " row[3] " t " t)
		}
	}
}

function iso_row(   n)
{
	n = row[1]
	if (n == 0 && row[2] !~ /^multiple/) return 0
	if (n == 100) { iso("Cracks", "visual", "F", 0); iso("Cracks", "visual", "G", 0) }
	else if (n == 104) iso("Crater cracks", "visual", "F", 0)
	else if (n == 2017) iso("Surface pore", "visual", row[2] ~ /fillet/ ? "F" : "G", 0)
	else if (n == 2025) iso("Crater pipe", "visual", "G", 0)
	else if (n == 401 && row[2] !~ /internal/) iso("Lack of fusion", "visual", "G", 0)
	else if (n == 4021) iso("Missing penetration", "visual", "G", 1)
	else if (n == 5011) { iso("Undercut", "visual", "F", 0); iso("Undercut", "visual", "G", 0) }
	else if (n == 5013) iso("Root undercut", "visual", "G", 1)
	else if (n == 502) iso("Reinforcement", "visual", "G", 0)
	else if (n == 503) iso("Convexity", "visual", "F", 0)
	else if (n == 504) iso("Melt-through", "visual", "G", 1)
	else if (n == 505) iso("Toe angle", "visual", row[2] ~ /fillet/ ? "F" : "G", 0)
	else if (n == 506) iso("Overlap", "visual", "F", 0)
	else if (n == 511) iso("Underfill", "visual", "G", 0)
	else if (n == 510) iso("Burn-through", "visual", "G", 0)
	else if (n == 512) iso("Difference of legs", "visual", "F", 0)
	else if (n == 515) iso("Hollow root", "visual", "G", 1)
	else if (n == 516) iso("Root porosity", "visual", "G", 1)
	else if (n == 517) iso("Poor restart", "visual", "F", 0)
	else if (n == 5213) iso("Throat too thin", "visual", "F", 0)
	else if (n == 5214) iso("Throat too thick", "visual", "F", 0)
	else if (n == 601) iso("Stray arc", "visual", "F", 0)
	else if (n == 602) iso("Spatter", "visual", "F", 0)
	else if (n == 2011 && row[2] ~ /^single/) iso("Any one pore", "macro", row[2] ~ /fillet/ ? "F" : "G", 0)
	else if (n == 402) iso("Missing root penetration", "macro", "F", 0)
	else if (n == 507) iso("Misalignment of plates", "visual", "G", 0)
	else if (n == 5072) iso("Misalignment of pipes", "visual", "G", 0)
	else if (n == 617) iso("Gap at the root", "visual", "F", 0)
	else return 0
	return 1
}

# Two figures in one cell: "h<=0.4*s max 4; l<=s max 75", "h<=0.4*t or 0.25*a".
function iso_pair(   l, w, first, second, v)
{
	for (l = 4; l <= 6; l++)
		cells[l] = row[l]
	for (w = 1; w <= 2; w++) {
		for (l = 4; l <= 6; l++) {
			split(cells[l], v, row[1] == 301 ? "; " : " or ")
			row[l] = w == 1 || row[1] == 301 ? v[w] : "h<=" v[w]
		}
		if (row[1] == 301)
			iso("Slag or other inclusion, " (w == 1 ? "height" : "length"), "macro", "G", 0)
		else
			iso("Heights of all flaws added", "macro", w == 1 ? "G" : "F", 0)
	}
}

# ---- the AWS codes and ASME IX ----

# One figure of the table for every set that it speaks of.
function d1(sets, weld, t, leg, b, open, limit, form,   v, k, i)
{
	k = split(sets, v, "|")
	for (i = 1; i <= k; i++)
		ask(v[i], "visual", weld, t, leg * 25.4 / sqrt(2), b * 25.4, 0, open, limit, form,
		    form == "none" ? 0 : row[6] * 25.4, 0, row[1] " " row[2] " " row[3] " " row[5])
}

function years(first, last, loading,   y, i, s)
{
	split("2000 2010 2015 2020", y, " ")
	for (i = 1; i <= 4; i++)
		if (y[i] >= first && y[i] <= last)
			s = s (s ? "|" : "") "D1.1-" y[i] " " loading
	return s
}

function both(first, last)
{
	return years(first, last, "static") "|" years(first, last, "cyclic")
}

function d11_row(   c, t)
{
	c = row[2]
	if (c == "crack") {
		d1(both(2000, 2020) "|" years(2000, 2020, "welder test"), "F", 9.525, 0.25, 0, 0, "Cracks", "none")
		d1(both(2000, 2020), "G", 9.525, 0, 0, 0, "Cracks", "none")
	} else if (c == "undersize_fillet") {
		split(row[5] ~ /^L<=/ ? "0.125 0.1875" : row[5] ~ /^L=/ ? "0.25" : "0.3125 0.5 1", t, " ")
		for (i in t)
			d1(both(2000, 2020), "F", 12.7, t[i], 0, 0, "Leg short of size", "most")
	} else if (c == "undercut" && row[3] == "static") {
		split(row[5] == "t<1" ? "3 25.39" : "25.4 51", t, " ")
		for (i in t)
			d1(years(2000, 2020, "static"), "G", t[i], 0, 0, 0, "Undercut", "most")
	} else if (c == "undercut_local")
		d1(years(2000, 2020, "static"), "F", 12.7, 0.25, 0, 0, "Undercut, short lengths", "most")
	else if (c == "undercut" && row[3] == "cyclic")
		d1(years(2000, 2020, "cyclic"), "F", 12.7, 0.25, 0, 0,
		    row[6] == 0.01 ? "Undercut across the pull" : "Undercut", "most")
	else if (c == "piping_porosity")
		d1(years(2000, 2020, row[3]), "G", 12.7, 0, 0, 0, "Piping porosity", "none")
	else if (c == "piping_porosity_dia")
		d1(years(2000, 2020, "cyclic"), "F", 12.7, 0.25, 0, 0, "Piping pore, width", "most")
	else if (c == "convexity") {
		split(row[5] ~ /^W<=/ ? "0.2 0.3125" : row[5] ~ /^W>=/ ? "1 1.5" : "0.313 0.999", t, " ")
		for (i in t)
			d1(both(2000, 2020) "|" years(2000, 2020, "welder test"), "F", 25.4, 0.5, t[i], 0,
			    "Convexity", "most")
	} else if (c == "reinforcement") {
		split(row[5] == "" ? "6 60" : row[5] == "t<=1" ? "6 25.4" : row[5] == "t>2" ? "51 100" : "25.5 50.8", t, " ")
		for (i in t)
			d1(row[5] == "" ? both(2000, 2000) : both(2010, 2020), "G", t[i], 0, 0, 0, "Reinforcement", "most")
	} else if (c == "underfill")
		d1(both(2000, 2020), "G", 12.7, 0, 0, 0, "Underfill", "none")
	else if (c == "test_weld_reinforcement")
		d1(years(2000, 2020, "welder test"), "G", 60, 0, 0, 0, "Reinforcement", "most")
	else if (c == "test_weld_undercut")
		d1(years(2000, 2020, "welder test"), "G", 12.7, 0, 0, 0, "Undercut", "most")
	else if (c == "root_concavity")
		d1(years(2000, 2020, "welder test"), "G", 12.7, 0, 0, 1, "Hollow root", "most")
	else if (c == "melt_through")
		d1(years(2000, 2020, "welder test"), "G", 12.7, 0, 0, 1, "Melt-through", "most")
	else
		return 0
	return 1
}

function other_row(   c, t)
{
	c = row[2]
	if (row[1] == "AWS D1.6") {
		if (c == "undersize_fillet") d1("D1.6-2017 static", "F", 6, 0.25, 0, 0, "Leg short of size", "most")
		else if (c == "undercut") {
			split(row[5] == "t<0.1875" ? "1.6 4.76" : "4.7625 25.39", t, " ")
			for (i in t) d1("D1.6-2017 static", "F", t[i], 0.25, 0, 0, "Undercut", "most")
		} else if (c == "undercut_local") d1("D1.6-2017 static", "F", 6, 0.25, 0, 0, "Undercut, short lengths", "most")
		else return 0
	} else if (row[1] == "AWS D1.2") {
		if (c == "crack") d1("D1.2-2014 static|D1.2-2014 cyclic", "F", 6, 0.25, 0, 0, "Cracks", "none")
		else if (c == "undersize_fillet") d1("D1.2-2014 static|D1.2-2014 cyclic", "F", 6, 0.25, 0, 0, "Leg short of size", "most")
		else if (c == "undercut") d1(row[3] == "static" ? "D1.2-2014 static" : "D1.2-2014 cyclic", "F", 6, 0.25, 0, 0,
		    row[3] == "static" ? "Undercut" : "Undercut across the pull", "most")
		else if (c == "reinforcement") d1("D1.2-2014 static|D1.2-2014 cyclic", "G", 9.525, 0, 0, 0, "Reinforcement", "most")
		else return 0
	} else
		return 0
	return 1
}

BEGIN { OFS = "\t" }
/^#/ { next }
!head++ { next }
{
	split("", row)
	fields($0, row)
	if (what == "iso" && (row[1] == 301 || row[2] ~ /^multiple/)) { iso_pair(); used++ }
	else if (what == "iso" ? iso_row() : row[1] == "AWS D1.1" ? d11_row() : other_row()) used++
	else print row[1], row[2], row[3] > left
}
END { print used + 0 > count }
