// Prints the zone of places over the whole world from tz-lookup, on the edges of its table as well.
import tzlookup from '@photostructure/tz-lookup';
import { spread } from './points.mjs';

const edges = [[90, 0], [-90, 0], [-90, -180], [0, 180], [0, -180], [-90, 180], [37.5, -90], [0, 0]];
const places = [...edges,
  ...Array.from({ length: 20000 }, (_, i) => [spread(i, 0, -90, 90), spread(i, 1, -180, 180)]),
  // Where its cells are small: North America and Europe.
  ...Array.from({ length: 20000 }, (_, i) => [spread(i, 0, 25, 50), spread(i, 1, -125, -65)]),
  ...Array.from({ length: 10000 }, (_, i) => [spread(i, 0, 36, 70), spread(i, 1, -10, 40)])];
console.log('latitude_deg,longitude_deg,zone');
for (const [latitude, longitude] of places)
  console.log([latitude, longitude, tzlookup(latitude, longitude)].join(','));
