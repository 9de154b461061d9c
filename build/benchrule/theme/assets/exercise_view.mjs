// One question on the page: its words, a place for the answer, and what it was worth.
import { fill, make } from "./elements.mjs";

const VERDICTS = {
  right: ["Right", "good"], rounded: ["Rounded too far", "fair"], unit: ["Wrong unit", "bad"],
  slip: ["A known slip", "bad"], wrong: ["Not right", "bad"], unreadable: ["Cannot be read", "fair"],
  missing: ["No answer", "bad"],
};
let count = 0;

/** A question's element, and how to read, set and lock its answer. */
export function questionView(question, { onChange = () => {}, onEnter = () => {} } = {}) {
  const id = `br-question-${++count}`;
  const facts = question.facts.length
    ? make("dl", { className: "br-facts" }, ...question.facts.flatMap(([name, value]) => [
        make("div", {}, make("dt", {}, name), make("dd", {}, value)),
      ]))
    : null;
  const words = make("p", { className: "br-question-words", id: `${id}-words` }, question.words);
  const entry = { number: numberEntry, choice: choiceEntry, order: orderEntry }[question.kind](
    question, id, onChange, onEnter,
  );
  const element = make("div", { className: "br-question" }, words, facts, entry.element);
  return { element, value: entry.value, set: entry.set, lock: entry.lock, focus: entry.focus };
}

function numberEntry(question, id, onChange, onEnter) {
  const hint = [
    question.unit ? `in ${question.unit}${question.other_units.length ? `, or name another unit` : ""}` : "",
    question.within ? `within ${question.within}` : "",
  ].filter(Boolean).join("; ");
  const input = make("input", {
    id, type: "text", inputMode: question.unit === "in" ? "text" : "decimal", autocomplete: "off", maxLength: 80,
    spellcheck: false, "aria-describedby": `${id}-words ${id}-hint`,
    oninput: () => onChange(input.value),
    onkeydown: (event) => event.key === "Enter" && (event.preventDefault(), onEnter()),
  });
  const element = make("div", { className: "br-answer-entry" },
    make("label", { htmlFor: id }, "Your answer"),
    make("div", { className: "br-entry" }, input, make("span", { className: "br-unit" }, question.unit)),
    make("p", { className: "br-help", id: `${id}-hint` }, hint),
  );
  return {
    element, value: () => input.value.trim(), set: (text) => (input.value = text ?? ""),
    lock: () => (input.readOnly = true), focus: () => input.focus(),
  };
}

function choiceEntry(question, id, onChange) {
  const inputs = question.options.map((_, place) => make("input", {
    type: "radio", name: id, value: String(place), onchange: () => onChange(place),
  }));
  const element = make("fieldset", { className: "br-options", "aria-describedby": `${id}-words` },
    make("legend", {}, "Your answer"),
    ...question.options.map((words, place) => make("label", {}, inputs[place], make("span", {}, words))),
  );
  return {
    element,
    value: () => {
      const chosen = inputs.find((input) => input.checked);
      return chosen ? Number(chosen.value) : null;
    },
    set: (place) => inputs[place] && (inputs[place].checked = true),
    lock: (right) => inputs.forEach((input, place) => {
      input.disabled = true;
      if (place === right) input.parentElement.dataset.right = "";
    }),
    focus: () => inputs[0].focus(),
  };
}

function orderEntry(question, id, onChange) {
  let order = question.options.map((_, place) => place);
  let touched = false;
  const list = make("ol", { className: "br-order", "aria-describedby": `${id}-words` });
  const said = make("p", { className: "br-for-readers", "aria-live": "polite" });
  const move = (at, by) => {
    const to = at + by;
    if (to < 0 || to >= order.length) return;
    [order[at], order[to]] = [order[to], order[at]];
    touched = true;
    lay();
    list.children[to].querySelector(`[data-by="${by}"]`).focus();
    said.textContent = `${question.options[order[to]]}: now number ${to + 1}`;
    onChange([...order]);
  };
  const button = (at, by, sign, words) => make("button", {
    type: "button", className: "br-button", "aria-label": `${question.options[order[at]]}: ${words}`,
    "data-by": String(by), disabled: at + by < 0 || at + by >= order.length, onclick: () => move(at, by),
  }, sign);
  const lay = () => fill(list, ...order.map((place, at) => make("li", {},
    make("span", {}, question.options[place]), button(at, -1, "↑", "earlier"), button(at, 1, "↓", "later"),
  )));
  lay();
  const keepAsIs = make("label", { className: "br-as-laid" }, make("input", {
    type: "checkbox", onchange: (event) => { touched = event.target.checked || touched; onChange([...order]); },
  }), " This is the order");
  return {
    element: make("div", {}, list, keepAsIs, said),
    value: () => (touched ? [...order] : null),
    set: (given) => {
      if (!Array.isArray(given) || given.length !== order.length) return;
      order = [...given];
      touched = true;
      lay();
    },
    lock: () => {
      for (const one of list.querySelectorAll("button")) one.disabled = true;
      keepAsIs.hidden = true;
    },
    focus: () => list.querySelector("button:not(:disabled)").focus(),
  };
}

/** What an answer was worth, why, and the way to the right one. */
export function markView(marked, link) {
  const [words, kind] = VERDICTS[marked.verdict];
  const steps = marked.steps.length
    ? make("details", { className: "br-fold" }, make("summary", {}, "The way there, with your figures"), stepList(marked.steps))
    : null;
  return make("div", { className: "br-mark", "data-mark": kind, role: "status" },
    make("p", { className: "br-mark-words" }, make("strong", {}, words), ". ", marked.words),
    marked.why ? make("p", {}, marked.why) : null,
    steps,
    link ? make("p", { className: "br-mark-read" }, "Read it again: ", make("a", { href: link.href }, link.words)) : null,
  );
}

/** Worked steps; their HTML comes from the engine, which escapes all text in it. */
export function stepList(steps) {
  return make("ol", { className: "br-steps" }, ...steps.map((html) => {
    const item = make("li");
    item.innerHTML = html;
    return item;
  }));
}
