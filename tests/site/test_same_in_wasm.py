"""The same inputs give the same JSON in native CPython and in the browser's runtime.

The two have different C maths libraries: sin, exp, log, pow and their like may differ in the last
bit of the result (a relative 2e-16, at worst 6e-15 for the gamma function). Additions,
multiplications and square roots are the same to the bit. Where such a value is carried through a
solver the difference can grow; so figures are held to a relative 1e-10 (an absolute one near nought,
where large figures have been taken from each other), and what is printed to one unit of its last
digit.
"""

import json
import math
import os
import random
import re
import subprocess
from pathlib import Path
from typing import Any

import pytest

from benchrule.runtime import runtime_folder
from calculators.engine import door
from calculators.engine.registry import load, modules
from tests.calculators.variants import draw_inputs

ROOT = Path(__file__).parents[2]
COUNT = int(os.environ.get("WASM_INPUTS", "200"))  # a calculator; 1,000 in a longer run
NUMBER = re.compile(r"-?\d+(?:\.\d+)?")


def differences(one: Any, two: Any, path: str = "") -> list[str]:
    """Where two answers are not alike."""
    if isinstance(one, dict) and isinstance(two, dict):
        if list(one) != list(two):
            return [f"{path}: {list(one)} and {list(two)}"]
        return [d for key in one for d in differences(one[key], two[key], f"{path}.{key}")]
    if isinstance(one, list) and isinstance(two, list):
        if len(one) != len(two):
            return [f"{path}: {len(one)} and {len(two)} items"]
        return [
            d
            for at, pair in enumerate(zip(one, two, strict=True))
            for d in differences(*pair, f"{path}[{at}]")
        ]
    if isinstance(one, float) and isinstance(two, float | int):
        return (
            []
            if math.isclose(one, two, rel_tol=1e-10, abs_tol=1e-10)
            else [f"{path}: {one!r} and {two!r}"]
        )
    if isinstance(one, str) and isinstance(two, str):
        return [] if one == two or _printed_alike(one, two) else [f"{path}: {one!r} and {two!r}"]
    return [] if one == two else [f"{path}: {one!r} and {two!r}"]


def _printed_alike(one: str, two: str) -> bool:
    if NUMBER.sub("#", one) != NUMBER.sub("#", two):
        return False
    for a, b in zip(NUMBER.findall(one), NUMBER.findall(two), strict=True):
        last = 10.0 ** -len(a.partition(".")[2])
        if abs(float(a) - float(b)) > 1.0001 * last:
            return False
    return True


def in_wasm(requests: list[str], folder: Path) -> list[str]:
    runtime = runtime_folder(ROOT / ".cache" / "benchrule")
    (folder / "requests.json").write_text(json.dumps(requests))
    subprocess.run(
        ["node", str(ROOT / "tests/site/wasm_answers.mjs"), f"{runtime}/",
         str(folder / "requests.json"), str(folder / "answers.json")],
        check=True, capture_output=True, text=True,
    )  # fmt: skip
    answers: list[str] = json.loads((folder / "answers.json").read_text())
    return answers


@pytest.mark.parametrize("name", modules())
def test_random_valid_inputs_give_the_same_answers(name: str, tmp_path: Path) -> None:
    calculator = load(name)
    stream = random.Random(11)
    requests: list[str] = []
    native: list[str] = []
    tries = 0
    while len(requests) < COUNT:
        tries += 1
        assert tries < COUNT * 40, "hardly any random input is valid"
        request = json.dumps({"calculator": name, "inputs": draw_inputs(calculator, stream)})
        answer = door.answer_text(request)
        if '"refused"' in answer[:12] and tries % 10:
            continue  # keep every tenth refusal: their words must be the same too
        requests.append(request)
        native.append(answer)
    faults = []
    same = 0
    for request, here, there in zip(requests, native, in_wasm(requests, tmp_path), strict=True):
        same += here == there
        faults += [f"{request}: {one}" for one in differences(json.loads(here), json.loads(there))]
    print(f"{name}: {same} of {COUNT} the same to the last bit")
    assert not faults, "\n".join(faults[:5])


def test_the_comparison_can_fail() -> None:
    assert differences({"a": [1.0]}, {"a": [1.0 + 1e-9]})
    assert differences({"a": "3.14 mm"}, {"a": "3.16 mm"})
    assert not differences({"a": "3.14 mm"}, {"a": "3.15 mm"})
    assert differences({"a": 1.0}, {"b": 1.0})
    assert differences([1.0], [1.0, 2.0])
