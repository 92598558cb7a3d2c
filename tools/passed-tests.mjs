// Remembers which tests have passed on what is here, so that tools/test need not run them again.
//
//   node tools/passed-tests.mjs known BUILD          prints how many are left to run, and those that
//                                                    are not as an expression for ctest -E
//   node tools/passed-tests.mjs keep BUILD RESULTS   adds those that passed by ctest's JUnit file, on
//                                                    what was here when `known` was asked
//
// What is here: the test's own executable and the program, the planner as built, SLABTIDE_JOBS, and
// all files that tests read; for the tests of what is installed, which read sources, those too.
import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, readFileSync, readdirSync, statSync, writeFileSync } from "node:fs";
import { join, resolve } from "node:path";

const [task, build, results] = process.argv.slice(2);
const store = join(build, "passed-tests.json");
const begun = join(build, "begun-tests.json");
// Not its build folder, whose logs change with every look.
const planner = ["index.html", "site", "engine/slabtide_engine.mjs", "engine/slabtide_engine.wasm"].map(
  (name) => join("build/planner", name),
);
const compiled = /\.(cpp|h)$/;

function filesUnder(path) {
  if (!existsSync(path)) return [];
  if (!statSync(path).isDirectory()) return [path];
  return readdirSync(path)
    .filter((name) => name !== "node_modules" && name !== ".git")
    .sort()
    .flatMap((name) => filesUnder(join(path, name)));
}

function hashOf(files) {
  const hash = createHash("sha256");
  for (const file of files) hash.update(file).update("\0").update(readFileSync(file)).update("\0");
  return hash.digest("hex");
}

/** A fingerprint for each test, by name. */
function fingerprints() {
  const listed = execFileSync("ctest", ["--test-dir", build, "--show-only=json-v1"]);
  const read = ["data", "tests", "tools", "src/planner/page", "README.md", "DEVELOPERS.md"]
    .flatMap(filesUnder)
    .filter((file) => !compiled.test(file));
  const common = [
    hashOf([...read, join(build, "slabtide"), ...planner.flatMap(filesUnder)]),
    process.env.SLABTIDE_JOBS ?? "",
  ];
  const sources = hashOf(["include", "src", "tests", "CMakeLists.txt"].flatMap(filesUnder));
  const prints = new Map();
  for (const { name, command } of JSON.parse(listed).tests) {
    const own = command[0].startsWith(resolve(build)) ? hashOf([command[0]]) : command.join(" ");
    const more = name.startsWith("install_") ? sources : "";
    prints.set(name, createHash("sha256").update([...common, own, more].join("\n")).digest("hex"));
  }
  return prints;
}

const passed = existsSync(store) ? JSON.parse(readFileSync(store, "utf8")) : {};
if (task === "known") {
  const prints = fingerprints();
  writeFileSync(begun, JSON.stringify([...prints]));
  const known = [...prints].filter(([name, print]) => passed[name] === print);
  console.log(prints.size - known.length, `^(${known.map(([name]) => name).join("|")})$`);
} else if (task === "keep") {
  const prints = new Map(JSON.parse(readFileSync(begun, "utf8")));
  for (const [, name, status] of readFileSync(results, "utf8").matchAll(
    /<testcase name="([^"]+)"[^>]* status="(\w+)"/g,
  )) {
    if (status === "run") passed[name] = prints.get(name);
    else delete passed[name];
  }
  writeFileSync(store, JSON.stringify(passed, null, 1));
} else {
  console.error("usage: node tools/passed-tests.mjs known BUILD | keep BUILD RESULTS");
  process.exit(2);
}
