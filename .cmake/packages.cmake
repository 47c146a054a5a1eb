# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT

# Every library from outside, under one target name each. docs/libraries.md says why each is here.
find_package(fmt REQUIRED)
find_package(yaml-cpp REQUIRED)
find_package(nlohmann_json REQUIRED)
find_package(CLI11 REQUIRED)
find_package(Eigen3 3.3 REQUIRED NO_MODULE)

if(NOT TARGET yaml-cpp::yaml-cpp)   # the name before yaml-cpp 0.8
  add_library(yaml-cpp::yaml-cpp INTERFACE IMPORTED)
  target_link_libraries(yaml-cpp::yaml-cpp INTERFACE yaml-cpp)
endif()

# loopfolio_find(TARGET HEADER header LIBRARY library): a library that ships no CMake package.
function(loopfolio_find target)
  cmake_parse_arguments(FIND "" "HEADER;LIBRARY;SUFFIX" "" ${ARGN})
  string(MAKE_C_IDENTIFIER ${target} id)
  find_path(${id}_INCLUDE ${FIND_HEADER} PATH_SUFFIXES ${FIND_SUFFIX} REQUIRED)
  add_library(${target} INTERFACE IMPORTED GLOBAL)
  target_include_directories(${target} SYSTEM INTERFACE ${${id}_INCLUDE})
  if(FIND_LIBRARY)
    find_library(${id}_LIBRARY ${FIND_LIBRARY} REQUIRED)
    target_link_libraries(${target} INTERFACE ${${id}_LIBRARY})
  endif()
endfunction()

loopfolio_find(date::date HEADER date/date.h)
loopfolio_find(hpdf::hpdf HEADER hpdf.h LIBRARY hpdf)
loopfolio_find(deflate::deflate HEADER libdeflate.h LIBRARY deflate)
loopfolio_find(lcms2::lcms2 HEADER lcms2.h LIBRARY lcms2)
loopfolio_find(png::png HEADER png.h LIBRARY png)
loopfolio_find(turbojpeg::turbojpeg HEADER turbojpeg.h LIBRARY turbojpeg)
loopfolio_find(nettle::nettle HEADER nettle/sha2.h LIBRARY nettle)
loopfolio_find(utf8proc::utf8proc HEADER utf8proc.h LIBRARY utf8proc)
loopfolio_find(harfbuzz::harfbuzz HEADER hb.h LIBRARY harfbuzz SUFFIX harfbuzz)
loopfolio_find(harfbuzz::subset HEADER hb-subset.h LIBRARY harfbuzz-subset SUFFIX harfbuzz)
target_link_libraries(harfbuzz::subset INTERFACE harfbuzz::harfbuzz)
