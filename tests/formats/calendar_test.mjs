// node calendar_test.mjs DAYS_DIR PROGRAM WORK_DIR: checks the calendars byte by byte (RFC 5545),
// then reads them back with ical.js and compares them with the JSON of the same day, then exports
// again.
import assert from 'node:assert/strict';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import test from 'node:test';
import { daysIn, moment, npm, plan } from './program.mjs';
import { nastyNames } from './jobs.mjs';

const [folder, program, work] = process.argv.slice(2);
const ICAL = npm('ical.js').default ?? npm('ical.js');
const days = daysIn(folder);

const events = (ics) => new ICAL.Component(ICAL.parse(ics.toString('utf8')))
  .getAllSubcomponents('vevent').map((component) => {
    const text = (name) => component.getFirstPropertyValue(name);
    const time = (name) => {
      const value = text(name);
      if (value === null) return null;
      assert.equal(value.zone.tzid, 'UTC');
      return value.toJSDate().getTime();
    };
    return {
      uid: text('uid'), summary: text('summary'), description: text('description'),
      category: text('categories'), status: text('status'), sequence: text('sequence'),
      stamp: time('dtstamp'), start: time('dtstart'), end: time('dtend'),
      alarms: component.getAllSubcomponents('valarm'),
    };
  });

test('lines of 75 octets at most, ended with CRLF, no character torn (RFC 5545, 3.1)', () => {
  const utf8 = new TextDecoder('utf-8', { fatal: true });
  let folded = 0;
  for (const { name, ics } of days) {
    const bytes = ics.toString('latin1');
    assert.ok(bytes.endsWith('\r\n'), name);
    for (const line of bytes.slice(0, -2).split('\r\n')) {
      assert.doesNotMatch(line, /[\x00-\x08\x0a-\x1f\x7f]/, name);
      assert.ok(line.length <= 75, `${name}: ${line.length} octets`);
      utf8.decode(Buffer.from(line, 'latin1'));
      folded += line.startsWith(' ') ? 1 : 0;
    }
  }
  assert.ok(folded > 100);
});

const both = days.flatMap(({ name, json, ics, short }) => [{ name, json, ics }, { name, json, ics: short }]);

test('a calendar of its own kind, its events whole, each with an alarm', () => {
  for (const { name, json, ics } of both) {
    const calendar = new ICAL.Component(ICAL.parse(ics.toString('utf8')));
    assert.equal(calendar.getFirstPropertyValue('version'), '2.0');
    assert.match(calendar.getFirstPropertyValue('prodid'), /Slabtide/);
    // ical.js does not know NAME (RFC 7986) and leaves its text escaped.
    for (const property of ['name', 'x-wr-calname']) {
      assert.equal(calendar.getFirstPropertyValue(property).replace(/\\(.)/g, '$1'),
        json.job.name ?? json.job.site);
    }
    // RFC 5546, 3.2.1: what is published has an organizer in every event.
    assert.equal(calendar.getFirstPropertyValue('method'), 'PUBLISH');
    for (const component of calendar.getAllSubcomponents('vevent')) {
      assert.match(component.getFirstPropertyValue('organizer'), /^urn:uuid:[0-9a-f-]{36}$/);
    }
    const all = events(ics);
    assert.ok(all.length > 0, name);
    assert.equal(new Set(all.map(({ uid }) => uid)).size, all.length, `${name}: UIDs`);
    for (const event of all) {
      assert.match(event.uid, /^[0-9a-f]{8}-[0-9a-f]{4}-5[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
      assert.equal(event.status, 'CONFIRMED');
      assert.ok(event.end === null || event.end > event.start, name);
      const [alarm, ...more] = event.alarms;
      assert.equal(more.length, event.category === 'finish' && event.end !== null ? 1 : 0);
      for (const lastCall of more) {
        const trigger = lastCall.getFirstProperty('trigger');
        assert.equal(trigger.getParameter('related'), 'END');
        assert.equal(trigger.getFirstValue().toSeconds(), -600);
      }
      assert.equal(alarm.getFirstPropertyValue('action'), 'DISPLAY');
      assert.equal(alarm.getFirstPropertyValue('description'), event.summary);
      const before = alarm.getFirstPropertyValue('trigger').toSeconds();
      assert.equal(before, event.category === 'crew' ? -3600 : -900);
    }
  }
});

// The events that the JSON requires: the category, the times, and the end of the summary.
function expected(json) {
  const wanted = [];
  const want = (category, start, end, ending) => {
    if (start == null) return;
    const [from, to] = [moment(start), moment(end)];
    wanted.push({ category, start: from, end: to !== null && to > from ? to : null, ending });
  };
  for (const truck of json.trucks) want('truck', truck.arrives, truck.empty, truck.zones.map(({ zone }) => zone).join(', '));
  for (const person of json.crew) {
    want('crew', person.arrives, person.leaves, `${person.name} on site`);
    for (const visit of person.returns) want('crew', visit.arrives, visit.leaves, `${person.name} on site`);
  }
  const later = ['walk', 'wash', 'seal'];
  const elsewhere = ['strip', 'saw_dry', 'saw_wet', ...later];
  for (const zone of json.zones) {
    const own = (windows, words) => {
      for (const window of windows) {
        if (!elsewhere.includes(window.operation)) want('window', window.opens, window.closes, `: ${words}`);
      }
    };
    if (zone.parts.length === 0) own(zone.windows, zone.name);
    for (const part of zone.parts) own(part.windows, `${zone.name}, ${part.name}`);
    if (zone.border) own(zone.border.windows, `${zone.name}, border`);
    for (const face of zone.faces) {
      for (const window of face.windows) want('window', window.opens, window.closes, `: ${zone.name}, ${face.name}`);
    }
    for (const window of zone.windows) {
      if (later.includes(window.operation)) want('window', window.open_all_over, null, `: ${zone.name}`);
    }
    const { way, tooled } = zone.joints;
    for (const cut of json.saw) {
      if (cut.zone !== zone.name || cut.operation !== way) continue;
      want('saw', cut.starts, new Date(moment(cut.starts) + cut.minutes * 60000).toISOString(), `cut ${cut.number}: ${zone.name}`);
    }
    const hasOwn = zone.windows.some(({ operation }) => operation === 'tooled_joint');
    if (way === 'tooled_joint' && !hasOwn) want('window', tooled.opens, tooled.closes, `: ${zone.name}`);
  }
  return wanted;
}

test('the same things at the same times as in the JSON, and nothing else', () => {
  let compared = 0;
  for (const { name, json, ics } of days.filter((day) => day.name !== 'quick')) { // always in short
    const left = events(ics);
    for (const { category, start, end, ending } of expected(json)) {
      // The JSON rounds both a cut's minutes and its start, so its end may be off by a minute.
      const slack = category === 'saw' ? 60000 : 0;
      const found = left.findIndex((event) => event.category === category && event.start === start &&
        Math.abs((event.end ?? event.start) - (end ?? start)) <= slack && event.summary.endsWith(ending));
      assert.ok(found >= 0, `${name}: ${category} ${new Date(start).toISOString()} ${ending}`);
      left.splice(found, 1);
      compared += 1;
    }
    assert.deepEqual(left.map(({ summary }) => summary), [], name);
  }
  assert.ok(compared > 500, `${compared} events compared`);
});

// What the short calendar is to hold: the loads, each zone's finish, the wash-off of exposed
// aggregate, which cannot wait, each saw's run.
const mains = { stamp: 'stamp', 'texture roll': 'texture', broom: 'broom', float: 'float', trowel: 'trowel',
  'exposed aggregate': 'retard', salt: 'salt' };

function expectedShort(json) {
  const wanted = json.trucks.map((truck) => ['truck', moment(truck.arrives), moment(truck.empty)]);
  for (const zone of json.zones) {
    const own = zone.parts.length > 0 ? zone.parts : [zone];
    const windows = own.flatMap((part) => part.windows.filter((one) => one.operation === mains[zone.finish] && one.opens));
    if (windows.length > 0) {
      const ends = windows.filter((one) => one.closes).map((one) => moment(one.closes));
      wanted.push(['finish', Math.min(...windows.map((one) => moment(one.opens))), ends.length > 0 ? Math.max(...ends) : null]);
    }
    for (const one of zone.windows.filter(({ operation, opens }) => operation === 'expose' && opens)) wanted.push(['window', moment(one.opens), undefined]);
  }
  for (const way of ['saw_dry', 'saw_wet']) {
    const cuts = json.saw.filter((cut) => cut.operation === way && cut.starts &&
      json.zones.find((zone) => zone.name === cut.zone).joints.way === way);
    if (cuts.length > 0) wanted.push(['saw', Math.min(...cuts.map((cut) => moment(cut.starts))), undefined]);
  }
  return wanted.map(([category, start, end]) => ({ category, start, end: end > start ? end : end === undefined ? end : null }));
}

test('in short: the loads, a finish a zone, a wash-off, a run a saw, and nothing else', () => {
  let runs = 0;
  for (const { name, json, short } of days) {
    const found = events(short);
    const wanted = expectedShort(json);
    assert.deepEqual(found.map(({ category, start }) => [category, start]), wanted.map(({ category, start }) => [category, start]), name);
    wanted.forEach(({ end }, i) => { if (end !== undefined) assert.equal(found[i].end, end, name); });
    runs += found.filter(({ category }) => category === 'saw').length;
    const washedOff = found.filter(({ category }) => category === 'window').length;
    assert.ok(found.length - washedOff <= json.trucks.length + json.zones.length + 2, name);
  }
  assert.ok(runs > 3, `${runs} saw runs`);
});

test("one finisher's day: the arrivals, and the work that is the finisher's", () => {
  const { json } = days.find(({ name }) => name === 'spring');
  for (const person of json.crew) {
    const found = events(again(spring, '2026-05-13T18:00Z', null, ['--for', person.name]));
    const arrivals = found.filter(({ category }) => category === 'crew');
    assert.equal(arrivals.length, 1 + person.returns.length);
    assert.ok(arrivals.every(({ summary }) => summary === `${person.name} on site`));
    for (const { summary } of found.filter(({ category }) => category === 'finish')) {
      const [work, zone] = summary.split(': ');
      assert.ok(person.tasks.some((task) => task.zone === zone && task.task === work), summary);
    }
  }
  assert.throws(() => again(spring, '2026-05-13T18:00Z', null, ['--for', 'nobody']), /there is no 'nobody' on the crew/);
});

test('names are shown as written', () => {
  const all = events(days.find(({ name }) => name === 'nasty_names').ics);
  for (const name of nastyNames) {
    assert.ok(all.some(({ summary }) => summary === `stamp: ${name}` || summary.startsWith(`stamp: ${name}, `)), name);
  }
});

// A second export of a job, in its own folder; `before` is the file it finds there.
function again(text, now, before, options = []) {
  rmSync(work, { recursive: true, force: true });
  mkdirSync(work, { recursive: true });
  writeFileSync(join(work, 'job.toml'), text);
  if (before) writeFileSync(join(work, 'day.ics'), before);
  plan(program, work, ['--draws', '0', '--write', 'day.ics', '--detail', '--now', now, ...options]);
  return readFileSync(join(work, 'day.ics'));
}

const first = days.find(({ name }) => name === 'spring').ics;
const spring = readFileSync(join(folder, 'spring', 'job.toml'), 'utf8');
const warmer = spring.replace('high = 66', 'high = 74');
const byUid = (ics) => new Map(events(ics).map((event) => [event.uid, event]));
const shown = ({ sequence, stamp, alarms, ...event }) => event;

test('the same plan again, later, is the same file', () => {
  assert.deepEqual(again(spring, '2026-05-14T05:00Z', first), first);
});

test('other weather moves the events: same UIDs, SEQUENCE up where something changed', () => {
  const [old, now] = [byUid(first), byUid(again(warmer, '2026-05-13T18:05Z', first))];
  let changed = 0;
  let same = 0;
  for (const [uid, event] of old) {
    const next = now.get(uid);
    assert.ok(next, `${event.summary} is carried on`);
    if (next.status === 'CONFIRMED' && JSON.stringify(shown(next)) === JSON.stringify(shown(event))) {
      assert.equal(next.sequence, event.sequence);
      assert.equal(next.stamp, event.stamp);
      same += 1;
    } else {
      assert.ok(next.sequence > event.sequence, event.summary);
      assert.equal(next.stamp, moment('2026-05-13T18:05Z'));
      changed += 1;
    }
  }
  assert.ok(changed > 20 && same > 0, `${changed} changed, ${same} the same`);
});

test('SEQUENCE rises beside an older file even where the clock has gone back', () => {
  const [old, now] = [byUid(first), byUid(again(warmer, '2020-01-01T00:00Z', first))];
  for (const [uid, event] of old) {
    const next = now.get(uid);
    if (JSON.stringify(shown(next)) !== JSON.stringify(shown(event))) {
      assert.equal(next.sequence, event.sequence + 1);
    }
  }
});

test('SEQUENCE rises where the older file is gone', () => {
  const [old, now] = [byUid(first), byUid(again(warmer, '2026-05-13T18:01Z'))];
  for (const [uid, event] of old) {
    if (now.has(uid)) assert.ok(now.get(uid).sequence > event.sequence);
  }
});

const withoutPad = spring.slice(0, spring.lastIndexOf('# 14 x 12 ft in the open')) +
  spring.slice(spring.indexOf('[[obstacle]]'));

test('what is no longer planned is called off, and comes back', () => {
  const smaller = again(withoutPad.replace(', "pad"]', ']'), '2026-05-13T18:05Z', first);
  const isPad = ({ summary }) => summary.endsWith(': pad');
  const gone = events(smaller).filter(isPad);
  assert.ok(gone.length > 5);
  for (const event of gone) {
    assert.equal(event.status, 'CANCELLED');
    assert.equal(event.alarms.length, 0);
    assert.ok(event.sequence > byUid(first).get(event.uid).sequence);
  }
  const still = again(withoutPad.replace(', "pad"]', ']'), '2026-05-13T18:06Z', smaller);
  assert.deepEqual(still, smaller);
  const back = events(again(spring, '2026-05-13T18:07Z', smaller)).filter(isPad);
  assert.equal(back.length, gone.length);
  for (const event of back) {
    assert.equal(event.status, 'CONFIRMED');
    assert.ok(event.sequence > byUid(smaller).get(event.uid).sequence);
  }
});

test("another job's file is replaced", () => {
  const other = days.find(({ name }) => name === 'one_zone').ics;
  assert.deepEqual(again(spring, '2026-05-13T18:00Z', other), again(spring, '2026-05-13T18:00Z'));
});

test("another program's file is left as it is, unless --force says otherwise", () => {
  const fresh = again(spring, '2026-05-13T18:00Z');
  const foreign = first.toString().replace(/PRODID:.*/, 'PRODID:-//Somebody//Else//EN');
  for (const before of [foreign, 'not a calendar\n', Buffer.from([0xff, 0x00, 0x0a])]) {
    assert.throws(() => again(spring, '2026-05-13T18:00Z', before), /cannot write "day\.ics"/);
    assert.deepEqual(readFileSync(join(work, 'day.ics')), Buffer.from(before));
    assert.deepEqual(again(spring, '2026-05-13T18:00Z', before, ['--force']), fresh);
  }
});

test('an older file cut short anywhere does no harm', () => {
  const text = readFileSync(join(folder, 'one_zone', 'job.toml'), 'utf8');
  const whole = days.find(({ name }) => name === 'one_zone').ics;
  for (let length = 0; length < whole.length; length += 613) {
    const now = again(text, '2026-05-13T18:05Z', whole.subarray(0, length));
    assert.ok(events(now).every(({ sequence }) => Number.isInteger(sequence)));
  }
});
