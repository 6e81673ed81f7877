# Words for the person who waits. All of it goes to standard error. Source this file.

say() { printf '%s\n' "$*" >&2; }

# die LINE...: say what is wrong and stop. 3 is the program's code for a fault of ours; 1 and 2
# are answers (CONTRIBUTING.md).
die() {
  printf '%s\n' "$@" >&2
  exit 3
}

# show_progress: reads what a build prints. Steps ("[12/60] ...") overwrite each other on a
# terminal and are lines elsewhere; all other lines stay. Silent when nothing had to be done.
show_progress() {
  local line open=''
  while IFS= read -r line; do
    case $line in
      *'Re-checking globbed directories'* | 'ninja: no work to do.') ;;
      \[*/*\]\ *)
        if [[ -t 2 ]]; then
          printf '\r\033[K%.*s' "$((${COLUMNS:-80} - 1))" "$line" >&2
          open=yes
        else
          say "$line"
        fi ;;
      *)
        if [[ -n $open ]]; then say ''; fi
        open=''
        say "$line" ;;
    esac
  done
  if [[ -n $open ]]; then printf '\r\033[K' >&2; fi
}
