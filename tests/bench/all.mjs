// `./dev bench all [--small] [NAME ...]`: every bench, one after the other, and their
// ratios in one table, with the machine, in docs/bench.md. With names, those alone, in
// the page that stands. --small runs each at a size that only shows that it works, and
// prints the page in place of writing it.
//
// A figure that a bench no longer prints, and a bench that fails, make this fail: after
// the page is written, which then says so.

import { execFileSync, spawn } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { cpus, loadavg, release, totalmem, type } from 'node:os';
import { fileURLToPath } from 'node:url';

const small = process.argv.includes('--small');
const root = fileURLToPath(new URL('../..', import.meta.url));

/** A column of the trace's table, of our planner and of the fixed walk, single faults. */
function both(column) {
  const row = (planner) => `\\| as believed \\| 1 \\| ${planner} \\| \\d+ \\| ${column}`;
  return new RegExp(`${row('the trace')}[^]*?${row('fixed walk')}`);
}

/** The trace's share of right causes with those it names together, as believed and off by two. */
function named() {
  const row = (model) => `\\| ${model} \\| 1 \\| the trace \\| \\d+ (?:\\| [\\d.]+ ){4}\\| ([\\d.]+)`;
  return new RegExp(`${row('as believed')}[^]*?${row('off by two')}`);
}

/** What is run, and which figures are read from what it prints. A row: what is measured, how it is
 * found (the groups are joined), what it was to be. */
const PARTS = [
  {
    name: 'physics',
    args: [],
    find: (text) => sections(text),
  },
  {
    name: 'trace',
    args: small ? ['trace', '20'] : ['trace', '160'],
    rows: [
      ['One evidence set, pgmpy over ours', /one evidence set, .*: (\d+ times)$/m, ''],
      ['Minutes to a proven cause, the trace and a fixed walk', both('([\\d.]+)'), '30 % fewer at least'],
      ['Right causes named, the trace and a fixed walk, %', both('[\\d.]+ \\| [\\d.]+ \\| ([\\d.]+)'), '95 at least'],
      ['The right one among those it names, and the same with answers off by two, %', named(), '95 at least'],
      ['The trace over the optimum of small plants', /^\| all \|[ |]+[\d.]+ \| [\d.]+ \| ([\d.]+ %)/m, '5 % at most'],
    ],
  },
  {
    name: 'pace',
    args: ['pace'],
    rows: [
      ['From an answer to the next check, slowed 4 times, middle and slowest', /^ +middle ([\d.]+ ms)\n +slowest ([\d.]+ ms)/m, '50 ms at most'],
    ],
  },
  {
    name: 'refill',
    args: small ? ['refill', '500'] : ['refill', '20000'],
    rows: [
      ['Refill test: bias of the fill', /^Bias (-?[\d.]+ %)/m, 'under 1 %'],
      ['Most passes of a valve below need', /most passes of a valve below need ([\d.]+ %)/, '2.5 % at most'],
      ['95 % intervals of the fill that held', /^all +\d+ +-?[\d.]+ +[\d.]+ +([\d.]+)/m, '93 to 97 %'],
      ['Turns within a reading', /^all +(?:[-\d.]+ +){11}([\d.]+)/m, '99 % at least'],
      ['A leak of a tenth told, watched as planned', /^the same, watched as planned +([\d.]+) +[\d.]+$/m, '90 % at least'],
    ],
  },
  {
    name: 'report',
    args: ['report'],
    rows: [
      ['Report, ReportLab over ours in wasm', /^\| ReportLab[^|]*\|[^|]*\|[^|]*\| ([\d.e+]+) \|/m, 'more than 1'],
      ['Bytes of the report, ours and ReportLab', /^\| Coldsump, wasm[^\n]*\| (\d+) \|\n\| ReportLab[^\n]*\| (\d+) \|/m, ''],
    ],
  },
  {
    name: 'store',
    args: small ? ['store', '500'] : ['store'],
    rows: [
      ['Start with all on the phone over an empty app', /^ +of an empty app +([\d.]+)/m, '1.2 at most'],
      ['List', /^list .*?(\d+ ms) +\d+ ms/m, '200 ms at most'],
      ['Search', /^search, a name as it is .*?(\d+ ms) +\d+ ms/m, '200 ms at most'],
      ['Search, misspelt', /^search, a name misspelt .*?(\d+ ms) +\d+ ms/m, '200 ms at most'],
      ['Open a visit', /^open a visit {3}.*?(\d+ ms) +\d+ ms/m, '200 ms at most'],
    ],
  },
  {
    name: 'start',
    args: ['start'],
    rows: [
      ['Cold start without signal, slowed 4 times, over a bare page of Leptos', /of the bare page, middle +([\d.]+)/, '1.5 at most'],
      ['Largest paint of the start', /\(LCP\) +(\d+ ms)/, '2500 ms at most'],
      ['Slowest input to its paint', /\(INP\) +(\d+ ms)/, '200 ms at most'],
      ['Shifts not asked for', /\(CLS\) +([\d.]+)/, '0.1 at most'],
      ['Tap to its answer painted, middle and slowest', /painted, middle +(\d+ ms)[^]*?slowest +(\d+ ms)/, '100 ms at most'],
    ],
  },
  {
    name: 'soak',
    args: small ? ['soak', '240'] : ['soak'],
    rows: [
      ['Mark at the end of eight hours over one at the start', /^Refill test:[^]*?takes ([\d.]+) times/m, '1.5 at most'],
      ['Loop reading at the end over one at the start', /^Recovery:[^]*?takes ([\d.]+) times/m, '1.5 at most'],
      ['Memory that a mark holds', /^Refill test:[^]*?holds (-?\d+ bytes)/m, '2500 bytes at most'],
    ],
  },
];

/** The rivals of each table of the physics bench: what is timed, who, how many times ours. */
function sections(text) {
  const rows = [];
  let title = '';
  for (const line of text.split('\n')) {
    const cells = line.split('|').map((cell) => cell.trim());
    if (line && !line.startsWith('|')) title = line;
    if (cells.length < 7 || cells[1] === 'side' || cells[1].startsWith('---')) continue;
    if (cells[6] === '' || cells[1].startsWith('Coldsump')) continue; // ours
    const aim = /psychrolib/i.test(cells[1]) && !/python/i.test(cells[1]) ? '5 at least' : '';
    const [what] = title.split(/ from | \(/);
    rows.push([`${what}: ${cells[1]} over ours in wasm`, cells[4], aim]);
  }
  if (!rows.length) throw new Error('the physics bench printed no table');
  return rows;
}

function run(args) {
  return new Promise((done) => {
    const child = spawn('./dev', ['bench', ...args], { cwd: root, stdio: ['ignore', 'pipe', 'inherit'] });
    let text = '';
    child.stdout.on('data', (data) => {
      text += data;
      process.stdout.write(data);
    });
    child.on('close', (code) => done({ text, code }));
  });
}

const said = (command, ...args) => {
  try {
    return execFileSync(command, args, { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] })
      .trim()
      .split('\n')[0];
  } catch {
    return `${command}: not there`;
  }
};

const bad = [];
const table = [];
const printed = [];
const began = loadavg()[0];
const only = process.argv.slice(2).filter((word) => !word.startsWith('--'));
for (const part of PARTS.filter((p) => !only.length || only.includes(p.name))) {
  console.log(`\n== bench ${part.name}\n`);
  const { text, code } = await run(part.args);
  if (code !== 0) bad.push(`bench ${part.name} ended with ${code}`);
  printed.push(`## ./dev bench ${part.args.join(' ')}\n\n\`\`\`\n${text.trim()}\n\`\`\`\n`);
  try {
    const found = part.find?.(text) ?? [];
    table.push(...found.map(([what, figure, aim]) => [what, figure, aim, part.name]));
  } catch (error) {
    bad.push(error.message);
  }
  for (const [what, pattern, aim] of part.rows ?? []) {
    const match = text.match(pattern);
    if (!match) bad.push(`bench ${part.name} did not say: ${what}`);
    const figure = match ? match.slice(1).join(' and ') : 'not found';
    table.push([what, figure, aim, part.name]);
  }
}

const [cpu] = cpus();
const page = `# What the benches say

Written by \`./dev bench all\`, which runs every bench on one machine, one after the
other; each can be run alone. Ratios of times are of medians, the sides taking turns in
one run; above 1 the other is slower. A time by itself is this machine's. What each bench
does stands in \`DEVELOPERS.md\`. One that says "again by itself" was run later alone.

| machine | |
|---|---|
| processor | ${cpu.model.trim()}, ${cpus().length} cores |
| memory | ${(totalmem() / 2 ** 30).toFixed(1)} GiB |
| system | ${type()} ${release()}, load ${began.toFixed(1)} when it began |
| browser | ${said('chromium', '--version')} |
| tools | ${said('rustc', '--version')}; Node.js ${process.version}; ${said('python3', '--version')} |
| when | ${new Date().toISOString().slice(0, 10)} |

| measured | figure | was to be | bench |
|---|---|---|---|
${table.map((row) => `| ${row.join(' | ')} |`).join('\n')}
${bad.length ? `\nNot as it should be: ${bad.join('; ')}.\n` : ''}
${printed.join('\n')}`;

/** The page that stands, with these rows and what these benches printed in their places. */
function again(old) {
  const put = (text, pattern, by) => {
    if (!pattern.test(text)) bad.push(`docs/bench.md has no place for ${by.split('\n')[0]}`);
    return text.replace(pattern, () => by);
  };
  const plain = (text) => text.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
  let now = old;
  for (const row of table) now = put(now, new RegExp(`^\\| ${plain(row[0])} \\|.*$`, 'm'), `| ${row.join(' | ')} |`);
  for (const text of printed) {
    const [head] = text.split('\n');
    const dated = text.replace(head, `${head}\n\nAgain by itself, ${new Date().toISOString().slice(0, 10)}.`);
    now = put(now, new RegExp(`^${plain(head)}$[^]*?(?=^## |(?![^]))`, 'm'), `${dated}\n`);
  }
  return now;
}

const place = fileURLToPath(new URL('../../docs/bench.md', import.meta.url));
if (small) console.log(page);
else writeFileSync(place, only.length ? again(readFileSync(place, 'utf8')) : page);
if (bad.length) {
  console.error(bad.join('\n'));
  process.exit(1);
}
