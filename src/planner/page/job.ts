// What the page knows of a job: the tables of its file, and beside them what a file cannot hold
// (how the drawing is turned, the journal, a fetched forecast). The engine judges what is in it.
import { corner, distance, middle, minus, onSegment, plus, sideOf, sidesOf, signedArea, times, turned, type Point, type Points } from './geometry';
import { writeToml, type Moment, type Table, type Value } from './toml';
import {
  clockText, convert, depthUnit, localDate, planUnit, readLength, readPoint, readPoints, tidy, tidyPoint, timeOfDay, writePoint,
  writePoints, type System,
} from './units';

// ---- the file's tables, by its own words; a length or a figure may have its unit in the key ----
export interface Face extends Table {
  at?: Point;
  length?: number;
  height?: number;
  tread?: number;
  facing?: number | string;
}
export interface Joint extends Table {
  from?: Point;
  to?: Point;
}
export interface Border extends Table {
  finish?: string;
}
export interface Zone extends Table {
  name: string;
  finish?: string;
  outline?: Point[];
  path?: Point[];
  tied?: boolean;
  tied_edges?: number | number[]; // counted from 1 along the outline
  shaded?: boolean;
  base?: string;
  color?: string;
  colour?: string;
  border?: Border;
  face?: Face[];
  joint?: Joint[];
  placed_toward?: number | string;
}
export interface Obstacle extends Table {
  name?: string;
  kind: string;
  color?: string;
  colour?: string;
}
export interface Site extends Table {
  latitude?: number;
  longitude?: number;
  elevation?: number;
  time_zone?: string;
  wind_setting?: string;
}
export interface Pour extends Table {
  date?: Moment;
  start?: string | Moment;
  transit?: number;
  hauling?: string;
  saws?: string[];
  curing?: string;
  zone_order?: string[];
  cover?: Table[];
}
export interface Weather extends Table {
  forecast?: string;
  cloud?: number | Table;
}
export interface Admixture extends Table {
  kind: string;
  dose?: number;
  dose_percent?: number;
  shift?: number;
}
export interface Mix extends Table {
  name?: string;
  w_cm?: number;
  cementitious?: number;
  sacks?: number;
  strength?: number;
  slump?: number;
  admixture?: Admixture[];
}
export interface Crew extends Table {
  finishers?: number;
}
export interface Hand extends Table {
  name?: string;
  from?: string | Moment;
  to?: string | Moment;
  pace?: number;
  simple_work?: boolean;
}
export interface FinishWork extends Table {
  release?: string;
  sealer?: string;
  seal_after_days?: number;
}
export interface Order extends Table {
  load_size?: number;
  short_load?: number;
}
export interface Tables extends Table {
  name: string;
  units?: string;
  clock?: number | string;
  site: Site;
  pour: Pour;
  weather: Weather;
  mix: Mix;
  zone: Zone[];
  obstacle?: Obstacle[];
  crew?: Crew;
  hand?: Hand[];
  finish_work?: FinishWork;
  order?: Order;
  prices?: Table;
  option?: Table[];
}

export interface Forecast {
  text: string;
  from: string;
  at: number; // ms
  first?: string;
  last?: string;
  issued?: string;
}
// What is planned with typical figures still.
export interface Unsaid {
  weather?: boolean;
  mix?: boolean;
}
// What an edit changes, and Undo brings back.
export interface Edited {
  tables: Tables;
  turn: number; // degrees
  forecast: Forecast | null;
  typed: Weather | null; // the day as typed before a forecast took its place
  unsaid: Unsaid;
  original?: string; // the file's own text, as long as nothing is changed
}
export interface Job extends Edited {
  id: string;
  revision: number;
  changed: number; // ms
  journal: string;
}
// What the engine plans from, by the names it calls them.
export type Texts = Record<string, string>;

export const finishes: [id: string, words: string][] = [
  ['stamp', 'Stamp'], ['texture roll', 'Texture roller'], ['broom', 'Broom'], ['float', 'Float'], ['trowel', 'Trowel'],
  ['exposed aggregate', 'Exposed aggregate'], ['salt', 'Salt'],
];
export const colours = ['grey', 'white', 'red', 'tan', 'brown', 'charcoal'];
export const fileName = 'job.toml';
export const journalName = 'job.journal';
export const forecastName = 'job-forecast.json';
export const bookName = 'mix-book.toml'; // where the command line looks for it, beside the job

interface Usual {
  thickness: number; walk: number; high: number; low: number; dew: number; wind: number; concrete: number; content: number; strength: number;
  wall: number; tree: [radius: number, height: number]; riser: number; tread: number;
}
const usual: Record<System, Usual> = {
  us: { thickness: 4, walk: 4, high: 72, low: 52, dew: 48, wind: 7, concrete: 70, content: 564, strength: 4000, wall: 18, tree: [8, 25], riser: 7, tread: 1 },
  si: { thickness: 100, walk: 1.2, high: 22, low: 11, dew: 9, wind: 3, concrete: 21, content: 335, strength: 28, wall: 5.5, tree: [2.5, 7.5], riser: 180, tread: 0.3 },
};
// All that most of these look at.
type Told = Pick<Job, 'tables'>;
export const usualOf = (job: Told) => usual[systemOf(job)];
export const systemOf = (job: Told): System => (job.tables.units === 'si' ? 'si' : 'us');
export const unitOf = (job: Told) => planUnit(systemOf(job));
export const depthOf = (job: Told) => depthUnit(systemOf(job));

// The clock of the job's people: what the file says, else by its units.
const hoursOf = (job: Told): 12 | 24 => {
  const said = String(job.tables.clock);
  if (said === '12') return 12;
  return said === '24' || systemOf(job) === 'si' ? 24 : 12;
};
// Shows a time by that clock, with its weekday unless it is on `day`, the pour's own by default.
export const dateOf = (job: Told) => job.tables.pour?.date?.$time;
export const clockOf = (job: Told, day = dateOf(job)) => (iso: string | null | undefined) => clockText(iso, hoursOf(job), day);
// HH:MM; undefined where it is missing or cannot be read.
export const startOf = (job: Told) => timeOfDay(plainTime(job.tables.pour?.start));
// A time of the file as text, whichever way it is written.
export const plainTime = (time: string | Moment | undefined) => String((typeof time === 'object' ? time.$time : time) ?? '');

// The file's key has either spelling, and keeps it; a new one has that of the job's units.
type Coloured = Zone | Obstacle;
export const colourOf = (thing: Coloured) => {
  const colour = thing.color ?? thing.colour;
  return colour === 'gray' ? 'grey' : colour;
};
export function setColour(job: Told, thing: Coloured, colour: string) {
  const us = 'color' in thing || (!('colour' in thing) && systemOf(job) === 'us');
  delete thing.colour;
  delete thing.color;
  if (colour === '') return;
  if (us) thing.color = colour === 'grey' ? 'gray' : colour;
  else thing.colour = colour;
}

// A pour for tomorrow; site, mix, crew with its hands, order, prices and the
// work after finishing are those of the last one, where there is one.
export function newJob(last?: Told, system = last ? systemOf(last) : 'us'): Job {
  const figures = usual[system];
  const kept = <Name extends keyof Tables>(name: Name): Tables[Name] | undefined => (last?.tables[name] ? structuredClone(last.tables[name]) : undefined);
  const pour: Pour = kept('pour') ?? { transit: 35, hauling: 'chute', placing_crew: 4, saws: ['early-entry', 'wet'], curing: 'none' };
  for (const name of ['zone_order', 'cover', 'start', 'date']) delete pour[name];
  const tables: Tables = {
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

export const newId = () =>
  [...crypto.getRandomValues(new Uint8Array(12))].map((byte) => byte.toString(16).padStart(2, '0')).join('');

function blankRecord(tables: Tables, unsaid: Unsaid = {}): Job {
  return { id: newId(), revision: 0, changed: Date.now(), tables, turn: 0, journal: '', forecast: null, typed: null, unsaid };
}

// A job read from a file: it is given back letter for letter until it is changed here.
export const importedJob = (tables: Tables, text: string): Job => ({ ...blankRecord(tables), original: text });

export function textOf(job: Pick<Job, 'tables' | 'original'>): string {
  if (job.original !== undefined) return job.original;
  const tables: Table = { ...job.tables };
  for (const list of ['zone', 'obstacle', 'option']) if (Array.isArray(tables[list]) && tables[list].length === 0) delete tables[list];
  return writeToml(tables);
}

export const forecastPath = (job: Told) => job.tables.weather?.forecast;

// All that the engine plans from, by the names it calls them.
export function textsOf(job: Job, book = ''): Texts {
  const texts: Texts = Object.create(null);
  const path = forecastPath(job);
  if (typeof path === 'string' && job.forecast) texts[path] = job.forecast.text;
  if (job.journal) texts[journalName] = job.journal;
  if (book) texts[bookName] = book;
  texts[fileName] = textOf(job); // last: whatever the forecast is called
  return texts;
}

// What has to be told before there is anything to plan.
export type Want = [screen: 'draw' | 'details', words: string];
export function missing(job: Job): Want[] {
  const wants: Want[] = [];
  if (job.tables.zone.length === 0) wants.push(['draw', 'Draw at least one slab or walk.']);
  const { latitude, longitude } = job.tables.site;
  if (typeof latitude !== 'number' || typeof longitude !== 'number') wants.push(['details', 'Say where the site is.']);
  if (typeof forecastPath(job) === 'string' && !job.forecast) wants.push(['details', 'Get the forecast again: this job names one that is not here.']);
  return wants;
}

export const isWalk = (zone: Zone) => ['path', 'path_ft', 'path_m', 'path_in', 'path_cm'].some((key) => key in zone);
export const shapeKey = (zone: Zone) => (isWalk(zone) ? 'path' : 'outline');
export const pointsOf = (job: Told, zone: Zone) => readPoints(zone, shapeKey(zone), unitOf(job)) ?? [];
export const widthOf = (job: Told, zone: Zone) => readLength(zone, 'width', unitOf(job)) ?? usualOf(job).walk;
export const setPoints = (zone: Zone, points: Points) => writePoints(zone, shapeKey(zone), points);

const hair = 0.02; // ft or m

// ---- the edges by which a zone is tied, where it names them: sides of its outline, counted from 0 ----
export const tiedSides = (zone: Zone): number[] => [zone.tied_edges ?? []].flat().map((number) => number - 1);
export function setTiedSides(zone: Zone, sides: number[]) {
  if (sides.length === 0) delete zone.tied_edges;
  else Object.assign(zone, { tied: true, tied_edges: sides.map((side) => side + 1).sort((a, b) => a - b) });
}
export function setTied(zone: Zone, tied: boolean) {
  if (tied) zone.tied = true;
  else {
    delete zone.tied;
    delete zone.tied_edges;
  }
}
export function toggleTied(zone: Zone, side: number) {
  const sides = tiedSides(zone);
  setTiedSides(zone, sides.includes(side) ? sides.filter((each) => each !== side) : [...sides, side]);
}

// The outline with other corners: a side of it is tied that lies on one that was.
export function setRing(job: Told, zone: Zone, ring: Points) {
  const was = pointsOf(job, zone);
  const ties = tiedSides(zone).map((side) => sideOf(was, side));
  setPoints(zone, ring);
  if (ties.length === 0) return;
  setTiedSides(zone, sidesOf(ring).flatMap((side, i) =>
    (ties.some((tie) => side.every((end) => onSegment(end, ...tie).away <= hair)) ? [i] : [])));
}

// The zone of that number, where there has to be one.
export function zoneAt(job: Told, index: number): Zone {
  const zone = job.tables.zone[index];
  if (!zone) throw new RangeError('no such zone');
  return zone;
}

// The name, or the first of it with a number that no zone has.
export function freeName(job: Told, base: string): string {
  const taken = new Set(job.tables.zone.map((zone) => zone.name));
  if (!taken.has(base)) return base;
  for (let i = 2; ; ++i) if (!taken.has(`${base} ${i}`)) return `${base} ${i}`;
}

function addZone(job: Told, zone: Partial<Zone>, base: string): number {
  const last = job.tables.zone.at(-1);
  const whole: Zone = {
    name: freeName(job, base),
    ...zone,
    ...('thickness' in zone ? {} : { thickness: (last && readLength(last, 'thickness', depthOf(job))) ?? usualOf(job).thickness }),
    finish: zone.finish ?? last?.finish ?? 'broom',
  };
  job.tables.zone.push(whole);
  job.tables.pour.zone_order?.push(whole.name);
  return job.tables.zone.length - 1;
}

// Corners within a hair of each other are one.
export const apart = (points: Points) => points.filter((point, i) => {
  const before = points[i - 1];
  return !before || distance(point, before) > hair;
});
const cleaned = (points: Points) => apart(points).map(tidyPoint);

export function addSlab(job: Told, outline: Points, base = 'slab') {
  const points = cleaned(outline);
  if (points.length > 2 && distance(...sideOf(points, points.length - 1)) <= hair) points.pop();
  return addZone(job, { outline: points }, base);
}
export const addWalk = (job: Told, line: Points, width = usualOf(job).walk) => addZone(job, { path: cleaned(line), width: tidy(width) }, 'walk');

// A walk that begins or ends on a side of a slab leaves it squarely, as it is formed: else its square
// end would lie partly on the slab.
export function squaredEnds(job: Told, line: Points, width = usualOf(job).walk): Point[] {
  const led = (points: Points): Point[] => {
    const [start, ...rest] = points;
    const out = start && outwardAt(job, start);
    if (!out) return [...points];
    const far = rest.filter((point, i) => i === rest.length - 1 || distance(point, start) > width * 0.75);
    return [start, plus(start, times(out, width / 2)), ...far];
  };
  return led(led(line).reverse()).reverse();
}

// The way off a ring's side, and along it: of length 1 each.
export function waysOf(ring: Points, side: number): { along: Point; out: Point } {
  const [from, to] = sideOf(ring, side);
  const along = times(minus(to, from), 1 / (distance(from, to) || 1));
  return { along, out: signedArea(ring) > 0 ? [along[1], -along[0]] : [-along[1], along[0]] };
}

// The way off the slab whose side the point lies on.
function outwardAt(job: Told, point: Point): Point | undefined {
  for (const zone of job.tables.zone) {
    if (isWalk(zone)) continue;
    const points = pointsOf(job, zone);
    const side = sidesOf(points).findIndex(([from, to]) => onSegment(point, from, to).away <= hair);
    if (side >= 0) return waysOf(points, side).out;
  }
  return undefined;
}

export function addWall(job: Told, from: Point, to: Point, height = usualOf(job).wall) {
  const walls = (job.tables.obstacle ??= []);
  walls.push({ name: 'house', kind: 'wall', from: tidyPoint(from), to: tidyPoint(to), height: tidy(height) });
  return walls.length - 1;
}
export function addTree(job: Told, at: Point, [radius, height] = usualOf(job).tree) {
  const things = (job.tables.obstacle ??= []);
  things.push({ name: 'tree', kind: 'tree', at: tidyPoint(at), radius: tidy(radius), height: tidy(height) });
  return things.length - 1;
}

const compass = (vector: Point) => {
  const deg = (Math.atan2(vector[0], vector[1]) * 180) / Math.PI;
  return Math.round((deg + 360) % 360);
};

// Steps down from the middle of a slab's side: a riser on the slab itself and on every tread but
// the ground. `rises` of them leave one tread less.
export interface Steps {
  rises: number;
  width: number;
  tread: number;
  rise: number;
}
export function addSteps(job: Told, index: number, side: number, { rises, width, tread, rise }: Steps): number {
  const zone = zoneAt(job, index);
  const points = pointsOf(job, zone);
  const [from, to] = sideOf(points, side);
  const { along, out } = waysOf(points, side);
  const wide = Math.min(width, distance(from, to));
  const at = middle(from, to);
  const face = (steps: number): Face => ({ length: tidy(wide), height: rise, facing: compass(out), at: tidyPoint(plus(at, times(out, steps * tread))) });
  (zone.face ??= []).push(face(0));
  if (rises < 2) return index;
  const depth = (rises - 1) * tread;
  const place = (sideways: number, outward: number) => tidyPoint(plus(plus(at, times(along, sideways)), times(out, outward)));
  const outline = [place(-wide / 2, 0), place(wide / 2, 0), place(wide / 2, depth), place(-wide / 2, depth)];
  // What stands under a tread is concrete too.
  const under = tidy(convert(tread, unitOf(job), depthOf(job)));
  const faces = Array.from({ length: rises - 1 }, (_, i) => ({ ...face(i + 1), tread: under }));
  return addZone(job, { outline, finish: 'broom', face: faces }, 'steps');
}

// Whatever names the zone follows its new name, or goes with it.
export function renameZone(job: Told, from: string, to: string | undefined) {
  const inTable = (table: Table, keys: string[]) => {
    for (const key of keys) {
      const names = table[key];
      if (Array.isArray(names)) table[key] = names.flatMap((name): Value[] => (name !== from ? [name] : to === undefined ? [] : [to]));
    }
  };
  inTable(job.tables.pour, ['zone_order']);
  if (job.tables.pour.zone_order?.length === 0) delete job.tables.pour.zone_order;
  for (const cover of job.tables.pour.cover ?? []) inTable(cover, ['zones']);
  for (const option of job.tables.option ?? []) inTable(option, ['zone_order', 'shaded_zones', 'admixture_zones']);
  for (const zone of job.tables.zone) if (zone.name === from && to !== undefined) zone.name = to;
}

export function removeZone(job: Told, index: number) {
  const { name } = zoneAt(job, index);
  job.tables.zone.splice(index, 1);
  renameZone(job, name, undefined);
}

// Placed earlier (-1) or later (1) than now.
export function moveInOrder(job: Told, index: number, by: -1 | 1) {
  const zones = job.tables.zone;
  if (!zones[index + by]) return;
  zones.splice(index + by, 0, ...zones.splice(index, 1));
  delete job.tables.pour.zone_order;
}

// The points of a zone, and the places of what is on it, each moved.
export function movePoints(job: Told, zone: Zone, move: (point: Point) => Point) {
  setPoints(zone, pointsOf(job, zone).map(move));
  for (const face of zone.face ?? []) movePoint(job, face, ['at'], move);
  for (const joint of Array.isArray(zone.joint) ? zone.joint : []) movePoint(job, joint, ['from', 'to'], move);
}
function movePoint(job: Told, table: Table, keys: string[], move: (point: Point) => Point) {
  for (const key of keys) {
    const point = readPoint(table, key, unitOf(job));
    if (point) writePoint(table, key, move(point));
  }
}
const placesOfThing = ['from', 'to', 'at'];

// Every point of the job, and every direction, moved at once.
function mapped(job: Told, move: (point: Point) => Point, turnBy: number) {
  const direction = (table: Table, key: string) => {
    const words: Record<string, number> = { north: 0, northeast: 45, east: 90, southeast: 135, south: 180, southwest: 225, west: 270, northwest: 315 };
    const said = table[key];
    const deg = typeof said === 'string' ? words[said.replace(/[- ]/g, '').toLowerCase()] : said;
    if (typeof deg === 'number' && turnBy) table[key] = tidy((((deg - turnBy) % 360) + 360) % 360);
  };
  for (const zone of job.tables.zone) {
    movePoints(job, zone, move);
    direction(zone, 'placed_toward');
    for (const face of zone.face ?? []) direction(face, 'facing');
  }
  for (const thing of job.tables.obstacle ?? []) movePoint(job, thing, placesOfThing, move);
}

// The sheet stays as it lies and the compass turns: `turn` is where north points on the screen,
// degrees clockwise from up.
export function turnNorth(job: Pick<Job, 'tables' | 'turn'>, turn: number) {
  const by = turn - job.turn;
  mapped(job, (point) => turned(point, by), by);
  job.turn = ((turn % 360) + 360) % 360;
}

export const moveZone = (job: Told, index: number, by: Point) => movePoints(job, zoneAt(job, index), (point) => plus(point, by));
export function moveObstacle(job: Told, index: number, by: Point) {
  const thing = job.tables.obstacle?.[index];
  if (thing) movePoint(job, thing, placesOfThing, (point) => plus(point, by));
}

// A rectangle by its sides, for typed lengths: the corners in order where it is one.
export function rectangleOf(points: Points): { first: number; second: number } | undefined {
  const [a, b, c, d] = points;
  if (!a || !b || !c || !d || points.length !== 4) return undefined;
  const right = (p: Point, q: Point, r: Point) => Math.abs((q[0] - p[0]) * (r[0] - q[0]) + (q[1] - p[1]) * (r[1] - q[1])) < 1e-3 * distance(p, q) * distance(q, r);
  if (!right(a, b, c) || !right(b, c, d) || !right(c, d, a)) return undefined;
  return { first: distance(a, b), second: distance(b, c) };
}
export function resizedRectangle(points: Points, first: number, second: number): Point[] {
  const [a, b, d] = [corner(points, 0), corner(points, 1), corner(points, 3)];
  const along = times(minus(b, a), first / distance(a, b));
  const across = times(minus(d, a), second / distance(a, d));
  return [a, plus(a, along), plus(plus(a, along), across), plus(a, across)];
}
