// Plans the job as it is edited: first the likely day, then how sure it is. A newer edit ends the
// work on an older one.
import { nameOf, reasonOf, type Answer, type DayPlan, type Part, type PlanAnswer, type Question, type Refusal, type Window } from './answers';
import type { Engine } from './engine';
import { fileName, missing, type Job, type Texts, type Want } from './job';

const pause = 150; // ms after an edit: a finger that drags would ask for a plan a frame
export const nowText = () => `${new Date().toISOString().slice(0, 16)}Z`;

// What is known of the plan: wants is that something is missing.
export interface PlanState {
  stage: 'none' | 'wants' | 'working' | 'faulty' | 'likely' | 'sure';
  wants?: Want[];
  answer?: PlanAnswer;
  day?: DayPlan;
  refusal?: Refusal;
}
// What is asked for by itself, behind the plan.
export type More = 'compare' | 'outlook' | 'check-back';

export class Planner {
  likely: Engine;
  sure: Engine;
  state: PlanState = { stage: 'none' };
  #textsOf: (job: Job) => Texts;
  #changed: () => void;
  #turn = 0;
  #forgotten = -1; // turns up to this one were of another pour
  #timer: ReturnType<typeof setTimeout> | undefined;
  #due = false;
  #running = false;
  #waiting: Job | undefined;

  constructor(likely: Engine, sure: Engine, textsOf: (job: Job) => Texts, changed: () => void) {
    this.#textsOf = textsOf;
    this.likely = likely;
    this.sure = sure;
    this.#changed = changed;
  }

  #to(state: PlanState) {
    this.state = state;
    this.#changed();
  }

  forget() {
    clearTimeout(this.#timer);
    this.#due = false;
    this.#waiting = undefined;
    this.#forgotten = this.#turn;
    this.#turn += 1;
    this.state = { stage: 'none' };
  }

  // `live`: a drag goes on; plans come as fast as they can be worked out, and not one an edit.
  replan(job: Job, { live = false } = {}) {
    this.#turn += 1;
    if (this.sure.busy) this.sure.drop();
    const wants = missing(job);
    if (wants.length > 0) {
      clearTimeout(this.#timer);
      return this.#to({ stage: 'wants', wants });
    }
    if (live && this.#due) return;
    clearTimeout(this.#timer);
    this.state = { ...this.state, stage: 'working' };
    if (!live) this.#changed();
    this.#due = true;
    this.#timer = setTimeout(() => {
      this.#due = false;
      this.#run(job);
    }, live ? 0 : pause);
  }

  // One likely day at a time: while one is worked out, only the newest edit waits.
  async #run(job: Job): Promise<void> {
    if (this.#running) {
      this.#waiting = job;
      return;
    }
    this.#running = true;
    const turn = this.#turn;
    const question: Question<'plan'> = { ask: 'plan', job: fileName, texts: this.#textsOf(job), now: nowText(), draws: 0, formats: ['.json'] };
    const likely = await this.#asked(this.likely, question, turn, 'likely');
    this.#running = false;
    const waiting = this.#waiting;
    this.#waiting = undefined;
    if (waiting) return this.#run(waiting);
    if (likely?.ok && turn === this.#turn) {
      await this.#asked(this.sure, { ...question, draws: undefined, words: true, formats: ['.json', '.html', '.ics', '.csv'] }, turn, 'sure');
    }
  }

  // Asks, and shows the answer if it is of this pour still; while a drag goes on an older one is
  // better than none.
  async #asked(engine: Engine, question: Question<'plan'>, turn: number, stage: 'likely' | 'sure'): Promise<Answer<'plan'> | undefined> {
    try {
      const answer = await engine.ask(question);
      const current = turn === this.#turn;
      if (!current && (stage === 'sure' || turn <= this.#forgotten)) return undefined;
      if (answer.ok) this.#to(planned(current ? stage : 'working', answer));
      else if (current) this.#to({ stage: 'faulty', refusal: answer });
      return answer;
    } catch (error) {
      if (nameOf(error) !== 'AbortError' && turn === this.#turn) this.#to({ stage: 'faulty', refusal: refusalOf(error) });
      return undefined;
    }
  }

  // What is worked out only when it is asked for, behind the plan: undefined where an edit has ended
  // it meanwhile.
  async more(word: More, job: Job): Promise<Answer<More> | undefined> {
    const turn = this.#turn;
    const question: Question<More> = { ask: word, job: fileName, texts: this.#textsOf(job), now: nowText(), formats: ['.json', '.html'] };
    try {
      const answer = await this.sure.ask(question);
      return turn === this.#turn ? answer : undefined;
    } catch (error) {
      return nameOf(error) === 'AbortError' ? undefined : refusalOf(error);
    }
  }
}

const refusalOf = (error: unknown): Refusal => ({ ok: false, error: reasonOf(error) });
const planned = (stage: PlanState['stage'], answer: PlanAnswer): PlanState => ({ stage, answer, day: JSON.parse(answer.files['.json'] ?? '') as DayPlan });

// The work of finishing that a window is for, in the words of the crew.
const works: Record<string, string> = {
  strip: 'strip the form', first_edge: 'first edge', release: 'release agent', texture: 'texture', stamp: 'stamp',
  detail_edge: 'detail edge', tooled_joint: 'tool the joints', float: 'float', broom: 'broom', trowel: 'trowel', retard: 'surface retarder', salt: 'rock salt', expose: 'wash off',
  saw_dry: 'early-entry saw', saw_wet: 'wet saw', walk: 'walk on it', wash: 'wash', seal: 'seal',
  screed: 'place and screed', strip_face: 'strip the form', cure: 'curing', cure_and_seal: 'cure-and-seal', cover: 'cover', saw: 'saw', clean_up: 'clean up',
};
export const workWords = (operation: string) => works[operation] ?? operation;

// Every window of the day as the plan has it, with its zone and part, by the hour it opens.
export interface Row extends Window {
  opens: string;
  zone: string;
  part: string;
  work: string;
}
export function windowsOf(day: DayPlan | undefined): Row[] {
  const rows: Row[] = [];
  const take = (zone: string, part: string, windows: Part['windows']) => {
    for (const window of windows) {
      const { opens } = window;
      if (opens) rows.push({ zone, part, work: workWords(window.operation), ...window, opens });
    }
  };
  for (const zone of day?.zones ?? []) {
    if (zone.parts?.length) zone.parts.forEach((part) => take(zone.name, part.name, part.windows));
    else take(zone.name, '', zone.windows);
    if (zone.border) take(zone.name, zone.border.name, zone.border.windows);
    for (const face of zone.faces ?? []) take(zone.name, face.name, face.windows);
  }
  return rows.sort((a, b) => Date.parse(a.opens) - Date.parse(b.opens));
}
