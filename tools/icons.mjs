// Draws the PNG icons from public/icon.svg with headless Chromium.
// Run by hand after changing the drawing: node tools/icons.mjs
// CHROMIUM names the browser if it is not `chromium` on PATH.

import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('..', import.meta.url));
const svg = readFileSync(join(root, 'public/icon.svg'), 'utf8');

/** The drawing on a full square ground, scaled about its middle. */
function fullBleed(scale) {
  const shift = 256 * (1 - scale);
  return svg
    .replace(' rx="104"', '')
    .replace('<g id="drawing">', `<g transform="translate(${shift} ${shift}) scale(${scale})">`);
}

const ICONS = [
  { name: 'icon-192', size: 192, text: svg },
  { name: 'icon-512', size: 512, text: svg },
  // A launcher may cut a maskable icon to the circle of 80 % of its width.
  { name: 'maskable-512', size: 512, text: fullBleed(0.86) },
  { name: 'apple-touch-180', size: 180, text: fullBleed(0.94) },
];

const work = mkdtempSync(join(tmpdir(), 'coldsump-icons-'));
try {
  for (const { name, size, text } of ICONS) {
    const page = join(work, `${name}.html`);
    const style = `html,body{margin:0;overflow:hidden}svg{display:block;width:${size}px;height:${size}px}`;
    writeFileSync(page, `<!doctype html><style>${style}</style>${text}`);
    execFileSync(process.env.CHROMIUM ?? 'chromium', [
      '--headless=new',
      '--no-sandbox',
      '--disable-gpu',
      '--hide-scrollbars',
      '--force-device-scale-factor=1',
      '--default-background-color=00000000',
      `--user-data-dir=${join(work, 'profile')}`,
      `--window-size=${size},${size}`,
      `--screenshot=${join(root, 'public/icons', `${name}.png`)}`,
      `file://${page}`,
    ], { stdio: 'ignore' });
    console.log(`public/icons/${name}.png`);
  }
} finally {
  rmSync(work, { recursive: true, force: true });
}
