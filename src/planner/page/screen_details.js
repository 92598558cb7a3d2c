// Where and when, the weather, the mix, the crew and the order.
import { button, el, field, say, tiles } from './dom';
import { fetchForecast, sources } from './forecast';
import { choice, numberField, slider, textField } from './inputs';
import { clockOf, forecastPath, startOf, systemOf, unitOf } from './job';
import { crewForm, pricesForm } from './panel_crew';
import { contentField, finishWorkForm, strengthField, waterForm, waterOf } from './panel_mix';
import { whyNot } from './network';
import { placesNamed } from './places';
import { dayText, parsePlace, readFigure, writeFigure } from './units';

const table = (job, name) => (job.tables[name] ??= {});
const setOrDrop = (where, key, value) => {
  if (value === undefined || value === '') delete where[key];
  else where[key] = value;
};

export function detailsScreen(app) {
  return el('section', { class: 'page details' },
    el('h1', { tabindex: -1 }, 'Day and details'),
    placeForm(app), weatherForm(app), mixForm(app), crewForm(app), finishWorkForm(app), orderForm(app), pricesForm(app));
}

const group = (title, ...parts) => el('section', { class: 'group' }, el('h2', {}, title), ...parts);

// ---- where and when ----
const timeZones = Intl.supportedValuesOf?.('timeZone') ?? [];
// Also under another name than the browser lists it by: Indianapolis has two.
function isTimeZone(name) {
  try {
    return Boolean(name && Intl.DateTimeFormat('en', { timeZone: name }));
  } catch {
    return false;
  }
}
const feetInMetre = 1 / 0.3048;

// The place, its height and its time zone, from a list of the world's towns.
function placeByName(app) {
  const note = el('p', { class: 'fault', role: 'alert' });
  const found = el('div', { class: 'found' });
  const name = el('input', { type: 'search', autocomplete: 'off', maxlength: 60, enterkeyhint: 'search' });
  const put = (place) => app.edit((job) => {
    const { site } = job.tables;
    Object.assign(site, { latitude: Number(place.latitude.toFixed(5)), longitude: Number(place.longitude.toFixed(5)) });
    if (place.elevation_m !== undefined) site.elevation = Math.round(systemOf(job) === 'si' ? place.elevation_m : place.elevation_m * feetInMetre);
    if (isTimeZone(place.zone)) site.time_zone = place.zone;
    say(`The site is in ${place.words}`);
  });
  const find = async () => {
    if (name.value.trim() === '') return name.focus();
    found.replaceChildren();
    note.textContent = 'Asking ...';
    try {
      const places = await placesNamed(name.value.trim());
      note.textContent = places.length ? '' : 'No such place is listed. Try the next town, or the two numbers above.';
      found.replaceChildren(...places.map((place) => button(place.words, () => put(place))));
      found.firstChild?.focus();
    } catch (error) {
      note.textContent = `No list of places: ${whyNot(error)}. Type the two numbers above, or try again later.`;
    }
  };
  name.addEventListener('keydown', (event) => event.key === 'Enter' && find());
  return el('details', {}, el('summary', {}, 'Or by the name of the town'),
    field('Town or ZIP code', name, 'Needs the network once: the name is sent to Open-Meteo, and nothing else.'),
    el('div', { class: 'row' }, button('Find it', find)), note, found);
}

function placeForm(app) {
  const { job } = app;
  const { site } = job.tables;
  const known = typeof site.latitude === 'number' && typeof site.longitude === 'number';
  const note = el('p', { class: 'fault', role: 'alert' });
  const put = async ({ latitude, longitude }) => {
    const place = { latitude: Number(latitude.toFixed(5)), longitude: Number(longitude.toFixed(5)) };
    const { time_zone: zone } = await app.engine.ask({ ask: 'time-zone', ...place }).catch(() => ({}));
    if (app.job !== job) return;
    app.edit((each) => Object.assign(each.tables.site, place, isTimeZone(zone) ? { time_zone: zone } : {}));
    if (isTimeZone(zone)) say(`The clock there is that of ${zone.replaceAll('_', ' ')}.`);
  };
  const locate = () => {
    note.textContent = 'Asking this device where it is ...';
    navigator.geolocation.getCurrentPosition(
      ({ coords }) => put(coords),
      () => { note.textContent = 'This device does not say where it is. Hold a finger on the site in your map app and paste the two numbers.'; },
      { timeout: 20000, maximumAge: 600000 });
  };
  const place = textField('Latitude, longitude', known ? `${site.latitude}, ${site.longitude}` : '', (text) => put(parsePlace(text)), {
    check: (text) => (parsePlace(text) ? '' : 'Two numbers such as 44.90, -91.90'), hint: 'As your map shows them: 44.90, -91.90',
  });
  return group('Where and when',
    el('div', { class: 'row' }, 'geolocation' in navigator && button('Use where I am', locate, { class: known ? '' : 'main' })), note, place, placeByName(app),
    el('div', { class: 'pair' },
      dateField(app), timeField(app)),
    systemOf(job) === 'si' ? numberField('Elevation', site.elevation, (value) => app.edit((each) => setOrDrop(each.tables.site, 'elevation', value), { redraw: false }), { min: -500, max: 5000, unit: 'm', optional: true })
      : numberField('Elevation', site.elevation, (value) => app.edit((each) => setOrDrop(each.tables.site, 'elevation', value), { redraw: false }), { min: -1500, max: 16000, unit: 'ft', optional: true }),
    tiles('How open to the wind', [['open lot', 'Open lot'], ['yard', 'Yard'], ['sheltered court', 'Sheltered']], site.wind_setting ?? 'yard',
      (value) => app.edit((each) => { each.tables.site.wind_setting = value; }, { redraw: false })),
    choice('Time zone', timeZones.map((zone) => [zone, zone.replaceAll('_', ' ')]), site.time_zone, (zone) => app.edit((each) => { each.tables.site.time_zone = zone; }, { redraw: false })));
}

function dateField(app) {
  const input = el('input', {
    type: 'date', value: app.job.tables.pour.date?.$time ?? '', required: true,
    onchange: () => input.value && app.edit((job) => {
      const start = startOf(job); // a start with a date of its own would stay on the old day
      Object.assign(job.tables.pour, { date: { $time: input.value } }, start ? { start } : {});
    }),
  });
  return field('Day of the pour', input);
}

function timeField(app) {
  const input = el('input', {
    type: 'time', value: startOf(app.job) ?? '', required: true,
    onchange: () => input.value && app.edit((job) => { job.tables.pour.start = input.value; }, { redraw: false }),
  });
  return field('First concrete', input);
}

// ---- weather ----
function weatherForm(app) {
  const { job } = app;
  const fetched = typeof forecastPath(job) === 'string';
  const note = el('p', { class: 'fault', role: 'alert' });
  return group('Weather',
    job.unsaid?.weather && el('p', { class: 'unsaid' }, 'These are only a start: set them from any forecast, or get the hourly one.'),
    fetched ? fetchedWeather(app) : typedWeather(app),
    el('h3', {}, 'Get the hourly forecast'),
    el('p', {}, 'Needs the network once. Only the site\u2019s two numbers are sent, to the service you choose.'),
    el('div', { class: 'row' }, sources.map(([id, words]) => button(words, (event) => getIt(app, id, note, event.currentTarget))),
      forecastFile(app, note)), note);
}

async function getIt(app, source, note, place) {
  const { site, pour } = app.job.tables;
  if (typeof site.latitude !== 'number') {
    note.textContent = 'First say where the site is.';
    return;
  }
  note.textContent = 'Getting it ...';
  place.disabled = true;
  try {
    await app.takeForecast(await fetchForecast(source, site, pour.date.$time), source);
    say('The forecast is in');
  } catch (error) {
    note.textContent = `No forecast: ${whyNot(error)}. Type the day below, or try again later.`;
    place.disabled = false;
  }
}

function forecastFile(app, note) {
  const input = el('input', { type: 'file', accept: '.json,.csv,application/json,text/csv', class: 'spoken', tabindex: -1, 'aria-label': 'Forecast file' });
  input.addEventListener('change', async () => {
    const [file] = input.files;
    if (!file) return;
    try {
      if (file.size > 8 * 1024 * 1024) throw new Error('it is too large');
      await app.takeForecast(await file.text(), file.name.slice(0, 80));
    } catch (error) {
      note.textContent = `${file.name.slice(0, 60)}: ${error.message}`;
    }
  });
  return [button('Open a forecast file', () => input.click()), input];
}

function fetchedWeather(app) {
  const { job } = app;
  if (!job.forecast) return el('p', { class: 'fault' }, 'This job names a forecast that is not on this device. Get it again, or type the day.');
  const { forecast } = job;
  const clock = clockOf(job, '');
  const hours = forecast.at ? Math.round((Date.now() - forecast.at) / 3600e3) : undefined;
  const source = sources.find(([id]) => id === forecast.from)?.[1] ?? forecast.from;
  return el('div', {},
    el('p', {}, el('strong', {}, el('bdi', {}, source)), forecast.first ? `, from ${clock(forecast.first)} to ${clock(forecast.last)}` : '',
      hours === undefined ? '' : `. Got ${hours < 1 ? 'just now' : `${hours} h ago`}.`, hours > 12 ? ' Get it again before you decide.' : ''),
    button('Type the day instead', () => app.typeWeather()));
}

const ranges = {
  us: { air: { min: -10, max: 120, unit: '°F' }, wind: { min: 0, max: 40, unit: 'mph' } },
  si: { air: { min: -23, max: 49, unit: '°C' }, wind: { min: 0, max: 18, step: 0.5, unit: 'm/s' } },
};

function typedWeather(app) {
  const { job } = app;
  const { weather } = job.tables;
  const { air, wind } = ranges[systemOf(job)];
  const set = (key) => (value) => app.edit((each) => {
    writeFigure(each.tables.weather, key, value);
    if (key === 'dew_point') delete each.tables.weather.humidity;
    each.unsaid.weather = false;
  }, { redraw: false });
  const { cloud } = weather;
  const known = (key) => Number(readFigure(weather, key, systemOf(job)));
  if (![known('high'), known('low'), known('wind')].every(Number.isFinite)) {
    return el('p', {}, 'The weather of this job is given in units of its own; it is used unchanged. Change it in the file, or get the hourly forecast.');
  }
  return el('div', {},
    slider('High of the day', known('high'), air, set('high')),
    slider('Low of that morning', known('low'), air, set('low')),
    slider('Dew point', Number.isFinite(known('dew_point')) ? known('dew_point') : known('low'), air, set('dew_point')),
    slider('Wind, average for the day', known('wind'), wind, set('wind')),
    typeof cloud === 'object' ? el('p', {}, 'Cloud is given by parts of the day in this job.')
      : slider('Cloud', Number(cloud ?? 0), { min: 0, max: 100, step: 5, unit: '%' }, set('cloud')));
}

// ---- mix ----
function mixForm(app) {
  const { job } = app;
  const mix = table(job, 'mix');
  const us = systemOf(job) === 'us';
  const set = (key) => (value) => app.edit((each) => {
    writeFigure(each.tables.mix, key, value);
    each.unsaid.mix = false;
  }, { redraw: false });
  const told = (key) => readFigure(mix, key, systemOf(job));
  const admixtures = mix.admixture ?? [];
  return group('Mix',
    job.unsaid?.mix && el('p', { class: 'unsaid' }, 'A usual outdoor mix. Ask your supplier for the set times: nothing makes the plan surer.'),
    mixChoice(app),
    textField('Name of the mix', mix.name, (name) => set('name')(name.trim()), { hint: 'As your plant calls it: the mix book knows it by this name.' }),
    el('div', { class: 'pair' },
      numberField('Set times at 73 °F: initial', told('initial_set'), set('initial_set'), { min: 1, max: 24, unit: 'hours', optional: true }),
      numberField('final', told('final_set'), set('final_set'), { min: 1, max: 48, unit: 'hours', optional: true })),
    mix.ingredients ? el('p', {}, 'Its temperature follows from what goes in, as the job file says.')
      : numberField('Concrete at the chute', told('concrete_temperature'), set('concrete_temperature'), us ? { min: 40, max: 110, unit: '°F' } : { min: 4, max: 43, unit: '°C' }),
    waterForm(app, set),
    el('details', {}, el('summary', {}, 'What is in it'),
      waterOf(mix) === 'slump' ? null : contentField(app, set),
      el('div', { class: 'pair' },
        numberField('Fly ash', told('fly_ash'), set('fly_ash'), { min: 0, max: 60, unit: '%', optional: true }),
        numberField('Slag', told('slag'), set('slag'), { min: 0, max: 80, unit: '%', optional: true })),
      numberField('Air', told('air'), set('air'), { min: 0, max: 12, unit: '%', optional: true }),
      waterOf(mix) === 'strength' ? null : strengthField(app, set, true)),
    admixtureForm(app, admixtures));
}

const admixtureKinds = [['retarder', 'retarder'], ['stabilizer', 'stabilizer'], ['non-chloride accelerator', 'accelerator, non-chloride'], ['calcium chloride', 'calcium chloride']];
const doseKey = (kind) => (kind === 'calcium chloride' ? 'dose_percent' : 'dose');

// Each with its dose; what the supplier says of a shift, or of some loads alone, stays as it is.
function admixtureForm(app, admixtures) {
  const us = systemOf(app.job) === 'us';
  const usualDose = (kind) => (kind === 'calcium chloride' ? 1 : us ? 2 : 130);
  const fresh = (kind) => ({ kind, [doseKey(kind)]: usualDose(kind) });
  const unit = (kind) => (kind === 'calcium chloride' ? '% of the cement' : us ? 'fl oz/cwt' : 'mL/100 kg');
  const inMix = (change, options) => app.edit((job) => change(job.tables.mix), options);
  const row = (one, i) => el('div', { class: 'pair', role: 'group', 'aria-label': `Admixture ${i + 1}` },
    choice(`Admixture ${i + 1}`, admixtureKinds, one.kind, (kind) => inMix((mix) => { mix.admixture[i] = fresh(kind); })),
    one.shift === undefined
      ? numberField('Dose', one[doseKey(one.kind)], (dose) => inMix((mix) => { mix.admixture[i][doseKey(one.kind)] = dose; }, { redraw: false }), { min: 0, max: 4000, unit: unit(one.kind) })
      : el('p', {}, `Moves the set by ${one.shift} h, as the supplier says.`),
    button('Remove', () => inMix((mix) => { mix.admixture.splice(i, 1); if (mix.admixture.length === 0) delete mix.admixture; }), { 'aria-label': `Remove admixture ${i + 1}` }));
  return el('div', {}, admixtures.map(row),
    button('Add an admixture', () => inMix((mix) => { (mix.admixture ??= []).push(fresh('retarder')); })));
}

// The mixes of the pours on this device, by their names; the newest of a name.
function knownMixes(app) {
  const mixes = new Map();
  for (const { tables } of app.jobs) {
    const name = String(tables.mix?.name ?? '').trim();
    if (name && !mixes.has(name) && (tables.units === 'si' ? 'si' : 'us') === systemOf(app.job)) mixes.set(name, tables.mix);
  }
  return mixes;
}

function mixChoice(app) {
  const mixes = knownMixes(app);
  const { name } = app.job.tables.mix;
  mixes.delete(String(name ?? ''));
  if (mixes.size === 0) return null;
  return choice('Use the mix of another pour', [['', 'as below'], ...[...mixes.keys()].map((each) => [each, each])], '', (taken) => taken && app.edit((job) => {
    job.tables.mix = structuredClone(mixes.get(taken));
    job.unsaid.mix = false;
  }));
}

// ---- the plant ----
function orderForm(app) {
  const { job } = app;
  const order = job.tables.order ?? {};
  const us = systemOf(job) === 'us';
  const set = (key) => (value) => app.edit((each) => setOrDrop(table(each, 'order'), key, value), { redraw: false });
  return group('Plant',
    numberField('Batching to your site', job.tables.pour.transit, (value) => app.edit((each) => setOrDrop(each.tables.pour, 'transit', value), { redraw: false }), { min: 1, max: 180, unit: 'minutes', optional: true }),
    numberField('Full load', order.load_size, set('load_size'), us ? { min: 1, max: 14, unit: 'yd³', optional: true } : { min: 1, max: 11, unit: 'm³', optional: true }),
    numberField('Short load: charged under', order.short_load, set('short_load'), us ? { min: 0, max: 14, unit: 'yd³', optional: true } : { min: 0, max: 11, unit: 'm³', optional: true }),
    lengthlessUnits(app));
}

// Units can be chosen while nothing is drawn: afterwards the figures of the file stand in them.
function lengthlessUnits(app) {
  const { job } = app;
  if (job.tables.zone?.length || job.tables.obstacle?.length) return el('p', {}, `Lengths of this pour are in ${unitOf(job)}.`);
  return tiles('Units', [['us', 'ft, °F, mph'], ['si', 'm, °C, m/s']], systemOf(job), (units) => app.edit((each) => changeUnits(each, units)));
}

// A new pour in the other units starts from the usual figures there.
function changeUnits(job, units) {
  if (job.tables.units === units) return;
  const si = units === 'si';
  job.tables.units = units;
  job.tables.weather = si ? { high: 22, low: 11, dew_point: 9, wind: 3, cloud: 20 } : { high: 72, low: 52, dew_point: 48, wind: 7, cloud: 20 };
  job.tables.mix = { cementitious: si ? 335 : 564, w_cm: 0.45, air: 6, strength: si ? 28 : 4000, concrete_temperature: si ? 21 : 70 };
  delete job.tables.site.elevation;
  delete job.tables.order;
  Object.assign(job.unsaid, { weather: true, mix: true });
  job.forecast = null;
  job.typed = null;
}

export const dayWords = (job) => dayText(job.tables.pour?.date?.$time ?? '', true);
