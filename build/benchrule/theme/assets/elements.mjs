// Makes elements. Text goes in as text, never as markup.

/** Milliseconds that a verdict on an earlier entry may stand beside a new one. */
export const BLINK_MS = 200;

/** An element with attributes and children; a child that is text stays text. */
export function make(name, attributes = {}, ...children) {
  const element = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) {
    if (value === false || value === null || value === undefined) continue;
    if (key.startsWith("on")) element.addEventListener(key.slice(2), value);
    else if (key in element && key !== "list" && key !== "form") element[key] = value;
    else element.setAttribute(key, value === true ? "" : value);
  }
  element.append(...children.filter((child) => child !== null && child !== undefined));
  return element;
}

/** Puts children into an element in place of what is there; nothing where a child is nothing. */
export function fill(element, ...children) {
  element.replaceChildren(...children.filter((child) => child !== null && child !== undefined));
}

/** An action that a second press cannot begin again before the first is done. */
export function oneAtATime(act) {
  let under = false;
  return async (...given) => {
    if (under) return undefined;
    under = true;
    try {
      return await act(...given);
    } finally {
      under = false;
    }
  };
}

/** The time now as ISO 8601 with the offset of this place: a day is due by the trainee's own clock. */
export function localTime(now = new Date()) {
  const minutes = -now.getTimezoneOffset();
  const shifted = new Date(now.getTime() + minutes * 60_000).toISOString().slice(0, 19);
  const [hours, rest] = [Math.floor(Math.abs(minutes) / 60), Math.abs(minutes) % 60];
  return `${shifted}${minutes < 0 ? "-" : "+"}${String(hours).padStart(2, "0")}:${String(rest).padStart(2, "0")}`;
}

/** Hands a text to the reader as a file. */
export function save(name, text, type) {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = make("a", { href: address, download: name });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/** Opens a whole document in a tab of its own, to be printed from there. */
export function openToPrint(html) {
  const address = URL.createObjectURL(new Blob([html], { type: "text/html" }));
  if (!window.open(address, "_blank")) save("sheets.html", html, "text/html");
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}

/** A labelled entry. */
export function field(label, entry) {
  return make("label", { className: "br-learn-field" }, make("span", {}, label), entry);
}

/** What went wrong, as a sentence. */
export function sentence(words) {
  const text = words || "it took too long";
  return `${text[0].toUpperCase()}${text.slice(1)}${/[.!?]$/.test(text) ? "" : "."}`;
}
