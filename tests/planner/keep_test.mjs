// Nothing is lost: a reload, a closed tab, no network, two tabs, a backup, a link.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { after, before, test } from 'node:test';
import { allJobs, demo, exported, importText, launch, nativePlan, openPlanner, pageUrl, planned, serveSite } from './support.mjs';

let browser;
before(async () => { browser = await launch(); });
after(() => browser.close());

const by = (page, words) => page.getByRole('button', { name: words, exact: true });
const openSpring = async (options) => {
  const page = await openPlanner(browser, options);
  await importText(page, demo('spring'));
  await planned(page);
  return page;
};

test('an imported job comes out letter for letter until it is changed, and plans the same after', async () => {
  const page = await openSpring();
  assert.equal((await exported(page)).text, demo('spring'));
  await page.getByLabel('Name of the pour').fill('Another name');
  await page.getByLabel('Name of the pour').press('Enter');
  const { name, text } = await exported(page);
  assert.equal(name, 'another-name.toml');
  assert.notEqual(text, demo('spring'));
  const plan = (job) => JSON.parse(nativePlan({ 'job.toml': job })['.json']);
  const [was, is] = [plan(demo('spring')), plan(text)];
  assert.equal(is.job.name, 'Another name');
  is.job.name = was.job.name;
  assert.deepEqual(is, was);
  assert.deepEqual(page.faults, []);
  await page.context().close();
});

test('every job of the project that reads: written anew by the page, the same plan', async () => {
  const page = await openPlanner(browser);
  let same = 0;
  for (const path of allJobs()) {
    const text = readFileSync(path, 'utf8');
    const native = nativePlan({ 'job.toml': text });
    if (!native) continue;
    await importText(page, text);
    await page.locator('footer nav').waitFor();
    await by(page, 'Share').click();
    await page.getByLabel('Name of the pour').fill('Renamed');
    await page.getByLabel('Name of the pour').press('Enter');
    const written = (await exported(page)).text;
    const anew = nativePlan({ 'job.toml': written });
    assert.ok(anew, `${path}\n${written}`);
    const [was, is] = [JSON.parse(native['.json']), JSON.parse(anew['.json'])];
    Object.assign(is.job, { name: was.job.name, site: was.job.site }); // a site without a name has the job's
    assert.deepEqual(is, was, path);
    same += 1;
    await by(page, 'All pours').click();
    await by(page, 'New pour').waitFor();
  }
  assert.ok(same >= 10, `only ${same} jobs`);
  assert.deepEqual(page.faults, []);
  await page.context().close();
});

// The copy of a file never changed here, as it is given out.
async function copied(text, name) {
  const page = await openPlanner(browser);
  await importText(page, text);
  await page.locator('footer nav').waitFor();
  await by(page, 'All pours').click();
  await page.getByRole('button', { name: /^Copy / }).click();
  await page.locator('.jobs li').nth(1).waitFor();
  const told = await page.locator('.told').allTextContents();
  await page.locator('.jobs .job').filter({ hasText: name }).first().click();
  const given = (await exported(page)).text;
  assert.deepEqual(page.faults, []);
  await page.context().close();
  return { given, told };
}

test('a copy keeps the comments of its file, and has a name of its own where the text has room for it', async () => {
  assert.match(demo('spring'), /^# /m);
  const plain = await copied(demo('spring'), '(copy)');
  assert.equal(plain.given, demo('spring').replace(/^name = "(.*)"/m, 'name = "$1 (copy)"'));
  assert.notEqual(plain.given, demo('spring'));
  assert.deepEqual(plain.told, []);
  const folded = demo('spring').replace(/^name = "(.*)"/m, 'name = """\n$1"""');
  const same = await copied(folded, 'Cabin landing');
  assert.equal(same.given, folded);
  assert.match(same.told.join(), /^The copy is called Cabin landing.* too: its comments would go/);
});

test('a reload in the middle loses no edit', async () => {
  const page = await openPlanner(browser);
  await by(page, 'New pour').click();
  const box = await page.locator('svg.sheet').boundingBox();
  await page.mouse.move(box.x + 60, box.y + 60);
  await page.mouse.down();
  await page.mouse.move(box.x + 200, box.y + 160, { steps: 5 });
  await page.mouse.up();
  await page.getByRole('button', { name: /^slab, / }).waitFor();
  const words = await page.getByRole('button', { name: /^slab, / }).getAttribute('aria-label');
  await page.waitForTimeout(50);
  await page.reload();
  await page.getByRole('button', { name: /New pour .*20\d\d/ }).click();
  await by(page, 'Draw').click();
  assert.equal(await page.getByRole('button', { name: /^slab, / }).getAttribute('aria-label'), words);
  await page.context().close();
});

// Closed, or killed as by a phone that runs out of memory, with the finger still down.
for (const [words, end] of [
  ['closed', (page) => page.close()],
  ['killed', async (page) => {
    const session = await page.context().newCDPSession(page);
    const crashed = page.waitForEvent('crash');
    session.send('Page.crash').catch(() => {});
    await crashed;
    await page.close();
  }],
]) {
  test(`a tab ${words} in the middle of a drag: the pour is as before the drag`, async () => {
    const page = await openSpring();
    await by(page, 'Draw').click();
    await page.getByRole('button', { name: /^landing, / }).press('Enter');
    await page.locator('svg.sheet .selected').focus();
    const handle = await page.locator('svg.sheet [data-corner="2"] .handle').boundingBox();
    const before = await page.locator('svg.sheet .selected').getAttribute('aria-label');
    await page.mouse.move(handle.x + 6, handle.y + 6);
    await page.mouse.down();
    await page.mouse.move(handle.x + 46, handle.y + 36, { steps: 8 });
    await page.waitForTimeout(300);
    const drawn = await page.locator('svg.sheet .selected').getAttribute('aria-label');
    assert.notEqual(drawn, before, 'the corner was dragged');
    const context = page.context();
    await end(page);
    const again = await openPlanner(browser, { context });
    await again.getByRole('button', { name: /Cabin landing.*20\d\d/ }).click();
    await planned(again);
    assert.equal((await exported(again)).text, demo('spring'));
    assert.deepEqual(again.faults, []);
    await context.close();
  });
}

test('two tabs with one pour: both versions stay', async () => {
  const first = await openSpring();
  const context = first.context();
  const second = await openPlanner(browser, { context });
  await second.getByRole('button', { name: /Cabin landing.*20\d\d/ }).click();
  for (const [page, name] of [[first, 'from one'], [second, 'from two']]) {
    await by(page, 'Share').click();
    await page.getByLabel('Name of the pour').fill(name);
    await page.getByLabel('Name of the pour').press('Enter');
    await page.waitForTimeout(100);
  }
  await by(second, 'All pours').click();
  await second.getByRole('button', { name: /^from two .*20\d\d/ }).waitFor();
  assert.equal(await second.getByRole('button', { name: /^from one .*20\d\d/ }).count(), 1);
  await context.close();
});

test('a backup brings every pour back on another device', async () => {
  const page = await openSpring();
  await by(page, 'All pours').click();
  await page.getByText('Open a file, back up, restore').click();
  const [download] = await Promise.all([page.waitForEvent('download'), by(page, 'Back up all pours').click()]);
  const backup = readFileSync(await download.path());
  await page.context().close();
  const other = await openPlanner(browser);
  await other.getByText('Open a file, back up, restore').click();
  await other.getByLabel('Restore a backup').setInputFiles({ name: 'b.json', mimeType: 'application/json', buffer: backup });
  await other.getByRole('button', { name: /Cabin landing.*20\d\d/ }).click();
  await planned(other);
  assert.equal((await exported(other)).text, demo('spring'));
  await other.context().close();
});

test('a link holds the job', async () => {
  const page = await openSpring();
  await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
  await by(page, 'Share').click();
  await by(page, 'Copy a link').click();
  const box = page.getByLabel('Link');
  await page.getByText(/link is copied|Copy this/).waitFor();
  const link = (await box.count()) ? await box.inputValue() : await page.evaluate(() => navigator.clipboard.readText());
  assert.ok(link.startsWith(`${pageUrl}#job=`));
  await page.context().close();
  const other = await openPlanner(browser, { url: link });
  await planned(other);
  assert.equal((await exported(other)).text, demo('spring'));
  await other.context().close();
});

test('from a web host it opens again with the network cut, jobs and plan and all', async () => {
  const site = await serveSite();
  const page = await openPlanner(browser, { url: site.url });
  await page.evaluate(() => navigator.serviceWorker.ready);
  await importText(page, demo('spring'));
  await planned(page);
  site.end();
  await page.context().setOffline(true);
  await page.reload();
  await page.getByRole('button', { name: /Cabin landing.*20\d\d/ }).click();
  await planned(page);
  await page.context().close();
});
