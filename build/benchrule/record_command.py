"""``benchrule record``: measured values of an order, back in the data."""

import sys
from pathlib import Path
from typing import Any

import click

from calculators.engine.showing import SYSTEMS

from .opening import open_handbook
from .records import CannotRecord, device_text, from_device, recorded, settings_of, write_records

CODES = {"reject": 1, "cannot tell": 3}


@click.command()
@click.argument("order")
@click.argument("station", default="")
@click.argument("readings", nargs=-1)
@click.option(
    "--take", type=click.Path(path_type=Path, exists=True), help="a file that a device saved"
)
@click.option("--units", type=click.Choice(SYSTEMS), help="the shop's own where left out")
@click.option("--by", default="", help="initials")
@click.option(
    "--on", "day", default="", help="the day, like 2026-11-20; today where it is left out"
)
@click.option("-f", "--config-file", default="mkdocs.yml", type=click.Path(path_type=Path))
def record(
    order: str, station: str, readings: tuple[str, ...], take: Path | None, units: str | None, by: str,
    day: str, config_file: Path,
) -> None:  # fmt: skip
    """Record what was measured for ORDER at STATION, as name=value; the sheet and later stations take it.

    Exits 0 where all is in, 1 where something is out, 3 where a gauge cannot tell, 2 where a reading
    does not fit.
    """
    handbook, _ = open_handbook(config_file)
    try:
        found = _taken(handbook, order, take) if take else {}
        pairs = dict(_pair(one) for one in readings)
        if pairs:
            found |= recorded(handbook, order, station, pairs, units or handbook.units)
        if not found:
            _, stations = settings_of(handbook, order)
            for name, settings in stations.items():
                if not station or name == station:
                    click.echo(f"{name}: {', '.join(settings)}")
            return
    except CannotRecord as error:
        raise click.UsageError(str(error)) from None
    path = write_records(handbook.docs / "data", order, found, day, by)
    for one in found.values():
        click.echo(one["words"])
    click.echo(f"Written to {path}", err=True)
    verdicts = {one["verdict"] for one in found.values()}
    sys.exit(next((CODES[one] for one in CODES if one in verdicts), 0))


def _pair(text: str) -> tuple[str, str]:
    name, equals, value = text.partition("=")
    if not equals:
        raise CannotRecord(f"write a reading as name=value, not {text}")
    return name.strip(), value.strip()


def _taken(handbook: Any, order: str, path: Path) -> dict[str, dict[str, Any]]:
    """Every reading of a device's file, at the stations that its keys belong to."""
    _, stations = settings_of(handbook, order)
    where = {key: name for name, settings in stations.items() for key in settings}
    found = {}
    for key, (given, units, day) in from_device(device_text(path), order).items():
        if key not in where:
            raise CannotRecord(f"the sheet of {order} has no setting {key[:60]}")
        one = recorded(handbook, order, where[key], {key: given}, units)[key]
        found[key] = {**one, "on": day}
    return found
