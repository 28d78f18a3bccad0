# src/tools/words.awk - lists the texts that C sources give to the lookup of words.
#
#   LC_ALL=C awk -f src/tools/words.awk src/*/*.c src/*/*.h
#
# One text a line, as the program sees it: "FILE<tab>TEXT". The lookups and which of
# their arguments is the English are in `argument` below. A lookup whose argument is no
# literal prints "FILE<tab><tab>CALL", which tests/words.sh refuses: what is found in a
# table of words goes through word_str or edition_word and is marked where it stands.

BEGIN {
	argument["WORD"] = 1
	argument["word"] = 2
	argument["sh_word"] = 2
	argument["sheet_part_heading"] = 4
	argument["sh_format"] = 2
	argument["word_format"] = 3
	argument["word_addf"] = 3
}

# The length of the literal at the start of s, quotes included.
function literal_length(s,    i)
{
	for (i = 2; i <= length(s); i++) {
		if (substr(s, i, 1) == "\\")
			i++
		else if (substr(s, i, 1) == "\"")
			return i
	}
	return length(s)
}

function plain(s)
{
	gsub(/\\"/, "\"", s)
	gsub(/\\\\/, "\\", s)
	return s
}

# What follows the n-1st comma of the outermost call at the start of s.
function nth_argument(s, n,    depth, c)
{
	while (n > 1 && s != "") {
		c = substr(s, 1, 1)
		if (c == "\"") {
			s = substr(s, literal_length(s) + 1)
			continue
		}
		if (c == "(")
			depth++
		if (c == ")" && --depth < 0)
			return ""
		if (c == "," && !depth)
			n--
		s = substr(s, 2)
	}
	sub(/^[ \t\n]+/, "", s)
	return s
}

function tell(file, name, rest,    s, text, k, any)
{
	s = nth_argument(rest, argument[name])
	while (substr(s, 1, 1) == "\"") {
		k = literal_length(s)
		text = text substr(s, 2, k - 2)
		s = substr(s, k + 1)
		sub(/^[ \t\n]+/, "", s)
		any = 1
	}
	if (any)
		print file "\t" plain(text)
	else if (s !~ /^(const char \*)?english[,)]/ && s !~ /^literal\)/)
		print file "\t\t" name "(" substr(rest, 1, index(rest "\n", "\n") - 1)
}

# Comments go, so that they may show how a lookup is written.
function without_comments(s,    out, a, b, q)
{
	while (match(s, /\/\*|"/)) {
		if (substr(s, RSTART, 1) == "\"") {
			q = literal_length(substr(s, RSTART))
			out = out substr(s, 1, RSTART + q - 1)
			s = substr(s, RSTART + q)
			continue
		}
		out = out substr(s, 1, RSTART - 1)
		s = substr(s, RSTART + 2)
		a = index(s, "*/")
		s = a ? substr(s, a + 2) : ""
	}
	return out s
}

function scan(file, s,    name, rest)
{
	s = without_comments(s)
	while (match(s, /[A-Za-z_][A-Za-z0-9_]*\(|"/)) {
		if (substr(s, RSTART, 1) == "\"") {
			s = substr(s, RSTART + literal_length(substr(s, RSTART)))
			continue
		}
		name = substr(s, RSTART, RLENGTH - 1)
		rest = substr(s, RSTART + RLENGTH)
		if (name in argument)
			tell(file, name, rest)
		s = rest
	}
}

FNR == 1 {
	if (whole != "")
		scan(last, whole)
	whole = ""
	last = FILENAME
}

/'"'/ { gsub(/'"'/, "' '") }

{ whole = whole $0 "\n" }

END { scan(last, whole) }
