// The model a reader works on: chosen once, kept on this device, followed by every figure that
// differs from model to model.
import { remember, remembered } from "./store.mjs";

export function chosenModel() {
  return remembered("model") ?? "";
}

/** Keeps the choice and tells every part of the page. */
export function chooseModel(model) {
  remember("model", model);
  document.dispatchEvent(new CustomEvent("benchrule:model", { detail: model }));
}

/** Puts the chosen model's figures in place; called for each page, and at each choice. */
export function showModel(model) {
  const names = namesOfModels();
  const known = names.has(model) ? model : "";
  for (const choice of document.querySelectorAll("[data-model-choice]")) choice.value = known;
  for (const place of document.querySelectorAll("[data-by-model]")) {
    const figures = JSON.parse(place.dataset.byModel);
    const own = known in figures && known !== "";
    place.querySelector("a").textContent = own ? figures[known] : figures[""];
    const note = place.querySelector("small");
    note.textContent = `(${own ? names.get(known) : note.dataset.general})`;
  }
  for (const row of document.querySelectorAll("tr[data-limits]")) {
    row.toggleAttribute("data-not-on-model", Boolean(known && row.dataset.only && !row.dataset.only.split(" ").includes(known)));
    const sets = [...row.querySelectorAll(".br-limits > [data-models]")];
    const fits = sets.filter((set) => set.dataset.models.split(" ").includes(known));
    for (const set of sets) set.hidden = Boolean(known && fits.length && !fits.includes(set));
  }
}

function namesOfModels() {
  const choice = document.querySelector("[data-model-choice]");
  return new Map([...(choice?.options ?? [])].filter((one) => one.value).map((one) => [one.value, one.text]));
}

export function attachModelChoices() {
  for (const choice of document.querySelectorAll("[data-model-choice]:not([data-ready])")) {
    choice.dataset.ready = "";
    choice.addEventListener("change", () => chooseModel(choice.value));
  }
  // A link from a model's own page to a calculator takes the model along.
  for (const link of document.querySelectorAll("[data-with-model]:not([data-ready])")) {
    link.dataset.ready = "";
    link.addEventListener("click", () => chooseModel(link.dataset.withModel));
  }
  showModel(chosenModel());
}
