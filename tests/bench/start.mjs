// How quick the app opens and answers on a slow phone. `./dev bench start`
// builds it and a bare page of Leptos with the same settings, keeps both
// offline with the same service worker, stops the server, and opens each in a
// new browser again and again with the processor slowed four times. Then it
// walks the main job at the pace of a quick thumb and times what every tap brings. Figures over a limit are
// marked; they never fail the run, a walk that can't be walked does.
//
//   node start.mjs HELLO_FOLDER

import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { cpus, loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

import { openPage, says } from './browser.mjs';

const SLOWER = 4;
const ROUNDS = 25;
const WALKS = 3;
const START_LIMIT = 1.5; // of the bare page
const TAP_LIMIT = 100; // ms
// A quick thumb rests so long between two taps, and so long at least where there
// is a card to read and a check to do first, and between two keys. Judgement, no source.
const THUMB = 400; // ms
const READING = 1500; // ms
const KEY = 80; // ms
// Before a page that is to be kept is closed, so that V8 keeps what it compiled.
const REST = 1000; // ms
// "Good" by web.dev/articles/vitals, read in 2025.
const GOOD = { LCP: 2500, INP: 200, CLS: 0.1 };

const here = (name) => fileURLToPath(new URL(name, import.meta.url));
const middle = (times) => [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)];
const ms = (time) => `${time.toFixed(0)} ms`;

const AT_HOME = "document.querySelector('[data-test=screen-home]')";

/** Runs in each new page before its own scripts. */
const WATCH = `
  let stands;
  window.home = new Promise((done) => { stands = done; });
  window.seen = { shifts: [], lcp: 0, events: [], taps: [], said: {} };
  const each = (type, does, more) =>
    new PerformanceObserver((list) => list.getEntries().forEach(does))
      .observe({ type, buffered: true, ...more });
  each('layout-shift', (e) => {
    if (e.hadRecentInput) return;
    const what = e.sources.map(({ node }) => (node?.outerHTML ?? node?.textContent ?? '').slice(0, 60));
    seen.shifts.push([e.startTime, e.value, location.hash.split('/').pop(), what]);
  });
  each('largest-contentful-paint', (e) => { seen.lcp = e.startTime; });
  each('event', (e) => {
    if (!e.interactionId) return;
    const of = e.target?.closest?.('[data-test]')?.dataset.test;
    const waits = Math.round(e.processingStart - e.startTime);
    seen.events.push([e.name, e.duration, of, waits, Math.round(e.processingEnd - e.processingStart)]);
  }, { durationThreshold: 16 });
  each('paint', (e) => { seen.said[e.name] = e.startTime; });
  // When home is drawn, since the page was asked for.
  new MutationObserver((_, watch) => {
    if (!${AT_HOME}) return;
    watch.disconnect();
    seen.said.drawn = performance.now();
    requestAnimationFrame(() => setTimeout(() => {
      window.homeAt = performance.now();
      stands();
    }));
  }).observe(document, { subtree: true, childList: true });
  // From the finger to the first change that is painted; the test's clock
  // changes by itself.
  let tap = null;
  addEventListener('click', (e) => {
    const name = e.target.closest('[data-test]')?.dataset.test ?? '';
    tap = { name, at: e.timeStamp };
  }, true);
  new MutationObserver((changes) => {
    const own = (c) => (c.target.parentElement ?? c.target).closest?.('[data-test=clock]');
    if (!tap || changes.every(own)) return;
    const of = tap;
    tap = null;
    requestAnimationFrame(() => setTimeout(() =>
      seen.taps.push([of.name, performance.now() - of.at])));
  }).observe(document, { subtree: true, childList: true, characterData: true, attributes: true });
`;

/** One page with its server and a profile that outlives the browser. */
class Site {
  constructor(folder) {
    this.folder = folder;
    this.profile = mkdtempSync(join(tmpdir(), 'coldsump-start-'));
    this.starts = [];
    this.marks = [];
  }

  /** Serves it once, until the offline copy is whole, then never again. */
  async keep() {
    const server = spawn(
      process.execPath,
      [here('../../tools/serve.mjs'), '--dir', this.folder, '--port', '0', '--until-stdin-ends'],
      { stdio: ['pipe', 'pipe', 'inherit'] },
    );
    this.url = `${await says(server, /^listening (\S+)/)}/`;
    // Twice: V8 keeps compiled code of the offline copy from its second use.
    for (let n = 0; n < 3; n++) {
      const page = await openPage(this.url, this.profile);
      this.version = page.version;
      await until(page, `document.documentElement.dataset.offline === 'ready' && ${AT_HOME}`);
      await new Promise((done) => setTimeout(done, REST));
      await page.close();
    }
    server.stdin.end();
    server.kill();
  }

  /** A new browser on it, slowed; answers when home is drawn. */
  async open() {
    const page = await openPage('about:blank', this.profile);
    await page.cdp('Emulation.setDeviceMetricsOverride', {
      width: 390,
      height: 844,
      deviceScaleFactor: 2,
      mobile: true,
    });
    await page.cdp('Page.addScriptToEvaluateOnNewDocument', { source: WATCH });
    await page.cdp('Emulation.setCPUThrottlingRate', { rate: SLOWER });
    await page.goto(this.url);
    // Asked once: to ask again and again would be work for the slowed page.
    await page.later('home.then(arguments[0])').catch((error) => {
      throw new Error(`home did not stay: does the first part lack something? ./dev test browser first\n${error}`);
    });
    return page;
  }

  async start() {
    const page = await this.open();
    const seen = await page.run(`
      const parts = performance.getEntriesByType('resource')
        .map((e) => [e.name.split('/').pop(), Math.round(e.startTime), Math.round(e.responseEnd)]);
      return { home: homeAt, said: seen.said, parts,
        page: performance.getEntriesByType('navigation')[0].responseEnd };`);
    await page.close();
    this.starts.push(seen.home);
    this.marks.push(seen);
  }

  done() {
    rmSync(this.profile, { recursive: true, force: true, maxRetries: 20 });
  }
}

async function until(page, script) {
  for (const from = Date.now(); Date.now() - from < 120_000; ) {
    if (await page.run(`return Boolean(${script})`)) return;
  }
  throw new Error(`never came: ${script}`);
}

/** The worst run of shifts: less than 1 s between them, 5 s in all. */
function worstShift(shifts) {
  let [worst, sum, first, last] = [0, 0, -Infinity, -Infinity];
  for (const [at, value] of shifts) {
    if (at - last > 1000 || at - first > 5000) [sum, first] = [0, at];
    sum += value;
    last = at;
    worst = Math.max(worst, sum);
  }
  return worst;
}

/** The main job's taps; each waits for what the one before brought. */
async function walk(page) {
  const at = (test) => `document.querySelector('[data-test="${test}"]')`;
  const there = (test) => until(page, at(test));
  const tap = async (test, rest = THUMB) => {
    await until(page, `${at(test)} && !${at(test)}.disabled`);
    await new Promise((done) => setTimeout(done, rest));
    const before = await page.run('return seen.taps.length');
    await page.tap(`[data-test="${test}"]`);
    await until(page, `seen.taps.length > ${before}`);
  };
  // A key at a time, as a keyboard gives them: WebDriver sends a text at once, which
  // is painted once, long after its first key.
  const type = async (test, text) => {
    await page.run(`${at(test)}.scrollIntoView({ block: 'center' }); ${at(test)}.focus()`);
    for (const key of text) {
      await page.cdp('Input.dispatchKeyEvent', { type: 'keyDown', key, text: key });
      await page.cdp('Input.dispatchKeyEvent', { type: 'keyUp', key });
      await new Promise((done) => setTimeout(done, KEY));
    }
  };
  const mark = async (name) => {
    await until(page, `${at('next-mark')}?.dataset.mark === '${name}'`);
    await tap('next-mark');
  };
  await tap('open-demo');
  await there('screen-overview');
  await tap('next');
  await there('screen-found');
  for (const n of [0, 1, 3]) await tap(`machine-${n}-high-head`);
  await type('head-0', '205');
  await type('entering-water', '97');
  await type('basin-level', '14 1/2');
  await type('control-voltage', '24.3');
  await tap('machine-2-running');
  await tap('next');
  await there('screen-numbers');
  await tap('next');
  await there('check');
  // The first answer that each card offers, whatever it says.
  for (let n = 0; n < 4; n++) {
    const script = "return document.querySelector('[data-test^=answer-]')?.dataset.test";
    const answer = await page.run(script);
    if (!answer) break;
    const check = await page.run(`return ${at('check')}.dataset.check`);
    await tap(answer, READING);
    await until(page, `${at('check')}?.dataset.check !== '${check}'`);
  }
  await page.run(`location.hash = location.hash.replace(/[^/]*$/, 'refill')`);
  await tap('begin-test');
  await mark('DrawdownBegan');
  await tap('level-down');
  await tap('mark-level');
  await mark('CallSeen');
  await mark('WaterSeen');
  await mark('DrawdownEnded');
  for (let n = 0; n < 4; n++) {
    await tap('level-up');
    await tap('mark-level');
  }
  await mark('ShutOff');
  await mark('Stopped');
  await there('verdict');
  await tap('next');
  await there('screen-left');
  await type('work', 'Probe cleaned');
  await tap('save-cause');
  await tap('leaving-BypassShut-So');
  await tap('leaving-CoversOn-So');
  await type('note', 'Ask for a spare probe');
  await tap('keep-note');
  await tap('next');
  await there('screen-report');
  await tap('make-report');
  await there('report-kept');
  await tap('to-outbox');
  await there('outgoing');
}

const app = new Site(here('../../dist'));
const bare = new Site(process.argv[2]);
const row = (name, value, limit, show = ms) => {
  const over = value > limit ? `  OVER ${show(limit)}` : '';
  console.log(name.padEnd(40) + show(value).padStart(9) + over);
};

try {
  await app.keep();
  await bare.keep();
  console.log(`${app.version}, ${cpus().length} x ${cpus()[0].model}, load ${loadavg()[0].toFixed(1)}`);
  console.log(`cold start without signal, processor slowed ${SLOWER} times, ${ROUNDS} rounds in turns\n`);
  for (let n = 0; n < ROUNDS; n++) {
    await bare.start();
    await app.start();
  }
  const ratio = (x) => x.toFixed(2);
  row('bare page, least', Math.min(...bare.starts));
  row('bare page, middle', middle(bare.starts));
  row('app, least', Math.min(...app.starts));
  row('app, middle', middle(app.starts));
  row('  of the bare page, least', Math.min(...app.starts) / Math.min(...bare.starts), START_LIMIT, ratio);
  row('  of the bare page, middle', middle(app.starts) / middle(bare.starts), START_LIMIT, ratio);
  if (process.env.COLDSUMP_DETAIL) {
    for (const site of [bare, app]) {
      const quickest = site.starts.indexOf(Math.min(...site.starts));
      console.log(JSON.stringify(site.marks[quickest]));
    }
  }

  // Walked on as many new phones; of each tap the least counts, as of the starts: what
  // another guest of the machine takes is not the app's.
  const walks = [];
  for (let n = 0; n < WALKS; n++) {
    const fresh = new Site(here('../../dist'));
    try {
      await fresh.keep();
      const page = await fresh.open();
      await walk(page);
      walks.push(await page.run('return window.seen'));
      await page.close();
    } finally {
      fresh.done();
    }
  }
  const [first] = walks;
  if (walks.some(({ taps }) => taps.map(([name]) => name).join() !== first.taps.map(([name]) => name).join()))
    throw new Error('the walks differ');
  const least = (of) => Math.min(...walks.map(of));
  console.log(`\nthe main job, ${first.taps.length} taps, processor slowed ${SLOWER} times, least of ${WALKS} walks\n`);
  row('largest paint of the start (LCP)', least((seen) => seen.lcp), GOOD.LCP);
  const slowestInput = (seen) => Math.max(16, ...seen.events.map(([, time]) => time));
  row('slowest input to its paint (INP)', least(slowestInput), GOOD.INP);
  row('shifts not asked for (CLS)', Math.max(...walks.map((seen) => worstShift(seen.shifts))), GOOD.CLS, (x) =>
    x.toFixed(3),
  );
  if (process.env.COLDSUMP_DETAIL) {
    for (const seen of walks) {
      seen.shifts.forEach((shift) => console.log(JSON.stringify(shift)));
      // An input by name, until it is painted, on what, waits, works.
      const slow = seen.events.filter(([, time]) => time > TAP_LIMIT);
      slow.forEach((event) => console.log(JSON.stringify(event)));
    }
  }
  const taps = first.taps.map(([name], n) => [name, least((seen) => seen.taps[n][1])]);
  const times = taps.map(([, time]) => time);
  row('tap to its answer painted, middle', middle(times));
  row('tap to its answer painted, slowest', Math.max(...times), TAP_LIMIT);
  for (const [n, [name, time]] of taps.entries()) {
    const what = `${n + 1} ${name}`;
    if (time > TAP_LIMIT || process.env.COLDSUMP_DETAIL) console.log(`  ${what.padEnd(38)}${ms(time).padStart(9)}`);
  }
} finally {
  app.done();
  bare.done();
}
