// What the plan's screen works out when it is asked for: what can still be changed, and the hours.
import { button, el } from './dom';
import { clockOf } from './job';

// `open` shows one of the engine's sheets.
export function askedCards(app, open) {
  return [compareCard(app, open), outlookCard(app, open)];
}

function refusal(answer) {
  return el('pre', { class: 'fault', role: 'alert' }, answer.messages || answer.error || 'It cannot be worked out.');
}

function card(app, word, title, words, wait, show) {
  const asked = app.asked[word];
  return el('section', { class: 'card', 'aria-busy': String(Boolean(asked?.working)) }, el('h2', {}, title),
    !asked && [el('p', {}, words[0]), button(words[1], () => app.askFor(word))],
    asked?.working && el('p', { role: 'status' }, wait),
    asked?.answer && (asked.answer.ok ? show(asked.answer) : refusal(asked.answer)));
}

function compareCard(app, open) {
  return card(app, 'compare', 'What can still be changed',
    ['Retarder, the concrete, trucks, the start, hands, shade, covers: each is tried on the same days.', 'Try them'], 'Trying each on possible days: this takes a while. You can keep working.',
    (answer) => {
      const told = JSON.parse(answer.files['.json']);
      return [el('p', {}, el('strong', {}, told.advice.order)), el('p', {}, told.advice.why), told.advice.cost ? el('p', {}, told.advice.cost) : null,
        told.advice.turning ? el('p', {}, told.advice.turning) : null,
        choiceList(app, told), button('Full comparison', () => open('Comparison', answer.files['.html']))];
    });
}

// The one to prefer first, then as they were tried.
function choiceList(app, told) {
  const clock = clockOf(app.job);
  const late = (choice) => {
    const minutes = choice.expected_late_min;
    return minutes > 0 ? `${minutes} min late on average` : 'nothing late';
  };
  const best = told.choices[told.best];
  const preferred = told.verdict === 'think_again' ? '' : ', the one to prefer';
  const item = (choice) => el('li', {}, el('strong', {}, el('bdi', {}, choice.choice), choice === best ? preferred : ''), ': ',
    late(choice), choice.last_finish ? `, finished ${clock(choice.last_finish)}` : '',
    choice.smallest_crew ? `, ${choice.smallest_crew} hands would do` : '', choice.stops > 0 ? el('strong', {}, `, ${choice.stops} ${choice.stops === 1 ? 'stop' : 'stops'}`) : '',
    choice.takes ? el('small', {}, ` ${choice.takes}`) : null);
  return el('ul', { class: 'choices' }, [best, ...told.choices.filter((choice) => choice !== best)].map(item));
}

function outlookCard(app, open) {
  return card(app, 'outlook', 'The weather by the hour',
    ['Air, wind, sun, rain and how fast the slab dries, hour by hour.', 'Show the hours'], 'Working it out ...',
    (answer) => button('The hours', () => open('Weather by the hour', answer.files['.html'])));
}
