#!/bin/bash
# How long the program takes to its first picture and to a whole check, and how much memory it holds with a demo open.
#
#   tests/bench/start_and_memory.sh PROGRAM [DEMO] [ROUNDS]
#
# Needs Xvfb and a C compiler. Least and median of the rounds: other work on the machine only ever adds.
set -euo pipefail
program=$(realpath "$1")
demo=${2:-1-short-of-focus}
rounds=${3:-9}
here=$(cd "$(dirname "$0")" && pwd)
work=$(mktemp -d)
trap 'kill "${screen:-}" 2>/dev/null || true; rm -rf "$work"' EXIT
export HOME=$work XDG_CONFIG_HOME=$work/config XDG_STATE_HOME=$work/state

now() { date +%s.%N; }
least_and_median() { # NAME UNIT, numbers on standard input
    sort -g | awk -v name="$1" -v unit="$2" '{ v[NR] = $1 }
        END { printf "%-46s least %7.3f  median %7.3f %s\n", name, v[1], v[int((NR + 1) / 2)], unit }'
}

for ((i = 0; i < rounds; ++i)); do
    begin=$(now)
    "$program" check "$demo" > "$work/text" || [ $? = 1 ] # 1: a poor setup
    echo "$(now) - $begin" | bc
done | least_and_median "check $demo, as a process" s

cc -shared -fPIC -O1 -o "$work/swap_clock.so" "$here/start/swap_clock.c" -ldl
exec 3> "$work/number"
Xvfb -displayfd 3 -screen 0 1600x900x24 -nolisten tcp 2> /dev/null &
screen=$!
until [ -s "$work/number" ]; do sleep 0.05; done
DISPLAY=:$(cat "$work/number")
export DISPLAY

for ((i = 0; i < rounds; ++i)); do
    : > "$work/swaps"
    BEAMFORK_STARTED=$(now) LD_PRELOAD=$work/swap_clock.so "$program" "$demo" 2> "$work/swaps" &
    window=$!
    for ((wait = 0; wait < 100; ++wait)); do
        grep -q '^swap 2' "$work/swaps" && break
        sleep 0.05
    done
    sleep 1.5 # until it rests: cures are sought, the careful picture is drawn
    # Of memory in use: what belongs to the driver's files and to the program's own; the rest is the heap of both.
    awk '/^[0-9a-f]+-/ { file = $6 } /^Rss:/ { all += $2; if (file ~ /LLVM|dri|gallium|libEGL|libGL|libz3/) driver += $2 }
         END { printf "%.1f %.1f\n", all / 1024, driver / 1024 }' "/proc/$window/smaps" >> "$work/memory"
    kill "$window"
    wait "$window" 2> /dev/null || true
    awk '/^swap/ { print $3 > ("'"$work"'/swap" $2 ".row") }' "$work/swaps"
    for swap in 1 2; do cat "$work/swap$swap.row" >> "$work/swap$swap"; done
done
least_and_median "window with its panels" s < "$work/swap1"
least_and_median "window with the 3D view" s < "$work/swap2"
cut -d' ' -f1 "$work/memory" | least_and_median "memory in use (RSS), window" MB
cut -d' ' -f2 "$work/memory" | least_and_median "  of it files of the OpenGL driver" MB
