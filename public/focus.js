// Keys stay near their place: when what has the focus leaves the page, as a
// button does once it was pressed, the focus goes to the first thing to press
// in the nearest part around it that is still there. Fingers see nothing of
// this: a field is never entered, so no keyboard comes up.

const PRESSED = 'a[href], button:not([disabled]), summary';

let around = [];
addEventListener('focusin', ({ target }) => {
  around = [];
  for (let part = target; part && part !== document.body; part = part.parentElement) {
    around.push(part);
  }
});

let asked = false;
function follow() {
  asked = false;
  if (document.activeElement !== document.body || !around.length || around[0].isConnected) return;
  for (const part of around) {
    if (!part.isConnected) continue;
    const next = [...part.querySelectorAll(PRESSED)].find((one) => one.getClientRects().length);
    if (next) return next.focus({ preventScroll: true });
  }
}

// When the next frame is painted: to see what is shown makes the browser lay the page
// out, which it then has done, and a finger need not wait for it.
new MutationObserver(() => {
  if (!asked) requestAnimationFrame(() => setTimeout(follow));
  asked = true;
}).observe(document.body, { childList: true, subtree: true });
