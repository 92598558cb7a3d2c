// A job file's text from its tables, as the engine reads them (`ask: "read"`): tables as objects,
// lists as arrays, dates and times as {$time: "..."}. Keys keep their order.

export interface Moment { $time: string }
export type Value = string | number | boolean | Moment | Value[] | Table;
export interface Table { [key: string]: Value | undefined }

const bareKey = /^[A-Za-z0-9_-]+$/;
const momentText = /^[0-9][0-9T:+\-Z. ]*$/;
const loneSurrogate = /[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;
const longestInline = 4; // entries of a table that stays on one line

const isTable = (value: unknown): value is Table | Moment => value !== null && typeof value === 'object' && !Array.isArray(value);
const isMoment = (value: unknown): value is Moment => isTable(value) && typeof value.$time === 'string' && momentText.test(value.$time);
const isPlain = (value: unknown) => !isTable(value) || isMoment(value);
const isTableList = (value: unknown): value is Table[] =>
  Array.isArray(value) && value.length > 0 && value.every((each) => isTable(each) && !isMoment(each));

// JSON's escapes are TOML's, but for what TOML alone refuses.
const textOf = (text: string) => JSON.stringify(text.replace(loneSurrogate, '\ufffd')).replaceAll('\x7f', '\\u007f');
const keyOf = (key: string) => (bareKey.test(key) ? key : textOf(key));

function listOf(list: Value[]) {
  const items = list.map(valueOf);
  const line = `[${items.join(', ')}]`;
  if (line.length < 90) return line;
  const perLine = Array.isArray(list[0]) ? 5 : 8;
  const rows: string[] = [];
  for (let i = 0; i < items.length; i += perLine) rows.push(`  ${items.slice(i, i + perLine).join(', ')}`);
  return `[\n${rows.join(',\n')}\n]`;
}

function valueOf(value: Value | undefined): string {
  if (typeof value === 'number') return Number.isFinite(value) ? String(value) : '0';
  if (typeof value === 'boolean') return String(value);
  if (typeof value === 'string') return textOf(value);
  if (Array.isArray(value)) return listOf(value);
  if (isMoment(value)) return value.$time;
  if (isTable(value)) {
    return `{ ${Object.entries(value).map(([key, each]) => `${keyOf(key)} = ${valueOf(each)}`).join(', ')} }`;
  }
  return '""';
}

// The library wants [practice] under headers, so that it can tell places in it.
const staysInline = (path: string[], table: Table) =>
  path.length > 1 && path[0] !== 'practice' && Object.keys(table).length <= longestInline &&
  Object.values(table).every(isPlain);

function writeTable(path: string[], table: Table, lines: string[]) {
  const below: [path: string[], value: Table | Table[]][] = [];
  for (const [key, value] of Object.entries(table)) {
    if (value === undefined || value === null) continue;
    const inner = [...path, key];
    if (isTableList(value) || (isTable(value) && !isMoment(value) && !staysInline(inner, value))) {
      below.push([inner, value]);
    } else {
      lines.push(`${keyOf(key)} = ${valueOf(value)}`);
    }
  }
  for (const [inner, value] of below) {
    const name = inner.map(keyOf).join('.');
    for (const each of Array.isArray(value) ? value : [value]) {
      lines.push('', Array.isArray(value) ? `[[${name}]]` : `[${name}]`);
      writeTable(inner, each, lines);
    }
  }
}

export function writeToml(tables: Table): string {
  const lines: string[] = [];
  writeTable([], tables, lines);
  return `${lines.join('\n')}\n`;
}

// The text of a file with another name of the job in it: undefined where the name is no text on one
// line before all tables.
export function withName(text: string, name: string): string | undefined {
  const end = /^\s*\[/m.exec(text)?.index ?? text.length;
  const line = /^(\s*name\s*=\s*)("(?!"")(?:\\.|[^"\\\n])*"|'(?!'')[^'\n]*')/m;
  const head = text.slice(0, end);
  return line.test(head) ? head.replace(line, (_, key: string) => key + textOf(name)) + text.slice(end) : undefined;
}

const texts = /"""[\s\S]*?"""|'''[\s\S]*?'''|"(?:\\.|[^"\\\n])*"|'[^'\n]*'/g;
// Whether the text of a file has comments, which its tables do not hold.
export const hasComments = (text: string) => text.replace(texts, '').includes('#');
