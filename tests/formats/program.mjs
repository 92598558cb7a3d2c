// Running the program, and loading modules of the tests' npm folder.
import { spawnSync } from 'node:child_process';
import { createRequire } from 'node:module';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

export const npm = createRequire(new URL('../npm/package.json', import.meta.url));

export function run(program, folder, words) {
  const done = spawnSync(program, words, { cwd: folder, encoding: 'utf8' });
  if (done.status !== 0) {
    throw new Error(`${folder}: slabtide ${words.join(' ')}: ${done.status}\n${done.stderr}`);
  }
  return done.stdout;
}

export const plan = (program, folder, options) =>
  run(program, folder, ['plan', 'job.toml', ...options]);

// Every day of a folder that write_days.mjs filled.
export const daysIn = (folder) => readdirSync(folder).sort().map((name) => {
  const read = (file) => readFileSync(join(folder, name, file));
  return { name, json: JSON.parse(read('day.json').toString()), ics: read('day.ics'),
    short: read('short.ics'), csv: read('day.csv') };
});

// Parses ISO 8601 with an offset.
export const moment = (iso) => (iso == null ? null : Date.parse(iso));
