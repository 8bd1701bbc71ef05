#!/bin/bash
# What the window costs while nobody touches it: processor time, and how often it is woken.
#
#   tests/bench/idle.sh PROGRAM [DEMO] [SECONDS]
#
# Needs Xvfb. A tick of /proc/PID/stat is 10 ms; a wake-up is a voluntary switch of any of its threads.
set -euo pipefail
program=$(realpath "$1")
demo=${2:-1-short-of-focus}
seconds=${3:-60}
work=$(mktemp -d)
trap 'kill "${window:-}" "${screen:-}" 2>/dev/null || true; rm -rf "$work"' EXIT
export HOME=$work XDG_CONFIG_HOME=$work/config XDG_STATE_HOME=$work/state

exec 3> "$work/number"
Xvfb -displayfd 3 -screen 0 1600x900x24 -nolisten tcp 2> /dev/null &
screen=$!
until [ -s "$work/number" ]; do sleep 0.05; done
DISPLAY=:$(cat "$work/number")
export DISPLAY
"$program" "$demo" 2> /dev/null &
window=$!
sleep 15 # the picture is drawn carefully, cures are found

ticks() { # behind the name in brackets, which may hold spaces: utime and stime
    sed 's/.*) //' "/proc/$window/stat" | awk '{ print $12 + $13 }'
}
wakes() { awk '/^voluntary/ { sum += $2 } END { print sum }' /proc/"$window"/task/*/status; }
begin_ticks=$(ticks) begin_wakes=$(wakes)
sleep "$seconds"
awk -v ticks=$(($(ticks) - begin_ticks)) -v wakes=$(($(wakes) - begin_wakes)) -v s="$seconds" -v hz="$(getconf CLK_TCK)" \
    'BEGIN { printf "%d s untouched: %d ticks of 1/%d s (%.2f %% of a core), %d wake-ups\n", s, ticks, hz, 100 * ticks / hz / s, wakes }'
