// Making the job: the same as the command, with progress and a stop, and the command lines that do it.
import {showCommand} from "./commands.js";
import {Leaves} from "./leaves.js";
import {records} from "./records.js";

const byId = id => document.getElementById(id);

export class Making {
  #bench;
  #leaves = new Leaves();
  #stop = null; // of what is being made

  constructor(bench) {
    this.#bench = bench;
    byId("make").addEventListener("click", () => this.#open());
    byId("making-go").addEventListener("click", () => this.#make({}));
    byId("making-fresh").addEventListener("click", () => this.#make({fresh: true}));
    byId("making-replace").addEventListener("click", () => this.#make({replace: true}));
    byId("making-stop").addEventListener("click", () => this.#stop?.abort());
    byId("making-close").addEventListener("click", () => byId("making").close());
  }

  #open() {
    if (!this.#stop) this.#ready("");
    byId("making").showModal();
    this.show();
  }

  /** Shows the command lines, once there are those of what is asked. */
  show() {
    if (!byId("making").open) return;
    const p = this.#bench.plan, fresh = this.#bench.fresh(p);
    showCommand(byId("make-line"), fresh ? p.make : "…");
    showCommand(byId("proof-line"), fresh ? p.proof : "…");
  }

  #ready(says) {
    byId("making-says").textContent = says;
    byId("making-go").hidden = false;
    for (const id of ["making-fresh", "making-replace", "making-stop", "making-bar"]) byId(id).hidden = true;
  }

  async #make(how) {
    const signal = this.#stop = new AbortController(), bar = byId("making-bar"), says = byId("making-says"), warnings = [];
    for (const id of ["making-go", "making-fresh", "making-replace"]) byId(id).hidden = true;
    byId("making-stop").hidden = bar.hidden = false;
    byId("making-stop").focus();
    byId("making-shows").replaceChildren();
    bar.removeAttribute("value");
    says.textContent = "reading the artwork";
    let ended = "it ended without a word: is dropsheet still running?";
    try {
      for await (const r of records("make", {words: this.#bench.words.list(), fresh: false, replace: false, ...how}, signal.signal)) {
        if (r.kind === "progress") {
          bar.value = r.done / r.of;
          says.textContent = `${r.what === "row" ? "proof, row" : r.what} ${r.done} of ${r.of}`;
        }
        if (r.kind === "warning") warnings.push(r.text);
        if (r.kind === "error") ended = r.hint ? `${r.text} (${r.hint})` : r.text;
        if (r.kind === "there") { this.#stop = null; this.#ask(r); return; }
        if (r.kind === "made") { ended = ""; this.#made(r, warnings); }
      }
    } catch (e) {
      ended = signal.signal.aborted ? "stopped" : `not made: ${e.message}`;
    }
    this.#stop = null;
    if (ended) this.#ready(ended);
    else { const says = byId("making-says").textContent; this.#ready(says); }
    byId("making-go").focus();
  }

  #ask(r) {
    this.#ready(`${r.folder} is there already. Make another beside it, or replace it with its reprints and trials?`);
    byId("making-go").hidden = true;
    byId("making-fresh").textContent = `Make ${r.fresh}`;
    byId("making-replace").textContent = `Replace ${r.folder}`;
    byId("making-fresh").hidden = byId("making-replace").hidden = false;
    byId("making-fresh").focus();
  }

  #made(r, warnings) {
    byId("making-says").textContent = [`${r.sheets} sheets, check code ${r.check_code}, in ${r.folder}.`, r.seams ? `${r.seams}.` : "", ...warnings.map(w => `Warning: ${w}.`)].join(" ");
    const fresh = `?${Date.now()}`; // the same names may have been shown before
    const all = [];
    for (const [name, alt] of [["proof.png", "what the camera will record"], ["closeup.png", "the drop large"], ["seams.png", "where the seams fall"]]) {
      if (!r.files.includes(name)) continue;
      const img = document.createElement("img");
      img.src = `made/${name}${fresh}`;
      img.alt = alt;
      all.push(img);
    }
    for (const [name, title, says] of [["guide.pdf", "The guide", "read it first"], ["sheets.pdf", "The sheets", "print them at 100 %"],
      ["rays.pdf", "The rays", "a page to draw and measure on"]]) {
      if (!r.files.includes(name)) continue;
      const h = document.createElement("h3"), a = document.createElement("a");
      a.href = `made/${name}${fresh}`;
      a.download = name;
      a.textContent = `Save ${name}`;
      h.append(`${title}: ${says}. `, a);
      all.push(h, this.#leaves.row(name, title, fresh));
    }
    byId("making-shows").replaceChildren(...all);
  }
}
