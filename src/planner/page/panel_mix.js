// What a mix is ordered by, and the work after finishing: forms of the details' screen.
import { el, tiles } from './dom';
import { choice, numberField } from './inputs';
import { depthOf, systemOf, usualOf } from './job';
import { readFigure, readLength, writeFigure, writeLength } from './units';

const lbPerSack = 94;
const dropKeys = (table, key) => {
  for (const each of Object.keys(table)) if (each === key || each.startsWith(`${key}_`)) delete table[each];
};

// ---- the water: told, or estimated from what the mix is ordered by ----
// Which the file's mix tells; undefined where it gives the water itself.
export function waterOf(mix) {
  if ('w_cm' in mix) return 'w_cm';
  if (Object.keys(mix).some((key) => /^water(_|$)/.test(key))) return undefined;
  return Object.keys(mix).some((key) => /^slump(_|$)/.test(key)) ? 'slump' : 'strength';
}

export function orderMixBy(job, way) {
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

export function contentField(app, set) {
  const { mix } = app.job.tables;
  if ('cement' in mix) return el('p', {}, 'The cement is given by itself in this job.');
  if ('sacks' in mix) return numberField('Sacks of cement a yard', mix.sacks, set('sacks'), { min: 3, max: 10, unit: '94 lb each' });
  return numberField('Cement, ash and slag together', readFigure(mix, 'cementitious', systemOf(app.job)), set('cementitious'),
    systemOf(app.job) === 'us' ? { min: 200, max: 1200, unit: 'lb/yd\u00b3' } : { min: 120, max: 710, unit: 'kg/m\u00b3' });
}

export const strengthField = (app, set, optional) => numberField('Strength at 28 days', readFigure(app.job.tables.mix, 'strength', systemOf(app.job)), set('strength'),
  systemOf(app.job) === 'us' ? { min: 1500, max: 12000, unit: 'psi', optional } : { min: 10.5, max: 82.5, unit: 'MPa', optional });

export function waterForm(app, set) {
  const { job } = app;
  const { mix } = job.tables;
  const us = systemOf(job) === 'us';
  const way = waterOf(mix);
  const slump = (value) => app.edit((each) => {
    writeLength(each.tables.mix, 'slump', value);
    each.unsaid.mix = false;
  }, { redraw: false });
  return el('div', {},
    tiles('What you know about it', [['slump', us ? 'Sacks and slump' : 'Cement and slump'], ['strength', 'Strength'], ['w_cm', 'w/cm']], way,
      (taken) => app.edit((each) => {
        orderMixBy(each, taken);
        each.unsaid.mix = false;
      })),
    way === undefined ? el('p', {}, 'The water is given by weight in this job.') : null,
    way === 'slump' ? el('div', { class: 'pair' }, contentField(app, set),
      numberField('Slump', readLength(mix, 'slump', depthOf(job)), slump, { ...(us ? { min: 1, max: 9 } : { min: 26, max: 228 }), unit: depthOf(job) })) : null,
    way === 'strength' ? strengthField(app, set, false) : null,
    way === 'w_cm' ? numberField('Water over cement (w/cm)', mix.w_cm, set('w_cm'), { min: 0.25, max: 0.8 })
      : way && el('p', {}, 'The water is estimated from it. Ask the plant for the w/cm: it is surer.'));
}

// ---- release, sealer, and the waits of their labels ----
// A cure-and-seal is the curing, and leaves nothing to seal later.
export function sealBy(job, sealer) {
  const work = (job.tables.finish_work ??= {});
  work.sealer = sealer;
  if (sealer === 'cure and seal') delete job.tables.pour.curing;
  if (sealer !== 'sealer') delete work.seal_after_days;
}

export function finishWorkForm(app) {
  const work = app.job.tables.finish_work ?? {};
  const sealer = work.sealer ?? 'sealer';
  const edit = (change) => app.edit((job) => change((job.tables.finish_work ??= {})), { redraw: false });
  const wait = (key) => (value) => edit((each) => writeFigure(each, key, value));
  return el('section', { class: 'group' }, el('h2', {}, 'Finish work'),
    tiles('Release for stamps', [['powder', 'Powder'], ['liquid', 'Liquid']], work.release ?? 'powder', (release) => edit((each) => { each.release = release; })),
    choice('Sealer', [['sealer', 'sealer, once it is dry'], ['cure and seal', 'cure and seal, instead of curing'], ['none', 'none']], sealer, (taken) => app.edit((job) => sealBy(job, taken))),
    el('div', { class: 'pair' },
      numberField('Wash after', readFigure(work, 'wash_after', systemOf(app.job)), wait('wash_after'), { min: 0, max: 240, unit: 'hours', optional: true }),
      sealer === 'sealer' ? numberField('Seal after', work.seal_after_days, wait('seal_after_days'), { min: 0, max: 365, unit: 'days', optional: true }) : null),
    el('p', {}, 'The waits as the labels say; left empty, they are the usual ones. Follow the labels and their safety sheets.'));
}
