#include "exports.h"

#include <string>

#include "answer.h"
#include "packed_zones.h"
#include "zone_pack.h"

namespace {

std::string request;
std::string reply;

}  // namespace

char* slabtide_request(std::size_t size) {
  request.assign(size, '\0');
  return request.data();
}

std::size_t slabtide_answer() {
  reply = slabtide::answer(request, slabtide::load_from(slabtide::zone_pack()));
  request.clear();
  return reply.size();
}

const char* slabtide_answer_text() { return reply.data(); }
