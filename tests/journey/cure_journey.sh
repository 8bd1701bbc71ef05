#!/bin/bash
# What the program is for, under a display of its own: choose the demo that is short of focus from the start page,
# read the finding, take the first cure below it, undo, solve for a wanted margin and take the answer, save, close,
# open again. The window's claims are held against the file's own lengths, added up here, and against `check` of what
# it wrote.
#   cure_journey.sh PROGRAM SETUP FOLDER    (SETUP: the file of the first demo)
. "$(dirname "${BASH_SOURCE[0]}")/steps.sh"

# Places in a window of 1280 x 720, WIDTHxHEIGHT+LEFT+TOP.
below_top_bar=1280x675+0+45
findings=270x358+0+76  # at the left of the picture
train=365x310+915+76   # at its right: the parts with their light paths
first_sign=16x16+11+111
beam=400x300+500+90    # where the light goes into the head, beside any hint of the pointer
plot=290x180+0+510     # the curve of the study “Tune” when that is wide
raised=28323F # ground of cards and buttons (srgb_hex(Tone::raised))
panel=19202A  # ground of panels (srgb_hex(Tone::panel)); behind a page or a question it is darker
good=009E73   # Okabe and Ito's bluish green: focus is reached

colour_at() { look now && convert "now.png[1x1+$1+$2]" -alpha off -format '%[hex:p{0,0}]' info:; } # colour_at LEFT TOP
is_start_page() { [ "$(colour_at 896 262)" = "$raised" ]; } # the second card: the first is lit
is_plain() { [ "$(colour_at 200 92)" = "$panel" ]; }        # the heading of the findings
is_behind() { [[ ! $(colour_at 200 92) =~ ^($panel|000000)$ ]]; } # dark, but drawn
rest() { xdotool mousemove --window "$window" 640 706; } # where nothing is pointed at
looks_like() { look now && same now "$1" "$2"; } # looks_like NAME AREA
differs_from() { look now && ! same now "$1" "$2"; }
same() { # same NAME NAME AREA: whether two pictures agree there, but for rounding in their colours
    [ "$(compare -fuzz 5% -metric AE "$1.png[$3]" "$2.png[$3]" null: 2>&1)" = 0 ]
}
# The vermillion cross of what fails has more red than blue in it; ground, tick and triangle have less.
shows_cross() { [ "$(convert "now.png[$first_sign]" -format '%[fx:mean.r>mean.b]' info:)" = 1 ]; }
shows_range_in_focus() { # a band of green below the curve
    look now
    convert "now.png[$plot]" -fuzz 5% -fill white -opaque "#$good" -fill black +opaque white \
        -format '%[fx:mean*w*h]' info: | awk '{ exit !($1 > 50) }' # pixels
}
cure_is_there() { # sets cure: the middle of the first card below the first finding
    look now
    cure=$(convert 'now.png[1x358+36+76]' txt:- | awk -F'[,:]' -v ground="#$raised" '
        index($0, ground) { if (!n++) top = $2; bottom = $2; next }
        n { exit }
        END { if (n > 30) print int(76 + (top + bottom) / 2) }')
    [ -n "$cure" ]
}
# Whether the window's findings are, word for word, those of that file drawn afresh.
expect_findings_of() { # expect_findings_of FILE
    "$program" picture "$1" --with-panels --size 1280x720 -o expected.png >picture.log || fail "no picture of $1"
    wait_for "the findings of $1" looks_like expected "$findings"
}
find_action() { # find_action LETTERS: runs it by its name
    ctrl k
    wait_for 'the search for actions' is_behind
    type_in "$1"
    key Return
    wait_for "the search for $1 to end" is_plain
}
value() { # value KIND KEY FILE: that number of the first part of that kind in the file
    awk -v kind="\"$1\"" -v key="$2" '
        /^\[/ { here = 0 }
        $1 == "kind" { here = $3 == kind }
        here && $1 == key { print $3; exit }' "$3"
}
first_text() { # first_text KEY: the first text of that name in the check that is read
    sed -n "s/.*\"$1\": \"\(.*\)\".*/\1/p" | head -1
}
unsaved_copies() { find state -name '*.unsaved.json' 2>/dev/null; }
is_kept_nowhere() { [ -z "$(unsaved_copies)" ]; }
read_unsaved() { # what is in the window and in no file yet: its copy, kept against crashes
    local copy
    copy=$(unsaved_copies) && [ -n "$copy" ] || return 1
    python3 -c 'import json, sys; print(json.load(open(sys.argv[1]))["setup"])' "$copy" >unsaved.train.toml
}
has_back_focus() { read_unsaved && near "$(value refractor back_focus_mm unsaved.train.toml)" "$1"; }

# The demo, and what a tape measure says of it.
open_window
wait_for 'the start page' is_start_page
xdotool mousemove --window "$window" 480 180 click 1 # the first picture
rest
wait_for 'the demo' is_plain
back_focus=$(value refractor back_focus_mm "$setup")
adapter=$(value spacer length_mm "$setup")
diagonal=$(value prism_diagonal stated_light_path_mm "$setup")
head=$(value splitter_head stated_light_path_mm "$setup")
short=$(sum "$adapter + $diagonal + $head - $back_focus")

# It fails, by so much.
expect_findings_of "$setup"
shows_cross || fail 'no cross stands before the first finding'
{ "$program" check --json "$setup" || [ $? -eq 1 ]; } >demo.json
near "$(checked shortfall_mm "$setup")" "$short" || fail "short by $(checked shortfall_mm "$setup") mm, not $short mm"
[[ $(first_text sentence <demo.json) == *" $(printf '%.1f' "$short") mm farther in than it can." ]] \
    || fail "the finding says: $(first_text sentence <demo.json)"

# A cure: pointed at, it shows in the picture; clicked, focus is reached.
wait_for 'a cure below the finding' cure_is_there
look failing
xdotool mousemove --window "$window" 60 "$cure"
wait_for 'the cure in the picture' differs_from failing "$beam"
look pointed
xdotool click 1
wait_for 'the star of unsaved work' is_modified
rest
wait_for 'a copy of the unsaved work' read_unsaved
expect_findings_of unsaved.train.toml
look cured
shows_cross && fail 'a cross stands before the first finding after the cure'
[ "$(parts unsaved.train.toml)" -eq $(($(parts "$setup") + 1)) ] || fail 'the cure puts no shifter in'

# The cure is a shifter between adapter and diagonal. A thin lens of focal length f takes light that would meet at s
# behind it to s', 1/s' = 1/s + 1/f (the thin-lens equation); s' is the light path from the lens to the field stop.
f=$(value shifter focal_length_mm unsaved.train.toml)
lens=$(value shifter lens_offset_mm unsaved.train.toml) # behind its front face
spare=$(sum "$back_focus - $adapter - $lens - 1 / (1 / ($diagonal + $head - $lens) - 1 / ($f))")
near "$(checked shortfall_mm unsaved.train.toml)" 0 || fail 'the cure leaves focus short'
near "$(checked margin_in_mm unsaved.train.toml)" "$spare" \
    || fail "the lens leaves $(checked margin_in_mm unsaved.train.toml) mm to spare, the thin-lens equation $spare mm"
[ "$(first_text change <demo.json)" = "$(printf '%.1f mm inward' "$spare")" ] \
    || fail "the cure promised $(first_text change <demo.json), it gave $spare mm"

# Undo: all is as it was, and nothing is left to save.
ctrl z
wait_for 'the star to go with undo' is_clean
wait_for 'the same window as before the cure' looks_like failing "$below_top_bar"
shows_cross || fail 'no cross stands before the first finding after undo'
wait_for 'the copy of the unsaved work to go' is_kept_nowhere

# How long must the back focus be for 7.5 mm to spare? “Tune” over the whole strip: from its heading Tab goes to the
# lists of studies, the wide button and the list of numbers, whose third is the back focus.
wanted=7.5
find_action 'study over'
find_action 'show tune'
key Tab Tab Tab space
key Home Down Down Return
wait_for 'a range in focus in the curve' shows_range_in_focus
look tune
key Tab Tab Tab Tab Tab # the list of results, two ranges, the curve, the wanted result
type_in "$wanted"
key Return
key Tab # the first answer
look answered
answer=$(sum "$adapter + $diagonal + $head + $wanted")
take_answer() { key space; has_back_focus "$answer"; } # again while the answer is still that of another wish
wait_for "a back focus of $answer mm" take_answer
rest
expect_findings_of unsaved.train.toml
look tuned
shows_cross && fail 'a cross stands before the first finding after the answer was taken'

# Saved under a name of one's own: the demo's file, and nothing changed but that length.
ctrl s
wait_for 'the question for a name' is_behind
type_in 'my refractor'
key Return
wait_for 'the question to go' is_plain
file='my refractor.train.toml'
is_named() { [ "$(title)" = "$file - Beamfork" ]; }
wait_for 'the file in the title, without a star' is_named
near "$(checked margin_in_mm "$file")" "$wanted" || fail "$(checked margin_in_mm "$file") mm to spare, not $wanted mm"
near "$(checked shortfall_mm "$file")" 0 || fail 'the saved setup does not reach focus'
bare() { sed 's/ *#.*//; /^$/d' "$1"; }
[ "$(bare "$setup" | grep -vxFf <(bare "$file"))" = "back_focus_mm = $back_focus" ] \
    || fail "the file lost: $(bare "$setup" | grep -vxFf <(bare "$file"))"
wait_for 'the copy of the unsaved work to go after saving' is_kept_nowhere

# Closed, and opened again as it was left.
cp "$file" saved.train.toml
close_window
open_window
wait_for 'the file again' is_named
wait_for 'the same findings as before' looks_like tuned "$findings"
wait_for 'the same light paths as before' looks_like tuned "$train"
cmp "$file" saved.train.toml || fail 'closing and opening changed the file'
shows_range_in_focus || fail 'the study is not open any more'
look again
close_window
echo 'journey: read a finding, cured it, undid that, solved for a margin, saved, closed, opened again'
