// Writes the published JSON Schemas anew from the code that reads and writes the files: npm run schema
import { writeFileSync } from 'node:fs'
import { publishedSchemas } from './schemas.ts'

for (const [name, text] of publishedSchemas()) writeFileSync(new URL(`../../src/schema/${name}`, import.meta.url), text)
