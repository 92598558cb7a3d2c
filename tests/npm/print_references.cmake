# cmake -DNODE=... -DOUTPUT_DIR=... -DSCRIPTS="a;b" -P print_references.cmake
# Runs each script in this folder and stores its output in OUTPUT_DIR/<script>.csv.
file(MAKE_DIRECTORY ${OUTPUT_DIR})
foreach(script IN LISTS SCRIPTS)
  execute_process(COMMAND ${NODE} ${script}.mjs
    WORKING_DIRECTORY ${CMAKE_CURRENT_LIST_DIR}
    OUTPUT_FILE ${OUTPUT_DIR}/${script}.csv
    RESULT_VARIABLE failed)
  if(failed)
    message(FATAL_ERROR "${script}.mjs failed (${failed}): run npm ci in tests/npm")
  endif()
endforeach()
