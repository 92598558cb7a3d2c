# Used by find_package(slabtide). The library is static, so users of the library also need its own
# dependencies.
include(CMakeFindDependencyMacro)
find_dependency(Boost 1.74 COMPONENTS program_options date_time)
find_dependency(fmt)
find_dependency(tomlplusplus)
find_dependency(nlohmann_json)
find_dependency(Threads)
find_dependency(hwy)
include(${CMAKE_CURRENT_LIST_DIR}/slabtide-targets.cmake)
