// The page after the program died: what happened, a backup, a new start. Plain
// script over the records themselves; nothing of the program is used.

const root = document.documentElement;
const SAID = {
  title: ['Coldsump stopped', 'Coldsump se detuvo'],
  what: [
    'A fault in the program stopped it. What you saved is on this phone and was not changed.',
    'Una falla del programa lo detuvo. Lo que guardó está en este teléfono y no se cambió.',
  ],
  next: [
    'Start it again to go on. If it stops again, save a backup first: any Coldsump can take it in.',
    'Ábrala otra vez para seguir. Si se detiene de nuevo, guarde antes un respaldo: cualquier Coldsump puede meterlo.',
  ],
  backup: ['Save a backup', 'Guardar un respaldo'],
  gathering: ['Gathering', 'Reuniendo'],
  file: ['Save the file', 'Guardar el archivo'],
  share: ['Share the backup', 'Compartir el respaldo'],
  saved: [
    'The backup is ready. Entries: {n}. Files: {f}.',
    'El respaldo está listo. Anotaciones: {n}. Archivos: {f}.',
  ],
  none: ['Nothing is kept on this phone yet.', 'Todavía no hay nada guardado en este teléfono.'],
  failed: ['The backup could not be made.', 'No se pudo hacer el respaldo.'],
  sealed: [
    'The backup is sealed: your passphrase opens it where it is taken in.',
    'El respaldo va sellado: su frase lo abre donde se meta.',
  ],
  waits: [
    'What the storage did not take is only on this page. Entries: {n}. Save a backup before you start again.',
    'Lo que el teléfono no pudo guardar está solo en esta página. Anotaciones: {n}. Guarde un respaldo antes de abrir otra vez.',
  ],
  again: ['Start again', 'Abrir otra vez'],
};
const say = (name) => SAID[name][Number(/^es\b/i.test(root.lang))];

const wait = (request) =>
  new Promise((done, fail) => {
    request.addEventListener('success', () => done(request.result));
    request.addEventListener('error', () => fail(request.error));
  });

/** The records as they are; `undefined` when there are none. */
async function open() {
  const request = indexedDB.open('coldsump');
  let made = false;
  request.addEventListener('upgradeneeded', () => {
    made = true; // there was none: leave none behind
    request.transaction.abort();
  });
  return wait(request).catch((error) => {
    if (made) return undefined;
    throw error;
  });
}

function base64(bytes) {
  if (bytes.length < 20_000) return btoa(String.fromCharCode(...bytes));
  return new Promise((done, fail) => {
    const reader = new FileReader();
    reader.addEventListener('load', () => done(reader.result.slice(reader.result.indexOf(',') + 1)));
    reader.addEventListener('error', () => fail(reader.error));
    reader.readAsDataURL(new Blob([bytes]));
  });
}

async function sha256(bytes) {
  const sum = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes));
  return [...sum].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}

/** What the store did not take: rows that the program laid on the window. */
const waiting = () => window.coldsumpWaiting ?? { entries: [], files: [] };

/** A row as it stands in a backup; a sealed one stays sealed. */
async function copied(row) {
  const { id, about, entry, name, type, bytes, sealed } = row;
  if (sealed) return { id, about, sealed: await base64(sealed) };
  if (!bytes) return entry ?? null;
  return { id, name, 'media-type': type, sha256: await sha256(bytes), base64: await base64(bytes) };
}

/** The backup's text in parts, in the form the program takes in: 1, or 2 under a lock. */
async function gather(now) {
  const last = waiting();
  const db = await open().catch((error) => {
    if (last.entries.length === 0) throw error;
    return undefined; // what waits is worth a backup by itself
  });
  if (!db && last.entries.length === 0) return undefined;
  const store = (name) => db.transaction(name).objectStore(name);
  const lock = db ? (await wait(store('texts').get('lock')))?.text : last.lock;
  const made = now.toISOString().slice(0, 16).replace('T', ' ');
  const parts = [
    `{"coldsump-backup":${lock ? 2 : 1},"made":"${made}",`,
    lock ? `"lock":${JSON.stringify(lock)},` : '',
  ];
  const counts = {};
  for (const [name, batch] of [['entries', 500], ['files', 1]]) {
    parts.push(`${name === 'files' ? '],' : ''}"${name}":[`);
    let count = 0;
    const add = async (rows) => {
      const copies = await Promise.all(rows.map(copied));
      if (copies.length) parts.push((count ? ',' : '') + copies.map((copy) => JSON.stringify(copy)).join(','));
      count += copies.length;
    };
    const left = new Map(last[name].map((row) => [row.id, row]));
    let after;
    while (db) {
      const rows = await wait(store(name).getAll(after, batch));
      if (rows.length === 0) break;
      after = IDBKeyRange.lowerBound(rows.at(-1).id, true);
      await add(rows);
      for (const { id } of rows) left.delete(id);
    }
    await add([...left.values()]);
    counts[name] = count;
  }
  parts.push(']}');
  db?.close();
  return { parts, lock, ...counts };
}

function make(tag, text, test, more = {}) {
  const element = Object.assign(document.createElement(tag), { textContent: text, ...more });
  element.dataset.test = test;
  return element;
}

/** Makes the backup, saves it, and offers the share sheet where there is one. */
async function save(button, line) {
  button.disabled = true;
  button.textContent = say('gathering');
  try {
    const here = new Date();
    const now = new Date(here.getTime() - here.getTimezoneOffset() * 60_000);
    const all = await gather(now);
    line.textContent = all
      ? `${say('saved').replace('{n}', all.entries).replace('{f}', all.files)} ${all.lock ? say('sealed') : ''}`
      : say('none');
    if (all) {
      const name = `coldsump-backup-${now.toISOString().slice(0, 10)}.json`;
      const file = new File(all.parts, name, { type: 'application/json' });
      const link = make('a', say('file'), 'rescue-link', {
        href: URL.createObjectURL(file),
        download: name,
        className: 'button',
      });
      const files = [file];
      if (navigator.canShare?.({ files })) {
        // Where there is a share sheet, a download may lead out of the app: by choice only.
        const share = make('button', say('share'), 'rescue-share', { type: 'button' });
        share.addEventListener('click', () => navigator.share({ files }).catch(() => undefined));
        line.after(share, link);
      } else {
        link.click();
      }
    }
  } catch (error) {
    line.textContent = `${say('failed')} (${error})`;
    console.error(error);
  }
  button.textContent = say('backup');
  button.disabled = false;
}

/** Starts again; at the first screen when the one that stood here stopped twice. */
function again() {
  const key = 'coldsump-stopped';
  try {
    if (sessionStorage.getItem(key) === location.hash) history.replaceState(null, '', './');
    sessionStorage.setItem(key, location.hash);
  } catch {
    // No storage for it: start where it stood.
  }
  if (root.dataset.update === 'waiting') window.dispatchEvent(new Event('coldsump-take-over'));
  else location.reload();
}

/** Puts the page in place of the dead program; `detail` is its last word. */
export function show(detail) {
  // The dead program's clocks must not call into it again.
  for (let id = setTimeout(() => undefined, 0); id > 0; id -= 1) clearTimeout(id);
  const page = make('div', '', 'stopped', { className: 'screen' });
  const header = document.createElement('header');
  header.append(make('h1', say('title'), 'stopped-title', { tabIndex: -1 }));
  const main = document.createElement('main');
  const line = make('p', '', 'rescue-said');
  line.setAttribute('role', 'status');
  const backup = make('button', say('backup'), 'rescue-backup', { type: 'button' });
  backup.addEventListener('click', () => save(backup, line));
  const count = waiting().entries.length;
  main.append(
    make('p', say('what'), 'stopped-what'),
    count
      ? make('strong', say('waits').replace('{n}', count), 'stopped-waits')
      : make('p', say('next'), 'stopped-next'),
    backup,
    line,
    // The build leaves out where in the program it was.
    make('p', detail.replace(/^panicked at <redacted>:0:0:\s*/, ''), 'stopped-why', { className: 'plain-text sub' }),
  );
  const act = Object.assign(document.createElement('div'), { className: 'act' });
  const restart = make('button', say('again'), 'restart', { type: 'button', className: 'primary' });
  restart.addEventListener('click', again);
  act.append(restart);
  page.append(header, main, act);
  document.body.replaceChildren(page);
  // An answer still on its way may wake the dead program: it draws nothing more,
  // and disk.js lets it write nothing more.
  const keep = () => {
    for (const child of [...document.body.children]) if (child !== page) child.remove();
  };
  new MutationObserver(keep).observe(document.body, { childList: true });
  document.title = `${say('title')} · Coldsump`;
  header.firstChild.focus();
}
