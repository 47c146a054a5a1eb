#!/bin/sh
# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT
#
# check.sh PROGRAM TEST_PROGRAM EXAMPLES WORK: the packs of all examples and of unlikely templates, and the samples that
# the tests write, hold to PDF/A-3a and PDF/UA-1 by the judgement of veraPDF, and to the syntax of PDF by that of qpdf. Why: an archive
# refuses what does not, whoever has it read aloud is lost in it, and no reader on a desk says so. The validator comes
# from the Java registry by version, is held against jars.sha256 and stays in WORK; without it the check fails.
set -eu
program=$1 tests=$2 examples=$3 work=$4
here=$(cd "$(dirname "$0")" && pwd)
jars=$work/jars
mkdir -p "$jars"

pinned() { (cd "$jars" && sha256sum --check --quiet "$here/jars.sha256") >"$work/jars.log" 2>&1; }

if ! pinned; then
    rm -f "$jars"/*.jar
    if ! mvn --quiet --batch-mode --strict-checksums --file "$here/pom.xml" dependency:copy-dependencies \
             -DincludeScope=runtime -DoutputDirectory="$jars"; then
        echo "The validator could not be fetched from the Java registry: nothing was validated."
        exit 1
    fi
    if ! pinned; then
        cat "$work/jars.log"
        echo "The validator is not the one of jars.sha256. After a change of pom.xml, renew that file with"
        echo "  (cd $jars && sha256sum *.jar) > $here/jars.sha256"
        exit 1
    fi
fi

rm -rf "$work/packs" "$work/samples"
mkdir -p "$work/packs" "$work/samples"
"$program" pack "$examples"/*.yaml -o "$work/packs"
LOOPFOLIO_SAMPLES="$work/samples" "$tests" '[.samples]'
python3 "$here/hostile.py" "$program" "$examples/.." "$work/hostile"

for file in "$work"/packs/*.pdf "$work"/samples/*.pdf "$work"/hostile/*.pdf; do
    said=$(qpdf --check "$file" 2>&1) && case $said in *WARNING*) false ;; esac || { echo "$said"; exit 1; }
done
exec java -cp "$jars/*" org.mozilla.javascript.tools.shell.Main "$here/validate.js" 3a,ua1 \
     "$work"/packs/*.pdf "$work"/samples/*.pdf "$work"/hostile/*.pdf
