/** Letters as a terminal sets them: what combines with the letter before it takes no column of its own. */
const NARROWEST = /^[\p{M}\u200b-\u200d\u2060\u00ad]$/u

/** Chinese, Japanese and Korean letters, full-width forms and pictures take two (Unicode, annex 11). */
const WIDE =
  /^[\p{Emoji_Presentation}\u1100-\u115f\u2e80-\u303e\u3041-\u33ff\u3400-\u4dbf\u4e00-\u9fff\ua000-\ua4cf\ua960-\ua97f\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe6f\uff01-\uff60\uffe0-\uffe6\u{20000}-\u{3fffd}]$/u

/** How many columns of a terminal a text takes. */
export function columnsOf(text: string): number {
  let columns = 0
  for (const letter of text) columns += NARROWEST.test(letter) ? 0 : WIDE.test(letter) ? 2 : 1
  return columns
}
