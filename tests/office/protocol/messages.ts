/**
 * The batch protocol between office.js and its host, as far as this workbook speaks it. No specification is published: the
 * shapes are those that office.js 1.1.110 sends and reads, and the tests of this folder fail when it no longer does.
 */
export interface RequestBody {
  readonly Actions: readonly Action[];
  readonly ObjectPaths: Readonly<Record<string, ObjectPath>>;
}

export interface Action {
  readonly Id: number;
  readonly ActionType: number;
  readonly Name?: string;
  readonly ObjectPathId: number;
  readonly ArgumentInfo?: ArgumentInfo;
  readonly QueryInfo?: { readonly Select?: readonly string[]; readonly [other: string]: unknown };
}

export interface ObjectPath {
  readonly Id: number;
  readonly ObjectPathType: number;
  readonly Name?: string;
  readonly ParentObjectPathId?: number;
  readonly ArgumentInfo?: ArgumentInfo;
}

export interface ArgumentInfo {
  readonly Arguments?: readonly unknown[];
  readonly ReferencedObjectPathIds?: readonly (number | null)[] | null;
}

export const PATH = { global: 1, newObject: 2, method: 3, property: 4, indexer: 5, reference: 6, none: 7 } as const;
export const ACTION = { instantiate: 1, query: 2, method: 3, setProperty: 4, trace: 5 } as const;

export interface ReplyBody {
  readonly Results: readonly { readonly ActionId: number; readonly Value: unknown }[];
  readonly Error?: {
    readonly Code: string;
    readonly Message: string;
    readonly HttpStatusCode: number;
    readonly ActionIndex: number;
    readonly Location: string;
  };
}
