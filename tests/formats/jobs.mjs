// Invented jobs, as TOML, that are difficult for the files a plan is written to.

const header = ({ name = 'A day', units = 'us', latitude = 45.1, longitude = -91.6,
  zone = 'America/Chicago', start = '08:00', high = 66, low = 41, saws = '["early-entry", "wet"]' }) =>
  `name = ${JSON.stringify(name)}
units = "${units}"
[site]
name = "Mill; yard, \\\\ east"
latitude = ${latitude}
longitude = ${longitude}
time_zone = "${zone}"
[pour]
date = 2026-05-14
start = "${start}"
saws = ${saws}
[weather]
high = ${high}
low = ${low}
wind = ${units === 'si' ? 3 : 7}
cloud = 20
[mix]
cementitious = ${units === 'si' ? 335 : 564}
w_cm = 0.45
air = 6
concrete_temperature = ${units === 'si' ? 17 : 62}
`;

// Adjacent strips of `width` by `length`, in the job's unit of length.
const strip = (name, i, { width = 6, length = 10, thickness = 4, finish = 'broom', more = '' } = {}) => {
  const [x0, x1] = [i * width, (i + 1) * width];
  return `[[zone]]
name = ${JSON.stringify(name)}
outline = [[${x0}, 0], [${x1}, 0], [${x1}, ${length}], [${x0}, ${length}]]
thickness = ${thickness}
finish = "${finish}"
${more}`;
};

const strips = (names, options) => names.map((name, i) => strip(name, i, options)).join('');

const nasty = [
  '<script>alert(1)</script> & "west" 東', '=1+1', '+1', '-1', '@sum', "'quoted", '|pipe', ' =1+1', '＝1+1', '\u00a0@sum', 'walk',
  'two  spaces', 'a;b,c\\d', `${'東側の'.repeat(30)}端`, '👷‍♀️ é',
];

// A strip of open ground east of a wall, so that its parts differ.
const wall = `[[obstacle]]
name = "barn"
kind = "wall"
from = [-1, -40]
to = [-1, 60]
height = 18
`;

const prices = `[prices]
currency = "CHF"
hand_per_hour = 70
concrete = 240
short_load = 150
redo = 130
`;

export const jobs = {
  one_zone: header({ name: 'One zone' }) + strip('only', 0, { width: 12, finish: 'stamp' }),
  forty_zones: header({ name: 'Forty zones' }) +
    strips(Array.from({ length: 40 }, (_, i) => `zone ${i + 1}`), { width: 4, length: 4 }),
  past_midnight: header({ name: 'Late pour', start: '21:30', low: 38 }) +
    strips(['first', 'second'], { width: 12, finish: 'texture roll' }),
  metric: header({ name: 'In metres', units: 'si', high: 24, low: 9, latitude: 47.4, longitude: 8.5,
    zone: 'Europe/Zurich' }) +
    prices +
    strips(['landing', 'walk'], { width: 3, length: 6, thickness: 100, finish: 'stamp',
      more: 'border = { width = 0.3, finish = "broom" }\n' }),
  half_hour: header({ name: 'Half-hour zone', latitude: 18.5, longitude: 73.9, zone: 'Asia/Kolkata',
    high: 95, low: 73 }) + strips(['court'], { width: 14, length: 14, finish: 'trowel' }),
  nasty_names: header({ name: 'Nasty, \\ "names"; 東' }) + strips(nasty, { finish: 'stamp' }),
  parts: header({ name: 'In parts' }) + strip('yard', 0, { width: 30, length: 40, finish: 'stamp',
    more: 'border = { width = 1, finish = "broom" }\n[[zone.face]]\nlength = 10\nheight = 7\nfacing = "south"\nat = [5, 0]\n' }) + wall,
  exposed: header({ name: 'Stone and salt' }) +
    strip('apron', 0, { width: 12, finish: 'exposed aggregate' }) + strip('walk', 1, { width: 12, finish: 'salt' }),
  no_saw: header({ name: 'No saw', saws: '[]' }) + prices + strip('pad', 0, { width: 20, length: 20 }),
  far_north: header({ name: 'No night', latitude: 69.7, longitude: 18.9, zone: 'Europe/Oslo',
    high: 50, low: 40 }).replace('2026-05-14', '2026-06-20') + strip('pad', 0, { width: 12, length: 12 }),
};
export const nastyNames = nasty;
