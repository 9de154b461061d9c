// Which procedures changed since a person was trained.

export function attachRevisions() {
  const form = document.querySelector("[data-revisions]:not([data-ready])");
  if (!form) return;
  form.dataset.ready = "";
  const rows = [...document.querySelectorAll(".br-revisions tbody tr")];
  form.addEventListener("submit", (event) => event.preventDefault());
  form.addEventListener("input", () => {
    const trained = form.elements.trained.value;
    const stations = new Set();
    for (const row of rows) {
      const since = trained !== "" && row.dataset.on > trained;
      row.hidden = trained !== "" && !since;
      if (since) stations.add(row.dataset.station);
    }
    const count = form.querySelector("[data-count]");
    if (!trained) count.textContent = "Give the day to see what has changed since.";
    else if (!stations.size) count.textContent = "Nothing has changed since; nothing to look at again.";
    else count.textContent = `${stations.size} ${stations.size === 1 ? "procedure" : "procedures"} to look at again.`;
  });
}
