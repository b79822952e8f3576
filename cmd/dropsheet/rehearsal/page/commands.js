// Command lines to be read and copied: they break between flags, and not after a dash.

/** Shows a command line in an element. */
export function showCommand(element, line) {
  const parts = line.split(/ (?=--)/).map(part => {
    const s = document.createElement("span");
    s.className = "flag";
    s.textContent = part;
    return s;
  });
  element.replaceChildren(...parts.flatMap((s, i) => i ? [" ", s] : [s]));
}
