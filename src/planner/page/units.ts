// Lengths and figures as a person types and reads them, and the units that a job file's keys may
// name. A job keeps its own system; `plan` lengths are in ft or m, `depth` in in or mm.

import type { Point, Points } from './geometry';
import type { Table, Value } from './toml';

export type System = 'us' | 'si';
export type Unit = keyof typeof perMetre;

const perMetre = { ft: 1 / 0.3048, m: 1, in: 1 / 0.0254, cm: 100, mm: 1000 };
export const planUnit = (system: System) => (system === 'si' ? 'm' : 'ft');
export const depthUnit = (system: System) => (system === 'si' ? 'mm' : 'in');
export const convert = (value: number, from: Unit, to: Unit) => (value / perMetre[from]) * perMetre[to];
const suffixes = Object.keys(perMetre) as Unit[];

const round = (value: number, digits: number) => Number(value.toFixed(digits));
export const tidy = (value: number) => round(value, 4);

// The key's figure in `unit`, whichever unit the key itself says; undefined where it is left out.
export function readLength(table: Table, key: string, unit: Unit): number | undefined {
  const plain = table[key];
  if (typeof plain === 'number') return plain;
  for (const suffix of suffixes) {
    const value = table[`${key}_${suffix}`];
    if (typeof value === 'number') return convert(value, suffix, unit);
  }
  return undefined;
}

export function writeLength(table: Table, key: string, value: number | undefined) {
  for (const suffix of suffixes) delete table[`${key}_${suffix}`];
  if (value === undefined) delete table[key];
  else table[key] = tidy(value);
}

// What a key's unit makes of a figure in the units of each system, for fields alone: what is planned
// the library converts. Exact by definition, but psi to seven figures and lb/yd³ likewise.
type Into = Record<System, (value: number) => number>;
const figureUnits: Record<string, Into> = {
  f: { us: (v) => v, si: (v) => (v - 32) / 1.8 },
  c: { us: (v) => v * 1.8 + 32, si: (v) => v },
  mph: { us: (v) => v, si: (v) => v * 0.44704 },
  m_s: { us: (v) => v / 0.44704, si: (v) => v },
  km_h: { us: (v) => v / 1.609344, si: (v) => v / 3.6 },
  knots: { us: (v) => v * 1.852 / 1.609344, si: (v) => v * 1.852 / 3.6 },
  psi: { us: (v) => v, si: (v) => v * 0.006894757 },
  mpa: { us: (v) => v / 0.006894757, si: (v) => v },
  lb_yd3: { us: (v) => v, si: (v) => v * 0.5932764 },
  kg_m3: { us: (v) => v / 0.5932764, si: (v) => v },
  h: { us: (v) => v, si: (v) => v },
  min: { us: (v) => v / 60, si: (v) => v / 60 },
  percent: { us: (v) => v, si: (v) => v },
  share: { us: (v) => v * 100, si: (v) => v * 100 },
};

const numberIn = (value: Value | undefined) => (typeof value === 'number' ? value : undefined);

// The key's figure in the units of `system`, whichever unit the key itself says; undefined where it
// is left out.
export function readFigure(table: Table, key: string, system: System): number | undefined {
  if (key in table) return numberIn(table[key]);
  for (const [unit, into] of Object.entries(figureUnits)) {
    const value = table[`${key}_${unit}`];
    if (typeof value === 'number') return round(into[system](value), 2);
  }
  return undefined;
}

// In the job's own units: the key with another goes.
export function writeFigure(table: Table, key: string, value: Value | undefined) {
  for (const unit of Object.keys(figureUnits)) delete table[`${key}_${unit}`];
  if (value === undefined || value === '') delete table[key];
  else table[key] = value;
}

export const tidyPoint = ([x, y]: Point): Point => [tidy(x), tidy(y)];

// A list that the engine has taken for points: whether it is one is its to judge.
function listAt(table: Table, key: string): unknown[] | undefined {
  const list = table[key];
  return Array.isArray(list) ? list : undefined;
}

export function readPoints(table: Table, key: string, unit: Unit): Point[] | undefined {
  const plain = listAt(table, key) as Point[] | undefined;
  if (plain) return plain;
  for (const suffix of suffixes) {
    const points = listAt(table, `${key}_${suffix}`) as Point[] | undefined;
    if (points) return points.map(([x, y]) => [convert(x, suffix, unit), convert(y, suffix, unit)]);
  }
  return undefined;
}

// One point, where `readPoints` has many.
export function readPoint(table: Table, key: string, unit: Unit): Point | undefined {
  const plain = listAt(table, key) as Point | undefined;
  if (plain) return plain;
  for (const suffix of suffixes) {
    const point = listAt(table, `${key}_${suffix}`) as Point | undefined;
    if (point) return [convert(point[0], suffix, unit), convert(point[1], suffix, unit)];
  }
  return undefined;
}

export function writePoint(table: Table, key: string, point: Point) {
  for (const suffix of suffixes) delete table[`${key}_${suffix}`];
  table[key] = tidyPoint(point);
}

export function writePoints(table: Table, key: string, points: Points) {
  for (const suffix of suffixes) delete table[`${key}_${suffix}`];
  table[key] = points.map(tidyPoint);
}

const number = '(\\d+(?:[.,]\\d+)?|[.,]\\d+)';
const fraction = '(?:(\\d+)\\s*/\\s*(\\d+))';
const feetAndInches = new RegExp(
  `^(-)?\\s*(?:${number}\\s*(?:(?:'(?!')|\u2019|ft\\.?|feet|foot)\\s*-?|-))?\\s*(?:${number}?\\s*${fraction}?\\s*("|\u201d|''|in\\.?|inch(?:es)?)?)$`, 'i');
const figure = (text: string | undefined) => Number((text ?? '').replace(',', '.'));

// A typed length in ft or m: 4'6", 4 ft 6 in, 4.5, 3 m, 30 cm. A bare number is in `unit`. NaN
// where it is none.
export function parseLength(text: string, unit: Unit): number {
  const typed = text.trim().replace(/(\d)-(?=[a-z])/gi, '$1 '); // "6-inch"
  const bare = typed.match(new RegExp(`^(-)?${number}$`));
  if (bare) return (bare[1] ? -1 : 1) * figure(bare[2]);
  const metric = typed.match(new RegExp(`^(-)?${number}\\s*(m|cm|mm)$`, 'i'));
  if (metric) return (metric[1] ? -1 : 1) * convert(figure(metric[2]), (metric[3] ?? '').toLowerCase() as Unit, unit);
  const match = typed.match(feetAndInches);
  // In "4' 6" the last figure is inches; without feet it has to say so.
  if (!match || (!match[2] && !match[3] && !match[4]) || (!match[2] && !match[6]) || (match[6] && !match[3] && !match[4])) return NaN;
  const parts = match[4] ? figure(match[4]) / figure(match[5]) : 0;
  const inches = (match[3] ? figure(match[3]) : 0) + parts;
  const feet = (match[2] ? figure(match[2]) : 0) + inches / 12;
  return (match[1] ? -1 : 1) * convert(feet, 'ft', unit);
}

// 12' 6", to the half inch; 3.80 m.
export function lengthText(value: number, unit: Unit): string {
  if (unit === 'm') return `${value.toFixed(2)} m`;
  const halves = Math.round(Math.abs(value) * 24);
  const feet = Math.floor(halves / 24);
  const inches = (halves % 24) / 2;
  const sign = value < 0 && halves > 0 ? '-' : '';
  return `${sign}${feet}'${inches ? ` ${inches}"` : ''}`;
}

export const areaText = (value: number, unit: Unit) =>
  (unit === 'm' ? `${value.toFixed(1)} m\u00b2` : `${Math.round(value)} ft\u00b2`);

const volume = (m3: number, system: System, digits: number) =>
  (system === 'si' ? `${m3.toFixed(digits)} m\u00b3` : `${(m3 / 0.764554857984).toFixed(digits)} yd\u00b3`);
export const volumeText = (m3: number, system: System) => volume(m3, system, 1);
// In the quarters that a plant sells.
export const soldText = (m3: number, system: System) => volume(m3, system, 2);

// A time as a clock of 12 or 24 hours shows it, 10:55 PM or 22:55; the day before it where that is
// not `day`.
export function clockText(iso: string | null | undefined, hours: 12 | 24, day?: string): string {
  const [, date, hh, mm] = /^(\d{4}-\d{2}-\d{2})T(\d{2}):(\d{2})/.exec(iso ?? '') ?? [];
  if (!date) return '';
  const hour = Number(hh);
  const clock = hours === 24 ? `${hh}:${mm}` :
    `${hour % 12 === 0 ? 12 : hour % 12}:${mm} ${hour < 12 ? 'AM' : 'PM'}`;
  return day && day !== date ? `${dayText(date)} ${clock}` : clock;
}

// The time of day as HH:MM of what a job file may have: 07:30, 0730, 8, 7:30 AM, 8am, noon, with a date
// before it, with seconds or an offset after it. Undefined for anything else.
export function timeOfDay(text: string): string | undefined {
  const date = '(?:\\d{4}-\\d{2}-\\d{2}[T ])?';
  const plain = new RegExp(`^${date}([01]?\\d|2[0-3]):([0-5]\\d)(?::[0-5]\\d(?:\\.\\d+)?)?(?:Z|[+-]\\d{2}:\\d{2})?$`).exec(text)
    ?? new RegExp(`^${date}([01]?\\d|2[0-3])([0-5]\\d)?$`).exec(text);
  const halved = new RegExp(`^${date}(0?[1-9]|1[0-2])(?::?([0-5]\\d))? ?([ap])\\.?(?:m\\.?)?$`, 'i').exec(text);
  const word = new RegExp(`^${date}(?:12(?::00)? )?(noon|midnight)$`, 'i').exec(text);
  if (word) return word[1]?.toLowerCase() === 'noon' ? '12:00' : '00:00';
  const found = plain ?? halved;
  if (!found) return undefined;
  const late = found[3]?.toLowerCase() === 'p' ? 12 : 0;
  const hour = plain ? Number(found[1]) : (Number(found[1]) % 12) + late;
  return `${String(hour).padStart(2, '0')}:${found[2] ?? '00'}`;
}

export function dayText(date: string, long = false): string {
  const at = new Date(`${date}T12:00:00Z`);
  if (Number.isNaN(at.getTime())) return date;
  const options: Intl.DateTimeFormatOptions = long ? { weekday: 'short', month: 'short', day: 'numeric', year: 'numeric' } : { weekday: 'short' };
  return at.toLocaleDateString('en-US', { ...options, timeZone: 'UTC' });
}

// A day typed as in a phone: 2026-05-14, "tomorrow" is the default of a new job.
export function localDate(daysAhead = 0) {
  const at = new Date();
  at.setDate(at.getDate() + daysAhead);
  const two = (value: number) => String(value).padStart(2, '0');
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
}

export interface Place {
  latitude: number;
  longitude: number;
}

// "44.9, -91.9", "44.9° N 91.9° W", as a map on a phone gives it.
export function parsePlace(text: string): Place | undefined {
  const match = text.trim().match(
    /^(-?\d+(?:\.\d+)?)\s*\u00b0?\s*([NS])?\s*[,;\s]\s*(-?\d+(?:\.\d+)?)\s*\u00b0?\s*([EW])?$/i);
  if (!match) return undefined;
  const signed = (value: string | undefined, letter: string | undefined, negative: string) =>
    (letter && letter.toUpperCase() === negative ? -Math.abs(Number(value)) : Number(value));
  const latitude = signed(match[1], match[2], 'S');
  const longitude = signed(match[3], match[4], 'W');
  if (Math.abs(latitude) > 90 || Math.abs(longitude) > 180) return undefined;
  return { latitude, longitude };
}
