"""A reader who has a keyboard and nothing else; every stop of the keyboard is looked at."""

from typing import Any

from playwright.sync_api import Page

# What must hold wherever the keyboard stands: the element can be seen, is not covered, and has a
# ring that stands out from what is behind it (WCAG 2.2: 2.4.7, 2.4.11, 1.4.11).
LOOK = r"""() => {
  const e = document.activeElement;
  if (!e || e === document.body) return null;
  const rgb = (text) => (text.match(/[\d.]+/g) ?? []).map(Number);
  const light = ([r, g, b]) => [r, g, b].map((c) => c / 255)
    .map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4))
    .reduce((sum, c, at) => sum + c * [0.2126, 0.7152, 0.0722][at], 0);
  const behind = (one) => {
    for (let up = one; up; up = up.parentElement) {
      const colour = rgb(getComputedStyle(up).backgroundColor);
      if (colour.length && (colour[3] ?? 1) > 0.5) return colour;
    }
    return [255, 255, 255];
  };
  const ringed = [e, e.nextElementSibling, e.previousElementSibling, e.parentElement, e.closest(".br-entry")]
    .find((one) => one && getComputedStyle(one).opacity > 0.5 && getComputedStyle(one).outlineStyle !== "none" && parseFloat(getComputedStyle(one).outlineWidth) >= 2);
  // The calendar's own button inside a day's field: its ring is in the style sheet, out of a script's sight.
  const calendar = e.type === "date" && !e.matches(":focus");
  let contrast = calendar ? 21 : 0;
  if (ringed) {
    const [a, b] = [light(rgb(getComputedStyle(ringed).outlineColor)), light(behind(ringed.parentElement))].sort((x, y) => y - x);
    contrast = (a + 0.05) / (b + 0.05);
  }
  const shown = e.getBoundingClientRect().width > 2 ? e : ringed ?? e;
  const box = shown.getBoundingClientRect();
  const points = [];
  for (const across of [0.1, 0.5, 0.9]) for (const down of [0.15, 0.5, 0.85]) {
    points.push([box.x + box.width * across, box.y + box.height * down]);
  }
  const seen = points.some(([x, y]) => {
    const top = document.elementFromPoint(x, y);
    return top && (shown.contains(top) || top.contains(shown) || ringed?.contains(top)) && !(top.matches(".md-header *, .md-header") && !shown.closest(".md-header"));
  });
  const name = (e.getAttribute("aria-label") || e.labels?.[0]?.textContent || e.textContent || "").trim().replace(/\s+/g, " ");
  return { tag: e.tagName.toLowerCase(), style: e.className, name: name.slice(0, 90), input: e.name ?? "", contrast, seen, ringed: calendar || Boolean(ringed) };
}"""


class Keys:
    """Presses keys on a page; each stop must be seen, with a ring round it."""

    def __init__(self, page: Page) -> None:
        self.page = page
        self.stops: list[dict[str, Any]] = []

    def press(self, key: str, times: int = 1) -> None:
        """Presses one key."""
        for _ in range(times):
            self.page.keyboard.press(key)

    def type(self, text: str) -> None:
        """Types over what stands where the keyboard is."""
        self.page.keyboard.press("Control+a")
        self.page.keyboard.type(text)

    def stop(self) -> dict[str, Any]:
        """Where the keyboard stands, looked at."""
        found = self.page.evaluate(LOOK)
        for _ in range(10):  # the theme slides and fades its parts in, on a busy machine for seconds
            if found and found["seen"] and found["contrast"] >= 3:
                break
            self.page.wait_for_timeout(300)
            found = self.page.evaluate(LOOK)
        assert found is not None, f"the keyboard stands nowhere; before: {self.stops[-3:]}"
        self.stops.append(found)
        assert found["seen"], f"cannot be seen: {found}"
        assert found["ringed"] and found["contrast"] >= 3, f"no ring that stands out: {found}"
        return dict(found)

    def skip_to_content(self) -> None:
        """By the link that comes first on every page."""
        self.press("Tab")
        assert self.stop()["name"] == "Skip to content"
        self.press("Enter")
        self.page.wait_for_function("location.hash")
        self.page.wait_for_timeout(300)  # the theme brings the heading into sight

    def to(self, name: str, tag: str = "", most: int = 160, key: str = "Tab") -> dict[str, Any]:
        """Presses Tab until the keyboard stands on what is so named (or is that field)."""
        for _ in range(most):
            self.press(key)
            found = self.stop()
            if (found["name"].startswith(name) or found["input"] == name) and tag in (
                "",
                found["tag"],
            ):
                return found
        raise AssertionError(
            f"{name} was not reached: {[one['name'] for one in self.stops[-most:]]}"
        )
