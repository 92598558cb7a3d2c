// The smaller pages, of `compare` and `outlook`, hold to the same as the plan's.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { checkAll, itemsOf } from './numbers.mjs';
import { close, graveFindings, job, launch, makeSheet, openSheet, pagesOf, printedWidth,
         sticking } from './support.mjs';

const mostPages = 6;
const sheets = {};
let browser;

before(async () => {
  browser = await launch();
  sheets.compare = makeSheet(job('text'), { command: 'compare' });
  sheets.outlook = makeSheet(job('text'), { command: 'outlook', json: false });
  // The outlook has no JSON of its own: what it points to is the plan's.
  sheets.outlook.json = makeSheet(job('text')).json;
});
after(() => browser.close());

for (const name of ['compare', 'outlook']) {
  test(`${name} opens alone and fits every width`, async () => {
    const page = await openSheet(browser, sheets[name]);
    for (const width of [360, 768, 1280]) {
      await page.setViewportSize({ width, height: 800 });
      assert.ok((await page.evaluate(() => document.documentElement.scrollWidth)) <= width);
      assert.deepEqual(await page.evaluate(sticking), [], `${width} px`);
    }
    assert.deepEqual(page.faults, []);
    await close(page);
  });

  test(`${name} shows what the JSON says`, async () => {
    const page = await openSheet(browser, sheets[name]);
    const items = await itemsOf(page);
    const { json } = sheets[name];
    assert.ok(items.length > 30);
    checkAll(items, json, json.job.start.slice(0, 10), name);
    await close(page);
  });

  test(`${name} has no grave finding of axe-core`, async () => {
    for (const dark of [false, true]) {
      const page = await openSheet(browser, sheets[name], { dark, width: 360 });
      assert.deepEqual(await graveFindings(page), []);
      await close(page);
    }
  });

  test(`${name} prints`, async () => {
    for (const paper of ['A4', 'Letter']) {
      const width = printedWidth(paper);
      const page = await openSheet(browser, sheets[name], { width });
      await page.emulateMedia({ media: 'print' });
      const scrolled = await page.locator('.scroller').evaluateAll((all) =>
        all.filter((one) => one.scrollWidth > one.clientWidth + 1).length);
      assert.equal(scrolled, 0, `${paper}: an area that scrolls is cut`);
      assert.ok(pagesOf(await page.pdf({ format: paper })) <= mostPages, paper);
      await close(page);
    }
  });
}

test('every choice of the JSON is on the page, the best marked', async () => {
  const page = await openSheet(browser, sheets.compare);
  const { json } = sheets.compare;
  assert.equal(await page.locator('table.choices tbody tr').count(), json.choices.length);
  const best = await page.locator('table.choices tr.main [data-json]').first().getAttribute('data-json');
  assert.equal(best, `/choices/${json.best}/choice`);
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
