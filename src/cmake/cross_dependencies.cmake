# The libraries under the names that find_package gives them, out of the folder that
# `src/cmake/dependencies` fills: for builds whose system is not the one that they are installed for.
set(cross_headers ${LINEWRIGHT_DEPENDENCIES}/include)

function(header_library name)
  string(REPLACE "::" "_" target ${name})
  add_library(${target} INTERFACE)
  target_include_directories(${target} SYSTEM INTERFACE ${cross_headers})
  target_compile_definitions(${target} INTERFACE ${ARGN})
  if(NOT TARGET ${name})
    add_library(${name} ALIAS ${target})
  endif()
endfunction()

header_library(fmt::fmt FMT_HEADER_ONLY)
header_library(CLI11::CLI11)
header_library(nlohmann_json::nlohmann_json)
header_library(Boost::headers)
header_library(hwy::hwy HWY_COMPILE_ONLY_STATIC)

file(GLOB yaml_sources ${LINEWRIGHT_DEPENDENCIES}/yaml-cpp/src/*.cpp)
add_library(yaml-cpp STATIC ${yaml_sources})
target_include_directories(yaml-cpp SYSTEM PUBLIC ${LINEWRIGHT_DEPENDENCIES}/yaml-cpp/include)
set_target_properties(yaml-cpp PROPERTIES UNITY_BUILD ON)
