# What the journeys share; each begins with it. A journey runs inside xvfb-run and is called
#   NAME.sh PROGRAM SETUP FOLDER
# with the program, the setup that it is about and an empty folder, in which it leaves its files and the window's
# pictures.
set -euo pipefail
program=$(realpath "$1")
setup=$(realpath "$2")
folder=$(realpath "$3")
cd "$folder"
export XDG_CONFIG_HOME=$folder/config
export XDG_STATE_HOME=$folder/state
pid=
trap '[ -z "$pid" ] || kill "$pid" 2>/dev/null || true' EXIT

fail() {
    echo "journey: $*"
    cat program.log || true
    look failed || true
    exit 1
}
wait_for() { # wait_for WHAT COMMAND...: until the command succeeds, a minute at most
    local what=$1 end=$((SECONDS + 60))
    shift
    until "$@"; do
        [ $SECONDS -lt $end ] || fail "waited in vain for $what"
        sleep 0.1
    done
}

# The program and its window.
open_window() { # open_window [FILE]
    "$program" "$@" >>program.log 2>&1 &
    pid=$!
    wait_for 'the window' window_is_there
    xdotool windowfocus "$window"
}
close_window() {
    ctrl q
    wait_for 'the window to close' has_ended
    wait "$pid" || fail "the program ended with status $?"
    pid=
    [ ! -s program.log ] || fail 'the program complained'
}
window_is_there() {
    window=$(xdotool search --onlyvisible --name 'Beamfork' 2>/dev/null | head -1) && [ -n "$window" ]
}
has_ended() { ! kill -0 "$pid" 2>/dev/null; }
title() { xdotool getwindowname "$window"; }
is_clean() { [[ $(title) != \** ]]; }
is_modified() { [[ $(title) == \** ]]; }
look() { import -window root "$1.png"; } # look NAME: a picture of the window as it is now

# Hands.
key() {
    local one
    for one; do xdotool key "$one"; sleep 0.4; done
}
ctrl() { # held as long as a hand holds it, and longer, for machines that draw slowly
    xdotool keydown ctrl; sleep 0.4
    xdotool keydown "$1"; sleep 0.4
    xdotool keyup "$1"; sleep 0.4
    xdotool keyup ctrl; sleep 0.4
}
type_in() { xdotool type --delay 80 "$1"; sleep 0.4; }

# What files say.
parts() { grep -c '^\[\[part\]\]' "$1"; } # parts FILE
checked() { # checked KEY FILE: the first number of that name that the check of the file gives
    { "$program" check --json "$2" || [ $? -eq 1 ]; } \
        | awk -F: -v key="\"$1\"" 'index($1, key) && !seen++ { printf "%.9g\n", $2 }'
}
sum() { awk "BEGIN { printf \"%.9g\", $1 }"; } # sum TERMS: "35 + 110 - 1"
near() { # near NUMBER NUMBER: the same but for rounding
    awk -v a="$1" -v b="$2" 'BEGIN { d = a - b; exit !(d < 1e-6 && d > -1e-6) }'
}
