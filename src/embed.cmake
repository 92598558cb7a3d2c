# cmake -DINPUT=file -DOUTPUT=file.cpp -DNAME=identifier -P embed.cmake
file(READ ${INPUT} bytes HEX)
string(LENGTH "${bytes}" digits)
math(EXPR size "${digits} / 2")
string(REGEX REPLACE "([0-9a-f][0-9a-f])" "0x\\1," bytes "${bytes}")
file(WRITE ${OUTPUT} "// NOLINTBEGIN: generated
#include \"slabtide/core/embedded.h\"
namespace slabtide::embedded {
namespace {
constexpr unsigned char bytes[] = {${bytes}0};
}
std::string_view ${NAME}() { return {reinterpret_cast<const char*>(bytes), ${size}}; }
}  // namespace slabtide::embedded
// NOLINTEND
")
