// The board from its printed side: sheets by their names, seams by their verdict, places that seams keep out of.
import {add, clear} from "./draw.js";
import {Handle, spread} from "./handle.js";
import {clamp, mm, readMM, sayMM, short, written} from "./lengths.js";
import {pixels} from "./records.js";

const target = 45; // pixels between handles, for a finger

// How far handles of seams stand apart for what points at them, and how deep a row of them is, in pixels.
const pointing = matchMedia("(pointer: coarse)");
const finger = {apart: target, deep: 44}, mouse = {apart: 24, deep: 26};

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

  // The handles of seams lie on rails, above the board and left of it: in as many rows as it takes for each to have its
  // own room, however many there are. Once the board is larger than its stage one row will do.
  #rails(times) {
    const {column_edges_mm: columns, row_edges_mm: rows} = this.#bench.plan.plan.backdrop, {apart, deep} = pointing.matches ? finger : mouse;
    const rowsOf = (edges, long) => clamp(Math.ceil((edges.length - 3) * apart / (long - apart)), 1, 4);
    const above = rowsOf(columns, this.#stage.clientWidth);
    this.#stage.style.setProperty("--more", `${(above - 1) * deep}px`); // where there is room for a longer stage
    if (times > 1) return {apart, deep, above: 1, beside: 1};
    return {apart, deep, above, beside: rowsOf(rows, this.#stage.clientHeight - above * deep)};
  }

  // Where the board lies on its stage, in pixels, and how many there are to a millimetre.
  #box(times = this.#times) {
    const b = this.#bench.plan.plan.backdrop, rails = this.#rails(times), edge = 26;
    const w = this.#stage.clientWidth, h = this.#stage.clientHeight, left = rails.beside * rails.deep, top = rails.above * rails.deep;
    const k = times * Math.min((w - left - edge) / b.width_mm, (h - top - edge) / b.height_mm), width = k * b.width_mm, height = k * b.height_mm;
    return {k, rails, width, height, left: Math.max(left, (w - width) / 2),
      top: rails.beside > 1 ? top : Math.max(top, (h - height) / 2), // a rail of several rows takes all there is below it
      wide: Math.max(w, width + left + edge), high: Math.max(h, height + top + edge)};
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
        s.addEventListener("click", e => this.#again(sheet.name, e));
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

  #again(name, e) {
    // A finger can't tell sheets apart that are smaller than it is: it makes the board larger there.
    if (e.detail && pointing.matches && this.#times === 1 && this.#enough() > 1) this.#enlarge(true, this.#place(e));
    const says = document.getElementById("sheet"), code = document.createElement("code");
    code.textContent = `dropsheet reprint ${this.#bench.folderTyped} ${name}`;
    const sheet = this.#bench.plan.plan.sheets.find(s => s.name === name);
    says.replaceChildren(`${name}, page ${sheet.page} of sheets.pdf. Splashed? When the job is made: `, code);
  }

  // A seam that runs all across has one handle, beyond its end.
  #arrangeSeams(back, at, b) {
    const lines = [...back.column_edges_mm.slice(1, -1).map((mmAt, i) => ({name: `C${i + 1}`, axis: "x", at: mmAt})),
      ...back.row_edges_mm.slice(1, -1).map((mmAt, i) => ({name: `R${i + 1}`, axis: "y", at: mmAt}))];
    while (this.#seams.length > lines.length) this.#seams.pop().remove();
    lines.forEach((l, i) => {
      if (this.#seams[i]?.name !== l.name) {
        this.#seams[i]?.remove();
        this.#seams[i] = this.#newSeam(l.name, l.axis);
      }
    });
    const seams = lines.map((l, i) => ({...l, handle: this.#seams[i], end: l.axis === "x" ? at(l.at, 0).x : at(0, l.at).y}));
    const {scrollLeft, scrollTop, clientWidth, clientHeight} = this.#stage, {above, beside, deep} = b.rails;
    // They stay in sight, however far the board is scrolled.
    this.#onRail(seams.filter(s => s.axis === "x"), above, [0, clientWidth], b, (along, off) => [along, Math.max(b.top - off, scrollTop + deep / 2)], b.top);
    this.#onRail(seams.filter(s => s.axis === "y"), beside, [b.top, clientHeight], b, (along, off) => [Math.max(b.left - off, scrollLeft + deep / 2), along], b.left);
  }

  // Puts handles of seams on a rail, whose rows they take in turn. While a hand is on one it goes with its seam, and the
  // others stay.
  #onRail(seams, rows, [low, high], b, place, edge) {
    const {apart, deep} = b.rails;
    if (!this.#seams.some(h => h.held) || seams.some(s => s.handle.off === undefined)) {
      const ends = seams.map(s => s.end), to = this.#times > 1 ? ends : spread(ends, apart / rows, low + apart / 2, high - apart / 2);
      seams.forEach((s, i) => { s.handle.off = to[i] - s.end; });
    }
    seams.forEach(({handle, name, axis, at, end}, i) => {
      const [x, y] = place(end + handle.off, (i % rows + 0.5) * deep), across = axis === "x";
      if (i % rows || Math.abs(handle.off) > 1) {
        // Straight between the handles of the rows before it, and aside only beyond them.
        const bend = rows === 1 ? [x, y] : across ? [x, edge - 12] : [edge - 12, y];
        const points = [[x, y], bend, across ? [end, edge] : [edge, end]];
        add(this.#svg, "polyline", {points: points.join(" "), class: `leader${handle.held ? " held" : ""}`});
      }
      const put = this.#bench.words.all("seam-at").some(v => v.toUpperCase().startsWith(`${name}=`));
      handle.box.classList.toggle("put", put);
      // Where the board is scrolled to, a row's seam may end beneath the rail of the columns: that one takes the touches.
      handle.box.classList.toggle("under", axis === "y" && this.#times > 1 && !handle.held && Math.abs(y - this.#stage.scrollTop - deep / 2) < apart);
      handle.put(x, y, handle.held || put && rows === 1 ? `${name} ${readMM(at)}` : "");
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
