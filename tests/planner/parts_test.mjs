// The page's own parts that need neither engine nor browser: lengths, places, TOML, the plane.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import parts from './parts.mjs';

const { openedBetween } = parts.alarms;
const { headingOf, windOf } = parts.compass;
const { area, simplify, smooth, shadowShift, signedArea, turned, walkOutline } = parts.geometry;
const {
  addSlab, addSteps, addWalk, clockOf, colourOf, importedJob, newJob, pointsOf, removeZone, renameZone, setColour, squaredEnds, startOf, textOf, textsOf, turnNorth,
} = parts.job;
const { orderMixBy, sealBy, waterOf } = parts.panel_mix;
const { splitZone } = parts.reshape;
const { hasComments, withName, writeToml } = parts.toml;
const { clockText, lengthText, parseLength, parsePlace, readFigure, readLength, readPoints, timeOfDay, writeFigure, writePoints } = parts.units;

const near = (a, b, tolerance = 1e-9) => assert.ok(Math.abs(a - b) <= tolerance, `${a} is not ${b}`);

// As the library's parse_clock: common practice, no source.
test('times of day are read as they are typed', () => {
  const same = { '08:00': ['8', '08', '800', '0800', '8:00', '8 AM', '800 am', '8a', '2026-05-14 0800'], '12:00': ['noon', 'Noon', '12 noon', '12:00 noon', '12 PM', '1200'], '00:00': ['midnight', '12 AM', '0000'], '13:45': ['1345', '145 PM', '1:45 p.m.'] };
  for (const [time, texts] of Object.entries(same)) for (const text of texts) assert.equal(timeOfDay(text), time, text);
  for (const text of ['', '24', '860', '2400', '8 noon', 'afternoon', '8:5', '13 PM', 'soon']) assert.equal(timeOfDay(text), undefined, text);
});

test('lengths as a contractor types them', () => {
  const feet = [
    ["4'6\"", 4.5], ["4' 6\"", 4.5], ["12'", 12], ['4 ft', 4], ['4 ft 6 in', 4.5], ['4ft6in', 4.5], ['4.5', 4.5], ['.5', 0.5],
    ['6"', 0.5], ['6 in', 0.5], ['6 1/2"', 6.5 / 12], ["4' 6 1/2\"", 4 + 6.5 / 12], ['3 m', 3 / 0.3048], ['30 cm', 0.3 / 0.3048],
    ['4\u2019 6\u201d', 4.5], ["4'-6\"", 4.5], ["-2'", -2], ["4' 6", 4.5], ['4-6', 4.5], ["3/4\"", 0.0625],
  ];
  for (const [text, value] of feet) near(parseLength(text, 'ft'), value);
  for (const text of ['', 'four', "4''''", '4 6 8', "4'x", 'NaN', 'Infinity', '1e9', '--4', '1/2', "4' in", '4 6']) assert.ok(Number.isNaN(parseLength(text, 'ft')), text);
  for (const text of ['6-inch', '6-in', '6 inches']) near(parseLength(text, 'ft'), 0.5);
  near(parseLength('12-foot', 'ft'), 12);
  near(parseLength('12-6', 'ft'), 12.5);
  near(parseLength('3,5', 'm'), 3.5);
  near(parseLength("10'", 'm'), 3.048);
});

test('a length shown reads back as it was, to the half inch', () => {
  for (let halves = 1; halves < 2000; halves += 7) near(parseLength(lengthText(halves / 24, 'ft'), 'ft'), halves / 24);
  assert.equal(lengthText(11.99, 'ft'), "12'");
  assert.equal(lengthText(-0.5, 'ft'), "-0' 6\"");
});

test('places as a phone shows them', () => {
  assert.deepEqual(parsePlace('29.95, -90.07'), { latitude: 29.95, longitude: -90.07 });
  assert.deepEqual(parsePlace('29.95\u00b0 N, 90.07\u00b0 W'), { latitude: 29.95, longitude: -90.07 });
  assert.deepEqual(parsePlace('-33.9 151.2'), { latitude: -33.9, longitude: 151.2 });
  for (const text of ['', 'here', '91, 0', '0, 181', '1', '1,2,3']) assert.equal(parsePlace(text), undefined, text);
});

test('clocks', () => {
  assert.equal(clockText('2026-05-14T00:05-05:00', 12, '2026-05-14'), '12:05 AM');
  assert.equal(clockText('2026-05-14T12:05:00-05:00', 12, '2026-05-14'), '12:05 PM');
  assert.equal(clockText('2026-05-15T13:05-05:00', 12, '2026-05-14'), 'Fri 1:05 PM');
  assert.equal(clockText('2026-05-14T13:05-05:00', 24, '2026-05-14'), '13:05');
  for (const none of [null, undefined, '', 'soon']) assert.equal(clockText(none, 12), '');
});

test('times follow the clock that the job names, else that of its units', () => {
  const shown = (tables) => clockOf({ tables: { ...tables, pour: { date: { $time: '2026-05-14' } } } })('2026-05-14T13:05-05:00');
  assert.equal(shown({}), '1:05 PM');
  assert.equal(shown({ units: 'si' }), '13:05');
  assert.equal(shown({ clock: 24 }), '13:05');
  assert.equal(shown({ units: 'si', clock: 12 }), '1:05 PM');
});

test('a start is read as the library reads it', () => {
  const starts = [
    ['07:30', '07:30'], ['7:30', '07:30'], ['7:30 AM', '07:30'], ['7:30pm', '19:30'], ['8 AM', '08:00'], ['12 AM', '00:00'], ['12:05 p.m.', '12:05'],
    ['9a', '09:00'], ['2026-05-15T07:00', '07:00'], ['2026-05-15 9 AM', '09:00'], ['2026-05-15T07:00:00-05:00', '07:00'], [{ $time: '13:45:00' }, '13:45'],
    ['7', '07:00'], [730, '07:30'], ['noon', '12:00'],
  ];
  for (const [start, read] of starts) assert.equal(startOf({ tables: { pour: { start } } }), read, JSON.stringify(start));
  for (const start of [undefined, '', '24', 'soon', '13 AM', '0 AM', '24:00', '7:5', '7:30 XM', 7.5]) assert.equal(startOf({ tables: { pour: { start } } }), undefined, String(start));
});

test('a color keeps the spelling of its key, and a new one has that of the units', () => {
  const put = (units, thing) => {
    setColour({ tables: { units } }, thing, 'red');
    return thing;
  };
  assert.deepEqual(put('us', { color: 'tan' }), { color: 'red' });
  assert.deepEqual(put('us', { colour: 'tan' }), { colour: 'red' });
  assert.deepEqual(put('si', { color: 'tan' }), { color: 'red' });
  assert.deepEqual(put(undefined, {}), { color: 'red' });
  assert.deepEqual(put('si', {}), { colour: 'red' });
  const wall = { color: 'light' };
  setColour({ tables: {} }, wall, ''); // as brick, which the file leaves out
  assert.deepEqual(wall, {});
  assert.equal(colourOf({ color: 'gray' }), 'grey');
  assert.equal(colourOf({ colour: 'tan' }), 'tan');
});

test('a mix is ordered by sacks and slump, by strength, or by w/cm: one of them', () => {
  const job = newJob();
  orderMixBy(job, 'slump');
  assert.deepEqual(job.tables.mix, { air: 6, strength: 4000, concrete_temperature: 70, slump: 4, sacks: 6 });
  assert.equal(waterOf(job.tables.mix), 'slump');
  orderMixBy(job, 'strength');
  assert.deepEqual(job.tables.mix, { air: 6, strength: 4000, concrete_temperature: 70, sacks: 6 });
  assert.equal(waterOf(job.tables.mix), 'strength');
  orderMixBy(job, 'w_cm');
  assert.equal(waterOf(job.tables.mix), 'w_cm');
  const given = { tables: { mix: { cement: 500, water_lb_yd3: 250, slump_in: 5 } } };
  assert.equal(waterOf(given.tables.mix), undefined);
  orderMixBy(given, 'slump');
  assert.deepEqual(given.tables.mix, { cement: 500, slump_in: 5 });
});

test('a figure is read in whichever unit its key says, and written once', () => {
  near(readFigure({ concrete_temperature_c: 20 }, 'concrete_temperature', 'us'), 68);
  near(readFigure({ strength_mpa: 27.6 }, 'strength', 'us'), 4003.04, 0.01); // 145.038 psi to the MPa
  near(readFigure({ wind_knots: 10 }, 'wind', 'si'), 5.14);
  near(readFigure({ wash_after_min: 90 }, 'wash_after', 'us'), 1.5);
  assert.equal(readFigure({ air: 6, air_share: 0.1 }, 'air', 'us'), 6);
  assert.equal(readFigure({}, 'air', 'us'), undefined);
  const mix = { concrete_temperature_c: 20, strength_margin: 600 };
  writeFigure(mix, 'concrete_temperature', 70);
  writeFigure(mix, 'strength', 4000);
  assert.deepEqual(mix, { strength_margin: 600, concrete_temperature: 70, strength: 4000 });
  writeFigure(mix, 'strength', undefined);
  assert.deepEqual(mix, { strength_margin: 600, concrete_temperature: 70 });
});

test('steps have concrete under their treads', () => {
  const job = newJob();
  addSlab(job, [[0, 0], [10, 0], [10, 8], [0, 8]]);
  addSteps(job, 0, 0, { rises: 3, width: 6, tread: 1, rise: 7 });
  assert.deepEqual(job.tables.zone[1].face.map((face) => face.tread), [12, 12]); // inches
  assert.deepEqual(job.tables.zone[0].face.map((face) => face.tread), [undefined]); // the slab's own edge
});

test('a cure-and-seal takes the place of curing and of a later sealer', () => {
  const job = newJob();
  job.tables.finish_work = { release: 'liquid', seal_after_days: 28 };
  sealBy(job, 'cure and seal');
  assert.deepEqual(job.tables.finish_work, { release: 'liquid', sealer: 'cure and seal' });
  assert.ok(!('curing' in job.tables.pour));
});

test('a slab cut in two keeps its footing once', () => {
  const job = newJob();
  addSlab(job, [[0, 0], [10, 0], [10, 8], [0, 8]]);
  job.tables.zone[0].extra_volume_yd3 = 0.4;
  splitZone(job, 0, [5, -1], [5, 9]);
  assert.deepEqual(job.tables.zone.map((zone) => zone.extra_volume_yd3), [0.4, undefined]);
});

test('the next pour is of the same people: their clock and the work after finishing stay', () => {
  const last = newJob();
  Object.assign(last.tables, { clock: 24, finish_work: { release: 'liquid' } });
  const { clock, finish_work: work } = newJob(last).tables;
  assert.deepEqual([clock, work], [24, { release: 'liquid' }]);
});

test('TOML: texts, moments, lists and tables', () => {
  const text = writeToml({
    name: 'a "b" \\ \n \u007f \u0001 \ud800', n: 1.5, yes: true, 'odd key': -2, list: [], at: { $time: '2026-05-14' }, bad: { $time: '1\n[x]' },
    site: { x: 1, inner: { y: 2 } }, zone: [{ border: { width: 1, finish: 'broom' }, face: [{ at: [1, 2] }] }], practice: { operation: { stamp: { opens_psi: 35 } } },
    gone: undefined, none: null,
  });
  assert.equal(text, `name = "a \\"b\\" \\\\ \\n \\u007f \\u0001 \ufffd"
n = 1.5
yes = true
"odd key" = -2
list = []
at = 2026-05-14

[bad]
"$time" = "1\\n[x]"

[site]
x = 1
inner = { y = 2 }

[[zone]]
border = { width = 1, finish = "broom" }

[[zone.face]]
at = [1, 2]

[practice]

[practice.operation]

[practice.operation.stamp]
opens_psi = 35
`);
});

test('a key that says its own unit is read in the unit asked for, and gives way when it is set', () => {
  near(readLength({ width_m: 3.048 }, 'width', 'ft'), 10);
  const zone = { outline_m: [[0, 0], [3.048, 0], [3.048, 3.048]] };
  near(readPoints(zone, 'outline', 'ft')[1][0], 10);
  writePoints(zone, 'outline', [[0, 0], [1, 0], [1, 1]]);
  assert.deepEqual(zone, { outline: [[0, 0], [1, 0], [1, 1]] });
});

test('steps lead out of the slab whichever way round it was drawn', () => {
  for (const outline of [[[0, 0], [10, 0], [10, 8], [0, 8]], [[0, 8], [10, 8], [10, 0], [0, 0]]]) {
    const job = newJob();
    addSlab(job, outline);
    const side = outline[0][1] === 0 ? 0 : 2; // the south side
    const steps = job.tables.zone[addSteps(job, 0, side, { rises: 3, width: 6, tread: 1, rise: 7 })];
    assert.equal(Math.min(...steps.outline.map(([, y]) => y)), -2);
    assert.equal(Math.max(...steps.outline.map(([, y]) => y)), 0);
    assert.equal(job.tables.zone[0].face.length + steps.face.length, 3);
    assert.ok(steps.face.every((face) => face.facing === 180 && face.length === 6));
  }
});

test('one riser needs no tread', () => {
  const job = newJob();
  addSlab(job, [[0, 0], [10, 0], [10, 8], [0, 8]]);
  assert.equal(addSteps(job, 0, 0, { rises: 1, width: 6, tread: 1, rise: 7 }), 0);
  assert.equal(job.tables.zone.length, 1);
});

test('a walk leaves the side of a slab squarely, at either end', () => {
  const job = newJob();
  addSlab(job, [[0, 0], [10, 0], [10, 8], [0, 8]]);
  const line = squaredEnds(job, [[5, 0], [5.5, -1], [9, -8]], 4);
  assert.deepEqual(line, [[5, 0], [5, -2], [9, -8]]);
  assert.deepEqual(squaredEnds(job, [[9, -8], [5.5, -1], [5, 0]], 4), [[9, -8], [5, -2], [5, 0]]);
  const apart = [[5, -1], [9, -8]];
  assert.deepEqual(squaredEnds(job, apart, 4), apart);
});

test('what names a zone follows it, or goes with it', () => {
  const job = newJob();
  addSlab(job, [[0, 0], [10, 0], [10, 8]]);
  addWalk(job, [[0, 0], [0, -10]]);
  Object.assign(job.tables.pour, { zone_order: ['walk', 'slab'], cover: [{ zones: ['slab'] }] });
  renameZone(job, 'slab', 'porch');
  assert.deepEqual(job.tables.pour.zone_order, ['walk', 'porch']);
  assert.deepEqual(job.tables.pour.cover[0].zones, ['porch']);
  removeZone(job, 1);
  assert.deepEqual(job.tables.pour.zone_order, ['porch']);
});

test('north turned all the way round changes nothing', () => {
  const job = newJob();
  addSlab(job, [[1, 2], [10, 2], [10, 8], [1, 8]]);
  addSteps(job, 0, 0, { rises: 2, width: 6, tread: 1, rise: 7 });
  const before = structuredClone(job.tables);
  for (const turn of [90, 180, 270, 360]) turnNorth(job, turn);
  assert.deepEqual(job.tables, before);
  turnNorth(job, 90); // north to the right of the sheet: what was below it looks east now
  assert.equal(job.tables.zone[0].face[0].facing, 90);
  near(pointsOf(job, job.tables.zone[0])[0][0], -2);
});

// W3C Device Orientation Event: alpha grows counterclockwise from north, and on iPhones
// webkitCompassHeading clockwise; Screen Orientation: an angle of 90 is a device turned
// counterclockwise, so that its right edge is up (from memory).
test('the heading of the top of the screen, however the device is held', () => {
  const lies = { beta: 3, gamma: -4, absolute: true };
  near(headingOf({ ...lies, alpha: 270 }, 0), 90);
  near(headingOf({ ...lies, alpha: 0 }, 0), 0);
  near(headingOf({ ...lies, alpha: 270 }, 90), 180);
  near(headingOf({ ...lies, alpha: 270 }, 270), 0);
  near(headingOf({ beta: 0, gamma: 0, alpha: 12, absolute: false, webkitCompassHeading: 350 }, 90), 80);
  assert.equal(headingOf({ ...lies, absolute: false, alpha: 270 }, 0), undefined);
  assert.equal(headingOf({ ...lies, alpha: null }, 0), undefined);
  assert.equal(headingOf({ ...lies, alpha: 270, beta: 70 }, 0), undefined);
  assert.deepEqual([0, 22, 23, 200, 350].map(windOf), ['north', 'north', 'northeast', 'south', 'north']);
});

test('a job never changed is given back as it came; texts of any name are told apart', () => {
  assert.equal(textOf(importedJob({ name: 'x' }, '# mine\nname = "x"\n')), '# mine\nname = "x"\n');
  const job = newJob();
  job.tables.weather = { forecast: 'job.toml' };
  job.forecast = { text: 'hours' };
  assert.match(textsOf(job)['job.toml'], /^name = /);
});

test('a file has comments, or signs in texts', () => {
  for (const text of ['# a', 'a = 1 # b', 'a = "x" # "', "a = '\\' # '", 'a = """\n""" # b']) assert.ok(hasComments(text), text);
  for (const text of ['', 'a = 1', 'a = "#1"', "a = '#1'", 'a = "\\"#1"', 'a = """\n# "x" \n"""', "a = '''\n# 'x' \n'''"]) assert.ok(!hasComments(text), text);
});

test('a file is named anew in its text, or left alone', () => {
  const named = (text) => withName(text, 'pad "2"');
  assert.equal(named('# top\nname = "a \\" # b" # mine\n[mix]\nname = "x"\n'), '# top\nname = "pad \\"2\\"" # mine\n[mix]\nname = "x"\n');
  assert.equal(named("units = 'us'\nname='it' # $& mine\n"), "units = 'us'\nname=\"pad \\\"2\\\"\" # $& mine\n");
  for (const text of ['', '[mix]\nname = "x"\n', 'name = """\na"""\n', "name = '''a'''\n", '# name = "x"\n', '"name" = "x"\n']) assert.equal(named(text), undefined, text);
});

test('the plane', () => {
  const square = [[0, 0], [2, 0], [2, 2], [0, 2]];
  assert.equal(area(square), 4);
  assert.equal(signedArea([...square].reverse()), -4);
  near(area(walkOutline([[0, 0], [10, 0], [10, 10]], 4)), 80, 1e-6);
  assert.deepEqual(simplify([[0, 0], [1, 0.01], [2, 0], [2, 2]], 0.1), [[0, 0], [2, 0], [2, 2]]);
  const bend = smooth([[0, 0], [5, 5], [10, 0]], 1);
  assert.deepEqual(bend[0], [0, 0]);
  assert.deepEqual(bend.at(-1), [10, 0]);
  assert.ok(bend.some(([x, y]) => x === 5 && y === 5));
  near(turned([1, 0], 90)[1], 1);
  // The sun in the south at 45 degrees: as long as the wall is high, to the north.
  const [east, north] = shadowShift(10, { elevation_deg: 45, azimuth_deg: 180 });
  near(east, 0, 1e-9);
  near(north, 10, 1e-9);
  assert.equal(shadowShift(10, { elevation_deg: -5, azimuth_deg: 0 }), undefined);
});

test('an alarm is for what opens since it was last asked, once', () => {
  const rows = [{ work: 'saw', opens: '2026-05-14T17:00:00-05:00' }, { work: 'broom', opens: '2026-05-14T10:58:00-05:00' }, { work: 'seal' }];
  const at = (clock) => Date.parse(`2026-05-14T${clock}-05:00`);
  const works = (from, to) => openedBetween(rows, at(from), at(to)).map((row) => row.work);
  assert.deepEqual(works('10:57:55', '10:58:05'), ['broom']);
  assert.deepEqual(works('10:58:00', '10:58:10'), []);
  assert.deepEqual(works('10:00:00', '18:00:00'), ['broom', 'saw']);
});
