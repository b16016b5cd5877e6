#!/usr/bin/env bash
# Runs the README's own commands on every sample, and has the results read by tools that others wrote.
# Needs qpdf and poppler-utils. Prints a line for each plan, and one for the way from a picture to a mock-up,
# and fails at the first fault.
set -euo pipefail
cd "$(dirname "$0")/.."
out=$(mktemp -d)
# What the commands said goes into files; after a failure they are all there is to go by.
finish() {
  local code=$?
  [ "$code" -eq 0 ] || tail -n 20 "$out"/*.log
  rm -rf "$out"
}
trap finish EXIT

passed=0
for plan in samples/*.yaml; do
  name=$(basename "$plan" .yaml)
  npx swagwright mockup "$plan" -o "$out/$name.pdf" 2>"$out/$name.log"
  npx swagwright draw "$plan" -o "$out/$name.svg" 2>>"$out/$name.log"
  qpdf --check "$out/$name.pdf" >"$out/qpdf.log" 2>&1
  pdftoppm -r 40 -png "$out/$name.pdf" "$out/$name" 2>"$out/poppler.log"
  [ ! -s "$out/poppler.log" ]
  sheets=$(find "$out" -name "$name-*.png" | wc -l)
  [ "$sheets" -gt 0 ] || { echo "$plan: no sheet was rendered"; exit 1; }
  echo "$plan: $sheets pages, read by qpdf and poppler without a word"
  passed=$((passed + 1))
done
[ "$passed" -gt 0 ] || { echo "no sample was found"; exit 1; }

# A picture becomes a taped mock-up in four commands. What the program printed, at the dots of a scanner, is the picture.
npx swagwright template finial --solid -o "$out/solid.pdf" 2>"$out/chain.log"
pdftoppm -r 300 -f 2 -l 2 -singlefile -gray -png "$out/solid.pdf" "$out/corbel"
cat >"$out/plan.yaml" <<'PLAN'
title: Traced
template: ./corbel.yaml
layout: { strip: { length: 30, width: 6, margin: 1/2 } }
PLAN
npx swagwright template trace "$out/corbel.png" --dpi 300 -o "$out/corbel.yaml" 2>>"$out/chain.log"
npx swagwright template "$out/corbel.yaml" -o "$out/corbel-outline.pdf" 2>>"$out/chain.log"
npx swagwright fit "$out/plan.yaml" >"$out/fit.txt"
grep -q '^ 1  ' "$out/fit.txt" || { echo "the traced template fits nothing"; cat "$out/fit.txt"; exit 1; }
npx swagwright mockup "$out/plan.yaml" -o "$out/traced.pdf" 2>>"$out/chain.log"
for file in corbel-outline traced; do
  qpdf --check "$out/$file.pdf" >"$out/qpdf.log" 2>&1
done
echo "a picture became a template, an outline and a mock-up of $(qpdf --show-npages "$out/traced.pdf") pages"
passed=$((passed + 1))
echo "$passed passed, 0 failed"
