# cmake -DINPUT=file -DOUTPUT=file.cpp -DNAME=identifier -P embed.cmake
# Writes NAME() with the file's bytes and NAME_sha256() with their SHA-256 in base64, as a page's
# Content-Security-Policy needs it for an inline style or script.
file(READ ${INPUT} bytes HEX)
string(LENGTH "${bytes}" digits)
math(EXPR size "${digits} / 2")
string(REGEX REPLACE "([0-9a-f][0-9a-f])" "0x\\1," bytes "${bytes}")

# 32 bytes plus a zero byte are 22 groups of 12 bits, two letters each; the last letter is padding.
set(alphabet "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/")
file(SHA256 ${INPUT} hash)
string(REGEX MATCHALL "..." triples "${hash}00")
set(base64 "")
foreach(triple IN LISTS triples)
  math(EXPR high "0x${triple} / 64")
  math(EXPR low "0x${triple} % 64")
  string(SUBSTRING ${alphabet} ${high} 1 high)
  string(SUBSTRING ${alphabet} ${low} 1 low)
  string(APPEND base64 ${high}${low})
endforeach()
string(REGEX REPLACE ".$" "=" base64 "${base64}")

file(WRITE ${OUTPUT} "// NOLINTBEGIN: generated
#include <string_view>
namespace slabtide::embedded {
namespace {
constexpr unsigned char bytes[] = {${bytes}0};
}
std::string_view ${NAME}() { return {reinterpret_cast<const char*>(bytes), ${size}}; }
std::string_view ${NAME}_sha256() { return \"${base64}\"; }
}  // namespace slabtide::embedded
// NOLINTEND
")
