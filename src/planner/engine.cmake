# The library in WebAssembly for the planner's page: what Emscripten compiles of the project
# (tools/planner). Without the command line, the network and threads, and with the time zones
# inside. The headers of Debian's packages that it needs are the same for any machine; the others in
# /usr/include are this machine's, so only these folders are linked to.
set(headers ${CMAKE_CURRENT_BINARY_DIR}/headers)
file(MAKE_DIRECTORY ${headers})
foreach(folder boost fmt hwy kainjow nlohmann toml++ Eigen)
  find_path(found_${folder} ${folder} PATHS /usr/include /usr/include/eigen3
            NO_DEFAULT_PATH NO_CMAKE_FIND_ROOT_PATH REQUIRED)
  file(CREATE_LINK ${found_${folder}}/${folder} ${headers}/${folder} SYMBOLIC)
endforeach()

add_compile_options(-fwasm-exceptions -Wno-defaulted-function-deleted)
add_compile_definitions(NDEBUG FMT_HEADER_ONLY BOOST_ALLOW_DEPRECATED_HEADERS
                        HWY_COMPILE_ONLY_EMU128)
# Three libraries, as the columns' core says its own optimisation: what reads and writes is small,
# for which Emscripten 3.1.6 keeps the compiler from inlining anything, down to the accessors of a
# vector; what works out the day is fast, though not what weighs and words it (practice, cautions,
# choices, the crew's tasks before they are searched); the core is as fast as can be.
add_library(slabtide OBJECT)
target_compile_options(slabtide PRIVATE -Oz)
add_library(slabtide_day OBJECT)
target_compile_options(slabtide_day PRIVATE -O2)
add_library(slabtide_core OBJECT src/slab/column/column_core.cpp)
target_compile_options(slabtide_core PRIVATE -O3 -msimd128)
foreach(part slabtide slabtide_day slabtide_core)
  target_include_directories(${part} PRIVATE include src)
  target_include_directories(${part} SYSTEM PRIVATE ${headers})
endforeach()
include(src/precompiled.cmake)
add_subdirectory(src)
get_target_property(sources slabtide SOURCES)
list(FILTER sources EXCLUDE REGEX "/column_core\\.cpp$")
set(day_sources ${sources})
set(of_the_day "/src/((day/(geometry|windows|joints)|slab/(column|process|stress)|weather/(air|sky|site))/|day/pour/(bare_base|cell_times|exposure_table|pour_run)|day/uncertainty/(column_events|ensemble|sample|sampled_pour|window_moves)|day/crew/(schedule|exact_schedule|task[_.]|crew_load|hand_load)|job/geometry/(canonical|cells|clipping|compass|placing))")
list(FILTER sources EXCLUDE REGEX ${of_the_day})
list(FILTER day_sources INCLUDE REGEX ${of_the_day})
set_property(TARGET slabtide PROPERTY SOURCES ${sources})
set_property(TARGET slabtide_day PROPERTY SOURCES ${day_sources})
set_target_properties(slabtide_day PROPERTIES UNITY_BUILD_MODE GROUP)
foreach(part slabtide slabtide_day)
  target_precompile_headers(${part} PRIVATE ${slabtide_precompiled})
endforeach()
include(src/embedded.cmake)

set(zones ${CMAKE_CURRENT_BINARY_DIR}/zone_pack.cpp)
find_program(SLABTIDE_ZIC zic PATHS /usr/sbin NO_CMAKE_FIND_ROOT_PATH REQUIRED)
add_custom_command(OUTPUT ${zones}
  COMMAND ${CMAKE_COMMAND} -DZIC=${SLABTIDE_ZIC} -DSOURCE=/usr/share/zoneinfo/tzdata.zi
          -DFOLDER=${CMAKE_CURRENT_BINARY_DIR}/zones -DOUTPUT=${zones}
          -P ${PROJECT_SOURCE_DIR}/src/planner/pack_zones.cmake
  DEPENDS /usr/share/zoneinfo/tzdata.zi src/planner/pack_zones.cmake VERBATIM)

add_executable(slabtide_engine src/planner/exports.cpp src/planner/hwy_allocator.cpp ${zones})
target_include_directories(slabtide_engine PRIVATE include src)
target_include_directories(slabtide_engine SYSTEM PRIVATE ${headers})
target_compile_options(slabtide_engine PRIVATE -Oz)
target_link_libraries(slabtide_engine PRIVATE slabtide slabtide_day slabtide_core)
target_link_options(slabtide_engine PRIVATE -Oz -fwasm-exceptions --no-entry
  -sMODULARIZE=1 -sEXPORT_ES6=1 -sEXPORT_NAME=engine -sENVIRONMENT=worker,node -sFILESYSTEM=0
  -sALLOW_MEMORY_GROWTH=1 -sTOTAL_STACK=2097152 -sINCOMING_MODULE_JS_API=wasmBinary,instantiateWasm
  -sEXPORTED_FUNCTIONS=_slabtide_request,_slabtide_answer,_slabtide_answer_text
  -sEXPORTED_RUNTIME_METHODS=[])
set_target_properties(slabtide_engine PROPERTIES SUFFIX .mjs)
