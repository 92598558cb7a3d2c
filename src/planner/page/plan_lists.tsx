// The plan's lists as the engine has them: who does what, the saw, what to bring.
import type { Cut, DayPlan, Task } from './answers';
import { clockOf, systemOf, type Job } from './job';
import { workWords } from './plan';
import { Folded } from './ui';
import { lengthText, planUnit, type System } from './units';

const placeOf = ({ zone, part }: Task) => [zone, part].filter(Boolean).join(', ');
const inUnit = (metres: number, system: System) => (system === 'si' ? metres : metres / 0.3048);

// One line a task: what is done together by the same hands stands under the person.
export function CrewCard({ job, day }: { job: Job; day: DayPlan }) {
  const people = (day.crew ?? []).filter((person) => person.tasks.length);
  if (people.length === 0) return null;
  const clock = clockOf(job);
  const late = ({ late_min: minutes, late_chance: chance = 0 }: Task) =>
    (minutes > 0 ? `, ${minutes} min late` : chance >= 0.1 ? `, late on ${Math.round(chance * 100)} days in 100` : '');
  const line = (task: Task, i: number) => <li key={i}>
    <strong>{clock(task.start)} to {clock(task.end)} </strong>
    {workWords(task.task)}
    {placeOf(task) && <>, <bdi>{placeOf(task)}</bdi></>}
    {(task.pieces ?? 0) > 1 && `, piece ${task.piece} of ${task.pieces}`}
    {late(task)}
  </li>;
  return <Folded summary="Crew, hour by hour" class="card">
    {people.map((person, i) => <section key={i}>
      <h3>{person.name}: {clock(person.arrives)} to {clock(person.leaves)}</h3>
      <ul>{person.tasks.map(line)}</ul>
    </section>)}
  </Folded>;
}

// The cuts with the saws on hand; with none, with those that could be got.
export function SawCard({ job, day }: { job: Job; day: DayPlan }) {
  const all = day.saw ?? [];
  const ready = all.some((cut) => cut.on_hand);
  const cuts = ready ? all.filter((cut) => cut.on_hand) : all;
  if (cuts.length === 0) return null;
  const clock = clockOf(job);
  const system = systemOf(job);
  const depth = (metres: number) => (system === 'si' ? `${Math.round(metres * 1000)} mm` : `${(metres / 0.0254).toFixed(2).replace(/\.?0+$/, '')} in`);
  const size = (cut: Cut) => [lengthText(inUnit(cut.length_m, system), planUnit(system)), cut.depth_m ? `${depth(cut.depth_m)} deep` : ''].filter(Boolean).join(', ');
  const line = (cut: Cut) => <li key={`${cut.zone} ${cut.number}`}>
    <strong>{cut.starts ? `${clock(cut.starts)} ` : 'not yet known '}</strong>
    <bdi>{cut.zone} {cut.number}</bdi>
    {`: ${cut.where}, ${size(cut)}`}
    {cut.latest && `; by ${clock(cut.latest)}`}
    {cut.late && <strong>, too late</strong>}
  </li>;
  const saws = [...new Set(cuts.map((each) => each.operation))];
  return <Folded summary="Saw list" class="card">
    <p>Keep to your local code and the saw’s manual: eyes, ears, lungs (silica dust) and the blade guard.</p>
    {saws.length > 1 && <p>The same cuts with either saw: make each with one of them.</p>}
    {saws.map((saw) => <div key={saw}>
      <h3>With the {workWords(saw)}{!ready && ' (not on hand)'}</h3>
      <ol class="cuts">{cuts.filter((each) => each.operation === saw).map(line)}</ol>
    </div>)}
  </Folded>;
}

export function SuppliesCard({ day }: { day: DayPlan }) {
  const list = (day.supplies ?? []).filter((supply) => supply.item !== 'concrete');
  if (list.length === 0) return null;
  return <Folded summary="What to bring" class="card">
    <ul>
      {list.map((supply) => <li key={supply.item}>{supply.name}: {supply.says}{supply.zones?.length ? <> for <bdi>{supply.zones.join(', ')}</bdi></> : ''}</li>)}
    </ul>
  </Folded>;
}
