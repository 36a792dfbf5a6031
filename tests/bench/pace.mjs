// From an answer to the next check, by itself: the posterior, the suspects and the next
// check, as wasm in Chromium with the processor slowed four times, after each answer of
// twelve stored calls. `./dev bench pace` builds what it needs and then runs
//
//   node tests/bench/pace.mjs FOLDER NATIVE
//
// What the page thinks must be what the native code thinks. Each time is the least of
// some turns: other work on the machine is not the phone's.

import { execFileSync, spawn } from 'node:child_process';
import { copyFileSync, writeFileSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

import { openPage, says } from './browser.mjs';

const SLOWER = 4;
const TURNS = 5;
const LIMIT = 50; // ms
const WITHIN = 1e-9;
const [folder, native] = process.argv.slice(2);
const here = (name) => fileURLToPath(new URL(name, import.meta.url));
const ms = (time) => `${time.toFixed(1)} ms`;

copyFileSync(here('page/index.html'), join(folder, 'index.html'));
copyFileSync(here('page/pace-page.mjs'), join(folder, 'pace-page.mjs'));
writeFileSync(join(folder, 'psychrolib.js'), ''); // the page asks for it
const theirs = execFileSync(native, { encoding: 'utf8' }).trim().split('\n');

const serve = [here('../../tools/serve.mjs'), '--dir', folder, '--port', '0', '--until-stdin-ends'];
const server = spawn('node', serve, { stdio: ['pipe', 'pipe', 'inherit'] });
let page;
try {
  const origin = await says(server, /^listening (.*)$/);
  page = await openPage(`${origin}/`);
  await page.run(`return import('${origin}/pace-page.mjs').then(() => null)`);
  const lengths = await page.run('return window.paths()');
  await page.cdp('Emulation.setCPUThrottlingRate', { rate: SLOWER });
  const steps = lengths.flatMap((length, path) =>
    Array.from({ length }, (_, n) => ({ path, answers: n + 1 })),
  );
  if (steps.length !== theirs.length) throw new Error(`${steps.length} steps, ${theirs.length} native`);
  const times = steps.map(() => Infinity);
  // One after the other: a busy moment of the machine then hits no step in every turn.
  for (let turn = 0; turn < TURNS; turn += 1) {
    for (const [n, { path, answers }] of steps.entries()) {
      const [first, next, took] = await page.run(`return window.step(${path}, ${answers})`);
      const [p, check] = theirs[n].split(' ').map(Number);
      if (!(Math.abs(first - p) <= WITHIN) || next !== check) {
        throw new Error(`call ${path}, ${answers} answers: ${[first, next]} here, ${[p, check]} native`);
      }
      times[n] = Math.min(times[n], took);
    }
  }
  times.sort((a, b) => a - b);
  const worst = times.at(-1);
  const over = times.filter((time) => time > LIMIT).length;
  console.log(`${page.version}, ${cpus().length} x ${cpus()[0].model.trim()}, load ${loadavg()[0].toFixed(1)}`);
  console.log(`From an answer to the next check, wasm, processor slowed ${SLOWER} times,`);
  console.log(`${times.length} answers of ${lengths.length} stored calls, least of ${TURNS} turns each:`);
  console.log(`  middle ${ms(times[Math.floor(times.length / 2)])}`);
  console.log(`  slowest ${ms(worst)}${over ? `  OVER ${LIMIT} ms, as are ${over} of them` : ''}`);
} finally {
  await page?.close();
  server.stdin.end();
}
