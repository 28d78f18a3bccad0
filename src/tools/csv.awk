# src/tools/csv.awk - the fields of a line of a table, for the other scripts here (-f first).

function split_csv(line, out,    n, field, c, i, quoted)
{
	n = 0
	field = ""
	quoted = 0
	for (i = 1; i <= length(line); i++) {
		c = substr(line, i, 1)
		if (c == "\"")
			quoted = !quoted
		else if (c == "," && !quoted) {
			out[++n] = field
			field = ""
		} else
			field = field c
	}
	out[++n] = field
	return n
}
