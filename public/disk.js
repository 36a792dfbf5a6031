// What the program's records need of IndexedDB and its library does not ask for.
// Loaded before the program, once.
//
//   <html data-disk="QuotaExceededError ...">  why the last write was given up
//   <html data-kept="yes" | "no">   whether the browser promised to keep the records

const root = document.documentElement;
const RECORDS = ['entries', 'files'];
const SPANISH = /^es\b/i.test(navigator.language);
const BLOCKED = SPANISH
  ? 'Una versión anterior de Coldsump está abierta en otra pestaña. Ciérrela y esta seguirá sola.'
  : 'An older version of Coldsump is open in another tab. Close that one and this one goes on.';

function tellKept(kept) {
  root.dataset.kept = kept ? 'yes' : 'no';
}

let asked = false;
/** Asks the browser, once a run, never to clear the records by itself: when there are some. */
function askToKeep() {
  if (asked) return;
  asked = true;
  navigator.storage?.persist?.().then(tellKept, () => undefined);
}
navigator.storage?.persisted?.().then(tellKept, () => undefined);

const { transaction } = IDBDatabase.prototype;
/** Records are written through to the disk itself; half-typed text need not be. */
IDBDatabase.prototype.transaction = function (stores, mode = 'readonly', options = {}) {
  const writes = mode === 'readwrite';
  if (writes && root.dataset.stopped !== undefined) {
    throw new DOMException('The program has stopped', 'InvalidStateError');
  }
  const records = writes && [stores].flat().some((name) => RECORDS.includes(name));
  const begun = transaction.call(
    this, stores, mode, records ? { ...options, durability: 'strict' } : options,
  );
  if (writes) {
    const why = (event) => {
      const error = begun.error ?? event.target.error;
      // lock.js says why it gave one up.
      root.dataset.disk = begun.why ?? (error ? `${error.name}: ${error.message}` : 'AbortError');
    };
    begun.addEventListener('error', why, true); // before the library hears of it
    begun.addEventListener('abort', why);
  }
  if (records) begun.addEventListener('complete', askToKeep);
  return begun;
};

const { open } = IDBFactory.prototype;
/** An upgrade that another tab holds up is said while it waits. */
IDBFactory.prototype.open = function (...what) {
  const request = open.apply(this, what);
  const line = document.getElementById('boot-say');
  const before = line?.textContent;
  request.addEventListener('blocked', () => {
    if (line) line.textContent = BLOCKED;
  });
  request.addEventListener('success', () => {
    if (line && line.textContent === BLOCKED) line.textContent = before;
  });
  return request;
};
