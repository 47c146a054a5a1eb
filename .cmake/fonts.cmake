# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT

# The faces that the pack is set in become part of the program, so that its output depends on nothing
# that is installed at run time. Their licences (SIL Open Font License; Bitstream Vera) allow embedding.
function(loopfolio_find_font variable file package)
  find_file(${variable} ${file}
            PATHS /usr/share/fonts /usr/local/share/fonts
            PATH_SUFFIXES truetype/lato truetype/dejavu TTF lato lato-fonts dejavu dejavu-sans-fonts
            DOC "The font file ${file}")
  if(NOT ${variable})
    message(FATAL_ERROR "The font file ${file} was not found. Install the Debian package ${package}, "
                        "or name the file: -D${variable}=/path/to/${file}")
  endif()
endfunction()

loopfolio_find_font(LOOPFOLIO_FONT_REGULAR Lato-Regular.ttf fonts-lato)
loopfolio_find_font(LOOPFOLIO_FONT_BOLD Lato-Bold.ttf fonts-lato)
loopfolio_find_font(LOOPFOLIO_FONT_ITALIC Lato-Italic.ttf fonts-lato)
loopfolio_find_font(LOOPFOLIO_FONT_FALLBACK DejaVuSans.ttf fonts-dejavu-core)
loopfolio_find_font(LOOPFOLIO_FONT_FALLBACK_BOLD DejaVuSans-Bold.ttf fonts-dejavu-core)

# loopfolio_embed_fonts(TARGET): one assembler file that takes the bytes in as they are. They land in
# read-only memory that is paged in on use.
function(loopfolio_embed_fonts target)
  set(source "${CMAKE_CURRENT_BINARY_DIR}/fonts.S")
  set(text ".section .rodata\n")
  set(files)
  foreach(name REGULAR BOLD ITALIC FALLBACK FALLBACK_BOLD)
    string(TOLOWER loopfolio_font_${name} symbol)
    string(APPEND text ".balign 16\n.global ${symbol}\n${symbol}:\n.incbin \"${LOOPFOLIO_FONT_${name}}\"\n"
                       ".global ${symbol}_end\n${symbol}_end:\n")
    list(APPEND files "${LOOPFOLIO_FONT_${name}}")
  endforeach()
  string(APPEND text ".section .note.GNU-stack,\"\",%progbits\n")
  file(CONFIGURE OUTPUT "${source}" CONTENT "${text}" @ONLY)
  set_source_files_properties("${source}" PROPERTIES OBJECT_DEPENDS "${files}")
  target_sources(${target} PRIVATE "${source}")
endfunction()
