# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT

# The flags that all our own code is compiled with.
function(loopfolio_compile_options target)
  # No contraction: the same source gives the same digits on every machine.
  target_compile_options(${target} PRIVATE -Wall -Wextra -Wpedantic -Wconversion -Wshadow -Wnon-virtual-dtor
                                           -ffp-contract=off)
  # An enumerator without its row in a switch is an error in every build: what would be printed for it is nothing.
  target_compile_options(${target} PRIVATE -Werror=switch)
  if(CMAKE_CXX_COMPILER_ID STREQUAL "GNU" AND CMAKE_CXX_COMPILER_VERSION VERSION_LESS 13)
    # False alarms on std::string's operator+ (GCC bug 105329) and on std::variant (105562), mended in GCC 13.
    target_compile_options(${target} PRIVATE -Wno-restrict -Wno-maybe-uninitialized)
  endif()
  if(LOOPFOLIO_WERROR)
    target_compile_options(${target} PRIVATE -Werror)
  endif()
  if(LOOPFOLIO_SANITIZE)
    target_compile_options(${target} PUBLIC -fsanitize=address,undefined -fno-sanitize-recover=all
                                            -fno-omit-frame-pointer)
    target_link_options(${target} PUBLIC -fsanitize=address,undefined)
  endif()
endfunction()

# loopfolio_module(NAME DEPENDS module... LIBRARIES target...): a static library of src/NAME, with headers
# in include/loopfolio/NAME. What it links stays private to it; the line is kept for tests/checks/links.sh, which holds
# the module to it.
function(loopfolio_module name)
  cmake_parse_arguments(MODULE "" "" "DEPENDS;LIBRARIES" ${ARGN})
  file(GLOB_RECURSE sources CONFIGURE_DEPENDS "${CMAKE_CURRENT_SOURCE_DIR}/src/${name}/*.cpp")
  list(FILTER sources EXCLUDE REGEX "/build/[^/]*\\.cpp$")   # programs that run while loopfolio is built
  set(seen ${MODULE_DEPENDS})
  list(TRANSFORM MODULE_DEPENDS PREPEND loopfolio_)
  if(sources)
    add_library(loopfolio_${name} STATIC ${sources})
    loopfolio_compile_options(loopfolio_${name})
    target_include_directories(loopfolio_${name} PUBLIC "${CMAKE_CURRENT_SOURCE_DIR}/include"
                                                 PRIVATE "${CMAKE_CURRENT_SOURCE_DIR}/src")
    target_link_libraries(loopfolio_${name} PRIVATE ${MODULE_DEPENDS} ${MODULE_LIBRARIES})
    list(JOIN seen " " seen)
    set_property(GLOBAL APPEND_STRING PROPERTY LOOPFOLIO_MODULES "${name} $<TARGET_FILE:loopfolio_${name}> ${seen}\n")
  else()
    add_library(loopfolio_${name} INTERFACE)
    target_include_directories(loopfolio_${name} INTERFACE "${CMAKE_CURRENT_SOURCE_DIR}/include")
    target_link_libraries(loopfolio_${name} INTERFACE ${MODULE_DEPENDS} ${MODULE_LIBRARIES})
  endif()
endfunction()
