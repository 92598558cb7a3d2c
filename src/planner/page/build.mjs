// node build.mjs ENGINE-FOLDER OUTPUT-FOLDER DATA-PAGE-FOLDER VERSION
// Puts the planner together: index.html, which works alone from a disk, and the folder `site` for a
// web host, from where it can be installed. Nothing is built of what the compiler of TypeScript refuses.
import { execFileSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { deflateSync, gzipSync } from 'node:zlib';
import { bundled, here } from './bundle.mjs';
import { chunk } from './png.mjs';

const [engineFolder, output, sheetFolder] = process.argv.slice(2, 5).map((path) => resolve(path));
const version = process.argv[5];
const read = (name) => readFileSync(join(here, name), 'utf8');

// `types` of the browser's window and of its workers differ, and are checked apart.
for (const types of ['tsconfig.json', 'tsconfig.service.json']) {
  execFileSync(process.execPath, [join(here, 'node_modules/typescript/bin/tsc'), '-p', join(here, types)], { stdio: 'inherit' });
}
const minified = (entry, format, options) => bundled(entry, { minify: true, format, ...options });
// What is in the page of others is given out with its license, word for word.
const licensed = (...names) => ({ banner: { js: `/*! ${names.map((name) => `${name}\n${read(`node_modules/${name}/LICENSE`)}`).join('\n')}*/` } });

// Text that ends a script element early, or hides in a comment, is broken up where it stands.
const inScript = (text) => text.replaceAll('</script', '<\\/script').replaceAll('<!--', '<\\!--');
const hash = (text) => `'sha256-${createHash('sha256').update(text).digest('base64')}'`;

const script = inScript(await minified('main.tsx', 'esm', licensed('preact', 'idb')));
const worker = inScript(await minified('worker.ts', 'iife', {
  ...licensed('lzma1'),
  alias: { 'slabtide-engine': join(engineFolder, 'slabtide_engine.mjs') }, define: { 'import.meta.url': '"file:///"' },
  external: ['module', 'path', 'fs', 'url', 'crypto', 'perf_hooks'],
}));
const style = read('page.css');
const install = await minified('install.ts', 'esm');
const wasm = readFileSync(join(engineFolder, 'slabtide_engine.wasm'));
// A fifth smaller than gzip, which is all that browsers unpack by themselves.
const packed = execFileSync('xz', ['--format=lzma', '--lzma1=preset=9e,pb=0,lc=4', '--stdout', join(engineFolder, 'slabtide_engine.wasm')], { maxBuffer: 1 << 26 });
const engine = packed.toString('base64');

// A sheet in its frame lives under the page's policy, so its own styles and scripts are named too.
const sheetFiles = readdirSync(sheetFolder).filter((name) => /\.(css|js)$/.test(name)).map((name) => readFileSync(join(sheetFolder, name), 'utf8'));
const policy = (scripts) => [
  "default-src 'none'", `script-src ${[...scripts, ...sheetFiles].map(hash).join(' ')} 'wasm-unsafe-eval'`,
  `style-src ${[style, ...sheetFiles].map(hash).join(' ')}`, 'worker-src blob: \'self\'', 'img-src \'self\' data:', "manifest-src 'self'", 'frame-src \'self\' blob:',
  'connect-src https://api.weather.gov https://api.open-meteo.com https://geocoding-api.open-meteo.com', "base-uri 'none'", "form-action 'none'",
].join('; ');

function page(head, scripts) {
  const parts = { policy: policy(scripts), head, style, worker, engine, script };
  return read('index.html').replace(/@(\w+)@/g, (whole, name) => parts[name] ?? whole);
}

// ---- an icon: a slab with its joints, on the tide's line ----
function icon(size) {
  const rows = Buffer.alloc(size * (size * 3 + 1));
  for (let y = 0; y < size; ++y) {
    for (let x = 0; x < size; ++x) {
      const [u, v] = [x / size, y / size];
      const slab = u > 0.2 && u < 0.8 && v > 0.3 && v < 0.62;
      const joint = slab && Math.abs(u - 0.5) < 0.012;
      const wave = Math.abs(v - 0.74 - 0.035 * Math.sin(u * 12)) < 0.022 && u > 0.12 && u < 0.88;
      const color = joint ? [90, 77, 56] : slab ? [217, 207, 189] : wave ? [127, 211, 224] : [11, 85, 99];
      rows.set(color, y * (size * 3 + 1) + 1 + x * 3);
    }
  }
  const header = Buffer.alloc(13);
  header.writeUInt32BE(size, 0);
  header.writeUInt32BE(size, 4);
  header.set([8, 2, 0, 0, 0], 8);
  return Buffer.concat([Buffer.from('89504e470d0a1a0a', 'hex'), chunk('IHDR', header), chunk('tEXt', Buffer.from('Software\0Slabtide planner')), chunk('IDAT', deflateSync(rows, { level: 9 })), chunk('IEND', Buffer.alloc(0))]);
}

const site = join(output, 'site');
mkdirSync(site, { recursive: true });
const alone = page('', [script]);
const hosted = page(`<link rel="manifest" href="manifest.webmanifest">\n<link rel="icon" href="icon-192.png">\n<link rel="apple-touch-icon" href="icon-192.png">\n<script type="module">${install}</script>`, [script, install]);
writeFileSync(join(output, 'index.html'), alone);
writeFileSync(join(site, 'index.html'), hosted);
for (const size of [192, 512]) writeFileSync(join(site, `icon-${size}.png`), icon(size));
const stamp = `${version}-${createHash('sha256').update(hosted).digest('hex').slice(0, 12)}`;
writeFileSync(join(site, 'sw.js'), await minified('service_worker.ts', 'iife', { define: { version: JSON.stringify(stamp) } }));
writeFileSync(join(site, 'manifest.webmanifest'), JSON.stringify({
  name: 'Slabtide planner', short_name: 'Slabtide', start_url: './', scope: './', display: 'standalone',
  background_color: '#fbfaf6', theme_color: '#0b5563',
  icons: [192, 512].map((size) => ({ src: `icon-${size}.png`, sizes: `${size}x${size}`, type: 'image/png', purpose: 'any maskable' })),
}, null, 1));

const kb = (bytes) => `${Math.round(bytes / 1000)} kB`;
console.log(`engine ${kb(wasm.length)}, packed ${kb(packed.length)}; page code packed ${kb(gzipSync(script + worker + style).length)}; index.html ${kb(Buffer.byteLength(alone))}`);
