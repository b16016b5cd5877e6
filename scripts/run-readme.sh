#!/usr/bin/env bash
# Runs the README's own commands on every sample, and has the results read by tools that others wrote.
# Needs qpdf and poppler-utils. Prints a line for each file and fails at the first fault.
set -euo pipefail
cd "$(dirname "$0")/.."
out=$(mktemp -d)
trap 'rm -rf "$out"' EXIT

passed=0
for plan in samples/*.yaml; do
  name=$(basename "$plan" .yaml)
  npx swagwright mockup "$plan" -o "$out/$name.pdf" 2>"$out/$name.log"
  npx swagwright draw "$plan" -o "$out/$name.svg" 2>>"$out/$name.log"
  qpdf --check "$out/$name.pdf" >"$out/qpdf.log" 2>&1 || { cat "$out/qpdf.log"; exit 1; }
  pdftoppm -r 40 -png "$out/$name.pdf" "$out/$name" 2>"$out/poppler.log"
  if [ -s "$out/poppler.log" ]; then cat "$out/poppler.log"; exit 1; fi
  sheets=$(find "$out" -name "$name-*.png" | wc -l)
  [ "$sheets" -gt 0 ] || { echo "$plan: no sheet was rendered"; exit 1; }
  echo "$plan: $sheets pages, read by qpdf and poppler without a word"
  passed=$((passed + 1))
done
[ "$passed" -gt 0 ] || { echo "no sample was found"; exit 1; }
echo "$passed passed, 0 failed"
