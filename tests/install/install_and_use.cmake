# cmake -DBUILD= -DSOURCE= -DCOMPILER= -DSANITIZE= -P install_and_use.cmake
#
# Installs the build, then configures, builds and runs the program in outside/ against it.
set(work ${BUILD}/tests/install/work)
set(prefix ${work}/prefix)
file(REMOVE_RECURSE ${work})

function(run)
  execute_process(COMMAND ${ARGN} RESULT_VARIABLE status OUTPUT_VARIABLE output
                  ERROR_VARIABLE output)
  if(NOT status EQUAL 0)
    list(JOIN ARGN " " command)
    message(FATAL_ERROR "${command}\n${output}")
  endif()
  set(output "${output}" PARENT_SCOPE)
endfunction()

function(expect_file name)
  file(GLOB found ${prefix}/${name})
  if(NOT found)
    message(FATAL_ERROR "not installed: ${name}")
  endif()
endfunction()

run(${CMAKE_COMMAND} --install ${BUILD} --prefix ${prefix})
expect_file(bin/sweepwright)
expect_file(include/sweepwright/base/quantity.hpp)
expect_file(share/doc/sweepwright/LICENSE)

# What is installed must not need the place where it was built.
file(GLOB_RECURSE texts ${prefix}/*.cmake ${prefix}/*.hpp)
foreach(text ${texts})
  file(READ ${text} content)
  foreach(place ${BUILD} ${SOURCE})
    string(FIND "${content}" "${place}" at)
    if(NOT at EQUAL -1)
      message(FATAL_ERROR "${text} names ${place}")
    endif()
  endforeach()
endforeach()

set(flags)
if(SANITIZE)
  set(flags -DCMAKE_CXX_FLAGS=-fsanitize=${SANITIZE})
endif()
run(${CMAKE_COMMAND} -S ${SOURCE}/tests/install/outside -B ${work}/outside -G Ninja
    -DCMAKE_PREFIX_PATH=${prefix} -DCMAKE_CXX_COMPILER=${COMPILER} ${flags})
run(${CMAKE_COMMAND} --build ${work}/outside)
run(${work}/outside/outside)
# One degree of the WGS 84 equator: 6378.137 km x pi / 180 = 111.3195 km.
if(NOT output STREQUAL "111.32 km\n")
  message(FATAL_ERROR "the outside program wrote: ${output}")
endif()
