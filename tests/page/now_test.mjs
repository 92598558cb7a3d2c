// What comes next, by the clock of the person looking at the page.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { close, demo, launch, makeSheet, openSheet, plain } from './support.mjs';

let browser;
let sheet;

before(async () => {
  browser = await launch();
  sheet = makeSheet(demo('spring'));
});
after(() => browser.close());

const minutesAfter = (iso, minutes) => new Date(Date.parse(iso) + minutes * 60000).toISOString();
const opensFirst = () => sheet.json.zones[2].windows.find((w) => w.operation === 'broom').opens;

test('before a window it tells the minutes to go', async () => {
  const page = await openSheet(browser, sheet, { now: minutesAfter(opensFirst(), -5) });
  const box = page.locator('#next-up');
  assert.ok(await box.isVisible());
  assert.match(plain(await box.innerText()), /in 5 min at .*pad: broom opens/);
  await close(page);
});

test('the minutes run down, and then the next comes up', async () => {
  const page = await openSheet(browser, sheet, { now: minutesAfter(opensFirst(), -5) });
  await page.clock.runFor(2 * 60 * 1000);
  assert.match(plain(await page.locator('#next-up').innerText()), /in 3 min at .*pad: broom opens/);
  await page.clock.runFor(4 * 60 * 1000);
  assert.doesNotMatch(plain(await page.locator('#next-up').innerText()), /pad: broom opens/);
  await close(page);
});

test('long before and long after the day it says nothing', async () => {
  for (const minutes of [-3 * 24 * 60, 3 * 24 * 60]) {
    const page = await openSheet(browser, sheet, { now: minutesAfter(opensFirst(), minutes) });
    assert.equal(await page.locator('#next-up').isVisible(), false);
    await close(page);
  }
});

// Where the line should be according to the drawing itself: a band's corners are at its JSON times.
async function placesOf(page) {
  return page.evaluate(() => {
    const day = document.querySelector('.day');
    const lanes = day.querySelector('.lanes').getBoundingClientRect();
    const line = day.querySelector('.now');
    return {
      from: Date.parse(day.dataset.from),
      to: Date.parse(day.dataset.to),
      left: lanes.left,
      width: lanes.width,
      shown: line.getClientRects().length > 0,
      x: line.getBoundingClientRect().left,
      words: line.textContent,
    };
  });
}

for (const [clock, width] of [['08:30', 1280], ['11:05', 800], ['18:11', 768]]) {
  test(`the now line stands at ${clock}, ${width} px`, async () => {
    const now = Date.parse(`2026-05-14T${clock}:00-05:00`);
    const page = await openSheet(browser, sheet, { now, width });
    const at = await placesOf(page);
    assert.ok(at.shown);
    assert.equal(at.words, 'now');
    const expected = at.left + (at.width * (now - at.from)) / (at.to - at.from);
    // The page's clock has moved on a little, and the line is 3 px wide.
    assert.ok(Math.abs(at.x - expected) < 1.5, `${at.x}, expected ${expected}`);
    assert.deepEqual(page.faults, []);
    await close(page);
  });
}

test('the line agrees with the bands: it stands at a window\'s opening when it opens', async () => {
  const { zones } = sheet.json;
  const w = zones[2].windows.findIndex((window) => window.operation === 'broom');
  const page = await openSheet(browser, sheet, { now: zones[2].windows[w].opens });
  const at = await placesOf(page);
  const corner = await page.locator(`.lanes [data-json="/zones/2/windows/${w}/opens"]`)
    .locator('xpath=ancestor::*[name()="g"]').locator('path').evaluate((path) =>
      path.getBoundingClientRect().left);
  assert.ok(Math.abs(at.x - corner) < 2.5, `${at.x}, the band at ${corner}`);
  await close(page);
});

test('the line moves on, and is gone outside the day', async () => {
  const page = await openSheet(browser, sheet, { now: '2026-05-14T11:00:00-05:00' });
  const before = await placesOf(page);
  await page.clock.runFor(60 * 60 * 1000);
  const after = await placesOf(page);
  const hour = (before.width * 3600000) / (before.to - before.from);
  assert.ok(Math.abs(after.x - before.x - hour) < 1.5);
  await close(page);
  for (const now of ['2026-05-14T05:00:00-05:00', '2026-05-15T05:00:00-05:00']) {
    const other = await openSheet(browser, sheet, { now });
    assert.equal((await placesOf(other)).shown, false, now);
    await close(other);
  }
});

// The agenda holds every work; while one is open, the box says so and for how long.
test('what is open now stands first, with the minutes left', async () => {
  const pad = sheet.json.zones[2];
  const broom = pad.windows.find((w) => w.operation === 'broom');
  const page = await openSheet(browser, sheet, { now: minutesAfter(broom.closes, -18), width: 360 });
  const words = plain(await page.locator('#next-up').innerText());
  assert.match(words, /^Open now:/);
  assert.match(words, /broom pad, 18 min left/);
  assert.ok(words.indexOf('broom pad') < words.indexOf('Next up'));
  await page.clock.runFor(18 * 60 * 1000);
  assert.doesNotMatch(plain(await page.locator('#next-up').innerText()), /broom pad/);
  await close(page);
});

test('every work of every zone is in the timeline', async () => {
  const page = await openSheet(browser, sheet);
  const items = (await page.locator('#agenda li').allInnerTexts()).map(plain);
  for (const zone of sheet.json.zones) {
    for (const part of zone.parts.length ? zone.parts : [zone]) {
      for (const { opens } of part.windows.filter((w) => w.opens && w.closes && w.closes > w.opens
        && ['first_edge', 'release', 'texture', 'stamp', 'float', 'broom', 'detail_edge'].includes(w.operation))) {
        assert.ok(items.some((item) => item.startsWith(opens.slice(11, 16)) && item.includes(zone.name)
          && / opens until /.test(item)), `${zone.name} ${opens}: ${items.join(' | ')}`);
      }
    }
  }
  await close(page);
});

test('what is past folds away', async () => {
  const page = await openSheet(browser, sheet, { now: opensFirst(), width: 360 });
  const all = sheet.json;
  assert.ok(await page.locator('.earlier li').count() > 0);
  const latest = await page.locator('.earlier li').evaluateAll((items) => Math.max(...items.map((item) =>
    Math.max(...[...item.querySelectorAll('time')].map((time) => Date.parse(time.dateTime))))));
  assert.ok(latest <= Date.parse(opensFirst()), all.job.name);
  assert.equal(await page.locator('.earlier li').first().isVisible(), false);
  await close(page);
});
