// What the engine says of the day: whether to pour, what is open now and next, zone by zone, and the
// sheet for the crew.
import { button, el, say } from './dom';
import { clockOf, systemOf } from './job';
import { askedCards } from './plan_asked';
import { crewCard, sawCard, suppliesCard } from './plan_lists';
import { windowsOf, workWords } from './plan';
import { give, safeName } from './share';
import { partOfSheet, sheetParts } from './sheet_part';
import { areaText, dayText, soldText, volumeText } from './units';

const signs = ['go', 'care', 'stop'];
const marks = ['\u2713', '!', '\u2715'];

// One line for the foot of every screen while a pour is open.
export function planLine(app) {
  const { state } = app.planner;
  const words = {
    none: 'No plan yet', wants: state.wants?.[0]?.[1], working: 'Working it out ...', faulty: 'Something does not fit: see Plan',
  }[state.stage];
  const level = state.answer?.verdict?.level;
  const parts = state.day && state.stage !== 'wants' && state.stage !== 'faulty'
    ? [el('span', { class: `mark ${signs[level]}`, 'aria-hidden': 'true' }, marks[level]), el('strong', {}, state.answer.verdict.words), ` ${tightestWords(state.day, app)}`]
    : [words ?? ''];
  return el('button', { type: 'button', class: 'plan-line', onclick: () => app.go('plan') }, ...parts);
}

const dayOf = (app) => app.job.tables.pour?.date?.$time;
const clock = (app, iso) => clockOf(app.job)(iso);

function tightestWords(day, app) {
  const { tightest } = day;
  if (!tightest?.opens) return '';
  return `Tightest: ${tightest.zone}, ${Math.round(tightest.minutes)} min to ${workWords(tightest.operation)} from ${clock(app, tightest.opens)}`;
}

export function planScreen(app) {
  const { state } = app.planner;
  return el('section', { class: 'page plan', 'aria-busy': String(state.stage === 'working') },
    el('h1', { tabindex: -1 }, el('bdi', {}, String(app.job.tables.name || 'Plan')), ' ', el('small', {}, dayText(dayOf(app) ?? '', true))),
    ...body(app, state));
}

function body(app, state) {
  if (state.stage === 'wants') {
    return [el('p', {}, 'Still needed for a plan:'), el('ul', { class: 'wants' }, state.wants.map(([screen, words]) => el('li', {}, button(words, () => app.go(screen)))))];
  }
  if (state.stage === 'faulty') return [faults(app, state)];
  if (!state.day) return [el('p', {}, 'Working it out ...')];
  const { day, answer } = state;
  return [
    verdict(answer.verdict), unsaid(app), sureness(state, day), nowAndNext(app),
    el('div', { class: 'cards' }, (day.zones ?? []).map((zone) => zoneCard(app, zone))),
    cautions(answer.watch), order(app, day), crewCard(app, day), sawCard(app, day), suppliesCard(day),
    ...askedCards(app, (title, html) => openSheet(app, title, html)),
    sheets(app, answer.files['.html']),
    assumed(day), warnings(state),
  ];
}

// What the engine refuses, each with the way to where it is set.
function faults(app, state) {
  const findings = (state.refusal?.findings ?? []).filter((finding) => finding.severity === 'error');
  if (findings.length === 0) {
    return el('div', { class: 'fault', role: 'alert' }, el('h2', {}, 'It cannot be planned'), el('pre', {}, state.refusal?.messages || state.refusal?.error || ''));
  }
  return el('div', { class: 'fault', role: 'alert' }, el('h2', {}, 'Something does not fit'),
    el('ul', {}, findings.map((finding) => el('li', {},
      el('strong', {}, `${placeWords(app, finding.key)}: `), finding.message, finding.next ? `. ${finding.next}.` : '', ' ',
      button('Go there', () => goTo(app, finding.key))))));
}

function shapeOf(key) {
  const match = /^(zone|obstacle)\[(\d+)\]/.exec(key ?? '');
  return match ? { kind: match[1], index: Number(match[2]) - 1 } : undefined;
}
function placeWords(app, key) {
  const shape = shapeOf(key);
  const thing = shape && app.job.tables[shape.kind]?.[shape.index];
  return thing ? `${thing.name ?? shape.kind}, ${key.split('.').slice(1).join(' ') || 'as drawn'}` : (key || 'The job').replaceAll('_', ' ').replaceAll('.', ' ');
}
function goTo(app, key) {
  const shape = shapeOf(key);
  app.selection = shape && app.job.tables[shape.kind]?.[shape.index] ? shape : undefined;
  app.tool = 'move';
  app.go(shape ? 'draw' : 'details');
}

const verdict = ({ level, words, reasons }) => el('p', { class: `verdict ${signs[level]}` },
  el('span', { class: 'mark', 'aria-hidden': 'true' }, marks[level]), el('strong', {}, words), reasons.length ? `: ${reasons.join(', ')}` : '');

function unsaid(app) {
  const { unsaid: open = {} } = app.job;
  const list = [open.weather && 'the weather', open.mix && 'the mix'].filter(Boolean);
  if (list.length === 0) return null;
  return el('p', { class: 'unsaid' }, `Planned with typical figures for ${list.join(' and ')}. `, button('Set them', () => app.go('details')));
}

function sureness(state, day) {
  if (state.stage !== 'sure') return el('p', { class: 'sure' }, 'The likely day. How far it may move is being worked out ...');
  const way = day.sureness?.either_way_min;
  const cause = day.sureness?.causes?.[0];
  return el('p', { class: 'sure' }, way === undefined ? '' : `The main work opens within ${Math.round(way)} min either way on eight days in ten. `,
    cause ? `Biggest unknown: ${cause.what}.` : '');
}

export function nowAndNext(app) {
  const now = Date.now();
  const all = windowsOf(app.planner.state.day ?? {});
  const open = all.filter((row) => Date.parse(row.opens) <= now && row.closes && now < Date.parse(row.closes));
  const next = all.filter((row) => Date.parse(row.opens) > now).slice(0, open.length ? 3 : 4);
  const left = (row) => `${Math.max(0, Math.round((Date.parse(row.closes) - now) / 60000))} min left`;
  return el('div', { class: 'now' },
    open.length ? [el('h2', {}, 'Open now'), el('ul', {}, open.map((row) => el('li', { class: 'open' }, el('strong', {}, `${row.work}, ${row.zone}${row.part ? `, ${row.part}` : ''}`), ` ${left(row)}`)))] : null,
    next.length ? [el('h2', {}, open.length ? 'Then' : 'First'), el('ul', {}, next.map((row) => el('li', {}, el('strong', {}, clock(app, row.opens)), ` ${row.work}, `, el('bdi', {}, `${row.zone}${row.part ? `, ${row.part}` : ''}`))))] : null);
}

function zoneCard(app, zone) {
  const system = systemOf(app.job);
  const area = system === 'si' ? zone.area_m2 : zone.area_m2 / 0.09290304;
  const parts = zone.parts?.length ? zone.parts : [zone];
  return el('section', { class: 'card' },
    el('h2', {}, el('bdi', {}, zone.name)),
    el('p', {}, `${zone.finish}, ${areaText(area, system === 'si' ? 'm' : 'ft')}, ${volumeText(zone.volume_m3, system)}. Placed ${clock(app, zone.placed?.start)} to ${clock(app, zone.placed?.end)}.`),
    parts.map((part) => windowTable(app, zone, part === zone ? '' : part.name, part.windows)),
    zone.border ? windowTable(app, zone, zone.border.name, zone.border.windows) : null,
    (zone.faces ?? []).map((face, i) => windowTable(app, zone, zone.faces.length > 1 ? `${face.name} ${i + 1}` : face.name, face.windows)),
    zone.joints?.says ? el('p', {}, el('strong', {}, 'Joints: '), zone.joints.says) : null);
}

// Two columns, which a phone has room for: how far the opening may move stands under the times.
function windowTable(app, zone, name, windows) {
  const rows = (windows ?? []).filter((window) => window.opens);
  if (rows.length === 0) return null;
  const when = (window) => (window.closes ? `${clock(app, window.opens)} to ${clock(app, window.closes)}` : `from ${clock(app, window.opens)}`);
  const band = (window) => (window.opens_band?.early && window.opens_band.late
    ? el('small', {}, `opens ${clock(app, window.opens_band.early)} to ${clock(app, window.opens_band.late)}, 8 days in 10`) : null);
  return el('table', { 'aria-label': `Times of ${zone.name}${name ? `, ${name}` : ''}` },
    name ? el('caption', {}, el('bdi', {}, name)) : null,
    el('thead', {}, el('tr', {}, ['Work', 'When'].map((words) => el('th', { scope: 'col' }, words)))),
    el('tbody', {}, rows.map((window) => el('tr', {}, el('th', { scope: 'row' }, workWords(window.operation)), el('td', {}, when(window), band(window))))));
}

function order(app, day) {
  const system = systemOf(app.job);
  const loads = day.trucks ?? [];
  if (!day.order || loads.length === 0) return null;
  return el('section', { class: 'card' }, el('h2', {}, 'Order'),
    el('p', {}, el('strong', {}, soldText(day.order.sold_m3, system)), ` (${volumeText(day.order.neat_m3, system)} as drawn)`),
    el('ul', {}, loads.map((load) => el('li', {}, `Load ${load.number}: ${soldText(load.sold_m3, system)}, batched ${clock(app, load.batched)}, here ${clock(app, load.arrives)}, empty ${clock(app, load.empty)}`))),
    day.crew_summary ? el('p', {}, `${day.crew_summary.says}.`) : null);
}

// What the engine does not tell at once is folded away.
function cautions(watch = []) {
  if (watch.length === 0) return null;
  const [first, rest] = [true, false].map((now) => watch.filter((caution) => caution.at_once === now));
  return el('section', { class: 'card' }, el('h2', {}, 'Watch for'), cautionList(first),
    rest.length ? el('details', {}, el('summary', {}, `${rest.length} more to keep in mind`), cautionList(rest)) : null);
}

const cautionList = (list) => (list.length ? el('ul', {}, list.map(({ level, zone, text }) => el('li', { class: level },
  el('strong', {}, level === 'stop' ? 'Stop: ' : '', zone ? [el('bdi', {}, zone), ': '] : ''), text))) : null);

const assumed = (day) => (day.assumptions?.length ? el('details', {}, el('summary', {}, 'Assumed'), el('ul', {}, day.assumptions.map((words) => el('li', {}, words)))) : null);
const warnings = (state) => (state.answer?.messages ? el('details', {}, el('summary', {}, 'Notes on what you entered'), el('pre', {}, state.answer.messages)) : null);

// The sheet, and first the parts of it that one looks at alone.
function sheets(app, html) {
  if (!html) return el('p', {}, 'The day sheet comes once the range of times is worked out.');
  return el('div', { class: 'row' },
    button('Day sheet for the crew', () => openSheet(app, 'Day sheet', html), { class: 'main' }),
    sheetParts().map((part) => button(part.title, () => openSheet(app, part.title, partOfSheet(html, part)))));
}

// A sheet as the engine makes it, in a frame that can do nothing but show it.
export function openSheet(app, title, html) {
  const name = safeName(`${String(app.job.tables.name ?? '')} ${title === 'Day sheet' ? '' : title}`);
  const dialog = el('dialog', { class: 'sheet-dialog', 'aria-label': title },
    el('div', { class: 'row' }, button('Close', () => dialog.close()), button('Send it', () => give(`${name}.html`, 'text/html', html))),
    el('iframe', { title, sandbox: 'allow-scripts', srcdoc: html }));
  dialog.addEventListener('close', () => dialog.remove());
  document.body.append(dialog);
  dialog.showModal();
  say(title);
}
