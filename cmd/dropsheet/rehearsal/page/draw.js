// Drawing in SVG, in the stage's own pixels.

/** Empties a drawing and gives it the size of its stage. */
export function clear(svg, width, height) {
  svg.setAttribute("viewBox", `0 0 ${width} ${height}`);
  svg.replaceChildren();
}

/** Adds an element. */
export function add(svg, kind, attributes, text) {
  const e = document.createElementNS("http://www.w3.org/2000/svg", kind);
  for (const [name, value] of Object.entries(attributes)) e.setAttribute(name, value);
  if (text !== undefined) e.textContent = text;
  svg.append(e);
  return e;
}
