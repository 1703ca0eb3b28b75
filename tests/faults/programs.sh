#!/usr/bin/env bash
# Several programs on one log, read-only folders, and signals during long work. The read-only part needs root (a bind mount).
# Build first: dotnet build, and dotnet build -c Release tests/Viscolog.Benchmarks. Usage: tests/faults/programs.sh
set -u
cd "$(dirname "$0")/../.."
program="dotnet src/Viscolog/bin/Debug/net10.0/viscolog.dll"
appender="dotnet tests/Viscolog.Benchmarks/bin/Release/net10.0/Viscolog.Benchmarks.dll appends"
work=$(mktemp -d)
trap 'kill -9 $(jobs -p) 2>/dev/null; umount "$work/ro" 2>/dev/null; rm -rf "$work"' EXIT
failed=0
check() { if eval "$2"; then echo "ok    $1"; else echo "FAILED $1"; failed=$((failed + 1)); fi; }

# One program has the log.
$program import sample-runs --log "$work/log" >/dev/null
$appender "$work/log" 1 >"$work/acks" & holder=$!
until [ -s "$work/acks" ]; do sleep 0.05; done
$program runs --json --log "$work/log" >"$work/out" 2>"$work/err"; code=$?
check "a second program reads what the first has saved, and says who that is (exit $code)" '[ $code -eq 0 ] && grep -q \"number\" "$work/out" && grep -q "process $holder of.* is adding to the log" "$work/err"'
$program import sample-runs/lantern-gel-07.csv --log "$work/log" >"$work/out" 2>"$work/err"; code=$?
check "a second program that would add says who has the log and ends with 4 (exit $code)" '[ $code -eq 4 ] && grep -q "process $holder of" "$work/err"'
$program advise sample-runs/lantern-gel-07.csv --log "$work/log" >"$work/out" 2>"$work/err"; code=$?
check "advice on a file is given beside it (exit $code)" '[ $code -eq 0 ] && [ -s "$work/out" ] && grep -q "process $holder of" "$work/err"'
kill -9 $holder; wait $holder 2>/dev/null
start=$(date +%s%N)
$program runs --json --log "$work/log" >"$work/out" 2>"$work/err"; code=$?
took=$(( ($(date +%s%N) - start) / 1000000 ))
start=$(date +%s%N); $program runs --json --log "$work/log" >/dev/null 2>&1; usual=$(( ($(date +%s%N) - start) / 1000000 ))
check "after kill -9 of the first the log opens at once (exit $code, $took ms, the next time $usual ms, $(wc -l < "$work/acks") rows acknowledged before)" '[ $code -eq 0 ] && [ $took -lt $((2000 + 3 * usual)) ]'

# Many at once.
$program verify --log "$work/log" >/dev/null
pids=()
for i in $(seq 1 16); do $program advise sample-runs/lantern-gel-07.csv --log "$work/log" >"$work/advice$i" 2>"$work/advice$i.err" & pids+=($!); done
bad=0; for p in "${pids[@]}"; do wait "$p" || bad=$((bad + 1)); done
check "16 calls of advise at once all succeed, $(cat "$work"/advice*.err | grep -c busy) of them without the log's history" '[ $bad -eq 0 ] && ! cat "$work"/advice*.err | grep -q busy'
for i in $(seq 1 12); do printf '# name: many %s\n# base_g: 100\nviscosity_mpas\n%s\n' "$i" "$((900 + i))" > "$work/many$i.csv"; done
pids=() start=$(date +%s)
for i in $(seq 1 12); do ( $program import "$work/many$i.csv" --log "$work/many" >/dev/null 2>"$work/many$i.err"; echo $? > "$work/many$i.code" ) & pids+=($!); done
for p in "${pids[@]}"; do wait "$p"; done
took=$(( $(date +%s) - start ))
done_=$(cat "$work"/many*.code | grep -c '^0$'); busy=$(cat "$work"/many*.code | grep -c '^4$')
there=$($program runs --json --log "$work/many" | grep -c '"number"')
# Half a minute is what they wait: only a machine that takes longer for all of them may leave some busy.
check "12 imports at once wait for one another: $done_ done, $busy told that it is busy, $there runs there after $took s" '[ $((done_ + busy)) -eq 12 ] && [ "$there" -eq "$done_" ] && { [ "$busy" -eq 0 ] || [ $took -ge 30 ]; }'

# Signals. A shell without job control starts what runs in the background deaf to SIGINT.
set -m
{ printf '# name: long\n# base_g: 100\nviscosity_mpas,wait_s\n'; seq 1 400000 | awk '{print $1 "," $1}'; } > "$work/long.csv"
for signal in INT TERM; do
  for delay in 0.2 0.6 1.0 1.5 2.0 2.5 3.0 4.0; do
    rm -rf "$work/stopped"
    $program import sample-runs/lantern-gel-06.csv --log "$work/stopped" >/dev/null
    $program import "$work/long.csv" --json --log "$work/stopped" >"$work/out" 2>"$work/err" & pid=$!
    sleep $delay; kill -$signal $pid; wait $pid; code=$?
    rows=$($program runs --json --log "$work/stopped" 2>"$work/err2" | grep '"entries"' | tail -1 | tr -dc 0-9)
    case $code:$rows in 0:400000|130:7|130:400000|143:7) result=0;; *) result=1;; esac
    check "SIG$signal after $delay s: exit $code, $( [ "$rows" = 400000 ] && echo whole || echo none of it ), $(grep -c 'rebuilt' "$work/err2") repairs" '[ $result -eq 0 ]'
  done
done
$program import "$work/long.csv" --log "$work/stopped" >/dev/null 2>&1
$program export --all -o "$work/export" --log "$work/stopped" >/dev/null 2>"$work/err" & pid=$!
sleep 0.6; kill -INT $pid; wait $pid; code=$?
check "SIGINT during an export: exit $code, every file whole" '[ $code -eq 0 ] || [ $code -eq 130 ] && for f in "$work"/export/*.csv; do [ ! -e "$f" ] || $program import "$f" --json --log "$work/elsewhere" >/dev/null || exit 1; done'

# Without permission.
cp -a "$work/log" "$work/closed"; chmod 755 "$work"; mkdir "$work/over"; cp -a "$work/log" "$work/over/log"
nobody="setpriv --reuid 65534 --regid 65534 --clear-groups env HOME=/nowhere DOTNET_CLI_HOME=/tmp $program"
if $nobody convert --method iso-2431-4 60 >/dev/null 2>&1; then
  chmod -R a+rX "$work/closed" "$work/over"
  for closed in closed closed/readings.journal closed/readings.db over; do
    mode=$(stat -c %a "$work/$closed"); chmod 600 "$work/$closed"
    log=$work/closed; [ $closed = over ] && log=$work/over/log
    for command in "runs" "show 1" "advise sample-runs/lantern-gel-07.csv" "verify"; do
      $nobody $command --log "$log" >"$work/out" 2>"$work/err"; code=$?
      check "no permission for $closed: $command (exit $code)" '[ $code -eq 4 ] && [ ! -s "$work/out" ] && grep -q "can.t be reached" "$work/err" && ! grep -q "no log" "$work/err"'
    done
    chmod "$mode" "$work/$closed"
  done
else
  echo "nobody can't run the program here, the part without permission left out"
fi

# Pipes, devices and closed streams.
mkfifo "$work/pipe.csv"
start=$(date +%s%N); timeout 20 $program advise "$work/pipe.csv" --log "$work/log" >"$work/out" 2>"$work/err"; code=$?
took=$(( ($(date +%s%N) - start) / 1000000 ))
check "a pipe that nobody writes to is refused (exit $code, $took ms)" '[ $code -eq 2 ] && grep -q "nobody writes" "$work/err"'
cat sample-runs/lantern-gel-07.csv > "$work/pipe.csv" & timeout 20 $program import "$work/pipe.csv" --log "$work/piped" >"$work/out" 2>"$work/err"; code=$?
check "a pipe with a writer is imported (exit $code)" '[ $code -eq 0 ] && grep -q "1 new run" "$work/out"'
cat sample-runs/lantern-gel-07.csv | timeout 20 $program advise /dev/stdin --log "$work/log" >"$work/out" 2>"$work/err"; code=$?
check "advice on what comes through a pipe (exit $code)" '[ $code -eq 0 ] && [ -s "$work/out" ]'
sleep 30 > "$work/pipe.csv" & holder=$!
$program import "$work/pipe.csv" --log "$work/piped" >"$work/out" 2>"$work/err" & pid=$!
sleep 2; start=$(date +%s%N); kill -INT $pid; wait $pid; code=$?; took=$(( ($(date +%s%N) - start) / 1000000 )); kill $holder
check "SIGINT while a pipe is waited for (exit $code, after $took ms)" '[ $code -eq 130 ] && [ $took -lt 5000 ]'
for command in "advise /dev/zero" "import /dev/zero --log $work/piped" "flow /dev/zero" "trend /dev/random" "restore /dev/zero --log $work/piped"; do
  start=$(date +%s%N); timeout 60 $program $command >"$work/out" 2>"$work/err"; code=$?; took=$(( ($(date +%s%N) - start) / 1000000 ))
  check "$command (exit $code, $took ms)" '[ $code -eq 2 ] || [ $code -eq 4 ]'
done
$program runs --log "$work/log" >&- 2>"$work/err"; code=$?
check "standard output closed (exit $code)" '[ $code -eq 1 ] && grep -q closed "$work/err"'
$program --help >/dev/full 2>"$work/err"; code=$?
check "help on a full device (exit $code)" '[ $code -eq 1 ] && grep -q "No space left" "$work/err"'

# Read-only.
mkdir "$work/ro"
cp -a "$work/log" "$work/kept"; cp -a "$work/log" "$work/unsealed"; rm "$work/unsealed/readings.seal"
for kind in kept unsealed; do
  mount --bind "$work/$kind" "$work/ro" && mount -o remount,ro,bind "$work/ro" || { echo "no bind mount here, read-only part left out"; break; }
  sums=$(cd "$work/ro" && sha256sum readings.journal readings.db)
  for command in "runs" "show 1" "export 1" "advise 6" "backup --to $work/backups"; do
    $program $command --log "$work/ro" >"$work/out" 2>"$work/err"; code=$?
    check "$kind log in a read-only folder: $command (exit $code)" '[ $code -eq 0 ] && [ -s "$work/out" ]'
  done
  $program import "$work/many1.csv" --log "$work/ro" >"$work/out" 2>"$work/err"; code=$?
  check "$kind log in a read-only folder: import is refused ($(head -c 90 "$work/err")…)" '[ $code -eq 4 ]'
  check "$kind log in a read-only folder: nothing was changed" '[ "$sums" = "$(cd "$work/ro" && sha256sum readings.journal readings.db)" ]'
  umount "$work/ro"
done
echo "$failed failed"
exit $failed
