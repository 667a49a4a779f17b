import ts from 'typescript'
import type { JsonSchema } from '../../src/base/json-schema.ts'

/**
 * The JSON Schema (2020-12) of an exported type of a TypeScript file, with its comments as descriptions: what JSON.stringify
 * makes of any value of the type meets it. Named interfaces become `$defs`. Throws for types that JSON cannot hold.
 */
export function typeSchema(program: ts.Program, file: string, name: string): JsonSchema {
  const checker = program.getTypeChecker()
  const source = program.getSourceFile(file)
  if (!source) throw new Error(`${file} is not among the program's files`)
  const module = checker.getSymbolAtLocation(source)
  const symbol = module && checker.getExportsOfModule(module).find((one) => one.name === name)
  if (!symbol) throw new Error(`${file} exports no ${name}`)
  const definitions = new Map<string, JsonSchema>()
  const { $ref: _, ...root } = {
    ...schemaOf(checker.getDeclaredTypeOfSymbol(symbol), { checker, definitions, top: symbol.name }),
    ...described(symbol, checker),
  } as JsonSchema
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title: name,
    ...root,
    ...(definitions.size > 0
      ? { $defs: Object.fromEntries([...definitions].sort(([a], [b]) => (a < b ? -1 : 1))) }
      : {}),
  }
}

interface Context {
  readonly checker: ts.TypeChecker
  readonly definitions: Map<string, JsonSchema>
  /** Name of the type asked for, which stands at the root. */
  readonly top: string
}

function schemaOf(type: ts.Type, context: Context): JsonSchema {
  const { checker } = context
  if (type.flags & ts.TypeFlags.Unknown) return {}
  if (type.isUnion()) return unionSchema(type, context)
  if (type.isStringLiteral() || type.isNumberLiteral()) return { const: type.value }
  if (type.flags & ts.TypeFlags.BooleanLiteral) return { const: checker.typeToString(type) === 'true' }
  if (type.flags & ts.TypeFlags.String) return { type: 'string' }
  if (type.flags & ts.TypeFlags.Number) return { type: 'number' }
  if (type.flags & ts.TypeFlags.Boolean) return { type: 'boolean' }
  if (checker.isTupleType(type)) return tupleSchema(type as ts.TypeReference, context)
  if (checker.isArrayType(type)) return listSchema(type as ts.TypeReference, context)
  if (type.flags & (ts.TypeFlags.Object | ts.TypeFlags.Intersection)) return namedSchema(type, context)
  throw new TypeError(`JSON has nothing for ${checker.typeToString(type)}`)
}

function unionSchema(type: ts.UnionType, context: Context): JsonSchema {
  const parts = type.types.filter((part) => !(part.flags & ts.TypeFlags.Undefined))
  if (parts.length === 1) return schemaOf(parts[0] as ts.Type, context)
  if (parts.every((part) => part.flags & ts.TypeFlags.BooleanLiteral)) return { type: 'boolean' }
  if (parts.every((part) => part.isStringLiteral() || part.isNumberLiteral()))
    return { enum: parts.map((part) => (part as ts.LiteralType).value) }
  return { anyOf: parts.map((part) => schemaOf(part, context)) }
}

/** A list of fixed length; a rest at its end may be as long as it likes. */
function tupleSchema(type: ts.TypeReference, context: Context): JsonSchema {
  const { elementFlags, minLength } = type.target as ts.TupleType
  const items = context.checker.getTypeArguments(type).map((item) => schemaOf(item, context))
  const open = elementFlags.at(-1) === ts.ElementFlags.Rest
  return {
    type: 'array',
    prefixItems: open ? items.slice(0, -1) : items,
    items: open ? (items.at(-1) as JsonSchema) : false,
    minItems: minLength,
  }
}

function listSchema(type: ts.TypeReference, context: Context): JsonSchema {
  return { type: 'array', items: schemaOf(context.checker.getTypeArguments(type)[0] as ts.Type, context) }
}

/** A named interface stands once, under its name; everything else where it is used. */
function namedSchema(type: ts.Type, context: Context): JsonSchema {
  const { symbol } = type
  const isNamed = symbol && symbol.flags & ts.SymbolFlags.Interface && symbol.name !== context.top
  if (!isNamed || symbol.name === 'Readonly') return objectSchema(type, context)
  if (!context.definitions.has(symbol.name)) {
    context.definitions.set(symbol.name, {})
    context.definitions.set(symbol.name, { ...described(symbol, context.checker), ...objectSchema(type, context) })
  }
  return { $ref: `#/$defs/${symbol.name}` }
}

function objectSchema(type: ts.Type, context: Context): JsonSchema {
  const { checker } = context
  if (checker.getSignaturesOfType(type, ts.SignatureKind.Call).length > 0)
    throw new TypeError(`JSON holds no functions such as ${checker.typeToString(type)}`)
  const properties = checker.getPropertiesOfType(type)
  const needed = properties.filter((one) => !(one.flags & ts.SymbolFlags.Optional)).map((one) => one.name)
  const rest = checker.getIndexInfoOfType(type, ts.IndexKind.String)
  return {
    type: 'object',
    ...(properties.length === 0
      ? {}
      : {
          properties: Object.fromEntries(
            properties.map((one) => [
              one.name,
              { ...schemaOf(checker.getTypeOfSymbol(one), context), ...described(one, checker) },
            ]),
          ),
        }),
    ...(needed.length === 0 ? {} : { required: needed }),
    ...(rest ? { additionalProperties: schemaOf(rest.type, context) } : {}),
  }
}

function described(symbol: ts.Symbol, checker: ts.TypeChecker): JsonSchema {
  const text = ts.displayPartsToString(symbol.getDocumentationComment(checker)).replace(/\s+/g, ' ').trim()
  return text === '' ? {} : { description: text }
}
