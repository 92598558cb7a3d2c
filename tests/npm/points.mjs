// A repeatable set of points: the fractional parts of multiples of irrational numbers fill the box
// evenly, so every season, hour and latitude occurs.
const steps = [Math.sqrt(2), Math.sqrt(3), Math.sqrt(5), Math.sqrt(7)];

export function spread(index, dimension, low, high) {
  const fraction = (index * steps[dimension]) % 1;
  return low + fraction * (high - low);
}

export const first = Date.UTC(2024, 0, 1);
export const last = Date.UTC(2036, 11, 31);

/** The instant without its milliseconds, which Slabtide's tests do not need. */
export const iso = (milliseconds) =>
  new Date(Math.round(milliseconds / 1000) * 1000).toISOString().slice(0, 19);
