// A text as a QR code (ISO/IEC 18004), drawn as SVG.
import { encode } from "./uqr.mjs";

const SVG = "http://www.w3.org/2000/svg";

/** The picture, or nothing where the text is too long for a code that a tablet can read. */
export function qrPicture(text, title) {
  let code;
  try {
    code = encode(text, { ecc: "L", border: 4 });
  } catch {
    return null;
  }
  const svg = document.createElementNS(SVG, "svg");
  svg.setAttribute("viewBox", `0 0 ${code.size} ${code.size}`);
  svg.setAttribute("role", "img");
  svg.setAttribute("aria-label", title);
  svg.setAttribute("class", "br-learn-qr");
  const paper = document.createElementNS(SVG, "rect");
  for (const [name, value] of [["width", code.size], ["height", code.size], ["fill", "#fff"]]) paper.setAttribute(name, value);
  const dark = document.createElementNS(SVG, "path");
  dark.setAttribute("fill", "#000");
  dark.setAttribute("d", code.data.flatMap((row, y) => row.map((on, x) => (on ? `M${x} ${y}h1v1h-1z` : ""))).join(""));
  svg.append(paper, dark);
  return svg;
}
