// Two build sheets side by side: only what the bench does differently.
import { fill, make } from "./elements.mjs";
import { CannotStart } from "./engine.mjs";
import { troubleView } from "./trouble.mjs";

export function attachComparing() {
  const section = document.querySelector("[data-compare]:not([data-live])");
  if (!section) return;
  section.dataset.live = "";
  const options = section.querySelector("template").content;
  const choose = (label) => {
    const select = make("select", { onchange: () => compare(one.value, other.value, out) }, options.cloneNode(true));
    return [select, make("label", { className: "br-learn-field" }, make("span", {}, label), select)];
  };
  const out = make("div", { role: "status" });
  const [one, first] = choose("This instrument");
  const [other, second] = choose("Compared with");
  other.selectedIndex = Math.min(1, other.options.length - 1);
  fill(section, make("div", { className: "br-learn-row" }, first, second), out);
  compare(one.value, other.value, out);
}

let chosen = 0; // what is chosen last stands, whichever sheet comes last

async function compare(one, other, out) {
  const turn = ++chosen;
  try {
    const [here, there] = await Promise.all([one, other].map(sheetOf));
    if (turn !== chosen) return;
    const rows = differences(here, there);
    fill(out, rows.length
      ? make("div", { className: "br-scroll", role: "region", tabIndex: 0, "aria-label": "Differences" },
          make("table", { className: "br-sign" },
            make("caption", {}, `${rows.length} settings differ`),
            make("thead", {}, make("tr", {}, ...["What", "Station", here.title, there.title].map((words) => make("th", { scope: "col" }, words)))),
            make("tbody", {}, ...rows.map(([what, station, mine, theirs]) => make("tr", {},
              make("th", { scope: "row" }, what), make("td", {}, station), make("td", {}, make("strong", {}, mine)), make("td", {}, theirs))))))
      : make("p", {}, "The bench does nothing differently."));
  } catch (error) {
    if (turn !== chosen) return;
    fill(out, troubleView(error, { lead: "The sheets cannot be compared just now.", role: null, again: () => compare(one, other, out) }));
  }
}

async function sheetOf(id) {
  const response = await fetch(new URL(`../../orders/${id}.json`, import.meta.url)).catch((error) => {
    throw new CannotStart("missing", `${id}.json: ${error.message}`);
  });
  if (!response.ok) throw new CannotStart("missing", `${id}.json: ${response.status}`);
  return response.json().catch((error) => {
    throw new CannotStart("page", `${id}.json: ${error.message}`);
  });
}

function differences(here, there) {
  const theirs = new Map(there.stations.flatMap(({ id, title, settings }) => Object.entries(settings).map(([key, fact]) => [`${id} ${key}`, [title, fact]])));
  const rows = [];
  for (const { id, title, settings } of here.stations) {
    for (const [key, fact] of Object.entries(settings)) {
      const other = theirs.get(`${id} ${key}`);
      theirs.delete(`${id} ${key}`);
      if (!other || other[1].shown !== fact.shown) rows.push([fact.label, title, fact.shown, other ? other[1].shown : "not set"]);
    }
  }
  for (const [title, fact] of theirs.values()) rows.push([fact.label, title, "not set", fact.shown]);
  return rows;
}
