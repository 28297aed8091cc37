# Tenderwright. `make package` compiles the demonstration; `make test` passes the tests. Both do their own set-up.
PYTHON ?= python3
VENV := .venv
BIN := $(VENV)/bin
READY := $(VENV)/.ready
OUT ?= build

.PHONY: package test laws life lint bench fuzz wheel fresh lock clean

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

SECONDS ?= 600
fuzz: $(READY)
	$(BIN)/python -m tests.fuzz --seconds $(SECONDS)

wheel: $(READY)
	$(BIN)/python -m hatchling build --target wheel

# Set-up on bare Debian systems, as root: `make fresh`, or `make fresh CASES="bare package test"`.
fresh:
	tests/fresh/fresh.sh $(CASES)

# Set-up: what the typesetter loads and the venv module, where Debian's packages can bring them, then a virtual
# environment from the lock file. It is begun anew until .ready is there, and where the checkout was moved or the Python
# that it was made for is gone.
LIBRARIES = $(PYTHON) -I compiler/tenderwright/writing/typesetter_libraries.py
NO_VENV = $(PYTHON) -c 'import sys; print("python%d.%d-venv" % sys.version_info[:2])'
PIP_INSTALL := $(BIN)/python -m pip install --quiet --disable-pip-version-check
SAY = [ ! -t 2 ] || echo "set-up:"
FAIL = { echo "set-up:" $(1) >&2; exit 2; }

$(shell [ "$$(cat $(READY) 2>/dev/null)" = "$$(pwd -P)" ] && $(BIN)/python -c '' 2>/dev/null || rm -f $(READY))

$(READY): requirements.lock pyproject.toml
	@$(PYTHON) -c 'import sys; sys.exit(sys.version_info < (3, 11))' \
	  || $(call FAIL,"Python 3.11 or newer is needed; where it has a name of its own say so: make PYTHON=python3.12")
	@lacking="$$($(LIBRARIES) --debian) $$($(PYTHON) -c 'import ensurepip' 2>/dev/null || $(NO_VENV))"; \
	  [ -z "$${lacking# }" ] || sh .ci/debian-packages $$lacking
	@$(LIBRARIES)
	@$(PYTHON) -c 'import ensurepip' 2>/dev/null \
	  || $(call FAIL,"Python lacks its module ensurepip: install the package of your system that brings it with venv and pip")
	@$(SAY) "a virtual environment in $(VENV)" >&2
	@[ ! -L $(VENV) ] || rm $(VENV)
	@$(PYTHON) -m venv --clear $(VENV) || $(call FAIL,"the virtual environment could not be made for the reason above")
	@$(SAY) "the libraries in requirements.lock; some minutes the first time" >&2
	@$(PIP_INSTALL) --require-hashes -r requirements.lock && $(PIP_INSTALL) --no-deps --no-build-isolation --editable . \
	  || $(call FAIL,"the libraries could not be installed for the reason above; once it is mended run make again")
	@pwd -P >$@

lock:
	$(BIN)/pip install --quiet pip-tools
	$(BIN)/pip-compile --quiet --extra dev --generate-hashes --no-emit-index-url --no-emit-trusted-host --no-emit-find-links --no-emit-options --no-header --no-annotate --allow-unsafe --strip-extras --output-file requirements.lock pyproject.toml

clean:
	rm -rf $(VENV) build/yard build/owner build/preview build/life
