// Small choices kept on this device: the unit system, the model.

/** Keeps a choice on this device; a browser that refuses to is no reason to stop. */
export function remember(name, value) {
  try {
    localStorage.setItem(`benchrule.${name}`, value);
  } catch {
    // Storage full or refused: the choice holds for this page only.
  }
}

/** A choice kept on this device, or nothing. */
export function remembered(name) {
  try {
    return localStorage.getItem(`benchrule.${name}`);
  } catch {
    return null;
  }
}
