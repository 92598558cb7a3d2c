// On paper: one truck sheet on one side, then an annex; and no heading is left at a page's foot.
import assert from 'node:assert/strict';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { longNames, writeBays, writeManyZones } from './many_zones.mjs';
import { close, demo, job, launch, makeSheet, openSheet, pagesOf, plain, printedWidth,
         seeAs } from './support.mjs';

const sheets = {};
let browser;

before(async () => {
  browser = await launch();
  for (const name of ['spring', 'hot']) sheets[name] = makeSheet(demo(name));
  sheets.twelve = makeSheet(writeManyZones(join(tmpdir(), `slabtide-twelve-${process.pid}.toml`), 12));
  sheets.bays = makeSheet(writeBays(join(tmpdir(), `slabtide-bays-${process.pid}.toml`)));
  sheets.heat = makeSheet(job('heat'));
  sheets.long = makeSheet(job('long_names'));
  sheets.longBays = makeSheet(writeBays(join(tmpdir(), `slabtide-long-${process.pid}.toml`),
    { names: longNames, finishers: 3 }));
});
after(() => browser.close());

for (const name of ['spring', 'hot', 'twelve', 'bays', 'heat', 'long', 'longBays']) {
  test(`${name}: the truck sheet is one side of Letter and of A4, the annex begins on the next`, async () => {
    const page = await openSheet(browser, sheets[name]);
    await seeAs(page, { width: printedWidth('Letter'), media: 'print' });
    const whole = {};
    for (const paper of ['Letter', 'A4']) {
      whole[paper] = pagesOf(await page.pdf({ format: paper }));
    }
    await page.evaluate(() => document.querySelector('.annex').remove());
    for (const paper of ['Letter', 'A4']) {
      assert.equal(pagesOf(await page.pdf({ format: paper })), 1, `${paper}, truck sheet`);
    }
    await page.reload();
    await page.evaluate(() => document.querySelector('.truck').remove());
    for (const paper of ['Letter', 'A4']) {
      const annex = pagesOf(await page.pdf({ format: paper }));
      assert.ok(whole[paper] >= annex && annex > 1, `${paper}, annex ${annex} of ${whole[paper]}`);
    }
    await close(page);
  });
}

test('the truck sheet has verdict, key times, agenda, loads, saws, plan, saw list and cautions', async () => {
  const page = await openSheet(browser, sheets.hot);
  await seeAs(page, { width: printedWidth('Letter'), media: 'print' });
  const truck = page.locator('.truck');
  for (const part of ['.verdict', '.key-times', '#agenda', '.loads', '.saw-choices', '.cautions']) {
    assert.ok(await truck.locator(part).first().isVisible(), part);
  }
  assert.ok(await truck.locator('.on-paper svg').isVisible(), 'the plan of the site');
  const kind = sheets.hot.json.saw[0].operation;
  assert.equal(await truck.locator('.on-paper ol li').count(),
               sheets.hot.json.saw.filter((cut) => cut.operation === kind).length);
  const running = await page.evaluate(() =>
    getComputedStyle(document.documentElement).getPropertyValue('--running'));
  const said = JSON.parse(running);
  assert.ok(said.startsWith(`${sheets.hot.json.job.name}, Thu, Jul 16, 2026. Made `), said);
  const saws = await truck.locator('.saw-choices li').count();
  assert.equal(saws, sheets.hot.json.zones.filter((zone) => zone.joints).length);
  assert.equal(await truck.locator('.cautions > li:visible').count(),
               await truck.locator('.cautions > li').count());
  for (const words of await truck.locator('.saw-choices li, .cautions .text').allTextContents()) {
    assert.doesNotMatch(words, /\d [AP]M/, 'a time may break across lines');
  }
  await seeAs(page, { width: 1280 });
  assert.ok(!(await page.locator('.on-paper').isVisible()), 'on paper alone');
  await close(page);
});

// What is wrong with a caution in one line, or out of sight; all of it in the annex.
for (const [name, least] of [['hot', 6], ['heat', 6], ['bays', 4], ['long', 4], ['longBays', 4]]) {
  test(`${name}: a caution is a line of the truck sheet, none is cut in two, all are in the annex`, async () => {
    const page = await openSheet(browser, sheets[name]);
    await seeAs(page, { width: printedWidth('Letter'), media: 'print' });
    const lines = await page.locator('.truck .watch').evaluate((watch) => {
      const frame = watch.getBoundingClientRect();
      return [...watch.querySelectorAll('.cautions > li')].map((item) => {
        const box = item.getBoundingClientRect();
        const style = getComputedStyle(item);
        return { lines: box.height / parseFloat(style.lineHeight), out: box.left >= frame.right - 1,
          whole: box.bottom <= frame.bottom + 1 && box.right <= frame.right + 1 };
      });
    });
    for (const line of lines) assert.ok(line.lines < 1.5 && (line.out || line.whole), JSON.stringify(line));
    const seen = lines.findIndex((line) => line.out);
    assert.ok(seen === -1 || lines.slice(seen).every((line) => line.out), 'the last are left out');
    assert.ok((seen === -1 ? lines.length : seen) >= least, `${seen} of ${lines.length}`);
    const annex = (await page.locator('.annex .cautions > li:visible > .text').allInnerTexts()).map(plain);
    assert.equal(annex.length, lines.length);
    for (const caution of sheets[name].json.cautions) {
      const remedy = caution.text.slice(caution.text.indexOf(': '));
      assert.ok(annex.some((text) => text.includes(remedy)), caution.text);
    }
    await seeAs(page, { width: 1280 });
    assert.equal(await page.locator('.annex .cautions:visible').count(), 0, 'on paper alone');
    await close(page);
  });
}

test('a long name is cut short on the truck sheet alone, and no two look alike', async () => {
  const page = await openSheet(browser, sheets.longBays);
  await seeAs(page, { width: printedWidth('Letter'), media: 'print' });
  const shown = await page.locator('.truck .map-names bdi').evaluateAll((all) =>
    all.map((one) => getComputedStyle(one, '::before').content));
  assert.equal(new Set(shown).size, longNames.length);
  for (const name of shown) assert.ok(name.length <= 24 && name.includes('…'), name);
  const truck = await page.locator('.truck').innerText();
  const annex = await page.locator('.annex').innerText();
  for (const name of longNames) {
    assert.ok(annex.includes(name), name);
    assert.ok(!truck.includes(name), `truck: ${name}`);
  }
  await seeAs(page, { width: 1280 });
  assert.ok((await page.locator('.truck').innerText()).includes(longNames[0]), 'on a screen');
  await close(page);
});

// Twelve bays with a cut across and one along each: more than one side can tell.
test('twelve bays with two cuts each: what has no room is said, and stands in the annex', async () => {
  const page = await openSheet(browser, sheets.bays);
  await seeAs(page, { width: printedWidth('Letter'), media: 'print' });
  const { json } = sheets.bays;
  assert.equal(json.saw.filter((cut) => cut.operation === json.saw[0].operation).length, 24);
  const truck = page.locator('.truck');
  const here = await truck.locator('.on-paper ol li:visible').count();
  const zones = await truck.locator('.saw-choices li:visible').count();
  assert.ok(here >= 8 && here < 24 && zones >= 4 && zones < 12);
  const said = (await truck.locator('.left-out:visible').allInnerTexts()).join(' ');
  assert.match(said, new RegExp(`${24 - here} more cuts are further on: The cuts`));
  assert.match(said, new RegExp(`${12 - zones} more zones are further on: The cuts`));
  assert.match(said, /further on: Times by zone, The cuts/);
  const annex = page.locator('.annex');
  assert.equal(await annex.locator('#cuts table').first().locator('tbody tr:visible').count(), 24);
  assert.equal(await annex.locator('#cuts .saw-choices li:visible').count(), 12);
  assert.equal(await annex.locator('#times ~ .zones article:visible').count(), 12);
  // Every broom's hours are still on the side that goes to the slab.
  const opens = json.zones.flatMap((zone) => (zone.parts.length ? zone.parts : [zone])).length;
  assert.equal(await truck.locator('#agenda li:visible:not(.minor)', { hasText: 'broom opens' }).count(), opens);
  // Each zone has its letter on the plan, which the numbers of the cuts leave free.
  const hidden = await page.evaluate(() => {
    const names = [...document.querySelectorAll('.on-paper .plan-zone-name')];
    const discs = [...document.querySelectorAll('.on-paper .cut-number circle')];
    const at = (one, x, y) => [Number(one.getAttribute(x)), Number(one.getAttribute(y))];
    return names.filter((name) => discs.some((disc) => {
      const [[x, y], [cx, cy]] = [at(name, 'x', 'y'), at(disc, 'cx', 'cy')];
      return Math.hypot(x - cx, y - cy) < Number(disc.getAttribute('r'));
    })).map((name) => name.textContent);
  });
  assert.equal(await page.locator('.on-paper .plan-zone-name').count(), 12);
  assert.deepEqual(hidden, []);
  // Nothing is cut: no text is wider than its box, none beyond the sheet.
  const cut = await page.evaluate(() => [...document.querySelectorAll('.truck *')]
    .filter((one) => one.checkVisibility() && !one.ownerSVGElement && !one.closest('.spoken'))
    .filter((one) => one.getBoundingClientRect().right > innerWidth + 0.5
      || (getComputedStyle(one).overflow === 'hidden' && one.scrollWidth > one.clientWidth + 1))
    .map((one) => `${one.tagName} ${one.className}: ${one.textContent.slice(0, 40)}`));
  assert.deepEqual(cut, []);
  await close(page);
});
