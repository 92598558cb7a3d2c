// The readiness map responds to the choice of an operation and to the hour, by mouse and by
// keyboard, and what it shows agrees with the day's JSON.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { close, demo, job, launch, makeSheet, openSheet } from './support.mjs';

let spring;
let browser;

before(async () => {
  browser = await launch();
  spring = makeSheet(demo('spring'));
});
after(() => browser.close());

const choose = (page, id) => page.locator(`[name=map-choice][value=${id}]`).check();
const setHour = (page, k) => page.locator('#map-hour').evaluate((slider, value) => {
  slider.value = String(value);
  slider.dispatchEvent(new Event('input', { bubbles: true }));
}, k);
const shownMap = (page) => page.locator('.map-figure[data-choice]:visible').evaluateAll((all) =>
  all.map((one) => one.dataset.choice));
// How many cells of a zone are in each state.
const states = (page, zone) => page.locator('.hour-zone').nth(zone).evaluate((group) => {
  const count = {};
  for (const path of group.querySelectorAll('path')) {
    const state = path.getAttribute('class');
    count[state] = (count[state] ?? 0) + 1;
  }
  return count;
});
// The quarter hour of the slider that contains a clock time of the day, and the next.
const quarters = async (page, iso) => {
  const start = await page.locator('.plan-hour').getAttribute('data-start');
  const at = (Date.parse(iso) - Date.parse(start)) / 900000;
  return [Math.floor(at), Math.ceil(at)];
};
const windowOf = (part, operation) => part.windows.find((one) => one.operation === operation);

test('one map shows, and another when another operation is chosen', async () => {
  const page = await openSheet(browser, spring);
  assert.deepEqual(await shownMap(page), ['finish']);
  const before = await page.locator('.map-figure[data-choice]:visible svg').first().innerHTML();
  await choose(page, 'detail_edge');
  assert.deepEqual(await shownMap(page), ['detail_edge']);
  const after_ = await page.locator('.map-figure[data-choice]:visible svg').first().innerHTML();
  assert.notEqual(before, after_);
  await choose(page, 'stamp');
  // Only the landing is stamped, and not its border.
  assert.deepEqual(Object.keys(await states(page, 1)), ['idle']);
  assert.deepEqual(Object.keys(await states(page, 2)), ['idle']);
  assert.deepEqual(page.faults, []);
  await close(page);
});

test('the hour shows what the day\'s JSON says of it', async () => {
  const page = await openSheet(browser, spring);
  const pad = spring.json.zones.findIndex((zone) => zone.name === 'pad');
  const broom = windowOf(spring.json.zones[pad], 'broom');
  await choose(page, 'broom');
  const [before] = await quarters(page, broom.opens);
  const [, ready] = await quarters(page, broom.open_all_over);
  await setHour(page, before - 1);
  assert.deepEqual(Object.keys(await states(page, pad)), ['soon']);
  await setHour(page, ready);
  assert.deepEqual(Object.keys(await states(page, pad)), ['ready']);
  assert.match(await page.locator('#map-says').innerText(), /ready \((landing, )?pad\)/);
  // An hour after it begins to close all of the pad is too stiff, because it is all of one age.
  const [, closed] = await quarters(page, broom.closes);
  await setHour(page, closed + 4);
  assert.deepEqual(Object.keys(await states(page, pad)), ['stiff']);
  // While the landing is being placed the pad is not there yet.
  await setHour(page, 0);
  assert.deepEqual(Object.keys(await states(page, pad)), ['wait']);
  await close(page);
});

test('shade moves over the plan with the hour, and night covers it', async () => {
  const page = await openSheet(browser, spring);
  const shade = () => page.locator('.hour-shade').innerHTML();
  const clock = () => page.locator('#map-clock').innerText();
  await setHour(page, 2);
  const morning = await shade();
  assert.equal(await clock(), '08:30');
  await setHour(page, 32);
  assert.equal(await clock(), '16:00');
  assert.notEqual(await shade(), morning);
  // The house is east of everything: in the morning its shade is to the west, over the landing, and
  // in the afternoon to the east.
  const reach = (markup) => {
    const house = /d="M([^"]*)z"/.exec(markup)[1].split('L').map((one) => Number(one.split(' ')[0]));
    return Math.max(house[2], house[3]) - house[0];
  };
  assert.ok(reach(morning) < -50, 'the morning shade lies west of the house');
  assert.ok(reach(await shade()) > 10, 'the afternoon shade lies east of it');
  await close(page);
  const late = makeSheet(job('midnight'));
  const night = await openSheet(browser, late);
  const last = await night.locator('#map-hour').getAttribute('max');
  const shadows = (await night.locator('.plan-hour').getAttribute('data-shadows')).split(',');
  assert.equal(shadows.length, Number(last) + 1);
  await setHour(night, shadows.indexOf('-'));
  assert.equal(await night.locator('.hour-shade .dark').count(), 1);
  assert.match(await night.locator('#map-says').innerText(), /The sun is down/);
  await close(night);
});

test('all of it answers to the keyboard', async () => {
  const page = await openSheet(browser, spring);
  await page.locator('[name=map-choice]:checked').focus();
  await page.keyboard.press('ArrowRight');
  assert.deepEqual(await shownMap(page), ['first_edge']);
  const slider = page.locator('#map-hour');
  const before = await slider.getAttribute('aria-valuetext');
  await slider.focus();
  await page.keyboard.press('ArrowRight');
  assert.notEqual(await slider.getAttribute('aria-valuetext'), before);
  await page.keyboard.press('Home');
  assert.equal(await slider.getAttribute('aria-valuetext'), '08:00');
  assert.equal(await page.locator('#map-clock').innerText(), '08:00');
  const summary = page.locator('.map-figure:visible summary').first();
  await summary.focus();
  await page.keyboard.press('Enter');
  assert.ok(await page.locator('.map-figure:visible table').first().isVisible());
  await close(page);
});

test('on the day it opens at the hour it is', async () => {
  const page = await openSheet(browser, spring, { now: new Date('2026-05-14T11:20:00-05:00') });
  assert.equal(await page.locator('#map-clock').innerText(), '11:15');
  await close(page);
});

test('without script every map shows, and nothing that would not answer', async () => {
  const page = await openSheet(browser, spring, { script: false });
  const all = await page.locator('.map-figure[data-choice]').count();
  assert.ok(all >= 9);
  assert.equal(await page.locator('.map-figure[data-choice]:visible').count(), all);
  assert.equal(await page.locator('.map-controls:visible, .map-hour:visible').count(), 0);
  await close(page);
});

test('cuts are numbered on the plan as in the JSON', async () => {
  const page = await openSheet(browser, spring);
  const dry = spring.json.saw.filter((cut) => cut.operation === 'saw_dry');
  const figure = page.locator('#saw figure').first();
  const numbers = await figure.locator('.cut-number text').allTextContents();
  assert.deepEqual(numbers.map(Number).sort((a, b) => a - b), dry.map((_, i) => i + 1));
  const zones = await figure.locator('tbody tr td:nth-child(2)').allInnerTexts();
  assert.deepEqual(zones, dry.map((cut) => cut.zone));
  await close(page);
});
