import type { YAMLError } from 'yaml'
import type { Place, Problem } from './problem.ts'

interface Words {
  readonly actual: string
  readonly hint: string
}

const COLON = 'write a colon and a space after the name, such as "bust girth: 37 3/4"'
const QUOTES = 'put quotes around the text, or write the line like its neighbours'
const REFERENCE = {
  actual: 'a reference (& or *) in the wrong place',
  hint: 'write the value out, or put quotes round it',
}
const TAG = {
  actual: 'a tag, a word that begins with !',
  hint: 'take the word out: every value is read as it is written',
}
const TWICE = { actual: 'two signs of one kind before a value', hint: 'write the value alone' }

/** What each kind of fault of the parser means to somebody who writes a performer file. */
const FAULTS: Readonly<Record<YAMLError['code'], Words>> = {
  ALIAS_PROPS: REFERENCE,
  BAD_ALIAS: REFERENCE,
  BAD_COLLECTION_TYPE: TAG,
  BAD_DIRECTIVE: { actual: 'a line that begins with %', hint: 'take the line out' },
  BAD_DQ_ESCAPE: { actual: 'a backslash between double quotes', hint: 'take the backslash out, or use single quotes' },
  BAD_INDENT: {
    actual: 'an entry that stands farther left or right than its neighbours',
    hint: 'indent the entries of one section by the same number of spaces, and close every bracket',
  },
  BAD_PROP_ORDER: TAG,
  BAD_SCALAR_START: {
    actual: 'a value that begins with a sign of its own meaning',
    hint: 'put quotes around the text',
  },
  BLOCK_AS_IMPLICIT_KEY: {
    actual: 'two names with colons in one line',
    hint: 'give each name its own line, or put quotes around a text with a colon in it',
  },
  BLOCK_IN_FLOW: {
    actual: 'a list or section on lines of its own between brackets',
    hint: 'close the brackets before it',
  },
  DUPLICATE_KEY: { actual: 'a name a second time', hint: 'keep one of the two' },
  IMPOSSIBLE: { actual: 'something that cannot be read', hint: QUOTES },
  KEY_OVER_1024_CHARS: { actual: 'a name of more than 1024 letters', hint: COLON },
  MISSING_CHAR: {
    actual: 'a quote, bracket, comma or colon that is missing',
    hint: 'close the quote or the bracket; a value may also stand without quotes',
  },
  MULTILINE_IMPLICIT_KEY: { actual: 'a line without a colon', hint: COLON },
  MULTIPLE_ANCHORS: TWICE,
  MULTIPLE_DOCS: { actual: 'a second file in this one', hint: 'one performer a file: take out the line ---' },
  MULTIPLE_TAGS: TWICE,
  NON_STRING_KEY: { actual: 'a name that is a list or a section', hint: COLON },
  RESOURCE_EXHAUSTION: { actual: 'entries nested far too deep', hint: 'close the brackets before this line' },
  TAB_AS_INDENT: { actual: 'a tab before an entry', hint: 'indent with spaces; tabs are not allowed' },
  TAG_RESOLVE_FAILED: TAG,
  UNEXPECTED_TOKEN: { actual: 'a sign or a word that does not belong here', hint: QUOTES },
}

/** What the parser found, as a problem at its place. */
export function yamlFault(fault: YAMLError, where: Place): Problem {
  return {
    code: 'not-yaml',
    where,
    ...(FAULTS[fault.code] ?? FAULTS.IMPOSSIBLE),
    expected: 'YAML: names, colons and values, indented with spaces',
  }
}
