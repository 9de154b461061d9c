"""The calculators are cut into parts: each has all it imports, and none has what only another needs."""

from benchrule.runtime import _sources
from benchrule.runtime_parts import CORE, cut
from calculators.engine.registry import modules


def test_every_file_is_in_one_part_and_every_part_has_what_it_imports() -> None:
    sources = _sources(("calculators",))
    parts = cut(sources)
    files = [file for part in parts for file in part.files]
    assert sorted(files) == sorted(sources)
    assert parts[0].name == CORE
    groups = {module.split(".")[1] for module in modules().values()} | {"learning"}
    assert {part.name for part in parts[1:]} == {f"{CORE}-{group}" for group in groups}


def test_no_group_of_ours_needs_another() -> None:
    for part in cut(_sources(("calculators",))):
        assert part.needs == (), f"{part.name} imports from {part.needs}: move it to laws or engine"


def test_a_law_goes_with_the_only_group_that_calls_it_else_with_the_core() -> None:
    sources = {
        "calculators/__init__.py": b"",
        "calculators/engine/door.py": b"from ..laws.heat import flow",
        "calculators/laws/__init__.py": b"",
        "calculators/laws/heat.py": b"from .base import PI",
        "calculators/laws/base.py": b"PI = 3",
        "calculators/laws/bend.py": b"",
        "calculators/laws/both.py": b"",
        "calculators/neck/angle.py": b"from ..laws import bend, both",
        "calculators/wood/weight.py": b"from ..laws.both import x",
        "own_shop/knife.py": b"import calculators.neck.angle",
    }
    parts = {part.name: part for part in cut(sources)}
    assert "calculators/laws/heat.py" in parts[CORE].files
    assert "calculators/laws/base.py" in parts[CORE].files
    assert "calculators/laws/both.py" in parts[CORE].files
    # The shop's own reaches it too, by way of the neck: so it is the core's.
    assert "calculators/laws/bend.py" in parts[CORE].files
    assert parts["shop-calculators-own-shop"].needs == (f"{CORE}-neck",)
    del sources["own_shop/knife.py"]
    parts = {part.name: part for part in cut(sources)}
    assert parts[f"{CORE}-neck"].files == ("calculators/laws/bend.py", "calculators/neck/angle.py")
