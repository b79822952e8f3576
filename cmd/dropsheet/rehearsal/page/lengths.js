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

/**
 * The number of a word as the page itself writes it, a bare one or millimetres; undefined for any other. What people
 * type, in whatever unit, the server reads, and its plan has it.
 */
export function written(word) {
  const m = /^(-?\d+(?:\.\d+)?)(?:mm)?$/.exec(word ?? "");
  return m ? Number(m[1]) : undefined;
}

/** The same of a place, whose numbers are all millimetres. */
export function writtenPlace(word) {
  return /^(-?\d+(\.\d+)?mm,)+-?\d+(\.\d+)?mm$/.test(word ?? "") ? word.split(",").map(written) : undefined;
}

export const clamp = (v, low, high) => Math.max(low, Math.min(v, high));
