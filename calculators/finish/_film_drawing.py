"""The picture of the film-build calculation: the film as it grows and is taken down again."""

from collections.abc import Mapping
from typing import Any

from ..engine.compute import Say
from ..engine.drawing import Svg
from ..engine.plot import nice_ticks
from ..engine.reading import convert
from ..engine.showing import half_up, reader_unit
from ..engine.unit_table import UNITS

LEFT, RIGHT, TOP, GROUND, HEIGHT = 62.0, 622.0, 40.0, 300.0, 418.0
FULL_LABELS = 7  # with more columns than this only the last of the rounds is labelled


def draw_film(values: Mapping[str, Any], say: Say) -> str:
    """One column a round, then levelled and polished; what is taken off is reddened."""
    rounds, per_round = values["rounds"], values["coats_per_round"]
    dry, sanded = values["dry_film"], values["sanding_loss"]
    svg = Svg(
        "film-build-film",
        f"The film from the first round to the polished one: {say('film_before')} before "
        f"levelling, {say('film_after')} after polishing",
        f"Columns of lacquer on wood, one a round with its {per_round} coats, then the levelled "
        "and the polished film. The reddened top is sanded or polished off, the green band is "
        f"what the limits allow. {values['verdict']}",
        640, HEIGHT,
    )  # fmt: skip
    highest_round = (rounds - 1) * (per_round * dry - sanded) + per_round * dry
    highest: float = 1.08 * max(highest_round, values["most_film_before"], values["most_film"])
    scale = (GROUND - TOP) / highest
    step: float = (RIGHT - LEFT) / (rounds + 2)
    width = min(74.0, 0.76 * step)
    _axis(svg, say, highest)

    def column(place: int) -> float:
        return LEFT + (place + 0.5) * step - width / 2

    def block(x: float, low: float, high: float, style: str) -> None:
        svg.rectangle((x, GROUND - high * scale), width, (high - low) * scale, style)

    for place, low, high in (
        (rounds - 1, values["least_film_before"], values["most_film_before"]),
        (rounds + 1, values["least_film"], values["most_film"]),
    ):
        top, side = GROUND - high * scale, 0.48 * step
        middle = LEFT + (place + 0.5) * step
        svg.rectangle((middle - side, top), 2 * side, (high - low) * scale, "good")
    film = 0.0
    for number in range(rounds):
        x = column(number)
        if number:
            block(x, 0, film, "lacquer")
        for _ in range(per_round):
            block(x, film, film + dry, "lacquer")
            film += dry
            svg.line((x, GROUND - film * scale), (x + width, GROUND - film * scale), "thin")
        last = number == rounds - 1
        if last or rounds + 2 <= FULL_LABELS:
            _above(svg, say, x + width / 2, GROUND - film * scale, film)
        if not last:
            block(x, film - sanded, film, "bad")
            film -= sanded
        if last or rounds + 2 <= FULL_LABELS or number == 0:
            svg.text((x + width / 2, GROUND + 38), f"{number + 1}", "middle")
    for place, start, taken in (
        (rounds, values["film_before"], values["levelling_loss"]),
        (rounds + 1, values["film_levelled"], values["wheel_loss"]),
    ):
        x = column(place)
        block(x, 0, start - taken, "lacquer")
        block(x, start - taken, start, "bad")
        svg.line((x, GROUND - start * scale), (x + width, GROUND - start * scale), "hidden")
        left = GROUND - (start - taken) * scale
        svg.line((x, left), (x + width, left), "ink")
    _above(svg, say, column(rounds + 1) + width / 2, GROUND - values["film_levelled"] * scale,
           values["film_after"])  # fmt: skip
    svg.rectangle((LEFT, GROUND), RIGHT - LEFT, 18, "wood-light")
    _words(svg, rounds, step)
    return svg.markup()


def _above(svg: Svg, say: Say, x: float, y: float, film: float) -> None:
    """A film's figure above its column, kept on the paper."""
    words = say.quantity(film, "um", 0)
    reach = 0.28 * 13.5 * len(words)
    svg.text((min(x, 638 - reach), y - 7), words, "middle", "label-small")


def _axis(svg: Svg, say: Say, highest: float) -> None:
    """The upright scale in the reader's unit."""
    unit = reader_unit("um", say.system)
    per_um = convert(1.0, "um", unit)
    for tick in nice_ticks(0, highest * per_um, 5):
        y = GROUND - tick / per_um * (GROUND - TOP) / highest
        svg.line((LEFT, y), (RIGHT, y), "grid")
        svg.text((LEFT - 8, y + 5), half_up(tick, 0 if tick == int(tick) else 1), "end",
                 "label-small")  # fmt: skip
    svg.text((LEFT - 44, TOP - 18), f"Film, {UNITS[unit].shown}")


def _words(svg: Svg, rounds: int, step: float) -> None:
    """What the columns and colours are."""
    split = LEFT + rounds * step
    svg.line((split, GROUND + 22), (split, GROUND + 44), "thin")
    svg.text((LEFT + rounds * step / 2, GROUND + 60), "round" if rounds < 2 else "rounds", "middle")
    if step >= 84:
        for place, words in ((0.5, "levelled"), (1.5, "polished")):
            svg.text((split + place * step, GROUND + 38), words, "middle")
    else:
        svg.text((RIGHT, GROUND + 60), "then levelled and polished", "end")
    svg.rectangle((LEFT, HEIGHT - 26), 34, 16, "bad")
    svg.text((LEFT + 44, HEIGHT - 13), "taken off")
    svg.rectangle((LEFT + 190, HEIGHT - 26), 34, 16, "good")
    svg.text((LEFT + 234, HEIGHT - 13), "what the limits allow")
