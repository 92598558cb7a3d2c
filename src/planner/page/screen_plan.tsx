// What the engine says of the day: whether to pour, what is open now and next, zone by zone, and the
// sheet for the crew.
import { useLayoutEffect, useRef } from 'preact/hooks';
import type { Caution, DayPlan, Level, Part, PlannedZone, Refusal, Verdict, Window } from './answers';
import type { App, Shape, Sheet } from './app';
import { clockOf, dateOf, systemOf, type Job } from './job';
import { CompareCard, OutlookCard } from './plan_asked';
import { CrewCard, SawCard, SuppliesCard } from './plan_lists';
import { windowsOf, workWords, type PlanState, type Row } from './plan';
import { give, safeName } from './share';
import { partOfSheet, sheetParts } from './sheet_part';
import { Button, Folded } from './ui';
import { areaText, dayText, soldText, volumeText } from './units';

const signs: Record<Level, string> = { 0: 'go', 1: 'care', 2: 'stop' };
const marks: Record<Level, string> = { 0: '\u2713', 1: '!', 2: '\u2715' };

interface PlanProps {
  app: App;
  job: Job;
}

// One line for the foot of every screen while a pour is open.
export function PlanLine({ app, job }: PlanProps) {
  const { stage, wants, day, answer } = app.planner.state;
  const words = {
    none: 'No plan yet', wants: wants?.[0]?.[1], working: 'Working it out ...', faulty: 'Something does not fit: see Plan', likely: '', sure: '',
  }[stage];
  const told = day && answer && stage !== 'wants' && stage !== 'faulty';
  return <Button class="plan-line" onClick={() => app.go('plan')}>
    {told ? <>
      <span class={`mark ${signs[answer.verdict.level]}`} aria-hidden="true">{marks[answer.verdict.level]}</span>
      <strong>{answer.verdict.words}</strong>
      {` ${tightestWords(day, job)}`}
    </> : words}
  </Button>;
}

function tightestWords({ tightest }: DayPlan, job: Job): string {
  if (!tightest?.opens) return '';
  return `Tightest: ${tightest.zone}, ${Math.round(tightest.minutes)} min to ${workWords(tightest.operation)} from ${clockOf(job)(tightest.opens)}`;
}

export function PlanScreen({ app, job }: PlanProps) {
  const { state } = app.planner;
  return <section class="page plan" aria-busy={state.stage === 'working'}>
    <h1 tabIndex={-1}><bdi>{job.tables.name || 'Plan'}</bdi> <small>{dayText(dateOf(job) ?? '', true)}</small></h1>
    <PlanBody app={app} job={job} state={state} />
  </section>;
}

function PlanBody({ app, job, state }: PlanProps & { state: PlanState }) {
  const { stage, day, answer } = state;
  if (stage === 'wants') {
    return <>
      <p>Still needed for a plan:</p>
      <ul class="wants">{state.wants?.map(([screen, words]) => <li key={words}><Button onClick={() => app.go(screen)}>{words}</Button></li>)}</ul>
    </>;
  }
  if (stage === 'faulty') return <Faults app={app} job={job} refusal={state.refusal} />;
  if (!day || !answer) return <p>Working it out ...</p>;
  return <>
    <VerdictLine verdict={answer.verdict} />
    <UnsaidLine app={app} job={job} />
    <Sureness stage={stage} day={day} />
    <NowAndNext app={app} job={job} />
    <div class="cards">{day.zones.map((zone) => <ZoneCard key={zone.name} job={job} zone={zone} />)}</div>
    <Cautions watch={answer.watch} />
    <OrderCard job={job} day={day} />
    <CrewCard job={job} day={day} />
    <SawCard job={job} day={day} />
    <SuppliesCard day={day} />
    <CompareCard app={app} job={job} />
    <OutlookCard app={app} />
    <Sheets app={app} html={answer.files['.html']} />
    {day.assumptions?.length ? <Folded summary="Assumed"><ul>{day.assumptions.map((words) => <li key={words}>{words}</li>)}</ul></Folded> : null}
    {answer.messages && <Folded summary="Notes on what you entered"><pre>{answer.messages}</pre></Folded>}
  </>;
}

// What the engine refuses, each with the way to where it is set.
function Faults({ app, job, refusal }: PlanProps & { refusal: Refusal | undefined }) {
  const findings = (refusal?.findings ?? []).filter((finding) => finding.severity === 'error');
  if (findings.length === 0) {
    return <div class="fault" role="alert">
      <h2>It cannot be planned</h2>
      <pre>{refusal?.messages || refusal?.error}</pre>
    </div>;
  }
  const goTo = (key: string | undefined) => {
    const { shape, thing } = placeOf(job, key);
    app.selection = thing && shape;
    app.tool = 'move';
    app.go(shape ? 'draw' : 'details');
  };
  return <div class="fault" role="alert">
    <h2>Something does not fit</h2>
    <ul>
      {findings.map((finding, i) => <li key={i}>
        <strong>{placeOf(job, finding.key).words}: </strong>
        {finding.message}{finding.next && `. ${finding.next}.`} <Button onClick={() => goTo(finding.key)}>Go there</Button>
      </li>)}
    </ul>
  </div>;
}

// Where a key of the file stands: its shape in the drawing, where it is of one.
function placeOf(job: Job, key = '') {
  const [, kind, number] = /^(zone|obstacle)\[(\d+)\]/.exec(key) ?? [];
  const shape: Shape | undefined = kind ? { kind: kind as Shape['kind'], index: Number(number) - 1 } : undefined;
  const thing = shape && job.tables[shape.kind]?.[shape.index];
  const words = thing ? `${thing.name ?? kind}, ${key.split('.').slice(1).join(' ') || 'as drawn'}` : (key || 'The job').replaceAll('_', ' ').replaceAll('.', ' ');
  return { shape, thing, words };
}

const VerdictLine = ({ verdict: { level, words, reasons } }: { verdict: Verdict }) => <p class={`verdict ${signs[level]}`}>
  <span class="mark" aria-hidden="true">{marks[level]}</span>
  <strong>{words}</strong>
  {reasons.length > 0 && `: ${reasons.join(', ')}`}
</p>;

function UnsaidLine({ app, job: { unsaid } }: PlanProps) {
  const list = [unsaid.weather && 'the weather', unsaid.mix && 'the mix'].filter(Boolean);
  if (list.length === 0) return null;
  return <p class="unsaid">Planned with typical figures for {list.join(' and ')}. <Button onClick={() => app.go('details')}>Set them</Button></p>;
}

function Sureness({ stage, day }: { stage: PlanState['stage']; day: DayPlan }) {
  if (stage !== 'sure') return <p class="sure">The likely day. How far it may move is being worked out ...</p>;
  const way = day.sureness?.either_way_min;
  const cause = day.sureness?.causes?.[0];
  return <p class="sure">
    {way !== undefined && `The main work opens within ${Math.round(way)} min either way on eight days in ten. `}
    {cause && `Biggest unknown: ${cause.what}.`}
  </p>;
}

const placeWords = ({ zone, part }: Row) => (part ? `${zone}, ${part}` : zone);

function NowAndNext({ app, job }: PlanProps) {
  const now = Date.now();
  const clock = clockOf(job);
  const all = windowsOf(app.planner.state.day);
  const left = (row: Row) => Math.round((Date.parse(row.closes ?? '') - now) / 60000);
  const open = all.filter((row) => Date.parse(row.opens) <= now && row.closes && now < Date.parse(row.closes));
  const next = all.filter((row) => Date.parse(row.opens) > now).slice(0, open.length ? 3 : 4);
  return <div class="now">
    {open.length > 0 && <>
      <h2>Open now</h2>
      <ul>{open.map((row, i) => <li key={i} class="open"><strong><bdi>{row.work}, {placeWords(row)}</bdi></strong> {left(row)} min left</li>)}</ul>
    </>}
    {next.length > 0 && <>
      <h2>{open.length ? 'Then' : 'First'}</h2>
      <ul>{next.map((row, i) => <li key={i}><strong>{clock(row.opens)}</strong> {row.work}, <bdi>{placeWords(row)}</bdi></li>)}</ul>
    </>}
  </div>;
}

function ZoneCard({ job, zone }: { job: Job; zone: PlannedZone }) {
  const clock = clockOf(job);
  const system = systemOf(job);
  const size = system === 'si' ? areaText(zone.area_m2, 'm') : areaText(zone.area_m2 / 0.09290304, 'ft');
  const { parts = [], border, faces = [] } = zone;
  const table = (part: Part, name: string, key: string) => <WindowTable key={key} job={job} zone={zone} name={name} windows={part.windows} />;
  return <section class="card">
    <h2><bdi>{zone.name}</bdi></h2>
    <p>{zone.finish}, {size}, {volumeText(zone.volume_m3, system)}. Placed {clock(zone.placed?.start)} to {clock(zone.placed?.end)}.</p>
    {parts.length ? parts.map((part, i) => table(part, part.name, `part ${i}`)) : table(zone, '', 'whole')}
    {border && table(border, border.name, 'border')}
    {faces.map((face, i) => table(face, faces.length > 1 ? `${face.name} ${i + 1}` : face.name, `face ${i}`))}
    {zone.joints?.says && <p><strong>Joints: </strong>{zone.joints.says}</p>}
  </section>;
}

// Two columns, which a phone has room for: how far the opening may move stands under the times.
function WindowTable({ job, zone, name, windows }: { job: Job; zone: PlannedZone; name: string; windows: Window[] }) {
  const clock = clockOf(job);
  const rows = windows.filter((window) => window.opens);
  if (rows.length === 0) return null;
  return <table aria-label={`Times of ${zone.name}${name && `, ${name}`}`}>
    {name && <caption><bdi>{name}</bdi></caption>}
    <thead><tr><th scope="col">Work</th><th scope="col">When</th></tr></thead>
    <tbody>
      {rows.map(({ operation, opens, closes, opens_band: band }, i) => <tr key={i}>
        <th scope="row">{workWords(operation)}</th>
        <td>
          {closes ? `${clock(opens)} to ${clock(closes)}` : `from ${clock(opens)}`}
          {band?.early && band.late && <small>opens {clock(band.early)} to {clock(band.late)}, 8 days in 10</small>}
        </td>
      </tr>)}
    </tbody>
  </table>;
}

function OrderCard({ job, day }: { job: Job; day: DayPlan }) {
  const clock = clockOf(job);
  const system = systemOf(job);
  const { order, trucks = [], crew_summary: crew } = day;
  if (!order || trucks.length === 0) return null;
  return <section class="card">
    <h2>Order</h2>
    <p><strong>{soldText(order.sold_m3, system)}</strong> ({volumeText(order.neat_m3, system)} as drawn)</p>
    <ul>{trucks.map((load) => <li key={load.number}>Load {load.number}: {soldText(load.sold_m3, system)}, batched {clock(load.batched)}, here {clock(load.arrives)}, empty {clock(load.empty)}</li>)}</ul>
    {crew && <p>{crew.says}.</p>}
  </section>;
}

// What the engine does not tell at once is folded away.
function Cautions({ watch }: { watch: Caution[] }) {
  if (watch.length === 0) return null;
  const [first, rest] = [true, false].map((now) => watch.filter((caution) => caution.at_once === now)) as [Caution[], Caution[]];
  return <section class="card">
    <h2>Watch for</h2>
    <CautionList list={first} />
    {rest.length > 0 && <Folded summary={`${rest.length} more to keep in mind`}><CautionList list={rest} /></Folded>}
  </section>;
}

const CautionList = ({ list }: { list: Caution[] }) => (list.length ? <ul>
  {list.map(({ level, zone, text }, i) => <li key={i} class={level}><strong>{level === 'stop' && 'Stop: '}{zone && <><bdi>{zone}</bdi>: </>}</strong>{text}</li>)}
</ul> : null);

// The sheet, and first the parts of it that one looks at alone.
function Sheets({ app, html }: { app: App; html: string | undefined }) {
  if (!html) return <p>The day sheet comes once the range of times is worked out.</p>;
  return <div class="row">
    <Button class="main" onClick={() => app.show('Day sheet', html)}>Day sheet for the crew</Button>
    {sheetParts().map((part) => <Button key={part.title} onClick={() => app.show(part.title, partOfSheet(html, part))}>{part.title}</Button>)}
  </div>;
}

// A sheet as the engine makes it, in a frame that can do nothing but show it.
export function SheetDialog({ app, job, sheet: { title, html } }: PlanProps & { sheet: Sheet }) {
  const dialog = useRef<HTMLDialogElement>(null);
  useLayoutEffect(() => dialog.current?.showModal(), []);
  const name = safeName(`${job.tables.name} ${title === 'Day sheet' ? '' : title}`);
  return <dialog ref={dialog} class="sheet-dialog" aria-label={title} onClose={() => app.hide()}>
    <div class="row">
      <Button onClick={() => dialog.current?.close()}>Close</Button>
      <Button onClick={() => void give(`${name}.html`, 'text/html', html)}>Send it</Button>
    </div>
    <iframe title={title} sandbox="allow-scripts" srcdoc={html} />
  </dialog>;
}
