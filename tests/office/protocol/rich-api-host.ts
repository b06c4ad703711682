import type { MemoryWorkbook } from "../workbook/memory-workbook";
import { workbookType } from "../types/workbook";
import { Batch, type World } from "./batch";
import type { ReplyBody, RequestBody } from "./messages";
import { RichError } from "./rich-error";
import { Ref, serverType } from "./server-type";

/** A request that is refused: before, half-way through, or after its work. */
interface Refusal {
  readonly at: "before" | "halfway" | "after";
  readonly code: string;
}

/** Or one that is never answered (`lost`: nor done), or done and answered when `late` is called. */
export type Fault = Refusal | { readonly at: "lost" | "unanswered" | "late" };

/** What Excel's own messages may quote: it must never reach a person. */
export const CANARY = "Tuuli Canary";

/** Answers the requests of office.js out of a workbook in memory, and remembers which members were used. */
export class RichApiHost {
  /** Members that answered, such as `Range.Values`. */
  readonly used = new Set<string>();
  /** The sizes of the requests and replies so far, in bytes. */
  readonly traffic: { request: number; reply: number }[] = [];
  /** What goes wrong with a request, by its number from 0; null where nothing does. */
  fault: (request: number) => Fault | null = () => null;
  /** Requests that wait, as in a host that does not come to them. */
  readonly late: (() => void)[] = [];
  private requests = 0;
  /** Throws to plant a failure at a member. */
  plant: (member: string) => void = () => undefined;
  private readonly world: World;

  constructor(
    readonly workbook: MemoryWorkbook,
    readonly payloadLimitBytes = 5_000_000,
  ) {
    this.world = {
      root: new Ref(workbookType, workbook),
      kept: new Map(),
      standing: STANDING,
      onUse: (member) => {
        this.plant(member);
        this.used.add(member);
      },
    };
  }

  /** Answers a request, both as text: once, later, or never. */
  take(request: string, reply: (text: string) => void): void {
    const body = JSON.parse(request) as RequestBody;
    const fault = isOfRuntime(body) ? null : this.fault(this.requests++);
    if (fault?.at === "late") this.late.push(() => reply(this.answer(request)));
    else if (fault?.at === "lost") return;
    else if (fault?.at === "unanswered") void this.answer(request);
    else reply(this.answer(request, fault as Refusal | null));
  }

  private answer(request: string, fault: Refusal | null = null): string {
    const bytes = byteLength(request);
    const body = JSON.parse(request) as RequestBody;
    const reply = bytes > this.payloadLimitBytes ? TOO_LARGE_REQUEST : this.process(body, fault);
    const text = JSON.stringify(reply);
    const replyBytes = byteLength(text);
    this.traffic.push({ request: bytes, reply: replyBytes });
    return replyBytes > this.payloadLimitBytes ? JSON.stringify(TOO_LARGE_REPLY) : text;
  }

  /** Actions run in order; those before a failing one keep their effect, as in Excel. */
  private process(body: RequestBody, fault: Refusal | null): ReplyBody {
    const last = { before: 0, halfway: Math.ceil(body.Actions.length / 2), after: Infinity }[fault?.at ?? "after"];
    if (this.isEditing(body)) return failed("InvalidOperationInCellEditMode", "Excel is in cell-editing mode.");
    const batch = new Batch(body, this.world);
    const results: { ActionId: number; Value: unknown }[] = [];
    for (const [index, action] of body.Actions.entries()) {
      if (index >= last) break;
      try {
        const value = batch.run(action);
        if (value !== undefined) results.push({ ActionId: action.Id, Value: value });
      } catch (error) {
        if (!(error instanceof RichError)) throw error;
        return { ...failed(error.code, error.message, index, error.location), Results: results };
      }
    }
    return fault ? failed(fault.code, `There was an error at ${CANARY}.`) : { Results: results };
  }

  /** The runtime of custom functions reports to Excel while a cell is edited too. */
  private isEditing(body: RequestBody): boolean {
    return !isOfRuntime(body) && this.workbook.takesNothingWhileEditing();
  }
}

function isOfRuntime({ ObjectPaths }: RequestBody): boolean {
  return Object.values(ObjectPaths).some(({ Name }) => Object.hasOwn(STANDING, Name ?? ""));
}

/** Services that office.js tells that it is there. */
const ready = (name: string, method: string) => new Ref(serverType(name, { methods: { [method]: () => null } }), null);
const STANDING: Readonly<Record<string, Ref>> = {
  "Microsoft.ExcelServices.CustomFunctions": ready(
    "CustomFunctionsRuntime",
    "_SetOsfControlContainerReadyForCustomFunctions",
  ),
  "Microsoft.InternalService.AddinInternalService": ready("AddinInternalService", "NotifyActionHandlerReady"),
};

function failed(code: string, message: string, index = 0, location = ""): ReplyBody {
  const error = { Code: code, Message: message, HttpStatusCode: 400, ActionIndex: index, Location: location };
  return { Results: [], Error: error };
}

const TOO_LARGE_REQUEST = failed("RequestPayloadSizeLimitExceeded", "The request payload size has exceeded the limit.");
const TOO_LARGE_REPLY = failed("ResponsePayloadSizeLimitExceeded", "The response payload size has exceeded the limit.");

const encoder = new TextEncoder();

function byteLength(text: string): number {
  return encoder.encode(text).length;
}
