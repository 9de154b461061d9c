// When the engine starts: its runtime is some megabytes, and who only reads never asks for them.
// Where they are on this device already, it starts as soon as a calculator is in sight; else with the
// first sign that the calculator will be used.
import { remember, remembered } from "./store.mjs";

const LARGEST = "pyodide.asm.wasm";

/** Calls back once, ahead of the first entry: see above. ``runtime`` is the folder of the runtime. */
export function warmInTime(section, runtime, act) {
  let begun = false;
  const begin = () => {
    if (!begun) act();
    begun = true;
  };
  whenUsed(section, begin);
  whenSeen(section, async () => {
    if (await isOnDevice(runtime)) begin();
  });
  section.addEventListener("benchrule:answer", () => remember("runtime", runtime.href), { once: true });
}

/** Calls back when the reader has the section before them and the browser has time. */
export function whenSeen(section, act) {
  const watch = new IntersectionObserver((entries) => {
    if (!entries.some((entry) => entry.isIntersecting)) return;
    watch.disconnect();
    (window.requestIdleCallback ?? setTimeout)(act);
  });
  watch.observe(section);
}

/** Calls back at a focus, a press, or a mouse over an entry. A finger that scrolls presses nothing. */
function whenUsed(section, act) {
  section.addEventListener("focusin", act);
  section.addEventListener("pointerup", act);
  section.addEventListener("pointermove", ({ pointerType, target }) => {
    if (pointerType === "mouse" && target.closest("label, input, select, button")) act();
  });
}

/** Whether the runtime came to this device before: it answered here, or is kept for use offline. */
async function isOnDevice(runtime) {
  if (remembered("runtime") === runtime.href) return true;
  try {
    return Boolean(await caches.match(new URL(LARGEST, runtime), { ignoreSearch: true }));
  } catch {
    return false; // no such store over plain http, or it is refused
  }
}
