#!/bin/sh
# The reader of pictures against PNGs whose pixels are known (picture_judge.py): every
# kind, depth and interlacing. Then each is cut and flipped at many places: it must end
# as a picture or a fault. Exit 77: no tools.
cd "$(dirname "$0")/../.." || exit 1
command -v python3 >/dev/null 2>&1 || { echo "skipped: no python3"; exit 77; }
driver=build/outside/picture_driver
[ -x $driver ] || { echo "skipped: no $driver"; exit 77; }
dir=$(mktemp -d) || exit 1
trap 'rm -rf "$dir"' EXIT
python3 tests/outside/picture_judge.py make "$dir" || exit 1
$driver "$dir"/*.png >"$dir/told" || exit 1
python3 tests/outside/picture_judge.py check "$dir" >"$dir/result"
passed=$(grep -c '^same' "$dir/result")
failed=$(grep -c '^other' "$dir/result")
sed 's/^other/FAILED: other pixels:/;t;d' "$dir/result"
sed 's/^/told: /' "$dir/told"

# Broken in 4,000 ways, all in one run of ten seconds at most.
mkdir "$dir/broken"
python3 - "$dir" <<'END'
import glob, os, random, struct, sys, zlib
dice = random.Random(7)

def mended(data):
    """The same with check sums that fit, so that the fault lies deeper."""
    out, at = bytearray(data[:8]), 8
    while at + 12 <= len(data):
        n = struct.unpack('>I', data[at:at + 4])[0]
        if at + 12 + n > len(data):
            break
        body = bytes(data[at + 4:at + 8 + n])
        out += data[at:at + 4] + body + struct.pack('>I', zlib.crc32(body))
        at += 12 + n
    return out + data[at:]

files = sorted(glob.glob(sys.argv[1] + '/*.png'))
for i in range(4000):
    data = bytearray(open(files[i % len(files)], 'rb').read())
    if i % 4 == 0:
        del data[dice.randrange(len(data)):]
    for _ in range(dice.randrange(1, 4)):
        if data:
            data[dice.randrange(len(data))] ^= 1 << dice.randrange(8)
    open('%s/broken/%d.png' % (sys.argv[1], i), 'wb').write(mended(data) if i % 2 else data)
END
if find "$dir/broken" -name '*.png' | timeout 10 xargs $driver >"$dir/told"; then
	passed=$((passed + 1))
else
	failed=$((failed + 1))
	echo "FAILED: a broken picture ended the run"
fi
if [ "$(wc -l <"$dir/told")" -gt 2500 ]; then
	passed=$((passed + 1))
else
	failed=$((failed + 1))
	echo "FAILED: only $(wc -l <"$dir/told") of 4000 broken pictures were told"
fi
echo "$passed passed, $failed failed"
[ $failed = 0 ]
