// The trainer's marking: an assignment's file and any number of results; every answer is marked again.
import { field, fill, make, oneAtATime, openToPrint, save, sentence } from "./elements.mjs";
import { CannotStart } from "./engine.mjs";
import { troubleView } from "./trouble.mjs";

const LIMIT_MS = 300_000;
const LARGEST_FILE = 2_000_000;

export function attachMarking(learning) {
  const section = document.querySelector("[data-mark-results]:not([data-live])");
  if (!section) return;
  section.dataset.live = "";
  const assignment = make("input", { type: "file", accept: "application/json,.json" });
  const results = make("input", { type: "file", accept: "application/json,.json", multiple: true });
  const said = make("div", { role: "status" });
  const out = make("div");
  const send = oneAtATime(() => mark(learning, assignment.files[0], [...results.files], said, out));
  fill(section,
    make("form", { className: "br-learn-form", onsubmit: (event) => {
      event.preventDefault();
      send();
    } },
    field("The assignment's file", assignment), field("The result files, any number", results),
    make("p", { className: "br-practice-do" }, make("button", { type: "submit", className: "br-button br-main" }, "Mark"))),
    said, out,
  );
}

async function mark(learning, assignment, results, said, out) {
  fill(out);
  const fail = (words) => fill(said, make("p", { className: "br-error" }, sentence(words)));
  if (!assignment) return fail("choose the assignment's file first");
  if (!results.length) return fail("choose at least one result file");
  fill(said, make("p", { className: "br-state", "data-state": "starting" }, `Marking ${results.length} results …`));
  try {
    const opened = await learning.ask({ do: "open_assignment", text: await read(assignment) });
    if (opened.refused) return fail(opened.refused);
    const files = await Promise.all(results.map(async (file) => ({ name: file.name, text: await read(file) })));
    const needs = opened.assignment.questions.map(([id]) => id);
    const marked = await learning.ask({ do: "mark_class", assignment: opened.assignment, files }, needs, LIMIT_MS);
    if (marked.refused) return fail(marked.refused);
    const table = make("div", { className: "br-scroll", role: "region", tabIndex: 0, "aria-label": "The class, marked" });
    table.innerHTML = marked.html; // made by the engine, which escapes all text in it
    for (const details of table.querySelectorAll("details")) details.classList.add("br-fold");
    fill(said, make("p", {}, `Marked: ${files.length === 1 ? "one result" : `${files.length} results`}. The table is below.`));
    fill(out, make("p", { className: "br-practice-do" },
      make("button", { type: "button", className: "br-button", onclick: () => save(`marks-${opened.assignment.id}.csv`, marked.csv, "text/csv;charset=utf-8") }, "Save as CSV"),
      make("button", { type: "button", className: "br-button", onclick: () => openToPrint(marked.document) }, "Open to print")), table);
  } catch (error) {
    fill(said, troubleView(error, {
      role: null,
      again: ({ waited }) => {
        if (error instanceof CannotStart && !waited) learning.tryAgain();
        return mark(learning, assignment, results, said, out);
      },
    }));
  }
  return undefined;
}

/** A file's text; one that is far too large is not read, its name says so to the marking. */
async function read(file) {
  return file.size > LARGEST_FILE ? `too large: ${file.size} bytes` : file.text();
}
