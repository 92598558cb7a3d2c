// node choices_test.mjs DAYS_DIR SCHEMA: the JSON of every comparison, including one with sampled
// days (the spring demo's), conforms to the schema, and the schema rejects what does not.
import assert from 'node:assert/strict';
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import test from 'node:test';
import { assertCaught, assertClosed, assertKeeps, assertNothingEmpty, assertOpen, validator } from './schema_checks.mjs';

const [folder, schema] = process.argv.slice(2);
const validate = validator(schema);
const read = (file) => JSON.parse(readFileSync(file, 'utf8'));
const files = readdirSync(folder).map((name) => join(folder, name, 'choices.json')).filter(existsSync);
const springs = join(folder, 'spring', 'choices.json');
const drawn = () => read(springs);

test('every comparison keeps to the schema', () => {
  assert.ok(files.length >= 4);
  for (const file of files) assertKeeps(validate, read(file), file);
});

test('a key more or a key less is caught wherever it is', () => {
  assertClosed(validate, drawn(), 'spring',
    ['daylight_left_min', 'first_window', 'last_finish', 'last_window', 'latest_saw', 'lost_day_share', 'risk', 'smallest_crew', 'takes']);
});

test('a reader survives a new member, and what is absent is left out', () => {
  assertOpen(schema, drawn());
  for (const file of files) assertNothingEmpty(read(file), file);
});

test('wrong values are caught', () => {
  assertCaught(validate, drawn, [
    (json) => { json.choices[0].kind = 'wish'; },
    (json) => { json.choices[0].start = null; },
    (json) => { json.choices[0].last_window = '2026-05-14T08:00'; },
    (json) => { json.choices[0].minutes_late = -1; },
    (json) => { json.choices[0].finishers = 0; },
    (json) => { json.choices[0].crew_h = '36'; },
    (json) => { json.choices = []; },
    (json) => { json.best = null; },
    (json) => { json.turning_point.turns_at_high_c = [null]; },
    (json) => { json.slabtide.schema = 2; },
  ]);
});

test('the best is one of the choices, and days are drawn where they are asked for', () => {
  for (const file of files) {
    const json = read(file);
    assert.ok(json.best < json.choices.length, file);
    assert.equal(json.choices[0].kind, 'as_ordered', file);
    assert.equal(json.days_drawn > 0, file === springs, file);
  }
});
