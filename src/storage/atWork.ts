/** Remembers on the device that a workbook is being changed, until its page is put away: a page that is killed cannot say so. */
export interface AtWork {
  /** The workbook of this name is changed from now on. */
  begin(name: string): void
  /** The page is put away. */
  end(): void
}

const keyOf = (name: string) => `fernledger at work ${name}`

/** Whether the page that changed a workbook last was never put away: it crashed, or was killed. */
export function wasCutOff(name: string): boolean {
  try {
    return localStorage.getItem(keyOf(name)) !== null
  } catch {
    return false
  }
}

/** For one page; where the browser keeps nothing it does nothing. */
export function createAtWork(): AtWork {
  let marked: string | null = null
  const end = () => {
    if (marked === null) return
    try {
      localStorage.removeItem(keyOf(marked))
    } catch {
      // Where nothing is kept nothing is found.
    }
    marked = null
  }
  return {
    begin(name) {
      if (name === marked) return
      end()
      try {
        localStorage.setItem(keyOf(name), "")
        marked = name
      } catch {
        // The next start says when the workbook was saved, as after any other end.
      }
    },
    end,
  }
}
