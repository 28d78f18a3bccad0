#!/bin/sh
# Pictures of printed pages of the demo for the README, into src/manual/gallery: small,
# gray, the same bytes from the same pages. `make gallery` runs it.
set -eu
cd "$(dirname "$0")/../.."
gallery=src/manual/gallery
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

# page PDF WORDS: number of the first page that has all the words, one regular expression
# each, in any order.
page()
{
	pdf=$1
	shift
	pdftotext -layout "$pdf" - | awk -v RS='\f' -v want="$*" '
		BEGIN { n = split(want, w, " ") }
		{ for (i = 1; i <= n && $0 ~ w[i]; i++); if (i > n) { print NR; exit } }'
}

# shot NAME PDF WORDS: that page as a picture.
shot()
{
	name=$1
	pdf=$work/out/$2
	shift 2
	at=$(page "$pdf" "$@")
	[ -n "$at" ] || { echo "gallery: no page for $name" >&2; exit 1; }
	pdftoppm -r 84 -gray -png -singlefile -f "$at" -l "$at" "$pdf" "$work/$name"
	pngquant --force --speed 1 --strip --output "$gallery/$name.png" 8 "$work/$name.png"
	optipng -quiet -o5 -strip all "$gallery/$name.png"
}

build/fitup print -C curriculum --out "$work/out" >/dev/null
build/fitup print Q1 packets -C curriculum --large --out "$work/out" >/dev/null
rm -rf $gallery
mkdir -p $gallery
shot sheet q2/packet.pdf 'SM-24' 'Before.you.start'
shot drawing q2/packet.pdf 'SM-24' 'AWS.A2'
shot grading q2/grading.pdf 'SM-24' 'Shop.number'
shot card q2/cards.pdf '^SM-24'
shot map q2/packet.pdf 'what.leads.to.what'
shot key instructor/keys.pdf 'Key.SM-24'
shot template instructor/templates.pdf 'PD-05' 'lateral'
[ -f "$work/out/q1/packet.es.pdf" ] && shot spanish q1/packet.es.pdf 'SF-02' 'Antes'
du -b -c $gallery/*.png | tail -n 1
