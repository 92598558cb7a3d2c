# cmake -DZIC=zic -DSOURCE=tzdata.zi -DFOLDER=dir -DOUTPUT=file.cpp -P pack_zones.cmake
# Writes slabtide::zone_pack() with every time zone, in the short form of TZif and from the year
# 2000 on, which is all that a pour needs.
execute_process(COMMAND ${ZIC} -b slim -r @946684800 -d ${FOLDER} ${SOURCE} COMMAND_ERROR_IS_FATAL ANY)
file(GLOB_RECURSE files RELATIVE ${FOLDER} ${FOLDER}/*)
list(SORT files)
set(bytes "")
set(table "")
set(offset 0)
foreach(file IN LISTS files)
  file(READ ${FOLDER}/${file} hex HEX)
  string(LENGTH "${hex}" digits)
  math(EXPR size "${digits} / 2")
  string(MD5 content "${hex}")
  if(NOT DEFINED at_${content})  # most zones are other names of a few
    set(at_${content} ${offset})
    string(APPEND bytes "${hex}")
    math(EXPR offset "${offset} + ${size}")
  endif()
  string(APPEND table "    {\"${file}\", {text + ${at_${content}}, ${size}}},\n")
endforeach()
string(REGEX REPLACE "([0-9a-f][0-9a-f])" "0x\\1," bytes "${bytes}")
file(WRITE ${OUTPUT} "#include \"planner/zone_pack.h\"
namespace slabtide {
namespace {
const unsigned char bytes[] = {${bytes}0};
const char* const text = reinterpret_cast<const char*>(bytes);
}  // namespace
std::span<const PackedZone> zone_pack() {
  static const PackedZone zones[] = {
${table}  };
  return zones;
}
}  // namespace slabtide
")
