// Lengths and figures as a person types and reads them, and the units that a job file's keys may
// name. A job keeps its own system; `plan` lengths are in ft or m, `depth` in in or mm.

const perMetre = { ft: 1 / 0.3048, m: 1, in: 1 / 0.0254, cm: 100, mm: 1000 };
export const planUnit = (system) => (system === 'si' ? 'm' : 'ft');
export const depthUnit = (system) => (system === 'si' ? 'mm' : 'in');
export const convert = (value, from, to) => (value / perMetre[from]) * perMetre[to];
const suffixes = ['ft', 'm', 'in', 'cm', 'mm'];

const round = (value, digits) => Number(value.toFixed(digits));
export const tidy = (value) => round(value, 4);

// The key's figure in `unit`, whichever unit the key itself says; undefined where it is left out.
export function readLength(table, key, unit) {
  if (typeof table[key] === 'number') return table[key];
  for (const suffix of suffixes) {
    const value = table[`${key}_${suffix}`];
    if (typeof value === 'number') return convert(value, suffix, unit);
  }
  return undefined;
}

export function writeLength(table, key, value) {
  for (const suffix of suffixes) delete table[`${key}_${suffix}`];
  if (value === undefined) delete table[key];
  else table[key] = tidy(value);
}

// What a key's unit makes of a figure in the units of each system, for fields alone: what is planned
// the library converts. Exact by definition, but psi to seven figures and lb/yd³ likewise.
const figureUnits = {
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

// The key's figure in the units of `system`, whichever unit the key itself says; undefined where it
// is left out.
export function readFigure(table, key, system) {
  if (key in table) return table[key];
  for (const [unit, into] of Object.entries(figureUnits)) {
    const value = table[`${key}_${unit}`];
    if (typeof value === 'number') return round(into[system](value), 2);
  }
  return undefined;
}

// In the job's own units: the key with another goes.
export function writeFigure(table, key, value) {
  for (const unit of Object.keys(figureUnits)) delete table[`${key}_${unit}`];
  if (value === undefined || value === '') delete table[key];
  else table[key] = value;
}

export function readPoints(table, key, unit) {
  if (Array.isArray(table[key])) return table[key];
  for (const suffix of suffixes) {
    const points = table[`${key}_${suffix}`];
    if (Array.isArray(points)) return points.map(([x, y]) => [convert(x, suffix, unit), convert(y, suffix, unit)]);
  }
  return undefined;
}

// One point, where `readPoints` has many.
export function readPoint(table, key, unit) {
  if (Array.isArray(table[key])) return table[key];
  for (const suffix of suffixes) {
    const point = table[`${key}_${suffix}`];
    if (Array.isArray(point)) return point.map((value) => convert(value, suffix, unit));
  }
  return undefined;
}

export function writePoint(table, key, point) {
  for (const suffix of suffixes) delete table[`${key}_${suffix}`];
  table[key] = point.map(tidy);
}

export function writePoints(table, key, points) {
  for (const suffix of suffixes) delete table[`${key}_${suffix}`];
  table[key] = points.map(([x, y]) => [tidy(x), tidy(y)]);
}

const number = '(\\d+(?:[.,]\\d+)?|[.,]\\d+)';
const fraction = '(?:(\\d+)\\s*/\\s*(\\d+))';
const feetAndInches = new RegExp(
  `^(-)?\\s*(?:${number}\\s*(?:(?:'(?!')|\u2019|ft\\.?|feet|foot)\\s*-?|-))?\\s*(?:${number}?\\s*${fraction}?\\s*("|\u201d|''|in\\.?|inch(?:es)?)?)$`, 'i');
const figure = (text) => Number(text.replace(',', '.'));

// A typed length in ft or m: 4'6", 4 ft 6 in, 4.5, 3 m, 30 cm. A bare number is in `unit`. NaN
// where it is none.
export function parseLength(text, unit) {
  const typed = text.trim().replace(/(\d)-(?=[a-z])/gi, '$1 '); // "6-inch"
  const bare = typed.match(new RegExp(`^(-)?${number}$`));
  if (bare) return (bare[1] ? -1 : 1) * figure(bare[2]);
  const metric = typed.match(new RegExp(`^(-)?${number}\\s*(m|cm|mm)$`, 'i'));
  if (metric) return (metric[1] ? -1 : 1) * convert(figure(metric[2]), metric[3].toLowerCase(), unit);
  const match = typed.match(feetAndInches);
  // In "4' 6" the last figure is inches; without feet it has to say so.
  if (!match || (!match[2] && !match[3] && !match[4]) || (!match[2] && !match[6]) || (match[6] && !match[3] && !match[4])) return NaN;
  const parts = match[4] ? figure(match[4]) / figure(match[5]) : 0;
  const inches = (match[3] ? figure(match[3]) : 0) + parts;
  const feet = (match[2] ? figure(match[2]) : 0) + inches / 12;
  return (match[1] ? -1 : 1) * convert(feet, 'ft', unit);
}

// 12' 6", to the half inch; 3.80 m.
export function lengthText(value, unit) {
  if (unit === 'm') return `${value.toFixed(2)} m`;
  const halves = Math.round(Math.abs(value) * 24);
  const feet = Math.floor(halves / 24);
  const inches = (halves % 24) / 2;
  const sign = value < 0 && halves > 0 ? '-' : '';
  return `${sign}${feet}'${inches ? ` ${inches}"` : ''}`;
}

export const areaText = (value, unit) =>
  (unit === 'm' ? `${value.toFixed(1)} m\u00b2` : `${Math.round(value)} ft\u00b2`);

const volume = (m3, system, digits) =>
  (system === 'si' ? `${m3.toFixed(digits)} m\u00b3` : `${(m3 / 0.764554857984).toFixed(digits)} yd\u00b3`);
export const volumeText = (m3, system) => volume(m3, system, 1);
// In the quarters that a plant sells.
export const soldText = (m3, system) => volume(m3, system, 2);

// A time as a clock of 12 or 24 hours shows it, 10:55 PM or 22:55; the day before it where that is
// not `day`.
export function clockText(iso, hours, day) {
  const match = /^(\d{4}-\d{2}-\d{2})T(\d{2}):(\d{2})/.exec(iso ?? '');
  if (!match) return '';
  const hour = Number(match[2]);
  const clock = hours === 24 ? `${match[2]}:${match[3]}` :
    `${hour % 12 === 0 ? 12 : hour % 12}:${match[3]} ${hour < 12 ? 'AM' : 'PM'}`;
  return day && day !== match[1] ? `${dayText(match[1])} ${clock}` : clock;
}

// The time of day as HH:MM of what a job file may have: 07:30, 0730, 8, 7:30 AM, 8am, noon, with a date
// before it, with seconds or an offset after it. Undefined for anything else.
export function timeOfDay(text) {
  const date = '(?:\\d{4}-\\d{2}-\\d{2}[T ])?';
  const plain = new RegExp(`^${date}([01]?\\d|2[0-3]):([0-5]\\d)(?::[0-5]\\d(?:\\.\\d+)?)?(?:Z|[+-]\\d{2}:\\d{2})?$`).exec(text)
    ?? new RegExp(`^${date}([01]?\\d|2[0-3])([0-5]\\d)?$`).exec(text);
  const halved = new RegExp(`^${date}(0?[1-9]|1[0-2])(?::?([0-5]\\d))? ?([ap])\\.?(?:m\\.?)?$`, 'i').exec(text);
  const word = new RegExp(`^${date}(?:12(?::00)? )?(noon|midnight)$`, 'i').exec(text);
  if (word) return word[1].toLowerCase() === 'noon' ? '12:00' : '00:00';
  if (!plain && !halved) return undefined;
  const late = halved && (halved[3].toLowerCase() === 'p' ? 12 : 0);
  const hour = plain ? Number(plain[1]) : (Number(halved[1]) % 12) + late;
  return `${String(hour).padStart(2, '0')}:${(plain ?? halved)[2] ?? '00'}`;
}

export function dayText(date, long = false) {
  const at = new Date(`${date}T12:00:00Z`);
  if (Number.isNaN(at.getTime())) return date;
  const options = long ? { weekday: 'short', month: 'short', day: 'numeric', year: 'numeric' } : { weekday: 'short' };
  return at.toLocaleDateString('en-US', { ...options, timeZone: 'UTC' });
}

// A day typed as in a phone: 2026-05-14, "tomorrow" is the default of a new job.
export function localDate(daysAhead = 0) {
  const at = new Date();
  at.setDate(at.getDate() + daysAhead);
  const two = (value) => String(value).padStart(2, '0');
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`;
}

// "44.9, -91.9", "44.9° N 91.9° W", as a map on a phone gives it.
export function parsePlace(text) {
  const match = text.trim().match(
    /^(-?\d+(?:\.\d+)?)\s*\u00b0?\s*([NS])?\s*[,;\s]\s*(-?\d+(?:\.\d+)?)\s*\u00b0?\s*([EW])?$/i);
  if (!match) return undefined;
  const signed = (value, letter, negative) =>
    (letter && letter.toUpperCase() === negative ? -Math.abs(Number(value)) : Number(value));
  const latitude = signed(match[1], match[2], 'S');
  const longitude = signed(match[3], match[4], 'W');
  if (Math.abs(latitude) > 90 || Math.abs(longitude) > 180) return undefined;
  return { latitude, longitude };
}
