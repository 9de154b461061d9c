// Small choices kept on this device: the unit system, the model.

const USUAL_UNITS = "SHOP_UNITS"; // the system that the shop reads first
const SYSTEMS = ["metric", "inch", "inch64"]; // what else stands under the name is no choice

// What holds on this page; a choice made in another tab meanwhile would turn the meaning of entries
// that stand here, so it holds from the next page on.
const holding = new Map();

/** Keeps a choice on this device; a browser that refuses to is no reason to stop. */
export function remember(name, value) {
  holding.set(name, value);
  document.dispatchEvent(new CustomEvent("benchrule:chosen", { detail: { name, value } }));
  try {
    localStorage.setItem(`benchrule.${name}`, value);
  } catch {
    // Storage full or refused: the choice holds for this page only.
  }
}

/** The reader's unit system, or the shop's where none was chosen. */
export function unitSystem() {
  return SYSTEMS.includes(remembered("units")) ? remembered("units") : USUAL_UNITS;
}

/** A choice kept on this device, or nothing. */
export function remembered(name) {
  if (!holding.has(name)) holding.set(name, readKept(name));
  return holding.get(name);
}

function readKept(name) {
  try {
    return localStorage.getItem(`benchrule.${name}`);
  } catch {
    return null;
  }
}
