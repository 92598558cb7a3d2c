// Prints the standard atmosphere's pressure by elevation from psychrolib, and the density of moist
// air there relative to that at sea level with the same vapour.
import psychrolib from 'psychrolib';

psychrolib.SetUnitSystem(psychrolib.SI);
const air = 25;
const vapour = psychrolib.GetVapPresFromRelHum(air, 0.4);
const density = (pressure) => psychrolib.GetMoistAirDensity(air,
  psychrolib.GetHumRatioFromVapPres(vapour, pressure), pressure);
console.log('elevation_m,pressure_pa,density_share');
for (let elevation = -400; elevation <= 5000; elevation += 100) {
  const pressure = psychrolib.GetStandardAtmPressure(elevation);
  console.log([elevation, pressure.toFixed(6),
    (density(pressure) / density(psychrolib.GetStandardAtmPressure(0))).toFixed(9)].join(','));
}
