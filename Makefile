# standfast (GNU make). Knobs on top; new .c files are found by themselves, nothing below needs an edit.
VERSION  = 0.1.0
PREFIX   = /usr/local
DESTDIR  =
ifeq ($(origin CC),default)
CC       = gcc
endif
CFLAGS   = -O2
LIBS     = -lyaml -lm
CLI_LIBS = -lmd -pthread
JOBS     = $(shell nproc 2>/dev/null || echo 1)
DEMO     = examples/high_pedestal.yaml
# tests: cases of each property, seed of all of them, seconds of fuzzing
CASES   ?= 10000
SEED    ?= 1
FUZZ_SECONDS ?= 60
# a general solver and a robotics library beside ours, in the benchmarks; BENCH_QP= BENCH_KDL= leave them out
BENCH_QP = -DWITH_QP
BENCH_KDL = -DWITH_KDL
BENCH_LIBS = $(if $(BENCH_QP),-lipopt)
FLAVOUR  =
# ----------------------------------------------------------------------------------------------------
export CASES SEED FUZZ_SECONDS
export BENCH_PACKAGES = $(if $(BENCH_QP),coinor-libipopt-dev) $(if $(BENCH_KDL),g++ liborocos-kdl-dev)

# the same digits everywhere: no fused operations, no reordering of sums
NUMERIC  = -ffp-contract=off
WARNINGS = -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wdouble-promotion -Wmissing-prototypes \
           -Wstrict-prototypes -Wundef -Wvla -Wformat=2
FLAGS_asan     = -g -O1 -fno-omit-frame-pointer -fsanitize=address,undefined,float-cast-overflow \
                 -fno-sanitize-recover=all -Wno-format-truncation
FLAGS_werror   = -Werror
FLAGS_valgrind = -g
FLAGS_cov      = -g -O0 --coverage
FLAGS_fuzz     = -g -O1 -Wno-string-concatenation -fsanitize=address,undefined,fuzzer-no-link -fno-sanitize-recover=all
ALL_CFLAGS = -std=c17 -fPIC -fvisibility=hidden -MMD -MP $(WARNINGS) $(CFLAGS) $(FLAGS_$(FLAVOUR)) $(NUMERIC)
ALL_CPPFLAGS = -DSTANDFAST_VERSION='"$(VERSION)"' $(CPPFLAGS)
POSIX    = -D_POSIX_C_SOURCE=200809L
# of the comparison with orocos-kdl alone
KDL_CXXFLAGS = -std=c++17 -O2 -Wall -Wextra -MMD -MP -isystem /usr/include/eigen3 $(NUMERIC)
KDL_LIBS = -lorocos-kdl -lstdc++

# build/ is the plain flavour, build/asan and so on the others
B       := build$(if $(FLAVOUR),/$(FLAVOUR))
object   = $(patsubst %.c,$(B)/obj/%.o,$(1))
CORE    := $(call object,$(filter-out src/cli/%,$(wildcard src/*.c src/*/*.c)))
CLI     := $(call object,$(filter-out src/cli/main.c,$(wildcard src/cli/*.c)))
MAIN    := $(call object,src/cli/main.c)
SUPPORT := $(call object,$(wildcard tests/support/*.c))
SUITES  := unit properties cases
BENCHES := $(patsubst tests/bench/%.c,$(B)/bench/%,$(wildcard tests/bench/bench_*.c))
ALLOC   := $(B)/tests/allocation_faults
KDL     := $(B)/obj/tests/support/kdl_chain.o

# a sub-make of its own runs parallel, one inside a parallel make shares its jobs
SUBMAKE  = +$(MAKE) --no-print-directory $(if $(findstring jobserver,$(MAKEFLAGS)),,-j$(JOBS))

.PHONY: all demo demo-history check check-asan check-valgrind check-long calculix kdl wasm tests bench benches fuzz fuzzer lint \
        golden-update install uninstall clean help FORCE
.DELETE_ON_ERROR:

all: $(B)/standfast $(B)/libstandfast.a $(B)/libstandfast.so

help:
	@echo "make demo            install what is missing, build, check an example cell"
	@echo "make check           the tests (about a minute); CASES=$(CASES) SEED=$(SEED)"
	@echo "make check-asan      the tests with address and undefined-behaviour sanitizers"
	@echo "make check-valgrind  the examples under valgrind"
	@echo "make check-long      a hundred times the random cases, sanitizers, valgrind, finite elements,"
	@echo "                     a robotics library, fuzzing"
	@echo "make lint            include rules, sizes, warnings as errors, the manual, the core for wasm"
	@echo "make fuzz            random bytes into the reader, FUZZ_SECONDS=$(FUZZ_SECONDS)"
	@echo "make bench           speeds, medians on this machine"
	@echo "make golden-update   write the expected outputs anew; review the difference"
	@echo "make                 build/standfast, build/libstandfast.a, build/libstandfast.so"
	@echo "make install         PREFIX=$(PREFIX) DESTDIR=$(DESTDIR); make uninstall, make clean"

# ---- what people run ----
demo:
	@tests/tools/need-packages build
	$(SUBMAKE) -s all
	build/standfast check $(DEMO); status=$$?; echo; \
	case $$status in 0) word=holds ;; 1) word=fails ;; 3) word=unproven ;; *) exit $$status ;; esac; \
	echo "exit status $$status: $$word"

check:
	@tests/tools/need-packages check
	$(SUBMAKE) -s tests
	@tests/tools/run-suites $(B)

check-asan:
	@tests/tools/need-packages check
	$(SUBMAKE) -s FLAVOUR=asan tests
	@tests/tools/run-suites build/asan

check-valgrind:
	@tests/tools/need-packages valgrind
	$(SUBMAKE) -s FLAVOUR=valgrind all
	@tests/tools/run-valgrind build/valgrind/standfast

check-long:
	$(MAKE) check CASES=1000000
	$(MAKE) check-asan check-valgrind
	$(MAKE) calculix
	$(MAKE) kdl
	$(MAKE) fuzz FUZZ_SECONDS=600

# the contact solution against a finite-element program
calculix:
	@tests/tools/need-packages calculix
	$(SUBMAKE) -s $(B)/base_driver
	@tests/properties/calculix_base.py $(B)/base_driver

# the CSV files of the demo arm, from its own chain
ARM = examples/arm_chain.yaml
demo-history:
	$(SUBMAKE) -s $(B)/demo_history
	$(B)/demo_history stop $(ARM) 0 53.3 82.4 23.7 -27.7 0  1 -1 -1 1 -1 -1 > examples/arm_stop.csv
	$(B)/demo_history round $(ARM) 20 60 70 10 -30 0  1 -1 -1 1 -1 -1 > examples/arm_round.csv

# the arm's mechanics against a general robotics library
kdl:
	@tests/tools/need-packages kdl
	$(SUBMAKE) -s $(B)/tests/chain_kdl
	@$(B)/tests/chain_kdl

lint:
	@tests/tools/need-packages lint
	@tests/lint/include_table
	@tests/lint/sizes
	$(SUBMAKE) -s FLAVOUR=werror all tests
	@mandoc -T lint -W warning src/cli/standfast.1
	@$(MAKE) -s --no-print-directory wasm

# the core must stay free of files, clock and threads, so that a page for a phone can print the same digits
wasm:
	@mkdir -p build/wasm && ln -sf /usr/include/yaml.h build/wasm/
	clang --target=wasm32-wasi -std=c17 -fsyntax-only -isystem build/wasm $(WARNINGS) -Wno-string-concatenation \
		-DSTANDFAST_VERSION='"$(VERSION)"' $(filter-out src/cli/%,$(wildcard src/*.c src/*/*.c))

golden-update:
	@tests/tools/need-packages check
	$(SUBMAKE) -s all
	@tests/golden/run_golden --update $(B)
	@tests/golden/run_readme --update

fuzz:
	@tests/tools/need-packages fuzz
	$(SUBMAKE) -s FLAVOUR=fuzz CC=clang fuzzer
	@tests/fuzz/run_fuzz build/fuzz/fuzz_reader $(FUZZ_SECONDS)

bench:
	@tests/tools/need-packages bench
	$(SUBMAKE) -s all benches
	@tests/tools/run-bench $(B)

clean:
	rm -rf build

# ---- program and library ----
$(B)/standfast: $(CORE) $(CLI) $(MAIN)
	$(CC) $(ALL_CFLAGS) $(LDFLAGS) -o $@ $^ $(LIBS) $(CLI_LIBS)

# one object in which only the public names are left, so that a program's own names cannot collide
$(B)/obj/libstandfast.o: $(CORE)
	$(LD) -r -o $@ $^
	objcopy --localize-hidden $@

$(B)/libstandfast.a: $(B)/obj/libstandfast.o
	rm -f $@
	$(AR) rcs $@ $<

$(B)/libstandfast.so.0: $(CORE)
	$(CC) $(ALL_CFLAGS) $(LDFLAGS) -shared -Wl,-soname,libstandfast.so.0 -Wl,--no-undefined -o $@ $^ $(LIBS)

$(B)/libstandfast.so: $(B)/libstandfast.so.0
	ln -sf $(<F) $@

# the Makefile is a prerequisite: other flags or another version mean other objects
$(B)/obj/src/cli/%.o: src/cli/%.c Makefile
	@mkdir -p $(@D)
	$(CC) $(ALL_CPPFLAGS) $(POSIX) $(ALL_CFLAGS) -c -o $@ $<

$(B)/obj/src/%.o: src/%.c Makefile
	@mkdir -p $(@D)
	$(CC) $(ALL_CPPFLAGS) $(ALL_CFLAGS) -c -o $@ $<

$(B)/obj/tests/%.o: tests/%.c Makefile
	@mkdir -p $(@D)
	$(CC) $(ALL_CPPFLAGS) $(POSIX) $(ALL_CFLAGS) -c -o $@ $<

# ---- tests ----
tests: all $(SUITES:%=$(B)/tests/%) $(ALLOC)

define suite
$(B)/tests/$(1): $(call object,$(wildcard tests/$(1)/*.c)) $(SUPPORT) $(CORE) $(CLI)
	@mkdir -p $$(@D)
	$$(CC) $$(ALL_CFLAGS) $$(LDFLAGS) -o $$@ $$^ -lcriterion $$(LIBS) $$(CLI_LIBS)
endef
$(foreach s,$(SUITES),$(eval $(call suite,$(s))))

# The program itself with an allocator that fails on demand. libyaml is linked in so that it fails too.
WRAPPED = malloc calloc realloc free strdup
$(ALLOC): $(call object,tests/faults/allocation_faults.c) $(CORE) $(CLI) $(MAIN)
	@mkdir -p $(@D)
	objcopy --redefine-sym main=standfast_main $(MAIN) $(B)/obj/faults_main.o
	$(CC) $(ALL_CFLAGS) $(LDFLAGS) $(WRAPPED:%=-Wl,--wrap=%) -o $@ $(filter-out $(MAIN),$^) \
		$(B)/obj/faults_main.o $(LIBS:-lyaml=-l:libyaml.a) $(CLI_LIBS)

benches: $(BENCHES)
$(B)/bench/%: $(B)/obj/tests/bench/%.o $(SUPPORT) $(CORE) $(CLI)
	@mkdir -p $(@D)
	$(CC) $(ALL_CFLAGS) $(LDFLAGS) -o $@ $^ -lcriterion $(BENCH_LIBS) $(LIBS) $(CLI_LIBS)

BENCH_OBJECTS := $(call object,$(wildcard tests/bench/bench_*.c))
$(BENCH_OBJECTS): CPPFLAGS += $(BENCH_QP) $(BENCH_KDL)
# other knobs mean other objects
$(BENCH_OBJECTS): $(B)/obj/bench_knobs
$(B)/obj/bench_knobs: FORCE
	@mkdir -p $(@D)
	@echo '$(BENCH_QP) $(BENCH_KDL)' | cmp -s - $@ || echo '$(BENCH_QP) $(BENCH_KDL)' >$@

$(B)/bench/bench_chain: $(if $(BENCH_KDL),$(KDL))
$(B)/bench/bench_chain: BENCH_LIBS += $(if $(BENCH_KDL),$(KDL_LIBS))

# chain and dice alone: the rest of the program has no part in it
CHAIN_KDL = $(call object,$(wildcard src/arm/chain*.c) $(addprefix tests/support/,random_chain.c random_base.c cases.c))
$(B)/tests/chain_kdl: $(B)/obj/tests/properties/chain_kdl.o $(KDL) $(CHAIN_KDL)
	@mkdir -p $(@D)
	$(CXX) -o $@ $^ $(LDFLAGS) $(KDL_LIBS) -lm

$(B)/obj/tests/%.o: tests/%.cpp Makefile
	@mkdir -p $(@D)
	$(CXX) $(KDL_CXXFLAGS) -c -o $@ $<

$(B)/demo_history: $(call object,tests/tools/demo_history.c) $(CORE)
	$(CC) $(ALL_CFLAGS) -o $@ $^ $(LDFLAGS) $(LIBS)

$(B)/base_driver: $(call object,tests/tools/base_driver.c) $(SUPPORT) $(CORE) $(CLI)
	$(CC) $(ALL_CFLAGS) $(LDFLAGS) -o $@ $^ -lcriterion $(LIBS) $(CLI_LIBS)

fuzzer: $(B)/fuzz_reader
$(B)/fuzz_reader: $(B)/obj/tests/fuzz/fuzz_reader.o $(CORE)
	$(CC) $(ALL_CFLAGS) -fsanitize=fuzzer $(LDFLAGS) -o $@ $^ $(LIBS)

# ---- installation ----
D = $(DESTDIR)$(PREFIX)
install: all
	install -d $(D)/bin $(D)/lib/pkgconfig $(D)/include $(D)/share/man/man1
	install -m 755 $(B)/standfast $(D)/bin/
	install -m 644 $(B)/libstandfast.a $(B)/libstandfast.so.0 $(D)/lib/
	ln -sf libstandfast.so.0 $(D)/lib/libstandfast.so
	install -m 644 src/standfast.h $(D)/include/
	sed -e 's|@PREFIX@|$(PREFIX)|' -e 's|@VERSION@|$(VERSION)|' src/standfast.pc.in > $(D)/lib/pkgconfig/standfast.pc
	chmod 644 $(D)/lib/pkgconfig/standfast.pc
	install -m 644 src/cli/standfast.1 $(D)/share/man/man1/

uninstall:
	rm -f $(D)/bin/standfast $(D)/lib/libstandfast.a $(D)/lib/libstandfast.so $(D)/lib/libstandfast.so.0
	rm -f $(D)/lib/pkgconfig/standfast.pc $(D)/include/standfast.h $(D)/share/man/man1/standfast.1

-include $(shell find $(B)/obj -name '*.d' 2>/dev/null)
