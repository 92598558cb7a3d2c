// Prints sunrise and sunset (upper limb, 34' of refraction) around the solar noon of a UTC date
// from astronomy-engine; empty if there is none within half a day of noon.
import * as Astronomy from 'astronomy-engine';
import { first, iso, last, spread } from './points.mjs';

// Not beyond 174 deg, where noon is so close to midnight UTC that its date is ambiguous.
const count = 400;
const halfDay = 0.5;
const event = (observer, direction, noon, days) => {
  const found = Astronomy.SearchRiseSet(Astronomy.Body.Sun, observer, direction, noon, days);
  return found === null ? '' : iso(found.date.getTime());
};
console.log('date,latitude_deg,longitude_deg,rise,set');
for (let i = 1; i <= count; i++) {
  const latitude = Number(spread(i, 1, -65, 65).toFixed(4));
  const longitude = Number(spread(i, 2, -174, 174).toFixed(4));
  const observer = new Astronomy.Observer(latitude, longitude, 0);
  const start = Astronomy.MakeTime(new Date(spread(i, 0, first, last)));
  const noon = Astronomy.SearchHourAngle(Astronomy.Body.Sun, observer, 0, start).time;
  console.log([iso(noon.date.getTime()).slice(0, 10), latitude, longitude,
    event(observer, +1, noon, -halfDay), event(observer, -1, noon, halfDay)].join(','));
}
