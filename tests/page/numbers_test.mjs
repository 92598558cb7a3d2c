// Every time and number on the page, including as shown, is the one in the JSON.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { checkAll, itemsOf } from './numbers.mjs';
import { close, demo, job, launch, makeSheet, openSheet } from './support.mjs';

let browser;
before(async () => { browser = await launch(); });
after(() => browser.close());

const cases = [
  ['spring', demo('spring'), []],
  ['spring in metric', demo('spring'), ['--units', 'si']],
  ['hot', demo('hot'), []],
  ['without bands', demo('spring'), ['--draws', '0']],
  ['past midnight', job('midnight'), []],
  ['half an hour off', job('half_hour'), []],
  ['odd names', job('text'), []],
  ['too cold', job('cold'), []],
  ['quick', null, ['--place', '44.9,-91.9', '--date', '2026-05-14', '--start', '08:00',
                   '--thickness', '4', '--high', '71', '--low', '48', '--wind', '8'], 'quick'],
];

for (const [name, path, options, command] of cases) {
  test(`the page shows what the JSON says: ${name}`, async () => {
    const sheet = makeSheet(path, { options, command });
    const page = await openSheet(browser, sheet);
    const items = await itemsOf(page);
    await close(page);
    checkAll(items, sheet.json, sheet.json.job.date, name);
    const on = new Set(items.map((item) => item.json));
    for (const pointer of pointersToShow(sheet.json)) {
      assert.ok(on.has(pointer), `${name} ${pointer} is not on the page`);
    }
  });
}

// What a page must not leave out of the JSON: windows of the day, set times, trucks, crew,
// cautions.
function pointersToShow(json) {
  const wanted = [];
  const plastic = new Set(['first_edge', 'float', 'release', 'texture', 'stamp', 'broom', 'trowel',
                           'detail_edge', 'tooled_joint']);
  const want = (base, value, keys) => {
    for (const key of keys) if (value[key] != null) wanted.push(`${base}/${key}`);
  };
  json.zones.forEach((zone, z) => {
    const stretches = zone.parts.length > 0
      ? zone.parts.map((part, p) => [`/zones/${z}/parts/${p}`, part])
      : [[`/zones/${z}`, zone]];
    if (zone.border) stretches.push([`/zones/${z}/border`, zone.border]);
    for (const [base, part] of stretches) {
      want(base, part, ['sheen_gone', 'initial_set', 'final_set', 'peak_evaporation_kg_m2_h']);
      part.windows.forEach((window, w) => {
        const comes = window.opens != null && (window.closes == null || window.opens < window.closes);
        if (!plastic.has(window.operation) || !comes) return;
        want(`${base}/windows/${w}`, window, ['opens', 'open_all_over', 'closes']);
      });
    }
  });
  json.zones.forEach((zone, z) => zone.faces.forEach((face, f) => {
    want(`/zones/${z}/faces/${f}/windows/0`, face.windows[0], ['opens', 'closes']);
  }));
  json.trucks.forEach((truck, t) => want(`/trucks/${t}`, truck, ['sold_m3', 'batched', 'arrives', 'empty']));
  json.crew.forEach((member, m) => {
    want(`/crew/${m}`, member, ['arrives', 'leaves']);
    member.tasks.forEach((task, t) => want(`/crew/${m}/tasks/${t}`, task, ['start', 'end']));
  });
  json.cautions.forEach((caution, c) => want(`/cautions/${c}`, caution, ['at', 'text']));
  json.assumptions.forEach((_, a) => wanted.push(`/assumptions/${a}`));
  if (json.sureness) want('/sureness', json.sureness, ['either_way_min']);
  if (json.tightest) want('/tightest', json.tightest, ['opens', 'minutes']);
  return wanted;
}
