// Practice at the end of a page: one question after the other, what went wrong comes back.
import { addAnswer, history, keep, keeps, kept, letGo, newId } from "./device.mjs";
import { fill, make } from "./elements.mjs";
import { CannotStart } from "./engine.mjs";
import { markView, questionView, stepList } from "./exercise_view.mjs";
import { remember, remembered } from "./store.mjs";

const GRADES = [["1", "First steps"], ["2", "At the bench"], ["3", "On your own"]];
const SYSTEMS = [["metric", "mm"], ["inch", "inch"], ["inch64", "inch, 64ths"]];

/** Makes every place of practice on the page live. */
export function attachPractice(learning) {
  for (const section of document.querySelectorAll("[data-exercises]:not([data-live])")) {
    section.dataset.live = "";
    new Practice(section, learning);
  }
}

class Practice {
  #section;
  #learning;
  #exercises;
  #key;
  #now = null; // the question under way: {exercise, seed, grade, units, given}
  #marked = false;

  constructor(section, learning) {
    this.#section = section;
    this.#learning = learning;
    this.#exercises = section.dataset.exercises.split(" ");
    this.#key = `practice/${section.dataset.practice}`;
    this.#offer();
  }

  async #offer() {
    const begun = await kept(this.#key);
    fill(this.#section, make("button", {
      type: "button", className: "br-button br-main", onclick: () => this.#start(begun),
    }, begun ? "Go on practising" : "Practise"), make("p", { className: "br-help" },
      `${this.#exercises.length} exercises, drawn anew each time. What went wrong comes back.`));
    this.#section.hidden = false;
  }

  async #start(begun) {
    fill(this.#section, this.#state("Getting ready …"));
    try {
      if (begun && this.#exercises.includes(begun.exercise)) await this.#ask(begun, true);
      else await this.#next();
    } catch (error) {
      this.#failed(error);
    }
  }

  async #next(exercise = null) {
    const answers = await history();
    const request = { do: "next", exercises: this.#exercises, history: answers, now: Date.now(), seed: this.#key };
    const next = await this.#learning.ask(request);
    if (next.refused) throw new Error(next.refused);
    await this.#ask({
      exercise: exercise ?? next.exercise, seed: newId(12), given: null,
      grade: Number(remembered("grade") ?? 1), units: remembered("units") ?? "metric", summary: next.summary,
    });
  }

  async #ask(now, again = false) {
    const { exercise, seed, grade, units } = now;
    const question = await this.#learning.ask({ do: "draw", exercise, seed, grade, units }, [exercise]);
    if (question.refused) {
      if (again) return this.#next(); // the procedure changed since
      throw new Error(question.refused);
    }
    this.#now = now;
    this.#marked = false;
    this.#show(question);
    await keep(this.#key, now).catch(() => {});
    return undefined;
  }

  #show(question) {
    const view = questionView(question, {
      onChange: (given) => {
        this.#now.given = given;
        keep(this.#key, this.#now).catch(() => {}); // typed on even where the store is full
      },
      onEnter: () => this.#check(view),
    });
    if (this.#now.given !== null) view.set(this.#now.given);
    const result = make("div", { className: "br-practice-result" });
    const check = make("button", { type: "button", className: "br-button br-main", onclick: () => this.#check(view) }, "Check");
    const next = make("button", { type: "button", className: "br-button br-main", hidden: true, onclick: () => this.#go() }, "Next question");
    fill(this.#section,
      this.#bar(question), view.element, this.#hints(question), result,
      make("p", { className: "br-practice-do" }, check, next, this.#stop()),
    );
    this.#section.parts = { view, result, check, next };
  }

  #bar(question) {
    const { summary } = this.#now;
    const count = summary
      ? make("p", { className: "br-practice-count" }, `${summary.learned} of ${summary.exercises} learned, ${summary.tried} tried`)
      : null;
    const grade = this.#choice("Grade", GRADES, String(this.#now.grade), (value) => remember("grade", value));
    const units = this.#choice("Units", SYSTEMS, this.#now.units, (value) => remember("units", value));
    return make("div", { className: "br-practice-bar" },
      make("p", { className: "br-practice-title" }, question.title), count, grade, units);
  }

  #choice(label, options, chosen, take) {
    const select = make("select", {
      onchange: () => {
        take(select.value);
        this.#next(this.#now.exercise).catch((error) => this.#failed(error));
      },
    }, ...options.map(([value, words]) => make("option", { value, selected: value === chosen }, words)));
    return make("label", {}, `${label} `, select);
  }

  #hints(question) {
    if (!question.hints) return make("p", { className: "br-help" }, question.grade === 3 ? "No hints in this grade." : "");
    const place = make("div", { className: "br-hints" });
    let open = 0;
    const more = make("button", { type: "button", className: "br-button" }, "Show a step");
    const show = async (count) => {
      const { exercise, seed, grade, units } = this.#now;
      const hint = await this.#learning.ask({ do: "hint", exercise, seed, grade, units, count }, [exercise]);
      open = count;
      fill(place, stepList(hint.steps));
      more.hidden = hint.left === 0;
      more.textContent = hint.left ? `Show the next step (${hint.left} left)` : "";
    };
    more.addEventListener("click", () => show(open + 1).catch((error) => this.#failed(error)));
    if (question.open_hints) show(question.open_hints).catch(() => {});
    return make("div", {}, place, more);
  }

  async #check(view) {
    if (this.#marked) return this.#go();
    const { exercise, seed, grade, units } = this.#now;
    const given = view.value();
    const { result, check, next } = this.#section.parts;
    if (given === null || given === "") {
      fill(result, make("p", { className: "br-error", role: "status" }, "Give an answer first."));
      return undefined;
    }
    try {
      const marked = await this.#learning.ask({ do: "mark", exercise, seed, grade, units, given }, [exercise]);
      if (marked.verdict === "unreadable") {
        fill(result, make("p", { className: "br-error", role: "status" }, marked.words));
        return undefined;
      }
      this.#marked = true;
      const stored = await addAnswer({
        exercise, seed, grade, units, given: JSON.stringify(given), verdict: marked.verdict, slip: marked.slip,
        right: marked.verdict === "right", at: Date.now(),
      }).then(() => true, () => false);
      await letGo(this.#key).catch(() => {});
      view.lock(marked.answer);
      fill(result, markView(marked, await this.#learning.link(marked.read)));
      if (!stored || !(await keeps())) {
        result.append(make("p", { className: "br-error" }, "This browser did not keep the answer: its store is full or closed."));
      }
      check.hidden = true;
      next.hidden = false;
      next.focus({ preventScroll: true });
    } catch (error) {
      this.#failed(error);
    }
    return undefined;
  }

  #go() {
    return this.#next().catch((error) => this.#failed(error));
  }

  #stop() {
    return make("button", { type: "button", className: "br-button", onclick: () => this.#offer() }, "Stop for now");
  }

  #state(words) {
    return make("p", { className: "br-state", "data-state": "starting", role: "status" }, words);
  }

  #failed(error) {
    const words = error instanceof CannotStart
      ? "The exercises cannot start here. The questions below are on paper; load the page again to try once more."
      : `This did not work: ${error.message || "it took too long"}. Nothing is lost.`;
    const again = make("button", { type: "button", className: "br-button", onclick: () => this.#offer() }, "Try again");
    fill(this.#section, make("p", { className: "br-error", role: "alert" }, words), again);
  }
}
