// How quick the app stays with years of work on the phone. `./dev bench store`
// builds it, seeds 5,000 visits with 300,000 entries and 2,000 photos into the
// release build's own storage in headless Chromium, and times, with the
// processor slowed four times: start, list, search, opening a visit. Times over
// the limit are marked; they never fail the run, wrong answers do.

import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { cpus, loadavg } from 'node:os';
import { fileURLToPath } from 'node:url';

import { openPage, says } from './browser.mjs';
import { seed } from './store_seed.mjs';

const VISITS = Number(process.argv[2] ?? 5_000);
const SITES = Math.min(600, VISITS / 5);
const PHOTOS = 2_000;
const PHOTO_BYTES = 40_000;
const ENTRIES_A_VISIT = 60;
const SLOWER = 4;
const ROUNDS = 9;
const LIMIT = 200; // ms
const START_LIMIT = 1.2; // of an empty app

const here = (name) => fileURLToPath(new URL(name, import.meta.url));
const middle = (times) => [...times].sort((a, b) => a - b)[Math.floor(times.length / 2)];
const worst = (times) => Math.max(...times);
const least = (times) => Math.min(...times);
const ms = (time) => `${time.toFixed(0)} ms`;

/** A whole visit in its stored form, of the fixture that every build must read. */
function template() {
  const all = JSON.parse(readFileSync(here('../fixtures/entries-v1.json'), 'utf8'));
  const kind = (e) => (typeof e.body === 'string' ? e.body : Object.keys(e.body)[0]);
  const site = all.find((e) => kind(e) === 'site-described');
  const spare = ['leaving-answered', 'note-written', 'withdrawn'];
  let machines = 2;
  const visit = all.filter((e) => {
    if (kind(e) === 'machine-seen') return machines-- > 0;
    return e !== site && !spare.includes(kind(e));
  });
  if (visit.length !== ENTRIES_A_VISIT) throw new Error(`${visit.length} entries a visit`);
  return { site, visit };
}

/** For the page: does something and answers when it is drawn, in ms. */
const timing = (act, drawn) => `
  const done = arguments[0];
  const is = () => (${drawn});
  const from = performance.now();
  const said = () => requestAnimationFrame(() => setTimeout(() => done(performance.now() - from)));
  const watch = new MutationObserver(() => {
    if (!is()) return;
    watch.disconnect();
    said();
  });
  setTimeout(() => done(null), 20_000);
  watch.observe(document, { subtree: true, childList: true, characterData: true });
  ${act};
  if (is()) {
    watch.disconnect();
    said();
  }
`;

/** Runs in each new page: notes when home is drawn, since the page was asked for. */
const NOTE_START = `
  new MutationObserver((_, watch) => {
    if (!document.querySelector('[data-test=screen-home]')) return;
    watch.disconnect();
    requestAnimationFrame(() => setTimeout(() => (window.homeAt = performance.now())));
  }).observe(document, { subtree: true, childList: true });
`;

const server = spawn(
  process.execPath,
  [here('../../tools/serve.mjs'), '--dir', here('../../dist'), '--port', '0', '--until-stdin-ends'],
  { stdio: ['pipe', 'pipe', 'inherit'] },
);
const url = await says(server, /^listening (\S+)/);
const fresh = await openPage(`${url}/`);
const page = await openPage(`${url}/`);
const row = (name, times, limit) => {
  const over = limit && middle(times) > limit ? `  OVER ${ms(limit)}` : '';
  const all = [least(times), middle(times), worst(times)].map((t) => ms(t).padStart(9)).join('');
  console.log(name.padEnd(34) + all + over);
};
const until = async (of, what, script) => {
  for (const from = Date.now(); Date.now() - from < 300_000; ) {
    if (await of.run(`return Boolean(${script})`)) return;
  }
  throw new Error(`never came: ${what}`);
};
const timed = async (act, drawn) => {
  const time = await page.later(timing(act, drawn));
  if (time === null) throw new Error(`never drawn: ${drawn}`);
  return time;
};
const start = async (of) => {
  await of.goto('about:blank');
  await of.goto(`${url}/#/`);
  await until(of, 'home', 'window.homeAt');
  return of.run('return window.homeAt');
};
const slower = (of, rate) => of.cdp('Emulation.setCPUThrottlingRate', { rate });

try {
  console.log(`${page.version}, ${cpus().length} x ${cpus()[0].model}, load ${loadavg()[0].toFixed(1)}`);
  for (const one of [fresh, page]) {
    await one.cdp('Emulation.setDeviceMetricsOverride', {
      width: 390,
      height: 844,
      deviceScaleFactor: 2,
      mobile: true,
    });
    await one.cdp('Page.addScriptToEvaluateOnNewDocument', { source: NOTE_START });
    await until(one, 'offline copy', "document.documentElement.dataset.offline === 'ready'");
  }

  const { site, visit } = template();
  await page.goto('about:blank');
  await page.goto(`${url}/manifest.webmanifest`);
  const seeded = Date.now();
  const wanted = { visits: VISITS, sites: SITES, photos: PHOTOS, photoBytes: PHOTO_BYTES };
  const script = `
    const [site, visit, wanted, done] = arguments;
    (${seed})(site, visit, wanted).then(done, (e) => done(String(e)));`;
  const held = await page.later(script, site, visit, wanted);
  if (held?.visits !== VISITS) throw new Error(`seeding failed: ${JSON.stringify(held)}`);
  console.log(
    `${held.visits} visits, ${held.entries} entries, ${PHOTOS} photos at ${SITES} sites, ` +
      `seeded in ${((Date.now() - seeded) / 1000).toFixed(0)} s`,
  );
  const again = await start(page);
  console.log(`lists made anew, processor not slowed: ${(again / 1000).toFixed(1)} s, once after an update`);

  const [empty, full] = [[], []];
  for (const one of [fresh, page]) await slower(one, SLOWER);
  // In turns, so that a busy moment of the machine hits both.
  for (let n = 0; n <= ROUNDS; n++) {
    empty.push(await start(fresh));
    full.push(await start(page));
  }
  await fresh.goto('about:blank');
  const rows = "document.querySelectorAll('[data-test=visit-row]').length";
  await until(page, 'rows', `${rows} === 10`);
  console.log(`\n${`processor slowed ${SLOWER} times, ${ROUNDS} rounds`.padEnd(34)}    least   middle    worst`);
  empty.shift();
  full.shift();
  row('start, empty', empty);
  row('start, all on the phone', full);
  const ratios = [least, middle].map((of) => of(full) / of(empty));
  const over = Math.min(...ratios) > START_LIMIT ? `  OVER ${START_LIMIT}` : '';
  const said = ratios.map((ratio) => ratio.toFixed(2).padStart(9)).join('');
  console.log('  of an empty app'.padEnd(34) + said + over);

  const go = (hash) => `location.hash = '${hash}'`;
  const shows = (test) => `document.querySelector('[data-test=${test}]') !== null`;
  const [list, search, misspelt, open, odds] = [[], [], [], [], []];
  for (let n = 0; n < ROUNDS; n++) {
    await timed(go('#/settings'), shows('screen-settings'));
    list.push(await timed(go('#/'), `${rows} === 10`));
    const type = (text) =>
      `{ const box = document.querySelector('[data-test=search]'); box.value = '${text}';
         box.dispatchEvent(new Event('input', { bubbles: true })); }`;
    const first = "document.querySelector('[data-test=site-row] .name')?.textContent";
    search.push(await timed(type(held.names[n]), `${first} === '${held.names[n]}'`));
    await timed(type(''), `${rows} === 10`);
    // Two letters swapped.
    const name = held.names[n + ROUNDS];
    const wrong = name[0] + name[2] + name[1] + name.slice(3);
    misspelt.push(await timed(type(wrong), `${first} === '${name}'`));
    await timed(type(''), `${rows} === 10`);
    // Never opened before, from the newest to the oldest.
    const at = 5 * Math.floor((n * (VISITS / 5 - 1)) / (ROUNDS - 1));
    for (const [times, place] of [[open, at + 1], [odds, at]]) {
      // `ids` is newest first, and each fifth from the oldest has no cause.
      const id = held.ids[VISITS - 1 - place];
      times.push(await timed(go(`#/visit/${id}/`), shows('screen-overview')));
      if (!(await page.run(`return ${shows('to-report')}`))) throw new Error('a visit without rows');
      await timed(go('#/'), `${rows} === 10`);
    }
  }
  row('list', list, LIMIT);
  row('search, a name as it is', search, LIMIT);
  row('search, a name misspelt', misspelt, LIMIT);
  row('open a visit', open, LIMIT);
  row('open a visit without a cause', odds, LIMIT);
} finally {
  await Promise.all([page.close(), fresh.close()]);
  server.stdin.end();
  server.kill();
}
