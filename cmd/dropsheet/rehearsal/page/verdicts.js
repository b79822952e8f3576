// What the figures come to, in words: sharpness, seams, light, and time in view. The words are the report's own.
import {short} from "./lengths.js";

export class Verdicts {
  #bench;
  #stage = document.getElementById("verdicts");

  constructor(bench) { this.#bench = bench; }

  /** Shows what is known by now. */
  show() {
    const f = this.#bench.figures;
    if (!f) return;
    this.#stage.replaceChildren(this.#sharp(f), this.#seams(this.#bench.verdicts), this.#light(f), this.#time(f));
  }

  // The facts of some topics, those that ask for something first.
  #facts(f, ...topics) {
    const all = f.facts.filter(x => topics.includes(x.key.split(".")[0]));
    return [...all.filter(x => x.asks), ...all.filter(x => !x.asks)].map(x => x.text);
  }

  #sharp(f) {
    const own = f.ladder.find(r => r.own), to = f.figures.sharpness.sharp_to_px, px = Math.hypot(own.defocus_px, own.diffraction_px);
    return this.#tile("sharpness", px <= to ? "good" : "bad", `${short(px, px < 10 ? 1 : 0)} px ${px <= to ? "sharp" : "soft"}`,
      this.#facts(f, "sharp", "focus"));
  }

  #seams(v) {
    if (!v) return this.#tile("seams", "", "seams…", ["looking at each of them"]);
    const n = v.count.show, worst = v.worst.map(s => `${s.between.join(" and ")}, ${s.where}: ${s.remedy}`);
    const head = n ? `${n} ${n === 1 ? "seam shows" : "seams show"}` : v.count.faint ? `${v.count.faint} faint` : "no seam shows";
    return this.#tile("seams", n ? "bad" : v.count.faint ? "" : "good", head, [...worst, v.summary]);
  }

  #light(f) {
    const over = f.figures.shot.exposure_over_stops, light = f.figures.light;
    const facts = this.#facts(f, "lux", "light", "glare", "lamps", "mains");
    if (over !== undefined) {
      const off = Math.abs(over) > 0.5;
      return this.#tile("light", off ? "bad" : "good", off ? `${short(Math.abs(over), 1)} stops ${over < 0 ? "dark" : "light"}` : "light enough", facts);
    }
    if (light) {
      const off = light.falloff_stops, asks = f.facts.some(x => x.key === "light.falls" && x.asks);
      return this.#tile("light", asks || off > 0.5 ? "bad" : "good", `${short(off, 2)} stops fall-off`, facts);
    }
    return this.#tile("light", "", "even light", ["no lamp is placed: add one on the bench", ...facts]);
  }

  #time(f) {
    const s = f.figures.shot, facts = this.#facts(f, "motion", "travel");
    if (s.frames_in_view) return this.#tile("time in view", "", `${short(s.frames_in_view, s.frames_in_view < 10 ? 1 : 0)} frames`, facts);
    if (s.in_view_ms) return this.#tile("time in view", "", `${short(s.in_view_ms, 1)} ms`, facts);
    return this.#tile("time in view", "", "a still drop", ["say how far it falls (fall) and the frame rate, for its smear and time in view", ...facts]);
  }

  #tile(name, mood, head, lines) {
    const t = document.createElement("section"), h = document.createElement("strong"), p = document.createElement("p");
    t.className = `verdict ${mood}`;
    t.setAttribute("aria-label", name);
    h.textContent = head;
    p.textContent = lines.slice(0, 2).join(". ");
    t.append(h, p);
    if (lines.length > 1) {
      const more = document.createElement("button");
      more.type = "button";
      more.textContent = "all of it";
      more.setAttribute("aria-label", `all of ${name}`);
      more.addEventListener("click", () => this.#all(name, lines, more));
      t.append(more);
    }
    return t;
  }

  #all(name, lines, back) {
    const d = document.createElement("dialog"), h = document.createElement("h2"), list = document.createElement("ul"), close = document.createElement("button");
    d.setAttribute("aria-label", name);
    h.textContent = name[0].toUpperCase() + name.slice(1);
    for (const l of lines) {
      const li = document.createElement("li");
      li.textContent = l;
      list.append(li);
    }
    close.type = "button";
    close.textContent = "Back to the bench";
    close.addEventListener("click", () => d.close());
    d.addEventListener("close", () => { d.remove(); back.isConnected ? back.focus() : document.body.focus(); });
    d.append(h, list, close);
    document.body.append(d);
    d.showModal();
  }
}
