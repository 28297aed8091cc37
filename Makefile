# Tenderwright. `make package` compiles the demonstration; `make test` passes the tests. Both do their own set-up.
PYTHON ?= python3
VENV := .venv
BIN := $(VENV)/bin
READY := $(VENV)/.ready
OUT ?= build

.PHONY: package test laws life lint bench lock clean

package: $(READY)
	$(BIN)/tenderwright build package_src --out $(OUT)

test: $(READY) lint
	$(BIN)/python -m pytest --numprocesses auto --dist loadfile

laws: $(READY)
	$(BIN)/python -m pytest --numprocesses auto --dist loadfile tests/laws

life: $(READY)
	$(BIN)/python -m tests.lives.life $(OUT)/life

lint: $(READY)
	$(BIN)/ruff check .
	$(BIN)/ruff format --check .
	$(BIN)/mypy

bench: $(READY)
	$(BIN)/python -m tests.bench.bench

# Set-up: Pango for the typesetter and the venv module where a Debian machine lacks them, then a virtual environment
# from the lock file.
APT := sudo=$$([ "$$(id -u)" -eq 0 ] || echo sudo); $$sudo apt-get update -qq && DEBIAN_FRONTEND=noninteractive $$sudo apt-get install -y -qq --no-install-recommends
HAS_PANGO := $(PYTHON) -c 'import ctypes.util, sys; sys.exit(not ctypes.util.find_library("pangoft2-1.0"))'

$(READY): requirements.lock pyproject.toml
	@$(PYTHON) -c 'import sys; sys.exit(sys.version_info < (3, 11))' || { echo "Python 3.11 or newer is needed" >&2; exit 1; }
	@$(HAS_PANGO) || { command -v apt-get >/dev/null && { $(APT) libpango-1.0-0 libpangoft2-1.0-0 libharfbuzz-subset0; }; } \
	  || { echo "the typesetter needs Pango: install it with the machine's package manager" >&2; exit 1; }
	@$(PYTHON) -c 'import ensurepip' 2>/dev/null || { $(APT) python3-venv; }
	[ -x $(BIN)/python ] || $(PYTHON) -m venv $(VENV)
	$(BIN)/python -m pip install --quiet --disable-pip-version-check --require-hashes -r requirements.lock
	$(BIN)/python -m pip install --quiet --disable-pip-version-check --no-deps --no-build-isolation --editable .
	touch $@

lock:
	$(BIN)/pip install --quiet pip-tools
	$(BIN)/pip-compile --quiet --extra dev --generate-hashes --no-emit-index-url --no-emit-trusted-host --no-emit-find-links --no-emit-options --no-header --no-annotate --allow-unsafe --strip-extras --output-file requirements.lock pyproject.toml

clean:
	rm -rf $(VENV) build/yard build/owner build/preview build/life
