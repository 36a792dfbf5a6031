// Lighthouse over the release build, in headless Chromium as a mid-range phone.
//
//   node tools/lighthouse/run.mjs [--dir dist]
//
// Prints each category's score and every audit that is below its best, with the
// reason. Fails when accessibility or best practices are below 100: they do not
// depend on what else the machine does. Performance does, so the median of three
// runs is told and not held to. The files are sent in brotli, as any host would.

import { spawn } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { parseArgs } from 'node:util';
import { brotliCompressSync } from 'node:zlib';
import { launch } from 'chrome-launcher';
import lighthouse from 'lighthouse';

const { values: options } = parseArgs({ options: { dir: { type: 'string', default: 'dist' } } });
const CATEGORIES = ['performance', 'accessibility', 'best-practices'];
const RUNS = 3;

const site = mkdtempSync(join(tmpdir(), 'coldsump-lighthouse-'));
cpSync(options.dir, site, { recursive: true });
for (const name of readdirSync(site).filter((name) => /\.(js|css|wasm|html)$/.test(name))) {
  writeFileSync(join(site, `${name}.br`), brotliCompressSync(readFileSync(join(site, name))));
}

const server = spawn(
  'node',
  ['tools/serve.mjs', '--dir', site, '--port', '0', '--brotli', '--until-stdin-ends'],
  { stdio: ['pipe', 'pipe', 'inherit'] },
);
const [line] = await new Promise((first) =>
  createInterface(server.stdout).once('line', (...args) => first(args)),
);
const url = `${line.split(' ')[1]}/`;
const chrome = await launch({
  chromePath: process.env.CHROME_PATH ?? '/usr/bin/chromium',
  chromeFlags: ['--headless=new', '--no-sandbox', '--disable-gpu', '--disable-quic'],
});

const reports = [];
try {
  for (let run = 0; run < RUNS; run += 1) {
    const settings = { port: chrome.port, onlyCategories: CATEGORIES, logLevel: 'error' };
    reports.push((await lighthouse(url, settings)).lhr);
  }
} finally {
  await chrome.kill();
  server.kill();
  rmSync(site, { recursive: true, force: true });
}

const performance = (report) => report.categories.performance.score ?? 0;
reports.sort((a, b) => performance(a) - performance(b));
const report = reports[Math.floor(RUNS / 2)];
console.log(`Lighthouse ${report.lighthouseVersion}, median of ${RUNS} runs by performance`);
let failed = false;
for (const name of CATEGORIES) {
  const category = report.categories[name];
  const score = Math.round(100 * (category.score ?? 0));
  console.log(`${category.title}: ${score}`);
  failed ||= name !== 'performance' && score < 100;
  for (const { id, weight } of category.auditRefs) {
    const { score: part, title, displayValue = '' } = report.audits[id];
    if (weight > 0 && part !== null && part < 1) {
      console.log(`  ${Math.round(100 * part)} of 100, weight ${weight}: ${title} ${displayValue}`);
    }
  }
}
process.exitCode = failed ? 1 : 0;
