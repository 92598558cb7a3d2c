// Where and when, the weather, the mix, the crew and the order.
import { useEffect, useRef, useState } from 'preact/hooks';
import type { App } from './app';
import { fetchForecast, sources, type Source } from './forecast';
import { clockOf, dateOf, forecastPath, newJob, startOf, systemOf, unitOf, usualOf, type Admixture, type Job, type Mix } from './job';
import { CrewForm, PricesForm } from './panel_crew';
import { ContentField, editMix, FinishWorkForm, inMix, StrengthField, WaterForm, waterOf } from './panel_mix';
import { whyNot } from './network';
import { placesNamed, type Town } from './places';
import { say } from './say';
import type { Table, Value } from './toml';
import { Button, Choice, Fault, Field, FileButton, Folded, Group, NumberField, Slider, TextField, Tiles, WhenField, type Choices } from './ui';
import { parsePlace, readFigure, writeFigure, type Place, type System } from './units';

interface FormProps {
  app: App;
  job: Job;
}
const setOrDrop = (where: Table, key: string, value: Value | undefined) => {
  if (value === undefined || value === '') delete where[key];
  else where[key] = value;
};

export function DetailsScreen(properties: FormProps) {
  return <section class="page details">
    <h1 tabIndex={-1}>Day and details</h1>
    <PlaceForm {...properties} />
    <WeatherForm {...properties} />
    <MixForm {...properties} />
    <CrewForm {...properties} />
    <FinishWorkForm {...properties} />
    <OrderForm {...properties} />
    <PricesForm {...properties} />
  </section>;
}

// ---- where and when ----
const timeZones: Choices = (Intl.supportedValuesOf?.('timeZone') ?? []).map((zone) => [zone, zone.replaceAll('_', ' ')]);
// Also under another name than the browser lists it by: Indianapolis has two.
function isTimeZone(name: string | undefined): name is string {
  try {
    return Boolean(name && Intl.DateTimeFormat('en', { timeZone: name }));
  } catch {
    return false;
  }
}
const feetInMetre = 1 / 0.3048;
const siteOf = ({ latitude, longitude }: Place): Place => ({ latitude: Number(latitude.toFixed(5)), longitude: Number(longitude.toFixed(5)) });

// The place, its height and its time zone, from a list of the world's towns.
function PlaceByName({ app }: { app: App }) {
  const [name, setName] = useState('');
  const [note, setNote] = useState('');
  const [towns, setTowns] = useState<Town[]>([]);
  const input = useRef<HTMLInputElement>(null);
  const found = useRef<HTMLDivElement>(null);
  useEffect(() => found.current?.querySelector('button')?.focus(), [towns]);
  const put = (town: Town) => app.edit((job) => {
    const { site } = job.tables;
    Object.assign(site, siteOf(town));
    if (town.elevation_m !== undefined) site.elevation = Math.round(systemOf(job) === 'si' ? town.elevation_m : town.elevation_m * feetInMetre);
    if (isTimeZone(town.zone)) site.time_zone = town.zone;
    setTowns([]);
    say(`The site is in ${town.words}`);
  });
  const find = async () => {
    if (name.trim() === '') return input.current?.focus();
    setTowns([]);
    setNote('Asking ...');
    try {
      const places = await placesNamed(name.trim());
      setNote(places.length ? '' : 'No such place is listed. Try the next town, or the two numbers above.');
      setTowns(places);
    } catch (error) {
      setNote(`No list of places: ${whyNot(error)}. Type the two numbers above, or try again later.`);
    }
  };
  return <Folded summary="Or by the name of the town">
    <Field label="Town or ZIP code" hint="Needs the network once: the name is sent to Open-Meteo, and nothing else.">
      {(field) => <input {...field} ref={input} type="search" autocomplete="off" maxLength={60} enterkeyhint="search" value={name}
        onInput={({ currentTarget }) => setName(currentTarget.value)} onKeyDown={({ key }) => key === 'Enter' && void find()} />}
    </Field>
    <div class="row"><Button onClick={() => void find()}>Find it</Button></div>
    <Fault>{note}</Fault>
    <div ref={found} class="found">{towns.map((town, i) => <Button key={i} onClick={() => put(town)}>{town.words}</Button>)}</div>
  </Folded>;
}

const windSettings: Choices = [['open lot', 'Open lot'], ['yard', 'Yard'], ['sheltered court', 'Sheltered']];
const elevations: Record<System, { min: number; max: number; unit: string }> = {
  si: { min: -500, max: 5000, unit: 'm' }, us: { min: -1500, max: 16000, unit: 'ft' },
};

function PlaceForm({ app, job }: FormProps) {
  const { site, pour } = job.tables;
  const [note, setNote] = useState('');
  const known = typeof site.latitude === 'number' && typeof site.longitude === 'number';
  const put = async (told: Place) => {
    const place = siteOf(told);
    const answer = await app.engine.ask({ ask: 'time-zone', ...place }).catch(() => undefined);
    if (app.job !== job) return;
    const zone = answer?.ok ? answer.time_zone : undefined;
    app.edit((each) => Object.assign(each.tables.site, place, isTimeZone(zone) ? { time_zone: zone } : {}));
    setNote('');
    if (isTimeZone(zone)) say(`The clock there is that of ${zone.replaceAll('_', ' ')}.`);
  };
  const typed = (text: string) => {
    const place = parsePlace(text);
    if (place) void put(place);
  };
  const locate = () => {
    setNote('Asking this device where it is ...');
    navigator.geolocation.getCurrentPosition(
      ({ coords }) => void put(coords),
      () => setNote('This device does not say where it is. Hold a finger on the site in your map app and paste the two numbers.'),
      { timeout: 20000, maximumAge: 600000 });
  };
  const inSite = (key: string) => (value: string | number | undefined) => app.edit((each) => setOrDrop(each.tables.site, key, value));
  const newDay = (day: string) => app.edit((each) => {
    const start = startOf(each); // a start with a date of its own would stay on the old day
    Object.assign(each.tables.pour, { date: { $time: day } }, start ? { start } : {});
  });
  return <Group title="Where and when">
    <div class="row">{'geolocation' in navigator && <Button class={known ? '' : 'main'} onClick={locate}>Use where I am</Button>}</div>
    <Fault>{note}</Fault>
    <TextField label="Latitude, longitude" value={known ? `${site.latitude}, ${site.longitude}` : ''} hint="As your map shows them: 44.90, -91.90"
      check={(text) => (parsePlace(text) ? '' : 'Two numbers such as 44.90, -91.90')} take={typed} />
    <PlaceByName app={app} />
    <div class="pair">
      <WhenField label="Day of the pour" type="date" value={pour.date?.$time ?? ''} take={newDay} />
      <WhenField label="First concrete" type="time" value={startOf(job) ?? ''} take={(start) => app.edit((each) => { each.tables.pour.start = start; })} />
    </div>
    <NumberField label="Elevation" value={site.elevation} optional take={inSite('elevation')} {...elevations[systemOf(job)]} />
    <Tiles legend="How open to the wind" choices={windSettings} taken={site.wind_setting ?? 'yard'} take={inSite('wind_setting')} />
    <Choice label="Time zone" choices={timeZones} value={site.time_zone} take={inSite('time_zone')} />
  </Group>;
}

// ---- weather ----
function WeatherForm({ app, job }: FormProps) {
  const [note, setNote] = useState('');
  const [asking, setAsking] = useState<Source>();
  const getIt = async (source: Source) => {
    const { latitude, longitude } = job.tables.site;
    const date = dateOf(job);
    if (latitude === undefined || longitude === undefined || !date) {
      setNote('First say where the site is.');
      return;
    }
    setNote('Getting it ...');
    setAsking(source);
    try {
      await app.takeForecast(await fetchForecast(source, { latitude, longitude }, date), source);
      setNote('');
      say('The forecast is in');
    } catch (error) {
      setNote(`No forecast: ${whyNot(error)}. Type the day below, or try again later.`);
    }
    setAsking(undefined);
  };
  return <Group title="Weather">
    {job.unsaid.weather && <p class="unsaid">These are only a start: set them from any forecast, or get the hourly one.</p>}
    {typeof forecastPath(job) === 'string' ? <FetchedWeather app={app} job={job} /> : <TypedWeather app={app} job={job} />}
    <h3>Get the hourly forecast</h3>
    <p>Needs the network once. Only the site’s two numbers are sent, to the service you choose.</p>
    <div class="row">
      {sources.map(([id, words]) => <Button key={id} disabled={asking === id} onClick={() => void getIt(id)}>{words}</Button>)}
      <FileButton words="Open a forecast file" label="Forecast file" accept=".json,.csv,application/json,text/csv" largest_mb={8}
        take={(text, name) => app.takeForecast(text, name.slice(0, 80))} tell={setNote} />
    </div>
    <Fault>{note}</Fault>
  </Group>;
}

function FetchedWeather({ app, job }: FormProps) {
  const { forecast } = job;
  if (!forecast) return <p class="fault">This job names a forecast that is not on this device. Get it again, or type the day.</p>;
  const clock = clockOf(job, '');
  const hours = forecast.at ? Math.round((Date.now() - forecast.at) / 3600e3) : undefined;
  return <div>
    <p>
      <strong><bdi>{sources.find(([id]) => id === forecast.from)?.[1] ?? forecast.from}</bdi></strong>
      {forecast.first && `, from ${clock(forecast.first)} to ${clock(forecast.last)}`}
      {hours !== undefined && `. Got ${hours < 1 ? 'just now' : `${hours} h ago`}.${hours > 12 ? ' Get it again before you decide.' : ''}`}
    </p>
    <Button onClick={() => app.typeWeather()}>Type the day instead</Button>
  </div>;
}

interface Range {
  min: number;
  max: number;
  step?: number;
  unit: string;
}
const ranges: Record<System, { air: Range; wind: Range }> = {
  us: { air: { min: -10, max: 120, unit: '°F' }, wind: { min: 0, max: 40, unit: 'mph' } },
  si: { air: { min: -23, max: 49, unit: '°C' }, wind: { min: 0, max: 18, step: 0.5, unit: 'm/s' } },
};

function TypedWeather({ app, job }: FormProps) {
  const { weather } = job.tables;
  const { air, wind } = ranges[systemOf(job)];
  const put = (key: string) => (value: number) => app.edit((each) => {
    writeFigure(each.tables.weather, key, value);
    if (key === 'dew_point') delete each.tables.weather.humidity;
    each.unsaid.weather = false;
  });
  const figure = (key: string) => readFigure(weather, key, systemOf(job));
  // What the file leaves out is assumed.
  const blows = Object.keys(weather).some((key) => key.startsWith('wind'));
  const [high, low, windSpeed] = [figure('high'), figure('low'), blows ? figure('wind') : usualOf(job).wind];
  if (high === undefined || low === undefined || windSpeed === undefined) {
    return <p>The weather of this job is given in units of its own; it is used unchanged. Change it in the file, or get the hourly forecast.</p>;
  }
  return <div>
    <Slider label="High of the day" value={high} take={put('high')} {...air} />
    <Slider label="Low of that morning" value={low} take={put('low')} {...air} />
    <Slider label="Dew point" value={figure('dew_point') ?? low} take={put('dew_point')} {...air} />
    <Slider label="Wind, average for the day" value={windSpeed} take={put('wind')} {...wind} />
    {typeof weather.cloud === 'object' ? <p>Cloud is given by parts of the day in this job.</p>
      : <Slider label="Cloud" value={Number(weather.cloud ?? 0)} min={0} max={100} step={5} unit="%" take={put('cloud')} />}
  </div>;
}

// ---- mix ----
function MixForm({ app, job }: FormProps) {
  const { mix } = job.tables;
  const told = (key: string) => readFigure(mix, key, systemOf(job));
  const concrete = systemOf(job) === 'us' ? { min: 40, max: 110, unit: '°F', hint: 'Left empty: 4 °F over the day’s mean, 60 °F at least' }
    : { min: 4, max: 43, unit: '°C', hint: 'Left empty: 2 °C over the day’s mean, 16 °C at least' };
  const optional = (label: string, key: string, min: number, max: number, unit: string) =>
    <NumberField label={label} value={told(key)} min={min} max={max} unit={unit} optional take={inMix(app, key)} />;
  return <Group title="Mix">
    {job.unsaid.mix && <p class="unsaid">A usual outdoor mix. Ask your supplier for the set times: nothing makes the plan surer.</p>}
    <MixChoice app={app} job={job} />
    <TextField label="Name of the mix" value={mix.name} take={(name) => inMix(app, 'name')(name.trim())} hint="As your plant calls it: the mix book knows it by this name." />
    <div class="pair">
      {optional('Set times at 73 °F: initial', 'initial_set', 1, 24, 'hours')}
      {optional('final', 'final_set', 1, 48, 'hours')}
    </div>
    {mix.ingredients ? <p>Its temperature follows from what goes in, as the job file says.</p>
      : <NumberField label="Concrete at the chute" value={told('concrete_temperature')} take={inMix(app, 'concrete_temperature')} optional {...concrete} />}
    <WaterForm app={app} job={job} />
    <Folded summary="What is in it">
      {waterOf(mix) !== 'slump' && <ContentField app={app} job={job} />}
      <div class="pair">
        {optional('Fly ash', 'fly_ash', 0, 60, '%')}
        {optional('Slag', 'slag', 0, 80, '%')}
      </div>
      {optional('Air', 'air', 0, 12, '%')}
      {waterOf(mix) !== 'strength' && <StrengthField app={app} job={job} optional />}
    </Folded>
    <AdmixtureForm app={app} job={job} />
  </Group>;
}

const admixtureKinds: Choices = [['retarder', 'retarder'], ['stabilizer', 'stabilizer'], ['non-chloride accelerator', 'accelerator, non-chloride'], ['calcium chloride', 'calcium chloride']];

// What a kind is dosed by: the file's key, its unit and a usual dose.
function dosing(kind: string, system: System): { key: 'dose' | 'dose_percent'; unit: string; usual: number } {
  if (kind === 'calcium chloride') return { key: 'dose_percent', unit: '% of the cement', usual: 1 };
  return system === 'us' ? { key: 'dose', unit: 'fl oz/cwt', usual: 2 } : { key: 'dose', unit: 'mL/100 kg', usual: 130 };
}

// Each with its dose; what the supplier says of a shift, or of some loads alone, stays as it is.
function AdmixtureForm({ app, job }: FormProps) {
  const system = systemOf(job);
  const fresh = (kind: string): Admixture => {
    const { key, usual } = dosing(kind, system);
    return { kind, [key]: usual };
  };
  const edit = (change: (list: Admixture[]) => void) => app.edit(({ tables: { mix } }) => {
    change((mix.admixture ??= []));
    if (mix.admixture.length === 0) delete mix.admixture;
  });
  const row = (one: Admixture, i: number) => {
    const { key, unit } = dosing(one.kind, system);
    return <div key={i} class="pair" role="group" aria-label={`Admixture ${i + 1}`}>
      <Choice label={`Admixture ${i + 1}`} choices={admixtureKinds} value={one.kind} take={(kind) => edit((list) => { list[i] = fresh(kind); })} />
      {one.shift === undefined
        ? <NumberField label="Dose" value={one[key]} min={0} max={4000} unit={unit} take={(dose) => edit((list) => { list[i] = { ...one, [key]: dose }; })} />
        : <p>Moves the set by {one.shift} h, as the supplier says.</p>}
      <Button aria-label={`Remove admixture ${i + 1}`} onClick={() => edit((list) => list.splice(i, 1))}>Remove</Button>
    </div>;
  };
  return <div>
    {(job.tables.mix.admixture ?? []).map(row)}
    <Button onClick={() => edit((list) => list.push(fresh('retarder')))}>Add an admixture</Button>
  </div>;
}

// The mixes of the other pours on this device, by their names; the newest of a name.
function knownMixes(app: App, job: Job): Map<string, Mix> {
  const mixes = new Map<string, Mix>();
  for (const other of app.jobs) {
    const { mix } = other.tables;
    const name = String(mix.name ?? '').trim();
    if (name && !mixes.has(name) && systemOf(other) === systemOf(job)) mixes.set(name, mix);
  }
  mixes.delete(String(job.tables.mix.name ?? ''));
  return mixes;
}

function MixChoice({ app, job }: FormProps) {
  const mixes = knownMixes(app, job);
  if (mixes.size === 0) return null;
  const take = (name: string) => {
    const mix = mixes.get(name);
    if (mix) editMix(app, (_, each) => { each.tables.mix = structuredClone(mix); });
  };
  return <Choice label="Use the mix of another pour" choices={[['', 'as below'], ...[...mixes.keys()].map((name): [string, string] => [name, name])]} value="" take={take} />;
}

// ---- the plant ----
function OrderForm({ app, job }: FormProps) {
  const { order = {}, pour } = job.tables;
  const most = systemOf(job) === 'us' ? { max: 14, unit: 'yd³' } : { max: 11, unit: 'm³' };
  const inOrder = (key: string) => (value: number | undefined) => app.edit(({ tables }) => setOrDrop((tables.order ??= {}), key, value));
  return <Group title="Plant">
    <NumberField label="Batching to your site" value={pour.transit} min={1} max={180} unit="minutes" optional take={(value) => app.edit(({ tables }) => setOrDrop(tables.pour, 'transit', value))} />
    <NumberField label="Full load" value={order.load_size} min={1} {...most} optional take={inOrder('load_size')} />
    <NumberField label="Short load: charged under" value={order.short_load} min={0} {...most} optional take={inOrder('short_load')} />
    <Units app={app} job={job} />
  </Group>;
}

const systems: Choices<System> = [['us', 'ft, °F, mph'], ['si', 'm, °C, m/s']];

// Units can be chosen while nothing is drawn: afterwards the figures of the file stand in them.
function Units({ app, job }: FormProps) {
  if (job.tables.zone.length || job.tables.obstacle?.length) return <p>Lengths of this pour are in {unitOf(job)}.</p>;
  return <Tiles legend="Units" choices={systems} taken={systemOf(job)} take={(units) => app.edit((each) => changeUnits(each, units))} />;
}

// A new pour in the other units starts from the usual figures there.
function changeUnits(job: Job, units: System) {
  if (systemOf(job) === units) return;
  const { weather, mix } = newJob(undefined, units).tables;
  Object.assign(job.tables, { units, weather, mix });
  delete job.tables.site.elevation;
  delete job.tables.order;
  Object.assign(job.unsaid, { weather: true, mix: true });
  job.forecast = null;
  job.typed = null;
}
