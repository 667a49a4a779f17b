import { readFileSync } from 'node:fs'

/** So many performers are a large cast; on two cores each has that share of the time that is wanted for all. */
export const CAST = 60
export const CORES = 2

export const DEMO = readFileSync(new URL('../../examples/lamplighter.yaml', import.meta.url), 'utf8')

/** Texts of files of a cast: the demo with its fitting, on bodies whose girths differ by up to 7 % and lengths by up to 5 %. */
export function castFiles(count: number): string[] {
  return Array.from({ length: count }, (_, k) => {
    const girth = 1 + ((k % 8) - 3.5) / 50
    const length = 1 + ((Math.floor(k / 8) % 8) - 3.5) / 70
    return DEMO.split('\n')
      .map((line) => scaled(line, girth, length))
      .join('\n')
  })
}

function scaled(line: string, girth: number, length: number): string {
  const [whole, start, name, inches, above = '0', below = '1'] =
    /^( {2}([a-z ]+): )(\d+)(?: (\d+)\/(\d+))?(?= *(#|$))/.exec(line) ?? []
  if (whole === undefined || name === undefined) return line
  const by = /girth|width/.test(name) ? girth : length
  return `${start}${((Number(inches) + Number(above) / Number(below)) * by).toFixed(3)}${line.slice(whole.length)}`
}
