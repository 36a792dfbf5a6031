// Times and weighs the report's PDF against a like one by ReportLab, in one run:
//
//   node tests/bench/report.mjs FOLDER NATIVE PYTHON FONT
//
// FOLDER holds the wasm made for the page. Both PDFs must hold the same words, as
// pdftotext reads them, before anything is timed; then the sides take turns.

import { execFileSync, spawn } from 'node:child_process';
import { copyFileSync, statSync } from 'node:fs';
import { cpus, release, type } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';

import { openPage, says } from './browser.mjs';

const ROUNDS = 21;
const FILL = 50e6; // nanoseconds of one timing
const [folder, native, python, font] = process.argv.slice(2);
const here = (name) => fileURLToPath(new URL(name, import.meta.url));

function lines(child) {
  return createInterface({ input: child.stdout })[Symbol.asyncIterator]();
}

function runner(child, answers) {
  return {
    async run(passes) {
      child.stdin.write(`report ${passes}\n`);
      const { value, done } = await answers.next();
      if (done) throw new Error('a runner ended');
      const [nanoseconds, bytes] = value.split(' ').map(Number);
      return { nanoseconds, bytes };
    },
    close: () => child.stdin.end(),
  };
}

const words = (name) =>
  execFileSync('pdftotext', [join(folder, name), '-'], { encoding: 'utf8' })
    .split(/\s+/)
    .filter(Boolean);

/** The share of `these` that is in `those` as often. */
function held(these, those) {
  const left = new Map();
  for (const word of those) left.set(word, (left.get(word) ?? 0) + 1);
  const found = these.filter((word) => {
    const n = left.get(word) ?? 0;
    left.set(word, n - 1);
    return n > 0;
  });
  return found.length / these.length;
}

const middle = (times) => [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)];
const ms = (nanoseconds) => `${(nanoseconds / 1e6).toPrecision(3)} ms`;

const open = [];
try {
  const stdio = ['pipe', 'pipe', 'inherit'];
  const ours = spawn(native, [folder], { stdio });
  const nativeRunner = runner(ours, lines(ours));
  open.push(nativeRunner);
  await nativeRunner.run(1); // the outline is there now
  const theirs = spawn(python, [here('report_rival.py'), folder, font], { stdio });
  const said = lines(theirs);
  await said.next();
  const rival = runner(theirs, said);
  open.push(rival);
  for (const name of ['index.html', 'report-page.mjs']) {
    copyFileSync(here(`page/${name}`), join(folder, name));
  }
  const serve = [here('../../tools/serve.mjs'), '--dir', folder, '--port', '0', '--until-stdin-ends'];
  const server = spawn('node', serve, { stdio });
  open.push({ close: () => server.stdin.end() });
  const origin = await says(server, /^listening (.*)$/);
  const page = await openPage(`${origin}/`);
  open.push(page);
  await page.run(`return import('${origin}/report-page.mjs').then(() => null)`);
  const sides = [
    { title: 'Coldsump, native', ...nativeRunner },
    { title: 'Coldsump, wasm in the page', run: (n) => page.run(`return window.report(${n})`) },
    { title: 'ReportLab 5.1.0, Python', ...rival },
  ];
  const [mine, other] = [words('ours.pdf'), words('rival.pdf')];
  const same = Math.min(held(mine, other), held(other, mine));
  if (!(same >= 0.9)) throw new Error(`void: the two hold only ${same} of each other's words`);
  for (const side of sides) {
    const first = await side.run(1);
    side.bytes = first.bytes;
    side.passes = Math.max(1, Math.round(FILL / (await side.run(1)).nanoseconds));
    side.times = [];
  }
  if (sides[0].bytes !== sides[1].bytes) throw new Error('wasm and native wrote different files');
  for (let round = 0; round < ROUNDS; round += 1) {
    for (let n = 0; n < sides.length; n += 1) {
      const side = sides[(n + round) % sides.length];
      side.times.push((await side.run(side.passes)).nanoseconds / side.passes);
    }
  }
  const [cpu] = cpus();
  console.log(`${cpu.model.trim()}, ${cpus().length} cores, ${type()} ${release()}; ${page.version}`);
  console.log(`Two pages, ${mine.length} words, ${(100 * same).toFixed(0)} % of them in both.`);
  console.log(`The letters are ${statSync(font).size} bytes; ours go in whole, ReportLab's as a subset.\n`);
  console.log('| side | one report, median | least to most | times ours in wasm | bytes |');
  console.log('|---|---|---|---|---|');
  for (const side of sides) {
    const spread = `${ms(Math.min(...side.times))} to ${ms(Math.max(...side.times))}`;
    const ratio = (middle(side.times) / middle(sides[1].times)).toPrecision(3);
    console.log(`| ${side.title} | ${ms(middle(side.times))} | ${spread} | ${ratio} | ${side.bytes} |`);
  }
} finally {
  for (const one of open.reverse()) await one.close();
}
