#!/usr/bin/env bash
# A practice pot and the demonstration by keys alone, in a real terminal (tmux), at two sizes. Build first. Usage: tests/screens/practice.sh [PROGRAM]
set -u
cd "$(dirname "$0")/../.."
program=${1:-dotnet src/Viscolog/bin/Debug/net10.0/viscolog.dll}
work=$(mktemp -d)
failed=0
trap 'screen kill-server 2>/dev/null; rm -rf "$work"' EXIT
screen() { tmux -L "viscolog-$$" -f /dev/null "$@"; }
check() { if eval "$2"; then echo "ok    $1"; else echo "FAILED $1"; failed=$((failed + 1)); shown; fi; }
shown() { screen capture-pane -t s -p; }
until_shown() { for _ in $(seq 1 200); do shown | grep -q -- "$1" && return 0; sleep 0.1; done; echo "never shown: $1"; return 1; }
press() { screen send-keys -t s "$@"; sleep 0.2; }
type_() { screen send-keys -t s -l "$1"; sleep 0.2; }

$program import sample-runs/lantern-gel-06.csv --log "$work/log" >/dev/null
before=$(sha256sum "$work"/log/readings.* | sort)
screen new-session -d -s s -x 80 -y 24 "env TERM=tmux-256color LANG=C.UTF-8 bash --norc"
sleep 0.5
press "$program practice --log $work/log; echo rc=\$?" Enter
check "the choice of a pot" 'until_shown "pots with a hidden curve"'
press F2; until_shown "Player and pot"
type_ "Player A"; press Tab C-a; type_ 3; press Enter
press Down Down Enter
check "a pot to dose" 'until_shown "read the base first"'
press Enter
for grams in 3 4 2; do
  type_ $grams; press Enter F4 F3; sleep 1.2; press F3; sleep 1.5; press Enter F4
done
press F8
check "the end shows the hidden curve and the advised way" 'until_shown "Ends over" && until_shown "B advised"'
check "the score is kept" 'until_shown "score kept under Player A"'
press F6
check "and why it went over" 'until_shown "took the pot over"'
press Escape; sleep 0.7; press F6
check "the demonstration" 'until_shown "Step 0 of"'
screen resize-window -t s -x 120 -y 40; sleep 0.5
press F3
check "runs by itself" 'until_shown "Step 2 of"'
press F3 F6
check "and says why" 'until_shown "Letting down costs base"'
press Escape; sleep 0.7; press F7
check "the score sheet" 'until_shown "1 game" && until_shown "Player A"'
press C-q; sleep 0.5
check "quitting gives the terminal back" 'until_shown "rc=0" && [ "$(screen display -p -t s "#{alternate_on}")" = 0 ]'
check "the log is as it was" '[ "$before" = "$(sha256sum "$work"/log/readings.* | sort)" ]'
echo "$failed failed"
exit $((failed > 0))
