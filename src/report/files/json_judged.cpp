#include "json_judged.h"

#include <nlohmann/json.hpp>

namespace slabtide {

Json json_verdict(const Judgement& judged) {
  return {{"verdict", verdict_id(judged.verdict)}, {"reasons", judged.reasons}};
}

Json json_caution(const Caution& caution, const Job& job) {
  return {{"code", caution.code},
          {"level", caution_level_id(caution.level)},
          {"loss", loss_id(caution.loss)},
          {"zone", caution.zone},
          {"at", json_time(caution.at, job)},
          {"text", caution.text},
          {"source", caution.source}};
}

}  // namespace slabtide
