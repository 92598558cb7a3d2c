// The plan's lists as the engine has them: who does what, the saw, what to bring.
import { el } from './dom';
import { clockOf, systemOf } from './job';
import { workWords } from './plan';
import { lengthText, planUnit } from './units';

const place = ({ zone, part }) => [zone, part].filter(Boolean).join(', ');
const inUnit = (metres, system) => (system === 'si' ? metres : metres / 0.3048);

// One line a task: what is done together by the same hands stands under the person.
export function crewCard(app, day) {
  const people = (day.crew ?? []).filter((person) => person.tasks?.length);
  if (people.length === 0) return null;
  const clock = clockOf(app.job);
  const late = (task) => (task.late_min > 0 ? `, ${task.late_min} min late` : task.late_chance >= 0.1 ? `, late on ${Math.round(task.late_chance * 100)} days in 100` : '');
  return el('details', { class: 'card' }, el('summary', {}, 'Crew, hour by hour'),
    people.map((person) => el('section', {},
      el('h3', {}, `${person.name}: ${clock(person.arrives)} to ${clock(person.leaves)}`),
      el('ul', {}, person.tasks.map((task) => el('li', {}, el('strong', {}, `${clock(task.start)} to ${clock(task.end)} `),
        workWords(task.task), place(task) ? [', ', el('bdi', {}, place(task))] : '',
        task.pieces > 1 ? `, piece ${task.piece} of ${task.pieces}` : '', late(task)))))));
}

// The cuts with the saws on hand; with none, with those that could be got.
export function sawCard(app, day) {
  const all = day.saw ?? [];
  const ready = all.some((cut) => cut.on_hand);
  const cuts = ready ? all.filter((cut) => cut.on_hand) : all;
  if (cuts.length === 0) return null;
  const clock = clockOf(app.job);
  const system = systemOf(app.job);
  const size = (cut) => [lengthText(inUnit(cut.length_m, system), planUnit(system)),
    cut.depth_m ? `${system === 'si' ? `${Math.round(cut.depth_m * 1000)} mm` : `${(cut.depth_m / 0.0254).toFixed(2).replace(/\.?0+$/, '')} in`} deep` : ''].filter(Boolean).join(', ');
  const cut = (each) => el('li', {}, el('strong', {}, each.starts ? `${clock(each.starts)} ` : 'not yet known '), el('bdi', {}, `${each.zone} ${each.number}`),
    `: ${each.where}, ${size(each)}`, each.latest ? `; by ${clock(each.latest)}` : '', each.late ? el('strong', {}, ', too late') : '');
  const saws = [...new Set(cuts.map((each) => each.operation))];
  return el('details', { class: 'card' }, el('summary', {}, 'Saw list'),
    el('p', {}, 'Keep to your local code and the saw\u2019s manual: eyes, ears, lungs (silica dust) and the blade guard.'),
    saws.length > 1 ? el('p', {}, 'The same cuts with either saw: make each with one of them.') : null,
    saws.map((saw) => [el('h3', {}, `With the ${workWords(saw)}${ready ? '' : ' (not on hand)'}`), el('ol', { class: 'cuts' }, cuts.filter((each) => each.operation === saw).map(cut))]));
}

export function suppliesCard(day) {
  const list = (day.supplies ?? []).filter((supply) => supply.item !== 'concrete');
  if (list.length === 0) return null;
  return el('details', { class: 'card' }, el('summary', {}, 'What to bring'),
    el('ul', {}, list.map((supply) => el('li', {}, `${supply.name}: ${supply.says}`, supply.zones?.length ? [' for ', el('bdi', {}, supply.zones.join(', '))] : ''))));
}
