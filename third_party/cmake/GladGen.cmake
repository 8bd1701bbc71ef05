# glad_library(<target> GL gl:core=3.3 EXTENSIONS a b c): an OpenGL loader generated at build time by Debian's
# python3-glad. /usr/bin/glad is called rather than "python3 -m glad", since another python3 may come first on
# PATH; --reproducible keeps it from trying to download the specification.
find_program(GLAD_EXECUTABLE NAMES glad PATHS /usr/bin REQUIRED)

function(glad_library target)
  cmake_parse_arguments(ARG "" "GL" "EXTENSIONS" ${ARGN})
  list(JOIN ARG_EXTENSIONS "," extensions)
  set(out "${CMAKE_CURRENT_BINARY_DIR}/${target}")
  add_custom_command(
    OUTPUT "${out}/src/gl.c" "${out}/include/glad/gl.h" "${out}/include/KHR/khrplatform.h"
    COMMAND "${GLAD_EXECUTABLE}" --api "${ARG_GL}" "--extensions=${extensions}" --out-path "${out}"
            --reproducible --quiet c
    COMMENT "Generating the ${ARG_GL} loader" VERBATIM)
  add_library(${target} STATIC "${out}/src/gl.c" "${out}/include/glad/gl.h")
  target_include_directories(${target} SYSTEM PUBLIC "${out}/include")
  target_link_libraries(${target} PRIVATE ${CMAKE_DL_LIBS})
  target_compile_options(${target} PRIVATE -w)
endfunction()
