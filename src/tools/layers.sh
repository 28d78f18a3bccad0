#!/bin/sh
# Checks the rooms: includes against src/LAYERS, no function over 60 lines, and no
# undefined symbol of input or output in the core. Run from the project root after the
# objects are built. Prints each fault; closing line "N passed, N failed".
set -eu
passed=0
failed=0

ok() { passed=$((passed + 1)); }
bad() { echo "layers: $1"; failed=$((failed + 1)); }

# may ROOM: the rooms and headers (room/name.h) on its line, itself among them.
may() {
	sed -n "s/^$1\\( [a-z]*\\)*:\\([^|]*\\).*/ $1 \\2 /p" src/LAYERS
}

rooms=$(sed -n 's/^\([a-z]*\)[ a-z]*:.*/\1/p' src/LAYERS)
core=$(sed -n 's/^\([a-z]*\) core:.*/\1/p' src/LAYERS)

# One include a turn: `src/read/md.c:<cmark.h`, `src/read/md.c:"base/str.h`.
for room in $rooms; do
	allowed=$(may "$room")
	case $room in
	read) foreign='cmark.h png.h' ;;
	out) foreign='hpdf.h zlib.h' ;;
	*) foreign= ;;
	esac
	for pair in $(awk -F'["<>]' '/^#include ["<]/ { print FILENAME ":" substr($0, 10, 1) $2 }' \
	    src/"$room"/*.[ch]); do
		file=${pair%%:*}
		header=${pair#*:?}
		fault=
		case ${pair#*:} in
		\"*.inc | \"*.def) continue ;;
		\"*)
			case $allowed in
			*" ${header%%/*} "* | *" $header "*) ;;
			*) fault="includes $header" ;;
			esac ;;
		\<cmark.h | \<hpdf*.h | \<png.h | \<zlib.h)
			case " $foreign " in
			*" ${header%%_*} "* | *" ${header%%_*}.h "*) ;;
			*) fault="includes <$header>" ;;
			esac ;;
		\<stdio.h | \<time.h | \<locale.h | \<setjmp.h | \<dirent.h | \<fcntl.h | \<unistd.h)
			case " $(echo $core) " in
			*" $room "*) fault="includes <$header>" ;;
			esac ;;
		esac
		if [ -n "$fault" ]; then bad "$file $fault"; else ok; fi
	done
done

for file in src/*/*.c tests/*/*.c; do
	long=$(awk '/^{/ { start = NR } /^}/ { if (start && NR - start - 1 > 60)
		print "function over 60 lines: " FILENAME ":" start ": " NR - start - 1 " lines"
		start = 0 } END { if (NR > 1000) print FILENAME " has " NR " lines" }' "$file")
	if [ -n "$long" ]; then bad "$long"; else ok; fi
done

# The core may call the C library's memory, string and math functions, nothing else.
plain='malloc|calloc|realloc|free|mem(cpy|set|cmp|move|chr)|str(len|chr|cmp|ncmp|str)|qsort'
math='floor|ceil|fabs|sqrt|sin|cos|sincos|tan|atan2?|asin|acos|hypot|pow|fmod|l?l?round|trunc|fmin|fmax|nan|nearbyint|rint|modf|exp|log|log10|scalbn|ldexp|frexp|remainder'
runtime='__assert_fail|__stack_chk_fail|_GLOBAL_OFFSET_TABLE_|__[a-z_0-9]*san_[a-z_0-9]*'
own=$(nm --defined-only build/obj/*/*.o 2>/dev/null | awk 'NF == 3 { print $3 }' | sort -u)
for room in $core; do
	[ -d build/obj/$room ] || { bad "build/obj/$room is not built"; continue; }
	strange=$({ echo "$own"; echo --; nm -A -u build/obj/$room/*.o; } |
		awk -v plain="^($plain|$math|$runtime)\$" '$0 == "--" { past = 1; next }
		!past { own[$1]; next }
		!($NF in own) && $NF !~ plain { print $1 " calls " $NF }')
	if [ -n "$strange" ]; then bad "$strange"; else ok; fi
done

echo "$passed passed, $failed failed"
[ $failed = 0 ]
