#!/bin/sh
# What the house promises about itself: nothing strange at the top level, and the
# README's pictures are there, used, and small together.
set -u
cd "$(dirname "$0")/.." || exit 2
passed=0
failed=0
ok() { passed=$((passed + 1)); }
bad() { failed=$((failed + 1)); echo "house.sh: $1"; }

if command -v git >/dev/null 2>&1 && [ -d .git ]; then
	for name in $(git ls-files | sed 's|/.*||' | sort -u); do
		case $name in
		curriculum | src | templates | tests | Makefile | README.md | DEVELOPERS.md | LICENSE) ok ;;
		.*) ok ;;
		*) bad "$name stands at the top level" ;;
		esac
	done
fi
sum=0
for picture in src/manual/gallery/*.png; do
	if grep -q "($picture)" README.md; then ok; else bad "README does not show $picture"; fi
	sum=$((sum + $(wc -c <"$picture")))
done
if [ $sum -gt 50000 ] && [ $sum -lt 400000 ]; then ok; else bad "pictures are $sum bytes together"; fi
for named in $(grep -o '([a-z][A-Za-z./-]*)' README.md DEVELOPERS.md | sed 's/.*(//; s/)//' | grep /); do
	if [ -e "$named" ]; then ok; else bad "$named is named and not there"; fi
done
echo "$passed passed, $failed failed"
[ $failed -eq 0 ]
