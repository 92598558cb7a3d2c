// Nothing extends beyond the sides of a phone, a tablet, a screen or a sheet of paper.
import assert from 'node:assert/strict';
import { writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { writeManyZones } from './many_zones.mjs';
import { close, demo, job, launch, makeSheet, openSheet, pagesOf, printedWidth, seeAs,
         smallText, sticking } from './support.mjs';

const sheets = {};
let browser;

before(async () => {
  browser = await launch();
  for (const name of ['spring', 'hot']) sheets[name] = makeSheet(demo(name));
  for (const name of ['midnight', 'half_hour', 'text', 'cold']) sheets[name] = makeSheet(job(name));
  const many = join(tmpdir(), `slabtide-forty-${process.pid}.toml`);
  sheets.forty = makeSheet(writeManyZones(many, 40));
});
after(() => browser.close());

// The largest number of pages: nobody reads what does not fit a clipboard.
const mostPages = { spring: 12, hot: 12, midnight: 9, half_hour: 9, text: 10, cold: 8, forty: 60 };

async function assertFits(page, width, what) {
  const wide = await page.evaluate(() => document.documentElement.scrollWidth);
  assert.ok(wide <= width, `${what}: ${wide} px wide`);
  assert.deepEqual(await page.evaluate(sticking), [], what);
}

async function assertPrints(page, paper, name) {
  const width = printedWidth(paper);
  await seeAs(page, { width, media: 'print' });
  await assertFits(page, width, `${name} on ${paper}`);
  // On paper nothing can be scrolled.
  const hidden = await page.locator('.scroller').evaluateAll((all) =>
    all.filter((one) => one.scrollWidth > one.clientWidth + 1).length);
  assert.equal(hidden, 0, `${name}: an area that scrolls is cut`);
  const pages = pagesOf(await page.pdf({ format: paper, preferCSSPageSize: false }));
  assert.ok(pages >= 1 && pages <= mostPages[name], `${name}: ${pages} pages`);
}

for (const name of Object.keys(mostPages)) {
  test(`${name} fits 360, 768 and 1280 px, A4 and Letter`, async () => {
    const page = await openSheet(browser, sheets[name]);
    for (const width of [360, 768, 1280]) {
      await seeAs(page, { width });
      await assertFits(page, width, `${name} at ${width}`);
    }
    await seeAs(page, { width: 360 });
    assert.deepEqual(await page.evaluate(smallText), [], `${name}: too small to read`);
    await page.reload();
    for (const paper of ['A4', 'Letter']) await assertPrints(page, paper, name);
    await close(page);
  });
}

test('a name without a space breaks where it must', async () => {
  const sheet = sheets.text;
  const long = { ...sheet, path: sheet.path.replace('.html', '-long.html') };
  const name = 'Donaudampfschiff'.repeat(8);
  writeFileSync(long.path, sheet.html.replaceAll('west side', name));
  const page = await openSheet(browser, long, { width: 360 });
  assert.ok((await page.evaluate(() => document.documentElement.scrollWidth)) <= 360);
  await close(page);
});
