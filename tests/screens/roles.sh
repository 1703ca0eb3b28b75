#!/usr/bin/env bash
# Two users by keys alone, in a real terminal (tmux) of 80 x 24, no step outside the screens: a formulator brings a pair of thickeners from
# nothing into both bands; a quality controller states a specification, checks a batch, corrects it and certifies it. An instructor's class is
# in practice.sh. Build first. Usage: tests/screens/roles.sh [PROGRAM]
set -u
cd "$(dirname "$0")/../.."
program=${1:-dotnet src/Viscolog/bin/Debug/net10.0/viscolog.dll}
work=$(mktemp -d)
failed=0 keys=0
trap 'screen kill-server 2>/dev/null; rm -rf "$work"' EXIT
screen() { tmux -L "viscolog-$$" -f /dev/null "$@"; }
check() { if eval "$2"; then echo "ok    $1"; else echo "FAILED $1"; failed=$((failed + 1)); shown; fi; }
shown() { screen capture-pane -t s -p; }
until_shown() { for _ in $(seq 1 "${2:-200}"); do shown | grep -q -- "$1" && return 0; sleep 0.1; done; echo "never shown: $1"; shown; return 1; }
press() { keys=$((keys + $#)); screen send-keys -t s "$@"; sleep 0.15; }
type_() { keys=$((keys + ${#1})); screen send-keys -t s -l "$1"; sleep 0.15; }
fill() { for text in "$@"; do screen send-keys -t s C-a; [ -n "$text" ] && type_ "$text"; press Tab; done; }
# Waits until the advice that follows the last entry is there.
settled_shown() { sleep 0.4; for _ in $(seq 1 300); do shown | grep -q "working it out" || return 0; sleep 0.1; done; return 1; }

screen new-session -d -s s -x 80 -y 24 "env TERM=tmux-256color LANG=C.UTF-8 bash --norc"
sleep 0.5
screen send-keys -t s "cd $work; clear; (cd $PWD && exec $program --log $work/log); echo rc=\$?" Enter
until_shown "F2 begins one"

# The formulator: name, base, grams, thickener and its range, target, tolerance, method, operator, second thickener and its range, string.
press F2; until_shown "New run"
fill "Pair pot" "Quay" "150" "bodyone" "0.2-1.2" "9000" "15" "direct" "" "stringone" "0.3-2" "30-45" "" "" "cellulosic" "associative"
press Enter
check "a run of two thickeners in $keys keys" 'until_shown "Pair pot"'

# The scripted pot: shares of base in g per 100 g; body and string rise with both, the string with the second above all.
b=0 s=0 reads=0 wait_s=60
body() { awk -v b="$b" -v s="$s" -v i="$reads" 'BEGIN { x = b + 0.25 * s; printf "%d", 700 * exp(3.9 * x^2 / (0.62^2 + x^2)) * (1 + 0.015 * ((i % 3) - 1)) }'; }
string() { awk -v b="$b" -v s="$s" -v i="$reads" 'BEGIN { printf "%.1f", 5 * exp(2.9 * s / (0.75 + s) + 0.25 * b) * (1 + 0.04 * ((i % 3) - 1)) }'; }
read_pot() {
  reads=$((reads + 1))
  press F4; until_shown "With the next reading"; fill "" "" "$(string)"; press Enter; sleep 0.3
  type_ "$(body)"; press Tab; type_ "$1"; press Enter; until_shown "saved: "
}
pour() { awk -v had="$1" -v grams="$2" 'BEGIN { printf "%.5f", had + 100 * grams / 150 }'; }

read_pot 60
for step in $(seq 1 40); do
  settled_shown; page=$(shown)
  action=$(grep -oE "│ (ADD [0-9. ]+ g [a-z]+|WAIT|READ|DRAW|STOP\. [A-Z][a-z ]+ in band|STOP ADDING|LET DOWN)" <<<"$page" | head -1)
  case $action in
    *ADD*)
      grams=$(grep -oE "ADD [0-9.]+" <<<"$action" | tr -dc 0-9.)
      case $action in *bodyone) b=$(pour "$b" "$grams") ;; *) s=$(pour "$s" "$grams") ;; esac
      press +; [ "$step" -le 4 ] && shown | grep -q "Thickener added" && press Enter
      until_shown "added; F3"; press F3; sleep 0.3; press F3; wait_s=1200; read_pot $wait_s ;;
    *WAIT* | *READ* | *DRAW*) wait_s=$((wait_s + 600)); read_pot $wait_s ;;
    *) break ;;
  esac
done
check "body and string in band after $reads readings, $keys keys" '[[ $action == *"in band"* ]]'

# Everything about the run is corrected on the screen, and the correction taken back.
press F11; until_shown "About this run"; fill "Pair pot 1"; press Enter
check "the run's name is corrected" 'until_shown "Pair pot 1 "'
press C-z; sleep 1
check "and the correction is taken back" 'until_shown "Pair pot ·"'
press F11; until_shown "About this run"; fill "Pair pot 1"; press Enter; until_shown "Pair pot 1 "
settled_shown

# The quality controller: a specification that this pot misses, then what to do, then the certificate.
press F9; until_shown " Runs"
press F8; until_shown "Materials"; press F2; until_shown "Add a material"
screen send-keys -t s C-a; type_ "specification"; press Enter
until_shown "A new specification"
fill "Pair pot"
for _ in 1 2 3 4 5 6 7 8; do
  # The field that is typed into shows the cursor.
  row=$(screen display -p -t s '#{cursor_y}')
  case $(shown | sed -n "$((row + 1))p" | grep -oE "[a-z_]+_(mpas|pct)" | head -1) in
    target_mpas) fill "9000" ;;
    tolerance_pct) screen send-keys -t s C-a; type_ "15"; break ;;
    *) press Tab ;;
  esac
done
press Enter; sleep 1
check "a specification is kept" 'until_shown "Pair pot"'
press Escape; until_shown " Runs"; press F6
check "the batch is checked" 'until_shown "ACCEPT\|REJECT\|Not decided\|UNDECIDED\|against"'
sleep 2
press F7; until_shown "where to"
screen send-keys -t s C-a; type_ "$work/certificate.html"; press Enter
check "and certified" 'until_shown "written: " && grep -qi "certificate" "$work/certificate.html"'
press F7; until_shown "where to"; screen send-keys -t s C-a; type_ "$work/certificate.html"; press Enter
check "a file that is there is replaced only when that is said again" 'until_shown "already exists"'
press Enter; until_shown "written: "
press Escape; sleep 0.5; press F12
check "thickeners compared" 'until_shown "Thickeners compared"'
press x; sleep 0.5; press F11
check "a run is put away" 'until_shown "is put away"'
press C-p; sleep 0.5; press F11
check "and brought back" 'until_shown "back in the list"'
press C-q
check "quitting gives the terminal back" 'until_shown "rc=0"'
$program verify --log "$work/log" > /dev/null 2>&1
check "the log is sound" '[ $? -eq 0 ]'
echo "$failed failed"
exit $failed
