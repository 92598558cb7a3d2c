// What comes next, told by the clock of whoever looks.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { close, demo, launch, makeSheet, openSheet } from './support.mjs';

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
  assert.match(await box.innerText(), /in 5 min at .*pad: broom opens/);
  await close(page);
});

test('the minutes run down, and then the next comes up', async () => {
  const page = await openSheet(browser, sheet, { now: minutesAfter(opensFirst(), -5) });
  await page.clock.runFor(2 * 60 * 1000);
  assert.match(await page.locator('#next-up').innerText(), /in 3 min at .*pad: broom opens/);
  await page.clock.runFor(4 * 60 * 1000);
  assert.doesNotMatch(await page.locator('#next-up').innerText(), /pad: broom opens/);
  await close(page);
});

test('long before and long after the day it says nothing', async () => {
  for (const minutes of [-3 * 24 * 60, 3 * 24 * 60]) {
    const page = await openSheet(browser, sheet, { now: minutesAfter(opensFirst(), minutes) });
    assert.equal(await page.locator('#next-up').isVisible(), false);
    await close(page);
  }
});
