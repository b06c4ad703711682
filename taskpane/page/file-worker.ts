import { readWorkbook, UnreadableWorkbook } from "../../src/hosts/file/read-workbook";
import { buffersOf } from "../worker/load";
import type { FileReply, FileRequest } from "./file-messages";

/** Files are read here, away from the page's own thread. */
self.onmessage = ({ data: { bytes, job } }: MessageEvent<FileRequest>) => {
  const post = (reply: FileReply, transfer: Transferable[]) => self.postMessage(reply, { transfer });
  readWorkbook(bytes).then(
    (workbook) => post({ job, workbook }, buffersOf(workbook.sheets.map(({ grid }) => grid.columns))),
    (error: unknown) => post({ job, failure: error instanceof UnreadableWorkbook ? error.message : null }, []),
  );
};
