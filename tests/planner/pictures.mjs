// node pictures.mjs FOLDER: the README's pictures, PNG of at most 64 colors (tools/pictures).
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { deflateSync } from 'node:zlib';
import { chunk } from '../../src/planner/page/png.mjs';
import { demo, importText, launch, now, openPlanner, startEngine } from './support.mjs';

const folder = process.argv[2];
const mostColors = 64;

// The commonest colors, each of the others as the nearest of them; a byte a pixel.
function png({ width, height, pixels }) {
  const counts = new Map();
  for (const pixel of pixels) counts.set(pixel, (counts.get(pixel) ?? 0) + 1);
  const palette = [...counts].sort((a, b) => b[1] - a[1]).slice(0, mostColors).map(([color]) => color);
  const parts = (color) => [color & 255, (color >> 8) & 255, (color >> 16) & 255];
  const away = (a, b) => parts(a).reduce((sum, each, i) => sum + (each - parts(b)[i]) ** 2, 0);
  const nearest = new Map([...counts.keys()].map((color) => [color,
    palette.reduce((best, each, i) => (away(color, each) < away(color, palette[best]) ? i : best), 0)]));
  const rows = Buffer.alloc(height * (width + 1));
  for (let y = 0; y < height; ++y) {
    for (let x = 0; x < width; ++x) rows[y * (width + 1) + 1 + x] = nearest.get(pixels[y * width + x]);
  }
  const header = Buffer.alloc(13);
  header.writeUInt32BE(width, 0);
  header.writeUInt32BE(height, 4);
  header.set([8, 3, 0, 0, 0], 8);
  return Buffer.concat([Buffer.from('89504e470d0a1a0a', 'hex'), chunk('IHDR', header),
    chunk('PLTE', Buffer.from(palette.flatMap(parts))), chunk('IDAT', deflateSync(rows, { level: 9 })), chunk('IEND', Buffer.alloc(0))]);
}

// What the browser shows, as pixels; read by a page of its own, since the planner's lets no picture in.
async function pixelsOf(browser, shot) {
  const page = await browser.newPage();
  const read = await page.evaluate(async (url) => {
    const picture = await createImageBitmap(await (await fetch(url)).blob());
    const canvas = new OffscreenCanvas(picture.width, picture.height).getContext('2d');
    canvas.drawImage(picture, 0, 0);
    const { data } = canvas.getImageData(0, 0, picture.width, picture.height);
    return { width: picture.width, height: picture.height, pixels: [...new Uint32Array(data.buffer)].map((each) => each & 0xffffff) };
  }, `data:image/png;base64,${shot.toString('base64')}`);
  await page.close();
  return read;
}

async function keep(browser, name, shot) {
  const made = png(await pixelsOf(browser, shot));
  writeFileSync(join(folder, name), made);
  console.log(`${name}: ${Math.round(made.length / 1000)} kB`);
}

const browser = await launch();
const planner = await openPlanner(browser, { size: { width: 1120, height: 760 } });
await importText(planner, demo('spring'));
await planner.getByText('Day sheet for the crew').waitFor({ timeout: 90000 });
await planner.getByRole('button', { name: 'Draw', exact: true }).click();
await planner.getByRole('button', { name: /^landing, / }).press('Enter');
await planner.waitForTimeout(500);
await keep(browser, 'planner.png', await planner.screenshot());

const ask = await startEngine();
const told = ask({ ask: 'plan', job: 'job.toml', texts: { 'job.toml': demo('spring') }, now, draws: 200, formats: ['.html'] });
const sheet = await browser.newPage({ viewport: { width: 720, height: 760 } });
await sheet.setContent(told.files['.html']);
await sheet.waitForTimeout(500);
await keep(browser, 'sheet.png', await sheet.screenshot());
await browser.close();
