#!/usr/bin/env bash
# A pot dosed to its band with a balance and a viscometer that speak, in a real terminal (tmux) of 80 x 24 and of 120 x 40: what is poured and
# what is read comes by itself; Enter accepts it, and only how long the pot stood is typed, as the script does not wait for it. Then an
# instrument is learned from its lines, and a plug is pulled. Build first. Usage: tests/screens/instruments.sh [PROGRAM]
set -u
cd "$(dirname "$0")/../.."
program=${1:-dotnet src/Viscolog/bin/Debug/net10.0/viscolog.dll}
work=$(mktemp -d)
failed=0
trap 'screen kill-server 2>/dev/null; rm -rf "$work"' EXIT
screen() { tmux -L "viscolog-$$" -f /dev/null "$@"; }
check() { if eval "$2"; then echo "ok    $1"; else echo "FAILED $1"; failed=$((failed + 1)); shown; fi; }
shown() { screen capture-pane -t s -p; }
until_shown() { for _ in $(seq 1 "${2:-200}"); do shown | grep -q -- "$1" && return 0; sleep 0.1; done; echo "never shown: $1"; shown; return 1; }
press() { screen send-keys -t s "$@"; sleep 0.15; }
type_() { screen send-keys -t s -l "$1"; sleep 0.15; }
settled_shown() { sleep 0.4; for _ in $(seq 1 300); do shown | grep -q "working it out" || return 0; sleep 0.1; done; return 1; }
open() { screen send-keys -t s "clear; $program $* --log $log; echo rc=\$?" Enter; }
# What the instruments say: lines in files that grow.
scale() { printf '%s %8.2f g\n' "$2" "$1" >> "$work/scale"; }
viscometer() { printf '%s %.3f Pa.s 23.1 C\n' "$2" "$1" >> "$work/viscometer"; }
dose() { printf '%s\n' "${added[@]:-0}" | awk '{ s += $1 } END { print 100 * s / 120 }'; }
body() { awk -v d="$(dose)" -v i="$1" 'BEGIN { printf "%.3f", 0.85 * exp(3.4 * d^2.4 / (2.2^2.4 + d^2.4)) * (1 + 0.02 * ((i % 3) - 1)) }'; }

printf '# name: Wet hands\n# base: Gable\n# base_g: 120\n# thickener: TA; range_pct=1-5\n# target_mpas: 12000\n# tolerance_pct: 15\n# method: direct\nviscosity_mpas\n' > "$work/run.csv"
printf '# viscolog-materials: 1\nkind,name,reads,source\ninstrument,viscometer,viscosity_mpas=2/3; temp_c=4; stable=1:S,file:%s\ninstrument,scale,added_g=2/3; stable=1:ST,file:%s\n' \
  "$work/viscometer" "$work/scale" > "$work/instruments.csv"

for size in "80 24" "120 40"; do
  log=$work/log-${size// /x}
  : > "$work/scale"; : > "$work/viscometer"
  $program import "$work/run.csv" --log "$log" > "$work/out" 2>&1 && $program import "$work/instruments.csv" --log "$log" >> "$work/out" 2>&1 || cat "$work/out"
  screen new-session -d -s s -x "${size% *}" -y "${size#* }" "env TERM=tmux-256color LANG=C.UTF-8 bash --norc"
  sleep 0.5
  open bench 1 --listen viscometer --listen scale
  until_shown "Wet hands"
  added=() reads=0 wait_s=60 bars=0
  read_pot() {
    reads=$((reads + 1))
    viscometer "$(body "$reads")" M; viscometer "$(body "$reads")" S
    until_shown "reading $(awk -v b="$(body "$reads")" 'BEGIN { printf "%d", 1000 * b + 0.5 }')"
    press Tab; type_ "$1"; press Enter; until_shown "saved: "
  }
  read_pot 60
  for _ in $(seq 1 25); do
    settled_shown; page=$(shown)
    action=$(grep -oE "│ (ADD [0-9. ]+ g|WAIT|READ|STOP\. The pot is in band|STOP ADDING|LET DOWN)" <<<"$page" | head -1)
    case $action in
      *ADD*)
        grams=$(grep -oE "ADD [0-9.]+" <<<"$page" | tr -dc 0-9.)
        for part in 0.3 0.6 0.95 1; do scale "$(awk -v g="$grams" -v p=$part 'BEGIN { print g * p }')" SD; sleep 0.2; done
        scale "$grams" ST
        until_shown "of $grams g .*100 %, enough" 30 && bars=$((bars + 1))
        added+=("$grams"); press F2; until_shown "Thickener added"; press Enter; until_shown "added; F3"
        scale 0 ST; press F3; sleep 0.3; press F3; wait_s=90; read_pot 90 ;;
      *WAIT* | *READ*) wait_s=$((wait_s + 120)); read_pot $wait_s ;;
      *) break ;;
    esac
  done
  check "at $size in band: ${#added[@]} doses and $reads readings, no gram and no viscosity typed" '[[ $action == *"in band"* ]]'
  check "at $size each pour was seen as it went on" '[ "$bars" = "${#added[@]}" ] && [ "$bars" -gt 0 ]'
  press C-q
  check "at $size quitting gives the terminal back" 'until_shown "rc=0"'
  check "at $size temperatures went along" '[ "$($program export 1 --log "$log" | grep -c ",23.1")" = "$reads" ]'
  screen kill-session -t s
done

# An instrument that the log does not know yet is learned from a line of which somebody says what it means.
log=$work/log-80x24
screen new-session -d -s s -x 80 -y 24 "env TERM=tmux-256color LANG=C.UTF-8 bash --norc"
sleep 0.5
: > "$work/new"
open ""
until_shown "Wet hands"
press F8; until_shown "viscometer"; press F8; until_shown "tcp:HOST:PORT"
type_ "meter two"; press Tab; type_ "file:$work/new"; press Enter
sleep 1
printf 'V=8420cP T=23.1C\n' >> "$work/new"
check "its lines stand on the screen" 'until_shown "V=8420cP"'
press Enter; sleep 0.5; type_ "8420 mPa·s at 23.1 °C"; press Enter
printf 'V=8500cP T=23.2C\n' >> "$work/new"
check "what is understood stands beside them" 'until_shown "8500.*23.2"'
press F2; sleep 0.5
check "it is kept" 'until_shown "meter two"'
press C-q; until_shown "rc=0"

# A practice pot speaks over TCP; its plug is pulled.
mkfifo "$work/moves"
$program practice serve --pot easy --seed 7 < "$work/moves" > "$work/serve" 2>&1 &
serve=$!
exec 3> "$work/moves"
for _ in $(seq 1 100); do grep -q "tcp:" "$work/serve" && break; sleep 0.1; done
source=$(grep -oE "tcp:127.0.0.1:[0-9]+" "$work/serve" | head -1)
printf '# viscolog-materials: 1\nkind,name,reads,source\ninstrument,pot,viscosity_mpas=1/2,%s\n' "$source" > "$work/pot.csv"
$program import "$work/pot.csv" --log "$log" > "$work/out" 2>&1 || cat "$work/out"
open bench 1 --listen "pot=$source"
until_shown "Wet hands"
kill $serve; exec 3>&-
check "a pulled plug is said, and the screen goes on" 'until_shown "unplugged or closed" && type_ 777 && until_shown "reading 777"'
press C-q
check "and it is quit as ever" 'until_shown "rc=0"'
echo "$failed failed"
exit "$failed"
