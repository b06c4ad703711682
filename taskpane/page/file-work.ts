import { HostFailure } from "../../src/workbook/host";
import type { SheetOut } from "../../src/workbook/sheets";
import type { WorkbookIn } from "../../src/workbook/workbook";
import type { FileReply, FileRequest } from "./file-messages";
import { buffersOf } from "./workbook-buffers";

type Job = FileRequest extends infer One ? (One extends FileRequest ? Omit<One, "job"> : never) : never;

interface Waiting {
  readonly resolve: (reply: FileReply) => void;
  readonly reject: (reason: unknown) => void;
}

const BROKEN = "The file could not be read: the part of the page that reads files did not start. Reload the page.";
const UNFORESEEN = "The file could not be handled. Open it in Excel, save it again as .xlsx, and try that file.";

/** Reading and writing of .xlsx files, done by a worker. */
export class FileWork {
  private readonly waiting = new Map<number, Waiting>();
  private jobs = 0;

  constructor(private readonly worker: Worker) {
    worker.onmessage = ({ data }: MessageEvent<FileReply>) => this.settle(data);
    worker.onerror = () => this.failAll();
  }

  readonly read = async (bytes: Uint8Array): Promise<WorkbookIn> => {
    const reply = await this.ask({ kind: "read", bytes }, [bytes.buffer as ArrayBuffer]);
    if ("workbook" in reply) return reply.workbook;
    throw failureOf(reply);
  };

  readonly write = async (
    workbook: WorkbookIn,
    made: ReadonlyMap<string, SheetOut>,
    created: string,
  ): Promise<Uint8Array> => {
    const reply = await this.ask({ kind: "write", workbook, made, created }, buffersOf(workbook));
    if ("bytes" in reply) return reply.bytes;
    throw failureOf(reply);
  };

  private ask(job: Job, handed: Transferable[]): Promise<FileReply> {
    const number = (this.jobs += 1);
    return new Promise((resolve, reject) => {
      this.waiting.set(number, { resolve, reject });
      this.worker.postMessage({ ...job, job: number }, handed);
    });
  }

  private settle(reply: FileReply): void {
    this.waiting.get(reply.job)?.resolve(reply);
    this.waiting.delete(reply.job);
  }

  private failAll(): void {
    this.waiting.forEach(({ reject }) => reject(new HostFailure("unknown", BROKEN)));
    this.waiting.clear();
  }
}

function failureOf(reply: FileReply): HostFailure {
  const words = "failure" in reply ? reply.failure : null;
  return words === null ? new HostFailure("unknown", UNFORESEEN) : new HostFailure("unreadable", words);
}
