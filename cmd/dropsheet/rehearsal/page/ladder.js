// The ladder of stops: what defocus, diffraction and motion blur at each, one of them to be clicked.
import {Handle} from "./handle.js";
import {clamp, short} from "./lengths.js";

const high = 26; // of the tallest bar, in pixels

export class Ladder {
  #bench;
  #stops = document.getElementById("stops");
  #rail = document.querySelector("#ladder .rail");
  #handle;
  #rungs = [];

  constructor(bench) {
    this.#bench = bench;
    const w = bench.words;
    const value = {
      name: "aperture", fine: 1, coarse: 6, times: 2 ** (1 / 12) - 1, min: 0.7, max: 128,
      get: () => Number(w.get("aperture").replace(/^f\//i, "")) || bench.plan?.plan.camera.f_number || NaN,
      say: v => `f ${short(v, 1)}`, set: v => w.set("aperture", `f/${short(v, v < 10 ? 2 : 1)}`),
      words: {get: () => w.get("aperture") || `f/${short(value.get(), 1)}`, set: t => w.set("aperture", t)},
    };
    this.#handle = new Handle(this.#rail, {shape: "bar", tag: "right", shy: true}, [value], (dx, dy, [from]) => {
      const wide = this.#rail.clientWidth / Math.max(1, this.#rungs.length); // of a full stop
      value.set(clamp(from * 2 ** (dx / wide / 2), value.min, value.max));
    }, bench);
  }

  /** Shows the stops of the figures. */
  show(figures) {
    const all = figures.ladder, most = Math.max(...all.map(r => Math.max(r.defocus_px, r.diffraction_px))) || 1;
    const bar = (kind, px) => {
      const i = document.createElement("i");
      i.className = kind;
      i.style.height = `${clamp(high * Math.sqrt(px / most), px > 0 ? 1 : 0, high)}px`; // by their roots, for the smallest to be seen
      return i;
    };
    const focused = this.#rungs.findIndex(b => b === document.activeElement);
    this.#rungs = all.map(r => {
      const b = document.createElement("button"), bars = document.createElement("span");
      b.type = "button";
      b.className = "rung";
      b.setAttribute("aria-pressed", String(r.own));
      const smear = r.smear_px > 0 ? `, motion ${short(r.smear_px, 1)}` : "";
      b.setAttribute("aria-label", `${r.mark}: defocus ${short(r.defocus_px, 1)} pixels, diffraction ${short(r.diffraction_px, 1)}${smear}`);
      b.title = b.getAttribute("aria-label");
      bars.append(bar("defocus", r.defocus_px), bar("diffraction", r.diffraction_px));
      if (r.smear_px > 0) bars.append(bar("smear", r.smear_px));
      b.append(bars, r.mark);
      b.addEventListener("click", () => this.#bench.words.set("aperture", r.mark));
      return b;
    });
    this.#stops.replaceChildren(...this.#rungs);
    if (focused >= 0) this.#rungs[Math.min(focused, this.#rungs.length - 1)].focus();
    this.arrange();
  }

  /** Puts the handle over the plan's stop. */
  arrange() {
    const all = this.#bench.figures?.ladder, p = this.#bench.plan;
    if (!all || !p) return;
    const n = p.plan.camera.f_number, wide = this.#rail.clientWidth / all.length, log = Math.log2;
    let at = all.findIndex(r => r.f_number >= n * 0.999);
    if (at < 0) at = all.length - 1;
    const before = all[at - 1];
    const part = before && all[at].f_number > n * 1.001 ? (log(n) - log(before.f_number)) / (log(all[at].f_number) - log(before.f_number)) - 1 : 0;
    this.#handle.put(clamp((at + 0.5 + part) * wide, 10, this.#rail.clientWidth - 10), 14, p.stop);
  }
}
