// Practice at the end of a page: one question after the other, what went wrong comes back.
import { addAnswer, change, heedStore, history, kept, newId, whyNotKept } from "./device.mjs";
import { BLINK_MS, fill, make, oneAtATime } from "./elements.mjs";
import { CannotStart } from "./engine.mjs";
import { markView, questionView, stepList } from "./exercise_view.mjs";
import { remember, remembered, unitSystem } from "./store.mjs";
import { troubleView } from "./trouble.mjs";

const OTHERS = 5; // questions under way in other tabs, or left by tabs that were killed
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
  #turn = 0; // counts what the reader asked for; what comes for a turn that is over is let go

  constructor(section, learning) {
    this.#section = section;
    this.#learning = learning;
    this.#exercises = section.dataset.exercises.split(" ");
    this.#key = `practice/${section.dataset.practice}`;
    heedStore(section, (what) => this.#heed(what));
    this.#offer();
  }

  async #offer() {
    const turn = ++this.#turn;
    const found = await kept(this.#key);
    if (turn !== this.#turn) return;
    this.#now = null;
    const here = this.#section.contains(document.activeElement);
    fill(this.#section, make("button", {
      type: "button", className: "br-button br-main", onclick: () => this.#start(),
    }, isBegun(found) ? "Go on practising" : "Practise"), make("p", { className: "br-help" },
      `${this.#exercises.length} exercises, drawn anew each time. What went wrong comes back.`));
    this.#section.hidden = false;
    if (here) this.#section.querySelector("button").focus();
  }

  #start() {
    fill(this.#section, this.#state("Getting ready …"));
    return this.#take(async (turn) => {
      const begun = await kept(this.#key);
      if (isBegun(begun) && this.#exercises.includes(begun.exercise)) await this.#ask(turn, { ...begun, others: undefined }, { again: true });
      else await this.#next(turn);
    });
  }

  /** Another question in place of the one that stands here; nothing can be typed that it would sweep away. */
  #go(exercise, focus) {
    const { view, check, result } = this.#section.parts;
    for (const entry of view.element.querySelectorAll("input, button")) entry.disabled = true;
    check.disabled = true;
    setTimeout(() => result.querySelector(".br-state") ?? result.append(this.#state("Drawing another question …")), BLINK_MS);
    return this.#take((turn) => this.#next(turn, exercise, focus));
  }

  /** Does what the reader asked for, unless something else is asked for meanwhile. */
  async #take(act) {
    const turn = ++this.#turn;
    try {
      await act(turn);
    } catch (error) {
      if (turn === this.#turn) this.#failed(error);
    }
  }

  async #next(turn, exercise = null, focus = "") {
    const answers = await history();
    const request = { do: "next", exercises: this.#exercises, history: answers, now: Date.now(), seed: this.#key };
    const next = await this.#learning.ask(request);
    if (next.refused) throw new Error(next.refused);
    await this.#ask(turn, {
      exercise: exercise ?? next.exercise, seed: newId(12), given: null,
      grade: chosenGrade(), units: unitSystem(), summary: next.summary,
    }, { focus });
  }

  async #ask(turn, now, { again = false, focus = "" } = {}) {
    const { exercise, seed, grade, units } = now;
    const question = await this.#learning.ask({ do: "draw", exercise, seed, grade, units }, [exercise]);
    if (turn !== this.#turn) return undefined;
    if (question.refused) {
      if (again) {
        await this.#letGo(seed); // the procedure changed since
        return this.#next(turn);
      }
      throw new Error(question.refused);
    }
    this.#now = now;
    this.#marked = false;
    this.#show(question, focus);
    await this.#keep();
    return undefined;
  }

  /** Keeps the question under way, beside those that other tabs have under way. */
  #keep() {
    const mine = { ...this.#now };
    return change(this.#key, (was) => ({ ...mine, others: others(was, mine.seed) }));
  }

  #letGo(seed) {
    return change(this.#key, (was) => {
      const [next, ...rest] = others(was, seed);
      return next && { ...next, others: rest };
    });
  }

  /** Another tab answered the very question that stands here, or what was kept is gone. */
  #heed({ answers = [], gone }) {
    const now = this.#now;
    if (!now || this.#marked) return;
    if (gone) this.#keep();
    if (!answers.some(({ exercise, seed }) => exercise === now.exercise && seed === now.seed)) return;
    const { result, next } = this.#section.parts;
    fill(result, make("p", { className: "br-help", role: "status" }, "This question was answered in another tab. Answer it here too, or go on to the next."));
    next.hidden = false;
  }

  #show(question, focus) {
    const act = oneAtATime(() => this.#mark(view));
    const view = questionView(question, {
      onChange: (given) => {
        if (this.#marked) return;
        this.#now.given = given;
        this.#keep();
      },
      onEnter: act,
    });
    if (this.#now.given !== null) view.set(this.#now.given);
    const result = make("div", { className: "br-practice-result" });
    const check = make("button", { type: "button", className: "br-button br-main", onclick: act }, "Check");
    const next = make("button", { type: "button", className: "br-button br-main", hidden: true, onclick: () => this.#go() }, "Next question");
    const bar = this.#bar(question);
    fill(this.#section,
      bar, view.element, this.#hints(question), result,
      make("p", { className: "br-practice-do" }, check, next, this.#stop()),
    );
    this.#section.parts = { bar, view, result, check, next };
    const words = view.element.querySelector(".br-question-words");
    words.tabIndex = -1; // read out, and the keyboard goes on from here
    // A choice is gone through with the arrow keys: the keyboard stays on it.
    const choice = focus && this.#section.querySelector(`.br-practice-bar [name="${focus}"]`);
    (choice || words).focus({ preventScroll: true });
  }

  #bar(question) {
    const { summary } = this.#now;
    const count = summary
      ? make("p", { className: "br-practice-count" }, `${summary.learned} of ${summary.exercises} learned, ${summary.tried} tried`)
      : null;
    const grade = this.#choice("grade", "Grade", GRADES, String(this.#now.grade));
    const units = this.#choice("units", "Units", SYSTEMS, this.#now.units);
    return make("div", { className: "br-practice-bar" },
      make("p", { className: "br-practice-title" }, question.title), count, grade, units);
  }

  #choice(name, label, options, chosen) {
    const select = make("select", {
      name,
      onchange: () => {
        remember(name, select.value);
        this.#letGo(this.#now.seed);
        this.#go(this.#now.exercise, name);
      },
    }, ...options.map(([value, words]) => make("option", { value, selected: value === chosen }, words)));
    return make("label", {}, `${label} `, select);
  }

  #hints(question) {
    if (!question.hints) return make("p", { className: "br-help" }, question.grade === 3 ? "No hints in this grade." : "");
    const turn = this.#turn;
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
    more.addEventListener("click", () => show(open + 1).catch((error) => turn === this.#turn && this.#failed(error)));
    if (question.open_hints) show(question.open_hints).catch(() => {});
    return make("div", {}, place, more);
  }

  async #mark(view) {
    if (this.#marked) return this.#go();
    const turn = this.#turn;
    const { exercise, seed, grade, units } = this.#now;
    const given = view.value();
    const { bar, result, check, next } = this.#section.parts;
    if (given === null || given === "") {
      fill(result, make("p", { className: "br-error", role: "status" }, "Give an answer first."));
      return undefined;
    }
    // What was answered is marked before another question takes its place.
    const hold = (held) => bar.querySelectorAll("select").forEach((select) => (select.disabled = held));
    hold(true);
    try {
      const marked = await this.#learning.ask({ do: "mark", exercise, seed, grade, units, given }, [exercise]);
      if (marked.verdict === "unreadable") {
        fill(result, make("p", { className: "br-error", role: "status" }, marked.words));
        return undefined;
      }
      if (turn === this.#turn) this.#marked = true;
      await addAnswer({
        exercise, seed, grade, units, given: JSON.stringify(given), verdict: marked.verdict, slip: marked.slip,
        right: marked.verdict === "right", at: Date.now(),
      });
      await this.#letGo(seed);
      const link = await this.#learning.link(marked.read).catch(() => null);
      const why = await whyNotKept();
      if (turn !== this.#turn) return undefined;
      view.set(given); // what was marked, where something was typed meanwhile
      view.lock(marked.answer);
      fill(result, markView(marked, link));
      if (why) result.append(make("p", { className: "br-error" }, `This browser did not keep the answer. ${why}`));
      check.hidden = true;
      next.hidden = false;
      next.focus({ preventScroll: true });
    } catch (error) {
      if (turn === this.#turn) this.#failed(error);
    } finally {
      hold(false);
    }
    return undefined;
  }

  #stop() {
    return make("button", { type: "button", className: "br-button", onclick: () => this.#offer() }, "Stop for now");
  }

  #state(words) {
    return make("p", { className: "br-state", "data-state": "starting", role: "status" }, words);
  }

  #failed(error) {
    const lead = error instanceof CannotStart ? "The exercises cannot start here; the questions below are on paper." : "";
    fill(this.#section, troubleView(error, {
      lead,
      again: ({ waited }) => {
        if (error instanceof CannotStart && !waited) this.#learning.tryAgain();
        this.#start();
      },
    }));
  }
}

function chosenGrade() {
  const kept = remembered("grade");
  return GRADES.some(([grade]) => grade === kept) ? Number(kept) : 1;
}

/** Whether what is kept is a question under way, and not what someone else put there. */
function isBegun(found) {
  return found !== null && typeof found === "object" && [found.exercise, found.seed, found.units].every((one) => typeof one === "string")
    && Number.isInteger(found.grade);
}

/** The questions under way besides one's own, the newest first: a few, each without its own others. */
function others(was, seed) {
  if (!isBegun(was)) return [];
  const all = [{ ...was, others: undefined }, ...(Array.isArray(was.others) ? was.others.filter(isBegun) : [])];
  return all.filter((one) => one.seed !== seed).slice(0, OTHERS);
}
