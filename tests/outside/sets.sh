#!/bin/sh
# The shipped acceptance sets against tables of published limits, iso5817.csv and
# visual_d1.csv beside this script, which name their sources. sets.awk works each limit
# out at sizes inside and at the ends of its range; sets_driver asks the set. A row that no
# set holds, such as porosity by radiograph, is counted as left.
set -u
cd "$(dirname "$0")/../.." || exit 2
driver=build/outside/sets_driver
[ -x $driver ] || { echo "$driver is not built"; exit 77; }
work=$(mktemp -d) || exit 2
trap 'rm -rf "$work"' EXIT
passed=0
failed=0

# compare TABLE WHAT LEAST: at least LEAST rows of it are found in the sets.
compare()
{
	: >"$work/left"
	LC_ALL=C awk -v what="$2" -v left="$work/left" -v count="$work/count" \
	    -f tests/outside/sets.awk "tests/outside/$1" >"$work/asked"
	cut -f 1-9 "$work/asked" | $driver >"$work/found"
	cut -f 10-13 "$work/asked" | LC_ALL=C paste - "$work/found" "$work/asked" |
	    LC_ALL=C awk -F '\t' '
		{
			# Lengths in mm and angles: to a part in a thousand million.
			d = $6 - $2
			near = (d < 0 ? -d : d) <= 1e-9 * ($2 > 1 ? $2 : 1)
			short = $3 ? $7 ~ /short lengths/ : 1
			if ($5 == $1 && near && short)
				good++
			else {
				bad++
				print "failed: " $8 ", " $16 ": " $5 " " $6 " " $7 ", not " $1 " " $2 " (" $4 ")"
			}
		}
		END { print good + 0, bad + 0 > "'"$work/sum"'" }'
	read -r good bad <"$work/sum"
	passed=$((passed + good))
	failed=$((failed + bad))
	if [ "$(cat "$work/count")" -ge "$3" ]; then
		passed=$((passed + 1))
	else
		failed=$((failed + 1))
		echo "failed: only $(cat "$work/count") rows of $1 were asked"
	fi
	echo "$1: $(cat "$work/count") rows asked, $(wc -l <"$work/left") left:"
	sed 's/^/  /' "$work/left" | tr '\t' ' '
}

compare iso5817.csv iso 44
compare visual_d1.csv d1 30
echo "$passed passed, $failed failed"
[ $failed -eq 0 ]
