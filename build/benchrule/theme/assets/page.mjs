// Makes the calculators of a page live. Runs once a visit; again for each page that the theme puts
// in place without a full load.
import { Engine } from "./engine.mjs";
import { CalculatorForm, remembered } from "./form.mjs";

const runtime = new URL("../../runtime/RUNTIME_KEY/", import.meta.url);
const engine = new Engine(runtime);
const forms = new WeakMap();

function attach() {
  for (const section of document.querySelectorAll("[data-calculator]")) {
    if (forms.has(section)) continue;
    const form = new CalculatorForm(section, engine);
    forms.set(section, form);
    const units = remembered("units");
    if (units && units !== "metric") form.setUnits(units);
    else whenSeen(section, () => form.warm());
  }
}

/** Calls back when the reader has the section before them and the browser has time. */
function whenSeen(section, act) {
  const watch = new IntersectionObserver((entries) => {
    if (!entries.some((entry) => entry.isIntersecting)) return;
    watch.disconnect();
    (window.requestIdleCallback ?? setTimeout)(act);
  });
  watch.observe(section);
}

if (window.document$) window.document$.subscribe(attach);
else attach();
