// Parts a build's program in two (tools/split): what the first screen runs, named in
// tools/first.txt, and the rest, with the texts that the first screen cannot say
// (tools/texts.mjs). The page is told of both.
//
// Trunk runs it as a post_build hook; by hand: node tools/split.mjs DIR

import { execFileSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { integrity, put, replace, tell } from './page.mjs';
import { unsaid } from './texts.mjs';

const LIST = fileURLToPath(new URL('first.txt', import.meta.url));
const dir = process.argv[2] ?? process.env.TRUNK_STAGING_DIR;
const tool = process.env.COLDSUMP_SPLIT;
if (!dir || !tool) throw new Error('split: name the build folder, and the tool in COLDSUMP_SPLIT');

const name = readdirSync(dir).find((file) => file.endsWith('_bg.wasm'));
if (!name) throw new Error(`split: no program in ${dir}`);

// Out of the build: `./dev first` asks the whole, with its names, what it runs.
const beside = join(dirname(tool), '..', 'split');
mkdirSync(beside, { recursive: true });
const at = (file) => join(beside, file);
writeFileSync(at('whole.wasm'), readFileSync(join(dir, name)));
writeFileSync(at('unsaid'), unsaid().join('\0'));
const files = ['whole.wasm', 'unsaid', 'first.wasm', 'rest.wasm'].map(at);
const said = execFileSync(tool, ['part', files[0], LIST, ...files.slice(1)], { encoding: 'utf8' });
console.log(said.trim());

const [first, rest] = files.slice(2).map((file) => readFileSync(file));
replace(dir, name, 'coldsump-first', 'wasm', first);
const after = put(dir, 'coldsump-rest', 'wasm', rest);
tell(dir, (page) =>
  page.replace(
    '<meta name="coldsump-parts"',
    `$& data-rest="./${after}" data-rest-hash="${integrity(rest)}"`,
  ),
);
