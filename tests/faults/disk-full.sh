#!/usr/bin/env bash
# Fills a small disk at every size of it, in steps, while runs are imported, backed up, exported and restored, and then looks at what is left.
# Needs root (it mounts a tmpfs). Usage: tests/faults/disk-full.sh [FIRST_KB LAST_KB STEP_KB]
set -u
cd "$(dirname "$0")/../.."
first=${1:-40} last=${2:-700} step=${3:-12}
program="dotnet src/Viscolog/bin/Debug/net10.0/viscolog.dll"
work=$(mktemp -d)
disk=$work/disk
mkdir "$disk"
trap 'umount "$disk" 2>/dev/null; rm -rf "$work"' EXIT

for i in $(seq 1 12); do
  { printf '# name: pot %s\n# base: Gable\n# base_g: 120\n# thickener: TA\nadded_g,wait_s,viscosity_mpas\n' "$i"
    for j in $(seq 1 60); do echo "0.01,$j,$((800 + i * 100 + j))"; done; } > "$work/pot$i.csv"
done

disks=0 full=0 acknowledged=0 lost=0 unclear=0 refused=0 tampered=0
for kb in $(seq "$first" "$step" "$last"); do
  mount -t tmpfs -o size="${kb}k" tmpfs "$disk" || exit 1
  disks=$((disks + 1)) told=()
  for i in $(seq 1 12); do
    out=$($program import "$work/pot$i.csv" --json --log "$disk/log" 2>"$work/err"); code=$?
    if [ $code -eq 0 ]; then told+=("pot $i"); acknowledged=$((acknowledged + 60))
    else
      full=$((full + 1))
      { [ $code -eq 4 ] && [ -s "$work/err" ] && [ "$(wc -l < "$work/err")" -le 3 ]; } || { unclear=$((unclear + 1)); echo "$kb kB, pot $i: exit $code: $(cat "$work/err") $out"; }
      break
    fi
  done
  before=$(sha256sum "$disk/log/readings.journal" 2>/dev/null)
  for try in "backup" "export --all -o $disk/out"; do
    $program $try --log "$disk/log" >/dev/null 2>"$work/err"; code=$?
    case $code in 0|2|4) ;; *) unclear=$((unclear + 1)); echo "$kb kB, $try: exit $code: $(cat "$work/err")";; esac
  done
  # Without room: what was acknowledged can still be read.
  if [ ${#told[@]} -gt 0 ]; then
    list=$($program runs --json --log "$disk/log" 2>"$work/err") || { refused=$((refused + 1)); echo "$kb kB: not readable while full: $(cat "$work/err")"; }
    for name in "${told[@]}"; do grep -q "\"$name\"" <<<"$list" || { lost=$((lost + 1)); echo "$kb kB: $name is lost"; }; done
  fi
  [ "$before" = "$(sha256sum "$disk/log/readings.journal" 2>/dev/null)" ] || tampered=$((tampered + 1))
  # With room: the log opens, holds the same, and takes more.
  cp -a "$disk/log" "$work/roomy" 2>/dev/null
  if [ ${#told[@]} -gt 0 ]; then
    $program verify --log "$work/roomy" >/dev/null 2>"$work/err" || { refused=$((refused + 1)); echo "$kb kB: does not open with room: $(cat "$work/err")"; }
    list=$($program runs --json --log "$work/roomy")
    for name in "${told[@]}"; do grep -q "\"$name\"" <<<"$list" || { lost=$((lost + 1)); echo "$kb kB: $name is lost with room"; }; done
    $program import "$work/pot12.csv" --log "$work/roomy" >/dev/null || refused=$((refused + 1))
  fi
  rm -rf "$work/roomy"
  umount "$disk"
done
echo "disks $disks, found full $full times, acknowledged $acknowledged, lost $lost, unclear messages $unclear, refused opens $refused, journals touched by reading $tampered"
[ $((lost + unclear + refused + tampered)) -eq 0 ]
