# Compiler flags for our own code. Nothing here reaches a program that uses the library.
option(SWEEPWRIGHT_FUZZ "Build the fuzz targets with libFuzzer (needs clang)" OFF)
set(sanitizers ${SWEEPWRIGHT_SANITIZE})
if(SWEEPWRIGHT_FUZZ)
  set(sanitizers fuzzer-no-link,address,undefined)
endif()

add_library(sweepwright_flags INTERFACE)
# No fused multiply-add: the same digits on every machine.
target_compile_options(sweepwright_flags INTERFACE
  -ffp-contract=off -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wsign-conversion
  -Wnon-virtual-dtor -Woverloaded-virtual -Wold-style-cast)
if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU")
  # False alarms of g++ 12: overlapping copies in its own std::string (GCC bug 105329), and variables
  # of Boost.Geometry's headers when they are inlined.
  target_compile_options(sweepwright_flags INTERFACE -Wno-restrict -Wno-maybe-uninitialized)
endif()
if(SWEEPWRIGHT_WERROR)
  target_compile_options(sweepwright_flags INTERFACE -Werror)
endif()
if(sanitizers)
  target_compile_options(sweepwright_flags INTERFACE
    -fsanitize=${sanitizers} -fno-omit-frame-pointer -fno-sanitize-recover=all)
  target_link_options(sweepwright_flags INTERFACE -fsanitize=${sanitizers})
endif()
