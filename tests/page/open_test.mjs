// The page opens from its file, on its own, under its own policy, with and without the script.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { close, demo, job, launch, makeSheet, openSheet, seeAs } from './support.mjs';

// The largest size of a page, which is downloaded by phone on a building site.
const mostBytes = 600 * 1000;
const sheets = {};
let browser;

before(async () => {
  browser = await launch();
  for (const name of ['spring', 'hot']) sheets[name] = makeSheet(demo(name));
  for (const name of ['midnight', 'half_hour', 'text', 'cold', 'washed']) sheets[name] = makeSheet(job(name));
});
after(() => browser.close());

function verdictOf(cautions) {
  const levels = cautions.map((caution) => caution.level);
  if (levels.includes('stop')) return 'Think again';
  return levels.includes('caution') ? 'Pour with care' : 'Good to pour';
}

test('the wash-off of exposed aggregate has its lane, and what it takes is on the list', async () => {
  const page = await openSheet(browser, sheets.washed);
  assert.equal(await page.locator('.day-bands path.op-expose').count(), 1);
  const { opens } = sheets.washed.json.zones[0].windows.find((one) => one.operation === 'expose');
  const line = page.locator('#agenda li', { hasText: 'walk: wash-off opens' });
  assert.equal(await line.locator('time').first().getAttribute('datetime'), opens);
  assert.match(await page.locator('.supplies').textContent(), /surface retarder[^]*rock salt/);
  await close(page);
});

test('opens without an error or a request, light and dark, under the gravest caution\'s verdict', async () => {
  const said = new Set();
  for (const [name, sheet] of Object.entries(sheets)) {
    const page = await openSheet(browser, sheet);
    for (const dark of [false, true]) {
      await seeAs(page, { width: 1280, dark });
      await page.waitForTimeout(50);
      assert.deepEqual(page.faults, [], name);
      assert.ok((await page.locator('main').innerText()).length > 500, name);
    }
    const words = verdictOf(sheet.json.cautions);
    assert.match(await page.locator('.verdict strong').innerText(), new RegExp(`^${words}:?$`), name);
    said.add(words);
    await close(page);
  }
  assert.ok(said.size > 1, 'the jobs at hand differ');
});

test('the demo pages are light', () => {
  for (const name of ['spring', 'hot']) {
    const bytes = Buffer.byteLength(sheets[name].html);
    assert.ok(bytes < mostBytes, `${name}: ${bytes} bytes`);
  }
});

test('the policy allows nothing but the page\'s own style and script', async () => {
  const page = await openSheet(browser, sheets.spring);
  const policy = await page
    .locator('meta[http-equiv="Content-Security-Policy"]')
    .getAttribute('content');
  const rules = Object.fromEntries(
    policy.split(';').map((rule) => rule.trim().split(' ')).map(([name, ...what]) => [name, what]));
  assert.deepEqual(rules['default-src'], ["'none'"]);
  for (const kind of ['script-src', 'style-src']) {
    assert.ok(rules[kind].every((source) => /^'(sha256-[A-Za-z0-9+/]{43}=|none)'$/.test(source)), kind);
  }
  assert.deepEqual(Object.keys(rules).sort(),
                   ['base-uri', 'default-src', 'form-action', 'script-src', 'style-src']);
  await close(page);
});

test('what the policy does not name is refused', async () => {
  const page = await openSheet(browser, sheets.spring);
  const refused = await page.evaluate(() => new Promise((done) => {
    const seen = [];
    document.addEventListener('securitypolicyviolation', (event) => {
      seen.push(event.effectiveDirective);
      if (seen.length === 3) done(seen.sort());
    });
    const add = (name, set) => document.body.append(Object.assign(document.createElement(name), set));
    add('img', { src: 'http://127.0.0.1:9/a.png' });
    add('script', { textContent: 'window.ran = true' });
    add('style', { textContent: 'body { color: red }' });
    setTimeout(() => done(seen.sort()), 2000);
  }));
  assert.deepEqual(refused, ['img-src', 'script-src-elem', 'style-src-elem']);
  assert.equal(await page.evaluate(() => window.ran), undefined);
  await close(page);
});

test('without script everything essential stands there', async () => {
  const seen = {};
  for (const script of [true, false]) {
    const page = await openSheet(browser, sheets.spring, { script });
    seen[script] = await page.locator('[data-json]:visible').allTextContents();
    if (!script) {
      for (const words of ['Pour with care', 'Tightest', 'Earliest cut due by', 'Watch for']) {
        assert.ok(await page.getByText(words).first().isVisible(), words);
      }
      assert.equal(await page.locator('#next-up').isVisible(), false);
    }
    await close(page);
  }
  assert.deepEqual(seen[false], seen[true]);
  assert.ok(seen[false].length > 100);
});
