// How far the reader of this device has come, station by station; export, import, wipe.
import { damagedAnswers, exportAll, heedStore, history, importAll, whyNotKept, wipe } from "./device.mjs";
import { fill, make, save } from "./elements.mjs";
import { CannotStart } from "./engine.mjs";
import { troubleView } from "./trouble.mjs";

export function attachProgress(learning) {
  const section = document.querySelector("[data-progress]:not([data-live])");
  if (!section) return;
  section.dataset.live = "";
  const said = make("p", { role: "status", className: "br-progress-said" });
  const table = make("div", { className: "br-scroll", role: "region", tabIndex: 0, "aria-label": "Progress" });
  const file = make("input", { type: "file", accept: "application/json,.json", className: "br-for-readers", id: "br-progress-file",
    onchange: () => take(file, said).then(() => show(table, said, learning)) });
  fill(section, said, table, make("p", { className: "br-practice-do" },
    make("button", { type: "button", className: "br-button", onclick: async () => {
      save("benchrule-progress.json", JSON.stringify(await exportAll()), "application/json");
    } }, "Save to a file"),
    make("label", { className: "br-button", htmlFor: file.id }, "Take in a file"), file,
    make("button", { type: "button", className: "br-button br-danger", onclick: async () => {
      if (!confirm("Wipe all answers and everything under way on this device? This cannot be undone.")) return;
      said.textContent = await wipe() ? "Wiped. Nothing is kept on this device now." : "This browser did not let it be wiped: close other tabs of this handbook, and try again.";
      await show(table, said, learning);
    } }, "Wipe"),
  ));
  heedStore(section, () => show(table, said, learning));
  show(table, said, learning);
}

async function show(table, said, learning) {
  const answers = await history();
  const why = await whyNotKept();
  if (why) said.textContent = why;
  const damaged = await damagedAnswers();
  if (damaged) said.textContent = `${damaged} of the entries on this device cannot be read; they are left out here and in the file.`;
  if (!answers.length) {
    fill(table, make("p", {}, "Nothing practised on this device yet. Each station's page ends with practice."));
    return;
  }
  try {
    const { stations } = await learning.ask({ do: "progress", history: answers });
    const rows = await Promise.all(stations.filter(({ answers: count }) => count).map(async (station) => {
      const link = await learning.link([`${station.page}#practice`, station.title]);
      return make("tr", {},
        make("th", { scope: "row" }, make("a", { href: link.href }, link.words)),
        ...[station.exercises, station.tried, station.learned, station.answers, station.right].map((value) => make("td", {}, String(value))));
    }));
    fill(table, make("table", { className: "br-progress" },
      make("caption", {}, `${answers.length} answers on this device. An exercise counts as learned after three right answers in a row.`),
      make("thead", {}, make("tr", {}, ...["Station", "Exercises", "Tried", "Learned", "Answers", "Right"].map((words) => make("th", { scope: "col" }, words)))),
      make("tbody", {}, ...rows)));
  } catch (error) {
    fill(table, troubleView(error, {
      lead: `${answers.length} answers are here and can be saved to a file, but how far you have come cannot be worked out just now.`,
      again: ({ waited }) => {
        if (error instanceof CannotStart && !waited) learning.tryAgain();
        return show(table, said, learning);
      },
    }));
  }
}

async function take(file, said) {
  const [chosen] = file.files;
  if (!chosen) return;
  try {
    if (chosen.size > 20_000_000) throw new Error("The file is too large to be a progress file.");
    const fresh = await importAll(await chosen.text());
    said.textContent = `${fresh} new answers were taken in; what was here stays.`;
  } catch (error) {
    said.textContent = error.message;
  }
  file.value = "";
}
