// On the slab: one tap notes a sign with the hour, and the plan moves with it.
import { alarmTick } from './alarms';
import { awakeTick } from './awake';
import { button, el, field, say, tiles } from './dom';
import { clockOf, systemOf } from './job';
import { workWords } from './plan';

const signs = [
  ['placed', 'Placed', 'the first concrete is in the form'],
  ['sheen-gone', 'Sheen gone', 'no more shine of bleed water'],
  ['edge-held', 'Edge holds', 'the edger leaves a clean edge'],
  ['thumbprint', 'Thumbprint', 'a thumb goes in about 1/4 in'],
  ['no-dent', 'Thumb leaves no dent', 'too late to stamp'],
  ['initial-set', 'Boot leaves no print', 'initial set'],
  ['sawed', 'Saw cut clean', 'the first cut that keeps its edges'],
  ['crack', 'Crack', 'the first crack across it'],
];

// A line of the journal with its hour by the job's clock.
function shownReading(job, words) {
  const match = /^(\d{4}-\d{2}-\d{2})[ T](\d{2}:\d{2}) +(.*)$/.exec(words);
  return match ? `${clockOf(job)(`${match[1]}T${match[2]}`)} ${match[3]}` : words;
}

// What was noted, as the journal has it, the last first.
function readings(journal) {
  const kept = [];
  for (const line of journal.split('\n')) {
    const words = line.split('#')[0].trim();
    if (words === 'undo') kept.pop();
    else if (words) kept.push(words);
  }
  return kept.reverse();
}

export function slabScreen(app) {
  const { job } = app;
  const zones = (job.tables.zone ?? []).map((zone) => String(zone.name));
  if (!zones.includes(app.slabZone)) app.slabZone = zones[0];
  const fault = el('p', { class: 'fault', role: 'alert' });
  const note = async (reading, zone, value) => {
    fault.textContent = '';
    try {
      const sentence = await app.note(reading, zone, value);
      navigator.vibrate?.(40);
      say(`Noted: ${sentence}`);
    } catch (error) {
      document.querySelector('.slab .fault').textContent = error.message;
    }
  };
  return el('section', { class: 'page slab' },
    el('h1', { tabindex: -1 }, 'On the slab'),
    zones.length === 0 ? el('p', {}, 'Draw the pour first.') : [
      tiles('Where', zones.map((name) => [name, el('bdi', {}, name)]), app.slabZone, (name) => { app.slabZone = name; app.shown(); }),
      fault,
      el('div', { class: 'signs' }, signs.map(([id, words, hint]) => button([el('strong', {}, words), el('small', {}, hint)], () => note(id, app.slabZone), { class: 'sign' }))),
      temperature(app, note),
      nextWork(app),
      el('h2', {}, 'Noted'),
      noted(app),
      el('div', { class: 'row' }, button('After the pour', () => app.go('after'))),
      awakeTick(),
      alarmTick(app),
    ]);
}

function temperature(app, note) {
  const us = systemOf(app.job) === 'us';
  const input = el('input', { type: 'number', inputmode: 'decimal', min: us ? 30 : 0, max: us ? 130 : 55, step: 'any' });
  return el('div', { class: 'pair' }, field(`Thermometer, ${us ? '°F' : '°C'}`, input),
    el('div', { class: 'row' },
      button('Concrete from the truck', () => input.value && note('concrete', '', input.value)),
      button('Slab surface', () => input.value && note('surface', app.slabZone, input.value)),
      button('Air', () => input.value && note('air', '', input.value))));
}

// What the clock moves on is made anew by itself (`main.js`), empty or not.
export function nextWork(app) {
  const { day, stage } = app.planner.state;
  const zone = day?.zones?.find((each) => each.name === app.slabZone);
  const now = Date.now();
  const rows = (zone?.parts?.length ? zone.parts.flatMap((part) => part.windows) : zone?.windows ?? [])
    .filter((window) => window.closes && Date.parse(window.closes) > now).sort((a, b) => Date.parse(a.opens) - Date.parse(b.opens));
  if (rows.length === 0) return el('div', { class: 'now', hidden: true });
  const clock = clockOf(app.job);
  const seen = day.seen ?? [];
  return el('div', { class: 'now' }, el('h2', {}, 'Next here'),
    el('p', {}, el('strong', {}, `${workWords(rows[0].operation)}: ${clock(rows[0].opens)} to ${clock(rows[0].closes)}`)),
    stage === 'sure' ? seen.map((words) => el('p', {}, words)) : null);
}

function noted(app) {
  const list = readings(app.job.journal);
  if (list.length === 0) return el('p', {}, 'Nothing yet. Tap a sign when you see it: the plan goes by it from then on.');
  return el('div', {}, button('Undo the last', () => { app.unnote(); say('Removed'); }),
    el('ol', { class: 'noted' }, list.map((words) => el('li', {}, el('bdi', {}, shownReading(app.job, words))))));
}
