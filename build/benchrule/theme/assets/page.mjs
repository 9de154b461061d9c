// Makes a page live. Runs once a visit; again for each page that the theme puts in place without a
// full load.
import { Engine } from "./engine.mjs";
import { CalculatorForm } from "./form.mjs";
import { Learning } from "./learning.mjs";
import { attachLookUp } from "./look_up.mjs";
import { attachMeasuring } from "./measure.mjs";
import { attachModelChoices, chosenModel, showModel } from "./model.mjs";
import { attachComparing } from "./compare_sheets.mjs";
import { attachOrderSheet } from "./order_sheet.mjs";
import { attachPractice } from "./practice.mjs";
import { attachProgress } from "./progress.mjs";
import { attachMarking } from "./mark_results.mjs";
import { attachSetting } from "./set_assignment.mjs";
import { attachWork } from "./work_assignment.mjs";
import { attachRevisions } from "./revisions.mjs";
import { remembered } from "./store.mjs";

const runtime = new URL("../../runtime/RUNTIME_KEY/", import.meta.url);
const engine = new Engine(runtime);
const learning = new Learning(engine, new URL("BANK_FILE", import.meta.url));
const forms = new Map();

function attach() {
  for (const section of forms.keys()) if (!document.contains(section)) forms.delete(section);
  attachModelChoices();
  attachLookUp();
  attachMeasuring(engine);
  attachRevisions();
  attachPractice(learning);
  attachProgress(learning);
  attachSetting(learning);
  attachWork(learning);
  attachMarking(learning);
  attachOrderSheet(engine);
  attachComparing();
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
