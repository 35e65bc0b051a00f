import {MOST} from "../../workbook/size"

/**
 * What a file of another program may hold. Chosen: a farm's workbook in these forms has about 150 kB, 40 sheets and
 * 20 000 cells, so there is room for a far larger one, and little enough that reading stays within seconds and memory.
 */
export const LIMITS = {
  /** Bytes of the file. */
  file: 20_000_000,
  /** Parts of the file, each a part of the zip. */
  parts: 1000,
  /** Bytes of all parts, unpacked. */
  unpacked: 100_000_000,
  /** How many times smaller a part may be packed; beyond that it is made to fill the memory. */
  ratio: 250,
  /** A part of fewer bytes may be packed as small as it will. */
  small: 1_000_000,
  /** Sheets, and of each the rows and columns that hold something. */
  ...MOST,
  /** Cells that hold something, in all sheets. */
  cells: 200_000,
  /** Characters of one cell; that of ECMA-376. */
  text: 32_767,
  /** Elements within each other, in XML. */
  depth: 100,
  /** Characters of one tag, in XML. */
  tag: 20_000,
} as const

/** "12.5 MB" */
export const inMegabytes = (bytes: number) => `${Math.ceil(bytes / 100_000) / 10} MB`

/** Why a file is not read: a sentence without a full stop. Thrown while reading, and caught where reading began. */
export class Unreadable extends Error {}

/** What reading gives, or the sentence why it does not. */
export function unlessUnreadable<T>(read: () => T): T | {readonly refused: string} {
  try {
    return read()
  } catch (fault) {
    if (fault instanceof Unreadable) return {refused: fault.message}
    throw fault
  }
}
