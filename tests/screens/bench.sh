#!/usr/bin/env bash
# The whole job at the bench, by keys alone, in a real terminal (tmux): a new run, doses as advised, readings of a scripted pot, to the end; the
# program killed in the middle and opened again; a signal; a storm of sizes. Build first. Usage: tests/screens/bench.sh [PROGRAM]
set -u
cd "$(dirname "$0")/../.."
program=${1:-dotnet src/Viscolog/bin/Debug/net10.0/viscolog.dll}
work=$(mktemp -d)
log=$work/log
failed=0 keys=0
trap 'screen kill-server 2>/dev/null; rm -rf "$work"' EXIT
# A socket's name may not be a path.
screen() { tmux -L "viscolog-$$" -f /dev/null "$@"; }
check() { if eval "$2"; then echo "ok    $1"; else echo "FAILED $1"; failed=$((failed + 1)); shown; fi; }
shown() { screen capture-pane -t s -p; }
until_shown() { for _ in $(seq 1 "${2:-150}"); do shown | grep -q -- "$1" && return 0; sleep 0.1; done; echo "never shown: $1"; shown; return 1; }
press() { keys=$((keys + $#)); screen send-keys -t s "$@"; sleep 0.15; }
type_() { keys=$((keys + ${#1})); screen send-keys -t s -l "$1"; sleep 0.15; }
open() { screen send-keys -t s "clear; $program $* --log $log; echo rc=\$?" Enter; }

screen new-session -d -s s -x 80 -y 24 "env TERM=tmux-256color bash --norc"
sleep 0.5
open ""
check "an empty log offers a new run and a practice log" 'until_shown "F2 begins one" && shown | grep -q practice'

keys=0
press F2; until_shown "New run"
for text in "Bench pot" "Gable" "120" "TA" "1-5" "12000" "15"; do
  screen send-keys -t s C-a; type_ "$text"; press Tab
done
press Enter
check "a new run in $keys keys" 'until_shown "Bench pot"'

# The scripted pot: 850 mPa.s, rising by a sigmoid of the dose to about 25000; the reading follows from what the table says went in.
dose() { printf '%s\n' "${added[@]:-0}" | awk '{ s += $1 } END { print 100 * s / 120 }'; }
body() { awk -v d="$(dose)" -v i="$1" 'BEGIN { printf "%d", 850 * exp(3.4 * d^2.4 / (2.2^2.4 + d^2.4)) * (1 + 0.02 * ((i % 3) - 1)) }'; }
added=() reads=0 keys=0
read_pot() { reads=$((reads + 1)); type_ "$(body $reads)"; press Tab; type_ "$1"; press Enter; until_shown "saved: "; sleep 0.3; }
settled_shown() { for _ in $(seq 1 200); do shown | grep -q "working it out" || return 0; sleep 0.1; done; return 1; }
read_pot 60
killed=no
for step in $(seq 1 25); do
  settled_shown; page=$(shown)
  action=$(grep -oE "│ (ADD [0-9. ]+ g|WAIT|READ|STOP\. The pot is in band|STOP ADDING|LET DOWN)" <<<"$page" | head -1)
  case $action in
    *ADD*) grams=$(grep -oE "ADD [0-9.]+" <<<"$page" | tr -dc 0-9.); added+=("$grams"); press +; [ ${#added[@]} -eq 1 ] && { until_shown "Thickener added"; press Enter; }; until_shown "added; F3"; press F3; sleep 0.3; press F3; read_pot 90; wait_s=90 ;;
    *WAIT*|*READ*) wait_s=$((${wait_s:-60} + 120)); read_pot $wait_s ;;
    *) break ;;
  esac
  if [ $killed = no ] && [ ${#added[@]} -eq 2 ]; then
    killed=yes
    pkill -9 -n -f "viscolog.* --log $log"; sleep 0.5
    screen send-keys -t s "reset" Enter; sleep 0.5
    open bench 1
    check "killed at the second dose, opened again: ${#added[@]} doses and $reads readings are there" 'until_shown "run 1 opened, $((${#added[@]} + reads)) entries"'
  fi
done
check "the run ends in band: ${#added[@]} doses, $reads readings, $keys keys" '[[ $action == *"in band"* ]]'
press C-q
check "quitting gives the terminal back" 'until_shown "rc=0" && [ "$(screen display -p -t s "#{alternate_on}")" = 0 ]'
$program export 1 --log "$log" > "$work/run.csv" 2>"$work/err"
check "every dose and reading is in the log" '[ "$(grep -cE "^[^#].*,TA,[0-9.]+" "$work/run.csv")" -eq ${#added[@]} ]'

open bench 1; until_shown "Bench pot"; sleep 1
press F3; until_shown "stirring 00:0"
pkill -9 -n -f "viscolog.* --log $log"; sleep 0.5
screen send-keys -t s "reset" Enter; sleep 0.5
open bench 1
check "killed while stirring, opened again: the clock has gone on" 'until_shown "stirring 00:[01]"'
press C-z
check "the clock is taken back" 'until_shown "not stirred yet" && shown | grep -q "undone: stirring"'
printf '4 410\t600\n4 420\t610\n' | screen load-buffer -; screen paste-buffer -p -t s; sleep 0.5
check "two pasted lines are one question" 'until_shown "2 readings: Enter"'
press Escape
head -c 10000 /dev/zero | tr '\0' 7 | screen load-buffer -; began=$(date +%s%N); screen paste-buffer -p -t s
check "10 000 pasted characters are answered within a second" 'until_shown "reading 777" && [ $((($(date +%s%N) - began) / 1000000)) -lt 1000 ]'
press C-z
for size in "10 3" "200 50" "1 1" "59 16" "60 15" "60 16" "120 40" "3 2" "80 24"; do screen resize-window -t s -x ${size% *} -y ${size#* }; sleep 0.15; done
sleep 0.5
check "a storm of sizes leaves the bench as it was" 'until_shown "Bench pot" && shown | grep -q "F1 help"'
pkill -TERM -n -f "viscolog.* --log $log"
check "SIGTERM gives the terminal back" 'until_shown "rc=143" && [ "$(screen display -p -t s "#{alternate_on}")" = 0 ]'
open bench 1; until_shown "Bench pot"; sleep 1
pkill -HUP -n -f "viscolog.* --log $log"
check "SIGHUP gives the terminal back" 'until_shown "rc=129" && [ "$(screen display -p -t s "#{alternate_on}")" = 0 ]'
screen new-window "$program bench 1 --log $log"; sleep 3
screen kill-window
gone() { for _ in $(seq 1 80); do pgrep -f "viscolog.* --log $log" > /dev/null || return 0; sleep 0.1; done; return 1; }
check "a closed terminal ends the program, and the log is whole" 'gone && $program verify --log "$log" > /dev/null 2>&1'
screen send-keys -t s "clear; TERM=dumb $program --log $log; echo rc=\$?" Enter
check "without a terminal the commands are named" 'until_shown "rc=1" && shown | grep -q "viscolog advise"'
echo "$failed failed"
exit $failed
