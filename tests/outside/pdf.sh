#!/bin/sh
# Outside readers judge a document made by our PDF writer (tests/outside/pdf_driver.c):
# qpdf for the syntax, poppler for text, fonts, facts and tags, mupdf for drawing.
# Runs from the project root after `make`. LIB names the objects to link. Exit 77: no tools.
LIB=${LIB:-build/libfitup.a}
for tool in qpdf pdftotext pdffonts pdfinfo pdftoppm mutool; do
	command -v $tool >/dev/null 2>&1 || { echo "skipped: no $tool"; exit 77; }
done
dir=$(mktemp -d) || exit 1
trap 'rm -rf "$dir"' EXIT
passed=0 failed=0

ok() { # ok NAME COMMAND...: passes when the command succeeds
	name=$1
	shift
	if "$@" >"$dir/log" 2>&1; then
		passed=$((passed + 1))
	else
		failed=$((failed + 1))
		echo "FAILED: $name"
		sed 's/^/  /' "$dir/log" | head -20
	fi
}
has() { grep -q -F -e "$2" "$1"; }     # has FILE TEXT
clean() { cat "$1"; test ! -s "$1"; }  # clean FILE: nothing was complained about

${CC:-gcc} -std=c11 -D_POSIX_C_SOURCE=200809L -Isrc -O2 -o "$dir/driver" \
    tests/outside/pdf_driver.c $LIB -lhpdf -lz -lm $LDFLAGS || exit 1
"$dir/driver" "$dir/a.pdf" && "$dir/driver" "$dir/b.pdf" || exit 1
cd "$dir" || exit 1

ok "two runs give the same bytes" cmp a.pdf b.pdf
ok "qpdf finds no fault" qpdf --check a.pdf
pdftotext -layout a.pdf text 2>err
ok "pdftotext is silent" clean err
for line in 'Tee fillet 2F – mañana' 'Leg ½ in, gap 0 to ⅜ in, 70° ± 5°, 3 × 8, Ø 2, ≤ 1, ≥ 2' \
    'Bold (with brackets) and \ slash' 'Italic — the welder’s words' \
    'Bold italic: café señor' 'Mono 0123456789 A36 plate' 'Mono bold E7018' \
    'Stop, fit-up (see page 1).'; do
	ok "text: $line" has text "$line"
done
pdffonts a.pdf >fonts 2>err
ok "pdffonts is silent" clean err
ok "six faces, each embedded, subset and readable" \
    test "$(grep -c 'Identity-H *yes yes yes' fonts)" -eq 6
ok "no other font" test "$(tail -n +3 fonts | wc -l)" -eq 6
pdfinfo a.pdf >info 2>err
ok "pdfinfo is silent" clean err
for line in 'Title:           Quarter 1 – café & more' 'Subject:         Test <sheet>' \
    'Producer:        fitup' 'Tagged:          yes' 'Metadata Stream: yes' \
    'Pages:           3' 'PDF version:     1.7' 'Suspects:        no'; do
	ok "fact: $line" has info "$line"
done
ok "no date" test "$(grep -c Date info)" -eq 0
pdfinfo -meta a.pdf >meta 2>err
ok "metadata holds the title" has meta 'Quarter 1 – café &amp; more'
ok "metadata holds the language" has meta '<rdf:li>en-US</rdf:li>'
pdfinfo -struct-text a.pdf >tags 2>err
ok "tags are read silently" clean err
tr -s ' \n' ' ' <tags >tags1
for words in 'Document H1 (block) "Tee fillet 2F – mañana" P (block) "Leg ½ in' \
    'Figure "⅜ in"' 'Table (block) TR TH: /Scope /Column "Leg"' 'TD "5/16 in"' \
    'L (block) LI (block) LBody (block) "Grind the mill scale 1 in back." Link (inline) Object'; do
	ok "tags: $words" has tags1 "$words"
done
ok "furniture is not in the tags" test "$(grep -c 'Packet, page' tags)" -eq 0
pdfinfo -dests a.pdf >dests 2>err
for place in '"SM-04"' '"steps"' '"last"'; do
	ok "place $place" has dests "$place"
done
qpdf --json a.pdf >json 2>err
ok "language" has json '"/Lang": "u:en-US"'
ok "label style" has json '"/S": "/r"'
ok "folded outline" has json '"/Count": -1'
mutool draw -q -F png -o page%d.png a.pdf >/dev/null 2>err
grep -v 'ICC support is not available' err >err1
ok "mutool draws without a warning" clean err1
ok "mutool outline" sh -c "mutool show a.pdf outline | grep -q 'Tee fillet 2F – mañana'"
pdftoppm -r 40 -png a.pdf drawn 2>err
ok "pdftoppm draws silently" clean err
ok "three pictures" test "$(ls drawn-*.png | wc -l)" -eq 3

# The picture: its pixels as poppler takes them out of the file, where it lies and how large
# it is as poppler draws it (page 3, 792 x 612 pt, 72 dots an inch, y from the top).
ok "the picture is in the file once" test "$(grep -ac '/Subtype/Image' a.pdf)" -eq 1
pdfimages -f 3 -l 3 a.pdf taken 2>err
ok "pdfimages is silent" clean err
want=' 0 17 34 51 68 85 102 119 136 153 170 187 204 221 255'
got=$(tail -c 45 taken-000.ppm | od -An -v -w3 -tu1 | awk '$1 == $2 && $2 == $3 { printf " %d", $1 }')
ok "its pixels: $got" test "$got" = "$want"
pdftoppm -r 72 -gray -f 3 -l 3 a.pdf shown 2>err
shade() { tail -c 484704 shown-3.pgm | head -c $(($2 * 792 + $1 + 1)) | tail -c 1 | od -An -tu1 | tr -d ' '; }
for spot in '125 325 0' '175 325 17' '325 325 68' '125 425 170' '325 425 255' '275 425 221' \
    '405 305 0' '425 325 204' '90 325 255' '355 325 255'; do
	set -- $spot
	ok "shade at $1, $2: $(shade $1 $2), not $3" test "$(shade $1 $2)" = "$3"
done
ok "the picture has words" sh -c "qpdf --qdf --object-streams=disable a.pdf - | grep -aq 'Fifteen squares'"

echo "$passed passed, $failed failed"
test "$failed" -eq 0
