// Lengths and other numbers, as words of the command line and as they are spoken.

/** A number with so many decimals at most, no zeros at its end and no minus before a zero. */
export const short = (v, decimals) => String(Number(v.toFixed(decimals)) + 0);

/** A length as a word: 4.62mm. */
export const mm = (v, decimals = 1) => `${short(v, decimals)}mm`;

/** A length to be read: 4.62 mm. */
export const readMM = (v, decimals = 1) => `${short(v, decimals)} mm`;

/** A length to be spoken. */
export const sayMM = (v, decimals = 1) => `${short(v, decimals)} ${Math.abs(v) === 1 ? "millimetre" : "millimetres"}`;

/** A length with a sign in words: 3 mm right, or left. */
export const sayWay = (v, more, less, decimals = 1) =>
  Number(v.toFixed(decimals)) === 0 ? `on the axis` : `${sayMM(Math.abs(v), decimals)} ${v > 0 ? more : less}`;

const units = {mm: 1, cm: 10, m: 1000, in: 25.4, '"': 25.4, um: 0.001};

/** The millimetres of a word that the server has taken, such as -60cm; NaN for what is none. */
export function toMM(word) {
  const m = /^\s*([-+]?[0-9.]+(?:e[-+]?\d+)?)\s*(mm|cm|m|in|"|um)\s*$/i.exec(word ?? "");
  return m ? Number(m[1]) * units[m[2].toLowerCase()] : NaN;
}

export const clamp = (v, low, high) => Math.max(low, Math.min(v, high));
