// The sheet: slabs, walks, walls and trees drawn by finger, mouse or keys. It looks at the job and
// tells what was drawn through `acts`; it changes nothing itself. What is on the sheet is made here and
// not by Preact: a shape that is dragged is drawn anew with every picture of the screen.
import type { Shape, Tool } from './app';
import {
  area, bounds, centre, corner, distance, lastOf, middle, minus, onSegment, pathLength, plus, shadowShift, sideOf, sidesOf, simplify, times, turned, walkOutline,
  type Point, type Points, type Sun,
} from './geometry';
import { isWalk, pointsOf, tiedSides, unitOf, widthOf, type Face, type Job, type Obstacle, type Zone } from './job';
import { areaText, lengthText, readLength, readPoint } from './units';

// What the sheet looks at, and tells of what was drawn; points as the job has them.
export interface Acts {
  job(): Job | undefined;
  tool(): Tool;
  selection(): Shape | undefined;
  sun(minute: number): Sun | undefined;
  select(shape: Shape | undefined): void;
  slab(points: Points): void;
  walk(points: Points, traced: boolean): void;
  disc(at: Point, radius: number): void;
  cut(from: Point, to: Point): void;
  wall(from: Point, to: Point): void;
  tree(at: Point): void;
  steps(place: SideOfZone | undefined): void;
  tie(place: SideOfZone | undefined): void;
  drafted(): void;
  remove(shape: Shape): void;
  nudge(shape: Shape, by: Point): void;
  dragCorner(shape: Shape, corner: number, to: Point): void;
  dragSide(shape: Shape, side: number, to: Point): void;
  dragShape(shape: Shape, by: Point): void;
  endDrag(): void;
  dropDrag(): void;
}
export interface SideOfZone {
  index: number;
  side: number;
}

// A shape as the sheet lies.
interface LaidZone extends Shape {
  kind: 'zone';
  zone: Zone;
  name: string;
  points: Point[];
  outline: Point[];
}
interface LaidThing extends Shape {
  kind: 'obstacle';
  thing: Obstacle;
  name: string;
  points: Point[];
  radius: number | undefined;
  height: number;
}
type Laid = LaidZone | LaidThing;

// What a finger is at. Places on the screen are in pixels from the sheet's corner.
interface Touch {
  at: Point;
  start: Point;
  moved: boolean;
  hit?: Shape | undefined;
}
interface Stroke extends Touch {
  kind: Tool | 'pan' | 'shape';
  trace: Point[];
  box?: [Point, Point];
}
interface Grip extends Touch {
  kind: 'corner' | 'side';
  hit: Shape;
  number: number;
}
interface Pinch {
  kind: 'pinch';
  before: Point[];
  moved: boolean;
}
interface View {
  x: number;
  y: number;
  scale: number; // px in a ft or m
}

type Attributes = Record<string, string | number | undefined>;
// Text is set as text: nothing typed or imported is ever markup.
function svg(name: string, attributes: Attributes = {}, ...children: (Node | string)[]): SVGElement {
  const element = document.createElementNS('http://www.w3.org/2000/svg', name);
  for (const [key, value] of Object.entries(attributes)) if (value !== undefined) element.setAttribute(key, String(value));
  element.append(...children);
  return element;
}
const shapeAt = (place: EventTarget | null): Shape | undefined => {
  const element = place instanceof Element ? place.closest<SVGElement>('[data-kind]') : null;
  return element ? { kind: element.dataset.kind as Shape['kind'], index: Number(element.dataset.index) } : undefined;
};
const same = (one: Shape | undefined, other: Shape | undefined) => one !== undefined && one.kind === other?.kind && one.index === other.index;
const boxOf = ([[ax, ay], [bx, by]]: [Point, Point]): Point[] => [[ax, ay], [bx, ay], [bx, by], [ax, by]];
const rounded = (point: Point, step: number): Point => [Math.round(point[0] / step) * step, Math.round(point[1] / step) * step];

const finger = 22; // px: what a fingertip covers about a point
const still = 8; // px: less is a tap
const mostHandles = 16;

export class Drawing {
  hour = 12 * 60; // minutes, of the shadows
  draft: Point[] = [];
  #acts: Acts;
  #sheet: HTMLElement | SVGElement | undefined;
  #readout: HTMLElement | undefined;
  #measured: [width: number, height: number] | undefined;
  #view: View | undefined;
  #pointers = new Map<number, Point>();
  #gesture: Stroke | Grip | Pinch | undefined;
  #rubber = svg('g');
  #due: number | undefined;
  #focused: string | undefined;

  constructor(acts: Acts) {
    this.#acts = acts;
  }

  // The sheet and the line that tells what is being drawn, as they are on the page now.
  attach(sheet: SVGSVGElement, readout: HTMLElement): () => void {
    this.#sheet = sheet;
    this.#readout = readout;
    this.#measured = undefined;
    sheet.addEventListener('pointerdown', (event) => this.#down(event));
    sheet.addEventListener('pointermove', (event) => this.#move(event));
    sheet.addEventListener('pointerup', (event) => this.#up(event));
    sheet.addEventListener('pointercancel', (event) => this.#cancel(event));
    // No click of a touch: the page may have moved, and another thing lie under the finger.
    sheet.addEventListener('touchstart', (event) => event.preventDefault());
    sheet.addEventListener('keydown', (event) => this.#key(event));
    sheet.addEventListener('wheel', (event) => {
      event.preventDefault();
      this.zoom(event.deltaY < 0 ? 1.15 : 1 / 1.15, this.#at(event));
    });
    const watch = new ResizeObserver(() => {
      this.#measured = undefined;
      this.draw();
    });
    watch.observe(sheet);
    return () => {
      watch.disconnect();
      this.#sheet = undefined;
    };
  }

  comeIntoView() {
    this.#sheet?.scrollIntoView({ block: 'center' });
  }

  // Another pour: seen whole, and nothing begun.
  forget() {
    this.#view = undefined;
    this.draft = [];
  }

  // ---- the way between the job's plan, the sheet as it lies, and the screen ----
  get job(): Job {
    const job = this.#acts.job();
    if (!job) throw new Error('no pour is open');
    return job;
  }
  get view(): View {
    if (!this.#view) throw new Error('the sheet has not been drawn');
    return this.#view;
  }
  get unit() { return unitOf(this.job); }
  get step() { return this.unit === 'm' ? 0.1 : 0.5; }
  // Measured once until it changes: to ask is to lay the page out.
  get size(): Point {
    if (!this.#measured?.every(Boolean) && this.#sheet) this.#measured = [this.#sheet.clientWidth, this.#sheet.clientHeight];
    return [this.#measured?.[0] || 320, this.#measured?.[1] || 400];
  }
  laid(point: Point) { return turned(point, -this.job.turn); }
  world(point: Point) { return turned(point, this.job.turn); }
  screen(laid: Point): Point {
    const [w, h] = this.size;
    return [(laid[0] - this.view.x) * this.view.scale + w / 2, h / 2 - (laid[1] - this.view.y) * this.view.scale];
  }
  fromScreen([sx, sy]: Point): Point {
    const [w, h] = this.size;
    return [(sx - w / 2) / this.view.scale + this.view.x, (h / 2 - sy) / this.view.scale + this.view.y];
  }
  #at(event: MouseEvent): Point {
    const box = this.#sheet?.getBoundingClientRect();
    return [event.clientX - (box?.left ?? 0), event.clientY - (box?.top ?? 0)];
  }

  shapes(): Laid[] {
    const { job, unit } = this;
    const zones = job.tables.zone.map((zone, index): LaidZone => {
      const points = pointsOf(job, zone).map((point) => this.laid(point));
      const outline = isWalk(zone) && points.length > 1 ? walkOutline(points, widthOf(job, zone)) : points;
      return { kind: 'zone', index, zone, points, outline, name: String(zone.name ?? '') };
    });
    const things = (job.tables.obstacle ?? []).map((thing, index): LaidThing => {
      const keys = thing.kind === 'tree' ? ['at'] : ['from', 'to'];
      const points = keys.map((key) => readPoint(thing, key, unit)).filter((point) => point !== undefined).map((point) => this.laid(point));
      return {
        kind: 'obstacle', index, thing, points, name: String(thing.name ?? thing.kind),
        radius: readLength(thing, 'radius', unit), height: readLength(thing, 'height', unit) ?? 0,
      };
    });
    return [...zones, ...things];
  }

  fit() {
    const points = this.shapes().flatMap((shape): Point[] => {
      if (shape.kind === 'zone') return shape.outline;
      const { radius = 0 } = shape;
      return shape.points.flatMap((point) => [plus(point, [radius, radius]), minus(point, [radius, radius])]);
    });
    const usual = this.unit === 'm' ? 10 : 32;
    const box = points.length ? bounds(points) : { west: -usual / 2, east: usual / 2, south: -usual / 2, north: usual / 2 };
    const [w, h] = this.size;
    const across = Math.max(box.east - box.west, usual / 2);
    const up = Math.max(box.north - box.south, usual / 2);
    this.#view = { x: (box.east + box.west) / 2, y: (box.north + box.south) / 2, scale: Math.min(w / (across * 1.25), h / (up * 1.35)) };
    this.draw();
  }

  zoom(factor: number, about: Point = [this.size[0] / 2, this.size[1] / 2]) {
    const fixed = this.fromScreen(about);
    const [least, most] = this.unit === 'm' ? [1.5, 600] : [0.5, 200];
    this.view.scale = Math.min(most, Math.max(least, this.view.scale * factor));
    const now = this.fromScreen(about);
    this.view.x += fixed[0] - now[0];
    this.view.y += fixed[1] - now[1];
    this.draw();
  }

  // ---- snapping: corners first, then sides, then the grid; right angles to the last point ----
  snap(laid: Point, { from, skip }: { from?: Point | undefined; skip?: Shape } = {}): Point {
    const near = finger / 2 / this.view.scale;
    const others = this.shapes().filter((shape) => !same(skip, shape));
    let best: { at: Point; away: number } | undefined;
    for (const shape of others) {
      for (const point of [...shape.points, ...(shape.kind === 'zone' ? shape.outline : [])]) {
        const away = distance(point, laid);
        if (away < near * 1.3 && (!best || away < best.away)) best = { at: point, away };
      }
    }
    if (best) return best.at;
    const grid = rounded(laid, this.step);
    for (const shape of others) {
      const sides = shape.kind === 'zone' ? sidesOf(shape.outline) : sidesOf(shape.points).slice(0, -1);
      for (const [point, to] of sides) {
        const found = onSegment(laid, point, to);
        if (found.away >= near || (best && found.away >= best.away)) continue;
        const length = distance(point, to);
        const along = Math.min(length, Math.round((found.share * length) / this.step) * this.step);
        best = { at: length ? plus(point, times(minus(to, point), along / length)) : point, away: found.away };
      }
    }
    if (best) return best.at;
    if (!from) return grid;
    const [dx, dy] = minus(laid, from);
    if (Math.abs(dx) < Math.abs(dy) * 0.12) return [from[0], grid[1]];
    if (Math.abs(dy) < Math.abs(dx) * 0.12) return [grid[0], from[1]];
    return grid;
  }

  // ---- pointers ----
  #down(event: PointerEvent) {
    if (event.button > 0) return;
    this.#sheet?.setPointerCapture(event.pointerId);
    this.#pointers.set(event.pointerId, this.#at(event));
    if (this.#pointers.size === 2) {
      this.#gesture = { kind: 'pinch', before: [...this.#pointers.values()], moved: true };
      this.#clearRubber();
      return;
    }
    if (this.#pointers.size > 2) return;
    this.#gesture = this.#begin(event);
  }

  #begin(event: PointerEvent): Stroke | Grip {
    const at = this.#at(event);
    const start = this.fromScreen(at);
    const hit = shapeAt(event.target);
    const base = { at, start, moved: false, hit, trace: [start] };
    if (this.#acts.tool() !== 'move') return { ...base, kind: this.#acts.tool() };
    const chosen = this.#acts.selection();
    const handle = event.target instanceof Element ? event.target.closest<SVGElement>('[data-corner], [data-side]') : null;
    const { side, corner: ofCorner } = handle?.dataset ?? {};
    if (chosen && side) return { ...base, kind: 'side', number: Number(side), hit: chosen };
    if (chosen && ofCorner) return { ...base, kind: 'corner', number: Number(ofCorner), hit: chosen };
    return { ...base, kind: same(chosen, hit) ? 'shape' : 'pan' };
  }

  #move(event: PointerEvent) {
    if (!this.#pointers.has(event.pointerId) || !this.#gesture) return;
    this.#pointers.set(event.pointerId, this.#at(event));
    const gesture = this.#gesture;
    if (gesture.kind === 'pinch') return this.#pinch(gesture);
    const at = this.#at(event);
    if (!gesture.moved && Math.hypot(...minus(at, gesture.at)) < still) return;
    gesture.moved = true;
    const laid = this.fromScreen(at);
    if (gesture.kind === 'pan' || gesture.kind === 'steps' || gesture.kind === 'tie') {
      this.view.x -= laid[0] - gesture.start[0];
      this.view.y -= laid[1] - gesture.start[1];
      this.drawSoon();
    } else if (gesture.kind === 'slab' && this.draft.length === 0) {
      gesture.box = [this.snap(gesture.start), this.snap(laid)];
      this.#showBox(gesture.box);
    } else if (gesture.kind === 'disc') {
      gesture.box = [this.snap(gesture.start), laid];
      this.#showDisc(gesture.box);
    } else if (gesture.kind === 'wall' || gesture.kind === 'cut') {
      const from = this.snap(gesture.start);
      gesture.box = [from, this.snap(laid, { from })];
      this.#showLine(gesture.box);
    } else if (gesture.kind === 'walk') {
      if (distance(laid, lastOf(gesture.trace)) > 4 / this.view.scale) gesture.trace.push(laid);
      this.#showLine(gesture.trace);
    } else if (gesture.kind === 'corner') {
      this.#acts.dragCorner(gesture.hit, gesture.number, this.world(this.snap(laid, { skip: gesture.hit })));
    } else if (gesture.kind === 'side') {
      this.#acts.dragSide(gesture.hit, gesture.number, this.world(laid));
    } else if (gesture.kind === 'shape' && gesture.hit) {
      this.#acts.dragShape(gesture.hit, this.world(rounded(minus(laid, gesture.start), this.step)));
    }
  }

  #up(event: PointerEvent) {
    this.#pointers.delete(event.pointerId);
    const gesture = this.#gesture;
    if (!gesture) return;
    if (gesture.kind === 'pinch') {
      if (this.#pointers.size === 0) this.#gesture = undefined;
      return;
    }
    this.#gesture = undefined;
    this.#clearRubber();
    if (gesture.moved) this.#dragged(gesture);
    else this.#tapped(gesture);
  }

  #cancel(event: PointerEvent) {
    this.#pointers.delete(event.pointerId);
    if (this.#gesture?.moved) this.#acts.dropDrag();
    this.#gesture = undefined;
    this.#clearRubber();
  }

  #pinch(gesture: Pinch) {
    if (this.#pointers.size < 2) return;
    const now = [...this.#pointers.values()];
    const [before, after] = [sideOf(gesture.before, 0), sideOf(now, 0)];
    const spread = distance(...after) / Math.max(1, distance(...before));
    const [was, is] = [middle(...before), middle(...after)];
    this.view.x -= (is[0] - was[0]) / this.view.scale;
    this.view.y += (is[1] - was[1]) / this.view.scale;
    gesture.before = now;
    this.zoom(spread, is);
  }

  #dragged(gesture: Stroke | Grip) {
    if (gesture.kind === 'corner' || gesture.kind === 'side' || gesture.kind === 'shape') {
      this.#acts.endDrag();
    } else if (gesture.kind === 'slab' && gesture.box) {
      const [[ax, ay], [bx, by]] = gesture.box;
      if (Math.abs(ax - bx) < this.step || Math.abs(ay - by) < this.step) return;
      this.#acts.slab(boxOf(gesture.box).map((point) => this.world(point)));
    } else if (gesture.kind === 'disc' && gesture.box && this.#reach(gesture.box) > 0) {
      this.#acts.disc(this.world(gesture.box[0]), this.#reach(gesture.box));
    } else if (gesture.kind === 'cut' && gesture.box) {
      this.#acts.cut(this.world(gesture.box[0]), this.world(gesture.box[1]));
    } else if (gesture.kind === 'wall' && gesture.box && distance(...gesture.box) >= this.step) {
      this.#acts.wall(this.world(gesture.box[0]), this.world(gesture.box[1]));
    } else if (gesture.kind === 'walk') {
      const kept = simplify(gesture.trace, this.step * 0.6);
      const ends = [this.snap(corner(kept, 0)), ...kept.slice(1, -1), this.snap(lastOf(kept))];
      if (pathLength(ends) >= this.step) this.#acts.walk(ends.map((point) => this.world(point)), true);
    }
  }

  #tapped(gesture: Stroke | Grip) {
    const from = this.draft.at(-1);
    if (gesture.kind === 'slab' || gesture.kind === 'walk') {
      const first = this.draft[0];
      if (gesture.kind === 'slab' && first && this.draft.length > 2 && distance(this.screen(first), gesture.at) < finger) {
        return this.finish();
      }
      this.draft.push(this.snap(gesture.start, { from }));
      this.#acts.drafted();
    } else if (gesture.kind === 'wall' || gesture.kind === 'cut') {
      this.draft.push(this.snap(gesture.start, { from }));
      if (this.draft.length === 2) this.finish();
      else this.#acts.drafted();
    } else if (gesture.kind === 'tree') {
      this.#acts.tree(this.world(this.snap(gesture.start)));
    } else if (gesture.kind === 'steps' || gesture.kind === 'tie') {
      this.#acts[gesture.kind](this.#sideAt(gesture.start));
    } else {
      this.#acts.select(gesture.hit);
    }
    this.draw();
  }

  #sideAt(at: Point): SideOfZone | undefined {
    const sides = this.shapes().flatMap((shape) => (shape.kind !== 'zone' || isWalk(shape.zone) ? []
      : sidesOf(shape.points).map(([from, to], side) => ({ index: shape.index, side, away: onSegment(at, from, to).away }))));
    const [nearest] = sides.sort((a, b) => a.away - b.away);
    return nearest && nearest.away < (finger * 1.5) / this.view.scale ? nearest : undefined;
  }

  // The draft as it stands, made what the tool draws.
  finish() {
    const points = this.draft.map((point) => this.world(point));
    const [from, to, third] = points;
    this.draft = [];
    const tool = this.#acts.tool();
    if (tool === 'slab' && third) this.#acts.slab(points);
    if (tool === 'walk' && to) this.#acts.walk(points, false);
    if (tool === 'wall' && from && to) this.#acts.wall(from, to);
    if (tool === 'cut' && from && to) this.#acts.cut(from, to);
    this.#acts.drafted();
    this.draw();
  }
  stepBack() {
    this.draft.pop();
    this.#acts.drafted();
    this.draw();
  }
  dropDraft() {
    this.draft = [];
    this.draw();
  }

  // ---- keys: a shape that has the focus moves by arrows ----
  #key(event: KeyboardEvent) {
    const shape = shapeAt(event.target);
    if (!shape) return;
    const ways: Record<string, Point> = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };
    const way = ways[event.key];
    if (event.key === 'Enter' || event.key === ' ') this.#acts.select(shape);
    else if (event.key === 'Delete') this.#acts.remove(shape);
    else if (way) this.#acts.nudge(shape, this.world(times(way, this.step)));
    else return;
    event.preventDefault();
  }

  // ---- the picture ----
  #line(points: Points) { return points.map((point) => this.screen(point).map((v) => v.toFixed(1)).join(',')).join(' '); }
  #clearRubber() {
    this.#tell('');
  }
  #tell(words: string, ...rubber: SVGElement[]) {
    this.#rubber.replaceChildren(...rubber);
    if (this.#readout) this.#readout.textContent = words;
  }
  #showBox(box: [Point, Point]) {
    const [[ax, ay], [bx, by]] = box;
    const corners = boxOf(box);
    this.#tell(`${lengthText(Math.abs(ax - bx), this.unit)} \u00d7 ${lengthText(Math.abs(ay - by), this.unit)}, ${areaText(area(corners), this.unit)}`,
      svg('polygon', { class: 'rubber', points: this.#line(corners) }));
  }
  #reach([at, rim]: [Point, Point]) { return Math.round(distance(at, rim) / this.step) * this.step; }
  #showDisc(box: [Point, Point]) {
    const [cx, cy] = this.screen(box[0]);
    const reach = this.#reach(box);
    this.#tell(`${lengthText(2 * reach, this.unit)} across, ${areaText(Math.PI * reach ** 2, this.unit)}`,
      svg('circle', { class: 'rubber', cx, cy, r: reach * this.view.scale }));
  }
  #showLine(points: Points) {
    this.#tell(lengthText(pathLength(points), this.unit), svg('polyline', { class: 'rubber open', points: this.#line(points) }));
  }

  // Once before the next picture of the screen, however often it is asked for.
  drawSoon() {
    this.#due ??= requestAnimationFrame(() => {
      this.#due = undefined;
      this.draw();
    });
  }

  draw() {
    const sheet = this.#sheet;
    if (!this.#acts.job() || !sheet) return;
    if (!this.#view) return this.fit();
    const focused = shapeAt(document.activeElement);
    if (focused) this.#focused = `[data-kind="${focused.kind}"][data-index="${focused.index}"]`;
    const shapes = this.shapes();
    const sun = this.#acts.sun(this.hour);
    this.#rubber = svg('g');
    sheet.replaceChildren(
      ...this.#grid(), ...shapes.flatMap((shape) => this.#shadow(shape, sun)),
      ...shapes.map((shape) => this.#shape(shape)), ...this.#chosenSides(shapes), ...this.#draftMarks(), ...this.#north(), this.#rubber);
    // A shape that is made anew has lost the focus. To give it back is to lay the page out, which half
    // of a drag's time went to: so once, when the finger is off.
    if (!this.#focused || this.#gesture?.moved) return;
    if (document.activeElement === document.body) sheet.querySelector<SVGElement>(this.#focused)?.focus();
    this.#focused = undefined;
  }

  #grid() {
    const [w, h] = this.size;
    const steps = this.unit === 'm' ? [0.5, 1, 5, 10] : [1, 5, 10, 50];
    const step = steps.find((each) => each * this.view.scale >= 16) ?? 100;
    const [west, north] = this.fromScreen([0, 0]);
    const [east, south] = this.fromScreen([w, h]);
    const lines: string[] = [];
    for (let x = Math.ceil(west / step) * step; x < east; x += step) {
      const [sx] = this.screen([x, 0]);
      lines.push(`M${sx.toFixed(1)} 0V${h}`);
    }
    for (let y = Math.ceil(south / step) * step; y < north; y += step) {
      const [, sy] = this.screen([0, y]);
      lines.push(`M0 ${sy.toFixed(1)}H${w}`);
    }
    const words = `grid ${lengthText(step, this.unit)}`;
    return [svg('path', { class: 'grid', d: lines.join('') }), svg('text', { class: 'grid-words', x: 8, y: h - 8 }, words)];
  }

  #north() {
    const [x, y] = [this.size[0] - 30, 34];
    const tip = turned([0, 20], -this.job.turn);
    return [svg('g', { class: 'north', 'aria-hidden': 'true' },
      svg('line', { x1: x - tip[0] * 0.6, y1: y + tip[1] * 0.6, x2: x + tip[0] * 0.6, y2: y - tip[1] * 0.6 }),
      svg('text', { x: x + tip[0], y: y - tip[1] + 5, 'text-anchor': 'middle' }, 'N'))];
  }

  #shadow(shape: Laid, sun: Sun | undefined): SVGElement[] {
    const shift = shape.kind === 'obstacle' && shadowShift(shape.height, sun);
    const [at, to] = shape.points;
    if (!shift || !at) return [];
    const by = this.laid(shift);
    if (shape.radius === undefined) {
      if (!to) return [];
      return [svg('polygon', { class: 'shadow', points: this.#line([at, to, plus(to, by), plus(at, by)]) })];
    }
    return [svg('line', { class: 'shadow tree-shadow', ...this.#ends(at, plus(at, by)), 'stroke-width': 2 * shape.radius * this.view.scale })];
  }

  #ends(from: Point, to: Point) {
    const [[x1, y1], [x2, y2]] = [this.screen(from), this.screen(to)];
    return { x1, y1, x2, y2 };
  }

  #shape(shape: Laid): SVGElement {
    const selected = same(this.#acts.selection(), shape);
    const common = {
      'data-kind': shape.kind, 'data-index': shape.index, tabindex: 0, role: 'button',
      'aria-pressed': String(selected), 'aria-label': this.#words(shape), class: `${shape.kind}${selected ? ' selected' : ''}`,
    };
    const marks = shape.kind === 'zone' ? this.#zoneMarks(shape) : this.#thingMarks(shape);
    const handles = selected ? this.#handles(shape) : [];
    return svg('g', common, ...marks, ...handles);
  }

  #words(shape: Laid): string {
    if (shape.kind === 'zone') {
      const size = isWalk(shape.zone)
        ? `${lengthText(pathLength(shape.points), this.unit)} long, ${lengthText(widthOf(this.job, shape.zone), this.unit)} wide`
        : areaText(area(shape.points), this.unit);
      return `${shape.name}, ${shape.zone.finish}, ${size}`;
    }
    return `${shape.name.slice(0, 24)} ${lengthText(shape.height, this.unit)}, ${shape.thing.kind}`;
  }

  #zoneMarks(shape: LaidZone): SVGElement[] {
    const finish = String(shape.zone.finish ?? '').replace(/\W+/g, '-');
    const marks = [svg('polygon', { class: `ground finish-${finish}`, points: this.#line(shape.outline) })];
    if (!isWalk(shape.zone)) marks.push(...tiedSides(shape.zone).map((side) => svg('line', { class: 'tied', ...this.#ends(...sideOf(shape.points, side)) })));
    for (const face of shape.zone.face ?? []) marks.push(...this.#riser(face));
    const halfway = shape.points[Math.floor((shape.points.length - 1) / 2)];
    const at = this.screen(isWalk(shape.zone) && halfway ? halfway : centre(shape.outline));
    const room = shape.outline.length ? (bounds(shape.outline).east - bounds(shape.outline).west) * this.view.scale : 0;
    if (room > 30) marks.push(svg('text', { class: 'name', x: at[0], y: at[1], 'text-anchor': 'middle' }, shape.name.slice(0, 24)));
    return marks;
  }

  #riser(face: Face): SVGElement[] {
    const at = readPoint(face, 'at', this.unit);
    const length = readLength(face, 'length', this.unit);
    if (!at || !length || typeof face.facing !== 'number') return [];
    const out = turned([0, 1], -face.facing);
    const along = times([out[1], -out[0]], length / 2);
    return [svg('line', { class: 'riser', ...this.#ends(this.laid(minus(at, along)), this.laid(plus(at, along))) })];
  }

  // Lengths along the sides of what is selected, above all shapes.
  #chosenSides(shapes: Laid[]): SVGElement[] {
    const shape = shapes.find((each) => same(this.#acts.selection(), each));
    if (shape?.kind !== 'zone' || isWalk(shape.zone) || shape.points.length > 12) return [];
    const numbered = this.#acts.tool() === 'tie';
    return sidesOf(shape.points).map(([from, to], i) => {
      const [x, y] = this.screen(middle(from, to));
      const words = lengthText(distance(from, to), this.unit);
      return svg('text', { class: 'side', x, y, 'text-anchor': 'middle' }, numbered ? `${i + 1}: ${words}` : words);
    });
  }

  #thingMarks(shape: LaidThing): SVGElement[] {
    const [at, end = at] = shape.points;
    if (!at || !end) return [];
    const [x, y] = this.screen(at);
    if (shape.radius !== undefined) {
      return [svg('circle', { class: 'tree', cx: x, cy: y, r: Math.max(4, shape.radius * this.view.scale) }),
        svg('text', { class: 'name', x, y, 'text-anchor': 'middle' }, shape.name.slice(0, 24))];
    }
    const ends = this.#ends(at, end);
    const [mx, my] = this.screen(middle(at, end));
    return [svg('line', { class: 'grip', ...ends }), svg('line', { class: 'wall', ...ends }),
      svg('text', { class: 'name', x: mx, y: my - 8, 'text-anchor': 'middle' }, `${shape.name.slice(0, 24)} ${lengthText(shape.height, this.unit)}`)];
  }

  // Corners, and the middles of the sides to bow them by; a ring of many is moved as a whole.
  #handles(shape: Laid): SVGElement[] {
    if (shape.points.length > mostHandles) return [];
    const grip = (point: Point, data: Attributes, mark: 'handle' | 'bow') => {
      const [cx, cy] = this.screen(point);
      return svg('g', data, svg('circle', { class: 'grip', cx, cy, r: finger }), svg('circle', { class: mark, cx, cy, r: mark === 'handle' ? 7 : 5 }));
    };
    const corners = shape.points.map((point, i) => grip(point, { 'data-corner': i }, 'handle'));
    if (shape.kind !== 'zone' || isWalk(shape.zone)) return corners;
    const sides = sidesOf(shape.points).flatMap(([from, to], i) =>
      (distance(from, to) * this.view.scale > 4 * finger ? [grip(middle(from, to), { 'data-side': i }, 'bow')] : []));
    return [...sides, ...corners];
  }

  #draftMarks(): SVGElement[] {
    if (this.draft.length === 0) return [];
    const marks = this.draft.map((point) => {
      const [cx, cy] = this.screen(point);
      return svg('circle', { class: 'handle', cx, cy, r: 7 });
    });
    return [svg('polyline', { class: 'rubber open', points: this.#line(this.draft) }), ...marks];
  }
}
