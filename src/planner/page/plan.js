// Plans the job as it is edited: first the likely day, then how sure it is. A newer edit ends the
// work on an older one.
import { fileName, missing, textsOf } from './job.js';

const pause = 150; // ms after an edit: a finger that drags would ask for a plan a frame
const draws = 200;
export const nowText = () => `${new Date().toISOString().slice(0, 16)}Z`;

export class Planner {
  constructor(likely, sure, changed) {
    this.likely = likely;
    this.sure = sure;
    this.changed = changed;
    this.state = { stage: 'none' };
    this.turn = 0;
  }

  // `stage`: none, wants (something is missing), working, faulty, likely, sure.
  #to(state) {
    this.state = state;
    this.changed();
  }

  forget() {
    clearTimeout(this.timer);
    this.turn += 1;
    this.state = { stage: 'none' };
  }

  replan(job, delay = pause) {
    clearTimeout(this.timer);
    const turn = ++this.turn;
    if (this.sure.busy) this.sure.drop();
    const wants = missing(job);
    if (wants.length > 0) return this.#to({ stage: 'wants', wants });
    this.state = { ...this.state, stage: 'working' };
    this.changed();
    this.timer = setTimeout(() => this.#run(job, turn), delay);
  }

  async #run(job, turn) {
    const question = { ask: 'plan', job: fileName, texts: textsOf(job), now: nowText(), draws: 0, formats: ['.json'] };
    try {
      const likely = await this.likely.ask(question);
      if (turn !== this.turn) return;
      if (!likely.ok) return this.#to({ stage: 'faulty', answer: likely, fault: likely.error });
      this.#to(planned('likely', likely));
      const sure = await this.sure.ask({ ...question, draws, formats: ['.json', '.html', '.ics', '.csv'] });
      if (turn === this.turn) this.#to(sure.ok ? planned('sure', sure) : { stage: 'faulty', answer: sure, fault: sure.error });
    } catch (error) {
      if (error.name !== 'AbortError' && turn === this.turn) this.#to({ stage: 'faulty', fault: String(error.message ?? error) });
    }
  }
}

const planned = (stage, answer) => ({ stage, answer, day: JSON.parse(answer.files['.json']) });

// The work of finishing that a window is for, in the words of the crew.
const works = {
  strip: 'strip the form', first_edge: 'first edge', release: 'release agent', texture: 'texture', stamp: 'stamp',
  detail_edge: 'detail edge', tooled_joint: 'tool the joints', float: 'float', broom: 'broom', trowel: 'trowel',
  saw_dry: 'early-entry saw', saw_wet: 'wet saw', walk: 'walk on it', wash: 'wash', seal: 'seal',
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
