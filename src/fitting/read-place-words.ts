import { normaliseName } from '../base/names.ts'
import { failure, type Result, success } from '../base/result.ts'
import { readYaml, type Tree } from '../base/yaml-document.ts'

/**
 * A place as somebody says it, in the words of the slip, as it is written in a performer file: `shoulder notch`,
 * `cap line, front`, `1 1/2 in from underarm toward front notch`, `halfway from underarm to shoulder notch`, `40 % of
 * the way from underarm to shoulder notch`. What begins with a bracket is read as it would be in the file. Problem
 * `not-a-place` for a bracket that does not close; whether there is such a place is not looked at.
 */
export function readPlaceWords(text: string): Result<Tree> {
  const words = text.trim()
  if (/^[{[]/.test(words)) {
    const yaml = readYaml(`place: ${words}`, '')
    const tree = yaml.ok ? (yaml.value.tree as { readonly place?: Tree }).place : undefined
    return tree === undefined || tree === null ? failure(notAPlace(words)) : success(tree)
  }
  const [, place = '', half] = /^(.*?)(?:,\s*(front|back))?$/i.exec(words) ?? []
  const section = sectionOf(place)
  if (half === undefined && typeof section === 'string') return success(section)
  const whole = typeof section === 'string' ? { landmark: section } : section
  return success(half === undefined ? whole : { ...whole, 'side of cap': half.toLowerCase() })
}

function sectionOf(place: string): string | { readonly [key: string]: Tree } {
  const distance = /^(.+?)\s+from\s+(?:the\s+)?(.+?)\s+toward\s+(?:the\s+)?(.+)$/i.exec(place)
  if (distance) {
    const [, length = '', from = '', toward = ''] = distance
    return { from: normaliseName(from), toward: normaliseName(toward), distance: length }
  }
  const share = /^(?:(half ?way)|(.+?)(?:\s+of\s+the\s+way)?)\s+from\s+(?:the\s+)?(.+?)\s+to\s+(?:the\s+)?(.+)$/i.exec(
    place,
  )
  if (share) {
    const [, , part, from = '', to = ''] = share
    const between = [normaliseName(from), normaliseName(to)]
    return part === undefined ? { between } : { between, share: part }
  }
  const name = place.replace(/^the\s+/i, '')
  return / line$/i.test(name) ? { line: normaliseName(name) } : name
}

function notAPlace(words: string) {
  return {
    code: 'not-a-place',
    where: {},
    actual: `"${words}"`,
    expected: 'a place, such as shoulder notch, or cap line, front, or 1 1/2 in from underarm toward front notch',
    hint: 'close the brackets, or say it in words',
  }
}
