#!/usr/bin/env bash
# SPDX-FileCopyrightText: 2026 the loopfolio authors
# SPDX-License-Identifier: MIT
#
# Runs both commands of README on a bare Debian: debootstrap makes a root that holds the required packages and nothing
# else, a clean clone of this checkout's HEAD is put into it, and the commands are run there as README gives them. It is
# run by hand, as root, on a Debian that has debootstrap and git; it takes as long as two builds and one run of the
# tests.
#
#   bare_debian.sh RELEASE [ROOT]     RELEASE: bookworm or trixie
#
# Without ROOT, the root is a temporary folder that is removed at the end. A ROOT that is named is kept, and is used
# again where it is there already: its clone is made anew, and the packages that it has are not fetched again.
#
# Everything is mounted in a mount namespace of its own, which ends with its last process. So no mount is left behind,
# whatever happens to this script.
set -euo pipefail
usage() { sed -n '/^#   bare_debian/s/^# *//p' "$0" >&2; exit 2; }
[ $# -eq 1 ] || [ $# -eq 2 ] || usage
release=$1
case $release in bookworm|trixie) ;; *) usage ;; esac
[ "$(id -u)" = 0 ] || { echo "a root can only be made by root" >&2; exit 1; }

here=$(cd "$(dirname "$0")" && pwd)
checkout=$(git -C "$here" rev-parse --show-toplevel)

# Outside of the namespace: makes the folder, waits, and removes it.
if [ -z "${LOOPFOLIO_ROOT:-}" ]; then
    if [ $# -eq 2 ]; then
        keep=yes
        mkdir -p "$2"
        root=$(cd "$2" && pwd)
    else
        keep=no
        root=$(mktemp -d "${TMPDIR:-/tmp}/loopfolio.XXXXXX")
    fi
    chmod 755 "$root"
    LOOPFOLIO_ROOT=$root unshare --mount --pid --fork --kill-child --propagation private "$0" "$@" &
    child=$!
    leave() {
        # unshare heeds no gentler signal, and takes the whole namespace with it.
        kill -KILL "$child" 2>/dev/null && wait "$child" 2>/dev/null || true
        # The first try may meet a process that is still ending.
        [ "$keep" = yes ] || rm -rf --one-file-system "$root" 2>/dev/null || rm -rf --one-file-system "$root"
    }
    trap leave EXIT
    trap 'exit 130' INT
    trap 'exit 143' TERM
    wait "$child"
    exit
fi
root=$LOOPFOLIO_ROOT

# The packages come from where this machine's own come from.
mirror=$(apt-get indextargets --format '$(REPO_URI)' 'Identifier: Packages' 'Origin: Debian' 'Label: Debian' |
         sort -u | sed -n 1p)
[ -n "$mirror" ] || { echo "apt knows no Debian archive here: run apt-get update first" >&2; exit 1; }

# So do the ways to reach it: apt's own settings for fetching, and the proxies of the environment.
fetching=$(apt-config dump | grep -E '^Acquire::(http|https|Retries|ForceIPv[46]|Check-[A-Za-z-]*)(::[^ ]*)? ' || true)
proxies=()
for name in http_proxy https_proxy no_proxy HTTP_PROXY HTTPS_PROXY NO_PROXY; do
    if [ -n "${!name:-}" ]; then proxies+=("$name=${!name}"); fi
done
in_root() {   # in_root COMMAND...: with nothing of this environment but the proxies
    env -i HOME=/root PATH=/usr/local/sbin:/usr/local/bin:/usr/sbin:/usr/bin:/sbin:/bin "${proxies[@]}" \
        chroot "$root" "$@"
}

if [ ! -e "$root/etc/debian_version" ]; then
    eval "$(apt-config shell proxy Acquire::http::Proxy)"
    [ -z "${proxy:-}" ] || export http_proxy="$proxy"
    debootstrap --variant=minbase "$release" "$root" "$mirror"
fi
[ "$(in_root sh -c '. /etc/os-release; echo "$VERSION_CODENAME"')" = "$release" ] ||
    { echo "$root holds another release than $release" >&2; exit 1; }
printf '%s\n' "$fetching" > "$root/etc/apt/apt.conf.d/99fetching"

# Names, and the certificates and Maven settings without which this machine would not reach the Java registry.
cp --dereference /etc/resolv.conf /etc/hosts "$root/etc/"
certificates=/usr/local/share/ca-certificates
if [ -d "$certificates" ]; then
    mkdir -p "$root$certificates"
    cp -r --dereference "$certificates/." "$root$certificates/"
fi
if [ -f ~/.m2/settings.xml ]; then mkdir -p "$root/root/.m2"; cp ~/.m2/settings.xml "$root/root/.m2/"; fi

mount -t proc proc "$root/proc"
mount --rbind /dev "$root/dev"

rm -rf "$root/root/loopfolio"
git clone --quiet "file://$checkout" "$root/root/loopfolio"
echo "== loopfolio $(git -C "$checkout" rev-parse --short HEAD) on Debian $(cat "$root/etc/debian_version") ($release)"
[ -z "$(git -C "$checkout" status --porcelain)" ] || echo "== what is not committed is not part of this"

run_readme() {   # run_readme NAME
    local command
    command=$("$here/readme_command.sh" "$1" "$root/root/loopfolio/README.md")
    echo "== README's $1 command"
    in_root bash -euo pipefail -c "cd /root/loopfolio && $command"
}
run_readme build
in_root sh -c 'cd /root/loopfolio/build/packs && sha256sum HEL-0147-B.pdf HEL-0147-B.json'
run_readme test
in_root sh -c 'c++ --version | head -n 1'
echo "== both commands hold on $release"
