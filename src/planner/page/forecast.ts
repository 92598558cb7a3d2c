// The hourly forecast, asked of the weather service when the person says so and at no other time.
import { getText } from './network';
import type { Place } from './units';

const services = { nws: 'https://api.weather.gov', openMeteo: 'https://api.open-meteo.com' };
const quantities = 'temperature_2m,dew_point_2m,relative_humidity_2m,cloud_cover,wind_speed_10m,wind_gusts_10m,' +
  'shortwave_radiation,precipitation,precipitation_probability,weather_code';
const daysBeyond = 4;

const degrees = (value: number) => String(Number(value.toFixed(4)));

const get = (url: string) => getText(url, 'it has no forecast for this place');

async function fromNws({ latitude, longitude }: Place) {
  const points: unknown = JSON.parse(await get(`${services.nws}/points/${degrees(latitude)},${degrees(longitude)}`));
  const url = (points as { properties?: { forecastGridData?: unknown } } | null)?.properties?.forecastGridData;
  if (typeof url !== 'string' || !url.startsWith(`${services.nws}/`)) throw new Error('it does not say where its forecast is');
  return get(url);
}

async function fromOpenMeteo({ latitude, longitude }: Place, date: string) {
  const ahead = Math.ceil((Date.parse(`${date}T00:00:00Z`) - Date.now()) / 86400e3);
  const days = Math.min(16, Math.max(daysBeyond, ahead + daysBeyond));
  const text = await get(`${services.openMeteo}/v1/forecast?latitude=${degrees(latitude)}&longitude=${degrees(longitude)}` +
    `&hourly=${quantities}&wind_speed_unit=ms&timeformat=unixtime&past_days=1&forecast_days=${days}`);
  const fetched = `"slabtide_fetched":"${new Date().toISOString().slice(0, 16)}Z",`;
  return text.replace('{', `{${fetched}`);
}

export type Source = 'nws' | 'open-meteo';
export const sources: [id: Source, words: string][] = [['nws', 'National Weather Service (US)'], ['open-meteo', 'Open-Meteo (anywhere)']];

export async function fetchForecast(source: Source, site: Place, date: string): Promise<string> {
  return source === 'nws' ? fromNws(site) : fromOpenMeteo(site, date);
}
