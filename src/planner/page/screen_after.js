// After the pour: what was noted beside what was planned, and what the mix book learns of it.
import { button, el, say } from './dom';
import { bookName, clockOf } from './job';
import { openSheet } from './screen_plan';
import { give } from './share';

export function afterScreen(app) {
  return el('section', { class: 'page after' }, el('h1', { tabindex: -1 }, 'After the pour'),
    app.job.journal ? [checkBack(app), learning(app)] : el('p', {}, 'Nothing was noted for this pour. Tap the signs on the slab page as you see them: afterward they show how far the plan was off, and the next one starts from it.'),
    button('Back to the slab', () => app.go('slab')));
}

function checkBack(app) {
  const asked = app.asked['check-back'];
  const { answer } = asked ?? {};
  return el('section', { class: 'group', 'aria-busy': String(Boolean(asked?.working)) }, el('h2', {}, 'Noted and planned'),
    !asked && button('Compare them', () => app.askFor('check-back')),
    asked?.working && el('p', { role: 'status' }, 'Working it out ...'),
    answer && (answer.ok ? checked(app, answer) : el('pre', { class: 'fault', role: 'alert' }, answer.messages || answer.findings?.[0]?.message || answer.error)));
}

function checked(app, answer) {
  const told = JSON.parse(answer.files['.json']);
  const clock = clockOf(app.job);
  const off = (minutes) => (minutes === 0 ? 'as planned' : `${Math.abs(minutes)} min ${minutes > 0 ? 'later' : 'earlier'} than planned`);
  const events = told.readings.filter((each) => each.planned);
  return [
    events.length ? el('table', { 'aria-label': 'Noted and planned' },
      el('thead', {}, el('tr', {}, ['Seen', 'When'].map((words) => el('th', { scope: 'col' }, words)))),
      el('tbody', {}, events.map((each) => el('tr', {},
        el('th', { scope: 'row' }, each.reading.replaceAll('-', ' '), el('small', {}, el('bdi', {}, [each.zone, each.part].filter(Boolean).join(', ')))),
        el('td', {}, `${clock(each.at)}, planned ${clock(each.planned)}`, el('small', {}, off(each.late_min))))))) : el('p', {}, 'None of what was noted has a time in the plan.'),
    button('See all of it', () => openSheet(app, 'Noted and planned', answer.files['.html']))];
}

function learning(app) {
  const named = String(app.job.tables.mix?.name ?? '').trim() !== '';
  const fault = el('p', { class: 'fault', role: 'alert' });
  const told = el('p', { role: 'status' }, app.learned?.job === app.job ? app.learned.told : '');
  const learn = async () => {
    try {
      const words = await app.learn();
      app.learned = { job: app.job, told: `In the mix book: ${words}.` };
      say(app.learned.told);
      app.shown();
    } catch (error) {
      fault.textContent = error.message;
    }
  };
  return el('section', { class: 'group' }, el('h2', {}, 'Into the mix book'),
    el('p', {}, 'What this pour says about its mix; the next pour of that name is planned from it.'),
    named ? button('Learn from this pour', learn, { class: 'main' })
      : el('p', {}, 'The mix has no name yet: give it one, as your plant calls it. ', button('Name the mix', () => app.go('details'))),
    fault, told,
    app.book ? button('Save the mix book', () => give(bookName, 'application/toml', app.book)) : null);
}
