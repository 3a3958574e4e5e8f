#!/usr/bin/env bash
# SPDX-License-Identifier: MIT
# Opens the window on a virtual display and works in it: draws every demo room, edits, undoes, saves
# a copy, and looks at the pictures. Needs Xvfb, xdotool and import (imagemagick).
#   window_smoke.sh PROGRAM LAYOUTS_FOLDER
set -u
program=${1:?usage: window_smoke.sh PROGRAM LAYOUTS_FOLDER}
layouts=${2:?usage: window_smoke.sh PROGRAM LAYOUTS_FOLDER}
for need in Xvfb xdotool import convert identify; do
  command -v "$need" >/dev/null || { echo "skipped: $need is missing"; exit 77; }
done
work=$(mktemp -d)
export XDG_CONFIG_HOME="$work/config" WINDOW_SIZE=1280x720 LIBGL_ALWAYS_SOFTWARE=1
server="" window_program=""
clean_up() {
  [ -n "$window_program" ] && kill "$window_program" 2>/dev/null
  [ -n "$server" ] && kill "$server" 2>/dev/null
  [ -n "${KEEP:-}" ] && cp "$work"/*.png "$work"/*.json "$KEEP"/; rm -rf "$work"
}
trap clean_up EXIT
fail() { echo "FAILED: $*"; [ -f "$work/log" ] && cat "$work/log"; exit 1; }

Xvfb -displayfd 5 -screen 0 1280x720x24 -nolisten tcp -noreset 5>"$work/display" >/dev/null 2>&1 & server=$!
for _ in $(seq 50); do [ -s "$work/display" ] && break; sleep 0.1; done
DISPLAY=":$(cat "$work/display")"; export DISPLAY

start() {  # FILE: opens the window on it and waits until it has drawn the room
  "$program" "$1" >"$work/log" 2>&1 & window_program=$!
  for _ in $(seq 100); do
    window=$(xdotool search --onlyvisible --name Rakeline 2>/dev/null | tail -n 1)
    [ -n "$window" ] && break; sleep 0.1
  done
  [ -n "${window:-}" ] || fail "no window for $1"
  xdotool windowmove "$window" 0 0; xdotool windowfocus "$window" 2>/dev/null
  sleep 2
}
picture() { import -window root "$work/$1.png" || fail "no picture $1"; }
colours() { convert "$work/$1.png" -crop "$2" +repage -format '%k' info:; }
share_of() {  # PICTURE AREA COLOUR FUZZ: per mille of the area that has the colour
  convert "$work/$1.png" -crop "$2" +repage -fuzz "$4" -fill black +opaque "$3" \
          -fill white -opaque "$3" -format '%[fx:int(1000*mean)]' info:
}
differ() {  # A B AREA: number of pixels that differ
  convert "$work/$1.png" -crop "$3" +repage "$work/one.png"
  convert "$work/$2.png" -crop "$3" +repage "$work/other.png"
  compare -metric AE "$work/one.png" "$work/other.png" null: 2>&1
}
stop() { kill "$window_program" 2>/dev/null; wait "$window_program" 2>/dev/null; window_program=""; }

hall=620x380+380+42 left=300x640+78+42
for room in screening-24 converted-hall-96 steep-240 grand-620; do
  start "$layouts/$room.json"
  picture "$room"
  [ "$(colours "$room" $hall)" -gt 500 ] || fail "$room: the hall is flat"
  [ "$(colours "$room" $left)" -gt 60 ] || fail "$room: the panel is empty"
  [ "$(share_of "$room" $hall '#E8DFCB' 12%)" -gt 20 ] || fail "$room: the chart is not bright"
  [ "$(share_of "$room" 300x24+690+8 '#F0B35A' 3%)" -gt 20 ] || fail "$room: no format is lit"
  [ "$(share_of "$room" $left '#14161A' 2%)" -gt 500 ] || fail "$room: the ground is not the theme's"
  stop
done

cp "$layouts/screening-24.json" "$work/room.json"; cp -r "$layouts/practice" "$work/practice"
start "$work/room.json"
picture before
xdotool mousemove 300 557 click 1; sleep 0.4
xdotool type '14.2 m'; sleep 0.3; xdotool key Return; sleep 1
picture edited
[ "$(differ before edited 290x22+100+10)" -gt 20 ] || fail "the edit shows no mark"
xdotool key ctrl+s; sleep 0.7
grep -q '"width_m": 14.2' "$work/room.json" || fail "the edit is not in the saved file"
xdotool key ctrl+z; sleep 0.5; xdotool key ctrl+s; sleep 0.7
grep -q '"width_m": 14.2' "$work/room.json" && fail "undo is not in the saved file"
cp "$work/room.json" "$work/floor.json"  # a drag on the first row's handle in the long section
xdotool mousemove 629 620; sleep 0.5; xdotool mousedown 1; sleep 0.3
xdotool mousemove 645 620; sleep 0.3; xdotool mousemove 660 620; sleep 0.5; xdotool mouseup 1; sleep 0.5
xdotool key ctrl+s; sleep 0.7
cmp -s "$work/room.json" "$work/floor.json" && fail "the dragged row is not in the saved file"
xdotool key ctrl+z; sleep 0.5; xdotool key ctrl+s; sleep 0.7
cmp -s "$work/room.json" "$work/floor.json" || fail "undo does not bring the dragged row back"
xdotool key ctrl+shift+s; sleep 0.8
picture dialog
[ "$(differ edited dialog 640x360+320+180)" -gt 20000 ] || fail "no file chooser for saving a copy"
xdotool key ctrl+a; sleep 0.2; xdotool type copy.json; sleep 0.3; xdotool key Return; sleep 1
[ -f "$work/copy.json" ] || fail "the copy was not saved"
kill -0 "$window_program" 2>/dev/null || fail "the program stopped"
stop
echo "the window draws, edits, undoes and saves"
