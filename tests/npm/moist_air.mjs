// Prints states of moist air from psychrolib. It works over ice below 0 °C, so dew points
// stay above freezing here.
import psychrolib from 'psychrolib';

psychrolib.SetUnitSystem(psychrolib.SI);
console.log('air_c,humidity_share,saturation_pa,vapour_pa,dew_point_c');
for (let air = 1; air <= 50; air += 1) {
  for (let percent = 5; percent <= 100; percent += 5) {
    const share = percent / 100;
    const vapour = psychrolib.GetVapPresFromRelHum(air, share);
    if (vapour < psychrolib.GetSatVapPres(0.02)) continue;
    console.log([air, share, psychrolib.GetSatVapPres(air).toFixed(6), vapour.toFixed(6),
      psychrolib.GetTDewPointFromVapPres(air, vapour).toFixed(6)].join(','));
  }
}
