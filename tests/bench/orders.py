"""How the build grows with the orders: the same handbook with more and more of them."""

import random
import shutil
import sys
from pathlib import Path

import yaml

from benchrule.handbook import load_handbook

from .building import processor_seconds
from .rows import Row

ROOT = Path(__file__).parents[2]
COUNTS = (30, 100, 300)


def lay_out_orders(folder: Path, count: int) -> None:
    """A copy of the handbook with ``count`` orders, no two alike."""
    shutil.copytree(ROOT / "docs", folder / "docs")
    shutil.copyfile(ROOT / "mkdocs.yml", folder / "mkdocs.yml")
    handbook, _ = load_handbook(ROOT, ROOT / "docs")
    patterns = [dict(entry.fields) for entry in handbook.orders.values()]
    stream = random.Random(5)
    orders = {}
    for number in range(count):
        order = dict(patterns[number % len(patterns)])
        scale = {"ukulele": 380, "twelve": 632}.get(order["model"], 645)
        order["values"] = {
            **(order.get("values") or {}),
            "scale_length": f"{scale + stream.randint(-30, 30) / 10} mm",
        }
        orders[f"2027-{number:03}"] = order
    path = folder / "docs/data/orders/invented.yml"
    path.write_text(yaml.safe_dump(orders, sort_keys=False), "utf-8")


def measure_orders(work: Path) -> dict[str, float]:
    """Processor seconds of a first build, nothing kept, by how many orders there are."""
    build = [sys.executable, "-m", "mkdocs", "build", "-q"]
    found = {}
    for count in COUNTS:
        folder = work / f"orders-{count}"
        lay_out_orders(folder, count)
        # The runtime is packed already: it has nothing to do with orders.
        shutil.copytree(
            ROOT / ".cache", folder / ".cache", ignore=shutil.ignore_patterns("kept.json")
        )
        found[str(count)] = processor_seconds([*build, "-d", str(work / "built-orders")], folder)
        shutil.rmtree(folder)
    return found


def orders_rows(found: dict[str, float]) -> list[Row]:
    """Each size, and what one order more takes."""
    rows = [Row(f"{count} orders", f"{taken:.1f} s") for count, taken in found.items()]
    (least, first), *_, (most, last) = found.items()
    each = (last - first) / (int(most) - int(least))
    return [*rows, Row("Each order more", f"{each * 1000:.0f} ms")]
