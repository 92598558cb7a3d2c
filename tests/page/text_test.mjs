// What the user wrote is shown as written, and has no other effect.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { close, job, launch, makeSheet, openSheet } from './support.mjs';

const zone = '<script>alert(1)</script> & "west" 東';
let browser;
let page;

before(async () => {
  browser = await launch();
  page = await openSheet(browser, makeSheet(job('text')));
});
after(() => browser.close());

test('a zone\'s name is text wherever it stands', async () => {
  assert.equal(await page.locator('article.zone h3').first().textContent(), zone);
  const text = await page.locator('body').textContent();
  assert.ok(text.split(zone).length > 10, 'it is named often');
  assert.ok(!text.includes('&lt;') && !text.includes('&amp;'), 'nothing is escaped twice');
});

test('the job\'s, the site\'s and the mix\'s names too', async () => {
  const name = '<img src=x onerror=alert(2)> "Tom & Co"';
  assert.equal(await page.title(), name);
  assert.equal(await page.locator('h1').textContent(), name);
  assert.match(await page.locator('header').textContent(), /<\/title><script>alert\(3\)<\/script>/);
  assert.match(await page.locator('body').textContent(), /\{\{job\}\} \{\{\{job\}\}\} & 5 < 6/);
});

test('none of it became part of the page', async () => {
  await page.waitForTimeout(100);
  assert.deepEqual(page.faults, []);
  assert.equal(await page.locator('img').count(), 0);
  assert.equal(await page.locator('h1 *, h3 script').count(), 0);
  assert.equal(await page.locator('[onerror], [onload]').count(), 0);
  await close(page);
});
