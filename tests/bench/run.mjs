// Times Coldsump's sums against other libraries, all in one run, and prints the
// ratios. `./dev bench` builds what it needs and then runs
//
//   node tests/bench/run.mjs FOLDER NATIVE PYTHON
//
// FOLDER holds the wasm made for the page. Every side gets the same inputs; its
// answers must agree with ours before anything is timed. Then the sides take
// turns, so that a busy moment of the machine hits them all, and each time is
// that of as many passes as fill a fiftieth of a second. On a machine with other
// work the ratio of the least times is the one to trust.

import { spawn } from 'node:child_process';
import { copyFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { cpus, release, type } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';

import { openPage, says } from './browser.mjs';
import { TASKS } from './tasks.mjs';

const ROUNDS = 31;
const FILL = 20e6; // nanoseconds of one timing
const [folder, native, python] = process.argv.slice(2);
const here = (name) => fileURLToPath(new URL(name, import.meta.url));

/** A runner in a process of its own: a line asks, a line answers. */
function processRunner(command, ...args) {
  const child = spawn(command, args, { stdio: ['pipe', 'pipe', 'inherit'] });
  const lines = createInterface({ input: child.stdout })[Symbol.asyncIterator]();
  return {
    async run(key, passes) {
      child.stdin.write(`${key} ${passes}\n`);
      const { value, done } = await lines.next();
      if (done) throw new Error(`${command} ended at ${key}`);
      const [nanoseconds, ...answers] = value.split(' ').map(Number);
      return { nanoseconds, answers };
    },
    close: () => child.stdin.end(),
  };
}

/** How far two lists of answers are apart at most; NaN and lost ones count as infinitely far. */
function apart(ours, theirs) {
  if (ours.length !== theirs.length) return Infinity;
  return ours.reduce((worst, answer, n) => {
    const off = Math.abs(answer - theirs[n]);
    return off <= worst ? worst : Number.isNaN(off) ? Infinity : off;
  }, 0);
}

const middle = (times) => [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)];

const three = (value) => (value >= 100 ? value.toFixed(0) : value.toPrecision(3));
function time(nanoseconds) {
  if (nanoseconds < 1e3) return `${three(nanoseconds)} ns`;
  return nanoseconds < 1e6 ? `${three(nanoseconds / 1e3)} us` : `${three(nanoseconds / 1e6)} ms`;
}

/** Checks, times and prints one task. Throws when the answers differ. */
async function compare(task, runners) {
  const sides = task.sides.map((side) => ({ ...side, run: runners[side.runner].run, times: [] }));
  for (const side of sides) {
    const first = await side.run(side.key, 1); // also warms it
    side.answers = first.answers;
    const again = await side.run(side.key, 1);
    side.passes = Math.max(1, Math.round(FILL / Math.max(again.nanoseconds, 1e3)));
  }
  const ours = sides.find((side) => side.within === undefined);
  if (ours.answers.length !== task.sums) throw new Error(`${task.name}: ${ours.answers.length} answers`);
  for (const side of sides.filter((side) => side !== ours)) {
    side.apart = apart(ours.answers, side.answers);
    if (!(side.apart <= side.within)) {
      throw new Error(`void: ${side.title} is up to ${side.apart} ${task.unit} from ours, ${side.within} allowed`);
    }
  }
  for (let round = 0; round < ROUNDS; round += 1) {
    for (let n = 0; n < sides.length; n += 1) {
      const side = sides[(n + round) % sides.length];
      const { nanoseconds } = await side.run(side.key, side.passes);
      side.times.push(nanoseconds / side.passes / task.sums);
    }
  }
  console.log(`\n${task.title}\n`);
  console.log('| side | one sum, median | least to most | times ours in wasm, medians | least | from ours |');
  console.log('|---|---|---|---|---|---|');
  for (const side of sides) {
    const spread = `${time(Math.min(...side.times))} to ${time(Math.max(...side.times))}`;
    const ratio = three(middle(side.times) / middle(ours.times));
    const least = three(Math.min(...side.times) / Math.min(...ours.times));
    const off = side === ours ? '' : `${side.apart.toExponential(1)} ${task.unit}`;
    console.log(`| ${side.title} | ${time(middle(side.times))} | ${spread} | ${ratio} | ${least} | ${off} |`);
  }
}

for (const { name, inputs } of TASKS) {
  writeFileSync(join(folder, `${name}.txt`), `${inputs.join('\n')}\n`);
}
for (const name of ['index.html', 'page.mjs']) copyFileSync(here(`page/${name}`), join(folder, name));
const psychrolib = createRequire(import.meta.url).resolve('psychrolib');
copyFileSync(psychrolib, join(folder, 'psychrolib.js'));

const open = [];
try {
  const serve = [here('../../tools/serve.mjs'), '--dir', folder, '--port', '0', '--until-stdin-ends'];
  const server = spawn('node', serve, { stdio: ['pipe', 'pipe', 'inherit'] });
  open.push({ close: () => server.stdin.end() });
  const origin = await says(server, /^listening (.*)$/);
  const page = await openPage(`${origin}/`);
  open.push(page);
  await page.run(`return import('${origin}/page.mjs').then(() => null)`);
  const runners = {
    native: processRunner(native, folder),
    python: processRunner(python, here('rivals.py'), folder),
    page: {
      run: (key, passes) => page.run(`return window.run(${JSON.stringify(key)}, ${passes})`),
    },
  };
  open.push(runners.native, runners.python);
  const [cpu] = cpus();
  console.log(`${cpu.model.trim()}, ${cpus().length} cores, ${type()} ${release()}; ${page.version}`);
  console.log(`Medians of ${ROUNDS} rounds in which the sides took turns; one sum is one answer.`);
  for (const task of TASKS) await compare(task, runners);
} finally {
  for (const one of open.reverse()) await one.close();
}
