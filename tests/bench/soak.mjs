// Eight hours of readings, one each ten seconds, in the release build: first in a
// refill test, then of the loop recovering. `./dev bench soak [READINGS]` builds
// and runs it; the hours are the page's clock moved on. Printed: how long a tap
// takes until the reading is on disk and drawn, at the beginning and at the end, and
// what the page holds after its garbage was collected. It fails when a reading
// takes longer and longer, or when memory grows by more than the readings weigh.

import { spawn } from 'node:child_process';
import { cpus, loadavg } from 'node:os';
import { fileURLToPath } from 'node:url';

import { openPage, says } from './browser.mjs';

const READINGS = Number(process.argv[2] ?? 2_880);
const SECONDS = 10;
const BATCHES = 12;
const SLOWER = 1.5; // the last batch may take so much longer than the second, and
const SPARE = 15; // so many ms besides
const EACH = 2_500; // bytes a reading may weigh, wasm and JavaScript together

const here = (name) => fileURLToPath(new URL(name, import.meta.url));
const middle = (times) => [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)];

/** Runs before the page: its clocks can be moved, and its memory is known. */
const BEFORE = `{
  const wall = Date.now.bind(Date), steady = performance.now.bind(performance);
  window.skew = 0;
  window.realNow = steady;
  Date.now = () => wall() + window.skew;
  performance.now = () => steady() + window.skew;
  for (const name of ['instantiate', 'instantiateStreaming']) {
    const made = WebAssembly[name];
    WebAssembly[name] = async (...args) => {
      const result = await made.apply(WebAssembly, args);
      const memory = (result.instance ?? result).exports.memory;
      if (memory) window.wasmMemory = memory;
      return result;
    };
  }
}`;

/** In the page: \`plan\` is a list of taps, each with what shows that it is done. */
async function work(plan, seconds) {
  const one = (test) => document.querySelector(`[data-test=${test}]`);
  const times = [];
  for (const { taps, text, list } of plan) {
    window.skew += seconds * 1000;
    const stamp = () => {
      const row = document.querySelector(`${list} li:not(.gap)`);
      return row ? row.dataset.entry ?? row.textContent + row.parentNode.dataset.count : '';
    };
    if (text) {
      const box = one(text[0]);
      box.value = text[1];
      box.dispatchEvent(new Event('input', { bubbles: true }));
    }
    const count = () => document.querySelectorAll(`${list} li`).length;
    const before = [stamp(), count()];
    const from = window.realNow();
    for (const tap of taps) {
      const button = one(tap);
      if (!button) throw new Error(`no ${tap}`);
      button.click();
    }
    await new Promise((done, fail) => {
      const is = () => stamp() !== before[0] || count() !== before[1];
      const drawn = () => requestAnimationFrame(() => setTimeout(done));
      if (is()) return drawn();
      const watch = new MutationObserver(() => {
        if (!is()) return;
        watch.disconnect();
        clearTimeout(limit);
        drawn();
      });
      const limit = setTimeout(() => fail(new Error(`never shown: ${taps}`)), 60_000);
      watch.observe(document, { subtree: true, childList: true, characterData: true, attributes: true });
    });
    times.push(window.realNow() - from);
  }
  return times;
}

const server = spawn(
  process.execPath,
  [here('../../tools/serve.mjs'), '--dir', here('../../dist'), '--port', '0', '--until-stdin-ends'],
  { stdio: ['pipe', 'pipe', 'inherit'] },
);
const url = await says(server, /^listening (\S+)/);
const page = await openPage('about:blank');
const until = async (what, script) => {
  for (const from = Date.now(); Date.now() - from < 120_000; ) {
    if (await page.run(`return Boolean(${script})`)) return;
  }
  throw new Error(`never came: ${what}`);
};
const tap = async (test) => {
  await until(test, `document.querySelector('[data-test=${test}]')`);
  await page.run(`document.querySelector('[data-test=${test}]').click()`);
};
const run = async (plan) => {
  const script = `const done = arguments[2];
    (${work})(arguments[0], arguments[1]).then(done, (e) => done(String(e)));`;
  const times = await page.later(script, plan, SECONDS);
  if (typeof times === 'string') throw new Error(times);
  return times;
};
const weigh = async () => {
  await page.cdp('HeapProfiler.collectGarbage', {});
  const { usedSize } = await page.cdp('Runtime.getHeapUsage', {});
  const nodes = await page.run('return document.getElementsByTagName("*").length');
  const wasm = await page.run('return window.wasmMemory.buffer.byteLength');
  return { heap: usedSize, nodes, wasm };
};
/** Seconds of the processor that the page has used: a busy machine does not count. */
const used = async () => {
  const { metrics } = await page.cdp('Performance.getMetrics', {});
  return metrics.find((metric) => metric.name === 'TaskDuration').value;
};

const bad = [];
/** One log: batches of readings made by \`plan(n)\`, printed and judged. */
async function soak(title, plan, first = []) {
  const hours = ((READINGS * SECONDS) / 3600).toFixed(1);
  console.log(`\n${title}: ${READINGS} readings in ${hours} simulated hours\n`);
  console.log('| readings | processor, one | until drawn, median | slowest | wasm | JS heap | elements |');
  console.log('|---|---|---|---|---|---|---|');
  if (first.length) await run(first);
  const rows = [];
  for (let batch = 0; batch < BATCHES; batch += 1) {
    const [from, to] = [batch, batch + 1].map((n) => Math.round((n * READINGS) / BATCHES));
    const before = await used();
    const times = await run(Array.from({ length: to - from }, (_, n) => plan(from + n)).flat());
    const cost = (1e3 * ((await used()) - before)) / times.length;
    const row = { to, cost, time: middle(times), most: Math.max(...times), ...(await weigh()) };
    rows.push(row);
    const mb = (bytes) => `${(bytes / 1e6).toFixed(2)} MB`;
    console.log(
      `| ${to} | ${cost.toFixed(1)} ms | ${row.time.toFixed(1)} ms | ${row.most.toFixed(0)} ms | ${mb(row.wasm)} | ` +
        `${mb(row.heap)} | ${row.nodes} |`,
    );
  }
  // The first batch still fills the lists that are shown.
  const [early, late] = [rows[1], rows[rows.length - 1]];
  const grown = late.wasm + late.heap - early.wasm - early.heap;
  const each = grown / (late.to - early.to);
  console.log(
    `\nA reading at the end takes ${(late.cost / early.cost).toFixed(2)} times one at the ` +
      `beginning; each holds ${each.toFixed(0)} bytes of memory.`,
  );
  if (late.cost > SLOWER * early.cost + SPARE) bad.push(`${title}: slower at the end`);
  // Wasm memory grows by doubling or so: a page or two is no leak.
  if (grown > EACH * (late.to - early.to) + 4e6) bad.push(`${title}: memory grows`);
  if (late.nodes > early.nodes + 1_500) bad.push(`${title}: the page grows`);
}

try {
  console.log(`${page.version}, ${cpus().length} x ${cpus()[0].model}, load ${loadavg()[0].toFixed(1)}`);
  await page.cdp('Emulation.setDeviceMetricsOverride', {
    width: 390,
    height: 844,
    deviceScaleFactor: 2,
    mobile: true,
  });
  await page.cdp('Page.addScriptToEvaluateOnNewDocument', { source: BEFORE });
  await page.cdp('Performance.enable', { timeDomain: 'threadTicks' });
  await page.goto(`${url}/`);
  await tap('open-demo');
  await tap('to-refill');
  await tap('begin-test');
  const marks = '[data-test=marks]';
  const next = { taps: ['next-mark'], list: marks };
  const level = (way) => ({ taps: way ? [way, 'mark-level'] : ['mark-level'], list: marks });
  // Down for eight minutes, up for twelve, then it holds, give or take a step.
  await soak(
    'Refill test',
    (n) => {
      if (n === 48) return [level(), next, next, next];
      if (n === 120) return [level(), next];
      const way = n < 48 ? 'level-down' : n < 120 ? 'level-up' : n % 2 ? 'level-up' : 'level-down';
      return [level(n < 120 && n % 2 ? undefined : way)];
    },
    [next],
  );
  await tap('next-mark'); // ends the test
  await tap('recovery');
  const readings = '[data-test=loop-readings]';
  await soak('Recovery', (n) => {
    const hot = 20 * Math.exp((-n * SECONDS) / 1800);
    const text = n % 2 ? ['loop-head', `${(230 + 4 * hot).toFixed(1)}`] : ['loop-entering', `${(86 + hot).toFixed(2)}`];
    return [{ text, taps: [n % 2 ? 'note-head' : 'note-entering'], list: readings }];
  });
  if (bad.length) throw new Error(bad.join('; '));
} finally {
  await page.close();
  server.stdin.end();
  server.kill();
}
