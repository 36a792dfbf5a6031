// Makes a build the whole program in one part that says what it ran: `./dev first`.
//
//   node tools/watched.mjs DIR WATCHED_WASM

import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { shorten } from './short-names.mjs';

const [dir, watched] = process.argv.slice(2);
const first = readdirSync(dir).find((name) => name.startsWith('coldsump-first-'));
if (!first || !watched) throw new Error('watched: name a build and its watched program');
// The names that the build's script knows it by.
writeFileSync(join(dir, first), shorten(readFileSync(watched)).wasm);
const index = join(dir, 'index.html');
const page = readFileSync(index, 'utf8')
  .replace(/ integrity="[^"]*"/g, '')
  .replace(/ data-rest="[^"]*" data-rest-hash="[^"]*"/, '');
writeFileSync(index, page);
