"""The fields of a data file or of a station's front matter, for authors: read from the schema."""

from collections.abc import Mapping
from typing import Any

from calculators.engine.text import escape

from ..data import KINDS, schema
from .context import Context

FRONT_MATTER = "station"
BY_ANOTHER = {"records", "asked"}  # one is written by a command, the other has no fields
TABLES = (FRONT_MATTER, *(kind for kind in KINDS if kind not in BY_ANOTHER))
OF_THEME = "MkDocs' own"


def field_table(context: Context, kind: str) -> str:
    """Every field of a kind: whether it must be there, what it holds, and how it is written."""
    if kind not in TABLES:
        raise ValueError(
            f"{context.source}: no fields of '{kind}'; take one of {', '.join(TABLES)}"
        )
    found: Mapping[str, Any] = schema(kind).schema  # type: ignore[assignment]
    needed = set(found.get("required", ()))
    either = {name for option in found.get("anyOf", ()) for name in option["required"]}
    rows = "".join(
        f'<tr><th scope="row"><code>{escape(name)}</code></th>'
        f"<td>{'yes' if name in needed else 'one of them' if name in either else ''}</td>"
        f'<td>{escape(one["title"])}.<span class="br-others">{escape(written(one))}</span></td></tr>'
        for name, one in found["properties"].items()
        if not one["title"].startswith(OF_THEME)
    )
    label = f"Fields: {escape(kind)}"
    return (
        f'<div class="br-scroll" tabindex="0" role="region" aria-label="{label}">'
        f'<table class="br-tolerances br-values" aria-label="{label}"><thead><tr>'
        '<th scope="col">Field</th><th scope="col">Needed</th><th scope="col">What stands there</th></tr></thead>'
        f"<tbody>{rows}</tbody></table></div>"
    )


def written(one: Mapping[str, Any]) -> str:
    """How a field is written, in a few words."""
    if "enum" in one:
        return "one of: " + ", ".join(map(str, one["enum"]))
    kind, pattern = one.get("type"), str(one.get("pattern", ""))
    if kind == "array":
        inner = one.get("items", {})
        return f"a list; each: {written(inner)}" if inner else "a list"
    if kind == "object":
        inner = one.get("properties")
        return f"fields of its own: {', '.join(inner)}" if inner else "names, each with its value"
    if kind == "string" and r"\d{4}" in pattern:
        return "a day, like 2026-11-20"
    if kind == "string" and "a-z" in pattern:
        return "lower case" if " " in pattern else "an id: lower case, with hyphens"
    words = {"string": "text", "number": "a plain number", "integer": "a whole number",
             "boolean": "true or false"}  # fmt: skip
    kinds = kind if isinstance(kind, list) else [kind]
    return " or ".join(words.get(str(name), "a value") for name in kinds)
