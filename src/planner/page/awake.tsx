// A tick that keeps the screen on. The device takes the lock back whenever the page is hidden, as by a
// phone call: it is asked for again once the page is back.
import type { App } from './app';
import { say } from './say';
import { Tick } from './ui';

let wanted = false;
let lock: WakeLockSentinel | undefined;
let turn = Promise.resolve();
let refused = () => {};

const visible = () => document.visibilityState === 'visible';

// Takes the lock where it is wanted, and lets go of it where it is not.
async function settle() {
  const held = lock && !lock.released ? lock : undefined;
  try {
    if (held && !wanted) await held.release();
    else if (!held && wanted && visible()) lock = await navigator.wakeLock.request('screen');
  } catch {
    if (!visible()) return; // hidden meanwhile: asked again once it is back
    wanted = false;
    refused();
    say('This device does not let the page keep the screen on.');
  }
}

// One at a time, or two locks might be asked for at once and one of them never let go.
function settleNext() {
  turn = turn.then(settle);
}

export function AwakeTick({ app }: { app: App }) {
  if (!('wakeLock' in navigator)) return null;
  const want = (on: boolean) => {
    wanted = on;
    refused = app.shown;
    document.addEventListener('visibilitychange', settleNext);
    settleNext();
    app.shown();
  };
  return <Tick label="Keep the screen on" on={wanted} take={want} />;
}
