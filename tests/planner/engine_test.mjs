// The engine in WebAssembly says what the native program says, to the byte.
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { test } from 'node:test';
import { decompress } from '../../src/planner/page/node_modules/lzma1/lib/index.js';
import { allJobs, demo, nativePlan, now, planner, root, startEngine } from './support.mjs';

const ask = await startEngine();

test('the page holds the very engine', () => {
  const page = readFileSync(join(planner, 'index.html'), 'utf8');
  const [, packed] = page.match(/<script type="text\/plain" id="engine">([^<]*)/);
  const wasm = readFileSync(join(planner, 'engine/slabtide_engine.wasm'));
  assert.equal(Buffer.compare(Buffer.from(decompress(Buffer.from(packed, 'base64'))), wasm), 0);
});
const plan = (text, draws = 0, formats = ['.json']) =>
  ask({ ask: 'plan', job: 'job.toml', texts: { 'job.toml': text }, now, draws, formats });

test('both demos, likely day: JSON, sheet, calendar and table to the byte', () => {
  for (const name of ['spring', 'hot']) {
    const endings = ['.json', '.html', '.csv'];
    const native = nativePlan({ 'job.toml': demo(name) }, { endings });
    const told = plan(demo(name), 0, endings);
    assert.equal(told.ok, true);
    for (const ending of endings) assert.equal(told.files[ending], native[ending], `${name}${ending}`);
  }
});

test('both demos with 40 days drawn: JSON to the byte', () => {
  for (const name of ['spring', 'hot']) {
    assert.equal(plan(demo(name), 40).files['.json'], nativePlan({ 'job.toml': demo(name) }, { draws: 40 })['.json'], name);
  }
});

test('every job file in the project: the same JSON, or refused by both', () => {
  let same = 0;
  for (const path of allJobs()) {
    const text = readFileSync(path, 'utf8');
    const native = nativePlan({ 'job.toml': text });
    const told = plan(text);
    assert.equal(told.ok, native !== undefined, path.slice(root.length));
    if (native) {
      assert.equal(told.files['.json'], native['.json'], path.slice(root.length));
      same += 1;
    }
  }
  assert.ok(same >= 10, `only ${same} of them could be planned`);
});
