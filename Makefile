# `make demo` does the main job on the tune that comes with the program; `make test` passes the tests.
# Both set up what they need in .venv on a fresh Debian machine.

PYTHON ?= python3
VENV := .venv
READY := $(VENV)/.ready
TSC := node_modules/typescript/bin/tsc

# Tests of the ground, the music and the formats whose cover is counted: counting doubles their time.
GROUND := $(patsubst %,tests/test_%.py,abc_reader abc_writer arrangement articulation fills fingering harmonise idiom irish \
	keys midi_reader musicxml_reader musicxml_writer phrase_figures phrasing playability read scale unfold words)

.PHONY: demo docs test check cover bounds wheel bench listen-bench scale sweep taste fuzz kills types format clean

demo: $(READY)
	$(VENV)/bin/fioritura demo --out demo

test: $(READY)
	@command -v chromium >/dev/null || (apt-get update -q && apt-get install -y -q chromium) >/dev/null
	$(VENV)/bin/python -m pytest -n 2

check: $(READY) $(TSC)
	$(VENV)/bin/ruff check .
	$(VENV)/bin/ruff format --check .
	$(VENV)/bin/mypy
	$(VENV)/bin/lint-imports --no-cache
	$(VENV)/bin/python -m tools.page_types --check
	$(VENV)/bin/node $(TSC) --project .

cover: $(READY)
	$(VENV)/bin/python -m coverage run -m pytest $(GROUND)
	$(VENV)/bin/python -m coverage report

bounds: $(READY)
	$(VENV)/bin/python -m tools.bounds

wheel: $(READY)
	$(VENV)/bin/python -m tools.wheel

docs: $(READY)
	NO_MKDOCS_2_WARNING=1 $(VENV)/bin/python -m mkdocs build --strict

bench: $(READY)
	$(VENV)/bin/python -m pytest benchmarks -o python_files='bench_*.py' -o python_functions='bench_*' --benchmark-only -q

listen-bench: $(READY)
	PYTHONPATH=. $(VENV)/bin/python benchmarks/listen_bench.py && notes=0 || notes=1; \
	PYTHONPATH=. $(VENV)/bin/python benchmarks/name_bench.py && exit $$notes

scale: $(READY)
	PYTHONPATH=. $(VENV)/bin/python benchmarks/scale_bench.py

sweep: $(READY)
	$(VENV)/bin/python -m pytest -m slow -n 2 --hypothesis-profile=search

taste: $(READY)
	PYTHONPATH=. $(VENV)/bin/python benchmarks/taste.py

fuzz: $(READY)
	$(VENV)/bin/python -m tools.fuzz_sweep

kills: $(READY)
	$(VENV)/bin/python -m tools.kill_batches

types: $(READY)
	$(VENV)/bin/python -m tools.page_types

format: $(READY)
	$(VENV)/bin/ruff check --fix .
	$(VENV)/bin/ruff format .

clean:
	rm -rf $(VENV) node_modules demo site build dist .coverage .mypy_cache .ruff_cache .pytest_cache .hypothesis .benchmarks

$(READY): pyproject.toml
	@$(PYTHON) -c 'import ensurepip, venv' 2>/dev/null || (apt-get update -q && apt-get install -y -q python3-venv)
	$(PYTHON) -m venv $(VENV)
	$(VENV)/bin/python -m pip install --quiet --upgrade pip
	$(VENV)/bin/python -m pip install --quiet --editable '.[dev]'
	@touch $(READY)

$(TSC): package-lock.json $(READY)
	PATH="$(CURDIR)/$(VENV)/bin:$$PATH" npm ci --silent --no-audit --no-fund --ignore-scripts
	@touch $(TSC)
