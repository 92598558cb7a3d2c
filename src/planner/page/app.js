// What is open, and what happens to it. Screens read it and call it; it keeps every edit at once.
import { say } from './dom.js';
import { fileName, forecastPath, importedJob, newJob, textOf } from './job.js';
import { Planner } from './plan.js';
import { backupOf, jobsInBackup } from './share.js';

export class App {
  constructor({ store, likely, sure, shown, planChanged, sunChanged }) {
    this.store = store;
    this.engine = likely;
    this.shown = shown; // draws the screen again
    this.sunChanged = sunChanged;
    this.planner = new Planner(likely, sure, planChanged);
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
  }
  drop() {
    if (this.before) this.#restore(this.before);
    this.before = undefined;
    this.shown();
  }
  end({ redraw = true } = {}) {
    if (this.before) this.past.push(this.before);
    this.before = undefined;
    this.future = [];
    this.job.original = undefined;
    if (redraw) this.shown();
    this.#after();
  }
  edit(change, options) {
    this.begin();
    const result = change(this.job);
    this.end(options);
    return result;
  }

  undo() { this.#step(this.past, this.future, 'Undone'); }
  redo() { this.#step(this.future, this.past, 'Done again'); }
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
        this.store.fault = '';
      } catch (error) {
        this.store.fault = 'This device has no room to keep your changes. Save the job file from Share.';
        say(this.store.fault);
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
      ({ text: textOf({ tables, original }), journal, turn, forecast })));
  }

  async restore(text) {
    let count = 0;
    const faults = [];
    for (const { text: job, ...beside } of jobsInBackup(text)) {
      try {
        await this.import(job, beside);
        count += 1;
      } catch (error) {
        faults.push(error.message);
      }
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
    const texts = Object.assign(Object.create(null), { [fileName]: textOf(job) });
    if (job.journal) texts['job.journal'] = job.journal;
    const at = `${new Date().toISOString().slice(0, 16)}Z`;
    const answer = await this.engine.ask({ ask: 'note', job: fileName, texts, at, reading, zone, value });
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
