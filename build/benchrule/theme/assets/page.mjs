// Makes a page live. Runs once a visit; again for each page that the theme puts in place without a
// full load.
import { giveBack } from "./carry_over.mjs";
import { CannotStart, Engine } from "./engine.mjs";
import { CalculatorForm } from "./form.mjs";
import { Learning } from "./learning.mjs";
import { attachLookUp } from "./look_up.mjs";
import { attachMeasuring } from "./measure.mjs";
import { attachMenu } from "./menu.mjs";
import { attachModelChoices, chosenModel, showModel } from "./model.mjs";
import { attachOffline } from "./offline.mjs";
import { attachRevisions } from "./revisions.mjs";
import { attachScrolling } from "./scrolling.mjs";
import { unitSystem } from "./store.mjs";
import { troubleView } from "./trouble.mjs";
import { warmInTime, whenSeen } from "./warm_up.mjs";

const runtime = new URL("../../runtime/RUNTIME_KEY/", import.meta.url);
const limits = JSON.parse(document.documentElement.dataset.limits ?? "{}"); // milliseconds, for tests
const engine = new Engine(runtime, limits);
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
  attachMenu();
  attachModelChoices();
  attachLookUp();
  attachMeasuring(engine);
  attachRevisions();
  attachScrolling();
  attachOffline(engine);
  for (const later of LATER) attachLater(...later);
  for (const section of document.querySelectorAll("[data-calculator]")) {
    if (forms.has(section)) continue;
    const form = new CalculatorForm(section, engine);
    forms.set(section, form);
    if (giveBack(section, form)) continue;
    const units = unitSystem();
    const model = chosenModel();
    if (units !== form.units) form.setUnits(units).then(() => form.knows(model) && form.takeModel(model));
    else if (form.knows(model)) whenSeen(section, () => form.takeModel(model));
    else warmInTime(section, runtime, () => form.warm());
  }
}

/** Gets a part that its place on the page needs; where it does not come, says so there. */
async function attachLater(place, load, begin) {
  const section = document.querySelector(place);
  if (!section) return;
  try {
    begin(await load());
  } catch (error) {
    const view = troubleView(new CannotStart("missing", error.message), { again: () => {
      view.remove();
      attachLater(place, load, begin);
    } });
    section.hidden = false;
    section.prepend(view);
  }
}

document.addEventListener("benchrule:model", ({ detail: model }) => {
  showModel(model);
  for (const form of forms.values()) if (form.knows(model)) form.takeModel(model);
});

// The search fetches what it searches when a reader comes to it; the keys follow some moments later.
const search = new BroadcastChannel("benchrule.search");
document.addEventListener("focusin", ({ target }) => {
  if (target.matches("[data-md-component=search-query]")) search.postMessage("opened");
});

if (window.document$) window.document$.subscribe(attach);
else attach();
document.documentElement.dataset.scriptThere = ""; // the last line: the page asks whether all of it ran
