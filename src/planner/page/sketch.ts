// What is done on the sheet, made of it in the job: drawn, dragged, split, taken away. What has to be
// asked first is kept here too, for the panel to ask.
import type { App, Shape, Tool } from './app';
import { Drawing, type Acts, type SideOfZone } from './drawing';
import { smooth, type Point, type Points } from './geometry';
import {
  addSlab, addSteps, addTree, addWalk, addWall, freeName, moveObstacle, moveZone, pointsOf, removeZone, setPoints, squaredEnds, tiedSides, toggleTied, unitOf, zoneAt,
  type Obstacle, type Steps, type Zone,
} from './job';
import { bowSide, crosses, disc, riseTo, splitZone } from './reshape';
import { say } from './say';
import { writePoint } from './units';

const tapCloser = 'Tap closer to a side of a slab.';
const notedHere = (done: string) => `Readings were noted for this pour. Undo them on the slab page before you ${done} a part.`;

export class Sketch implements Acts {
  app: App;
  drawing: Drawing;
  curved = true; // what walks are drawn as
  asking: SideOfZone | undefined; // where steps are to lead down from

  constructor(app: App) {
    this.app = app;
    this.drawing = new Drawing(this);
  }

  // Another pour is open.
  forget() {
    this.asking = undefined;
    this.drawing.forget();
  }

  job() { return this.app.job; }
  tool() { return this.app.tool; }
  selection() { return this.app.selection; }
  sun(minute: number) { return this.app.sun(minute); }

  // From a panel, which on a phone lies far below the sheet.
  takeToSheet(tool: Tool) {
    this.take(tool);
    this.drawing.comeIntoView();
  }
  take(tool: Tool) {
    this.app.tool = tool;
    this.asking = undefined;
    this.drawing.dropDraft();
    if (tool !== 'move' && tool !== 'tie') this.app.selection = undefined;
    this.app.shown();
  }

  drafted() { this.app.shown(); }

  select(shape: Shape | undefined) {
    this.asking = undefined;
    this.app.selection = shape;
    this.app.shown();
  }

  // Done drawing: select what was made, and show it in figures.
  #made(kind: Shape['kind'], make: () => number) {
    const { app } = this;
    app.edit(() => {
      const index = make();
      this.asking = undefined;
      app.tool = 'move';
      app.selection = { kind, index };
      say(kind === 'zone' ? `${zoneAt(app.pour, index).name} drawn` : 'Drawn');
    });
  }

  slab(points: Points) { this.#made('zone', () => addSlab(this.app.pour, points)); }
  disc(at: Point, radius: number) { this.slab(disc(at, radius)); }
  wall(from: Point, to: Point, height?: number) { this.#made('obstacle', () => addWall(this.app.pour, from, to, height)); }
  tree(at: Point, size?: [radius: number, height: number]) { this.#made('obstacle', () => addTree(this.app.pour, at, size)); }
  walk(points: Points, traced: boolean, width?: number) {
    const job = this.app.pour;
    const step = unitOf(job) === 'm' ? 0.6 : 2;
    this.#made('zone', () => addWalk(job, this.curved || traced ? smooth(squaredEnds(job, points), step) : points, width));
  }

  steps(place: SideOfZone | undefined) {
    this.asking = place;
    if (place) this.app.shown();
    else say(tapCloser);
  }
  tie(place: SideOfZone | undefined) {
    if (!place) return say(tapCloser);
    this.app.selection = { kind: 'zone', index: place.index };
    const { side } = place;
    const sides = this.app.edit((job) => {
      const zone = zoneAt(job, place.index);
      toggleTied(zone, side);
      return tiedSides(zone);
    });
    return say(`Edge ${side + 1} is ${sides.includes(side) ? 'tied' : 'free'}`);
  }
  addSteps({ index, side }: SideOfZone, steps: Steps) { this.#made('zone', () => addSteps(this.app.pour, index, side, steps)); }

  copy(zone: Zone) {
    const { step } = this.drawing;
    this.#made('zone', () => {
      const job = this.app.pour;
      const copy = { ...structuredClone(zone), name: freeName(job, zone.name) };
      const index = job.tables.zone.push(copy) - 1;
      job.tables.pour.zone_order?.push(copy.name);
      moveZone(job, index, this.drawing.world([step * 4, -step * 4]));
      return index;
    });
  }

  remove(shape: Shape) {
    const { app } = this;
    if (shape.kind === 'zone' && app.pour.journal) return say(notedHere('delete'));
    app.selection = undefined;
    app.edit((job) => {
      if (shape.kind === 'zone') removeZone(job, shape.index);
      else job.tables.obstacle?.splice(shape.index, 1);
    });
    return say('Deleted. Undo brings it back.');
  }

  nudge(shape: Shape, by: Point) {
    this.app.edit((job) => (shape.kind === 'zone' ? moveZone : moveObstacle)(job, shape.index, by));
  }

  // ---- dragging: each move starts from how it was before the drag ----
  #dragged(shape: Shape, change: { zone?(zone: Zone, points: Point[]): void; thing?(thing: Obstacle): void }) {
    const { app } = this;
    app.begin();
    const was = app.before?.tables[shape.kind]?.[shape.index];
    const list: (Zone | Obstacle)[] = app.pour.tables[shape.kind] ?? [];
    if (!was) return;
    const now = (list[shape.index] = structuredClone(was));
    if (shape.kind === 'zone') change.zone?.(now as Zone, pointsOf(app.pour, now as Zone));
    else change.thing?.(now as Obstacle);
    // The sheet is drawn once a frame at most, and the plan follows.
    app.live();
    this.drawing.drawSoon();
  }

  dragCorner(shape: Shape, corner: number, to: Point) {
    this.#dragged(shape, {
      zone: (zone, points) => setPoints(zone, points.map((point, i) => (i === corner ? to : point))),
      thing: (thing) => writePoint(thing, thing.kind === 'tree' ? 'at' : corner === 0 ? 'from' : 'to', to),
    });
  }

  // The side bows out to the finger, by whole steps.
  dragSide(shape: Shape, side: number, to: Point) {
    const { step } = this.drawing;
    this.#dragged(shape, { zone: (zone, points) => bowSide(this.app.pour, zone, side, Math.round(riseTo(points, side, to) / step) * step) });
  }

  dragShape(shape: Shape, by: Point) {
    const job = this.app.pour;
    this.#dragged(shape, { zone: () => moveZone(job, shape.index, by), thing: () => moveObstacle(job, shape.index, by) });
  }

  endDrag() { this.app.end(); }
  dropDrag() { this.app.drop(); }

  // ---- splitting ----
  // The line parts the first shape it crosses, the selected one before others.
  cut(from: Point, to: Point) {
    const job = this.app.pour;
    const chosen = this.app.selection?.kind === 'zone' ? [this.app.selection.index] : [];
    const crossed = [...chosen, ...job.tables.zone.keys()].filter((index) => crosses(job, zoneAt(job, index), from, to));
    this.#split(crossed, from, to, 'The line has to cross a slab from side to side.');
  }
  // By a line as the sheet lies.
  split(index: number, line: [Point, Point]) {
    this.#split([index], this.drawing.world(line[0]), this.drawing.world(line[1]), 'It cannot be split in two there.');
  }

  #split(indices: number[], from: Point, to: Point, otherwise: string) {
    const { app } = this;
    if (app.pour.journal) return say(notedHere('split'));
    app.begin();
    for (const index of indices) {
      const made = splitZone(app.pour, index, from, to);
      if (made === undefined) continue;
      app.tool = 'move';
      app.selection = { kind: 'zone', index: made };
      app.end();
      return say(`${zoneAt(app.pour, index).name} split in two`);
    }
    app.drop();
    return say(otherwise);
  }
}
