// Round slabs, bowed sides, split and mirrored ones: plane geometry, without engine or browser.
import assert from 'node:assert/strict';
import { test } from 'node:test';
import parts from './parts.mjs';

const { area, distance, pathLength } = parts.geometry;
const { addSlab, addSteps, addWalk, newJob, pointsOf, setRing, tiedSides, toggleTied } = parts.job;
const { bowed, bowSide, circleOf, disc, mirrorZone, parted, riseTo, splitZone } = parts.reshape;

const near = (a, b, tolerance = 1e-9) => assert.ok(Math.abs(a - b) <= tolerance, `${a} is not ${b}`);
const square = [[0, 0], [10, 0], [10, 10], [0, 10]];

test('a round slab has the area of its circle, and is known again by it', () => {
  const ring = disc([3, 4], 6);
  near(area(ring), Math.PI * 36, 1e-9);
  const found = circleOf(ring);
  near(distance(found.at, [3, 4]), 0, 1e-9);
  near(found.radius, 6, 1e-9);
  assert.equal(circleOf(square), undefined);
});

test('a side bowed by half its length is a half circle; by less, the segment of its circle', () => {
  const half = bowed(square, 0, 5);
  near(area(half), 100 + Math.PI * 12.5, 0.7); // 16 chords of the arc
  assert.ok(area(half) < 100 + Math.PI * 12.5);
  const [radius, angle] = [(25 + 4) / 4, 2 * Math.asin(5 / ((25 + 4) / 4))];
  const segment = (radius ** 2 / 2) * (angle - Math.sin(angle));
  near(area(bowed(square, 0, 2)), 100 + segment, 0.02 * segment);
  near(area(bowed(square, 0, -2)), 100 - segment, 0.02 * segment);
  near(area(bowed([...square].reverse(), 2, 2)), 100 + segment, 0.02 * segment);
  assert.deepEqual(bowed(square, 0, 0), square);
  near(Math.min(...bowed(square, 0, 2).map(([, y]) => y)), -2, 0.02);
  near(area(bowed(square, 0, 99)), area(half));
});

test('how far a point lies beyond a side, outward', () => {
  near(riseTo(square, 0, [5, -2]), 2);
  near(riseTo([...square].reverse(), 2, [5, -2]), 2);
  near(riseTo(square, 0, [5, 2]), -2);
});

test('a ring parted by a line keeps its area; a line that crosses it four times does not part it', () => {
  const halves = parted(square, true, [3, -5], [3, 5]);
  near(area(halves[0]) + area(halves[1]), 100);
  assert.deepEqual(halves.map(area).sort((a, b) => a - b), [30, 70]);
  const u = [[0, 0], [9, 0], [9, 9], [6, 9], [6, 3], [3, 3], [3, 9], [0, 9]];
  assert.equal(parted(u, true, [-1, 6], [10, 6]), undefined);
  near(parted(u, true, [4.5, -1], [4.5, 1]).map(area).reduce((a, b) => a + b), area(u));
  assert.equal(parted(square, true, [20, 0], [20, 1]), undefined);
});

test('a split slab leaves each half what stands on it, and its place in the order', () => {
  const job = newJob();
  addSlab(job, square, 'porch');
  addWalk(job, [[20, 0], [30, 0]]);
  job.tables.pour.zone_order = ['walk', 'porch'];
  addSteps(job, 0, 1, { rises: 1, width: 4, tread: 1, rise: 7 }); // on the east side
  job.tables.zone[0].joint = [{ from: [8, 0], to: [8, 10] }, { from: [0, 5], to: [10, 5] }];
  assert.equal(splitZone(job, 0, [6, 0], [6, 1]), 1);
  const [first, second] = job.tables.zone;
  assert.deepEqual([first.name, second.name], ['porch', 'porch 2']);
  assert.deepEqual(job.tables.pour.zone_order, ['walk', 'porch', 'porch 2']);
  const east = [first, second].find((zone) => pointsOf(job, zone).some(([x]) => x === 10));
  const west = east === first ? second : first;
  assert.equal(area(pointsOf(job, east)), 40);
  assert.equal(east.face.length, 1);
  assert.equal(west.face, undefined);
  assert.deepEqual(east.joint, [{ from: [8, 0], to: [8, 10] }]); // the one across both is left to the plan
  assert.equal(west.joint, undefined);
  assert.equal(splitZone(job, 0, [50, 0], [50, 1]), undefined);
});

test('a split walk is two walks of the same length together', () => {
  const job = newJob();
  addWalk(job, [[0, 0], [10, 0], [10, 8]]);
  assert.equal(splitZone(job, 0, [4, -1], [4, 1]), 1);
  const lengths = job.tables.zone.map((zone) => pathLength(pointsOf(job, zone)));
  assert.deepEqual(lengths, [4, 14]);
});

test('mirrored twice is as it was; once, its steps look the other way', () => {
  const job = newJob();
  addSlab(job, [[0, 0], [10, 0], [10, 6], [2, 6]]);
  addSteps(job, 0, 1, { rises: 1, width: 4, tread: 1, rise: 7 });
  Object.assign(job.tables.zone[0], { placed_toward: 0, joint: [{ from: [4, 0], to: [4, 6] }] });
  const before = structuredClone(job.tables.zone[0]);
  mirrorZone(job, 0, [0, 1]);
  const [zone] = job.tables.zone;
  assert.deepEqual(pointsOf(job, zone), [[10, 0], [0, 0], [0, 6], [8, 6]]);
  assert.deepEqual([zone.face[0].at, zone.face[0].facing, zone.placed_toward], [[0, 3], 270, 0]);
  assert.deepEqual(zone.joint, [{ from: [6, 0], to: [6, 6] }]);
  mirrorZone(job, 0, [0, 1]);
  assert.deepEqual(zone, before);
  mirrorZone(job, 0, [1, 0]);
  assert.equal(zone.placed_toward, 180);
  assert.equal(zone.face[0].facing, 90);
});

test('edges stay tied through what is done to the outline', () => {
  const tied = (...sides) => {
    const job = newJob();
    addSlab(job, [[0, 0], [12, 0], [12, 10], [0, 10]]);
    const [zone] = job.tables.zone;
    for (const side of sides) toggleTied(zone, side);
    return { job, zone };
  };
  const toggled = tied(3, 1, 3);
  assert.deepEqual([toggled.zone.tied, toggled.zone.tied_edges], [true, [2]]);
  toggleTied(toggled.zone, 1);
  assert.deepEqual([toggled.zone.tied, 'tied_edges' in toggled.zone], [true, false]);

  const bent = tied(0, 1, 3);
  bowSide(bent.job, bent.zone, 1, 2);
  const pieces = pointsOf(bent.job, bent.zone).length - 3;
  assert.deepEqual(tiedSides(bent.zone), [0, ...Array.from({ length: pieces }, (_, i) => i + 1), pieces + 2]);

  const cornered = tied(2);
  setRing(cornered.job, cornered.zone, [[0, 0], [12, 0], [12, 10], [5, 10], [0, 10]]);
  assert.deepEqual(tiedSides(cornered.zone), [2, 3]);

  // Cut from north to south: the north edge goes with both halves, the west one with its own.
  const { job, zone } = tied(2, 3);
  splitZone(job, 0, [4, -1], [4, 11]);
  const northAndWest = (each) => [10, 0].map((at, axis) => tiedSides(each).filter((side) => [0, 1].every((k) => {
    const ring = pointsOf(job, each);
    return ring[(side + k) % ring.length][1 - axis] === at;
  })).length);
  const [one, other] = [zone, job.tables.zone[1]].sort((a, b) => Math.min(...pointsOf(job, a).map(([x]) => x)) - Math.min(...pointsOf(job, b).map(([x]) => x)));
  assert.deepEqual([northAndWest(one), northAndWest(other)], [[1, 1], [1, 0]]);

  const far = tied(3);
  splitZone(far.job, 0, [4, -1], [4, 11]);
  assert.deepEqual(far.job.tables.zone.map((each) => each.tied === true).sort(), [false, true]);
});
