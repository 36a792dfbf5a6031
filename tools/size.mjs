// Weighs a build: what a phone downloads to have the whole program offline,
// brotli-compressed, against the limit. Usage: node tools/size.mjs [DIR]

import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { brotliCompressSync, constants } from 'node:zlib';

// The aim is 400,000; this keeps what is there from growing further.
const LIMIT = 550_000;
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
console.log(line(String(total), '', `total of ${LIMIT} allowed (${((100 * total) / LIMIT).toFixed(1)} %)`));
if (total > LIMIT) {
  console.error(`size: ${total - LIMIT} bytes over the limit`);
  process.exit(1);
}
