"""A text as the end of a link: packed, in letters that mail and chat leave alone, with a check.

The check stands last, so that a link that lost its end is told from one that was changed.
"""

from binascii import a2b_base64, b2a_base64

from .stream import digest
from .untrusted import UnfitFile

LONGEST = 60_000
CHECK_LENGTH = 8


def pack(text: str, prefix: str) -> str:
    """``prefix``, the text packed, a dot and a check."""
    import zlib

    payload = to_letters(zlib.compress(text.encode(), 9))
    return f"{prefix}{payload}.{check(payload)}"


def unpack(link: object, prefix: str, longest: int) -> str:
    """The text of a link; UnfitFile where it is cut off, changed or holds more than ``longest``."""
    import zlib

    if not isinstance(link, str) or len(link) > LONGEST:
        raise UnfitFile("the link is too long to be an assignment")
    link = "".join(link.split()).removeprefix("#")  # mail breaks long lines
    if not link:
        raise UnfitFile("the link holds no assignment")
    cut_off = UnfitFile("the link is cut off: copy the whole of it")
    if prefix.startswith(link):
        raise cut_off
    if not link.startswith(prefix):
        raise UnfitFile("the link is none to an assignment, or of another version")
    payload, dot, given = link.removeprefix(prefix).partition(".")
    if not dot or len(given) < CHECK_LENGTH:
        raise cut_off
    changed = UnfitFile("the link was changed on its way: ask for it again")
    if not payload.isascii() or given != check(payload):
        raise changed
    unpacking = zlib.decompressobj()
    try:
        text = unpacking.decompress(_from_letters(payload), longest + 1).decode()
    except (zlib.error, ValueError):
        raise changed from None
    if not unpacking.eof:
        raise UnfitFile("the link holds more than an assignment can be")
    return text


def to_letters(data: bytes) -> str:
    """Base64 with the letters for addresses, without padding."""
    letters = b2a_base64(data, newline=False).decode().rstrip("=")
    return letters.replace("+", "-").replace("/", "_")


def _from_letters(letters: str) -> bytes:
    plain = letters.replace("-", "+").replace("_", "/")
    return a2b_base64(plain + "=" * (-len(plain) % 4), strict_mode=True)


def check(payload: str) -> str:
    """A few letters that are others where a single one of ``payload`` is."""
    return digest("link", payload)[:CHECK_LENGTH]
