// Makes a page live. Runs once a visit; again for each page that the theme puts in place without a
// full load.
import { Engine } from "./engine.mjs";
import { CalculatorForm } from "./form.mjs";
import { Learning } from "./learning.mjs";
import { attachLookUp } from "./look_up.mjs";
import { attachMeasuring } from "./measure.mjs";
import { attachModelChoices, chosenModel, showModel } from "./model.mjs";
import { attachRevisions } from "./revisions.mjs";
import { remembered } from "./store.mjs";

const runtime = new URL("../../runtime/RUNTIME_KEY/", import.meta.url);
const engine = new Engine(runtime);
const learning = new Learning(engine, new URL("BANK_FILE", import.meta.url));
const forms = new Map();

// What only some pages need is fetched by those alone.
const LATER = [
  ["[data-exercises]", () => import("./practice.mjs"), (part) => part.attachPractice(learning)],
  ["[data-progress]", () => import("./progress.mjs"), (part) => part.attachProgress(learning)],
  ["[data-set-assignment]", () => import("./set_assignment.mjs"), (part) => part.attachSetting(learning)],
  ["[data-work-assignment]", () => import("./work_assignment.mjs"), (part) => part.attachWork(learning)],
  ["[data-mark-results]", () => import("./mark_results.mjs"), (part) => part.attachMarking(learning)],
  ["[data-order]", () => import("./order_sheet.mjs"), (part) => part.attachOrderSheet(engine)],
  ["[data-compare]", () => import("./compare_sheets.mjs"), (part) => part.attachComparing()],
];

function attach() {
  for (const section of forms.keys()) if (!document.contains(section)) forms.delete(section);
  attachModelChoices();
  attachLookUp();
  attachMeasuring(engine);
  attachRevisions();
  for (const [place, load, begin] of LATER) if (document.querySelector(place)) load().then(begin);
  for (const section of document.querySelectorAll("[data-calculator]")) {
    if (forms.has(section)) continue;
    const form = new CalculatorForm(section, engine);
    forms.set(section, form);
    const units = remembered("units");
    const model = chosenModel();
    if (units && units !== "metric") form.setUnits(units).then(() => form.knows(model) && form.takeModel(model));
    else whenSeen(section, () => (form.knows(model) ? form.takeModel(model) : form.warm()));
  }
}

document.addEventListener("benchrule:model", ({ detail: model }) => {
  showModel(model);
  for (const form of forms.values()) if (form.knows(model)) form.takeModel(model);
});

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
