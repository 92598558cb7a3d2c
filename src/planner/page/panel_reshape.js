// Split, mirror and bow by figures, for keys and for whoever cannot drag.
import { button, el, say } from './dom';
import { bounds, distance } from './geometry';
import { choice, lengthField } from './inputs';
import { isWalk, pointsOf, setPoints, unitOf } from './job';
import { bowed, mirrorZone, splitZone } from './reshape';
import { lengthText } from './units';

export function reshapeForm(app, drawing, zone, index) {
  return el('details', { class: 'reshape' }, el('summary', {}, 'Split, mirror, bow a side'),
    mirrorForm(app, drawing, index), splitForm(app, drawing, zone, index), isWalk(zone) ? null : bowForm(app, zone, index));
}

function mirrorForm(app, drawing, index) {
  const mirror = (axis) => () => app.edit((job) => mirrorZone(job, index, drawing.world(axis)));
  return el('div', { class: 'row' },
    button('Mirror left and right', mirror([0, 1])), button('Mirror top and bottom', mirror([1, 0])));
}

// Across the sheet or up it, so far from its left or lower end.
function splitForm(app, drawing, zone, index) {
  const unit = unitOf(app.job);
  const box = bounds(pointsOf(app.job, zone).map((point) => drawing.laid(point)));
  const ways = { left: [box.west, box.east], lower: [box.south, box.north] };
  const half = (side) => (ways[side][1] - ways[side][0]) / 2;
  const answers = { side: half('left') >= half('lower') ? 'left' : 'lower' };
  answers.far = half(answers.side);
  const split = () => {
    if (app.job.journal) return say('Readings were noted for this pour. Undo them on the slab page before you split a part.');
    const at = ways[answers.side][0] + answers.far;
    const line = answers.side === 'left' ? [[at, box.south], [at, box.north + 1]] : [[box.west, at], [box.east + 1, at]];
    app.begin();
    const made = splitZone(app.job, index, ...line.map((point) => drawing.world(point)));
    if (made === undefined) {
      app.drop();
      return say('It cannot be split in two there.');
    }
    app.selection = { kind: 'zone', index: made };
    app.end();
    return say(`${zone.name} split in two`);
  };
  return el('div', {}, el('div', { class: 'pair' },
    choice('Split, measured from its', [['left', 'left end'], ['lower', 'lower end']], answers.side, (side) => { answers.side = side; }),
    lengthField('Split at', answers.far, unit, (value) => { answers.far = value; })), button('Split it', split));
}

function bowForm(app, zone, index) {
  const unit = unitOf(app.job);
  const points = pointsOf(app.job, zone);
  if (points.length > 16) return null;
  const sides = points.map((point, i) => [String(i), `${i + 1}: ${lengthText(distance(point, points[(i + 1) % points.length]), unit)}`]);
  const answers = { side: '0', rise: unit === 'm' ? 0.3 : 1 };
  const bow = (way) => () => app.edit((job) => setPoints(job.tables.zone[index], bowed(points, Number(answers.side), way * answers.rise)));
  return el('div', {}, el('div', { class: 'pair' },
    choice('Bow the side', sides, answers.side, (side) => { answers.side = side; }),
    lengthField('By, at its middle', answers.rise, unit, (value) => { answers.rise = value; })),
    el('div', { class: 'row' }, button('Bow out', bow(1)), button('Bow in', bow(-1))));
}
