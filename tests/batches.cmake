# Compiling a test takes time for what it instantiates rather than for what it says, and most tests of
# a folder instantiate the same: compiled some at a time they take a third of it.

# Writes a file that includes `ARGN`: first all headers, then each file in a namespace of its own
# within linewright's, so that local names of several files do not meet.
function(write_batch batch)
  set(headers)
  set(bodies "")
  foreach(source IN LISTS ARGN)
    file(STRINGS ${source} includes REGEX "^#include ")
    list(APPEND headers ${includes})
    get_filename_component(own ${source} NAME_WE)
    string(APPEND bodies "\nnamespace linewright::${own} {\nusing namespace linewright;\n}\n"
                         "#define linewright linewright::${own}\n"
                         "#include \"${source}\"\n"
                         "#undef linewright\n")
  endforeach()
  list(REMOVE_DUPLICATES headers)
  list(JOIN headers "\n" headers)
  file(CONFIGURE OUTPUT ${batch} CONTENT "${headers}\n${bodies}" @ONLY)
endfunction()

# Sets `result` to files that hold the tests in `ARGN`, about twenty in each. A file that defines macros,
# which would reach into others, stays on its own.
function(batch_tests name result)
  set_property(DIRECTORY APPEND PROPERTY CMAKE_CONFIGURE_DEPENDS ${ARGN})
  set(alone)
  set(together)
  foreach(source IN LISTS ARGN)
    file(STRINGS ${source} macros REGEX "^#define ")
    if(macros)
      list(APPEND alone ${source})
    else()
      list(APPEND together ${source})
    endif()
  endforeach()

  list(LENGTH together count)
  math(EXPR batches "(${count} + 21) / 22")
  set(number 0)
  while(number LESS batches)
    math(EXPR first "${count} * ${number} / ${batches}")
    math(EXPR number "${number} + 1")
    math(EXPR size "${count} * ${number} / ${batches} - ${first}")
    list(SUBLIST together ${first} ${size} sources)
    set(batch ${CMAKE_CURRENT_BINARY_DIR}/batches/${name}_${number}.cpp)
    write_batch(${batch} ${sources})
    list(APPEND alone ${batch})
  endwhile()
  set(${result} ${alone} PARENT_SCOPE)
endfunction()
