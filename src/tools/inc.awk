# src/tools/inc.awk - turns a table of templates into rows of C.
#
#   LC_ALL=C awk -f src/tools/csv.awk -f src/tools/inc.awk templates/tables/pipe.csv \
#       > src/units/pipe.inc
#
# The csv names the columns to take, and how, in a line "#inc name:text name:number
# name:word". A word is copied with a prefix, as enumerators are: name:word:PREFIX_.
# A blank number is 0. "#sort name" puts the rows in the order of the bytes of that
# column. Other comment lines stay in the csv.

# A long text becomes several literals, each within a line of 90 columns.
function literal(s,    cut, out)
{
	gsub(/\\/, "\\\\", s)
	out = ""
	while (length(s) > 68) {
		cut = 68
		while (cut > 1 && substr(s, cut, 1) != " ")
			cut--
		if (cut == 1)
			cut = 68
		out = out "\"" substr(s, 1, cut) "\"\n\t    "
		s = substr(s, cut + 1)
	}
	return out "\"" s "\""
}

function value(s, how, prefix)
{
	if (how == "text")
		return literal(s)
	if (how == "number")
		return s == "" ? "0" : s
	s = toupper(s)
	gsub(/[^A-Z0-9]/, "_", s)
	return prefix s
}

# The width of the last line of s; a tab counts 8.
function last_width(s,    n, parts)
{
	n = split(s, parts, "\n")
	gsub(/\t/, "        ", parts[n])
	return length(parts[n])
}

function add(row, cell,    first, parts)
{
	split(cell, parts, "\n")
	first = parts[1]
	if (last_width(row) + length(first) + 4 > 90)
		return row "\n\t    " cell
	return row " " cell
}

BEGIN { columns = 0 }

/^#inc / {
	columns = split(substr($0, 6), want, " ")
	next
}

/^#sort / {
	sorted = substr($0, 7)
	next
}

/^#/ || /^$/ { next }

!header {
	header = split_csv($0, names)
	for (i = 1; i <= header; i++)
		at[names[i]] = i
	printf "/* Made by src/tools/inc.awk from %s. */\n", FILENAME
	next
}

{
	fields = split_csv($0, cell)
	if (fields != header) {
		printf "%s:%d: %d fields, not %d\n", FILENAME, FNR, fields, header > "/dev/stderr"
		failed = 1
		exit 1
	}
	row = "\t{"
	for (i = 1; i <= columns; i++) {
		split(want[i] ":::", how, ":")
		if (!(how[1] in at)) {
			printf "%s: no column %s\n", FILENAME, how[1] > "/dev/stderr"
			failed = 1
			exit 1
		}
		row = add(row, value(cell[at[how[1]]], how[2], how[3]) (i < columns ? "," : ""))
	}
	if (sorted == "") {
		print row " },"
		next
	}
	for (i = ++rows; i > 1 && key[i - 1] "" > cell[at[sorted]] ""; i--) {
		key[i] = key[i - 1]
		kept[i] = kept[i - 1]
	}
	key[i] = cell[at[sorted]]
	kept[i] = row " },"
}

END {
	for (i = 1; i <= rows && !failed; i++)
		print kept[i]
}
