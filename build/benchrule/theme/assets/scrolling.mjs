// What scrolls aside on a narrow page can be reached and scrolled by keyboard, and says what it is. What
// has room enough is no stop of the keyboard.

const PLACES = [
  [".md-typeset__scrollwrap", (place) => `Table: ${headingAbove(place)}`],
  [".br-formula", () => "Formula"],
];
const MANY = PLACES.map(([which]) => which).join(", ");

const sizes = new ResizeObserver((changed) => {
  for (const { target } of changed) show(target);
});
// Answers and exercises come later, by scripts.
const arrivals = new MutationObserver((changed) => {
  for (const { addedNodes } of changed) {
    for (const one of addedNodes) if (one.nodeType === Node.ELEMENT_NODE) watch(one);
  }
});
let watched = null;

/** Watches the page at hand, and what comes into it later. */
export function attachScrolling() {
  const page = document.querySelector("main");
  if (!page || page === watched) return;
  watched = page;
  sizes.disconnect();
  arrivals.disconnect();
  watch(page);
  arrivals.observe(page, { childList: true, subtree: true });
}

function watch(part) {
  if (part.matches(MANY)) sizes.observe(part);
  for (const place of part.querySelectorAll(MANY)) sizes.observe(place);
}

function show(place) {
  if (place.scrollWidth <= place.clientWidth) {
    for (const name of ["tabindex", "role", "aria-label"]) place.removeAttribute(name);
    return;
  }
  const [, name] = PLACES.find(([which]) => place.matches(which));
  place.tabIndex = 0;
  place.setAttribute("role", "group");
  place.setAttribute("aria-label", name(place));
}

/** The words of the last heading before a place. */
function headingAbove(place) {
  const headings = [...document.querySelectorAll("main :is(h1, h2, h3, h4)")];
  const above = headings.findLast((one) => one.compareDocumentPosition(place) & Node.DOCUMENT_POSITION_FOLLOWING);
  return (above?.firstChild?.textContent ?? "").trim();
}
