"""Pages of the woods: published properties with their origin, spread, protection."""

from calculators.engine.showing import half_up
from calculators.engine.text import escape
from calculators.engine.unit_table import UNITS

from ..data import Entry
from .cards import cards
from .context import HAZARDS, Context, material_page, source_link

NAMES = {
    "density_12": "Density at 12 % moisture",
    "specific_gravity_green": "Specific gravity, ovendry weight over green volume",
    "specific_gravity_12": "Specific gravity, ovendry weight over volume at 12 %",
    "modulus_of_elasticity": "Modulus of elasticity, along the grain, in bending",
    "modulus_of_rupture": "Modulus of rupture",
    "compression_parallel": "Compression strength along the grain",
    "shear_parallel": "Shear strength along the grain",
    "side_hardness": "Side hardness",
    "ratio_ER_EL": "Stiffness across (radial) to along the grain",
    "ratio_ET_EL": "Stiffness across (tangential) to along the grain",
    "ratio_GLR_EL": "Shear stiffness (longitudinal-radial) to stiffness along",
    "shrinkage_radial": "Shrinkage, radial, green to ovendry",
    "shrinkage_tangential": "Shrinkage, tangential, green to ovendry",
    "shrinkage_volumetric": "Shrinkage in volume, green to ovendry",
    "coefficient_radial": "Change of width a per cent of moisture, radial",
    "coefficient_tangential": "Change of width a per cent of moisture, tangential",
}
ORIGINS = {
    "read": "read in a copy of the source",
    "library": "computed by a library",
    "memory": "from memory: a hint, not a figure to rely on",
}


def material_cards(context: Context) -> str:
    """Every wood, under its group."""
    groups: dict[str, list[Entry]] = {}
    for entry in context.handbook.entries["materials"].values():
        groups.setdefault(str(entry.fields["group"]), []).append(entry)
    return "".join(
        f'<h2 id="group-{escape(group)}">{escape(group.capitalize())}</h2>'
        f"{cards(context, map(_card, entries))}"
        for group, entries in groups.items()
    )


def _card(entry: Entry) -> tuple[str, object, str]:
    fields = entry.fields
    words = f"<i>{escape(fields['botanical'])}</i>. {escape(', '.join(fields['used_for']))}"
    return material_page(entry.id), fields["name"], words


def material_sheet(context: Context, id: str) -> str:
    """One wood."""
    fields = context.handbook.entries["materials"][id].fields
    others = fields.get("other_words")
    also = f'<p class="br-others">Also: {escape(", ".join(others))}</p>' if others else ""
    hazards = ", ".join(
        context.anchor(HAZARDS, f"hazard-{one}", context.handbook.entries["hazards"][one].fields["name"])
        for one in fields["hazards"]
    )  # fmt: skip
    guard = fields["protection"]
    return (
        f'<p class="br-summary"><i>{escape(fields["botanical"])}</i></p>{also}'
        f"<p>Used for {escape(', '.join(fields['used_for']))}.</p>"
        f'<h2 id="looks">How it looks and feels</h2><p>{escape(fields["looks_and_feel"])}</p>'
        f'<h2 id="works">How it works</h2><p>{escape(fields["works"])}</p>'
        f'<h2 id="wrong">What goes wrong</h2><p>{escape(fields["go_wrong"])}</p>'
        f'<h2 id="hazards">Hazards</h2><p>{hazards}</p>'
        f'<h2 id="protection">Protection</h2><div class="br-guard"><p>{escape(guard["status"])}</p>'
        f"<p>{source_link(context, guard['source'])}, as of {escape(guard['as_of'])}; "
        f"{escape(ORIGINS[guard['origin']])}.</p><p><strong>{escape(guard['advice'])}</strong></p></div>"
        f'<h2 id="properties">Published properties</h2>{_properties(context, fields["properties"])}'
        f"<p>{escape(fields['spread'])}</p>"
    )


def _properties(context: Context, properties: list[dict[str, object]]) -> str:
    if not properties:
        return "<p>None in our reference.</p>"
    rows = "".join(
        f'<tr><th scope="row">{escape(NAMES[str(one["name"])])}</th>'
        f'<td class="br-limits"><strong>{escape(_value(one))}</strong></td>'
        f'<td data-label="At">{escape(one.get("at", ""))}</td>'
        f'<td data-label="Source">{source_link(context, str(one["source"]))}; '
        f"{escape(ORIGINS[str(one['origin'])])}"
        f"{'. ' + escape(one['note']) if one.get('note') else ''}</td></tr>"
        for one in properties
    )
    return (
        '<table class="br-tolerances br-values" aria-label="Values"><thead><tr><th scope="col">What</th>'
        '<th scope="col">Value</th><th scope="col">At</th><th scope="col">Source</th></tr></thead>'
        f"<tbody>{rows}</tbody></table>"
    )


def _value(one: dict[str, object]) -> str:
    value = float(str(one["value"]))
    text = half_up(value, 0) if value == int(value) and abs(value) >= 1 else repr(value)
    return f"{text} {UNITS[str(one['unit'])].shown}".rstrip()
