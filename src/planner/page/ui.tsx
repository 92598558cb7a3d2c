// What the screens are made of: fields that read what a person types and say at the field what is
// wrong with it, tiles, ticks, folded parts.
import type { ButtonHTMLAttributes, ComponentChildren, InputHTMLAttributes } from 'preact';
import { useRef, useState } from 'preact/hooks';
import { reasonOf } from './answers';
import { lengthText, parseLength, type Unit } from './units';

export type Choices<Id extends string = string> = readonly (readonly [id: Id, words: string])[];

export const Button = (properties: ButtonHTMLAttributes) => <button type="button" {...properties} />;

// Preact's own `useId` counts anew whenever the page is rendered from its root.
let made = 0;
const useName = () => useState(() => `field-${++made}`)[0];

// A field has its name above it, and below it what is wrong with it and a hint.
interface FieldProps {
  label: string;
  hint?: string | undefined;
  fault?: string | undefined;
  children(attributes: { id: string; 'aria-describedby': string | undefined }): ComponentChildren;
}
export function Field({ label, hint, fault, children }: FieldProps) {
  const id = useName();
  const described = [fault && `${id}-fault`, hint && `${id}-hint`].filter(Boolean).join(' ') || undefined;
  return <div class="field">
    <label for={id}>{label}</label>
    {children({ id, 'aria-describedby': described })}
    {fault && <p class="fault" role="alert" id={`${id}-fault`}>{fault}</p>}
    {hint && <small id={`${id}-hint`}>{hint}</small>}
  </div>;
}

// What is being typed over a text that stands in the job: it goes once that text changes.
function useDraft<Draft>(standing: string): [Draft | undefined, (draft: Draft | undefined) => void] {
  const [kept, keep] = useState<{ over: string; draft: Draft }>();
  return [kept?.over === standing ? kept.draft : undefined, (draft) => keep(draft && { over: standing, draft })];
}

interface TypedProps {
  label: string;
  hint?: string | undefined;
  value: string;
  // Takes what was typed, or gives what is wrong with it.
  take(text: string, input: HTMLInputElement): string;
  attributes: InputHTMLAttributes;
}
function TypedField({ label, hint, value, take, attributes }: TypedProps) {
  const [draft, setDraft] = useDraft<{ text: string; fault: string }>(value);
  return <Field label={label} hint={hint} fault={draft?.fault}>
    {(field) => <input {...attributes} {...field} value={draft?.text ?? value} aria-invalid={draft?.fault ? 'true' : 'false'}
      onInput={({ currentTarget: { value: text } }) => setDraft({ text, fault: draft?.fault ?? '' })}
      onChange={({ currentTarget: input }) => {
        const text = input.value;
        const fault = take(text, input);
        setDraft(fault ? { text, fault } : undefined);
      }} />}
  </Field>;
}

interface LengthProps {
  label: string;
  value: number | undefined;
  unit: Unit;
  take(value: number): void;
  min?: number;
}
export function LengthField({ label, value, unit, take, min = 0 }: LengthProps) {
  const read = (text: string) => {
    const typed = parseLength(text, unit);
    if (!Number.isFinite(typed) || typed <= min) return unit === 'm' ? 'A length such as 3.5' : 'A length such as 12\' 6" or 12.5';
    take(typed);
    return '';
  };
  return <TypedField label={label} value={value === undefined ? '' : lengthText(value, unit)} take={read}
    attributes={{ type: 'text', inputMode: 'text', autocomplete: 'off' }} />;
}

interface NumberProps {
  label: string;
  value: number | undefined;
  min: number;
  max: number;
  step?: number | 'any';
  unit?: string;
  hint?: string;
}
interface NumberNeeded extends NumberProps {
  optional?: false;
  take(value: number): void;
}
interface NumberOptional extends NumberProps {
  optional: true; // empty where it is not told
  take(value: number | undefined): void;
}
export function NumberField(properties: NumberNeeded | NumberOptional) {
  const { label, value, min, max, step = 'any', unit, hint } = properties;
  const read = (text: string, input: HTMLInputElement) => {
    const typed = Number(text);
    if (text === '' && properties.optional && !input.validity.badInput) properties.take(undefined);
    else if (text !== '' && typed >= min && typed <= max) properties.take(typed);
    else return `A number from ${min} to ${max}`;
    return '';
  };
  return <TypedField label={unit ? `${label}, ${unit}` : label} hint={hint} value={String(value ?? '')} take={read}
    attributes={{ type: 'number', inputMode: 'decimal', min, max, step }} />;
}

interface TextProps {
  label: string;
  value: string | undefined;
  take(text: string): void;
  hint?: string | undefined;
  needed?: boolean;
  check?(text: string): string;
  disabled?: boolean;
  maxLength?: number;
}
export function TextField({ label, value, take, hint, needed, check, disabled = false, maxLength = 120 }: TextProps) {
  const read = (text: string) => {
    const fault = needed && text.trim() === '' ? 'This cannot be empty' : check?.(text) ?? '';
    if (!fault) take(text);
    return fault;
  };
  return <TypedField label={label} hint={hint} value={value ?? ''} take={read} attributes={{ type: 'text', autocomplete: 'off', maxLength, disabled }} />;
}

// A day or an hour; an empty one is not taken.
export function WhenField({ label, type, value, take }: { label: string; type: 'date' | 'time'; value: string; take(text: string): void }) {
  const read = (text: string) => {
    if (text) take(text);
    return '';
  };
  return <TypedField label={label} value={value} take={read} attributes={{ type, required: true }} />;
}

interface ChoiceProps<Id extends string> {
  label: string;
  choices: Choices<Id>;
  value: Id | undefined;
  take(id: Id): void;
}
// What a file has besides the choices is one of them too.
export function Choice<Id extends string>({ label, choices, value, take }: ChoiceProps<Id>) {
  const known = value === undefined || choices.some(([id]) => id === value);
  const all: Choices<Id> = known ? choices : [[value, value], ...choices];
  return <Field label={label}>
    {(field) => <select {...field} value={value ?? choices[0]?.[0]} onChange={({ currentTarget }) => take(currentTarget.value as Id)}>
      {all.map(([id, words]) => <option key={id} value={id}>{words}</option>)}
    </select>}
  </Field>;
}

// Large tiles of which one is taken.
interface TilesProps<Id extends string> {
  legend: string;
  choices: Choices<Id>;
  taken: string | undefined;
  take(id: Id): void;
}
export function Tiles<Id extends string>({ legend, choices, taken, take }: TilesProps<Id>) {
  const name = useName();
  return <fieldset class="tiles">
    <legend>{legend}</legend>
    {choices.map(([id, words]) => <label key={id} class="tile">
      <input type="radio" name={name} value={id} checked={id === taken} onChange={() => take(id)} />
      <span><bdi>{words}</bdi></span>
    </label>)}
  </fieldset>;
}

export function Tick({ label, on, take }: { label: string; on: boolean | undefined; take(on: boolean): void }) {
  return <label class="tick">
    <input type="checkbox" checked={on === true} onChange={({ currentTarget }) => take(currentTarget.checked)} />
    <span>{label}</span>
  </label>;
}

// A slider with its figure beside it; the figure can be typed.
interface SliderProps {
  label: string;
  value: number;
  min: number;
  max: number;
  step?: number;
  unit: string;
  take(value: number): void;
}
export function Slider({ label, value, min, max, step = 1, unit, take }: SliderProps) {
  const [draft, setDraft] = useDraft<string>(String(value));
  const shown = draft ?? String(value);
  const put = (text: string) => {
    take(Math.min(max, Math.max(min, Number(text))));
    setDraft(undefined);
  };
  const attributes = { min, max, step, value: shown };
  return <div class="slider">
    <Field label={label}>
      {(field) => <input {...field} {...attributes} type="range" onInput={({ currentTarget }) => setDraft(currentTarget.value)} onChange={({ currentTarget }) => put(currentTarget.value)} />}
    </Field>
    <span class="typed">
      <input {...attributes} type="number" class="figure" aria-label={`${label}, ${unit}`} onInput={({ currentTarget }) => setDraft(currentTarget.value)} onChange={({ currentTarget }) => put(currentTarget.value)} />
      <span> {unit}</span>
    </span>
  </div>;
}

// Folded away under a summary. What was opened stays open as long as the screen is, whatever shape or
// plan it then shows.
const opened = new Set<string>();
export const foldAll = () => opened.clear();
interface FoldedProps {
  summary: string;
  open?: boolean;
  class?: string;
  onOpen?(): void;
  children: ComponentChildren;
}
export function Folded({ summary, open = false, class: name, onOpen, children }: FoldedProps) {
  return <details class={name} open={open || opened.has(summary)} onToggle={({ currentTarget }) => {
    if (!currentTarget.open) opened.delete(summary);
    else {
      opened.add(summary);
      onOpen?.();
    }
  }}>
    <summary>{summary}</summary>
    {children}
  </details>;
}

export const Group = ({ title, busy, children }: { title: string; busy?: boolean; children: ComponentChildren }) =>
  <section class="group" aria-busy={busy}><h2>{title}</h2>{children}</section>;

export const Fault = ({ children }: { children: ComponentChildren }) => <p class="fault" role="alert">{children}</p>;

// A button that asks for a file. What goes wrong with it is told in words that name the file.
interface FileProps {
  words: string;
  label?: string;
  accept: string;
  largest_mb: number;
  take(text: string, name: string): Promise<void>;
  tell(fault: string): void;
}
export function FileButton({ words, label = words, accept, largest_mb, take, tell }: FileProps) {
  const picker = useRef<HTMLInputElement>(null);
  const read = async (input: HTMLInputElement) => {
    const file = input.files?.[0];
    if (!file) return;
    tell('');
    try {
      if (file.size > largest_mb * 1024 * 1024) throw new Error('it is too large');
      await take(await file.text(), file.name);
    } catch (error) {
      tell(`${file.name.slice(0, 60)}: ${reasonOf(error)}`);
    }
    input.value = '';
  };
  return <>
    <Button onClick={() => picker.current?.click()}>{words}</Button>
    <input ref={picker} type="file" accept={accept} class="spoken" tabIndex={-1} aria-label={label} onChange={({ currentTarget }) => void read(currentTarget)} />
  </>;
}
