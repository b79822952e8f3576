// Handles: things that are moved by hand, by keys, or by typing. A handle has one slider for each value that it moves.
import {clamp} from "./lengths.js";

/**
 * A value that a handle moves:
 *   name    what it is called, its flag's word
 *   get()   the number now; NaN while it is not known
 *   set(v)  says it anew
 *   say(v)  the number in words with its unit
 *   fine, coarse  steps of the arrows and of the Page keys; times: they multiply
 *   min, max
 *   axis    "x" or "y": arrows along it move the handle that way; down: the value grows downward or leftward
 *   words   what it is typed as: get(), set(text); without it the value can't be typed
 * @typedef {object} Value
 */

let typing = null; // the one entry that is open

const standing = new WeakMap(); // on each stage, its handles

const reach = 22; // pixels from a handle's middle to its side

export class Handle {
  #grab = null;
  #tag;
  #side;

  /**
   * @param stage  the element that it stands on
   * @param look   shape, and where its tag stands
   * @param values the values that it moves
   * @param drag   called with how far the hand has come, in pixels, and the numbers at the start
   * @param bench  session that words belong to: keep() and restore(kept)
   */
  constructor(stage, {shape = "round", tag = "right", shy = false}, values, drag, bench) {
    this.values = values;
    this.drag = drag;
    this.bench = bench;
    this.#side = tag;
    this.box = document.createElement("div");
    this.box.className = "handle";
    this.box.dataset.shape = shape;
    const grip = document.createElement("div");
    grip.className = "grip";
    this.#tag = document.createElement("span");
    this.#tag.className = `tag${shy ? " shy" : ""}`;
    this.#tag.setAttribute("aria-hidden", "true");
    this.sliders = values.map(v => {
      const s = document.createElement("div");
      s.className = "slider";
      s.setAttribute("role", "slider");
      s.setAttribute("aria-label", v.name);
      s.setAttribute("aria-orientation", v.axis === "y" ? "vertical" : "horizontal");
      s.tabIndex = 0;
      s.addEventListener("keydown", e => this.#key(e, v));
      s.addEventListener("focus", () => { this.kept ??= bench.keep(); this.#show(); });
      s.addEventListener("blur", () => { if (!typing && !this.box.matches(":focus-within")) this.kept = null; });
      return s;
    });
    this.box.append(...this.sliders, grip, this.#tag);
    this.box.addEventListener("pointerdown", e => this.#press(e));
    this.box.addEventListener("pointermove", e => this.#move(e));
    for (const end of ["pointerup", "pointercancel", "lostpointercapture"]) this.box.addEventListener(end, () => this.#release());
    this.box.addEventListener("dblclick", e => { const h = this.#nearest(e); h.#type(h.values[0]); });
    stage.append(this.box);
    if (!standing.has(stage)) standing.set(stage, new Set());
    standing.get(stage).add(this);
  }

  /** Whether a hand is on it. */
  get held() { return this.#grab !== null; }

  /** Puts it to a place of its stage, in pixels, with a word or two beside it. Where its thing is elsewhere a line leads there. */
  put(x, y, tag, thing = {x, y}) {
    this.box.style.left = `${x}px`;
    this.box.style.top = `${y}px`;
    const lead = Math.hypot(thing.x - x, thing.y - y);
    this.box.classList.toggle("led", lead > 12);
    this.box.style.setProperty("--lead", `${lead}px`);
    this.box.style.setProperty("--way", `${Math.atan2(thing.y - y, thing.x - x)}rad`);
    this.tag = tag;
    this.#show();
    // A tag that would stick out of its stage goes to another side.
    const room = this.#tag.offsetWidth + 40, wide = this.box.parentElement.clientWidth;
    const side = this.#side === "right" && x > wide - room ? "above" : this.#side === "left" && x < room ? "right" : this.#side;
    this.#tag.classList.remove("left", "right", "above", "below");
    this.#tag.classList.add(side);
  }

  remove() {
    standing.get(this.box.parentElement).delete(this);
    this.box.remove();
  }

  // Where handles lie over one another, the one whose middle is nearest is meant, not the one that lies on top.
  #nearest(e) {
    const off = h => {
      const b = h.box.getBoundingClientRect(), x = e.clientX - b.left - b.width / 2, y = e.clientY - b.top - b.height / 2;
      return Math.max(Math.abs(x), Math.abs(y)) > reach || h.box.classList.contains("under") ? Infinity : Math.hypot(x, y);
    };
    let nearest = this;
    for (const h of standing.get(this.box.parentElement)) if (off(h) < off(nearest)) nearest = h;
    return nearest;
  }

  #show() {
    this.#tag.textContent = this.tag ?? "";
    this.#tag.hidden = !this.tag;
    this.values.forEach((v, i) => {
      const s = this.sliders[i], now = v.get();
      if (!Number.isFinite(now)) return;
      s.setAttribute("aria-valuenow", String(Number(now.toPrecision(7))));
      s.setAttribute("aria-valuetext", v.say(now));
      s.setAttribute("aria-valuemin", String(v.min));
      s.setAttribute("aria-valuemax", String(v.max));
    });
  }

  #key(e, v) {
    if (e.ctrlKey || e.metaKey || e.altKey) return;
    if (e.key === "Enter") { e.preventDefault(); this.#type(v); return; }
    if (e.key === "0") { e.preventDefault(); if (this.kept) this.bench.restore(this.kept); return; }
    const to = {Home: v.min, End: v.max}[e.key];
    if (to !== undefined) { e.preventDefault(); this.#say(v, to); return; }
    const page = {PageUp: 1, PageDown: -1}[e.key];
    const way = {ArrowRight: ["x", 1], ArrowLeft: ["x", -1], ArrowUp: ["y", -1], ArrowDown: ["y", 1]}[e.key];
    if (!page && !way) return;
    e.preventDefault();
    if (page) { this.#step(v, page * v.coarse); return; }
    // Arrows across go to the other value of a handle that has two.
    const other = v.axis && v.axis !== way[0] && this.values.find(o => o.axis === way[0]);
    const moved = other || v;
    if (other) this.sliders[this.values.indexOf(other)].focus();
    let sign = way[1];
    if (moved.axis === way[0] ? moved.backward : way[0] === "y") sign = -sign;
    this.#step(moved, sign * moved.fine * (e.shiftKey ? 10 : 1));
  }

  #step(v, by) { this.#say(v, v.times ? v.get() * (1 + v.times) ** by : v.get() + by); }

  #say(v, to) {
    if (!Number.isFinite(to)) return; // what was typed just now is not known yet
    v.set(clamp(to, v.min, v.max));
    this.#show();
  }

  #press(e) {
    if (e.button !== 0 || e.target.closest("input")) return;
    e.preventDefault();
    this.#nearest(e).#hold(e);
  }

  #hold(e) {
    this.kept ??= this.bench.keep();
    this.sliders[0].focus({preventScroll: true, focusVisible: false});
    this.box.setPointerCapture(e.pointerId);
    this.box.classList.add("held");
    this.#grab = {x: e.clientX, y: e.clientY, from: this.values.map(v => v.get())};
  }

  #move(e) {
    if (!this.#grab?.from.every(Number.isFinite)) return;
    this.drag(e.clientX - this.#grab.x, e.clientY - this.#grab.y, this.#grab.from, e);
    this.#show();
  }

  #release() {
    if (!this.#grab) return;
    this.#grab = null;
    this.box.classList.remove("held");
    this.bench.rest();
  }

  // A value typed, with the units of the command line.
  #type(v) {
    if (!v.words) return;
    typing?.remove();
    const input = typing = document.createElement("input");
    input.className = "typed";
    input.setAttribute("aria-label", v.name);
    input.value = v.words.get();
    const stage = this.box.parentElement, wide = 200;
    input.style.left = `${clamp(this.box.offsetLeft, 0, Math.max(0, stage.clientWidth - wide))}px`;
    input.style.top = `${clamp(this.box.offsetTop + 40, 0, Math.max(0, stage.clientHeight - 40))}px`;
    const back = this.sliders[this.values.indexOf(v)];
    let open = true;
    const close = () => {
      if (!open) return;
      open = false;
      input.remove();
      if (typing === input) typing = null;
    };
    input.addEventListener("keydown", e => {
      e.stopPropagation();
      if (e.key === "Enter") { v.words.set(input.value.trim()); close(); back.focus(); }
      if (e.key === "Escape") { close(); back.focus(); }
    });
    input.addEventListener("blur", close);
    stage.append(input);
    input.focus();
    input.select();
  }
}

/** Moves places in a row apart, each as little as may be, until there is a pitch between them, between two ends. */
export function spread(places, pitch, low, high) {
  // Taken off what those before it need, each is to stand no further back than the one before: those that would, all
  // stand at their mean.
  const groups = [];
  places.forEach((at, i) => {
    let g = {sum: at - i * pitch, n: 1};
    while (groups.length && groups.at(-1).sum / groups.at(-1).n > g.sum / g.n) {
      const before = groups.pop();
      g = {sum: before.sum + g.sum, n: before.n + g.n};
    }
    groups.push(g);
  });
  const last = Math.max(low, high - (places.length - 1) * pitch);
  return groups.flatMap(g => new Array(g.n).fill(clamp(g.sum / g.n, low, last))).map((at, i) => at + i * pitch);
}

const places = [[0, 0]]; // where a handle may stand, from its thing, the nearest first
for (const far of [46, 92]) {
  for (const [x, y] of [[1, 0], [-1, 0], [0, 1], [0, -1], [1, 1], [-1, 1], [1, -1], [-1, -1]]) places.push([x * far, y * far]);
}

/**
 * Puts handles of one stage to their things, {handle, x, y, tag} each, or beside them where another stands too near for a
 * finger. One that is held stays at its thing.
 */
export function putApart(all, stage) {
  const taken = [], w = stage.clientWidth, h = stage.clientHeight;
  const free = (x, y) => taken.every(t => Math.max(Math.abs(t.x - x), Math.abs(t.y - y)) >= 2 * reach);
  for (const {handle, x, y, tag} of [...all].sort((a, b) => b.handle.held - a.handle.held)) {
    const [dx, dy] = handle.held ? [0, 0] : places.find(([dx, dy]) => free(x + dx, y + dy) &&
      (!dx && !dy || x + dx >= reach && x + dx <= w - reach && y + dy >= reach && y + dy <= h - reach)) ?? [0, 0];
    taken.push({x: x + dx, y: y + dy});
    handle.put(x + dx, y + dy, tag, {x, y});
  }
}
