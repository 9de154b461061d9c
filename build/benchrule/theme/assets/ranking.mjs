// Ranks the places of the handbook for what someone at the bench types or says: a few clumsy words
// or a whole question. Text search by MiniSearch (BM25+), words cut to their stems; on top of it what
// the trade's questions tell: "how thick" asks for a limit, "what is" for a term, a complaint for a
// fault, "mask" for a hazard.

// Words of a question that say nothing of the thing asked for.
const EMPTY_WORDS = new Set(
  ("a about after again all also off took take taken where am an and any are as at be been before but by can could did do does doing done dont for " +
    "from get gets getting go goes going got had has have having he her here him his how i if im in into is isnt it its " +
    "ive just keep keeps like make makes may me mean means much must my need needs now of on or our out over say should " +
    "show so some tell than that the their them then there these they thing this to too up us use used using very want " +
    "was we went were what whats when which while who why will with wont would you your").split(" "),
);
// Said in one way, written in another: each word stands for the others in a question.
const SAME = [
  ["thick", "thickness", "thin", "fat"], ["high", "height", "tall"], ["deep", "depth"], ["wide", "width"],
  ["heavy", "weight", "weigh", "mass"], ["hot", "temperature", "warm"], ["hard", "force", "press", "pressure"],
  ["fast", "speed"], ["big", "diameter", "size"], ["far", "distance", "spacing", "apart"], ["angle", "lean", "tilt"], ["headstock", "head", "peghead"], ["tuner", "peg", "machine head"], ["pearl", "shell"], ["rosette", "ring"], ["superglue", "instant"], ["buff", "polish"], ["fuzz", "milky", "blush"],
  ["mask", "respirator"], ["gloves", "protection"], ["fumes", "vapour", "solvent"], ["sharp", "proud"],
  ["fret board", "fingerboard", "fretboard", "board"], ["crooked", "square", "offset"], ["twelfth", "12th", "12"],
  ["first", "1st"], ["soak", "water"], ["broke", "broken", "break", "snapped"], ["loose", "lift", "lifting"],
];
// What a question is after, and how much its kind of place gains.
const ASKS = [
  [/^\s*how\s+(?:\w+\s+)?(?:high|thick|thin|deep|wide|heavy|hot|warm|hard|fast|big|far|close|tight|flat|straight|long|much|many|low|small|large|often|dry|damp|strong|sharp|loud)\b/, { tolerance: 1.35 }],
  [/^\s*(?:what|which)\s+(?:\w+\s+)?(?:temperature|humidity|pressure|speed|height|thickness|width|depth|angle|distance|gap|size|diameter|weight|radius|rpm|time|clearance|relief|action|moisture)\b/, { tolerance: 1.35 }],
  [/\b(?:tolerance|limit|allowed|maximum|minimum|at most|at least|supposed to be)\b/, { tolerance: 1.25 }],
  [/^\s*(?:what(?:\s+is|\s+are|'?s)(?:\s+an?|\s+the)?\s+[\w'-]+(?:\s+[\w'-]+)?\s*\??$|what does .* mean|meaning of|define)/, { term: 1.5 }],
  [/^\s*(?:how (?:do|can|should|does) |how to )/, { step: 1.25, fault: 0.85, term: 0.9 }],
  [/\b(?:mask|respirator|gloves|goggles|ear ?muffs|dangerous|danger|safe|safety|hurt|fumes|breathe|breathing|toxic|poison|burn(?:ed|t)? (?:my|myself)|cut my|explo\w+|hazard)\b/, { hazard: 1.5 }],
  [/\b(?:calculate|calculator|work out|compute|reckon|formula)\b/, { calculator: 1.5 }],
];
const COMPLAINT = { fault: 1.15 };
const KIND_WEIGHT = {
  tolerance: 1, fault: 1.05, step: 0.95, term: 0.85, calculator: 0.95, hazard: 0.9, wood: 0.9, model: 0.8,
  gauge: 0.6, source: 0.3, page: 0.75, section: 0.55,
};
const UNIT_ASKS = [
  [/\bhow long\b|\bhow many (?:hours|days|minutes)\b|\bwhat time\b|\bwhen can\b|\bhow soon\b|\bwait\b/, new Set(["time"])],
  [/\bhow (?:hot|warm|cold)\b|\btemperature\b/, new Set(["temperature"])],
  [/\bhow (?:thick|thin|high|deep|wide|big)\b/, new Set(["length"])],
  [/\bhow heavy\b|\bweigh/, new Set(["mass"])],
  [/\bhumid/, new Set(["share"])],
  [/\bhow (?:much )?(?:hard|force|press)/, new Set(["force", "pressure"])],
  [/\bhow fast\b|\bspeed\b|\brpm\b/, new Set(["speed", "turning speed"])],
];
const SHOWN = 40;
// How much a word counts by where it stands, and by how nearly it is the word that was asked.
const FIELD_WEIGHT = { title: 1, words: 0.85, place: 0.6, also: 0.55, text: 0.4 };
const EMPTY_SHARE = 0.2, PHRASE = 0.7, STRANGE = 0.45, ENOUGH = 0.55, MISSING = 0.6;
const PREFIX = 0.75, FUZZY = 0.5, SAME_WORD = 0.7;

/** The places of the handbook from the file that holds them column by column. */
export function readPlaces(columns) {
  const names = Object.keys(columns);
  return columns.location.map((_, at) => Object.fromEntries(names.map((name) => [name, columns[name][at]])));
}

export function makeRanking(MiniSearch, cutToStem, docs) {
  // The handbook says few words many times over: each is cut once.
  const stemmer = once(cutToStem);
  const term = once((word) => {
    const plain = word.toLowerCase().replace(/[’']s?$/u, "").replace(/[’']/gu, "");
    if (!plain || EMPTY_WORDS.has(plain)) return null;
    return stemmer(plain);
  });
  const split = (text) => text.split(/[^\p{L}\p{N}.°’']+/u).map((one) => one.replace(/^\.+|\.+$/g, "")).filter(Boolean);
  const terms = (text) => split(text).map(term).filter(Boolean);
  // In a whole phrase even its empty words tell something: "where do the frets go".
  const allTerms = (text) => split(text.toLowerCase().replace(/[’']/gu, "")).map((word) => stemmer(word));
  const EMPTY_STEMS = new Set([...EMPTY_WORDS].map((word) => stemmer(word)));
  const search = new MiniSearch({
    fields: Object.keys(FIELD_WEIGHT), idField: "at", tokenize: split, processTerm: term,
  });
  const entries = docs.map((doc, at) => {
    const title = plainText(doc.title);
    const own = doc.words || [];
    // What stands behind a colon in a title is a figure, no name.
    const phrases = [title.replace(/: [^:]*$/, ""), ...own].map((phrase) => [...new Set(allTerms(phrase))]).filter((one) => one.length);
    return {
      at, doc, title, phrases,
      words: own.join(" . "), also: (doc.also || []).join(" . "), place: doc.place || "", text: plainText(doc.text),
    };
  }).filter((entry) => entry.doc.kind);
  search.addAll(entries);
  const byId = new Map(entries.map((entry) => [entry.at, entry]));
  const same = new Map();
  for (const group of SAME) {
    for (const word of group) same.set(stemmer(word), group.map((one) => stemmer(one)).filter((one) => one !== stemmer(word)));
  }
  // How rare each word is among names and other words for things; text does not count.
  const seen = new Map();
  for (const { phrases } of entries) {
    for (const word of new Set(phrases.flat())) seen.set(word, (seen.get(word) ?? 0) + 1);
  }
  const rarity = (word) => Math.log(1 + entries.length / (1 + (seen.get(word) ?? 0))) * (EMPTY_STEMS.has(word) ? EMPTY_SHARE : 1);

  /** Every place that has a word, with how well it has it: 0 to 1. */
  function reach(word, isLast) {
    const found = new Map();
    const note = (id, quality, how) => {
      const had = found.get(id);
      if (!had || had.quality < quality) found.set(id, { quality, how });
    };
    const ways = [[word, 1], ...(same.get(word) ?? []).map((other) => [other, SAME_WORD])];
    for (const [one, weight] of ways) {
      const hits = search.search(one, {
        processTerm: (t) => t, tokenize: (t) => [t],
        prefix: isLast ? one.length >= 2 : one.length >= 5, fuzzy: one.length >= 6 ? 0.17 : false,
      });
      for (const { id, match } of hits) {
        for (const [matched, fields] of Object.entries(match)) {
          const near = matched === one ? 1 : matched.startsWith(one) ? PREFIX : FUZZY;
          note(id, weight * near * Math.max(...fields.map((field) => FIELD_WEIGHT[field])), matched);
        }
      }
    }
    return found;
  }

  /** How nearly the question is one of the phrases that a place is called by: 0 to 1. */
  function nearest(phrases, words, how, whole) {
    let best = 0;
    phrases.forEach((phrase, at) => {
      let shared = 0, strange = 0, order = 0, before = -2;
      const left = new Set(phrase);
      for (const word of words) {
        const as = left.has(word) ? word : left.has(how.get(word)) ? how.get(word) : null;
        if (as === null) continue;
        left.delete(as);
        shared += rarity(word) * (as === word ? 1 : SAME_WORD);
        const here = phrase.indexOf(as);
        if (here === before + 1) order += 1;
        before = here;
      }
      for (const word of left) strange += rarity(word);
      const near = shared / (whole + STRANGE * strange) * (1 + 0.06 * order) * (at === 0 ? 1 : 0.95);
      best = Math.max(best, near);
    });
    return best;
  }

  return (asked) => {
    const words = [...new Set(terms(asked))];
    if (!words.length) return [];
    const places = new Map();
    words.forEach((word, at) => {
      const isLast = at === words.length - 1 && !/[\s?.!]$/.test(asked);
      for (const [id, hit] of reach(word, isLast)) {
        if (!places.has(id)) places.set(id, new Map());
        places.get(id).set(word, hit);
      }
    });
    const lower = asked.toLowerCase();
    const whole = words.reduce((sum, word) => sum + rarity(word), 0);
    const spoken = [...new Set(allTerms(asked))];
    const wholeSpoken = spoken.reduce((sum, word) => sum + rarity(word), 0);
    const gains = kindGains(lower);
    const kinds = UNIT_ASKS.find(([pattern]) => pattern.test(lower))?.[1];
    const results = [];
    for (const [id, hits] of places) {
      const { doc, phrases } = byId.get(id);
      let covered = 0, touched = 0;
      for (const [word, { quality }] of hits) {
        covered += rarity(word) * quality;
        touched += rarity(word) * Math.min(1, quality / ENOUGH);
      }
      const how = new Map([...hits].map(([word, hit]) => [word, hit.how]));
      let score = (1 - PHRASE) * covered / whole + PHRASE * nearest(phrases, spoken, how, wholeSpoken);
      score *= (touched / whole) ** MISSING;
      score *= (KIND_WEIGHT[doc.kind] ?? 0.5) * (gains[doc.kind] ?? 1);
      if (kinds && doc.kind === "tolerance") score *= kinds.has(doc.unit) ? 1.1 : 0.6;
      results.push({ doc, score, words: [...hits.keys()] });
    }
    results.sort((one, other) => other.score - one.score);
    return results.slice(0, SHOWN);
  };
}

/** A function of a text that works each text out once. */
function once(work) {
  const known = new Map();
  return (text) => {
    if (!known.has(text)) known.set(text, work(text));
    return known.get(text);
  };
}

function kindGains(asked) {
  const gains = {};
  let some = false;
  for (const [pattern, gain] of ASKS) {
    if (!pattern.test(asked)) continue;
    some = true;
    for (const [kind, by] of Object.entries(gain)) gains[kind] = (gains[kind] ?? 1) * by;
  }
  if (!some && asked.trim().split(/\s+/).length >= 3) Object.assign(gains, COMPLAINT);
  return gains;
}

export function plainText(html) {
  return (html || "")
    .replace(/<[^>]*>/g, " ")
    .replace(/&(amp|lt|gt|quot|#39|nbsp);/g, (_, name) => ({ amp: "&", lt: "<", gt: ">", quot: '"', "#39": "'", nbsp: " " })[name])
    .replace(/\s+/g, " ")
    .trim();
}
