// The page: words change, the server is asked how the bench looks by them, and everything shows it.
import {Bench} from "./bench.js";
import {Board} from "./board.js";
import {showCommand} from "./commands.js";
import {takesPictures} from "./dropping.js";
import {Frame} from "./frame.js";
import {Handle} from "./handle.js";
import {Ladder} from "./ladder.js";
import {clamp, short, written} from "./lengths.js";
import {Looking} from "./looking.js";
import {Making} from "./making.js";
import {Playing} from "./playing.js";
import {Setup} from "./setup.js";
import {Takes} from "./takes.js";
import {Verdicts} from "./verdicts.js";
import {keyOf, Words} from "./words.js";

const byId = id => document.getElementById(id);

const begins = await (await fetch("start")).json();
const flags = new Map(begins.headings.flatMap(h => h.flags).map(f => [f.name, f]));

// What everybody on the page shares.
const session = {
  words: new Words(begins.words, begins.limits),
  began: begins.words,
  folder: begins.folder,
  plan: null, // the latest record of each kind
  figures: null,
  verdicts: null,
  /** What holds when a flag is not given. */
  stands: flag => flags.get(flag)?.stands ?? "",
  /** A number as its word has it where the page wrote that, or as the plan has it. */
  told: (flag, plan) => written(session.words.get(flag)) ?? (session.known(flag) ? plan() : NaN),
  /** Whether the plan has what is said by a flag now: not while the answer to a word that was typed is on its way. */
  known: (flag, i = 0) => Boolean(session.plan) && (!busy() || session.plan.words.all(flag)[i] === session.words.all(flag)[i]),
  /** Whether a record answers the words as they stand. */
  fresh: record => record?.key === keyOf(session.words.list()),
  keep: () => session.words.list(),
  restore: list => session.words.replace(list),
  rest: () => look(),
  fault: (text, hint, flag) => fault(text, hint, flag),
  gone: () => tell({kind: "gone"}),
  says: text => { byId("sheet").textContent = text; },
  get folderTyped() { return session.plan?.proof.replace(/^dropsheet proof ('(?:[^']|'\\'')*'|\S+).*$/, "$1") ?? ""; },
  makes: () => session.plan ? `${session.plan.plan.sheets.length} sheets, guide and proof into ${session.folder.split(/[/\\]/).at(-1)}` : "",
};

const looking = new Looking(tell);
const frame = new Frame(session), bench = new Bench(session), board = new Board(session), ladder = new Ladder(session);
const verdicts = new Verdicts(session), takes = new Takes(session, frame, looking), setup = new Setup(session, begins.headings);
const making = new Making(session);

let asked = 0; // the size that the frame was last asked for at
let resting = 0; // the timer that asks anew once the window has come to its new size
const look = (anew = false) => {
  asked = frame.sidePx;
  byId("see").ariaBusy = "true";
  looking.look(session.words.list(), asked, anew);
};
const busy = () => byId("see").ariaBusy === "true"; // until the answer has come whole

const playing = new Playing(session, frame, looking);

function arrange() {
  frame.arrange();
  bench.arrange();
  board.arrange();
  ladder.arrange();
  arrangeLook();
}

let stays = null; // what was wrong at the beginning, which is said until the next word

const rungs = {draft: "draft", few: "few rays", fine: "fine"};

/** Shows a record of the answer to words. */
function tell(r, words) {
  r.key = keyOf(words);
  switch (r.kind) {
  case "plan":
    r.words = new Words(words, []);
    session.plan = r;
    if (!r.placed) session.verdicts = null;
    fault(stays?.text ?? "", stays?.hint);
    arrange();
    byId("made-of").textContent = session.makes();
    showCommand(document.querySelector("#by-hand code"), r.make);
    byHand();
    break;
  case "frame": {
    frame.show(r);
    const c = session.plan.plan.camera;
    byId("rung").textContent = `${short(c.frame_width_mm, 2)} × ${short(c.frame_height_mm, 2)} mm · ${rungs[r.rung]}`;
    byId("frame").dataset.rung = r.rung;
    takes.comes();
    break;
  }
  case "board": board.show(r); break;
  case "figures":
    session.figures = r;
    ladder.show(r);
    verdicts.show();
    bench.arrange();
    takes.comes();
    break;
  case "verdicts":
    session.verdicts = r;
    board.arrange();
    verdicts.show();
    break;
  case "error": fault(r.text, r.hint, r.flag); break;
  case "overtaken": fault("Another page has asked meanwhile, and one frame is rendered at a time.", "Change anything, or click here, to see this one again."); break;
  case "gone": fault("The bench does not answer.", "Is dropsheet still running? Start rehearse anew, and open the address that it prints."); break;
  case "rests":
    if (frame.sidePx !== asked && !resting) { look(); break; } // its place has another size by now
    byId("see").ariaBusy = String(resting !== 0);
    byHand();
    break;
  }
}

// The command line is that of the latest plan. Where a word can't be carried out there is none of it, and what stands
// is what the frame shows.
function byHand() {
  const fresh = session.fresh(session.plan);
  if (fresh || !busy()) document.querySelector("#by-hand span").textContent = fresh ? "The same by hand:" : "By hand, what the frame shows:";
  making.show();
}

function fault(text, hint, flag) {
  const p = byId("fault");
  if (text === "" && !p.firstChild) return;
  p.replaceChildren(text);
  if (hint) {
    const more = document.createElement("small");
    more.textContent = hint;
    p.append(more);
  }
  setup.blame(flag, text);
}
byId("fault").addEventListener("click", () => look());

session.words.onChange(() => {
  stays = null;
  look();
  byHand();
  setup.show();
  takes.mark();
  playing.changed();
});

// Whether the picture looks as a flat print does, or as it is drawn.
const lookRail = document.querySelector("#look .rail");
const lookValue = {
  name: "look", fine: 0.05, coarse: 0.25, min: 0, max: 1,
  get: () => ({bulged: 0, straight: 1})[session.words.get("look")] ?? (Number(session.words.get("look")) || 0),
  say: v => v === 0 ? "bulged: as a flat print looks" : v === 1 ? "straight: as it is drawn" : `${short(100 * v, 0)} per cent of the way to straight`,
  set: v => session.words.set("look", v < 0.005 ? "" : v > 0.995 ? "straight" : short(v, 2)),
  words: {get: () => session.words.get("look") || "bulged", set: t => session.words.set("look", t)},
};
const lookHandle = new Handle(lookRail, {tag: "below", shy: true}, [lookValue],
  (dx, dy, [from]) => lookValue.set(clamp(from + dx / (lookRail.clientWidth - 20), 0, 1)), session);
function arrangeLook() {
  const v = lookValue.get();
  lookHandle.put(10 + v * (lookRail.clientWidth - 20), 15, `look ${short(v, 2)}`);
}

byId("red").addEventListener("click", e => {
  const on = e.currentTarget.getAttribute("aria-pressed") !== "true";
  e.currentTarget.setAttribute("aria-pressed", String(on));
  document.documentElement.dataset.lamp = on ? "red" : "amber";
});

function begin(b) {
  byId("subject").textContent = `${b.name} · ${b.width_px} × ${b.height_px} pixels`;
  document.title = `Rehearsal: ${b.name}`;
  session.folder = b.folder;
  stays = b.error ?? null;
  fault(stays?.text ?? "", stays?.hint);
}

takesPictures(b => {
  if (b.kind === "error") { fault(b.text, b.hint); return; }
  begin(b);
  session.verdicts = null;
  session.began = session.words.list();
  if (session.plan) session.plan.key = ""; // it is the other picture's
  look(true);
  playing.changed();
  takes.read(b.takes); // those of the picture before belong to its own file
});

new ResizeObserver(() => {
  arrange();
  if (frame.sidePx === asked && !resting) return;
  byId("see").ariaBusy = "true";
  clearTimeout(resting);
  resting = setTimeout(() => {
    resting = 0;
    if (frame.sidePx !== asked) look();
    else if (looking.idle) byId("see").ariaBusy = "false";
  }, 250);
}).observe(byId("see"));
new ResizeObserver(arrange).observe(byId("bench"));

begin(begins);
look();
if (begins.takes.length) takes.read(begins.takes);
