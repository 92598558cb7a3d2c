// Shapes made of others: a disc, a bowed side, a slab or walk cut in two, one turned over.
import { centre, corner, distance, middle, minus, onSegment, plus, sideOf, sidesOf, signedArea, times, type Point, type Points } from './geometry';
import { apart, freeName, isWalk, movePoints, pointsOf, setPoints, setRing, setTied, setTiedSides, tiedSides, unitOf, waysOf, zoneAt, type Job, type Zone } from './job';
import type { Table } from './toml';
import { readPoint } from './units';

type Told = Pick<Job, 'tables'>;

const sidesOfDisc = 32;

// A ring of equal sides with the area of the circle, so that the concrete is right.
export function disc(at: Point, radius: number): Point[] {
  const step = (2 * Math.PI) / sidesOfDisc;
  const reach = radius * Math.sqrt((2 * Math.PI) / (sidesOfDisc * Math.sin(step)));
  return Array.from({ length: sidesOfDisc }, (_, i) => plus(at, [reach * Math.cos(i * step), reach * Math.sin(i * step)]));
}

// The circle that a ring of many equal sides stands for.
export function circleOf(points: Points): { at: Point; radius: number } | undefined {
  if (points.length < 12) return undefined;
  const at = centre(points);
  const far = points.map((point) => distance(point, at));
  if (Math.max(...far) - Math.min(...far) > 0.01 * Math.max(...far)) return undefined;
  return { at, radius: Math.sqrt(Math.abs(signedArea(points)) / Math.PI) };
}

// The side bent into an arc that stands `rise` beyond its middle, outward where positive; the
// corners stay. A rise of half the side is a half circle, and more is not taken.
export function bowed(points: Points, side: number, rise: number): Point[] {
  const [from, to] = sideOf(points, side);
  const half = distance(from, to) / 2;
  const high = Math.min(Math.abs(rise), half);
  if (high < 1e-3 || half < 1e-3) return [...points];
  const { along, out: off } = waysOf(points, side);
  const out = times(off, Math.sign(rise));
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

// That side of a zone bowed; it stays as tied as it was.
export function bowSide(job: Told, zone: Zone, side: number, rise: number) {
  const was = pointsOf(job, zone);
  const ring = bowed(was, side, rise);
  const more = ring.length - was.length;
  const tied = tiedSides(zone).flatMap((each) =>
    (each < side ? [each] : each > side ? [each + more] : Array.from({ length: more + 1 }, (_, i) => side + i)));
  setPoints(zone, ring);
  setTiedSides(zone, tied);
}

// Where the line through `a` and `b`, endless both ways, crosses the ring or the open line.
function crossings(points: Points, closed: boolean, a: Point, b: Point) {
  const beside = ([x, y]: Point) => (b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0]);
  return sidesOf(points).slice(0, closed ? undefined : -1).flatMap(([from, to], after) => {
    const [p, q] = [beside(from), beside(to)];
    return (p < 0) === (q < 0) ? [] : [{ after, at: plus(from, times(minus(to, from), p / (p - q))) }];
  });
}

// How far beyond the middle of a side a point lies, outward positive.
export function riseTo(points: Points, side: number, at: Point): number {
  const { out } = waysOf(points, side);
  const [x, y] = minus(at, middle(...sideOf(points, side)));
  return x * out[0] + y * out[1];
}

// Whether the drawn line, which has ends, comes across the zone at all.
export function crosses(job: Told, zone: Zone, a: Point, b: Point): boolean {
  const points = pointsOf(job, zone);
  return crossings(points, !isWalk(zone), a, b).some(({ at }) => onSegment(at, a, b).away < 0.02);
}

// The ring or open line in two along the line through `a` and `b`; undefined where it does not part
// it in just two.
export function parted(points: Points, closed: boolean, a: Point, b: Point): [Point[], Point[]] | undefined {
  const [first, second, third] = crossings(points, closed, a, b);
  if (!first || third || Boolean(second) !== closed) return undefined;
  if (!second) return [[...points.slice(0, first.after + 1), first.at], [first.at, ...points.slice(first.after + 1)]];
  return [
    [...points.slice(0, first.after + 1), first.at, second.at, ...points.slice(second.after + 1)],
    [first.at, ...points.slice(first.after + 1, second.after + 1), second.at],
  ];
}

const inside = (point: Point, ring: Points) => sidesOf(ring).reduce((odd, [[x, y], [nx, ny]]) => (
  (y > point[1]) !== (ny > point[1]) && point[0] < ((nx - x) * (point[1] - y)) / (ny - y) + x ? !odd : odd), false);
const awayFrom = (point: Point, ring: Points, closed: boolean) =>
  Math.min(...sidesOf(ring).slice(0, closed ? undefined : -1).map(([from, to]) => onSegment(point, from, to).away));

// A zone made two: what stood on it goes with the half it lies on, concrete beyond its own thickness
// stays with the first, a joint across both is left to the plan. Gives the index of the new one, or undefined where the line does not part it.
export function splitZone(job: Told, index: number, a: Point, b: Point): number | undefined {
  const zones = job.tables.zone;
  const zone = zoneAt(job, index);
  const closed = !isWalk(zone);
  const cut = parted(pointsOf(job, zone), closed, a, b);
  const halves = cut?.map(apart);
  if (!halves || halves.some((ring) => ring.length < (closed ? 3 : 2))) return undefined;
  const other = structuredClone(zone);
  for (const key of Object.keys(other)) if (key.startsWith('extra_volume')) delete other[key];
  other.name = freeName(job, zone.name);
  const [one, two] = halves as [Point[], Point[]];
  for (const [half, own, others] of [[zone, one, two], [other, two, one]] as const) {
    const named = tiedSides(half).length > 0;
    setRing(job, half, own);
    if (named && tiedSides(half).length === 0) setTied(half, false);
    const mine = (point: Point) => awayFrom(point, own, closed) <= awayFrom(point, others, closed);
    keepOnly(half, 'face', (face) => mine(readPoint(face, 'at', unitOf(job)) ?? corner(one, 0)));
    keepOnly(half, 'joint', (joint) => closed && ['from', 'to'].every((key) => onRing(readPoint(joint, key, unitOf(job)), own)));
  }
  zones.splice(index + 1, 0, other);
  const order = job.tables.pour.zone_order;
  order?.splice(order.indexOf(zone.name) + 1, 0, other.name);
  return index + 1;
}
const onRing = (point: Point | undefined, ring: Points) => point !== undefined && (inside(point, ring) || awayFrom(point, ring, true) < 0.05);
function keepOnly(zone: Zone, key: 'face' | 'joint', good: (each: Table) => boolean) {
  if (!Array.isArray(zone[key])) return;
  zone[key] = zone[key].filter(good);
  if (zone[key].length === 0) delete zone[key];
}

// A zone turned over about the line through its middle that runs along `axis` (a unit vector): left
// becomes right where it runs up the sheet.
export function mirrorZone(job: Told, index: number, axis: Point) {
  const zone = zoneAt(job, index);
  const points = pointsOf(job, zone);
  const xs = points.map((point) => point[0] * axis[1] - point[1] * axis[0]);
  const line = (Math.max(...xs) + Math.min(...xs)) / 2;
  const normal: Point = [axis[1], -axis[0]];
  movePoints(job, zone, (point) => {
    const away = point[0] * normal[0] + point[1] * normal[1] - line;
    return minus(point, times(normal, 2 * away));
  });
  const heading = (Math.atan2(axis[0], axis[1]) * 180) / Math.PI;
  const over = (facing: string | number | undefined) => (typeof facing === 'number' ? Math.round((((2 * heading - facing) % 360) + 360) % 360 * 100) / 100 : facing);
  if (zone.placed_toward !== undefined) zone.placed_toward = over(zone.placed_toward);
  for (const face of zone.face ?? []) if (face.facing !== undefined) face.facing = over(face.facing);
}
