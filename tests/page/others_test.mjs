// The smaller pages, of `compare`, `days`, `outlook` and `check-back`, meet the same requirements as the
// plan's.
import assert from 'node:assert/strict';
import { copyFileSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { checkAll, itemsOf } from './numbers.mjs';
import { close, demo, graveFindings, job, launch, makeSheet, openSheet, pagesOf, printedWidth,
         seeAs, smallText, sticking, week } from './support.mjs';

// The demo job with a journal beside it: an hour and a half of observations, and a crack the next
// day.
const journal = [
  '2026-05-14 07:58 concrete 64 °F', '2026-05-14 08:10 placed walk',
  '2026-05-14 10:05 air 58 °F', '2026-05-14 10:06 wind 4 mph', '2026-05-14 10:07 humidity 50 %',
  '2026-05-14 10:10 sheen-gone walk', '2026-05-14 10:55 thumbprint landing',
  '2026-05-14 11:00 edge-held walk', '2026-05-14 11:30 thumbprint walk',
  '2026-05-14 12:10 no-dent walk', '2026-05-14 12:40 surface 81 °F landing',
  '2026-05-14 14:30 initial-set landing', '2026-05-15 07:00 crack walk'];

function finishedPour() {
  const folder = mkdtempSync(join(tmpdir(), 'slabtide-pour-'));
  process.on('exit', () => rmSync(folder, { recursive: true, force: true }));
  const path = join(folder, 'day.toml');
  copyFileSync(demo('spring'), path);
  writeFileSync(join(folder, 'day.journal'), `${journal.join('\n')}\n`);
  return path;
}

const mostPages = 6;
const sheets = {};
let browser;

function homeOf(item, json) {
  const [, day] = /^\/days\/(\d+)\//.exec(item.json) ?? [];
  return day === undefined ? json.job.start.slice(0, 10) : json.days[day].date;
}

before(async () => {
  browser = await launch();
  sheets.compare = makeSheet(job('text'), { command: 'compare' });
  sheets.days = makeSheet(job('text'),
    { command: 'days', options: ['--forecast', week, '--now', '2026-05-13T23:00Z'] });
  sheets.outlook = makeSheet(job('text'), { command: 'outlook', json: false });
  sheets['check-back'] = makeSheet(finishedPour(), { command: 'check-back' });
  // The outlook has no JSON of its own: its pointers refer to the plan's.
  sheets.outlook.json = makeSheet(job('text')).json;
});
after(() => browser.close());

for (const name of ['compare', 'days', 'outlook', 'check-back']) {
  test(`${name} opens alone and fits every width`, async () => {
    const page = await openSheet(browser, sheets[name]);
    for (const width of [360, 768, 1280]) {
      await page.setViewportSize({ width, height: 800 });
      assert.ok((await page.evaluate(() => document.documentElement.scrollWidth)) <= width);
      assert.deepEqual(await page.evaluate(sticking), [], `${width} px`);
    }
    await page.setViewportSize({ width: 360, height: 800 });
    assert.deepEqual(await page.evaluate(smallText), [], 'too small to read');
    assert.deepEqual(page.faults, []);
    await close(page);
  });

  test(`${name} shows what the JSON says`, async () => {
    const page = await openSheet(browser, sheets[name]);
    const items = await itemsOf(page);
    const { json } = sheets[name];
    assert.ok(items.length > 20);
    // A day's times are told as seen from it.
    for (const date of new Set(items.map((item) => homeOf(item, json)))) {
      checkAll(items.filter((item) => homeOf(item, json) === date), json, date, name);
    }
    await close(page);
  });

  test(`${name} has no grave finding of axe-core`, async () => {
    const page = await openSheet(browser, sheets[name]);
    for (const dark of [false, true]) {
      await seeAs(page, { dark, width: 360 });
      assert.deepEqual(await graveFindings(page), []);
    }
    await close(page);
  });

  test(`${name} prints`, async () => {
    const page = await openSheet(browser, sheets[name]);
    for (const paper of ['A4', 'Letter']) {
      const width = printedWidth(paper, { onItsSide: name === 'compare' });
      await seeAs(page, { width, media: 'print' });
      const scrolled = await page.locator('.scroller').evaluateAll((all) =>
        all.filter((one) => one.scrollWidth > one.clientWidth + 1).length);
      assert.equal(scrolled, 0, `${paper}: an area that scrolls is cut`);
      assert.ok(pagesOf(await page.pdf({ format: paper })) <= mostPages, paper);
    }
    await close(page);
  });
}

test('every choice of the JSON is on the page, the best marked', async () => {
  const page = await openSheet(browser, sheets.compare);
  const { json } = sheets.compare;
  assert.equal(await page.locator('table.choices tbody tr').count(), json.choices.length);
  const best = await page.locator('table.choices tr.main [data-json]').first().getAttribute('data-json');
  assert.equal(best, `/choices/${json.best}/choice`);
  const cells = await page.locator('table.choices tr').evaluateAll((rows) =>
    rows.map((row) => row.children.length));
  assert.deepEqual([...new Set(cells)].length, 1, 'each figure has its heading');
  await seeAs(page, { width: printedWidth('Letter', { onItsSide: true }), media: 'print' });
  const pt = await page.locator('table.choices td').first().evaluate((cell) =>
    0.75 * parseFloat(getComputedStyle(cell).fontSize));
  assert.ok(pt >= 8, `${pt} pt on paper`);
  const turned = (await page.pdf({ format: 'Letter' })).toString('latin1').match(/\[0 0 792 612\]/g);
  assert.ok(turned !== null, 'the table stands on a sheet laid on its side');
  await close(page);
});

test('every day of the JSON has a row and a section, and the one to choose is marked', async () => {
  const page = await openSheet(browser, sheets.days);
  const { json } = sheets.days;
  assert.equal(json.days.length, 7);
  assert.equal(await page.locator('table.days tbody tr').count(), 7);
  assert.equal(await page.locator('#behind ~ section.part').count(), 7);
  const best = await page.locator('table.days tr.main [data-json$="/start"]').getAttribute('data-json');
  assert.equal(best, `/days/${json.best}/start`);
  await close(page);
});

test('every hour has a row', async () => {
  const page = await openSheet(browser, sheets.outlook);
  const hours = await page.locator('table.hours tbody time').evaluateAll((times) =>
    times.map((time) => Date.parse(time.dateTime)));
  assert.ok(hours.length >= 12);
  hours.forEach((at, i) => assert.ok(i === 0 || at - hours[i - 1] === 3600 * 1000));
  await close(page);
});

test('every event has its bar, early to the left and late to the right of the stroke', async () => {
  const page = await openSheet(browser, sheets['check-back']);
  const events = sheets['check-back'].json.readings.filter((one) => one.late_min != null);
  const ends = await page.locator('table.events svg').evaluateAll((bars) => bars.map((bar) =>
    Number(bar.querySelector('circle').getAttribute('cx')) -
    Number(bar.querySelector('line').getAttribute('x1'))));
  assert.ok(events.some((one) => one.late_min < -3) && events.some((one) => one.late_min > 3));
  assert.equal(ends.length, events.length);
  events.forEach((one, i) => assert.ok(Math.sign(Math.round(ends[i] / 3)) === Math.sign(one.late_min)
                                       || Math.abs(one.late_min) < 3, `${one.reading}: ${ends[i]}`));
  await close(page);
});
