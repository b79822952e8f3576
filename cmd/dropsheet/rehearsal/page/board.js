// The board from its printed side: sheets by their names, seams by their verdict, places that seams keep out of.
import {add, clear} from "./draw.js";
import {Handle} from "./handle.js";
import {clamp, mm, readMM, sayMM, short, written} from "./lengths.js";
import {pixels} from "./records.js";

const target = 45; // pixels between handles, for a finger

// How plainly a seam shows, from its verdict's words.
const looks = {shows: "shows", faint: "faint", hidden: "hidden"};

export class Board {
  #bench;
  #stage = document.getElementById("board");
  #canvas = this.#stage.querySelector("canvas");
  #svg = this.#stage.querySelector("svg");
  #seams = [];
  #circles = [];
  #names = "";
  #sheets = [];
  #drawing = null;
  #times = 1; // as large as the whole fits its stage

  constructor(bench) {
    this.#bench = bench;
    document.getElementById("larger").addEventListener("click", () => this.#enlarge(this.#times === 1, {x: 0, y: 0}));
    this.#stage.addEventListener("scroll", () => this.arrange());
    // A finger can't tell seams apart that lie closer than it is wide: it makes the board larger there first.
    this.#stage.addEventListener("pointerdown", e => {
      if (!this.#drawn || e.pointerType === "mouse" || this.#times > 1 || this.#enough() === 1) return;
      if (!this.#seams.some(h => h.box.contains(e.target))) return;
      e.preventDefault();
      e.stopPropagation();
      this.#enlarge(true, this.#place(e));
    }, {capture: true});
    const button = document.getElementById("avoid");
    button.addEventListener("click", e => {
      const on = button.getAttribute("aria-pressed") !== "true";
      this.#pressed(on);
      // By keys there is nothing to draw with: a circle comes to lie in the middle, and has handles.
      if (on && e.detail === 0) this.#avoid(this.#middle());
      else if (on) bench.says("draw a circle on the board");
    });
    this.#stage.addEventListener("pointerdown", e => {
      if (!this.#drawn || button.getAttribute("aria-pressed") !== "true") return;
      e.preventDefault();
      this.#stage.setPointerCapture(e.pointerId);
      this.#drawing = {from: this.#place(e), to: this.#place(e)};
    });
    this.#stage.addEventListener("pointermove", e => {
      if (!this.#drawing) return;
      this.#drawing.to = this.#place(e);
      this.arrange();
    });
    this.#stage.addEventListener("pointercancel", () => {
      if (!this.#drawing) return;
      this.#drawing = null;
      this.#pressed(false);
      this.arrange();
    });
    this.#stage.addEventListener("pointerup", () => {
      if (!this.#drawing) return;
      const c = this.#circle();
      this.#drawing = null;
      if (c.radius_mm * this.#box().k > 4) this.#avoid(c);
    });
  }

  get #drawn() { return Boolean(this.#bench.plan); }

  #pressed(on) {
    document.getElementById("avoid").setAttribute("aria-pressed", String(on));
    this.#stage.classList.toggle("drawing", on);
  }

  #middle() {
    const b = this.#bench.plan.plan.backdrop;
    return {x_mm: b.width_mm / 2, y_mm: b.height_mm / 2, radius_mm: b.width_mm / 12};
  }

  #circle() {
    const {from, to} = this.#drawing;
    return {x_mm: from.x, y_mm: from.y, radius_mm: Math.hypot(to.x - from.x, to.y - from.y)};
  }

  async #avoid(circle) {
    this.#pressed(false);
    const w = this.#bench.words;
    let r;
    try {
      const answer = await fetch("place", {method: "POST", headers: {"Content-Type": "application/json"},
        body: JSON.stringify({words: w.list(), ...circle})});
      r = await answer.json();
    } catch {
      this.#bench.gone();
      return;
    }
    if (r.kind !== "place") {
      this.#bench.fault(r.text, r.hint, r.flag);
      return;
    }
    if (w.get("seams") === "even") w.set("seams", ""); // which leaves every seam in its place
    w.set("avoid", [...w.all("avoid"), r.avoid]);
  }

  // Where the board lies on its stage, in pixels, and how many there are to a millimetre.
  #box(times = this.#times) {
    const b = this.#bench.plan.plan.backdrop, w = this.#stage.clientWidth, h = this.#stage.clientHeight, edge = 26;
    const k = times * Math.min((w - 2 * edge) / b.width_mm, (h - 2 * edge) / b.height_mm), width = k * b.width_mm, height = k * b.height_mm;
    return {k, left: Math.max(edge, (w - width) / 2), top: Math.max(edge, (h - height) / 2), width, height,
      wide: Math.max(w, width + 2 * edge), high: Math.max(h, height + 2 * edge)};
  }

  #place(e) {
    const s = this.#stage.getBoundingClientRect(), b = this.#box();
    return {x: (e.clientX - s.left + this.#stage.scrollLeft - b.left) / b.k, y: (e.clientY - s.top + this.#stage.scrollTop - b.top) / b.k};
  }

  // How many times as large as its stage the board must be for every seam's handle to have its own 44 pixels.
  #enough() {
    const back = this.#bench.plan.plan.backdrop, k = this.#box(1).k;
    const gaps = edges => edges.slice(2, -1).map((at, i) => at - edges[i + 1]);
    const least = Math.min(...gaps(back.column_edges_mm), ...gaps(back.row_edges_mm));
    return clamp(target / (least * k), 1, 16);
  }

  #enlarge(on, about) {
    this.#times = on ? this.#enough() : 1;
    this.arrange();
    const b = this.#box(), s = this.#stage;
    s.scrollTo(b.left + about.x * b.k - s.clientWidth / 2, b.top + about.y * b.k - s.clientHeight / 2);
  }

  /** Shows what hangs there. */
  show(r) {
    [this.#canvas.width, this.#canvas.height] = [r.width_px, r.height_px];
    this.#canvas.getContext("2d").putImageData(pixels(r), 0, 0);
    this.arrange();
  }

  /** Draws seams and sheets and puts the handles. */
  arrange() {
    if (!this.#drawn) return;
    if (!this.#seams.some(h => h.held)) { // else it would grow from under the hand
      const enough = this.#enough(), larger = document.getElementById("larger");
      if (this.#times > 1) this.#times = enough;
      this.#stage.classList.toggle("larger", this.#times > 1);
      larger.hidden = enough <= (matchMedia("(pointer: coarse)").matches ? 1 : 2); // a mouse points at half as much
      larger.setAttribute("aria-pressed", String(this.#times > 1));
    }
    const p = this.#bench.plan.plan, b = this.#box(), back = p.backdrop, s = this.#svg;
    Object.assign(this.#canvas.style, {left: `${b.left}px`, top: `${b.top}px`, width: `${b.width}px`, height: `${b.height}px`});
    this.#stage.style.setProperty("--wide", `${b.wide}px`);
    this.#stage.style.setProperty("--high", `${b.high}px`);
    clear(s, b.wide, b.high);
    document.getElementById("board-title").textContent = this.#title(p);
    const at = (x, y) => ({x: b.left + x * b.k, y: b.top + y * b.k});
    const judged = this.#bench.verdicts?.seams;
    for (const seam of judged ?? p.seams.map(l => ({...l, pieces: [{from_mm: l.from_mm, to_mm: l.to_mm, verdict: ""}]}))) {
      for (const piece of seam.pieces ?? []) {
        const [a, c] = seam.axis === "x" ? [at(seam.at_mm, piece.from_mm), at(seam.at_mm, piece.to_mm)]
          : [at(piece.from_mm, seam.at_mm), at(piece.to_mm, seam.at_mm)];
        add(s, "line", {x1: a.x, y1: a.y, x2: c.x, y2: c.y, class: `seam ${looks[piece.verdict] ?? "out"}`});
      }
    }
    const circles = [...this.#bench.plan.avoid_mm.map(c => ({x: c.Centre.x, y: c.Centre.y, r: c.RadiusMM}))];
    if (this.#drawing) {
      const c = this.#circle();
      circles.push({x: c.x_mm, y: c.y_mm, r: c.radius_mm});
    }
    for (const c of circles) {
      const m = at(c.x, c.y);
      add(s, "circle", {cx: m.x, cy: m.y, r: Math.max(2, c.r * b.k), class: "kept-clear"});
    }
    if (judged) this.#key(b);
    this.#arrangeSheets(p, at, b.k);
    this.#arrangeSeams(back, at, b);
    this.#arrangeCircles(at, b);
  }

  // Print and sheets, and the board where it is larger than the print.
  #title(p) {
    const size = (w, h) => `${short(w, 0)} × ${short(h, 0)} mm`, n = p.sheets.length;
    const larger = p.backdrop.width_mm > p.picture.width_mm + 1 || p.backdrop.height_mm > p.picture.height_mm + 1;
    const board = larger ? `, on a board of ${size(p.backdrop.width_mm, p.backdrop.height_mm)}` : "";
    return `The print, ${size(p.picture.width_mm, p.picture.height_mm)}${board}: ${n} ${n === 1 ? "sheet" : "sheets"} of ${p.backdrop.paper.name}`;
  }

  // What the lines mean, below the board.
  #key(b) {
    const y = Math.min(b.high - 8, b.top + b.height + 19);
    let x = b.left;
    for (const word of ["shows", "faint", "hidden"]) {
      add(this.#svg, "line", {x1: x, y1: y - 4, x2: x + 22, y2: y - 4, class: `seam ${word}`});
      add(this.#svg, "text", {x: x + 27, y, class: "q"}, word);
      x += 82;
    }
  }

  #arrangeSheets(p, at, k) {
    const names = p.sheets.map(s => s.name).join();
    if (names !== this.#names) {
      this.#names = names;
      for (const s of this.#sheets) s.remove();
      this.#sheets = p.sheets.map(sheet => {
        const s = document.createElement("button");
        s.type = "button";
        s.className = "sheet";
        s.textContent = sheet.name;
        s.setAttribute("aria-label", `Sheet ${sheet.name}: how to print it again`);
        s.addEventListener("click", () => this.#again(sheet.name));
        return s;
      });
      this.#stage.querySelector("svg").after(...this.#sheets);
    }
    p.sheets.forEach((sheet, i) => {
      const c = sheet.cell_mm, from = at(c.x, c.y), s = this.#sheets[i];
      Object.assign(s.style, {left: `${from.x}px`, top: `${from.y}px`, width: `${c.width * k}px`, height: `${c.height * k}px`});
      s.style.fontSize = c.width * k < 34 ? "0" : "";
    });
  }

  #again(name) {
    const says = document.getElementById("sheet"), code = document.createElement("code");
    code.textContent = `dropsheet reprint ${this.#bench.folderTyped} ${name}`;
    const sheet = this.#bench.plan.plan.sheets.find(s => s.name === name);
    says.replaceChildren(`${name}, page ${sheet.page} of sheets.pdf. Splashed? When the job is made: `, code);
  }

  // A seam that runs all across has one handle, at its end.
  #arrangeSeams(back, at, b) {
    const lines = [...back.column_edges_mm.slice(1, -1).map((mmAt, i) => ({name: `C${i + 1}`, axis: "x", at: mmAt})),
      ...back.row_edges_mm.slice(1, -1).map((mmAt, i) => ({name: `R${i + 1}`, axis: "y", at: mmAt}))];
    while (this.#seams.length > lines.length) this.#seams.pop().remove();
    lines.forEach((l, i) => {
      if (this.#seams[i]?.name !== l.name) {
        this.#seams[i]?.remove();
        this.#seams[i] = this.#newSeam(l.name, l.axis);
      }
      const h = this.#seams[i], put = this.#bench.words.all("seam-at").some(v => v.toUpperCase().startsWith(`${l.name}=`));
      // They stay in sight, however far the board is scrolled.
      const where = l.axis === "x" ? {x: at(l.at, 0).x, y: Math.max(b.top - 13, this.#stage.scrollTop + 13)}
        : {x: Math.max(b.left - 13, this.#stage.scrollLeft + 13), y: at(0, l.at).y};
      h.put(where.x, where.y, h.held || put ? `${l.name} ${readMM(l.at)}` : "");
    });
  }

  #newSeam(name, axis) {
    const w = this.#bench.words;
    const of = v => v.toUpperCase().startsWith(`${name}=`);
    const edges = () => this.#bench.plan.plan.backdrop[axis === "x" ? "column_edges_mm" : "row_edges_mm"];
    const value = {
      name: `seam ${name}`, axis, fine: 0.5, coarse: 10, min: 1, max: 100000,
      get: () => written(w.all("seam-at").find(of)?.split("=")[1]) ?? (this.#bench.known("seam-at", w.all("seam-at").findIndex(of)) ? edges()[Number(name.slice(1))] ?? NaN : NaN),
      say: v => `${sayMM(v)} from the board's ${axis === "x" ? "left" : "upper"} edge`,
      set: v => w.set("seam-at", [...w.all("seam-at").filter(s => !of(s)), `${name}=${mm(v)}`]),
      words: {get: () => (w.all("seam-at").find(of) ?? `=${mm(value.get())}`).split("=")[1],
        set: t => w.set("seam-at", [...w.all("seam-at").filter(s => !of(s)), ...(t ? [`${name}=${t}`] : [])])},
    };
    const h = new Handle(this.#stage, {shape: axis === "x" ? "bar" : "flat", tag: axis === "x" ? "below" : "right"}, [value],
      (dx, dy, [from]) => value.set(Math.round(2 * (from + (axis === "x" ? dx : dy) / this.#box().k)) / 2), this.#bench);
    h.name = name;
    h.box.title = "Drag the seam; Delete lets it slide again";
    h.box.addEventListener("keydown", e => {
      if (e.key === "Delete" || e.key === "Backspace") w.set("seam-at", w.all("seam-at").filter(s => !of(s)));
    });
    return h;
  }

  #arrangeCircles(at, b) {
    const circles = this.#bench.plan.avoid_mm;
    while (this.#circles.length > circles.length) this.#circles.pop().remove();
    while (this.#circles.length < circles.length) this.#circles.push(this.#newCircle(this.#circles.length));
    circles.forEach((c, i) => {
      const m = at(c.Centre.x, c.Centre.y);
      this.#circles[i].put(clamp(m.x, 10, b.wide - 10), clamp(m.y, 10, b.high - 10), "");
    });
  }

  #newCircle(i) {
    const w = this.#bench.words, now = () => w.all("avoid")[i]?.split(",").map(Number) ?? [NaN, NaN, NaN];
    const value = (k, name, axis, say, low) => ({
      name: `avoid ${i + 1}, ${name}`, axis, fine: 0.005, coarse: 0.05, min: low, max: 1, get: () => now()[k], say,
      set: v => { const to = now(); to[k] = v; w.setOne("avoid", i, to.map(n => short(n, 4)).join(",")); },
      words: {get: () => w.all("avoid")[i], set: t => w.setOne("avoid", i, t)},
    });
    const share = v => `${short(100 * v, 1)} per cent of the picture`;
    const h = new Handle(this.#stage, {shape: "cross"},
      [value(0, "right", "x", share, 0), value(1, "down", "y", share, 0), value(2, "radius", undefined, v => `${share(v)}'s width`, 0.005)],
      (dx, dy, from) => {
        // On the board the picture hangs turned: its right is on the left, and its foot on top, as the drop reverses.
        const p = this.#bench.plan.plan, k = this.#box().k, r = p.drop.reverses;
        const x = (r === "both" || r === "left-right" ? -1 : 1) * dx / k / p.picture.flat_width_mm;
        const y = (r === "both" || r === "up-down" ? -1 : 1) * dy / k / p.picture.flat_height_mm;
        w.setOne("avoid", i, [clamp(from[0] + x, 0, 1), clamp(from[1] + y, 0, 1), from[2]].map(n => short(n, 4)).join(","));
      }, this.#bench);
    h.box.title = "Seams keep out of here; Delete takes it away";
    h.box.addEventListener("keydown", e => {
      if (e.key === "Delete" || e.key === "Backspace") w.set("avoid", w.all("avoid").filter((_, j) => j !== i));
    });
    return h;
  }
}
