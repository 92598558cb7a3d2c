# Makes each data file built into the program available as a function: data/practice.toml becomes
# `std::string_view slabtide::embedded::practice_toml()`.
set(embedded_files
  practice.toml
  starter.toml
  page/agenda.html
  page/band.html
  page/cautions.html
  page/check_back.html
  page/compare.html
  page/crew.html
  page/document.html
  page/figure.html
  page/figures.css
  page/figures.js
  page/headline.html
  page/order.html
  page/outlook.html
  page/palette.css
  page/patterns.svg
  page/plan.html
  page/sheet.css
  page/sheet.js
  page/sources.html
  page/time.html
  page/zones.html)
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
