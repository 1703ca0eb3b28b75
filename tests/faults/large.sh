#!/usr/bin/env bash
# A run of a million readings: how long an import, its list, its rows, an export and a second import take, and the most memory that each takes.
# Build first: dotnet build. Usage: tests/faults/large.sh [READINGS]
set -u
cd "$(dirname "$0")/../.."
readings=${1:-1000000}
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
{ printf '# name: long\n# base_g: 120\n# thickener: TA\nthickener,added_g,stir_s,wait_s,viscosity_mpas,temp_c\n'
  seq 1 "$readings" | awk '{ print ($1 < 7 ? "TA,0.6,10," : ",,,") 60 + $1 "," 850 + $1 % 97 ",23.1" }'; } > "$work/long.csv"

# Runs a command, and says seconds of wall clock and of processor, and the greatest resident memory as the system counts it.
measure() {
  local most=0 now start end
  start=$(date +%s%N)
  dotnet src/Viscolog/bin/Debug/net10.0/viscolog.dll "$@" --log "$work/log" >"$work/out" 2>"$work/err" & local pid=$!
  while now=$(awk '/VmHWM/ { print $2 }' "/proc/$pid/status" 2>/dev/null); [ -n "$now" ]; do most=$now; sleep 0.02; done
  wait "$pid"; local code=$?
  end=$(date +%s%N)
  printf '%-22s exit %d, %5.1f s, %4d MB\n' "${*/$work\//}" "$code" "$(( (end - start) / 100000000 ))e-1" "$((most * 1024 / 1000000))"
}
measure import "$work/long.csv"
measure runs
measure show 1
measure show 1 --json
measure import "$work/long.csv"
measure export 1 -o "$work/again.csv"
measure verify
