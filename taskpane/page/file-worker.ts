import { dayFromIso } from "../../src/age/day";
import { savedSheets } from "../../src/hosts/page/saved-sheets";
import { readWorkbook, UnreadableWorkbook } from "../../src/hosts/file/read-workbook";
import { writeFile } from "../worker/write-file";
import type { FileReply, FileRequest } from "./file-messages";
import { buffersOf } from "./workbook-buffers";

/** Files are read and written here, away from the page's own thread. */
self.onmessage = ({ data }: MessageEvent<FileRequest>) => {
  void answer(data).then(({ reply, handed }) => self.postMessage(reply, { transfer: handed }));
};

interface Answer {
  readonly reply: FileReply;
  readonly handed: Transferable[];
}

async function answer(request: FileRequest): Promise<Answer> {
  const { job } = request;
  try {
    if (request.kind === "read") {
      const workbook = await readWorkbook(request.bytes);
      return { reply: { job, workbook }, handed: buffersOf(workbook) };
    }
    const bytes = await written(request);
    return { reply: { job, bytes }, handed: [bytes.buffer as ArrayBuffer] };
  } catch (error) {
    return { reply: { job, failure: error instanceof UnreadableWorkbook ? error.message : null }, handed: [] };
  }
}

async function written({ workbook, made, created }: Extract<FileRequest, { kind: "write" }>): Promise<Uint8Array> {
  const day = dayFromIso(created);
  if (day === null) throw new RangeError("file-worker: created is no ISO date");
  return writeFile(savedSheets(workbook, made), day);
}
