// The trainee's page: open an assignment, work through it, stop and go on, save the result.
//
// Whatever is typed is on the disk before the next key: an assignment goes on where it was left.
import { change, heedStore, kept, keptKeys, whyNotKept } from "./device.mjs";
import { field, fill, localTime, make, oneAtATime, save, sentence } from "./elements.mjs";
import { CannotStart } from "./engine.mjs";
import { markView, questionView, stepList } from "./exercise_view.mjs";
import { troubleView } from "./trouble.mjs";

const LARGEST_FILE = 200_000;

export function attachWork(learning) {
  const section = document.querySelector("[data-work-assignment]:not([data-live])");
  if (!section) return;
  section.dataset.live = "";
  new Work(section, learning).start();
}

class Work {
  #section;
  #learning;
  #said = make("div", { role: "status" });

  constructor(section, learning) {
    this.#section = section;
    this.#learning = learning;
  }

  start() {
    this.#learning.everyExercise().then((all) => this.#learning.prepare(all)).catch(() => {}); // fetched while there is a network
    window.addEventListener("hashchange", () => document.contains(this.#section) && this.#arrive());
    this.#arrive();
  }

  #arrive() {
    const fragment = plainText(location.hash.slice(1));
    if (fragment.startsWith("a1.")) this.#open({ fragment });
    else this.#ways();
  }

  /** The ways to an assignment: one under way, a file, a link. */
  async #ways(words = "") {
    const keys = await keptKeys("work/");
    const found = await Promise.all(keys.map(async (key) => [key, await kept(key)]));
    const begun = found.filter(([, work]) => isWork(work));
    const spoilt = found.length - begun.length;
    const file = make("input", { type: "file", accept: "application/json,.json", id: "br-assignment-file", className: "br-for-readers", onchange: () => this.#openFile(file) });
    const link = make("input", { name: "link", autocomplete: "off", spellcheck: false });
    fill(this.#section,
      words ? make("p", { className: "br-error", role: "alert" }, sentence(words)) : null,
      ...(begun.length ? [make("h2", {}, "On this device"), make("ul", { className: "br-learn-begun" }, ...begun.map(([, work]) => make("li", {},
        make("button", { type: "button", className: "br-button", onclick: () => this.#open({ text: JSON.stringify(work.assignment) }, work.code) },
          `${work.assignment.title}, ${work.code}: ${work.result ? "finished" : `${Object.keys(work.given).length} answered`}`))))] : []),
      spoilt ? make("p", { className: "br-help" }, `What this device keeps of ${spoilt === 1 ? "one assignment" : `${spoilt} assignments`} cannot be read; it is left as it is.`) : null,
      make("h2", {}, begun.length ? "Another assignment" : "Open an assignment"),
      make("p", { className: "br-practice-do" }, make("label", { className: "br-button br-main", htmlFor: file.id }, "Choose its file"), file),
      make("form", { className: "br-learn-form", onsubmit: (event) => {
        event.preventDefault();
        this.#open({ fragment: link.value.trim().split("#").pop() });
      } }, field("Or paste its link", link), make("p", { className: "br-practice-do" }, make("button", { type: "submit", className: "br-button" }, "Open the link"))),
    );
  }

  async #openFile(file) {
    const [chosen] = file.files;
    if (!chosen) return undefined;
    if (chosen.size > LARGEST_FILE) return this.#ways("The file is too large to be an assignment");
    return this.#open({ text: await chosen.text() });
  }

  async #open(what, code = "") {
    fill(this.#section, make("p", { className: "br-state", "data-state": "starting", role: "status" }, "Opening the assignment …"));
    try {
      const opened = await this.#learning.ask({ do: "open_assignment", ...what });
      if (opened.refused) return this.#ways(opened.refused);
      if (code) return await this.#begin(opened, code);
      this.#cover(opened);
    } catch (error) {
      fill(this.#section, troubleView(error, {
        lead: "The assignment cannot be opened just now.",
        again: ({ waited }) => {
          if (error instanceof CannotStart && !waited) this.#learning.tryAgain();
          this.#open(what, code);
        },
      }), make("p", { className: "br-practice-do" }, make("button", { type: "button", className: "br-button", onclick: () => this.#ways() }, "Another assignment")));
    }
    return undefined;
  }

  /** What the assignment is, and the question for the code. */
  #cover(opened) {
    const { assignment } = opened;
    const code = make("input", { name: "code", autocomplete: "off", spellcheck: false, maxLength: 8, autocapitalize: "characters", className: "br-learn-code" });
    const count = assignment.questions.reduce((sum, [, number]) => sum + number, 0);
    this.#said.replaceChildren();
    const begin = oneAtATime(async () => {
      fill(this.#said, make("p", { className: "br-state", "data-state": "starting" }, "Drawing your questions …"));
      try {
        await this.#begin(opened, code.value.trim().toUpperCase());
      } catch (error) {
        fill(this.#said, troubleView(error, {
          role: null,
          again: error.constructor === Error ? null : ({ waited }) => {
            if (error instanceof CannotStart && !waited) this.#learning.tryAgain();
            begin();
          },
        }));
      }
    });
    fill(this.#section,
      make("h2", {}, assignment.title),
      assignment.word ? make("p", { className: "br-learn-word" }, assignment.word) : null,
      make("p", {}, `${count} questions, ${count * assignment.marks} marks${assignment.due ? `, due ${assignment.due}` : ""}.`),
      make("form", { className: "br-learn-form", onsubmit: (event) => {
        event.preventDefault();
        begin();
      } }, field("Your code", code), this.#said, make("p", { className: "br-practice-do" },
        make("button", { type: "submit", className: "br-button br-main" }, "Begin"),
        make("button", { type: "button", className: "br-button", onclick: () => this.#ways() }, "Another assignment"))),
    );
    code.focus({ preventScroll: true });
  }

  async #begin({ assignment }, code) {
    const needs = assignment.questions.map(([id]) => id);
    const { questions, left_out: leftOut, refused } = await this.#learning.ask({ do: "assignment_questions", assignment, code }, needs, 60_000);
    if (refused) throw new Error(refused);
    const key = `work/${assignment.id}/${code}`;
    let work = { assignment, code, given: {}, began: localTime(), result: null };
    await change(key, (was) => (work = isWork(was) ? was : work));
    new Paper(this.#section, this.#learning, { key, work, questions, leftOut, needs, leave: () => this.#ways() }).show();
  }
}

class Paper {
  #section;
  #learning;
  #key;
  #work;
  #questions;
  #leftOut;
  #needs;
  #leave;
  #views = new Map();
  #typings = {}; // how often each answer was typed here; what another tab put in does not count
  #count = make("p", { className: "br-learn-total", role: "status" });
  #note = make("p", { className: "br-help", role: "status" });
  #failure = make("div");
  #end = make("div", { className: "br-learn-end" });
  #finish = oneAtATime(() => this.#close());

  constructor(section, learning, { key, work, questions, leftOut, needs, leave }) {
    this.#section = section;
    this.#learning = learning;
    this.#key = key;
    this.#work = work;
    this.#questions = questions;
    this.#leftOut = leftOut;
    this.#needs = needs;
    this.#leave = leave;
  }

  show() {
    const { assignment, code } = this.#work;
    const items = this.#questions.map((question) => {
      const view = questionView(question, { onChange: (given) => this.#typed(question.number, given) });
      this.#views.set(question.number, view);
      const given = this.#work.given[question.number];
      if (given !== undefined) view.set(given);
      return make("li", { id: `br-q${question.number}` }, make("p", { className: "br-practice-title" }, question.title),
        question.steps.length ? stepList(question.steps) : null, view.element);
    });
    fill(this.#section,
      make("h2", { tabIndex: -1 }, `${assignment.title}, ${code}`),
      assignment.word ? make("p", { className: "br-learn-word" }, assignment.word) : null,
      this.#leftOut.length ? make("p", { className: "br-help" }, `${this.#leftOut.length} questions are left out: their procedure changed since the assignment was made. Tell your trainer.`) : null,
      this.#count, this.#note, make("ol", { className: "br-learn-paper" }, ...items), this.#end,
    );
    this.#section.querySelector("h2").focus({ preventScroll: true });
    this.#tally();
    if (this.#work.result) this.#finished(this.#work.result, this.#work.marks);
    else this.#ask();
    heedStore(this.#count, (what) => this.#heed(what));
  }

  #typed(number, given) {
    this.#typings[number] = (this.#typings[number] ?? 0) + 1;
    put(this.#work.given, number, given);
    this.#tally();
    this.#keep((work) => put(work.given, number, given), number);
  }

  /** Changes what is kept, and only that: another tab may have the same assignment open. */
  async #keep(act, part) {
    const mine = structuredClone(this.#work);
    await change(this.#key, (was) => {
      const work = isWork(was) ? was : mine;
      act(work);
      return work;
    }, part);
    this.#tally(await whyNotKept());
  }

  #tally(why = "") {
    this.#count.classList.toggle("br-error", Boolean(why));
    const answered = `${Object.keys(this.#work.given).length} of ${this.#questions.length} answered`;
    this.#count.textContent = why ? `${answered}. What you type is not kept: finish in one go, and save the result file. ${why}` : `${answered}; kept on this device.`;
  }

  /** What another tab answered stands here too. */
  async #heed({ key, part, gone, wiped }) {
    if (gone && !this.#work.result) {
      this.#note.textContent = "What was kept on this device was deleted. What stands here is kept again.";
      this.#keep(() => {}, null);
    }
    if (wiped) this.#note.textContent = "Everything kept was wiped in another tab. What stands here is kept again when you change it.";
    if (key !== this.#key || part === null) return;
    const before = this.#typings[part];
    const work = await kept(key);
    if (!isWork(work)) return;
    if (work.result && !this.#work.result) {
      this.#work = work;
      this.#note.textContent = "Finished in another tab.";
      this.#finished(work.result, work.marks);
    } else if (!work.result && this.#typings[part] === before) { // what was typed here meanwhile is newer
      put(this.#work.given, part, work.given[part] ?? "");
      this.#views.get(part)?.set(work.given[part]);
      this.#note.textContent = "This assignment is open in another tab too; what is answered there is put in here.";
      this.#tally();
    }
  }

  #ask() {
    fill(this.#end, this.#failure, make("p", { className: "br-practice-do" },
      make("button", { type: "button", className: "br-button br-main", onclick: () => this.#finish() }, "Finish"),
      make("button", { type: "button", className: "br-button", onclick: this.#leave }, "Stop here, go on later")));
  }

  async #close() {
    const now = await kept(this.#key);
    if (isWork(now) && now.result) return this.#finished(now.result, now.marks);
    const open = this.#questions.length - Object.keys(this.#work.given).length;
    if (!confirm(open ? `${open} questions are not answered. Finish all the same?` : "Finish? The answers cannot be changed after this.")) return undefined;
    fill(this.#failure);
    try {
      const { assignment, code, given, began } = this.#work;
      const made = await this.#learning.ask({ do: "make_result", assignment, code, given, began, saved: localTime() }, this.#needs, 60_000);
      if (made.refused) throw new Error(made.refused);
      this.#work.result = made.text;
      this.#work.marks = { score: made.score, of: made.of, marks: made.marks };
      const finished = structuredClone(this.#work);
      await this.#keep((work) => Object.assign(work, finished), "result");
      this.#finished(this.#work.result, this.#work.marks);
    } catch (error) {
      fill(this.#failure, troubleView(error, {
        lead: "Not finished yet; your answers stand.",
        again: ({ waited }) => {
          if (error instanceof CannotStart && !waited) this.#learning.tryAgain();
          this.#finish();
        },
      }));
    }
    return undefined;
  }

  async #finished(text, { score, of, marks }) {
    for (const mark of marks) {
      const view = this.#views.get(mark.number);
      if (!view) continue;
      view.lock(mark.answer);
      const link = await this.#learning.link(mark.read).catch(() => null);
      view.element.parentElement.querySelector(".br-mark")?.remove();
      view.element.after(markView(mark, link));
    }
    const { assignment, code } = this.#work;
    const button = make("button", { type: "button", className: "br-button br-main", onclick: () => save(`result-${assignment.id}-${code}.json`, text, "application/json"), "aria-describedby": "br-learn-score" }, "Save the result file");
    fill(this.#end,
      make("p", { className: "br-learn-score", id: "br-learn-score" }, make("strong", {}, `${score} of ${of} marks`), ". Your trainer marks it again from the file."),
      make("p", { className: "br-practice-do" }, button, make("button", { type: "button", className: "br-button", onclick: this.#leave }, "Close")),
    );
    button.focus({ preventScroll: true });
  }
}

/** A link's fragment as it was before it was escaped. */
function plainText(escaped) {
  try {
    return decodeURIComponent(escaped);
  } catch {
    return escaped; // cut off in the middle of an escape: its own check says so
  }
}

/** Whether what is kept is work on an assignment, and not what someone else put there. */
function isWork(work) {
  return work !== null && typeof work === "object" && typeof work.code === "string" && typeof work.began === "string"
    && work.given !== null && typeof work.given === "object" && typeof work.assignment?.title === "string"
    && (work.result === null || (typeof work.result === "string" && Array.isArray(work.marks?.marks)));
}

function put(given, number, value) {
  if (value === "" || value === null) delete given[number];
  else given[number] = value;
}
