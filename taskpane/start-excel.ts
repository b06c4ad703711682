/// <reference types="office-js" />
import "../functions";
import { openFunctions } from "../functions/associate";
import { setDateSystem } from "../functions/date-system";
import { readDateSystem } from "../src/hosts/excel/date-system";
import { ExcelWorkbook } from "../src/hosts/excel/excel-workbook";
import { excelReady } from "../src/hosts/excel/ready";
import { HostFailure } from "../src/workbook/host";
import { WorkerCalls } from "../functions/elsewhere/worker-calls";
import { answererOver } from "./functions-in-excel";
import { mountPane } from "./mount";

const OUTSIDE =
  "This page is the task pane of an Excel add-in: open it from Excel, with Skills and windows on the Home tab.";

const LATE =
  "The pane cannot start: Excel's script did not load. Check the connection, then close the pane and open it again.";

const MOST_MS_TO_START = 20_000;

const ASSUMED = "Until then the worksheet functions take dates to be of the 1900 date system.";

void start(document.getElementById("pane") as HTMLElement);

/** The functions answer once the workbook's date system is known, or cannot be. */
async function start(root: HTMLElement): Promise<void> {
  try {
    if (!(await inTime(excelReady()))) {
      root.textContent = OUTSIDE;
      return;
    }
    setDateSystem(await readDateSystem());
    mountPane(root, new ExcelWorkbook());
  } catch (error) {
    const said = error instanceof HostFailure ? error.message : "The pane could not start. Close it and open it again.";
    root.textContent = `${said} ${ASSUMED}`;
  } finally {
    openFunctions(answererOver(new WorkerCalls(newFunctionWorker)));
  }
}

/** Office.js never answers where one of its own files is missing. */
function inTime<T>(started: Promise<T>): Promise<T> {
  const late = new Promise<never>((_, reject) => {
    setTimeout(() => reject(new HostFailure("unanswered", LATE)), MOST_MS_TO_START);
  });
  return Promise.race([started, late]);
}

function newFunctionWorker(): Worker {
  return new Worker(new URL("../functions/elsewhere/function-worker.ts", import.meta.url), {
    name: "function-worker",
  });
}
