# src/tools/words_csv.awk - a table of words as tests/tables.sh wants it.
#
#   awk -v dir=DIR -f src/tools/csv.awk -f src/tools/words_csv.awk templates/words/es.csv
#
# Writes the English of each row into DIR/source, DIR/model, DIR/standard or DIR/program,
# by where it comes from, and prints the rows whose places for values differ between the languages.

# "%u %.*s" of "page %u of %.*s".
function places(s,    out)
{
	gsub(/%%/, "", s)
	while (match(s, /%[0-9.*]*z?[a-z]/)) {
		out = out " " substr(s, RSTART, RLENGTH)
		s = substr(s, RSTART + RLENGTH)
	}
	return out
}

BEGIN {
	printf "" > (dir "/source")
	printf "" > (dir "/model")
	printf "" > (dir "/standard")
	printf "" > (dir "/program")
}

/^#/ || /^$/ { next }

!header { header = 1; next }

{
	split_csv($0, cell)
	print cell[1] > (dir "/" cell[3])
	if (places(cell[1]) != places(cell[2]) || cell[2] == "")
		print cell[1]
}
