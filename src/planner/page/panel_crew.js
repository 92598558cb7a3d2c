// Who is on the crew, what is on hand, and what things cost: forms of the details' screen.
import { button, el, tiles } from './dom';
import { choice, numberField, textField, tick } from './inputs';
import { systemOf } from './job';
import { timeOfDay } from './units';

const inTable = (app, name) => (change, options = { redraw: false }) =>
  app.edit((job) => change((job.tables[name] ??= {})), options);

const usualFinishers = 4; // as the library's Crew (job/model/order_notes.h), where a file does not say

// ---- crew and tools ----
export function crewForm(app) {
  const { tables } = app.job;
  const pour = (tables.pour ??= {});
  const hands = tables.hand ?? [];
  const saws = Array.isArray(pour.saws) ? pour.saws : [];
  const inPour = inTable(app, 'pour');
  const saw = (kind, on) => inPour((each) => {
    each.saws = [...(each.saws ?? []).filter((name) => name !== kind), ...(on ? [kind] : [])];
  });
  return el('section', { class: 'group' }, el('h2', {}, 'Crew and tools'),
    hands.length > 0 && tables.crew?.finishers === undefined ? el('p', {}, `The crew is the ${hands.length} listed below.`)
      : numberField('Finishers', tables.crew?.finishers, (value) => inTable(app, 'crew')((crew) => { crew.finishers = value; }), { min: Math.max(1, hands.length), max: 30, step: 1 }),
    handsForm(app, hands),
    tiles('From the truck', [['chute', 'Chute'], ['pump', 'Pump'], ['buggy', 'Buggy'], ['wheelbarrow', 'Wheelbarrow']], pour.hauling ?? 'chute', (value) => inPour((each) => { each.hauling = value; })),
    el('div', { role: 'group', 'aria-label': 'Saws on hand' }, el('p', {}, 'Saws on hand'),
      tick('Early-entry saw', saws.includes('early-entry'), (on) => saw('early-entry', on)),
      tick('Wet saw', saws.includes('wet'), (on) => saw('wet', on))),
    tables.finish_work?.sealer === 'cure and seal' ? el('p', {}, 'Curing: the cure-and-seal.')
      : choice('Curing', [['none', 'none'], ['film', 'sprayed compound'], ['plastic', 'plastic sheet'], ['blanket', 'blankets']], pour.curing, (value) => inPour((each) => { each.curing = value; })));
}

// Each hand with a name, hours and a pace: nobody is then put to work outside of them.
function handsForm(app, hands) {
  const edit = (change) => app.edit((job) => change((job.tables.hand ??= []), job.tables));
  return el('details', { open: hands.length > 0 }, el('summary', {}, 'Names, hours and pace'),
    el('p', {}, 'For those who come late, leave early, or are quicker or slower than most. Leave it empty if all are alike.'),
    hands.map((hand, i) => handForm(app, hand, i, edit)),
    button('Add a hand', () => edit((list, all) => {
      // The count stays what it was, unless more are told apart.
      if (list.length === 0) (all.crew ??= {}).finishers ??= usualFinishers;
      list.push({ name: freeLetter(list) });
      if (all.crew?.finishers !== undefined) all.crew.finishers = Math.max(all.crew.finishers, list.length);
    })));
}

function freeLetter(hands) {
  const taken = new Set(hands.map((hand) => hand.name));
  for (let i = 0; ; ++i) {
    const name = `${String.fromCharCode(65 + (i % 26))}${i < 26 ? '' : Math.floor(i / 26) + 1}`;
    if (!taken.has(name)) return name;
  }
}

function handForm(app, hand, index, edit) {
  const put = (key, value) => app.edit((job) => {
    if (value === undefined || value === '' || value === false) delete job.tables.hand[index][key];
    else job.tables.hand[index][key] = value;
  }, { redraw: false });
  const others = () => (app.job.tables.hand ?? []).filter((_, i) => i !== index).map((other) => other.name);
  const hour = (key, label) => textField(label, hand[key]?.$time ?? hand[key], (text) => put(key, text.trim()), {
    check: (text) => (text.trim() === '' || timeOfDay(text.trim()) ? '' : 'A time such as 11:00 AM or 11:00'),
  });
  return el('div', { class: 'hand', role: 'group', 'aria-label': hand.name ?? `Hand ${index + 1}` },
    textField('Name or letter', hand.name, (name) => put('name', name.trim()), {
      needed: true, check: (name) => (others().includes(name.trim()) ? 'Somebody has this name already' : ''),
    }),
    el('div', { class: 'pair' }, hour('from', 'There from'), hour('to', 'Until')),
    numberField('Pace: 1 is usual', hand.pace, (pace) => put('pace', pace), { min: 0.3, max: 2, optional: true }),
    tick('Simple work only: no finishing', hand.simple_work, (on) => put('simple_work', on)),
    button('Remove', () => edit((list, all) => {
      list.splice(index, 1);
      if (list.length > 0) return;
      delete all.hand;
      (all.crew ??= {}).finishers ??= usualFinishers;
    }), { 'aria-label': `Remove ${hand.name ?? `hand ${index + 1}`}` }));
}

// ---- prices ----
// Key, words, and what a price is for: an amount by the job's units, or one thing.
const prices = [
  ['hand_per_hour', 'A hand', { us: 'an hour', si: 'an hour' }],
  ['concrete', 'Concrete', { us: 'a yd³', si: 'a m³' }],
  ['short_load', 'Short load', { us: 'each', si: 'each' }],
  ['retarder', 'Retarder', { us: 'a fl oz', si: 'a liter' }],
  ['ice', 'Ice', { us: 'a lb', si: 'a kg' }],
  ['redo', 'Redo a lost finish', { us: 'a ft²', si: 'a m²' }],
];

export function pricesForm(app) {
  const told = app.job.tables.prices;
  const edit = (key, value) => app.edit((job) => {
    const table = (job.tables.prices ??= {});
    if (value === undefined || value === '') delete table[key];
    else table[key] = value;
    if (Object.keys(table).length === 0) delete job.tables.prices;
  }, { redraw: false });
  const elsewhere = (key) => !(key in (told ?? {})) && Object.keys(told ?? {}).some((each) => each.startsWith(`${key}_per_`));
  return el('section', { class: 'group' }, el('h2', {}, 'Prices'),
    el('details', { open: told !== undefined }, el('summary', {}, 'Enter what things cost you'),
      el('p', {}, 'Then each choice is priced too. What you leave out is left out of the total.'),
      textField('Currency', told?.currency, (text) => edit('currency', text.trim()), { hint: systemOf(app.job) === 'us' ? 'Left empty: $' : 'A sign or a code, such as € or CAD', maxlength: 8 }),
      prices.map(([key, words, units]) => {
        const unit = units[systemOf(app.job)];
        return elsewhere(key) ? el('p', {}, `${words}: as the job file says, in a unit of its own.`)
          : numberField(words, told?.[key], (value) => edit(key, value), { min: 0, max: 1e9, unit, optional: true });
      })));
}
