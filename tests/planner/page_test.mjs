// The page as a reader meets it: clean to assistive technology, large enough for a thumb, inert to
// what is hostile, small enough to send.
import assert from 'node:assert/strict';
import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { after, before, test } from 'node:test';
import { gzipSync } from 'node:zlib';
import { demo, desk, findings, importText, launch, openPlanner, phone, planned, planner } from './support.mjs';

let browser;
before(async () => { browser = await launch(); });
after(() => browser.close());

const by = (page, words) => page.getByRole('button', { name: words, exact: true });
const screens = ['Draw', 'Day', 'Plan', 'On slab', 'Share'];

async function eachScreen(page, look) {
  await look('Pours');
  await importText(page, demo('spring'));
  await page.getByText('Day sheet for the crew').waitFor({ timeout: 60000 });
  for (const screen of screens) {
    await by(page, screen).click();
    await look(screen);
  }
  await by(page, 'Plan').click();
  for (const title of ['Crew, hour by hour', 'Saw list', 'What to bring']) await page.getByText(title, { exact: true }).click();
  await page.getByText('more to keep in mind').click();
  await look('the lists');
  await by(page, 'On slab').click();
  await by(page, 'After the pour').click();
  await look('after');
  await by(page, 'Draw').click();
  await page.getByRole('button', { name: /^landing, / }).press('Enter');
  for (const title of ['Color, border, base, risers, corners', 'Split, mirror, bow a side']) await page.getByText(title).click();
  await look('a zone');
}

// The look for bright sunlight is taken on the first screen, and stays.
const inSunlight = async (page) => page.locator('.tile').filter({ hasText: 'Bright sunlight' }).click();
const doubled = async (page) => page.evaluate(() => { document.documentElement.style.fontSize = '200%'; });

for (const [name, options, first = () => {}] of [
  ['phone, light', { size: phone }], ['phone, dark', { size: phone, dark: true }], ['phone, sunlight', { size: phone }, inSunlight],
  ['phone, text of twice the size', { size: phone }, doubled], ['phone, forced colors', { size: phone, forcedColors: true }],
  ['desk, light', { size: desk }], ['desk, dark', { size: desk, dark: true }],
]) {
  test(`axe finds nothing, nothing sticks out: ${name}`, async () => {
    const page = await openPlanner(browser, options);
    await first(page);
    await eachScreen(page, async (screen) => {
      assert.deepEqual(await findings(page), [], screen);
      const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
      assert.ok(wide <= 0, `${screen} is ${wide} px too wide`);
    });
    assert.deepEqual(page.faults, []);
    await page.context().close();
  });
}

// CSS Media Queries 5, prefers-reduced-motion: what moves without need is to stand still (published).
test('nothing moves for who wants no motion', async () => {
  const page = await openPlanner(browser, { size: phone });
  await page.emulateMedia({ reducedMotion: 'reduce' });
  // Whatever a style or a script may start: counted from its start on, however short it is.
  await page.evaluate(() => {
    globalThis.moved = [];
    for (const kind of ['animationstart', 'transitionrun']) addEventListener(kind, (event) => globalThis.moved.push(`${kind} ${event.target.tagName} ${event.target.className}`), true);
    Element.prototype.animate = function () { globalThis.moved.push(`animate ${this.tagName}`); return { cancel() {}, finished: Promise.resolve() }; };
    for (const name of ['scrollTo', 'scrollBy', 'scrollIntoView']) {
      for (const owner of [Element.prototype, globalThis]) {
        const own = owner[name];
        if (own) owner[name] = function (...words) { if (words[0]?.behavior === 'smooth') globalThis.moved.push(`${name} smooth`); return own.apply(this, words); };
      }
    }
  });
  const still = () => page.evaluate(() => [...globalThis.moved, ...document.getAnimations().map((one) => one.constructor.name),
    ...[...document.querySelectorAll('*')].filter((one) => getComputedStyle(one).scrollBehavior === 'smooth').map((one) => `smooth ${one.tagName}`)]);
  await eachScreen(page, async (screen) => assert.deepEqual(await still(), [], screen));
  // What a style may have started by now stands still too.
  await page.evaluate(() => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync('@keyframes turn { to { rotate: 1turn } } h1 { animation: turn 1s infinite; transition: color 1s } html { scroll-behavior: smooth }');
    document.adoptedStyleSheets = [sheet];
  });
  assert.deepEqual(await still(), []);
  await page.emulateMedia({ reducedMotion: 'no-preference' });
  assert.notDeepEqual(await still(), [], 'the test can tell');
  await page.context().close();
});

test('what is touched is 44 px high and wide at least', async () => {
  const page = await openPlanner(browser, { size: phone });
  await eachScreen(page, async (screen) => {
    const small = await page.evaluate(() => [...document.querySelectorAll('button, select, summary, .tile, .tick, input:not([type=radio], [type=checkbox], .spoken)')]
      .filter((element) => !element.closest('.spoken') && element.checkVisibility())
      .map((element) => [element, element.getBoundingClientRect()])
      .filter(([, box]) => box.height < 43.9 || box.width < 43.9)
      .map(([element, box]) => `${element.tagName} ${element.textContent.slice(0, 20)} ${box.width}x${box.height}`));
    assert.deepEqual(small, [], screen);
  });
  await page.context().close();
});

test('names that are scripts stay names; what is hostile is told and does nothing', async () => {
  const evil = '<img src=x onerror=alert(1)><script>alert(2)</script>';
  const page = await openPlanner(browser);
  await importText(page, demo('spring').replaceAll('Cabin landing, walk and pad', evil).replaceAll('"landing"', `"${evil}"`).replaceAll('"house"', `"${evil}"`), `${evil}.toml`);
  await page.getByText('Day sheet for the crew').waitFor({ timeout: 60000 });
  for (const screen of screens) {
    await by(page, screen).click();
    assert.equal(await page.locator('img, main script').count(), 0, screen);
  }
  await by(page, 'Plan').click();
  await by(page, 'Day sheet for the crew').click();
  await page.frameLocator('iframe').locator('h1').waitFor();
  assert.equal(await page.frameLocator('iframe').locator('img').count(), 0);
  await by(page, 'Close').click();
  assert.deepEqual(page.faults, []);

  await by(page, 'All pours').click();
  await by(page, 'New pour').waitFor();
  const jobs = await page.locator('.jobs li').count();
  for (const [text, words] of [
    ['[site\n', /line 1/], ['{"__proto__": {"x": 1}}', /given.toml: /], [`a = ${'['.repeat(3000)}`, /given.toml: /],
    ['__proto__ = 1\n', /given.toml: .*__proto__/s], ['x'.repeat(2_000_000), /given.toml: .*1048576/s], ['', /given.toml: /],
  ]) {
    if (!(await page.getByLabel('Open a job file').count())) await page.reload();
    await page.locator('details').first().evaluate((details) => { details.open = true; });
    await page.getByLabel('Open a job file').setInputFiles({ name: 'given.toml', mimeType: 'text/plain', buffer: Buffer.from(text) });
    await page.locator('.fault').filter({ hasText: words }).waitFor();
  }
  for (const text of ['no', '[]', '{"kind": "slabtide planner backup"}', '{"kind": "slabtide planner backup", "jobs": 7}', 'null', '['.repeat(100000)]) {
    await page.getByLabel('Restore a backup').setInputFiles({ name: 'back.json', mimeType: 'application/json', buffer: Buffer.from(text) });
    await page.locator('.fault').filter({ hasText: /back\.json: / }).waitFor();
  }
  // Of a backup that is one, every part that is none is told, and the rest comes in as text.
  const trap = '{"__proto__": {"x": 1}, "constructor": {"prototype": {"x": 1}}}';
  const backup = JSON.stringify({ kind: 'slabtide planner backup', version: 1, jobs: [
    { text: 7 }, { text: '__proto__ = 1\n' }, null, { text: demo('spring'), journal: { a: 1 }, turn: 'x', forecast: { text: 5 } },
  ], book: evil }).replace('"version":1', `"version":1,"__proto__":${trap}`);
  await page.getByLabel('Restore a backup').setInputFiles({ name: 'back.json', mimeType: 'application/json', buffer: Buffer.from(backup) });
  await page.locator('.told').filter({ hasText: /1 pour restored\.[^]*Left out[^]*Left out[^]*Left out[^]*mix-book\.toml/ }).waitFor();
  assert.equal(await page.locator('.jobs li').count(), jobs + 1);
  assert.equal(await page.evaluate(() => ({}).x), undefined);
  assert.equal(await page.locator('img, main script').count(), 0);
  await page.getByRole('button', { name: /Cabin landing.*20\d\d/ }).click();
  await by(page, 'Day').click();
  for (const text of [trap, '{"properties": {"updateTime": "<script>"}}', 'x'.repeat(9_000_000), '['.repeat(50000)]) {
    await page.getByLabel('Forecast file').setInputFiles({ name: 'hours.json', mimeType: 'application/json', buffer: Buffer.from(text) });
    await page.locator('.fault').filter({ hasText: /hours\.json: / }).waitFor();
    await by(page, 'Plan').click();
    await by(page, 'Day').click();
  }
  assert.equal(await page.evaluate(() => ({}).x), undefined);
  assert.deepEqual(page.faults, []);
  await page.context().close();
});

test('a full device is told in words, and what was typed stays on the screen', async () => {
  const page = await openPlanner(browser);
  await importText(page, demo('spring'));
  await page.locator('footer nav').waitFor();
  await page.evaluate(() => {
    IDBObjectStore.prototype.put = () => { throw new DOMException('full', 'QuotaExceededError'); };
  });
  await by(page, 'Share').click();
  await page.getByLabel('Name of the pour').fill('Too much');
  await page.getByLabel('Name of the pour').press('Enter');
  await page.locator('.fault').filter({ hasText: 'no room to keep your changes' }).waitFor();
  assert.equal(await page.getByLabel('Name of the pour').inputValue(), 'Too much');
  assert.equal((await exportedName(page)), 'too-much.toml');
  await page.context().close();
});
const exportedName = async (page) => {
  const [download] = await Promise.all([page.waitForEvent('download'), by(page, 'Job file').click()]);
  return download.suggestedFilename();
};

test('a hostile link is told', async () => {
  const base = await openPlanner(browser);
  const { url } = { url: base.url() };
  await base.context().close();
  for (const end of ['#job=%%%', '#job=AAAA', `#job=${'A'.repeat(300000)}`]) {
    const page = await openPlanner(browser, { url: url + end });
    await page.getByText(/The job in this link cannot be opened/).waitFor();
    assert.deepEqual(page.faults, []);
    await page.context().close();
  }
});

test('a sign noted on the slab moves the plan', async () => {
  const page = await openPlanner(browser);
  const today = await page.evaluate(() => new Date().toLocaleDateString('sv'));
  const start = await page.evaluate(() => new Date(Date.now() - 3 * 3600e3).toTimeString().slice(0, 5));
  const late = Number(start.slice(0, 2)) > 18; // three hours ago was yesterday
  await importText(page, demo('spring').replace('2026-05-14', today).replace('"08:00"', `"${late ? '00:00' : start}"`));
  await page.getByText('Day sheet for the crew').waitFor({ timeout: 60000 });
  await by(page, 'On slab').click();
  await page.locator('.tile').filter({ hasText: 'walk' }).click();
  await page.getByRole('button', { name: /^Thumbprint/ }).click();
  await page.locator('.noted li').filter({ hasText: 'thumbprint walk' }).or(page.locator('.noted li').filter({ hasText: /thumbprint\s+walk/ })).waitFor();
  await by(page, 'Plan').click();
  await page.getByText('Day sheet for the crew').waitFor({ timeout: 60000 });
  await by(page, 'On slab').click();
  await by(page, 'Undo the last').click();
  await page.getByText('Nothing yet.').waitFor();
  assert.deepEqual(page.faults, []);
  await page.context().close();
});

test('an alarm sounds when work opens, says which, and stays until it is tapped', async () => {
  const page = await openPlanner(browser);
  await page.clock.install({ time: new Date('2026-05-14T14:00:00Z') }); // 9:00 in the demo's yard
  await page.evaluate(() => {
    globalThis.tones = 0;
    const plain = OscillatorNode.prototype.start;
    OscillatorNode.prototype.start = function start(...when) { globalThis.tones += 1; return plain.apply(this, when); };
  });
  await importText(page, demo('spring'));
  await page.clock.runFor(3000);
  await page.getByText('Day sheet for the crew').waitFor({ timeout: 60000 });
  await by(page, 'On slab').click();
  await page.getByLabel('Sound an alarm when work opens').click();
  await page.clock.runFor(60e3);
  assert.equal(await page.locator('.alarm').count(), 0);
  await page.clock.runFor(3600e3 * 2);
  await page.locator('.alarm').waitFor();
  assert.ok(await page.evaluate(() => globalThis.tones) >= 3);
  const lines = await page.locator('.alarm li').allTextContents();
  assert.ok(lines.length <= 4 && lines.some((line) => /^10:58 AM broom, pad$/.test(line)), lines.join('; '));
  assert.deepEqual(await findings(page), []);
  await by(page, 'Draw').click(); // on whatever screen
  await page.locator('.alarm').getByRole('button', { name: 'OK' }).click();
  assert.equal(await page.locator('.alarm').count(), 0);
  assert.deepEqual(page.faults, []);
  await page.context().close();
});

// The page as a phone call hides it and the person comes back to it.
const turnTo = (page, state) => page.evaluate((now) => {
  Object.defineProperty(document, 'visibilityState', { configurable: true, get: () => now });
  document.dispatchEvent(new Event('visibilitychange'));
}, state);

test('the screen is kept on while it is ticked, after a phone call too', async () => {
  const page = await openPlanner(browser);
  await page.evaluate(() => {
    globalThis.locks = [];
    const lockAsDevicesDo = async () => {
      if (document.visibilityState !== 'visible') throw new DOMException('hidden', 'NotAllowedError');
      if (globalThis.refused) throw new DOMException('refused', 'NotAllowedError');
      const lock = { released: false, release: async () => { lock.released = true; } };
      globalThis.locks.push(lock);
      return lock;
    };
    Object.defineProperty(navigator, 'wakeLock', { configurable: true, value: { request: lockAsDevicesDo } });
    document.addEventListener('visibilitychange', () => {
      if (document.visibilityState === 'hidden') globalThis.locks.forEach((lock) => { lock.released = true; });
    });
  });
  const locks = async () => {
    await page.waitForTimeout(50);
    return page.evaluate(() => globalThis.locks.map((lock) => (lock.released ? 'released' : 'held')));
  };
  const call = async () => {
    await turnTo(page, 'hidden');
    await turnTo(page, 'visible');
  };
  await importText(page, demo('spring'));
  await by(page, 'On slab').click();
  const tick = page.getByLabel('Keep the screen on');
  await call();
  assert.deepEqual(await locks(), []);
  await tick.click();
  assert.deepEqual(await locks(), ['held']);
  await call();
  assert.deepEqual(await locks(), ['released', 'held']);
  await by(page, 'Plan').click();
  await call();
  await by(page, 'On slab').click();
  assert.deepEqual(await locks(), ['released', 'released', 'held']);
  assert.ok(await tick.isChecked());
  await tick.click();
  await call();
  assert.deepEqual(await locks(), ['released', 'released', 'released']);
  await page.evaluate(() => { globalThis.refused = true; });
  await tick.click();
  await page.getByText('This device does not let the page keep the screen on.').waitFor();
  assert.ok(!(await tick.isChecked()));
  assert.deepEqual(page.faults, []);
  await page.context().close();
});

test('what is open, the minutes left and what comes next keep time, and all else stays as it is', async () => {
  const page = await openPlanner(browser);
  await page.clock.install({ time: new Date('2026-05-14T16:00:00Z') }); // 11:00 in the demo's yard: the pad's broom is open
  await page.reload(); // so that the page goes by this clock from its start
  await importText(page, demo('spring'));
  await page.clock.runFor(3000);
  await page.getByText('Day sheet for the crew').waitFor({ timeout: 60000 });
  await page.clock.pauseAt(new Date('2026-05-14T16:05:00Z'));
  await by(page, 'Plan').click();
  await page.clock.runFor(60e3);
  const minutesLeft = async () => {
    const text = await page.locator('.now .open').filter({ hasText: 'broom, pad' }).textContent();
    return Number(/(\d+) min left$/.exec(text)[1]);
  };
  const first = await minutesLeft();
  await page.clock.runFor(60e3);
  assert.equal(await minutesLeft(), first - 1);
  await page.clock.setSystemTime(new Date('2026-05-14T16:16:30Z')); // the phone sleeps: no timer runs
  assert.equal(await minutesLeft(), first - 1);
  await turnTo(page, 'hidden');
  await turnTo(page, 'visible');
  assert.ok(Math.abs(await minutesLeft() - (first - 10)) <= 1);

  await by(page, 'On slab').click();
  await page.locator('.tile').filter({ hasText: 'pad' }).click();
  const next = page.locator('.now');
  assert.match(await next.textContent(), /^Next herefirst edge: /);
  await page.getByLabel('Thermometer, °F').fill('7');
  const scrolled = () => page.evaluate(() => [scrollY, document.activeElement.value]);
  await page.evaluate(() => scrollBy(0, 60));
  const before = await scrolled();
  await page.clock.runFor(20 * 60e3);
  assert.match(await next.textContent(), /^Next here(?!first edge)/);
  assert.deepEqual(await scrolled(), before);
  assert.ok(before[0] > 0 && before[1] === '7');
  await page.clock.runFor(48 * 3600e3);
  assert.ok(await next.isHidden());
  assert.deepEqual(page.faults, []);
  await page.context().close();
});

test('a forecast is asked for only when it is wanted, of the service named, and planned from', async () => {
  const page = await openPlanner(browser);
  await importText(page, demo('spring'));
  await planned(page);
  assert.deepEqual(page.faults, []);
  const asked = [];
  const hours = Array.from({ length: 120 }, (_, i) => Date.UTC(2026, 4, 13, 5) / 1000 + i * 3600);
  const each = (value) => hours.map(() => value);
  await page.route('https://api.open-meteo.com/**', (route) => {
    asked.push(route.request().url());
    route.fulfill({
      headers: { 'access-control-allow-origin': '*' }, contentType: 'application/json',
      body: JSON.stringify({
        latitude: 45.1, longitude: -91.6, utc_offset_seconds: 0, hourly_units: {
          time: 'unixtime', temperature_2m: '°C', dew_point_2m: '°C', relative_humidity_2m: '%', cloud_cover: '%', wind_speed_10m: 'm/s', wind_gusts_10m: 'm/s', shortwave_radiation: 'W/m²', precipitation: 'mm', precipitation_probability: '%', weather_code: 'wmo code',
        },
        hourly: {
          time: hours, temperature_2m: each(15), dew_point_2m: each(8), relative_humidity_2m: each(60), cloud_cover: each(40), wind_speed_10m: each(3), wind_gusts_10m: each(6), shortwave_radiation: each(200), precipitation: each(0), precipitation_probability: each(5), weather_code: each(2),
        },
      }),
    });
  });
  await by(page, 'Day').click();
  await page.getByRole('button', { name: /Open-Meteo/ }).click();
  await page.getByText('Got just now').waitFor();
  assert.equal(asked.length, 1);
  assert.match(asked[0], /^https:\/\/api\.open-meteo\.com\/v1\/forecast\?latitude=45\.1&longitude=-91\.6&/);
  await planned(page);
  await page.route('https://api.open-meteo.com/**', (route) => {
    asked.push(route.request().url());
    route.fulfill({ headers: { 'access-control-allow-origin': '*' }, contentType: 'text/html', body: '<html>Sign in' });
  });
  await page.getByRole('button', { name: /Open-Meteo/ }).click();
  await page.getByText('No forecast: the answer could not be read. Type the day below, or try again later.').waitFor();
  assert.deepEqual(page.faults, asked.map((url) => `request: ${url}`));
  await page.context().close();
});

test('a town is found by its name, with its height and time zone, and a hostile list is only words', async () => {
  const page = await openPlanner(browser);
  const asked = [];
  let answer = { status: 200, body: JSON.stringify({ results: [
    { name: 'Springfield', latitude: 42.1015, longitude: -72.5898, elevation: 21, timezone: 'America/New_York', country: 'United States', admin1: 'Massachusetts' },
    { name: '<img src=x onerror=alert(1)>', latitude: 39.8, longitude: -89.6, timezone: 'Mars/Phobos', __proto__: { polluted: 1 } },
    { name: 'Indianapolis', latitude: 39.77, longitude: -86.16, timezone: 'America/Indiana/Indianapolis' },
    { name: 'nowhere', latitude: 'x', longitude: 1e9 }, null, 'text'] }) };
  await page.route('https://geocoding-api.open-meteo.com/**', (route) => {
    asked.push(route.request().url());
    route.fulfill({ headers: { 'access-control-allow-origin': '*' }, contentType: 'application/json', ...answer });
  });
  await by(page, 'New pour').click();
  await by(page, 'Day').click();
  const find = async (name) => {
    const more = page.getByText('Or by the name of the town');
    if (!(await page.getByLabel('Town or ZIP code').isVisible())) await more.click();
    await page.getByLabel('Town or ZIP code').fill(name);
    await by(page, 'Find it').click();
  };
  await find('Spring field & Co');
  await page.locator('.found button').first().waitFor();
  assert.deepEqual(await page.locator('.found button').allTextContents(), ['Springfield, Massachusetts, United States', '<img src=x onerror=alert(1)>', 'Indianapolis']);
  assert.match(asked[0], /\?name=Spring%20field%20%26%20Co&count=6&/);
  assert.deepEqual(await findings(page), []);
  await page.locator('.found button').first().click();
  assert.equal(await page.getByLabel('Latitude, longitude').inputValue(), '42.1015, -72.5898');
  assert.equal(await page.getByLabel('Elevation').inputValue(), '69'); // 21 m
  assert.equal(await page.getByLabel('Time zone').inputValue(), 'America/New_York');

  await find('x');
  await page.locator('.found button').nth(1).click(); // no such time zone: the one that was stays
  assert.equal(await page.getByLabel('Time zone').inputValue(), 'America/New_York');
  await find('Indianapolis');
  await page.locator('.found button').nth(2).click(); // a zone that browsers list under an older name
  assert.equal(await page.getByLabel('Time zone').inputValue(), 'America/Indiana/Indianapolis');
  answer = { status: 200, body: '{"generationtime_ms": 0.5}' };
  await find('Nosuchtown');
  await page.getByText('No such place is listed').waitFor();
  answer = { status: 500, body: '' };
  await find('Nosuchtown');
  await page.getByText('it answers with status 500').waitFor();
  answer = { status: 200, body: '<html>Sign in' };
  await find('Nosuchtown');
  await page.getByText('No list of places: the answer could not be read. Type the two numbers above, or try again later.').waitFor();
  assert.deepEqual(page.faults.filter((fault) => !/status of 500/.test(fault)), asked.map((url) => `request: ${url}`));
  await page.context().close();
});

test('no larger than may be sent', () => {
  assert.ok(statSync(join(planner, 'index.html')).size <= 1.4e6);
  const page = readFileSync(join(planner, 'index.html'), 'utf8');
  const engine = /<script type="text\/plain" id="engine">([^<]*)/;
  assert.ok(Buffer.from(page.match(engine)[1], 'base64').length <= 0.8e6);
  const code = page.replace(engine, '');
  assert.ok(gzipSync(code).length <= 150e3);
});

test('two typed numbers bring the time zone of the place, and the shadows its sun', async () => {
  const page = await openPlanner(browser);
  await by(page, 'New pour').click();
  await by(page, 'Day').click();
  const zone = page.getByLabel('Time zone');
  assert.equal(await zone.inputValue(), 'America/Chicago'); // of the device
  for (const [place, name] of [['42.36, -71.06', 'America/New_York'], ['33.45, -112.07', 'America/Phoenix']]) {
    await page.getByLabel('Latitude, longitude').fill(place);
    await page.getByLabel('Latitude, longitude').press('Enter');
    await page.getByText(`The clock there is that of ${name.replaceAll('_', ' ')}.`).waitFor({ state: 'attached' });
    assert.equal(await zone.inputValue(), name);
  }
  await by(page, 'Undo').click();
  assert.equal(await zone.inputValue(), 'America/New_York');
  assert.deepEqual(page.faults, []);
  await page.context().close();
});
