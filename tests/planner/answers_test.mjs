// What the plan's screen tells beyond the hours, and what is done after the pour.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { after, before, test } from 'node:test';
import { demo, desk, exported, importText, launch, openPlanner, phone, planned, startEngine } from './support.mjs';

let browser;
before(async () => { browser = await launch(); });
after(() => browser.close());

const by = (page, words) => page.getByRole('button', { name: words, exact: true });
const ready = (page) => page.getByText('Day sheet for the crew').waitFor({ timeout: 90000 });
const ask = await startEngine();

async function openSpring(options) {
  const page = await openPlanner(browser, options);
  await importText(page, demo('spring'));
  await ready(page);
  return page;
}

test('crew, saw list and what to bring are those of the plan', async () => {
  const page = await openSpring();
  const texts = { 'job.toml': demo('spring') };
  const day = JSON.parse(ask({ ask: 'plan', job: 'job.toml', texts, now: '2026-05-13T18:00Z', draws: 0, formats: ['.json'] }).files['.json']);
  for (const title of ['Crew, hour by hour', 'Saw list', 'What to bring']) await page.getByText(title, { exact: true }).click();
  const people = await page.locator('details.card section h3').allTextContents();
  assert.equal(people.length, day.crew.length);
  assert.match(people[0], new RegExp(`^${day.crew[0].name}: `));
  const tasks = day.crew.reduce((sum, person) => sum + person.tasks.length, 0);
  assert.equal(await page.locator('details.card section li').count(), tasks);
  assert.equal(await page.locator('.cuts li').count(), day.saw.filter((cut) => cut.on_hand).length);
  const powder = day.supplies.find((supply) => supply.item === 'release_powder');
  assert.match(powder.says, /^\d+ lb$/);
  assert.ok(await page.getByText(`${powder.name}: ${powder.says}`).count());
  assert.deepEqual(page.faults, []);
  await page.context().close();
});

test('with no saw on hand the saw list stands all the same, and says so', async () => {
  const page = await openPlanner(browser);
  await importText(page, demo('spring').replace(/^saws = .*$/m, 'saws = []'));
  await ready(page);
  await page.getByText('Saw list', { exact: true }).click();
  const saws = page.locator('details.card').filter({ has: page.locator('.cuts') });
  assert.deepEqual((await saws.locator('h3').allTextContents()).sort(), ['With the early-entry saw (not on hand)', 'With the wet saw (not on hand)']);
  assert.ok(await saws.locator('.cuts li').count() > 0);
  assert.deepEqual(page.faults, []);
  await page.context().close();
});

test('what to watch for is told as the reports tell it: once, the worst first, the rest folded', async () => {
  const { watch, text } = ask({ ask: 'plan', job: 'job.toml', texts: { 'job.toml': demo('hot') }, now: '2026-05-13T18:00Z', words: true, formats: ['.json'] });
  const plain = text.replace(/\s+/g, ' ');
  // The rest is only named in the text: in full on the page.
  for (const told of watch.filter((each) => each.at_once)) assert.ok(plain.includes(told.text), told.text);
  const page = await openPlanner(browser);
  await importText(page, demo('hot'));
  await ready(page);
  const card = page.locator('.card').filter({ has: page.getByRole('heading', { name: 'Watch for' }) });
  const says = ({ level, zone, text: words }) => `${level === 'stop' ? 'Stop: ' : ''}${zone ? `${zone}: ` : ''}${words}`;
  assert.deepEqual(await card.locator('> ul li').allTextContents(), watch.filter((told) => told.at_once).map(says));
  assert.equal(await card.locator('> ul li').filter({ hasText: /^walk: evaporation reaches .*; also pad / }).count(), 1);
  const rest = watch.filter((told) => !told.at_once).map(says);
  assert.ok(watch.every(({ level, at_once: atOnce }) => atOnce === (level !== 'note')));
  assert.ok(rest.length > 1 && !(await card.locator('details li').first().isVisible()));
  await card.getByText(`${rest.length} more to keep in mind`).click();
  assert.deepEqual(await card.locator('details li').allTextContents(), rest);
  assert.deepEqual(page.faults, []);
  await page.context().close();
});

test('the hours of the weather open as the engine makes them', async () => {
  const page = await openSpring();
  await by(page, 'Show the hours').click();
  await by(page, 'The hours').click();
  await page.frameLocator('iframe').locator('h1').waitFor();
  await by(page, 'Close').click();
  assert.deepEqual(page.faults, []);
  await page.context().close();
});

test('choices are tried when asked for, and an edit makes them old', async () => {
  const page = await openSpring();
  await by(page, 'Try them').click();
  await by(page, 'Full comparison').waitFor({ timeout: 240000 });
  assert.equal(await page.locator('.choices li').filter({ hasText: /^as ordered/ }).count(), 1);
  assert.match(await page.locator('.choices li').first().textContent(), /the one to prefer/);
  await by(page, 'Full comparison').click();
  await page.frameLocator('iframe').locator('h1').waitFor();
  await by(page, 'Close').click();
  await by(page, 'Day').click();
  await page.getByLabel('Finishers').fill('5');
  await page.getByLabel('Finishers').press('Enter');
  await by(page, 'Plan').click();
  await by(page, 'Try them').waitFor();
  assert.deepEqual(page.faults, []);
  await page.context().close();
});

const noted = '2026-05-14 08:04  placed  pad\n2026-05-14 11:20  thumbprint  pad\n2026-05-14 13:05  initial-set  pad\n';
// The demo's pour with a named mix and its journal, as a backup brings it.
const finished = (name) => JSON.stringify({
  kind: 'slabtide planner backup', version: 1,
  jobs: [{ text: demo('spring').replace('Cabin landing, walk and pad', name), journal: noted, turn: 0 }],
});
async function restore(page, text) {
  await page.getByText('Open a file, back up, restore').click();
  await page.getByLabel('Restore a backup').setInputFiles({ name: 'b.json', mimeType: 'application/json', buffer: Buffer.from(text) });
  await page.locator('.told').filter({ hasText: '1 pour restored.' }).waitFor();
}

test('after the pour: checked back, learned, the book kept, saved, backed up, and planned from', async () => {
  const page = await openPlanner(browser);
  await restore(page, finished('Finished pour'));
  await page.getByRole('button', { name: /^Finished pour .*20\d\d/ }).click();
  await ready(page);
  await by(page, 'Day').click();
  await page.getByLabel('Name of the mix').fill('six sack');
  await page.getByLabel('Name of the mix').press('Enter');
  await by(page, 'On slab').click();
  await by(page, 'After the pour').click();
  await by(page, 'Compare them').click();
  await by(page, 'See all of it').waitFor({ timeout: 60000 });
  assert.equal(await page.locator('table[aria-label="Noted and planned"] tbody tr').count(), 3);
  await by(page, 'Learn from this pour').click();
  await page.locator('.after p').filter({ hasText: /In the mix book: six sack, set times by \d\.\d\d, from 2 readings/ }).waitFor({ timeout: 60000 });
  assert.equal((await exported(page, 'Mix book')).name, 'mix-book.toml');

  await by(page, 'All pours').click();
  await page.reload();
  await page.getByText('Mix book', { exact: true }).click();
  const [book] = await Promise.all([page.waitForEvent('download'), by(page, 'Save the mix book').click()]);
  const text = readFileSync(await book.path(), 'utf8');
  assert.match(text, /name = "six sack"/);
  await page.getByText('Open a file, back up, restore').click();
  const [backup] = await Promise.all([page.waitForEvent('download'), by(page, 'Back up all pours').click()]);
  const whole = readFileSync(await backup.path(), 'utf8');
  assert.equal(JSON.parse(whole).book, text);

  // On another device the book comes with the backup; a book of its own there is kept.
  const other = await openPlanner(browser);
  await restore(other, whole);
  await other.getByText('Mix book', { exact: true }).click();
  const [again] = await Promise.all([other.waitForEvent('download'), by(other, 'Save the mix book').click()]);
  assert.equal(readFileSync(await again.path(), 'utf8'), text);
  await other.getByLabel('Open a mix book').setInputFiles({ name: 'bad.toml', mimeType: 'text/plain', buffer: Buffer.from('[[mix]]\nname = 3\n') });
  await other.locator('.fault').filter({ hasText: /bad\.toml: line 2/ }).waitFor();
  assert.deepEqual([...page.faults, ...other.faults], []);
  await page.context().close();
  await other.context().close();
});

test('the book changes the plan of the next pour with that mix, as the engine says', async () => {
  const page = await openPlanner(browser);
  const named = demo('spring').replace('\n[mix]\n', '\n[mix]\nname = "six sack"\n');
  const book = '[[mix]]\nname = "six sack"\n\n[[mix.pour]]\njob = "x"\nsite = "y"\ndate = 2026-04-01\nset_factor = 1.4\nreadings = 4\nlate_min = [40]\n';
  await page.getByText('Mix book', { exact: true }).click();
  await page.getByLabel('Open a mix book').setInputFiles({ name: 'mix-book.toml', mimeType: 'text/plain', buffer: Buffer.from(book) });
  await by(page, 'Save the mix book').waitFor();
  await page.locator('details pre').filter({ hasText: /six sack[^]*plans multiply its set times by 1\.\d\d/ }).waitFor();
  await importText(page, named);
  await planned(page);
  const first = async () => (await page.locator('.card table tbody td').first().textContent()).slice(0, 8);
  const texts = { 'job.toml': named };
  // The table's first column is the zone's first part, if it has parts.
  const opens = (beside) => {
    const { files } = ask({ ask: 'plan', job: 'job.toml', texts: { ...beside, ...texts }, now: '2026-05-13T18:00Z', draws: 0, formats: ['.json'] });
    const [zone] = JSON.parse(files['.json']).zones;
    return (zone.parts[0] ?? zone).windows.find((window) => window.opens).opens.slice(11, 16);
  };
  assert.notEqual(opens({}), opens({ 'mix-book.toml': book }));
  const [hour, minute] = opens({ 'mix-book.toml': book }).split(':').map(Number);
  assert.equal(await first(), `${hour % 12 || 12}:${String(minute).padStart(2, '0')} ${hour < 12 ? 'AM' : 'PM'}`.padEnd(8).slice(0, 8));
  await page.context().close();
});

test('map, timeline and picture of the day open by themselves, as the sheet has them', async () => {
  for (const size of [phone, desk]) {
    const page = await openSpring({ size });
    const shown = async (title) => {
      await by(page, title).click();
      await page.getByRole('dialog', { name: title }).waitFor();
      return page.frameLocator(`iframe[title="${title}"]`);
    };
    const fits = async (frame) => {
      const over = await frame.locator('html').evaluate((root) => root.scrollWidth - root.clientWidth);
      assert.ok(over <= 1, `${over} px over`);
      await by(page, 'Close').click();
    };
    const map = await shown('Map by the hour');
    assert.deepEqual(await map.locator('main > *').evaluateAll((all) => all.map((each) => each.id)), ['map']);
    // What is said of an hour changes with it, so the map's own script runs under the page's policy.
    const texts = [];
    for (const hour of ['0', '24']) {
      await map.locator('#map-hour').fill(hour);
      texts.push(await map.locator('#map-says').textContent());
    }
    assert.match(texts[1], /ready/);
    assert.notEqual(texts[0], texts[1]);
    await fits(map);
    const timeline = await shown('Timeline');
    const events = timeline.locator('#agenda > li');
    await events.first().waitFor({ state: 'visible' });
    assert.ok(await events.count() > 10);
    await fits(timeline);
    assert.equal(await by(page, 'The day as a picture').count(), size === desk ? 1 : 0);
    if (size === desk) {
      const picture = await shown('The day as a picture');
      await picture.locator('.day-bands svg').first().waitFor({ state: 'visible' });
      await fits(picture);
    }
    assert.deepEqual(page.faults, []);
    await page.context().close();
  }
});
