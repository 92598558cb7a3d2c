// Puts the page together: the engine, the jobs kept here, and the screen that is open.
import { render } from 'preact';
import { Alarm } from './alarms';
import { reasonOf } from './answers';
import { App, type Screen } from './app';
import { compileEngine, Engine } from './engine';
import { startLook } from './look';
import { say } from './say';
import { AfterScreen } from './screen_after';
import { DetailsScreen } from './screen_details';
import { DrawScreen } from './screen_draw';
import { JobsScreen } from './screen_jobs';
import { PlanLine, PlanScreen, SheetDialog } from './screen_plan';
import { ShareScreen } from './screen_share';
import { SlabScreen } from './screen_slab';
import { textInLink } from './share';
import { Sketch } from './sketch';
import { Store } from './store';
import { hasComments } from './toml';
import { Button, Fault, foldAll } from './ui';
import type { Job } from './job';

const minute = 60000; // ms
const places: [id: Screen, words: string][] = [['draw', 'Draw'], ['details', 'Day'], ['plan', 'Plan'], ['slab', 'On slab'], ['share', 'Share']];

function part(selector: string): HTMLElement {
  const element = document.querySelector<HTMLElement>(selector);
  if (!element) throw new Error(`no ${selector}`);
  return element;
}
const [top, main, alarm, foot] = [part('header'), part('main'), part('#alarm'), part('footer')];

const workerCode = part('#worker').textContent ?? '';
const module = compileEngine(part('#engine').textContent ?? '', workerCode);

const app = new App({
  store: await new Store().start(),
  likely: new Engine(module, workerCode),
  sure: new Engine(module, workerCode),
  shown: () => show(),
  planChanged: () => {
    if (fingers.down) showFoot();
    settled(planChanged);
  },
  sunChanged: () => settled(show),
});
const sketch = new Sketch(app);

module.catch((error) => {
  app.fault = `This browser cannot run the engine (${reasonOf(error)}). Use one from the last two years.`;
  show();
});

// What is worked out comes when it will; what it changes on the page waits while a finger is down,
// or the tap would land on what is no longer there.
const fingers: { down: boolean; waiting: Set<() => void>; timer?: ReturnType<typeof setTimeout> } = { down: false, waiting: new Set() };
function settled(change: () => void) {
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

function ScreenOf({ job }: { job: Job | undefined }) {
  if (!job) return <JobsScreen app={app} />;
  const properties = { app, job };
  switch (app.screen) {
    case 'draw': return <DrawScreen {...properties} sketch={sketch} />;
    case 'details': return <DetailsScreen {...properties} />;
    case 'slab': return <SlabScreen {...properties} />;
    case 'share': return <ShareScreen {...properties} />;
    case 'after': return <AfterScreen {...properties} />;
    default: return <PlanScreen {...properties} />;
  }
}

function Main({ job }: { job: Job | undefined }) {
  return <>
    {app.store.fault && <Fault>{app.store.fault}</Fault>}
    {app.fault && <Fault>{app.fault}</Fault>}
    {app.linkFault && <Fault>{app.linkFault}</Fault>}
    {job?.original && hasComments(job.original)
      && <p class="unsaid losing">The comments in this file go with your first change here: Undo brings them back. The file you opened stays as it is.</p>}
    <ScreenOf key={`${app.screen} ${job?.id}`} job={job} />
    {job && app.sheet && <SheetDialog app={app} job={job} sheet={app.sheet} />}
  </>;
}

function Top({ job }: { job: Job | undefined }) {
  if (!job) return <p class="brand">Slabtide</p>;
  return <>
    <Button aria-label="All pours" onClick={() => void app.leave()}>{'\u2039'} Pours</Button>
    <p class="brand"><bdi>{job.tables.name || 'Pour'}</bdi></p>
    <Button disabled={app.past.length === 0} onClick={() => app.undo()}>Undo</Button>
    <Button disabled={app.future.length === 0} onClick={() => app.redo()}>Redo</Button>
  </>;
}

function Foot({ job }: { job: Job | undefined }) {
  if (!job) return null;
  const at = app.screen === 'after' ? 'slab' : app.screen;
  return <>
    {app.screen !== 'plan' && <PlanLine app={app} job={job} />}
    <nav aria-label="This pour">
      {places.map(([id, words]) => <Button key={id} aria-current={id === at ? 'page' : undefined} onClick={() => app.go(id)}>{words}</Button>)}
    </nav>
  </>;
}

const showFoot = () => render(<Foot job={app.job} />, foot);

const shown: { job?: Job | undefined; screen?: Screen } = {};
function show() {
  const { job, screen } = app;
  if (shown.job !== job) sketch.forget();
  if (shown.screen !== screen) foldAll();
  Object.assign(shown, { job, screen });
  render(<Top job={job} />, top);
  render(<Main job={job} />, main);
  render(<Alarm app={app} />, alarm);
  showFoot();
  document.title = job ? `${job.tables.name || 'Pour'} - Slabtide` : 'Slabtide planner';
}

// What the plan and the clock change: the foot, and the screens that show the day. The others stay as
// they are, or a shape that has the focus would be read out again and again.
const showsDay = new Set<Screen>(['plan', 'slab', 'share', 'after']);
function showDay() {
  if (showsDay.has(app.screen)) show();
  else showFoot();
}

function planChanged() {
  if (!app.job) return;
  showDay();
  const { stage, answer } = app.planner.state;
  if (stage === 'sure' && answer) say(`Plan ready: ${answer.verdict.words}`);
}

// The minutes left and what comes next grow old by themselves.
setInterval(() => settled(showDay), minute);
document.addEventListener('visibilitychange', () => document.visibilityState === 'visible' && settled(showDay));

async function openLink() {
  const { hash } = location;
  if (!hash.startsWith('#job=')) return;
  history.replaceState(null, '', location.href.split('#')[0]);
  try {
    app.open(await app.import(await textInLink(hash)), 'plan');
  } catch (error) {
    app.linkFault = `The job in this link cannot be opened: ${reasonOf(error)}`;
    show();
  }
}

addEventListener('keydown', (event) => {
  const typing = event.target instanceof Element && event.target.matches('input, textarea');
  if (!app.job || !(event.ctrlKey || event.metaKey) || typing) return;
  if (event.key === 'z' && !event.shiftKey) app.undo();
  else if (event.key === 'y' || (event.key.toLowerCase() === 'z' && event.shiftKey)) app.redo();
  else return;
  event.preventDefault();
});
addEventListener('hashchange', () => void openLink());

startLook();
await app.start();
show();
await openLink();
