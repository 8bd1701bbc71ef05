#!/bin/bash
# The whole program under a display of its own: open a file, edit it by keyboard and mouse, save, undo, save,
# reload. Run inside xvfb-run; prints what went wrong and leaves the window's pictures in FOLDER.
#   journey.sh PROGRAM SETUP FOLDER
set -euo pipefail
program=$1
folder=$3
file=$folder/journey.train.toml
export XDG_CONFIG_HOME=$folder/config
export XDG_STATE_HOME=$folder/state
cp "$2" "$file"

fail() { echo "journey: $*"; cat "$folder/program.log"; import -window root "$folder/failed.png" || true; exit 1; }
parts() { grep -c '^\[\[part\]\]' "$file"; }
short_by() { { "$program" check --json "$file" || [ $? -eq 1 ]; } | awk -F: '/"shortfall_mm"/ && !seen++ { print $2 + 0 }'; }
wait_for() { # wait_for WHAT COMMAND...: until the command succeeds, twenty seconds at most
    local what=$1
    shift
    for _ in $(seq 200); do "$@" && return; sleep 0.1; done
    fail "waited in vain for $what"
}
window_is_there() { window=$(xdotool search --onlyvisible --name 'Beamfork' 2>/dev/null | head -1) && [ -n "$window" ]; }
key() { xdotool key "$@"; sleep 0.4; }
ctrl() { # held as long as a hand holds it, and longer, for machines that draw slowly
    xdotool keydown ctrl; sleep 0.4
    xdotool keydown "$1"; sleep 0.4
    xdotool keyup "$1"; sleep 0.4
    xdotool keyup ctrl; sleep 0.4
}
title() { xdotool getwindowname "$window"; }
is_clean() { [[ $(title) != \** ]]; }
is_modified() { [[ $(title) == \** ]]; }
has_parts() { [ "$(parts)" -eq "$1" ]; }

"$program" "$file" >"$folder/program.log" 2>&1 &
pid=$!
trap 'kill $pid 2>/dev/null || true' EXIT
wait_for 'the window' window_is_there
sleep 2
xdotool windowfocus "$window"
before=$(parts)
short_before=$(short_by)
import -window root "$folder/opened.png"

# Turn the picture and come nearer, as everybody does first.
xdotool mousemove --window "$window" 500 330 mousedown 1
for x in 520 545 570 600; do xdotool mousemove --window "$window" "$x" 340; sleep 0.1; done
xdotool mouseup 1 click 4 click 4
sleep 1
import -window root "$folder/turned.png"
cmp -s "$folder/opened.png" "$folder/turned.png" && fail 'dragging in the picture changed nothing'

# The third part is the adapter: one more of it costs 1 mm.
key Down; key Down; key Down; sleep 1
ctrl d
wait_for 'the star of unsaved work' is_modified
ctrl s
wait_for 'one part more in the file' has_parts $((before + 1))
wait_for 'the star to go' is_clean
awk -v a="$short_before" -v b="$(short_by)" 'BEGIN { d = b - a - 1; exit !(d < 1e-6 && d > -1e-6) }' \
    || fail "the shortfall went from $short_before to $(short_by) mm, not 1 mm farther"

ctrl z
wait_for 'the star of unsaved work after undo' is_modified
ctrl s
wait_for 'the part to leave the file' has_parts "$before"
[ "$(short_by)" = "$short_before" ] || fail "undo left $(short_by) mm instead of $short_before mm"

# Close from the keyboard, open the file again: the same setup, remembered as recent.
ctrl q
for _ in $(seq 100); do kill -0 $pid 2>/dev/null || break; sleep 0.1; done
kill -0 $pid 2>/dev/null && fail 'the window did not close'
wait $pid || fail "the program ended with status $?"
grep -q "$file" "$XDG_CONFIG_HOME/beamfork/session.json" || fail 'the file is not among the recent ones'
"$program" "$file" >>"$folder/program.log" 2>&1 &
pid=$!
wait_for 'the window again' window_is_there
wait_for 'a clean title' is_clean
[ ! -s "$folder/program.log" ] || { cat "$folder/program.log"; fail 'the program complained'; }
echo 'journey: opened, turned, edited, saved, undone, saved, closed, opened again'
