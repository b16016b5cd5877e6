#!/usr/bin/env bash
# Makes the pictures that README.md shows, from the samples, into samples/pictures.
# Needs poppler-utils (pdftoppm), chromium and a built program with its page (npm ci).
set -euo pipefail
cd "$(dirname "$0")/.."
out=samples/pictures
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
mkdir -p "$out"

page() { # page PDF NUMBER DPI NAME
  pdftoppm -r "$3" -f "$2" -l "$2" -singlefile -png "$1" "$out/$4"
}

npx swagwright draw samples/raffle-border.yaml --show corner --without template -o "$out/border.png" --width 1100 2>/dev/null
npx swagwright draw samples/wreath-frame.yaml --without template,marks -o "$out/frame.png" --width 600 2>/dev/null
npx swagwright draw samples/lathe-street-quilt.yaml --without template,marks,notes -o "$out/quilt.png" --width 900 2>/dev/null
npx swagwright mockup samples/guild-strip.yaml -o "$work/sheets.pdf" 2>/dev/null
page "$work/sheets.pdf" 2 75 sheet
npx swagwright card samples/raffle-border.yaml -o "$work/card.pdf" 2>/dev/null
page "$work/card.pdf" 1 75 card
npx swagwright audition samples/raffle-border.yaml -o "$work/audition.pdf" 2>/dev/null
page "$work/audition.pdf" 1 75 audition
node scripts/page-pictures.mjs "$out"
ls -l "$out"
