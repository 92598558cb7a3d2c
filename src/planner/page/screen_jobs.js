// All pours on this device.
import { button, el, say, tiles } from './dom';
import { lookNow, takeLook } from './look';
import { download, safeName } from './share';
import { bookName, textOf } from './job';
import { dayText, localDate } from './units';

function filePicker(words, accept, take) {
  const input = el('input', {
    type: 'file', accept, class: 'spoken', tabindex: -1, 'aria-label': words,
    onchange: async () => {
      const [file] = input.files;
      input.value = '';
      if (file) await take(file);
    },
  });
  return [button(words, () => input.click()), input];
}

const dateOf = (job) => job.tables.pour?.date?.$time ?? '';

export function jobsScreen(app) {
  const fault = el('p', { class: 'fault', role: 'alert' });
  const told = (work) => async (file) => {
    fault.textContent = '';
    try {
      if (file.size > 32 * 1024 * 1024) throw new Error('it is too large');
      await work(await file.text());
    } catch (error) {
      fault.textContent = `${file.name.slice(0, 60)}: ${error.message}`;
    }
  };
  const importJob = told(async (text) => app.open(await app.import(text), 'plan'));
  const restore = told(async (text) => {
    const { count, faults } = await app.restore(text);
    app.restored = [`${count} ${count === 1 ? 'pour' : 'pours'} restored.`, ...faults.map((each) => `Left out: ${each}.`)].join('\n');
    app.shown();
    say(app.restored);
  });
  return el('section', { class: 'page' },
    el('h1', { tabindex: -1 }, 'Your pours'),
    app.store.lasting ? null : el('p', { class: 'fault' }, 'This window keeps nothing once it is closed (a private window?). Save your job files from Share.'),
    el('div', { class: 'row' }, button('New pour', () => app.create(), { class: 'main' })),
    app.jobs.length ? el('ul', { class: 'jobs' }, app.jobs.map((job) => jobRow(app, job))) : el('p', {}, 'Nothing here yet. Start a new pour: draw it, say where and when, and the plan comes by itself. What you enter stays on this device until you share it; asking for the forecast sends the site\u2019s coordinates to the weather service, and looking up a town sends its name.'),
    el('details', {}, el('summary', {}, 'Open a file, back up, restore'),
      el('div', { class: 'row' },
        ...filePicker('Open a job file', '.toml,text/plain', importJob),
        button('Back up all pours', () => download(`slabtide-backup-${localDate()}.json`, 'application/json', app.backup()), { disabled: app.jobs.length === 0 }),
        ...filePicker('Restore a backup', '.json,application/json', restore)),
      el('p', {}, 'A phone may clear what a page has kept when it runs out of room. A backup is one file with all of it.')),
    app.restored ? el('p', { class: 'told' }, app.restored) : null,
    mixBook(app, told),
    tiles('Look', [['', 'Same as this device'], ['sunlight', 'Bright sunlight']], lookNow(), takeLook),
    fault);
}

// What finished pours have shown of their mixes, in the engine's words once it is opened.
function mixBook(app, told) {
  const words = el('pre', {});
  const read = async ({ target }) => {
    if (target.open && app.book) words.textContent = await app.bookWords();
  };
  return el('details', { ontoggle: read }, el('summary', {}, 'Mix book'),
    app.book ? words : el('p', {}, 'Empty so far. A finished pour goes into it from On slab, After the pour. Or open the one you have.'),
    el('div', { class: 'row' },
      app.book ? button('Save the mix book', () => download(bookName, 'application/toml', app.book)) : null,
      ...filePicker('Open a mix book', '.toml,text/plain', told((text) => app.openBook(text)))));
}

function jobRow(app, job) {
  const name = String(job.tables.name || 'Pour');
  const date = dateOf(job);
  return el('li', {},
    button([el('strong', {}, el('bdi', {}, name)), ' ', el('span', {}, date ? dayText(date, true) : '')], () => app.open(job, 'plan'), { class: 'job' }),
    el('div', { class: 'row' },
      button('Copy', () => app.copy(job), { 'aria-label': `Copy ${name}` }),
      button('Save file', () => download(`${safeName(name)}.toml`, 'application/toml', textOf(job)), { 'aria-label': `Save ${name} as a file` }),
      button('Delete', (event) => confirmDelete(app, job, event.target), { 'aria-label': `Delete ${name}` })));
}

// A second tap on the same place deletes.
function confirmDelete(app, job, place) {
  if (place.dataset.sure) return app.remove(job);
  place.dataset.sure = 'yes';
  place.textContent = 'Delete for good?';
  place.removeAttribute('aria-label');
  say('Tap again to delete it for good');
}
