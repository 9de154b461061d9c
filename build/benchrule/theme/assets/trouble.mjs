// What went wrong, in plain words with what to do; a button where trying again can help. The
// technical reason stands folded away, for whoever keeps the handbook.
import { make, sentence } from "./elements.mjs";
import { CannotStart, Ended, Failed, TookTooLong } from "./engine.mjs";

const STARTS = {
  missing: "A file of the handbook did not come: the network may be gone, or a file is missing where the handbook is kept. Try again; where that does not help, tell whoever keeps the handbook.",
  page: "A web page came in place of a file; it may be the log-in page of this network. Log in to the network, then try again.",
  other: "A file of the runtime is not the one that this edition was built with. Load the page again, or ask whoever keeps the handbook.",
  type: "The server sends a file of the runtime under a type that browsers refuse. Tell whoever keeps the handbook.",
  late: "It has not started yet: the network is slow, or a file does not come. It goes on by itself as soon as everything is here.",
  browser: "This browser cannot run the calculators: WebAssembly is missing or switched off. Use another browser, or switch it on.",
  failed: "The calculators’ program did not start on this device. Try again, or use another browser or device.",
};
const OFFLINE = "This device has no network just now, and a file that is needed is not on it yet. It goes on by itself when the network is back.";

/** An error's words for the reader, and its technical reason where it has one. */
export function wordsOf(error) {
  const why = String(error?.message ?? error).trim().split("\n").pop().slice(0, 300);
  if (error instanceof CannotStart) {
    const offline = error.kind === "missing" && navigator.onLine === false;
    return { words: offline ? OFFLINE : STARTS[error.kind] ?? STARTS.failed, why };
  }
  if (error instanceof TookTooLong) {
    return { words: "This took too long and was stopped. What you entered is kept; change it, or try again." };
  }
  if (error instanceof Ended) {
    const memory = /memory/i.test(why) && !/out of bounds/i.test(why);
    const words = memory ? "This needs more memory than it may use here, and was stopped." : "The calculation broke off, and a fresh start was made.";
    return { words: `${words} What you entered is kept; change it, or try again.`, why };
  }
  if (error instanceof Failed) {
    return { words: "The handbook’s program failed on this. What you entered is kept; change it, and tell whoever keeps the handbook.", why };
  }
  if (error?.constructor === Error) return { words: sentence(error.message) }; // our own words
  return { words: "Something went wrong here. Try again; where that does not help, load the page again.", why };
}

/** A place that says what went wrong; ``lead`` comes first, ``again`` tries once more. */
export function troubleView(error, { lead = "", again = null, role = "alert" } = {}) {
  const { words, why } = wordsOf(error);
  const button = again && make("button", { type: "button", className: "br-button", onclick: () => act() }, "Try again");
  const view = make("div", { className: "br-trouble", role },
    make("p", { className: "br-error" }, `${lead} ${words}`.trim()),
    button && make("p", { className: "br-practice-do" }, button),
    why ? make("details", { className: "br-what" }, make("summary", {}, "What happened"), make("p", {}, why)) : null,
  );
  let done = false;
  const act = (waited = false) => {
    if (done || !view.isConnected) return;
    done = true;
    again({ waited });
  };
  if (again && error instanceof CannotStart) {
    window.addEventListener("online", () => act(), { once: true });
    error.later?.then(() => act(true), () => {});
  }
  return view;
}
