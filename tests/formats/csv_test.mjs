// node csv_test.mjs DAYS_DIR: reads the tables back with an independent reader (RFC 4180, section
// 2) and compares them with the JSON of the same day.
import assert from 'node:assert/strict';
import test from 'node:test';
import { daysIn, moment } from './program.mjs';
import { nastyNames } from './jobs.mjs';

const days = daysIn(process.argv[2]);

// RFC 4180: CRLF records, quotes doubled inside quotes; anything else is an error.
function parse(text) {
  const records = [[]];
  let at = 0;
  while (at < text.length) {
    let cell = '';
    if (text[at] === '"') {
      for (at += 1; text[at] !== '"' || text[at + 1] === '"'; at += 1) {
        assert.ok(at < text.length, 'a quoted cell is closed');
        if (text[at] === '"') at += 1;
        cell += text[at];
      }
      at += 1;
    } else {
      for (; at < text.length && text[at] !== ',' && text[at] !== '\r'; at += 1) {
        assert.notEqual(text[at], '"', 'a bare cell holds no quotation mark');
        assert.notEqual(text[at], '\n', 'records end with CRLF');
        cell += text[at];
      }
    }
    records.at(-1).push(cell);
    if (text[at] === ',') { at += 1; continue; }
    assert.equal(text.slice(at, at + 2), '\r\n');
    at += 2;
    records.push([]);
  }
  assert.deepEqual(records.pop(), [], 'the last record is ended');
  return records;
}

const utf8 = new TextDecoder('utf-8', { fatal: true, ignoreBOM: true });

const rowsOf = (csv) => {
  const text = utf8.decode(csv);
  assert.ok(text.startsWith('\ufeff'), 'a byte-order mark');
  const [heading, ...records] = parse(text.slice(1));
  return records.map((cells) => {
    assert.equal(cells.length, heading.length);
    return Object.fromEntries(heading.map((key, i) => [key, cells[i]]));
  });
};

// The work as it is called, so that no zone's name is taken for it.
const wordsOf = { strip: 'strip the form', first_edge: 'first edge', release: 'release agent', stamp: 'stamp',
  texture: 'texture', detail_edge: 'detail edge', tooled_joint: 'tooled joint', float: 'float', broom: 'broom',
  trowel: 'trowel', retard: 'surface retarder', salt: 'rock salt', expose: 'wash-off', saw_dry: 'early-entry saw', saw_wet: 'wet saw', walk: 'walk on it', wash: 'wash', seal: 'seal' };

const plain = (cell) => (cell.startsWith("'") ? cell.slice(1) : cell);

// The rows that the JSON requires.
function expected(json) {
  return json.zones.flatMap((zone) => {
    const row = (part, area) => (window) => ({ zone: zone.name, part, area, ...window });
    const own = zone.parts.length > 0 ? zone.parts : [{ ...zone, name: '' }];
    const saws = zone.windows.filter(({ operation }) => operation.startsWith('saw'));
    const field = zone.windows.filter(({ operation }) => !operation.startsWith('saw') && operation !== 'strip');
    return [
      ...own.flatMap((part) => (part.name === '' ? field : part.windows).map(
        row(part.name, part.name === '' ? null : part.area_m2))),
      ...(zone.border ? zone.border.windows.map(row('border', zone.border.area_m2)) : []),
      ...zone.faces.flatMap((face) => face.windows.map(row(face.name, ''))),
      ...saws.map(row('', zone.area_m2)),
    ];
  });
}

test('a row for each zone, part and operation, as in the JSON', () => {
  for (const { name, json, csv } of days) {
    const rows = rowsOf(csv);
    const wanted = expected(json);
    assert.equal(rows.length, wanted.length, name);
    rows.forEach((row, i) => {
      const want = wanted[i];
      assert.equal(plain(row.zone), want.zone, name);
      assert.equal(plain(row.part), want.part, name);
      assert.equal(row.operation, wordsOf[want.operation], name);
      assert.equal(plain(row.note), want.operation === 'strip' ? '' : want.note ?? '', name);
      for (const key of ['opens', 'open_all_over', 'closes']) assert.equal(row[key], want[key] ?? '', name);
      for (const [local, iso] of [
        ['opens_local', want.opens], ['all_over_local', want.open_all_over], ['closes_local', want.closes],
        ['opens_early', want.opens_band?.early], ['opens_late', want.opens_band?.late],
        ['closes_early', want.closes_band?.early], ['closes_late', want.closes_band?.late]]) {
        // The site's own date and hour, as a spreadsheet reads them.
        assert.equal(row[local], iso ? `${iso.slice(0, 10)} ${iso.slice(11, 16)}` : '', `${name}: ${local}`);
      }
      if (row.open_min !== '') {
        // The minutes were computed before the times were rounded to the minute: at most one apart.
        const between = (moment(want.closes) - moment(want.opens)) / 60000;
        assert.ok(Math.abs(between - Number(row.open_min)) <= 1, `${name}: ${row.open_min}, ${between}`);
      } else {
        assert.ok(want.opens == null || want.closes == null || want.closes <= want.opens, name);
      }
    });
  }
});

test('areas in the unit that the heading names', () => {
  const squareFoot = 0.3048 ** 2; // square metres, exact by definition of the foot
  for (const { name, json, csv } of days) {
    const rows = rowsOf(csv);
    expected(json).forEach(({ area }, i) => {
      const cell = rows[i].area_m2 ?? rows[i].area_ft2;
      if (area === '') return assert.equal(cell, '', name);
      if (area === null) return assert.ok(Number(cell) > 0, name); // of the field without its border
      const said = 'area_m2' in rows[i] ? Number(cell) : Number(cell) * squareFoot;
      // Both are rounded to a hundredth of their unit.
      assert.ok(Math.abs(said - area) < 0.0101, `${name}: ${said} and ${area}`);
    });
  }
  const unit = (day) => Object.keys(rowsOf(days.find(({ name }) => name === day).csv)[0])[3];
  assert.equal(unit('metric'), 'area_m2');
  assert.equal(unit('spring'), 'area_ft2');
});

test('no cell can be taken for a formula, and every name comes back', () => {
  const rows = rowsOf(days.find(({ name }) => name === 'nasty_names').csv);
  assert.deepEqual([...new Set(rows.map((row) => plain(row.zone)))], nastyNames);
  for (const { name, csv } of days) {
    for (const row of rowsOf(csv)) {
      for (const cell of Object.values(row)) {
        assert.doesNotMatch(cell, /^[\s\u00a0\u3000]*[=+\-@|\t\r\n\uff1d\uff0b\uff0d\uff20\uff5c]/, name);
      }
    }
  }
});
