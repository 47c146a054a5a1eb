# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT

# loopfolio_make_texts(FILE...): C++ that holds the default template (src/templates/build/make_texts.cpp).
# The target loopfolio_texts makes it; whoever includes texts/NAME.hpp links that target.
set(LOOPFOLIO_TEXTS_DIR "${CMAKE_CURRENT_BINARY_DIR}/made")

function(loopfolio_make_texts)
  # The readers of a firm's template read the default's files too. They are compiled a second time here, because the module
  # that they belong to holds what this program makes.
  set(readers language numbered pictures read_cautions read_pack wording_file)
  list(TRANSFORM readers PREPEND src/templates/)
  list(TRANSFORM readers APPEND .cpp)
  add_executable(make_texts src/templates/build/make_texts.cpp src/templates/build/plan_source.cpp ${readers})
  loopfolio_compile_options(make_texts)
  target_include_directories(make_texts PRIVATE include src)
  target_link_libraries(make_texts PRIVATE loopfolio_yaml loopfolio_reference png::png turbojpeg::turbojpeg)
  set_target_properties(make_texts PROPERTIES RUNTIME_OUTPUT_DIRECTORY "${CMAKE_CURRENT_BINARY_DIR}/made")

  set(made "${LOOPFOLIO_TEXTS_DIR}/default_wording.cpp" "${LOOPFOLIO_TEXTS_DIR}/default_plan.cpp"
           "${LOOPFOLIO_TEXTS_DIR}/default_digest.cpp")
  set(digest "${CMAKE_CURRENT_SOURCE_DIR}/.cmake/digest_of_files.cmake")
  foreach(file ${ARGN})
    if(file MATCHES "/wording/([a-z_]+)\\.yaml$")
      list(APPEND made "${LOOPFOLIO_TEXTS_DIR}/texts/${CMAKE_MATCH_1}.hpp")
    endif()
  endforeach()
  add_custom_command(OUTPUT "${LOOPFOLIO_TEXTS_DIR}/made.stamp" BYPRODUCTS ${made}
                     COMMAND make_texts "${LOOPFOLIO_TEXTS_DIR}" ${ARGN}
                     COMMAND "${CMAKE_COMMAND}" "-DOUT=${LOOPFOLIO_TEXTS_DIR}/default_digest.cpp"
                             "-DFOLDER=${CMAKE_CURRENT_SOURCE_DIR}/templates/report/default" "-DFILES=${ARGN}"
                             -P "${digest}"
                     COMMAND "${CMAKE_COMMAND}" -E touch "${LOOPFOLIO_TEXTS_DIR}/made.stamp"
                     DEPENDS make_texts "${digest}" ${ARGN}
                     COMMENT "Making the texts of the default template" VERBATIM)
  add_custom_target(made_texts DEPENDS "${LOOPFOLIO_TEXTS_DIR}/made.stamp")
  add_library(loopfolio_texts INTERFACE)
  target_include_directories(loopfolio_texts INTERFACE "${LOOPFOLIO_TEXTS_DIR}")
  add_dependencies(loopfolio_texts made_texts)
endfunction()

# The words themselves become part of one module.
function(loopfolio_add_made_texts target)
  set(sources "${LOOPFOLIO_TEXTS_DIR}/default_wording.cpp" "${LOOPFOLIO_TEXTS_DIR}/default_plan.cpp"
              "${LOOPFOLIO_TEXTS_DIR}/default_digest.cpp")
  set_source_files_properties(${sources} PROPERTIES GENERATED TRUE)
  target_sources(${target} PRIVATE ${sources})
  add_dependencies(${target} made_texts)
endfunction()
