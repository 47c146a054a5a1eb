#!/bin/sh
# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT
#
# A module includes only the modules that it may see. Why: a calculation that reaches into layout, or a layout that
# reaches into a calculation, is found here and not a year later. docs/architecture.md draws the same table.
set -eu
cd "$1"

may_see() {
    case "$1" in
        base)      echo "base" ;;
        reference) echo "base reference" ;;
        yaml)      echo "base yaml" ;;
        templates) echo "base yaml reference texts templates" ;;
        job)       echo "base reference yaml job" ;;
        physics)   echo "base physics" ;;
        network)   echo "base physics network" ;;
        design)    echo "base texts job reference physics network design" ;;
        study)     echo "base job reference physics design study" ;;
        record)    echo "base yaml templates job reference design study record" ;;
        report)    echo "base templates texts job reference design study report" ;;
        layout)    echo "base report layout" ;;
        pdf)       echo "base layout pdf" ;;
        app)       echo "base reference templates texts job physics network design study record report layout pdf app" ;;
        *)         echo "" ;;
    esac
}

# `texts` is what the build makes of the default template: the keys of its texts, which design and report ask for. Their
# words are in `templates`, and design does not see those.
# The one header that layout may take from report: the document types.
bad=0
for module in base reference yaml templates job physics network design study record report layout pdf app; do
    allowed=" $(may_see "$module") "
    for file in $(find "include/loopfolio/$module" "src/$module" -name '*.hpp' -o -name '*.cpp' | sort); do
        for seen in $(sed -n -e 's|^#include "loopfolio/\([a-z]*\)/.*|\1|p' -e 's|^#include "\([a-z]*\)/[a-z_/]*\.hpp".*|\1|p' "$file" \
                      | grep -v '^loopfolio$' | sort -u); do
            case "$allowed" in
                *" $seen "*) ;;
                *) echo "$file: module '$module' must not see module '$seen'"; bad=1 ;;
            esac
        done
    done
done
if grep -rn '#include "loopfolio/report/' include/loopfolio/layout src/layout | grep -v 'report/document.hpp'; then
    echo "layout sees the report's document types only"; bad=1
fi

# One module alone sees each of these libraries, so that it can be changed in one place.
only() {
    if grep -rlE "#include <$1" include src | grep -v "^$2" ; then
        echo "only $2 may include <$1...>"; bad=1
    fi
}
only 'hpdf' src/pdf/
only 'hb' src/pdf/
only 'lcms2' src/pdf/
only 'libdeflate' src/pdf/
only 'yaml-cpp' src/yaml/
only 'nlohmann' src/record/
only 'png' src/templates/
only 'turbojpeg' src/templates/
only 'nettle/sha' src/record/
only 'nettle/md5' src/pdf/
only 'utf8proc' src/base/
only 'CLI/' src/app/
only 'Eigen' src/network/
exit $bad
