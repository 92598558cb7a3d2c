// A tick that keeps the screen on. The device takes the lock back whenever the page is hidden, as by a
// phone call: it is asked for again once the page is back.
import { el, say } from './dom';

let wanted = false;
let lock;
let box;
let turn = Promise.resolve();

const visible = () => document.visibilityState === 'visible';

// Takes the lock where it is wanted, and lets go of it where it is not.
async function settle() {
  const held = lock && !lock.released;
  try {
    if (held && !wanted) await lock.release();
    else if (!held && wanted && visible()) lock = await navigator.wakeLock.request('screen');
  } catch {
    if (!visible()) return; // hidden meanwhile: asked again once it is back
    wanted = false;
    box.checked = false;
    say('This device does not let the page keep the screen on.');
  }
}

// One at a time, or two locks might be asked for at once and one of them never let go.
function settleNext() {
  turn = turn.then(settle);
}

export function awakeTick() {
  if (!('wakeLock' in navigator)) return null;
  box = el('input', {
    type: 'checkbox', checked: wanted,
    onchange: () => {
      wanted = box.checked;
      settleNext();
    },
  });
  document.addEventListener('visibilitychange', settleNext);
  return el('label', { class: 'tick' }, box, el('span', {}, 'Keep the screen on'));
}
