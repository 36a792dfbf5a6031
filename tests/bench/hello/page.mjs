// Writes the bare page to stdout: the app's own, less its style, around the
// bare program.
//
//   node page.mjs INDEX_HTML BOOT_SCRIPT

import { readFileSync } from 'node:fs';

const [index, boot] = process.argv.slice(2);
const parts = '<meta name="coldsump-parts" data-js="./hello.js" data-wasm="./hello_bg.wasm">';
// As Trunk writes them.
const ahead =
  '<link rel="modulepreload" href="./hello.js" crossorigin="anonymous">' +
  '<link rel="preload" href="./hello_bg.wasm" crossorigin="anonymous" as="fetch" type="application/wasm"></head>';
const page = readFileSync(index, 'utf8')
  .replace(/^ *<link (?!rel="(manifest|icon|modulepreload)")[^>]*>\n/gm, '')
  .replace(/<script data-trunk.*boot\.js"><\/script>/, `${parts}\n    <script type="module" async src="./${boot}"></script>`)
  .replace(/^ *<script nomodule.*\n/m, '')
  .replace('</head>', ahead);
if (!page.includes(`src="./${boot}"`) || page.includes('wasm-opt')) throw new Error('page: no place for the boot script');
process.stdout.write(page);
