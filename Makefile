# fitup: build, check and print. `make help` lists the targets.

CC      = gcc
CFLAGS  = -O2 -g
WARN    = -Wall -Wextra -Wshadow -Wconversion -Wmissing-prototypes -Wstrict-prototypes -Wvla
STD     = -std=c11 -D_POSIX_C_SOURCE=200809L -Isrc
LIBS    = -lcmark -lhpdf -lpng -lz -lm

ROOMS   = base units reckon read model order check draw page sheets out cli
SRC     = $(sort $(foreach r,$(ROOMS),$(wildcard src/$(r)/*.c)))
ASM     = $(sort $(foreach r,$(ROOMS),$(wildcard src/$(r)/*.S)))
OBJ     = $(SRC:src/%.c=build/obj/%.o) $(ASM:src/%.S=build/obj/%.o)
LIBOBJ  = $(filter-out build/obj/cli/main.o,$(OBJ))
UNIT    = $(patsubst tests/unit/%.c,build/tests/%,$(sort $(wildcard tests/unit/test_*.c)))

all: build/fitup

build/fitup: $(OBJ)
	$(CC) $(CFLAGS) -o $@ $(OBJ) $(LIBS)

# libharu casts between struct types; only these files see it.
build/obj/out/pdf%.o: CFLAGS += -fno-strict-aliasing

build/obj/%.o: src/%.c
	@mkdir -p $(@D)
	$(CC) $(STD) $(WARN) $(CFLAGS) -MMD -MP -c -o $@ $<

build/obj/%.o: src/%.S
	@mkdir -p $(@D)
	$(CC) -c -o $@ $<

build/libfitup.a: $(LIBOBJ)
	@rm -f $@
	ar rcs $@ $(LIBOBJ)

build/tests/%: tests/unit/%.c build/libfitup.a
	@mkdir -p $(@D)
	$(CC) $(STD) $(WARN) $(CFLAGS) -MMD -MP -o $@ $< build/libfitup.a -lcmocka $(LIBS)

unit: $(UNIT)

clean:
	rm -rf build

-include $(OBJ:.o=.d) $(UNIT:=.d)

.PHONY: all unit clean
