// The pages of what was made: small ones in a row, and each large by itself.

const byId = id => document.getElementById(id);

export class Leaves {
  #dialog = byId("leaf");
  #picture = byId("leaf-picture");
  #shown = null; // the file whose page is large, and which

  constructor() {
    byId("leaf-before").addEventListener("click", () => this.#turn(-1));
    byId("leaf-next").addEventListener("click", () => this.#turn(1));
    byId("leaf-larger").addEventListener("click", e => {
      const on = !this.#dialog.classList.contains("larger");
      this.#dialog.classList.toggle("larger", on);
      e.currentTarget.setAttribute("aria-pressed", String(on));
    });
    byId("leaf-close").addEventListener("click", () => this.#dialog.close());
    this.#picture.addEventListener("error", () => { byId("leaf-says").textContent = "This page can't be drawn: is the job still there?"; });
    this.#dialog.addEventListener("keydown", e => {
      const way = {ArrowLeft: -1, PageUp: -1, ArrowRight: 1, PageDown: 1}[e.key];
      if (!way) return;
      e.preventDefault();
      this.#turn(way);
    });
  }

  /** A row of a file's pages, each drawn as it comes into sight; fresh tells them from those of a job before. */
  row(name, title, fresh) {
    const row = document.createElement("div");
    row.className = "pages";
    row.setAttribute("role", "group");
    row.setAttribute("aria-label", title);
    this.#fill(row, name, title, fresh).catch(() => { row.textContent = "The pages can't be shown: is dropsheet still running?"; });
    return row;
  }

  async #fill(row, name, title, fresh) {
    const answer = await fetch(`made/${name}/pages`);
    if (!answer.ok) throw new Error(answer.statusText);
    const file = {name, title, fresh, ...await answer.json()};
    for (let n = 1; n <= file.pages; n++) {
      const leaf = document.createElement("button"), img = document.createElement("img");
      leaf.type = "button";
      leaf.setAttribute("aria-label", `Page ${n} of ${name}, large`);
      img.loading = "lazy";
      img.src = `made/${name}/${n}${fresh}`;
      img.alt = "";
      leaf.append(img);
      leaf.addEventListener("click", () => this.#open(file, n));
      row.append(leaf);
    }
  }

  #open(file, n) {
    this.#shown = {file, n};
    this.#show();
    if (!this.#dialog.open) this.#dialog.showModal();
  }

  #turn(by) {
    const to = this.#shown.n + by;
    if (to < 1 || to > this.#shown.file.pages) return;
    this.#shown.n = to;
    this.#show();
  }

  #show() {
    const {file, n} = this.#shown;
    byId("leaf-title").textContent = `${file.title}: page ${n} of ${file.pages}`;
    byId("leaf-says").textContent = "";
    byId("leaf-before").disabled = n === 1;
    byId("leaf-next").disabled = n === file.pages;
    this.#picture.alt = `page ${n} of ${file.name}`;
    this.#picture.src = `made/${file.name}/${n}/large${file.fresh}`;
  }
}
