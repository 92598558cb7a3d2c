// node schema_test.mjs DAYS_DIR SCHEMA: the JSON of every day conforms to the schema, and the
// schema rejects what does not.
import assert from 'node:assert/strict';
import test from 'node:test';
import { daysIn } from './program.mjs';
import { nastyNames } from './jobs.mjs';
import { assertCaught, assertClosed, assertKeeps, assertNothingEmpty, assertOpen, validator } from './schema_checks.mjs';

const [folder, schema] = process.argv.slice(2);
const validate = validator(schema);
const days = daysIn(folder);
const day = (name) => structuredClone(days.find((each) => each.name === name).json);

test('every day keeps to the schema', () => {
  assert.ok(days.length >= 12);
  for (const { name, json } of days) assertKeeps(validate, json, name);
});

// What a day may do without, such as a time that does not come.
const mayBeAbsent = [
  'age_h', 'at', 'border', 'closes', 'closes_band', 'crew_summary', 'crust_at', 'depth_m', 'due', 'early',
  'early_sheen_at', 'either_way_min', 'facing_deg', 'final_set', 'final_set_band', 'initial_set',
  'initial_set_band', 'issued', 'late_chance', 'latest', 'latest_band', 'likely', 'made_at', 'minutes',
  'note', 'open_all_over', 'open_all_over_band', 'opens', 'opens_band', 'part', 'part_id', 'piece', 'pieces',
  'sawing', 'sheen_gone', 'sheen_gone_band', 'smallest_crew', 'starts', 'stress_late', 'stress_limit',
  'sunrise', 'sunset', 'sureness', 'surface_limit', 'tightest', 'tooled', 'working_order', 'zone', 'late', 'name',
];

test('a key more or a key less is caught wherever it is', () => {
  for (const name of ['spring', 'parts']) {
    assertClosed(validate, day(name), name, mayBeAbsent);
  }
});

test('a reader survives a new member', () => assertOpen(schema, day('spring')));

test('what is absent is left out', () => {
  for (const { name, json } of days) assertNothingEmpty(json, name);
});

test('wrong values are caught', () => {
  assertCaught(validate, () => day('spring'), [
    (json) => { json.zones[0].windows[0].operation = 'stomp'; },
    (json) => { json.zones[0].windows[0].opens = '2026-05-14T08:00'; },
    (json) => { json.zones[0].windows[0].opens = '2026-05-14T08:00-05:00'; },
    (json) => { json.zones[0].windows[0].opens = null; },
    (json) => { json.zones[0].placed.start = null; },
    (json) => { json.zones[0].sunlit_share = 1.5; },
    (json) => { json.zones[0].area_m2 = '15.6'; },
    (json) => { json.saw[0].from_m = [1, 2, 3]; },
    (json) => { json.supplies[0].amount_kg = 3; },
    (json) => { json.cautions[0].level = 'warning'; },
    (json) => { json.slabtide.schema = 2; },
    (json) => { json.zones = []; },
  ]);
});

test('names are there as written', () => {
  assert.deepEqual(day('nasty_names').zones.map((zone) => zone.name), nastyNames);
});

test('what each job was made for is in its day', () => {
  assert.equal(day('one_zone').zones.length, 1);
  assert.equal(day('forty_zones').zones.length, 40);
  assert.match(day('half_hour').job.start, /\+05:30$/);
  assert.ok(day('parts').zones[0].parts.length > 1);
  assert.ok(day('past_midnight').zones[0].initial_set.startsWith('2026-05-15T'));
  assert.equal(day('far_north').weather.sunset, undefined);
  assert.equal(day('quick').crew_summary, undefined);
});

test("a zone's windows hold its forms and its saws", () => {
  for (const { name, json } of days) {
    for (const zone of json.zones) {
      const of = (...ids) => zone.windows.filter(({ operation }) => ids.includes(operation));
      const times = ({ operation, opens, open_all_over, closes }) => [operation, opens, open_all_over, closes];
      assert.deepEqual(of('strip').map(times), zone.faces.flatMap((face) => face.windows).map(times), name);
      assert.deepEqual(of('saw_dry', 'saw_wet').map(times),
        zone.saw_windows.map((saw) => times({ ...saw, closes: saw.latest })), name);
    }
  }
});
