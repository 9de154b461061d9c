"""The files of trainers and trainees, as the command line takes and writes them."""

from collections.abc import Iterable
from pathlib import Path
from typing import Any

import click

from calculators.learning.assignment import LONGEST_TEXT as LONGEST_ASSIGNMENT
from calculators.learning.assignment import Assignment, UnfitAssignment, read
from calculators.learning.class_marks import MOST_FILES
from calculators.learning.results import LONGEST_TEXT as LONGEST_RESULT

from .exercise_bank import exercise_bank
from .opening import open_handbook, site_places

BYTES_A_LETTER = 4  # at most, in UTF-8


class Refused(click.ClickException):
    """What cannot be done as it was asked; the message says why."""

    exit_code = 2


def bank_of(config_file: Path) -> dict[str, Any]:
    """The exercises of the handbook that a mkdocs.yml names."""
    handbook, problems = open_handbook(config_file)
    if problems:
        raise Refused(f"the handbook has problems, such as {problems[0]}; see benchrule check")
    return exercise_bank(handbook)


def text_of(path: Path, longest: int) -> str:
    """A file's text; what is too large is not read in whole, and refused by whoever reads it."""
    try:
        with path.open("rb") as file:
            data = file.read(longest * BYTES_A_LETTER + 1)
        if len(data) > longest * BYTES_A_LETTER:
            return " " * (longest + 1)  # too long, whatever it says
        return data.decode("utf-8-sig")
    except UnicodeDecodeError:
        return "\0"  # no text: no reader takes it
    except OSError as error:
        raise Refused(f"{path}: {error.strerror or 'cannot be read'}") from None


def read_assignment(path: Path) -> Assignment:
    """The assignment in a file."""
    try:
        return read(None, text_of(path, LONGEST_ASSIGNMENT))
    except UnfitAssignment as error:
        raise Refused(f"{path}: {error}") from None


def result_files(paths: Iterable[Path], assignment: Path) -> list[tuple[str, str]]:
    """(name, text) of result files; of a folder, every .json in it but the assignment itself."""
    chosen: dict[Path, Path] = {}
    for path in paths:
        inside = _files_in(path) if path.is_dir() else [path]
        for one in inside:
            if one.resolve() != assignment.resolve():
                chosen.setdefault(one.resolve(), one)
    if not chosen:
        raise Refused("there are no result files")
    if len(chosen) > MOST_FILES:
        raise Refused(f"there are {len(chosen)} files; at most {MOST_FILES} are marked at once")
    names = [one.name for one in chosen.values()]
    return [
        (one.name if names.count(one.name) == 1 else str(one), text_of(one, LONGEST_RESULT))
        for one in chosen.values()
    ]


def _files_in(folder: Path) -> list[Path]:
    """The .json files of a folder; Refused where one is a pipe or a device, which may never end."""
    found = [path for path in sorted(folder.glob("*.json")) if not path.is_dir()]
    for path in found:
        if path.exists() and not path.is_file():
            raise Refused(f"{path} is a pipe or a device, no file; take it out of the folder")
    return found


def outside_site(path: Path, config_file: Path) -> Path:
    """``path``, unless it lies among the pages or in the site: what is personal stays out of it."""
    if site_places(config_file).holds(path):
        raise Refused(f"{path} would get into the site; name a file outside docs and site")
    return path


def write(path: Path, text: str) -> None:
    """Writes a file, with its lines' ends as they are."""
    try:
        path.write_bytes(text.encode())
    except OSError as error:
        raise Refused(f"{path}: {error.strerror or 'cannot be written'}") from None
