# The commands of the project; `make` alone lists them. Versions are pinned in rust-toolchain.toml, Cargo.lock,
# package-lock.json and here. What is missing is installed by .make/setup.sh, tools under target/tools.

SHELL := /bin/bash
.SHELLFLAGS := -euo pipefail -c
.DEFAULT_GOAL := help
.NOTPARALLEL:
.SUFFIXES:

PORT ?= 8080
CASES ?= 100000
TRUNK_VERSION := 0.21.14
DENY_VERSION := 0.20.2
# One place says it: the crate and the command-line tool must be of the same version.
WASM_BINDGEN_VERSION := $(shell sed -n 's/^wasm-bindgen = .*"=\([0-9.]*\)".*/\1/p' Cargo.toml)
# npm writes this file last, so it tells that everything is in.
PACKAGES := node_modules/.package-lock.json
# The only Python of the project; .make/setup.sh makes it and tests/bench/bench.mjs looks for it.
REFERENCE := target/tools/reference
# Trunk works offline, so crates are fetched before it runs; it stumbles over NO_COLOR=1.
TRUNK := env -u NO_COLOR -u RUST_BACKTRACE trunk --log warn
WASM := wasm32-unknown-unknown

export PATH := $(CURDIR)/target/tools/bin:$(PATH)
export CARGO_TERM_COLOR ?= auto
START := $(shell date +%s)

.PHONY: help run test dist reference bench fuzz deny clean rust node chromium lighthouse bindgen trunk \
        format lint test-native lint-page test-page test-browser

help: ## List the commands
	@sed -n 's/^\([a-z-]*\):.*## \(.*\)/  make \1\t\2/p' Makefile | expand -t 18

run: node ## Build the page and serve it at http://127.0.0.1:8080 (PORT=8081 for another port)
	@node .make/serve.mjs --check --port $(PORT)
	@$(MAKE) --no-print-directory dist
	@node .make/serve.mjs --folder dist --port $(PORT)

test: rust node ## Set everything up and run every check and test, the quick ones first
	@$(MAKE) --no-print-directory format lint deny test-native lint-page test-page dist test-browser
	@echo "Every check and test passed in $$(( ($$(date +%s) - $(START) + 59) / 60 )) minutes at most."

dist: rust $(PACKAGES) bindgen trunk ## Leave the finished page in dist/, for any web server or sub-path of one
	@cargo fetch --quiet --locked
	@$(TRUNK) build

reference: ## Reckon the bowls, programmes, bodies and airs of tests/reference again with other programs; needs Python, which nothing else does
	@.make/setup.sh reference
	@$(REFERENCE)/bin/python tests/reference/reference.py
	@$(REFERENCE)/bin/python tests/reference/programmes.py
	@$(REFERENCE)/bin/python tests/reference/air.py
	@$(REFERENCE)/bin/python tests/reference/heat.py
	@$(REFERENCE)/bin/python tests/reference/fits.py

bench: dist chromium lighthouse ## Print sizes and times, each as a ratio to its floor
	@cargo fetch --quiet --locked --manifest-path tests/floor/Cargo.toml
	@cd tests/floor && CARGO_TARGET_DIR=$${CARGO_TARGET_DIR:-$(CURDIR)/target} $(TRUNK) build
	@cargo build --quiet --locked --release --no-default-features --example worksheet_time --example reading_time --example solution_time --example programme_time --example swap_time --example heat_time --example comparison_time
	@node tests/bench/bench.mjs

FUZZ := cargo test --quiet --locked --profile fuzz --no-default-features

# What a packet makes is kept for good, and looked for among all that was made: a tenth of the cases takes as long.
fuzz: rust ## Throw damaged and random text at all that reads, 100,000 of each (CASES=10000 for less)
	PROPTEST_CASES=$(CASES) $(FUZZ) --test laws_damaged --test laws_read
	PROPTEST_CASES=$(CASES) $(FUZZ) --test laws -- any_text any_heap damaged_
	PROPTEST_CASES=$$(( $(CASES) / 10 )) $(FUZZ) --test laws -- any_packet

# A fault found since the last build breaks no build where its database cannot be had.
deny: rust ## Look at the licences, duplicates and sources of dependencies, and at their known faults if the list of these can be fetched
	@.make/setup.sh cargo-deny $(DENY_VERSION)
	@cargo fetch --quiet --locked
	@cargo-deny --log-level error --locked --offline check bans licenses sources
	@if cargo-deny --locked fetch db >/dev/null 2>&1; then cargo-deny --log-level error --locked --offline check advisories; \
	else echo "advisories not looked at: their database could not be fetched"; fi

clean: ## Delete what was built, but keep the tools
	@rm -rf dist node_modules
	@if [ -d target ]; then find target -mindepth 1 -maxdepth 1 ! -name tools -exec rm -rf {} +; fi

# The steps of `make test`, in order. Each can be called by itself.

format: rust
	@cargo fmt --check || { echo "Some Rust is not formatted as rustfmt does it: run cargo fmt."; exit 1; }

lint: rust
	cargo clippy --quiet --locked --no-default-features --all-targets -- -D warnings

test-native: rust
	@if cargo nextest --version >/dev/null 2>&1; then \
	  set -x; cargo nextest run --locked --no-default-features; cargo test --quiet --locked --no-default-features --doc; \
	else \
	  set -x; cargo test --quiet --locked --no-default-features; \
	fi

lint-page: rust
	cargo clippy --quiet --locked --target $(WASM) --lib --bins --test browser -- -D warnings

test-page: bindgen chromium
	CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUNNER=wasm-bindgen-test-runner WASM_BINDGEN_TEST_TIMEOUT=120 \
	  CHROMEDRIVER="$$(command -v chromedriver)" CARGO_PROFILE_DEV_DEBUG=false \
	  cargo test --locked --target $(WASM) --test browser

test-browser: $(PACKAGES) chromium
	@[ -f dist/index.html ] || { echo "There is no built page: run make dist first."; exit 1; }
	node --test --test-concurrency=2 tests/e2e/*.test.mjs

# What has to be there first.

rust:
	@.make/setup.sh rust

node:
	@.make/setup.sh node

chromium:
	@.make/setup.sh chromium

lighthouse: node
	@.make/setup.sh lighthouse

bindgen: rust
	@.make/setup.sh wasm-bindgen $(WASM_BINDGEN_VERSION)

trunk: rust
	@.make/setup.sh trunk $(TRUNK_VERSION)

$(PACKAGES): package-lock.json package.json | node
	@.make/setup.sh packages
	@touch $@
