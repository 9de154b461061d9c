// The search's worker, in place of the theme's own: same messages, our ranking. Each row, step or
// fault is a result of its own, with the limit or the sign already in it.
//
// The theme starts it with every page. What it searches is fetched when a reader opens the search;
// until then it holds no more than the address of that file.

const SETUP = 0, READY = 1, QUERY = 2, RESULT = 3;
const TEASER = 200;
const here = new URL("./", self.location.href);
let places = "";
let ready = null;
let latest = 0;

async function setUp() {
  const [{ makeRanking, plainText, readPlaces }, { default: MiniSearch }, { stemmer }, columns] = await Promise.all([
    import(new URL("ranking.mjs", here)),
    import(new URL("minisearch.mjs", here)),
    import(new URL("stemmer.mjs", here)),
    fetch(new URL(`../../${places}`, here)).then((response) => {
      if (!response.ok) throw new Error(`${places}: ${response.status}`);
      return response.json();
    }),
  ]);
  return { rank: makeRanking(MiniSearch, stemmer, readPlaces(columns)), plainText };
}

/** Gets the ranking ready, once; where a file does not come, the next question tries again. */
function prepare() {
  ready ??= setUp();
  ready.catch(() => (ready = null));
  return ready;
}

// The page says when a reader opens the search, some moments before the first key.
new BroadcastChannel("benchrule.search").onmessage = () => {
  if (places) prepare().catch(() => {}); // said with the first question
};

self.onmessage = async ({ data: message }) => {
  if (message.type === SETUP) {
    places = message.data.docs[0].location;
    postMessage({ type: READY });
  } else if (message.type === QUERY) {
    const turn = ++latest;
    const items = message.data.trim() ? await find(message.data) : [];
    if (turn === latest) postMessage({ type: RESULT, data: { items } });
  }
};

async function find(asked) {
  let found;
  try {
    found = await prepare();
  } catch {
    return [[{
      location: "", score: 1, terms: {}, title: "The search could not be fetched",
      text: "<p>See whether this device is connected, then type again.</p>",
    }]];
  }
  const { rank, plainText } = found;
  return rank(asked).map(({ doc, score, words }) => [{
    location: doc.location,
    title: mark(plainText(doc.title), words),
    text: `<p>${doc.place ? `<span class="br-place">${escape(doc.place)}</span> ` : ""}${mark(teaser(plainText(doc.text), words), words)}</p>`,
    score,
    terms: {},
  }]);
}

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
