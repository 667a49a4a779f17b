/** A share in words, to a tenth of a percent: `15 %`. */
export function percent(share: number): string {
  return `${Math.round(share * 1000) / 10} %`
}
