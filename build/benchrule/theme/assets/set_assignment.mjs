// The trainer's page: choose exercises, get a file, a link, its code and sheets to print.
import { newId } from "./device.mjs";
import { field, fill, make, oneAtATime, openToPrint, save } from "./elements.mjs";
import { CannotStart } from "./engine.mjs";
import { qrPicture } from "./qr_picture.mjs";
import { unitSystem } from "./store.mjs";
import { troubleView } from "./trouble.mjs";

const NUMBERS = [["trainees", "Trainees", 12, 1, 200], ["marks", "Marks a question", 2, 1, 20]];
const SYSTEMS = [["metric", "mm"], ["inch", "inch, decimal"], ["inch64", "inch, 64ths"]];
const GRADES = [["1", "First steps: hints stand open"], ["2", "At the bench"], ["3", "On your own: sizes in the other units"]];

export function attachSetting(learning) {
  const section = document.querySelector("[data-set-assignment]:not([data-live])");
  if (!section) return;
  section.dataset.live = "";
  new Setting(section, learning).start();
}

class Setting {
  #section;
  #learning;
  #counts = new Map();
  #chosen = [];
  #total = make("p", { className: "br-learn-total", role: "status" });
  #made = make("div", { className: "br-learn-made" });

  constructor(section, learning) {
    this.#section = section;
    this.#learning = learning;
  }

  async start() {
    fill(this.#section, make("p", { className: "br-state", "data-state": "starting" }, "Getting the exercises …"));
    try {
      const { stations, refused } = await this.#learning.ask({ do: "catalogue" }, await this.#learning.everyExercise());
      if (refused) throw new Error(refused);
      fill(this.#section, this.#form(stations), this.#made);
      this.#count();
    } catch (error) {
      fill(this.#section, this.#failed(error, () => this.start(), "Assignments cannot be made just now."));
    }
  }

  /** What went wrong, with a button that does it again. */
  #failed(error, act, lead = "") {
    const again = ({ waited }) => {
      if (error instanceof CannotStart && !waited) this.#learning.tryAgain();
      return act();
    };
    return troubleView(error, { lead, again: error.constructor === Error ? null : again });
  }

  #form(stations) {
    const send = oneAtATime(() => this.#make(form));
    const form = make("form", {
      className: "br-learn-form", noValidate: true,
      onsubmit: (event) => { event.preventDefault(); send(); },
    },
    field("Title", make("input", { name: "title", maxLength: 80, value: "Assignment" })),
    field("A word of instruction", make("textarea", { name: "word", maxLength: 600, rows: 3 })),
    make("div", { className: "br-learn-row" },
      field("Due (may stay open)", make("input", { name: "due", type: "date" })),
      field("Units", select("units", SYSTEMS, unitSystem())),
      field("Grade", select("grade", GRADES, "2")),
      ...NUMBERS.map(([name, label, value, min, max]) => field(label, make("input", { name, type: "number", value: String(value), min: String(min), max: String(max), inputMode: "numeric" }))),
    ),
    make("h2", {}, "Exercises"),
    make("p", { className: "br-help" }, "How many questions of each. Every trainee gets figures of their own."),
    ...stations.map((station) => this.#station(station)),
    this.#total,
    make("p", { className: "br-practice-do" }, make("button", { type: "submit", className: "br-button br-main" }, "Make the assignment")));
    return form;
  }

  #station(station) {
    const chosen = make("span", { className: "br-learn-chosen" });
    this.#chosen.push([station, chosen]);
    return make("details", { className: "br-fold br-learn-station" }, make("summary", {}, station.title, " ", chosen),
      ...station.exercises.map(({ id, title }) => make("label", { className: "br-learn-exercise" },
        make("input", {
          type: "number", min: "0", max: "20", value: "0", inputMode: "numeric", "aria-label": `Questions of ${title}`,
          "data-exercise": id, oninput: (event) => this.#choose(id, event.target),
        }), make("span", {}, title))));
  }

  /** An exercise may be practised at several stations: it is one choice, wherever it is made. */
  #choose(id, entry) {
    const count = Math.max(0, Math.min(20, Math.trunc(Number(entry.value)) || 0));
    if (count) this.#counts.set(id, count);
    else this.#counts.delete(id);
    for (const other of this.#section.querySelectorAll(`[data-exercise="${id}"]`)) {
      if (other !== entry) other.value = String(count);
    }
    for (const [station, chosen] of this.#chosen) {
      const here = station.exercises.reduce((sum, one) => sum + (this.#counts.get(one.id) ?? 0), 0);
      chosen.textContent = here ? `${here} chosen` : "";
    }
    this.#count();
  }

  #count() {
    const total = [...this.#counts.values()].reduce((sum, count) => sum + count, 0);
    this.#total.textContent = total ? `${total} questions for each trainee.` : "No question chosen yet.";
  }

  async #make(form) {
    const data = Object.fromEntries(new FormData(form));
    const choices = {
      title: data.title.trim(), word: data.word.trim(), due: data.due, units: data.units,
      grade: Number(data.grade), marks: Number(data.marks), trainees: Number(data.trainees),
      questions: [...this.#counts],
    };
    try {
      const made = await this.#learning.ask({ do: "make_assignment", choices, id: newId(10) }, [...this.#counts.keys()]);
      if (made.refused) throw new Error(made.refused);
      this.#show(made);
    } catch (error) {
      fill(this.#made, this.#failed(error, () => this.#make(form)));
    }
    this.#made.scrollIntoView({ block: "nearest" });
  }

  #show({ assignment, text, fragment, codes }) {
    const link = new URL("../work/#", location.href.split("#")[0]).href + fragment;
    const name = `assignment-${assignment.id}`;
    const needs = assignment.questions.map(([id]) => id);
    const failure = make("div");
    const print = (what) => oneAtATime(async () => {
      fill(failure);
      try {
        const { document: page, refused } = await this.#learning.ask({ do: what, assignment }, needs, 60_000);
        if (refused) throw new Error(refused);
        openToPrint(page);
      } catch (error) {
        fill(failure, this.#failed(error, print(what)));
      }
    });
    fill(this.#made,
      failure, make("h2", { tabIndex: -1 }, "The assignment"),
      make("p", { className: "br-practice-do" },
        make("button", { type: "button", className: "br-button br-main", onclick: () => save(`${name}.json`, text, "application/json") }, "Save the file"),
        make("button", { type: "button", className: "br-button", onclick: async (event) => {
          await navigator.clipboard?.writeText(link).catch(() => {});
          event.target.textContent = navigator.clipboard ? "Copied" : "Copy it from the field";
        } }, "Copy the link"),
        make("button", { type: "button", className: "br-button", onclick: print("sheet") }, "Sheets to print"),
        make("button", { type: "button", className: "br-button", onclick: print("key") }, "Answer key"),
      ),
      make("p", { className: "br-help" }, "Keep the file: results are marked against it. Whoever has the link can work through it, on any device that has this handbook."),
      field("Link", make("input", { readOnly: true, value: link, onfocus: (event) => event.target.select() })),
      qrPicture(link, "The link as a code to scan"),
      make("h3", {}, "Codes, one a trainee"),
      make("p", { className: "br-help" }, "Give each trainee one and note who has which; the handbook keeps no names."),
      make("ol", { className: "br-learn-codes" }, ...codes.map((code) => make("li", {}, code))),
    );
    this.#made.querySelector("h2").focus({ preventScroll: true });
  }
}

function select(name, options, chosen) {
  return make("select", { name }, ...options.map(([value, words]) => make("option", { value, selected: value === chosen }, words)));
}
