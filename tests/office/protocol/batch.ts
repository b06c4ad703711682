import { ACTION, type Action, type ArgumentInfo, type ObjectPath, PATH, type RequestBody } from "./messages";
import { invalidArgument, notImplemented, RichError } from "./rich-error";
import { Ref, type ScalarProperty } from "./server-type";

export interface World {
  readonly root: Ref;
  /** Objects that the client asked to keep, by reference id; they outlive a batch. */
  readonly kept: Map<string, Ref>;
  /** Objects made by their type's name alone, such as the runtime of custom functions. */
  readonly standing: Readonly<Record<string, Ref>>;
  /** Called before a member answers; may throw to plant a failure. */
  readonly onUse: (member: string) => void;
}

/** One request: its actions in order, its object paths resolved when they are first needed. */
export class Batch {
  private readonly resolved = new Map<number, Ref | null>();
  private readonly keptAs = new Map<Ref, string>();

  constructor(
    private readonly body: RequestBody,
    private readonly world: World,
  ) {}

  run(action: Action): unknown {
    if (action.ActionType === ACTION.trace) return undefined;
    const ref = this.objectOf(action.ObjectPathId);
    if (action.ActionType === ACTION.instantiate) return this.identity(ref);
    if (ref === null) return onNothing(action);
    if (action.ActionType === ACTION.query) return this.query(ref, action);
    if (action.ActionType === ACTION.method) return this.call(ref, action);
    if (action.ActionType === ACTION.setProperty) return this.set(ref, action);
    throw notImplemented(`action ${action.ActionType}`);
  }

  private identity(ref: Ref | null): unknown {
    if (ref === null) return null;
    const reference = this.keptAs.get(ref);
    return {
      ...(ref.type.id && { Id: ref.type.id(ref.target) }),
      ...(reference !== undefined && { _ReferenceId: reference }),
    };
  }

  private query(ref: Ref, action: Action): unknown {
    const { Select: select = [], ...rest } = action.QueryInfo ?? {};
    if (Object.keys(rest).length > 0 || select.length === 0)
      throw notImplemented(`${ref.type.name}: load without names`);
    return loaded(ref, select, this.world.onUse);
  }

  private call(ref: Ref, action: Action): unknown {
    const name = action.Name ?? "";
    if (name === "_KeepReference") return this.keep(ref);
    if (name === "_RemoveReference") return this.forget(action);
    const answer = this.invoke(ref, name, action.ArgumentInfo);
    if (answer instanceof Ref) throw notImplemented(`${ref.type.name}.${name} as a value`);
    return answer;
  }

  private set(ref: Ref, action: Action): void {
    const location = `${ref.type.name}.${action.Name}`;
    this.world.onUse(location);
    const setter = own(ref.type.scalars, action.Name ?? "")?.set;
    if (!setter) throw notImplemented(location);
    setter(ref.target, this.argumentsOf(action.ArgumentInfo)[0]);
  }

  private keep(ref: Ref): void {
    if (!ref.type.isTracked) throw notImplemented(`${ref.type.name}._KeepReference`);
    const id = `kept-${this.world.kept.size + 1}`;
    this.world.kept.set(id, ref);
    this.keptAs.set(ref, id);
  }

  private forget(action: Action): void {
    const [id] = this.argumentsOf(action.ArgumentInfo);
    // The reference is empty, not gone, so that ids are never given twice.
    if (typeof id === "string" && this.world.kept.has(id)) this.world.kept.set(id, GONE);
  }

  private objectOf(id: number): Ref | null {
    const known = this.resolved.get(id);
    if (known !== undefined) return known;
    const path = this.body.ObjectPaths[String(id)];
    if (!path) throw invalidArgument(`object path ${id}`);
    const ref = this.resolve(path);
    this.resolved.set(id, ref);
    return ref;
  }

  private resolve(path: ObjectPath): Ref | null {
    if (path.ObjectPathType === PATH.global) return this.world.root;
    if (path.ObjectPathType === PATH.none) return null;
    if (path.ObjectPathType === PATH.newObject) return this.standing(path.Name ?? "");
    if (path.ObjectPathType === PATH.reference) return this.reference(path.Name ?? "");
    const parent = this.objectOf(path.ParentObjectPathId ?? -1);
    if (parent === null) return null;
    if (path.ObjectPathType === PATH.property) return this.property(parent, path.Name ?? "");
    const answer =
      path.ObjectPathType === PATH.indexer
        ? this.indexed(parent, path.ArgumentInfo)
        : this.invoke(parent, path.Name ?? "", path.ArgumentInfo);
    if (answer !== null && !(answer instanceof Ref))
      throw notImplemented(`${parent.type.name}.${path.Name} as an object`);
    return answer;
  }

  private standing(name: string): Ref {
    const ref = own(this.world.standing, name);
    if (!ref) throw notImplemented(name);
    return ref;
  }

  private reference(id: string): Ref {
    const ref = this.world.kept.get(id);
    if (!ref || ref === GONE) throw new RichError("InvalidReference", "This reference is not valid.", id);
    return ref;
  }

  private property(parent: Ref, name: string): Ref {
    this.world.onUse(`${parent.type.name}.${name}`);
    const navigate = own(parent.type.objects, name);
    if (!navigate) throw notImplemented(`${parent.type.name}.${name}`);
    return navigate(parent.target);
  }

  private indexed(parent: Ref, info: ArgumentInfo | undefined): Ref {
    const location = `${parent.type.name}.GetItem`;
    this.world.onUse(location);
    if (!parent.type.item) throw notImplemented(location);
    const found = parent.type.item(parent.target, this.argumentsOf(info)[0]);
    if (!found) throw new RichError("ItemNotFound", "The requested resource doesn't exist.", location);
    return found;
  }

  private invoke(ref: Ref, name: string, info: ArgumentInfo | undefined): unknown {
    const location = `${ref.type.name}.${name}`;
    this.world.onUse(location);
    const method = own(ref.type.methods, name);
    if (!method) throw notImplemented(location);
    return method(ref.target, this.argumentsOf(info)) ?? null;
  }

  private argumentsOf(info: ArgumentInfo | undefined): unknown[] {
    const references = info?.ReferencedObjectPathIds;
    return (info?.Arguments ?? []).map((value, index) => {
      const path = references?.[index];
      return typeof path === "number" && path > 0 ? this.objectOf(path) : value;
    });
  }
}

const GONE = new Ref({ name: "gone", scalars: {}, objects: {}, methods: {} }, null);

/** A null object may be loaded and kept; to do something with it is a mistake of the caller. */
function onNothing({ ActionType, Name = "" }: Action): null {
  if (ActionType === ACTION.query || Name === "_KeepReference") return null;
  throw new RichError("ItemNotFound", "The requested resource doesn't exist.", Name);
}

/** The properties asked for, as the client reads them: `{ Name: "Children" }`, a collection as `_Items`. */
function loaded(ref: Ref, select: readonly string[], onUse: World["onUse"]): unknown {
  if (ref.type.items) {
    return {
      _Items: ref.type.items(ref.target).map((item, index) => ({ ...scalars(item, select, onUse), _Index: index })),
    };
  }
  return scalars(ref, select, onUse);
}

function scalars(ref: Ref, select: readonly string[], onUse: World["onUse"]): Record<string, unknown> {
  const out: Record<string, unknown> = ref.type.id ? { Id: ref.type.id(ref.target) } : {};
  for (const asked of select) {
    const name = asked.charAt(0).toUpperCase() + asked.slice(1);
    const location = `${ref.type.name}.${name}`;
    onUse(location);
    const property: ScalarProperty | undefined = own(ref.type.scalars, name);
    if (!property?.get) throw invalidArgument(location);
    out[name] = property.get(ref.target);
  }
  return out;
}

function own<T>(record: Readonly<Record<string, T>>, name: string): T | undefined {
  return Object.hasOwn(record, name) ? record[name] : undefined;
}
