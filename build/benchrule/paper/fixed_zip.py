"""Office files that are the same bytes each time: the clock is taken out of them."""

import io
import re
import zipfile
from datetime import date

FIRST_DAY = (1980, 1, 1, 0, 0, 0)  # the earliest that a zip file can say
PROPERTIES = "docProps/core.xml"
STAMP = re.compile(rb"(<dcterms:(?:created|modified)[^>]*>)[^<]*(<)")


def with_fixed_dates(data: bytes, day: date) -> bytes:
    """The same file, written on ``day`` as it says, each of its parts without a date of its own."""
    out = io.BytesIO()
    with (
        zipfile.ZipFile(io.BytesIO(data)) as before,
        zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as after,
    ):
        for name in before.namelist():
            content = before.read(name)
            if name == PROPERTIES:
                content = STAMP.sub(rb"\g<1>" + f"{day}T00:00:00Z".encode() + rb"\g<2>", content)
            part = zipfile.ZipInfo(name, FIRST_DAY)
            part.compress_type = zipfile.ZIP_DEFLATED
            after.writestr(part, content)
    return out.getvalue()
