// The lock over the records: rows are sealed on their way into IndexedDB and opened
// on their way out, here and nowhere else, so that no part of the program can leave
// one clear. The cipher is the program's (src/store/seal.rs). The form of what is
// kept: docs/lock.md.

import './disk.js'; // below this

const root = document.documentElement;
const KEYS = { entries: ['id', 'about'], lines: ['key'], texts: ['key'], files: ['id'] };
// Rows of one batch of a rewrite.
const BATCH = { entries: 200, lines: 200, texts: 200, files: 4 };
// Asked for before the lock is open; and the phone's random name.
const CLEAR = /^(lock|summary|device|setting .*)$/;

// Of PBKDF2-HMAC-SHA-256, for a new lock: OWASP's Password Storage Cheat Sheet (2023).
const ROUNDS = 600_000;
const MOST_ROUNDS = 10_000_000;

/** The lock as kept; its key and cipher while it is open. */
let lock;
let key;
let cipher; // (seals, place, bytes) => bytes, or undefined when they do not open
let cipherOf; // key => cipher

const { transaction } = IDBDatabase.prototype;
const { add, put } = IDBObjectStore.prototype;
const { get: result } = Object.getOwnPropertyDescriptor(IDBRequest.prototype, 'result');

/** Which lock a text speaks of, and whether rows are sealed for it. */
const sealsFor = (text) => {
  const [form, name, state] = text?.split(' ') ?? [];
  return [form, name, state === 'opening'].join();
};
const isOurs = (asked) => sealsFor(asked.result?.text) === sealsFor(cipher && lock);
const opening = () => lock?.split(' ')[2] === 'opening';

/** What is sealed in a row is bound to its place. */
const place = (store, row) => [store, ...KEYS[store].map((key) => row[key])].join(' ');

/** A row as it is to be written. */
function sealed(store, row, key) {
  if (!cipher || opening() || row.sealed || (store === 'texts' && CLEAR.test(row.key))) return row;
  const kept = store === 'lines' ? { key } : Object.fromEntries(KEYS[store].map((name) => [name, row[name]]));
  const { bytes } = row;
  const head = new TextEncoder().encode(JSON.stringify(bytes ? { ...row, bytes: undefined } : row));
  let clear = head;
  if (bytes) {
    clear = new Uint8Array(head.length + 1 + bytes.length);
    clear.set(head);
    clear[head.length] = 10; // a new line, which JSON has none of
    clear.set(bytes, head.length + 1);
  }
  kept.sealed = cipher(true, place(store, kept), clear);
  if (!kept.sealed) throw new DOMException('Nothing to seal with', 'OperationError');
  return kept;
}

/** A row as it was before it was sealed; one that does not open stays as it is. */
function opened(store, kept, by = cipher) {
  if (!kept?.sealed || !by) return kept;
  const clear = by(false, place(store, kept), kept.sealed);
  if (!clear) return kept;
  const end = clear.indexOf(10);
  const row = JSON.parse(new TextDecoder().decode(end < 0 ? clear : clear.subarray(0, end)));
  if (end >= 0) row.bytes = clear.slice(end + 1);
  return row;
}

for (const [name, honest] of [['add', add], ['put', put]]) {
  IDBObjectStore.prototype[name] = function (row, ...key) {
    return honest.call(this, this.name in KEYS ? sealed(this.name, row, ...key) : row, ...key);
  };
}

Object.defineProperty(IDBRequest.prototype, 'result', {
  configurable: true,
  enumerable: true,
  get() {
    const found = result.call(this);
    const store = this.source?.objectStore?.name ?? this.source?.name;
    // A dead program opens nothing.
    if (!cipher || !(store in KEYS) || root.dataset.stopped !== undefined) return found;
    return Array.isArray(found) ? found.map((row) => opened(store, row)) : opened(store, found);
  },
});

/** A write asks in its own transaction whether the lock still is the one that this
    tab seals for: another tab may have put one on or taken it off. */
IDBDatabase.prototype.transaction = function (stores, mode, ...options) {
  if (mode !== 'readwrite') return transaction.call(this, stores, mode, ...options);
  const begun = transaction.call(this, [...new Set([stores, 'texts'].flat())], mode, ...options);
  const asked = begun.objectStore('texts').get('lock');
  asked.addEventListener('success', () => {
    if (isOurs(asked)) return;
    begun.why = 'Locked';
    begun.abort();
  });
  return begun;
};

const ask = (request) =>
  new Promise((done, fail) => {
    request.addEventListener('success', () => done(result.call(request)));
    request.addEventListener('error', () => fail(request.error));
  });

const kept = (tx) =>
  new Promise((done, fail) => {
    tx.addEventListener('complete', done);
    tx.addEventListener('abort', () => fail(tx.why ?? tx.error));
  });

/** The records, on a connection of its own. */
async function records(work) {
  const db = await ask(indexedDB.open('coldsump'));
  db.addEventListener('versionchange', () => db.close());
  try {
    return await work(db);
  } finally {
    db.close();
  }
}

/** Keeps another lock, or none, written through; `anew` in a store that was emptied. */
const keep = (text, by, anew) =>
  records((db) => {
    // Past the question above, which asks for the lock that was.
    const tx = transaction.call(db, ['texts', 'entries'], 'readwrite');
    const texts = tx.objectStore('texts');
    const asked = texts.get('lock');
    asked.addEventListener('success', () => {
      if (!anew && !isOurs(asked)) {
        tx.why = 'Locked';
        tx.abort();
      } else if (text) put.call(texts, { key: 'lock', text });
      else texts.delete('lock');
    });
    // Before any write that stands behind this one is asked about it.
    tx.addEventListener('complete', () => hold(text, by));
    return kept(tx);
  });

function hold(text, by) {
  lock = text;
  key = text && by;
  cipher = key && cipherOf(key);
}

const turn = (state, by = key) => {
  const parts = lock.split(' ');
  parts[2] = state;
  return keep(parts.join(' '), by);
};

/** Seals or opens every row that is not yet as the lock wants it; how many did not open. */
const pass = (told) =>
  records(async (db) => {
    let [all, done, failed] = [0, 0, 0];
    for (const store in KEYS) all += await ask(db.transaction(store).objectStore(store).count());
    for (const store in KEYS) {
      let range;
      for (;;) {
        told(done, Math.max(done, all));
        const tx = db.transaction(store, 'readwrite');
        const rows = tx.objectStore(store);
        const [names, found] = await Promise.all([
          ask(rows.getAllKeys(range, BATCH[store])),
          ask(rows.getAll(range, BATCH[store])),
        ]);
        names.forEach((name, n) => {
          const old = found[n];
          const row = opening() ? opened(store, old) : sealed(store, old, name);
          if (row !== old) put.call(rows, row, ...(store === 'lines' ? [name] : []));
          else if (opening() && old.sealed) failed += 1;
        });
        await kept(tx);
        if (!names.length) break;
        done += names.length;
        range = IDBKeyRange.lowerBound(names.at(-1), true);
      }
    }
    return failed;
  });

/** Ends what the lock's state says; how many rows did not open: then the lock stays on. */
async function rewrite(told) {
  const failed = await pass(told);
  if (opening()) {
    if (!failed) {
      await keep();
      return 0;
    }
    // What would be lost keeps the lock on, over all of it.
    await turn('closing');
    await pass(told);
  }
  await turn('on');
  return failed;
}

/** The key that a passphrase comes to; one form of its letters, whatever the keyboard
    (NFKC: NIST SP 800-63B, 5.1.1.2). */
async function stretched(passphrase, salt, iterations) {
  const { subtle } = crypto;
  const text = new TextEncoder().encode(passphrase.normalize('NFKC'));
  const raw = await subtle.importKey('raw', text, 'PBKDF2', false, ['deriveBits']);
  const how = { name: 'PBKDF2', hash: 'SHA-256', salt, iterations };
  return new Uint8Array(await subtle.deriveBits(how, raw, 256));
}

const fresh = (count) => crypto.getRandomValues(new Uint8Array(count));
const base64 = (bytes) => btoa(String.fromCharCode(...bytes));
const bytes = (text) => Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));

/** A lock's parts: `undefined` when it is of a newer build, or would hold up a phone. */
function read(text) {
  const [form, name, state, rounds, salt, wrapped] = text?.split(' ') ?? [];
  const known = form === '1' && wrapped && rounds >= 1 && rounds <= MOST_ROUNDS;
  return known ? { name, state, rounds: Number(rounds), salt: bytes(salt), wrapped: bytes(wrapped) } : undefined;
}

/** The records' key out of a lock; `undefined` when the passphrase is another. */
async function keyOf(text, passphrase) {
  const { name, rounds, salt, wrapped } = read(text);
  return cipherOf(await stretched(passphrase, salt, rounds))(false, `lock ${name}`, wrapped);
}

/** Opens the lock; false when the passphrase is another. */
async function unlock(passphrase) {
  const found = await keyOf(lock, passphrase);
  if (found) hold(lock, found);
  return Boolean(found);
}

/** Puts a lock on, or gives the one that is open another passphrase. */
async function lockBy(passphrase) {
  const { name, state } = cipher ? read(lock) : { name: base64(fresh(9)), state: 'closing' };
  const [records, salt] = [key ?? fresh(32), fresh(16)];
  const by = cipherOf(await stretched(passphrase, salt, ROUNDS));
  const wrapped = base64(by(true, `lock ${name}`, records));
  return keep(['1', name, state, ROUNDS, base64(salt), wrapped].join(' '), records);
}

/** A sealed backup as a clear one: `undefined` when the passphrase is another. What
    does not open counts as not readable. */
async function unsealed(backup, passphrase) {
  const found = await keyOf(backup.lock, passphrase);
  if (!found) return undefined;
  const by = cipherOf(found);
  const clear = { 'coldsump-backup': 1 };
  for (const store of ['entries', 'files']) {
    clear[store] = backup[store].map((row) => {
      if (!row?.sealed) return row;
      const out = opened(store, { ...row, sealed: bytes(row.sealed) }, by);
      return typeof out.sealed === 'object' ? null : (out.entry ?? out);
    });
  }
  return clear;
}

/** Rows that the storage did not take, for the page after a panic. */
function wait(entries, files) {
  const rows = (store, all) => all.map((row) => sealed(store, row));
  window.coldsumpWaiting = { lock, entries: rows('entries', entries), files: rows('files', files) };
}

/** Locks: the page starts anew, and all that it held goes. Not while something waits
    that only the page holds; the program's banner says so then. */
async function now() {
  // Stands behind every write that is on its way.
  await records((db) => ask(db.transaction('texts').objectStore('texts').count()));
  if (!window.coldsumpWaiting?.entries.length) location.reload();
}

/** What can be read of a locked phone: language, light, and how many entries. */
const outside = () =>
  records(async (db) => {
    const setting = async (name) => (await ask(db.transaction('texts').objectStore('texts').get(`setting ${name}`)))?.text;
    const count = await ask(db.transaction('entries').objectStore('entries').count());
    return { language: await setting('language'), light: await setting('light'), count };
  });

const core = (window.coldsumpLock = {
  /** The program's cipher: from a key to what seals and opens by it. */
  begin: (makes) => void (cipherOf = makes),
  /** Takes note of the lock that is kept: whether it is open here, or none. Nothing
      is answered to one that can't be read. */
  meet(text) {
    if (text !== undefined && !read(text)) return undefined;
    if (cipher) return read(text)?.name === read(lock).name;
    lock = text;
    return !text;
  },
  state: () => lock && read(lock).state,
  anew: () => cipher && keep(lock, key, true),
  takeOff: () => turn('opening'),
  gate: async () => (await import('./lock-face.js')).gate(core),
  screen: async (host) => (await import('./lock-face.js')).screen(core, host),
  async openBackup(backup, host) {
    if (!read(backup.lock) || !Array.isArray(backup.entries) || !Array.isArray(backup.files)) return {};
    return (await import('./lock-face.js')).openBackup(core, backup, host);
  },
  able: Boolean(window.crypto?.subtle),
  hold, lockBy, now, outside, read, rewrite, stretched, unlock, unsealed, wait,
});
