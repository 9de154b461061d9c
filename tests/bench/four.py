"""The runtime with the first four calculators alone, beside which the whole trade's start is held."""

import os
import shutil
import subprocess
import sys
from pathlib import Path

from benchrule.runtime_parts import closure, imports_among, module_of
from calculators.engine.registry import modules

ROOT = Path(__file__).parents[2]
FOUR = ("fret-spacing", "neck-angle", "glue-open-time", "polishing-pressure")
PACK = """
from pathlib import Path
from benchrule.runtime import runtime_folder
print(runtime_folder(Path({cache!r})))
"""


def runtime_with_four(work: Path) -> Path:
    """Packs it from a copy of the calculators that holds nothing the four do not need."""
    files = [path.relative_to(ROOT).as_posix() for path in (ROOT / "calculators").rglob("*.py")]
    sources = {file: (ROOT / file).read_bytes() for file in sorted(files)}
    imports = imports_among(sources)
    needed = {modules()[name] for name in FOUR}
    for start in [
        *needed,
        *(name for name in imports if name.split(".")[1:2] in (["engine"], ["learning"])),
    ]:
        needed |= {start} | closure(start, imports)
    for file, text in sources.items():
        if module_of(file) in needed or file.endswith("__init__.py"):
            target = work / "four-source" / file
            target.parent.mkdir(parents=True, exist_ok=True)
            target.write_bytes(text)
    for group in (work / "four-source" / "calculators").iterdir():
        if group.is_dir() and not any(path.stem != "__init__" for path in group.glob("*.py")):
            shutil.rmtree(group)
    done = subprocess.run(
        [sys.executable, "-c", PACK.format(cache=str(work / "four-packed"))],
        env={**os.environ, "PYTHONPATH": str(work / "four-source")}, cwd=work,
        check=True, capture_output=True, text=True,
    )  # fmt: skip
    return Path(done.stdout.strip())
