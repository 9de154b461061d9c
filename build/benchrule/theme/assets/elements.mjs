// Makes elements. Text goes in as text, never as markup.

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

/** Hands a text to the reader as a file. */
export function save(name, text, type) {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = make("a", { href: address, download: name });
  document.body.append(link);
  link.click();
  link.remove();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
