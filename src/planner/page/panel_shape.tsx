// One shape of the drawing in figures: a slab or walk, a wall or tree, steps to be added.
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import type { App } from './app';
import type { SideOfZone } from './drawing';
import { area, distance, lastOf, middle, minus, pathLength, plus, sideOf, sidesOf, times, type Point } from './geometry';
import {
  colourOf, colours, depthOf, finishes, isWalk, pointsOf, rectangleOf, renameZone, resizedRectangle, setColour, setPoints, setRing, setTied, tiedSides, toggleTied, unitOf, usualOf, widthOf,
  zoneAt, type Job, type Obstacle, type Zone,
} from './job';
import { ReshapeForm } from './panel_reshape';
import { circleOf, disc } from './reshape';
import type { Sketch } from './sketch';
import { Button, Choice, Folded, LengthField, NumberField, TextField, Tick, Tiles, type Choices } from './ui';
import { areaText, lengthText, readLength, readPoint, writeLength, writePoint } from './units';

// ---- one slab or walk ----
interface ZoneProps {
  app: App;
  job: Job;
  sketch: Sketch;
  zone: Zone;
  index: number;
}
interface PartProps {
  job: Job;
  zone: Zone;
  edit(change: (zone: Zone) => void): void;
}

const zoneColours: Choices = colours.map((each) => [each, each === 'grey' ? 'plain gray' : each]);
const mostEdgesListed = 16;
const bases: Choices = [['gravel', 'gravel'], ['soil', 'soil'], ['sand', 'sand'], ['insulation', 'insulation']];

export function ZoneForm({ app, job, sketch, zone, index }: ZoneProps) {
  const edit = (change: (zone: Zone) => void) => app.edit((each) => change(zoneAt(each, index)));
  const part = { job, zone, edit };
  const taken = (name: string) => job.tables.zone.some((each, i) => i !== index && each.name === name);
  return <div>
    <h2><bdi>{zone.name}</bdi> <small>{sizeWords(job, zone)}</small></h2>
    <Tiles legend="Finish" choices={finishes} taken={zone.finish} take={(finish) => edit((each) => { each.finish = finish; })} />
    <TextField label="Name" value={zone.name} needed disabled={job.journal !== ''} hint={job.journal ? 'Readings were noted under this name.' : undefined}
      check={(name) => (taken(name.trim()) ? 'Another part has this name' : '')} take={(name) => app.edit((each) => renameZone(each, zone.name, name.trim()))} />
    <Sizes {...part} />
    <NumberField label="Thickness" value={readLength(zone, 'thickness', depthOf(job))} min={1} max={1000} unit={depthOf(job)} take={(value) => edit((each) => writeLength(each, 'thickness', value))} />
    <Tick label="Against the house or another slab, or doweled to it" on={zone.tied ?? tiedSides(zone).length > 0} take={(on) => edit((each) => setTied(each, on))} />
    {!isWalk(zone) && <TiedEdges {...part} sketch={sketch} />}
    <Tick label="Under a roof: no sun all day" on={zone.shaded} take={(on) => edit((each) => {
      if (on) each.shaded = true;
      else delete each.shaded;
    })} />
    <Folded summary="Color, border, base, risers, corners">
      <Choice label="Color" choices={zoneColours} value={colourOf(zone)} take={(colour) => edit((each) => setColour(job, each, colour))} />
      <BorderForm {...part} />
      <Choice label="Base under it" choices={bases} value={zone.base} take={(base) => edit((each) => { each.base = base; })} />
      <Risers {...part} />
      <Corners {...part} sketch={sketch} />
    </Folded>
    <ReshapeForm app={app} job={job} sketch={sketch} zone={zone} index={index} />
    <div class="row">
      {!isWalk(zone) && <Button onClick={() => sketch.takeToSheet('steps')}>Add steps</Button>}
      <Button onClick={() => sketch.copy(zone)}>Copy</Button>
      <Button onClick={() => sketch.remove({ kind: 'zone', index })}>Delete</Button>
      <Button class="main" onClick={() => sketch.select(undefined)}>Done</Button>
    </div>
  </div>;
}

// By which edges, for who can tap them and who cannot; left open, by the one along the nearest wall.
function TiedEdges({ job, zone, edit, sketch }: PartProps & { sketch: Sketch }) {
  const unit = unitOf(job);
  const sides = sidesOf(pointsOf(job, zone));
  const tied = tiedSides(zone);
  if (!zone.tied && tied.length === 0) return null;
  return <div class="ties">
    <p>{tied.length ? `Tied by ${tied.length === 1 ? 'edge' : 'edges'} ${tied.map((side) => side + 1).join(', ')}.` : 'Which edges? Left open, it is the one along the nearest wall.'}</p>
    <Button onClick={() => sketch.takeToSheet('tie')}>Tap the edges</Button>
    {sides.length <= mostEdgesListed && <Folded summary="Edges, one by one">
      {sides.map(([from, to], side) => <Tick key={side} label={`Edge ${side + 1}: ${lengthText(distance(from, to), unit)}`} on={tied.includes(side)} take={() => edit((each) => toggleTied(each, side))} />)}
    </Folded>}
  </div>;
}

function sizeWords(job: Job, zone: Zone): string {
  const points = pointsOf(job, zone);
  return areaText(isWalk(zone) ? pathLength(points) * widthOf(job, zone) : area(points), unitOf(job));
}

function Sizes({ job, zone, edit }: PartProps) {
  const unit = unitOf(job);
  const points = pointsOf(job, zone);
  if (isWalk(zone)) return <LengthField label="Width" value={widthOf(job, zone)} unit={unit} take={(value) => edit((each) => writeLength(each, 'width', value))} />;
  const round = circleOf(points);
  if (round) return <LengthField label="Across" value={round.radius * 2} unit={unit} take={(value) => edit((each) => setPoints(each, disc(round.at, value / 2)))} />;
  const sides = rectangleOf(points);
  if (!sides) return null;
  const resize = (first: number, second: number) => edit((each) => setPoints(each, resizedRectangle(points, first, second)));
  return <div class="pair">
    <LengthField label="One side" value={sides.first} unit={unit} take={(value) => resize(value, sides.second)} />
    <LengthField label="Other side" value={sides.second} unit={unit} take={(value) => resize(sides.first, value)} />
  </div>;
}

function BorderForm({ job, zone, edit }: PartProps) {
  const unit = unitOf(job);
  const { border } = zone;
  return <div>
    <Tick label="A border along the edges with a finish of its own" on={border !== undefined} take={(on) => edit((each) => {
      if (on) each.border = { width: unit === 'm' ? 0.3 : 1, finish: 'broom' };
      else delete each.border;
    })} />
    {border && <>
      <LengthField label="Border width" value={readLength(border, 'width', unit)} unit={unit} take={(value) => edit((each) => writeLength((each.border ??= {}), 'width', value))} />
      <Choice label="Border finish" choices={finishes} value={border.finish} take={(finish) => edit((each) => { (each.border ??= {}).finish = finish; })} />
    </>}
  </div>;
}

function Risers({ job, zone, edit }: PartProps) {
  const { face: faces = [] } = zone;
  if (faces.length === 0) return null;
  const unit = depthOf(job);
  const [least, usual] = unit === 'in' ? [2, 12] : [51, 300]; // as the library's limits
  const put = (i: number, key: string) => (value: number | undefined) => edit((each) => {
    const face = each.face?.[i];
    if (face) writeLength(face, key, value);
  });
  const remove = (i: number) => edit((each) => {
    each.face?.splice(i, 1);
    if (each.face?.length === 0) delete each.face;
  });
  return <div>
    <h3>Risers and edges to finish</h3>
    {faces.map((face, i) => <div key={i} class="pair">
      <NumberField label={`Height of ${i + 1}`} value={readLength(face, 'height', unit)} min={1} max={2000} unit={unit} take={put(i, 'height')} />
      <NumberField label={`Tread of ${i + 1}`} value={readLength(face, 'tread', unit)} min={least} max={least * 59} unit={unit} optional hint={`Left empty: ${usual}`} take={put(i, 'tread')} />
      <Button aria-label={`Remove riser ${i + 1}`} onClick={() => remove(i)}>Remove</Button>
    </div>)}
  </div>;
}

function Corners({ job, zone, edit, sketch: { drawing } }: PartProps & { sketch: Sketch }) {
  const unit = unitOf(job);
  const points = pointsOf(job, zone);
  const open = isWalk(zone);
  if (points.length > 40) return <p>{points.length} points along it.</p>;
  const laid = points.map((point) => drawing.laid(point));
  const put = (i: number, point: Point) => edit((each) => setPoints(each, laid.map((old, k) => drawing.world(k === i ? point : old))));
  const next = () => {
    const last = lastOf(points);
    return open ? plus(last, drawing.world([drawing.step * 4, 0])) : middle(...sideOf(points, points.length - 1));
  };
  return <div>
    <h3>{open ? 'Points along its middle' : 'Corners'}</h3>
    {laid.map(([right, up], i) => <div key={i} class="pair">
      <LengthField label={`${i + 1}: right`} value={right} unit={unit} min={-Infinity} take={(value) => put(i, [value, up])} />
      <LengthField label={`${i + 1}: up`} value={up} unit={unit} min={-Infinity} take={(value) => put(i, [right, value])} />
      {points.length > (open ? 2 : 3) && <Button aria-label={`Remove corner ${i + 1}`} onClick={() => edit((each) => setRing(job, each, points.filter((_, k) => k !== i)))}>Remove</Button>}
    </div>)}
    <Button onClick={() => edit((each) => setRing(job, each, [...points, next()]))}>Add a corner after the last</Button>
  </div>;
}

// ---- a wall or a tree ----
const wallColours: Choices = [['', 'like brick'], ['white', 'white'], ['light', 'light'], ['medium', 'medium'], ['dark', 'dark']];

interface ThingProps {
  app: App;
  job: Job;
  sketch: Sketch;
  thing: Obstacle;
  index: number;
}
export function ThingForm({ app, job, sketch, thing, index }: ThingProps) {
  const unit = unitOf(job);
  const edit = (change: (thing: Obstacle) => void) => app.edit(({ tables }) => {
    const each = tables.obstacle?.[index];
    if (each) change(each);
  });
  const length = (label: string, key: string) =>
    <LengthField label={label} value={readLength(thing, key, unit)} unit={unit} take={(value) => edit((each) => writeLength(each, key, value))} />;
  const tree = thing.kind === 'tree';
  const [from, to] = [readPoint(thing, 'from', unit), readPoint(thing, 'to', unit)];
  return <div>
    <h2>{tree ? 'Tree' : 'Wall'}</h2>
    <TextField label="Name" value={thing.name} take={(name) => edit((each) => { each.name = name; })} />
    {length('Height', 'height')}
    {tree && length('Radius', 'radius')}
    {!tree && <Choice label="Color, for the light it reflects" choices={wallColours} value={colourOf(thing) ?? ''} take={(colour) => edit((each) => setColour(job, each, colour))} />}
    {!tree && from && to && <LengthField label="Length" value={distance(from, to)} unit={unit}
      take={(value) => edit((each) => writePoint(each, 'to', plus(from, times(minus(to, from), value / distance(from, to)))))} />}
    <div class="row">
      <Button onClick={() => sketch.remove({ kind: 'obstacle', index })}>Delete</Button>
      <Button class="main" onClick={() => sketch.select(undefined)}>Done</Button>
    </div>
  </div>;
}

// ---- steps ----
const riserCounts: Choices = ['1', '2', '3', '4', '5'].map((count) => [count, count]);

export function StepsForm({ job, sketch, place }: { job: Job; sketch: Sketch; place: SideOfZone }) {
  const unit = unitOf(job);
  const usual = usualOf(job);
  const zone = zoneAt(job, place.index);
  const whole = distance(...sideOf(pointsOf(job, zone), place.side));
  const [steps, setSteps] = useState({ rises: 3, width: Math.min(whole, unit === 'm' ? 1.8 : 6), tread: usual.tread, rise: usual.riser });
  const put = (key: keyof typeof steps) => (value: number) => setSteps((before) => ({ ...before, [key]: value }));
  const heading = useRef<HTMLHeadingElement>(null);
  useLayoutEffect(() => {
    heading.current?.closest('.panel')?.scrollIntoView({ block: 'nearest' });
    heading.current?.focus();
  }, []);
  return <div class="steps">
    <h2 ref={heading} tabIndex={-1}>Steps down from <bdi>{zone.name}</bdi></h2>
    <Tiles legend="How many risers" choices={riserCounts} taken={String(steps.rises)} take={(count) => put('rises')(Number(count))} />
    <LengthField label="Width" value={steps.width} unit={unit} take={put('width')} />
    <div class="pair">
      <LengthField label="Tread" value={steps.tread} unit={unit} take={put('tread')} />
      <NumberField label="Riser height" value={steps.rise} min={1} max={400} unit={depthOf(job)} take={put('rise')} />
    </div>
    <div class="row">
      <Button class="main" onClick={() => sketch.addSteps(place, steps)}>Add the steps</Button>
      <Button onClick={() => sketch.take('move')}>Cancel</Button>
    </div>
  </div>;
}
