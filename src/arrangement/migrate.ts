/** The newest version that this tool writes and reads. */
export const CURRENT_VERSION = 1

type Step = (raw: Record<string, unknown>) => Record<string, unknown>

/**
 * `STEPS[n]` makes version n + 1 out of version n: pure, keeps unknown keys, sets `version`, never judges. Version 1 is
 * the first, so there is no step yet; each released version has a frozen file in tests/fixtures/documents.
 */
const STEPS: Record<number, Step> = {}

/**
 * Brings data of an older version up to the current one. Data of the current version comes back as it is.
 * @throws RangeError if a step is missing, which is a mistake of the house and held by a test
 */
export const migrate = (
  raw: Record<string, unknown>,
  steps: Readonly<Record<number, Step>> = STEPS,
  to: number = CURRENT_VERSION,
): Record<string, unknown> => {
  let now = raw
  for (let version = raw.version as number; version < to; version += 1) {
    const step = steps[version]
    if (!step) throw new RangeError(`No way from version ${version} to ${version + 1}`)
    now = step(now)
  }
  return now
}
