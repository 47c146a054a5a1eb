# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT

# cmake -DOUT=FILE -DFOLDER=FOLDER -DFILES=A;B -P digest_of_files.cmake: C++ that holds the SHA-256 over the files of the
# default template: of a line `DIGEST  NAME` for each, in the order of their names seen from FOLDER, as sha256sum prints
# them. CMake computes it, so that the module of the templates needs no library for it.
set(lines "")
set(names "")
foreach(file ${FILES})
  file(RELATIVE_PATH name "${FOLDER}" "${file}")
  list(APPEND names "${name}")
endforeach()
list(SORT names)
foreach(name ${names})
  file(SHA256 "${FOLDER}/${name}" digest)
  string(APPEND lines "${digest}  ${name}\n")
endforeach()
string(SHA256 whole "${lines}")
set(source "// SPDX-FileCopyrightText: 2026 the loopfolio authors
// SPDX-License-Identifier: MIT
#include \"loopfolio/templates/template.hpp\"

namespace loopfolio::templates {

std::string_view default_template_sha256() { return \"${whole}\"; }

}  // namespace loopfolio::templates
")
set(present "")
if(EXISTS "${OUT}")
  file(READ "${OUT}" present)
endif()
if(NOT present STREQUAL source)
  file(WRITE "${OUT}" "${source}")
endif()
