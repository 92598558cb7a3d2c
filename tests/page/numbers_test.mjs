// Every time and number on the page is the JSON's, as it is shown too.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { close, demo, job, launch, makeSheet, openSheet, plain, resolve } from './support.mjs';

// From the JSON's SI to what a page shows. Factors: exact definitions (NIST SP 811).
const shown = {
  '': (v) => v,
  'ft²': (v) => v / 0.3048 ** 2,
  'yd³': (v) => v / 0.9144 ** 3,
  in: (v) => v / 0.0254,
  ft: (v) => v / 0.3048,
  '°F': (v) => v * 1.8 + 32,
  'lb/ft²/h': (v) => (v / 0.45359237) * 0.3048 ** 2,
  mph: (v) => (v / 1609.344) * 3600,
  lb: (v) => v / 0.45359237,
  gal: (v) => v / 3.785411784,
  psi: (v) => v,
  '%': (v) => v * 100,
  mm: (v) => v * 1000,
  'm²': (v) => v, 'm³': (v) => v, m: (v) => v, '°C': (v) => v, 'kg/m²/h': (v) => v,
  kg: (v) => v, L: (v) => v, 'm/s': (v) => v, min: (v) => v, h: (v) => v,
};
const jsonStep = 0.01;  // what the JSON is rounded to
const weekdays = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];

function clockWords(iso, date) {
  const [day, clock] = [iso.slice(0, 10), iso.slice(11, 16)];
  if (day === date) return clock;
  return `${weekdays[new Date(`${day}T00:00Z`).getUTCDay()]} ${clock}`;
}

function checkFigure(item, value, where) {
  assert.equal(Number(item.value), value, where);
  const [, digits, unit] = /^(-?[\d.]+)\s*(.*)$/.exec(item.text) ?? [];
  assert.ok(unit in shown, `${where}: unit of "${item.text}"`);
  const expected = shown[unit](value);
  const fromJson = Math.abs(shown[unit](value + jsonStep / 2) - expected);
  if (/^\/supplies\/\d+\/amount_(kg|l|m2)$/.test(item.json)) {
    // What is to be brought is rounded up, so that it is enough.
    assert.ok(Number(digits) >= expected - fromJson && Number(digits) < expected + 1 + fromJson,
              `${where}: ${item.text}, JSON ${value}`);
    return;
  }
  const decimals = digits.includes('.') ? digits.split('.')[1].length : 0;
  const halfDigit = 0.5 * 10 ** -(unit === 'in' ? 2 : decimals);
  assert.ok(Math.abs(Number(digits) - expected) <= halfDigit + fromJson + 1e-9,
            `${where}: "${item.text}", JSON ${value}`);
}

async function itemsOf(page) {
  return page.locator('[data-json]').evaluateAll((elements) => elements.map((element) => ({
    tag: element.tagName.toLowerCase(),
    json: element.dataset.json,
    value: element.value,
    iso: element.getAttribute('datetime') ?? element.dataset.time,
    text: element.textContent,
  }))).then((items) => items.map((item) => ({ ...item, text: plain(item.text) })));
}

function checkAll(items, json, name) {
  const date = json.job.date;
  for (const item of items) {
    const value = resolve(json, item.json);
    const where = `${name} ${item.json}`;
    assert.ok(value !== undefined && value !== null, `${where} is not in the JSON`);
    if (item.iso !== undefined) {
      assert.equal(item.iso, value, where);
      assert.equal(item.text, clockWords(value, date), where);
    } else if (item.tag === 'data') {
      checkFigure(item, value, where);
    } else {
      assert.equal(item.text, value, where);
    }
  }
}

let browser;
before(async () => { browser = await launch(); });
after(() => browser.close());

const cases = [
  ['spring', demo('spring'), []],
  ['spring in metric', demo('spring'), ['--units', 'si']],
  ['hot', demo('hot'), []],
  ['past midnight', job('midnight'), []],
  ['half an hour off', job('half_hour'), []],
  ['odd names', job('text'), []],
  ['too cold', job('cold'), []],
];

for (const [name, path, options] of cases) {
  test(`the page shows what the JSON says: ${name}`, async () => {
    const sheet = makeSheet(path, { options });
    const page = await openSheet(browser, sheet);
    const items = await itemsOf(page);
    await close(page);
    checkAll(items, sheet.json, name);
    const on = new Set(items.map((item) => item.json));
    for (const pointer of pointersToShow(sheet.json)) {
      assert.ok(on.has(pointer), `${name} ${pointer} is not on the page`);
    }
  });
}

// Of the JSON what a page must not leave out: windows of the day, set times, trucks, crew,
// cautions.
function pointersToShow(json) {
  const wanted = [];
  const plastic = new Set(['first_edge', 'float', 'release', 'texture', 'stamp', 'broom', 'trowel',
                           'detail_edge', 'tooled_joint']);
  const want = (base, value, keys) => {
    for (const key of keys) if (value[key] !== null) wanted.push(`${base}/${key}`);
  };
  json.zones.forEach((zone, z) => {
    const stretches = zone.parts.length > 0
      ? zone.parts.map((part, p) => [`/zones/${z}/parts/${p}`, part])
      : [[`/zones/${z}`, zone]];
    if (zone.border) stretches.push([`/zones/${z}/border`, zone.border]);
    for (const [base, part] of stretches) {
      want(base, part, ['sheen_gone', 'initial_set', 'final_set', 'peak_evaporation_kg_m2_h']);
      part.windows.forEach((window, w) => {
        const comes = window.opens !== null && (window.closes === null || window.opens < window.closes);
        if (plastic.has(window.operation) && comes) {
          want(`${base}/windows/${w}`, window, ['opens', 'open_all_over', 'closes']);
        }
      });
    }
  });
  json.zones.forEach((zone, z) => zone.faces.forEach((face, f) => {
    want(`/zones/${z}/faces/${f}/windows/0`, face.windows[0], ['opens', 'closes']);
  }));
  json.trucks.forEach((truck, t) => want(`/trucks/${t}`, truck, ['volume_m3', 'batched', 'arrives', 'empty']));
  json.crew.forEach((member, m) => {
    want(`/crew/${m}`, member, ['arrives', 'leaves']);
    member.tasks.forEach((task, t) => want(`/crew/${m}/tasks/${t}`, task, ['start', 'end']));
  });
  json.cautions.forEach((caution, c) => want(`/cautions/${c}`, caution, ['at', 'text']));
  json.assumptions.forEach((_, a) => wanted.push(`/assumptions/${a}`));
  if (json.tightest) want('/tightest', json.tightest, ['opens', 'minutes']);
  return wanted;
}
