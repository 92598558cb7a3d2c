// Plane geometry of the drawing: points are [x, y], x to the right, y up.

export const minus = ([ax, ay], [bx, by]) => [ax - bx, ay - by];
export const plus = ([ax, ay], [bx, by]) => [ax + bx, ay + by];
export const times = ([x, y], factor) => [x * factor, y * factor];
export const distance = (a, b) => Math.hypot(a[0] - b[0], a[1] - b[1]);
export const middle = (a, b) => times(plus(a, b), 0.5);
export const turned = ([x, y], deg) => {
  const angle = (deg * Math.PI) / 180;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return [x * cos - y * sin, x * sin + y * cos];
};

export function signedArea(points) {
  let twice = 0;
  points.forEach(([x, y], i) => {
    const [nx, ny] = points[(i + 1) % points.length];
    twice += x * ny - nx * y;
  });
  return twice / 2;
}
export const area = (points) => Math.abs(signedArea(points));
export const pathLength = (points) => points.slice(1).reduce((sum, point, i) => sum + distance(points[i], point), 0);

export function bounds(points) {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return { west: Math.min(...xs), east: Math.max(...xs), south: Math.min(...ys), north: Math.max(...ys) };
}

export const centre = (points) => times(points.reduce(plus, [0, 0]), 1 / points.length);

// The nearest place on the segment, and how far it is.
export function onSegment(point, from, to) {
  const along = minus(to, from);
  const length2 = along[0] ** 2 + along[1] ** 2;
  const share = length2 === 0 ? 0 :
    Math.min(1, Math.max(0, ((point[0] - from[0]) * along[0] + (point[1] - from[1]) * along[1]) / length2));
  const at = plus(from, times(along, share));
  return { at, share, away: distance(point, at) };
}

// The band of a walk about its line, mitred at the bends, for the eye; the engine makes its own.
export function walkOutline(line, width) {
  const side = (sign) => line.map((point, i) => {
    const before = i > 0 ? minus(point, line[i - 1]) : undefined;
    const after = i + 1 < line.length ? minus(line[i + 1], point) : undefined;
    const unit = (v) => times(v, 1 / (Math.hypot(...v) || 1));
    const normal = ([x, y]) => [-y, x];
    const a = before ? normal(unit(before)) : normal(unit(after));
    const b = after ? normal(unit(after)) : a;
    const mean = unit(plus(a, b));
    const stretch = Math.min(4, 1 / Math.max(0.25, mean[0] * a[0] + mean[1] * a[1]));
    return plus(point, times(mean, (sign * stretch * width) / 2));
  });
  return [...side(1), ...side(-1).reverse()];
}

// A curve through the points (Catmull-Rom), a point every `step` or so.
export function smooth(points, step) {
  if (points.length < 3) return points;
  const result = [points[0]];
  for (let i = 0; i + 1 < points.length; ++i) {
    const [p0, p1, p2, p3] = [points[Math.max(i - 1, 0)], points[i], points[i + 1], points[Math.min(i + 2, points.length - 1)]];
    const pieces = Math.max(1, Math.round(distance(p1, p2) / step));
    for (let k = 1; k <= pieces; ++k) {
      const t = k / pieces;
      const at = (axis) => 0.5 * (2 * p1[axis] + (p2[axis] - p0[axis]) * t +
        (2 * p0[axis] - 5 * p1[axis] + 4 * p2[axis] - p3[axis]) * t * t +
        (3 * p1[axis] - p0[axis] - 3 * p2[axis] + p3[axis]) * t ** 3);
      result.push([at(0), at(1)]);
    }
  }
  return result;
}

// Points of a traced line that matter (Douglas and Peucker 1973), within `tolerance` of it.
export function simplify(points, tolerance) {
  if (points.length < 3) return points;
  let farthest = 0;
  let at = 0;
  for (let i = 1; i + 1 < points.length; ++i) {
    const { away } = onSegment(points[i], points[0], points.at(-1));
    if (away > farthest) [farthest, at] = [away, i];
  }
  if (farthest <= tolerance) return [points[0], points.at(-1)];
  return [...simplify(points.slice(0, at + 1), tolerance).slice(0, -1), ...simplify(points.slice(at), tolerance)];
}

// Where the shadow of a thing of this height falls on the ground, as a shift; none at night or
// with the sun so low that it has no end worth drawing.
export function shadowShift(height, sun) {
  if (!sun || sun.elevation_deg < 2) return undefined;
  const reach = height / Math.tan((sun.elevation_deg * Math.PI) / 180);
  const away = ((sun.azimuth_deg + 180) * Math.PI) / 180;
  return [reach * Math.sin(away), reach * Math.cos(away)];
}
