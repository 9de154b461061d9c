// "Is it in?": a measured value against a row's limits, decided by the engine's rule.
import { BLINK_MS, fill } from "./elements.mjs";
import { CannotStart } from "./engine.mjs";
import { chosenModel } from "./model.mjs";
import { remember, unitSystem } from "./store.mjs";
import { troubleView } from "./trouble.mjs";

const WORDS = { accept: "Accept", reject: "Reject", "cannot tell": "Can't tell with this gauge" };

/** Gives every row of limits its button; the panel is made when it is pressed. */
export function attachMeasuring(engine) {
  const data = document.querySelector("[data-gauges]");
  if (!data) return;
  for (const row of document.querySelectorAll("tr[data-limits]:not([data-ready])")) {
    row.dataset.ready = "";
    const button = document.createElement("button");
    button.type = "button";
    button.className = "br-button br-measure";
    button.textContent = "Is it in?";
    button.setAttribute("aria-expanded", "false");
    button.setAttribute("aria-label", `Is it in? ${row.querySelector("th").firstChild.textContent}`);
    button.addEventListener("click", () => toggle(row, button, engine, data));
    row.querySelector(".br-limits").append(button);
  }
}

document.addEventListener("benchrule:model", ({ detail }) => {
  for (const form of document.querySelectorAll(".br-judge")) {
    form.dispatchEvent(new CustomEvent("benchrule:model", { detail }));
  }
});

document.addEventListener("benchrule:chosen", ({ detail: { name } }) => {
  if (name !== "units") return;
  for (const form of document.querySelectorAll(".br-judge")) form.dispatchEvent(new CustomEvent("benchrule:units"));
});

function toggle(row, button, engine, data) {
  const open = row.nextElementSibling?.matches(".br-judge-row") ? row.nextElementSibling : null;
  button.setAttribute("aria-expanded", String(!open));
  if (open) {
    open.remove();
    return;
  }
  const { gauges, units } = (data.parsed ??= JSON.parse(data.content.textContent));
  const panel = makePanel(row, gauges, units, engine);
  row.after(panel);
  panel.querySelector("input").focus();
  engine.start().catch(() => {});
}

function makePanel(row, gauges, units, engine) {
  const limits = JSON.parse(row.dataset.limits);
  const panel = document.createElement("tr");
  panel.className = "br-judge-row";
  panel.innerHTML = `<td colspan="3"><form class="br-judge" autocomplete="off" novalidate>
    <label class="br-judge-value"><span>Measured</span><span class="br-entry"><input type="text" name="value" inputmode="decimal" spellcheck="false"><button type="button" class="br-unit" title="Change the unit"></button></span></label>
    <label class="br-judge-model"><span>Model</span><select name="model"></select></label>
    <label class="br-judge-gauge"><span>Gauge</span><select name="gauge"></select></label>
    <div class="br-verdict" role="status" data-verdict=""></div></form></td>`;
  const form = panel.querySelector("form");
  const kind = units[limits.unit].kind;
  for (const [id, gauge] of Object.entries(gauges)) {
    if (units[gauge.unit].kind !== kind) continue;
    form.elements.gauge.add(new Option(gauge.name, id, false, id === row.dataset.gauge));
  }
  fillModels(form, limits);
  const unit = form.querySelector(".br-unit");
  const system = unitSystem;
  const showUnit = () => {
    unit.textContent = units[limits.unit][system() === "metric" ? "metric" : "inch"];
    unit.disabled = units[limits.unit].metric === units[limits.unit].inch;
    unit.setAttribute("aria-label", `Unit: ${unit.textContent}. Change it`);
    form.elements.value.inputMode = system() === "metric" ? "decimal" : "text"; // fractions
  };
  let asked = 0;
  const ask = async () => {
    const turn = ++asked;
    const verdict = form.querySelector(".br-verdict");
    const { value } = form.elements.value;
    const empty = !value.trim();
    verdict.ariaBusy = String(!empty);
    if (empty) return show(verdict, null, row);
    const [low, high] = limits[form.elements.model.value] ?? limits[""];
    const request = {
      value, unit: limits.unit, decimals: limits.decimals, low, high,
      gauge: gauges[form.elements.gauge.value], units: system(),
    };
    if (!verdict.textContent) verdict.textContent = "…";
    const late = setTimeout(() => turn === asked && wait(verdict), BLINK_MS);
    try {
      const answer = await engine.ask("judge", request);
      if (turn === asked) show(verdict, answer, row);
    } catch (error) {
      if (turn !== asked) return undefined;
      verdict.dataset.verdict = "";
      fill(verdict, troubleView(error, {
        lead: "This cannot be worked out just now; compare with the limits above.", role: null,
        again: ({ waited }) => {
          if (error instanceof CannotStart && !waited) engine.tryAgain();
          wait(verdict);
          return ask();
        },
      }));
    } finally {
      clearTimeout(late);
      if (turn === asked) verdict.ariaBusy = "false";
    }
    return undefined;
  };
  unit.addEventListener("click", () => {
    remember("units", system() === "metric" ? "inch" : "metric");
  });
  form.addEventListener("benchrule:units", () => {
    showUnit();
    ask();
  });
  form.addEventListener("input", ask);
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    ask();
  });
  form.addEventListener("keydown", (event) => {
    if (event.key !== "Escape") return;
    const button = row.querySelector(".br-measure");
    panel.remove();
    button.setAttribute("aria-expanded", "false");
    button.focus();
  });
  form.addEventListener("benchrule:model", ({ detail: model }) => {
    if (![...form.elements.model.options].some((option) => option.value === model)) return;
    form.elements.model.value = model;
    ask();
  });
  showUnit();
  return panel;
}

/** The models a row has figures of its own for; one is always chosen. */
function fillModels(form, limits) {
  const own = Object.keys(limits).filter((name) => !["unit", "decimals", ""].includes(name));
  const names = new Map(
    [...(document.querySelector("[data-model-choice]")?.options ?? [])].map((one) => [one.value, one.text]),
  );
  form.querySelector(".br-judge-model").hidden = own.length === 0;
  const general = [...names].filter(([id]) => id && !own.includes(id));
  const options = [...general, ...own.map((id) => [id, names.get(id) ?? id])];
  for (const [id, name] of options) {
    form.elements.model.add(new Option(name, id, false, id === chosenModel()));
  }
}

function wait(verdict) {
  verdict.dataset.verdict = "";
  verdict.textContent = "…";
}

function show(verdict, answer, row) {
  verdict.replaceChildren();
  verdict.dataset.verdict = answer?.verdict ?? (answer ? "refused" : "");
  if (!answer) return;
  if (answer.refused) {
    const [{ why, allowed }] = answer.refused;
    verdict.append(paragraph(`${why[0].toUpperCase()}${why.slice(1)}. Allowed: ${allowed}.`));
    return;
  }
  const word = document.createElement("strong");
  word.textContent = WORDS[answer.verdict];
  verdict.append(word, paragraph(answer.words.replace(/^[^:]+: /, (start) => (start.startsWith(WORDS[answer.verdict]) ? "" : start))));
  for (const note of answer.notes) verdict.append(paragraph(note, "br-note"));
  if (answer.verdict === "reject") {
    const mend = row.querySelector(".br-out")?.parentElement.textContent;
    if (mend) verdict.append(paragraph(mend, "br-mend"));
  }
}

function paragraph(text, style = "") {
  const made = document.createElement("p");
  made.className = style;
  made.textContent = text[0].toUpperCase() + text.slice(1);
  return made;
}
