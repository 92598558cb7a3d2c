// Puts the page together: the engine, the jobs kept here, and the screen that is open.
import { App } from './app';
import { button, el, say } from './dom';
import { compileEngine, Engine } from './engine';
import { startLook } from './look';
import { afterScreen } from './screen_after';
import { detailsScreen } from './screen_details';
import { DrawScreen } from './screen_draw';
import { jobsScreen } from './screen_jobs';
import { nowAndNext, planLine, planScreen } from './screen_plan';
import { shareScreen } from './screen_share';
import { nextWork, slabScreen } from './screen_slab';
import { textInLink } from './share';
import { Store } from './store';
import { hasComments } from './toml';

const main = document.querySelector('main');
const top = document.querySelector('header');
const foot = document.querySelector('footer');
const minute = 60000; // ms
const places = [['draw', 'Draw'], ['details', 'Day'], ['plan', 'Plan'], ['slab', 'On slab'], ['share', 'Share']];

const workerCode = document.getElementById('worker').textContent;
const module = compileEngine(document.getElementById('engine').textContent, workerCode);
module.catch((error) => {
  main.prepend(el('p', { class: 'fault', role: 'alert' }, `This browser cannot run the engine (${error.message}). Use one from the last two years.`));
});

const app = new App({
  store: await new Store().start(),
  likely: new Engine(module, workerCode),
  sure: new Engine(module, workerCode),
  shown: () => show(),
  planChanged: () => {
    if (fingers.down) document.querySelector('.plan-line')?.replaceChildren(...planLine(app).childNodes);
    settled(planChanged);
  },
  sunChanged: () => settled(() => app.screen === 'draw' && app.job && show()),
});
const draw = new DrawScreen(app);
const screens = {
  jobs: () => jobsScreen(app), draw: () => draw.show(), details: () => detailsScreen(app), plan: () => planScreen(app),
  slab: () => slabScreen(app), share: () => shareScreen(app), after: () => afterScreen(app),
};

// What is worked out comes when it will; what it changes on the page waits while a finger is down,
// or the tap would land on what is no longer there.
const fingers = { down: false, waiting: new Set() };
function settled(change) {
  if (!fingers.down) return change();
  fingers.waiting.add(change);
}
function lifted() {
  clearTimeout(fingers.timer);
  fingers.down = false;
  const waiting = [...fingers.waiting];
  fingers.waiting.clear();
  for (const change of waiting) change();
}
addEventListener('pointerdown', () => {
  clearTimeout(fingers.timer);
  fingers.down = true;
}, true);
addEventListener('click', () => setTimeout(lifted), true);
for (const end of ['pointerup', 'pointercancel']) {
  addEventListener(end, () => { fingers.timer = setTimeout(lifted, 300); }, true); // no click came
}

// What had the focus has it again where the new screen has the like of it.
const nameOf = (element) => element && element !== document.body && main.contains(element) &&
  [element.tagName, element.getAttribute('aria-label') ?? element.id ?? '', element.textContent.slice(0, 40)].join('|');

function show() {
  const focused = nameOf(document.activeElement);
  const shape = document.activeElement?.closest?.('.sheet [data-kind]')?.dataset;
  const opened = [...main.querySelectorAll('details[open] > summary')].map((summary) => summary.textContent);
  if (app.shownJob !== app.job) {
    draw.drawing.view = undefined;
    draw.drawing.dropDraft();
    app.shownJob = app.job;
  }
  const fault = app.store.fault && el('p', { class: 'fault', role: 'alert' }, app.store.fault);
  const losing = app.job?.original && hasComments(app.job.original)
    && el('p', { class: 'unsaid losing' }, 'The comments in this file go with your first change here: Undo brings them back. The file you opened stays as it is.');
  main.replaceChildren(...[fault, losing, screens[app.screen]()].filter(Boolean));
  for (const summary of main.querySelectorAll('details > summary')) {
    if (opened.includes(summary.textContent)) summary.parentElement.open = true;
  }
  if (focused) [...main.querySelectorAll('button, input, select, summary')].find((each) => nameOf(each) === focused)?.focus({ preventScroll: true });
  if (shape) queueMicrotask(() => main.querySelector(`[data-kind="${shape.kind}"][data-index="${shape.index}"]`)?.focus());
  top.replaceChildren(...topOf());
  foot.replaceChildren(...footOf());
  document.title = app.job ? `${app.job.tables.name ?? 'Pour'} - Slabtide` : 'Slabtide planner';
}

function topOf() {
  if (!app.job) return [el('p', { class: 'brand' }, 'Slabtide')];
  return [
    button('\u2039 Pours', () => app.leave(), { 'aria-label': 'All pours' }),
    el('p', { class: 'brand' }, el('bdi', {}, String(app.job.tables.name || 'Pour'))),
    button('Undo', () => app.undo(), { disabled: app.past.length === 0 }),
    button('Redo', () => app.redo(), { disabled: app.future.length === 0 }),
  ];
}

function footOf() {
  if (!app.job) return [];
  return [
    app.screen === 'plan' ? null : planLine(app),
    el('nav', { 'aria-label': 'This pour' }, places.map(([id, words]) => button(words, () => app.go(id), { 'aria-current': app.screen === id || (app.screen === 'after' && id === 'slab') ? 'page' : undefined }))),
  ].filter(Boolean);
}

// A plan that has come changes the foot; the screens that show it, all of it.
function planChanged() {
  if (!app.job) return;
  const typing = main.contains(document.activeElement) && document.activeElement.matches('input, select');
  if (app.screen === 'plan' || (app.screen === 'share' && !typing) || (app.screen === 'slab' && !typing)) show();
  else foot.replaceChildren(...footOf());
  if (app.planner.state.stage === 'sure') say(`Plan ready: ${app.planner.state.answer.verdict.words}`);
}

// The minutes left and what comes next grow old by themselves. Nothing else is made anew for it: what
// has the focus, what is typed and how far the page is scrolled stay as they are.
const byTheClock = { plan: nowAndNext, slab: nextWork };
function keepTime() {
  const old = main.querySelector('.now');
  if (!old) return;
  const current = byTheClock[app.screen](app);
  if (!current.isEqualNode(old)) old.replaceWith(current);
}

async function openLink() {
  const { hash } = location;
  if (!hash.startsWith('#job=')) return;
  history.replaceState(null, '', location.href.split('#')[0]);
  try {
    const text = await textInLink(hash);
    app.open(await app.import(text), 'plan');
  } catch (error) {
    main.prepend(el('p', { class: 'fault', role: 'alert' }, `The job in this link cannot be opened: ${error.message}`));
  }
}

addEventListener('keydown', (event) => {
  if (!app.job || !(event.ctrlKey || event.metaKey) || event.target.matches?.('input, textarea')) return;
  if (event.key === 'z' && !event.shiftKey) app.undo();
  else if (event.key === 'y' || (event.key.toLowerCase() === 'z' && event.shiftKey)) app.redo();
  else return;
  event.preventDefault();
});
addEventListener('hashchange', openLink);
setInterval(() => settled(keepTime), minute);
document.addEventListener('visibilitychange', () => document.visibilityState === 'visible' && settled(keepTime));

startLook();
await app.start();
show();
await openLink();
