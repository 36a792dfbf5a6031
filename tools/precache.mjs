// Writes sw.js into a build: the template public/sw.js with the list of the
// build's files, each with its hash, and one hash over the list.
//
// Trunk runs it as a post_build hook; by hand: node tools/precache.mjs DIR

import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { transformSync } from 'esbuild';
import { notices } from './notices.mjs';

const TEMPLATE = fileURLToPath(new URL('../public/sw.js', import.meta.url));
// Needed only while the phone installs the app, or by a reader of the licence.
const ONLINE = /^icons\/|\/OFL\.txt$|^notices\.txt$/;
const dir = process.argv[2] ?? process.env.TRUNK_STAGING_DIR;
if (!dir) throw new Error('precache: name the build folder');

// The licences of what is inside, for whoever asks: on the server, not on every phone.
const licences = join(dir, 'notices.txt');
if (!existsSync(licences)) writeFileSync(licences, notices());

const hash = (bytes, encoding) => createHash('sha256').update(bytes).digest(encoding);

const files = readdirSync(dir, { recursive: true, withFileTypes: true })
  .filter((entry) => entry.isFile())
  .map((entry) => join(entry.parentPath ?? entry.path, entry.name))
  .map((path) => ({ path, name: relative(dir, path).split(sep).join('/') }))
  .filter(({ name }) => name !== 'sw.js' && !ONLINE.test(name))
  .sort((a, b) => (a.name < b.name ? -1 : 1))
  .map(({ path, name }) => [
    // Some hosts redirect index.html to the folder; a redirect cannot answer a navigation.
    name === 'index.html' ? './' : name,
    `sha256-${hash(readFileSync(path), 'base64')}`,
  ]);
if (!files.some(([url]) => url === './')) throw new Error(`precache: no index.html in ${dir}`);
if (!files.some(([url]) => url.endsWith('.wasm'))) throw new Error(`precache: no wasm in ${dir}`);

const { code: template } = transformSync(readFileSync(TEMPLATE, 'utf8'), { minify: true });
const fill = (text, mark, value) => {
  const parts = text.split(mark);
  if (parts.length !== 2) throw new Error(`precache: ${mark} must stand once in public/sw.js`);
  return parts.join(value);
};
const list = `[${files.map((file) => `\n  ${JSON.stringify(file)},`).join('')}\n]`;
// The worker's own text is part of the version: a changed worker is a new version.
const version = hash(template + list, 'hex').slice(0, 16);
let worker = fill(template, '__VERSION__', version);
worker = fill(worker, '__FILES__', list);
writeFileSync(join(dir, 'sw.js'), worker);
console.log(`precache: ${files.length} files, version ${version}`);
