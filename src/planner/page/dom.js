// Elements made by name: every text is set as text, so that nothing typed or imported is markup.

const svgNames = new Set(['svg', 'g', 'path', 'circle', 'line', 'text', 'polygon', 'polyline', 'rect', 'pattern', 'defs', 'title']);

function set(element, key, value) {
  if (value === undefined || value === null || value === false) return;
  if (key.startsWith('on')) element.addEventListener(key.slice(2), value);
  else if (key === 'value' || key === 'checked' || key === 'disabled' || key === 'open' || key === 'hidden') element[key] = value;
  else element.setAttribute(key, value === true ? '' : value);
}

export function el(name, properties = {}, ...children) {
  const element = svgNames.has(name) ? document.createElementNS('http://www.w3.org/2000/svg', name) : document.createElement(name);
  const late = [];
  for (const [key, value] of Object.entries(properties)) {
    if (key === 'value') late.push([key, value]); // a select has its options first
    else set(element, key, value);
  }
  element.append(...children.flat(Infinity).filter((child) => child !== undefined && child !== null && child !== false));
  for (const [key, value] of late) set(element, key, value);
  return element;
}

export const button = (words, onclick, properties = {}) => el('button', { type: 'button', onclick, ...properties }, words);

let made = 0;
// A field with its name above it, and what is wrong with it below.
export function field(label, input, hint) {
  const id = input.id || `field-${++made}`;
  input.id = id;
  const note = hint ? el('small', { id: `${id}-hint` }, hint) : undefined;
  if (note) input.setAttribute('aria-describedby', note.id);
  return el('div', { class: 'field' }, el('label', { for: id }, label), input, note);
}

// Large tiles of which one is taken.
export function tiles(legend, choices, taken, choose) {
  const name = `tiles-${++made}`;
  return el('fieldset', { class: 'tiles' }, el('legend', {}, legend),
    choices.map(([value, words]) => el('label', { class: 'tile' },
      el('input', { type: 'radio', name, value, checked: value === taken, onchange: () => choose(value) }),
      el('span', {}, words))));
}

// Told to whoever listens to the page, and shown for a while.
export function say(text) {
  const place = document.getElementById('said');
  place.textContent = '';
  place.textContent = text;
}
