# Everything a maker or a contributor runs. Needs only Python 3.11 with its venv module, and make.
# On Windows use `pipx install .` for the command, and the lines of the recipes by hand for the tests.

PYTHON ?= python3
WORKSHOP ?= village
COPIES ?= 4
OUT ?= out/alder
VENV := .venv
RUN := $(VENV)/bin/python
PIP := $(RUN) -m pip --quiet --disable-pip-version-check
PINS := --constraint constraints.txt
LEAN := out/lean

.DEFAULT_GOAL := help
.PHONY: help plan test check format lint types house lean docs stale bench pins clean

help: ## say what can be made
	@awk -F ':.*## ' '/^[a-z]+:.*## / { printf "make %-8s %s\n", $$1, $$2 }' $(MAKEFILE_LIST)

$(VENV)/.made:
	$(PYTHON) -m venv $(VENV)
	touch $@

# Wheels only, so that nothing needs a compiler.
$(VENV)/.ready: pyproject.toml constraints.txt | $(VENV)/.made
	$(PIP) install --only-binary :all: $(PINS) --editable .
	touch $@

# bd_warehouse brings standard dimensions as plain tables; its solid modeller is not wanted.
$(VENV)/.tested: $(VENV)/.ready
	$(PIP) install $(PINS) --editable '.[test]'
	$(PIP) install $(PINS) --no-deps bd_warehouse
	touch $@

plan: $(VENV)/.ready ## plan the example machine: checks, choice, orders, cuts, drawings
	$(VENV)/bin/scantling plan examples/alder --workshop $(WORKSHOP) --copies $(COPIES) --out $(OUT)

test: $(VENV)/.tested ## run every test
	$(RUN) -m pytest -n 2

check: lint types house stale test lean ## all that must hold before a change lands

format: $(VENV)/.tested ## lay out the code as the house wants it
	$(RUN) -m ruff format
	$(RUN) -m ruff check --fix

lint: $(VENV)/.tested ## layout and lint
	$(RUN) -m ruff format --check
	$(RUN) -m ruff check

types: $(VENV)/.tested ## strict types
	$(RUN) -m mypy

house: $(VENV)/.tested ## ranks, sizes, docstrings, tables, words, start-up
	$(RUN) -m pytest tests/house -q

stale: $(VENV)/.tested ## are the generated pages those of the code?
	$(RUN) builders/make_docs.py --check

docs: $(VENV)/.tested ## make the generated pages anew
	$(RUN) builders/make_docs.py

# As pipx would install it: a built wheel, no test extras, away from the source folder.
lean: ## install as a user would, and start
	$(PYTHON) -m venv --clear $(LEAN)
	$(LEAN)/bin/python -m pip --quiet --disable-pip-version-check install $(PINS) .
	cd $(LEAN) && bin/scantling --version && bin/scantling --help >/dev/null
	cd $(LEAN) && bin/scantling plan ../../examples/alder --workshop $(WORKSHOP) --copies $(COPIES) --out plan >/dev/null
	$(LEAN)/bin/python -m pip check

pins: ## write down the versions that are installed now, after the tests have passed with them
	$(PIP) freeze --exclude-editable | grep -v ' @ ' > constraints.txt

bench: $(VENV)/.tested ## measure against the targets
	$(RUN) benchmarks/run.py

clean: ## take away what was made here
	rm -rf $(VENV) out .pytest_cache .mypy_cache .ruff_cache .hypothesis
