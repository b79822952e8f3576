// Asking how the bench looks, and telling those who show it.
import {records} from "./records.js";
import {keyOf} from "./words.js";

let begun = 0, open = 0; // what this page asked aside

/** Asks something else than how the bench looks. It may overtake the answer to that, which is then asked for again. */
export async function* aside(route, question) {
  begun++;
  open++;
  try {
    yield* records(route, question);
  } finally { open--; }
}

/** Asks with the latest words. While the hand moves, the next question waits for the draft of the one before. */
export class Looking {
  #wanted = null;
  #under = null; // the question that is being answered
  #tell;
  #board = "";
  #waiting = [];

  /** @param tell called with each record of the latest answer and the words that it answers, and with one of kind rests at the end */
  constructor(tell) { this.#tell = tell; }

  /** Asks; anew even where the same is being answered already. */
  look(words, sidePx, anew = false) {
    this.#wanted = {words, side_px: sidePx, key: keyOf(words)};
    if (!anew && this.#under?.key === this.#wanted.key && this.#under.sidePx === sidePx) { this.#wanted = null; return; } // its answer is coming
    if (!this.#under || this.#under.drafted) this.#send();
  }

  get idle() { return !this.#under; }

  /** Waits until no answer is on its way: what can wait, asks then. */
  async rest() {
    while (this.#under) await new Promise(rested => this.#waiting.push(rested));
  }

  async #send() {
    const {words, side_px, key} = this.#wanted, mine = {key, sidePx: side_px, drafted: false, whole: false, asides: open ? -1 : begun};
    const question = {words, side_px, board: this.#board, draft: false};
    this.#wanted = null;
    this.#under = mine;
    let cut = "overtaken";
    try {
      for await (const r of records("look", question)) {
        if (this.#under !== mine) continue; // overtaken: what still comes is old
        if (r.kind === "board") this.#board = r.board;
        if (r.kind === "error" || r.kind === "frame" && r.rung === "fine") mine.whole = true;
        this.#tell(r, words);
        if (r.kind === "frame" || r.kind === "error") {
          mine.drafted = true;
          if (this.#wanted) this.#send();
        }
      }
    } catch { cut = "gone"; }
    if (this.#under !== mine) return;
    this.#under = null;
    if (!mine.whole && mine.asides !== begun) this.#wanted ??= {words, side_px, key}; // it was this page that asked meanwhile
    if (this.#wanted) this.#send();
    else {
      if (!mine.whole) this.#tell({kind: cut}, words);
      this.#tell({kind: "rests"}, words);
      for (const rested of this.#waiting.splice(0)) rested();
    }
  }
}

/** What the bench looks like by other words, to be compared: records of its plan, its figures and its frame, finer and finer. */
export const glimpse = (words, sidePx) => aside("look", {words, side_px: sidePx, board: "", draft: true});
