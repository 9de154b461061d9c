"""``benchrule stick``: the handbook on a stick, with what opens it on a machine that has Python."""

import shutil
from importlib import resources
from pathlib import Path

import click

HANDBOOK = "handbook"
LAUNCHER = "open-handbook.py"
READ_ME = """The handbook is in the folder "handbook". Browsers do not let it work straight from a stick.

On a machine with Python, open open-handbook.py (double-click it, or: python3 open-handbook.py).
The handbook opens in the browser, and is saved there for later use without the stick.

Without Python, copy the folder "handbook" to any web host.
"""


@click.command()
@click.argument("folder", type=click.Path(path_type=Path))
@click.option(
    "--site", type=click.Path(path_type=Path), default=Path("site"), show_default=True,
    help="the built site",
)  # fmt: skip
def stick(folder: Path, site: Path) -> None:
    """Copy the built site to FOLDER, with a program that opens it there."""
    copied = put_on_stick(site, folder)
    click.echo(f"{copied} files are in {folder}; on a machine with Python, open {LAUNCHER} there.")


def put_on_stick(site: Path, folder: Path) -> int:
    """Puts the site on the stick in the place of what was there before; gives its number of files.

    Raises a click exception where there is no built site, or ``folder`` is within it.
    """
    if not (site / "index.html").is_file():
        raise click.ClickException(
            f"{site} holds no built handbook; run benchrule build, or name it with --site"
        )
    if folder.resolve().is_relative_to(site.resolve()):
        raise click.ClickException(f"{folder} lies in the site itself; name another folder")
    target = folder / HANDBOOK
    if target.exists():
        if not (target / "index.html").is_file():
            raise click.ClickException(
                f"{target} is there and holds no handbook; move it away, or name another folder"
            )
        shutil.rmtree(target)
    shutil.copytree(site, target)
    program = resources.files("benchrule").joinpath("web/open_handbook.py").read_bytes()
    (folder / LAUNCHER).write_bytes(program)
    (folder / LAUNCHER).chmod(0o755)
    (folder / "READ-ME.txt").write_text(READ_ME, "utf-8")
    return sum(path.is_file() for path in target.rglob("*"))
