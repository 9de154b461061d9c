// A build sheet on the device: what is measured is kept, judged, and carried on to later stations.
import { change, heedStore, kept, letGo, whyNotKept } from "./device.mjs";
import { BLINK_MS, fill, make, save, sentence } from "./elements.mjs";
import { CannotStart } from "./engine.mjs";
import { unitSystem } from "./store.mjs";
import { wordsOf } from "./trouble.mjs";

const BARE = /^[\d\s.,/-]+$/; // a figure without a unit
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
  #typings = {}; // how often each row was typed into here; what another tab put in does not count
  #heard = 0; // how often another tab changed this sheet
  #said = make("p", { role: "status", className: "br-help" });

  constructor(sheet, engine) {
    this.#sheet = sheet;
    this.#engine = engine;
    this.#data = JSON.parse(sheet.querySelector("template[data-sheet]").content.textContent);
    this.#key = `order/${this.#data.order}`;
  }

  async start() {
    const found = await kept(this.#key);
    this.#measured = sound(found);
    const inch = unitSystem() !== "metric";
    for (const row of this.#sheet.querySelectorAll("tr[data-key]")) {
      const cell = row.querySelector(".br-measured");
      if (!cell) continue;
      const key = row.dataset.key;
      const name = row.querySelector("th").firstChild.textContent.trim();
      const entry = make("input", {
        type: "text", inputMode: inch ? "text" : "decimal", autocomplete: "off", spellcheck: false, maxLength: 60,
        value: this.#asTyped(row) ?? cell.dataset.recorded, "aria-label": `Measured: ${name}`, oninput: () => this.#typed(row, entry),
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
    heedStore(this.#sheet, (what) => this.#heed(what));
    const spoilt = Object.keys(found ?? {}).length - Object.keys(this.#measured).length;
    this.#said.textContent = (spoilt ? `${spoilt} of the figures kept on this device cannot be read; measure them again. ` : "") + (await whyNotKept());
  }

  #typed(row, entry) {
    const key = row.dataset.key;
    this.#typings[key] = (this.#typings[key] ?? 0) + 1;
    if (entry.value.trim()) {
      this.#measured[key] = { given: entry.value.trim(), units: unitSystem(), at: new Date().toISOString() };
    } else delete this.#measured[key];
    this.#keep(key);
    this.#judge(row, entry).then(() => this.#feed()); // what cannot be read is carried nowhere
  }

  /** Changes one row of what is kept, and only that: another tab may have the same sheet open. */
  async #keep(key) {
    const all = { ...this.#measured };
    const heard = this.#heard;
    await change(this.#key, (was) => {
      if (was === undefined) return all;
      const { [key]: _, ...others } = sound(was);
      return key in all ? { ...others, [key]: all[key] } : others;
    }, key);
    const why = await whyNotKept();
    if (why) this.#said.textContent = `Not kept: save what was measured to a file. ${why}`;
    else if (heard === this.#heard) this.#said.textContent = "Kept on this device.";
  }

  /** What another tab measured stands here too. */
  async #heed({ key, part, gone, wiped }) {
    if (gone && Object.keys(this.#measured).length) {
      this.#said.textContent = "What was kept on this device was deleted. What stands here is kept again.";
      const all = { ...this.#measured };
      change(this.#key, (was) => ({ ...all, ...sound(was) }));
    }
    if (wiped) this.#said.textContent = "Everything kept was wiped in another tab. What stands here is kept again when you change it.";
    if (key !== this.#key) return;
    this.#heard += 1;
    this.#said.textContent = "This sheet is open in another tab too; what is measured there is put in here.";
    const before = { ...this.#typings };
    const now = sound(await kept(key));
    // What is typed here meanwhile is newer, and written next.
    const rows = [...this.#sheet.querySelectorAll("tr[data-key]")].filter(({ dataset }) =>
      (part === null || dataset.key === part) && this.#typings[dataset.key] === before[dataset.key]);
    const judged = [];
    for (const row of rows) {
      const entry = row.querySelector(".br-measured input");
      if (!entry) continue;
      if (now[row.dataset.key]) this.#measured[row.dataset.key] = now[row.dataset.key];
      else delete this.#measured[row.dataset.key];
      entry.value = this.#asTyped(row) ?? "";
      judged.push(this.#judge(row, entry));
    }
    Promise.all(judged).then(() => this.#feed()); // the first answer may be long in coming
  }

  /** What was typed into a row; with its unit where it was typed in another system than is shown now. */
  #asTyped(row) {
    const measured = this.#measured[row.dataset.key];
    if (!measured || (measured.units === "metric") === (unitSystem() === "metric")) return measured?.given;
    if (measured.units !== "metric") return withUnit(measured);
    const unit = row.dataset.judge ? JSON.parse(row.dataset.judge).unit : "";
    return BARE.test(measured.given) ? `${measured.given} ${unit}`.trim() : measured.given;
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
    const late = setTimeout(() => {
      if (entry.value !== asked) return;
      place.textContent = "…";
      place.title = "";
      delete place.dataset.verdict;
    }, BLINK_MS);
    try {
      const request = { ...JSON.parse(row.dataset.judge), value: asked, units: unitSystem() };
      const answer = await this.#engine.ask("judge", request);
      if (entry.value !== asked) return;
      place.textContent = answer.refused ? `${answer.refused[0].why}` : WORDS[answer.verdict];
      place.title = answer.words ?? "";
      place.dataset.verdict = answer.verdict ?? "refused";
    } catch (error) {
      const { words, why } = wordsOf(error);
      place.replaceChildren(`Not judged: ${words} `, make("button", { type: "button", className: "br-button", onclick: () => {
        if (error instanceof CannotStart) this.#engine.tryAgain();
        this.#judge(row, entry).then(() => this.#feed());
      } }, "Try again"));
      place.title = why ?? "";
      place.dataset.verdict = "refused";
    } finally {
      clearTimeout(late);
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
        if (of) await this.#again(row, of, fed).catch((error) => this.#note(row, `not worked out again: ${wordsOf(error).words}`));
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
    const cleared = await letGo(this.#key);
    for (const entry of this.#sheet.querySelectorAll(".br-measured input")) {
      entry.value = "";
      this.#judge(entry.closest("tr"), entry);
    }
    this.#said.textContent = cleared ? "Cleared." : sentence(await whyNotKept());
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
  return units !== "metric" && BARE.test(given) ? `${given} in` : given;
}

/** What was measured, as far as it is what this page keeps. */
function sound(found) {
  const entries = found !== null && typeof found === "object" ? Object.entries(found) : [];
  return Object.fromEntries(entries.filter(([, one]) => typeof one?.given === "string" && typeof one.units === "string"));
}
