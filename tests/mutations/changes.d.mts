export interface Change {
  readonly kind: "comparison" | "sign" | "bound" | "order" | "step";
  readonly from: number;
  readonly to: number;
  readonly now: string;
  readonly line: number;
  readonly was: string;
}

export function changesIn(text: string, fileName?: string): Change[];
export function changed(text: string, change: Pick<Change, "from" | "to" | "now">): string;
