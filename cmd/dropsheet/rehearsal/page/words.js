// The words that the bench is set up by: flags and what they are given, as on the command line.

/** Words by flag, in the order in which they were said last. */
export class Words {
  #said = new Map();
  #limits;
  #changed = () => {};

  constructor(list, limits) {
    this.#limits = limits;
    this.#fill(list);
  }

  #fill(list) {
    this.#said = new Map();
    for (const [flag, value] of list) this.#said.set(flag, [...(this.#said.get(flag) ?? []), value]);
  }

  /** Calls a function with the flag whenever a word changes. */
  onChange(call) { this.#changed = call; }

  all(flag) { return this.#said.get(flag) ?? []; }
  get(flag) { return this.all(flag)[0] ?? ""; }
  has(flag) { return this.#said.has(flag); }
  list() { return [...this.#said].flatMap(([flag, values]) => values.map(v => [flag, v])); }

  /** Says a flag anew; nothing takes it away. Of those that say the same, the one said longest ago gives way. */
  set(flag, values) {
    const said = [values].flat().filter(v => v !== "" && v != null);
    const was = this.all(flag);
    if (was.length === said.length && was.every((v, i) => v === said[i])) return;
    this.#said.delete(flag);
    if (said.length) {
      for (const limit of this.#limits.filter(l => l.flags.includes(flag))) {
        const others = [...this.#said.keys()].filter(f => limit.flags.includes(f));
        for (const oldest of others.slice(0, Math.max(0, others.length + 1 - limit.most))) this.#said.delete(oldest);
      }
      this.#said.set(flag, said);
    }
    this.#changed(flag);
  }

  /** The list as it would be if a flag were said anew. */
  listWith(flag, values) {
    const other = new Words(this.list(), this.#limits);
    other.set(flag, values);
    return other.list();
  }

  /** Says several flags anew, as one change. */
  setAll(all) {
    const changed = this.#changed, said = [];
    this.#changed = flag => said.push(flag);
    for (const [flag, values] of all) this.set(flag, values);
    this.#changed = changed;
    if (said.length) changed(said.join(" "));
  }

  /** Says one of a flag's many values anew. */
  setOne(flag, i, value) {
    const all = [...this.all(flag)];
    all[i] = value;
    this.set(flag, all);
  }

  /** Takes all words from a list. */
  replace(list) {
    this.#fill(list);
    this.#changed("");
  }
}

/** A list of words as one string: two that are the same say the same. */
export const keyOf = list => JSON.stringify(list);

/** What differs between two lists of words: "aperture f/22 → f/11", one phrase a flag. */
export function differences(from, to, stands) {
  const collect = list => {
    const m = new Map();
    for (const [f, v] of list) m.set(f, [...(m.get(f) ?? []), v]);
    return m;
  };
  const a = collect(from), b = collect(to), out = [];
  for (const flag of new Set([...a.keys(), ...b.keys()])) {
    const was = a.get(flag) ?? [], is = b.get(flag) ?? [];
    if (was.join(" ") === is.join(" ")) continue;
    const word = flag.replaceAll("-", " ");
    if (was.length > 1 || is.length > 1) {
      const n = is.length - was.length;
      out.push(n ? `${word}: ${is.length} in place of ${was.length}` : `${word} moved`);
    } else if (is[0] === "true") out.push(word);
    else if (was[0] === "true") out.push(`not ${word}`);
    else out.push(`${word} ${was[0] ?? stands(flag)} → ${is[0] ?? stands(flag)}`.replace(/\s+/g, " "));
  }
  return out;
}
