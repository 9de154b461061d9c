// The search's worker, in place of the theme's own: same messages, our ranking. Each row, step or
// fault is a result of its own, with the limit or the sign already in it.

const SETUP = 0, READY = 1, QUERY = 2, RESULT = 3;
const TEASER = 200;
let ready = null;

async function setUp(docs) {
  const here = new URL("./", self.location.href);
  const [{ makeRanking, plainText }, { default: MiniSearch }, { stemmer }] = await Promise.all([
    import(new URL("ranking.mjs", here)),
    import(new URL("minisearch.mjs", here)),
    import(new URL("stemmer.mjs", here)),
  ]);
  return { rank: makeRanking(MiniSearch, stemmer, docs), plainText };
}

self.onmessage = async ({ data: message }) => {
  if (message.type === SETUP) {
    ready = setUp(message.data.docs);
    await ready;
    postMessage({ type: READY });
  } else if (message.type === QUERY) {
    const { rank, plainText } = await ready;
    const items = rank(message.data).map(({ doc, score, words }) => [{
      location: doc.location,
      title: mark(plainText(doc.title), words),
      text: `<p>${doc.place ? `<span class="br-place">${escape(doc.place)}</span> ` : ""}${mark(teaser(plainText(doc.text), words), words)}</p>`,
      score,
      terms: {},
    }]);
    postMessage({ type: RESULT, data: { items } });
  }
};

/** The part of a text round the first word found. */
function teaser(text, words) {
  if (text.length <= TEASER) return text;
  const at = Math.max(0, text.toLowerCase().search(new RegExp(words.map(literal).join("|"), "i")) - 60);
  const from = at === 0 ? 0 : text.indexOf(" ", at) + 1;
  return `${from ? "… " : ""}${text.slice(from, from + TEASER).replace(/\s\S*$/, "")} …`;
}

function mark(text, words) {
  const pattern = new RegExp(`(?<![\\p{L}\\p{N}])(?:${words.map(literal).join("|")})[\\p{L}]*`, "giu");
  let made = "", from = 0;
  for (const found of text.matchAll(pattern)) {
    made += `${escape(text.slice(from, found.index))}<mark>${escape(found[0])}</mark>`;
    from = found.index + found[0].length;
  }
  return made + escape(text.slice(from));
}

function literal(word) {
  return word.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
}

function escape(text) {
  return text.replace(/[&<>"]/g, (letter) => ({ "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" })[letter]);
}
