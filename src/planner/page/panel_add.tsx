// Shapes added by figures, for keys and for whoever cannot draw.
import { useState } from 'preact/hooks';
import { reasonOf } from './answers';
import type { Point } from './geometry';
import { unitOf, usualOf, type Job } from './job';
import type { Sketch } from './sketch';
import { Button, Choice, Fault, Field, Folded, type Choices } from './ui';
import { lengthText, parseLength } from './units';

type Kind = 'slab' | 'disc' | 'walk' | 'wall' | 'tree';
const kinds: Choices<Kind> = [['slab', 'Slab'], ['disc', 'Round slab'], ['walk', 'Walk'], ['wall', 'House wall or fence'], ['tree', 'Tree']];

// What is asked of each kind, and what it starts from.
function asked(job: Job): Record<Kind, [label: string, start: string][]> {
  const unit = unitOf(job);
  const usual = usualOf(job);
  const [across, deep] = unit === 'm' ? ['4', '3'] : ["12'", "10'"];
  const shown = (value: number) => lengthText(value, unit);
  return {
    slab: [['Left edge at', '0'], ['Lower edge at', '0'], ['Width', across], ['Depth', deep]],
    disc: [['Middle', '0, 0'], ['Across', across]],
    walk: [['Width', shown(usual.walk)], ['Points', '']],
    wall: [['From', ''], ['To', ''], ['Height', shown(usual.wall)]],
    tree: [['At', ''], ['Radius', shown(usual.tree[0])], ['Height', shown(usual.tree[1])]],
  };
}

export function AddForm({ job, sketch }: { job: Job; sketch: Sketch }) {
  const unit = unitOf(job);
  const [kind, setKind] = useState<Kind>('slab');
  const [typed, setTyped] = useState<Record<string, string>>({});
  const [fault, setFault] = useState('');
  const fields = asked(job)[kind];
  const text = (label: string) => typed[label] ?? fields.find(([each]) => each === label)?.[1] ?? '';
  const length = (label: string) => {
    const value = parseLength(text(label), unit);
    if (!Number.isFinite(value)) throw new Error(`${label}: a length such as ${unit === 'm' ? '3.5' : '12\' 6"'}`);
    return value;
  };
  const points = (label: string, least: number): Point[] => {
    const list = text(label).split(';').filter((pair) => pair.trim() !== '').map((pair) => pair.split(',').map((each) => parseLength(each, unit)));
    if (list.length < least || list.some((pair) => pair.length !== 2 || !pair.every(Number.isFinite))) {
      throw new Error(`${label}: right and up from the corner you measure from, such as 0, 12${least > 1 ? '; 14, 12' : ''}`);
    }
    return list.map(([x = 0, y = 0]) => sketch.drawing.world([x, y]));
  };
  const point = (label: string) => points(label, 1)[0] as Point;
  const add: Record<Kind, () => void> = {
    slab: () => {
      const [x, y, w, d] = [length('Left edge at'), length('Lower edge at'), length('Width'), length('Depth')];
      const corners: Point[] = [[x, y], [x + w, y], [x + w, y + d], [x, y + d]];
      sketch.slab(corners.map((each) => sketch.drawing.world(each)));
    },
    disc: () => sketch.disc(point('Middle'), length('Across') / 2),
    walk: () => sketch.walk(points('Points', 2), false, length('Width')),
    wall: () => sketch.wall(point('From'), point('To'), length('Height')),
    tree: () => sketch.tree(point('At'), [length('Radius'), length('Height')]),
  };
  const tryToAdd = () => {
    setFault('');
    try {
      add[kind]();
    } catch (error) {
      setFault(reasonOf(error));
    }
  };
  const choose = (taken: Kind) => {
    setKind(taken);
    setTyped({});
  };
  return <Folded summary="Add by dimensions" class="add">
    <p>Measure right and up from any corner you like. Points: {unit === 'm' ? '0, 3; 4, 3.5' : "0, 10'; 12' 6\", 10'"} (right, up; right, up).</p>
    <Choice label="What" choices={kinds} value={kind} take={choose} />
    <div>
      {fields.map(([label]) => <Field key={`${kind} ${label}`} label={label}>
        {(field) => <input {...field} type="text" autocomplete="off" value={text(label)} onInput={({ currentTarget: { value } }) => setTyped((before) => ({ ...before, [label]: value }))} />}
      </Field>)}
    </div>
    <Button class="main" onClick={tryToAdd}>Add it</Button>
    <Fault>{fault}</Fault>
  </Folded>;
}
