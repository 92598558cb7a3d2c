// node days_test.mjs DAYS_DIR SCHEMA: the JSON of every `days`, with and without sampled days,
// conforms to the schema, and the schema rejects what does not.
import assert from 'node:assert/strict';
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import { join } from 'node:path';
import test from 'node:test';
import { assertCaught, assertClosed, assertKeeps, assertNothingEmpty, assertOpen, validator } from './schema_checks.mjs';

const [folder, schema] = process.argv.slice(2);
const validate = validator(schema);
const read = (file) => JSON.parse(readFileSync(file, 'utf8'));
const files = readdirSync(folder).map((name) => join(folder, name, 'days.json')).filter(existsSync);
const springs = join(folder, 'spring', 'days.json');
const drawn = () => read(springs);

test('the days of every job keep to the schema', () => {
  assert.ok(files.length >= 3);
  for (const file of files) assertKeeps(validate, read(file), file);
});

test('a key more or a key less is caught wherever it is', () => {
  assertClosed(validate, drawn(), 'spring',
    ['age_h', 'at', 'finish_lost_share', 'from', 'issued', 'share', 'smallest_crew', 'zone']);
});

test('a reader survives a new member, and what is absent is left out', () => {
  assertOpen(schema, drawn());
  for (const file of files) assertNothingEmpty(read(file), file);
});

test('wrong values are caught', () => {
  assertCaught(validate, drawn, [
    (json) => { json.days[0].verdict.verdict = 'fine'; },
    (json) => { json.days[0].date = '14.5.2026'; },
    (json) => { json.days[0].start = null; },
    (json) => { json.days[0].call_off_by = '2026-05-14T08:00'; },
    (json) => { json.days[0].rain_before_set.chance = 40; },
    (json) => { json.days[0].finishers = 0; },
    (json) => { json.days[0].starts = []; },
    (json) => { json.days = []; },
    (json) => { json.best = null; },
    (json) => { json.slabtide.schema = 2; },
  ]);
});

test('days stand by date, each begins on its own, and the best is one of them', () => {
  for (const file of files) {
    const json = read(file);
    assert.ok(json.best < json.days.length, file);
    assert.equal(json.days.length, 7, file);
    json.days.forEach((day, i) => {
      assert.ok(i === 0 || day.date > json.days[i - 1].date, file);
      assert.equal(day.start.slice(0, 10), day.date, file);
      assert.ok(Date.parse(day.call_off_by) < Date.parse(day.first_batched), file);
      assert.ok(Date.parse(day.first_batched) < Date.parse(day.start), file);
      assert.ok(Date.parse(day.start) < Date.parse(day.set), file);
      assert.ok(day.starts.some((start) => start.at === day.start && start.verdict === day.verdict.verdict));
      assert.equal(day.days_drawn > 0, file === springs, file);
      assert.equal('finish_lost_share' in day, file === springs, file);
      assert.equal(day.cost?.likely > 0, file.includes('no_saw'), file); // the one that tells prices
    });
  }
});
