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

/** The lock as kept, of which rows are sealed for; its cipher while it is open. */
let lock;
let cipher; // (seals, place, bytes) => bytes, or undefined when they do not open

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
    tx.addEventListener('complete', () => [lock, cipher] = [text, text && by]);
    return kept(tx);
  });

/** Seals or opens every row that is not yet as the lock wants it; how many did not open. */
const rewrite = (told) =>
  records(async (db) => {
    let [all, done, failed] = [0, 0, 0];
    for (const store in KEYS) all += await ask(db.transaction(store).objectStore(store).count());
    for (const store in KEYS) {
      let range;
      for (;;) {
        told(done, Math.max(done, all));
        const tx = db.transaction(store, 'readwrite');
        const rows = tx.objectStore(store);
        const [keys, found] = await Promise.all([
          ask(rows.getAllKeys(range, BATCH[store])),
          ask(rows.getAll(range, BATCH[store])),
        ]);
        keys.forEach((key, n) => {
          const old = found[n];
          const row = opening() ? opened(store, old) : sealed(store, old, key);
          if (row !== old) put.call(rows, row, ...(store === 'lines' ? [key] : []));
          else if (opening() && old.sealed) failed += 1;
        });
        await kept(tx);
        if (!keys.length) break;
        done += keys.length;
        range = IDBKeyRange.lowerBound(keys.at(-1), true);
      }
    }
    return failed;
  });

/** The key that a passphrase comes to; one form of its letters, whatever the keyboard. */
async function stretched(passphrase, salt, rounds) {
  const { subtle } = crypto;
  const text = new TextEncoder().encode(passphrase.normalize('NFKC'));
  const key = await subtle.importKey('raw', text, 'PBKDF2', false, ['deriveBits']);
  const how = { name: 'PBKDF2', hash: 'SHA-256', salt, iterations: rounds };
  return new Uint8Array(await subtle.deriveBits(how, key, 256));
}

/** A sealed backup as a clear one; what does not open counts as not readable. */
function unsealed(backup, by) {
  const clear = { 'coldsump-backup': 1 };
  for (const store of ['entries', 'files']) {
    clear[store] = backup[store].map((row) => {
      if (!row?.sealed) return row;
      const bytes = Uint8Array.from(atob(row.sealed), (letter) => letter.charCodeAt(0));
      const out = opened(store, { ...row, sealed: bytes }, by);
      return out.sealed ? null : (out.entry ?? out);
    });
  }
  return clear;
}

/** Rows that the storage did not take, for the page after a panic. */
function wait(entries, files) {
  const rows = (store, all) => all.map((row) => sealed(store, row));
  window.coldsumpWaiting = { lock, entries: rows('entries', entries), files: rows('files', files) };
}

window.coldsumpLock = {
  hold: (text, by) => void ([lock, cipher] = [text, by]),
  keep, rewrite, stretched, unsealed, wait,
};
