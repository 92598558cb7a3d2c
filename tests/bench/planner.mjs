// node planner.mjs: what a drag costs with the processor slowed four times (SLABTIDE_PLANNER is the
// folder of the built page). While a corner is dragged for some seconds: how long the page's script
// is busy with each move and each picture, and how old the plan gets that is shown. Then, opened
// offline from the service worker's cache: when something is painted, when a tap on New pour has made
// one, and when a pour that was kept has its plan again.
import { demo, importText, launch, openPlanner, phone, serveSite } from '../planner/support.mjs';

const slowed = 4;
const seconds = 6;
const browser = await launch();
const watched = await browser.newContext({ viewport: phone });
// Answers of the engine, each of which is shown as it comes; the words of most are those of the last.
await watched.addInitScript(() => {
  globalThis.told = { frames: [], plans: [] };
  Object.defineProperty(Worker.prototype, 'onmessage', {
    set(take) {
      this.addEventListener('message', (event) => {
        if ('answer' in event.data) globalThis.told.plans.push(performance.now());
        take.call(this, event);
      });
    },
  });
});
const page = await openPlanner(browser, { context: watched });
await importText(page, demo('spring'));
await page.getByText('Day sheet for the crew').waitFor({ timeout: 90000 });
await page.getByRole('button', { name: 'Draw', exact: true }).click();
await page.getByRole('button', { name: /^pad, / }).press('Enter');
const session = await page.context().newCDPSession(page);
await session.send('Emulation.setCPUThrottlingRate', { rate: slowed });
await page.evaluate(() => {
  const { told } = globalThis;
  told.plans.length = 0;
  const plain = globalThis.requestAnimationFrame;
  globalThis.requestAnimationFrame = (draw) => plain((at) => {
    const before = performance.now();
    draw(at);
    told.frames.push(performance.now() - before);
  });
});
const box = await page.locator('svg.sheet [data-corner="2"] .handle').boundingBox();
const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
await page.mouse.move(x, y);
await page.mouse.down();
const from = Date.now();
for (let i = 0; Date.now() - from < seconds * 1000; ++i) await page.mouse.move(x + 20 * Math.sin(i / 10), y + 15 * Math.cos(i / 10));
const { frames, plans } = await page.evaluate(() => globalThis.told);
await page.mouse.up();
frames.sort((a, b) => a - b);
const gaps = plans.slice(1).map((at, i) => at - plans[i]);
console.log(`${frames.length} pictures: half in ${frames[Math.floor(frames.length / 2)].toFixed(1)} ms, 95 of 100 in ${frames[Math.floor(frames.length * 0.95)].toFixed(1)} ms, the slowest ${frames.at(-1).toFixed(1)} ms`);
console.log(`${plans.length} plans in ${seconds} s, the longest wait ${Math.max(0, ...gaps).toFixed(0)} ms`);

const site = await serveSite();
const first = await openPlanner(browser, { size: phone, url: site.url });
await importText(first, demo('spring'));
await first.getByText('Day sheet for the crew').waitFor({ timeout: 90000 });
await first.evaluate(() => navigator.serviceWorker.ready);
const context = first.context();
await first.close();
await context.setOffline(true);
for (let visit = 1; visit <= 3; ++visit) {
  const again = await context.newPage();
  const slow = await context.newCDPSession(again);
  await slow.send('Emulation.setCPUThrottlingRate', { rate: slowed });
  const opened = Date.now();
  await again.goto(site.url, { waitUntil: 'commit' });
  await again.getByRole('button', { name: 'New pour', exact: true }).click();
  await again.locator('svg.sheet').waitFor();
  const usable = Date.now() - opened;
  const paint = await again.evaluate(() => performance.getEntriesByName('first-contentful-paint')[0].startTime);
  console.log(`opened from cache: painted after ${paint.toFixed(0)} ms, a new pour's sheet after ${usable} ms`);
  await again.close();
}
site.end();
await browser.close();
