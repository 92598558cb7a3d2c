// What is drawn at random, with every tool of the sheet, plans the same in the page's engine and by
// the command line, to the byte; what one refuses the other does.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import { nativePlan, now, startEngine } from './support.mjs';
import parts from './parts.mjs';

const {
  addSlab, addSteps, addTree, addWalk, addWall, finishes, newJob, squaredEnds, textOf, toggleTied, turnNorth, usualOf,
} = parts.job;
const { bowSide, disc, mirrorZone, splitZone } = parts.reshape;

const drawings = 50;
const ask = await startEngine();

// Marsaglia's xorshift (2003): the same drawings every time.
function dice(seed) {
  let state = seed * 2654435769 + 1;
  const draw = () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
  for (let i = 0; i < 8; ++i) draw();
  return {
    between: (low, high) => low + (high - low) * draw(),
    pick: (list) => list[Math.floor(draw() * list.length)],
    maybe: (share) => draw() < share,
  };
}

function drawn(seed) {
  const { between, pick, maybe } = dice(seed);
  const job = newJob({ tables: { units: pick(['us', 'us', 'si']) } });
  const foot = job.tables.units === 'si' ? 0.3048 : 1;
  const some = (low, high) => Math.round(between(low, high) * 2) * 0.5 * foot;
  Object.assign(job.tables.site, { latitude: 45.1, longitude: -91.6, time_zone: 'America/Chicago' });
  Object.assign(job.tables.pour, { date: { $time: '2026-05-14' }, start: pick(['07:00', '08:30', '10:00']) });
  const [width, depth] = [some(8, 24), some(6, 16)];
  addSlab(job, maybe(0.25) ? disc([width / 2, depth / 2], some(4, 9)) : [[0, 0], [width, 0], [width, depth], [0, depth]]);
  const [slab] = job.tables.zone;
  slab.finish = pick(finishes.map(([id]) => id));
  const round = slab.outline.length > 4;
  if (maybe(0.4)) for (const side of pick([[0], [2], [1, 3]])) toggleTied(slab, side);
  if (!round && maybe(0.4)) bowSide(job, slab, 2, between(-0.2, 0.4) * depth);
  if (!round && maybe(0.5)) addSteps(job, 0, 0, { rises: pick([1, 2, 3]), width: some(3, 6), tread: usualOf(job).tread, rise: usualOf(job).riser });
  else if (!round && maybe(0.7)) addWalk(job, squaredEnds(job, [[width / 2, 0], [width / 2 + some(-4, 4), -some(6, 12)], [some(-8, 30), -some(14, 30)]]));
  if (maybe(0.3)) splitZone(job, 0, [some(2, 6), 0], [some(2, 6) + 1e-3, 1]);
  if (maybe(0.3)) mirrorZone(job, 0, pick([[0, 1], [1, 0]]));
  if (maybe(0.7)) addWall(job, [-some(2, 8), depth + some(0, 3)], [width + some(2, 8), depth + some(0, 3)]);
  if (maybe(0.5)) addTree(job, [some(-20, -4), some(-10, 10)]);
  if (maybe(0.6)) turnNorth(job, pick([15, 90, 137, 200, 345]));
  if (maybe(0.3)) job.tables.mix.admixture = [{ kind: 'retarder', dose: foot === 1 ? 2 : 130 }];
  return textOf(job);
}

test(`${drawings} random drawings: the same JSON, or refused by both`, () => {
  let planned = 0;
  for (let seed = 1; seed <= drawings; ++seed) {
    const text = drawn(seed);
    const native = nativePlan({ 'job.toml': text });
    const told = ask({ ask: 'plan', job: 'job.toml', texts: { 'job.toml': text }, now, draws: 0, formats: ['.json'] });
    assert.equal(told.ok, native !== undefined, `drawing ${seed}: ${told.messages}\n${text}`);
    if (!native) continue;
    assert.equal(told.files['.json'], native['.json'], `drawing ${seed}\n${text}`);
    planned += 1;
  }
  console.log(`${planned} of ${drawings} could be planned`);
  assert.ok(planned >= 40, `only ${planned}`);
});

test('the drawings are not all one', () => {
  assert.equal(new Set(Array.from({ length: drawings }, (_, i) => drawn(i + 1))).size, drawings);
});
