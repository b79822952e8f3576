#!/usr/bin/env bash
# Renders the scenes with POV-Ray into a folder: render.sh FOLDER
set -euo pipefail
out=$(cd "$1" && pwd)
cd "$(dirname "$0")"
for scene in *.pov; do
	how=(+W160 +H160 +A0.0 +AM1 +R6 -J) # the mean of 36 rays a pixel
	if grep -q Samples "$scene"; then
		how=(+W100 +H100 -A) # the lens has its own
	fi
	povray "+I$scene" "+O$out/${scene%.pov}.png" "${how[@]}" Display=off File_Gamma=srgb 2>"$out/log" || {
		cat "$out/log"
		exit 1
	}
done
rm "$out/log"
