// Fields that read what a person types, and say at the field what is wrong with it.
import { el, field } from './dom';
import { lengthText, parseLength } from './units';

// The field's own fault, below it; empty where there is none.
function faultOf(input, words) {
  input.setAttribute('aria-invalid', String(words !== ''));
  input.setCustomValidity(words);
  let note = input.parentElement?.querySelector('.fault');
  if (words && !note) {
    note = el('p', { class: 'fault', role: 'alert' });
    input.after(note);
  }
  if (note) note.textContent = words;
}

export function lengthField(label, value, unit, take, { min = 0, hint } = {}) {
  const input = el('input', {
    type: 'text', inputmode: 'text', autocomplete: 'off', value: value === undefined ? '' : lengthText(value, unit),
    onchange: () => {
      const typed = parseLength(input.value, unit);
      const good = Number.isFinite(typed) && typed > min;
      faultOf(input, good ? '' : unit === 'm' ? 'A length such as 3.5' : 'A length such as 12\' 6" or 12.5');
      if (good) {
        input.value = lengthText(typed, unit);
        take(typed);
      }
    },
  });
  return field(label, input, hint);
}

export function numberField(label, value, take, { min, max, step = 'any', unit = '', optional = false, hint } = {}) {
  const input = el('input', {
    type: 'number', inputmode: 'decimal', min, max, step, value: value ?? '',
    onchange: () => {
      const empty = input.value === '';
      const typed = Number(input.value);
      const good = empty ? optional && !input.validity.badInput : Number.isFinite(typed) && !(typed < min) && !(typed > max);
      const range = min === undefined ? 'A number' : `A number from ${min} to ${max}`;
      faultOf(input, good ? '' : range);
      if (good) take(empty ? undefined : typed);
    },
  });
  return field(unit ? `${label}, ${unit}` : label, input, hint);
}

export function textField(label, value, take, { hint, needed = false, check = () => '', ...rest } = {}) {
  const input = el('input', {
    type: 'text', autocomplete: 'off', maxlength: 120, value: value ?? '', ...rest,
    onchange: () => {
      const words = needed && input.value.trim() === '' ? 'This cannot be empty' : check(input.value);
      faultOf(input, words);
      if (!words) take(input.value);
    },
  });
  return field(label, input, hint);
}

export function choice(label, choices, value, take, hint) {
  const known = choices.some(([each]) => each === value) || value === undefined;
  const all = known ? choices : [[value, String(value)], ...choices];
  return field(label, el('select', { value: value ?? choices[0][0], onchange: (event) => take(event.target.value) },
    all.map(([each, words]) => el('option', { value: each }, words))), hint);
}

export function tick(label, checked, take) {
  return el('label', { class: 'tick' }, el('input', { type: 'checkbox', checked: checked === true, onchange: (event) => take(event.target.checked) }), el('span', {}, label));
}

// A slider with its figure beside it; the figure can be typed.
export function slider(label, value, { min, max, step = 1, unit }, take, live = () => {}) {
  const number = el('input', { type: 'number', min, max, step, value, 'aria-label': `${label}, ${unit}`, class: 'figure' });
  const range = el('input', { type: 'range', min, max, step, value });
  range.addEventListener('input', () => {
    number.value = range.value;
    live(Number(range.value));
  });
  range.addEventListener('change', () => take(Number(range.value)));
  number.addEventListener('change', () => {
    const typed = Math.min(max, Math.max(min, Number(number.value)));
    number.value = typed;
    range.value = typed;
    take(typed);
  });
  return el('div', { class: 'slider' }, field(label, range), el('span', { class: 'typed' }, number, el('span', {}, ` ${unit}`)));
}
