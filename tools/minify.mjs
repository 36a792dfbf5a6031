// Makes a build's program, scripts and styles shorter, and puts right the hashes
// that index.html gives of them.
//
// Trunk runs it as a post_build hook; by hand: node tools/minify.mjs DIR

import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { extname, join } from 'node:path';
import { transformSync } from 'esbuild';
import { renamed, shorten } from './short-names.mjs';

const dir = process.argv[2] ?? process.env.TRUNK_STAGING_DIR;
if (!dir) throw new Error('minify: name the build folder');

// Old enough for every browser that runs the program; too-old.js is for the others.
const TARGET = { '.js': 'es2022', '.css': ['safari16', 'chrome109', 'firefox109'] };
const hash = (bytes) => `sha384-${createHash('sha384').update(bytes).digest('base64')}`;

const index = join(dir, 'index.html');
let page = readFileSync(index, 'utf8');
let saved = 0;
function put(path, long, short) {
  writeFileSync(path, short);
  page = page.replaceAll(hash(long), hash(short));
  saved += long.length - Buffer.byteLength(short);
}

const names = new Map();
for (const name of readdirSync(dir).filter((name) => name.endsWith('.wasm'))) {
  const long = readFileSync(join(dir, name));
  const short = shorten(long);
  for (const [name, shorter] of short.names) names.set(name, shorter);
  put(join(dir, name), long, short.wasm);
}
for (const name of readdirSync(dir)) {
  const kind = extname(name);
  if (!(kind in TARGET) || name === 'too-old.js') continue;
  const long = readFileSync(join(dir, name));
  const { code } = transformSync(renamed(long.toString('utf8'), names), {
    loader: kind.slice(1),
    minify: true,
    charset: 'utf8',
    legalComments: 'none',
    target: TARGET[kind],
  });
  put(join(dir, name), long, code);
}
writeFileSync(index, page);
console.log(`minify: ${saved} bytes less`);
