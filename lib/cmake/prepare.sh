# Sourced by demo-scenarios/run and tests/run, after they set `root` to the repository's folder.
#
#   need GROUP...         installs the packages of the groups that are missing (Debian and kin), or
#                         lists what is needed (other systems); silent when everything is there
#   quietly LOG COMMAND   runs a command with its output in LOG; shows the log when it fails
#   build FOLDER TARGET [OPTION...]  configures $root into FOLDER where that is new, then builds
# shellcheck shell=sh

# Debian 12 names. Each group is what one job really uses.
packages_of() {
  case $1 in
    command) echo g++ cmake ninja-build libgeographiclib-dev libboost-dev nlohmann-json3-dev \
      libcli11-dev libexpat1-dev libfmt-dev libmd-dev libpango1.0-dev libpugixml-dev libproj-dev libtiff-dev pkg-config \
      fonts-liberation ;;
    tests) echo libgtest-dev libgmock-dev librapidcheck-dev gdal-bin libxml2-utils poppler-utils python3 \
      python3-jsonschema ;;
    browser) echo chromium proj-bin ;;
    bench) echo libbenchmark-dev libgeos-dev python3-numpy gdal-bin ;;
    tidy) echo clang-format clang-tidy ;;
    fuzz) echo clang libclang-rt-14-dev ;;
    *) echo "unknown package group $1" >&2; exit 2 ;;
  esac
}

need() {
  wanted=$(for group in "$@"; do packages_of "$group"; done)
  if command -v dpkg-query >/dev/null && command -v apt-get >/dev/null; then
    # shellcheck disable=SC2086  # one word for each package
    there=$(dpkg-query --show --showformat='${Package} ${db:Status-Status}\n' $wanted 2>/dev/null |
      sed -n 's/ installed$//p')
    missing=$(for package in $wanted; do
      printf '%s\n' "$there" | grep -qxF "$package" || printf '%s ' "$package"
    done)
    [ -z "$missing" ] || install_packages "$missing"
  elif ! { command -v cmake && command -v ninja && command -v c++; } >/dev/null; then
    list_needs "$wanted"
    exit 1
  fi
}

list_needs() {
  echo 'This needs a C++20 compiler, CMake 3.25 or newer, Ninja, GeographicLib 2, Boost 1.74,' \
    'nlohmann_json 3.11, CLI11 2.1, expat 2.4, fmt 9, libmd, pango 1.50 with cairo, PROJ 9, pugixml 1.12, libtiff 4.5,' \
    'pkg-config and a sans-serif font; for the tests also GoogleTest,' \
    'RapidCheck, GDAL (ogrinfo), libxml2 (xmllint), poppler (pdftotext) and Python with jsonschema.' >&2
  echo "Packages of Debian 12 that hold them:" $1 >&2
}

install_packages() {
  as_root=
  if [ "$(id -u)" -ne 0 ]; then
    if ! command -v sudo >/dev/null; then
      echo "Please install as root: apt-get install --no-install-recommends $1" >&2
      exit 1
    fi
    as_root=sudo
  fi
  echo "Installing packages: $1" >&2
  install_log=$(mktemp)
  # A package list that is absent or old makes the first try fail; then it is fetched.
  if ! apt_get install $1 >"$install_log" 2>&1 &&
    ! { apt_get update && apt_get install $1; } >"$install_log" 2>&1; then
    cat "$install_log" >&2
    rm -f "$install_log"
    list_needs "$1"
    exit 1
  fi
  rm -f "$install_log"
}

apt_get() {
  $as_root env DEBIAN_FRONTEND=noninteractive apt-get -y -q --no-install-recommends "$@"
}

quietly() {
  log=$1
  shift
  mkdir -p "$(dirname "$log")"
  if ! "$@" >"$log" 2>&1; then
    grep -v '^\[[0-9]*/[0-9]*\] ' "$log" >&2  # without the steps that went well
    echo "Failed: $*" >&2
    echo "The whole output is in $log" >&2
    return 1
  fi
}

build() {
  folder=$1
  target=$2
  shift 2
  if [ ! -f "$folder/build.ninja" ]; then
    echo "Building in $folder (the first time takes some minutes)" >&2
    rm -rf "$folder"
    if ! quietly "$folder.log" cmake -S "$root" -B "$folder" -G Ninja "$@"; then
      rm -rf "$folder"  # the next run starts afresh
      list_needs "$wanted"
      return 1
    fi
  fi
  quietly "$folder.log" cmake --build "$folder" --target "$target"
}
