// Starts the program; offline.js, which it takes in, keeps the offline copy.
//
// The page and the program speak through the document only:
//   <html data-offline="ready">    the whole program is kept on this phone
//   <html data-update="waiting">   a newer version is kept and waits
//   <html data-stopped="...">      the program's last word: it died (rescue.js)
//   events on window: "coldsump-offline-ready", "coldsump-update-waiting"
//   <html data-room="low">         the phone has little room left; "coldsump-room-low"
//   <html data-install="offered">  the browser would install; "coldsump-install" asks it to
//   <html data-whole="yes">        both parts of the program are in; "coldsump-whole"
//   the program asks for the newer version with the event
//   "coldsump-take-over" on window, when no test is running; the page then
//   reloads. Nothing is swapped before that.

import './lock.js'; // and disk.js, before the program runs
import { keepOffline, lookAtRoom, tell } from './offline.js';

const root = document.documentElement;

// This script, with those it takes in, runs as soon as it is here: it waits neither for
// the style nor for the rest of the page.
const parsed = new Promise((done) => {
  const look = () => document.readyState !== 'loading' && done();
  document.addEventListener('readystatechange', look);
  look();
});
// The storage wakes while the program compiles; nothing is made by asking.
globalThis.indexedDB?.databases?.().catch(() => undefined);

// When the first screen stands, or takes long: what it can do without waits for this.
const stands = new Promise((done) => {
  setTimeout(done, 4000);
  const look = (_, watch) => {
    if (document.getElementById('boot')) return;
    watch.disconnect();
    // Painted, not only drawn: what comes after is not to take its time.
    requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(done)));
  };
  parsed.then(() => new MutationObserver(look).observe(document.body, { childList: true }));
});

// The program is in two parts (tools/split): the first draws the first screen, the rest
// comes after it, and until it is in, what happens to the page waits. Should the first
// lack what it runs, the page opens anew with both at once, as at any other screen.
const LACKED = '#//'; // home, and not as it is called otherwise
const atOnce = !/^(#\/?)?$/.test(location.hash);
let held = [];

// A text of the rest is zeros until it is in.
const { decode } = TextDecoder.prototype;
TextDecoder.prototype.decode = function (...bytes) {
  const text = decode.apply(this, bytes);
  if (text.includes('\0')) {
    const error = new WebAssembly.RuntimeError('a text of the rest');
    end(error); // the program may catch what is thrown
    throw error;
  }
  return text;
};

function release() {
  const events = held ?? [];
  held = undefined;
  TextDecoder.prototype.decode = decode;
  root.removeAttribute('aria-busy');
  for (const [target, event] of events) {
    target.dispatchEvent(new event.constructor(event.type, event));
  }
}

// Words for before the program runs; it brings its own. The language chosen
// in it can't be read this early, so the browser's is taken.
const SPANISH = /^es\b/i.test(navigator.language);
const WORDS = {
  opening: ['Opening Coldsump…', 'Abriendo Coldsump…'],
  again: ['Try again', 'Intentar otra vez'],
  old: [
    'This browser is too old for Coldsump. Update it, or open this page in a newer one. What you saved stays on this phone.',
    'Este navegador es demasiado viejo para Coldsump. Actualícelo, o abra esta página en uno más nuevo. Lo que guardó sigue en este teléfono.',
  ],
  stopped: [
    'Coldsump stopped while opening. What you saved is still on this phone. Try again.',
    'Coldsump se detuvo al abrir. Lo que guardó sigue en este teléfono. Intente otra vez.',
  ],
  incomplete: [
    'Coldsump did not arrive complete. Try again where the signal is better.',
    'Coldsump no llegó completo. Intente otra vez donde haya mejor señal.',
  ],
};
const words = (name) => WORDS[name][Number(SPANISH)];

async function speak() {
  await parsed;
  root.lang = 'es';
  document.getElementById('boot-say').textContent = words('opening');
  document.getElementById('boot-again').textContent = words('again');
}
if (SPANISH) speak();

/** Replaces the loading line by a sentence that says what to do. */
function say(sentence) {
  const again = document.getElementById('boot-again');
  if (!again) return;
  document.getElementById('boot-say').textContent = sentence;
  again.hidden = false;
  again.addEventListener('click', async () => {
    again.disabled = true;
    // A broken answer may sit in the browser's cache for long: fetch past it.
    const addresses = [...document.querySelectorAll('[integrity]')].map((of) => of.href || of.src);
    if (parts().rest) addresses.push(part('rest'));
    await Promise.allSettled(addresses.map((of) => fetch(of, { cache: 'reload' })));
    location.reload();
  });
}

// Here before it is needed: when the program dies there may be no signal.
let helper;
const rescue = () => (helper ??= import('./rescue.js'));
stands.then(rescue).catch(() => undefined);

/** Whether this is the program's end, and not a slip of a script. */
const isEnd = (error) =>
  root.dataset.stopped !== undefined ||
  (typeof WebAssembly === 'object' && error instanceof WebAssembly.RuntimeError) ||
  (/\.wasm/.test(error?.stack) && /stack|recursion|memory/i.test(error.message));

let ended = false;
function end(error) {
  if (ended || !isEnd(error)) return;
  ended = true;
  if (held && !atOnce) {
    history.replaceState(null, '', LACKED);
    return location.reload();
  }
  root.dataset.stopped ??= String(error);
  const word = root.dataset.stopped;
  // Not from within the call that died.
  setTimeout(() => rescue().then(({ show }) => show(word), () => say(words('stopped'))));
}
window.addEventListener('error', (event) => end(event.error));
window.addEventListener('unhandledrejection', (event) => end(event.reason));
// What still happens to the page must not wake the dead program, nor what is not in yet.
const HAND = 'click input change'.split(' ');
const HAPPENS = 'hashchange popstate visibilitychange online offline focus pageshow pagehide';
for (const type of HAND.concat(HAPPENS.split(' '))) {
  const hand = HAND.includes(type);
  const look = (event) => {
    const { target } = event;
    if (target instanceof Element !== hand || (ended ? hand : !held)) return;
    if (hand && target.closest('.boot')) return;
    event.stopImmediatePropagation();
    if (ended || type === 'pagehide') return;
    if (type === 'click') event.preventDefault();
    if (hand) root.setAttribute('aria-busy', 'true');
    held.push([target, event]);
  };
  window.addEventListener(type, look, true);
}

/** The integrity Trunk wrote for a file, from its preload link. What the offline copy
    answers was checked as it was kept (sw.js), and is not hashed at each start. */
function integrityOf(url) {
  if (navigator.serviceWorker?.controller) return '';
  for (const link of document.querySelectorAll('link[integrity]')) {
    if (link.href === url.href) return link.integrity;
  }
  return parts().restHash ?? '';
}

const parts = () => document.querySelector('meta[name="coldsump-parts"]').dataset;
const part = (name) => new URL(parts()[name], document.baseURI);
const ask = (url) => fetch(url, { credentials: 'same-origin', integrity: integrityOf(url) });

/** A part of the program, compiled; once more, whatever the server calls it. */
async function bring(url) {
  return WebAssembly.compileStreaming(ask(url)).catch(async () => {
    const answer = await ask(url);
    if (!answer.ok) throw new Error(`${url}: ${answer.status}`);
    return WebAssembly.compile(await answer.arrayBuffer());
  });
}

/** Puts the rest to the first part. */
function join(program, rest) {
  const given = { f: program };
  try {
    return new WebAssembly.Instance(rest, given);
  } catch (error) {
    if (!(error instanceof RangeError)) throw error;
    return WebAssembly.instantiate(rest, given); // browsers that make none so large at once
  }
}

/** Both parts are in: what waited for it happens. */
function whole() {
  if (location.hash === LACKED) history.replaceState(null, '', '#/');
  tell('whole', { value: 'yes', type: 'coldsump-whole' });
  release();
}

/** Has the rest put to the first part as soon as that is made, before it runs. */
function joinWhenMade(rest) {
  const { instantiate } = WebAssembly;
  WebAssembly.instantiate = async (module, given) => {
    WebAssembly.instantiate = instantiate;
    const made = await instantiate(module, given);
    await join(made.exports, rest);
    return made;
  };
}

/** Fetches, checks and starts the program; rejects with the reason if it cannot. */
async function start() {
  const glue = import(part('js').href);
  glue.catch(() => undefined); // told below
  await parsed;
  box = document.getElementById('boot');
  // Compiled while the script it is handed over to comes.
  const compiled = bring(part('wasm'));
  compiled.catch(() => undefined); // told below
  const rest = atOnce && parts().rest ? bring(part('rest')) : undefined;
  rest?.catch(() => undefined); // told below
  const { default: init } = await glue;
  if (rest) joinWhenMade(await rest);
  // The loading line stays until the program has opened the records and removes it.
  const program = await init({ module_or_path: compiled });
  if (atOnce || !parts().rest) return whole();
  joined = stands.then(() => complete(program));
}

let box; // of the loading line
let joined;
/** Brings the rest after the first screen; says so, and answers false, when it does not come. */
async function complete(program, tries = 3) {
  try {
    await join(program, await bring(part('rest')));
    whole();
    return true;
  } catch (error) {
    if (tries > 1) {
      await new Promise((done) => setTimeout(done, 3000));
      return complete(program, tries - 1);
    }
    document.body.replaceChildren(box);
    explain(error);
    return false;
  }
}

function explain(error) {
  const old =
    typeof WebAssembly !== 'object' ||
    !WebAssembly.compileStreaming ||
    error instanceof WebAssembly.CompileError ||
    error instanceof WebAssembly.LinkError ||
    error instanceof SyntaxError;
  if (old) {
    say(words('old'));
  } else if (isEnd(error)) {
    end(error);
  } else {
    say(words('incomplete'));
  }
  console.error(error);
}

let broken = false;
try {
  await start();
} catch (error) {
  await parsed;
  explain(error);
  broken = !ended; // the page of rescue.js has the repair come in by a tap
}
if (!broken) await stands;
if ((await joined) === false) broken = true;
import('./focus.js');
// A browser draws the icon of each as soon as it knows of it.
document.querySelector('[rel=icon]').href = 'icon.svg';
document.querySelector('[rel=manifest]').href = 'manifest.webmanifest';
lookAtRoom().catch(() => undefined); // a browser that does not tell
document.addEventListener('visibilitychange', () => lookAtRoom().catch(() => undefined));
keepOffline(broken).catch((error) => {
  // The program runs without it; only the copy for places without signal is missing.
  root.dataset.offline = 'failed';
  console.warn(error);
});
