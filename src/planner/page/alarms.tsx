// Alarms while the page is open: a tone, a buzz and a note that stays until it is tapped, when work
// opens by the plan as it then is.
import type { App } from './app';
import { clockOf } from './job';
import { windowsOf, type Row } from './plan';
import { say } from './say';
import { Button, Tick } from './ui';

const every = 10000; // ms
const mostShown = 4;
const tones_hz = [660, 880, 660];
const tone_s = 0.35;

// What opens after `from` and no later than `to`, in milliseconds, the first first.
export const openedBetween = (rows: Row[], from: number, to: number) => rows
  .filter((row) => Date.parse(row.opens) > from && Date.parse(row.opens) <= to)
  .sort((a, b) => Date.parse(a.opens) - Date.parse(b.opens));

let sound: AudioContext | undefined;
let timer: ReturnType<typeof setInterval> | undefined;
let checked = 0;

function ring(context: AudioContext) {
  navigator.vibrate?.([300, 150, 300]);
  tones_hz.forEach((hz, i) => {
    const tone = context.createOscillator();
    tone.frequency.value = hz;
    tone.connect(context.destination);
    tone.start(context.currentTime + i * tone_s);
    tone.stop(context.currentTime + (i + 0.8) * tone_s);
  });
}

function check(app: App, context: AudioContext) {
  const now = Date.now();
  const { job } = app;
  const opened = job ? openedBetween(windowsOf(app.planner.state.day), checked, now) : [];
  checked = now;
  if (!job || opened.length === 0) return;
  ring(context);
  const words = opened.map((row) => `${clockOf(job)(row.opens)} ${row.work}, ${row.zone}${row.part ? `, ${row.part}` : ''}`);
  app.opened = [...app.opened, ...words].slice(-mostShown);
  app.shown();
  say(`Opens by the plan: ${words.join('; ')}`);
}

// One note above the foot, whatever screen is open, with what opened last.
export function Alarm({ app }: { app: App }) {
  if (app.opened.length === 0) return null;
  const dismiss = () => {
    app.opened = [];
    app.shown();
  };
  return <aside class="alarm" aria-label="Alarm">
    <div>
      <p>Opens by the plan</p>
      <ul>{app.opened.map((line, i) => <li key={i}><bdi>{line}</bdi></li>)}</ul>
    </div>
    <Button onClick={dismiss}>OK</Button>
  </aside>;
}

// A tick that turns them on and off. They are on until then, whatever pour and screen is open.
export function AlarmTick({ app }: { app: App }) {
  const turn = (on: boolean) => {
    clearInterval(timer);
    timer = undefined;
    if (on) {
      const context = (sound ??= new AudioContext()); // a page may sound only from a tap on
      void context.resume();
      checked = Date.now();
      timer = setInterval(() => check(app, context), every);
    }
    app.shown();
  };
  return <div>
    <Tick label="Sound an alarm when work opens" on={timer !== undefined} take={turn} />
    <small>Only while this page is open and the screen is on. The slab decides: look at it, whatever the clock says.</small>
  </div>;
}
