#!/usr/bin/env bash
# Tries the set-up on bare Debian systems in a chroot, by hand and as root: tests/fresh/fresh.sh [CASE...]
#
# Without names it runs the quick cases; `package` and `test` run the README's two commands whole, `browser` what
# continuous integration installs. Mirror, certificates and pip's settings are those of this machine.
set -euo pipefail
cd "$(dirname "$0")/../.."

QUICK=(bare no-subset complete sudo no-sudo no-sudo-venv no-apt no-ensurepip interrupted half-made moved lost)
CASES=("${@:-${QUICK[@]}}")
FOLDER="/srv/the ship"
COPY="$FOLDER/tenderwright"
TYPESETTER=(libpango-1.0-0 libpangoft2-1.0-0)

[ "$(id -u)" -eq 0 ] || { echo "fresh: a chroot is made by root alone" >&2; exit 2; }
command -v debootstrap >/dev/null || { echo "fresh: debootstrap is missing: apt-get install debootstrap" >&2; exit 2; }
[ -z "$(git status --porcelain)" ] || echo "fresh: what is not committed is not tried" >&2

WORK=$(mktemp -d)
ROOT=""
leave() {
    [ -z "$ROOT" ] || mount_points | tac | xargs -r -d '\n' umount
    rm -rf --one-file-system "$WORK"
}
trap leave EXIT
mount_points() { sed -n "s#^[^ ]* \\($WORK/[^ ]*\\) .*#\\1#p" /proc/mounts; }

# The base system, with what the README asks for.
read -r mirror suite < <(apt-get indextargets --format '$(ORIGIN) $(REPO_URI) $(CODENAME)' 'Created-By: Packages' |
    sed -n 's/^Debian \([^ ]* [^ -]*\)$/\1/p') || true
[ -n "${suite:-}" ] || { echo "fresh: apt knows no archive of Debian here; run apt-get update first" >&2; exit 2; }
echo "fresh: making a bare $suite"
mkdir "$WORK/base" "$WORK/pip-cache"
debootstrap --variant=minbase --include=python3,git,make,ca-certificates "$suite" "$WORK/base" "$mirror" >"$WORK/log" 2>&1 ||
    { tail -20 "$WORK/log" >&2; exit 1; }
apt-config dump | grep -E '^Acquire::(https?::|Check-|Retries)' >"$WORK/base/etc/apt/apt.conf.d/90machine" || true
cp /etc/ssl/certs/ca-certificates.crt "$WORK/base/etc/ssl/certs/ca-certificates.crt"
cp /etc/resolv.conf /etc/hosts "$WORK/base/etc/"
python3 -m pip config list | python3 tests/fresh/pip_settings.py "$WORK/base/etc/pip.conf" >"$WORK/pip-paths"
chroot "$WORK/base" useradd --create-home --home-dir /srv/visitor visitor
mkdir "$WORK/base$FOLDER"
git clone --quiet --no-hardlinks . "$WORK/base$COPY"

# fresh_root: a copy of the base system, at ROOT.
fresh_root() {
    if [ -n "$ROOT" ]; then
        mount_points | tac | xargs -r -d '\n' umount
        rm -rf --one-file-system "$ROOT"
    fi
    ROOT="$WORK/root"
    cp -a "$WORK/base" "$ROOT"
    mount -t proc proc "$ROOT/proc"
    mount --bind /dev "$ROOT/dev"
    mount --bind /dev/pts "$ROOT/dev/pts" # a terminal for those tests that need one
    mkdir -p "$ROOT/var/cache/pip"
    mount --bind "$WORK/pip-cache" "$ROOT/var/cache/pip"
    while read -r path; do
        if [ -d "$path" ]; then mkdir -p "$ROOT$path"; else mkdir -p "$ROOT$(dirname "$path")"; touch "$ROOT$path"; fi
        mount --bind -o ro "$path" "$ROOT$path"
    done <"$WORK/pip-paths"
}
# inside COMMAND, visitor COMMAND: run a shell command in the checkout, as root or as a user; its words go to $said.
said=""
inside() { as root "$1"; }
visitor() { chown -R --no-dereference 1000:1000 "$ROOT$FOLDER" "$WORK/pip-cache"; as visitor "$1"; chown -R 0:0 "$WORK/pip-cache"; }
as() {
    local code=0
    said=$(chroot "$ROOT" env -i PATH=/usr/local/sbin:/usr/local/bin:/usr/sbin:/usr/bin:/sbin:/bin LANG=C.UTF-8 \
        PIP_CACHE_DIR=/var/cache/pip su "$1" -s /bin/bash -c "cd '$COPY' && $2" 2>&1 </dev/null) || code=$?
    got=$code
}
packages() { as root "apt-get update -qq && DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends $*"; gave 0; }

fail() { echo "fresh: $trial: $1" >&2; echo "$said" | tail -30 >&2; failed=$((failed + 1)); return 1; }
gave() { [ "$got" -eq "$1" ] || fail "exit code $got, not $1"; }
says() { [[ "$said" == *"$1"* ]] || fail "does not say: $1"; }
# What pip warns of this machine's own settings is not ours.
quiet() { ! grep -v "^WARNING: Location 'file:" <<<"$said" | grep -q . || fail "is not quiet"; }
nothing_made() { [ ! -e "$ROOT$COPY/.venv" ] || fail ".venv was begun"; }
READY="make --no-print-directory .venv/.ready"
SHIP=".venv/bin/tenderwright start ../ship && .venv/bin/tenderwright build ../ship --out ../out"
compiles() { "$1" "$SHIP"; gave 0; says "../out/yard: "; [ -s "$ROOT$FOLDER/out/yard/specification.pdf" ] || fail "no specification"; }

bare() { inside "$READY"; gave 0; quiet; compiles inside; inside "$READY"; gave 0; }
no-subset() { packages "${TYPESETTER[@]}"; inside "$READY"; gave 0; quiet; compiles inside; }
complete() { packages "${TYPESETTER[@]}" libharfbuzz-subset0 python3-venv; visitor "$READY"; gave 0; quiet; compiles visitor; }
sudo() {
    packages sudo
    echo "visitor ALL=(ALL) NOPASSWD: ALL" >"$ROOT/etc/sudoers.d/visitor"
    visitor "$READY"; gave 0; quiet; compiles visitor
}
no-sudo() {
    visitor "make package"; gave 2; nothing_made
    says "apt-get install --no-install-recommends libglib2.0-0 libpango-1.0-0 libharfbuzz0b libharfbuzz-subset0"
    says "python3."
    packages sudo; visitor "make package"; gave 2; nothing_made; says "ask whoever looks after it to run, as root: "
}
no-sudo-venv() {
    packages "${TYPESETTER[@]}" libharfbuzz-subset0; visitor "$READY"; gave 2; nothing_made
    says "-venv"; [[ "$said" != *pango* ]] || fail "asks for what is there"
}
no-apt() {
    rm "$ROOT/usr/bin/apt-get"; inside "make package"; gave 2; nothing_made
    says "sudo dnf install"; [[ "$said" != *"apt-get: "* ]] || fail "calls apt-get"
}
no-ensurepip() {
    packages "${TYPESETTER[@]}" libharfbuzz-subset0; rm "$ROOT/usr/bin/apt-get"
    inside "$READY"; gave 2; nothing_made; says "ensurepip"; [[ "$said" != *Traceback* ]] || fail "gives a traceback"
}
interrupted() {
    packages "${TYPESETTER[@]}" libharfbuzz-subset0 python3-venv
    inside "timeout --signal=INT 8 $READY"; [ "$got" -ne 0 ] || fail "was not interrupted"
    [ -d "$ROOT$COPY/.venv" ] || fail "was interrupted before it began"
    inside "$READY"; gave 0; compiles inside
}
half-made() {
    packages "${TYPESETTER[@]}" libharfbuzz-subset0 python3-venv
    inside "python3 -m venv --without-pip .venv"; gave 0
    inside "PIP_NO_INDEX=1 PIP_FIND_LINKS= $READY"; gave 2; says "once it is mended run make again"
    inside "$READY"; gave 0; compiles inside
}
moved() {
    inside "$READY"; gave 0
    inside "cp -a . ../elsewhere && rm -rf .venv && cd ../elsewhere && $READY && $SHIP"; gave 0; says "../out/yard: "
    inside "cd ../elsewhere && ln -sf /usr/bin/no-python .venv/bin/python3 && $READY && .venv/bin/tenderwright --version"; gave 0
}
lost() {
    inside "$READY"; gave 0; inside "apt-get remove -y -qq libharfbuzz-subset0"; gave 0
    inside ".venv/bin/tenderwright start ../ship && .venv/bin/tenderwright check ../ship"; gave 0
    inside ".venv/bin/tenderwright --version"; local start=${EPOCHREALTIME/./}
    inside ".venv/bin/tenderwright build ../ship --out ../out"; gave 2; says "sudo apt-get install libharfbuzz-subset0"
    echo "fresh: lost: answered in $(((${EPOCHREALTIME/./} - start) / 1000)) ms"
    [ ! -e "$ROOT$FOLDER/out" ] || fail "something was written"
}
browser() {
    inside "sh .ci/debian-packages chromium libatomic1 fonts-dejavu-core"; gave 0; quiet
    inside "chromium --headless --no-sandbox --disable-gpu --dump-dom 'data:text/html,<p>afloat</p>'"
    gave 0; says "<p>afloat</p>"
}
package() { inside "make --no-print-directory package"; gave 0; says "build/yard: "; says "build/owner: "; tail -2 <<<"$said"; }
test() { inside "bash .ci/run"; echo "$said" | tail -15; gave 0; }

failed=0
for trial in "${CASES[@]}"; do
    declare -F "$trial" >/dev/null || { echo "fresh: no case is called $trial" >&2; exit 2; }
    fresh_root
    before=$failed start=$SECONDS
    "$trial" || true
    [ "$failed" -ne "$before" ] || echo "fresh: $trial: passed, $((SECONDS - start)) s"
done
[ "$failed" -eq 0 ]
