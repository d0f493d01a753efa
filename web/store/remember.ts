/** Small things that the page remembers on this device; without storage they last as long as the page. */

function local(): Storage | undefined {
  try {
    return localStorage
  } catch {
    return undefined // Storage is switched off.
  }
}

/** What was remembered under a key, where it is of the same kind as what stands in for it. */
export function recalled<T>(key: string, otherwise: T, from: Storage | undefined = local()): T {
  try {
    const found: unknown = JSON.parse(from?.getItem(key) ?? 'null')
    const alike = typeof found === typeof otherwise && Array.isArray(found) === Array.isArray(otherwise)
    return found !== null && alike ? (found as T) : otherwise
  } catch {
    return otherwise
  }
}

export function remember(key: string, value: unknown, to: Storage | undefined = local()): void {
  try {
    to?.setItem(key, JSON.stringify(value))
  } catch {
    // Full or forbidden: it lasts as long as the page.
  }
}
