// The parts of a calculator's answer on the page. Only what changed is touched, so that nothing flickers
// or scrolls away and a figure stands where the eye is.

const ESCAPES = { amp: "&", lt: "<", gt: ">", quot: '"', "#39": "'" };

export class AnswerParts {
  #places;
  #shown = {};

  constructor(section) {
    this.#places = new Map(
      [...section.querySelectorAll("[data-part]")].map((place) => [place.dataset.part, place]),
    );
  }

  /** The parts before the reader: folded ones are worked out when they are opened. */
  seen() {
    return [...this.#places]
      .filter(([, place]) => place.closest("details")?.open ?? true)
      .map(([name]) => name);
  }

  /** Puts the markup of a part in its place. */
  put(name, html) {
    const shown = this.#shown[name];
    if (shown?.html === html) return;
    const pieces = html.split(/<[^>]*>/);
    const tags = html.match(/<[^>]*>/g)?.join("") ?? "";
    const place = this.#places.get(name);
    // Most often only figures change: then only their text is touched.
    const nodes = shown?.tags === tags && shown.nodes.length === pieces.length && shown.nodes;
    if (nodes && pieces.every((piece, at) => Boolean(piece) === Boolean(nodes[at]))) {
      pieces.forEach((piece, at) => {
        if (piece !== shown.pieces[at]) nodes[at].data = plain(piece);
      });
      this.#shown[name] = { html, tags, pieces, nodes };
      return;
    }
    const fresh = document.createElement("template");
    fresh.innerHTML = html;
    morphChildren(place, fresh.content);
    this.#shown[name] = { html, tags, pieces, nodes: textNodes(place, pieces) };
  }

  /** What is answered first, as one says it; and how many cautions there are, where they hold. */
  inWords(withCautions) {
    const [label, ...rest] = [...this.#places.get("headline").childNodes].map((one) => one.textContent.trim()).filter(Boolean);
    const words = `${label}: ${rest.join(" ").replace(/\s+/g, " ").replace(/\.$/, "")}`;
    const cautions = withCautions ? this.#places.get("cautions").querySelectorAll("li").length : 0;
    return cautions ? `${words}. ${cautions} ${cautions === 1 ? "caution" : "cautions"}` : words;
  }
}

/** The text node of each piece of text between tags, in order; none where the piece is empty. */
function textNodes(place, pieces) {
  const walker = document.createTreeWalker(place, NodeFilter.SHOW_TEXT);
  const nodes = pieces.map((piece) => (piece ? walker.nextNode() : null));
  return walker.nextNode() || nodes.some((node, at) => pieces[at] && !node) ? [] : nodes;
}

/** Text as it stands between tags, with its five escapes undone. */
function plain(piece) {
  return piece.replace(/&(amp|lt|gt|quot|#39);/g, (_, name) => ESCAPES[name]);
}

/** Makes the children of ``old`` those of ``fresh``, changing as little as can be. */
function morphChildren(old, fresh) {
  const before = [...old.childNodes];
  const after = [...fresh.childNodes];
  after.forEach((node, at) => {
    if (at >= before.length) old.append(node);
    else morph(before[at], node);
  });
  for (const node of before.slice(after.length)) node.remove();
}

function morph(old, fresh) {
  if (old.isEqualNode(fresh)) return undefined;
  if (old.nodeName !== fresh.nodeName) return old.replaceWith(fresh);
  if (old.nodeType !== Node.ELEMENT_NODE) {
    if (old.data !== fresh.data) old.data = fresh.data;
    return undefined;
  }
  for (const { name, value } of fresh.attributes) {
    if (old.getAttribute(name) !== value) old.setAttribute(name, value);
  }
  for (const { name } of [...old.attributes]) {
    if (!fresh.hasAttribute(name)) old.removeAttribute(name);
  }
  return morphChildren(old, fresh);
}
