// Plane geometry of the drawing: points are [x, y], x to the right, y up.

export type Point = [x: number, y: number];
export type Points = readonly Point[];

export const minus = ([ax, ay]: Point, [bx, by]: Point): Point => [ax - bx, ay - by];
export const plus = ([ax, ay]: Point, [bx, by]: Point): Point => [ax + bx, ay + by];
export const times = ([x, y]: Point, factor: number): Point => [x * factor, y * factor];
export const distance = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1]);
export const middle = (a: Point, b: Point): Point => times(plus(a, b), 0.5);
export const turned = ([x, y]: Point, deg: number): Point => {
  const angle = (deg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return [x * cos - y * sin, x * sin + y * cos];
};

// The corner of a ring by its number, which may go round it.
export function corner(ring: Points, i: number): Point {
  const point = ring[i % ring.length];
  if (!point) throw new RangeError('a ring without corners');
  return point;
}
// The side from that corner to the next.
export const sideOf = (ring: Points, i: number): [Point, Point] => [corner(ring, i), corner(ring, i + 1)];
export const sidesOf = (ring: Points) => ring.map((_, i) => sideOf(ring, i));
// The last of a line that has points.
export const lastOf = (line: Points): Point => corner(line, line.length - 1);

export const signedArea = (ring: Points) => sidesOf(ring).reduce((twice, [[x, y], [nx, ny]]) => twice + x * ny - nx * y, 0) / 2;
export const area = (ring: Points) => Math.abs(signedArea(ring));
export const pathLength = (line: Points) => sidesOf(line).slice(0, -1).reduce((sum, [from, to]) => sum + distance(from, to), 0);

export function bounds(points: Points) {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return { west: Math.min(...xs), east: Math.max(...xs), south: Math.min(...ys), north: Math.max(...ys) };
}

export const centre = (points: Points): Point => times(points.reduce<Point>(plus, [0, 0]), 1 / points.length);

// The nearest place on the segment, and how far it is.
export function onSegment(point: Point, from: Point, to: Point) {
  const along = minus(to, from);
  const length2 = along[0] ** 2 + along[1] ** 2;
  const share = length2 === 0 ? 0 :
    Math.min(1, Math.max(0, ((point[0] - from[0]) * along[0] + (point[1] - from[1]) * along[1]) / length2));
  const at = plus(from, times(along, share));
  return { at, share, away: distance(point, at) };
}

// The band of a walk about its line, mitred at the bends, for the eye; the engine makes its own.
export function walkOutline(line: Points, width: number): Point[] {
  const unit = (v: Point) => times(v, 1 / (Math.hypot(...v) || 1));
  const normal = ([x, y]: Point): Point => [-y, x];
  const ways = sidesOf(line).slice(0, -1).map(([from, to]) => normal(unit(minus(to, from))));
  const side = (sign: number) => line.map((point, i) => {
    const a = corner(ways, Math.max(i - 1, 0));
    const b = corner(ways, Math.min(i, ways.length - 1));
    const mean = unit(plus(a, b));
    const stretch = Math.min(4, 1 / Math.max(0.25, mean[0] * a[0] + mean[1] * a[1]));
    return plus(point, times(mean, (sign * stretch * width) / 2));
  });
  return [...side(1), ...side(-1).reverse()];
}

// A curve through the points (Catmull-Rom), a point every `step` or so.
export function smooth(points: Points, step: number): Point[] {
  if (points.length < 3) return [...points];
  const result = [corner(points, 0)];
  for (let i = 0; i + 1 < points.length; ++i) {
    const [p0, p1, p2, p3] = [corner(points, Math.max(i - 1, 0)), ...sideOf(points, i), corner(points, Math.min(i + 2, points.length - 1))];
    const pieces = Math.max(1, Math.round(distance(p1, p2) / step));
    for (let k = 1; k <= pieces; ++k) {
      const t = k / pieces;
      const at = (axis: 0 | 1) => 0.5 * (2 * p1[axis] + (p2[axis] - p0[axis]) * t +
        (2 * p0[axis] - 5 * p1[axis] + 4 * p2[axis] - p3[axis]) * t * t +
        (3 * p1[axis] - p0[axis] - 3 * p2[axis] + p3[axis]) * t ** 3);
      result.push([at(0), at(1)]);
    }
  }
  return result;
}

// Points of a traced line that matter (Douglas and Peucker 1973), within `tolerance` of it.
export function simplify(points: Points, tolerance: number): Point[] {
  if (points.length < 3) return [...points];
  const ends: [Point, Point] = [corner(points, 0), lastOf(points)];
  let farthest = 0;
  let at = 0;
  for (let i = 1; i + 1 < points.length; ++i) {
    const { away } = onSegment(corner(points, i), ...ends);
    if (away > farthest) [farthest, at] = [away, i];
  }
  if (farthest <= tolerance) return ends;
  return [...simplify(points.slice(0, at + 1), tolerance).slice(0, -1), ...simplify(points.slice(at), tolerance)];
}

export interface Sun {
  elevation_deg: number;
  azimuth_deg: number;
}

// Where the shadow of a thing of this height falls on the ground, as a shift; none at night or
// with the sun so low that it has no end worth drawing.
export function shadowShift(height: number, sun: Sun | undefined): Point | undefined {
  if (!sun || sun.elevation_deg < 2) return undefined;
  const reach = height / Math.tan((sun.elevation_deg * Math.PI) / 180);
  const away = ((sun.azimuth_deg + 180) * Math.PI) / 180;
  return [reach * Math.sin(away), reach * Math.cos(away)];
}
