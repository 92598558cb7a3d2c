// Sections of the day sheet by themselves, as the engine made them.

// What one looks at alone: title, where it stands in the sheet, and what only its script has. The
// picture needs width, and the sheet itself leaves it out on a phone.
export interface SheetPart {
  title: string;
  selector: string;
  script?: string;
  wide?: boolean;
}
const parts: SheetPart[] = [
  { title: 'Map by the hour', selector: '#map', script: 'map-hour' },
  { title: 'Timeline', selector: 'details:has(> #agenda)' },
  { title: 'The day as a picture', selector: '.day-bands', wide: true },
];
export const sheetParts = () => parts.filter(({ wide }) => !wide || matchMedia('(min-width: 50rem)').matches);

// The sheet with nothing but this section in it. Styles and
// scripts stay as they are to the byte, since the page's policy names them.
export function partOfSheet(html: string, { title, selector, script }: SheetPart): string {
  const sheet = new DOMParser().parseFromString(html, 'text/html');
  const section = sheet.querySelector(selector);
  sheet.title = title;
  if (section instanceof HTMLDetailsElement) section.open = true;
  const scripts = [...sheet.scripts].filter((each) => script && each.textContent.includes(script));
  const main = sheet.createElement('main');
  if (section) main.append(section);
  sheet.body.replaceChildren(main, ...scripts);
  return `<!DOCTYPE html>\n${sheet.documentElement.outerHTML}`;
}
