// The drawing with its tools, and beside it what is selected, in figures.
import { hasCompass, readHeading, windOf } from './compass';
import { button, el, say, tiles } from './dom';
import { Drawing } from './drawing';
import { area, distance, pathLength, plus, smooth } from './geometry';
import { choice, lengthField, numberField, textField, tick } from './inputs';
import {
  addSlab, addSteps, addTree, addWalk, addWall, colourOf, colours, depthOf, finishes, isWalk, moveInOrder, moveObstacle, moveZone,
  pointsOf, rectangleOf, removeZone, renameZone, resizedRectangle, setColour, setPoints, squaredEnds, turnNorth, unitOf, usualOf,
  widthOf,
} from './job';
import { reshapeForm } from './panel_reshape';
import { bowed, circleOf, crosses, disc, riseTo, splitZone } from './reshape';
import { areaText, lengthText, parseLength, readLength, readPoint, writeLength, writePoint } from './units';

const tools = [
  ['move', 'Select', 'Tap a shape, then drag it or its corners.'],
  ['slab', 'Slab', 'Drag a rectangle, or tap the corners.'],
  ['disc', 'Round', 'Drag from the middle of a round slab to its rim.'],
  ['walk', 'Walk', 'Trace its middle, or tap along it.'],
  ['steps', 'Steps', 'Tap the side of the slab they lead down from.'],
  ['wall', 'House', 'Drag along a wall or fence that casts shade.'],
  ['tree', 'Tree', 'Tap where a tree stands.'],
  ['cut', 'Split', 'Drag a line across a slab or walk to make two of it.'],
];

export class DrawScreen {
  constructor(app) {
    this.app = app;
    this.curved = true;
    this.drawing = new Drawing({
      job: () => app.job,
      tool: () => app.tool,
      selection: () => app.selection,
      sun: (minute) => app.sun(minute),
      select: (shape) => this.#select(shape),
      slab: (points) => this.#made(() => addSlab(app.job, points), 'zone'),
      walk: (points, traced) => this.#made(() => addWalk(app.job, this.#bent(points, traced)), 'zone'),
      disc: (at, radius) => this.#made(() => addSlab(app.job, disc(at, radius)), 'zone'),
      cut: (from, to) => this.#cut(from, to),
      wall: (from, to) => this.#made(() => addWall(app.job, from, to), 'obstacle'),
      tree: (at) => this.#made(() => addTree(app.job, at), 'obstacle'),
      steps: (index, side) => this.#askSteps(index, side),
      drafted: () => this.#draftBar(),
      remove: (shape) => this.#remove(shape),
      nudge: (shape, by) => this.#nudge(shape, by),
      dragCorner: (shape, corner, to) => this.#dragCorner(shape, corner, to),
      dragSide: (shape, side, to) => this.#dragSide(shape, side, to),
      dragShape: (shape, by) => this.#dragShape(shape, by),
      endDrag: () => app.end(),
      dropDrag: () => app.drop(),
    });
  }

  #bent(points, traced) {
    const step = unitOf(this.app.job) === 'm' ? 0.6 : 2;
    return this.curved || traced ? smooth(squaredEnds(this.app.job, points), step) : points;
  }

  // Done drawing: select what was made, and stay with the tool's shape in figures.
  #made(make, kind) {
    const index = this.app.edit(make, { redraw: false });
    this.app.tool = 'move';
    this.app.selection = { kind, index };
    this.app.shown();
    say(kind === 'zone' ? `${this.app.job.tables.zone[index].name} drawn` : 'Drawn');
  }

  #select(shape) {
    this.app.selection = shape;
    this.app.shown();
  }

  #remove(shape) {
    const { app } = this;
    if (!shape) return;
    if (shape.kind === 'zone' && app.job.journal) return say('Readings were noted for this pour. Undo them on the slab page before you delete a part.');
    app.selection = undefined;
    app.edit((job) => (shape.kind === 'zone' ? removeZone(job, shape.index) : job.tables.obstacle.splice(shape.index, 1)));
    say('Deleted. Undo brings it back.');
  }

  #nudge(shape, by) {
    this.app.edit((job) => (shape.kind === 'zone' ? moveZone : moveObstacle)(job, shape.index, by), { redraw: false });
    this.drawing.draw();
  }

  #dragCorner(shape, corner, to) {
    const { app } = this;
    app.begin();
    if (shape.kind === 'zone') {
      const zone = app.job.tables.zone[shape.index];
      setPoints(zone, pointsOf(app.job, zone).map((point, i) => (i === corner ? to : point)));
    } else {
      const thing = app.job.tables.obstacle[shape.index];
      writePoint(thing, thing.kind === 'tree' ? 'at' : ['from', 'to'][corner], to);
    }
    this.#follow();
  }

  // The side bows out to the finger, by whole steps.
  #dragSide(shape, side, to) {
    const { app } = this;
    app.begin();
    const points = pointsOf(app.job, app.before.tables.zone[shape.index]);
    const rise = riseTo(points, side, to);
    const { step } = this.drawing;
    setPoints(app.job.tables.zone[shape.index], bowed(points, side, Math.round(rise / step) * step));
    this.#follow();
  }

  // The line parts the first shape it crosses, the selected one before others.
  #cut(from, to) {
    const { app } = this;
    if (app.job.journal) return say('Readings were noted for this pour. Undo them on the slab page before you split a part.');
    const zones = app.job.tables.zone ?? [];
    const chosen = app.selection?.kind === 'zone' ? [app.selection.index] : [];
    for (const index of [...chosen, ...zones.keys()]) {
      app.begin();
      const made = crosses(app.job, zones[index], from, to) ? splitZone(app.job, index, from, to) : undefined;
      if (made === undefined) continue;
      app.tool = 'move';
      app.selection = { kind: 'zone', index: made };
      app.end();
      return say(`${zones[index].name} split in two`);
    }
    app.drop();
    return say('The line has to cross a slab from side to side.');
  }

  #dragShape(shape, by) {
    const { app } = this;
    app.begin();
    const list = shape.kind === 'zone' ? 'zone' : 'obstacle';
    app.job.tables[list][shape.index] = structuredClone(app.before.tables[list][shape.index]);
    (shape.kind === 'zone' ? moveZone : moveObstacle)(app.job, shape.index, by);
    this.#follow();
  }

  // The sheet is drawn once a frame at most, and the plan follows.
  #follow() {
    this.app.live();
    this.drawing.drawSoon();
  }

  // ---- the page ----
  show() {
    const { app } = this;
    this.panel = el('div', { class: 'panel' });
    this.bar = el('div', { class: 'draft-bar' });
    const screen = el('section', { class: 'page draw' },
      el('h1', { tabindex: -1, class: 'spoken' }, 'Draw'),
      el('div', { class: 'board' },
        el('div', { class: 'tools', role: 'toolbar', 'aria-label': 'Drawing tools' }, tools.map(([id, words]) =>
          button(words, () => this.#take(id), { 'aria-pressed': String(app.tool === id) }))),
        el('p', { class: 'hint' }, tools.find(([id]) => id === app.tool)[2]),
        el('div', { class: 'sheet-frame' }, this.drawing.sheet, this.drawing.readout,
          el('div', { class: 'zoom' },
            button('+', () => this.drawing.zoom(1.3), { 'aria-label': 'Zoom in' }),
            button('\u2212', () => this.drawing.zoom(1 / 1.3), { 'aria-label': 'Zoom out' }),
            button('Fit', () => this.drawing.fit()))),
        this.bar, this.#sunBar()),
      this.panel);
    this.#draftBar();
    this.#fillPanel();
    queueMicrotask(() => this.drawing.draw());
    return screen;
  }

  #take(tool) {
    this.app.tool = tool;
    this.drawing.dropDraft();
    if (tool !== 'move') this.app.selection = undefined;
    this.app.shown();
  }

  #draftBar() {
    if (!this.bar) return;
    const { tool } = this.app;
    const least = { slab: 3, walk: 2, wall: 2, cut: 2 }[tool];
    const drafting = this.drawing.draft.length > 0 && least;
    this.bar.replaceChildren(...[
      drafting && button('Done', () => this.drawing.finish(), { class: 'main', disabled: this.drawing.draft.length < least }),
      drafting && button('Undo last point', () => this.drawing.stepBack()),
      tool === 'walk' && tick('Curved', this.curved, (on) => { this.curved = on; }),
    ].filter(Boolean));
  }

  #sunBar() {
    const { app, drawing } = this;
    if (!app.sunTable) return null;
    const words = () => `${Math.floor(drawing.hour / 60) % 12 || 12}:${String(drawing.hour % 60).padStart(2, '0')} ${drawing.hour < 720 ? 'AM' : 'PM'}`;
    const shown = el('output', {}, words());
    const range = el('input', {
      type: 'range', min: 300, max: 1260, step: 10, value: drawing.hour, 'aria-label': 'Shade at this hour',
      oninput: () => {
        drawing.hour = Number(range.value);
        shown.textContent = words();
        range.setAttribute('aria-valuetext', words());
        drawing.drawSoon();
      },
    });
    return el('div', { class: 'sun' }, el('span', {}, 'Shade at '), shown, range);
  }

  #fillPanel() {
    const { app } = this;
    const { selection, job } = app;
    const shape = selection && job.tables[selection.kind]?.[selection.index];
    this.panel.replaceChildren(...[
      shape && selection.kind === 'zone' && this.#zoneForm(shape, selection.index),
      shape && selection.kind === 'obstacle' && this.#thingForm(shape, selection.index),
      !shape && this.#nothingSelected(),
    ].filter(Boolean));
  }

  #nothingSelected() {
    const zones = this.app.job.tables.zone ?? [];
    return el('div', {},
      zones.length ? el('p', {}, 'Tap a shape to set its finish, size and thickness.') : el('p', {}, 'Start with the slab: drag a rectangle on the sheet.'),
      this.#order(zones), this.#northForm(), this.#addForm());
  }

  #order(zones) {
    if (zones.length < 2) return null;
    return el('div', {}, el('h2', {}, 'Placed in this order'), el('ol', { class: 'order' }, zones.map((zone, i) => el('li', {},
      button(el('bdi', {}, String(zone.name)), () => this.#select({ kind: 'zone', index: i })),
      i > 0 && button('Earlier', () => this.app.edit((job) => moveInOrder(job, i, -1)), { 'aria-label': `${zone.name} earlier` })))));
  }

  #northForm() {
    const { app } = this;
    return el('details', {}, el('summary', {}, 'Which way is north?'),
      el('p', {}, 'Draw the house as you face it, then turn the compass. The drawing stays put.'),
      el('div', { class: 'row' },
        button('Turn left', () => app.edit((job) => turnNorth(job, job.turn - 15))),
        button('Turn right', () => app.edit((job) => turnNorth(job, job.turn + 15)))),
      hasCompass() && this.#compass(),
      numberField('North, clockwise from the top of the sheet', Math.round(app.job.turn * 10) / 10, (deg) => app.edit((job) => turnNorth(job, deg)), { min: -360, max: 360, unit: 'degrees' }));
  }

  #compass() {
    const { app } = this;
    const read = async () => {
      say('Reading the compass ...');
      try {
        const heading = Math.round(await readHeading());
        app.edit((job) => turnNorth(job, -heading));
        say(`The top of the drawing looks ${windOf(heading)}, ${heading} degrees.`);
      } catch (error) {
        say(error.message);
      }
    };
    return el('div', {},
      el('p', {}, 'Or stand on the site with the phone flat, turn until the drawing lies as the site does, and tap. Keep away from steel and trucks. A compass shows magnetic north, up to 20 degrees off in places: check it against a map.'),
      button('Use the phone\'s compass', read));
  }

  // ---- the same by form, for keys and for whoever cannot drag ----
  #addForm() {
    const { app } = this;
    const unit = unitOf(app.job);
    const kinds = [['slab', 'Slab'], ['disc', 'Round slab'], ['walk', 'Walk'], ['wall', 'House wall or fence'], ['tree', 'Tree']];
    const wants = { slab: ['Left edge at', 'Lower edge at', 'Width', 'Depth'], disc: ['Middle', 'Across'], walk: ['Width', 'Points'], wall: ['From', 'To', 'Height'], tree: ['At', 'Radius', 'Height'] };
    const body = el('div', {});
    const fault = el('p', { class: 'fault', role: 'alert' });
    let kind = 'slab';
    let inputs = {};
    const fill = () => {
      inputs = {};
      const usual = usualOf(app.job);
      const start = {
        slab: ['0', '0', unit === 'm' ? '4' : "12'", unit === 'm' ? '3' : "10'"], walk: [lengthText(usual.walk, unit), ''],
        disc: ['0, 0', unit === 'm' ? '4' : "12'"], wall: ['', '', lengthText(usual.wall, unit)], tree: ['', lengthText(usual.tree[0], unit), lengthText(usual.tree[1], unit)],
      };
      body.replaceChildren(...wants[kind].map((label, i) => {
        inputs[label] = el('input', { type: 'text', autocomplete: 'off', value: start[kind][i], id: `add-${i}` });
        return el('div', { class: 'field' }, el('label', { for: `add-${i}` }, label), inputs[label]);
      }));
    };
    const length = (label) => {
      const value = parseLength(inputs[label].value, unit);
      if (!Number.isFinite(value)) throw new Error(`${label}: a length such as ${unit === 'm' ? '3.5' : '12\' 6"'}`);
      return value;
    };
    const points = (label, least) => {
      const list = inputs[label].value.split(';').map((pair) => pair.split(',').map((each) => parseLength(each, unit))).filter((pair) => pair.length > 1 || inputs[label].value.trim() === '');
      if (list.length < least || list.some((pair) => pair.length !== 2 || !pair.every(Number.isFinite))) {
        throw new Error(`${label}: right and up from the corner you measure from, such as 0, 12${least > 1 ? '; 14, 12' : ''}`);
      }
      return list.map((point) => this.drawing.world(point));
    };
    const add = {
      slab: () => {
        const [x, y, w, d] = wants.slab.map(length);
        return this.#made(() => addSlab(app.job, [[x, y], [x + w, y], [x + w, y + d], [x, y + d]].map((point) => this.drawing.world(point))), 'zone');
      },
      disc: () => {
        const [at, across] = [points('Middle', 1)[0], length('Across')];
        return this.#made(() => addSlab(app.job, disc(at, across / 2)), 'zone');
      },
      walk: () => {
        const [width, line] = [length('Width'), points('Points', 2)];
        return this.#made(() => addWalk(app.job, this.#bent(line, false), width), 'zone');
      },
      wall: () => {
        const [from, to, height] = [points('From', 1)[0], points('To', 1)[0], length('Height')];
        return this.#made(() => addWall(app.job, from, to, height), 'obstacle');
      },
      tree: () => {
        const [at, size] = [points('At', 1)[0], [length('Radius'), length('Height')]];
        return this.#made(() => addTree(app.job, at, size), 'obstacle');
      },
    };
    fill();
    return el('details', { class: 'add' }, el('summary', {}, 'Add by dimensions'),
      el('p', {}, `Measure right and up from any corner you like. Points: ${unit === 'm' ? '0, 3; 4, 3.5' : "0, 10'; 12' 6\", 10'"} (right, up; right, up).`),
      choice('What', kinds, kind, (taken) => { kind = taken; fill(); }), body,
      button('Add it', () => {
        fault.textContent = '';
        try {
          add[kind]();
        } catch (error) {
          fault.textContent = error.message;
        }
      }, { class: 'main' }), fault);
  }

  // ---- one slab or walk in figures ----
  #zoneForm(zone, index) {
    const { app } = this;
    const { job } = app;
    const edit = (change) => app.edit(() => change(job.tables.zone[index]), { redraw: false });
    const redraw = (change) => app.edit(() => change(job.tables.zone[index]));
    return el('div', {},
      el('h2', {}, el('bdi', {}, String(zone.name)), ' ', el('small', {}, this.#sizeWords(zone))),
      tiles('Finish', finishes, zone.finish, (finish) => { edit((each) => { each.finish = finish; }); this.drawing.draw(); }),
      textField('Name', zone.name, (name) => app.edit(() => renameZone(job, zone.name, name.trim())), {
        needed: true, disabled: job.journal !== '', hint: job.journal ? 'Readings were noted under this name.' : undefined,
        check: (name) => (job.tables.zone.some((each, i) => i !== index && each.name === name.trim()) ? 'Another part has this name' : ''),
      }),
      this.#sizes(zone, redraw),
      numberField('Thickness', readLength(zone, 'thickness', depthOf(job)), (value) => edit((each) => writeLength(each, 'thickness', value)), { min: 1, max: 1000, unit: depthOf(job) }),
      tick('Against the house or another slab, or doweled to it', zone.tied, (on) => edit((each) => { if (on) each.tied = true; else delete each.tied; })),
      tick('Under a roof: no sun all day', zone.shaded, (on) => edit((each) => { if (on) each.shaded = true; else delete each.shaded; })),
      el('details', {}, el('summary', {}, 'Color, border, base, risers, corners'),
        choice('Color', colours.map((each) => [each, each === 'grey' ? 'plain gray' : each]), colourOf(zone), (colour) => edit((each) => setColour(job, each, colour))),
        this.#borderForm(zone, redraw), this.#baseForm(zone, edit), this.#risers(zone, redraw), this.#corners(zone, redraw)),
      reshapeForm(app, this.drawing, zone, index),
      el('div', { class: 'row' },
        !isWalk(zone) && button('Add steps', () => this.#take('steps')),
        button('Copy', () => this.#copy(zone)),
        button('Delete', () => this.#remove({ kind: 'zone', index })),
        button('Done', () => this.#select(undefined), { class: 'main' })));
  }

  #sizeWords(zone) {
    const unit = unitOf(this.app.job);
    const points = pointsOf(this.app.job, zone);
    return areaText(isWalk(zone) ? pathLength(points) * widthOf(this.app.job, zone) : area(points), unit);
  }

  #copy(zone) {
    const by = this.drawing.world([this.drawing.step * 4, -this.drawing.step * 4]);
    this.#made(() => {
      const zones = this.app.job.tables.zone;
      const copy = structuredClone(zone);
      const taken = new Set(zones.map((each) => each.name));
      for (let i = 2; taken.has(copy.name); ++i) copy.name = `${zone.name} ${i}`;
      zones.push(copy);
      if (Array.isArray(this.app.job.tables.pour.zone_order)) this.app.job.tables.pour.zone_order.push(copy.name);
      moveZone(this.app.job, zones.length - 1, by);
      return zones.length - 1;
    }, 'zone');
  }

  #sizes(zone, redraw) {
    const { job } = this.app;
    const unit = unitOf(job);
    const points = pointsOf(job, zone);
    if (isWalk(zone)) return lengthField('Width', widthOf(job, zone), unit, (value) => redraw((each) => writeLength(each, 'width', value)));
    const round = circleOf(points);
    if (round) return lengthField('Across', round.radius * 2, unit, (value) => redraw((each) => setPoints(each, disc(round.at, value / 2))));
    const sides = rectangleOf(points);
    if (!sides) return null;
    const resize = (first, second) => redraw((each) => setPoints(each, resizedRectangle(points, first, second)));
    return el('div', { class: 'pair' },
      lengthField('One side', sides.first, unit, (value) => resize(value, sides.second)),
      lengthField('Other side', sides.second, unit, (value) => resize(sides.first, value)));
  }

  #borderForm(zone, redraw) {
    const unit = unitOf(this.app.job);
    const has = typeof zone.border === 'object';
    return el('div', {},
      tick('A border along the edges with a finish of its own', has, (on) => redraw((each) => { if (on) each.border = { width: unit === 'm' ? 0.3 : 1, finish: 'broom' }; else delete each.border; })),
      has && lengthField('Border width', readLength(zone.border, 'width', unit), unit, (value) => redraw((each) => writeLength(each.border, 'width', value))),
      has && choice('Border finish', finishes, zone.border.finish, (finish) => redraw((each) => { each.border.finish = finish; })));
  }

  #baseForm(zone, edit) {
    return choice('Base under it', [['gravel', 'gravel'], ['soil', 'soil'], ['sand', 'sand'], ['insulation', 'insulation']], zone.base, (base) => edit((each) => { each.base = base; }));
  }

  #risers(zone, redraw) {
    const faces = Array.isArray(zone.face) ? zone.face : [];
    if (faces.length === 0) return null;
    const { job } = this.app;
    const least = depthOf(job) === 'in' ? 2 : 51; // as the library's limits
    const usual = depthOf(job) === 'in' ? 12 : 300;
    return el('div', {}, el('h3', {}, 'Risers and edges to finish'), faces.map((face, i) => el('div', { class: 'pair' },
      numberField(`Height of ${i + 1}`, readLength(face, 'height', depthOf(job)), (value) => redraw((each) => writeLength(each.face[i], 'height', value)), { min: 1, max: 2000, unit: depthOf(job) }),
      numberField(`Tread of ${i + 1}`, readLength(face, 'tread', depthOf(job)), (value) => redraw((each) => writeLength(each.face[i], 'tread', value)), { min: least, max: least * 59, unit: depthOf(job), optional: true, hint: `Left empty: ${usual}` }),
      button('Remove', () => redraw((each) => { each.face.splice(i, 1); if (each.face.length === 0) delete each.face; }), { 'aria-label': `Remove riser ${i + 1}` }))));
  }

  #corners(zone, redraw) {
    const { job } = this.app;
    const unit = unitOf(job);
    const points = pointsOf(job, zone);
    if (points.length > 40) return el('p', {}, `${points.length} points along it.`);
    const laid = points.map((point) => this.drawing.laid(point));
    const put = (i, axis, value) => redraw((each) => setPoints(each, laid.map((point, k) => this.drawing.world(k === i ? point.map((old, a) => (a === axis ? value : old)) : point))));
    return el('div', {}, el('h3', {}, isWalk(zone) ? 'Points along its middle' : 'Corners'), laid.map((point, i) => el('div', { class: 'pair' },
      lengthField(`${i + 1}: right`, point[0], unit, (value) => put(i, 0, value), { min: -Infinity }),
      lengthField(`${i + 1}: up`, point[1], unit, (value) => put(i, 1, value), { min: -Infinity }),
      points.length > (isWalk(zone) ? 2 : 3) && button('Remove', () => redraw((each) => setPoints(each, points.filter((_, k) => k !== i))), { 'aria-label': `Remove corner ${i + 1}` }))),
      button('Add a corner after the last', () => redraw((each) => setPoints(each, [...points, this.#next(points, isWalk(each))]))));
  }
  #next(points, open) {
    const last = points.at(-1);
    if (open) return plus(last, this.drawing.world([this.drawing.step * 4, 0]));
    return [(last[0] + points[0][0]) / 2, (last[1] + points[0][1]) / 2];
  }

  // ---- a wall or a tree in figures ----
  #thingForm(thing, index) {
    const { app } = this;
    const { job } = app;
    const unit = unitOf(job);
    const redraw = (change) => app.edit(() => change(job.tables.obstacle[index]));
    const ends = thing.kind === 'tree' ? undefined : ['from', 'to'].map((key) => readPoint(thing, key, unit));
    const stretch = (length) => redraw((each) => {
      const [from, to] = ends;
      const factor = length / distance(from, to);
      writePoint(each, 'to', [from[0] + (to[0] - from[0]) * factor, from[1] + (to[1] - from[1]) * factor]);
    });
    return el('div', {},
      el('h2', {}, thing.kind === 'tree' ? 'Tree' : 'Wall'),
      textField('Name', thing.name, (name) => redraw((each) => { each.name = name; })),
      lengthField('Height', readLength(thing, 'height', unit), unit, (value) => redraw((each) => writeLength(each, 'height', value))),
      thing.kind === 'tree' && lengthField('Radius', readLength(thing, 'radius', unit), unit, (value) => redraw((each) => writeLength(each, 'radius', value))),
      thing.kind !== 'tree' && choice('Color, for the light it reflects', [['', 'like brick'], ['white', 'white'], ['light', 'light'], ['medium', 'medium'], ['dark', 'dark']], colourOf(thing) ?? '',
        (colour) => redraw((each) => setColour(job, each, colour))),
      ends?.[0] && ends[1] && lengthField('Length', distance(ends[0], ends[1]), unit, stretch),
      el('div', { class: 'row' }, button('Delete', () => this.#remove({ kind: 'obstacle', index })), button('Done', () => this.#select(undefined), { class: 'main' })));
  }

  // ---- steps ----
  #askSteps(index, side) {
    if (index === undefined) return say('Tap closer to a side of a slab.');
    const { app } = this;
    const { job } = app;
    const usual = usualOf(job);
    const unit = unitOf(job);
    const zone = job.tables.zone[index];
    const points = pointsOf(job, zone);
    const whole = distance(points[side], points[(side + 1) % points.length]);
    const answers = { rises: 3, width: Math.min(whole, unit === 'm' ? 1.8 : 6), tread: usual.tread, rise: usual.riser };
    this.panel.replaceChildren(el('div', { class: 'steps' },
      el('h2', { tabindex: -1 }, 'Steps down from ', el('bdi', {}, String(zone.name))),
      tiles('How many risers', [1, 2, 3, 4, 5].map((count) => [count, String(count)]), answers.rises, (count) => { answers.rises = Number(count); }),
      lengthField('Width', answers.width, unit, (value) => { answers.width = value; }),
      el('div', { class: 'pair' },
        lengthField('Tread', answers.tread, unit, (value) => { answers.tread = value; }),
        numberField('Riser height', answers.rise, (value) => { answers.rise = value; }, { min: 1, max: 400, unit: depthOf(job) })),
      el('div', { class: 'row' },
        button('Add the steps', () => this.#made(() => addSteps(job, index, side, answers), 'zone'), { class: 'main' }),
        button('Cancel', () => this.#take('move')))));
    this.panel.scrollIntoView({ block: 'nearest' });
    this.panel.querySelector('h2').focus();
  }
}
