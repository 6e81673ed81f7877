# What this project needs from the system, and how to get it. The list: packages.txt.
# Source this file after say.sh, with $root set to the repository.

# lines_of GROUP...: the lines of these groups of packages.txt: PACKAGE [unless COMMAND [VERSION]].
lines_of() {
  local line group=''
  while read -r line; do
    case $line in
      '' | '#'*) ;;
      '['*']') group=${line:1:-1} ;;
      *) if [[ " $* " == *" $group "* ]]; then printf '%s\n' "$line"; fi ;;
    esac
  done <"$root/packages.txt"
}

# has_command COMMAND [VERSION]: it is there and, with a version, says one that is no older.
has_command() {
  local said
  command -v "$1" >/dev/null || return 1
  [[ -n ${2:-} ]] || return 0
  said=$("$1" --version 2>/dev/null </dev/null) || return 1
  [[ $said =~ ([0-9]+) ]] && ((BASH_REMATCH[1] >= $2))
}

# missing_packages GROUP...: the packages that are to be installed, in one line. One look at the
# database; a command is looked for only where its package is missing.
missing_packages() {
  local lines have package word command version
  lines=$(lines_of "$@")
  [[ -n $lines ]] || die "packages.txt names nothing for: $*"
  # shellcheck disable=SC2046  # one word a package
  have=$(dpkg-query -W -f '|${db:Status-Status} ${Package}|' $(cut -d ' ' -f 1 <<<"$lines") \
    2>/dev/null) || true
  while read -r package word command version; do
    if [[ $have == *"|installed $package|"* ]]; then continue; fi
    if [[ -n $word && ($word != unless || -z $command || $version == *' '*) ]]; then
      die "packages.txt: \"$package $word $command $version\" is not \"PACKAGE unless COMMAND\"."
    fi
    if [[ -n $command ]] && has_command "$command" "$version"; then continue; fi
    printf '%s ' "$package"
  done <<<"$lines"
}

# show_install: reads apt's status lines and shows how far it is.
show_install() {
  local kind what percent words shown=-1
  while IFS=: read -r kind what percent words; do
    percent=${percent%%.*}
    if [[ $kind == dlstatus ]]; then words='fetching'; else words="installing: $what"; fi
    if [[ -t 2 ]]; then
      printf '\r\033[K  %s %% %.60s' "$percent" "$words" >&2
    elif [[ $percent =~ ^[0-9]+$ ]] && ((percent / 20 != shown)); then
      shown=$((percent / 20))
      say "  $percent % $words"
    fi
  done
  if [[ -t 2 ]]; then printf '\r\033[K' >&2; fi
}

by_hand() {
  echo "Ask whoever looks after this computer to run:  apt-get install --no-install-recommends $1"
}

# install_missing GROUP...: installs what is missing. Sets installed=yes if anything was.
# With nothing missing this is one query and no call of apt.
install_missing() {
  local missing log become=()
  installed=''
  if ! command -v dpkg-query >/dev/null; then
    say 'This is not Debian: going on with what is here. The parts needed are named in packages.txt.'
    return
  fi
  missing=$(missing_packages "$@")
  [[ -n $missing ]] || return 0

  if ((EUID != 0)); then
    command -v sudo >/dev/null ||
      die "Packages are missing, and installing them needs root." "$(by_hand "$missing")"
    say 'Installing needs root: sudo may ask for your password.'
    become=(sudo)
  fi

  log=$(mktemp "${TMPDIR:-/tmp}/offplumb-install.XXXXXX")
  say "Installing what is missing: $missing"
  # apt's status lines come out of its descriptor 3; all that it says goes to the log.
  # shellcheck disable=SC2016  # $0 and $@ belong to the inner shell
  "${become[@]}" env DEBIAN_FRONTEND=noninteractive LC_ALL=C sh -c '
    log=$0
    apt-get update -q >>"$log" 2>&1 &&
    apt-get install -y -q --no-install-recommends -o DPkg::Lock::Timeout=300 \
      -o APT::Status-Fd=3 "$@" 3>&1 >>"$log" 2>&1 </dev/null
  ' "$log" $missing | show_install || {
    tail -n 15 "$log" >&2
    die "The packages could not be installed. All that was said is in $log." \
        "$(by_hand "$missing")"
  }
  rm -f "$log"
  installed=yes
}
