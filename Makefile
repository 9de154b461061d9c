# Every command sets up what it needs first; nothing else has to be run before it.
.PHONY: serve site check test bench fuzz setup lock audit
export NO_MKDOCS_2_WARNING = 1
PYTHON_BIN = .venv/bin/python

serve: setup ## build the demo handbook into site/ and serve it at http://127.0.0.1:8000
	.venv/bin/benchrule serve

site: setup ## build the demo handbook into site/
	.venv/bin/benchrule build

check: setup ## list every problem of the handbook
	.venv/bin/benchrule check

test: setup ## every test: style, types, calculators, build, runtime, browser
	.venv/bin/ruff check .
	.venv/bin/ruff format --check .
	.venv/bin/mypy
	CHROMIUM="$$(build/tools/find-chromium.sh)" $(PYTHON_BIN) -m pytest -n auto --maxprocesses 4 --dist loadfile

bench: setup ## the speed figures
	CHROMIUM="$$(build/tools/find-chromium.sh)" $(PYTHON_BIN) -m tests.bench

fuzz: setup ## 200 000 hostile cases, led by coverage, to all that takes what strangers send
	$(PYTHON_BIN) -m tests.fuzz

setup:
	@build/tools/set-up.sh

audit: setup ## look the locked packages up in the advisories; needs the network
	@build/tools/audit.sh

lock: ## write requirements.lock anew from pyproject.toml
	uv pip compile --universal --python-version 3.12 --generate-hashes --group dev \
		pyproject.toml -o requirements.lock --no-header --quiet
