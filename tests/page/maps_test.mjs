// The maps of fifty layouts drawn at random, at the widths of a phone, a tablet and a desk and on
// paper: no text is smaller than 12 px, no name, letter or number covers another, and a name stands
// in its zone or is a letter that the key explains.
import assert from 'node:assert/strict';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { rmSync, writeFileSync } from 'node:fs';
import { after, before, test } from 'node:test';
import { close, launch, makeSheet, openSheet, printedWidth, seeAs } from './support.mjs';

let browser;
before(async () => { browser = await launch(); });
after(() => browser.close());

// Numbers that are the same in every run (mulberry32).
function numbers(seed) {
  let state = seed;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

const words = ['pad', 'walk', 'driveway apron', 'landing', 'patio by the kitchen', 'step', 'Wide walk', 'pool deck, west side'];

// Zones in the fields of a grid whose rows and columns differ much, some of them narrow.
function layout(seed) {
  const random = numbers(seed);
  const between = (low, high) => low + Math.floor(random() * (high - low + 1));
  const spans = (count) => Array.from({ length: count }, () => (random() < 0.3 ? between(2, 4) : between(6, 30)));
  const [columns, rows] = [spans(between(1, 4)), spans(between(1, 3))];
  const zones = [];
  let y = 0;
  for (const height of rows) {
    let x = 0;
    for (const width of columns) {
      const left = zones.length === 0 || random() < 0.85;
      if (left) zones.push({ x, y, width: width - 0.5, height: height - 0.5 });
      x += width;
    }
    y += height;
  }
  const across = columns.reduce((a, b) => a + b);
  const point = (px, py) => `[${px}, ${py}]`;
  const zone = (one, i) => `
[[zone]]
name = "${words[between(0, words.length - 1)]} ${i + 1}"
outline = [${point(one.x, one.y)}, ${point(one.x + one.width, one.y)}, ${point(one.x + one.width, one.y + one.height)}, ${point(one.x, one.y + one.height)}]
thickness = 4
finish = "${random() < 0.5 ? 'broom' : 'stamp'}"
`;
  const wall = random() < 0.7 ? `
[[obstacle]]
kind = "wall"
name = "${random() < 0.5 ? 'house' : 'the neighbor\u2019s garage'}"
from = [-1, ${y + 1}]
to = [${across}, ${y + 1}]
height = 9
` : '';
  const tree = random() < 0.5 ? `
[[obstacle]]
kind = "tree"
name = "maple"
at = [${between(0, across)}, ${between(0, y)}]
radius = 5
height = 20
` : '';
  return `name = "Layout ${seed}"

[site]
latitude = 45
longitude = -92
time_zone = "America/Chicago"

[pour]
date = 2026-05-14
start = "08:00"
saws = ["early-entry", "wet"]

[weather]
high = 68
low = 45
wind = 6
cloud = 30

[mix]
sacks = 6
w_cm = 0.45
strength = 4000
concrete_temperature = 62
${zones.map(zone).join('')}${wall}${tree}`;
}

// What a reader sees of the page's cut maps and, once, the map of the hour: in
// the browser. Faults in words; boxes of what stands on each map, in its own drawing units.
function faultsOfMaps() {
  const least = 11.95; // of 12, as browsers round
  const faults = [];
  const told = new Set();
  for (const svg of document.querySelectorAll('svg.plan')) {
    if (!svg.checkVisibility()) continue;
    const where = svg.closest('.on-paper') ? 'truck' : svg.closest('#cuts') ? 'cuts' : 'map';
    if (where === 'map' && told.has(where)) continue;
    told.add(where);
    // The shared parts are drawn with `use`, where nothing can be measured: copied in, they can be.
    for (const use of svg.querySelectorAll(':scope > use')) {
      const copy = document.querySelector(use.getAttribute('href')).cloneNode(true);
      copy.removeAttribute('id');
      use.replaceWith(copy);
    }
    const matrix = svg.getScreenCTM();
    const boxOf = (element) => element.getBoundingClientRect();
    const labels = [];
    for (const text of svg.querySelectorAll('text')) {
      const size = parseFloat(getComputedStyle(text).fontSize) * matrix.a;
      if (size < least) faults.push(`${where}: ${size.toFixed(1)} px: ${text.textContent}`);
      if (text.closest('.lines')) continue;
      const disc = text.closest('.cut-number')?.querySelector('circle');
      const box = boxOf(text);
      // Of the line's height, which a font adds to above and below, the letters themselves.
      const spare = disc || text.hasAttribute('transform') ? 0 : (box.height - size) / 2;
      labels.push({ words: text.textContent, name: text.classList.contains('plan-zone-name'),
        disc: disc && boxOf(disc), text: box,
        box: disc ? boxOf(disc) : { left: box.left, right: box.right, top: box.top + spare, bottom: box.bottom - spare } });
    }
    for (const bar of svg.querySelectorAll('.plan-scale, .plan-north')) labels.push({ words: bar.getAttribute('class'), box: boxOf(bar) });
    const apart = 0.6; // px, half a pixel of rounding
    for (let i = 0; i < labels.length; ++i) {
      const a = labels[i];
      if (a.disc && (a.text.left < a.disc.left || a.text.right > a.disc.right)) faults.push(`${where}: ${a.words} is wider than its disc`);
      for (let k = 0; k < i; ++k) {
        const b = labels[k];
        if (a.box.left < b.box.right - apart && b.box.left < a.box.right - apart && a.box.top < b.box.bottom - apart && b.box.top < a.box.bottom - apart) {
          faults.push(`${where}: "${a.words}" covers "${b.words}"`);
        }
      }
    }
    const key = [...(svg.parentElement.querySelector('.map-names')?.querySelectorAll('b') ?? [])].map((one) => one.textContent);
    const zones = [...svg.querySelectorAll('.plan-zone')];
    for (const label of labels.filter((one) => one.name)) {
      if (key.includes(label.words)) continue;
      const inside = zones.some((zone) => {
        const outline = boxOf(zone);
        return label.box.left > outline.left - 1 && label.box.right < outline.right + 1 && label.box.top > outline.top - 1 && label.box.bottom < outline.bottom + 1;
      });
      if (!inside) faults.push(`${where}: "${label.words}" is not within its zone, and no letter`);
    }
    const numbers = labels.filter((one) => one.disc).length;
    const listed = where === 'truck' ? svg.closest('.on-paper').querySelectorAll('ol li').length
      : where === 'cuts' ? svg.parentElement.querySelectorAll('tbody tr').length : 0;
    if (numbers !== listed) faults.push(`${where}: ${numbers} numbers of ${listed} cuts`);
  }
  return faults;
}

// Opens what is folded; true once it stays so and the maps of the cuts show, if there are any.
function opened() {
  for (const one of document.querySelectorAll('details')) one.open = true;
  return [...document.querySelectorAll('#cuts svg.plan')].every((one) => one.checkVisibility());
}

const layouts = 50;
const views = [[360, 'screen'], [768, 'screen'], [1000, 'screen'], [1280, 'screen'], [printedWidth('Letter'), 'print']];

test('fifty layouts: no text under 12 px, nothing covered, names in their zones or keyed', async () => {
  const path = join(tmpdir(), `slabtide-layout-${process.pid}.toml`);
  const faults = [];
  let seen = 0;
  for (let seed = 1; seed <= layouts; ++seed) {
    writeFileSync(path, layout(seed));
    const sheet = makeSheet(path, { json: false, options: ['--draws', '0'] });
    const page = await openSheet(browser, sheet);
    for (const [width, media] of views) {
      await seeAs(page, { width, media });
      await page.waitForFunction(opened); // the sheet folds its parts when it gets narrow
      seen += await page.locator('svg.plan:visible').count();
      faults.push(...(await page.evaluate(faultsOfMaps)).map((fault) => `layout ${seed}, ${media} ${width}, ${fault}`));
    }
    await close(page);
  }
  rmSync(path);
  assert.ok(seen > 2 * layouts * views.length, `${seen} maps`); // of cuts, for each saw, and of readiness
  assert.deepEqual(faults, []);
});
