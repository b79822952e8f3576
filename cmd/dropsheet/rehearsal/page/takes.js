// The drying line: takes hang on it by pegs, and say only what differs.
import {clamp, short} from "./lengths.js";
import {glimpse} from "./looking.js";
import {pixels} from "./records.js";
import {differences, keyOf} from "./words.js";

// The figures that takes are compared by.
function tells(figures, plan) {
  const own = figures.ladder.find(r => r.own);
  return {px: Math.hypot(own.defocus_px, own.diffraction_px), n: own.f_number, sheets: plan.sheets.length, width: plan.picture.width_mm};
}

export class Takes {
  #bench;
  #frame;
  #list = document.getElementById("takes");
  #takes = [];
  #looking;
  #on = null; // the take that is on the bench as it hangs

  constructor(bench, frame, looking) {
    this.#bench = bench;
    this.#looking = looking;
    this.#frame = frame;
    document.getElementById("keep").addEventListener("click", () => this.keep());
    document.getElementById("save").addEventListener("click", () => this.#save());
    document.addEventListener("keydown", e => {
      if (e.key.toLowerCase() !== "k" || e.ctrlKey || e.metaKey || e.altKey || e.target.closest("input, textarea, dialog")) return;
      e.preventDefault();
      this.keep();
    });
  }

  /** Hangs up what is on the bench. */
  keep() {
    if (!this.#bench.plan) return;
    const take = {name: `Take ${this.#takes.length + 1}`, words: this.#bench.words.list(), picture: null, tells: null};
    this.#takes.push(take);
    this.#on = take;
    this.#show();
    this.comes();
    this.#bench.says(`${take.name} is pegged up`);
  }

  /** Gives the take that is on the bench what has come of it: its frame, until that is as fine as it gets, and its figures. */
  comes() {
    const t = this.#on;
    if (!t) return;
    if (!t.fine && this.#bench.fresh(this.#frame.shown)) {
      t.picture = this.#frame.copy();
      t.fine = this.#frame.shown.rung === "fine";
      this.#draw(t);
    }
    if (!t.tells && (t.tells = this.#tells())) this.#say();
  }

  #tells() {
    const f = this.#bench.figures;
    return this.#bench.fresh(f) ? tells(f, this.#bench.plan.plan) : null;
  }

  /** Hangs up takes that were kept in a file; their pictures come one by one, whenever nothing else is rendered. */
  async read(kept) {
    const mine = this.#takes = kept.map(t => ({...t, picture: null, tells: null}));
    this.#on = null;
    this.mark();
    this.#show();
    const tries = 5; // a picture is given up when something newer is asked
    for (const t of mine) {
      for (let i = 0; i < tries && !t.picture; i++) {
        await this.#looking.rest();
        if (this.#takes !== mine) return; // another picture has come, with takes of its own
        await this.#fetch(t, 480);
      }
    }
  }

  // Fetches a take's frame and figures.
  async #fetch(t, sidePx) {
    try {
      for await (const r of glimpse(t.words, sidePx)) {
        if (t.fine) return; // it is on the bench by now
        if (r.kind === "plan") t.plan = r.plan;
        if (r.kind === "figures") {
          t.tells ??= tells(r, t.plan);
          this.#say();
        }
        if (r.kind === "frame" && r.width_px >= (t.picture?.width ?? 0)) {
          t.picture = document.createElement("canvas");
          [t.picture.width, t.picture.height] = [r.width_px, r.height_px];
          t.picture.getContext("2d").putImageData(pixels(r), 0, 0);
          this.#draw(t);
          t.held?.();
        }
      }
    } catch { /* the bench says so when it is asked next */ }
  }

  // A take that is compared and has been read from its file has a small picture, or none yet: it gets one like the frame's.
  async #compare(t) {
    if (t.fine || t.comes) return;
    t.comes = true;
    await this.#looking.rest();
    const sidePx = this.#frame.sidePx;
    if (Math.max(t.picture?.width ?? 0, t.picture?.height ?? 0) < sidePx) await this.#fetch(t, sidePx);
    t.comes = false;
  }

  /** Marks the take that is on the bench as it hangs, if one is. */
  mark() {
    const now = keyOf(this.#bench.words.list());
    const on = this.#takes.find(t => keyOf(t.words) === now) ?? null;
    if (on === this.#on) return;
    this.#on = on;
    this.#show();
  }

  #show() {
    this.#list.replaceChildren(...this.#takes.map((t, i) => this.#item(t, i)));
    this.#say();
    document.getElementById("save").disabled = !this.#takes.length;
    document.getElementById("made-of").textContent = this.#bench.makes();
  }

  #item(t, i) {
    const li = document.createElement("li"), thumb = document.createElement("button"), name = document.createElement("input");
    li.className = `take${t === this.#on ? " on" : ""}`;
    thumb.type = "button";
    thumb.className = "thumb";
    thumb.setAttribute("aria-label", `${t.name}: hold to compare`);
    t.thumb = document.createElement("canvas");
    this.#draw(t);
    thumb.append(t.thumb);
    this.#holds(thumb, t);
    name.value = t.name;
    name.maxLength = 80;
    name.setAttribute("aria-label", `Name of take ${i + 1}`);
    name.addEventListener("change", () => { t.name = name.value.trim() || `Take ${i + 1}`; name.value = t.name; });
    const says = t.says = document.createElement("small");
    const row = document.createElement("div");
    row.className = "row";
    const button = (text, label, does) => {
      const b = document.createElement("button");
      b.type = "button";
      b.textContent = text;
      b.setAttribute("aria-label", `${label} ${t.name}`);
      b.addEventListener("click", does);
      row.append(b);
    };
    button("go back to it", "Go back to", () => { this.#bench.words.replace(t.words); this.mark(); });
    button("take down", "Take down", () => { this.#takes.splice(this.#takes.indexOf(t), 1); this.#show(); document.getElementById("keep").focus(); });
    li.append(thumb, name, says, row);
    return li;
  }

  #draw(t) {
    if (!t.picture) return;
    [t.thumb.width, t.thumb.height] = [t.picture.width, t.picture.height];
    t.thumb.getContext("2d").drawImage(t.picture, 0, 0);
  }

  #say() {
    this.#takes.forEach((t, i) => {
      t.says.textContent = t === this.#on ? "as on the bench now" : this.#differs(t, this.#takes[i - 1] ?? {words: this.#bench.began});
    });
  }

  // What differs from the take before it, or from the beginning: words first, then what they do.
  #differs(t, other) {
    const parts = differences(other.words, t.words, f => this.#bench.stands(f));
    const a = other.tells, b = t.tells;
    if (a && b) {
      const stops = 2 * Math.log2(a.n / b.n), px = b.px - a.px;
      if (Math.abs(stops) >= 0.1) parts.push(`${short(Math.abs(stops), 1)} stops ${stops > 0 ? "lighter" : "darker"}`);
      if (Math.abs(px) >= 0.1) parts.push(`${short(Math.abs(px), 1)} px ${px > 0 ? "softer" : "sharper"}`);
      if (a.sheets !== b.sheets) parts.push(`${b.sheets} sheets`);
    }
    return parts.slice(0, 3).join(" · ") || (other.tells === undefined ? "as it began" : "the same");
  }

  // Held by hand or by the space bar, a take is wiped over the frame; it follows the hand, or the arrows.
  #holds(thumb, t) {
    let held = false, share = 0.5;
    const wipe = () => this.#frame.wipe(t.picture, share);
    const begin = () => {
      held = true;
      share = 0.5;
      t.held = wipe;
      wipe();
      this.#compare(t);
    };
    const end = () => {
      if (!held) return;
      held = false;
      t.held = null;
      this.#frame.wipe(null, 0);
    };
    thumb.addEventListener("pointerdown", e => {
      if (e.button !== 0) return;
      thumb.setPointerCapture(e.pointerId);
      begin();
    });
    thumb.addEventListener("pointermove", e => {
      if (!held) return;
      // The frame's width to a hand that goes as far as four thumbnails, or that is over the frame itself.
      const b = thumb.getBoundingClientRect();
      share = e.clientY < b.top - 40 ? this.#frame.shareAt(e.clientX) : clamp(0.5 + (e.clientX - b.left - b.width / 2) / (4 * b.width), 0, 1);
      wipe();
    });
    for (const kind of ["pointerup", "pointercancel", "lostpointercapture", "blur"]) thumb.addEventListener(kind, end);
    thumb.addEventListener("keydown", e => {
      if (e.key === " ") {
        e.preventDefault();
        if (!held) begin();
      } else if (held && (e.key === "ArrowLeft" || e.key === "ArrowRight")) {
        e.preventDefault();
        share = clamp(share + (e.key === "ArrowLeft" ? -0.05 : 0.05), 0, 1);
        wipe();
      }
    });
    thumb.addEventListener("keyup", e => { if (e.key === " ") { e.preventDefault(); end(); } });
  }

  async #save() {
    const says = document.getElementById("saved");
    try {
      const answer = await fetch("takes", {method: "POST", headers: {"Content-Type": "application/json"},
        body: JSON.stringify({takes: this.#takes.map(t => ({name: t.name, words: t.words}))})});
      const r = await answer.json();
      says.textContent = r.kind === "saved" ? `saved in ${r.file.split(/[/\\]/).at(-1)}` : r.text;
    } catch (e) {
      says.textContent = `not saved: ${e}`;
    }
  }
}
