// The drawing with its tools, and beside it what is selected, in figures.
import { useLayoutEffect, useRef, useState } from 'preact/hooks';
import { reasonOf } from './answers';
import type { App, Tool } from './app';
import { hasCompass, readHeading, windOf } from './compass';
import { moveInOrder, turnNorth, type Job } from './job';
import { AddForm } from './panel_add';
import { StepsForm, ThingForm, ZoneForm } from './panel_shape';
import { say } from './say';
import type { Sketch } from './sketch';
import { Button, Folded, NumberField, Tick } from './ui';

// Those without words are taken up elsewhere.
const tools: [id: Tool, words: string, hint: string][] = [
  ['move', 'Select', 'Tap a shape, then drag it or its corners.'],
  ['slab', 'Slab', 'Drag a rectangle, or tap the corners.'],
  ['disc', 'Round', 'Drag from the middle of a round slab to its rim.'],
  ['walk', 'Walk', 'Trace its middle, or tap along it.'],
  ['steps', 'Steps', 'Tap the side of the slab they lead down from.'],
  ['wall', 'House', 'Drag along a wall or fence that casts shade.'],
  ['tree', 'Tree', 'Tap where a tree stands.'],
  ['cut', 'Split', 'Drag a line across a slab or walk to make two of it.'],
  ['tie', '', 'Tap each edge that is against the house or another slab, or doweled to it. Tap it again to take that back.'],
];

interface DrawProps {
  app: App;
  job: Job;
  sketch: Sketch;
}
export function DrawScreen(properties: DrawProps) {
  const { app, sketch } = properties;
  return <section class="page draw">
    <h1 tabIndex={-1} class="spoken">Draw</h1>
    <div class="board">
      <div class="tools" role="toolbar" aria-label="Drawing tools">
        {tools.map(([id, words]) => words && <Button key={id} aria-pressed={app.tool === id} onClick={() => sketch.take(id)}>{words}</Button>)}
      </div>
      <p class="hint">{tools.find(([id]) => id === app.tool)?.[2]}</p>
      <Sheet sketch={sketch} />
      <DraftBar app={app} sketch={sketch} />
      {app.sunTable && <SunBar sketch={sketch} />}
    </div>
    <div class="panel"><Panel {...properties} /></div>
  </section>;
}

// What is on it the drawing makes itself.
function Sheet({ sketch: { drawing } }: { sketch: Sketch }) {
  const sheet = useRef<SVGSVGElement>(null);
  const readout = useRef<HTMLParagraphElement>(null);
  useLayoutEffect(() => (sheet.current && readout.current ? drawing.attach(sheet.current, readout.current) : undefined), [drawing]);
  useLayoutEffect(() => drawing.draw());
  return <div class="sheet-frame">
    <svg ref={sheet} class="sheet" role="group" aria-label="Drawing of the site" />
    <p ref={readout} class="readout" aria-live="off" />
    <div class="zoom">
      <Button aria-label="Zoom in" onClick={() => drawing.zoom(1.3)}>+</Button>
      <Button aria-label="Zoom out" onClick={() => drawing.zoom(1 / 1.3)}>{'\u2212'}</Button>
      <Button onClick={() => drawing.fit()}>Fit</Button>
    </div>
  </div>;
}

const leastPoints: Partial<Record<Tool, number>> = { slab: 3, walk: 2, wall: 2, cut: 2 };

function DraftBar({ app, sketch }: { app: App; sketch: Sketch }) {
  const { drawing } = sketch;
  const least = leastPoints[app.tool];
  const curved = (on: boolean) => {
    sketch.curved = on;
    app.shown();
  };
  return <div class="draft-bar">
    {least && drawing.draft.length > 0 && <>
      <Button class="main" disabled={drawing.draft.length < least} onClick={() => drawing.finish()}>Done</Button>
      <Button onClick={() => drawing.stepBack()}>Undo last point</Button>
    </>}
    {app.tool === 'tie' && <Button class="main" onClick={() => sketch.take('move')}>Done</Button>}
    {app.tool === 'walk' && <Tick label="Curved" on={sketch.curved} take={curved} />}
  </div>;
}

function SunBar({ sketch: { drawing } }: { sketch: Sketch }) {
  const [hour, setHour] = useState(drawing.hour);
  const words = `${Math.floor(hour / 60) % 12 || 12}:${String(hour % 60).padStart(2, '0')} ${hour < 720 ? 'AM' : 'PM'}`;
  const turn = (minutes: number) => {
    drawing.hour = minutes;
    setHour(minutes);
    drawing.drawSoon();
  };
  return <div class="sun">
    <span>Shade at </span>
    <output>{words}</output>
    <input type="range" min={300} max={1260} step={10} value={String(hour)} aria-label="Shade at this hour" aria-valuetext={words} onInput={({ currentTarget }) => turn(Number(currentTarget.value))} />
  </div>;
}

// Each shape has a panel of its own, with nothing typed at another.
function Panel({ app, job, sketch }: DrawProps) {
  const { selection } = app;
  if (sketch.asking) return <StepsForm key={`${sketch.asking.index} ${sketch.asking.side}`} job={job} sketch={sketch} place={sketch.asking} />;
  const key = selection && `${selection.kind} ${selection.index}`;
  const zone = selection?.kind === 'zone' ? job.tables.zone[selection.index] : undefined;
  if (selection && zone) return <ZoneForm key={key} app={app} job={job} sketch={sketch} zone={zone} index={selection.index} />;
  const thing = selection?.kind === 'obstacle' ? job.tables.obstacle?.[selection.index] : undefined;
  if (selection && thing) return <ThingForm key={key} app={app} job={job} sketch={sketch} thing={thing} index={selection.index} />;
  return <div>
    <p>{job.tables.zone.length ? 'Tap a shape to set its finish, size and thickness.' : 'Start with the slab: drag a rectangle on the sheet.'}</p>
    <OrderList app={app} job={job} sketch={sketch} />
    <NorthForm app={app} job={job} />
    <AddForm job={job} sketch={sketch} />
  </div>;
}

function OrderList({ app, job, sketch }: DrawProps) {
  const zones = job.tables.zone;
  if (zones.length < 2) return null;
  return <div>
    <h2>Placed in this order</h2>
    <ol class="order">
      {zones.map((zone, index) => <li key={zone.name}>
        <Button onClick={() => sketch.select({ kind: 'zone', index })}><bdi>{zone.name}</bdi></Button>
        {index > 0 && <Button aria-label={`${zone.name} earlier`} onClick={() => app.edit((each) => moveInOrder(each, index, -1))}>Earlier</Button>}
      </li>)}
    </ol>
  </div>;
}

function NorthForm({ app, job }: { app: App; job: Job }) {
  const turn = (to: (now: number) => number) => app.edit((each) => turnNorth(each, to(each.turn)));
  const read = async () => {
    say('Reading the compass ...');
    try {
      const heading = Math.round(await readHeading());
      turn(() => -heading);
      say(`The top of the drawing looks ${windOf(heading)}, ${heading} degrees.`);
    } catch (error) {
      say(reasonOf(error));
    }
  };
  return <Folded summary="Which way is north?">
    <p>Draw the house as you face it, then turn the compass. The drawing stays put.</p>
    <div class="row">
      <Button onClick={() => turn((now) => now - 15)}>Turn left</Button>
      <Button onClick={() => turn((now) => now + 15)}>Turn right</Button>
    </div>
    {hasCompass() && <div>
      <p>Or stand on the site with the phone flat, turn until the drawing lies as the site does, and tap. Keep away from steel and trucks. A compass shows magnetic north, up to 20 degrees off in places: check it against a map.</p>
      <Button onClick={() => void read()}>Use the phone's compass</Button>
    </div>}
    <NumberField label="North, clockwise from the top of the sheet" value={Math.round(job.turn * 10) / 10} min={-360} max={360} unit="degrees" take={(deg) => turn(() => deg)} />
  </Folded>;
}
