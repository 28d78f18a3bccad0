#!/bin/sh
# Installs what building (`build`), checking (`check`), fuzzing (`long`) or taking pictures
# for the README (`gallery`) needs, on Debian and its kin. Silent when everything is there.
# Elsewhere it names what is missing and stops.
set -eu

build='gcc libc6-dev libcmark-dev libhpdf-dev libpng-dev zlib1g-dev binutils'
check="$build libcmocka-dev qpdf poppler-utils mupdf-tools units bc libigraph-dev pkg-config jq python3 python3-jsonschema"
case ${1:-build} in
check) wanted=$check ;;
gallery) wanted="$build poppler-utils pngquant optipng" ;;
long) wanted="$check clang-14 libclang-rt-14-dev" ;;
*) wanted=$build ;;
esac

if ! command -v dpkg-query >/dev/null 2>&1 || ! command -v apt-get >/dev/null 2>&1; then
	if [ "${1:-build}" = build ] && printf '#include <cmark.h>\n#include <hpdf.h>\n#include <png.h>\n#include <zlib.h>\n' |
		cc -x c -fsyntax-only - 2>/dev/null; then
		exit 0
	fi
	echo "This is not Debian, so nothing was installed. fitup needs a C11 compiler and the" >&2
	echo "libraries cmark 0.30, libharu 2.3, libpng 1.6 and zlib, with headers. Its tests also need cmocka," >&2
	echo "qpdf, poppler's tools, mupdf's tools, GNU units, igraph, bc, jq and Python's jsonschema." >&2
	exit 1
fi

missing=
for package in $wanted; do
	state=$(dpkg-query -W -f '${db:Status-Abbrev}' "$package" 2>/dev/null || true)
	case $state in ii*) ;; *) missing="$missing $package" ;; esac
done
# node and npm may stand outside the package manager.
case ${1:-build} in check | long) reads=yes ;; *) reads= ;; esac
if [ -n "$reads" ]; then
	command -v node >/dev/null 2>&1 || missing="$missing nodejs"
	command -v npm >/dev/null 2>&1 || missing="$missing npm"
fi

# pdf.js, an outside reader of our pages; its test is skipped without it.
pdfjs()
{
	[ -n "$reads" ] && [ ! -d build/npm/node_modules/pdfjs-dist ] || return 0
	mkdir -p build/npm
	npm install --silent --no-audit --no-fund --no-package-lock --ignore-scripts \
	    --omit=optional --fetch-retries=1 --fetch-timeout=30000 \
	    --prefix build/npm pdfjs-dist@3.11.174 >/dev/null 2>&1 ||
	    echo "pdf.js could not be had; the test that reads with it is skipped" >&2
}

[ -n "$missing" ] || { pdfjs; exit 0; }

sudo=
if [ "$(id -u)" != 0 ]; then
	command -v sudo >/dev/null 2>&1 || {
		echo "Run this as root, or install first:$missing" >&2
		exit 1
	}
	sudo=sudo
fi
echo "Installing:$missing"
$sudo apt-get update -qq
$sudo env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends $missing >/dev/null
pdfjs
