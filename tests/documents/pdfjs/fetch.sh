#!/bin/sh
# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT
#
# fetch.sh WORK CMAKE: pdf.mjs and pdf.worker.mjs of pdf.js in WORK. They come from the Java registry by version and
# are held against jar.sha256; without them the check fails.
set -eu
work=$1 cmake=$2
here=$(cd "$(dirname "$0")" && pwd)
mkdir -p "$work/jar"

pinned() { (cd "$work/jar" && sha256sum --check --quiet "$here/jar.sha256") >"$work/jar.log" 2>&1; }

if ! pinned; then
    rm -f "$work"/jar/*.jar
    if ! mvn --quiet --batch-mode --strict-checksums --file "$here/pom.xml" dependency:copy-dependencies \
             -DoutputDirectory="$work/jar"; then
        echo "pdf.js could not be fetched from the Java registry: no pack is read with it."
        exit 1
    fi
    if ! pinned; then
        cat "$work/jar.log"
        echo "pdf.js is not the one of jar.sha256. After a change of pom.xml, renew that file with"
        echo "  (cd $work/jar && sha256sum *.jar) > $here/jar.sha256"
        exit 1
    fi
fi
rm -rf "$work/META-INF"
(cd "$work" && "$cmake" -E tar xf jar/pdfjs-dist-*.jar)
mv "$work"/META-INF/resources/webjars/pdfjs-dist/*/legacy/build/pdf.mjs \
   "$work"/META-INF/resources/webjars/pdfjs-dist/*/legacy/build/pdf.worker.mjs "$work"
rm -rf "$work/META-INF"
