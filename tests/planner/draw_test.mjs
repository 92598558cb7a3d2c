// A pour drawn from nothing with a finger: porch, three risers, a curved walk, the house beside it.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { exported, launch, nativePlan, openPlanner, phone, planned, startEngine } from './support.mjs';

let browser;
before(async () => { browser = await launch(); });
after(() => browser.close());

// A hand: taps are touches, strokes are the mouse's (a stroke by touch that ends in motion makes
// Chromium take the next tap for the end of a swipe), two fingers are touches again. Each counts
// as one.
async function hand(page) {
  const session = await page.context().newCDPSession(page);
  const send = (type, points) => session.send('Input.dispatchTouchEvent', { type, touchPoints: points.map(([x, y], id) => ({ x, y, id })) });
  const sheet = page.locator('svg.sheet');
  let touches = 0;
  const onSheet = async (shares) => {
    const box = await sheet.boundingBox();
    return shares.map(([x, y]) => [box.x + x * box.width, box.y + y * box.height]);
  };
  return {
    count: () => touches,
    async tap(locator) {
      touches += 1;
      await locator.tap();
    },
    // Places on the sheet are shares of its width and height.
    async tapSheet(share) {
      touches += 1;
      const [[x, y]] = await onSheet([share]);
      await page.touchscreen.tap(x, y);
    },
    async drag(shares) {
      touches += 1;
      const [from, ...on] = await onSheet(shares);
      await page.mouse.move(...from);
      await page.mouse.down();
      for (const [x, y] of on) await page.mouse.move(x, y, { steps: 4 });
      await page.mouse.up();
    },
    async pinch(from, to) {
      touches += 1;
      const [[x, y]] = await onSheet([[0.5, 0.5]]);
      const pair = (half) => [[x - half, y], [x + half, y]];
      await send('touchStart', pair(from));
      for (let k = 1; k <= 4; ++k) await send('touchMove', pair(from + ((to - from) * k) / 4));
      await send('touchEnd', []);
    },
  };
}

const start = () => openPlanner(browser, { size: phone, touch: true, geolocation: { latitude: 45.1, longitude: -91.6 } });
// A tool is in hand before the sheet is touched: on a busy machine the tap takes its time.
async function take(page, finger, tool) {
  await finger.tap(by(page, tool));
  await page.locator('.tools button[aria-pressed="true"]').filter({ hasText: tool }).waitFor();
}
const by = (page, words) => page.getByRole('button', { name: words, exact: true });

test('from nothing to a plan in 40 touches', async () => {
  const page = await start();
  const finger = await hand(page);
  await finger.tap(by(page, 'New pour'));
  await page.locator('svg.sheet polygon, svg.sheet .grid').first().waitFor();
  await finger.drag([[0.25, 0.2], [0.75, 0.4]]);
  await page.getByRole('button', { name: /^slab, broom/ }).waitFor();
  await finger.tap(page.locator('.tile').filter({ hasText: 'Stamp' }));
  await take(page, finger, 'Steps');
  await finger.tapSheet([0.5, 0.4]);
  await finger.tap(by(page, 'Add the steps'));
  await page.getByRole('button', { name: /^steps, broom/ }).waitFor();
  await take(page, finger, 'Walk');
  const drawn = page.locator('svg.sheet g[aria-label^="steps"] polygon');
  await drawn.waitFor();
  const steps = await drawn.boundingBox();
  const sheet = await page.locator('svg.sheet').boundingBox();
  const end = [(steps.x + steps.width / 2 - sheet.x) / sheet.width, (steps.y + steps.height - sheet.y) / sheet.height];
  await finger.drag([end, [end[0], end[1] + 0.1], [end[0] + 0.08, end[1] + 0.2], [end[0] + 0.3, end[1] + 0.3]]);
  await page.getByRole('button', { name: /^walk, / }).waitFor();
  await take(page, finger, 'House');
  await finger.drag([[0.1, 0.2], [0.9, 0.2]]);
  await page.getByRole('button', { name: /^house 18', wall/ }).waitFor();
  await finger.tap(by(page, 'Day'));
  await finger.tap(by(page, 'Use where I am'));
  await page.getByLabel('Latitude, longitude').and(page.locator('[value], input')).waitFor();
  await planned(page);
  await finger.tap(by(page, 'Plan'));
  await page.locator('.verdict').waitFor();
  console.log(`${finger.count()} touches`);
  assert.ok(finger.count() <= 40, `${finger.count()} touches`);
  assert.deepEqual(await page.locator('.card h2').allTextContents().then((all) => all.slice(0, 3)), ['slab', 'steps', 'walk']);
  const job = await exported(page);
  assert.match(job.text, /\[\[zone\.face\]\]/);
  assert.equal((job.text.match(/\[\[zone\]\]/g) ?? []).length, 3);
  assert.equal((job.text.match(/\[\[zone\.face\]\]/g) ?? []).length, 3);

  const texts = { 'job.toml': job.text };
  const native = nativePlan(texts);
  assert.ok(native, 'the command line plans what the page gives out');
  const ask = await startEngine();
  const told = ask({ ask: 'plan', job: 'job.toml', texts, now: '2026-05-13T18:00Z', draws: 0, formats: ['.json'] });
  assert.equal(told.files['.json'], native['.json']);
  assert.deepEqual(page.faults, []);
  await page.context().close();
});

test('corner by corner, dragged corners, undo and redo, two fingers', async () => {
  const page = await start();
  const finger = await hand(page);
  await finger.tap(by(page, 'New pour'));
  for (const corner of [[0.2, 0.2], [0.6, 0.2], [0.6, 0.5], [0.2, 0.5]]) await finger.tapSheet(corner);
  await finger.tap(by(page, 'Done'));
  const slab = page.locator('svg.sheet g[data-kind="zone"]');
  await slab.waitFor();
  const words = () => slab.getAttribute('aria-label');
  const first = await words();
  const feet = Number(first.match(/(\d+) ft²/)[1]);
  assert.ok(feet > 50, first);

  const handle = await page.locator('svg.sheet [data-corner="2"] .handle').boundingBox();
  const sheet = await page.locator('svg.sheet').boundingBox();
  const at = [(handle.x + handle.width / 2 - sheet.x) / sheet.width, (handle.y + handle.height / 2 - sheet.y) / sheet.height];
  await finger.drag([at, [at[0] + 0.2, at[1] + 0.15]]);
  const dragged = await words();
  assert.ok(Number(dragged.match(/(\d+) ft²/)[1]) > feet + 10, `${first} then ${dragged}`);
  await finger.tap(by(page, 'Undo'));
  assert.equal(await words(), first);
  await finger.tap(by(page, 'Redo'));
  assert.equal(await words(), dragged);

  const width = async () => (await page.locator('svg.sheet .ground').boundingBox()).width;
  const narrow = await width();
  await finger.pinch(40, 80);
  assert.ok(Math.abs((await width()) / narrow - 2) < 0.15, 'twice as large under fingers twice as wide apart');
  assert.equal(await words(), dragged);
  assert.deepEqual(page.faults, []);
  await page.context().close();
});

test('typed lengths, and north turned: the figures of the file turn, the sheet does not', async () => {
  const page = await start();
  const finger = await hand(page);
  await finger.tap(by(page, 'New pour'));
  await finger.drag([[0.25, 0.2], [0.75, 0.5]]);
  await page.getByLabel('One side').fill('12\' 6"');
  await page.getByLabel('One side').press('Enter');
  await page.getByLabel('Other side').fill('10');
  await page.getByLabel('Other side').press('Enter');
  const slab = page.locator('svg.sheet g[data-kind="zone"]');
  assert.match(await slab.getAttribute('aria-label'), /125 ft²/);
  await page.locator('.panel').getByRole('button', { name: 'Done' }).click();
  const before = await page.locator('svg.sheet .ground').getAttribute('points');
  await page.getByText('Which way is north?').click();
  await page.getByLabel('North, clockwise from the top of the sheet, degrees').fill('90');
  await page.getByLabel('North, clockwise from the top of the sheet, degrees').press('Enter');
  assert.equal(await page.locator('svg.sheet .ground').getAttribute('points'), before);
  const { text } = await exported(page);
  const corners = JSON.parse(text.match(/outline = (\[[^\n]*\])/)[1]);
  const span = (axis) => Math.max(...corners.map((c) => c[axis])) - Math.min(...corners.map((c) => c[axis]));
  assert.ok(Math.abs(span(0) - 10) < 1e-3 && Math.abs(span(1) - 12.5) < 1e-3, text);
  assert.deepEqual(page.faults, []);
  await page.context().close();
});

test('the phone\'s compass turns north once the phone lies flat; where it may not be read, that is said', async () => {
  const allowed = await openPlanner(browser, { size: phone, touch: true });
  const refused = await start(); // which allows the place and nothing else
  for (const page of [allowed, refused]) {
    await by(page, 'New pour').click();
    await page.getByText('Which way is north?').click();
    await by(page, 'Use the phone\'s compass').click();
  }
  await refused.getByText('did not let the page read its compass').waitFor({ state: 'attached' });
  const tell = (beta) => allowed.evaluate((tipped) => dispatchEvent(new DeviceOrientationEvent('deviceorientationabsolute', { alpha: 240, beta: tipped, gamma: 0, absolute: true })), beta);
  const north = allowed.getByLabel('North, clockwise from the top of the sheet, degrees');
  await allowed.getByText('Reading the compass').waitFor({ state: 'attached' });
  await tell(80); // held upright
  assert.equal(await north.inputValue(), '0');
  await tell(5);
  await allowed.getByText('The top of the drawing looks southeast, 120 degrees.').waitFor({ state: 'attached' });
  assert.equal(await north.inputValue(), '240');
  for (const page of [allowed, refused]) {
    assert.deepEqual(page.faults, []);
    await page.context().close();
  }
});

const feetOf = (words) => Number(words.match(/(\d+) ft²/)[1]);

test('a round slab, a side bowed, a slab split, each with one stroke, and taken back', async () => {
  const page = await start();
  const finger = await hand(page);
  await finger.tap(by(page, 'New pour'));
  await take(page, finger, 'Round');
  await finger.drag([[0.3, 0.3], [0.4, 0.3]]);
  const round = page.getByRole('button', { name: /^slab, broom/ });
  await round.waitFor();
  const across = await page.getByLabel('Across').inputValue();
  const [, feet, inches] = across.match(/^(\d+)'(?: (\d+)")?$/);
  const radius = (Number(feet) + Number(inches ?? 0) / 12) / 2;
  assert.ok(Math.abs(feetOf(await round.getAttribute('aria-label')) - Math.PI * radius ** 2) < 1, across);

  await take(page, finger, 'Slab');
  await finger.drag([[0.2, 0.55], [0.8, 0.8]]);
  const slab = page.getByRole('button', { name: /^slab 2, broom/ });
  await slab.waitFor();
  const square = feetOf(await slab.getAttribute('aria-label'));
  const sheet = await page.locator('svg.sheet').boundingBox();
  const side = await page.locator('svg.sheet [data-side="2"] .bow').boundingBox();
  const at = [(side.x + side.width / 2 - sheet.x) / sheet.width, (side.y + side.height / 2 - sheet.y) / sheet.height];
  const outward = at[1] < 0.7 ? -0.06 : 0.06;
  await finger.drag([at, [at[0], at[1] + outward]]);
  assert.ok(feetOf(await slab.getAttribute('aria-label')) > square + 2, 'it bows outward');
  await finger.tap(by(page, 'Undo'));
  assert.equal(feetOf(await slab.getAttribute('aria-label')), square);

  await take(page, finger, 'Split');
  await finger.drag([[0.4, 0.5], [0.4, 0.85]]);
  const other = page.getByRole('button', { name: /^slab 2 2, broom/ });
  await other.waitFor();
  assert.ok(Math.abs(feetOf(await slab.getAttribute('aria-label')) + feetOf(await other.getAttribute('aria-label')) - square) <= 1);
  await finger.tap(by(page, 'Undo'));
  assert.equal(await other.count(), 0);
  assert.equal(feetOf(await slab.getAttribute('aria-label')), square);
  assert.deepEqual(page.faults, []);
  await page.context().close();
});

test('edges are tied by a tap and freed by another, and the plan cuts from them', async () => {
  const page = await start();
  const finger = await hand(page);
  await finger.tap(by(page, 'New pour'));
  await finger.drag([[0.2, 0.2], [0.8, 0.6]]);
  await page.getByRole('button', { name: /^slab, broom/ }).waitFor();
  await page.getByLabel('Against the house or another slab, or doweled to it').click();
  await finger.tap(by(page, 'Tap the edges'));
  const edges = page.locator('svg.sheet line.tied');
  const tap = async (place, count) => {
    await finger.tapSheet(place);
    await page.waitForFunction((wanted) => document.querySelectorAll('svg.sheet line.tied').length === wanted, count);
  };
  await tap([0.5, 0.2], 1);
  await tap([0.2, 0.4], 2);
  await tap([0.5, 0.2], 1);
  await page.getByText('Tied by edge 4.').waitFor();
  await page.getByText('Edges, one by one').click();
  await page.getByLabel(/^Edge 2: /).click();
  await page.getByText('Tied by edges 2, 4.').waitFor();
  assert.equal(await edges.count(), 2);
  await finger.tap(page.locator('.draft-bar').getByRole('button', { name: 'Done' }));
  await finger.tap(by(page, 'Day'));
  await finger.tap(by(page, 'Use where I am'));
  await planned(page);
  const { text } = await exported(page);
  assert.match(text, /^tied = true\ntied_edges = \[2, 4\]$/m);
  const { joints } = JSON.parse(nativePlan({ 'job.toml': text })['.json']).zones[0];
  assert.deepEqual(joints.isolation.map((one) => one.tied), [true, true]);
  assert.deepEqual(page.faults, []);
  await page.context().close();
});

test('the plan follows a corner while it is dragged', async () => {
  const page = await start();
  const finger = await hand(page);
  await finger.tap(by(page, 'New pour'));
  await finger.drag([[0.25, 0.2], [0.6, 0.4]]);
  await finger.tap(by(page, 'Day'));
  await finger.tap(by(page, 'Use where I am'));
  await finger.tap(by(page, 'Plan'));
  await page.getByText('Day sheet for the crew').waitFor({ timeout: 90000 });
  await finger.tap(by(page, 'Draw'));
  await page.getByRole('button', { name: /^slab, / }).press('Enter');
  await page.evaluate(() => {
    const words = () => document.querySelector('.plan-line').textContent;
    const first = words();
    globalThis.lines = new Set();
    new MutationObserver(() => words() !== first && globalThis.lines.add(words())).observe(document.querySelector('footer'), { subtree: true, childList: true, characterData: true });
  });
  await page.locator('svg.sheet .selected').focus();
  const handle = await page.locator('svg.sheet [data-corner="2"] .handle').boundingBox();
  await page.mouse.move(handle.x + 6, handle.y + 6);
  await page.mouse.down();
  const changes = () => page.evaluate(() => globalThis.lines.size);
  for (let i = 1; i < 400 && (await changes()) === 0; ++i) {
    await page.mouse.move(handle.x + 6 + Math.min(i, 60), handle.y + 6 + Math.min(i, 40));
    await page.waitForTimeout(25);
  }
  assert.ok((await changes()) > 0, 'a plan came before the finger was lifted');
  await page.mouse.up();
  // The shape, made anew while it was dragged, has the focus again for who goes on with keys.
  assert.equal(await page.evaluate(() => document.activeElement?.dataset?.kind), 'zone');
  assert.deepEqual(page.faults, []);
  await page.context().close();
});
