// Carries what stands in the page's calculators over a reload, so that taking a newer edition loses
// nothing that was typed. What is practised, measured or answered is kept on the device as it is typed.

const PLACE = "benchrule.entries";
const UNKEPT = "[data-set-assignment], [data-mark-results]";

const touched = new Set(); // what the reader changed on this page
let carried = null;

/** Notes what is typed or chosen from now on. */
export function watchEntries() {
  const note = ({ target }) => {
    for (const place of touched) if (!document.contains(place)) touched.delete(place);
    if (!target.closest("[data-md-component=search], [data-md-component=palette]")) touched.add(target.closest("[data-calculator]") ?? target);
  };
  document.addEventListener("input", note, true);
  document.addEventListener("change", note, true);
}

/** Whether something is under way on this page: typed, chosen, or being answered. */
export function underWay() {
  const open = document.querySelector(".br-learn-paper, .br-practice-bar");
  return Boolean(open) || [...touched].some((place) => document.contains(place));
}

/** Whether something was filled in that a reload would lose. */
export function wouldBeLost() {
  return [...touched].some((place) => document.contains(place) && place.closest(UNKEPT));
}

/** Loads the page anew, with the same entries. */
export function reloadWithEntries() {
  const forms = {};
  for (const section of touched) {
    if (!document.contains(section) || !section.dataset.calculator) continue;
    const tables = [...section.querySelectorAll(".br-form [data-rows]")];
    forms[section.dataset.calculator] = {
      units: section.querySelector(".br-units input:checked")?.value,
      rows: tables.map((table) => table.tBodies[0].rows.length),
      entries: entriesOf(section).map(({ value, dataset }) => [value, dataset.exact]),
    };
  }
  try {
    sessionStorage.setItem(PLACE, JSON.stringify({ page: location.pathname, forms }));
  } catch {
    // A browser that keeps nothing: the reader asked for the new edition all the same.
  }
  if (document.querySelector(".br-learn-paper")) {
    // The link of an assignment asks for a code again; the page without it lists what is under way.
    history.replaceState(history.state, "", location.pathname + location.search);
  }
  location.reload();
}

/** Puts into a calculator's form what was carried over to it; says whether there was anything. */
export function giveBack(section, form) {
  carried ??= takeCarried();
  const kept = carried[section.dataset.calculator];
  if (!kept) return false;
  delete carried[section.dataset.calculator];
  const turned = kept.units && kept.units !== form.units ? form.setUnits(kept.units) : Promise.resolve();
  // Where the runtime did not start, the form stands in other units than these entries were typed in.
  turned.then(() => (kept.units ?? form.units) === form.units && put(section, kept));
  return true;
}

function takeCarried() {
  try {
    const { page, forms } = JSON.parse(sessionStorage.getItem(PLACE) ?? "{}");
    sessionStorage.removeItem(PLACE);
    return page === location.pathname ? forms : {};
  } catch {
    return {};
  }
}

function put(section, { rows, entries }) {
  [...section.querySelectorAll(".br-form [data-rows]")].forEach((table, at) => {
    const body = table.tBodies[0];
    while (body.rows.length < rows[at]) body.append(body.rows[body.rows.length - 1].cloneNode(true));
    while (body.rows.length > rows[at]) body.rows[body.rows.length - 1].remove();
  });
  const places = entriesOf(section);
  if (places.length !== entries.length) return; // the calculator asks for other things now
  places.forEach((place, at) => {
    const [value, exact] = entries[at];
    place.value = value;
    if (exact === undefined) delete place.dataset.exact;
    else place.dataset.exact = exact;
  });
  section.querySelector(".br-form").dispatchEvent(new Event("input", { bubbles: true }));
}

function entriesOf(section) {
  return [...section.querySelectorAll(".br-form [data-input] :is(input, select)")];
}
