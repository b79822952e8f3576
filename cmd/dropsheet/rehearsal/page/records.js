// Answers of the server: records, each a line of JSON that names its kind; one with bytes is followed by so many.

/** Sends a value as JSON and yields the records of the answer as they come, their bytes in `follows`. */
export async function* records(route, body, signal) {
  const answer = await fetch(route, {
    method: "POST", headers: {"Content-Type": "application/json"}, body: JSON.stringify(body), signal,
  });
  if (!answer.ok) throw new Error(`${route}: ${answer.status} ${answer.statusText}`);
  const reader = answer.body.getReader();
  let chunks = [], held = 0, ended = false;
  const more = async () => {
    const {done, value} = await reader.read();
    if (done) { ended = true; return; }
    chunks.push(value);
    held += value.length;
  };
  const joined = () => {
    if (chunks.length > 1) {
      const all = new Uint8Array(held);
      let at = 0;
      for (const c of chunks) { all.set(c, at); at += c.length; }
      chunks = [all];
    }
    return chunks[0] ?? new Uint8Array(0);
  };
  const take = n => {
    const all = joined(), out = all.subarray(0, n);
    chunks = [all.subarray(n)];
    held -= n;
    return out;
  };
  for (;;) {
    let end = joined().indexOf(10);
    while (end < 0 && !ended) { await more(); end = joined().indexOf(10); }
    if (end < 0) return;
    const record = JSON.parse(new TextDecoder().decode(take(end + 1)));
    if (record.bytes) {
      while (held < record.bytes && !ended) await more();
      if (held < record.bytes) return; // cut off: something newer was asked
      record.follows = take(record.bytes);
    }
    yield record;
  }
}

/** The picture of a record that brings one. */
export const pixels = r =>
  new ImageData(new Uint8ClampedArray(r.follows.buffer, r.follows.byteOffset, r.bytes).slice(), r.width_px, r.height_px);
