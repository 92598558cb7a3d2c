// The pour on its way to others: files, the phone's share sheet, a link.
import { button, el, say } from './dom';
import { bookName, forecastPath, textOf } from './job';
import { textField } from './inputs';
import { give, linkOf, safeName } from './share';

export function shareScreen(app) {
  const { job } = app;
  const { state } = app.planner;
  const name = safeName(String(job.tables.name ?? ''));
  const files = state.answer?.files ?? {};
  const ready = (ending) => files[ending] !== undefined;
  const told = el('p', { role: 'status' });
  const send = (file, type, text) => async () => {
    if (await give(file, type, text())) told.textContent = `${file} is on its way.`;
  };
  const sheet = (words, ending, type) => button(words, send(`${name}${ending}`, type, () => files[ending]), { disabled: !ready(ending) });
  return el('section', { class: 'page share' },
    el('h1', { tabindex: -1 }, 'Share'),
    textField('Name of the pour', job.tables.name, (text) => app.edit((each) => { each.tables.name = text; }, { redraw: false }), {}),
    el('h2', {}, 'For the crew'),
    ready('.html') ? null : el('p', {}, 'The sheets come with the plan.'),
    el('div', { class: 'row' },
      sheet('Day sheet', '.html', 'text/html'), sheet('Calendar', '.ics', 'text/calendar'),
      ...[['Plan as text', 'text', ''], ['Crew as text', 'crew', '-crew'], ['Saw list as text', 'saw', '-saw'], ['Order for the plant', 'order', '-order']].map(([words, key, end]) =>
        button(words, send(`${name}${end}.txt`, 'text/plain', () => state.answer[key]), { disabled: !state.answer?.[key] })),
      sheet('Table', '.csv', 'text/csv')),
    el('h2', {}, 'The job itself'),
    el('p', {}, 'A text file that opens here again; the slabtide program makes the same plan from it.'),
    el('div', { class: 'row' },
      button('Job file', send(`${name}.toml`, 'application/toml', () => textOf(job))),
      job.forecast ? button('Its forecast', send(String(forecastPath(job)).split('/').pop(), 'application/octet-stream', () => job.forecast.text)) : null,
      app.book ? button('Mix book', send(bookName, 'application/toml', () => app.book)) : null,
      job.journal ? button('What was noted', send(`${name}.journal`, 'text/plain', () => job.journal)) : null,
      button('Copy a link', async () => {
        const link = await linkOf(textOf(job));
        try {
          await navigator.clipboard.writeText(link);
          told.textContent = 'The link is copied. It holds the whole job; no server has seen it.';
        } catch {
          told.replaceChildren('Copy this: ', el('textarea', { readonly: true, rows: 4, 'aria-label': 'Link', value: link }));
        }
        say('Link');
      })), told,
    app.book ? el('p', {}, 'Keep the mix book beside the job file: the slabtide program finds it there.') : null,
    job.forecast ? el('p', {}, 'A link holds no forecast: whoever opens it has to get a new one.') : null,
    el('h2', {}, 'All your pours'),
    el('p', {}, 'Back up and restore from the list of pours.'));
}
