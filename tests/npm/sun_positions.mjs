// Prints positions of the sun from astronomy-engine (topocentric, of date, no refraction).
import * as Astronomy from 'astronomy-engine';
import { first, iso, last, spread } from './points.mjs';

const count = 3000;
console.log('utc,latitude_deg,longitude_deg,zenith_deg,azimuth_deg,distance_au');
for (let i = 1; i <= count; i++) {
  const utc = iso(spread(i, 0, first, last));
  const latitude = Number(spread(i, 1, -65, 65).toFixed(4));
  const longitude = Number(spread(i, 2, -180, 180).toFixed(4));
  const observer = new Astronomy.Observer(latitude, longitude, 0);
  const time = Astronomy.MakeTime(new Date(utc + 'Z'));
  const place = Astronomy.Equator(Astronomy.Body.Sun, time, observer, true, true);
  const seen = Astronomy.Horizon(time, observer, place.ra, place.dec, null);
  console.log([utc, latitude, longitude, (90 - seen.altitude).toFixed(6),
    seen.azimuth.toFixed(6), place.dist.toFixed(7)].join(','));
}
