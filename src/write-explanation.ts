import { nearestName } from './base/names.ts'
import type { Problem } from './base/problem.ts'
import { failure, type Result, success } from './base/result.ts'
import { completeBody } from './body/complete-body.ts'
import { explainDraft } from './explain/explain-draft.ts'
import { type ExplanationJson, sectionJson } from './explain/explanation-json.ts'
import { rulerStep } from './explain/said.ts'
import type { Section } from './explain/step.ts'
import type { MadePattern } from './pipeline.ts'
import type { WrittenFile } from './write-pattern.ts'

export interface ExplanationOptions {
  /** Ids of the pieces to explain; `sleeve` also means its left and right. All when absent; the checks always. */
  readonly pieces?: readonly string[]
}

export interface WrittenExplanation {
  readonly document: ExplanationJson
  readonly files: readonly WrittenFile[]
}

/** The draft of a pattern, before any fitting, in steps for drawing it by hand. Problem: a piece that is not there. */
export async function writeExplanation(
  made: MadePattern,
  options: ExplanationOptions,
): Promise<Result<WrittenExplanation>> {
  const { performer, production, units, choices } = made.performer
  const body = completeBody(made.performer.body)
  if (!body.ok) return body
  const explained = explainDraft({ body: body.value.body, choices, pattern: made.draft.pattern, units })
  if (!explained.ok) return explained
  const chosen = chosenSections(explained.value, options.pieces)
  if (!chosen.ok) return chosen
  const files: WrittenFile[] = []
  const document: ExplanationJson = {
    scyewright: 'explain/1',
    performer,
    ...(production === undefined ? {} : { production }),
    unit: 'mm',
    up: 'y',
    ruler: rulerStep(units),
    sections: chosen.value.map(sectionJson),
    files: files.map((file) => file.name),
  }
  return success({ document, files })
}

function chosenSections(sections: readonly Section[], pieces: readonly string[] | undefined): Result<readonly Section[]> {
  if (pieces === undefined) return success(sections)
  const ids = [...new Set(sections.map(({ piece }) => piece))].filter((id) => id !== 'checks')
  const isNamed = (id: string, name: string) => id === name || id === `${name} left` || id === `${name} right`
  const unknown = pieces.filter((name) => !ids.some((id) => isNamed(id, name)))
  if (unknown.length > 0) return failure(...unknown.map((name) => unknownPiece(name, ids)))
  return success(sections.filter(({ piece }) => piece === 'checks' || pieces.some((name) => isNamed(piece, name))))
}

function unknownPiece(name: string, ids: readonly string[]): Problem {
  const near = nearestName(name, ids)
  return {
    code: 'unknown-piece',
    where: { field: '--pieces' },
    actual: `"${name}"`,
    expected: `one of ${ids.join(', ')}`,
    hint: near === undefined ? 'name a piece of the draft, or leave --pieces out' : `did you mean ${near}?`,
  }
}
