// The theme's menu and search open by labels that only a mouse can press; here each gets a button inside.
// Space and Enter press it, Escape shuts what is open, and each says whether it is open.
import { make } from "./elements.mjs";

const NARROW = window.matchMedia("(max-width: 76.2344em)"); // below this the menu is a drawer
const WORDS = { __drawer: "Menu", __search: "Search" };

const LABELS = ".md-header__button[for=__drawer], .md-header__button[for=__search], .md-nav--primary label[for]";

// The theme's icons: what they stand in has a name.
const ICONS = ".md-icon svg, .md-top svg, .md-search__icon svg, .md-social svg";

/** Makes the labels of the header and of the menu's levels work by keyboard. */
export function attachMenu() {
  for (const label of document.querySelectorAll(LABELS)) {
    if (label.control?.id === "__toc" || "ready" in label.dataset) continue;
    label.dataset.ready = "";
    const button = make("span", { className: "br-press" });
    // The drawer's head keeps the way home and the shop's name beside its button.
    if (!label.matches(".md-nav__title[for=__drawer]")) button.append(...label.childNodes);
    label.append(button);
    button.addEventListener("keydown", press);
    label.control?.addEventListener("change", () => show(label));
    show(label);
  }
  for (const icon of document.querySelectorAll(ICONS)) icon.setAttribute("aria-hidden", "true");
  for (const part of document.querySelectorAll(".md-nav--primary .md-nav[aria-labelledby]")) nameLevel(part);
}

NARROW.addEventListener("change", () => {
  for (const label of document.querySelectorAll("label[data-ready]")) show(label);
});

window.addEventListener("keydown", (event) => {
  const drawer = document.getElementById("__drawer");
  if (event.key !== "Escape" || !drawer?.checked) return;
  drawer.click();
  document.querySelector(".md-header__button[for=__drawer] > .br-press").focus();
}, true); // before the theme shuts it without a place to go on

document.addEventListener("focusin", ({ target }) => {
  const drawer = document.getElementById("__drawer");
  if (drawer?.checked && !target.closest(".md-sidebar--primary, .md-header__button, [data-md-toggle]")) drawer.click();
});

function press(event) {
  const button = event.currentTarget;
  const label = button.parentElement;
  if (event.target !== button || (event.key !== "Enter" && event.key !== " ")) return;
  event.preventDefault();
  event.stopPropagation(); // the theme presses labels too, on Enter only
  label.click();
  const opened = label.control.checked;
  if (label.control.id === "__search") return; // the theme goes to the entry itself
  const place = label.control.id === "__drawer" ? document.querySelector(".md-nav--primary") : label.parentElement.closest("li") ?? label.closest("li");
  requestAnimationFrame(() => {
    if (label.matches(".md-nav__title[for=__drawer]")) document.querySelector(".md-header__button[for=__drawer] > .br-press").focus();
    else if (label.matches(".md-nav__title")) place.querySelector(":scope > label > .br-press, :scope > .md-nav__link label > .br-press")?.focus();
    else if (opened) first(place)?.focus();
  });
}

/** The first thing to press in the level of the menu that is open. */
function first(place) {
  const seen = [...place.querySelectorAll("a[href], .br-press[role=button]")];
  return seen.find((one) => one.checkVisibility({ visibilityProperty: true }) && !one.closest(".md-logo, .md-nav__title"));
}

function show(label) {
  const { control } = label;
  const button = label.querySelector(":scope > .br-press");
  const inMenu = !label.matches(".md-header__button");
  if (inMenu && !NARROW.matches) {
    for (const name of ["role", "tabindex", "aria-expanded", "aria-label"]) button.removeAttribute(name);
    return;
  }
  button.setAttribute("role", "button");
  button.tabIndex = 0;
  button.setAttribute("aria-expanded", String(control.checked));
  button.setAttribute("aria-label", nameOf(label, control));
}

/** What a button is called. Where it shows words, they are part of its name. */
function nameOf(label, control) {
  if (label.matches(".md-nav__title")) return control.id === "__drawer" ? "Shut the menu" : `Back from ${words(label)}`;
  return WORDS[control.id] ?? (words(label) || `Pages under ${levelWords(label)}`);
}

/** The theme names a level by the label that opens it, which may show no more than an arrow. */
function nameLevel(part) {
  const label = document.getElementById(part.getAttribute("aria-labelledby"));
  if (label && words(label)) return;
  part.setAttribute("aria-label", `Pages under ${levelWords(part)}`);
  part.removeAttribute("aria-labelledby");
}

function levelWords(one) {
  const level = one.closest("li").querySelector(":scope > .md-nav__link, :scope > .md-nav__container a");
  return words(level);
}

function words(one) {
  return one.textContent.trim().replace(/\s+/g, " ");
}
