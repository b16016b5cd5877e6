/** Text whose lengths stay on one line: `4 1/8 in` and `88 %` are not parted from their fraction, unit or sign. */

export const unbroken = (text: string): string =>
  text.replace(/(\d) (?=\d+\/\d)/g, '$1\u00a0').replace(/(\d) (?=(in|cm|mm)\b|%)/g, '$1\u00a0');
