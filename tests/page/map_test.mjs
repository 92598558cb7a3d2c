// The map responds to the choice of an operation and to the hour, by mouse and by
// keyboard, and what it shows agrees with the day's JSON.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { close, demo, job, launch, makeSheet, openSheet, plain } from './support.mjs';

let spring;
let browser;

before(async () => {
  browser = await launch();
  spring = makeSheet(demo('spring'));
});
after(() => browser.close());

const choose = (page, id) => page.locator(`[name=map-choice][value=${id}]`).check();
const setHour = (page, k) => page.locator('#map-hour').evaluate((slider, value) => {
  slider.value = String(value);
  slider.dispatchEvent(new Event('input', { bubbles: true }));
}, k);
// Whose times are told beside the map and drawn on it, lines under the names and their times over them.
const shownTimes = async (page) => {
  const choices = (all) => all.map((one) => one.dataset.choice);
  const told = await page.locator('.map-times:visible').evaluateAll(choices);
  assert.deepEqual(await page.locator('.time-layer.shown').evaluateAll(choices), [...told, ...told]);
  return told;
};
const drawnLines = (page) => page.locator('.time-layer.shown').last().innerHTML();
// How many cells of a zone are in each state.
const states = (page, zone) => page.locator('.hour-zone').nth(zone).evaluate((group) => {
  const count = {};
  for (const path of group.querySelectorAll('path')) {
    const state = path.getAttribute('class');
    count[state] = (count[state] ?? 0) + 1;
  }
  return count;
});
// The quarter hour of the slider that contains a clock time of the day, and the next.
const quarters = async (page, iso) => {
  const start = await page.locator('.plan-hour').getAttribute('data-start');
  const at = (Date.parse(iso) - Date.parse(start)) / 900000;
  return [Math.floor(at), Math.ceil(at)];
};
const windowOf = (part, operation) => part.windows.find((one) => one.operation === operation);

test('there is one map, and its times are those of the operation that is chosen', async () => {
  const page = await openSheet(browser, spring);
  assert.equal(await page.locator('#map svg.plan').count(), 1);
  assert.deepEqual(await shownTimes(page), ['finish']);
  const before = await drawnLines(page);
  await choose(page, 'detail_edge');
  assert.deepEqual(await shownTimes(page), ['detail_edge']);
  assert.notEqual(before, await drawnLines(page));
  await choose(page, 'stamp');
  // Only the landing is stamped, and not its border.
  assert.deepEqual(Object.keys(await states(page, 1)), ['idle']);
  assert.deepEqual(Object.keys(await states(page, 2)), ['idle']);
  assert.deepEqual(page.faults, []);
  await close(page);
});

test('the hour shows what the day\'s JSON says of it', async () => {
  const page = await openSheet(browser, spring);
  const pad = spring.json.zones.findIndex((zone) => zone.name === 'pad');
  const broom = windowOf(spring.json.zones[pad], 'broom');
  await choose(page, 'broom');
  const [before] = await quarters(page, broom.opens);
  const [, ready] = await quarters(page, broom.open_all_over);
  await setHour(page, before - 1);
  assert.deepEqual(Object.keys(await states(page, pad)), ['soon']);
  await setHour(page, ready);
  // Open all over is when nine tenths of the area are ready.
  const { ready: count, soon = 0, ...others } = await states(page, pad);
  assert.deepEqual(others, {});
  assert.ok(count >= 0.9 * (count + soon), `${count} cells ready, ${soon} not yet`);
  assert.match(await page.locator('#map-says').innerText(), /ready \((landing, )?pad\)/);
  // An hour after it begins to close all of the pad is too stiff, because it is all of one age.
  const [, closed] = await quarters(page, broom.closes);
  await setHour(page, closed + 4);
  assert.deepEqual(Object.keys(await states(page, pad)), ['stiff']);
  // While the landing is being placed the pad is not there yet.
  await setHour(page, 0);
  assert.deepEqual(Object.keys(await states(page, pad)), ['wait']);
  await close(page);
});

test('shade moves over the plan with the hour, and night covers it', async () => {
  const page = await openSheet(browser, spring);
  const shade = () => page.locator('.hour-shade').innerHTML();
  const clock = () => page.locator('#map-clock').innerText().then(plain);
  await setHour(page, 2);
  const morning = await shade();
  assert.equal(await clock(), '8:30 AM');
  await setHour(page, 32);
  assert.equal(await clock(), '4:00 PM');
  assert.notEqual(await shade(), morning);
  // The house is east of everything: in the morning its shade is to the west, over the landing, and
  // in the afternoon to the east.
  const reach = (markup) => {
    const house = /d="M([^"]*)z"/.exec(markup)[1].split('L').map((one) => Number(one.split(' ')[0]));
    return Math.max(house[2], house[3]) - house[0];
  };
  assert.ok(reach(morning) < -50, 'the morning shade lies west of the house');
  assert.ok(reach(await shade()) > 10, 'the afternoon shade lies east of it');
  await close(page);
  const late = makeSheet(job('midnight'));
  const night = await openSheet(browser, late);
  const last = await night.locator('#map-hour').getAttribute('max');
  const shadows = (await night.locator('.plan-hour').getAttribute('data-shadows')).split(',');
  assert.equal(shadows.length, Number(last) + 1);
  await setHour(night, shadows.indexOf('-'));
  assert.equal(await night.locator('.hour-shade .dark').count(), 1);
  assert.match(await night.locator('#map-says').innerText(), /The sun is down/);
  await close(night);
});

test('all of it answers to the keyboard', async () => {
  const page = await openSheet(browser, spring);
  await page.locator('[name=map-choice]:checked').focus();
  await page.keyboard.press('ArrowRight');
  assert.deepEqual(await shownTimes(page), ['first_edge']);
  const slider = page.locator('#map-hour');
  const before = await slider.getAttribute('aria-valuetext');
  await slider.focus();
  await page.keyboard.press('ArrowRight');
  assert.notEqual(await slider.getAttribute('aria-valuetext'), before);
  await page.keyboard.press('Home');
  assert.equal(plain(await slider.getAttribute('aria-valuetext')), '8:00 AM');
  assert.equal(plain(await page.locator('#map-clock').innerText()), '8:00 AM');
  const summary = page.locator('.map-times:visible summary').first();
  await summary.focus();
  await page.keyboard.press('Enter');
  assert.ok(await page.locator('.map-times:visible table').first().isVisible());
  await close(page);
});

test('on the day it opens at the hour it is', async () => {
  const page = await openSheet(browser, spring, { now: new Date('2026-05-14T11:20:00-05:00') });
  assert.equal(plain(await page.locator('#map-clock').innerText()), '11:15 AM');
  await close(page);
});

// What stands on the map and is said of it at one hour.
const stillOf = (page) => page.evaluate(() => ({
  states: [...document.querySelectorAll('.hour-zone')].map((zone) => [...zone.querySelectorAll('path')].map((cell) => cell.getAttribute('class'))),
  clock: document.getElementById('map-clock').textContent,
  says: document.getElementById('map-says').textContent,
}));

test('without script the map stands still at an hour, as it would with it', async () => {
  for (const sheet of [spring, makeSheet(demo('hot')), makeSheet(job('midnight'))]) {
    const page = await openSheet(browser, sheet, { script: false });
    const still = await stillOf(page);
    const all = await page.locator('.map-times').count();
    assert.ok(all >= 5);
    assert.equal(await page.locator('.map-times:visible').count(), all, 'the times of all work');
    assert.equal(await page.locator('.map-controls:visible, .map-steps button:visible, #map-hour:visible').count(), 0);
    assert.ok(await page.locator('#map-clock').isVisible());
    assert.ok((await page.locator('.time-layer.shown .lines text').count()) > 0);
    await close(page);
    const answering = await openSheet(browser, sheet, { now: new Date('2020-01-01T12:00:00Z') });
    const { states, clock, says } = await stillOf(answering);
    assert.deepEqual(still.states, states);
    assert.equal(plain(still.clock), plain(clock));
    assert.equal(plain(still.says), plain(says));
    await close(answering);
  }
});

test('on paper the map shows the hour and the work that were chosen', async () => {
  const page = await openSheet(browser, spring);
  await choose(page, 'broom');
  await setHour(page, 12);
  const said = await page.locator('#map-says').innerText();
  await page.emulateMedia({ media: 'print' });
  assert.deepEqual(await shownTimes(page), ['broom']);
  assert.equal(await page.locator('#map svg.plan:visible').count(), 1);
  assert.equal(await page.locator('#map-says').innerText(), said);
  assert.equal(plain(await page.locator('#map-clock').innerText()), '11:00 AM');
  assert.equal(await page.locator('.map-controls:visible, .map-steps button:visible, #map-hour:visible').count(), 0);
  await page.emulateMedia({ media: 'screen' });
  await close(page);
});

// Lines of equal time and the way to work are drawn on every state, in ink on a casing of paper.
for (const dark of [false, true]) {
  test(`the times on the map stand out at 3:1, ${dark ? 'dark' : 'light'}`, async () => {
    const page = await openSheet(browser, spring, { dark });
    const pairs = await page.evaluate(() => {
      const paint = (selector, key) => getComputedStyle(document.querySelector(selector))[key];
      return [
        [paint('.lines path:not(.casing)', 'stroke'), paint('.lines .casing', 'stroke')],
        [paint('.ways .shaft', 'stroke'), paint('.ways .casing', 'stroke')],
        [paint('.lines text', 'fill'), paint('.lines text', 'stroke')],
      ];
    });
    for (const pair of pairs) {
      const [ink, casing] = pair.map((paint) => luminance(paint.match(/\d+/g).slice(0, 3).map(Number)));
      assert.ok(contrast(ink, casing) >= 3, `${pair}`);
    }
    await close(page);
  });
}

test('cuts are numbered on the plan as in the JSON', async () => {
  const page = await openSheet(browser, spring);
  const dry = spring.json.saw.filter((cut) => cut.operation === 'saw_dry');
  const figure = page.locator('#cuts figure').first();
  const numbers = await figure.locator('.cut-number text').allTextContents();
  assert.deepEqual(numbers.map(Number).sort((a, b) => a - b), dry.map((_, i) => i + 1));
  const zones = await figure.locator('tbody tr td:nth-child(2)').allInnerTexts();
  assert.deepEqual(zones, dry.map((cut) => cut.zone));
  await close(page);
});

// A name in the picture, and whether all of it is inside its own zone's outline.
const namesOn = (page) => page.evaluate(() => {
  const edges = document.getElementById('map-edges');
  const shown = document.querySelector('svg.plan-hour');
  const size = parseFloat(getComputedStyle(shown).fontSize);
  const outlines = [...edges.querySelectorAll('.plan-zone')];
  return [...edges.querySelectorAll('.plan-zone-name')].map((name, i) => {
    const ruler = document.createElementNS('http://www.w3.org/2000/svg', 'text');
    ruler.textContent = name.textContent;
    ruler.setAttribute('class', 'plan-zone-name');
    shown.append(ruler);
    const half = ruler.getBBox().width / 2;
    ruler.remove();
    const [x, y] = [Number(name.getAttribute('x')), Number(name.getAttribute('y'))];
    // Along the middle of the words and along the height of small letters.
    const inside = [-1, -0.5, 0, 0.5, 1].every((part) => [-0.3, 0, 0.3].every((up) => {
      const ring = outlines[i].getAttribute('d').match(/-?[\d.]+/g).map(Number);
      const points = [];
      for (let k = 0, at = [0, 0]; k < ring.length; k += 2) {
        at = [at[0] + ring[k], at[1] + ring[k + 1]];
        points.push(at);
      }
      let odd = false;
      const [px, py] = [x + part * half, y + up * size];
      for (let k = 0, j = points.length - 1; k < points.length; j = k++) {
        const [[ax, ay], [bx, by]] = [points[k], points[j]];
        if (ay > py !== by > py && px < ((bx - ax) * (py - ay)) / (by - ay) + ax) odd = !odd;
      }
      return odd;
    }));
    return { words: name.textContent, inside };
  });
});

test('every name is inside its zone, or a letter is that a key explains', async () => {
  for (const sheet of [spring, makeSheet(demo('hot')), makeSheet(job('half_hour'))]) {
    const page = await openSheet(browser, sheet, { width: 360, height: 740 });
    const zones = sheet.json.zones.map((zone) => zone.name);
    const names = await namesOn(page);
    const key = await page.locator('.map-picture .map-names li').allInnerTexts();
    assert.equal(names.length, zones.length);
    names.forEach(({ words, inside }, i) => {
      assert.ok(inside, `${words} is outside ${zones[i]}`);
      if (words !== zones[i]) assert.ok(key.includes(`${words} ${zones[i]}`), `${words}: ${key}`);
    });
    await close(page);
  }
});

for (const width of [360, 768, 1280]) test(`no words are smaller than 12 px, ${width} px wide`, async () => {
  const page = await openSheet(browser, spring, { width, height: 740 });
  await page.evaluate(() => document.querySelectorAll('details').forEach((one) => { one.open = true; }));
  const small = await page.evaluate(() => [...document.querySelectorAll('main :is(text, p, li, td, th, small, figcaption, span, dd, dt)')]
    .filter((one) => one.textContent.trim() && one.checkVisibility() && one.getClientRects().length)
    .map((one) => {
      const picture = one.ownerSVGElement;
      const scale = picture?.viewBox.baseVal?.width
        ? picture.getBoundingClientRect().width / picture.viewBox.baseVal.width : 1;
      return [one.textContent.slice(0, 30), parseFloat(getComputedStyle(one).fontSize) * scale];
    }).filter(([, size]) => size < 12));
  assert.deepEqual(small, []);
  await close(page);
});

// WCAG 2.2's relative luminance and contrast.
const luminance = (rgb) => rgb.map((one) => one / 255)
  .map((one) => (one <= 0.04045 ? one / 12.92 : ((one + 0.055) / 1.055) ** 2.4))
  .reduce((sum, one, i) => sum + one * [0.2126, 0.7152, 0.0722][i], 0);
const contrast = (a, b) => (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);

for (const dark of [false, true]) {
  test(`"not yet" and "not done here" are told apart in the ${dark ? 'dark' : 'light'}`, async () => {
    const page = await openSheet(browser, spring, { dark });
    const fills = await page.evaluate(() => ['soon', 'idle'].map((state) =>
      getComputedStyle(document.querySelector(`.map-key .${state}`)).fill));
    const [soon, idle] = fills.map((fill) => luminance(fill.match(/\d+/g).slice(0, 3).map(Number)));
    assert.ok(contrast(soon, idle) >= 3, `${fills}: ${contrast(soon, idle).toFixed(2)}`);
    await close(page);
  });
}

test('two buttons move the hour by fifteen minutes', async () => {
  const page = await openSheet(browser, spring, { width: 360, height: 740 });
  await setHour(page, 12);
  const clock = () => page.locator('#map-clock').innerText().then(plain);
  const before = await clock();
  await page.locator('.map-steps button').last().click();
  const minutes = (words) => {
    const [, hour, minute] = /^(\d+):(\d+)/.exec(words);
    return (Number(hour) % 12) * 60 + Number(minute);
  };
  assert.equal(minutes(await clock()) - minutes(before), 15);
  await page.locator('.map-steps button').first().click();
  assert.equal(await clock(), before);
  await close(page);
});

// A time at the edge of the site is read whole.
test('no time on the map is cut off at the frame', async () => {
  for (const sheet of [spring, makeSheet(job('heat')), makeSheet(job('text'))]) {
    const page = await openSheet(browser, sheet, { width: 360 });
    await page.evaluate(() => document.querySelectorAll('details').forEach((fold) => { fold.open = true; }));
    const choices = await page.locator('[name=map-choice]').evaluateAll((all) => all.map((one) => one.value));
    for (const choice of choices) {
      await choose(page, choice);
      const labels = await page.locator('.time-layer.shown .lines text').evaluateAll((all) => all.map((label) => {
        const box = label.getBoundingClientRect();
        const frame = label.ownerSVGElement.getBoundingClientRect();
        const inside = box.left >= frame.left && box.right <= frame.right && box.top >= frame.top - 1 && box.bottom <= frame.bottom + 1;
        return { words: label.textContent, inside };
      }));
      assert.ok(labels.length > 0, choice);
      assert.deepEqual(labels.filter((label) => !label.inside), [], choice);
    }
    await close(page);
  }
});

// WCAG 2.2, 1.4.11: what is needed to understand a picture stands out at 3:1 (published). States are
// told apart by their fill or by what is drawn on it; shade by its lines or their casing.
for (const dark of [false, true]) {
  test(`the states of the map stand out at 3:1, ${dark ? 'dark' : 'light'}`, async () => {
    const page = await openSheet(browser, spring, { dark });
    const painted = await page.evaluate(() => {
      const figures = document.querySelector('.plan-hour');
      const svgOf = (name) => document.createElementNS('http://www.w3.org/2000/svg', name);
      const solid = (paint) => (/^rgb\(/.test(paint) ? paint : undefined);
      const marksOf = (pattern) => [...pattern.children].map((one) => {
        const style = getComputedStyle(one);
        return solid(style.stroke) ?? solid(style.fill);
      });
      const paintOf = (state) => {
        const path = figures.appendChild(svgOf('path'));
        path.setAttribute('class', state);
        const style = getComputedStyle(path);
        const pattern = /url\("#(.*)"\)/.exec(style.fill)?.[1];
        const marks = pattern ? marksOf(document.getElementById(pattern)) : [];
        const fill = solid(style.fill) ?? marks.shift();
        if (style.strokeDasharray !== 'none') marks.push(style.stroke);
        path.remove();
        return { state, fill, marks };
      };
      const states = [...document.querySelectorAll('.map-key path')].map((one) => one.getAttribute('class'));
      const outline = svgOf('path');
      outline.setAttribute('class', 'plan-zone');
      figures.append(outline);
      const around = { panel: getComputedStyle(figures).backgroundColor, outline: getComputedStyle(outline).stroke };
      outline.remove();
      return { ...around, states: states.filter((one) => one !== 'in-shade').map(paintOf), shade: paintOf('in-shade') };
    });
    const luminance = (color) => {
      const [r, g, b] = color.match(/[\d.]+/g).map((one) => Number(one) / 255).map((one) => (one <= 0.04045 ? one / 12.92 : ((one + 0.055) / 1.055) ** 2.4));
      return 0.2126 * r + 0.7152 * g + 0.0722 * b;
    };
    const contrast = (a, b) => {
      const [low, high] = [luminance(a), luminance(b)].sort((x, y) => x - y);
      return (high + 0.05) / (low + 0.05);
    };
    const least = 3;
    assert.ok(painted.states.length >= 5, 'the key names the states');
    assert.ok(contrast(painted.outline, painted.panel) >= least, 'a zone stands out from the ground');
    const isMarked = ({ fill, marks }) => marks.some((mark) => contrast(mark, fill) >= least);
    for (const [i, a] of painted.states.entries()) {
      assert.equal(a.marks.length > 0, isMarked(a), `what is drawn on ${a.state}`);
      for (const b of painted.states.slice(0, i)) {
        assert.ok(contrast(a.fill, b.fill) >= least || isMarked(a) || isMarked(b), `${a.state} and ${b.state}`);
      }
      const { fill: casing, marks: [line] } = painted.shade;
      assert.ok(Math.max(contrast(casing, a.fill), contrast(line, a.fill)) >= least, `shade on ${a.state}`);
      assert.ok(contrast(casing, line) >= least, 'the lines of shade on their casing');
    }
    await close(page);
  });
}
