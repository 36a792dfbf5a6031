// The licence texts of everything that is compiled into the program, as one
// text: node tools/notices.mjs [FILE]. tools/precache.mjs puts it in a build.
//
// What counts as inside is what cargo would link for the phone: all normal
// dependencies, but macros, which only run while building.

import { execFileSync } from 'node:child_process';
import { readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const HERE = fileURLToPath(new URL('..', import.meta.url));
const TARGET = 'wasm32-unknown-unknown';
const RULE = '-'.repeat(72);

/** The crates inside the program, by name. */
export function crates() {
  const args = ['metadata', '--locked', '--format-version', '1', '--filter-platform', TARGET];
  const said = execFileSync('cargo', args, { cwd: HERE, maxBuffer: 1 << 28 });
  const { packages, resolve } = JSON.parse(said);
  const all = new Map(packages.map((one) => [one.id, one]));
  const nodes = new Map(resolve.nodes.map((one) => [one.id, one]));
  const isMacro = (id) => all.get(id).targets.some((target) => target.kind.includes('proc-macro'));
  const inside = new Set();
  const open = [resolve.root];
  while (open.length) {
    for (const { pkg, dep_kinds } of nodes.get(open.pop()).deps) {
      const linked = dep_kinds.some(({ kind }) => kind === null) && !isMacro(pkg);
      if (linked && !inside.has(pkg)) {
        inside.add(pkg);
        open.push(pkg);
      }
    }
  }
  const key = ({ name, version }) => `${name} ${version}`;
  return [...inside].map((id) => all.get(id)).sort((a, b) => (key(a) < key(b) ? -1 : 1));
}

const mit = (owner) =>
  readFileSync(join(HERE, 'LICENSE'), 'utf8').replace(/^Copyright .*$/m, `Copyright (c) ${owner}`);

/** The texts that came with a crate; of two to choose from, the shorter MIT. */
function texts(crate) {
  const folder = dirname(crate.manifest_path);
  const names = readdirSync(folder).filter((name) => /^(licen[cs]e|copying|notice|unlicense)/i.test(name));
  const offered = crate.license.includes('OR') || crate.license.includes('/');
  const isMit = names.filter((name) => /mit/i.test(name));
  const chosen = offered && isMit.length && !crate.license.includes('AND') ? isMit : names;
  const found = chosen.sort().flatMap((name) => {
    try {
      return [readFileSync(join(folder, name), 'utf8').replaceAll('\r\n', '\n').trim()];
    } catch {
      return []; // a folder of texts, or a broken link
    }
  });
  if (found.length) return found;
  if (!crate.license.includes('MIT')) throw new Error(`notices: ${crate.name} brings no licence text`);
  return [mit(crate.authors.join(', ') || `the authors of ${crate.name}`).trim()];
}

/** The whole text: each licence once, over it the parts that it covers. */
export function notices() {
  const covers = new Map();
  const add = (text, part) => covers.set(text, [...(covers.get(text) ?? []), part]);
  for (const crate of crates()) {
    for (const text of texts(crate)) add(text, `${crate.name} ${crate.version} (${crate.license})`);
  }
  add(mit('The Rust Project Contributors').trim(), "Rust's standard library (MIT OR Apache-2.0)");
  add(readFileSync(join(HERE, 'public/fonts/OFL.txt'), 'utf8').trim(), 'Inter, the letters of the report (OFL-1.1)');
  const head = 'Coldsump contains the following, each under the licence below its name.';
  const parts = [...covers].map(([text, names]) => `${RULE}\n${names.join('\n')}\n\n${text}\n`);
  return [`${head}\n`, ...parts].join('\n');
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const text = notices();
  if (process.argv[2]) writeFileSync(process.argv[2], text);
  else process.stdout.write(text);
}
