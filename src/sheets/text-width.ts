/** Advance widths of DejaVu Sans 2.37 in 1/2048 em, characters of equal width together; a test reads the font. */
const ADVANCES: readonly (readonly [number, string])[] = [
  [342, '⁄'],
  [465, '′'],
  [563, "'"],
  [569, 'ijlìíîïĩīĭįıĵĺļ'],
  [582, 'ł'],
  [604, 'IJÌÍÎÏĨĪĬĮİĴ'],
  [651, ' ,.\u00a0·‘’'],
  [690, '/:;\\|¦'],
  [700, 'ŀ'],
  [721, 'fſ'],
  [739, '-\u00ad'],
  [765, '″'],
  [768, 'ľ'],
  [799, '()[]'],
  [803, 'tţťŧ'],
  [821, '!¡²³¹'],
  [842, 'rŕŗř'],
  [942, '"'],
  [965, 'ªº'],
  [1024, '*_`§¨¯°´¸–'],
  [1061, '“”'],
  [1067, 'sśŝşš'],
  [1075, 'zźżž'],
  [1087, '?¿'],
  [1126, 'cçćĉċč'],
  [1138, 'ĳ'],
  [1141, 'LĹĻĽĿ'],
  [1151, 'Ł'],
  [1178, 'F'],
  [1186, 'kķĸ'],
  [1208, 'Ĳ•'],
  [1212, 'vxyýÿŷ'],
  [1235, 'P'],
  [1239, 'Þ'],
  [1251, 'TYÝŢŤŦŶŸ'],
  [1253, 'o«»ðòóôõöøōŏő'],
  [1255, 'aàáâãäåāăą'],
  [1260, 'eèéêëēĕėęě'],
  [1290, 'ß'],
  [1294, 'EÈÉÊËĒĔĖĘĚ'],
  [1298, 'hnuñùúûüĥńņňŋũūŭůűų'],
  [1300, 'SbdgpqþďđĝğġģŚŜŞŠ'],
  [1303, '$0123456789{}¢£¤¥µ¶'],
  [1343, 'KĶ'],
  [1401, 'AVÀÁÂÃÄÅĀĂĄ'],
  [1403, 'XZŹŻŽ'],
  [1405, 'B'],
  [1423, 'RħŔŖŘ'],
  [1430, 'CÇĆĈĊČ'],
  [1499, 'UÙÚÛÜŨŪŬŮŰŲ'],
  [1532, 'NÑŃŅŇŊ'],
  [1540, 'HĤ'],
  [1577, 'DĎ'],
  [1587, 'GÐĐĜĞĠĢ'],
  [1597, '&'],
  [1612, 'OQÒÓÔÕÖØŌŎŐ'],
  [1666, 'ŉ'],
  [1675, 'wŵ'],
  [1716, '#+<=>^~¬±×÷←↑→↓−≤≥≈'],
  [1767, 'M'],
  [1876, 'Ħ'],
  [1946, '%'],
  [1985, '¼½¾⅓⅔⅛⅜⅝⅞'],
  [1995, 'mÆ'],
  [2011, 'æ'],
  [2025, 'WŴ'],
  [2048, '@©®—…'],
  [2095, 'œ'],
  [2191, 'Œ'],
]

const EM = 2048

/** Characters outside the table count as one and a tenth em: no Latin, Greek or Cyrillic letter is wider. */
const UNKNOWN = 2253

/** How far letters reach above and below the baseline, in em (accented capitals and descenders included). */
export const ASCENT = 0.93
export const DESCENT = 0.24

const widths = new Map(ADVANCES.flatMap(([width, letters]) => Array.from(letters, (c) => [c, width] as const)))

/**
 * The width in mm of a line of DejaVu Sans `size` mm high (em), without kerning or ligatures: exact for the
 * table's characters, an upper estimate for others. Never asks a browser, so SVG and PDF agree.
 */
export function textWidth(text: string, size: number): number {
  let sum = 0
  for (const letter of text) sum += widths.get(letter) ?? UNKNOWN
  return (sum / EM) * size
}

/** The size, at most `size`, at which the text is no wider than `width` mm: long names get small, never cut off. */
export function fittingSize(text: string, size: number, width: number): number {
  const asked = textWidth(text, size)
  return asked > width ? (size * width) / asked : size
}
