// A build sheet on the device: what is measured is kept, judged, and carried on to later stations.
import { keep, kept, letGo } from "./device.mjs";
import { fill, make, save } from "./elements.mjs";
import { remembered } from "./store.mjs";

const WORDS = { accept: "In", reject: "Out", "cannot tell": "Can't tell" };

export function attachOrderSheet(engine) {
  const sheet = document.querySelector("[data-order]:not([data-live])");
  if (!sheet) return;
  sheet.dataset.live = "";
  new OrderSheet(sheet, engine).start();
}

class OrderSheet {
  #sheet;
  #engine;
  #data;
  #key;
  #measured = {};
  #turn = 0;
  #said = make("p", { role: "status", className: "br-help" });

  constructor(sheet, engine) {
    this.#sheet = sheet;
    this.#engine = engine;
    this.#data = JSON.parse(sheet.querySelector("template[data-sheet]").content.textContent);
    this.#key = `order/${this.#data.order}`;
  }

  async start() {
    this.#measured = (await kept(this.#key)) ?? {};
    const inch = remembered("units") && remembered("units") !== "metric";
    for (const row of this.#sheet.querySelectorAll("tr[data-key]")) {
      const cell = row.querySelector(".br-measured");
      if (!cell) continue;
      const key = row.dataset.key;
      const name = row.querySelector("th").firstChild.textContent.trim();
      const entry = make("input", {
        type: "text", inputMode: inch ? "text" : "decimal", autocomplete: "off", spellcheck: false, maxLength: 60,
        value: this.#measured[key]?.given ?? cell.dataset.recorded, "aria-label": `Measured: ${name}`, oninput: () => this.#typed(row, entry),
      });
      row.querySelector(".br-set strong").dataset.planned = row.querySelector(".br-set strong").textContent;
      fill(cell, entry, make("span", { className: "br-judged", role: "status" }));
      if (entry.value) this.#judge(row, entry);
    }
    this.#sheet.prepend(make("p", { className: "br-practice-do br-sheet-do" },
      make("button", { type: "button", className: "br-button", onclick: () => this.#export() }, "Save what was measured"),
      make("button", { type: "button", className: "br-button br-danger", onclick: () => this.#clear() }, "Clear it"),
      make("button", { type: "button", className: "br-button", onclick: () => print() }, "Print"),
    ), this.#said);
    if (Object.keys(this.#measured).length) this.#feed();
  }

  #typed(row, entry) {
    const key = row.dataset.key;
    if (entry.value.trim()) {
      this.#measured[key] = { given: entry.value.trim(), units: remembered("units") ?? "metric", at: new Date().toISOString() };
    } else delete this.#measured[key];
    keep(this.#key, this.#measured).then(
      () => (this.#said.textContent = "Kept on this device."),
      () => (this.#said.textContent = "This browser cannot keep it: save what was measured to a file."),
    );
    this.#judge(row, entry).then(() => this.#feed()); // what cannot be read is carried nowhere
  }

  /** In, out or can't tell: by the rule that *Is it in?* goes by. */
  async #judge(row, entry) {
    const place = row.querySelector(".br-judged");
    const asked = entry.value;
    if (!row.dataset.judge || !asked.trim()) {
      place.textContent = "";
      delete place.dataset.verdict;
      return;
    }
    try {
      const request = { ...JSON.parse(row.dataset.judge), value: asked, units: remembered("units") ?? "metric" };
      const answer = await this.#engine.ask("judge", request);
      if (entry.value !== asked) return;
      place.textContent = answer.refused ? `${answer.refused[0].why}` : WORDS[answer.verdict];
      place.title = answer.words ?? "";
      place.dataset.verdict = answer.verdict ?? "refused";
    } catch (error) {
      place.textContent = `cannot be judged here: ${error.message}`;
    }
  }

  /** Works out again, station by station, what rests on values that were measured. */
  async #feed() {
    const turn = ++this.#turn;
    const fed = {};
    for (const station of this.#sheet.querySelectorAll("[data-station]")) {
      const rows = [...station.querySelectorAll("tr[data-key]")];
      for (const row of rows) {
        const given = this.#measured[row.dataset.key];
        const verdict = row.querySelector(".br-judged")?.dataset.verdict;
        for (const input of this.#data.feeds[row.dataset.key] ?? []) {
          if (given && verdict !== "refused") fed[input] = given;
        }
      }
      for (const row of rows) {
        const of = this.#data.results[row.dataset.key];
        if (of) await this.#again(row, of, fed).catch((error) => this.#note(row, error.message));
        if (turn !== this.#turn) return; // something newer was typed
      }
    }
  }

  async #again(row, [calculator, result], fed) {
    const names = this.#data.inputs[calculator].filter((name) => name in fed);
    const figure = row.querySelector(".br-set strong");
    const own = new Set(this.#data.feeds[row.dataset.key] ?? []);
    if (!names.length || names.every((name) => own.has(name))) {
      figure.textContent = figure.dataset.planned;
      this.#note(row, "");
      return;
    }
    const inputs = { ...this.#data.given[calculator] };
    for (const name of names) inputs[name] = withUnit(fed[name]);
    const answer = await this.#ask(calculator, inputs);
    if (answer.refused) {
      this.#note(row, `with what was measured: ${answer.refused[0].why}`);
      return;
    }
    const found = answer.results[result] ?? answer.inputs[result];
    if (!found) return;
    const same = alike(found.shown, figure.dataset.planned);
    figure.textContent = same ? figure.dataset.planned : found.shown;
    this.#note(row, same ? "" : `planned ${figure.dataset.planned}`);
  }

  #asked = new Map();

  /** One answer a calculator and set of inputs: its rows share it. */
  #ask(calculator, inputs) {
    const key = JSON.stringify([calculator, inputs]);
    if (this.#asked.size > 60) this.#asked.clear();
    if (!this.#asked.has(key)) {
      const answer = this.#engine.ask("answer", { calculator, inputs });
      answer.catch(() => this.#asked.delete(key));
      this.#asked.set(key, answer);
    }
    return this.#asked.get(key);
  }

  #note(row, words) {
    row.querySelector(".br-fed")?.remove();
    row.classList.toggle("br-is-fed", Boolean(words));
    if (words) row.querySelector(".br-set").append(make("span", { className: "br-fed" }, words));
  }

  #export() {
    const { order } = this.#data;
    save(`measured-${order}.json`, JSON.stringify({ benchrule: "measured", version: 1, order, values: this.#measured }, null, 1), "application/json");
  }

  async #clear() {
    if (!confirm("Clear all that was measured for this order on this device?")) return;
    this.#measured = {};
    await letGo(this.#key);
    for (const entry of this.#sheet.querySelectorAll(".br-measured input")) {
      entry.value = "";
      this.#judge(entry.closest("tr"), entry);
    }
    this.#said.textContent = "Cleared.";
    this.#feed();
  }
}

/** Whether two printed figures are one, though one may have more decimals. */
function alike(one, other) {
  const [[a, unit], [b, theirs]] = [one, other].map((text) => [parseFloat(text), text.replace(/^[-−\d.]+\s*/, "")]);
  return unit === theirs && a === b;
}

/** A value as it was typed; one typed in inches without a unit gets it. */
function withUnit({ given, units }) {
  return units !== "metric" && /^[\d\s./-]+$/.test(given) ? `${given} in` : given;
}
