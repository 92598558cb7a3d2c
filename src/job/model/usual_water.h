#pragma once

namespace slabtide {

/// Mixing water of concrete with 3/4 in aggregate by its slump, kg/m3 (ACI 211.1-91, table 6.3.3,
/// from memory: 1 to 2, 3 to 4 and 6 to 7 in; between their middles a straight line). Of plain
/// mixes: one with a water reducer takes some 5 to 10 % less.
double usual_water_kg_m3(double slump_m, bool is_air_entrained);

/// Water over cement that reaches a strength at 28 days (ACI 211.1-91, table 6.3.4(a), from memory:
/// 2000 to 6000 psi, to 5000 with entrained air; between the steps a straight line, held at the
/// ends).
double usual_w_cm(double strength_psi, bool is_air_entrained);

}  // namespace slabtide
