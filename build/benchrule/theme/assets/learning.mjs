// The exercises: drawn, marked and marked again by the engine's Python, from the handbook's bank.
import { CannotStart, Ended } from "./engine.mjs";

const OF_BANK = new Set(["limit", "order", "fault"]);
const LIMIT_MS = 15_000;
const TURNS = 4; // a worker may be replaced between two steps

export class Learning {
  #engine;
  #address;
  #bank = null;

  constructor(engine, address) {
    this.#engine = engine;
    this.#address = address;
  }

  /** Fetches what exercises need, ahead of the first question. */
  prepare(exercises) {
    const calculators = exercises.map((id) => id.split("/")[0]).filter((name) => !OF_BANK.has(name));
    return Promise.all(["learning", ...new Set(calculators)].map((name) => this.#engine.prepare(name)));
  }

  /** Forgets a start that failed or is late. */
  tryAgain() {
    this.#engine.tryAgain();
  }

  /** Every exercise of the handbook. */
  async everyExercise() {
    return Object.values(JSON.parse(await this.#text()).stations).flatMap(({ exercises }) => exercises);
  }

  /** Asks the exercises' door; ``needs`` names the exercises whose calculators must be there. */
  async ask(request, needs = [], limitMs = LIMIT_MS) {
    let names = needs;
    for (let turn = 1; turn <= TURNS; turn++) {
      await this.prepare(names);
      const answer = await this.#engine.ask("learn", request, limitMs);
      // A worker that has just started, or one that took the place of another, has no bank.
      if (answer.needs_bank) await this.#engine.ask("bank", await this.#text(), limitMs);
      else if (answer.needs && turn < TURNS) names = [...names, ...answer.needs];
      else return answer;
    }
    throw new Ended("the worker was replaced again and again");
  }

  /** Where a page of the handbook stands, from "stations/neck-fit#steps". */
  async link([page, words]) {
    const [name, anchor] = page.split("#");
    const end = JSON.parse(await this.#text()).page_end;
    const root = new URL("../../", import.meta.url);
    return { href: new URL(name + end, root).href + (anchor ? `#${anchor}` : ""), words };
  }

  #text() {
    this.#bank ??= fetchExercises(this.#address).catch(() => fetchExercises(this.#address, { cache: "reload" }));
    this.#bank.catch(() => (this.#bank = null)); // another try may find them
    return this.#bank;
  }
}

async function fetchExercises(address, options) {
  const response = await fetch(address, options).catch((error) => {
    throw new CannotStart("missing", `the exercises: ${error.message}`);
  });
  if (!response.ok) throw new CannotStart("missing", `the exercises: ${response.status}`);
  const text = await response.text().catch((error) => {
    throw new CannotStart("missing", `the exercises: ${error.message}`);
  });
  if (text.trimStart().startsWith("<")) throw new CannotStart("page", "the exercises: a page came in their place");
  try {
    JSON.parse(text);
  } catch (error) {
    throw new CannotStart("other", `the exercises: ${error.message}`);
  }
  return text;
}
