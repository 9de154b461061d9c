// One calculator on a page: reads its form, asks the engine, puts the answer in place.
import { CannotStart, TookTooLong } from "./engine.mjs";
import { remember } from "./store.mjs";

const ESCAPES = { amp: "&", lt: "<", gt: ">", quot: '"', "#39": "'" };
const WORDS = {
  starting: "Starting the calculator on this device …",
  live: "Live: worked out on this device.",
  refused: "Live: an entry needs mending.",
  stopped: "This took too long and was stopped. Your entries are kept; change one to try again.",
  broken: "The calculator cannot start here. The example and its answer stay; load the page again to try once more.",
};

export class CalculatorForm {
  #section;
  #form;
  #answer;
  #engine;
  #name;
  #units = "metric";
  #busy = false;
  #wanted = false;
  #changed = false;
  #shown = {};
  #rows = new Map();
  #parts;
  #models;

  constructor(section, engine) {
    this.#section = section;
    this.#engine = engine;
    this.#name = section.dataset.calculator;
    this.#form = section.querySelector(".br-form");
    this.#answer = section.querySelector(".br-answer");
    this.#parts = new Map(
      [...section.querySelectorAll("[data-part]")].map((part) => [part.dataset.part, part]),
    );
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
    section.addEventListener("focusin", () => this.warm(), { once: true });
    section.addEventListener("pointerdown", () => this.warm(), { once: true });
    for (const radio of section.querySelectorAll(".br-units input")) {
      radio.addEventListener("change", () => this.setUnits(radio.value));
    }
    this.#models = JSON.parse(section.querySelector("[data-model-values]")?.content.textContent ?? "{}");
    const choice = section.querySelector("[data-model-of-form]");
    choice?.addEventListener("change", () => {
      if (choice.value) this.takeModel(choice.value);
      else this.#form.reset();
    });
  }

  /** Whether a model has values for this calculator. */
  knows(model) {
    return model in this.#models;
  }

  /** Puts a model's values into the form, and answers. What the model does not give stays. */
  async takeModel(model) {
    const values = this.#models[model];
    const choice = this.#section.querySelector("[data-model-of-form]");
    if (choice) choice.value = model;
    for (const [name, text] of Object.entries(values)) {
      const entry = this.#form.querySelector(`[data-input="${name}"] :is(input, select)`);
      entry.value = text;
      delete entry.dataset.exact;
    }
    this.#showApplying();
    if (this.#units !== "metric") {
      const request = { calculator: this.#name, inputs: values, was: "metric", units: this.#units };
      try {
        const { fields } = await this.#engine.ask("fields", request);
        for (const [name, turned] of Object.entries(fields)) this.#turn(name, turned);
      } catch (error) {
        this.#failed(error);
        return;
      }
    }
    this.recalculate();
  }

  /** Starts the engine ahead of the first question. */
  async warm() {
    if (this.#section.querySelector(".br-state").dataset.state !== "still") return;
    this.#say("starting");
    try {
      await this.#engine.prepare(this.#name);
      if (!this.#busy) this.#say("live");
    } catch (error) {
      this.#failed(error);
    }
  }

  /** Turns every entry and answer to another unit system; nothing typed is lost. */
  async setUnits(units) {
    if (units === this.#units) return;
    const was = this.#units;
    this.#units = units;
    for (const radio of this.#section.querySelectorAll(".br-units input")) {
      radio.checked = radio.value === units;
    }
    remember("units", units);
    if (this.#section.querySelector(".br-state").dataset.state === "still") this.#say("starting");
    try {
      const request = { calculator: this.#name, inputs: this.#entries(true), was, units };
      const { fields, units: behind } = await this.#engine.ask("fields", request);
      for (const [name, turned] of Object.entries(fields)) this.#turn(name, turned);
      for (const [name, unit] of Object.entries(behind)) {
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
      this.#failed(error);
      return;
    }
    this.recalculate();
  }

  /** Asks for the answer to what stands in the form; the latest entry wins. */
  async recalculate() {
    this.#wanted = this.#changed = true;
    if (this.#busy) return;
    this.#busy = true;
    if (this.#section.querySelector(".br-state").dataset.state === "still") this.#say("starting");
    try {
      while (this.#wanted) {
        this.#wanted = false;
        const asked = performance.now();
        const request = {
          calculator: this.#name, inputs: this.#entries(), units: this.#units, parts: this.#seen(),
        };
        const found = await this.#engine.ask("live", request);
        found.arrived = performance.now() - asked;
        if (!this.#wanted) this.#show(found, asked);
      }
    } catch (error) {
      this.#failed(error);
    } finally {
      this.#busy = false;
    }
    // An entry may have come in while a failure was being said.
    if (this.#wanted) this.recalculate();
  }

  /** The parts before the reader: folded ones are worked out when they are opened. */
  #seen() {
    return [...this.#parts]
      .filter(([, part]) => part.closest("details")?.open ?? true)
      .map(([name]) => name);
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
    if (remove && body.rows.length > Number(table.dataset.atLeast)) remove.closest("tr").remove();
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
    for (const entry of this.#form.querySelectorAll("[data-exact]")) delete entry.dataset.exact;
    this.#showApplying();
    const units = this.#units;
    this.#units = "metric"; // the example is written in metric
    if (units === "metric") this.recalculate();
    else this.setUnits(units);
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
    if (found.parts) {
      for (const [name, html] of Object.entries(found.parts)) this.#put(name, html);
    }
    this.#answer.toggleAttribute("data-stale", Boolean(found.refused));
    this.#say(found.refused ? "refused" : "live");
    const milliseconds = performance.now() - asked;
    const detail = { milliseconds, worker: found.took, arrived: found.arrived, refused: Boolean(found.refused) };
    this.#section.dispatchEvent(new CustomEvent("benchrule:answer", { bubbles: true, detail }));
  }

  /** Puts a part in place; only what changed is touched, so nothing flickers or scrolls away. */
  #put(name, html) {
    const shown = this.#shown[name];
    if (shown?.html === html) return;
    const pieces = html.split(/<[^>]*>/);
    const tags = html.match(/<[^>]*>/g)?.join("") ?? "";
    const place = this.#parts.get(name);
    // Most often only figures change: then only their text is touched.
    const nodes = shown?.tags === tags && shown.nodes.length === pieces.length && shown.nodes;
    if (nodes && pieces.every((piece, at) => Boolean(piece) === Boolean(nodes[at]))) {
      pieces.forEach((piece, at) => {
        if (piece !== shown.pieces[at]) nodes[at].data = plain(piece);
      });
      this.#shown[name] = { html, tags, pieces, nodes };
      return;
    }
    const fresh = document.createElement("template");
    fresh.innerHTML = html;
    morphChildren(place, fresh.content);
    this.#shown[name] = { html, tags, pieces, nodes: textNodes(place, pieces) };
  }

  #markRefused(refused) {
    for (const entry of this.#form.querySelectorAll("[aria-invalid]")) {
      entry.removeAttribute("aria-invalid");
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
      const fold = field.closest("details");
      if (fold) fold.open = true;
    }
  }

  #failed(error) {
    if (error instanceof TookTooLong) this.#say("stopped");
    else if (error instanceof CannotStart) this.#say("broken", error.message);
    else this.#say("stopped", error.message);
    this.#answer.toggleAttribute("data-stale", this.#wanted || !(error instanceof CannotStart));
  }

  #say(state, more = "") {
    const line = this.#section.querySelector(".br-state");
    const words = more ? `${WORDS[state]} (${more.split("\n").pop().slice(0, 160)})` : WORDS[state];
    if (line.dataset.state === state && line.textContent === words) return;
    line.dataset.state = state;
    line.textContent = words;
  }
}

/** The text node of each piece of text between tags, in order; none where the piece is empty. */
function textNodes(place, pieces) {
  const walker = document.createTreeWalker(place, NodeFilter.SHOW_TEXT);
  const nodes = pieces.map((piece) => (piece ? walker.nextNode() : null));
  return walker.nextNode() || nodes.some((node, at) => pieces[at] && !node) ? [] : nodes;
}

/** Text as it stands between tags, with its five escapes undone. */
function plain(piece) {
  return piece.replace(/&(amp|lt|gt|quot|#39);/g, (_, name) => ESCAPES[name]);
}

/** Makes the children of ``old`` those of ``fresh``, changing as little as can be. */
function morphChildren(old, fresh) {
  const before = [...old.childNodes];
  const after = [...fresh.childNodes];
  after.forEach((node, at) => {
    if (at >= before.length) old.append(node);
    else morph(before[at], node);
  });
  for (const node of before.slice(after.length)) node.remove();
}

function morph(old, fresh) {
  if (old.isEqualNode(fresh)) return undefined;
  if (old.nodeName !== fresh.nodeName) return old.replaceWith(fresh);
  if (old.nodeType !== Node.ELEMENT_NODE) {
    if (old.data !== fresh.data) old.data = fresh.data;
    return undefined;
  }
  for (const { name, value } of fresh.attributes) {
    if (old.getAttribute(name) !== value) old.setAttribute(name, value);
  }
  for (const { name } of [...old.attributes]) {
    if (!fresh.hasAttribute(name)) old.removeAttribute(name);
  }
  return morphChildren(old, fresh);
}
