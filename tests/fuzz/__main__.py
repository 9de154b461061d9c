"""Coverage-guided fuzzing of everything that takes what strangers type or send.

    python -m tests.fuzz [TARGET ...] [--cases 200000] [--seconds N] [--seed S]

Each target runs in a process of its own under atheris, from seeds made of the declarations and with a
dictionary of their words. What a run learns stays in .cache/fuzz/<target>/corpus for the next; a case
that breaks a rule is written to .cache/fuzz/<target>/found. Exits 1 where there is any.
"""

import argparse
import base64
import hashlib
import json
import re
import subprocess
import sys
import time
import traceback
from collections.abc import Iterable
from importlib.util import find_spec
from pathlib import Path
from typing import Any

ROOT = Path(__file__).parents[2]
CACHE = ROOT / ".cache" / "fuzz"
SLOWED = 4  # how much slower a case may run while its branches are counted
HANGS = 60  # seconds after which a case is given up
LARGEST = 2048  # MB of the whole process
MOST_FINDINGS = 40  # of one target
WATCHED = ("calculators", "benchrule.class_files", "benchrule.records", "json")
BUILD = {"yaml": "located_yaml", "names-files": "training_commands"}
DEEP = ("calculators", "exercises")  # that are led by the branches of every calculator too
HEAD = ("target", "cases", "answered", "coverage", "features", "new corpus", "slowest", "findings")


def main() -> None:
    """Runs the targets one after the other and prints the table."""
    parts: dict[str, int] = {}
    if "--child" not in sys.argv:  # the child imports them under the eyes of atheris
        from .targets import TARGETS

        parts = {name: target.part for name, target in TARGETS.items()}
    parser = argparse.ArgumentParser(
        prog="python -m tests.fuzz", description=__doc__.split("\n")[0]
    )
    parser.add_argument("targets", nargs="*", metavar="TARGET", help=", ".join(parts))
    parser.add_argument("--cases", type=int, default=200_000, help="of all targets together")
    parser.add_argument("--seconds", type=int, default=0, help="at most, for each target")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument(
        "--keep", type=Path, default=CACHE, help="the folder of what is learnt and found"
    )
    parser.add_argument("--child", help=argparse.SUPPRESS)
    given = parser.parse_args()
    if find_spec("atheris") is None:
        parser.error(
            "atheris is not here: it comes for Linux on x86-64 with Python before 3.14; "
            "FUZZ_CASES=2000 pytest tests/fuzz runs anywhere"
        )
    if given.child:
        _fuzz(given.child, given.cases, given.seconds, given.seed, given.keep)
        return
    strange = set(given.targets) - set(parts)
    if strange:
        parser.error(
            f"there is no target {', '.join(sorted(strange))}; there are {', '.join(parts)}"
        )
    chosen = given.targets or list(parts)
    rows = []
    for name in chosen:
        cases = max(1, given.cases * parts[name] // sum(parts[one] for one in chosen))
        rows.append(_run(name, cases, given.seconds, given.seed, given.keep.resolve()))
    print("\n".join(_table(rows)))
    for row in rows:
        for one in row["found"]:
            print(f"\n{row['name']}: {one['words']}\n  {one['file']}\n  {one['where']}")
    sys.exit(any(row["found"] for row in rows))


def _table(rows: list[dict[str, Any]]) -> Iterable[str]:
    lines = [HEAD] + [
        (
            row["name"], str(row["cases"]), f"{row['answered'] * 100 // max(1, row['cases'])} %",
            str(row["coverage"]), str(row["features"]), str(row["corpus"]),
            f"{row['slowest'] * 1000:.0f} ms", str(len(row["found"])),
        )
        for row in rows
    ]  # fmt: skip
    total = sum(row["cases"] for row in rows)
    lines.append(("in all", str(total), *[""] * 5, str(sum(len(row["found"]) for row in rows))))
    widths = [max(len(line[at]) for line in lines) for at in range(len(HEAD))]
    for line in lines:
        yield "  ".join(
            cell.ljust(width) if at == 0 else cell.rjust(width)
            for at, (cell, width) in enumerate(zip(line, widths, strict=True))
        )


def _run(name: str, cases: int, seconds: int, seed: int, keep: Path) -> dict[str, Any]:
    """One target in processes of its own, until its cases are done; a case that ends one is found."""
    folder = _prepare(name, keep)
    row: dict[str, Any] = {
        "name": name, "cases": 0, "answered": 0, "coverage": 0, "features": 0, "slowest": 0.0,
        "found": [],
    }  # fmt: skip
    before = len(list((folder / "corpus").iterdir()))
    ends = time.monotonic() + seconds if seconds else 0.0
    while row["cases"] < cases and len(row["found"]) < MOST_FINDINGS:
        left = max(1, int(ends - time.monotonic())) if ends else 0
        command = [
            sys.executable, "-m", "tests.fuzz", "--child", name, "--cases", str(cases - row["cases"]),
            "--seconds", str(left), "--seed", str(seed + row["cases"]), "--keep", str(keep),
        ]  # fmt: skip
        log = folder / "log.txt"
        with log.open("w") as out:
            code = subprocess.run(command, cwd=ROOT, stdout=out, stderr=out, check=False).returncode
        _add(row, folder, log.read_text("utf-8", "replace"), code)
        if code == 0 or (ends and time.monotonic() >= ends):
            break
    row["corpus"] = len(list((folder / "corpus").iterdir())) - before
    return row


def _prepare(name: str, keep: Path) -> Path:
    """The folders, the seeds and the dictionary of a target."""
    from .targets import TARGETS

    target, folder = TARGETS[name], keep / name
    for part in ("corpus", "found", "seeds", "long", "ended"):
        (folder / part).mkdir(parents=True, exist_ok=True)
    for old in [
        one for part in ("found", "seeds", "long", "ended") for one in (folder / part).iterdir()
    ]:
        old.unlink()
    for seed in target.seeds():
        part = "seeds" if len(seed) <= target.longest else "long"
        (folder / part / hashlib.sha256(seed).hexdigest()[:16]).write_bytes(seed)
    words = sorted({word for word in target.words() if 0 < len(word) <= 60})
    lines = [f'"{"".join(f"\\x{byte:02x}" for byte in word.encode())}"' for word in words]
    (folder / "words.dict").write_text("\n".join(lines) + "\n")
    return folder


def _add(row: dict[str, Any], folder: Path, log: str, code: int) -> None:
    """Adds what a process did to its target's row."""
    stats = folder / "stats.json"
    done = json.loads(stats.read_text("utf-8")) if stats.exists() else {}
    stats.unlink(missing_ok=True)
    run = re.findall(r"number_of_executed_units: (\d+)", log)
    row["cases"] += max(1, done.get("cases", 0), *map(int, run))
    row["answered"] += done.get("answered", 0)
    row["found"] += done.get("found", [])
    for name, short in (("coverage", "cov"), ("features", "ft")):
        figures = [int(one) for one in re.findall(rf"\b{short}: (\d+)", log)]
        row[name] = max([row[name], *figures])
    for case in done.get("slowest", ()):
        took = _time_alone(row["name"], base64.b64decode(case))
        row["slowest"] = max(row["slowest"], took)
    ended = list((folder / "ended").iterdir())
    for path in ended:
        kept = path.rename(folder / "found" / path.name)
        row["found"].append({"words": f"the process ended: {path.name.partition('-')[0]}",
                             "file": str(kept), "where": _last_frames(log)})  # fmt: skip
    if code and not ended and not done.get("found"):
        row["found"].append({"words": f"the process ended with {code}", "where": log[-1500:],
                             "file": str(folder / "log.txt")})  # fmt: skip


def _last_frames(log: str) -> str:
    return " < ".join(re.findall(r'File ".*?([^/"]+\.py)", line (\d+)', log)[-3:] and [
        f"{file}:{line}" for file, line in re.findall(r'File ".*?([^/"]+\.py)", line (\d+)', log)[:4]
    ])  # fmt: skip


def _time_alone(name: str, case: bytes) -> float:
    """Processor time of a case as people meet it, without the counting of branches."""
    from .targets import TARGETS

    best = float("inf")
    for _ in range(3):
        began = time.process_time()
        try:
            TARGETS[name].case(case)
        except Exception:  # it is found already
            return 0.0
        best = min(best, time.process_time() - began)
    return best


def _fuzz(name: str, cases: int, seconds: int, seed: int, keep: Path) -> None:
    """One target under atheris, in this process, which ends with it."""
    import atheris

    with atheris.instrument_imports(include=[*WATCHED, f"benchrule.{BUILD.get(name, 'reading')}"]):
        from calculators.learning import class_door  # noqa: F401  imported late, as are calculators

        from .doors import calculators
        from .targets import TARGETS

        if name in DEEP:
            calculators()
    from .outcome import SECONDS, Watch

    folder, target = keep / name, TARGETS[name]
    watch = Watch(SECONDS * SLOWED)
    found: dict[str, dict[str, str]] = {}

    def one(data: bytes) -> None:
        try:
            watch.run(target.case, data)
        except Exception as error:
            where = _where(error)
            if where not in found:
                path = folder / "found" / hashlib.sha256(data).hexdigest()[:16]
                path.write_bytes(data)
                words = f"{type(error).__name__}: {str(error)[:300]}"
                found[where] = {"words": words, "file": str(path), "where": where}
                save()
        if watch.cases % 250 == 0 or watch.cases >= cases - 1:
            save()

    def save() -> None:
        (folder / "stats.json").write_text(json.dumps({
            "cases": watch.cases, "answered": watch.answered, "found": list(found.values()),
            "slowest": [base64.b64encode(case).decode() for _, case in watch.slowest],
        }))  # fmt: skip

    for path in sorted((folder / "long").iterdir()):  # the fuzzer would cut them off
        one(path.read_bytes())
    atheris.Setup(
        [
            sys.argv[0], f"-runs={cases}", f"-max_total_time={seconds}", f"-seed={seed}",
            f"-max_len={target.longest}", f"-dict={folder / 'words.dict'}", f"-timeout={HANGS}",
            f"-artifact_prefix={folder / 'ended'}/", f"-rss_limit_mb={LARGEST}",
            "-use_value_profile=1", "-reload=0", f"-report_slow_units={HANGS}", "-print_final_stats=1",
            str(folder / "corpus"), str(folder / "seeds"),
        ],
        one,
    )  # fmt: skip
    atheris.Fuzz()


def _where(error: BaseException) -> str:
    """The last places of ours in a traceback: the name of a finding."""
    frames = [
        f"{Path(frame.filename).relative_to(ROOT)}:{frame.lineno}"
        for frame in traceback.extract_tb(error.__traceback__)
        if Path(frame.filename).is_relative_to(ROOT) and "outcome.py" not in frame.filename
    ]
    return f"{type(error).__name__} at {' > '.join(frames[-3:])}"


if __name__ == "__main__":
    main()
