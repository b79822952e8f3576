// The drop's passage through the frame, looped at playback speed, from frames that are rendered when nothing else is.
import {aside} from "./looking.js";
import {pixels} from "./records.js";

export class Playing {
  #bench;
  #frame;
  #looking;
  #button = document.getElementById("play");
  #moments = []; // by their place; holes where none has come yet
  #each = 0; // seconds that each is shown
  #on = false;
  #load = 0; // counts loads, so that an old one knows that it is old

  constructor(bench, frame, looking) {
    this.#bench = bench;
    this.#frame = frame;
    this.#looking = looking;
    this.#button.addEventListener("click", () => this.#turn(!this.#on));
  }

  #turn(on) {
    this.#on = on;
    document.getElementById("frame").classList.toggle("playing", on);
    this.#button.setAttribute("aria-pressed", String(on));
    this.#button.textContent = on ? "Stop" : "Play";
    this.#moments = [];
    this.#load++;
    if (on) {
      this.#fetch(this.#load);
      requestAnimationFrame(t => this.#tick(t));
    } else this.#frame.wipe(null, 0);
  }

  /** What plays is old when a word has changed: it is rendered anew. */
  changed() {
    if (!this.#on) return;
    this.#moments = [];
    this.#fetch(++this.#load);
  }

  async #fetch(load) {
    const tries = 20; // it is given up whenever something newer is asked
    for (let i = 0; i < tries && load === this.#load; i++) {
      await this.#looking.rest();
      if (load !== this.#load) return;
      let count = Infinity, come = 0;
      try {
        for await (const r of aside("play", {words: this.#bench.words.list(), side_px: 480, board: "", draft: false})) {
          if (load !== this.#load) return;
          if (r.kind === "error") {
            this.#turn(false);
            this.#bench.fault(r.text, r.hint, r.flag);
            return;
          }
          if (r.kind === "passage") {
            count = r.count;
            this.#each = r.each_s;
            this.#moments = new Array(count);
          }
          if (r.kind === "moment") {
            const c = document.createElement("canvas");
            [c.width, c.height] = [r.width_px, r.height_px];
            c.getContext("2d").putImageData(pixels(r), 0, 0);
            this.#moments[r.index] = c;
            come++;
          }
        }
      } catch { /* the bench says so when it is asked next */ }
      if (come === count) return;
    }
  }

  #tick(ms) {
    if (!this.#on) return;
    const n = this.#moments.length;
    if (n) {
      // While some are still to come, those that are there are gone through at their own pace.
      const at = Math.floor(ms / 1000 / this.#each) % n, shown = this.#moments[at];
      if (shown) this.#frame.play(shown);
      this.#button.title = `frame ${at + 1} of ${n}`;
    }
    requestAnimationFrame(t => this.#tick(t));
  }
}
