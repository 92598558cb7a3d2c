// What is open, and what happens to it. Screens read it and call it; it keeps every edit at once.
import { nameOf, reasonOf, wordsOf, type Answer } from './answers';
import type { Engine } from './engine';
import type { Sun } from './geometry';
import { bookName, dateOf, fileName, forecastPath, importedJob, newId, newJob, textOf, textsOf, type Edited, type Job } from './job';
import { nowText, Planner, type More } from './plan';
import { say } from './say';
import { backupOf, inBackup, type BackedUp } from './share';
import type { Store } from './store';
import { withName, writeToml } from './toml';

export type Screen = 'jobs' | 'draw' | 'details' | 'plan' | 'slab' | 'share' | 'after';
export type Tool = 'move' | 'slab' | 'disc' | 'walk' | 'steps' | 'wall' | 'tree' | 'cut' | 'tie';
// A shape of the drawing.
export interface Shape {
  kind: 'zone' | 'obstacle';
  index: number;
}
interface Asked {
  working?: boolean;
  answer?: Answer<More>;
}
// A sheet as the engine makes it.
export interface Sheet {
  title: string;
  html: string;
}
interface Parts {
  store: Store;
  likely: Engine;
  sure: Engine;
  shown(): void; // draws the screen again
  planChanged(): void;
  sunChanged(): void;
}

export class App {
  store: Store;
  engine: Engine;
  planner: Planner;
  shown: () => void;
  jobs: Job[] = [];
  job: Job | undefined;
  book = '';
  screen: Screen = 'jobs';
  tool: Tool = 'slab';
  selection: Shape | undefined;
  asked: Partial<Record<More, Asked>> = {};
  told = ''; // of what was done with the list of pours, until another screen
  fault = ''; // what keeps the page from its work
  linkFault = ''; // what is wrong with the link that was opened
  sheet: Sheet | undefined; // one of the engine's, open over the screen
  opened: string[] = []; // what has opened by the plan since the alarm was last tapped away
  learned: { job: Job; told: string } | undefined;
  slabZone = '';
  past: Edited[] = [];
  future: Edited[] = [];
  before: Edited | undefined; // in the middle of an edit
  sunTable: Sun[] | undefined;
  #sunChanged: () => void;
  #sunKey = '';
  #keeping = Promise.resolve();

  constructor({ store, likely, sure, shown, planChanged, sunChanged }: Parts) {
    this.store = store;
    this.engine = likely;
    this.shown = shown;
    this.#sunChanged = sunChanged;
    this.planner = new Planner(likely, sure, (job) => textsOf(job, this.book), planChanged);
  }

  // The pour that is open, for what is only called while one is.
  get pour(): Job {
    if (!this.job) throw new Error('no pour is open');
    return this.job;
  }

  async start() {
    this.jobs = await this.store.all();
    this.book = await this.store.book();
  }

  // ---- which job ----
  open(job: Job, screen: Screen = 'draw') {
    this.job = job;
    this.past = [];
    this.future = [];
    this.selection = undefined;
    this.tool = job.tables.zone.length ? 'move' : 'slab';
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

  // Without what was noted. A file never changed here keeps its text with all comments, its name alone
  // another; where the name cannot be written into the text, the copy has the same.
  async copy(job: Job) {
    const copy: Job = { ...structuredClone(job), id: newId(), revision: 0, journal: '' };
    const name = `${copy.tables.name} (copy)`.slice(0, 120);
    const text = job.original === undefined ? undefined : await this.#renamed(job, name);
    if (job.original === undefined || text !== undefined) Object.assign(copy, { original: text, tables: { ...copy.tables, name } });
    await this.#keep(copy);
    await this.leave();
    if (copy.tables.name !== name) this.tell(`The copy is called ${copy.tables.name} too: its comments would go with another name.`);
  }

  // The file's text with that name and nothing else changed, as the engine reads it.
  async #renamed(job: Job, name: string): Promise<string | undefined> {
    const text = job.original === undefined ? undefined : withName(job.original, name);
    if (text === undefined) return undefined;
    const answer = await this.engine.ask({ ask: 'read', job: fileName, texts: { [fileName]: text } }).catch(() => undefined);
    return answer?.ok && writeToml(answer.document) === writeToml({ ...job.tables, name }) ? text : undefined;
  }

  async remove(job: Job) {
    await this.store.remove(job.id);
    await this.leave();
  }

  async leave() {
    await this.#keeping;
    this.planner.forget();
    this.job = undefined;
    this.jobs = await this.store.all();
    this.go('jobs');
  }

  go(screen: Screen) {
    this.told = '';
    this.linkFault = '';
    this.screen = screen;
    this.shown();
    scrollTo(0, 0);
    document.querySelector<HTMLElement>('h1')?.focus();
  }

  tell(words: string) {
    this.told = words;
    this.shown();
    say(words);
  }

  show(title: string, html = '') {
    this.sheet = { title, html };
    this.shown();
    say(title);
  }
  hide() {
    this.sheet = undefined;
    this.shown();
  }

  // ---- edits: each can be taken back, and is kept before anything else happens ----
  #state(): Edited {
    const { tables, turn, forecast, typed, unsaid, original } = this.pour;
    return structuredClone({ tables, turn, forecast, typed, unsaid, original });
  }
  #restore(state: Edited) {
    Object.assign(this.pour, state);
  }

  begin() {
    this.before ??= this.#state();
    this.pour.original = undefined;
  }
  // In the middle of a drag: the plan follows, nothing is kept yet.
  live() {
    this.planner.replan(this.pour, { live: true });
  }
  drop() {
    if (this.before) this.#restore(this.before);
    this.before = undefined;
    this.planner.replan(this.pour);
    this.shown();
  }
  end() {
    if (this.before) this.past.push(this.before);
    this.before = undefined;
    this.future = [];
    this.shown();
    this.#after();
  }
  edit<Result>(change: (job: Job) => Result): Result {
    this.begin();
    const result = change(this.pour);
    this.end();
    return result;
  }

  undo() { this.#step(this.past, this.future, 'Undone'); }
  redo() { this.#step(this.future, this.past, 'Redone'); }
  #step(from: Edited[], to: Edited[], words: string) {
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
    this.planner.replan(this.pour);
    this.#keep(this.pour);
  }

  #keep(job: Job): Promise<void> {
    this.#keeping = this.#keeping.then(async () => {
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
        console.info(nameOf(error));
      }
    });
    return this.#keeping;
  }

  // ---- the sun of the pour's day, for the shadows ----
  async #findSun() {
    const { site } = this.pour.tables;
    const date = dateOf(this.pour);
    if (typeof site.latitude !== 'number' || typeof site.longitude !== 'number' || !date) return;
    const question = { ask: 'sun' as const, latitude: site.latitude, longitude: site.longitude, time_zone: String(site.time_zone), date };
    const key = JSON.stringify(question);
    if (this.#sunKey === key && this.sunTable) return;
    this.#sunKey = key;
    const answer = await this.engine.ask(question).catch(() => undefined);
    if (this.#sunKey !== key) return;
    this.sunTable = answer?.ok ? answer.positions : undefined;
    this.#sunChanged();
  }
  sun(minute: number): Sun | undefined {
    return this.sunTable?.[Math.round(minute / 10)];
  }

  // ---- what is worked out only when it is asked for: an edit makes it old ----
  async askFor(word: More) {
    const job = this.pour;
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
  async learn(): Promise<string> {
    const job = this.pour;
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

  async bookWords(): Promise<string> {
    const answer = await this.engine.ask({ ask: 'mixes', text: this.book });
    return answer.ok ? answer.text : wordsOf(answer);
  }

  async openBook(text: string) {
    const answer = await this.engine.ask({ ask: 'mixes', text });
    if (!answer.ok) throw new Error(wordsOf(answer));
    if (!(await this.store.keepBook(text, await this.store.book()))) throw new Error('another tab has just changed the mix book: try again');
    this.#takeBook(text);
  }

  #takeBook(text: string) {
    this.book = text;
    if (this.job) this.#after();
    this.shown();
  }

  // ---- in and out ----
  // The job of a file, judged by the engine; throws in words what is wrong with it.
  async import(text: string, beside: Partial<BackedUp> = {}): Promise<Job> {
    const answer = await this.engine.ask({ ask: 'read', job: fileName, texts: { [fileName]: text } });
    if (!answer.ok) throw new Error(wordsOf(answer));
    const job: Job = { ...importedJob(answer.document, text), ...beside };
    await this.#keep(job);
    return job;
  }

  backup() {
    return backupOf(this.jobs.map(({ tables, original, journal, turn, forecast }) =>
      ({ text: textOf({ tables, original }), journal, turn, forecast })), this.book);
  }

  async restore(text: string): Promise<{ count: number; faults: string[] }> {
    let count = 0;
    const faults: string[] = [];
    const { jobs, book } = inBackup(text);
    for (const { text: job, ...beside } of jobs) {
      try {
        await this.import(job, beside);
        count += 1;
      } catch (error) {
        faults.push(reasonOf(error));
      }
    }
    if (book && book !== this.book) {
      if (this.book) faults.push('the mix book on this device is kept, the one in the backup left out');
      else await this.openBook(book).catch((error) => faults.push(`${bookName}: ${reasonOf(error)}`));
    }
    this.jobs = await this.store.all();
    return { count, faults };
  }

  // A forecast in place of what was there, if the engine can read it.
  async takeForecast(text: string, from: string) {
    const job = this.pour;
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
  async note(reading: string, zone: string, value?: string): Promise<string> {
    const job = this.pour;
    const answer = await this.engine.ask({ ask: 'note', job: fileName, texts: textsOf(job), at: nowText(), reading, zone, value });
    if (!answer.ok) throw new Error(wordsOf(answer));
    this.#write(job, (job.journal || answer.heading) + answer.line);
    return answer.sentence;
  }
  unnote() {
    this.#write(this.pour, `${this.pour.journal}undo\n`);
  }
  // Notes are no edits of the job: they have an undo of their own.
  #write(job: Job, journal: string) {
    job.journal = journal;
    this.shown();
    this.#after();
  }
}
