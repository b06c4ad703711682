import type { MemoryWorkbook } from "../workbook/memory-workbook";
import { workbookType } from "../types/workbook";
import { Batch, type World } from "./batch";
import type { ReplyBody, RequestBody } from "./messages";
import { RichError } from "./rich-error";
import { Ref, serverType } from "./server-type";

/** Answers the requests of office.js out of a workbook in memory, and remembers which members were used. */
export class RichApiHost {
  /** Members that answered, such as `Range.Values`. */
  readonly used = new Set<string>();
  /** The sizes of the requests and replies so far, in bytes. */
  readonly traffic: { request: number; reply: number }[] = [];
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

  /** The reply to a request, both as text. */
  answer(request: string): string {
    const bytes = byteLength(request);
    const reply = bytes > this.payloadLimitBytes ? TOO_LARGE_REQUEST : this.process(JSON.parse(request) as RequestBody);
    const text = JSON.stringify(reply);
    const replyBytes = byteLength(text);
    this.traffic.push({ request: bytes, reply: replyBytes });
    return replyBytes > this.payloadLimitBytes ? JSON.stringify(TOO_LARGE_REPLY) : text;
  }

  /** Actions run in order; those before a failing one keep their effect, as in Excel. */
  private process(body: RequestBody): ReplyBody {
    if (this.isEditing(body)) return failed("InvalidOperationInCellEditMode", "Excel is in cell-editing mode.");
    const batch = new Batch(body, this.world);
    const results: { ActionId: number; Value: unknown }[] = [];
    for (const [index, action] of body.Actions.entries()) {
      try {
        const value = batch.run(action);
        if (value !== undefined) results.push({ ActionId: action.Id, Value: value });
      } catch (error) {
        if (!(error instanceof RichError)) throw error;
        return { ...failed(error.code, error.message, index, error.location), Results: results };
      }
    }
    return { Results: results };
  }

  /** The runtime of custom functions reports to Excel while a cell is edited too. */
  private isEditing(body: RequestBody): boolean {
    if (Object.values(body.ObjectPaths).some((path) => Object.hasOwn(STANDING, path.Name ?? ""))) return false;
    return this.workbook.takesNothingWhileEditing();
  }
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
