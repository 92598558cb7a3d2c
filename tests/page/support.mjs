// Shared by the page tests: runs the program on a job and opens its page in a real browser.
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const require = createRequire(new URL('../npm/package.json', import.meta.url));
const { chromium } = require('playwright-core');

const axeSource = readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8');
export const demo = (name) => fileURLToPath(new URL(`../../data/demo/${name}.toml`, import.meta.url));
export const job = (name) => fileURLToPath(new URL(`jobs/${name}.toml`, import.meta.url));
// A week of every kind of weather: rain, heat and wind, thunder, frost.
export const week = fileURLToPath(new URL('../cli/days_week/week.csv', import.meta.url));

const program = process.env.SLABTIDE_PROGRAM;
const folder = mkdtempSync(join(tmpdir(), 'slabtide-page-'));
process.on('exit', () => rmSync(folder, { recursive: true, force: true }));
let made = 0;

// Runs `slabtide COMMAND JOB OPTIONS --write` (JOB may be null) and returns the page and, if the
// command has one, the JSON of the same run.
export function makeSheet(jobPath, { command = 'plan', options = [], json = true } = {}) {
  const base = join(folder, `sheet${made++}`);
  const words = [command, ...(jobPath ? [jobPath] : []), ...options, '--write', `${base}.html`];
  // A few sampled days show uncertainty as well as many do, and faster.
  if (command === 'plan' && !options.includes('--draws')) words.push('--draws', '20');
  if (json) words.push('--write', `${base}.json`);
  execFileSync(program, words, { stdio: ['ignore', 'ignore', 'pipe'] });
  return {
    path: `${base}.html`,
    html: readFileSync(`${base}.html`, 'utf8'),
    json: json ? JSON.parse(readFileSync(`${base}.json`, 'utf8')) : null,
    pdfPath: `${base}.pdf`,
  };
}

export function launch() {
  const rootNeeds = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
  return chromium.launch({ executablePath: '/usr/bin/chromium', args: rootNeeds });
}

// The browser page reused for one sheet after another: a new window starts a process, which takes
// as long as the sheet.
const kept = new WeakMap();

async function newPage(browser, { dark, script, width, height }) {
  const context = await browser.newContext({
    viewport: { width, height },
    colorScheme: dark ? 'dark' : 'light',
    javaScriptEnabled: script,
  });
  const page = await context.newPage();
  page.on('console', (message) => {
    if (message.type() === 'error' || message.type() === 'warning') page.faults.push(message.text());
  });
  page.on('pageerror', (error) => page.faults.push(String(error)));
  page.on('dialog', (dialog) => {
    page.faults.push(`dialog: ${dialog.message()}`);
    dialog.dismiss();
  });
  page.on('request', (request) => {
    if (request.url() !== page.sheetUrl) page.faults.push(`request: ${request.url()}`);
  });
  return page;
}

// The sheet in the browser's page (or, if that is in use, in its own window), optionally without
// script or with a fixed clock. `page.faults` collects what must not happen: errors on the console
// or in scripts, dialogs, and requests for anything but the file itself.
export async function openSheet(browser, sheet, options = {}) {
  const { width = 1280, height = 800, dark = false, now, script = true } = options;
  const shared = script && !now;
  let page = shared ? kept.get(browser) : undefined;
  if (page && !page.taken) {
    await seeAs(page, { width, height, dark });
  } else {
    const first = shared && !page;
    page = await newPage(browser, { dark, script, width, height });
    if (first) kept.set(browser, page);
    page.isKept = first;
  }
  page.taken = true;
  page.faults = [];
  page.sheetUrl = pathToFileURL(sheet.path).href;
  if (now) await page.clock.install({ time: new Date(now) });
  await page.goto(page.sheetUrl);
  return page;
}

export async function close(page) {
  page.taken = false;
  if (!page.isKept) await page.context().close();
}

// Shows an open page differently, which is cheaper than opening it again.
export async function seeAs(page, { width, height = 800, dark = false, media = 'screen' }) {
  await page.setViewportSize({ width, height });
  await page.emulateMedia({ colorScheme: dark ? 'dark' : 'light', media });
}

// The value that a JSON pointer (RFC 6901) refers to.
export function resolve(json, pointer) {
  return pointer.split('/').slice(1).reduce((value, key) => {
    const name = key.replaceAll('~1', '/').replaceAll('~0', '~');
    return value === null || value === undefined ? undefined : value[name];
  }, json);
}

// Times and quantities contain non-breaking spaces, spans of times a word joiner.
export const plain = (text) => text.replaceAll('\u00a0', ' ').replaceAll('\u2060', '');

// What extends beyond the sides of the page, without the contents of scrolled areas and of
// pictures, which are clipped to their frames.
export const sticking = () => {
  const inScroller = (element) => element.closest('.scroller') !== null || element.ownerSVGElement;
  return [...document.querySelectorAll('body *')]
    .filter((element) => !inScroller(element) && !element.matches('.skip, .spoken'))
    .map((element) => [element, element.getBoundingClientRect()])
    .filter(([, box]) => box.width > 0 && (box.right > innerWidth + 0.5 || box.left < -0.5))
    .map(([element, box]) => `${element.tagName} ${element.className} ${box.left}..${box.right}`);
};

// The shown text of the page that is smaller than 12 px on the screen, in pictures too; opens what
// is folded.
export const smallText = () => {
  for (const one of document.querySelectorAll('details')) one.open = true;
  const least = 11.95; // of 12, as browsers round
  const small = [];
  const texts = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  while (texts.nextNode()) {
    const element = texts.currentNode.parentElement;
    if (texts.currentNode.textContent.trim() === '' || !element.checkVisibility()
        || element.closest('.spoken, .skip, script, style')) continue;
    const matrix = element.ownerSVGElement ? element.getScreenCTM() : { a: 1, b: 0 };
    const size = parseFloat(getComputedStyle(element).fontSize) * Math.hypot(matrix.a, matrix.b);
    if (size < least) small.push(`${size} px: ${texts.currentNode.textContent.trim()}`);
  }
  return small;
};

// CSS pixels across a sheet between the margins of the print style (12 mm).
export function printedWidth(paper, { onItsSide = false } = {}) {
  const widthMm = onItsSide ? { A4: 297, Letter: 279.4 }[paper] : { A4: 210, Letter: 215.9 }[paper];
  const marginMm = 12;
  const pixelsPerMm = 96 / 25.4;
  return Math.floor((widthMm - 2 * marginMm) * pixelsPerMm);
}

// The number of pages in a PDF made by Chromium.
export const pagesOf = (pdf) => (pdf.toString('latin1').match(/\/Type\s*\/Page\b/g) ?? []).length;

const summary = (finding) => [
  finding.impact,
  finding.id,
  ...finding.nodes.map((node) => `${node.target.join(' ')}: ${node.failureSummary}`),
].join('\n  ');

// The serious or critical findings of axe-core, in words.
export async function graveFindings(page) {
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(axeSource);
  const { violations } = await page.evaluate(() => globalThis.axe.run(document, { resultTypes: ['violations'] }));
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(summary);
}
