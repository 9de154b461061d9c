// The look-up for the floor: rows found as one types, the state kept in the address.

// Words of a question that say nothing of the thing asked for.
const EMPTY_WORDS = new Set(
  "a an and are at be by can do does for from have how i if in is it my of on or should so that the there to too what when where which why will with".split(" "),
);
const CHOICES = ["station", "part", "gauge"];

export function attachLookUp() {
  const form = document.querySelector("[data-lookup]:not([data-ready])");
  if (!form) return;
  form.dataset.ready = "";
  const rows = [...document.querySelectorAll(".br-of tr[data-limits]")].map((row, place) => ({
    row,
    place,
    title: row.querySelector("th").firstChild.textContent.toLowerCase(),
    text: `${row.dataset.words} ${row.dataset.station.replaceAll("-", " ")} ${row.dataset.gauge.replaceAll("-", " ")}`,
  }));
  const update = () => {
    filter(form, rows);
    keepInAddress(form);
  };
  form.addEventListener("input", update);
  form.addEventListener("change", update);
  form.addEventListener("submit", (event) => event.preventDefault());
  document.addEventListener("benchrule:model", () => document.contains(form) && filter(form, rows));
  readAddress(form);
  filter(form, rows);
  if (location.hash) document.querySelector(CSS.escape ? `#${CSS.escape(location.hash.slice(1))}` : location.hash)?.scrollIntoView();
}

function filter(form, rows) {
  const words = form.elements.words.value.toLowerCase().split(/[^\p{L}\p{N}.]+/u)
    .filter((word) => word && !EMPTY_WORDS.has(word));
  const fits = rows.filter(({ row }) => CHOICES.every((name) => {
    const wanted = form.elements[name]?.value;
    return !wanted || row.dataset[name] === wanted;
  }) && !row.hasAttribute("data-not-on-model"));
  const scored = fits.map((one) => {
    const found = words.filter((word) => has(one.text, word));
    return { ...one, score: found.length, rank: found.filter((word) => has(one.title, word)).length };
  });
  const best = Math.max(0, ...scored.map((one) => one.score));
  // All words, or where no row has them all, the rows that have the most; named so before called so.
  const shown = scored.filter((one) => one.score === best && (best || !words.length));
  if (words.length) {
    shown.sort((one, other) => other.rank - one.rank || one.title.length - other.title.length || one.place - other.place);
  }
  for (const { row } of rows) {
    row.hidden = true;
    if (row.nextElementSibling?.matches(".br-judge-row")) row.nextElementSibling.hidden = true;
  }
  for (const { row } of shown) {
    row.hidden = false;
    const panel = row.nextElementSibling?.matches(".br-judge-row") ? row.nextElementSibling : null;
    if (panel) panel.hidden = false;
  }
  arrange(shown);
  for (const section of document.querySelectorAll(".br-of")) {
    section.hidden = !section.querySelector("tr[data-limits]:not([hidden])");
  }
  document.querySelector(".br-nothing").hidden = shown.length > 0;
  const count = form.querySelector("[data-count]");
  const some = best < words.length && shown.length > 0 ? `No limit has every word; ${shown.length} have most` : "";
  count.textContent = some || `${shown.length} ${shown.length === 1 ? "limit" : "limits"}`;
}

/** Puts the stations in the order of their best rows, and each one's rows in theirs. */
function arrange(shown) {
  const order = [...new Set(shown.map(({ row }) => row.closest(".br-of")))];
  const settled = order.every((section, at) => at === 0 || follows(order[at - 1], section));
  if (!settled) document.querySelector(".br-nothing").before(...order);
  for (const section of order) {
    const own = shown.filter(({ row }) => row.closest(".br-of") === section).map(({ row }) => row);
    if (own.every((row, at) => at === 0 || follows(own[at - 1], row))) continue;
    for (const row of own) {
      const panel = row.nextElementSibling?.matches(".br-judge-row") ? row.nextElementSibling : null;
      row.parentNode.append(row, ...(panel ? [panel] : []));
    }
  }
}

function follows(one, other) {
  return Boolean(one.compareDocumentPosition(other) & Node.DOCUMENT_POSITION_FOLLOWING);
}

/** Whether a text has a word at the beginning of one of its words. */
function has(text, word) {
  const at = text.indexOf(word);
  if (at < 0) return false;
  return at === 0 || /[^\p{L}\p{N}]/u.test(text[at - 1]) || text.includes(` ${word}`);
}

function readAddress(form) {
  const asked = new URLSearchParams(location.search);
  for (const name of ["words", ...CHOICES]) {
    if (asked.has(name) && form.elements[name]) form.elements[name].value = asked.get(name);
  }
}

function keepInAddress(form) {
  const kept = new URLSearchParams();
  for (const name of ["words", ...CHOICES]) {
    const value = form.elements[name]?.value;
    if (value) kept.set(name, value);
  }
  const query = kept.size ? `?${kept}` : "";
  history.replaceState(history.state, "", location.pathname + query + location.hash);
}
