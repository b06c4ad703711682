import { HostFailure } from "../../src/workbook/host";
import type { WorkbookIn } from "../../src/workbook/workbook";
import type { FileReply, FileRequest } from "./file-messages";

interface Waiting {
  readonly resolve: (reply: FileReply) => void;
  readonly reject: (reason: unknown) => void;
}

const BROKEN = "The file could not be read: the part of the page that reads files did not start. Reload the page.";
const UNFORESEEN = "The file could not be read. Open it in Excel, save it again as .xlsx, and try that file.";

/** Reading of .xlsx files, done by a worker. */
export class FileWork {
  private readonly waiting = new Map<number, Waiting>();
  private jobs = 0;

  constructor(private readonly worker: Worker) {
    worker.onmessage = ({ data }: MessageEvent<FileReply>) => this.settle(data);
    worker.onerror = () => this.failAll();
  }

  readonly read = async (bytes: Uint8Array): Promise<WorkbookIn> => {
    const request: FileRequest = { bytes, job: (this.jobs += 1) };
    const reply = await new Promise<FileReply>((resolve, reject) => {
      this.waiting.set(request.job, { resolve, reject });
      this.worker.postMessage(request, [bytes.buffer as ArrayBuffer]);
    });
    if ("workbook" in reply) return reply.workbook;
    throw reply.failure === null
      ? new HostFailure("unknown", UNFORESEEN)
      : new HostFailure("unreadable", reply.failure);
  };

  private settle(reply: FileReply): void {
    this.waiting.get(reply.job)?.resolve(reply);
    this.waiting.delete(reply.job);
  }

  private failAll(): void {
    this.waiting.forEach(({ reject }) => reject(new HostFailure("unknown", BROKEN)));
    this.waiting.clear();
  }
}
