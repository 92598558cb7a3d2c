// What the planner's tests share: the built page opened in a real browser, the engine in node, and
// the native program to hold both against.
import { execFileSync } from 'node:child_process';
import { createServer } from 'node:http';
import { mkdtempSync, readFileSync, readdirSync, rmSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const require = createRequire(new URL('../npm/package.json', import.meta.url));
const { chromium } = require('playwright-core');
const axeSource = readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8');

export const planner = process.env.SLABTIDE_PLANNER;
export const root = fileURLToPath(new URL('../..', import.meta.url));
const program = process.env.SLABTIDE_PROGRAM;
const folder = mkdtempSync(join(tmpdir(), 'slabtide-planner-'));
process.on('exit', () => rmSync(folder, { recursive: true, force: true }));
let made = 0;

export const phone = { width: 360, height: 740 };
export const desk = { width: 1280, height: 900 };
export const demo = (name) => readFileSync(join(root, 'data/demo', `${name}.toml`), 'utf8');

// ---- the engine without a page ----
export async function startEngine() {
  Object.assign(globalThis, { __dirname: '/', require });
  const { default: engine } = await import(pathToFileURL(join(planner, 'engine/slabtide_engine.mjs')));
  const wasmBinary = readFileSync(join(planner, 'engine/slabtide_engine.wasm'));
  const exports = await engine({ wasmBinary });
  return (question) => {
    const bytes = new TextEncoder().encode(JSON.stringify(question));
    const at = exports._slabtide_request(bytes.length);
    exports.HEAPU8.set(bytes, at);
    const size = exports._slabtide_answer();
    const from = exports._slabtide_answer_text();
    return JSON.parse(new TextDecoder().decode(exports.HEAPU8.slice(from, from + size)));
  };
}

// ---- the native program ----
export const now = '2026-05-13T18:00Z';
// What it writes of these texts, by ending; the job is the first. Undefined where it refuses.
export function nativePlan(texts, { draws = 0, at = now, endings = ['.json'] } = {}) {
  const place = join(folder, `native${made++}`);
  execFileSync('mkdir', [place]);
  for (const [name, text] of Object.entries(texts)) writeFileSync(join(place, name), text);
  const written = endings.map((ending) => join(place, `out${ending}`));
  const words = ['plan', join(place, Object.keys(texts)[0]), '--now', at, '--draws', String(draws)];
  try {
    execFileSync(program, [...words, ...written.flatMap((path) => ['--write', path])], { stdio: 'pipe' });
  } catch {
    return undefined;
  }
  return Object.fromEntries(endings.map((ending, i) => [ending, readFileSync(written[i], 'utf8')]));
}

// Every job file of the project that is one by itself.
export function allJobs(place = root) {
  return readdirSync(place, { withFileTypes: true, recursive: false }).flatMap((entry) => {
    const path = join(place, entry.name);
    if (entry.isDirectory()) return ['node_modules', 'build', '.git'].includes(entry.name) ? [] : allJobs(path);
    return entry.name.endsWith('.toml') ? [path] : [];
  });
}

// ---- the page ----
export function launch() {
  const rootNeeds = process.getuid?.() === 0 ? ['--no-sandbox'] : [];
  return chromium.launch({ executablePath: '/usr/bin/chromium', args: rootNeeds });
}

export const pageUrl = pathToFileURL(join(planner, 'index.html')).href;

// The planner in a window of its own. `page.faults` collects what must not be: errors, dialogs, and
// requests for anything but the page itself and what it makes.
export async function openPlanner(browser, options = {}) {
  const { size = phone, url = pageUrl, dark = false, forcedColors = false, touch = false, context: given, geolocation } = options;
  const context = given ?? await browser.newContext({
    viewport: size, colorScheme: dark ? 'dark' : 'light', forcedColors: forcedColors ? 'active' : 'none', hasTouch: touch, acceptDownloads: true,
    timezoneId: 'America/Chicago', ...(geolocation ? { geolocation, permissions: ['geolocation'] } : {}),
  });
  const page = await context.newPage();
  page.faults = [];
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) page.faults.push(message.text());
  });
  page.on('pageerror', (error) => page.faults.push(String(error)));
  page.on('dialog', (dialog) => {
    page.faults.push(`dialog: ${dialog.message()}`);
    dialog.dismiss();
  });
  page.on('request', (request) => {
    const own = new URL(url).href.split('#')[0];
    if (!request.url().startsWith(own) && !request.url().startsWith('blob:') && !request.url().startsWith('data:') && request.url() !== 'about:srcdoc') page.faults.push(`request: ${request.url()}`);
  });
  await page.goto(url);
  await page.getByRole('button', { name: 'New pour' }).or(page.locator('footer nav')).first().waitFor();
  return page;
}

export const planned = (page, stage = 'Good to pour|Pour with care|Think again') => page.locator('.plan-line, .verdict').filter({ hasText: new RegExp(stage) }).first().waitFor({ timeout: 60000 });

// The job file as the page gives it out.
export async function exported(page, words = 'Job file') {
  await page.getByRole('button', { name: 'Share', exact: true }).click();
  const [download] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: words, exact: true }).click()]);
  return { name: download.suggestedFilename(), text: readFileSync(await download.path(), 'utf8') };
}

// A job given to the page as a file is.
export async function importText(page, text, name = 'given.toml') {
  await page.getByText('Open a file, back up, restore').click();
  await page.getByLabel('Open a job file').setInputFiles({ name, mimeType: 'text/plain', buffer: Buffer.from(text) });
}

const summary = (finding) => [finding.impact, finding.id, ...finding.nodes.map((node) => `${node.target.join(' ')}: ${node.failureSummary}`)].join('\n  ');
export async function findings(page) {
  if (!(await page.evaluate(() => 'axe' in globalThis))) await page.evaluate(axeSource);
  const { violations } = await page.evaluate(() => globalThis.axe.run(document, { resultTypes: ['violations'] }));
  return violations.map(summary);
}

// The folder for a web host, served on loopback.
export async function serveSite() {
  const types = { html: 'text/html', js: 'text/javascript', png: 'image/png', webmanifest: 'application/manifest+json' };
  const server = createServer((request, reply) => {
    const name = request.url === '/' ? 'index.html' : request.url.slice(1).split('?')[0];
    try {
      reply.setHeader('Content-Type', types[name.split('.').pop()] ?? 'text/plain');
      reply.end(readFileSync(join(planner, 'site', name)));
    } catch {
      reply.statusCode = 404;
      reply.end();
    }
  });
  await new Promise((resolve) => { server.listen(0, '127.0.0.1', resolve); });
  return { url: `http://127.0.0.1:${server.address().port}/`, end: () => server.close() };
}
