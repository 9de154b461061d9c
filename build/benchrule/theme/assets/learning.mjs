// The exercises: drawn, marked and marked again by the engine's Python, from the handbook's bank.

const OF_BANK = new Set(["limit", "order", "fault"]);
const LIMIT_MS = 15_000;

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

  /** Every exercise of the handbook. */
  async everyExercise() {
    return Object.values(JSON.parse(await this.#text()).stations).flatMap(({ exercises }) => exercises);
  }

  /** Asks the exercises' door; ``needs`` names the exercises whose calculators must be there. */
  async ask(request, needs = [], limitMs = LIMIT_MS) {
    await this.prepare(needs);
    let answer = await this.#engine.ask("learn", request, limitMs);
    if (answer.needs_bank) {
      // A worker that has just started, or one that took the place of another.
      await this.#engine.ask("bank", await this.#text(), limitMs);
      answer = await this.#engine.ask("learn", request, limitMs);
    }
    if (answer.needs) {
      await this.prepare(answer.needs);
      answer = await this.#engine.ask("learn", request, limitMs);
    }
    return answer;
  }

  /** Where a page of the handbook stands, from "stations/neck-fit#steps". */
  async link([page, words]) {
    const [name, anchor] = page.split("#");
    const end = JSON.parse(await this.#text()).page_end;
    const root = new URL("../../", import.meta.url);
    return { href: new URL(name + end, root).href + (anchor ? `#${anchor}` : ""), words };
  }

  #text() {
    this.#bank ??= fetch(this.#address).then((response) => {
      if (!response.ok) throw new Error(`the exercises are missing: ${response.status}`);
      return response.text();
    });
    this.#bank.catch(() => (this.#bank = null)); // another try may find them
    return this.#bank;
  }
}
