#!/usr/bin/env bash
# Draws the pictures of the documentation again from the demo. Needs poppler-utils, Chromium and the built viewer; run it from the top of the project.
set -euo pipefail
out=$(mktemp -d)
trap 'rm -rf "$out"' EXIT
npx runback sheet docs/examples/tender-7/tender-7.job.json --line dipstick brake-rear --aids tape,wheel --out "$out" >/dev/null
page() { pdftoppm -r "$4" -gray -png -f "$2" -l "$2" -singlefile "$out/$1.pdf" "docs/images/$3"; }
page dipstick 1 sheet-dipstick 100
page brake-rear 1 sheet-brake 80
page brake-rear 2 pictures-brake 80
page brake-rear 3 views-brake 80
page brake-rear 8 tape-brake 80
node docs/images/viewer.mjs
