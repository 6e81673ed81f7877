#!/usr/bin/env bash
# For maintainers: proves the two commands on an empty Debian 12 that has only git and bash.
# Makes the root with debootstrap, clones this repository into it (copies the work tree while
# there are uncommitted changes), and runs ./run, ./run serve and ./test inside, twice each, with
# times.
# Usage, as root, with debootstrap installed: scripts/prove-bare.sh [FOLDER FOR THE ROOT]
# The root stays for a look around; remove it when done. It takes about 6 GB.
set -euo pipefail
repository=$(cd -P "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
source "$repository/scripts/say.sh"

((EUID == 0)) || die 'prove-bare needs root, for debootstrap and chroot.'
command -v debootstrap >/dev/null || die 'Install debootstrap first.'
# Mounts are made in a namespace of their own and vanish with it, whatever happens.
if [[ ${OFFPLUMB_BARE_INSIDE:-} != yes ]]; then
  OFFPLUMB_BARE_INSIDE=yes exec unshare --mount --propagation private -- "$0" "$@"
fi

bare=${1:-$(mktemp -d "${TMPDIR:-/tmp}/offplumb-bare.XXXXXX")}
mkdir -p "$bare"
bare=$(cd -P "$bare" && pwd)
[[ -z $(ls -A "$bare") ]] || die "$bare is not empty."
inside=/root/offplumb

# The same Debian mirror that this computer uses.
mirror_of_host() {
  { cat /etc/apt/sources.list /etc/apt/sources.list.d/debian.sources 2>/dev/null || true; } |
    grep -oE '^(deb|URIs:) +(\[[^]]*\] +)?https?://[^ ]+' | head -n 1 | grep -oE 'https?://.*'
}

make_root() {
  local mirror file
  mirror=$(mirror_of_host) || die 'No Debian mirror found in /etc/apt.'
  debootstrap --variant=minbase --include=git bookworm "$bare" "$mirror" >"$bare.log" 2>&1 || {
    tail -n 20 "$bare.log" >&2
    die "debootstrap failed: $bare.log"
  }
  # How this computer reaches its mirror: sources, apt's fetch settings, certificates, names.
  for file in sources.list sources.list.d/debian.sources; do
    if [[ -f /etc/apt/$file ]]; then cp "/etc/apt/$file" "$bare/etc/apt/$file"; fi
  done
  if [[ ! -f /etc/apt/sources.list ]]; then rm -f "$bare/etc/apt/sources.list"; fi
  apt-config dump | grep '^Acquire::' >"$bare/etc/apt/apt.conf.d/90host" || true
  mkdir -p "$bare/etc/ssl/certs"
  if [[ -f /etc/ssl/certs/ca-certificates.crt ]]; then
    cp /etc/ssl/certs/ca-certificates.crt "$bare/etc/ssl/certs/"
    # npm's, under a name that no package writes over.
    cp /etc/ssl/certs/ca-certificates.crt "$bare/etc/ssl/of-host.crt"
  fi
  cp /etc/resolv.conf /etc/hosts "$bare/etc/" 2>/dev/null || true
  mount -t proc proc "$bare/proc"
  mount --rbind /dev "$bare/dev"
}

bring_repository() {
  if [[ -z $(git -C "$repository" status --porcelain) ]]; then
    git clone --quiet --no-hardlinks "$repository" "$bare$inside"
    say "Cloned $(git -C "$repository" rev-parse --short HEAD)"
  else
    mkdir -p "$bare$inside"
    git -C "$repository" ls-files -z --cached --others --exclude-standard |
      (cd "$repository" && xargs -0 tar c --ignore-failed-read) | tar x -C "$bare$inside"
    say 'Copied the work tree: it has changes that are not committed'
  fi
}

# The npm registry that this computer uses; the usual one without npm.
registry=$(npm config get registry 2>/dev/null || true)

in_root() {
  env -i HOME=/root PATH=/usr/sbin:/usr/bin:/sbin:/bin TERM=dumb LANG=C.UTF-8 \
    ${http_proxy:+http_proxy="$http_proxy"} ${https_proxy:+https_proxy="$https_proxy"} \
    ${no_proxy:+no_proxy="$no_proxy"} ${registry:+npm_config_registry="$registry"} \
    NODE_EXTRA_CA_CERTS=/etc/ssl/of-host.crt \
    chroot "$bare" bash -c "cd $inside && $1" </dev/null
}

# timed WORDS COMMAND: runs it in the root; says how long it took, and how long until the line
# `Testing ...`, where there is one. Its exit code is that of the command.
timed() {
  local start=$EPOCHREALTIME code=0 line
  say "=== $1: $2"
  in_root "$2" 2>&1 | while IFS= read -r line; do
    printf '%s\n' "$line"
    if [[ $line == 'Testing ...' ]]; then
      say "=== $1: its work started after $(seconds_since "$start") s"
    fi
  done || code=$?
  say "=== $1: exit $code after $(seconds_since "$start") s"
  return "$code"
}

seconds_since() { awk -v a="$1" -v b="$EPOCHREALTIME" 'BEGIN { printf "%.1f", b - a }'; }

# Starts the server, asks it for the page without any client but bash, and ends it.
# shellcheck disable=SC2016  # expanded by the shell in the root
serve_and_fetch='
  mkdir -p out; rm -f out/address
  ./run serve --no-browser --port 0 >out/address & server=$!
  trap "kill %1 2>/dev/null" EXIT
  until [ -s out/address ]; do kill -0 "$server" || exit 1; sleep 1; done
  port=$(grep -oE "[0-9]+/$" out/address | tr -d /)
  exec 3<>"/dev/tcp/127.0.0.1/$port"
  printf "GET / HTTP/1.0\r\nHost: 127.0.0.1:%s\r\n\r\n" "$port" >&3
  head -n 1 <&3 | grep -F " 200 OK" || exit 1
  kill -TERM "$server"; wait "$server"'

say "Making an empty Debian 12 in $bare ..."
make_root
bring_repository
say "Commands there before: $(in_root 'for c in git bash cmake g++ ninja python3 node sudo; do
  command -v $c; done' | tr '\n' ' ')"
timed 'first run' ./run
timed 'second run' ./run
timed 'a question' './run depth --rig examples/rigs/one-rigger.toml --count "100 ft" --speed "2.7 mph"'
timed 'the page, first' "$serve_and_fetch"
timed 'the page again' "$serve_and_fetch"
timed 'first test' ./test
timed 'second test' ./test
in_root 'ls -l out/side-view.svg out/card.pdf'
say "Proved. The root is $bare"
