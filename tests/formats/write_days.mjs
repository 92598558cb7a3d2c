// node write_days.mjs PROGRAM DATA_DIR OUT_DIR: plans every job into files of every format, each in
// its own folder: job.toml, day.json, day.ics (in detail), short.ics, day.csv; for a few of them also choices.json,
// and days.json and days.csv of a week's forecast.
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { plan, run } from './program.mjs';
import { jobs } from './jobs.mjs';

const [program, data, out] = process.argv.slice(2);
const week = fileURLToPath(new URL('../cli/days_week/week.csv', import.meta.url));
const demo = (name) => readFileSync(join(data, 'demo', `${name}.toml`), 'utf8');
const all = { spring: demo('spring'), hot: demo('hot'), ...jobs };

rmSync(out, { recursive: true, force: true });
for (const [name, text] of Object.entries(all)) {
  const folder = join(out, name);
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'job.toml'), text);
  const now = ['--now', '2026-05-13T18:00Z'];
  plan(program, folder, ['--draws', '16', '--write', 'day.json', '--write', 'day.ics', '--detail',
    '--write', 'day.csv', ...now]);
  plan(program, folder, ['--draws', '0', '--write', 'short.ics', ...now]);
}
for (const [name, draws] of [['one_zone', 0], ['no_saw', 0], ['far_north', 0], ['spring', 4]]) {
  run(program, join(out, name), ['compare', 'job.toml', '--draws', String(draws), '--write', 'choices.json',
    '--now', '2026-05-13T18:00Z']);
}
for (const [name, draws] of [['no_saw', 0], ['hot', 0], ['spring', 4]]) {
  run(program, join(out, name), ['days', 'job.toml', '--forecast', week, '--draws', String(draws),
    '--write', 'days.json', '--write', 'days.csv', '--now', '2026-05-13T23:00Z']);
}
const folder = join(out, 'quick');
mkdirSync(folder);
run(program, folder, ['quick', '--place', '45.1,-91.6', '--date', '2026-05-14', '--high', '66',
  '--low', '41', '--write', 'day.json', '--write', 'day.ics', '--write', 'short.ics', '--write', 'day.csv']);
