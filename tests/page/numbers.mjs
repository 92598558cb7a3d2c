// A page's times and figures compared with the JSON of the same run.
import assert from 'node:assert/strict';
import { plain, resolve } from './support.mjs';

// Converts from the JSON's SI units to those a page shows. Factors: exact definitions (NIST SP
// 811).
const shown = {
  '': (v) => v,
  'ft²': (v) => v / 0.3048 ** 2,
  'yd³': (v) => v / 0.9144 ** 3,
  in: (v) => v / 0.0254,
  ft: (v) => v / 0.3048,
  '°F': (v) => v * 1.8 + 32,
  'lb/ft²/h': (v) => (v / 0.45359237) * 0.3048 ** 2,
  mph: (v) => (v / 1609.344) * 3600,
  lb: (v) => v / 0.45359237,
  gal: (v) => v / 3.785411784,
  psi: (v) => v,
  '%': (v) => v * 100,
  mm: (v) => v * 1000,
  'm²': (v) => v, 'm³': (v) => v, m: (v) => v, '°C': (v) => v, 'kg/m²/h': (v) => v,
  kg: (v) => v, L: (v) => v, 'm/s': (v) => v, min: (v) => v, h: (v) => v,
};
const jsonStep = 0.01;  // what the JSON is rounded to
const weekdays = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat'];

// "1:05 PM" of "13:05" (NIST, from memory: midnight is 12 AM, noon 12 PM).
function ofTwelve(clock) {
  const hour = Number(clock.slice(0, 2));
  return `${hour % 12 || 12}:${clock.slice(3)} ${hour < 12 ? 'AM' : 'PM'}`;
}

// How a time may be shown: as it is, or as an end of a span within a day. There the first says no
// AM or PM that the second, right after it, says, and the second no weekday.
function clocksOf(clock, item, before, next) {
  const day = item.iso.slice(0, 10);
  const half = / [AP]M$/.exec(clock)?.[0];
  const weekday = /^[A-Z][a-z]{2} /.exec(clock)?.[0];
  const clocks = [clock];
  if (half && next?.iso?.startsWith(day) && ofTwelve(next.iso.slice(11, 16)).endsWith(half))
    clocks.push(clock.slice(0, -half.length));
  if (weekday && before?.iso?.startsWith(day)) clocks.push(clock.slice(weekday.length));
  return clocks;
}

function clockWords(iso, date, twelve) {
  const day = iso.slice(0, 10);
  const clock = twelve ? ofTwelve(iso.slice(11, 16)) : iso.slice(11, 16);
  if (day === date) return clock;
  return `${weekdays[new Date(`${day}T00:00Z`).getUTCDay()]} ${clock}`;
}

// "on time", "7 min", "54 min early", "3 h 5 min".
function minutesSaid(text) {
  if (text === 'on time') return 0;
  const [, hours, minutes, side] = /^(?:(\d+) h)? ?(?:(\d+) min)?(?: (early|late))?$/.exec(text) ?? [];
  const whole = 60 * Number(hours ?? 0) + Number(minutes ?? 0);
  return side === 'early' ? -whole : whole;
}

function checkFigure(item, value, where) {
  assert.equal(Number(item.value), value, where);
  if (/late_min$/.test(item.json)) {
    assert.equal(minutesSaid(item.text), value, where);
    return;
  }
  const [, digits, unit] = /^(-?[\d.]+)\s*(.*)$/.exec(item.text) ?? [];
  assert.ok(unit in shown, `${where}: unit of "${item.text}"`);
  const expected = shown[unit](value);
  const fromJson = Math.abs(shown[unit](value + jsonStep / 2) - expected);
  if (/^\/supplies\/\d+\/amount_(kg|l|m2)$/.test(item.json)) {
    // Amounts to take along are rounded up, so that they are enough.
    assert.ok(Number(digits) >= expected - fromJson && Number(digits) < expected + 1 + fromJson,
              `${where}: ${item.text}, JSON ${value}`);
    return;
  }
  const decimals = digits.includes('.') ? digits.split('.')[1].length : 0;
  const halfDigit = 0.5 * 10 ** -(unit === 'in' ? 2 : decimals);
  assert.ok(Math.abs(Number(digits) - expected) <= halfDigit + fromJson + 1e-9,
            `${where}: "${item.text}", JSON ${value}`);
}

// All elements with a pointer.
export async function itemsOf(page) {
  return page.locator('[data-json]').evaluateAll((elements) => elements.map((element) => ({
    tag: element.tagName.toLowerCase(),
    json: element.dataset.json,
    value: element.value,
    iso: element.getAttribute('datetime') ?? element.dataset.time,
    text: element.textContent,
  }))).then((items) => items.map((item) => ({ ...item, text: plain(item.text) })));
}

// `date`: the pour's day, whose times are shown without the weekday. All times of a page are of one
// style, that of twelve hours where its quantities are in US units.
export function checkAll(items, json, date, name) {
  const twelve = items.some(({ tag, text }) => tag === 'data' && /ft|yd|°F|mph/.test(text));
  for (const [index, item] of items.entries()) {
    const value = resolve(json, item.json);
    const where = `${name} ${item.json}`;
    assert.ok(value !== undefined && value !== null, `${where} is not in the JSON`);
    if (item.iso !== undefined) {
      assert.equal(item.iso, value, where);
      const clocks = clocksOf(clockWords(value, date, twelve), item, items[index - 1], items[index + 1]);
      assert.ok(clocks.includes(item.text), `${where}: ${item.text}, not ${clocks.join(' or ')}`);
    } else if (item.tag === 'data') {
      checkFigure(item, value, where);
    } else {
      assert.equal(item.text, value, where);
    }
  }
}
