// Places by name, asked of a list of them.
import { getText } from './network';
import type { Place } from './units';

const list = 'https://geocoding-api.open-meteo.com/v1/search';
const most = 6;
const longestName = 60;

const inside = (value: unknown, limit: number): value is number => typeof value === 'number' && Math.abs(value) <= limit;
const named = (value: unknown) => (typeof value === 'string' && value !== '' ? value.slice(0, longestName) : undefined);

export interface Town extends Place {
  words: string;
  elevation_m?: number;
  zone?: string;
}
// What the list says of a town: nothing of it is believed before it is looked at.
type Listed = Partial<Record<string, unknown>> | null;

// Up to six of them, the likeliest first.
export async function placesNamed(name: string): Promise<Town[]> {
  const answer: { results?: unknown } | null = JSON.parse(await getText(`${list}?name=${encodeURIComponent(name)}&count=${most}&language=en&format=json`, 'it knows no such place'));
  const found: Listed[] = Array.isArray(answer?.results) ? answer.results.slice(0, most) : [];
  return found.flatMap((each) => {
    const { latitude, longitude, elevation } = each ?? {};
    if (!each || !inside(latitude, 90) || !inside(longitude, 180) || !named(each.name)) return [];
    return [{
      words: [each.name, each.admin2, each.admin1, each.country].map(named).filter((part, i, all) => part && all.indexOf(part) === i).join(', '),
      latitude, longitude, elevation_m: inside(elevation, 9000) ? elevation : undefined, zone: named(each.timezone),
    }];
  });
}
