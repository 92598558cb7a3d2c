// Alarms while the page is open: a tone, a buzz and a note that stays until it is tapped, when work
// opens by the plan as it then is.
import { button, el, say } from './dom';
import { clockOf } from './job';
import { windowsOf } from './plan';

const every = 10000; // ms
const mostShown = 4;
const tones_hz = [660, 880, 660];
const tone_s = 0.35;

// What opens after `from` and no later than `to`, in milliseconds, the first first.
export const openedBetween = (rows, from, to) => rows
  .filter((row) => row.opens && Date.parse(row.opens) > from && Date.parse(row.opens) <= to)
  .sort((a, b) => Date.parse(a.opens) - Date.parse(b.opens));

let sound;
let timer;
let checked;

function ring() {
  navigator.vibrate?.([300, 150, 300]);
  tones_hz.forEach((hz, i) => {
    const tone = sound.createOscillator();
    tone.frequency.value = hz;
    tone.connect(sound.destination);
    tone.start(sound.currentTime + i * tone_s);
    tone.stop(sound.currentTime + (i + 0.8) * tone_s);
  });
}

function check(app) {
  const now = Date.now();
  const opened = app.job ? openedBetween(windowsOf(app.planner.state.day ?? {}), checked, now) : [];
  checked = now;
  if (opened.length === 0) return;
  ring();
  const words = opened.map((row) => `${clockOf(app.job)(row.opens)} ${row.work}, ${row.zone}${row.part ? `, ${row.part}` : ''}`);
  show(words);
  say(`Opens by the plan: ${words.join('; ')}`);
}

// One note above the foot, whatever screen is open, with what opened last.
function show(words) {
  const old = document.querySelector('.alarm');
  const before = [...(old?.querySelectorAll('li') ?? [])].map((line) => line.textContent);
  const note = el('aside', { class: 'alarm', 'aria-label': 'Alarm' },
    el('div', {}, el('p', {}, 'Opens by the plan'), el('ul', {}, [...before, ...words].slice(-mostShown).map((line) => el('li', {}, el('bdi', {}, line))))),
    button('OK', () => note.remove()));
  if (old) old.replaceWith(note);
  else document.querySelector('footer').before(note);
}

// A tick that turns them on and off. They are on until then, whatever pour and screen is open.
export function alarmTick(app) {
  const box = el('input', {
    type: 'checkbox', checked: timer !== undefined,
    onchange: () => {
      clearInterval(timer);
      timer = undefined;
      if (!box.checked) return;
      sound ??= new AudioContext(); // a page may sound only from a tap on
      sound.resume();
      checked = Date.now();
      timer = setInterval(() => check(app), every);
    },
  });
  return el('div', {}, el('label', { class: 'tick' }, box, el('span', {}, 'Sound an alarm when work opens')),
    el('small', {}, 'Only while this page is open and the screen is on. The slab decides: look at it, whatever the clock says.'));
}
