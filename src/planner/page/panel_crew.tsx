// Who is on the crew, what is on hand, and what things cost: forms of the details' screen.
import type { App } from './app';
import { plainTime, systemOf, type Hand, type Job, type Pour } from './job';
import { Button, Choice, Folded, Group, NumberField, TextField, Tick, Tiles, type Choices } from './ui';
import { timeOfDay, type System } from './units';

const usualFinishers = 4; // as the library's Crew (job/model/order_notes.h), where a file does not say

const haulings: Choices = [['chute', 'Chute'], ['pump', 'Pump'], ['buggy', 'Buggy'], ['wheelbarrow', 'Wheelbarrow']];
const curings: Choices = [['none', 'none'], ['film', 'sprayed compound'], ['plastic', 'plastic sheet'], ['blanket', 'blankets']];

// ---- crew and tools ----
export function CrewForm({ app, job }: { app: App; job: Job }) {
  const { tables } = job;
  const { pour, crew, hand: hands = [] } = tables;
  const saws = Array.isArray(pour.saws) ? pour.saws : [];
  const inPour = (change: (each: Pour) => void) => app.edit((each) => change(each.tables.pour));
  const saw = (kind: string) => (on: boolean) => inPour((each) => { each.saws = [...saws.filter((name) => name !== kind), ...(on ? [kind] : [])]; });
  return <Group title="Crew and tools">
    {hands.length > 0 && crew?.finishers === undefined ? <p>The crew is the {hands.length} listed below.</p>
      : <NumberField label="Finishers" value={crew?.finishers} min={Math.max(1, hands.length)} max={30} step={1} take={(count) => app.edit((each) => { (each.tables.crew ??= {}).finishers = count; })} />}
    <HandsForm app={app} hands={hands} />
    <Tiles legend="From the truck" choices={haulings} taken={pour.hauling ?? 'chute'} take={(way) => inPour((each) => { each.hauling = way; })} />
    <div role="group" aria-label="Saws on hand">
      <p>Saws on hand</p>
      <Tick label="Early-entry saw" on={saws.includes('early-entry')} take={saw('early-entry')} />
      <Tick label="Wet saw" on={saws.includes('wet')} take={saw('wet')} />
    </div>
    {tables.finish_work?.sealer === 'cure and seal' ? <p>Curing: the cure-and-seal.</p>
      : <Choice label="Curing" choices={curings} value={pour.curing} take={(way) => inPour((each) => { each.curing = way; })} />}
  </Group>;
}

// Each hand with a name, hours and a pace: nobody is then put to work outside of them.
function HandsForm({ app, hands }: { app: App; hands: Hand[] }) {
  const add = () => app.edit(({ tables }) => {
    const list = (tables.hand ??= []);
    // The count stays what it was, unless more are told apart.
    const crew = (tables.crew ??= {});
    if (list.length === 0) crew.finishers ??= usualFinishers;
    list.push({ name: freeLetter(list) });
    if (crew.finishers !== undefined) crew.finishers = Math.max(crew.finishers, list.length);
  });
  return <Folded summary="Names, hours and pace" open={hands.length > 0}>
    <p>For those who come late, leave early, or are quicker or slower than most. Leave it empty if all are alike.</p>
    {hands.map((hand, i) => <HandForm key={i} app={app} hands={hands} hand={hand} index={i} />)}
    <Button onClick={add}>Add a hand</Button>
  </Folded>;
}

function freeLetter(hands: Hand[]): string {
  const taken = new Set(hands.map((hand) => hand.name));
  for (let i = 0; ; ++i) {
    const name = `${String.fromCharCode(65 + (i % 26))}${i < 26 ? '' : Math.floor(i / 26) + 1}`;
    if (!taken.has(name)) return name;
  }
}

function HandForm({ app, hands, hand, index }: { app: App; hands: Hand[]; hand: Hand; index: number }) {
  const put = (key: string) => (value: string | number | boolean | undefined) => app.edit(({ tables }) => {
    const each = tables.hand?.[index];
    if (!each) return;
    if (value === undefined || value === '' || value === false) delete each[key];
    else each[key] = value;
  });
  const remove = () => app.edit(({ tables }) => {
    tables.hand?.splice(index, 1);
    if (tables.hand?.length) return;
    delete tables.hand;
    (tables.crew ??= {}).finishers ??= usualFinishers;
  });
  const taken = (name: string) => hands.some((other, i) => i !== index && other.name === name);
  const hour = (key: 'from' | 'to', label: string) =>
    <TextField label={label} value={plainTime(hand[key])} take={(text) => put(key)(text.trim())}
      check={(text) => (text.trim() === '' || timeOfDay(text.trim()) ? '' : 'A time such as 11:00 AM or 11:00')} />;
  const name = hand.name ?? `hand ${index + 1}`;
  return <div class="hand" role="group" aria-label={name}>
    <TextField label="Name or letter" value={hand.name} needed take={(text) => put('name')(text.trim())}
      check={(text) => (taken(text.trim()) ? 'Somebody has this name already' : '')} />
    <div class="pair">{hour('from', 'There from')}{hour('to', 'Until')}</div>
    <NumberField label="Pace: 1 is usual" value={hand.pace} min={0.3} max={2} optional take={put('pace')} />
    <Tick label="Simple work only: no finishing" on={hand.simple_work} take={put('simple_work')} />
    <Button aria-label={`Remove ${name}`} onClick={remove}>Remove</Button>
  </div>;
}

// ---- prices ----
// Key, words, and what a price is for: an amount by the job's units, or one thing.
const prices: [key: string, words: string, unit: Record<System, string>][] = [
  ['hand_per_hour', 'A hand', { us: 'an hour', si: 'an hour' }],
  ['concrete', 'Concrete', { us: 'a yd³', si: 'a m³' }],
  ['short_load', 'Short load', { us: 'each', si: 'each' }],
  ['retarder', 'Retarder', { us: 'a fl oz', si: 'a liter' }],
  ['ice', 'Ice', { us: 'a lb', si: 'a kg' }],
  ['redo', 'Redo a lost finish', { us: 'a ft²', si: 'a m²' }],
];

export function PricesForm({ app, job }: { app: App; job: Job }) {
  const told = job.tables.prices;
  const system = systemOf(job);
  const put = (key: string) => (value: string | number | undefined) => app.edit(({ tables }) => {
    const table = (tables.prices ??= {});
    if (value === undefined || value === '') delete table[key];
    else table[key] = value;
    if (Object.keys(table).length === 0) delete tables.prices;
  });
  const figure = (key: string) => {
    const value = told?.[key];
    return typeof value === 'number' ? value : undefined;
  };
  const elsewhere = (key: string) => told !== undefined && !(key in told) && Object.keys(told).some((each) => each.startsWith(`${key}_per_`));
  return <Group title="Prices">
    <Folded summary="Enter what things cost you" open={told !== undefined}>
      <p>Then each choice is priced too. What you leave out is left out of the total.</p>
      <TextField label="Currency" value={told?.currency === undefined ? '' : String(told.currency)} maxLength={8} take={(text) => put('currency')(text.trim())}
        hint={system === 'us' ? 'Left empty: $' : 'A sign or a code, such as € or CAD'} />
      {prices.map(([key, words, unit]) => (elsewhere(key) ? <p key={key}>{words}: as the job file says, in a unit of its own.</p>
        : <NumberField key={key} label={words} value={figure(key)} min={0} max={1e9} unit={unit[system]} optional take={put(key)} />))}
    </Folded>
  </Group>;
}
