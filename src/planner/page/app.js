// What is open, and what happens to it. Screens read it and call it; it keeps every edit at once.
import { say } from './dom';
import { bookName, fileName, forecastPath, importedJob, newJob, textOf, textsOf } from './job';
import { nowText, Planner } from './plan';
import { backupOf, inBackup } from './share';

export class App {
  constructor({ store, likely, sure, shown, planChanged, sunChanged }) {
    this.store = store;
    this.engine = likely;
    this.shown = shown; // draws the screen again
    this.sunChanged = sunChanged;
    this.book = '';
    this.planner = new Planner(likely, sure, (job) => textsOf(job, this.book), planChanged);
    this.asked = {};
    this.jobs = [];
    this.job = undefined;
    this.screen = 'jobs';
    this.tool = 'slab';
    this.selection = undefined;
    this.past = [];
    this.future = [];
    this.keeping = Promise.resolve();
    this.sunTable = undefined;
  }

  async start() {
    this.jobs = await this.store.all();
    this.book = await this.store.book();
  }

  // ---- which job ----
  open(job, screen = 'draw') {
    this.job = job;
    this.past = [];
    this.future = [];
    this.selection = undefined;
    this.tool = job.tables.zone?.length ? 'move' : 'slab';
    this.sunTable = undefined;
    this.planner.forget();
    this.go(screen);
    this.#after();
  }

  async create() {
    const job = newJob(this.jobs[0]);
    await this.#keep(job);
    this.open(job);
  }

  async copy(job) {
    const { id } = newJob();
    const copy = { ...structuredClone(job), id, revision: 0, journal: '', original: undefined };
    copy.tables.name = `${copy.tables.name ?? 'Pour'} (copy)`.slice(0, 120);
    await this.#keep(copy);
    await this.leave();
  }

  async remove(job) {
    await this.store.remove(job.id);
    await this.leave();
  }

  async leave() {
    await this.keeping;
    this.planner.forget();
    this.job = undefined;
    this.jobs = await this.store.all();
    this.go('jobs');
  }

  go(screen) {
    this.restored = '';
    this.screen = screen;
    this.shown();
    scrollTo(0, 0);
    document.querySelector('h1')?.focus();
  }

  // ---- edits: each can be taken back, and is kept before anything else happens ----
  #state() {
    const { tables, turn, forecast, typed, unsaid, original } = this.job;
    return structuredClone({ tables, turn, forecast, typed, unsaid, original });
  }
  #restore(state) {
    Object.assign(this.job, state);
  }

  begin() {
    this.before ??= this.#state();
    this.job.original = undefined;
  }
  // In the middle of a drag: the plan follows, nothing is kept yet.
  live() {
    this.planner.replan(this.job, { live: true });
  }
  drop() {
    if (this.before) this.#restore(this.before);
    this.before = undefined;
    this.planner.replan(this.job);
    this.shown();
  }
  end({ redraw = true } = {}) {
    if (this.before) this.past.push(this.before);
    this.before = undefined;
    this.future = [];
    if (redraw) this.shown();
    else document.querySelector('.losing')?.remove(); // what it warned of has happened
    this.#after();
  }
  edit(change, options) {
    this.begin();
    const result = change(this.job);
    this.end(options);
    return result;
  }

  undo() { this.#step(this.past, this.future, 'Undone'); }
  redo() { this.#step(this.future, this.past, 'Redone'); }
  #step(from, to, words) {
    const state = from.pop();
    if (!state) return;
    to.push(this.#state());
    this.#restore(state);
    this.selection = undefined;
    say(words);
    this.shown();
    this.#after();
  }

  #after() {
    this.asked = {};
    this.#findSun();
    this.planner.replan(this.job);
    this.#keep(this.job);
  }

  #keep(job) {
    this.keeping = this.keeping.then(async () => {
      try {
        const kept = await this.store.keep(job);
        if (kept.id !== job.id) say('Another tab has changed this pour. Yours is kept beside it as a pour of its own.');
        Object.assign(job, kept);
        const mended = this.store.fault !== '';
        this.store.fault = '';
        if (mended) this.shown();
      } catch (error) {
        if (!this.store.fault) {
          this.store.fault = 'This device has no room to keep your changes. Save the job file from Share.';
          say(this.store.fault);
          this.shown();
        }
        console.info(error.name);
      }
    });
    return this.keeping;
  }

  // ---- the sun of the pour's day, for the shadows ----
  async #findSun() {
    const { site, pour } = this.job.tables;
    const date = pour?.date?.$time;
    if (typeof site?.latitude !== 'number' || typeof site.longitude !== 'number' || !date) return;
    const question = { ask: 'sun', latitude: site.latitude, longitude: site.longitude, time_zone: String(site.time_zone), date };
    const key = JSON.stringify(question);
    if (this.sunKey === key && this.sunTable) return;
    this.sunKey = key;
    const answer = await this.engine.ask(question).catch(() => ({}));
    if (this.sunKey !== key) return;
    this.sunTable = answer.positions;
    this.sunChanged();
  }
  sun(minute) {
    return this.sunTable?.[Math.round(minute / 10)];
  }

  // ---- what is worked out only when it is asked for: an edit makes it old ----
  async askFor(word) {
    const { job } = this;
    const asked = (this.asked[word] = { working: true });
    this.shown();
    const answer = await this.planner.more(word, job);
    if (this.job !== job || this.asked[word] !== asked) return;
    this.asked[word] = answer && { answer };
    this.shown();
    if (answer?.ok) say('It is ready');
  }

  // ---- the mix book ----
  // What this pour says of its mix goes into the book; later pours with that mix are planned from it.
  async learn() {
    const { job } = this;
    for (let tries = 0; tries < 3; ++tries) {
      const before = await this.store.book();
      const answer = await this.engine.ask({ ask: 'learn', job: fileName, texts: textsOf(job, before), now: nowText() });
      if (!answer.ok) throw new Error(wordsOf(answer));
      if (!(await this.store.keepBook(answer.book, before))) continue; // another tab was quicker
      this.#takeBook(answer.book);
      return answer.told;
    }
    throw new Error('Another tab keeps changing the mix book. Close it and try again.');
  }

  async bookWords() {
    const answer = await this.engine.ask({ ask: 'mixes', text: this.book });
    return answer.ok ? answer.text : wordsOf(answer);
  }

  async openBook(text) {
    const answer = await this.engine.ask({ ask: 'mixes', text });
    if (!answer.ok) throw new Error(wordsOf(answer));
    if (!(await this.store.keepBook(text, await this.store.book()))) throw new Error('another tab has just changed the mix book: try again');
    this.#takeBook(text);
  }

  #takeBook(text) {
    this.book = text;
    if (this.job) this.#after();
    this.shown();
  }

  // ---- in and out ----
  // The job of a file, judged by the engine; throws in words what is wrong with it.
  async import(text, beside = {}) {
    const answer = await this.engine.ask({ ask: 'read', job: fileName, texts: { [fileName]: text } });
    if (!answer.ok) throw new Error(wordsOf(answer));
    const job = { ...importedJob(answer.document, text), ...beside };
    await this.#keep(job);
    return job;
  }

  backup() {
    return backupOf(this.jobs.map(({ tables, original, journal, turn, forecast }) =>
      ({ text: textOf({ tables, original }), journal, turn, forecast })), this.book);
  }

  async restore(text) {
    let count = 0;
    const faults = [];
    const { jobs, book } = inBackup(text);
    for (const { text: job, ...beside } of jobs) {
      try {
        await this.import(job, beside);
        count += 1;
      } catch (error) {
        faults.push(error.message);
      }
    }
    if (book && book !== this.book) {
      if (this.book) faults.push('the mix book on this device is kept, the one in the backup left out');
      else await this.openBook(book).catch((error) => faults.push(`${bookName}: ${error.message}`));
    }
    this.jobs = await this.store.all();
    return { count, faults };
  }

  // A forecast in place of what was there, if the engine can read it.
  async takeForecast(text, from) {
    const { job } = this;
    const answer = await this.engine.ask({ ask: 'forecast', text, time_zone: String(job.tables.site.time_zone) });
    if (!answer.ok) throw new Error(wordsOf(answer));
    if (this.job !== job) return;
    this.edit(() => {
      if (typeof forecastPath(job) !== 'string') job.typed = job.tables.weather;
      job.tables.weather = { forecast: text.trimStart().startsWith('{') ? 'job-forecast.json' : 'job-forecast.csv' };
      job.forecast = { text, from, at: Date.now(), first: answer.first, last: answer.last, issued: answer.issued };
      job.unsaid.weather = false;
    });
  }

  typeWeather() {
    this.edit((job) => {
      job.tables.weather = job.typed ?? newJob(job).tables.weather;
      job.typed = null;
      job.forecast = null;
    });
  }

  // A sign seen on the slab, for the journal.
  async note(reading, zone, value) {
    const { job } = this;
    const answer = await this.engine.ask({ ask: 'note', job: fileName, texts: textsOf(job), at: nowText(), reading, zone, value });
    if (!answer.ok) throw new Error(wordsOf(answer));
    this.#write(job, (job.journal || answer.heading) + answer.line);
    return answer.sentence;
  }
  unnote() {
    this.#write(this.job, `${this.job.journal}undo\n`);
  }
  // Notes are no edits of the job: they have an undo of their own.
  #write(job, journal) {
    job.journal = journal;
    this.shown();
    this.#after();
  }
}

export const wordsOf = (answer) => {
  const errors = (answer.findings ?? []).filter((finding) => finding.severity === 'error');
  if (errors.length === 0) return answer.error ?? answer.messages ?? 'It cannot be read.';
  return errors.slice(0, 5).map((finding) => {
    const place = finding.line ? `line ${finding.line}: ` : '';
    const key = finding.key ? `${finding.key} ` : '';
    return `${place}${key}${finding.message}${finding.next ? ` (${finding.next})` : ''}`;
  }).join('\n');
};
