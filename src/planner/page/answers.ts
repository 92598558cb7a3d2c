// What the engine is asked and what it answers, as far as the page looks at it: JSON, whose shape the
// engine's own tests hold (`answer.h`, and the plan as the program writes it). An hour is ISO 8601.
import type { Point, Sun } from './geometry';
import type { Tables, Texts } from './job';

type Hour = string | null;

// ---- the day as planned (`.json`) ----
export interface Window {
  operation: string;
  opens: Hour;
  closes?: Hour;
  opens_band?: { early: Hour; late: Hour };
}
export interface Part {
  name: string;
  windows: Window[];
}
export interface PlannedZone extends Part {
  finish: string;
  area_m2: number;
  volume_m3: number;
  placed?: { start: Hour; end: Hour };
  parts?: Part[];
  border?: Part;
  faces?: Part[];
  joints?: { says?: string };
}
export interface Task {
  task: string;
  zone: string;
  part?: string;
  start: Hour;
  end: Hour;
  late_min: number;
  late_chance?: number;
  piece?: number;
  pieces?: number;
}
export interface Person {
  name: string;
  arrives: Hour;
  leaves: Hour;
  tasks: Task[];
}
export interface Cut {
  zone: string;
  number: number;
  operation: string;
  on_hand: boolean;
  from_m: Point;
  to_m: Point;
  length_m: number;
  depth_m?: number;
  where: string;
  starts?: Hour;
  latest?: Hour;
  late: boolean;
}
export interface Supply {
  item: string;
  name: string;
  says: string;
  zones?: string[];
}
export interface Load {
  number: number;
  sold_m3: number;
  batched: Hour;
  arrives: Hour;
  empty: Hour;
}
export interface DayPlan {
  zones: PlannedZone[];
  tightest?: { zone: string; operation: string; opens: Hour; minutes: number };
  order?: { neat_m3: number; sold_m3: number };
  trucks?: Load[];
  crew?: Person[];
  crew_summary?: { says: string };
  supplies?: Supply[];
  saw?: Cut[];
  assumptions?: string[];
  seen?: string[];
  sureness?: { either_way_min?: number; causes?: { what: string }[] };
}

// ---- choices compared, and readings checked back (`.json` too) ----
export interface Choice {
  choice: string;
  expected_late_min: number;
  last_finish?: Hour;
  smallest_crew?: number;
  stops: number;
  takes?: string;
}
export interface Comparison {
  advice: { order: string; why: string; cost?: string; turning?: string };
  choices: Choice[];
  best: number;
  verdict: string;
}
export interface CheckedReading {
  reading: string;
  zone?: string;
  part?: string;
  at: Hour;
  planned?: Hour;
  late_min: number;
}
export interface CheckBack {
  readings: CheckedReading[];
}

// ---- answers ----
export interface Finding {
  severity: string;
  message: string;
  key?: string;
  line?: number;
  next?: string;
}
export interface Refusal {
  ok: false;
  findings?: Finding[];
  messages?: string;
  error?: string;
}
export type Ending = '.json' | '.html' | '.ics' | '.csv';
export type Files = Partial<Record<Ending, string>>;
export interface Caution {
  level: string;
  zone: string;
  text: string;
  at_once: boolean;
}
export type Level = 0 | 1 | 2; // to pour, with care, to think again
export interface Verdict {
  level: Level;
  words: string;
  reasons: string[];
}
type Spoken = 'text' | 'crew' | 'saw' | 'order';
interface Filed {
  ok: true;
  files: Files;
  findings?: Finding[];
  messages?: string;
}
export interface PlanAnswer extends Filed, Partial<Record<Spoken, string>> {
  verdict: Verdict;
  watch: Caution[];
}
export type Filing = Filed | Refusal;

// ---- questions: the word, what goes with it, and what is answered ----
interface OfJob {
  job: string;
  texts: Texts;
}
interface Planning extends OfJob {
  now: string;
  draws?: number;
  words?: boolean;
  formats: Ending[];
}
type Exchange<Asked, Told> = { asked: Asked; told: (Told & { ok: true }) | Refusal };
export interface Exchanges {
  plan: Exchange<Planning, PlanAnswer>;
  compare: Exchange<Planning, Filed>;
  outlook: Exchange<Planning, Filed>;
  'check-back': Exchange<Planning, Filed>;
  read: Exchange<OfJob, { document: Tables }>;
  note: Exchange<OfJob & { at: string; reading: string; zone: string; value?: string }, { line: string; heading: string; sentence: string }>;
  learn: Exchange<OfJob & { now: string }, { book: string; told: string }>;
  mixes: Exchange<{ text: string }, { text: string }>;
  forecast: Exchange<{ text: string; time_zone: string }, { first: string; last: string; issued?: string }>;
  sun: Exchange<{ latitude: number; longitude: number; time_zone: string; date: string }, { positions: Sun[] }>;
  'time-zone': Exchange<{ latitude: number; longitude: number }, { time_zone: string }>;
}
export type Word = keyof Exchanges;
export type Question<W extends Word> = { ask: W } & Exchanges[W]['asked'];
export type Answer<W extends Word> = Exchanges[W]['told'];

// What the engine found wrong, in words.
export function wordsOf(answer: Refusal): string {
  const errors = (answer.findings ?? []).filter((finding) => finding.severity === 'error');
  if (errors.length === 0) return answer.error ?? answer.messages ?? 'It cannot be read.';
  return errors.slice(0, 5).map((finding) => {
    const place = finding.line ? `line ${finding.line}: ` : '';
    const key = finding.key ? `${finding.key} ` : '';
    return `${place}${key}${finding.message}${finding.next ? ` (${finding.next})` : ''}`;
  }).join('\n');
}

// What went wrong, of whatever was thrown.
export const nameOf = (error: unknown) => (error instanceof Error ? error.name : '');
export const reasonOf = (error: unknown) => (error instanceof Error ? error.message : String(error));
