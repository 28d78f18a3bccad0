#!/bin/sh
# Checks the rooms: includes against src/LAYERS, no function over 60 lines, and no
# undefined symbol of input or output in the core. Run from the project root after the
# objects are built. Prints each fault; closing line "N passed, N failed".
set -eu
passed=0
failed=0

ok() { passed=$((passed + 1)); }
bad() { echo "layers: $1"; failed=$((failed + 1)); }

# allowed ROOM HEADER: is HEADER (room/name.h) on ROOM's line?
allowed() {
	awk -v room="$1" -v header="$2" '
	/^#/ || !NF { next }
	{
		split($0, halves, "|"); split(halves[1], sides, ":")
		split(sides[1], name, " ")
		if (name[1] != room) next
		n = split(sides[2], list, " ")
		split(header, part, "/")
		if (part[1] == room) found = 1
		for (i = 1; i <= n; i++)
			if (list[i] == part[1] || list[i] == header) found = 1
	}
	END { exit !found }' src/LAYERS
}

rooms=$(sed -n 's/^\([a-z]*\)[ a-z]*:.*/\1/p' src/LAYERS)
core=$(sed -n 's/^\([a-z]*\) core:.*/\1/p' src/LAYERS)

for room in $rooms; do
	for file in src/"$room"/*.[ch]; do
		[ -e "$file" ] || continue
		faults=0
		for header in $(sed -n 's/^#include "\(.*\)".*/\1/p' "$file"); do
			case $header in
			*.inc | *.def) continue ;;
			esac
			allowed "$room" "$header" || { bad "$file includes $header"; faults=1; }
		done
		case $room in
		read) foreign='cmark\.h|png\.h' ;;
		out) foreign='hpdf[_a-z]*\.h|zlib\.h' ;;
		*) foreign='none' ;;
		esac
		for header in $(sed -n 's/^#include <\(.*\)>.*/\1/p' "$file"); do
			case $header in
			cmark.h | hpdf*.h | png.h | zlib.h)
				echo "$header" | grep -Eqx "$foreign" ||
					{ bad "$file includes <$header>"; faults=1; } ;;
			stdio.h | time.h | locale.h | setjmp.h | dirent.h | fcntl.h | unistd.h)
				case " $(echo $core) " in
				*" $room "*) bad "$file includes <$header>"; faults=1 ;;
				esac ;;
			esac
		done
		[ $faults = 1 ] || ok
	done
done

for file in src/*/*.c tests/*/*.c; do
	long=$(awk '/^{/ { start = NR } /^}/ { if (start && NR - start - 1 > 60)
		print FILENAME ":" start ": " NR - start - 1 " lines"; start = 0 }' "$file")
	if [ -n "$long" ]; then bad "function over 60 lines: $long"; else ok; fi
	wc=$(wc -l < "$file")
	if [ "$wc" -gt 1000 ]; then bad "$file has $wc lines"; fi
done

# The core may call the C library's memory, string and math functions, nothing else.
plain='malloc|calloc|realloc|free|mem(cpy|set|cmp|move|chr)|str(len|chr|cmp|ncmp|str)|qsort'
math='floor|ceil|fabs|sqrt|sin|cos|sincos|tan|atan2?|asin|acos|hypot|pow|fmod|l?l?round|trunc|fmin|fmax|nan|nearbyint|rint|modf|exp|log|log10|scalbn|ldexp|frexp|remainder'
runtime='__assert_fail|__stack_chk_fail|_GLOBAL_OFFSET_TABLE_|__[a-z_0-9]*san_[a-z_0-9]*'
for room in $core; do
	[ -d build/obj/$room ] || { bad "build/obj/$room is not built"; continue; }
	own=$(nm --defined-only build/obj/*/*.o 2>/dev/null | awk 'NF == 3 { print $3 }' | sort -u)
	for object in build/obj/$room/*.o; do
		strange=$(nm -u "$object" | awk '{ print $2 }' | grep -Evx "$plain|$math|$runtime" |
			grep -Fvx "$own" || true)
		if [ -n "$strange" ]; then bad "$object calls $(echo $strange)"; else ok; fi
	done
done

echo "$passed passed, $failed failed"
[ $failed = 0 ]
