# fitup: build, check and print. `make help` lists the targets.

CC      = gcc
CFLAGS  = -O2 -g
WARN    = -Wall -Wextra -Wshadow -Wconversion -Wmissing-prototypes -Wstrict-prototypes -Wvla
STD     = -std=c11 -D_POSIX_C_SOURCE=200809L -Isrc
LIBS    = -lcmark -lhpdf -lpng -lz -lm -pthread
PREFIX  = /usr/local

# Rooms in order; a room knows only those before it (src/LAYERS).
ROOMS   = base units reckon read model order check draw page sheets out cli
SRC     = $(sort $(foreach r,$(ROOMS),$(wildcard src/$(r)/*.c)))
ASM     = $(sort $(foreach r,$(ROOMS),$(wildcard src/$(r)/*.S)))
OBJ     = $(SRC:src/%.c=build/obj/%.o) $(ASM:src/%.S=build/obj/%.o)
LIBOBJ  = $(filter-out build/obj/cli/main.o,$(OBJ))
HEADERS = $(sort $(wildcard src/*/*.h))
UNIT    = $(patsubst tests/unit/%.c,build/tests/%,$(sort $(wildcard tests/unit/test_*.c)))
OUTSIDE = $(patsubst tests/outside/%.c,build/outside/%,$(sort $(wildcard tests/outside/*.c)))
BENCH   = $(patsubst tests/bench/%.c,build/bench/%,$(sort $(wildcard tests/bench/*.c)))

# The program. Needs the libraries; `make demo` and `make check` fetch them first.
all: build/fitup

help:
	@echo 'make          build/fitup'
	@echo 'make demo     everything it needs, then print the demo program into build/'
	@echo 'make check    everything it needs, then all tests (under 5 minutes)'
	@echo 'make check-long, bench, asan, fuzz, golden, gallery, install, clean'

demo: setup
	@$(MAKE) --no-print-directory all
	build/fitup print -C curriculum

check: setup-check
	@$(MAKE) --no-print-directory check-built

check-built: all headers unit outside build/tests/replay
	@sh tests/run.sh

# What takes longer: fuzzing and large random programs.
check-long: setup-long
	@$(MAKE) --no-print-directory check-built
	@sh tests/long.sh

bench: setup-check
	@$(MAKE) --no-print-directory all bench-tools
	@sh tests/bench/run.sh

setup:
	@sh src/tools/setup.sh build

setup-check:
	@sh src/tools/setup.sh check

setup-long:
	@sh src/tools/setup.sh long

build/fitup: $(OBJ)
	$(CC) $(CFLAGS) $(SANITIZE) -o $@ $(OBJ) $(LIBS)

# libharu casts between struct types; only these files see it.
build/obj/out/pdf%.o: CFLAGS += -fno-strict-aliasing

build/obj/%.o: src/%.c
	@mkdir -p $(@D)
	$(CC) $(STD) $(WARN) $(CFLAGS) $(SANITIZE) -MMD -MP -c -o $@ $<

build/obj/%.o: src/%.S $(wildcard templates/fonts/*.ttf templates/standards/*.md src/base/*.def)
	@mkdir -p $(@D)
	$(CC) -c -o $@ $<

build/libfitup.a: $(LIBOBJ)
	@rm -f $@
	ar rcs $@ $(LIBOBJ)

build/tests/%: tests/unit/%.c build/libfitup.a
	@mkdir -p $(@D)
	$(CC) $(STD) -Itests/unit $(WARN) $(CFLAGS) $(SANITIZE) -MMD -MP -o $@ $< \
	    build/libfitup.a -lcmocka $(LIBS)

# Puts the functions of the test in front of the ones that work answers out.
build/tests/test_keys: LIBS += -Wl,--wrap=pattern_of -Wl,--wrap=workings_of

# Only the checks against igraph link it; a missing library skips that check alone.
build/outside/%: tests/outside/%.c build/libfitup.a
	@mkdir -p $(@D)
	$(CC) $(STD) -Itests/unit $(WARN) $(CFLAGS) $(SANITIZE) -MMD -MP -o $@ $< \
	    build/libfitup.a $$(case $* in *igraph*) pkg-config --cflags --libs igraph;; esac) $(LIBS)

build/bench/%: tests/bench/%.c build/libfitup.a
	@mkdir -p $(@D)
	$(CC) $(STD) $(WARN) $(CFLAGS) -MMD -MP -o $@ $< build/libfitup.a $(LIBS)

# The fuzzer's entry as a plain program: tests/hostile.sh runs tests/crash through it.
build/tests/replay: tests/fuzz.c build/libfitup.a
	@mkdir -p $(@D)
	$(CC) $(STD) $(WARN) $(CFLAGS) $(SANITIZE) -DREPLAY -MMD -MP -o $@ $< \
	    build/libfitup.a $(LIBS)

# The fuzzer itself, built by clang beside the program; tests/long.sh runs it.
FUZZ_CC    = clang-14
FUZZ_FLAGS = -O2 -g -fno-strict-aliasing -fno-sanitize-recover=all -fsanitize=address,undefined
# Counters only: watching each comparison as well halves the speed.
FUZZ_COVER = -fsanitize-coverage=inline-8bit-counters,pc-table
FUZZ_OBJ   = $(patsubst build/obj/%,build/fuzz/obj/%,$(LIBOBJ))

fuzz: setup-long
	@$(MAKE) --no-print-directory build/fuzz/fitup

build/fuzz/fitup: build/fuzz/fuzz.o $(FUZZ_OBJ)
	$(FUZZ_CC) $(FUZZ_FLAGS) -fsanitize=fuzzer -o $@ $^ $(LIBS)

build/fuzz/fuzz.o: tests/fuzz.c
	@mkdir -p $(@D)
	$(FUZZ_CC) $(STD) $(FUZZ_FLAGS) $(FUZZ_COVER) -MMD -MP -c -o $@ $<

build/fuzz/obj/%.o: src/%.c
	@mkdir -p $(@D)
	$(FUZZ_CC) $(STD) $(FUZZ_FLAGS) $(FUZZ_COVER) -MMD -MP -c -o $@ $<

build/fuzz/obj/%.o: src/%.S $(wildcard templates/fonts/*.ttf templates/standards/*.md src/base/*.def)
	@mkdir -p $(@D)
	$(FUZZ_CC) -c -o $@ $<

unit: $(UNIT)
outside: $(OUTSIDE)
bench-tools: $(BENCH) build/outside/peak

# Each header compiles alone.
headers: $(HEADERS:src/%.h=build/headers/%.ok)
build/headers/%.ok: src/%.h
	@mkdir -p $(@D)
	@$(CC) $(STD) $(WARN) -x c -fsyntax-only -include $< /dev/null
	@touch $@

layers: all
	@sh src/tools/layers.sh

# The same tests with the address and undefined-behavior sanitizers, built elsewhere.
asan: setup-check
	@mkdir -p build/asan
	@$(MAKE) --no-print-directory clean-objects
	@$(MAKE) --no-print-directory SANITIZE='-fsanitize=address,undefined -fno-sanitize-recover=all' check-built
	@$(MAKE) --no-print-directory clean-objects

# Rewrites the expected files of tests/cases from what fitup says now; read the diff.
golden: all
	@sh tests/cases.sh golden

# Rewrites the page of the manual that is made from the lists of findings.
manual: all
	build/fitup explain --all > src/manual/findings.md

# Makes the rows of C anew from the tables of words.
words:
	@for csv in templates/words/*.csv; do LC_ALL=C awk -f src/tools/csv.awk -f src/tools/inc.awk $$csv \
	    > src/base/$$(basename $$csv .csv).inc || exit 1; done

# Pictures of printed pages for the README; look at each before it is committed.
gallery: all
	@sh src/tools/setup.sh gallery
	@sh src/tools/gallery.sh

install: all
	install -D build/fitup $(DESTDIR)$(PREFIX)/bin/fitup

clean-objects:
	@rm -rf build/obj build/tests build/outside build/libfitup.a build/fitup

clean:
	rm -rf build

-include $(OBJ:.o=.d) $(FUZZ_OBJ:.o=.d) build/tests/replay.d build/fuzz/fuzz.d
-include $(UNIT:=.d) $(OUTSIDE:=.d) $(BENCH:=.d)

.PHONY: all help demo check check-built check-long bench setup setup-check setup-long unit \
    outside bench-tools headers layers asan fuzz golden manual words install clean-objects clean
