// A document checked against its JSON Schema by ajv (draft 2020-12, strict).
import assert from 'node:assert/strict';
import { readFileSync } from 'node:fs';
import { npm } from './program.mjs';

const Ajv = npm('ajv/dist/2020').default;

const read = (schema) => JSON.parse(readFileSync(schema, 'utf8'));
const compiled = (schema) => new Ajv({ strict: true, allErrors: true, allowUnionTypes: true }).compile(schema);

// The schema's twin that allows no other member anywhere: what the program writes today is all
// described, though a reader is to survive more.
function closed(schema) {
  if (schema === null || typeof schema !== 'object') return schema;
  if (Array.isArray(schema)) return schema.map(closed);
  const twin = Object.fromEntries(Object.entries(schema).map(([key, value]) => [key, closed(value)]));
  return schema.type === 'object' && schema.properties ? { ...twin, additionalProperties: false } : twin;
}

export const validator = (schema) => compiled(closed(read(schema)));

// As published, the schema lets a member pass that it does not know, wherever it is.
export function assertOpen(schema, json) {
  const validate = compiled(read(schema));
  for (const [way, object] of objects(json)) {
    object.surplus = 1;
    assert.ok(validate(json), `${way}: a key more`);
    delete object.surplus;
  }
}

// Nothing stands for what is absent: no null, no empty text.
export function assertNothingEmpty(value, way = '') {
  assert.ok(value !== null && value !== '', `${way} is there and holds nothing`);
  if (typeof value !== 'object') return;
  for (const [key, each] of Object.entries(value)) assertNothingEmpty(each, `${way}/${key}`);
}

export function assertKeeps(validate, json, name) {
  assert.ok(validate(json), `${name}: ${JSON.stringify(validate.errors?.slice(0, 3), null, 1)}`);
}

// Every object of a document with the path to it.
function* objects(value, way = '') {
  if (value === null || typeof value !== 'object') return;
  if (!Array.isArray(value)) yield [way, value];
  for (const [key, each] of Object.entries(value)) yield* objects(each, `${way}/${key}`);
}

// An additional or a missing key is detected, wherever it is.
export function assertClosed(validate, json, name, mayBeLeftOut = []) {
  for (const [way, object] of objects(json)) {
    object.surplus = 1;
    assert.equal(validate(json), false, `${name}${way}: a key more`);
    delete object.surplus;
    for (const [key, value] of Object.entries(object)) {
      if (mayBeLeftOut.includes(key)) continue;
      delete object[key];
      assert.equal(validate(json), false, `${name}${way}: ${key} left out`);
      object[key] = value;
    }
  }
  assert.ok(validate(json));
}

// Each change makes the document invalid.
export function assertCaught(validate, make, changes) {
  for (const change of changes) {
    const json = make();
    change(json);
    assert.equal(validate(json), false, String(change));
  }
}
