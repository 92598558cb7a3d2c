// node engine.mjs ENGINE-FOLDER PROGRAM JOB: how many times the processor time of the native program
// the engine takes for the likely day and for 200 days (four lanes on one thread).
import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { join, resolve } from 'node:path';
import { pathToFileURL } from 'node:url';

const [folder, program, job] = process.argv.slice(2).map((path) => resolve(path));
const now = '2026-05-13T18:00Z';
const runs = 5;

Object.assign(globalThis, { __dirname: '/', require: createRequire(import.meta.url) });
const { default: engine } = await import(pathToFileURL(join(folder, 'slabtide_engine.mjs')));
const exports = await engine({ wasmBinary: readFileSync(join(folder, 'slabtide_engine.wasm')) });
const text = readFileSync(job, 'utf8');

function engineSeconds(draws) {
  const question = new TextEncoder().encode(JSON.stringify({ ask: 'plan', job: 'job.toml', texts: { 'job.toml': text }, now, draws, formats: ['.json'] }));
  const before = process.cpuUsage();
  exports.HEAPU8.set(question, exports._slabtide_request(question.length));
  exports._slabtide_answer();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1e6;
}

// The shell's own count of what its children took.
function nativeSeconds(draws) {
  const line = `"${program}" plan "${job}" --now ${now} --draws ${draws} > /dev/null 2>&1; times`;
  const { stdout } = spawnSync('bash', ['-c', line], { encoding: 'utf8' });
  const spent = stdout.trim().split('\n')[1].match(/[\d.]+m[\d.]+/g).map((each) => each.split('m').map(Number));
  return spent.reduce((sum, [minutes, seconds]) => sum + minutes * 60 + seconds, 0);
}

const least = (measure) => Math.min(...Array.from({ length: runs }, measure));
engineSeconds(0); // the browser's compiler takes its time the first time
for (const draws of [0, 200]) {
  const [here, there] = [least(() => engineSeconds(draws)), least(() => nativeSeconds(draws))];
  console.log(`${draws} days drawn: engine ${here.toFixed(2)} s, program ${there.toFixed(2)} s, ${(here / there).toFixed(1)} times`);
}
