# Makes each data file built into the program available as a function: data/practice.toml becomes
# `std::string_view slabtide::embedded::practice_toml()`.
set(embedded_files
  practice.toml
  starter.toml
  starter_short.toml
  time_zones/names.txt
  time_zones/tree.txt)
include(${CMAKE_CURRENT_LIST_DIR}/report/markup/embedded_pages.cmake)
set(embedded_dir ${CMAKE_CURRENT_BINARY_DIR}/embedded)
foreach(file IN LISTS embedded_files)
  string(MAKE_C_IDENTIFIER ${file} name)
  set(out ${embedded_dir}/${name}.cpp)
  add_custom_command(OUTPUT ${out}
    COMMAND ${CMAKE_COMMAND} -DINPUT=${PROJECT_SOURCE_DIR}/data/${file} -DOUTPUT=${out} -DNAME=${name}
            -P ${PROJECT_SOURCE_DIR}/src/embed.cmake
    DEPENDS ${PROJECT_SOURCE_DIR}/data/${file} ${PROJECT_SOURCE_DIR}/src/embed.cmake
    VERBATIM)
  target_sources(slabtide PRIVATE ${out})
endforeach()
