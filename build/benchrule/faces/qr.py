"""QR codes (ISO/IEC 18004) that lead a tablet to a place in the handbook."""

from calculators.engine.text import escape

from .context import Context


def qr(context: Context, page: str, anchor: str, words: str) -> str:
    """A code for an absolute address in the site, with the words of what it opens.

    Empty where the site has no address (``site_url`` in mkdocs.yml).
    """
    if not context.site_url:
        return ""
    address = context.address(page, anchor)
    code = context.handbook.kept.get(f"qr {address}", lambda: _svg(address))
    return (
        f'<a class="br-qr" href="{escape(context.link(page, anchor))}">{code}'
        f"<span>{escape(words)}</span></a>"
    )


def _svg(address: str) -> str:
    import segno  # only where a code is not kept from the build before

    code = segno.make(address, micro=False, error="m")
    made = str(code.svg_inline(scale=1, border=4, dark="#000", light="#fff", omitsize=True))
    return made.replace("<svg", '<svg aria-hidden="true" focusable="false"', 1)
