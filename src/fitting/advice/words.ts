/** Words that say nothing of what is seen. */
const EMPTY = /* @__PURE__ */ new Set(
  (
    'a an and are as at be but by can do does for from has have her him his i if in into is it its my no not of on or our over so ' +
    'that the their them then there they this to too very was when where which will with without wont would round all just only'
  ).split(' '),
)

/** Words that mean the same at a fitting; the first stands for all of its line. */
const SAME = `
tight bind bound binding strain tension constrict restrict snug squeeze pinch
loose baggy slack big large excess
armscye armhole scye armseye
underarm armpit axilla under
fold crease wrinkle ruck bunch bulky ripple
line drag
pucker gather pleat dimple ruffle
gape gap
reach lift movement move stretch dance fight raise
twist spiral pitch skew crooked
bust breast bosom
neck neckline collar throat
biceps bicep
cap crown head
wrist cuff
poke bubble stick
cut dig rub chafe sore hurt
close meet fasten zip zipper
hollow dent collapse cave empty
blade scapula
center centre middle
diagonal slant slanting
level horizontal
vertical upright
slope sloping drooping
uneven asymmetrical different differ
high higher
low lower
wide wider
`

/** One word in the form in which words are compared: without its ending, and the first of those that mean the same. */
export function stem(word: string): string {
  const bare = unended(word)
  return CANONICAL.get(bare) ?? bare
}

/** The words of a text that say something, in lower case, as they were written. */
export function sayingWords(text: string): string[] {
  return (text.toLowerCase().match(/\p{L}+/gu) ?? []).filter((word) => word.length > 1 && !EMPTY.has(word))
}

/** English endings off: binds, binding → bind. Light: it only has to do so to both sides alike. */
function unended(word: string): string {
  const root = word
    .replace(/ies$/, 'y')
    .replace(/(?<=\p{L}{3})(?:ing|ed|ly)$/u, '')
    .replace(/(?<=\p{L}{4})er$/u, '')
    .replace(/(?<=\p{L}{2}(?:sh|ch|x|ss))es$/u, '')
    .replace(/(?<=\p{L}{2}[^s])s$/u, '')
    .replace(/(?<=\p{L}{2})e$/u, '')
  // cutting → cutt → cut, pull → pul: doubled letters at the end are one.
  return root.replace(/(\p{L})\1$/u, '$1')
}

const CANONICAL: ReadonlyMap<string, string> = /* @__PURE__ */ new Map(
  SAME.trim()
    .split('\n')
    .flatMap((line) => {
      const words = line.split(' ').map(unended)
      return words.map((word) => [word, words[0] as string] as const)
    }),
)
