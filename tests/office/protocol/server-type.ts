/** A live object of the workbook: what it is, and the thing itself. */
export class Ref {
  constructor(
    readonly type: ServerType,
    readonly target: unknown,
  ) {}
}

export interface ScalarProperty {
  readonly get?: (target: unknown) => unknown;
  readonly set?: (target: unknown, value: unknown) => void;
}

/** One class of Excel's object model as the protocol sees it. Names are those on the wire: `NumberFormat`. */
export interface ServerType {
  readonly name: string;
  /** What an answer to "instantiate" carries, so that the client can name the object again. */
  readonly id?: (target: unknown) => string;
  readonly scalars: Readonly<Record<string, ScalarProperty>>;
  readonly objects: Readonly<Record<string, (target: unknown) => Ref>>;
  /** Gives a Ref or null for an object, anything else for a value. */
  readonly methods: Readonly<Record<string, (target: unknown, args: readonly unknown[]) => unknown>>;
  /** For a collection. */
  readonly items?: (target: unknown) => readonly Ref[];
  readonly item?: (target: unknown, key: unknown) => Ref | null;
  /** True where the client keeps a reference for as long as its run lasts. */
  readonly isTracked?: boolean;
}

interface Definition<T> {
  readonly id?: (target: T) => string;
  readonly scalars?: Readonly<
    Record<string, { readonly get?: (target: T) => unknown; readonly set?: (target: T, value: unknown) => void }>
  >;
  readonly objects?: Readonly<Record<string, (target: T) => Ref>>;
  readonly methods?: Readonly<Record<string, (target: T, args: readonly unknown[]) => unknown>>;
  readonly items?: (target: T) => readonly Ref[];
  readonly item?: (target: T, key: unknown) => Ref | null;
  readonly isTracked?: boolean;
}

export function serverType<T>(name: string, definition: Definition<T>): ServerType {
  return { name, scalars: {}, objects: {}, methods: {}, ...definition } as ServerType;
}
