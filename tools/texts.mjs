// The texts of src/words that are long enough to stand on their own, and which of them
// the first screen may say: those that its sources name, and those that it was seen to say
// (tools/first-said.txt, a JSON text a line).
//
// After `./dev first` has asked the program: node tools/texts.mjs SAID_JSON, where
// SAID_JSON has what the program gave the page to show.

import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const LIST = new URL('first-said.txt', import.meta.url);
const WORDS = ['en', 'es'].map((tongue) => new URL(`../src/words/${tongue}/`, import.meta.url));
// What draws home, its frame, its advice and its faults.
const HOME = ['mod', 'prefs', 'screens/home', 'parts/fault', 'parts/install', 'parts/shell'];
// No name that the program compares by is so long and has a space in it.
const LONG = 12;

/** A literal of Rust as the text it stands for. */
function text(literal) {
  return literal
    .replace(/\\\n\s*/g, '')
    .replace(/\\u\{([0-9a-f]+)\}/gi, (_, code) => String.fromCodePoint(parseInt(code, 16)))
    .replace(/\\n/g, '\n')
    .replace(/\\(["\\])/g, '$1');
}

const LITERAL = '"((?:[^"\\\\]|\\\\[^])*)"';

/** The sources of both languages, without their comments. */
function sources() {
  const files = WORDS.flatMap((folder) => readdirSync(folder).map((name) => new URL(name, folder)));
  return files.map((file) => readFileSync(file, 'utf8').replace(/^\s*\/\/.*$/gm, ''));
}

/** Every long text of both languages. */
export function texts() {
  const all = sources().flatMap((source) =>
    [...source.matchAll(RegExp(LITERAL, 'g'))].map(([, literal]) => text(literal)),
  );
  const long = (one) => Buffer.byteLength(one) >= LONG && one.includes(' ');
  return [...new Set(all.filter(long))];
}

/** The texts of the phrases that home's sources name. */
function named() {
  const code = HOME.map((name) => readFileSync(new URL(`../src/app/${name}.rs`, import.meta.url), 'utf8'));
  const names = new Set([...code.join().matchAll(/\bP(?:hrase)?::(\w+)/g)].map(([, name]) => name));
  return sources().flatMap((source) =>
    [...source.matchAll(RegExp(`\\b(\\w+):\\s*${LITERAL}`, 'g'))]
      .filter(([, name]) => names.has(name))
      .map(([, , literal]) => text(literal)),
  );
}

/** Those texts that the first screen can't say. */
export function unsaid() {
  const seen = readFileSync(LIST, 'utf8').split('\n').filter(Boolean).map(JSON.parse);
  const may = new Set([...named(), ...seen]);
  if (may.size < 60) throw new Error('texts: home names more phrases than were found');
  return texts().filter((one) => !may.has(one));
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const shown = JSON.parse(readFileSync(process.argv[2], 'utf8'));
  // A text with places to fill is there when all between them is.
  const parts = (one) => one.split(/\{[^}]*\}/).filter((part) => part.trim());
  const said = texts().filter((one) =>
    parts(one).every((part) => shown.some((whole) => whole.includes(part))),
  );
  const lines = said.map((one) => JSON.stringify(one)).sort();
  writeFileSync(LIST, lines.map((line) => `${line}\n`).join(''));
  console.log(`tools/first-said.txt: ${lines.length} of ${texts().length} texts`);
}
