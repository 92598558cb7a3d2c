// Split, mirror and bow by figures, for keys and for whoever cannot drag.
import { useState } from 'preact/hooks';
import type { App } from './app';
import type { Drawing } from './drawing';
import { bounds, distance, sidesOf, type Point } from './geometry';
import { isWalk, pointsOf, unitOf, zoneAt, type Job, type Zone } from './job';
import { bowSide, mirrorZone } from './reshape';
import type { Sketch } from './sketch';
import { Button, Choice, Folded, LengthField, type Choices } from './ui';
import { lengthText } from './units';

interface ReshapeProps {
  app: App;
  job: Job;
  sketch: Sketch;
  zone: Zone;
  index: number;
}
export function ReshapeForm(properties: ReshapeProps) {
  const { app, sketch: { drawing }, index, zone } = properties;
  return <Folded summary="Split, mirror, bow a side" class="reshape">
    <div class="row">
      <Button onClick={() => mirror(app, drawing, index, [0, 1])}>Mirror left and right</Button>
      <Button onClick={() => mirror(app, drawing, index, [1, 0])}>Mirror top and bottom</Button>
    </div>
    <SplitForm {...properties} />
    {!isWalk(zone) && <BowForm {...properties} />}
  </Folded>;
}

const mirror = (app: App, drawing: Drawing, index: number, axis: Point) => app.edit((job) => mirrorZone(job, index, drawing.world(axis)));

// Across the sheet or up it, so far from its left or lower end.
type End = 'left' | 'lower';
const ends: Choices<End> = [['left', 'left end'], ['lower', 'lower end']];

function SplitForm({ job, sketch, zone, index }: ReshapeProps) {
  const { drawing } = sketch;
  const { west, east, south, north } = bounds(pointsOf(job, zone).map((point) => drawing.laid(point)));
  const half = { left: (east - west) / 2, lower: (north - south) / 2 };
  const [chosen, choose] = useState<End>();
  const [typed, type] = useState<number>();
  const end = chosen ?? (half.left >= half.lower ? 'left' : 'lower');
  const far = typed ?? half[end];
  const split = () => {
    const line: [Point, Point] = end === 'left' ? [[west + far, south], [west + far, north + 1]] : [[west, south + far], [east + 1, south + far]];
    sketch.split(index, line);
  };
  return <div>
    <div class="pair">
      <Choice label="Split, measured from its" choices={ends} value={end} take={(taken) => choose(taken)} />
      <LengthField label="Split at" value={far} unit={unitOf(job)} take={type} />
    </div>
    <Button onClick={split}>Split it</Button>
  </div>;
}

function BowForm({ app, job, zone, index }: ReshapeProps) {
  const unit = unitOf(job);
  const points = pointsOf(job, zone);
  const [side, setSide] = useState('0');
  const [rise, setRise] = useState(unit === 'm' ? 0.3 : 1);
  if (points.length > 16) return null;
  const sides: Choices = sidesOf(points).map(([from, to], i) => [String(i), `${i + 1}: ${lengthText(distance(from, to), unit)}`]);
  const bow = (way: 1 | -1) => app.edit((each) => bowSide(each, zoneAt(each, index), Number(side), way * rise));
  return <div>
    <div class="pair">
      <Choice label="Bow the side" choices={sides} value={side} take={setSide} />
      <LengthField label="By, at its middle" value={rise} unit={unit} take={setRise} />
    </div>
    <div class="row">
      <Button onClick={() => bow(1)}>Bow out</Button>
      <Button onClick={() => bow(-1)}>Bow in</Button>
    </div>
  </div>;
}
