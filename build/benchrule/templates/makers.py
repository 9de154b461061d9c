"""Which templates there are, what each is drawn from, and how to make one for an instrument."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from ..instruments import Instrument
from . import (
    brace_profiles,
    bridge_place,
    channel_gauge,
    dish_gauges,
    fret_slots,
    neck_contours,
    nut_and_strings,
)
from .answers import CannotMake, is_for
from .shapes import Template


@dataclass(frozen=True)
class Maker:
    """One kind of template.

    ``needs`` are calculators that must be for the instrument; ``takes`` are used where they are. A
    maker that needs none wants at least one of those it takes.
    """

    name: str
    title: str
    summary: str
    needs: tuple[str, ...]
    takes: tuple[str, ...]
    draw: Callable[[Instrument], Template]

    def applies(self, instrument: Instrument) -> bool:
        """Whether there is anything to draw for this instrument."""
        if self.needs:
            return all(is_for(instrument, name) for name in self.needs)
        return any(is_for(instrument, name) for name in self.takes)

    @property
    def calculators(self) -> tuple[str, ...]:
        """Every calculator it may draw from."""
        return (*self.needs, *self.takes)


# fmt: off
_MAKERS = (
    Maker(
        fret_slots.NAME, fret_slots.TITLE,
        "Nut end, every slot and the edges of the fretboard; straight or fanned.",
        (fret_slots.CALCULATOR,), (fret_slots.SLOT_WIDTH,), fret_slots.draw_fret_slots,
    ),
    Maker(
        neck_contours.NAME, neck_contours.TITLE,
        "Hollows for the back of the shaft at the frets where it is gauged.",
        (neck_contours.CALCULATOR,), (), neck_contours.draw_neck_contours,
    ),
    Maker(
        dish_gauges.NAME, dish_gauges.TITLE,
        "Hollow and full gauges for the dish of top and back and for the fretboard.",
        (), (dish_gauges.BODY, dish_gauges.BOARD), dish_gauges.draw_dish_gauges,
    ),
    Maker(
        nut_and_strings.NAME, nut_and_strings.TITLE,
        "The nut's blank with its slots, and rules with the strings' places at nut and saddle.",
        (nut_and_strings.CALCULATOR,), (nut_and_strings.SETS, nut_and_strings.BOARD),
        nut_and_strings.draw_nut_and_strings,
    ),
    Maker(
        bridge_place.NAME, bridge_place.TITLE,
        "A jig from the body joint to the saddle's slot, with the set-back of both outer strings.",
        (bridge_place.CALCULATOR,), (bridge_place.SET_BACK,), bridge_place.draw_bridge_place,
    ),
    Maker(
        channel_gauge.NAME, channel_gauge.TITLE,
        "The profile of the channels for binding and purfling, and feet for depth and height.",
        (channel_gauge.CALCULATOR,), (), channel_gauge.draw_channel_gauge,
    ),
    Maker(
        brace_profiles.NAME, brace_profiles.TITLE,
        "The section of a brace before and after shaving, and its carved ridge.",
        (brace_profiles.CALCULATOR,), (), brace_profiles.draw_brace_profiles,
    ),
)
# fmt: on


def makers() -> Mapping[str, Maker]:
    """Every kind of template by its name."""
    return {maker.name: maker for maker in _MAKERS}


def for_instrument(instrument: Instrument) -> list[str]:
    """The names of the templates that there are for an instrument.

    A calculator may still refuse what the instrument gives it; ``make`` then says why.
    """
    return [maker.name for maker in _MAKERS if maker.applies(instrument)]


def make(instrument: Instrument, name: str) -> Template:
    """The template of this name, drawn for an instrument.

    CannotMake where there is no such template, where it is not for this instrument, and where a
    calculator refuses, with its reasons.
    """
    maker = makers().get(name)
    if maker is None:
        raise CannotMake(f"There is no template '{name}'. Take one of {', '.join(makers())}.")
    if not maker.applies(instrument):
        raise CannotMake(
            f"There is no template '{name}' for {instrument.title}: it is drawn from "
            f"{' and '.join(maker.needs) or ' or '.join(maker.takes)}, which is not for this "
            "instrument."
        )
    return maker.draw(instrument)
