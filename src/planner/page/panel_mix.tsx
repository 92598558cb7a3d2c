// What a mix is ordered by, and the work after finishing: forms of the details' screen.
import type { App } from './app';
import { depthOf, systemOf, usualOf, type FinishWork, type Job, type Mix } from './job';
import type { Table, Value } from './toml';
import { Choice, Group, NumberField, Tiles, type Choices } from './ui';
import { readFigure, readLength, writeFigure, writeLength } from './units';

const lbPerSack = 94;
const dropKeys = (table: Table, key: string) => {
  for (const each of Object.keys(table)) if (each === key || each.startsWith(`${key}_`)) delete table[each];
};

// ---- the water: told, or estimated from what the mix is ordered by ----
type Way = 'slump' | 'strength' | 'w_cm';

// Which the file's mix tells; undefined where it gives the water itself.
export function waterOf(mix: Mix): Way | undefined {
  if ('w_cm' in mix) return 'w_cm';
  if (Object.keys(mix).some((key) => /^water(_|$)/.test(key))) return undefined;
  return Object.keys(mix).some((key) => /^slump(_|$)/.test(key)) ? 'slump' : 'strength';
}

export function orderMixBy(job: Job, way: Way) {
  const { mix } = job.tables;
  const us = systemOf(job) === 'us';
  delete mix.w_cm;
  dropKeys(mix, 'water');
  if (way !== 'slump') dropKeys(mix, 'slump');
  if (way === 'w_cm') mix.w_cm = 0.45;
  if (way === 'strength' && !Object.keys(mix).some((key) => /^strength(_psi|_mpa)?$/.test(key))) mix.strength = usualOf(job).strength;
  if (way !== 'slump') return;
  if (readLength(mix, 'slump', depthOf(job)) === undefined) mix.slump = us ? 4 : 100;
  if (!us || typeof mix.cementitious !== 'number') return;
  mix.sacks = Math.min(10, Math.max(3, Math.round((mix.cementitious / lbPerSack) * 100) / 100));
  delete mix.cementitious;
}

// An edit of the mix, which is then no longer the usual one.
export const editMix = (app: App, change: (mix: Mix, job: Job) => void) => app.edit((job) => {
  change(job.tables.mix, job);
  job.unsaid.mix = false;
});
export const inMix = (app: App, key: string) => (value: Value | undefined) => editMix(app, (mix) => writeFigure(mix, key, value));

interface MixProps {
  app: App;
  job: Job;
}
export function ContentField({ app, job }: MixProps) {
  const { mix } = job.tables;
  const system = systemOf(job);
  if ('cement' in mix) return <p>The cement is given by itself in this job.</p>;
  if ('sacks' in mix) return <NumberField label="Sacks of cement a yard" value={mix.sacks} take={inMix(app, 'sacks')} min={3} max={10} unit="94 lb each" />;
  const limits = system === 'us' ? { min: 200, max: 1200, unit: 'lb/yd\u00b3' } : { min: 120, max: 710, unit: 'kg/m\u00b3' };
  return <NumberField label="Cement, ash and slag together" value={readFigure(mix, 'cementitious', system)} take={inMix(app, 'cementitious')} {...limits} />;
}

export function StrengthField({ app, job, optional }: MixProps & { optional: boolean }) {
  const system = systemOf(job);
  const limits = system === 'us' ? { min: 1500, max: 12000, unit: 'psi' } : { min: 10.5, max: 82.5, unit: 'MPa' };
  const field = { label: 'Strength at 28 days', value: readFigure(job.tables.mix, 'strength', system), take: inMix(app, 'strength'), ...limits };
  return optional ? <NumberField {...field} optional /> : <NumberField {...field} />;
}

export function WaterForm({ app, job }: MixProps) {
  const { mix } = job.tables;
  const us = systemOf(job) === 'us';
  const way = waterOf(mix);
  const ways: Choices<Way> = [['slump', us ? 'Sacks and slump' : 'Cement and slump'], ['strength', 'Strength'], ['w_cm', 'w/cm']];
  return <div>
    <Tiles legend="What you know about it" choices={ways} taken={way} take={(taken) => editMix(app, (_, each) => orderMixBy(each, taken))} />
    {way === undefined && <p>The water is given by weight in this job.</p>}
    {way === 'slump' && <div class="pair">
      <ContentField app={app} job={job} />
      <NumberField label="Slump" value={readLength(mix, 'slump', depthOf(job))} unit={depthOf(job)} {...(us ? { min: 1, max: 9 } : { min: 26, max: 228 })}
        take={(value) => editMix(app, (each) => writeLength(each, 'slump', value))} />
    </div>}
    {way === 'strength' && <StrengthField app={app} job={job} optional={false} />}
    {way === 'w_cm' && <NumberField label="Water over cement (w/cm)" value={mix.w_cm} take={inMix(app, 'w_cm')} min={0.25} max={0.8} />}
    {(way === 'slump' || way === 'strength') && <p>The water is estimated from it. Ask the plant for the w/cm: it is surer.</p>}
  </div>;
}

// ---- release, sealer, and the waits of their labels ----
// A cure-and-seal is the curing, and leaves nothing to seal later.
export function sealBy(job: Job, sealer: string) {
  const work = (job.tables.finish_work ??= {});
  work.sealer = sealer;
  if (sealer === 'cure and seal') delete job.tables.pour.curing;
  if (sealer !== 'sealer') delete work.seal_after_days;
}

const releases: Choices = [['powder', 'Powder'], ['liquid', 'Liquid']];
const sealers: Choices = [['sealer', 'sealer, once it is dry'], ['cure and seal', 'cure and seal, instead of curing'], ['none', 'none']];

export function FinishWorkForm({ app, job }: MixProps) {
  const work = job.tables.finish_work ?? {};
  const sealer = work.sealer ?? 'sealer';
  const edit = (change: (work: FinishWork) => void) => app.edit(({ tables }) => change((tables.finish_work ??= {})));
  const wait = (key: string) => (value: number | undefined) => edit((each) => writeFigure(each, key, value));
  return <Group title="Finish work">
    <Tiles legend="Release for stamps" choices={releases} taken={work.release ?? 'powder'} take={(release) => edit((each) => { each.release = release; })} />
    <Choice label="Sealer" choices={sealers} value={sealer} take={(taken) => app.edit((each) => sealBy(each, taken))} />
    <div class="pair">
      <NumberField label="Wash after" value={readFigure(work, 'wash_after', systemOf(job))} min={0} max={240} unit="hours" optional take={wait('wash_after')} />
      {sealer === 'sealer' && <NumberField label="Seal after" value={work.seal_after_days} min={0} max={365} unit="days" optional take={wait('seal_after_days')} />}
    </div>
    <p>The waits as the labels say; left empty, they are the usual ones. Follow the labels and their safety sheets.</p>
  </Group>;
}
