// Gives what a module imports and exports short names. wasm-bindgen names them
// in full, with a hash each, in the module and once more in its script.

const [IMPORTS, EXPORTS] = [2, 7];
const LONG = /^(__wb|wasm_bindgen_)/;

/** A module's bytes, read from the front. */
class Reader {
  at = 0;
  constructor(bytes) {
    this.bytes = bytes;
  }
  get ended() {
    return this.at >= this.bytes.length;
  }
  byte() {
    return this.bytes[this.at++];
  }
  number() {
    let [value, shift, part] = [0, 0, 0];
    do {
      part = this.byte();
      value += (part & 0x7f) * 2 ** shift;
      shift += 7;
    } while (part & 0x80);
    return value;
  }
  take(count) {
    this.at += count;
    return this.bytes.subarray(this.at - count, this.at);
  }
  text() {
    return this.take(this.number()).toString('utf8');
  }
  /** What `skip` reads, as it stands. */
  asIs(skip) {
    const from = this.at;
    skip();
    return this.bytes.subarray(from, this.at);
  }
}

function number(value) {
  const bytes = [];
  do {
    const rest = Math.floor(value / 128);
    bytes.push((value % 128) | (rest ? 0x80 : 0));
    value = rest;
  } while (value);
  return Buffer.from(bytes);
}

const text = (words) => Buffer.concat([number(Buffer.byteLength(words)), Buffer.from(words)]);

/** The type of an import, by the kind before it. */
function skipType(read, kind) {
  const limits = () => {
    const flags = read.byte();
    read.number();
    if (flags & 1) read.number();
  };
  if (kind === 0) read.number(); // function
  else if (kind === 1) [read.byte(), limits()]; // table
  else if (kind === 2) limits(); // memory
  else if (kind === 3) read.take(2); // global
  else if (kind === 4) [read.byte(), read.number()]; // tag
  else throw new Error(`short-names: an import of kind ${kind}`);
}

/** The module with short names, and which name became which. */
export function shorten(wasm) {
  const names = new Map();
  const short = (name) => {
    if (!LONG.test(name)) return name;
    if (!names.has(name)) names.set(name, `$${names.size.toString(36)}`);
    return names.get(name);
  };
  const read = new Reader(wasm);
  const out = [read.take(8)];
  while (!read.ended) {
    const id = read.byte();
    let body = read.take(read.number());
    if (id === IMPORTS || id === EXPORTS) {
      const inside = new Reader(body);
      const count = inside.number();
      const parts = [number(count)];
      for (let n = 0; n < count; n++) {
        if (id === IMPORTS) parts.push(text(inside.text())); // its module
        parts.push(text(short(inside.text())));
        parts.push(
          inside.asIs(() => {
            const kind = inside.byte();
            if (id === IMPORTS) skipType(inside, kind);
            else inside.number();
          }),
        );
      }
      if (!inside.ended) throw new Error(`short-names: section ${id} has more in it`);
      body = Buffer.concat(parts);
    }
    out.push(Buffer.from([id]), number(body.length), body);
  }
  return { wasm: Buffer.concat(out), names };
}

/** A script with the names changed. */
export function renamed(script, names) {
  return script.replace(/[\w$]+/g, (word) => names.get(word) ?? word);
}
