// Keeps the program on the phone: the offline copy and its newer versions, the room that
// is left, and the browser's offer to install. What it says to the program: boot.js.

const root = document.documentElement;
const HOUR = 3_600_000;
const ROOM = 30e6; // some ten photos and reports, in bytes

/** Lays a word on the page's root, and says by an event that it is there. */
export function tell(name, event) {
  root.dataset[name] = event.value;
  window.dispatchEvent(new Event(event.type));
}

/** Reloads once the new version has taken over; iOS may not say so, hence the limit. */
function takeOver(registration) {
  if (!registration.waiting) return;
  let gone = false;
  const reload = () => {
    if (gone) return;
    gone = true;
    location.reload();
  };
  navigator.serviceWorker.addEventListener('controllerchange', reload);
  setTimeout(reload, 2000);
  registration.waiting.postMessage({ type: 'take-over' });
}

/** Says so once when what the browser gives this page is nearly used up. */
export async function lookAtRoom() {
  const { usage = 0, quota = Infinity } = await navigator.storage.estimate();
  if (quota - usage < Math.max(ROOM, quota / 10) && root.dataset.room !== 'low') {
    tell('room', { value: 'low', type: 'coldsump-room-low' });
  }
}

let offer;
window.addEventListener('beforeinstallprompt', (event) => {
  event.preventDefault(); // asked at a place of our own, not over the work
  offer = event;
  root.dataset.install = 'offered';
});
window.addEventListener('coldsump-install', () => offer?.prompt());
window.addEventListener('appinstalled', () => delete root.dataset.install);

/** Registers the offline copy. `broken` says that the program did not start. */
export async function keepOffline(broken) {
  if (!('serviceWorker' in navigator)) return;
  const registration = await navigator.serviceWorker.register('sw.js', {
    scope: './',
    updateViaCache: 'none',
  });
  const waiting = () => {
    // A program that cannot start runs no test, so its repair may come in at once.
    if (broken) takeOver(registration);
    else tell('update', { value: 'waiting', type: 'coldsump-update-waiting' });
  };
  const watch = (worker) => {
    worker?.addEventListener('statechange', () => {
      if (worker.state === 'installed' && registration.active) waiting();
    });
  };
  if (registration.waiting && registration.active) waiting();
  watch(registration.installing);
  registration.addEventListener('updatefound', () => watch(registration.installing));
  window.addEventListener('coldsump-take-over', () => takeOver(registration));

  let asked = performance.now();
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState !== 'visible' || performance.now() - asked < HOUR) return;
    asked = performance.now();
    registration.update().catch(() => undefined); // no signal: ask again later
  });

  await navigator.serviceWorker.ready;
  tell('offline', { value: 'ready', type: 'coldsump-offline-ready' });
}
