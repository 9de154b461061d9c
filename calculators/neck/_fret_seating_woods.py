"""How stiff and how hard to crush along the grain: woods of boards and necks."""

from collections.abc import Mapping

from ..engine.declaration import Source
from ..laws.wood_elastic import GPA_PER_MPSI, MPA_PER_PSI

WOOD_HANDBOOK = Source(
    id="wood-handbook-strength",
    title="Wood handbook: wood as an engineering material (FPL-GTR-282), Tables 5-3b and 5-5b: "
    "modulus of elasticity, compression parallel to grain, 12 % moisture",
    author="USDA Forest Products Laboratory",
    year="2021",
    note="Read in a public copy of the tables. Averages of a species: one board may lie a fifth off.",
)
# Modulus of elasticity in bending, Mpsi; compression parallel to grain, psi: as printed.
WOODS = {
    "rosewood": (1.78, 9220.0),
    "maple": (1.83, 7830.0),
    "mahogany": (1.50, 6780.0),
    "cedar": (1.44, 6210.0),
}


def moduli(
    board_wood: str, neck_wood: str, own_board_modulus: float = 0, own_board_crush: float = 0,
    own_neck_modulus: float = 0,
) -> Mapping[str, float]:  # fmt: skip
    """Moduli of board and neck along the grain, GPa; what crushes the board along it, MPa.

    From the Wood Handbook by species (``WOODS``), or as given where the wood is one's own.
    """
    if board_wood == "own":
        board = own_board_modulus, own_board_crush
    else:
        mpsi, psi = WOODS[board_wood]
        board = mpsi * GPA_PER_MPSI, psi * MPA_PER_PSI
    neck = own_neck_modulus if neck_wood == "own" else WOODS[neck_wood][0] * GPA_PER_MPSI
    return {"board_modulus": board[0], "board_crush": board[1], "neck_modulus": neck}
