// Plans the job as it is edited: first the likely day, then how sure it is. A newer edit ends the
// work on an older one.
import { fileName, missing } from './job.js';

const pause = 150; // ms after an edit: a finger that drags would ask for a plan a frame
export const nowText = () => `${new Date().toISOString().slice(0, 16)}Z`;

export class Planner {
  constructor(likely, sure, textsOf, changed) {
    this.textsOf = textsOf;
    this.likely = likely;
    this.sure = sure;
    this.changed = changed;
    this.state = { stage: 'none' };
    this.turn = 0;
    this.forgotten = -1; // turns up to this one were of another pour
  }

  // `stage`: none, wants (something is missing), working, faulty, likely, sure.
  #to(state) {
    this.state = state;
    this.changed();
  }

  forget() {
    clearTimeout(this.timer);
    this.due = false;
    this.waiting = undefined;
    this.forgotten = this.turn;
    this.turn += 1;
    this.state = { stage: 'none' };
  }

  // `live`: a drag goes on; plans come as fast as they can be worked out, and not one an edit.
  replan(job, { live = false } = {}) {
    const turn = ++this.turn;
    if (this.sure.busy) this.sure.drop();
    const wants = missing(job);
    if (wants.length > 0) {
      clearTimeout(this.timer);
      return this.#to({ stage: 'wants', wants });
    }
    if (live && this.due) return;
    clearTimeout(this.timer);
    this.state = { ...this.state, stage: 'working' };
    if (!live) this.changed();
    this.due = true;
    this.timer = setTimeout(() => {
      this.due = false;
      this.#run(job);
    }, live ? 0 : pause);
  }

  // One likely day at a time: while one is worked out, only the newest edit waits.
  async #run(job) {
    if (this.running) {
      this.waiting = job;
      return;
    }
    this.running = true;
    const { turn } = this;
    const question = { ask: 'plan', job: fileName, texts: this.textsOf(job), now: nowText(), draws: 0, formats: ['.json'] };
    const likely = await this.#asked(this.likely, question, turn, 'likely');
    this.running = false;
    const { waiting } = this;
    this.waiting = undefined;
    if (waiting) return this.#run(waiting);
    if (likely?.ok && turn === this.turn) {
      await this.#asked(this.sure, { ...question, draws: undefined, words: true, formats: ['.json', '.html', '.ics', '.csv'] }, turn, 'sure');
    }
  }

  // Asks, and shows the answer if it is of this pour still; while a drag goes on an older one is
  // better than none.
  async #asked(engine, question, turn, stage) {
    try {
      const answer = await engine.ask(question);
      const current = turn === this.turn;
      if (!current && (stage === 'sure' || turn <= this.forgotten)) return undefined;
      if (answer.ok) this.#to({ ...planned(stage, answer), stage: current ? stage : 'working' });
      else if (current) this.#to({ stage: 'faulty', answer, fault: answer.error });
      return answer;
    } catch (error) {
      if (error.name !== 'AbortError' && turn === this.turn) this.#to({ stage: 'faulty', fault: String(error.message ?? error) });
      return undefined;
    }
  }

  // What is worked out only when it is asked for, behind the plan: undefined where an edit has ended
  // it meanwhile.
  async more(word, job) {
    const { turn } = this;
    const question = { ask: word, job: fileName, texts: this.textsOf(job), now: nowText(), formats: ['.json', '.html'] };
    try {
      const answer = await this.sure.ask(question);
      return turn === this.turn ? answer : undefined;
    } catch (error) {
      if (error.name === 'AbortError') return undefined;
      return { ok: false, error: String(error.message ?? error) };
    }
  }
}

const planned = (stage, answer) => ({ stage, answer, day: JSON.parse(answer.files['.json']) });

// The work of finishing that a window is for, in the words of the crew.
const works = {
  strip: 'strip the form', first_edge: 'first edge', release: 'release agent', texture: 'texture', stamp: 'stamp',
  detail_edge: 'detail edge', tooled_joint: 'tool the joints', float: 'float', broom: 'broom', trowel: 'trowel', retard: 'surface retarder', salt: 'rock salt', expose: 'wash off',
  saw_dry: 'early-entry saw', saw_wet: 'wet saw', walk: 'walk on it', wash: 'wash', seal: 'seal',
  screed: 'place and screed', strip_face: 'strip the form', cure: 'curing', cure_and_seal: 'cure-and-seal', cover: 'cover', saw: 'saw', clean_up: 'clean up',
};
export const workWords = (operation) => works[operation] ?? operation;

// Every window of the day as the plan has it, with its zone and part, by the hour it opens.
export function windowsOf(day) {
  const rows = [];
  const take = (zone, part, windows) => {
    for (const window of windows ?? []) {
      if (window.opens) rows.push({ zone, part, work: workWords(window.operation), ...window });
    }
  };
  for (const zone of day.zones ?? []) {
    if (zone.parts?.length) zone.parts.forEach((part) => take(zone.name, part.name, part.windows));
    else take(zone.name, '', zone.windows);
    if (zone.border) take(zone.name, zone.border.name, zone.border.windows);
    for (const face of zone.faces ?? []) take(zone.name, face.name, face.windows);
  }
  return rows.sort((a, b) => Date.parse(a.opens) - Date.parse(b.opens));
}
