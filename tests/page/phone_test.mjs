// A phone's page is crossed with a thumb: a bar of five at the bottom, the rest folded, with and
// without script; elsewhere and on paper nothing is folded.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { writeBays } from './many_zones.mjs';
import { close, demo, graveFindings, job, launch, makeSheet, openSheet, plain,
         seeAs, week } from './support.mjs';

const phone = { width: 360, height: 740 };
const maxScreens = 8;
const minTarget = 44;  // CSS px: Apple's and WCAG 2.5.5's target size
let browser;
let sheet;

before(async () => {
  browser = await launch();
  sheet = makeSheet(demo('hot'));
});
after(() => browser.close());

const heightOf = (page) => page.evaluate(() => document.documentElement.scrollHeight);
const closedFolds = (page) => page.locator('details.fold').evaluateAll((all) =>
  all.filter((one) => [...one.children].slice(1).every((child) => !child.checkVisibility())).length);

for (const script of [true, false]) {
  test(`the folded demo is at most ${maxScreens} screens, ${script ? 'with' : 'without'} script`, async () => {
    const page = await openSheet(browser, sheet, { ...phone, script });
    const screens = (await heightOf(page)) / phone.height;
    assert.ok(screens <= maxScreens, `${screens.toFixed(1)} screens`);
    assert.equal(await closedFolds(page), await page.locator('details.fold').count());
    const fold = page.locator('article.zone details.fold').first();
    await fold.locator('summary').click();
    assert.ok(await fold.locator('table').first().isVisible());
    await close(page);
  });

  test(`the bar leads to its five places, ${script ? 'with' : 'without'} script`, async () => {
    const page = await openSheet(browser, sheet, { ...phone, script });
    const bar = page.locator('nav.bar');
    assert.deepEqual(await bar.locator('a').allInnerTexts(), ['Now', 'Map', 'Crew', 'Saw', 'Watch']);
    for (const link of await bar.locator('a').all()) {
      const box = await link.boundingBox();
      assert.ok(box.height >= 56 && box.width >= minTarget && box.y + box.height <= phone.height);
      await link.click();
      const target = await page.locator(await link.getAttribute('href')).boundingBox();
      assert.ok(target.y >= -1 && target.y < phone.height / 2, `${await link.innerText()}: ${target.y}`);
    }
    await close(page);
  });
}

test('what is touched is at least 44 px high', async () => {
  const page = await openSheet(browser, sheet, phone);
  const small = await page.locator('summary:visible, nav.bar a, .map-choice label, .map-steps button, #map-hour')
    .evaluateAll((all, least) => all.map((one) => [one.textContent, one.getBoundingClientRect()])
      .filter(([, box]) => box.height < least || box.width < least).map(([text, box]) => `${text} ${box.width}x${box.height}`),
    minTarget);
  assert.deepEqual(small, []);
  await close(page);
});

test('on a screen and on paper nothing is folded and there is no bar', async () => {
  for (const script of [true, false]) {
    const page = await openSheet(browser, sheet, { width: 1280, script });
    assert.equal(await closedFolds(page), 0);
    assert.equal(await page.locator('nav.bar').isVisible(), false);
    await seeAs(page, { width: 720, media: 'print' });
    assert.equal(await closedFolds(page), 0, 'paper');
    assert.equal(await page.locator('nav.bar').isVisible(), false);
    await close(page);
  }
});

test('axe-core finds nothing grave with all of it unfolded: light, dark, forced colours', async () => {
  const page = await openSheet(browser, sheet, phone);
  for (const look of [{ colorScheme: 'light' }, { colorScheme: 'dark' }, { forcedColors: 'active' }]) {
    await page.emulateMedia(look);
    assert.deepEqual(await graveFindings(page), [], `folded ${JSON.stringify(look)}`);
    await page.evaluate(() => document.querySelectorAll('details.fold').forEach((one) => { one.open = true; }));
    assert.deepEqual(await graveFindings(page), [], JSON.stringify(look));
  }
  await page.emulateMedia({ colorScheme: 'light', forcedColors: 'none' });
  await close(page);
});

test('text follows the browser\'s size: at 200 % nothing scrolls sideways', async () => {
  // A bigger size set in the browser is a bigger initial font size.
  const page = await openSheet(browser, sheet, phone);
  const sizes = () => page.evaluate(() => parseFloat(getComputedStyle(document.body).fontSize));
  const devTools = await page.context().newCDPSession(page);
  const usual = await sizes();
  await devTools.send('Page.enable');
  await devTools.send('Page.setFontSizes', { fontSizes: { standard: 32, fixed: 26 } });
  await page.reload();
  assert.ok(Math.abs((await sizes()) / usual - 2) < 0.01, `${await sizes()} after ${usual}`);
  await page.evaluate(() => document.querySelectorAll('details').forEach((one) => { one.open = true; }));
  const wide = await page.evaluate(() => document.documentElement.scrollWidth);
  assert.ok(wide <= phone.width, `${wide} px wide`);
  const bar = await page.locator('nav.bar').evaluate((one) => [...one.children].some((link) =>
    link.scrollWidth > link.clientWidth));
  assert.equal(bar, false, 'the words of the bar fit');
  await devTools.send('Page.setFontSizes', { fontSizes: { standard: 16, fixed: 13 } });
  await close(page);
});

// Every caution of the JSON is told, in its own words or with its zone and time beside others of
// its kind, and what may be lost stands before what costs less.
test('cautions are told once a kind, the worst first, and at most seven at first sight', async () => {
  const page = await openSheet(browser, sheet, { width: 1280 });
  const told = await page.locator('#watch ~ .cautions > li > .text').allTextContents();
  const all = (await page.locator('.truck .cautions > li > .text').allTextContents()).map(plain);
  assert.ok(told.length <= 7);
  assert.ok(all.length < sheet.json.cautions.length);
  for (const one of sheet.json.cautions) {
    const remedy = one.text.slice(one.text.indexOf(': '));
    assert.ok(all.some((text) => text.includes(remedy) && text.includes(one.zone ?? '')), one.text);
  }
  const weight = { stop: 0, caution: 1, note: 2 };
  const levels = await page.locator('.truck .cautions > li').evaluateAll((items) => items.map((item) => item.className));
  levels.forEach((level, i) => assert.ok(i === 0 || weight[level] >= weight[levels[i - 1]], levels.join()));
  await close(page);
});

// Nothing is out of sight: a wide table's row is a card, and no time breaks across lines.
test('every cell of the cut list, of the days and of the outlook is in sight on a phone', async () => {
  const outlook = makeSheet(demo('hot'), { command: 'outlook', json: false });
  const days = makeSheet(demo('hot'), { command: 'days', json: false,
    options: ['--forecast', week, '--now', '2026-05-13T23:00Z'] });
  for (const [what, one, table] of [['cuts', sheet, '#cuts table'], ['days', days, 'table.days'],
    ['outlook', outlook, 'table.hours']]) {
    const page = await openSheet(browser, one, phone);
    await page.evaluate(() => document.querySelectorAll('details.fold').forEach((fold) => { fold.open = true; }));
    const cells = await page.locator(`${table}.cards tbody :is(th, td)`).evaluateAll((all) => all.map((cell) =>
      [cell.textContent, cell.getBoundingClientRect()]).map(([text, box]) => [text, box.left, box.right]));
    assert.ok(cells.length > 20, what);
    for (const [text, left, right] of cells) assert.ok(left >= 0 && right <= phone.width, `${what}: ${text} ${right}`);
    await close(page);
  }
});

// A column that has to be looked for is not read.
test('no table hides a column, on a phone, a tablet or a desk', async () => {
  const bays = writeBays(join(tmpdir(), `slabtide-wide-${process.pid}.toml`));
  const away = { json: false };
  const priced = fileURLToPath(new URL('../cli/compare_priced/job.toml', import.meta.url));
  for (const [what, one] of [['hot', sheet], ['bays', makeSheet(bays, away)], ['long', makeSheet(job('long_names'), away)],
    ['compare', makeSheet(priced, { command: 'compare', ...away })],
    ['outlook', makeSheet(demo('hot'), { command: 'outlook', ...away })],
    ['days', makeSheet(demo('hot'), { command: 'days', ...away, options: ['--forecast', week, '--now', '2026-05-13T23:00Z'] })]]) {
    const page = await openSheet(browser, one, phone);
    await page.evaluate(() => document.querySelectorAll('details').forEach((fold) => { fold.open = true; }));
    for (const width of [360, 600, 768, 900, 1023, 1024, 1152, 1280, 1600]) {
      await seeAs(page, { width });
      const hidden = await page.locator('.scroller:visible').evaluateAll((all) =>
        all.filter((table) => table.scrollWidth > table.clientWidth)
          .map((table) => `${table.getAttribute('aria-label')} ${table.scrollWidth} > ${table.clientWidth}`));
      assert.deepEqual(hidden, [], `${what}, ${width} px`);
    }
    await close(page);
  }
});

// A part that opens when another has closed must not be missed.
test('a folded zone says when each of its parts can be worked', async () => {
  const heat = makeSheet(job('heat'));
  const zones = heat.json.zones.map((zone, i) => ({ ...zone, i })).filter((zone) => zone.parts.length > 1);
  assert.ok(zones.length > 0);
  const page = await openSheet(browser, heat, phone);
  for (const zone of zones) {
    const peek = page.locator(`summary:has(#zone-${zone.i}) .peek`);
    const times = await peek.locator('time').evaluateAll((all) => all.map((one) => one.getAttribute('datetime')));
    const said = plain(await peek.innerText());
    for (const part of zone.parts) {
      assert.ok(part.windows.some(({ opens, closes }) => times.includes(opens) && times.includes(closes)), said);
      assert.ok(said.includes(part.name), said);
    }
  }
  await close(page);
});

test('no time breaks across lines, at any width', async () => {
  const page = await openSheet(browser, sheet, phone);
  for (const width of [360, 768, 1280]) {
    await seeAs(page, { width });
    await page.evaluate(() => document.querySelectorAll('details.fold').forEach((fold) => { fold.open = true; }));
    const broken = await page.locator('time:visible, data:visible').evaluateAll((all) =>
      all.filter((one) => one.getClientRects().length > 1).map((one) => one.textContent));
    assert.deepEqual(broken, [], `${width} px`);
  }
  await close(page);
});

// Line breaks may come between words, not within "9:10–10:05 AM", wherever it is told.
const parted = () => {
  const clock = '(?:(?:Mon|Tue|Wed|Thu|Fri|Sat|Sun)\\s)?\\d{1,2}:\\d{2}(?:\\s[AP]M)?';
  const told = new RegExp(`${clock}(?:–\\u2060?${clock})?`, 'g');
  const texts = document.createTreeWalker(document.querySelector('main'), NodeFilter.SHOW_TEXT);
  const broken = [];
  let seen = 0;
  while (texts.nextNode()) {
    const node = texts.currentNode;
    if (node.parentElement.ownerSVGElement || !node.parentElement.checkVisibility()) continue;
    for (const { 0: words, index } of node.data.matchAll(told)) {
      const range = document.createRange();
      range.setStart(node, index);
      range.setEnd(node, index + words.length);
      const lines = new Set([...range.getClientRects()].filter((box) => box.width > 0).map((box) => Math.round(box.top)));
      seen += words.includes('–') ? 1 : 0;
      if (lines.size > 1) broken.push(`${words} in ${node.data}`);
    }
  }
  // The ends of a span may be elements of their own.
  for (const span of document.querySelectorAll('.span')) {
    const wide = span.closest('tr.sure') && innerWidth >= 1024;  // a narrow column
    if (!span.checkVisibility() || wide) continue;
    const tops = [...span.children].map((end) => Math.round(end.getBoundingClientRect().top));
    seen += 1;
    if (new Set(tops).size > 1) broken.push(span.textContent);
  }
  return { broken, seen };
};

test('no span of times breaks across lines, in a sentence or out of it', async () => {
  const compare = makeSheet(demo('spring'), { command: 'compare', json: false });
  const days = makeSheet(demo('hot'), { command: 'days', json: false,
    options: ['--forecast', week, '--now', '2026-05-13T23:00Z'] });
  for (const [what, one, least] of [['plan', sheet, 10], ['compare', compare, 0], ['days', days, 7]]) {
    const page = await openSheet(browser, one, phone);
    await page.evaluate(() => document.querySelectorAll('details').forEach((fold) => { fold.open = true; }));
    for (const width of [320, 340, 360, 390, 412, 768, 1280]) {
      await seeAs(page, { width });
      const { broken, seen } = await page.evaluate(parted);
      assert.deepEqual(broken, [], `${what}, ${width} px`);
      assert.ok(seen >= least, `${what}: ${seen} spans`);
    }
    await close(page);
  }
});

test('a choice is folded to its name, its verdict and how late it is; the best is open', async () => {
  const choices = makeSheet(demo('hot'), { command: 'compare' });
  const { json } = choices;
  for (const script of [true, false]) {
    const page = await openSheet(browser, choices, { ...phone, script });
    const rows = page.locator('table.choices tbody tr');
    assert.equal(await rows.count(), json.choices.length);
    const screens = (await heightOf(page)) / phone.height;
    assert.ok(screens <= maxScreens, `${screens.toFixed(1)} screens`);
    const first = rows.first();
    assert.equal(plain(await first.locator('[data-json]').first().innerText()), json.choices[json.best].choice);
    assert.ok(await first.locator('td').last().isVisible());
    const second = rows.nth(1);
    assert.equal(await second.locator('td:visible').count(), 0);
    const { verdict, reasons, expected_late_min } = json.choices[0];
    const says = plain(await second.locator('summary').innerText());
    assert.ok(says.includes(verdict.replace('_', ' ')), says);
    assert.ok(says.includes(`${reasons.join(', ')}; ${expected_late_min} min late on average`), says);
    assert.ok((await second.locator('summary').boundingBox()).height >= minTarget);
    await second.locator('summary').click();
    assert.equal(await second.locator('td:visible').count(), await second.locator('td').count());
    await seeAs(page, { width: 1280 });
    assert.equal(await page.locator('.figures-of:visible').count(), 0);
    assert.equal(await rows.nth(4).locator('td:visible').count(), await second.locator('td').count());
    await close(page);
  }
});

test('a name written from right to left stands apart', async () => {
  const page = await openSheet(browser, sheet, phone);
  for (const place of ['article.zone h3', '#agenda .what', '.cautions .text', '.person h3', '.saw-choices li']) {
    assert.ok(await page.locator(`${place} bdi`).count() > 0, place);
  }
  await close(page);
});
