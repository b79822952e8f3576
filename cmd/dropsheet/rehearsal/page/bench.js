// The bench, from the side or from above: camera, drop, board and lamps on one axis, drawn to scale.
import {add, clear} from "./draw.js";
import {Handle, putApart} from "./handle.js";
import {clamp, mm, readMM, sayMM, sayWay, short, writtenPlace} from "./lengths.js";
import {glimpse} from "./looking.js";

const flagOf = value => value.name.replace(" ", "-");

export class Bench {
  #bench;
  #stage = document.getElementById("bench");
  #svg = this.#stage.querySelector("svg");
  #above = false;
  #handles = {};
  #lamps = [];
  #scale = null; // kept while a hand is on a handle, so that nothing slips from under it

  constructor(bench) {
    this.#bench = bench;
    const w = bench.words;
    const length = (flag, name, plan) => ({
      name, fine: 1, coarse: 50, min: 1, max: 100000, get: () => bench.told(flag, plan), say: v => sayMM(v),
      set: v => w.set(flag, mm(v)), words: {get: () => w.get(flag) || mm(plan()), set: t => w.set(flag, t)},
    });
    const camera = length("camera-distance", "camera distance", () => bench.plan.plan.drop.camera_distance_mm);
    const board = length("distance", "distance", () => bench.plan.plan.drop.distance_mm);
    const say = board.say;
    board.say = v => `${say(v)}: ${bench.plan.sheets}`;
    this.#handles.camera = new Handle(this.#stage, {tag: "above"}, [camera],
      (dx, dy, [from]) => camera.set(Math.max(1, Math.round(from - dx / this.#scale.k))), bench);
    this.#handles.board = new Handle(this.#stage, {shape: "bar", tag: "right"}, [board], (dx, dy, [from]) => {
      const to = Math.max(1, from + dx / this.#scale.k);
      const caught = bench.figures?.catches.find(c => Math.abs(c.distance_mm - to) * this.#scale.k < 6);
      board.set(caught ? caught.distance_mm : Math.round(to));
    }, bench);
    // The drop moves between camera and board: what one distance gains the other loses.
    const between = (one, other, backward, mmOf) => ({
      name: `${one.name}, the drop moved`, axis: "x", backward, fine: 1, coarse: 50, min: 1, max: 100000, get: one.get,
      say: v => `${sayMM(v)}, and ${other.name} ${sayMM(other.get())}`,
      set: v => {
        const all = one.get() + other.get(), to = Math.max(1, Math.min(v, all - 1));
        if (Number.isFinite(all)) w.setAll([[flagOf(one), mm(to)], [flagOf(other), mm(all - to)]]);
      },
      // What is typed, in whatever unit, the server reads.
      words: {get: one.words.get, set: t => this.#typed(flagOf(one), t, p => {
        w.setAll([[flagOf(one), mm(mmOf(p), 3)], [flagOf(other), mm(one.get() + other.get() - mmOf(p), 3)]]);
      })},
    });
    const away = between(camera, board, false, p => p.drop.camera_distance_mm);
    const toward = between(board, camera, true, p => p.drop.distance_mm);
    this.#handles.drop = new Handle(this.#stage, {tag: "above"}, [away, toward],
      (dx, dy, [from]) => away.set(Math.round(from + dx / this.#scale.k)), bench);
    document.getElementById("view").addEventListener("click", e => {
      this.#above = !this.#above;
      e.currentTarget.textContent = this.#above ? "From the side" : "From above";
      document.getElementById("bench-title").textContent = `The bench from ${this.#above ? "above" : "the side"}`;
      this.arrange();
    });
    document.getElementById("more-light").addEventListener("click", () => this.#addLamp());
    document.getElementById("less-light").addEventListener("click", () => this.#takeLamp());
  }

  // Tells what the plan would be if a flag were said so, in whatever unit: the server reads it, and says what is wrong.
  async #typed(flag, text, tell) {
    try {
      for await (const r of glimpse(this.#bench.words.listWith(flag, text), 64)) {
        if (r.kind === "error") this.#bench.fault(r.text, r.hint, r.flag);
        else if (r.kind === "plan") tell(r.plan);
        return;
      }
    } catch { this.#bench.gone(); }
  }

  // The first lamp comes to stand up left of the board, the second as its twin, and each after that a little further up.
  #addLamp() {
    const w = this.#bench.words, b = this.#bench.plan.plan.backdrop, lamps = this.#places(), off = Math.round(Math.max(b.width_mm, 500) / 10) * 10;
    const last = lamps.at(-1);
    const to = !last ? [-off, 0, off] : lamps.length === 1 ? [-last[0] || off, last[1], last[2]] : [last[0], last[1] - 100, last[2]];
    w.set("lamp", [...w.all("lamp"), this.#word(to)]);
    this.#bench.says(`lamp ${w.all("lamp").length} added`);
  }

  #takeLamp() {
    const lamps = this.#bench.words.all("lamp");
    if (!lamps.length) return;
    // What was told of each lamp in their order goes with it.
    for (const flag of ["lamp-lux", "lamp-size", "lamp-beam", "lamp-aim"]) {
      const told = this.#bench.words.all(flag);
      if (lamps.length === 1 || told.length === lamps.length) this.#bench.words.set(flag, lamps.length === 1 ? [] : told.slice(0, -1));
    }
    this.#bench.words.set("lamp", lamps.slice(0, -1));
    this.#bench.says(`lamp ${lamps.length} taken away`);
  }

  // Where lamps stand: as the page wrote it, or as the plan has it. Of one that was typed just now nothing is known yet.
  #places() {
    const planned = this.#bench.plan?.plan.lamps_mm ?? [];
    const all = this.#bench.words.all("lamp").map((word, i) => writtenPlace(word) ?? (planned[i] && this.#bench.known("lamp", i) && [planned[i].x, planned[i].y, planned[i].z]));
    const unknown = all.findIndex(place => !place);
    return unknown < 0 ? all : all.slice(0, unknown);
  }

  #word(place) { return place.map(v => mm(v, 0)).join(","); }

  /** Draws the bench and puts its handles. */
  arrange() {
    const p = this.#bench.plan?.plan;
    if (!p) return;
    const w = this.#stage.clientWidth, h = this.#stage.clientHeight, lamps = this.#places();
    const cam = p.drop.camera_distance_mm, dist = p.drop.distance_mm;
    const half = (this.#above ? p.backdrop.width_mm : p.backdrop.height_mm) / 2;
    const across = l => this.#above ? l[0] : l[1]; // up on the drawing is up, or the far side: left of the board
    if (!this.#scale || !this.#held()) {
      const up = Math.max(half, 60, ...lamps.map(l => -across(l))), down = Math.max(half, 60, ...lamps.map(across));
      const left = Math.min(-cam, ...lamps.map(l => dist - l[2]));
      const body = 70; // pixels that the camera takes up behind its lens
      const k = Math.min((w - 2 * body) / (dist - left), (h - 96) / (up + down));
      this.#scale = {k, x0: (w - (dist - left) * k) / 2 - left * k, y0: 36 + (h - 96 - (up + down) * k) / 2 + up * k};
    }
    const {k, x0, y0} = this.#scale, at = (z, y) => ({x: x0 + z * k, y: y0 + y * k});
    const s = this.#svg, line = (a, b, more) => add(s, "line", {x1: a.x, y1: a.y, x2: b.x, y2: b.y, ...more});
    clear(s, w, h);
    const lens = at(-cam, 0), drop = at(0, 0), board = at(dist, 0), r = Math.max(6, p.drop.diameter_mm / 2 * k);
    line({x: 6, y: y0}, {x: w - 6, y: y0}, {stroke: "var(--line)", "stroke-dasharray": "4 5"});
    // What the drop sees of the board, and the camera of the drop.
    const reach = Math.min(p.picture.reach_mm, half) * k;
    for (const way of [-1, 1]) {
      line(lens, {x: drop.x, y: y0 + way * r}, {stroke: "var(--mark)", opacity: .45});
      line({x: drop.x, y: y0 + way * r}, {x: board.x, y: y0 - way * reach}, {stroke: "var(--mark)", opacity: .45});
    }
    add(s, "path", {d: `M${lens.x - 58} ${y0 - 17}h34v34h-34zM${lens.x - 24} ${y0 - 11}h24v22h-24z`, fill: "none", stroke: "var(--quiet)"});
    add(s, "circle", {cx: drop.x, cy: y0, r, fill: "none", stroke: "var(--say)", "stroke-width": 2});
    line(at(dist, -half), at(dist, half), {stroke: "var(--say)", "stroke-width": 4});
    for (const l of lamps) line(at(dist - l[2], across(l)), board, {stroke: "var(--mark)", "stroke-dasharray": "1 5"});
    const ruler = h - 30;
    const room = 66, narrow = Math.min(drop.x - lens.x, board.x - drop.x) < room; // for a length in figures
    if (narrow) add(s, "text", {x: (lens.x + board.x) / 2, y: ruler + 19, "text-anchor": "middle", class: "q"}, `${short(cam, 1)} + ${readMM(dist)}`);
    for (const [a, b, mmLong] of [[lens, drop, cam], [drop, board, dist]]) {
      line({x: a.x, y: ruler}, {x: b.x, y: ruler}, {stroke: "var(--quiet)"});
      for (const e of [a, b]) line({x: e.x, y: ruler - 5}, {x: e.x, y: ruler + 5}, {stroke: "var(--quiet)"});
      if (!narrow) add(s, "text", {x: (a.x + b.x) / 2, y: ruler + 19, "text-anchor": "middle", class: "q"}, readMM(mmLong));
    }
    // Right of the board no lamp stands; where there is no room its size is above it.
    const beside = w - board.x > 150, top = Math.max(16, y0 - half * k - (beside ? -10 : 10));
    add(s, "text", {x: beside ? board.x + 10 : Math.min(board.x, w - 8), y: top, "text-anchor": beside ? "start" : "end"},
      `board ${short(p.backdrop.width_mm, 0)} × ${short(p.backdrop.height_mm, 0)}`);
    const caught = this.#bench.figures?.catches.find(c => Math.abs(c.distance_mm - dist) < 0.5);
    const {camera: c, drop: d, board: b} = this.#handles;
    this.#catches(at, half);
    putApart([{handle: c, x: lens.x, y: y0, tag: ""},
      {handle: b, x: board.x, y: y0, tag: !b.held ? "" : caught ? `${caught.sheets} sheets at ${readMM(caught.distance_mm)}` : readMM(dist)},
      {handle: d, x: drop.x, y: y0, tag: d.held ? `${readMM(cam)} + ${readMM(dist)}` : ""},
      ...this.#placeLamps(lamps, at, dist, across)], this.#stage);
    document.getElementById("less-light").hidden = !this.#bench.words.has("lamp");
  }

  #held() { return [...Object.values(this.#handles), ...this.#lamps].some(h => h.held); }

  // Marks where a number of sheets just does, while the board is in the hand.
  #catches(at, half) {
    if (!this.#handles.board.held) return;
    for (const c of this.#bench.figures?.catches ?? []) {
      const x = at(c.distance_mm, 0).x;
      if (x < 0 || x > this.#stage.clientWidth) continue;
      add(this.#svg, "path", {d: `M${x} ${at(0, half).y + 2}v10`, stroke: "var(--good)", "stroke-width": 2});
    }
  }

  // Where the lamps' handles stand, and what is beside them.
  #placeLamps(lamps, at, dist, across) {
    while (this.#lamps.length > lamps.length) this.#lamps.pop().remove();
    while (this.#lamps.length < lamps.length) this.#lamps.push(this.#newLamp(this.#lamps.length));
    const places = lamps.map(l => {
      const p = at(dist - l[2], across(l)), w = this.#stage.clientWidth, h = this.#stage.clientHeight;
      return {x: clamp(p.x, 16, w - 16), y: clamp(p.y, 16, h - 16)};
    });
    // Of lamps that are behind one another the first tells of all.
    const near = (a, b) => Math.hypot(a.x - b.x, a.y - b.y) < 20;
    return places.map((p, i) => {
      const here = places.flatMap((q, j) => near(p, q) ? [j + 1] : []);
      return {handle: this.#lamps[i], ...p, tag: here[0] === i + 1 ? `${here.length > 1 ? "lamps" : "lamp"} ${here.join(", ")}` : ""};
    });
  }

  #newLamp(i) {
    const bench = this.#bench, place = () => this.#places()[i];
    const say = to => bench.words.setOne("lamp", i, this.#word(to));
    // Arrows up and down go with what is up and down on the drawing.
    const axis = k => k === 2 ? "x" : k === (this.#above ? 0 : 1) ? "y" : undefined;
    const value = (k, name, words, min) => ({
      name: `lamp ${i + 1}, ${name}`, get axis() { return axis(k); }, backward: k === 2, fine: 10, coarse: 100, min, max: 100000, get: () => place()?.[k] ?? NaN,
      say: words, set: v => { const to = place(); if (to) { to[k] = v; say(to); } },
      words: {get: () => bench.words.all("lamp")[i], set: t => bench.words.setOne("lamp", i, t)},
    });
    const values = [value(2, "toward the camera", v => `${sayMM(v, 0)} before the board`, 1),
      value(1, "down", v => sayWay(v, "down", "up", 0), -100000),
      value(0, "right", v => sayWay(v, "right", "left", 0), -100000)];
    return new Handle(this.#stage, {shape: "lamp", tag: "above"}, values, (dx, dy, from) => {
      const k = this.#scale.k, to = [from[2], from[1], Math.max(1, from[0] - dx / k)];
      to[this.#above ? 0 : 1] += dy / k;
      say(to.map(v => Math.round(v / 5) * 5 || (v > 0 ? 5 : 0)));
    }, bench);
  }
}
