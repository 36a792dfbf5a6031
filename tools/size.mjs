// Weighs a build, brotli-compressed, against its limits: what a phone downloads to have
// the whole program offline, and what of it comes before the first screen.
// Usage: node tools/size.mjs [DIR]

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { brotliCompressSync, constants } from 'node:zlib';

// The aim is 400,000 for all; these keep what is there from growing further. Two parts
// weigh some 21,000 more than one: the price of a first screen at a quarter of the whole.
const LIMIT = 572_000;
const FIRST_LIMIT = 145_000;
const FIRST = /^(index\.html|(app|boot|coldsump-web|coldsump-first)-.*)$/;
const dir = process.argv[2] ?? 'dist';

const worker = readFileSync(join(dir, 'sw.js'), 'utf8');
const list = worker.match(/FILES=\[([\s\S]*?)\n\]/);
if (!list) throw new Error(`size: no file list in ${dir}/sw.js`);
const names = [...list[1].matchAll(/^ {2}(\[.*\]),$/gm)]
  .map((line) => JSON.parse(line[1])[0])
  .map((url) => (url === './' ? 'index.html' : url));
if (names.length < 4) throw new Error(`size: only ${names.length} files listed in ${dir}/sw.js`);
names.push('sw.js');

const brotli = (bytes) =>
  brotliCompressSync(bytes, {
    params: {
      [constants.BROTLI_PARAM_QUALITY]: 11,
      [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length,
    },
  }).length;

const rows = names
  .map((name) => ({ name, bytes: readFileSync(join(dir, name)) }))
  .map(({ name, bytes }) => ({ name, raw: bytes.length, packed: brotli(bytes) }))
  .sort((a, b) => b.packed - a.packed);
const total = rows.reduce((sum, row) => sum + row.packed, 0);

const line = (packed, raw, name) => `${packed.padStart(10)}${raw.padStart(10)}  ${name}`;
console.log(line('brotli', 'raw', 'file'));
for (const { name, raw, packed } of rows) console.log(line(String(packed), String(raw), name));
const first = rows.filter(({ name }) => FIRST.test(name));
if (first.length !== 5) throw new Error(`size: ${first.length} files before the first screen`);
const early = first.reduce((sum, row) => sum + row.packed, 0);

for (const [what, bytes, limit] of [
  ['before the first screen', early, FIRST_LIMIT],
  ['total', total, LIMIT],
]) {
  const share = ((100 * bytes) / limit).toFixed(1);
  console.log(line(String(bytes), '', `${what}, of ${limit} allowed (${share} %)`));
  if (bytes > limit) {
    console.error(`size: ${bytes - limit} bytes over the limit`);
    process.exitCode = 1;
  }
}
