// What the page knows of a job: the tables of its file, and beside them what a file cannot hold
// (how the drawing is turned, the journal, a fetched forecast). The engine judges what is in it.
import { distance, middle, minus, onSegment, plus, signedArea, times, turned } from './geometry.js';
import {
  clockText, convert, depthUnit, localDate, planUnit, readLength, readPoint, readPoints, tidy, timeOfDay, writeLength, writePoint,
  writePoints,
} from './units.js';
import { newId } from './store.js';
import { writeToml } from './toml.js';

export const finishes = [
  ['stamp', 'Stamp'], ['texture roll', 'Texture roller'], ['broom', 'Broom'], ['float', 'Float'], ['trowel', 'Trowel'],
  ['exposed aggregate', 'Exposed aggregate'], ['salt', 'Salt'],
];
export const colours = ['grey', 'white', 'red', 'tan', 'brown', 'charcoal'];
export const fileName = 'job.toml';
export const journalName = 'job.journal';
export const forecastName = 'job-forecast.json';
export const bookName = 'mix-book.toml'; // where the command line looks for it, beside the job

const usual = {
  us: { thickness: 4, walk: 4, high: 72, low: 52, dew: 48, wind: 7, concrete: 70, content: 564, strength: 4000, wall: 18, tree: [8, 25], riser: 7, tread: 1 },
  si: { thickness: 100, walk: 1.2, high: 22, low: 11, dew: 9, wind: 3, concrete: 21, content: 335, strength: 28, wall: 5.5, tree: [2.5, 7.5], riser: 180, tread: 0.3 },
};
export const usualOf = (job) => usual[systemOf(job)];
export const systemOf = (job) => (job.tables.units === 'si' ? 'si' : 'us');
export const unitOf = (job) => planUnit(systemOf(job));
export const depthOf = (job) => depthUnit(systemOf(job));

// The clock of the job's people: what the file says, else by its units.
const hoursOf = (job) => {
  const said = String(job.tables.clock);
  return said === '12' || said === '24' ? Number(said) : systemOf(job) === 'us' ? 12 : 24;
};
// Shows a time by that clock, with its weekday unless it is on `day`, the pour's own by default.
export const clockOf = (job, day = job.tables.pour?.date?.$time) => (iso) => clockText(iso, hoursOf(job), day);
// HH:MM; undefined where it is missing or cannot be read.
export const startOf = (job) => {
  const start = job.tables.pour?.start;
  return timeOfDay(String(start?.$time ?? start ?? ''));
};

// The file's key has either spelling, and keeps it; a new one has that of the job's units.
export const colourOf = (thing) => {
  const colour = thing.color ?? thing.colour;
  return colour === 'gray' ? 'grey' : colour;
};
export function setColour(job, thing, colour) {
  const us = 'color' in thing || (!('colour' in thing) && systemOf(job) === 'us');
  delete thing.colour;
  delete thing.color;
  if (colour === '') return;
  if (us) thing.color = colour === 'grey' ? 'gray' : colour;
  else thing.colour = colour;
}

// A pour for tomorrow; site, mix, crew with its hands, order, prices and the
// work after finishing are those of the last one, where there is one.
export function newJob(last) {
  const system = last ? systemOf(last) : 'us';
  const figures = usual[system];
  const kept = (name) => (last?.tables[name] ? structuredClone(last.tables[name]) : undefined);
  const pour = kept('pour') ?? { transit: 35, hauling: 'chute', placing_crew: 4, saws: ['early-entry', 'wet'], curing: 'none' };
  for (const name of ['zone_order', 'cover', 'start', 'date']) delete pour[name];
  const tables = {
    name: 'New pour',
    units: system,
    ...(last?.tables.clock === undefined ? {} : { clock: last.tables.clock }),
    site: kept('site') ?? { time_zone: Intl.DateTimeFormat().resolvedOptions().timeZone || 'America/Chicago', wind_setting: 'yard' },
    pour: { date: { $time: localDate(1) }, start: '08:00', ...pour },
    weather: { high: figures.high, low: figures.low, dew_point: figures.dew, wind: figures.wind, cloud: 20 },
    mix: kept('mix') ?? { cementitious: figures.content, w_cm: 0.45, air: 6, strength: figures.strength, concrete_temperature: figures.concrete },
    zone: [],
    obstacle: [],
    crew: kept('crew') ?? { finishers: 4 },
  };
  const hands = kept('hand');
  if (hands) tables.hand = hands;
  const finishWork = kept('finish_work');
  if (finishWork) tables.finish_work = finishWork;
  const prices = kept('prices');
  if (prices) tables.prices = prices;
  const order = kept('order');
  if (order) {
    delete order.load;
    tables.order = order;
  }
  return blankRecord(tables, { weather: true, mix: !last });
}

function blankRecord(tables, unsaid = {}) {
  return { id: newId(), revision: 0, changed: Date.now(), tables, turn: 0, journal: '', forecast: null, typed: null, unsaid };
}

// A job read from a file: it is given back letter for letter until it is changed here.
export function importedJob(tables, text) {
  const record = blankRecord(tables);
  record.original = text;
  return record;
}

export function textOf(job) {
  if (job.original !== undefined) return job.original;
  const tables = structuredClone(job.tables);
  for (const list of ['zone', 'obstacle', 'option']) if (tables[list]?.length === 0) delete tables[list];
  return writeToml(tables);
}

export const forecastPath = (job) => job.tables.weather?.forecast;

// All that the engine plans from, by the names it calls them.
export function textsOf(job, book = '') {
  const texts = Object.create(null);
  const path = forecastPath(job);
  if (typeof path === 'string' && job.forecast) texts[path] = job.forecast.text;
  if (job.journal) texts[journalName] = job.journal;
  if (book) texts[bookName] = book;
  texts[fileName] = textOf(job); // last: whatever the forecast is called
  return texts;
}

// What has to be told before there is anything to plan.
export function missing(job) {
  const wants = [];
  if (!(job.tables.zone?.length > 0)) wants.push(['draw', 'Draw at least one slab or walk.']);
  const { latitude, longitude } = job.tables.site ?? {};
  if (typeof latitude !== 'number' || typeof longitude !== 'number') wants.push(['details', 'Say where the site is.']);
  if (typeof forecastPath(job) === 'string' && !job.forecast) wants.push(['details', 'Get the forecast again: this job names one that is not here.']);
  return wants;
}

export const isWalk = (zone) => ['path', 'path_ft', 'path_m', 'path_in', 'path_cm'].some((key) => key in zone);
export const shapeKey = (zone) => (isWalk(zone) ? 'path' : 'outline');
export const pointsOf = (job, zone) => readPoints(zone, shapeKey(zone), unitOf(job)) ?? [];
export const widthOf = (job, zone) => readLength(zone, 'width', unitOf(job)) ?? usualOf(job).walk;
export const setPoints = (zone, points) => writePoints(zone, shapeKey(zone), points);

function freeName(job, base) {
  const taken = new Set((job.tables.zone ?? []).map((zone) => zone.name));
  if (!taken.has(base)) return base;
  for (let i = 2; ; ++i) if (!taken.has(`${base} ${i}`)) return `${base} ${i}`;
}

function addZone(job, zone, base) {
  const last = job.tables.zone?.at(-1);
  const whole = {
    name: freeName(job, base),
    ...zone,
    ...('thickness' in zone ? {} : { thickness: (last && readLength(last, 'thickness', depthOf(job))) ?? usualOf(job).thickness }),
    finish: zone.finish ?? last?.finish ?? 'broom',
  };
  (job.tables.zone ??= []).push(whole);
  if (Array.isArray(job.tables.pour.zone_order)) job.tables.pour.zone_order.push(whole.name);
  return job.tables.zone.length - 1;
}

// Corners within a hair of each other are one.
const cleaned = (points) => points.filter((point, i) => i === 0 || distance(point, points[i - 1]) > 0.02).map((point) => point.map(tidy));

export function addSlab(job, outline, base = 'slab') {
  const points = cleaned(outline);
  if (points.length > 2 && distance(points[0], points.at(-1)) <= 0.02) points.pop();
  return addZone(job, { outline: points }, base);
}
export const addWalk = (job, line, width = usualOf(job).walk) => addZone(job, { path: cleaned(line), width: tidy(width) }, 'walk');

// A walk that begins or ends on a side of a slab leaves it squarely, as it is formed: else its square
// end would lie partly on the slab.
export function squaredEnds(job, line, width = usualOf(job).walk) {
  const led = (points) => {
    const [start, ...rest] = points;
    const out = outwardAt(job, start);
    if (!out) return points;
    const far = rest.filter((point, i) => i === rest.length - 1 || distance(point, start) > width * 0.75);
    return [start, plus(start, times(out, width / 2)), ...far];
  };
  return led(led(line).reverse()).reverse();
}

// The way off the slab whose side the point lies on.
function outwardAt(job, point) {
  for (const zone of job.tables.zone ?? []) {
    if (isWalk(zone)) continue;
    const points = pointsOf(job, zone);
    for (let i = 0; i < points.length; ++i) {
      const [from, to] = [points[i], points[(i + 1) % points.length]];
      if (onSegment(point, from, to).away > 0.02) continue;
      const along = times(minus(to, from), 1 / distance(from, to));
      return signedArea(points) > 0 ? [along[1], -along[0]] : [-along[1], along[0]];
    }
  }
  return undefined;
}

export function addWall(job, from, to, height = usualOf(job).wall) {
  const walls = (job.tables.obstacle ??= []);
  walls.push({ name: 'house', kind: 'wall', from: from.map(tidy), to: to.map(tidy), height: tidy(height) });
  return walls.length - 1;
}
export function addTree(job, at, [radius, height] = usualOf(job).tree) {
  const things = (job.tables.obstacle ??= []);
  things.push({ name: 'tree', kind: 'tree', at: at.map(tidy), radius: tidy(radius), height: tidy(height) });
  return things.length - 1;
}

const compass = (vector) => {
  const deg = (Math.atan2(vector[0], vector[1]) * 180) / Math.PI;
  return Math.round((deg + 360) % 360);
};

// Steps down from the middle of a slab's side: a riser on the slab itself and on every tread but
// the ground. `rises` of them leave one tread less.
export function addSteps(job, index, side, { rises, width, tread, rise }) {
  const zone = job.tables.zone[index];
  const points = pointsOf(job, zone);
  const [from, to] = [points[side], points[(side + 1) % points.length]];
  const length = distance(from, to);
  const along = times(minus(to, from), 1 / length);
  const out = signedArea(points) > 0 ? [along[1], -along[0]] : [-along[1], along[0]];
  const wide = Math.min(width, length);
  const at = middle(from, to);
  const face = (steps) => ({ length: tidy(wide), height: rise, facing: compass(out), at: plus(at, times(out, steps * tread)).map(tidy) });
  (zone.face ??= []).push(face(0));
  if (rises < 2) return index;
  const depth = (rises - 1) * tread;
  const corner = (sideways, outward) => plus(plus(at, times(along, sideways)), times(out, outward)).map(tidy);
  const outline = [corner(-wide / 2, 0), corner(wide / 2, 0), corner(wide / 2, depth), corner(-wide / 2, depth)];
  // What stands under a tread is concrete too.
  const under = tidy(convert(tread, unitOf(job), depthOf(job)));
  const faces = Array.from({ length: rises - 1 }, (_, i) => ({ ...face(i + 1), tread: under }));
  return addZone(job, { outline, finish: 'broom', face: faces }, 'steps');
}

// Whatever names the zone follows its new name, or goes with it.
export function renameZone(job, from, to) {
  const swap = (names) => names.flatMap((name) => (name !== from ? [name] : to === undefined ? [] : [to]));
  const inTable = (table, keys) => {
    for (const key of keys) if (Array.isArray(table?.[key])) table[key] = swap(table[key]);
  };
  inTable(job.tables.pour, ['zone_order']);
  if (job.tables.pour?.zone_order?.length === 0) delete job.tables.pour.zone_order;
  for (const cover of job.tables.pour?.cover ?? []) inTable(cover, ['zones']);
  for (const option of job.tables.option ?? []) inTable(option, ['zone_order', 'shaded_zones', 'admixture_zones']);
  for (const zone of job.tables.zone) if (zone.name === from && to !== undefined) zone.name = to;
}

export function removeZone(job, index) {
  const [zone] = job.tables.zone.splice(index, 1);
  renameZone(job, zone.name, undefined);
}

// Placed earlier (-1) or later (1) than now.
export function moveInOrder(job, index, by) {
  const zones = job.tables.zone;
  const to = index + by;
  if (to < 0 || to >= zones.length) return index;
  [zones[index], zones[to]] = [zones[to], zones[index]];
  delete job.tables.pour.zone_order;
  return to;
}

// Every point of the job, and every direction, moved at once.
function mapped(job, move, turnBy = 0) {
  const unit = unitOf(job);
  const points = (table, key) => {
    const list = readPoints(table, key, unit);
    if (list) writePoints(table, key, list.map(move));
  };
  const point = (table, key) => {
    const found = readPoint(table, key, unit);
    if (found) writePoint(table, key, move(found));
  };
  const direction = (table, key) => {
    const words = { north: 0, northeast: 45, east: 90, southeast: 135, south: 180, southwest: 225, west: 270, northwest: 315 };
    const deg = typeof table[key] === 'string' ? words[table[key].replace(/[- ]/g, '').toLowerCase()] : table[key];
    if (typeof deg === 'number' && turnBy) table[key] = tidy((((deg - turnBy) % 360) + 360) % 360);
  };
  for (const zone of job.tables.zone ?? []) {
    points(zone, shapeKey(zone));
    direction(zone, 'placed_toward');
    for (const face of zone.face ?? []) {
      point(face, 'at');
      direction(face, 'facing');
    }
    for (const joint of Array.isArray(zone.joint) ? zone.joint : []) ['from', 'to'].forEach((key) => point(joint, key));
  }
  for (const thing of job.tables.obstacle ?? []) ['from', 'to', 'at'].forEach((key) => point(thing, key));
}

// The sheet stays as it lies and the compass turns: `turn` is where north points on the screen,
// degrees clockwise from up.
export function turnNorth(job, turn) {
  const by = turn - job.turn;
  mapped(job, (point) => turned(point, by), by);
  job.turn = ((turn % 360) + 360) % 360;
}

export function moveZone(job, index, by) {
  const zone = job.tables.zone[index];
  setPoints(zone, pointsOf(job, zone).map((point) => plus(point, by)));
  const shift = (table, key) => {
    const point = readPoint(table, key, unitOf(job));
    if (point) writePoint(table, key, plus(point, by));
  };
  for (const face of zone.face ?? []) shift(face, 'at');
  for (const joint of Array.isArray(zone.joint) ? zone.joint : []) ['from', 'to'].forEach((key) => shift(joint, key));
}
export function moveObstacle(job, index, by) {
  const thing = job.tables.obstacle[index];
  for (const key of ['from', 'to', 'at']) {
    const point = readPoint(thing, key, unitOf(job));
    if (point) writePoint(thing, key, plus(point, by));
  }
}

// A rectangle by its sides, for typed lengths: the corners in order where it is one.
export function rectangleOf(points) {
  if (points.length !== 4) return undefined;
  const [a, b, c, d] = points;
  const right = (p, q, r) => Math.abs((q[0] - p[0]) * (r[0] - q[0]) + (q[1] - p[1]) * (r[1] - q[1])) < 1e-3 * distance(p, q) * distance(q, r);
  if (!right(a, b, c) || !right(b, c, d) || !right(c, d, a)) return undefined;
  return { first: distance(a, b), second: distance(b, c) };
}
export function resizedRectangle([a, b, , d], first, second) {
  const along = times(minus(b, a), first / distance(a, b));
  const across = times(minus(d, a), second / distance(a, d));
  return [a, plus(a, along), plus(plus(a, along), across), plus(a, across)];
}

export { readLength, writeLength };
