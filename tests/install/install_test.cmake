# cmake -DBUILD_DIR= -DSOURCE_DIR= -DWORK_DIR= -DCXX= -DFLAGS= -DGENERATOR=
#       -DVERSION= -DPLANNER= -P install_test.cmake
# Installs into an empty folder, compares the files with files.txt, and builds and runs two small
# projects that use the installed library: a consumer, and the examples that come with it. With
# SLABTIDE_UPDATE_GOLDEN set, files.txt and the output of the examples are rewritten.

# Runs a command; shows its output only if it fails.
function(must_work)
  execute_process(COMMAND ${ARGN} RESULT_VARIABLE code OUTPUT_VARIABLE text ERROR_VARIABLE text)
  if(NOT code EQUAL 0)
    message(FATAL_ERROR "${ARGN}\nended with ${code}:\n${text}")
  endif()
  set(output "${text}" PARENT_SCOPE)
endfunction()

set(prefix ${WORK_DIR}/prefix)
set(list ${SOURCE_DIR}/tests/install/files.txt)
file(REMOVE_RECURSE ${WORK_DIR})
must_work(${CMAKE_COMMAND} --install ${BUILD_DIR} --prefix ${prefix})

# The name of the file with settings for the build type depends on the build type.
file(GLOB_RECURSE files RELATIVE ${prefix} ${prefix}/*)
list(TRANSFORM files REPLACE "slabtide-targets-[a-z]+\\.cmake$" "slabtide-targets-BUILD.cmake")
list(SORT files)
list(JOIN files "\n" found)
string(APPEND found "\n")
if(DEFINED ENV{SLABTIDE_UPDATE_GOLDEN})
  string(REGEX REPLACE "share/slabtide/planner[^\n]*\n" "" without_planner "${found}")
  file(WRITE ${list} "${without_planner}")
endif()
file(READ ${list} expected)
# The planner is installed where it has been built; files.txt is without it.
if(PLANNER)
  foreach(name planner.html planner/icon-192.png planner/icon-512.png planner/index.html
          planner/manifest.webmanifest planner/sw.js)
    string(REPLACE "share/slabtide/practice.toml\n" "share/slabtide/${name}\nshare/slabtide/practice.toml\n" expected "${expected}")
  endforeach()
endif()
if(NOT found STREQUAL expected)
  file(WRITE ${WORK_DIR}/found.txt "${found}")
  execute_process(COMMAND diff -u --label expected --label installed ${list} ${WORK_DIR}/found.txt)
  message(FATAL_ERROR "What is installed is not what tests/install/files.txt says. Where that is "
                      "meant, run tools/update-golden.")
endif()

# Configures and builds the project in `source` with the installed library, in the folder `name`.
function(build_project name source)
  must_work(${CMAKE_COMMAND} -S ${source} -B ${WORK_DIR}/${name} -G "${GENERATOR}"
            -DCMAKE_PREFIX_PATH=${prefix} -DCMAKE_CXX_COMPILER=${CXX}
            "-DCMAKE_CXX_FLAGS=${FLAGS}")
  must_work(${CMAKE_COMMAND} --build ${WORK_DIR}/${name})
endfunction()

build_project(consumer ${SOURCE_DIR}/tests/install/consumer)
must_work(${WORK_DIR}/consumer/consumer)
if(NOT output STREQUAL "the starting job has 2 zones\nslabtide ${VERSION}\n")
  message(FATAL_ERROR "The consumer printed: ${output}")
endif()

# The examples are built from the installed copies; their expected output is in example_out.
build_project(example ${prefix}/share/doc/slabtide/example)
function(example_prints name)
  must_work(${WORK_DIR}/example/${name} ${ARGN})
  set(printed ${SOURCE_DIR}/tests/install/example_out/${name}.txt)
  if(DEFINED ENV{SLABTIDE_UPDATE_GOLDEN})
    file(WRITE ${printed} "${output}")
  endif()
  file(READ ${printed} expected_output)
  if(NOT output STREQUAL expected_output)
    message(FATAL_ERROR "${name} printed:\n${output}\nexpected:\n${expected_output}")
  endif()
endfunction()
example_prints(plan_pour)
example_prints(best_start)
example_prints(how_sure ${prefix}/share/slabtide/demo/spring.toml)

# The Debian package has the same files, and depends on what the program reads.
file(REMOVE_RECURSE ${WORK_DIR}/package)
must_work(cpack --config ${BUILD_DIR}/CPackConfig.cmake -B ${WORK_DIR}/package)
file(GLOB package ${WORK_DIR}/package/*.deb)
must_work(dpkg-deb --extract ${package} ${WORK_DIR}/package/files)
file(GLOB_RECURSE packed RELATIVE ${WORK_DIR}/package/files/usr ${WORK_DIR}/package/files/usr/*)
list(TRANSFORM packed REPLACE "slabtide-targets-[a-z]+\\.cmake$" "slabtide-targets-BUILD.cmake")
list(SORT packed)
list(JOIN packed "\n" packed)
if(NOT "${packed}\n" STREQUAL expected)
  message(FATAL_ERROR "The package holds other files than are installed:\n${packed}")
endif()
must_work(dpkg-deb --field ${package} Depends)
foreach(wanted tzdata ca-certificates libcurl4 libfmt9 libboost-program-options libhwy1)
  if(NOT output MATCHES ${wanted})
    message(FATAL_ERROR "The package does not ask for ${wanted}: ${output}")
  endif()
endforeach()

# The installed program plans the installed demo job outside the project's folder.
must_work(${CMAKE_COMMAND} -E chdir ${prefix}/share/slabtide/demo
          ${prefix}/bin/slabtide plan spring.toml)
if(NOT output MATCHES "Tightest ")
  message(FATAL_ERROR "The installed program printed: ${output}")
endif()

# Where the planner is installed, the program gives it out; where it is not, it says so.
execute_process(COMMAND ${prefix}/bin/slabtide planner --write page.html WORKING_DIRECTORY ${WORK_DIR}
                RESULT_VARIABLE code OUTPUT_VARIABLE output ERROR_VARIABLE fault)
if(PLANNER)
  must_work(${CMAKE_COMMAND} -E compare_files ${WORK_DIR}/page.html ${prefix}/share/slabtide/planner.html)
elseif(NOT code EQUAL 1 OR NOT fault MATCHES "the planner's page is not here")
  message(FATAL_ERROR "Without a planner the program said: ${output}${fault}")
endif()
