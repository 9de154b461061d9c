"""The branching parts of the inlay calculation: the board's radius at the piece, the profile."""

from typing import Any

from ..engine.declaration import Refusal

PROFILE_STEPS = 8


def radius_at_piece(
    fret_radius: float, board_shape: str, piece_length: float, radius_end: float = 0.0,
    scale_length: float = 0.0, frets: int = 0, inlay_fret: int = 0,
) -> dict[str, float]:  # fmt: skip
    """The board's radius at the piece's rounder and at its flatter end, mm; 0 is flat.

    Where the radius grows, it grows evenly with the way from the nut to the last fret. The piece
    lies in the middle between its fret and the one before. Radii and lengths mm, frets counted
    from the nut. Source: plane geometry; equal division of the octave.
    """
    if board_shape == "one":
        return {"round_radius": fret_radius, "flat_radius": fret_radius}
    if fret_radius == 0:
        raise Refusal(
            "fret_radius",
            "A board whose radius grows cannot be flat at the nut; give its radius there, or take "
            "one radius for a flat board",
            "a radius above 0",
        )
    if inlay_fret > frets:
        raise Refusal(
            "inlay_fret",
            f"The board has {frets} frets, so no piece lies before fret {inlay_fret}; look over "
            "both",
            f"1 to {frets}",
        )

    def slot(fret: int) -> float:
        return float(scale_length * (1 - 2 ** (-fret / 12)))

    middle = (slot(inlay_fret - 1) + slot(inlay_fret)) / 2
    at_ends = [
        fret_radius + (radius_end - fret_radius) * place / slot(frets)
        for place in (middle - piece_length / 2, middle + piece_length / 2)
    ]
    return {"round_radius": min(at_ends), "flat_radius": max(at_ends)}


def profile_places(
    piece_width: float, piece_offset: float, pocket_floor: str
) -> list[dict[str, Any]]:  # fmt: skip
    """Places across the piece, mm: from the centre line, or from its middle for a tilted floor."""
    middle = 0.0 if pocket_floor == "tilted" else piece_offset
    return [
        {"place": middle + piece_width * (step / PROFILE_STEPS - 0.5)}
        for step in range(PROFILE_STEPS + 1)
    ]
