// The frame: what the camera will record, with handles on the drop and on the picture in it.
import {Handle} from "./handle.js";
import {clamp, mm, readMM, sayMM, sayWay, short, writtenPlace} from "./lengths.js";
import {pixels} from "./records.js";

const margin = 24; // handles stay so far inside the frame, in pixels

// About a small drop handles stand off it, so far from its middle that each has its own 44 pixels: the turn, which goes
// all round, within the others.
const apart = {turn: 46, others: 92};

// A place moved on, away from a middle, until it is that far off.
function awayFrom(middle, at, least) {
  const off = Math.hypot(at.x - middle.x, at.y - middle.y);
  if (off >= least || off === 0) return at;
  return {x: middle.x + (at.x - middle.x) * least / off, y: middle.y + (at.y - middle.y) * least / off};
}

export class Frame {
  #bench;
  #stage = document.getElementById("frame");
  #canvas = document.getElementById("picture");
  #handles = {};
  #drops = [];
  #kept = document.createElement("canvas"); // the same, to be compared
  #wiped = null; // what is held over it, and how far
  shown = null; // the frame that it shows, as it came

  constructor(bench) {
    this.#bench = bench;
    const w = bench.words, told = (flag, plan) => bench.told(flag, plan);
    const length = (flag, name, plan, fine, coarse, max, decimals = 2) => ({
      name, fine, coarse, min: fine, max, get: () => told(flag, plan), say: v => sayMM(v, decimals),
      set: v => w.set(flag, mm(v, decimals)), words: {get: () => w.get(flag) || mm(plan(), decimals), set: t => w.set(flag, t)},
    });
    const add = (name, look, values, drag) => { this.#handles[name] = new Handle(this.#stage, look, values, drag, bench); };

    const drop = length("drop", "drop", () => bench.plan.plan.drop.diameter_mm, 0.05, 0.5, 60);
    add("drop", {}, [drop], (dx, dy, [from]) => {
      const level = bench.plan.plan.drop.body === "level-rod";
      drop.set(Math.max(0.05, from + 2 * (level ? -dy : dx) / this.#pxPerMM()));
    });
    const frame = length("frame-width", "frame width", () => bench.plan.plan.camera.frame_width_mm, 0.1, 1, 1000);
    add("frame", {shape: "corner", tag: "left"}, [frame], (dx, dy, [from]) => {
      frame.set(Math.max(0.1, from * (1 + 2 * dx / this.#box().width)));
    });
    const share = (i, name, axis) => ({
      name, axis, fine: 0.005, coarse: 0.1, min: 0, max: 1,
      get: () => this.#centre()[i],
      say: v => `${short(100 * v, 1)} per cent of the picture`,
      set: v => { const c = this.#centre(); c[i] = v; w.set("centre", c.map(x => short(x, 4)).join(",")); },
      words: {get: () => w.get("centre") || "0.5,0.5", set: t => w.set("centre", t)},
    });
    const centre = [share(0, "centre, right", "x"), share(1, "centre, down", "y")];
    add("centre", {shape: "cross", tag: "below", shy: true}, centre, (dx, dy, from) => {
      // The picture goes with the hand, and so its middle the other way; turned as it is.
      const a = -this.#turn() * Math.PI / 180, p = bench.plan.picture_in_drop_mm, k = this.#pxPerMM();
      const x = (dx * Math.cos(a) - dy * Math.sin(a)) / k / p.width, y = (dx * Math.sin(a) + dy * Math.cos(a)) / k / p.height;
      w.set("centre", [from[0] - x, from[1] - y].map(v => short(clamp(v, 0, 1), 4)).join(","));
    });
    const turn = {
      name: "turn", fine: 1, coarse: 15, min: -180, max: 180, get: () => this.#turn(),
      say: v => v === 0 ? "not turned" : `${short(Math.abs(v), 1)} degrees ${v > 0 ? "clockwise" : "anticlockwise"}`,
      set: v => w.set("turn", v === 0 ? "" : short(v, 1)), words: {get: () => w.get("turn") || "0", set: t => w.set("turn", t)},
    };
    add("turn", {shape: "tick", tag: "above", shy: true}, [turn], (dx, dy, from, e) => {
      const b = this.#stage.getBoundingClientRect(), c = this.#at(bench.plan.drops_mm[0]);
      const to = Math.atan2(e.clientX - b.left - c.x, c.y - (e.clientY - b.top)) * 180 / Math.PI;
      turn.set(Math.abs(to) < 2 ? 0 : Math.round(to)); // upright is a catch
    });
    const fill = {
      name: "fill", fine: 0.005, coarse: 0.05, min: 0.05, max: 0.98, get: () => told("fill", () => bench.plan.plan.picture.fill),
      say: v => `${short(100 * v, 1)} per cent of the drop's radius`, set: v => w.set("fill", short(v, 4)),
      words: {get: () => w.get("fill") || short(bench.plan.plan.picture.fill, 4), set: t => w.set("fill", t)},
    };
    add("fill", {shape: "diamond", tag: "left", shy: true}, [fill], (dx, dy, [from], e) => {
      const b = this.#stage.getBoundingClientRect(), c = this.#at(bench.plan.drops_mm[0]), o = bench.plan.outline_mm, k = this.#pxPerMM();
      const share = (clientX, clientY) => {
        const x = (clientX - b.left - c.x) / k, y = (clientY - b.top - c.y) / k;
        return Math.hypot(o.width ? x / o.width : 0, o.height ? y / o.height : 0);
      };
      fill.set(clamp(from + share(e.clientX, e.clientY) - share(e.clientX - dx, e.clientY - dy), fill.min, fill.max));
    });
  }

  #turn() { return Number(this.#bench.words.get("turn")) || 0; }
  #centre() {
    const said = this.#bench.words.get("centre").split(",").map(Number);
    return said.length === 2 && said.every(Number.isFinite) ? said : [0.5, 0.5];
  }

  /** The pixels that the screen has for the frame's longer side. */
  get sidePx() {
    const b = this.#box();
    return Math.round(Math.max(b.width, b.height) * Math.min(devicePixelRatio || 1, 2)) || 640;
  }

  // Where the frame lies on its stage, whose shape may be another.
  #box() {
    const w = this.#stage.clientWidth, h = this.#stage.clientHeight, c = this.#bench.plan?.plan.camera;
    const shape = c ? c.width_px / c.height_px : 1.5;
    const width = Math.min(w, h * shape), height = width / shape;
    return {left: (w - width) / 2, top: (h - height) / 2, width, height};
  }

  #pxPerMM() { return this.#box().width / this.#bench.plan.plan.camera.frame_width_mm; }

  #at({x, y}) {
    const b = this.#box(), k = this.#pxPerMM();
    return {x: b.left + b.width / 2 + x * k, y: b.top + b.height / 2 + y * k};
  }

  /** Shows a frame that was rendered. */
  show(r) {
    if (this.#canvas.width !== r.width_px || this.#canvas.height !== r.height_px) {
      [this.#canvas.width, this.#canvas.height] = [r.width_px, r.height_px];
    }
    this.shown = {key: r.key, rung: r.rung};
    const picture = pixels(r);
    this.#canvas.getContext("2d").putImageData(picture, 0, 0);
    [this.#kept.width, this.#kept.height] = [r.width_px, r.height_px];
    this.#kept.getContext("2d").putImageData(picture, 0, 0);
    if (this.#wiped) this.wipe(this.#wiped.other, this.#wiped.share); // a hand still holds it there
    this.#place();
  }

  /** The frame as it is shown, as a picture of its own. */
  copy() {
    const c = document.createElement("canvas");
    [c.width, c.height] = [this.#kept.width, this.#kept.height];
    if (c.width) c.getContext("2d").drawImage(this.#kept, 0, 0);
    return c;
  }

  /** Shows another picture left of a share of the frame's width; nothing where there is none. */
  wipe(other, share) {
    this.#wiped = other && {other, share};
    const g = this.#canvas.getContext("2d"), w = this.#canvas.width, h = this.#canvas.height;
    g.drawImage(this.#kept, 0, 0, w, h);
    if (!other) return;
    const x = Math.round(w * share);
    if (x > 0) g.drawImage(other, 0, 0, other.width * share, other.height, 0, 0, x, h);
    g.fillStyle = getComputedStyle(document.documentElement).getPropertyValue("--mark");
    g.fillRect(x - 1, 0, Math.max(2, w / 400), h);
  }

  /** The share of the frame's width that a place of the window is at. */
  shareAt(clientX) {
    const s = this.#stage.getBoundingClientRect(), b = this.#box();
    return clamp((clientX - s.left - b.left) / b.width, 0, 1);
  }

  /** Shows a picture as large as a frame, of the passage. */
  play(canvas) { this.#canvas.getContext("2d").drawImage(canvas, 0, 0, this.#canvas.width, this.#canvas.height); }

  #place() {
    const c = this.#bench.plan?.plan.camera;
    if (c) this.#stage.style.aspectRatio = String(clamp(c.width_px / c.height_px, 0.7, 2.2));
    const b = this.#box();
    Object.assign(this.#canvas.style, {left: `${b.left}px`, top: `${b.top}px`, width: `${b.width}px`, height: `${b.height}px`});
  }

  /** Puts the handles where the plan has their things. */
  arrange() {
    const p = this.#bench.plan;
    if (!p) return;
    this.#place();
    const b = this.#box(), drops = p.drops_mm, o = p.outline_mm, first = drops[0], c = p.plan.camera;
    const half = {x: o.width || c.frame_width_mm / 2, y: o.height || c.frame_height_mm / 2};
    const middle = this.#at(first);
    const put = (name, at, tag, off = 0) => {
      const to = this.#inside(awayFrom(middle, at, off), b);
      this.#handles[name].put(to.x, to.y, tag, off ? at : to);
    };
    const d = p.plan.drop, level = d.body === "level-rod";
    put("drop", this.#at(level ? {x: first.x, y: first.y - half.y} : {x: first.x + half.x, y: first.y}), `drop ${readMM(d.diameter_mm, 2)}`, apart.others);
    put("frame", {x: b.left + b.width, y: b.top}, `frame ${readMM(c.frame_width_mm, 2)}`);
    put("centre", middle, `centre ${this.#centre().map(v => short(v, 3)).join(", ")}`);
    const a = this.#turn() * Math.PI / 180, u = p.plan.picture.fill;
    const ring = (angle, share) => this.#at({x: first.x + share * half.x * Math.sin(angle), y: first.y - share * half.y * Math.cos(angle)});
    put("turn", ring(a, u * 0.62), `turn ${short(this.#turn(), 1)}°`, apart.turn);
    put("fill", ring(d.body === "upright-rod" ? -Math.PI / 2 : d.body === "level-rod" ? Math.PI : -2.2, u), `fill ${short(100 * u, 1)} %`, apart.others);
    this.#arrangeDrops(drops, half, b);
    const picture = document.getElementById("picture");
    picture.setAttribute("aria-label", `The frame, ${readMM(c.frame_width_mm, 2)} wide: the drop ${readMM(d.diameter_mm, 2)} across, the picture in it`);
  }

  // Each drop has a handle at its foot that says where it falls.
  #arrangeDrops(drops, half, b) {
    while (this.#drops.length > drops.length) this.#drops.pop().remove();
    while (this.#drops.length < drops.length) this.#drops.push(this.#newDrop(this.#drops.length));
    drops.forEach((at, i) => {
      const foot = this.#at({x: at.x, y: at.y + half.y});
      const on = at.x === 0 && at.y === 0;
      const tag = on ? "falls on the axis" : `falls ${short(at.x, 2)}, ${readMM(at.y, 2)}`;
      const to = this.#inside(awayFrom(this.#at(at), foot, apart.others), b);
      this.#drops[i].put(to.x, to.y, tag, foot);
    });
  }

  #inside(at, b) {
    return {x: clamp(at.x, b.left + margin, b.left + b.width - margin), y: clamp(at.y, b.top + margin, b.top + b.height - margin)};
  }

  #newDrop(i) {
    const bench = this.#bench, w = bench.words;
    const at = () => writtenPlace(w.all("drop-at")[i]) ?? (bench.known("drop-at", i) ? [bench.plan.drops_mm[i].x, bench.plan.drops_mm[i].y] : [NaN, NaN]);
    const say = to => {
      const word = to.map(v => mm(v, 2)).join(",");
      if (word === "0mm,0mm" && w.all("drop-at").length <= 1) w.set("drop-at", "");
      else w.setOne("drop-at", i, word);
    };
    const no = i ? ` ${i + 1}` : "";
    const value = (k, name, axis, more, less) => ({
      name: `drop${no} at, ${name}`, axis, fine: 0.05, coarse: 1, min: -500, max: 500, get: () => at()[k],
      say: v => sayWay(v, more, less, 2), set: v => { const to = at(); to[k] = v; say(to); },
      words: {get: () => w.all("drop-at")[i] ?? "0mm,0mm", set: t => w.setOne("drop-at", i, t)},
    });
    return new Handle(this.#stage, {shape: "diamond"},
      [value(0, "right", "x", "right", "left"), value(1, "down", "y", "down", "up")], (dx, dy, from) => {
        const k = this.#pxPerMM(), to = [from[0] + dx / k, from[1] + dy / k];
        say(to.map(v => Math.abs(v * k) < 6 ? 0 : v)); // the axis is a catch
      }, bench);
  }
}
