// The sheet: slabs, walks, walls and trees drawn by finger, mouse or keys. It looks at the job and
// tells what was drawn through `acts`; it changes nothing itself.
import { el } from './dom';
import {
  area, bounds, centre, distance, middle, minus, onSegment, pathLength, plus, shadowShift, simplify, turned, walkOutline,
} from './geometry';
import { isWalk, pointsOf, unitOf, widthOf } from './job';
import { areaText, lengthText, readLength, readPoint } from './units';

const finger = 22; // px: what a fingertip covers about a point
const still = 8; // px: less is a tap
const mostHandles = 16;

export class Drawing {
  constructor(acts) {
    this.acts = acts;
    this.view = undefined;
    this.pointers = new Map();
    this.draft = [];
    this.hour = 12 * 60;
    this.sheet = el('svg', {
      class: 'sheet', role: 'group', 'aria-label': 'Drawing of the site',
      onpointerdown: (event) => this.#down(event), onpointermove: (event) => this.#move(event),
      onpointerup: (event) => this.#up(event), onpointercancel: (event) => this.#cancel(event),
      // No click of a touch: the page may have moved, and another thing lie under the finger.
      ontouchstart: (event) => event.preventDefault(),
      onkeydown: (event) => this.#key(event),
      onwheel: (event) => {
        event.preventDefault();
        this.zoom(event.deltaY < 0 ? 1.15 : 1 / 1.15, this.#at(event));
      },
    });
    this.readout = el('p', { class: 'readout', 'aria-live': 'off' });
    new ResizeObserver(() => {
      this.measured = undefined;
      this.draw();
    }).observe(this.sheet);
  }

  // ---- the way between the job's plan, the sheet as it lies, and the screen ----
  get job() { return this.acts.job(); }
  get unit() { return unitOf(this.job); }
  get step() { return this.unit === 'm' ? 0.1 : 0.5; }
  // Measured once until it changes: to ask is to lay the page out.
  get size() {
    if (!this.measured?.every(Boolean)) this.measured = [this.sheet.clientWidth, this.sheet.clientHeight];
    return [this.measured[0] || 320, this.measured[1] || 400];
  }
  laid(point) { return turned(point, -this.job.turn); }
  world(point) { return turned(point, this.job.turn); }
  screen(laid) {
    const [w, h] = this.size;
    return [(laid[0] - this.view.x) * this.view.scale + w / 2, h / 2 - (laid[1] - this.view.y) * this.view.scale];
  }
  fromScreen([sx, sy]) {
    const [w, h] = this.size;
    return [(sx - w / 2) / this.view.scale + this.view.x, (h / 2 - sy) / this.view.scale + this.view.y];
  }
  #at(event) {
    const box = this.sheet.getBoundingClientRect();
    return [event.clientX - box.left, event.clientY - box.top];
  }

  shapes() {
    const { job, unit } = this;
    const zones = (job.tables.zone ?? []).map((zone, index) => {
      const points = pointsOf(job, zone).map((point) => this.laid(point));
      const outline = isWalk(zone) && points.length > 1 ? walkOutline(points, widthOf(job, zone)) : points;
      return { kind: 'zone', index, zone, points, outline, name: String(zone.name ?? '') };
    });
    const things = (job.tables.obstacle ?? []).map((thing, index) => {
      const keys = thing.kind === 'tree' ? ['at'] : ['from', 'to'];
      const points = keys.map((key) => readPoint(thing, key, unit)).filter(Boolean).map((point) => this.laid(point));
      return {
        kind: 'obstacle', index, thing, points, name: String(thing.name ?? thing.kind),
        radius: readLength(thing, 'radius', unit), height: readLength(thing, 'height', unit) ?? 0,
      };
    });
    return [...zones, ...things];
  }

  fit() {
    const points = this.shapes().flatMap((shape) => (shape.radius
      ? [plus(shape.points[0] ?? [0, 0], [shape.radius, shape.radius]), minus(shape.points[0] ?? [0, 0], [shape.radius, shape.radius])]
      : shape.outline ?? shape.points));
    const usual = this.unit === 'm' ? 10 : 32;
    const box = points.length ? bounds(points) : { west: -usual / 2, east: usual / 2, south: -usual / 2, north: usual / 2 };
    const [w, h] = this.size;
    const across = Math.max(box.east - box.west, usual / 2);
    const up = Math.max(box.north - box.south, usual / 2);
    this.view = { x: (box.east + box.west) / 2, y: (box.north + box.south) / 2, scale: Math.min(w / (across * 1.25), h / (up * 1.35)) };
    this.draw();
  }

  zoom(factor, about = this.size.map((side) => side / 2)) {
    const fixed = this.fromScreen(about);
    const limits = this.unit === 'm' ? [1.5, 600] : [0.5, 200];
    this.view.scale = Math.min(limits[1], Math.max(limits[0], this.view.scale * factor));
    const now = this.fromScreen(about);
    this.view.x += fixed[0] - now[0];
    this.view.y += fixed[1] - now[1];
    this.draw();
  }

  // ---- snapping: corners first, then sides, then the grid; right angles to the last point ----
  snap(laid, { from, skip } = {}) {
    const near = finger / 2 / this.view.scale;
    const others = this.shapes().filter((shape) => !(skip && shape.kind === skip.kind && shape.index === skip.index));
    let best;
    for (const shape of others) {
      for (const point of [...shape.points, ...(shape.outline ?? [])]) {
        const away = distance(point, laid);
        if (away < near * 1.3 && (!best || away < best.away)) best = { at: point, away };
      }
    }
    if (best) return best.at;
    const grid = laid.map((value) => Math.round(value / this.step) * this.step);
    for (const shape of others) {
      const ring = shape.outline ?? shape.points;
      ring.forEach((point, i) => {
        if (!shape.outline && i + 1 === ring.length) return;
        const to = ring[(i + 1) % ring.length];
        const found = onSegment(laid, point, to);
        if (found.away >= near || (best && found.away >= best.away)) return;
        const length = distance(point, to);
        const along = Math.min(length, Math.round((found.share * length) / this.step) * this.step);
        best = { at: length ? plus(point, minus(to, point).map((v) => (v * along) / length)) : point, away: found.away };
      });
    }
    if (best) return best.at;
    if (!from) return grid;
    const [dx, dy] = minus(laid, from).map(Math.abs);
    if (dx < dy * 0.12) return [from[0], grid[1]];
    if (dy < dx * 0.12) return [grid[0], from[1]];
    return grid;
  }

  // ---- pointers ----
  #down(event) {
    if (event.button > 0) return;
    this.sheet.setPointerCapture(event.pointerId);
    this.pointers.set(event.pointerId, this.#at(event));
    if (this.pointers.size === 2) {
      this.gesture = { kind: 'pinch', before: [...this.pointers.values()] };
      this.#clearRubber();
      return;
    }
    if (this.pointers.size > 2) return;
    const at = this.#at(event);
    const hit = event.target.closest?.('[data-kind]');
    this.gesture = this.#begin(at, hit ? { kind: hit.dataset.kind, index: Number(hit.dataset.index) } : undefined, event.target.closest?.('[data-corner], [data-side]'));
  }

  #begin(at, hit, handle) {
    const start = this.fromScreen(at);
    const base = { at, start, last: start, moved: false, hit };
    const { tool } = this.acts;
    if (tool() === 'move') {
      if (handle?.dataset.side) return { ...base, kind: 'side', side: Number(handle.dataset.side), hit: this.acts.selection() };
      if (handle) return { ...base, kind: 'corner', corner: Number(handle.dataset.corner), hit: this.acts.selection() };
      const chosen = this.acts.selection();
      if (hit && chosen && hit.kind === chosen.kind && hit.index === chosen.index) return { ...base, kind: 'shape' };
      return { ...base, kind: 'pan' };
    }
    return { ...base, kind: tool(), trace: [start] };
  }

  #move(event) {
    if (!this.pointers.has(event.pointerId) || !this.gesture) return;
    this.pointers.set(event.pointerId, this.#at(event));
    const { gesture } = this;
    if (gesture.kind === 'pinch') return this.#pinch();
    const at = this.#at(event);
    if (!gesture.moved && Math.hypot(...minus(at, gesture.at)) < still) return;
    gesture.moved = true;
    const laid = this.fromScreen(at);
    if (gesture.kind === 'pan' || gesture.kind === 'steps') {
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
      if (distance(laid, gesture.trace.at(-1)) > 4 / this.view.scale) gesture.trace.push(laid);
      this.#showLine(gesture.trace);
    } else if (gesture.kind === 'corner') {
      this.acts.dragCorner(gesture.hit, gesture.corner, this.world(this.snap(laid, { skip: gesture.hit })));
    } else if (gesture.kind === 'side') {
      this.acts.dragSide(gesture.hit, gesture.side, this.world(laid));
    } else if (gesture.kind === 'shape') {
      const by = minus(laid, gesture.start).map((value) => Math.round(value / this.step) * this.step);
      this.acts.dragShape(gesture.hit, this.world(by));
    }
  }

  #up(event) {
    this.pointers.delete(event.pointerId);
    const { gesture } = this;
    if (!gesture) return;
    if (gesture.kind === 'pinch') {
      if (this.pointers.size === 0) this.gesture = undefined;
      return;
    }
    this.gesture = undefined;
    this.#clearRubber();
    if (gesture.moved) this.#dragged(gesture);
    else this.#tapped(gesture);
  }

  #cancel(event) {
    this.pointers.delete(event.pointerId);
    if (this.gesture?.moved) this.acts.dropDrag();
    this.gesture = undefined;
    this.#clearRubber();
  }

  #pinch() {
    if (this.pointers.size < 2) return;
    const now = [...this.pointers.values()];
    const { before } = this.gesture;
    const spread = Math.hypot(...minus(now[1], now[0])) / Math.max(1, Math.hypot(...minus(before[1], before[0])));
    const [was, is] = [middle(before[0], before[1]), middle(now[0], now[1])];
    this.view.x -= (is[0] - was[0]) / this.view.scale;
    this.view.y += (is[1] - was[1]) / this.view.scale;
    this.gesture.before = now;
    this.zoom(spread, is);
  }

  #dragged(gesture) {
    if (gesture.kind === 'slab' && gesture.box) {
      const [[ax, ay], [bx, by]] = gesture.box;
      if (Math.abs(ax - bx) < this.step || Math.abs(ay - by) < this.step) return;
      this.acts.slab([[ax, ay], [bx, ay], [bx, by], [ax, by]].map((point) => this.world(point)));
    } else if (gesture.kind === 'disc' && this.#reach(gesture.box) > 0) {
      this.acts.disc(this.world(gesture.box[0]), this.#reach(gesture.box));
    } else if (gesture.kind === 'cut' && gesture.box) {
      this.acts.cut(...gesture.box.map((point) => this.world(point)));
    } else if (gesture.kind === 'wall' && gesture.box && distance(...gesture.box) >= this.step) {
      this.acts.wall(...gesture.box.map((point) => this.world(point)));
    } else if (gesture.kind === 'walk') {
      const kept = simplify(gesture.trace, this.step * 0.6);
      const ends = [this.snap(kept[0]), ...kept.slice(1, -1), this.snap(kept.at(-1))];
      if (pathLength(ends) >= this.step) this.acts.walk(ends.map((point) => this.world(point)), true);
    } else if (['corner', 'side', 'shape'].includes(gesture.kind)) {
      this.acts.endDrag();
    }
  }

  #tapped(gesture) {
    const from = this.draft.at(-1);
    if (gesture.kind === 'slab' || gesture.kind === 'walk') {
      const first = this.draft[0];
      if (gesture.kind === 'slab' && this.draft.length > 2 && Math.hypot(...minus(this.screen(first), gesture.at)) < finger) {
        return this.finish();
      }
      this.draft.push(this.snap(gesture.start, { from }));
      this.acts.drafted();
    } else if (gesture.kind === 'wall' || gesture.kind === 'cut') {
      this.draft.push(this.snap(gesture.start, { from }));
      if (this.draft.length === 2) this.finish();
      else this.acts.drafted();
    } else if (gesture.kind === 'tree') {
      this.acts.tree(this.world(this.snap(gesture.start)));
    } else if (gesture.kind === 'steps') {
      this.#tapSide(gesture.start);
    } else {
      this.acts.select(['corner', 'side'].includes(gesture.kind) ? this.acts.selection() : gesture.hit);
    }
    this.draw();
  }

  #tapSide(at) {
    let best;
    for (const shape of this.shapes()) {
      if (shape.kind !== 'zone' || isWalk(shape.zone)) continue;
      shape.points.forEach((point, side) => {
        const { away } = onSegment(at, point, shape.points[(side + 1) % shape.points.length]);
        if (!best || away < best.away) best = { away, index: shape.index, side };
      });
    }
    if (best && best.away < (finger * 1.5) / this.view.scale) this.acts.steps(best.index, best.side);
    else this.acts.steps(undefined);
  }

  // The draft as it stands, made what the tool draws.
  finish() {
    const points = this.draft.map((point) => this.world(point));
    this.draft = [];
    const tool = this.acts.tool();
    if (tool === 'slab' && points.length > 2) this.acts.slab(points);
    if (tool === 'walk' && points.length > 1) this.acts.walk(points, false);
    if (tool === 'wall' && points.length > 1) this.acts.wall(points[0], points[1]);
    if (tool === 'cut' && points.length > 1) this.acts.cut(points[0], points[1]);
    this.acts.drafted();
    this.draw();
  }
  stepBack() {
    this.draft.pop();
    this.acts.drafted();
    this.draw();
  }
  dropDraft() {
    this.draft = [];
    this.draw();
  }

  // ---- keys: a shape that has the focus moves by arrows ----
  #key(event) {
    const hit = event.target.closest?.('[data-kind]');
    const ways = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };
    if (!hit) return;
    const shape = { kind: hit.dataset.kind, index: Number(hit.dataset.index) };
    if (event.key === 'Enter' || event.key === ' ') this.acts.select(shape);
    else if (event.key === 'Delete') this.acts.remove(shape);
    else if (ways[event.key]) this.acts.nudge(shape, this.world(ways[event.key].map((value) => value * this.step)));
    else return;
    event.preventDefault();
  }

  // ---- the picture ----
  #line(points) { return points.map((point) => this.screen(point).map((v) => v.toFixed(1)).join(',')).join(' '); }
  #clearRubber() {
    this.rubber?.replaceChildren();
    this.readout.textContent = '';
  }
  #showBox([[ax, ay], [bx, by]]) {
    const corners = [[ax, ay], [bx, ay], [bx, by], [ax, by]];
    this.rubber.replaceChildren(el('polygon', { class: 'rubber', points: this.#line(corners) }));
    this.readout.textContent = `${lengthText(Math.abs(ax - bx), this.unit)} \u00d7 ${lengthText(Math.abs(ay - by), this.unit)}, ${areaText(area(corners), this.unit)}`;
  }
  #reach([at, rim]) { return Math.round(distance(at, rim) / this.step) * this.step; }
  #showDisc(box) {
    const [cx, cy] = this.screen(box[0]);
    const reach = this.#reach(box);
    this.rubber.replaceChildren(el('circle', { class: 'rubber', cx, cy, r: reach * this.view.scale }));
    this.readout.textContent = `${lengthText(2 * reach, this.unit)} across, ${areaText(Math.PI * reach ** 2, this.unit)}`;
  }
  #showLine(points) {
    this.rubber.replaceChildren(el('polyline', { class: 'rubber open', points: this.#line(points) }));
    this.readout.textContent = lengthText(pathLength(points), this.unit);
  }

  // Once before the next picture of the screen, however often it is asked for.
  drawSoon() {
    this.due ??= requestAnimationFrame(() => {
      this.due = undefined;
      this.draw();
    });
  }

  draw() {
    if (!this.job || !this.sheet.isConnected) return;
    if (!this.view) return this.fit();
    const focused = document.activeElement?.closest?.('.sheet [data-kind]')?.dataset;
    if (focused) this.focused = `[data-kind="${focused.kind}"][data-index="${focused.index}"]`;
    const shapes = this.shapes();
    const sun = this.acts.sun(this.hour);
    this.rubber = el('g');
    this.sheet.replaceChildren(
      ...this.#grid(), ...shapes.flatMap((shape) => this.#shadow(shape, sun)),
      ...shapes.map((shape) => this.#shape(shape)), ...this.#chosenSides(shapes), ...this.#draftMarks(), ...this.#north(), this.rubber);
    // A shape that is made anew has lost the focus. To give it back is to lay the page out, which half
    // of a drag's time went to: so once, when the finger is off.
    if (!this.focused || this.gesture?.moved) return;
    if (document.activeElement === document.body) this.sheet.querySelector(this.focused)?.focus();
    this.focused = undefined;
  }

  #grid() {
    const [w, h] = this.size;
    const steps = this.unit === 'm' ? [0.5, 1, 5, 10] : [1, 5, 10, 50];
    const step = steps.find((each) => each * this.view.scale >= 16) ?? steps.at(-1) * 2;
    const [west, north] = this.fromScreen([0, 0]);
    const [east, south] = this.fromScreen([w, h]);
    const lines = [];
    for (let x = Math.ceil(west / step) * step; x < east; x += step) {
      const [sx] = this.screen([x, 0]);
      lines.push(`M${sx.toFixed(1)} 0V${h}`);
    }
    for (let y = Math.ceil(south / step) * step; y < north; y += step) {
      const [, sy] = this.screen([0, y]);
      lines.push(`M0 ${sy.toFixed(1)}H${w}`);
    }
    const words = `grid ${lengthText(step, this.unit)}`;
    return [el('path', { class: 'grid', d: lines.join('') }), el('text', { class: 'grid-words', x: 8, y: h - 8 }, words)];
  }

  #north() {
    const [x, y] = [this.size[0] - 30, 34];
    const tip = turned([0, 20], -this.job.turn);
    return [el('g', { class: 'north', 'aria-hidden': 'true' },
      el('line', { x1: x - tip[0] * 0.6, y1: y + tip[1] * 0.6, x2: x + tip[0] * 0.6, y2: y - tip[1] * 0.6 }),
      el('text', { x: x + tip[0], y: y - tip[1] + 5, 'text-anchor': 'middle' }, 'N'))];
  }

  #shadow(shape, sun) {
    const shift = shape.kind === 'obstacle' && shadowShift(shape.height, sun);
    if (!shift || shape.points.length === 0) return [];
    const by = this.laid(shift);
    if (shape.radius === undefined) {
      const [from, to] = shape.points;
      if (!to) return [];
      return [el('polygon', { class: 'shadow', points: this.#line([from, to, plus(to, by), plus(from, by)]) })];
    }
    const [from, to] = [this.screen(shape.points[0]), this.screen(plus(shape.points[0], by))];
    return [el('line', { class: 'shadow tree-shadow', x1: from[0], y1: from[1], x2: to[0], y2: to[1], 'stroke-width': 2 * shape.radius * this.view.scale })];
  }

  #shape(shape) {
    const chosen = this.acts.selection();
    const selected = chosen?.kind === shape.kind && chosen.index === shape.index;
    const common = {
      'data-kind': shape.kind, 'data-index': shape.index, tabindex: 0, role: 'button',
      'aria-pressed': String(selected), 'aria-label': this.#words(shape), class: `${shape.kind}${selected ? ' selected' : ''}`,
    };
    const marks = shape.kind === 'zone' ? this.#zoneMarks(shape) : this.#thingMarks(shape);
    const handles = selected ? this.#handles(shape) : [];
    return el('g', common, ...marks, ...handles);
  }

  #words(shape) {
    if (shape.kind === 'zone') {
      const size = isWalk(shape.zone)
        ? `${lengthText(pathLength(shape.points), this.unit)} long, ${lengthText(widthOf(this.job, shape.zone), this.unit)} wide`
        : areaText(area(shape.points), this.unit);
      return `${shape.name}, ${shape.zone.finish}, ${size}`;
    }
    return `${shape.name.slice(0, 24)} ${lengthText(shape.height, this.unit)}, ${shape.thing.kind}`;
  }

  #zoneMarks(shape) {
    const finish = String(shape.zone.finish ?? '').replace(/\W+/g, '-');
    const marks = [el('polygon', { class: `ground finish-${finish}`, points: this.#line(shape.outline) })];
    for (const face of shape.zone.face ?? []) marks.push(...this.#riser(face));
    const at = this.screen(isWalk(shape.zone) && shape.points.length ? shape.points[Math.floor((shape.points.length - 1) / 2)] : centre(shape.outline));
    const room = shape.outline.length ? (bounds(shape.outline).east - bounds(shape.outline).west) * this.view.scale : 0;
    if (room > 30) marks.push(el('text', { class: 'name', x: at[0], y: at[1], 'text-anchor': 'middle' }, shape.name.slice(0, 24)));
    return marks;
  }

  #riser(face) {
    const at = readPoint(face, 'at', this.unit);
    const length = readLength(face, 'length', this.unit);
    if (!at || !length || typeof face.facing !== 'number') return [];
    const out = turned([0, 1], -face.facing);
    const along = [out[1], -out[0]].map((v) => (v * length) / 2);
    const [from, to] = [this.screen(this.laid(minus(at, along))), this.screen(this.laid(plus(at, along)))];
    return [el('line', { class: 'riser', x1: from[0], y1: from[1], x2: to[0], y2: to[1] })];
  }

  // Lengths along the sides of what is selected, above all shapes.
  #chosenSides(shapes) {
    const chosen = this.acts.selection();
    const shape = chosen?.kind === 'zone' && shapes.find((each) => each.kind === 'zone' && each.index === chosen.index);
    if (!shape || isWalk(shape.zone) || shape.points.length > 12) return [];
    const { points } = shape;
    return points.map((point, i) => {
      const to = points[(i + 1) % points.length];
      const [x, y] = this.screen(middle(point, to));
      return el('text', { class: 'side', x, y, 'text-anchor': 'middle' }, lengthText(distance(point, to), this.unit));
    });
  }

  #thingMarks(shape) {
    if (shape.points.length === 0) return [];
    const [x, y] = this.screen(shape.points[0]);
    if (shape.radius !== undefined) {
      return [el('circle', { class: 'tree', cx: x, cy: y, r: Math.max(4, shape.radius * this.view.scale) }),
        el('text', { class: 'name', x, y, 'text-anchor': 'middle' }, shape.name.slice(0, 24))];
    }
    const end = shape.points[1] ?? shape.points[0];
    const [x2, y2] = this.screen(end);
    const [mx, my] = this.screen(middle(shape.points[0], end));
    return [el('line', { class: 'grip', x1: x, y1: y, x2, y2 }), el('line', { class: 'wall', x1: x, y1: y, x2, y2 }),
      el('text', { class: 'name', x: mx, y: my - 8, 'text-anchor': 'middle' }, `${shape.name.slice(0, 24)} ${lengthText(shape.height, this.unit)}`)];
  }

  // Corners, and the middles of the sides to bow them by; a ring of many is moved as a whole.
  #handles(shape) {
    if (shape.points.length > mostHandles) return [];
    const grip = (point, data, mark) => {
      const [cx, cy] = this.screen(point);
      return el('g', data, el('circle', { class: 'grip', cx, cy, r: finger }), el('circle', { class: mark, cx, cy, r: mark === 'handle' ? 7 : 5 }));
    };
    const corners = shape.points.map((point, corner) => grip(point, { 'data-corner': corner }, 'handle'));
    if (shape.kind !== 'zone' || isWalk(shape.zone)) return corners;
    const sides = shape.points.flatMap((point, side) => {
      const to = shape.points[(side + 1) % shape.points.length];
      return distance(point, to) * this.view.scale > 4 * finger ? [grip(middle(point, to), { 'data-side': side }, 'bow')] : [];
    });
    return [...sides, ...corners];
  }

  #draftMarks() {
    if (this.draft.length === 0) return [];
    const marks = this.draft.map((point) => {
      const [cx, cy] = this.screen(point);
      return el('circle', { class: 'handle', cx, cy, r: 7 });
    });
    return [el('polyline', { class: 'rubber open', points: this.#line(this.draft) }), ...marks];
  }
}
