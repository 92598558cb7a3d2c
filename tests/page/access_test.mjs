// Checked by axe-core: no serious or critical findings, light and dark, on a phone and a screen.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { close, demo, graveFindings, job, launch, makeSheet, openSheet, seeAs } from './support.mjs';

const sheets = {};
let browser;

before(async () => {
  browser = await launch();
  sheets.spring = makeSheet(demo('spring'));
  sheets.half_hour = makeSheet(job('half_hour'));
});
after(() => browser.close());

for (const name of ['spring', 'half_hour']) {
  test(`axe-core finds nothing grave, light on a phone and dark on a screen: ${name}`, async () => {
    const page = await openSheet(browser, sheets[name]);
    for (const [dark, width] of [[false, 360], [true, 1280]]) {
      await seeAs(page, { dark, width });
      assert.deepEqual(await graveFindings(page), [], `${width} px`);
    }
    await close(page);
  });
}

test('headings step down one at a time', async () => {
  const page = await openSheet(browser, sheets.spring);
  const levels = await page.locator('h1, h2, h3, h4').evaluateAll((headings) =>
    headings.map((heading) => Number(heading.tagName[1])));
  assert.equal(levels[0], 1);
  assert.equal(levels.filter((level) => level === 1).length, 1);
  levels.forEach((level, i) => assert.ok(i === 0 || level <= levels[i - 1] + 1, `heading ${i}`));
  await close(page);
});
