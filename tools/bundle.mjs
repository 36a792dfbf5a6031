// Puts what the page runs before the program into one script: a request, and a wait, less
// for each that it takes in. What is brought later stays a file of its own.
//
// Trunk runs it as a post_build hook; by hand: node tools/bundle.mjs DIR

import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { buildSync } from 'esbuild';
import { replace } from './page.mjs';

const LATER = ['./focus.js', './lock-face.js', './rescue.js'];
const dir = process.argv[2] ?? process.env.TRUNK_STAGING_DIR;
if (!dir) throw new Error('bundle: name the build folder');

const name = readdirSync(dir).find((file) => /^boot-\w+\.js$/.test(file));
if (!name) throw new Error(`bundle: no boot script in ${dir}`);
const { outputFiles } = buildSync({
  stdin: {
    contents: readFileSync(join(dir, name), 'utf8'),
    resolveDir: fileURLToPath(new URL('../public', import.meta.url)),
  },
  bundle: true,
  format: 'esm',
  target: 'es2022',
  charset: 'utf8',
  external: LATER,
  write: false,
});
replace(dir, name, 'boot', 'js', Buffer.from(outputFiles[0].contents));
