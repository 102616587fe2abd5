# Compiler flags for our own code. Nothing here reaches a program that uses the library.
add_library(sweepwright_flags INTERFACE)
# No fused multiply-add: the same digits on every machine.
target_compile_options(sweepwright_flags INTERFACE
  -ffp-contract=off -Wall -Wextra -Wpedantic -Wshadow -Wconversion -Wsign-conversion
  -Wnon-virtual-dtor -Woverloaded-virtual -Wold-style-cast)
if(SWEEPWRIGHT_WERROR)
  target_compile_options(sweepwright_flags INTERFACE -Werror)
endif()
if(SWEEPWRIGHT_SANITIZE)
  target_compile_options(sweepwright_flags INTERFACE
    -fsanitize=${SWEEPWRIGHT_SANITIZE} -fno-omit-frame-pointer -fno-sanitize-recover=all)
  target_link_options(sweepwright_flags INTERFACE -fsanitize=${SWEEPWRIGHT_SANITIZE})
endif()
