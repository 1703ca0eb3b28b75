#!/usr/bin/env bash
# What the bench screen costs while nobody touches it: share of a core and writes to the terminal in twenty seconds.
# Usage: tests/screens/idle.sh  (after dotnet build; needs tmux, and strace for the writes)
set -euo pipefail
cd "$(dirname "$0")/../.."
program=src/Viscolog/bin/Debug/net10.0/viscolog.dll
place=$(mktemp -d)
trap 'tmux -L viscolog-idle kill-server 2>/dev/null || true; rm -rf "$place"' EXIT
dotnet "$program" import --log "$place/log" sample-runs/lantern-gel-07.csv >/dev/null
tmux -L viscolog-idle -f /dev/null new-session -d -s idle -x 80 -y 24 "exec dotnet $program bench 1 --log $place/log"
pid=$(tmux -L viscolog-idle display -p -t idle '#{pane_pid}')
spent() { awk '{ print $14 + $15 }' "/proc/$pid/$1"; } # in clock ticks

sleep 30 # the runtime compiles what was slow at first
before=$(spent stat) drawing=$(spent "task/$pid/stat")
sleep 20
after=$(spent stat) drawn=$(spent "task/$pid/stat")
awk -v ticks=$((after - before)) -v own=$((drawn - drawing)) -v hz="$(getconf CLK_TCK)" 'BEGIN {
  printf "share of a core at rest: %.2f %%, of that in the screens %.2f; the rest is the toolkit and the runtime\n",
    100 * ticks / hz / 20, 100 * own / hz / 20 }'
if command -v strace >/dev/null; then
  timeout 10 strace -f -e trace=write -p "$pid" -o "$place/writes" 2>/dev/null || true
  printf 'writes to the terminal: %.1f a second\n' "$(awk '/write\(1,/ { n++ } END { print n / 10 }' "$place/writes")"
fi
