// On the slab: one tap notes a sign with the hour, and the plan moves with it.
import { useState } from 'preact/hooks';
import { AlarmTick } from './alarms';
import { reasonOf } from './answers';
import type { App } from './app';
import { AwakeTick } from './awake';
import { clockOf, systemOf, type Job } from './job';
import { workWords } from './plan';
import { say } from './say';
import { Button, Fault, Field, Tiles } from './ui';

const signs = [
  ['placed', 'Placed', 'the first concrete is in the form'],
  ['sheen-gone', 'Sheen gone', 'no more shine of bleed water'],
  ['edge-held', 'Edge holds', 'the edger leaves a clean edge'],
  ['thumbprint', 'Thumbprint', 'a thumb goes in about 1/4 in'],
  ['no-dent', 'Thumb leaves no dent', 'too late to stamp'],
  ['initial-set', 'Boot leaves no print', 'initial set'],
  ['sawed', 'Saw cut clean', 'the first cut that keeps its edges'],
  ['crack', 'Crack', 'the first crack across it'],
] as const;

interface SlabProps {
  app: App;
  job: Job;
}
type Note = (reading: string, zone: string, value?: string) => void;

export function SlabScreen({ app, job }: SlabProps) {
  const [fault, setFault] = useState('');
  const zones = job.tables.zone.map((zone) => zone.name);
  const [first] = zones;
  const zone = zones.includes(app.slabZone) ? app.slabZone : first;
  const note = async (reading: string, place: string, value?: string) => {
    setFault('');
    try {
      const sentence = await app.note(reading, place, value);
      navigator.vibrate?.(40);
      say(`Noted: ${sentence}`);
    } catch (error) {
      setFault(reasonOf(error));
    }
  };
  const choose = (name: string) => {
    app.slabZone = name;
    app.shown();
  };
  return <section class="page slab">
    <h1 tabIndex={-1}>On the slab</h1>
    {zone === undefined ? <p>Draw the pour first.</p> : <>
      <Tiles legend="Where" choices={zones.map((name) => [name, name])} taken={zone} take={choose} />
      <Fault>{fault}</Fault>
      <div class="signs">
        {signs.map(([id, words, hint]) => <Button key={id} class="sign" onClick={() => void note(id, zone)}><strong>{words}</strong><small>{hint}</small></Button>)}
      </div>
      <Temperature job={job} zone={zone} note={(...what) => void note(...what)} />
      <NextWork app={app} job={job} zone={zone} />
      <h2>Noted</h2>
      <Noted app={app} job={job} />
      <div class="row"><Button onClick={() => app.go('after')}>After the pour</Button></div>
      <AwakeTick app={app} />
      <AlarmTick app={app} />
    </>}
  </section>;
}

function Temperature({ job, zone, note }: { job: Job; zone: string; note: Note }) {
  const [value, setValue] = useState('');
  const us = systemOf(job) === 'us';
  const put = (reading: string, place: string) => value && note(reading, place, value);
  return <div class="pair">
    <Field label={`Thermometer, ${us ? '°F' : '°C'}`}>
      {(field) => <input {...field} type="number" inputMode="decimal" min={us ? 30 : 0} max={us ? 130 : 55} step="any" value={value} onInput={({ currentTarget }) => setValue(currentTarget.value)} />}
    </Field>
    <div class="row">
      <Button onClick={() => put('concrete', '')}>Concrete from the truck</Button>
      <Button onClick={() => put('surface', zone)}>Slab surface</Button>
      <Button onClick={() => put('air', '')}>Air</Button>
    </div>
  </div>;
}

function NextWork({ app, job, zone: name }: SlabProps & { zone: string }) {
  const { day, stage } = app.planner.state;
  const zone = day?.zones.find((each) => each.name === name);
  const now = Date.now();
  const windows = zone?.parts?.length ? zone.parts.flatMap((part) => part.windows) : zone?.windows ?? [];
  const [next] = windows.filter((window) => window.closes && Date.parse(window.closes) > now).sort((a, b) => Date.parse(a.opens ?? '') - Date.parse(b.opens ?? ''));
  if (!next) return <div class="now" hidden />;
  const clock = clockOf(job);
  return <div class="now">
    <h2>Next here</h2>
    <p><strong>{workWords(next.operation)}: {clock(next.opens)} to {clock(next.closes)}</strong></p>
    {stage === 'sure' && day?.seen?.map((words, i) => <p key={i}>{words}</p>)}
  </div>;
}

// ---- what was noted ----
// A line of the journal with its hour by the job's clock.
function shownReading(job: Job, words: string): string {
  const [, date, time, rest] = /^(\d{4}-\d{2}-\d{2})[ T](\d{2}:\d{2}) +(.*)$/.exec(words) ?? [];
  return date ? `${clockOf(job)(`${date}T${time}`)} ${rest}` : words;
}

// As the journal has it, the last first.
function readings(journal: string): string[] {
  const kept: string[] = [];
  for (const line of journal.split('\n')) {
    const words = line.replace(/#.*/, '').trim();
    if (words === 'undo') kept.pop();
    else if (words) kept.push(words);
  }
  return kept.reverse();
}

function Noted({ app, job }: SlabProps) {
  const list = readings(job.journal);
  if (list.length === 0) return <p>Nothing yet. Tap a sign when you see it: the plan goes by it from then on.</p>;
  const undo = () => {
    app.unnote();
    say('Removed');
  };
  return <div>
    <Button onClick={undo}>Undo the last</Button>
    <ol class="noted">{list.map((words, i) => <li key={list.length - i}><bdi>{shownReading(job, words)}</bdi></li>)}</ol>
  </div>;
}
