// One calculator on a page: reads its form, asks the engine, puts the answer in place.
import { AnswerParts } from "./answer_parts.mjs";
import { BLINK_MS } from "./elements.mjs";
import { CannotStart, TookTooLong } from "./engine.mjs";
import { remember } from "./store.mjs";
import { troubleView } from "./trouble.mjs";

const WORDS = {
  starting: "Starting the calculator on this device …",
  working: "Working it out …",
  live: "Live: worked out on this device.",
  refused: "Live: an entry needs mending.",
  late: "This took too long and was stopped.",
  stopped: "This was stopped.",
  broken: "The calculator cannot start here.",
};
const QUIET_MS = 700; // a pause in typing, after which the answer is read out
const LONGEST = 10_000; // characters of an entry; a long row of readings has some hundreds
const STAYS = "The answer shown is the example’s.";
const NOT_THIS = "The answer shown is not to what you entered.";

export class CalculatorForm {
  #section;
  #form;
  #answer;
  #engine;
  #name;
  #units;
  #busy = false;
  #wanted = false;
  #changed = false;
  #rows = new Map();
  #parts;
  #models;
  #model = "";
  #turning = Promise.resolve(); // the unit systems follow one another; answers wait for them
  #trouble = null;
  #reading = 0;

  constructor(section, engine) {
    this.#section = section;
    this.#engine = engine;
    this.#name = section.dataset.calculator;
    this.#units = section.dataset.units;
    this.#form = section.querySelector(".br-form");
    this.#answer = section.querySelector(".br-answer");
    this.#parts = new AnswerParts(section);
    for (const table of section.querySelectorAll("[data-rows]")) {
      this.#rows.set(table, table.tBodies[0].innerHTML);
    }
    this.#form.addEventListener("input", (event) => this.#typed(event.target));
    this.#form.addEventListener("change", (event) => this.#typed(event.target));
    this.#form.addEventListener("submit", (event) => event.preventDefault());
    this.#form.addEventListener("reset", () => setTimeout(() => this.#reset()));
    this.#form.addEventListener("click", (event) => this.#pressed(event.target));
    for (const fold of this.#answer.querySelectorAll("details")) {
      // What is folded away was not worked out again since the example.
      fold.addEventListener("toggle", () => fold.open && this.#changed && this.recalculate());
    }
    for (const radio of section.querySelectorAll(".br-units input")) {
      radio.addEventListener("change", () => this.setUnits(radio.value));
    }
    this.#asWritten();
    this.#models = JSON.parse(section.querySelector("[data-model-values]")?.content.textContent ?? "{}");
    const choice = section.querySelector("[data-model-of-form]");
    choice?.addEventListener("change", () => {
      if (choice.value) this.takeModel(choice.value);
      else this.#form.reset();
    });
    if (this.#isTouched()) { // typed in while the script was on its way
      this.#showApplying();
      this.recalculate();
    }
  }

  #isTouched() {
    return [...this.#form.querySelectorAll("[data-input] input")].some((entry) => entry.value !== entry.defaultValue)
      || [...this.#form.querySelectorAll("[data-input] select")].some(({ selectedIndex, options }) =>
        selectedIndex !== Math.max(0, [...options].findIndex(({ defaultSelected }) => defaultSelected)));
  }

  /** The unit system that the form stands in. */
  get units() {
    return this.#units;
  }

  /** Whether a model has values for this calculator. */
  knows(model) {
    return model in this.#models;
  }

  /** Puts a model's values into the form, and answers. What the model does not give stays. */
  async takeModel(model) {
    const values = this.#models[model];
    const choice = this.#section.querySelector("[data-model-of-form]");
    try {
      await this.#turning;
      const units = this.#units;
      const request = { calculator: this.#name, inputs: values, was: "metric", units };
      const fields = units === "metric" ? {} : (await this.#engine.ask("fields", request)).fields;
      if (units !== this.#units) return this.takeModel(model);
      for (const [name, text] of Object.entries(values)) {
        const entry = this.#form.querySelector(`[data-input="${name}"] :is(input, select)`);
        entry.value = text;
        delete entry.dataset.exact;
      }
      for (const [name, turned] of Object.entries(fields)) this.#turn(name, turned);
    } catch (error) {
      if (choice) choice.value = this.#model; // what the form holds
      this.#failed(error, () => this.takeModel(model));
      return undefined;
    }
    this.#model = model;
    if (choice) choice.value = model;
    this.#showApplying();
    return this.recalculate();
  }

  /** Starts the engine ahead of the first question. */
  async warm() {
    if (this.#section.querySelector(".br-state").dataset.state !== "still") return;
    await this.#prepare();
  }

  async #prepare() {
    this.#say("starting");
    try {
      await this.#engine.prepare(this.#name);
      if (!this.#busy) this.#say("live");
    } catch (error) {
      // What is entered by then is asked with it.
      if (!this.#busy) this.#failed(error, () => (this.#changed ? this.recalculate() : this.#prepare()));
    }
  }

  /** Turns every entry and answer to another unit system; nothing typed is lost. */
  setUnits(units) {
    this.#showSystem(units);
    remember("units", units);
    this.#turning = this.#turning.then(() => this.#turnTo(units));
    return this.#turning;
  }

  /** The entries and their system change at one moment, or, where that fails, not at all. */
  async #turnTo(units) {
    if (units === this.#units) return;
    if (this.#section.querySelector(".br-state").dataset.state === "still") this.#say("starting");
    try {
      let inputs, found;
      do {
        inputs = this.#entries(true);
        found = await this.#engine.ask("fields", { calculator: this.#name, inputs, was: this.#units, units });
        if (found.refused) throw new Error(found.refused[0].why);
      } while (JSON.stringify(inputs) !== JSON.stringify(this.#entries(true))); // typed in meanwhile
      for (const [name, turned] of Object.entries(found.fields)) this.#turn(name, turned);
      for (const [name, unit] of Object.entries(found.units)) {
        for (const place of this.#form.querySelectorAll(`[data-unit-of="${name}"]`)) {
          place.textContent = unit;
        }
      }
      for (const entry of this.#form.querySelectorAll("input[inputmode]")) {
        if (entry.inputMode === "decimal" && units === "inch64") entry.inputMode = "text";
        else if (entry.inputMode === "text" && units !== "inch64" && entry.closest(".br-entry")) {
          entry.inputMode = "decimal"; // fractions need a slash and a space
        }
      }
    } catch (error) {
      this.#showSystem(this.#units);
      this.#failed(error, () => this.setUnits(units));
      return;
    }
    this.#units = units;
    this.recalculate();
  }

  #showSystem(units) {
    for (const radio of this.#section.querySelectorAll(".br-units input")) {
      radio.checked = radio.value === units;
    }
  }

  /** Asks for the answer to what stands in the form; the latest entry wins. */
  async recalculate() {
    this.#wanted = this.#changed = true;
    if (this.#busy) return;
    this.#busy = true;
    if (this.#section.querySelector(".br-state").dataset.state === "still") this.#say("starting");
    const late = setTimeout(() => this.#waiting(), BLINK_MS);
    let stood; // what was said already when this was asked
    try {
      while (this.#wanted) {
        await this.#turning;
        this.#wanted = false;
        stood = this.#trouble?.error;
        const asked = performance.now();
        const refused = this.#tooLong();
        if (refused.length) {
          this.#show({ refused }, asked);
          continue;
        }
        const request = {
          calculator: this.#name, inputs: this.#entries(), units: this.#units, parts: this.#parts.seen(),
        };
        const found = await this.#engine.ask("live", request);
        found.arrived = performance.now() - asked;
        if (!this.#wanted) this.#show(found, asked);
      }
    } catch (error) {
      if (error === stood) this.#askRested(error);
      else this.#failed(error);
    } finally {
      this.#busy = false;
      clearTimeout(late);
      this.#answer.ariaBusy = "false";
    }
    // An entry may have come in while a failure was being said.
    if (this.#wanted) this.recalculate();
  }

  /** The answer shown is to earlier entries, and the one to these is long in coming. */
  #waiting() {
    this.#answer.ariaBusy = "true";
    const { state } = this.#section.querySelector(".br-state").dataset;
    if (!this.#trouble && ["live", "refused"].includes(state)) this.#say("working");
  }

  /** What was entered while the engine rests after a start that failed is asked once it has rested. */
  async #askRested(error) {
    this.#notThis();
    if (error.asked) return;
    error.asked = true;
    await error.rested;
    if (this.#trouble?.error === error) this.recalculate();
  }

  /** Entries that are no entry, such as a page pasted by mistake: refused before they are sent. */
  #tooLong() {
    return [...this.#form.querySelectorAll("[data-input]")]
      .filter((field) => [...field.querySelectorAll("input")].some(({ value }) => value.length > LONGEST))
      .map(({ dataset }) => ({ input: dataset.input, why: "This is far too long", allowed: `at most ${LONGEST} characters` }));
  }

  #typed(target) {
    delete target.dataset.exact;
    this.#showApplying();
    this.recalculate();
  }

  #pressed(target) {
    const add = target.closest("[data-add-row]");
    const remove = target.closest("[data-remove-row]");
    if (!add && !remove) return;
    const table = target.closest(".br-field").querySelector("[data-rows]");
    const body = table.tBodies[0];
    if (add && body.rows.length < Number(table.dataset.atMost)) {
      const row = body.rows[body.rows.length - 1].cloneNode(true);
      for (const entry of row.querySelectorAll("input")) delete entry.dataset.exact;
      body.append(row);
      row.querySelector("input").select();
    }
    if (remove && body.rows.length > Number(table.dataset.atLeast)) {
      const gone = remove.closest("tr");
      const near = gone.nextElementSibling ?? gone.previousElementSibling; // the keyboard goes on there
      gone.remove();
      near.querySelector("[data-remove-row]").focus();
    }
    [...body.rows].forEach((row, place) => {
      for (const named of row.querySelectorAll("[aria-label]")) {
        named.ariaLabel = named.ariaLabel.replace(/row \d+/, `row ${place + 1}`);
      }
    });
    this.recalculate();
  }

  #reset() {
    for (const [table, rows] of this.#rows) table.tBodies[0].innerHTML = rows;
    const choice = this.#section.querySelector("[data-model-of-form]");
    if (choice) choice.value = "";
    this.#model = "";
    for (const entry of this.#form.querySelectorAll("[data-exact]")) delete entry.dataset.exact;
    this.#asWritten();
    this.#showApplying();
    const units = this.#units;
    this.#units = this.#section.dataset.units; // the example is written in the shop's own
    if (units === this.#units) this.recalculate();
    else this.setUnits(units);
  }

  /** What an entry of the example stands for exactly, where its text is rounded. */
  #asWritten() {
    for (const entry of this.#form.querySelectorAll("[data-example]")) entry.dataset.exact = entry.dataset.example;
  }

  /** What stands in the form, by input name; hidden entries too where ``all``. */
  #entries(all = false) {
    const found = {};
    for (const field of this.#form.querySelectorAll("[data-input]")) {
      if (field.hidden && !all) continue;
      const table = field.querySelector("[data-rows]");
      if (table) {
        found[field.dataset.input] = [...table.tBodies[0].rows].map((row) =>
          [...row.querySelectorAll("input")].map((entry) => entry.dataset.exact ?? entry.value),
        );
      } else {
        const entry = field.querySelector("input, select");
        found[field.dataset.input] = entry.dataset.exact ?? entry.value;
      }
    }
    return found;
  }

  /** Puts a turned value into its entry and keeps beside it exactly what it stands for. */
  #turn(name, turned) {
    const field = this.#form.querySelector(`[data-input="${name}"]`);
    const entries = field.querySelectorAll("input");
    const values = Array.isArray(turned) ? turned.flat() : [turned];
    values.forEach((value, place) => {
      if (typeof value !== "object" || !entries[place]) return;
      entries[place].value = value.text;
      if (value.exact === value.text) delete entries[place].dataset.exact;
      else entries[place].dataset.exact = value.exact;
    });
  }

  #showApplying() {
    for (const field of this.#form.querySelectorAll("[data-when]")) {
      const [choice, values] = field.dataset.when.split("=");
      const chosen = this.#form.querySelector(`[data-input="${choice}"] select`).value;
      field.hidden = !values.split(",").includes(chosen);
    }
    for (const group of this.#form.querySelectorAll(".br-group")) {
      group.hidden = !group.querySelector("[data-input]:not([hidden])");
    }
  }

  #show(found, asked) {
    this.#markRefused(found.refused ?? []);
    for (const [name, html] of Object.entries(found.parts ?? {})) this.#parts.put(name, html);
    if (found.refused) this.#answer.dataset.stale = "";
    else delete this.#answer.dataset.stale;
    this.#say(found.refused ? "refused" : "live");
    this.#readOut();
    const milliseconds = performance.now() - asked;
    const detail = { milliseconds, worker: found.took, arrived: found.arrived, refused: Boolean(found.refused) };
    this.#section.dispatchEvent(new CustomEvent("benchrule:answer", { bubbles: true, detail }));
  }

  #markRefused(refused) {
    for (const entry of this.#form.querySelectorAll("[aria-invalid]")) {
      entry.removeAttribute("aria-invalid");
      entry.removeAttribute("aria-errormessage");
      describe(entry, (id) => !id.endsWith("-error"));
    }
    for (const line of this.#form.querySelectorAll(".br-error")) line.hidden = true;
    for (const { input, why, allowed } of refused) {
      const [, name, row, column] = input.match(/^(\w+)(?:\[(\d+)\]\.(\w+))?$/) ?? [];
      const field = name && this.#form.querySelector(`[data-input="${name}"]`);
      if (!field) continue;
      const entry = row
        ? field.querySelector("tbody").rows[row - 1]?.querySelector(`[data-column="${column}"]`)
        : field.querySelector("input, select");
      entry?.setAttribute("aria-invalid", "true");
      const line = field.querySelector(".br-error");
      line.textContent = `${why}. Allowed: ${allowed}.`;
      line.hidden = false;
      entry?.setAttribute("aria-errormessage", line.id);
      if (entry) describe(entry, () => true, line.id); // not every reader knows an error message
      const fold = field.closest("details");
      if (fold) fold.open = true;
    }
  }

  /** The first answer, or why there is none, is read out once when the typing pauses. */
  #readOut() {
    clearTimeout(this.#reading);
    this.#reading = setTimeout(() => {
      const said = this.#section.querySelector("[data-said]");
      const words = this.#parts.inWords(!("stale" in this.#answer.dataset));
      if (said.textContent !== words) said.textContent = words;
    }, QUIET_MS);
  }

  /** Says what went wrong; ``again`` does what failed once more, and in the end asks for the answer. */
  #failed(error, again = null) {
    if (this.#says(error)) { // a finger may be on its button
      this.#trouble.again = again ?? this.#trouble.again;
      if (this.#changed) this.#notThis();
      return;
    }
    const state = error instanceof CannotStart ? "broken" : error instanceof TookTooLong ? "late" : "stopped";
    this.#say(state);
    if (this.#changed) this.#answer.dataset.stale = "all";
    this.#trouble = troubleView(error, {
      role: null, // the line above is read out
      lead: this.#changed ? NOT_THIS : STAYS,
      again: ({ waited }) => {
        if (error instanceof CannotStart && !waited) this.#engine.tryAgain();
        const latest = this.#trouble.again;
        this.#say("starting");
        latest();
      },
    });
    this.#trouble.error = error;
    this.#trouble.again = again ?? (() => this.recalculate());
    this.#section.querySelector(".br-calc-bar").after(this.#trouble);
  }

  /** Something was entered since it was said: the answer shown is no longer the example's. */
  #notThis() {
    this.#answer.dataset.stale = "all";
    const line = this.#trouble?.querySelector(".br-error");
    if (line?.textContent.startsWith(STAYS)) line.textContent = line.textContent.replace(STAYS, NOT_THIS);
  }

  /** Whether this error, or one that reads the same and is mended the same way, is before the reader. */
  #says(error) {
    const before = this.#trouble?.error;
    if (before === error) return true;
    const alike = before instanceof CannotStart && error instanceof CannotStart && !error.later
      && !before.later && before.kind === error.kind && before.message === error.message;
    if (alike) this.#trouble.error = error;
    return alike;
  }

  #say(state) {
    const line = this.#section.querySelector(".br-state");
    this.#trouble?.remove();
    this.#trouble = null;
    if (line.dataset.state === state && line.textContent === WORDS[state]) return;
    line.dataset.state = { late: "stopped", working: "starting" }[state] ?? state;
    line.textContent = WORDS[state];
  }
}

/** Takes from and adds to what describes an entry. */
function describe(entry, keeps, added = "") {
  const ids = (entry.getAttribute("aria-describedby") ?? "").split(" ").filter((id) => id && keeps(id));
  if (added) ids.push(added);
  if (ids.length) entry.setAttribute("aria-describedby", ids.join(" "));
  else entry.removeAttribute("aria-describedby");
}
