// All set-up: every word with a place to type it, under the headings of --help.

export class Setup {
  #bench;
  #panel = document.getElementById("setup");
  #button = document.getElementById("all");
  #fields = new Map();

  constructor(bench, headings) {
    this.#bench = bench;
    this.#button.addEventListener("click", () => this.#panel.open ? this.#close() : this.#open());
    this.#panel.addEventListener("keydown", e => {
      if (e.key === "Escape") { e.preventDefault(); this.#close(); }
    });
    const top = document.createElement("div"), h = document.createElement("h2"), close = document.createElement("button");
    h.textContent = "All set-up";
    close.type = "button";
    close.textContent = "Back to the bench";
    close.addEventListener("click", () => this.#close());
    top.className = "row";
    top.append(h, close);
    const keys = document.createElement("p");
    keys.className = "keys";
    keys.textContent = "Handles are dragged, or moved by keys: Tab goes to them, arrows move them a little, with Shift ten times as far, " +
      "Page Up and Page Down by much, 0 puts back what was, Enter lets you type. K pegs up a take; hold one, or the space bar on it, to compare.";
    this.#panel.append(top, keys);
    for (const heading of headings) {
      const title = document.createElement("h3");
      title.textContent = heading.title;
      this.#panel.append(title, ...heading.flags.map(f => this.#word(f)));
    }
  }

  #word(flag) {
    const row = document.createElement("div"), label = document.createElement("label"), usage = document.createElement("small"), wrong = document.createElement("small");
    row.className = "word";
    const field = document.createElement(flag.many ? "textarea" : "input");
    field.id = `word-${flag.name}`;
    if (flag.switch) field.type = "checkbox";
    else {
      if (!flag.many) field.type = "text";
      field.placeholder = flag.stands || flag.kind;
      field.autocomplete = "off";
      field.spellcheck = false;
    }
    if (flag.many) field.rows = 2;
    label.htmlFor = field.id;
    label.textContent = flag.name.replaceAll("-", " ");
    usage.textContent = flag.usage + (flag.many ? "; a line for each" : "");
    usage.id = `${field.id}-usage`;
    wrong.className = "wrong";
    wrong.id = `${field.id}-wrong`;
    field.setAttribute("aria-describedby", `${usage.id} ${wrong.id}`);
    field.addEventListener("change", () => {
      const w = this.#bench.words;
      if (flag.switch) w.set(flag.name, String(field.checked) === (flag.stands || "false") ? "" : String(field.checked));
      else w.set(flag.name, field.value.split(flag.many ? "\n" : "\u0000").map(v => v.trim()));
    });
    this.#fields.set(flag.name, {field, wrong, flag});
    row.append(label, field, usage, wrong);
    return row;
  }

  #open() {
    this.#panel.show();
    this.#button.setAttribute("aria-expanded", "true");
    this.show();
    this.#panel.querySelector("button").focus();
  }

  #close() {
    this.#panel.close();
    this.#button.setAttribute("aria-expanded", "false");
    this.#button.focus();
  }

  /** Shows the words as they stand. */
  show() {
    if (!this.#panel.open) return;
    for (const [name, {field, flag}] of this.#fields) {
      if (field === document.activeElement) continue;
      if (flag.switch) field.checked = (this.#bench.words.get(name) || flag.stands) === "true";
      else field.value = this.#bench.words.all(name).join("\n");
    }
  }

  /** Says by the word that is to blame what is wrong; nothing for none. */
  blame(flag, text) {
    for (const [name, {field, wrong}] of this.#fields) {
      wrong.textContent = name === flag ? text : "";
      if (name === flag) field.setAttribute("aria-invalid", "true");
      else field.removeAttribute("aria-invalid");
    }
  }
}
