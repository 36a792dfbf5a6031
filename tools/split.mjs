// Parts a build's program in two (tools/split): what the first screen runs, named in
// tools/first.txt, and the rest, with the texts that are not in tools/first-said.txt. The
// page is told of both.
//
// Trunk runs it as a post_build hook; by hand: node tools/split.mjs DIR

import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { unsaid } from './texts.mjs';

const LIST = fileURLToPath(new URL('first.txt', import.meta.url));
const dir = process.argv[2] ?? process.env.TRUNK_STAGING_DIR;
const tool = process.env.COLDSUMP_SPLIT;
if (!dir || !tool) throw new Error('split: name the build folder, and the tool in COLDSUMP_SPLIT');

const name = readdirSync(dir).find((file) => file.endsWith('_bg.wasm'));
if (!name) throw new Error(`split: no program in ${dir}`);
const path = join(dir, name);
const bytes = readFileSync(path);

// `./dev first` asks the whole, with its names, what it runs.
const whole = join(dirname(tool), '..', 'split', 'whole.wasm');
mkdirSync(dirname(whole), { recursive: true });
writeFileSync(whole, bytes);

const texts = join(dirname(whole), 'unsaid');
writeFileSync(texts, unsaid().join('\0'));
const rest = join(dir, 'rest.wasm');
const said = execFileSync(tool, ['part', path, LIST, texts, path, rest], { encoding: 'utf8' });
console.log(said.trim());

const hash = (algorithm, encoding, part) => createHash(algorithm).update(part).digest(encoding);
const [first, after] = [path, rest].map((part) => readFileSync(part));
// Another list makes another first part of the same program: named by what is in it.
const named = (part) => hash('sha256', 'hex', part).slice(0, 16);
const names = { first: `coldsump-first-${named(first)}.wasm`, rest: `coldsump-rest-${named(after)}.wasm` };
renameSync(path, join(dir, names.first));
renameSync(rest, join(dir, names.rest));

const index = join(dir, 'index.html');
const page = readFileSync(index, 'utf8');
const integrity = (part) => `sha384-${hash('sha384', 'base64', part)}`;
const told = page
  .replaceAll(name, names.first)
  .replaceAll(integrity(bytes), integrity(first))
  .replace('<meta name="coldsump-parts"', `$& data-rest="./${names.rest}" data-rest-hash="${integrity(after)}"`);
if (told.split(names.first).length < 3 || !told.includes(names.rest) || !told.includes(integrity(first))) {
  throw new Error('split: the page does not name the program where it should');
}
writeFileSync(index, told);
