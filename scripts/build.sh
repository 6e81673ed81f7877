# Configuring and building by the presets of CMakePresets.json.
# Source this file after say.sh, with $root set to the repository.

# The WebAssembly compiler calls ccache itself, around the compiler it wraps.
if command -v ccache >/dev/null; then export EM_COMPILER_WRAPPER=ccache; fi

# jobs: how many compilers at once: one a core, but 1.5 GB of free memory for each.
jobs() {
  local cores kilobytes fit
  cores=$(nproc 2>/dev/null || echo 2)
  kilobytes=$(sed -n 's/^MemAvailable: *\([0-9]*\).*/\1/p' /proc/meminfo 2>/dev/null)
  fit=$((${kilobytes:-3000000} / 1500000))
  ((fit >= 1)) || fit=1
  echo $((fit < cores ? fit : cores))
}

# belongs_here PRESET: its build folder was made for this place, not copied or moved with it.
belongs_here() {
  grep -qxF "CMAKE_HOME_DIRECTORY:INTERNAL=$root" "$root/build/$1/CMakeCache.txt" 2>/dev/null
}

# is_configured PRESET: its build folder is whole, of this place, and not older than its preset.
is_configured() {
  local file="$root/build/$1/build.ninja"
  [[ -f $file && ! $root/CMakePresets.json -nt $file ]] && belongs_here "$1"
}

# configure PRESET: once, and again after packages came; CMake sees to its own files itself.
configure() {
  local folder="$root/build/$1"
  if [[ -z ${installed:-} ]] && is_configured "$1"; then return; fi
  say "Configuring $1 ..."
  if ! belongs_here "$1"; then rm -rf "$folder"; fi
  mkdir -p "$folder"
  if ! (cd "$root" && cmake --preset "$1") >"$folder/configure.log" 2>&1; then
    sed -n '/CMake Error/,$p' "$folder/configure.log" >&2
    rm -f "$folder/build.ninja"
    die "Configuring $1 failed. All that was said: $folder/configure.log"
  fi
  # CMake leaves the file alone when nothing in it changed.
  touch "$folder/build.ninja"
}

# build PRESET [TARGET...]
build() {
  local preset=$1
  shift
  configure "$preset"
  (cd "$root" && cmake --build --preset "$preset" --parallel "$(jobs)" ${1:+--target "$@"}) 2>&1 |
    show_progress || die "Building $preset failed: see the lines above."
}

# build_page [TARGET...]: the engine as WebAssembly, or these targets of that build, and the page.
build_page() {
  say 'Building wasm ...'
  build wasm "$@"
  "$root/scripts/page"
}
