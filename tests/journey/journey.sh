#!/bin/bash
# The whole program under a display of its own: open a file, turn the picture, edit by keyboard and mouse, save, undo,
# save, close, open again.
#   journey.sh PROGRAM SETUP FOLDER
. "$(dirname "${BASH_SOURCE[0]}")/steps.sh"
file=$folder/journey.train.toml
cp "$setup" "$file"
has_parts() { [ "$(parts "$file")" -eq "$1" ]; }

open_window "$file"
sleep 2
before=$(parts "$file")
short_before=$(checked shortfall_mm "$file")
look opened

# Turn the picture and come nearer, as everybody does first.
xdotool mousemove --window "$window" 500 330 mousedown 1
for x in 520 545 570 600; do xdotool mousemove --window "$window" "$x" 340; sleep 0.1; done
xdotool mouseup 1 click 4 click 4
sleep 1
look turned
cmp -s opened.png turned.png && fail 'dragging in the picture changed nothing'

# The third part is the adapter: one more of it costs 1 mm.
key Down Down Down
sleep 1
ctrl d
wait_for 'the star of unsaved work' is_modified
ctrl s
wait_for 'one part more in the file' has_parts $((before + 1))
wait_for 'the star to go' is_clean
short_after=$(checked shortfall_mm "$file")
near "$short_after" "$(sum "$short_before + 1")" \
    || fail "the shortfall went from $short_before to $short_after mm, not 1 mm farther"

ctrl z
wait_for 'the star of unsaved work after undo' is_modified
ctrl s
wait_for 'the part to leave the file' has_parts "$before"
short_after=$(checked shortfall_mm "$file")
[ "$short_after" = "$short_before" ] || fail "undo left $short_after mm instead of $short_before mm"

# Close from the keyboard, open the file again: the same setup, remembered as recent.
close_window
grep -q "$file" config/beamfork/session.json || fail 'the file is not among the recent ones'
open_window "$file"
wait_for 'a clean title' is_clean
[ ! -s program.log ] || fail 'the program complained'
echo 'journey: opened, turned, edited, saved, undone, saved, closed, opened again'
