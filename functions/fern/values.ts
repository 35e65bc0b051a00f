import type {CropValue} from "../cropValues"

export const fernValues = {} as const satisfies Record<string, CropValue>
