// Places by name, asked of a list of them.
import { getText } from './network.js';

const list = 'https://geocoding-api.open-meteo.com/v1/search';
const most = 6;
const longestName = 60;

const inside = (value, limit) => typeof value === 'number' && Math.abs(value) <= limit;
const named = (value) => (typeof value === 'string' && value !== '' ? value.slice(0, longestName) : undefined);

// Up to six of them, the likeliest first: { words, latitude, longitude, elevation_m, zone }, of which the
// last two may be missing.
export async function placesNamed(name) {
  const answer = JSON.parse(await getText(`${list}?name=${encodeURIComponent(name)}&count=${most}&language=en&format=json`, 'it knows no such place'));
  const found = Array.isArray(answer?.results) ? answer.results.slice(0, most) : [];
  return found.filter((each) => inside(each?.latitude, 90) && inside(each?.longitude, 180) && named(each.name)).map((each) => ({
    words: [each.name, each.admin2, each.admin1, each.country].map(named).filter((part, i, all) => part && all.indexOf(part) === i).join(', '),
    latitude: each.latitude, longitude: each.longitude,
    elevation_m: inside(each.elevation, 9000) ? each.elevation : undefined,
    zone: named(each.timezone),
  }));
}
