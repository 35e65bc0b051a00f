import type {CropValue} from "../cropValues"

export const rootValues = {} as const satisfies Record<string, CropValue>
