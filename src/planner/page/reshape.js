// Shapes made of others: a disc, a bowed side, a slab or walk cut in two, one turned over.
import { centre, distance, middle, minus, onSegment, plus, signedArea, times } from './geometry.js';
import { isWalk, pointsOf, setPoints, unitOf } from './job.js';
import { readPoint, writePoint } from './units.js';

const sidesOfDisc = 32;

// A ring of equal sides with the area of the circle, so that the concrete is right.
export function disc(at, radius) {
  const step = (2 * Math.PI) / sidesOfDisc;
  const reach = radius * Math.sqrt((2 * Math.PI) / (sidesOfDisc * Math.sin(step)));
  return Array.from({ length: sidesOfDisc }, (_, i) => plus(at, [reach * Math.cos(i * step), reach * Math.sin(i * step)]));
}

// The circle that a ring of many equal sides stands for.
export function circleOf(points) {
  if (points.length < 12) return undefined;
  const at = centre(points);
  const far = points.map((point) => distance(point, at));
  if (Math.max(...far) - Math.min(...far) > 0.01 * Math.max(...far)) return undefined;
  return { at, radius: Math.sqrt(Math.abs(signedArea(points)) / Math.PI) };
}

// The side bent into an arc that stands `rise` beyond its middle, outward where positive; the
// corners stay. A rise of half the side is a half circle, and more is not taken.
export function bowed(points, side, rise) {
  const [from, to] = [points[side], points[(side + 1) % points.length]];
  const half = distance(from, to) / 2;
  const high = Math.min(Math.abs(rise), half);
  if (high < 1e-3 || half < 1e-3) return points;
  const along = times(minus(to, from), 1 / (2 * half));
  const way = Math.sign(rise) * (signedArea(points) > 0 ? 1 : -1);
  const out = times([along[1], -along[0]], way);
  const radius = (half ** 2 + high ** 2) / (2 * high);
  const spread = 2 * Math.asin(Math.min(1, half / radius));
  const pieces = Math.max(4, Math.round(spread / 0.2));
  const hub = plus(middle(from, to), times(out, high - radius));
  const arc = Array.from({ length: pieces - 1 }, (_, i) => {
    const angle = -spread / 2 + (spread * (i + 1)) / pieces;
    return plus(hub, plus(times(out, radius * Math.cos(angle)), times(along, radius * Math.sin(angle))));
  });
  return [...points.slice(0, side + 1), ...arc, ...points.slice(side + 1)];
}

// Where the line through `a` and `b`, endless both ways, crosses the ring or the open line.
function crossings(points, closed, a, b) {
  const beside = ([x, y]) => (b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0]);
  const found = [];
  for (let i = 0; i < points.length - (closed ? 0 : 1); ++i) {
    const to = points[(i + 1) % points.length];
    const [p, q] = [beside(points[i]), beside(to)];
    if ((p < 0) === (q < 0)) continue;
    found.push({ after: i, at: plus(points[i], times(minus(to, points[i]), p / (p - q))) });
  }
  return found;
}

// How far beyond the middle of a side a point lies, outward positive.
export function riseTo(points, side, at) {
  const [from, to] = [points[side], points[(side + 1) % points.length]];
  const along = times(minus(to, from), 1 / (distance(from, to) || 1));
  const [x, y] = minus(at, middle(from, to));
  return (x * along[1] - y * along[0]) * (signedArea(points) > 0 ? 1 : -1);
}

// Whether the drawn line, which has ends, comes across the zone at all.
export function crosses(job, zone, a, b) {
  const points = pointsOf(job, zone);
  return crossings(points, !isWalk(zone), a, b).some(({ at }) => onSegment(at, a, b).away < 0.02);
}

// The ring or open line in two along the line through `a` and `b`; undefined where it does not part
// it in just two.
export function parted(points, closed, a, b) {
  const cuts = crossings(points, closed, a, b);
  if (cuts.length !== (closed ? 2 : 1)) return undefined;
  const [first, second] = cuts;
  if (!closed) return [[...points.slice(0, first.after + 1), first.at], [first.at, ...points.slice(first.after + 1)]];
  return [
    [...points.slice(0, first.after + 1), first.at, second.at, ...points.slice(second.after + 1)],
    [first.at, ...points.slice(first.after + 1, second.after + 1), second.at],
  ];
}

const inside = (point, ring) => ring.reduce((odd, [x, y], i) => {
  const [nx, ny] = ring[(i + 1) % ring.length];
  return (y > point[1]) !== (ny > point[1]) && point[0] < ((nx - x) * (point[1] - y)) / (ny - y) + x ? !odd : odd;
}, false);
const awayFrom = (point, ring, closed) => Math.min(...ring.slice(0, closed ? undefined : -1).map((from, i) => onSegment(point, from, ring[(i + 1) % ring.length]).away));

// A zone made two: what stood on it goes with the half it lies on, concrete beyond its own thickness
// stays with the first, a joint across both is left to the plan. Gives the index of the new one, or undefined where the line does not part it.
export function splitZone(job, index, a, b) {
  const zones = job.tables.zone;
  const zone = zones[index];
  const closed = !isWalk(zone);
  const halves = parted(pointsOf(job, zone), closed, a, b)?.map((ring) => ring.filter((point, i) => i === 0 || distance(point, ring[i - 1]) > 0.02));
  if (!halves || halves.some((ring) => ring.length < (closed ? 3 : 2))) return undefined;
  const other = structuredClone(zone);
  for (const key of Object.keys(other)) if (key.startsWith('extra_volume')) delete other[key];
  const taken = new Set(zones.map((each) => each.name));
  for (let i = 2; taken.has(other.name); ++i) other.name = `${zone.name} ${i}`;
  [zone, other].forEach((half, i) => {
    setPoints(half, halves[i]);
    const mine = (point) => awayFrom(point, halves[i], closed) <= awayFrom(point, halves[1 - i], closed);
    keepOnly(half, 'face', (face) => mine(readPoint(face, 'at', unitOf(job)) ?? halves[0][0]) === true);
    keepOnly(half, 'joint', (joint) => closed && ['from', 'to'].every((key) => onRing(readPoint(joint, key, unitOf(job)), halves[i])));
  });
  zones.splice(index + 1, 0, other);
  const order = job.tables.pour.zone_order;
  if (Array.isArray(order)) order.splice(order.indexOf(zone.name) + 1, 0, other.name);
  return index + 1;
}
const onRing = (point, ring) => point && (inside(point, ring) || awayFrom(point, ring, true) < 0.05);
function keepOnly(table, key, good) {
  if (!Array.isArray(table[key])) return;
  table[key] = table[key].filter(good);
  if (table[key].length === 0) delete table[key];
}

// A zone turned over about the line through its middle that runs along `axis` (a unit vector): left
// becomes right where it runs up the sheet.
export function mirrorZone(job, index, axis) {
  const zone = job.tables.zone[index];
  const points = pointsOf(job, zone);
  const xs = points.map((point) => point[0] * axis[1] - point[1] * axis[0]);
  const line = (Math.max(...xs) + Math.min(...xs)) / 2;
  const normal = [axis[1], -axis[0]];
  const over = (point) => {
    const away = point[0] * normal[0] + point[1] * normal[1] - line;
    return minus(point, times(normal, 2 * away));
  };
  setPoints(zone, points.map(over));
  const move = (table, key) => {
    const point = readPoint(table, key, unitOf(job));
    if (point) writePoint(table, key, over(point));
  };
  const heading = (Math.atan2(axis[0], axis[1]) * 180) / Math.PI;
  const face = (table, key) => {
    if (typeof table[key] === 'number') table[key] = Math.round((((2 * heading - table[key]) % 360) + 360) % 360 * 100) / 100;
  };
  face(zone, 'placed_toward');
  for (const each of zone.face ?? []) {
    move(each, 'at');
    face(each, 'facing');
  }
  for (const joint of Array.isArray(zone.joint) ? zone.joint : []) ['from', 'to'].forEach((key) => move(joint, key));
}

