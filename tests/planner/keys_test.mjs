// The same pour by keys alone: no pointer touches the page.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { demo, exported, importText, launch, nativePlan, openPlanner, planned } from './support.mjs';

let browser;
before(async () => { browser = await launch(); });
after(() => browser.close());

// Tab until the wanted element has the focus; what cannot be reached fails.
async function reach(page, wanted) {
  await wanted.first().waitFor();
  for (let i = 0; i < 160; ++i) {
    if (await wanted.first().evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press('Tab');
  }
  assert.fail(`no way by Tab to ${wanted}`);
}
const role = (page, kind, name) => page.getByRole(kind, { name, exact: true });
async function press(page, kind, name, key = 'Enter') {
  await reach(page, role(page, kind, name));
  await page.keyboard.press(key);
}
async function type(page, label, text) {
  await reach(page, page.getByLabel(label, { exact: true }));
  await page.keyboard.press('Control+A');
  await page.keyboard.type(text);
}
async function openAdd(page, letter) {
  await reach(page, page.getByText('Add by dimensions'));
  if (!(await page.locator('details.add').evaluate((details) => details.open))) await page.keyboard.press('Enter');
  await reach(page, page.getByLabel('What', { exact: true }));
  await page.keyboard.press(letter);
}

test('porch, steps, walk and house by keys, and the plan', async () => {
  const page = await openPlanner(browser, { size: { width: 1280, height: 900 } });
  await press(page, 'button', 'New pour');
  await openAdd(page, 's');
  await type(page, 'Width', '14');
  await type(page, 'Depth', "8' 6\"");
  await press(page, 'button', 'Add it');
  await type(page, 'Name', 'porch');
  await page.keyboard.press('Tab');
  await press(page, 'button', 'Done');
  await openAdd(page, 'w');
  await type(page, 'Points', '7, 0; 7, -10; 12, -18; 20, -22');
  await press(page, 'button', 'Add it');
  await press(page, 'button', 'Done');
  await openAdd(page, 'h');
  await type(page, 'From', "0, 8'6\"");
  await type(page, 'To', "14, 8'6\"");
  await press(page, 'button', 'Add it');
  await page.getByRole('button', { name: /^house 18', wall/ }).waitFor();
  await press(page, 'button', 'Done');

  // A shape that has the focus moves by arrows, half a foot each.
  await reach(page, page.getByRole('button', { name: /^house 18', wall/ }));
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('ArrowDown');

  await press(page, 'button', 'Day');
  await type(page, 'Latitude, longitude', '45.1, -91.6');
  await page.keyboard.press('Tab');
  await planned(page);
  await press(page, 'button', 'Plan');
  await page.locator('.verdict').waitFor();
  assert.deepEqual((await page.locator('.card h2').allTextContents()).slice(0, 2), ['porch', 'walk']);
  const { text } = await exported(page);
  assert.match(text, /name = "porch"\noutline = \[\[0, 0\], \[14, 0\], \[14, 8.5\], \[0, 8.5\]\]/);
  assert.match(text, /from = \[0, 8.5\]\nto = \[14, 8.5\]/);
  assert.ok(nativePlan({ 'job.toml': text }));
  assert.deepEqual(page.faults, []);
  await page.context().close();
});

test('a round slab, bowed, mirrored and split by figures alone', async () => {
  const page = await openPlanner(browser);
  await press(page, 'button', 'New pour');
  await openAdd(page, 'r');
  await type(page, 'Across', "11'");
  await press(page, 'button', 'Add it');
  await page.getByRole('button', { name: /^slab, broom, 95 ft²/ }).waitFor(); // 5.5 ft squared times pi
  await type(page, 'Across', '8');
  await page.keyboard.press('Tab');
  await page.getByRole('button', { name: /^slab, broom, 50 ft²/ }).waitFor();
  await press(page, 'button', 'Done');
  await openAdd(page, 's');
  await type(page, 'Left edge at', '20');
  await press(page, 'button', 'Add it');
  await reach(page, page.getByText('Split, mirror, bow a side'));
  await page.keyboard.press('Enter');
  await type(page, 'Split at', "4'");
  await page.keyboard.press('Tab');
  await press(page, 'button', 'Split it');
  await page.getByRole('button', { name: /^slab 2, broom, 40 ft²|^slab 2, broom, 80 ft²/ }).waitFor();
  await press(page, 'button', 'Bow out');
  await press(page, 'button', 'Mirror left and right');
  const { text } = await exported(page);
  assert.equal((text.match(/\[\[zone\]\]/g) ?? []).length, 3);
  assert.deepEqual(page.faults, []);
  await page.context().close();
});

test('a slip in a field is told at the field', async () => {
  const page = await openPlanner(browser);
  await press(page, 'button', 'New pour');
  await press(page, 'button', 'Day');
  await type(page, 'Latitude, longitude', 'somewhere');
  await page.keyboard.press('Tab');
  assert.equal(await page.getByText('Two numbers such as 44.90, -91.90').count(), 1);
  assert.equal(await page.getByLabel('Latitude, longitude').getAttribute('aria-invalid'), 'true');
  await page.context().close();
});

test('what is being typed stays as it is, with the focus, when the plan comes; Undo takes back what was told', async () => {
  const page = await openPlanner(browser);
  await importText(page, demo('spring'));
  await press(page, 'button', 'Share');
  const sheet = page.getByRole('button', { name: 'Day sheet', exact: true });
  assert.ok(await sheet.isDisabled(), 'the plan is still to come');
  await type(page, 'Name of the pour', 'half a na');
  await page.waitForFunction((button) => !button.disabled, await sheet.elementHandle(), { timeout: 60000 });
  const name = page.getByLabel('Name of the pour');
  assert.equal(await name.inputValue(), 'half a na');
  await page.keyboard.type('me');
  await page.keyboard.press('Enter');
  assert.equal(await page.locator('header .brand').textContent(), 'half a name');
  await page.getByRole('button', { name: 'Undo', exact: true }).press('Enter');
  assert.equal(await name.inputValue(), 'Cabin landing, walk and pad');
  assert.deepEqual(page.faults, []);
  await page.context().close();
});
