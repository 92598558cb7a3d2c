// A job of many zones: squares in a row along a wall, with all finishes in turn.
import { writeFileSync } from 'node:fs';

const head = `name = "Forty squares"
[site]
latitude = 45.1
longitude = -91.6
elevation = 1050
time_zone = "America/Chicago"
[pour]
date = 2026-06-11
start = "06:00"
placing_crew = 6
saws = ["early-entry"]
[weather]
high = 74
low = 52
dew_point = 50
wind = 6
cloud = 30
[mix]
cementitious = 564
w_cm = 0.45
air = 6
strength = 4000
concrete_temperature = 68
[[obstacle]]
kind = "wall"
from = [-2, -3]
to = [150, -3]
height = 12
`;

export function writeManyZones(path, count) {
  const finishes = ['stamp', 'broom', 'texture roll', 'float', 'trowel'];
  let text = head;
  for (let i = 0; i < count; ++i) {
    const x = (i % 20) * 7;
    const y = Math.floor(i / 20) * 7;
    text += `[[zone]]
name = "square ${i + 1}"
outline = [[${x}, ${y}], [${x + 6}, ${y}], [${x + 6}, ${y + 6}], [${x}, ${y + 6}]]
thickness = 4
finish = "${finishes[i % finishes.length]}"
`;
  }
  writeFileSync(path, text);
  return path;
}

const side = 10;
// Names as long as a crew would still write them: at most 20 letters.
const bays = ['bay beside the gate', 'north bay 2', 'north bay 3', 'corner by the cellar',
  'steps to the kitchen', 'middle bay 2', 'middle bay 3', 'under the big maples', 'south bay at the dog',
  'south bay 2', 'south bay 3', 'last one by the road'];

// Names that a crew's would not reach, all of the same beginning and end.
export const longNames = ['north', 'south', 'east', 'west', 'upper', 'lower', 'inner', 'outer',
  'front', 'back', 'left', 'right'].map((gate) => `Driveway apron by the ${gate} gate along Old Mill Road`);

// Twelve bays of 10 by 10 ft in three rows, each with a joint drawn across and one along.
export function writeBays(path, { names = bays, finishers = 12 } = {}) {
  const text = names.map((name, i) => {
    const x = (i % 4) * side;
    const y = Math.floor(i / 4) * side;
    const [right, top, middle, half] = [x + side, y + side, x + side / 2, y + side / 2];
    return `[[zone]]
name = "${name}"
outline = [[${x}, ${y}], [${right}, ${y}], [${right}, ${top}], [${x}, ${top}]]
thickness = 4
finish = "broom"
[[zone.joint]]
from = [${middle}, ${y}]
to = [${middle}, ${top}]
[[zone.joint]]
from = [${x}, ${half}]
to = [${right}, ${half}]
`;
  });
  const crew = `[crew]\nfinishers = ${finishers}\n`;
  writeFileSync(path, head.replace('Forty squares', 'Twelve bays') + crew + text.join(''));
  return path;
}
